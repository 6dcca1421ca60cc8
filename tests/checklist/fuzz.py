"""Throws broken checklists at loader, linter, mending and rehearsal: ``python -m tests.checklist.fuzz --minutes 10``.

Real files are changed (bytes, lines, values, structure), and some are made to grow or to lead out of their
folder. What must hold: no exception but the project's own, no case longer than `LONGEST_S`, no file opened outside
the folder and the library, and no more memory than `MOST_MIB` above the start.
"""

import argparse
import random
import re
import resource
import shutil
import sys
import sysconfig
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from assistant.checklist.finding import Known
from assistant.checklist.library import library_folder
from assistant.checklist.load import load
from assistant.checklist.mending import mend
from assistant.checklist.rehearsal import rehearse
from assistant.cli.lint import findings_of
from assistant.errors import AssistantError
from assistant.orders.solve import KEY_UNITS

LONGEST_S = 10
"""Processor time beyond which a case counts as hung (the slowest seen takes a tenth)."""
MOST_MIB = 400
"""Memory above that of the start."""
KNOWN = Known(KEY_UNITS, frozenset({"oh-101"}))
HERE = Path(__file__).parent
SEEDS = [
    *sorted(path for path in library_folder().glob("*.toml")),
    *sorted(library_folder().glob("parts/*.toml")),
    *sorted(HERE.glob("odd/*.toml")),
]
VALUES = (
    *('""', '"x"', "''", "[]", "{}", "true", "0", "-1", "1e999", "nan", "inf", "9" * 400, "1979-05-27", "[[[[]]]]"),
    *('["a"]', '[""]', '{ kind = "wait" }', '{ kind = "choice", choices = ["a", "a"] }', '"\\u0000"', '"\u202e"'),
    *('"../secret"', '"/etc/passwd"', '"parts/../../secret"', '["../secret"]', '["/etc/passwd"]', '"parts/link"'),
    *(
        '[{ key = "x" }]',
        '[{ step = "a", answer = "yes" }]',
        '{ kind = "double-check", of = "a" }',
        '"' + "a " * 450 + '"',
    ),
    *('{ kind = "number", unit = "mL/h", lowest = 1e400 }', '[{ key = "primary.rate", above = "1e99 mL/h" }]', "0.1"),
)
WORDS = (
    *("Is", "the", "line", "free", "of", "air?", "or", "not", "say", "stop", "10U", ".5", "1.0", "cc", "mL.", "1000"),
    *(
        "**now**",
        "http://x",
        "and/or",
        "VTBI",
        "\u00b5g",
        "{x}",
        "\u4e2d\u6587",
        "\u0301",
        "e\u0301",
        "15 to 20 seconds",
        "?",
        ". . .",
        "''",
    ),
    *("qd", "\U0001f489", "\u2019s", "9" * 30, "-5", "1e5", "7:00", "5 mcg/kg/min", "a" * 60),
)
EXPECTED = (
    '{ kind = "done" }',
    '{ kind = "note" }',
    '{ kind = "observation" }',
    '{ kind = "question", right = "no" }',
    '{ kind = "wait", seconds = 3000 }',
    '{ kind = "choice", choices = ["one two", "one too", "\u4e2d", "  a"] }',
    '{ kind = "choice", choices = ["yes", "15", "50", "not", "?"], right = "?" }',
    '{ kind = "number", unit = "gtt/min", lowest = 5, highest = 1 }',
    '{ kind = "number", unit = "furlong", key = "primary.rate", within = 9e9 }',
    '{ kind = "name", key = "primary.rate" }',
)
Change = Callable[[random.Random, str], str]


def _bytes(chance: random.Random, text: str) -> str:
    letters = list(text)
    for _ in range(chance.randint(1, 8)):
        at = chance.randrange(len(letters) + 1)
        letters[at : at + chance.randint(0, 3)] = chance.choice(
            ["\0", '"', "[", "]", "{", "=", "\n", "\ufeff", "\ud7ff", "'''", "#", "é"]
        )
    return "".join(letters)


def _lines(chance: random.Random, text: str) -> str:
    lines = text.split("\n")
    for _ in range(chance.randint(1, 6)):
        a, b = chance.randrange(len(lines)), chance.randrange(len(lines))
        match chance.randrange(4):
            case 0:
                del lines[a]
                lines = lines or [""]
            case 1:
                lines.insert(a, lines[b])
            case 2:
                lines[a], lines[b] = lines[b], lines[a]
            case _:
                lines[a] = lines[a][: chance.randrange(len(lines[a]) + 1)]
    return "\n".join(lines)


def _values(chance: random.Random, text: str) -> str:
    lines = text.split("\n")
    named = [at for at, line in enumerate(lines) if "=" in line]
    for at in chance.sample(named, min(len(named), chance.randint(1, 5))):
        lines[at] = f"{lines[at].partition('=')[0]}= {chance.choice(VALUES)}"
    return "\n".join(lines)


def _gently(chance: random.Random, text: str) -> str:
    """Changes that mostly still load, so that the rules have something to look at."""
    lines = text.split("\n")
    said = [at for at, line in enumerate(lines) if re.match(r"(say|more|hint|why|if_wrong|title|part) = \"", line)]
    for at in chance.sample(said, min(len(said), chance.randint(1, 4))):
        name = lines[at].partition(" ")[0]
        lines[at] = f'{name} = "{" ".join(chance.choices(WORDS, k=chance.randint(1, 12)))}"'
    expected = [at for at, line in enumerate(lines) if line.startswith("expect = ")]
    for at in chance.sample(expected, min(len(expected), chance.randint(0, 3))):
        lines[at] = f"expect = {chance.choice(EXPECTED)}"
    for at in chance.sample(range(len(lines)), min(len(lines), 3)):
        if lines[at] in ("critical = true", "gate = true"):
            lines[at] = chance.choice(["critical = true", "tries = 3", "", "after = []"])
    return "\n".join(lines)


