"""What is said on the bench of confirmations: clear positives, and what only sounds like one, for real lines.

Three sources, none of them the phrase tables: wordings that stand below, put together with the verb of each line of the
library; what learners say (`tests/data/answers`, the held-out files for the report half alone); and for both the frame
that the guide itself hands to a recogniser.
"""

import csv
import hashlib
import re
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from assistant.attempts.papers import take_papers
from assistant.checklist.model import DoneAsked, QuestionAsked, Step, WaitAsked
from assistant.errors import AssistantError
from assistant.guide.asking import expectation
from assistant.guide.papers import Papers
from assistant.guide.progress import Progress, State
from assistant.spoken import ENGLISH
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected, Expect
from assistant.spoken.meaning import Answer, Kind, Meaning
from assistant.spoken.statement import Asked, Want
from tests.bench.sayings import Saying

POSITIVE = "positive"
NEAR_MISSES = ("negation", "question", "unfinished")
_CHECKLISTS = Path(__file__).parents[2] / "checklists"
_DATA = Path(__file__).parents[1] / "data"
_UNSEEN = {"report": _DATA / "choices_unseen.tsv", "tuning": _DATA / "choices_tuning.tsv"}
"""Choices of an author's own: those that the reports give, and those that limits and trainings are chosen by."""
_ANSWERS = Path(__file__).parents[1] / "data" / "answers"
_WANTS = {"done": Want.DONE, "question": Want.ANSWER, "wait": Want.START}
_MOST = 3
"""Wordings of each kind that are said to one line, of those that go with any line and of those with its verb."""
_ASKS = re.compile(
    r"^(is|are|am|do|does|did|have|has|can|could|should|shall|will|would|was|were|what|which|who|where|why|how|when)\b"
)
_NEGATES = re.compile(r"\b(no|not|never|none|nothing|without|cannot)\b|n't\b")

_TO_DO = {
    POSITIVE: "done|it's done|all done|finished|I did it|that's done|yes|I've done it|complete|I'm done",
    "negation": (
        "I didn't|I haven't|not complete|not done|it's not done|it isn't done|I didn't do it|I haven't done it|"
        "not finished|I have not|not yet done|that's not done|not all done|it's not complete|I'm not done"
    ),
    "question": (
        "is it done|did I do it|am I done|is that done|is it complete|are you done|is it finished|have I done it|"
        "did you do it|is this done|are we done|is that all"
    ),
    "unfinished": (
        "almost done|nearly done|I'm doing it|about done|half done|I think it's done|should be done|not sure it's done|"
        "I'll do it|soon done|almost finished|one more|I'm on it|when it's done|I could have done it"
    ),
}
_VERB_TO_DO = {
    POSITIVE: "{past}|it's {past}|I've {past} it",
    "negation": "not {past}|it's not {past}|it isn't {past}|I haven't {past} it|I didn't {base} it|I can't {base} it",
    "question": "is it {past}|have I {past} it|did I {base} it|should I {base} it|has it been {past}",
    "unfinished": (
        "almost {past}|I'm {ing} it|about to {base} it|trying to {base} it|nearly {past}|I'll {base} it|"
        "I think it's {past}|it's almost {past}"
    ),
}
_TO_ANSWER = {
    POSITIVE: "yes|yes it is|that's right|correct|that's correct|yes they do|yes it does|yes I did|yes I do",
    "negation": (
        "I didn't|it isn't|it's not|not correct|incorrect|that's not right|not complete|incomplete|not really|"
        "not quite|no it isn't|they don't|it doesn't|not all of them|none|that isn't correct|I don't"
    ),
    "question": (
        "is it|is that right|is it correct|is that correct|is it right|does it|do they|did I|are they|is it complete|"
        "am I right|was it"
    ),
    "unfinished": (
        "almost|I think so|maybe|I guess so|not sure|nearly|probably|I hope so|it should be|sort of|I believe so|"
        "could be right|it might be"
    ),
}
_TO_START = {
    POSITIVE: "done|start|starting now|I've started|started|yes",
    "negation": "not started|I haven't started|I didn't start|don't start|not yet started|it hasn't started",
    "question": "did it start|should I start|can I start|has it started|do I start now|is it started",
    "unfinished": "about to start|almost started|ready to start|I'm going to start|before I start|nearly ready",
}
_WORDINGS = {Want.DONE: _TO_DO, Want.ANSWER: _TO_ANSWER, Want.START: _TO_START}


def half_of(line: str) -> str:
    """ "tuning" or "report": by the line, so that none is in both."""
    return "tuning" if scatter(line) % 2 else "report"


def scatter(text: str) -> int:
    """A number for a text, the same in every run."""
    return int.from_bytes(hashlib.sha256(text.encode()).digest()[:4], "big")


