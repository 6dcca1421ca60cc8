"""Rules about the words of its own that a step may be answered with: that they are heard, and told apart."""

from collections.abc import Iterator
from itertools import product

from assistant.checklist.finding import Bench, Complaint, error, warning
from assistant.checklist.model import DoneAsked, QuestionAsked, Step, WaitAsked
from assistant.checklist.rules.answers import can_be_heard, heard_as, sound_alike
from assistant.spoken import ENGLISH, interpret
from assistant.spoken.expect import ConfirmExpected
from assistant.spoken.meaning import Answer, Kind
from assistant.spoken.statement import Asked, Want
from assistant.text import quoted

_OPPOSITE = {"good": "no", "bad": "yes"}
"""What a good word must not mean by itself, and a bad one."""


def own_words(step: Step, _number: int, bench: Bench) -> Iterator[Complaint]:
    """Good and bad words of a step mean nothing else, and no good one is easily taken for a bad one."""
    asked = step.expect
    if not isinstance(asked, DoneAsked | QuestionAsked | WaitAsked):
        return
    said: dict[str, list[tuple[str, str]]] = {}
    for field in ("good", "bad"):
        said[field] = [(way, heard_as(bench.sheet.checklist.aloud(way))) for way in getattr(asked, field)]
        for way, words in said[field]:
            yield from can_be_heard(way, words, bench, field)
            yield from _means_something_else(way, words, field)
    for (way, words), (other, other_words) in product(said["good"], said["bad"]):
        if words and words == other_words:
            yield error(
                "answers-clash",
                ("expect", "bad"),
                f"{quoted(way)} is among the good words and among the bad ones.",
                "Take it out of one of them.",
            )
        elif words and other_words and sound_alike(words, other_words):
            yield warning(
                "sounds-alike",
                ("expect", "bad"),
                f"{quoted(way)} is good and {quoted(other)} is bad, and they sound alike.",
                "Change one of the two, so that they differ from their first sound on.",
            )
    if not asked.bare and not all(ENGLISH.offer(_asked(step, asked))):
        yield error(
            "answers-clash",
            ("expect", "bare"),
            "a bare yes is not enough, and there are no other words to answer with.",
            'Add good = ["closed"] and bad = ["still open"], or whatever fits.',
        )


def _asked(step: Step, asked: DoneAsked | QuestionAsked | WaitAsked) -> Asked:
    wants = {"done": Want.DONE, "wait": Want.START, "question": Want.ANSWER}
    return Asked(step.say, wants[asked.kind], asked.good, asked.bad)


def _means_something_else(way: str, words: str, field: str) -> Iterator[Complaint]:
    """Whether it is a command, or says by itself the opposite."""
    meaning = interpret(words, ConfirmExpected()) if words else None
    if not isinstance(meaning, Answer):
        return
    opposite = meaning.kind is Kind.CONFIRM and meaning.value == _OPPOSITE[field]
    opposite = opposite or (meaning.kind is Kind.DONE and field == "bad")
    if meaning.kind is Kind.COMMAND or opposite:
        kind = "a command" if meaning.kind is Kind.COMMAND else f"understood as {meaning.value}"
        yield error(
            "answers-clash", ("expect", field), f"{quoted(way)} is {kind} at any step.", "Use other words for it."
        )
