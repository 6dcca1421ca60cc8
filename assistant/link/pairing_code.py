"""A pairing code: a one-time secret, and enough of the certificate's digest to know the desk before it is sent. Pure.

Ten bytes of the SHA-256 digest of the desk's certificate, then five bytes of the secret, in the letters of base 32
(RFC 4648, section 6): six groups of four. Whoever stands between station and desk has another certificate, and to make
one whose digest begins with the same 80 bits takes about 2^80 tries; so the secret is never sent to them.
"""

import base64
import binascii
from typing import NamedTuple

from assistant.errors import UsageError

DIGEST_BYTES = 10
SECRET_BYTES = 5
_GROUP = 4


class PairingCode(NamedTuple):
    """What a code holds, both in hexadecimal.

    Attributes:
        digest: beginning of the certificate's digest.
        secret: known to the desk alone until it is used.
    """

    digest: str
    secret: str

    @property
    def text(self) -> str:
        """As it is shown, and typed."""
        return in_groups(bytes.fromhex(self.digest) + bytes.fromhex(self.secret))


def read_code(text: str) -> PairingCode:
    """Read a code as somebody typed it: small letters, other gaps, and 0, 1 and 8 for O, L and B are all right.

    Raises:
        UsageError: it is no whole code.
    """
    content = _content(text)
    if len(content) != DIGEST_BYTES + SECRET_BYTES:
        raise UsageError(
            "That is not a whole pairing code: it has six groups of four letters or digits.",
            "Type it as the desk shows it.",
        )
    return PairingCode(content[:DIGEST_BYTES].hex(), content[DIGEST_BYTES:].hex())


def read_secret(text: str) -> str:
    """The secret alone, as it is typed in a browser: two groups of four; empty where it is not one.

    A browser has no way to look at the certificate's digest before it sends something.
    """
    content = _content(text)
    return content.hex() if len(content) == SECRET_BYTES else ""


def in_groups(content: bytes) -> str:
    """Bytes as letters and digits in groups of four."""
    letters = base64.b32encode(content).decode()
    return " ".join(letters[start : start + _GROUP] for start in range(0, len(letters), _GROUP))


def _content(text: str) -> bytes:
    letters = "".join(text.replace("-", " ").split())[:100].upper().translate(_MISREAD)
    try:
        return base64.b32decode(letters)
    except (binascii.Error, ValueError):
        return b""


_MISREAD = str.maketrans("018", "OLB")
"""Digits that base 32 does not use, and the letters that they are taken for."""
