"""`checkoff calc`: the infusion arithmetic, with its working."""

import argparse
import json
import re
import sys
from collections.abc import Iterator, Mapping
from decimal import Decimal
from pathlib import Path
from typing import IO, Any

from assistant.cli.calc_checks import (
    CHECKS,
    LISTED,
    compare_row,
    limits_rows,
    table_of_limits,
)
from assistant.cli.printing import tell, why_not
from assistant.cli.tapping import tapped
from assistant.cli.verbs import Subparsers, add_verb
from assistant.dosing.amount import normal
from assistant.dosing.formula_groups import GROUPS, looked_for
from assistant.dosing.formulas import FORMULAS, Answer, Formula, find, solve
from assistant.dosing.question import Worked, ask
from assistant.dosing.result import Result
from assistant.dosing.units import ucum
from assistant.errors import AssistantError, QuantityError, UsageError
from assistant.text import SHORT, quoted, shown

_EXAMPLES = """\
  checkoff calc "1 g in 200 mL over 60 min in mL/h"
  checkoff calc "5 mcg/kg/min, 70 kg, 400 mg in 250 mL"
  checkoff calc --list
  checkoff calc --list drip
  checkoff calc rate --volume "100 mL" --duration "30 min"
  checkoff calc drop-rate --volume "1 L" --duration "8 h" --drop-factor "20 gtt/mL"
  checkoff calc pump-rate --dose-rate "5 mcg/kg/min" --weight "95 kg" --concentration "200 mg in 250 mL"
  checkoff calc rate --volume "1,000 mL" --duration "12 h" --rounding whole --json
  checkoff calc limits --name vancomycin --dose "1 g" --duration "60 min"
  checkoff calc compare --stated "750 mL/h" --right "75 mL/h"
  checkoff calc due-time --start 08:00 --policy "set change, continuous"
  checkoff calc live-count --drop-factor "20 gtt/mL" --tap
  checkoff calc rate --help
  checkoff calc --from LINES.jsonl

A line for --from: {"id": "a", "formula": "rate", "inputs": {"volume": "100 mL", "duration": "30 min"}}
It takes the formulas, limits and compare, and {"id": "b", "question": "100 mL over 30 min in mL/h"}.
A question with pounds turns them by the factor of the school's file, where the settings name one that has it.
A question that lacks something, or may mean two things, is asked back in one line with exit code 2.
Exit code 0 done, 1 where a value cannot be worked out (with --from: any), 2 wrong usage."""

_LONGEST_LINE = 65_536
_WITH_POLICY = "due-time"
"""The formula whose interval may be a policy of the table of limits."""
_POUNDS = re.compile(r"\d ?(?:lbs?|pounds?)\b", re.IGNORECASE)
_WITH_TAPS = "live-count"
"""The formula whose times may be tapped."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb `calc`."""
    parser = add_verb(
        subparsers,
        "calc",
        "Works out a formula and shows the working. Training only: check every number yourself.",
        _EXAMPLES,
    )
    parser.add_argument(
        "--list", nargs="?", const="", metavar="WORD", help="every formula with its inputs, or those a word leads to"
    )
    parser.add_argument("--json", action="store_true", help="one JSON object per answer")
    parser.add_argument("--spoken", action="store_true", help="in words, as it would be spoken")
    parser.add_argument("--from", dest="lines", metavar="FILE", help='answer one JSON object per line; "-" for stdin')
    parser.add_argument(
        "formula",
        nargs="?",
        metavar="FORMULA",
        help="a question in a line, or the name of a formula, limits or compare",
    )
    parser.add_argument("rest", nargs=argparse.REMAINDER, metavar="INPUTS", help="its inputs, such as --volume")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Work out and print.

    Raises:
        QuantityError: a formula or an input is wrong.
    """
    if args.list is not None:
        return _list(args.list, args.json)
    if args.lines is not None:
        return _bulk(args.lines)
    if args.formula is None:
        tell("Name a formula, or give --list or --from.")
        return 2
    if args.formula in CHECKS:
        return CHECKS[args.formula](args.rest, as_json=args.json)
    if (question := _question_of(args)) is not None:
        return _ask(question, args.json, args.spoken)
    formula = find(args.formula)
    given = vars(formula_parser(formula).parse_args(args.rest))
    as_json, aloud = given.pop("json") or args.json, given.pop("spoken") or args.spoken
    if formula.name == _WITH_POLICY:
        _apply_policy(given, as_json)
    if given.pop("tap", False):
        given["times"] = tapped()
    answers = solve(formula.name, {name: text for name, text in given.items() if text is not None})
    for answer in answers:
        _show(answer, as_json, aloud, labelled=len(answers) > 1)
    return 0


def _question_of(args: argparse.Namespace) -> str | None:
    """The question that stands in place of a formula, its words in one argument or in many."""
    words = [args.formula, *args.rest]
    for name in ("json", "spoken"):
        if f"--{name}" in words:
            words.remove(f"--{name}")
            if not asks(" ".join(words)):
                return None
            setattr(args, name, True)
    text = " ".join(words)
    return text if asks(text) else None


def asks(text: str) -> bool:
    """Whether it is a question, and neither the name of a formula nor options."""
    return " --" not in text and any(letter.isdigit() for letter in text)


def _answer_to(question: str) -> Worked:
    """The answer; pounds are turned as the user's school does it."""
    if _POUNDS.search(question) is None:
        return ask(question)
    # Only here: a question without pounds starts quickly, without settings and without a school's file.
    from assistant.attempts.school import load_school
    from assistant.settings import load_settings

    path = load_settings().lab.school
    factor = load_school(Path(path)).pounds_per_kg if path else None
    return ask(question, Decimal(factor) if factor is not None else None)


