"""What may be said: every word and every finite sentence, for recognisers and for suggestions.

Nothing here knows the right answer: the number words are those of the whole range.
"""

from functools import lru_cache

from assistant.errors import QuantityError
from assistant.spoken import names, quantities
from assistant.spoken.aloud import speech
from assistant.spoken.english.numbers import SOUND_ALIKES
from assistant.spoken.english.phrases import COMMANDS, DONE, NO, YES
from assistant.spoken.english.units import ABBREVIATED
from assistant.spoken.english.writing import SAID_AFTER, SHORT_FORMS
from assistant.spoken.expect import (
    AnyExpected,
    ChoiceExpected,
    ConfirmExpected,
    Expect,
    NameExpected,
    NumberExpected,
    TextExpected,
)
from assistant.spoken.grammar import words_of
from assistant.spoken.units import forms_of

WRITTEN_ONLY = SOUND_ALIKES | ABBREVIATED
"""Words of the grammar that are written by people or recognisers, and never said."""


@lru_cache(maxsize=64)
def phrases(expect: Expect) -> tuple[str, ...]:
    """Every finite sentence that may be said: commands, confirmations, names. Numbers are not among them."""
    said: list[str] = [phrase for known in COMMANDS.values() for phrase in known]
    if isinstance(expect, NameExpected) and expect.alone:
        said = []
    match expect:
        case ConfirmExpected() | AnyExpected():
            said += [*YES, *NO, *DONE]
        case NumberExpected():
            # They are no answers here, but they are said, and must be heard as what they are.
            said += [*YES, *NO, *DONE]
        case NameExpected(names=expected):
            known = names.spellings(expected) if expect.alone else names.forms(expected)
            said += [speech(name).lower().replace("'", "") for name in known]
        case ChoiceExpected():
            # Yes, no and done are no answers here, but they are said, and must be heard as what they are.
            said += [*YES, *NO, *DONE, *(speech(saying).lower() for saying, _choice in expect.sayings())]
        case TextExpected():
            pass
    return tuple(dict.fromkeys(form for phrase in said for form in _forms(phrase)))


@lru_cache(maxsize=64)
def vocabulary(expect: Expect) -> tuple[str, ...]:
    """Every single word that may be said: of the phrases, of numbers and of units, where they are expected."""
    words = [word for phrase in (*phrases(expect), *SAID_AFTER) for word in phrase.split()]
    if isinstance(expect, NumberExpected | AnyExpected):
        words += [word for word in words_of(quantities.SLOT) if is_said(word)]
    if isinstance(expect, NumberExpected):
        try:
            words += [word for form in forms_of(expect.unit) for word in form.split()]
        except QuantityError:
            words += expect.unit.split()
    return tuple(dict.fromkeys(words))


def is_said(word: str) -> bool:
    """Whether a word of the grammar is spoken, and not only written ("hrs", "o", "to" for two)."""
    return word.isalpha() and word not in WRITTEN_ONLY and (len(word) > 1 or word in ("a", "i"))


def _forms(phrase: str) -> tuple[str, ...]:
    """A phrase as written out and in its short form."""
    short = phrase
    for long_form, short_form in SHORT_FORMS.items():
        padded = f" {short} ".replace(f" {long_form} ", f" {short_form} ")
        short = padded.strip()
    return (phrase,) if short == phrase else (phrase, short)
