"""Long texts in breaths: no more at once than can be held in mind."""

import re

LONGEST_BREATH_WORDS = 32
"""Words that are spoken at once, where sentences can be parted (common practice, no source)."""
_SENTENCE_END = re.compile(r"(?<=[.?!:;])\s+(?=[A-Z0-9])")


def breaths(text: str) -> tuple[str, ...]:
    """A text in parts of whole sentences, each as long as a breath allows; none for an empty text."""
    parts: list[str] = []
    for sentence in _SENTENCE_END.split(text.strip()):
        joined = f"{parts[-1]} {sentence}" if parts else sentence
        if parts and len(joined.split()) <= LONGEST_BREATH_WORDS:
            parts[-1] = joined
        elif sentence:
            parts.append(sentence)
    return tuple(parts)