def _ask(question: str, as_json: bool, aloud: bool) -> int:
    worked = _answer_to(question)
    read = _aloud if aloud else shown
    if as_json:
        print(json.dumps(_worked_object(worked), ensure_ascii=False))
        return 0
    for name, text in worked.taken:
        print(f"{name}: {read(text)}")
    if worked.spared:
        print(f"not needed: {read(', '.join(worked.spared))}")
    print(f"by: {', then '.join(f'{name} ({_in_sentence(FORMULAS[name].about)})' for name in worked.formulas)}")
    for line in worked.working:
        print(f"  {read(line)}")
    for caution in worked.cautions:
        print(f"  Caution: {read(caution)}")
    for answer in reversed(worked.answers):
        print(f"{_label(answer)}: {read(str(answer))}" if len(worked.answers) > 1 else read(str(answer)))
    return 0


def _in_sentence(text: str) -> str:
    return text[:1].lower() + text[1:]


def _worked_object(worked: Worked) -> dict[str, Any]:
    found = _as_object(worked.answer) | {"working": list(worked.working)}
    if worked.cautions:
        found["cautions"] = list(worked.cautions)
    if len(worked.answers) > 1:
        found["label"] = _label(worked.answer)
        found["more"] = [_as_object(answer) | {"label": _label(answer)} for answer in worked.answers[1:]]
    taken = [{"name": name, "text": text} for name, text in worked.taken]
    return found | {"taken": taken, "not_needed": list(worked.spared), "formulas": list(worked.formulas)}


_LABELS = {
    "bolus": "rate",
    "volume-for-dose": "volume",
    "dilution": "stock",
    "dilution-diluent": "diluent",
    "loading-then-maintenance": "loading rate",
    "loading-then-maintenance-rate": "maintenance rate",
    "loading-then-maintenance-volume": "loading volume",
    "alligation": "stronger stock",
    "alligation-weaker": "weaker stock",
    "live-count": "rate",
    "live-count-uncertainty": "give or take",
}
"""What each of several answers is."""


def _label(answer: Answer) -> str:
    for name in ("dose_rate", "hour"):
        if name in answer.inputs and answer.formula in ("titration", "hourly-intake"):
            return f"{'at' if name == 'dose_rate' else 'from'} {answer.inputs[name]}"
    return _LABELS.get(answer.formula, answer.formula.replace("-", " "))


