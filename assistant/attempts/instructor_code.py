"""The instructor's code: chosen at the start, kept beside the book of heads as a slow hash, asked for at a resumption.

It keeps a learner from speaking as the instructor by the way. Whoever starts attempts on a machine can choose
a code; what stands for a competency is the signed sign-off. A hash of so short a code can be tried out in minutes, so
none goes into the record, which travels; earlier records hold one, and it is still taken.
"""

import hashlib
import hmac
import os
import time
from collections.abc import Mapping, Sequence
from contextlib import suppress
from pathlib import Path

from assistant.errors import RecordError, UsageError
from assistant.guide.guide import WITH_CODE
from assistant.record.decisions import CAME, REFUSED
from assistant.record.disk import OWNER_ONLY, make_folder, reason_of, write_new
from assistant.text import shown

CODE_VARIABLE = "CHECKOFF_INSTRUCTOR_CODE"
"""Environment variable with the code: other users of the machine do not see it."""
SHORTEST, LONGEST = 4, 64
FOLDER = "codes"
"""Folder of the hashes beside the book of heads."""
KEPT_DAYS = 90
"""Days for which a hash is kept: nobody resumes an attempt after a term."""
_PIN = "instructor_code"
_SALT_BYTES = 16
_DAY_S = 86_400


def code_pins(code: str) -> dict[str, str]:
    """What the first entry pins: that there is a code; nothing without one.

    Raises:
        UsageError: the code is too short, too long, or cannot be typed in one word.
    """
    if not code:
        return {}
    if not SHORTEST <= len(code) <= LONGEST or not code.isalnum():
        raise UsageError(
            f"An instructor's code has {SHORTEST} to {LONGEST} letters and digits.", "Choose another code."
        )
    return {"instructor": WITH_CODE}


def keep_code(folder: Path, attempt: str, code: str) -> None:
    """Keep the hash of an attempt's code on this machine, and throw away those that are past their time.

    Args:
        folder: that of the book of heads.
        attempt: digest of the record's first entry.
        code: as it was chosen.

    Raises:
        RecordError: it cannot be written.
    """
    place = folder / FOLDER
    salt = os.urandom(_SALT_BYTES)
    try:
        make_folder(place)
        for path in place.iterdir():
            if time.time() - path.stat().st_mtime > KEPT_DAYS * _DAY_S:
                path.unlink()
        write_new(place / attempt, f"{salt.hex()}:{_hash(code, salt)}\n".encode(), OWNER_ONLY)
    except OSError as cause:
        raise RecordError(
            f"The instructor's code cannot be kept in {shown(place)}: {reason_of(cause)}.", "Check folder and disk."
        ) from cause


def code_of(opening: Mapping[str, object], code: str, folder: Path) -> str:
    """The code for an attempt that is taken up: as given; "" where the attempt began without one.

    Args:
        opening: the record's first entry.
        code: as given now.
        folder: that of the book of heads.

    Raises:
        UsageError: the attempt began with another code, or on another machine.
    """
    if opening.get("instructor") != WITH_CODE or not code:
        return ""
    kept = str(opening.get(_PIN, ""))
    if not kept:
        with suppress(OSError, ValueError):
            kept = (folder / FOLDER / str(opening.get("digest"))).read_text(encoding="ascii").strip()
    salt, _, expected = kept.partition(":")
    if not expected:
        raise UsageError(
            "The code with which this attempt began is not known on this machine.",
            "Resume it where it began, or without a code.",
        )
    if not hmac.compare_digest(_hash(code, bytes.fromhex(salt)), expected):
        raise UsageError("The attempt began with another instructor's code.", "Give that code, or none.")
    return code


def refused_in_a_row(entries: Sequence[Mapping[str, object]]) -> int:
    """How often in a row, up to the end, somebody asked for the instructor and was refused.

    Args:
        entries: of a record, oldest first.
    """
    count = 0
    for entry in entries:
        if entry.get("kind") == CAME:
            count = count + 1 if entry.get("verdict") == REFUSED else 0
    return count


def _hash(code: str, salt: bytes) -> str:
    return hashlib.scrypt(code.encode(), salt=salt, n=2**14, r=8, p=1).hex()
