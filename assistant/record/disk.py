"""What a record needs of this machine's disk: a lock, whole writes, names that survive a crash, refusals in words."""

import errno
import os
import sys
import time
from contextlib import suppress
from pathlib import Path

from filelock import FileLock, Timeout

from assistant.errors import RecordError
from assistant.record.paths import lock_path
from assistant.text import shown

OWNER_ONLY = 0o600
"""Permission of every file here: what a learner said is nobody else's to read."""
FOR_ALL = 0o644
"""Permission of what everybody may read: public keys, a roster."""


def take_lock(path: Path, wait_s: float = 0) -> FileLock:
    """Be the one writer of this file; the lock dies with its owner.

    Args:
        path: the file.
        wait_s: seconds to wait for another writer.

    Raises:
        RecordError: another process writes it, or the disk refuses.
    """
    lock = FileLock(lock_path(path), mode=OWNER_ONLY, thread_local=False)
    try:
        lock.acquire(timeout=wait_s)
    except Timeout as cause:
        raise RecordError(
            f"{shown(path)} is in use{_owner(path)}.",
            "Close the other attempt first, or wait until it is over.",
        ) from cause
    except (OSError, ValueError) as cause:
        raise refused(path, cause) from cause
    if not wait_s:  # what others wait for is held for milliseconds, and to write this may cost as much
        with suppress(OSError):  # only a courtesy to whoever finds the record in use
            lock_path(path).write_text(f"{os.getpid()}\n", encoding="ascii")
    return lock


def lock_file(path: Path, descriptor: int) -> None:
    """Lock the file itself until its descriptor is closed, whatever name leads to it.

    The lock beside a file goes by its name: a link, a second name or a lock file that was deleted would let another
    writer in. Windows locks no bytes here: there a file that is written has one name, and cannot be deleted.

    Raises:
        RecordError: another process writes it.
    """
    if sys.platform == "win32":
        return
    import fcntl

    try:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as cause:
        if cause.errno in (errno.EOPNOTSUPP, errno.ENOLCK, errno.ENOSYS):  # a network folder without such locks
            return
        raise RecordError(
            f"{shown(path)} is in use by another process.", "Close the other attempt first, or wait until it is over."
        ) from cause


def is_there(path: Path, descriptor: int) -> bool:
    """The name still leads to the open file: nobody has moved, removed or replaced it.

    Windows lets nobody do that to an open file.
    """
    if os.name == "nt":
        return True
    try:
        return os.path.samestat(path.stat(), os.fstat(descriptor))
    except OSError:
        return False


def make_folder(path: Path) -> None:
    """Make a folder with its parents, for their owner alone, each with its name on disk.

    Raises:
        OSError: it cannot be made.
        RecordError: a folder cannot be synced.
    """
    missing = []
    while not path.is_dir():
        missing.append(path)
        path = path.parent
    for folder in reversed(missing):
        try:
            folder.mkdir(mode=0o700, exist_ok=True)
        except FileExistsError:
            raise NotADirectoryError(errno.ENOTDIR, os.strerror(errno.ENOTDIR), str(folder)) from None
        fsync_folder(folder)


def _owner(path: Path) -> str:
    try:
        number = lock_path(path).read_bytes()[:20].strip()
    except OSError:
        return " by another process"
    return f" by process {int(number)}" if number.isdigit() else " by another process"


def ticks() -> str:
    """The machine's monotonic clock in seconds, as decimal text."""
    seconds, rest = divmod(time.monotonic_ns(), 1_000_000_000)
    return f"{seconds}.{rest // 1000:06d}"


def write_all(descriptor: int, content: bytes) -> None:
    """Write every byte, also where the system takes them in parts."""
    view = memoryview(content)
    while view:
        view = view[os.write(descriptor, view) :]


def write_new(path: Path, content: bytes, mode: int) -> None:
    """Write a file that is not there yet, its name and content on disk.

    Raises:
        OSError: it is there, or the disk refuses.
        RecordError: its folder cannot be synced.
    """
    descriptor = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), mode)
    try:
        write_all(descriptor, content)
        os.fsync(descriptor)
    finally:
        os.close(descriptor)
    fsync_folder(path)


def set_aside(path: Path, descriptor: int, tail: bytes, aside: Path) -> None:
    """Move the torn tail of a file to another one.

    Args:
        path: the file, locked.
        descriptor: the file, open for writing.
        tail: the bytes at its end that are no complete entry.
        aside: where they go, behind what is there.

    Raises:
        OSError: the disk refuses.
        RecordError: the folder cannot be synced.
    """
    # First the copy, then the cut: a crash in between leaves the tail twice, never not at all.
    flags = os.O_WRONLY | os.O_APPEND | os.O_CREAT | getattr(os, "O_BINARY", 0)
    beside = os.open(aside, flags, OWNER_ONLY)
    try:
        write_all(beside, tail)
        os.fsync(beside)
    finally:
        os.close(beside)
    fsync_folder(aside)
    os.truncate(path, path.stat().st_size - len(tail))
    os.fsync(descriptor)


def fsync_folder(path: Path) -> None:
    """Make a new file's name survive a crash; Windows cannot open folders and does not need it."""
    if os.name == "nt":
        return
    try:
        descriptor = os.open(path.parent, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
    except OSError as cause:
        raise refused(path, cause) from cause


def reason_of(cause: BaseException) -> str:
    """Why something failed, as the end of a sentence."""
    if isinstance(cause, OSError) and cause.strerror:
        return cause.strerror[0].lower() + cause.strerror[1:]
    return type(cause).__name__


def exists(path: Path) -> RecordError:
    """The refusal to overwrite a record."""
    return RecordError(f"{shown(path)} exists already; a record is never overwritten.", "Choose another name.")


def refused(path: Path, cause: BaseException) -> RecordError:
    """The error for a file that cannot be written."""
    return RecordError(
        f"{shown(path)} cannot be written: {reason_of(cause)}.",
        "Check that the folder exists, that you may write in it and that the disk has room.",
    )
