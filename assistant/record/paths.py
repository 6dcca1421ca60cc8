"""Names of the files of a record."""

from pathlib import Path


def torn_path(path: Path) -> Path:
    """Where torn tails of this record are kept."""
    return path.parent / f"{path.name}.torn"


def lock_path(path: Path) -> Path:
    """The file whose lock says that a process writes this record; it stays, the lock goes with its owner."""
    return path.parent / f"{path.name}.lock"


def sound_folder(path: Path) -> Path:
    """Where sound is kept that belongs to this record."""
    return path.parent / f"{path.name}.sound"
