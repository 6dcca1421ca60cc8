"""What learners say at a step: understood as what it is, and never taken for a yes that it is not."""

import tomllib
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import pytest

from assistant.checklist.model import Checklist, Step
from assistant.guide import Guide, Opened, Papers, Recorded, State, Status, Typed
from assistant.spoken import ENGLISH, interpret
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected
from assistant.spoken.meaning import Answer, Kind
from assistant.spoken.statement import Asked, Sense, Want

ROOT = Path(__file__).parent.parent.parent
WANTS = {"done": Want.DONE, "wait": Want.START, "question": Want.ANSWER}
AT = datetime(2026, 1, 1, tzinfo=UTC)
TAKEN = ("done", "start", "yes", "no")


@dataclass(frozen=True)
class Row:
    """A row of the tables of `tests/data/answers`."""

    kind: str
    line: str
    words: str
    means: str


def rows(name: str) -> list[Row]:
    """The rows of a table that a yes, a no or a done may answer."""
    lines = (ROOT / "tests/data/answers" / f"{name}.tsv").read_text(encoding="utf-8").splitlines()[2:]
    return [row for row in (Row(*line.split("\t")) for line in lines) if row.kind in WANTS]


def meant(row: Row) -> str:
    """What the words are taken for."""
    expect = ConfirmExpected(done_is_yes=row.kind != "question", asked=Asked(row.line, WANTS[row.kind]))
    match interpret(row.words, expect):
        case Answer(kind=Kind.DONE) | Answer(kind=Kind.CONFIRM, value="yes"):
            return {"done": "done", "wait": "start", "question": "yes"}[row.kind]
        case Answer(kind=Kind.CONFIRM, value="no"):
            return "no"
    return ""


def lived(row: Row) -> str:
    """What a real guide makes of the words, typed at a step that reads the line aloud."""
    asked: dict[str, object] = {"kind": row.kind} | ({"seconds": 5} if row.kind == "wait" else {})
    step = Step.model_validate({"id": "step", "part": "Step", "say": row.line, "expect": asked, "critical": True})
    paper = Checklist(
        name="one-step",
        title="One step",
        version="1",
        purpose="To see what words mean.",
        cautions=("Training only.",),
        steps=(step,),
        digest="",
    )
    guide = Guide(Papers(paper, "", {}, ENGLISH))
    for number, event in enumerate((Opened(AT), Typed(AT, row.words)), 1):
        guide.receive(event)
        guide.receive(Recorded(number, ""))
    progress = guide.progress
    if progress.state is State.WAITING:
        return "start"
    if progress.steps["step"].status is Status.CLOSED:
        return "done" if row.kind == "done" else progress.steps["step"].final
    return "no" if progress.steps["step"].found else ""


CHOICES = (
    (("none", "some"), (("no bubbles", "none"), ("I don't see any air", "none"), ("there's a bubble", "some"))),
    (("none", "some"), (("it's free of air", "none"), ("there is some air in it", "some"), ("is there some", ""))),
    (("clear and dry", "cloudy", "leaking"), (("it's clear, no leaks", "clear and dry"), ("looks cloudy", "cloudy"))),
    (("clear and dry", "cloudy", "leaking"), (("the bag is leaking", "leaking"), ("not leaking", ""), ("clear", ""))),
    (("healthy", "red", "swollen", "painful"), (("it looks fine", "healthy"), ("the site is a bit red", "red"))),
    (("healthy", "red", "swollen", "painful"), (("red and swollen", ""), ("not sure it's red", ""), ("okay", ""))),
    (("all there", "something missing"), (("everything's there", "all there"), ("no signature", "something missing"))),
    (("running quietly", "alarming", "stopped"), (("it's running", "running quietly"), ("it's beeping", "alarming"))),
    (("from the library", "by hand"), (("I used the library", "from the library"), ("typed it in", "by hand"))),
    (("safe to give", "allergic"), (("no known allergies", "safe to give"), ("I think she's allergic", ""))),
)


@pytest.mark.parametrize(
    ("choices", "words", "choice"), [(choices, *said) for choices, sayings in CHOICES for said in sayings]
)
def test_a_choice_in_words_of_its_own(choices: tuple[str, ...], words: str, choice: str) -> None:
    """Taken only where they fit one alternative, and neither ask nor doubt."""
    found = interpret(words, ChoiceExpected(choices))
    assert (found.value if isinstance(found, Answer) and found.kind is Kind.CHOICE else "") == choice


