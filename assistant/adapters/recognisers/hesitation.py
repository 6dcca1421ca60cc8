"""A sound of thinking before a number: "uh, fifty". No sentence of a step begins so: the search goes on behind it."""

from collections.abc import Callable
from dataclasses import replace

from assistant.adapters.recognisers.evidence import Bounded
from assistant.spoken import Language

Tokens = list[int] | tuple[int, ...]

_LONGEST = 3
"""Tokens of one such sound, with the comma behind it."""


def leading(tokens: Tokens, text_of: Callable[[Tokens], str], language: Language) -> tuple[int, ...]:
    """The tokens of sounds of thinking with which a text begins; none where nothing else follows them.

    Args:
        tokens: the text as it is written.
        text_of: what tokens read as; a word begins with a space.
        language: of the text.
    """
    found = 0
    while found < len(tokens):
        ends = range(min(found + _LONGEST, len(tokens) - 1), found, -1)
        end = next((end for end in ends if _is_thinking(text_of(tokens[found:end]), language)), 0)
        if not end or not text_of(tokens[end : end + 1]).startswith(" "):
            break
        found = end
    return tuple(tokens[:found])


def _is_thinking(text: str, language: Language) -> bool:
    word = text.strip().lower().rstrip(",.")
    writing = language.tables.writing
    return writing.same_word.get(word, word) in writing.hesitations


def with_both(behind: Bounded, whole: Bounded, sound: float) -> Bounded:
    """What was found behind the sound and what was found without it, as likely beside each other as they are.

    What sounds like "uh five" may be "eight five": then both stand here, and neither leads.

    Args:
        behind: the sentences, were that sound sure.
        whole: those of the whole utterance.
        sound: logarithm of the probability of the sound.
    """
    found = {}
    for form, sentences in behind.items():
        beside = (replace(one, score=one.score - sound) for one in whole.get(form, ()))
        found[form] = tuple(sorted((*sentences, *beside), key=lambda one: -one.score))
    return found
