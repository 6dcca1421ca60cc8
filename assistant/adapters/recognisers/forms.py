"""How numbers may be written for what a step expects."""

from enum import Enum

from assistant.spoken.expect import AnyExpected, Expect, NumberExpected


class Form(Enum):
    """125 or one hundred and twenty-five: figures allowed as well, or words only."""

    DIGITS = "digits"
    WORDS = "words"


def forms(expect: Expect, *, figures: bool = True) -> tuple[Form, ...]:
    """The forms worth a search: figures only where a number can come, and the model writes them.

    Args:
        expect: what the step expects.
        figures: whether the model writes numbers in figures, too.
    """
    is_number = isinstance(expect, NumberExpected | AnyExpected)
    return (Form.DIGITS, Form.WORDS) if figures and is_number else (Form.WORDS,)


def has_a_say(form: Form, expect: Expect) -> bool:
    """Whether a form tells what was said: figures do not show that a number was said digit by digit."""
    return form is Form.WORDS or not (isinstance(expect, NumberExpected) and expect.digits_only)
