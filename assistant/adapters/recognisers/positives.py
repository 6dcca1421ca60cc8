"""What must not be taken for a yes: a confirmation closes a step at once, so it is guarded as numbers are."""

from functools import cache

from assistant.spoken import Language
from assistant.spoken.expect import ConfirmExpected, Expect
from assistant.spoken.meaning import Answer, Kind, Meaning, NoMatch, Reason

_MEANS_NO_YES = frozenset({Reason.QUESTION, Reason.UNSURE})


def is_positive(meaning: Meaning, expect: Expect) -> bool:
    """Whether it says that something is so, or was done, where that is asked."""
    if not (isinstance(expect, ConfirmExpected) and isinstance(meaning, Answer)):
        return False
    return meaning.kind is Kind.DONE or (meaning.kind is Kind.CONFIRM and meaning.value == "yes")


def is_asked(text: str, meaning: Meaning, expect: Expect) -> bool:
    """Whether words that would be a positive were written with a question mark."""
    return text.rstrip().endswith("?") and is_positive(meaning, expect)


def is_denied(words: str, free: str, expect: Expect, language: Language) -> bool:
    """Whether the model, left free, writes something that is no positive, or denies what the positive says.

    Args:
        words: the positive, without the signs of a sentence.
        free: what the model writes freely.
        expect: what the step expects.
        language: in which they are.
    """
    meaning = language.interpret(free, expect, heard=True)
    if is_positive(meaning, expect):
        return False
    if isinstance(meaning, Answer) or (isinstance(meaning, NoMatch) and meaning.reason in _MEANS_NO_YES):
        return True
    return bool((_written_out(free, language) & _denials(language)) - _written_out(words, language))


@cache
def _denials(language: Language) -> frozenset[str]:
    """Words of a no that are in no yes."""
    table = language.tables.phrases
    said = {word for phrase in (*table.yes, *table.done, *table.acknowledged) for word in phrase.split()}
    return frozenset(word for phrase in table.no for word in phrase.split() if word not in said)


def _written_out(text: str, language: Language) -> set[str]:
    contractions = language.tables.writing.contractions
    bare = "".join(sign if sign.isalpha() or sign == "'" else " " for sign in text.lower().replace("\u2019", "'"))
    return {part for word in bare.split() for part in contractions.get(word, word).split()}
