"""Names of the files of a record, and how a sentence shows them."""

import os
from pathlib import Path


def torn_path(path: Path) -> Path:
    """Where torn tails of this record are kept."""
    return path.with_name(f"{path.name}.torn")


def lock_path(path: Path) -> Path:
    """The file whose lock says that a process writes this record; it stays, the lock goes with its owner."""
    return path.with_name(f"{path.name}.lock")


def sound_folder(path: Path) -> Path:
    """Where sound is kept that belongs to this record."""
    return path.with_name(f"{path.name}.sound")


def shown(path: Path | str) -> str:
    """The path as text that any terminal takes: control characters and stray bytes are escaped."""
    text = os.fsencode(path).decode("utf-8", "backslashreplace")
    return "".join(sign if sign.isprintable() else ascii(sign)[1:-1] for sign in text)
