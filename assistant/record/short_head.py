"""A head short enough to write on paper and to compare by ear. Pure.

Eight groups of three digits. The first 22 digits are the digest's value modulo 10^22 (about 73 bits: a second record
with the same digits takes some 10^22 tries); the last two are check digits by ISO/IEC 7064, MOD 97-10, the system of
bank account numbers, so that any one wrong digit and any two neighbours that changed places are noticed.
"""

DIGITS = 22
"""Digits that come from the digest."""

GROUP = 3
"""Digits of a group."""

_MODULUS = 97


class MisreadError(ValueError):
    """Digits that are no short head: one was misread, left out or added."""


def short_head(digest: str) -> str:
    """The short head of a digest: ``123 456 789 012 345 678 901 234``.

    Args:
        digest: SHA-256, hexadecimal.
    """
    digits = f"{int(digest, 16) % 10**DIGITS:0{DIGITS}d}"
    return _grouped(digits + check_digits(digits))


def check_digits(digits: str) -> str:
    """The two check digits by ISO/IEC 7064, MOD 97-10."""
    return f"{_MODULUS + 1 - int(digits) * 100 % _MODULUS:02d}"


def read_short_head(text: str) -> str | None:
    """A short head as `short_head` writes it, however its digits were grouped; None where it is none at all.

    Raises:
        MisreadError: it is one, with a mistake in it.
    """
    digits = "".join(text.replace("-", " ").split())
    if not (digits.isascii() and digits.isdigit()) or len(digits) > 2 * DIGITS:
        return None
    if len(digits) != DIGITS + 2:
        raise MisreadError(f"it has {len(digits)} digits, and a short head has {DIGITS + 2}")
    if int(digits) % _MODULUS != 1:
        raise MisreadError("its check digits do not fit the others")
    return _grouped(digits)


def _grouped(digits: str) -> str:
    return " ".join(digits[start : start + GROUP] for start in range(0, len(digits), GROUP))
