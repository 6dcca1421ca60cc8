"""`checkoff calc limits` and `checkoff calc compare`: against the limits, against the right number."""

import argparse
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from assistant.dosing import Agrees, CannotCheck, Disagrees, compare
from assistant.dosing.amount import Amount, parse_amount
from assistant.dosing.declared import Form
from assistant.dosing.limits import Finding, Level, Limits, worst
from assistant.dosing.limits_file import limits_from
from assistant.dosing.strength import parse_concentration
from assistant.errors import QuantityError, UsageError
from assistant.spoken.english.slips import different_things, explained
from assistant.text import quoted, shown

LIMITS_INPUTS = {
    "rate": "250 mL/h",
    "dose": "1 g",
    "duration": "60 min",
    "concentration": "1 g in 200 mL",
    "dose-rate": "10 mg/min",
    "weight": "70 kg",
}
"""What limits checks, with an example of each."""
COMPARE_INPUTS = {"stated": "750 mL/h", "right": "75 mL/h"}
"""What compare takes, with an example of each."""


def limits(words: list[str], *, as_json: bool) -> int:
    """Check an infusion against the table of limits; 1 where a hard limit refuses it.

    Raises:
        UsageError: nothing to check was given.
        QuantityError: an input or the table is wrong.
    """
    parser = argparse.ArgumentParser(
        prog="checkoff calc limits",
        description="What is known of a fluid's or drug's limits. Unknown never means safe.",
        epilog='example:\n  checkoff calc limits --name vancomycin --dose "1 g" --duration "60 min"\n\n'
        "Exit code 1 where a hard limit refuses the infusion.",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("--name", required=True, metavar="NAME", help="of the fluid or drug")
    for name, example in LIMITS_INPUTS.items():
        parser.add_argument(f"--{name}", metavar="TEXT", help=f'{Form.AMOUNT.value}, for example "{example}"')
    parser.add_argument("--with", dest="others", action="append", default=[], metavar="NAME", help="in the same line")
    parser.add_argument("--table", metavar="FILE", help="a table of limits of your own (TOML)")
    parser.add_argument("--json", action="store_true", help="one JSON object per finding")
    given = vars(parser.parse_args(words))
    own = given.pop("table")
    table = table_of_limits(own)
    name, others, as_json = given.pop("name"), given.pop("others"), given.pop("json") or as_json
    findings = _findings(table, name, others, {key: text for key, text in given.items() if text is not None})
    for finding in findings:
        _show_finding(finding, as_json)
    return 1 if worst(findings) is Level.HARD else 0


def _findings(table: Limits, name: str, others: list[str], given: Mapping[str, str]) -> list[Finding]:
    """What the table has against an infusion.

    Raises:
        UsageError: nothing to check was given.
        QuantityError: an input is wrong.
    """
    measures = {
        key.replace("-", "_"): parse_concentration(text) if key == "concentration" else parse_amount(text)
        for key, text in given.items()
    }
    findings = list(table.check(name, together_with=others, **measures))
    if not findings:
        raise UsageError("Nothing to check was given.", "Give a rate, a dose with its duration, or a concentration.")
    return findings


def limits_rows(inputs: Mapping[str, str | list[str]]) -> list[dict[str, object]]:
    """One row for each finding, from inputs as a file of questions gives them.

    Raises:
        QuantityError: an input is missing, unknown or wrong.
        UsageError: nothing to check was given.
    """
    plain, others = _plain(inputs, "limits", (*LIMITS_INPUTS, "name"), "with")
    if "name" not in plain:
        raise QuantityError("limits needs a name, but none came.", 'Give name, for example "vancomycin".')
    name = plain.pop("name")
    return [_finding_row(finding) for finding in _findings(table_of_limits(None), name, others, plain)]


def compare_row(inputs: Mapping[str, str | list[str]]) -> dict[str, object]:
    """The verdict on a number, from inputs as a file of questions gives them.

    Raises:
        QuantityError: an input is missing, unknown or wrong.
    """
    plain, others = _plain(inputs, "compare", tuple(COMPARE_INPUTS), "other")
    for name, example in COMPARE_INPUTS.items():
        if name not in plain:
            raise QuantityError(
                f"compare needs {name}, an amount, but none came.", f'Give {name}, such as "{example}".'
            )
    return _verdict_row(plain["stated"], plain["right"], others)


def _plain(
    inputs: Mapping[str, str | list[str]], check: str, known: tuple[str, ...], several: str
) -> tuple[dict[str, str], list[str]]:
    """Inputs of one value by name, and those of the one that takes several."""
    plain: dict[str, str] = {}
    many: list[str] = []
    for key, value in inputs.items():
        name = key.replace("_", "-")
        if name == several:
            many = [value] if isinstance(value, str) else list(value)
        elif name not in known or not isinstance(value, str):
            raise QuantityError(f"{check} takes no input {quoted(key)}.", f"It takes: {', '.join((*known, several))}.")
        else:
            plain[name] = value
    return plain, many


def table_of_limits(own: str | None) -> Limits:
    """The library's table of limits, or the user's own."""
    # These two bring a library with them that a formula does not need: a start stays quick without it.
    from assistant.checklist.library import library_folder
    from assistant.checklist.paper_file import read_paper

    path = library_folder() / "limits.toml" if own is None else Path(own)
    return limits_from(read_paper(path, QuantityError).table)


def _show_finding(finding: Finding, as_json: bool) -> None:
    if as_json:
        print(json.dumps(_finding_row(finding), ensure_ascii=False))
        return
    source = f" Source: {finding.source}." if finding.source else ""
    print(shown(f"{finding.level}: {finding.sentence}{source}"))


def _finding_row(finding: Finding) -> dict[str, object]:
    return {
        "level": finding.level.value,
        "about": finding.about,
        "sentence": finding.sentence,
        "source": finding.source,
    }


def compared(words: list[str], *, as_json: bool) -> int:
    """Compare a number with the right one; 1 where it is wrong or cannot be compared.

    Raises:
        QuantityError: one of them is no amount.
    """
    parser = argparse.ArgumentParser(
        prog="checkoff calc compare",
        description="A stated number against the right one. A slip is named: tenfold, swapped, hours for minutes.",
        epilog='example:\n  checkoff calc compare --stated "750 mL/h" --right "75 mL/h"\n'
        '  checkoff calc compare --stated "1,000 mL/h" --right "83.3 mL/h" --other "primary.bag_volume=1,000 mL"\n\n'
        "Exit code 1 where they do not agree.",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    for name, example in COMPARE_INPUTS.items():
        parser.add_argument(
            f"--{name}", required=True, metavar="TEXT", help=f'{Form.AMOUNT.value}, for example "{example}"'
        )
    parser.add_argument(
        "--other",
        action="append",
        default=[],
        metavar="NAME=TEXT",
        help="another number of the same order, with which it may have been exchanged",
    )
    parser.add_argument("--json", action="store_true", help="one JSON object")
    given = parser.parse_args(words)
    row = _verdict_row(given.stated, given.right, given.other)
    if given.json or as_json:
        print(json.dumps(row, ensure_ascii=False))
    else:
        print(shown(f"{row['verdict']}: {row['sentence']}"))
    return 0 if row["verdict"] == "agrees" else 1


def _verdict_row(stated: str, right: str, others: list[str]) -> dict[str, object]:
    verdict = compare(parse_amount(stated), parse_amount(right), _named(others))
    match verdict:
        case Agrees():
            return {"verdict": "agrees", "slip": None, "sentence": "They agree."}
        case Disagrees():
            also = [one.value for one in verdict.also]
            slip, sentence = verdict.slip.value, explained(verdict)
            return {"verdict": "disagrees", "slip": slip, "sentence": sentence, "also": also}
        case CannotCheck():
            return {"verdict": "cannot check", "slip": None, "sentence": different_things(verdict)}


def _named(pairs: list[str]) -> dict[str, Amount]:
    """Amounts by name, from texts such as ``primary.vtbi=950 mL``."""
    found: dict[str, Amount] = {}
    for pair in pairs:
        name, mark, text = pair.partition("=")
        if not mark or not name.strip():
            raise UsageError("Another number needs its name.", 'Write it like "primary.vtbi=950 mL".')
        found[name.strip()] = parse_amount(text)
    return found


CHECKS: Mapping[str, Callable[..., int]] = {"limits": limits, "compare": compared}
"""What `calc` does beside its formulas, by name."""


@dataclass(frozen=True)
class Check:
    """What `calc` does beside its formulas, as its list has it.

    Attributes:
        about: what it does, in words.
        needed, others: names of its inputs.
        example: its options.
        called: words by which people look for it.
    """

    about: str
    needed: tuple[str, ...]
    others: tuple[str, ...]
    example: str
    called: str

    def goes_by(self, name: str, word: str) -> bool:
        """Whether what is said of it contains each of the words."""
        said = f"{name} {self.about} {self.called}".lower()
        return all(part in said for part in word.lower().replace("-", " ").split())


LISTED: Mapping[str, Check] = {
    "limits": Check(
        "what is known of a fluid's or drug's limits",
        ("name",),
        (*LIMITS_INPUTS, "with", "table"),
        '--name vancomycin --dose "1 g" --duration "60 min"',
        "maximum rate, maximum concentration, compatible, same line, safe",
    ),
    "compare": Check(
        "a stated number against the right one; a slip is named",
        tuple(COMPARE_INPUTS),
        ("other",),
        '--stated "750 mL/h" --right "75 mL/h"',
        "check my answer, comparison, tenfold, error, double check",
    ),
}
"""The checks by name, as the list has them."""
