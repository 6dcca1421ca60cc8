"""Text that came from outside, made safe to be told in a sentence."""

_LONGEST = 40


def told(text: object) -> str:
    """The text on one printable line, cut where it is long; marks stand for what cannot be shown."""
    clean = "".join(letter if letter.isprintable() else "\ufffd" for letter in str(text)[: _LONGEST + 1])
    return clean if len(clean) <= _LONGEST else clean[:_LONGEST] + "\u2026"
