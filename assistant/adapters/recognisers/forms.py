"""How numbers may be written for what a step expects."""

from enum import Enum

from assistant.spoken.expect import AnyExpected, Expect, NumberExpected


class Form(Enum):
    """125 or one hundred and twenty-five: figures allowed as well, or words only."""

    DIGITS = "digits"
    WORDS = "words"


def forms(expect: Expect) -> tuple[Form, ...]:
    """The forms worth a search: figures only where a number can come that need not be said digit by digit."""
    match expect:
        case NumberExpected(digits_only=False) | AnyExpected():
            return (Form.DIGITS, Form.WORDS)
        case _:
            return (Form.WORDS,)
