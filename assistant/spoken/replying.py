"""What the assistant would reply to a meaning: the facts and one sentence."""

from dataclasses import dataclass
from decimal import Decimal

from assistant.spoken.aloud import speech
from assistant.spoken.english.sentences import Sentences
from assistant.spoken.expect import Expect, NumberExpected, TimeExpected
from assistant.spoken.meaning import TIME_OF_DAY, Ambiguous, Answer, Kind, Meaning, NoMatch, Reason
from assistant.spoken.saying import read_back, say_number
from assistant.spoken.times import read_back_time, say_time, show_time

sentences = Sentences()


@dataclass(frozen=True)
class Reply:
    """A meaning in plain text.

    Attributes:
        kind: the sort of answer; None where there is none.
        value: decimal text of a number, a time as "14:30", else the answer's words.
        unit: canonical unit of a number.
        readings: each number or time that the words could mean, where they could mean several, likewise.
        reject: why the words were not taken; None where they were, or where they have several readings.
        readback: what the assistant says.
    """

    kind: Kind | None
    value: str
    unit: str | None
    readings: tuple[str, ...]
    reject: str | None
    readback: str


def reply_to(meaning: Meaning, expect: Expect) -> Reply:
    """The reply to a meaning.

    Args:
        meaning: what the words were taken to mean.
        expect: the frame in which they were said; a wrong unit's reply names the right one.
    """
    match meaning:
        case Answer(kind=Kind.TIME, value=Decimal() as minute):
            return Reply(Kind.TIME, show_time(minute), None, (), None, read_back_time(minute))
        case Answer(kind=kind, value=Decimal() as number, unit=unit, corrected=corrected):
            said = read_back(number, unit or "", by_digits=corrected)
            return Reply(kind, f"{number:f}", unit, (), None, said)
        case Answer(kind=kind, value=value):
            return Reply(kind, str(value), None, (), None, f"{str(value)[:1].upper()}{str(value)[1:]}.")
        case Ambiguous(readings=readings, unit=unit) if unit == TIME_OF_DAY:
            which = sentences.which_number(tuple(map(say_time, readings)))
            return Reply(None, "", None, tuple(map(show_time, readings)), None, which)
        case Ambiguous(readings=readings):
            which = sentences.which_number(tuple(map(say_number, readings)))
            return Reply(None, "", None, tuple(f"{r:f}" for r in readings), None, which)
        case NoMatch(reason=reason):
            return Reply(None, "", None, (), reason.value, _sentence(reason, expect))


def _sentence(reason: Reason, expect: Expect) -> str:
    if reason is Reason.WRONG_UNIT and isinstance(expect, NumberExpected):
        return speech(f"{sentences.refusal(reason)} {sentences.unit_needed(expect.unit)}")
    if reason is Reason.WRONG_UNIT and isinstance(expect, TimeExpected):
        return f"{sentences.refusal(reason)} {sentences.refusal(Reason.NOT_A_TIME)}"
    return sentences.refusal(reason)