def test_no_choice_is_taken_for_another() -> None:
    """However it is said."""
    lines = (ROOT / "tests/data/answers/choices.tsv").read_text(encoding="utf-8").splitlines()[2:]
    wrong = []
    for kind, _line, words, means in (line.split("\t") for line in lines):
        found = interpret(words, ChoiceExpected(tuple(kind.removeprefix("choice ").split(" | "))))
        if isinstance(found, Answer) and found.kind is Kind.CHOICE and found.value != means:
            wrong.append((words, found.value))
    assert len(lines) >= 100
    assert wrong == []


def library() -> list[Asked]:
    """Every line of the library that is answered by a yes, a no or a done."""
    found: dict[Asked, None] = {}
    for path in sorted((*ROOT.glob("checklists/*.toml"), *ROOT.glob("checklists/parts/*.toml"))):
        for step in tomllib.loads(path.read_text(encoding="utf-8")).get("steps", []):
            expect = step.get("expect", {"kind": "done"})
            if "say" in step and expect["kind"] in WANTS:
                good, bad = (tuple(expect.get(name, ())) for name in ("good", "bad"))
                found[Asked(step["say"], WANTS[expect["kind"]], good, bad)] = None
    return list(found)


LIBRARY = library()


@pytest.mark.parametrize("name", ["natural", "negatives", "asides", "troubles", "many_words"])
def test_nothing_is_taken_for_what_it_is_not(name: str) -> None:
    """A yes, a done, a start are taken only where they are meant; a no only where nothing good is."""
    wrong = [
        (row, taken)
        for row in rows(name)
        if (taken := meant(row)) and taken != row.means and (taken != "no" or row.means in ("yes", "done", "start"))
    ]
    assert wrong == []


@pytest.mark.parametrize("name", ["natural", "negatives"])
def test_the_guide_takes_what_is_meant(name: str) -> None:
    """A step is closed, or its wait begun, by exactly what is taken for its good answer."""
    assert [(row, lived(row)) for row in rows(name) if (lived(row) or "no") != (meant(row) or "no")] == []


UNDERSTOOD = {"natural": 0.95, "many_words": 0.3}
"""The share of each table that is understood, at least; the rest is asked again (measured; see its README)."""


@pytest.mark.parametrize("name", UNDERSTOOD)
def test_what_learners_naturally_say_is_understood(name: str) -> None:
    """Typed, of all kinds of line that a yes, a done or a start answers."""
    clear = [row for row in rows(name) if row.means in TAKEN]
    assert sum(meant(row) == row.means for row in clear) >= UNDERSTOOD[name] * len(clear)


@pytest.mark.parametrize("asked", LIBRARY, ids=lambda asked: asked.line[-50:])
def test_sayings_mean_what_they_say(asked: Asked) -> None:
    """Each sentence for recognisers is understood as its sense says."""
    statements = ENGLISH.tables.statements
    assert statements is not None
    sayings = statements.sayings(asked)
    expect = ConfirmExpected(done_is_yes=asked.want is not Want.ANSWER, asked=asked)
    for words, sense in sayings:
        found = interpret(words, expect)
        positive = isinstance(found, Answer) and (found.kind is Kind.DONE or found.value == "yes")
        assert positive == (sense is Sense.GOOD), words
    assert sum(sense is Sense.GOOD for _words, sense in sayings) >= 1
    assert sum(sense is not Sense.GOOD for _words, sense in sayings) >= 20


CHANGES = (
    "not",
    "almost",
    "nearly",
    "about to",
    "trying to",
    "half",
    "should",
    "would",
    "if",
    "wrong",
    "other",
    "never",
)


@pytest.mark.parametrize("asked", LIBRARY, ids=lambda asked: asked.line[-50:])
def test_one_word_more_and_a_good_sentence_is_good_no_longer(asked: Asked) -> None:
    """A word of denial, doubt, intention or of another thing, wherever it stands, takes the yes away."""
    statements = ENGLISH.tables.statements
    assert statements is not None
    expect = ConfirmExpected(done_is_yes=asked.want is not Want.ANSWER, asked=asked)
    for words, sense in statements.sayings(asked):
        if sense is not Sense.GOOD or words.startswith(("no ", "there is no", "i see no", "i do not see")):
            continue
        row = words.split()
        # Where the line itself says "half", one "half" more changes nothing.
        for change in (change for change in CHANGES if change not in asked.line):
            for at in range(len(row) + 1):
                changed = " ".join((*row[:at], change, *row[at:]))
                found = interpret(changed, expect)
                positive = isinstance(found, Answer) and (found.kind is Kind.DONE or found.value == "yes")
                assert not positive, changed
