"""Why a number that leads may still be another one: what models were seen to do to numbers."""

import re
from decimal import Decimal
from functools import cache

from assistant.spoken import Language
from assistant.spoken.meaning import Answer, Meaning

_MOST_MORE_FIGURES = 2


def is_carried(text: str, language: Language) -> bool:
    """Whether other words stand before the number: "it's five zero" is how a model writes "nine five zero" too."""
    return text.startswith(_before_numbers(language))


@cache
def _before_numbers(language: Language) -> tuple[str, ...]:
    """The words that may stand there, with the space behind them."""
    carriers, contractions = language.tables.phrases.carriers, language.tables.writing.contractions
    return tuple(f"{words} " for words in (*carriers, *(s for s in contractions if contractions[s] in carriers)))


def is_contradicted(meaning: Meaning, free: str) -> bool:
    """Whether the model, left free, writes figures that the number has not: it heard more, or something else.

    Zeros do not count, for it loses count of them ("5500" for "five five zero"); nor does a text that goes round in a
    circle.
    """
    if not isinstance(meaning, Answer) or not isinstance(meaning.value, Decimal):
        return False
    written, meant = (re.sub(r"[^1-9]", "", text) for text in (free, f"{meaning.value:f}"))
    if len(written) > len(meant) + _MOST_MORE_FIGURES:
        return False
    left = iter(meant)
    return not all(figure in left for figure in written)


def is_part(meaning: Meaning, other: Meaning) -> bool:
    """Whether a number is what remains of the other one where digits at its beginning or its end are lost."""
    numbers = [one.value for one in (meaning, other) if isinstance(one, Answer) and isinstance(one.value, Decimal)]
    if len(numbers) < len((meaning, other)):
        return False
    rest, whole = (f"{number:f}".replace(".", "") for number in numbers)
    return len(rest) < len(whole) and (whole.startswith(rest) or whole.endswith(rest))


def lacks_words(text: str, bursts: int) -> bool:
    """Whether there were more stretches of voice than words are written: some of them were lost.

    Args:
        text: what is written, numbers in words.
        bursts: `Evidence.bursts`.
    """
    return bursts > len(text.replace("-", " ").split())
