"""The tables of what learners say at a step, and what is made of it, as interpreted and by a real guide."""

import copy
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from typing import Any

from assistant.checklist.model import Step
from assistant.guide import Guide, Opened, Papers, Recorded, State, Status, Typed
from assistant.one_step import alone
from assistant.spoken import ENGLISH, interpret
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected, Expect
from assistant.spoken.language import Language
from assistant.spoken.meaning import Answer, Kind, Surety
from assistant.spoken.statement import Asked, Want

ROOT = Path(__file__).parent.parent.parent
TABLES = ROOT / "tests/data/answers"
NAMES = (
    *("steps", "students", "students_again", "natural", "many_words", "choices", "negatives", "asides", "troubles"),
    *("near_misses", "hundred_lines", "chatty", "three_hundred", "another_sixty_lines", "every_day_words"),
    *("eight_voices", "ten_voices", "alternatives", "beside_the_point", "close_calls"),
)
"""Tables of that folder; some have another half in `held_out`."""
WANTS = {"done": Want.DONE, "wait": Want.START, "question": Want.ANSWER}
GOOD = {"done": "done", "wait": "start", "question": "yes"}
AT = datetime(2026, 1, 1, tzinfo=UTC)
_CHOICE = "choice "


@dataclass(frozen=True)
class Row:
    """A row of the tables of `tests/data/answers`."""

    kind: str
    line: str
    words: str
    means: str

    @property
    def choices(self) -> tuple[str, ...]:
        """The alternatives, where the line names some."""
        return tuple(self.kind.removeprefix(_CHOICE).split(" | ")) if self.kind.startswith(_CHOICE) else ()

    @property
    def is_clear(self) -> bool:
        """Whether it says that a step is done, begun or so, or which alternative it is."""
        return self.means in self.choices or self.means == GOOD.get(self.kind)


def rows(name: str) -> list[Row]:
    """The rows of a table that a yes, a no, a done or an alternative may answer."""
    lines = (TABLES / f"{name}.tsv").read_text(encoding="utf-8").splitlines()[2:]
    found = [Row(*line.split("\t")) for line in lines]
    return [row for row in found if row.kind in WANTS or row.choices]


@cache
def library() -> Mapping[tuple[str, tuple[str, ...]], Mapping[str, Any]]:
    """What each line of the library expects, by the line and its alternatives."""
    found: dict[tuple[str, tuple[str, ...]], Mapping[str, Any]] = {}
    for path in sorted((*ROOT.glob("checklists/*.toml"), *ROOT.glob("checklists/parts/*.toml"))):
        for step in tomllib.loads(path.read_text(encoding="utf-8")).get("steps", []):
            if "say" in step and "expect" in step:
                found.setdefault((step["say"], tuple(step["expect"].get("choices", ()))), step["expect"])
    return found


def expected(row: Row) -> Expect:
    """What the line expects, with the author's own words where it is one of the library."""
    return _expected(row.kind, row.line, row.choices)


@cache
def _expected(kind: str, line: str, choices: tuple[str, ...]) -> Expect:
    known = library().get((line, choices), {})
    if choices:
        ways = tuple((way, choice) for choice, said in known.get("phrases", {}).items() for way in said)
        return ChoiceExpected(choices, ways, line)
    good, bad = (tuple(known.get(name, ())) for name in ("good", "bad"))
    asked = Asked(line, WANTS[kind], good, bad)
    return ConfirmExpected(done_is_yes=kind != "question", asked=asked, bare=known.get("bare", True))


def taken(row: Row, words: str = "") -> str:
    """What the words are taken for at the line: the row's own, or others."""
    match interpret(words or row.words, expected(row)):
        case Answer(kind=Kind.CHOICE, value=str(choice)):
            return choice
        case Answer(kind=Kind.DONE) | Answer(kind=Kind.CONFIRM, value="yes"):
            return GOOD[row.kind]
        case Answer(kind=Kind.CONFIRM, value="no"):
            return "no"
    return ""


def weighed(row: Row, language: Language) -> tuple[str, Surety]:
    """What a language with a second reader makes of the words, "" for nothing that it takes, and how surely."""
    match language.interpret(row.words, expected(row)):
        case Answer(kind=Kind.CHOICE, value=str(choice), surety=surety):
            return choice, surety
        case Answer(kind=Kind.DONE, surety=surety) | Answer(kind=Kind.CONFIRM, value="yes", surety=surety):
            return GOOD[row.kind], surety
        case Answer(kind=Kind.CONFIRM, value="no"):
            return "no", Surety.PLAIN
    return "", Surety.PLAIN


def is_asked_about(row: Row) -> bool:
    """Whether the learner is asked once more whether it is so: a yes then takes it."""
    return interpret(row.words, expected(row)) == Answer(Kind.ACKNOWLEDGED, "acknowledged")


def is_wrong(row: Row, found: str) -> bool:
    """Whether something was taken that is not meant; a no for what only is not so is none."""
    return found not in ("", row.means) and (found != "no" or row.is_clear)


@cache
def _asking(kind: str, line: str, choices: tuple[str, ...]) -> Guide:
    """A guide that has just read the line aloud; each answer is given to a copy of it."""
    asked: dict[str, Any] = {"kind": kind} | ({"seconds": 5} if kind == "wait" else {})
    known = library().get((line, choices), {})
    asked |= {name: known[name] for name in ("good", "bad", "bare", "phrases") if name in known}
    if choices:
        asked |= {"kind": "choice", "choices": choices}
    step = Step.model_validate({"id": "step", "part": "Step", "say": line, "expect": asked, "critical": True})
    guide = Guide(Papers(alone(step), "", {}, ENGLISH))
    guide.receive(Opened(AT))
    guide.receive(Recorded(1, ""))
    return guide


def lived(row: Row) -> str:
    """What a real guide makes of the words, typed at a step that reads the line aloud."""
    guide = copy.copy(_asking(row.kind, row.line, row.choices))
    guide.receive(Typed(AT, row.words))
    guide.receive(Recorded(2, ""))
    progress = guide.progress
    if progress.state is State.WAITING:
        return "start"
    if progress.steps["step"].status is Status.CLOSED:
        return "done" if row.kind == "done" else progress.steps["step"].final
    return "no" if progress.steps["step"].found else ""
