"""Text from outside, made safe to show in sentences, on screens and as names of files.

A report, which keeps several lines and other scripts as they were typed, has rules of its own
(`assistant.report.plain`).
"""

ELLIPSIS = "\N{HORIZONTAL ELLIPSIS}"
"""Ends a text that was cut."""
SHORT = 60
"""Characters of a name or a value within a sentence."""
LONGEST_REASON = 200
"""Characters of what another library's error says."""


def shown(text: object, most: int | None = None) -> str:
    r"""The text on one line, with every character written out that could move a cursor, reorder the line or hide.

    These are control characters, line breaks, marks that turn the direction of writing, characters without width
    and bytes of a file's name that are not text; they are written as Python writes them: ``\x1b``, ``\u202e``.

    Args:
        text: anything that has a text: words, a path, an error.
        most: characters of it that are shown; a longer text is cut and ends in an ellipsis. None for all of it.
    """
    full = str(text)
    cut = full if most is None or len(full) <= most else full[: most - 1] + ELLIPSIS
    return "".join(letter if letter.isprintable() else _written_out(letter) for letter in cut)


def quoted(text: object, most: int = SHORT) -> str:
    """The text, as `shown`, in quotation marks."""
    return f'"{shown(text, most)}"'


def reason_shown(failure: object) -> str:
    """What an error says, on one line and without its full stop; the error's kind where it says nothing."""
    text = " ".join(str(failure).split()) or type(failure).__name__
    return shown(text, LONGEST_REASON).rstrip(".")


def _written_out(letter: str) -> str:
    stray_byte = "\udc80" <= letter <= "\udcff"  # as Python carries it in a file's name
    return f"\\x{ord(letter) - 0xDC00:02x}" if stray_byte else ascii(letter)[1:-1]