def _structure(chance: random.Random, text: str) -> str:
    many = chance.choice([10, 300, 5000])
    grown = (
        "a = " + "[" * many + "]" * many,
        "a = " + "{ b = " * many + "1" + " }" * many,
        "a" + ".a" * many + " = 1",
        "\n".join(f'[[steps]]\nid = "s{n}"\npart = "A"\nsay = "Go."' for n in range(min(many, 600))),
        "\n".join(f'[[steps]]\ninclude = "parts/hands"\nprefix = "p{n}"' for n in range(min(many, 600))),
        "\n".join(f'[[steps]]\ninclude = "parts/twice"\nprefix = "p{n}"' for n in range(min(many, 60))),
        '[[steps]]\nid = "x"\npart = "A"\nsay = "'
        + "word " * min(many, 55)
        + '"\nafter = ['
        + '"x",' * min(many, 99)
        + "]",
        '[[steps]]\ninclude = "parts/link"\n[[steps]]\ninclude = "parts/loop"',
        "x = '''" + "\n" * many,
        "include = [" + ", ".join(f'"n{n}"' for n in range(many)) + "]",
        'applies = "' + "(" * many + '"',
        'say = "' + "1" * many + "." + "1" * many + '"',
    )
    at = chance.choice([0, len(text)])
    return f"{text[:at]}\n{chance.choice(grown)}\n{text[at:]}"


CHANGES: tuple[Change, ...] = (_bytes, _lines, _values, _structure, _gently)


def prepare(folder: Path) -> Path:
    """A folder of checklists with parts that double, loop and lead out; return where the cases are written."""
    inside = folder / "inside"
    (inside / "parts").mkdir(parents=True)
    (folder / "secret.toml").write_text('[[steps]]\nid = "secret"\npart = "A"\nsay = "Secret."\n')
    for part in (HERE / "odd" / "parts").glob("*.toml"):
        shutil.copy(part, inside / "parts")
    (inside / "parts" / "link.toml").symlink_to(folder / "secret.toml")
    (inside / "parts" / "loop.toml").write_text('[[steps]]\ninclude = "parts/loop"\nprefix = "l"\n')
    twice = "".join(f'[[steps]]\ninclude = "parts/hands"\nprefix = "{letter}"\n' for letter in "abcdefgh")
    (inside / "parts" / "twice.toml").write_text(twice)
    return inside


def one_case(path: Path, content: bytes) -> str:
    """Put one file through everything that reads it; return what became of it."""
    path.write_bytes(content)
    findings = findings_of(str(path), KNOWN)
    assert all(finding.what and finding.line >= 1 for finding in findings)
    mended = mend(content)
    assert len(mended.text) <= 2 * len(content) + 1000
    try:
        rehearse(load(str(path)))
    except AssistantError:
        return "refused"
    return "warned" if findings else "clean"


def fuzz(seconds: float, seed: int, cases: int = sys.maxsize) -> Counter[str]:
    """Run cases until the time or their number is over; count what became of them.

    Raises:
        AssertionError: what must hold did not; the message names seed and case.
    """
    chance = random.Random(seed)  # noqa: S311 - not a secret
    folder = Path(tempfile.mkdtemp(prefix="fuzz-")).resolve()
    inside = prepare(folder)
    opened: list[str] = []
    allowed = (
        str(inside),
        str(library_folder().resolve()),
        *map(str, (sysconfig.get_path("stdlib"), sys.prefix, HERE.parents[1] / "assistant")),
    )
    active = [False]

    def watch(event: str, arguments: tuple[object, ...]) -> None:
        if event == "open" and active[0] and isinstance(arguments[0], str):
            real = str(Path(arguments[0]).resolve())  # where a link leads counts, not where it lies
            if not real.startswith(allowed):
                opened.append(real)

    sys.addaudithook(watch)
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    ends, counts, slowest = time.monotonic() + seconds, Counter[str](), 0.0
    try:
        for number in range(cases):
            if time.monotonic() > ends:
                break
            text = chance.choice(SEEDS).read_text(encoding="utf-8-sig")
            names = []
            for change in chance.choices(CHANGES, weights=(1, 2, 2, 1, 14), k=chance.choice((1, 1, 2))):
                names.append(change.__name__)
                text = change(chance, text)
            path = inside / chance.choice(["case.toml", "parts/case.toml"])
            begun = time.process_time()
            active[0] = True
            try:
                counts[one_case(path, text.encode("utf-8", "surrogatepass"))] += 1
            except Exception as broken:
                shutil.copy(path, kept := Path(tempfile.gettempdir()) / f"fuzz-{seed}-{number}.toml")
                raise AssertionError(f"seed {seed}, case {number} ({names}), kept in {kept}: {broken!r}") from broken
            finally:
                active[0] = False
                path.unlink(missing_ok=True)
            took = time.process_time() - begun
            slowest = max(slowest, took)
            assert took < LONGEST_S, f"seed {seed}, case {number} ({names}) took {took:.1f} s"
            assert not opened, f"seed {seed}, case {number} opened {opened}"
    finally:
        shutil.rmtree(folder)
    grown = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) // 1024
    assert grown < MOST_MIB, f"memory grew by {grown} MiB"
    counts["slowest, ms"] = round(slowest * 1000)
    counts["memory grown, MiB"] = grown
    return counts


def main() -> None:
    """The command."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--minutes", type=float, default=10)
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()
    for name, count in fuzz(arguments.minutes * 60, arguments.seed).items():
        print(f"{name}: {count:,}")  # noqa: T201


if __name__ == "__main__":
    main()
