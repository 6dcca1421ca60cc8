"""Names of fluids and drugs in words: exact, however their numbers are said or written."""

from functools import lru_cache

from assistant.spoken.english.names import DRUGS, FLUIDS, LEFT_OUT
from assistant.spoken.english.numbers import NUMBER, Said
from assistant.spoken.grammar import Parse
from assistant.spoken.tokens import tokens_of

_FORMS = tuple(FLUIDS) + tuple(DRUGS)


def key_of(tokens: tuple[str, ...]) -> str:
    """A name in the one form in which names are compared: numbers in figures, "%" as "percent"."""
    parse = Parse(tokens)
    words: list[str] = []
    at = 0
    while at < len(tokens):
        spans: dict[int, set[str]] = {}
        for end, said in parse.at(NUMBER, at):
            if isinstance(said, Said):
                spans.setdefault(end, set()).add(f"{said.value:f}")
        # "a", "to", "half" and their like are words in a name, not numbers.
        longest = max(spans, default=at)
        if longest > at and len(spans[longest]) == 1 and tokens[at] not in ("half", "a", "quarter"):
            words.append(spans[longest].pop())
            at = longest
            continue
        word = tokens[at]
        if word == "per" and tokens[at + 1 : at + 2] == ("cent",):
            word, at = "percent", at + 1
        elif word == "%":
            word = "percent"
        if word not in LEFT_OUT:
            words.append(word)
        at += 1
    return " ".join(words)


@lru_cache(maxsize=512)
def _key(name: str) -> str:
    return key_of(tokens_of(name))


@lru_cache(maxsize=1)
def _known() -> dict[str, str]:
    """Canonical name by the key of each form."""
    return {_key(form): forms[0] for forms in _FORMS for form in forms}


def find(tokens: tuple[str, ...], expected: tuple[str, ...]) -> str | None:
    """The name that these words are: as the order spells it where it is expected, else as the table does."""
    key = key_of(tokens)
    if not key:
        return None
    canonical = _known().get(key)
    for name in expected:
        if _key(name) == key or (canonical is not None and _known().get(_key(name)) == canonical):
            return name
    return canonical


def spellings(expected: tuple[str, ...]) -> tuple[str, ...]:
    """Every way in which one of these names may be said."""
    wanted = {_known().get(_key(name), name) for name in expected}
    said = {form for forms in _FORMS if forms[0] in wanted for form in forms}
    return tuple(sorted({*expected, *said}, key=str.casefold))


def forms(expected: tuple[str, ...]) -> tuple[str, ...]:
    """Every name that may be heard, written: those expected and the whole table, in an order that tells nothing."""
    return tuple(sorted({*expected, *(form for forms in _FORMS for form in forms)}, key=str.casefold))
