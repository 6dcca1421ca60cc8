"""Who counts as an instructor on this machine: the school's roster, or the one key that was named.

The folder with the keys holds `TRUSTED`, which names one key: a lone instructor's own, or that of a school. A school's
key signs the roster (`assistant.record.roster`), and then only who is on it decides.
"""

import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from assistant.errors import RecordError
from assistant.record.chain import Signature
from assistant.record.disk import OWNER_ONLY, make_folder, reason_of, write_new
from assistant.record.heads import Standing
from assistant.record.roster import LONGEST_NAME, Instructor, Roster, RosterError, read_roster
from assistant.record.signer import Right, Signer
from assistant.record.signing import known_keys, public_key, public_key_of
from assistant.record.verify import open_record
from assistant.text import shown

TRUSTED = "trusted.json"
"""File that names the one key on which all others rest."""
ROSTER = "roster.jsonl"
"""Name of the roster where no other place is given."""
LARGEST_ROSTER = 4 << 20
"""Bytes of a roster; two thousand instructors take a quarter of it."""


@dataclass(frozen=True)
class Instructors:
    """Who counts as an instructor.

    Attributes:
        school: empty for a lone instructor, and where nobody is named.
        instructors: who may sign.
        names: of all keys that are known here, by fingerprint: a name makes nobody an instructor.
        problem: why there is no telling, in a sentence; empty where there is.
        roster: the roster, where there is one that holds.
    """

    school: str = ""
    instructors: Sequence[Instructor] = ()
    names: Mapping[str, str] = field(default_factory=dict)
    problem: str = ""
    roster: Roster | None = None

    @property
    def fingerprints(self) -> frozenset[str]:
        """Of all keys that are or were an instructor's."""
        return frozenset(one.fingerprint for one in self.instructors)

    def of(self, fingerprint: str) -> Instructor | None:
        """The instructor with this key."""
        return next((one for one in self.instructors if one.fingerprint == fingerprint), None)

    def signers(
        self,
        signatures: Sequence[Signature],
        seen_at: Callable[[int], str],
        after: Callable[[int], str] = lambda _: "",
        read_at: str = "",
    ) -> tuple[Signer, ...]:
        """Who signed what, and whether it counts.

        Args:
            signatures: those that hold, oldest first.
            seen_at: when a book of heads first saw the entry of this number; empty where none did.
            after: the latest time in the entries before that of this number; empty where there is none.
            read_at: when they are read; empty for now.
        """
        return tuple(self._signer(one, seen_at(one.line), after(one.line), read_at) for one in signatures)

    def _signer(self, signature: Signature, seen_at: str, after: str, read_at: str) -> Signer:
        instructor = self.of(signature.fingerprint)
        if instructor is None:
            name = self.names.get(signature.fingerprint, "")
            why = self.problem or (
                f"The key {name} is known here, but not as an instructor's." if name else "The key is not known here."
            )
            return Signer(signature.line, Right.UNKNOWN, name, why=why)
        right, why = instructor.right(signature.fields.get("at", ""), seen_at, after, read_at)
        return Signer(signature.line, right, instructor.title, self.school, why)


def instructors_at(
    folder: Path, roster: Path | None = None, standing: Callable[[Sequence[str]], Standing] | None = None
) -> Instructors:
    """Who counts as an instructor by this folder of keys.

    Args:
        folder: that of the keys.
        roster: the roster; None for the one in the folder.
        standing: how a chain of these digests stands to what a book of heads has seen of it.

    Returns:
        Nobody, with the problem, where the key that was named or the roster cannot be read: verification goes on.
    """
    names = known_keys(folder)
    try:
        named = _trusted(folder)
        if named is None:
            return Instructors(names=names, problem="Nobody is named as an instructor on this machine.")
        if isinstance(named, Instructor):
            return Instructors(instructors=(named,), names=names)
        found = load_roster(roster or folder / ROSTER)
    except RecordError as error:
        return Instructors(names=names, problem=error.what)
    if found.fingerprint != named:
        return Instructors(names=names, problem="The roster is not signed by the school's key that was named here.")
    seen = standing(found.digests) if standing is not None else None
    if seen is not None and seen.is_denied:
        return Instructors(names=names, problem=f"The roster is {seen.seen}. {seen.why}")
    return Instructors(found.school, found.instructors, names, roster=found)


def load_roster(path: Path) -> Roster:
    """Read a roster.

    Raises:
        RecordError: it cannot be read, or does not hold.
    """
    with open_record(path) as stream:
        content = stream.read(LARGEST_ROSTER + 1)
    if len(content) > LARGEST_ROSTER:
        raise RecordError(f"{shown(path)} is too large for a roster.", "Name the school's roster.")
    try:
        return read_roster(content.splitlines(keepends=True))
    except RosterError as cause:
        raise RecordError(
            f"The roster {shown(path)} does not hold: {cause}.", "Get it again from whoever keeps it."
        ) from cause


def trust_instructor(folder: Path, key: str, name: str, role: str) -> Instructor:
    """Name a lone instructor's key; from now on its entries decide on this machine.

    Args:
        folder: that of the keys.
        key: the name of the key.
        name: of the instructor.
        role: the same; may be empty.

    Raises:
        RecordError: there is no such key, another one is named already, or the disk refuses.
    """
    check_name(name, "instructor's name")
    public = public_key_of(folder, key)
    _write_trusted(folder, {"key": public.text, "name": name, "role": role})
    return Instructor(name, role, public.text, public.fingerprint)


def trust_school(folder: Path, key: str) -> str:
    """Name a school's key: from now on who is on its roster decides on this machine.

    Args:
        folder: that of the keys.
        key: the name of the key.

    Returns:
        Its fingerprint.

    Raises:
        RecordError: there is no such key, another one is named already, or the disk refuses.
    """
    public = public_key_of(folder, key)
    _write_trusted(folder, {"key": public.text, "school": "yes"})
    return public.fingerprint


def check_name(name: str, what: str) -> None:
    """Refuse a name that cannot be shown as it is, or is none.

    Raises:
        RecordError: it is so.
    """
    if not name or len(name) > LONGEST_NAME or not name.isprintable() or name != " ".join(name.split()):
        raise RecordError(f"The {what} has 1 to {LONGEST_NAME} letters that can be shown.", "Write it plainly.")


def _trusted(folder: Path) -> Instructor | str | None:
    """The lone instructor, or the fingerprint of the school's key; None where nothing is named.

    Raises:
        RecordError: the file cannot be read.
    """
    path = folder / TRUSTED
    try:
        told = json.loads(path.read_bytes())
        public = public_key(told["key"])
        if told.get("school"):
            return public.fingerprint
        return Instructor(str(told["name"]), str(told["role"]), public.text, public.fingerprint)
    except FileNotFoundError:
        return None
    except OSError as cause:
        raise RecordError(f"{shown(path)} cannot be read: {reason_of(cause)}.", "Check your permission.") from cause
    except (ValueError, KeyError, TypeError) as cause:
        raise RecordError(f"{shown(path)} does not name a key.", "Name it again: checkoff key trust.") from cause


def _write_trusted(folder: Path, told: Mapping[str, str]) -> None:
    path = folder / TRUSTED
    try:
        make_folder(folder)
        write_new(path, json.dumps(told, indent=2).encode() + b"\n", OWNER_ONLY)
    except FileExistsError as cause:
        raise RecordError(
            f"A key is named in {shown(path)} already.", "To name another one, move that file away first."
        ) from cause
    except OSError as cause:
        raise RecordError(f"{shown(path)} cannot be written: {reason_of(cause)}.", "Check folder and disk.") from cause