def is_positive(meaning: Meaning | None) -> bool:
    """Whether the guide would close a step with it."""
    return isinstance(meaning, Answer) and (meaning.kind is Kind.DONE or (meaning.kind, meaning.value) == _YES)


_YES = (Kind.CONFIRM, "yes")


def sayings(half: str) -> Iterator[Saying]:
    """Everything that is said in a half; what the language would take wrongly if it were typed is no matter of hearing.

    `Saying.right` is "yes" for a positive, None for what must not be taken as one.
    """
    for saying in (*_of_the_library(half), *_of_learners(half)):
        if is_positive(ENGLISH.interpret(saying.words, saying.expect)) is (saying.kind == POSITIVE):
            yield saying


def frames() -> dict[str, ConfirmExpected]:
    """The lines of the library that are answered by a yes, a no or a done, each with what the guide then expects."""
    found: dict[str, ConfirmExpected] = {}
    for step, expect in _lines():
        if isinstance(step.expect, DoneAsked | QuestionAsked | WaitAsked) and isinstance(expect, ConfirmExpected):
            found.setdefault(step.say, expect)
    return found


def choices() -> list[tuple[str, ChoiceExpected]]:
    """Every choice that a line of the library names, with what the guide then expects."""
    found: dict[tuple[str, tuple[str, ...]], ChoiceExpected] = {}
    for _, expect in _lines():
        if isinstance(expect, ChoiceExpected):
            found.update({(choice, expect.choices): expect for choice in expect.choices})
    return [(choice, expect) for (choice, _), expect in found.items()]


def unseen_choices(half: str) -> list[tuple[str, ChoiceExpected]]:
    """Choices as an author of other sheets might give them: no line of the library does.

    Args:
        half: "report", or "tuning".
    """
    rows = [row.split("\t") for row in _UNSEEN[half].read_text().splitlines() if not row.startswith("#")]
    return [(choice, ChoiceExpected(tuple(row))) for row in rows for choice in row]


def _lines() -> Iterator[tuple[Step, Expect]]:
    for path in sorted(_CHECKLISTS.glob("*.toml")):
        try:
            papers = take_papers(str(path), None)
        except AssistantError:
            continue  # a list of names or limits
        asked = Papers(papers.checklist, papers.order.sentence(), papers.key, ENGLISH)
        for cursor, step in enumerate(papers.checklist.steps):
            yield step, expectation(asked, Progress({}, State.ASKING, cursor=cursor))


def _of_the_library(half: str) -> Iterator[Saying]:
    for line, expect in frames().items():
        if half_of(line) != half or expect.asked is None:
            continue
        for kind, generic in _WORDINGS[expect.asked.want].items():
            for wordings in (generic.split("|"), _with_its_verb(line, expect.asked, kind)):
                for words in sorted(wordings, key=partial(_order, line))[:_MOST]:
                    yield Saying(words, kind, expect, "yes" if kind == POSITIVE else None)


def _order(line: str, words: str) -> int:
    return scatter(f"{line}/{words}")


def _with_its_verb(line: str, asked: Asked, kind: str) -> list[str]:
    words = re.findall(r"[a-z]+", line.lower())
    verb = VERBS.get(next(iter(words), "")) if asked.want is Want.DONE else None
    if verb is None:
        return []
    done, _, particle = verb.past[0].partition(" ")  # what follows are its other words: "put up" for "hung"
    return [
        re.sub(rf"\b({done}) {particle} it$", rf"\1 it {particle}", wording) if particle else wording
        for wording in (
            wording.format(base=verb.base, past=verb.past[0], ing=verb.ing) for wording in _VERB_TO_DO[kind].split("|")
        )
    ]


def _of_learners(half: str) -> Iterator[Saying]:
    folder = _ANSWERS / "held_out" if half == "report" else _ANSWERS
    for name in ("natural", "negatives"):
        rows = [row for row in (folder / f"{name}.tsv").read_text().splitlines() if not row.startswith("#")]
        for row in csv.DictReader(rows, delimiter="\t", quoting=csv.QUOTE_NONE):
            if row["kind"] not in _WANTS:
                continue
            want = _WANTS[row["kind"]]
            expect = ConfirmExpected(done_is_yes=want is not Want.ANSWER, asked=Asked(row["line"], want))
            if name == "negatives":
                yield Saying(row["words"], _kind_of(row["words"]), expect, None)
            elif row["means"] in ("done", "start", "yes"):
                yield Saying(row["words"], POSITIVE, expect, "yes")


def _kind_of(words: str) -> str:
    words = words.lower()
    if words.endswith("?") or _ASKS.match(words):
        return "question"
    return "negation" if _NEGATES.search(words) else "unfinished"
