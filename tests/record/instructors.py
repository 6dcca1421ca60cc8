"""Instructors of the tests: a lone one with a key of their own, named once."""

from pathlib import Path

from assistant.record.instructors import Instructor, trust_instructor
from assistant.record.signing import new_key


def lone_instructor(folder: Path, key: str = "lindqvist", name: str = "M. Lindqvist", role: str = "RN") -> Instructor:
    """Make a key without a passphrase, and name it."""
    new_key(folder, key)
    return trust_instructor(folder, key, name, role)
