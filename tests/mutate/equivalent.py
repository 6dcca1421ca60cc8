"""Mutants that are known to change nothing that anybody could see, each with a reason and in its present wording."""

import hashlib
import tomllib
from collections.abc import Mapping
from pathlib import Path

LIST = Path(__file__).with_name("equivalent.toml")


def digest_of(diff: str) -> str:
    """What names a fault beside its number: the lines that it takes out and puts in, wherever they now are."""
    changed = [line for line in diff.splitlines() if not line.startswith("@@")]
    return hashlib.sha256("\n".join(changed).encode()).hexdigest()[:12]


def listed(file: Path = LIST) -> dict[str, str]:
    """By name of a mutant the digest for which it is listed.

    Raises:
        ValueError: an entry without a reason, or a name twice.
    """
    found: dict[str, str] = {}
    for reason, mutants in _reasons(file):
        for name, digest in mutants.items():
            if name in found or not reason.strip():
                raise ValueError(f"{file.name}: {name} needs one place in the list, and a reason")
            found[name] = digest
    return found


def _reasons(file: Path) -> list[tuple[str, Mapping[str, str]]]:
    groups = tomllib.loads(file.read_text(encoding="utf-8"))["equivalent"]
    return [(group["because"], group["mutants"]) for group in groups]