def formula_parser(formula: Formula) -> argparse.ArgumentParser:
    """The options of one formula."""
    parser = argparse.ArgumentParser(
        prog=f"checkoff calc {formula.name}",
        description=f"{formula.about.replace('%', '%%')}. Gives {formula.gives.replace('%', '%%')}.",
        epilog=f"example:\n  checkoff calc {formula.name} {formula.example}\n\nSource: {formula.source}".replace(
            "%", "%%"
        ),
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    for one in formula.inputs:
        need = "" if one.needed else " (may be left out)"
        text = f'{one.form}, for example "{one.example}"{need}'.replace("%", "%%")
        parser.add_argument(f"--{one.name}", dest=one.parameter, metavar="TEXT", help=text)
    if formula.name == _WITH_POLICY:
        parser.add_argument("--policy", metavar="NAME", help="a time from the table of limits in place of --interval")
        parser.add_argument("--table", metavar="FILE", help="a table of limits of your own (TOML)")
    if formula.name == _WITH_TAPS:
        parser.add_argument("--tap", action="store_true", help="mark drops now: Enter at each one, then an empty input")
    parser.add_argument("--json", action="store_true", help="one JSON object per answer")
    parser.add_argument("--spoken", action="store_true", help="in words, as it would be spoken")
    return parser


def _apply_policy(given: dict[str, Any], as_json: bool) -> None:
    """Take the interval from the table of limits, where a policy is named.

    Raises:
        QuantityError: the table has no such policy.
    """
    own, name = given.pop("table"), given.pop("policy")
    if name is None:
        return
    if given.get("interval") is not None:
        raise UsageError("Both an interval and a policy were given.", "Give one of the two.")
    policies = table_of_limits(own).policies
    policy = policies.get(name)
    if policy is None:
        raise QuantityError(f"There is no policy {quoted(name)}.", f"Known are: {'; '.join(policies)}.")
    given["interval"] = str(policy.value)
    if not as_json:
        tell(f"{policy.name}: {policy.value}. Source: {policy.source}.")


def _list(word: str, as_json: bool) -> int:
    """Print the formulas and checks by group, or those that a word leads to; 1 where it leads to none."""
    found = set(looked_for(word)) if word else set(FORMULAS.values())
    checks = {name: check for name, check in LISTED.items() if check.goes_by(name, word)}
    if as_json:
        for formula in (one for one in FORMULAS.values() if one in found):
            _print_row(formula)
        for name, check in checks.items():
            inputs = [{"name": one, "needed": one in check.needed} for one in (*check.needed, *check.others)]
            row = {"check": name, "group": "Checks", "about": check.about, "inputs": inputs}
            print(json.dumps({**row, "example": f"checkoff calc {name} {check.example}"}, ensure_ascii=False))
        return 0 if found or checks else 1
    for name, names in GROUPS.items():
        formulas = [FORMULAS[one] for one in names if FORMULAS[one] in found]
        if formulas:
            print(name)
        for formula in formulas:
            _print_formula(formula)
    if checks:
        print("Checks")
    for name, check in checks.items():
        print(f"  {name}: {check.about}")
        print(f"    inputs: {' '.join((*check.needed, *(f'[{one}]' for one in check.others)))}")
        print(f"    example: checkoff calc {name} {check.example}")
    if not (found or checks):
        tell(f"No formula goes by {shown(word, SHORT)}. checkoff calc --list shows all of them.")
    return 0 if found or checks else 1


def _print_row(formula: Formula) -> None:
    inputs = [
        {"name": one.name, "form": one.form.value, "example": one.example, "needed": one.needed}
        for one in formula.inputs
    ]
    group = next(group for group, names in GROUPS.items() if formula.name in names)
    row = {"formula": formula.name, "group": group, "about": formula.about, "gives": formula.gives}
    print(json.dumps({**row, "inputs": inputs, "source": formula.source}, ensure_ascii=False))


def _print_formula(formula: Formula) -> None:
    needed = " ".join(one.name for one in formula.inputs if one.needed)
    others = " ".join(f"[{one.name}]" for one in formula.inputs if not one.needed)
    print(f"  {formula.name}: {formula.about}")
    print(f"    inputs: {f'{needed} {others}'.strip()}; gives {formula.gives}")
    print(f"    example: checkoff calc {formula.name} {formula.example}")


def _as_object(answer: Answer) -> dict[str, Any]:
    """An answer for programs: numbers as decimal text."""
    if isinstance(answer, Result):
        found: dict[str, Any] = {
            "formula": answer.formula,
            "value": f"{normal(answer.value):f}",
            "unit": answer.unit,
            "exact": f"{answer.exact_decimal:f}",
            "rounding": str(answer.rounding),
            "working": list(answer.working),
            "ucum": ucum(answer.unit),
        }
        if answer.cautions:
            found["cautions"] = list(answer.cautions)
        return found
    return {
        "formula": answer.formula,
        "value": answer.text,
        "unit": "",
        "exact": answer.at.isoformat() if answer.at.tzinfo else "",
        "rounding": "nearest minute, half up",
        "working": list(answer.working),
    }


def _show(answer: Answer, as_json: bool, aloud: bool, labelled: bool = False) -> None:
    if as_json:
        found = _as_object(answer) | ({"label": _label(answer)} if labelled else {})
        if aloud:
            found["spoken"] = [_aloud(line) for line in answer.working]
        print(json.dumps(found, ensure_ascii=False))
        return
    read = _aloud if aloud else shown
    print(f"{_label(answer)}: {read(str(answer))}" if labelled else read(str(answer)))
    for line in answer.working:
        print(f"  {read(line)}")
    for caution in getattr(answer, "cautions", ()):
        print(f"  Caution: {read(caution)}")


def _aloud(text: str) -> str:
    from assistant.spoken import speech  # a start stays quick without the language

    return shown(speech(text))


def _bulk(name: str) -> int:
    """Answer a file of questions, one object a line; 1 where any of them has no answer."""
    failed = False
    for number, line in enumerate(_lines(name), 1):
        if not line.strip():
            continue
        found: dict[str, Any] = {"id": None, "line": number}
        try:
            question = _question(line)
            found["id"] = question.get("id")
            first, *more = _answered(question)
            found |= first
            if more:
                found["more"] = more
        except AssistantError as error:
            failed = True
            found["error"] = {"what": error.what, "remedy": error.remedy}
        print(json.dumps(found, ensure_ascii=False))
    return 1 if failed else 0


def _answered(question: dict[str, Any]) -> list[dict[str, Any]]:
    """The answers of one object of a file: a formula's, a question's, or the findings of a check."""
    if isinstance(question.get("question"), str):
        return [_worked_object(_answer_to(question["question"]))]
    name, inputs = _formula_and_inputs(question)
    if name == "limits":
        return [{"formula": name} | row for row in limits_rows(inputs)]
    if name == "compare":
        return [{"formula": name} | compare_row(inputs)]
    answers = solve(name, inputs)
    return [_as_object(one) | ({"label": _label(one)} if len(answers) > 1 else {}) for one in answers]


def _lines(name: str) -> Iterator[str]:
    """Lines of a file or of stdin; a line that is too long comes cut, and fails as no JSON.

    Raises:
        AssistantError: the file cannot be read.
    """
    try:
        if name == "-":
            yield from _bounded(sys.stdin.buffer)
        else:
            with open(name, "rb") as stream:  # noqa: PTH123 - a Path refuses no zero byte either
                yield from _bounded(stream)
    except (OSError, ValueError) as cause:
        raise AssistantError(f"{shown(name)} cannot be read: {why_not(cause)}.", "Check the path.") from cause


def _bounded(stream: IO[bytes]) -> Iterator[str]:
    while line := stream.readline(_LONGEST_LINE):
        whole = line.endswith(b"\n") or len(line) < _LONGEST_LINE
        while not whole:
            rest = stream.readline(_LONGEST_LINE)
            whole = rest.endswith(b"\n") or len(rest) < _LONGEST_LINE
        yield line.decode("utf-8", errors="replace")


def _question(line: str) -> dict[str, Any]:
    try:
        found = json.loads(line)
    except (ValueError, RecursionError) as cause:
        raise QuantityError("A line must be one JSON object.", "Write id, formula and inputs.") from cause
    if not isinstance(found, dict):
        raise QuantityError("A line must be one JSON object.", "Write id, formula and inputs.")
    return found


def _formula_and_inputs(question: dict[str, Any]) -> tuple[str, Mapping[str, Any]]:
    name, inputs = question.get("formula"), question.get("inputs")
    if not isinstance(name, str) or not isinstance(inputs, dict):
        raise QuantityError("A question needs a formula and its inputs.", 'Write "formula": "rate", "inputs": {...}.')
    for key, value in inputs.items():
        several = isinstance(value, list) and all(isinstance(one, str) for one in value)
        if not isinstance(value, str) and not several:
            raise QuantityError(
                f"{shown(key, SHORT)} must be a text with its unit.", 'Write it like "100 mL", in quotation marks.'
            )
    return name, inputs
