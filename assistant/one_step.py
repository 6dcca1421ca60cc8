"""One step, answered once: what an attempt would make of some words, by a real guide through one step."""

import copy
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from decimal import Decimal

from assistant.checklist.model import Asked as Kinds
from assistant.checklist.model import (
    Checklist,
    ChoiceAsked,
    DoneAsked,
    NoteAsked,
    NumberAsked,
    QuestionAsked,
    Step,
    WaitAsked,
)
from assistant.guide import Append, Guide, Heard, NotUnderstood, Opened, Papers, Recorded, Say, Tone, Typed
from assistant.spoken.expect import (
    AnyExpected,
    ChoiceExpected,
    ConfirmExpected,
    Expect,
    NumberExpected,
    TextExpected,
)
from assistant.spoken.language import Language
from assistant.spoken.meaning import Ambiguous, Answer, Kind, Meaning, NoMatch, Reason
from assistant.spoken.statement import Asked, Want

NOW = datetime(2000, 1, 1, tzinfo=UTC)
"""A time as good as any: nothing here waits."""
ANSWERING = (Tone.READ_BACK, Tone.UNCLEAR)
"""What the guide says of the words themselves; the rest is about the way on."""


@dataclass(frozen=True)
class Reply:
    """What becomes of some words.

    Attributes:
        answer: what was taken, None where nothing was: the guide asks again, or asks for the digits.
        readings: numbers between which the guide asks.
        reject: why nothing was taken; None where something was, or where digits are asked for.
        readback: what the guide says to it, as it is spoken.
    """

    answer: Answer | None
    readings: tuple[Decimal, ...]
    reject: Reason | None
    readback: str


def alone(step: Step) -> Checklist:
    """A checklist of this step and nothing else."""
    return Checklist(
        name="one-step",
        title="One step",
        version="1",
        purpose="To see what words mean.",
        cautions=("Training only.",),
        steps=(step,),
        digest="",
    )


class OneStep:
    """A practice attempt at one step that expects this; each reply is given as if it were the first.

    Args:
        expect: a confirmation, a line with what it asks for, a choice, a number, free words, or anything.
        language: all that is said and understood.
    """

    def __init__(self, expect: Expect, language: Language) -> None:
        self._expect = expect
        self._language = language
        self._guides: dict[Expect, Guide] = {}

    def listens_for(self) -> Expect:
        """What the step gives a recogniser: near-misses of its answers are among it."""
        return self._expect if isinstance(self._expect, AnyExpected) else self._guide(self._expect).expectation()

    def reply(self, event: Heard | NotUnderstood | Typed) -> Reply:
        """What the guide replies."""
        expect = self._settled(event)
        if isinstance(expect, AnyExpected):
            # No step asks for everything at once: nothing but its refusal can be told of such words.
            found = self._language.interpret(_words(event), expect, heard=isinstance(event, Heard))
            reason = found.reason if isinstance(found, NoMatch) else Reason.NOT_AN_ANSWER_HERE
            return Reply(None, (), reason, self._language.sentences.refusal(reason))
        guide = copy.copy(self._guide(expect))
        (entry,) = guide.receive(event)
        said = [effect for effect in guide.receive(Recorded(2, "")) if isinstance(effect, Say)]
        if not isinstance(entry, Append):
            raise TypeError("the guide began with something else than its entry")
        meaning = self._language.interpret(
            _words(event), self._guide(expect).expectation(), heard=isinstance(event, Heard)
        )
        aloud = " ".join(say.speech for say in said if say.tone in ANSWERING and say.speech)
        if entry.body.get("input") in ("heard with doubt", "understood with doubt"):
            # Heard or read with doubt, it is asked about once more.
            return Reply(None, (), Reason.UNSURE, aloud)
        match meaning:
            case NoMatch(reason=reason):
                return Reply(None, (), reason, aloud)
            case Ambiguous(readings=readings):
                return Reply(None, readings, None, aloud)
            case Answer(kind=Kind.ACKNOWLEDGED):
                return Reply(None, (), Reason.NOT_AN_ANSWER_HERE, aloud)
            case Answer(value=Decimal() as value) if entry.body.get("verdict") == "digits asked":
                heard = isinstance(event, Heard) and not event.doubtful
                near = self._language.possible(value) if heard and self._language.wants_digits(value, "") else (value,)
                others = [other for other in _numbers(event, expect, self._language) if other not in near]
                return Reply(None, (*near, *others), None, aloud)
            case Answer(value=value):
                return Reply(meaning, (), None, aloud or f"{str(value)[:1].upper()}{str(value)[1:]}.")

    def _settled(self, event: Heard | NotUnderstood | Typed) -> Expect:
        """The expectation of the step: where anything may come, the one that the words fit."""
        if not isinstance(self._expect, AnyExpected):
            return self._expect
        meaning: Meaning = self._language.interpret(_words(event), self._expect, heard=isinstance(event, Heard))
        match meaning:
            case Answer(kind=Kind.NUMBER, unit=str(unit)) | Ambiguous(unit=unit):
                return NumberExpected(unit)
            case Answer():
                return ConfirmExpected()
        return self._expect

    def _guide(self, expect: Expect) -> Guide:
        """A guide that asks for this."""
        if expect not in self._guides:
            line = expect.asked.line if isinstance(expect, ConfirmExpected) and expect.asked else "Step."
            step = Step(id="step", part="Step", say=line, expect=_asked(expect))
            guide = Guide(Papers(alone(step), "", {}, self._language))
            guide.receive(Opened(NOW))
            guide.receive(Recorded(1, ""))
            if isinstance(expect, NumberExpected) and expect.digits_only:
                # As after a no to a read-back.
                guide.progress = replace(guide.progress, digits_only=True)
            self._guides[expect] = guide
        return self._guides[expect]


def _asked(expect: Expect) -> Kinds:
    match expect:
        case ConfirmExpected(asked=Asked(want=Want.ANSWER)):
            return QuestionAsked(kind="question")
        case ConfirmExpected(asked=Asked(want=Want.START)):
            return WaitAsked(kind="wait", seconds=1)
        case ConfirmExpected():
            return DoneAsked(kind="done")
        case ChoiceExpected(choices=choices):
            return ChoiceAsked(kind="choice", choices=choices)
        case NumberExpected(unit=unit):
            return NumberAsked(kind="number", unit=unit, lowest=Decimal(0))
        case TextExpected():
            return NoteAsked(kind="note")
        case _:
            raise TypeError(f"no step of one's own asks for {type(expect).__name__}")


def _words(event: Heard | NotUnderstood | Typed) -> str:
    return "" if isinstance(event, NotUnderstood) else event.words


def _numbers(event: Heard | NotUnderstood | Typed, expect: Expect, language: Language) -> list[Decimal]:
    """The numbers among a recogniser's other wordings."""
    if not isinstance(event, Heard):
        return []
    others = [language.interpret(words, expect, heard=True) for words in event.alternatives]
    return [other.value for other in others if isinstance(other, Answer) and isinstance(other.value, Decimal)]
