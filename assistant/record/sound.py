"""Sound that is kept beside a record: how entries name it, whether it is still what it was, its erasure.

An entry made from speech may hold ``"sound": {"file": "0001.flac", "digest": SHA-256}``; the file lies in the folder
``<record>.sound``. An entry of the kind `ERASED` says that the files named before it were erased on purpose.
"""

import hashlib
import os
import re
import stat
from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from assistant.errors import RecordError
from assistant.record.disk import fsync_folder
from assistant.record.entry import ERASED
from assistant.record.paths import sound_folder
from assistant.text import shown

_NAME = re.compile(r"[0-9]{4,9}\.flac")
_BLOCK = 1 << 20


@dataclass(frozen=True)
class KeptSound:
    """What an entry says of the sound it was made from.

    Attributes:
        file: its name in the record's folder for sound.
        digest: SHA-256 (hex) of the file.
    """

    file: str
    digest: str


def kept_sound(entry: Mapping[str, object]) -> KeptSound | None:
    """The sound that an entry names; None where it names none."""
    sound = entry.get("sound")
    if type(sound) is not dict:
        return None
    file, digest = sound.get("file"), sound.get("digest")
    return KeptSound(file, digest) if isinstance(file, str) and isinstance(digest, str) else None


class SoundTrail:
    """Follows a record's entries in their order and holds the sound beside it against them.

    Attributes:
        missing: line of the first sound that is neither there nor erased on purpose; None where there is none.
        differs: line of the first sound that is not what it was.
        there, erased: how many sounds are there, and how many were erased on purpose.
        erased_at: time of the last erasure, as its entry says.
    """

    def __init__(self, record: Path) -> None:
        self._folder = sound_folder(record)
        self.missing: int | None = None
        self.differs: int | None = None
        self.there = 0
        self.erased = 0
        self.erased_at = ""
        self._gone = 0

    def take(self, line: int, entry: Mapping[str, object]) -> None:
        """Take the next entry."""
        if entry.get("kind") == ERASED:
            self.erased += self._gone
            self.erased_at = str(entry.get("at", ""))
            self.missing, self._gone = None, 0
            return
        kept = kept_sound(entry)
        if kept is None:
            return
        digest = _digest_of(self._folder, kept.file)
        if digest is None:
            self.missing = self.missing or line
            self._gone += 1
        elif digest != kept.digest:
            self.differs = self.differs or line
        else:
            self.there += 1


def _digest_of(folder: Path, name: str) -> str | None:
    """SHA-256 of a kept file; None where it is not there, empty where it is no such file."""
    if not _NAME.fullmatch(name):  # a record may come from anywhere: no name leads out of the folder
        return ""
    digest = hashlib.sha256()
    try:
        descriptor = os.open(folder / name, os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_BINARY", 0))
        with os.fdopen(descriptor, "rb") as stream:
            if not stat.S_ISREG(os.fstat(descriptor).st_mode):
                return ""
            while block := stream.read(_BLOCK):
                digest.update(block)
    except FileNotFoundError:
        return None
    except OSError:
        return ""
    return digest.hexdigest()


def erase_files(record: Path) -> int:
    """Erase every sound beside a record; return how many files there were.

    Raises:
        RecordError: one of them cannot be erased.
    """
    folder = sound_folder(record)
    count = 0
    try:
        if folder.is_symlink() or record.is_symlink():
            raise _leads_elsewhere(folder if folder.is_symlink() else record)
        files = _sound_files(folder)
        for path in files:
            found = path.lstat()
            if not stat.S_ISREG(found.st_mode) or found.st_nlink > 1:
                raise _leads_elsewhere(path)
        for path in files:
            path.unlink()
            count += 1
        if count:
            fsync_folder(folder / files[0].name)
        if _sound_files(folder):
            raise RecordError(f"Sound is still in {shown(folder)} after it was erased.", "Check the disk.")
        with suppress(OSError):  # something else lies in it, or it was never made: the sound is gone all the same
            folder.rmdir()
            fsync_folder(folder)
    except OSError as cause:
        raise RecordError(
            f"The sound in {shown(folder)} cannot be erased: {cause.strerror}.",
            "Check the folder and your permission, then erase again.",
        ) from cause
    return count


def _sound_files(folder: Path) -> list[Path]:
    return sorted(path for path in folder.iterdir() if _NAME.fullmatch(path.name)) if folder.is_dir() else []


def _leads_elsewhere(path: Path) -> RecordError:
    return RecordError(
        f"{shown(path)} is a link, has a second name or is not a file: the sound itself may lie elsewhere, "
        "so nothing was erased.",
        "Erase it where it lies, by its own path.",
    )


def has_sound(record: Path, entries: Iterable[Mapping[str, object]]) -> bool:
    """Whether anything of a record's sound is still there, or gone without an entry that says so."""
    open_names = False
    for entry in entries:
        open_names = (open_names or kept_sound(entry) is not None) and entry.get("kind") != ERASED
    folder = sound_folder(record)
    return open_names or (folder.is_dir() and any(_NAME.fullmatch(path.name) for path in folder.iterdir()))
