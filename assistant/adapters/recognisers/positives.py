"""What must not be taken for a yes: a confirmation closes a step at once, so it is guarded as numbers are."""

from functools import cache, lru_cache

from assistant.spoken import Language
from assistant.spoken.expect import AnyExpected, ConfirmExpected, Expect
from assistant.spoken.meaning import Answer, Kind, Meaning, NoMatch, Reason
from assistant.spoken.statement import Asked, Want

LIKE = 1
"""Letters by which a positive may differ from what is none, and no ear tells them apart: "I did it" and "I didn't"."""
_MEANS_NO_YES = frozenset({Reason.QUESTION, Reason.UNSURE})


def is_positive(meaning: Meaning, expect: Expect) -> bool:
    """Whether it says that something is so, or was done, where that is asked."""
    if not (isinstance(expect, ConfirmExpected | AnyExpected) and isinstance(meaning, Answer)):
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
    return denies(words, free, language)


@lru_cache(maxsize=1_000)
def alike(words: str, expect: Expect, language: Language) -> tuple[str, ...]:
    """What is no positive and is spelt nearly alike, or differs by a "n't".

    Of such a one a model may be certain and still be wrong, so that no limit on its certainty helps; only how much
    likelier it is than each of these tells.
    """
    import jellyfish  # a start stays quick without it

    letters = _letters(words)
    found = (
        said
        for other in language.phrases(expect)
        for said in (other, *_contracted(other, language))
        if (jellyfish.levenshtein_distance(letters, _letters(said)) <= LIKE or words == said.replace("n't", ""))
        and not is_positive(language.interpret(other, expect, heard=True), expect)
    )
    return tuple(dict.fromkeys(found))


@lru_cache(maxsize=1_000)
def is_turned_round(words: str, expect: Expect, language: Language) -> bool:
    """Whether the same words ask when their first two change places: "is it done" and "it's done"."""
    own = _in_order(words, language)
    asked = " ".join((*own[1::-1], *own[2:]))
    frame = ConfirmExpected(asked=Asked("", Want.DONE)) if isinstance(expect, AnyExpected) else expect
    meaning = language.interpret(asked, frame, heard=True)
    return len(own) > 1 and isinstance(meaning, NoMatch) and meaning.reason is Reason.QUESTION


def rivals(words: str, expect: Expect, language: Language) -> tuple[str, ...]:
    """What is said in nearly the same words for the opposite: asked ("is it spiked"), or denied ("it isn't spiked").

    Args:
        words: a positive, "it's spiked".
        expect: what the step expects.
        language: in which it is.
    """
    return tuple(dict.fromkeys((*_turned(words, language), *alike(words, expect, language))))


def _turned(words: str, language: Language) -> tuple[str, ...]:
    own = _in_order(words, language)
    others = [" ".join((*own[1::-1], *own[2:])), *(" ".join((*own[:2], no, *own[2:])) for no in _noes(language))]
    return tuple(form for other in others for form in (other, *_contracted(other, language))) if len(own) > 1 else ()


def is_written_so(words: str, free: str, language: Language) -> bool:
    """Whether the model, left free, writes these very words: "it finished" is not "it's finished"."""
    return _in_order(words, language) == _in_order(free, language)


def begins_otherwise(words: str, free: str, language: Language) -> bool:
    """Whether the model, left free, begins several words with another one: "in its finish" for "it's finished".

    So a question looks that was turned into a statement: "is it finished?".
    """
    said, written = (_in_order(text, language) for text in (words, free))
    return len(said) > 1 and said[:1] != written[:1]


def denies(words: str, free: str, language: Language) -> bool:
    """Whether what the model writes freely has a word of a no that the words have not: "not clear" for "clear"."""
    return bool(set(_in_order(free, language)) & _denials(language) - set(_in_order(words, language)))


def _contracted(text: str, language: Language) -> tuple[str, ...]:
    """In each of its short forms: "that is not it" as "that's not it" and as "that isn't it"."""
    forms = (
        f" {text} ".replace(f" {full} ", f" {short} ").strip()
        for short, full in language.tables.writing.contractions.items()
        if "'" in short
    )
    return tuple(dict.fromkeys(form for form in forms if form != text))


@cache
def _noes(language: Language) -> tuple[str, ...]:
    """The word that a "n't" stands for."""
    contractions = language.tables.writing.contractions
    return tuple(dict.fromkeys(full.split()[-1] for short, full in contractions.items() if short.endswith("n't")))


def _letters(words: str) -> str:
    return "".join(sign for sign in words.lower() if sign.isalpha())


@cache
def _denials(language: Language) -> frozenset[str]:
    """Words of a no that are in no yes."""
    table = language.tables.phrases
    said = {word for phrase in (*table.yes, *table.done, *table.acknowledged) for word in phrase.split()}
    return frozenset(word for phrase in table.no for word in phrase.split() if word not in said)


def _in_order(text: str, language: Language) -> tuple[str, ...]:
    """The words of a text, short forms written out."""
    contractions = language.tables.writing.contractions
    bare = "".join(sign if sign.isalpha() or sign == "'" else " " for sign in text.lower().replace("\u2019", "'"))
    return tuple(part for word in bare.split() for part in contractions.get(word, word).split())
