"""The instructor's code: chosen at the start, pinned as a slow hash, asked for again at a resumption.

It keeps a learner from speaking as the instructor by the way. Whoever starts attempts on a machine can choose
a code; what stands for a competency is the signed sign-off.
"""

import hashlib
import hmac
import os
from collections.abc import Mapping

from assistant.errors import UsageError
from assistant.guide.guide import WITH_CODE

CODE_VARIABLE = "CHECKOFF_INSTRUCTOR_CODE"
"""Environment variable with the code: other users of the machine do not see it."""
SHORTEST, LONGEST = 4, 64
_PIN = "instructor_code"
_SALT_BYTES = 16


def code_pins(code: str) -> dict[str, str]:
    """What the first entry pins: that there is a code, and its salted hash; nothing without a code.

    Raises:
        UsageError: the code is too short, too long, or cannot be typed in one word.
    """
    if not code:
        return {}
    if not SHORTEST <= len(code) <= LONGEST or not code.isalnum():
        raise UsageError(
            f"An instructor's code has {SHORTEST} to {LONGEST} letters and digits.", "Choose another code."
        )
    salt = os.urandom(_SALT_BYTES)
    return {"instructor": WITH_CODE, _PIN: f"{salt.hex()}:{_hash(code, salt)}"}


def code_of(opening: Mapping[str, object], code: str) -> str:
    """The code for an attempt that is taken up: as given; "" where the attempt began without one.

    Raises:
        UsageError: the attempt began with another code.
    """
    pinned = str(opening.get(_PIN, ""))
    if not pinned or not code:
        return ""
    salt, _, expected = pinned.partition(":")
    if not hmac.compare_digest(_hash(code, bytes.fromhex(salt)), expected):
        raise UsageError("The attempt began with another instructor's code.", "Give that code, or none.")
    return code


def _hash(code: str, salt: bytes) -> str:
    return hashlib.scrypt(code.encode(), salt=salt, n=2**14, r=8, p=1).hex()
