"""What words mean: an answer, two possible answers, or none with a reason."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum


class Kind(StrEnum):
    """What sort of answer was given."""

    CONFIRM = "confirm"  # value "yes" or "no"
    DONE = "done"  # value "done"
    ACKNOWLEDGED = "acknowledged"  # value "acknowledged": heard, and nothing said about the step
    NUMBER = "number"  # value Decimal, unit set
    COMMAND = "command"  # value: one of Command
    NAME = "name"  # value: one of the expected names, as the order spells it
    CHOICE = "choice"  # value: one of the expected choices, as it is written
    TEXT = "text"  # value: the words
    TROUBLE = "trouble"  # value: one of Trouble


class Trouble(StrEnum):
    """What goes wrong at a bench or a bedside, as a learner reports it."""

    AIR = "air in the line"
    LEAK = "a leak"
    DROPPED = "something was dropped"
    CONTAMINATED = "something sterile was touched"
    ALARM = "an alarm"
    PAIN = "the patient is unwell"
    WRONG_ITEM = "the wrong item"
    MISTAKE = "a mistake"
    DAMAGED = "something is damaged"
    OTHER = "something else is wrong"


class Command(StrEnum):
    """What a learner can always say or type."""

    AGAIN = "again"
    MORE = "more"
    BACK = "back"
    WHERE = "where am I"
    ORDER = "what is my order"
    SLOWER = "slower"
    FASTER = "faster"
    LOUDER = "louder"
    SOFTER = "softer"
    HIGHER = "higher"
    DEEPER = "deeper"
    SPELL = "spell it"
    PAUSE = "pause"
    GO_ON = "go on"
    CORRECT = "correct that"
    HELP = "I need help"
    CALL = "call my instructor"
    NOT_APPLICABLE = "not applicable"
    INSTRUCTOR = "instructor here"
    STOP = "stop"
    CLOSE = "close the attempt"
    HOLD_ON = "hold on"
    OPTIONS = "what can I say"


class InstructorWord(StrEnum):
    """What only an instructor says: what was seen, a cue that was given, a held step set aside with a reason."""

    SEEN = "seen"
    ALL_SEEN = "all seen"
    NOT_SEEN = "not seen"
    CUE = "cue given"
    OVERRULE = "overrule"


class Reason(StrEnum):
    """Why words were not taken; each has a spoken sentence."""

    EMPTY = "nothing was said"
    UNKNOWN_WORDS = "unknown words"
    NOT_A_NUMBER = "not a number"
    BADLY_WRITTEN = "written in a way that is easily misread"
    WRONG_UNIT = "wrong unit"
    TWO_NUMBERS = "two numbers"
    OUT_OF_RANGE = "out of range"
    DIGITS_WANTED = "digits wanted"
    TOO_LONG = "too long"
    NOT_AN_ANSWER_HERE = "not an answer here"
    QUESTION = "a question"
    UNSURE = "unfinished or unsure"


class Surety(StrEnum):
    """How it was found out what words mean."""

    PLAIN = "plain"  # by rules that know every word
    SURE = "sure"  # weighed, and hardly anything else
    LIKELY = "likely"  # weighed, and worth a question; or taken by the rules, and weighed as nothing


@dataclass(frozen=True)
class Answer:
    """Words that mean exactly one thing.

    Attributes:
        kind: the sort of answer.
        value: Decimal for a number, text otherwise.
        unit: canonical unit for a number (the expected one where none was said), else None.
        digit_by_digit: the number was said digit by digit.
        unit_said: a unit was said.
        corrected: the speaker corrected or interrupted himself inside the number ("one fifty, no, one
            fifteen": the last one counts), or a word only sounds like a digit ("one to five"): digits are
            wanted before it is kept. So it is where the number is one of several amounts that were said.
        instead: with a no to a read-back, the number that was said in the same breath ("no, a thousand").
        surety: how it was found out; what is not plain may have to be asked about.
    """

    kind: Kind
    value: Decimal | str
    unit: str | None = None
    digit_by_digit: bool = False
    unit_said: bool = False
    corrected: bool = False
    instead: "Answer | None" = None
    surety: Surety = Surety.PLAIN


@dataclass(frozen=True)
class Ambiguous:
    """Words that could mean more than one number; the guide asks, it never guesses."""

    readings: tuple[Decimal, ...]
    unit: str


@dataclass(frozen=True)
class NoMatch:
    """Words that were not taken, with the reason."""

    reason: Reason


Meaning = Answer | Ambiguous | NoMatch
