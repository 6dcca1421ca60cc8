"""Names that a reader would take for each other: none of them may stand for two people. Pure."""

import unicodedata


def look_alike(one: str, other: str) -> bool:
    """Two names look alike: the same but for case, spaces and points, or by letters that are drawn alike.

    The letters are those of Unicode Technical Standard 39, "Unicode Security Mechanisms" (confusables).
    """
    # Only here: the tables take a while to read, and only a new name needs them.
    from confusables import is_confusable

    first, second = _letters(one), _letters(other)
    return first == second or is_confusable(first, second) or is_confusable(second, first)


def _letters(name: str) -> str:
    return "".join(letter for letter in unicodedata.normalize("NFKC", name).casefold() if letter.isalnum())
