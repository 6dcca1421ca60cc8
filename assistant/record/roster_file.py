"""The roster on disk: begun, and added to by whoever holds the school's key."""

import os
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.errors import RecordError
from assistant.record.disk import FOR_ALL, make_folder, reason_of, take_lock, write_all, write_new
from assistant.record.entry import FORMAT, GENESIS, link
from assistant.record.instructors import check_name, load_roster
from assistant.record.roster import (
    ADDED,
    MOST_INSTRUCTORS,
    OPENED,
    RENEWED,
    REVOKED,
    Instructor,
    Roster,
    now,
)
from assistant.record.signing import PublicKey, SigningKey
from assistant.text import shown

if TYPE_CHECKING:
    from assistant.record.head_book import HeadBook

_LOCK_WAIT_S = 5.0
MOST_NAMED = 20
"""Instructors that a refusal names."""
SHORTEST_FINGERPRINT = 8
"""Digits of a fingerprint that name a key."""


def begin_roster(path: Path, school: str, key: SigningKey, book: "HeadBook | None" = None) -> Roster:
    """Begin a roster.

    Args:
        path: where it goes; it must not exist.
        school: whose it is.
        key: the school's.
        book: where its head is noted.

    Raises:
        RecordError: the name is none, the file exists, or the disk refuses.
    """
    check_name(school, "school's name")
    body = {"kind": OPENED, "at": now(), "format": FORMAT, "school": school, "key": key.public.text}
    try:
        make_folder(path.parent)
        write_new(path, link(body, GENESIS, 1, key.sign).line, FOR_ALL)
    except FileExistsError as cause:
        raise RecordError(f"There is a roster {shown(path)} already.", "Add to it, or choose another file.") from cause
    except OSError as cause:
        raise _refused(path, cause) from cause
    return _noted(path, book)


def enrol(
    path: Path,
    key: SigningKey,
    public: PublicKey,
    instructor: tuple[str, str],
    term: tuple[str, str],
    book: "HeadBook | None" = None,
) -> Roster:
    """Add an instructor.

    Args:
        path: the roster.
        key: the school's.
        public: the instructor's key.
        instructor: name and role.
        term: from when until when the key is valid, UTC in ISO 8601; empty for no limit.
        book: where its head is noted.

    Raises:
        RecordError: the name looks like another one on the roster, the key is on it already, or as for `_add`.
    """
    name, role = instructor
    check_name(name, "instructor's name")
    if role:
        check_name(role, "role")
    roster = load_roster(path)
    other = roster.clash(name, now())
    if other is not None:
        raise RecordError(
            f'The name "{shown(name)}" looks like "{shown(other.name)}", who is on the roster.',
            "Write a further name or a number with it.",
        )
    known = roster.of(public.fingerprint)
    if known is not None:
        raise RecordError(f"That key is on the roster already, as {shown(known.name)}.", "Renew it instead.")
    if len(roster.instructors) >= MOST_INSTRUCTORS:
        raise RecordError(f"A roster holds {MOST_INSTRUCTORS:,} instructors at the most.", "Begin a new one.")
    more = {"instructor": public.text, "name": name, "role": role, "from": term[0], "until": term[1]}
    return _add(path, key, {"kind": ADDED, **more}, book)


def renew(path: Path, key: SigningKey, who: str, term: tuple[str, str], book: "HeadBook | None" = None) -> Roster:
    """Give an instructor's key a further term.

    Args:
        path: the roster.
        key: the school's.
        who: the instructor's name as it is on the roster, or the beginning of the key's fingerprint.
        term: as for `enrol`.
        book: where its head is noted.

    Raises:
        RecordError: nobody of that name is on the roster, the key was revoked, or as for `_add`.
    """
    instructor = _one(load_roster(path), who)
    if instructor.revoked_at:
        raise RecordError(f"The key of {shown(instructor.name)} was revoked.", "Add the new key in its place.")
    return _add(path, key, {"kind": RENEWED, "instructor": instructor.key, "from": term[0], "until": term[1]}, book)


def revoke(path: Path, key: SigningKey, who: str, reason: str, book: "HeadBook | None" = None) -> Roster:
    """Take an instructor's key off from now on, because it was lost, stolen or misused.

    For an instructor who only leaves, let the term run out: what a revoked key signed counts only where a book of heads
    saw it before.

    Args:
        path: the roster.
        key: the school's.
        who: as for `renew`.
        reason: why.
        book: where its head is noted.

    Raises:
        RecordError: nobody of that name is on the roster, no reason is given, or as for `_add`.
    """
    check_name(reason, "reason")
    instructor = _one(load_roster(path), who)
    if instructor.revoked_at:
        raise RecordError(f"The key of {shown(instructor.name)} is revoked already.", "Nothing is to be done.")
    return _add(path, key, {"kind": REVOKED, "instructor": instructor.key, "reason": reason}, book)


def _one(roster: Roster, who: str) -> Instructor:
    found = [
        one
        for one in roster.instructors
        if one.name == who or (len(who) >= SHORTEST_FINGERPRINT and one.fingerprint.startswith(who))
    ]
    current = [one for one in found if one.is_current(now())]
    if len(current or found) != 1:
        names = ", ".join(shown(one.name) for one in roster.instructors[:MOST_NAMED]) or "nobody"
        raise RecordError(
            f"{len(found)} keys on the roster belong to {shown(who)}."
            if found
            else f"Nobody on the roster is called {shown(who)}.",
            f"Give the name as it is there, or the fingerprint of the key. There are: {names}.",
        )
    return (current or found)[0]


def _add(path: Path, key: SigningKey, body: Mapping[str, object], book: "HeadBook | None") -> Roster:
    """Add an entry.

    Raises:
        RecordError: the roster does not hold or is another school's, another process writes it, or the disk refuses.
    """
    lock = take_lock(path, _LOCK_WAIT_S)
    try:
        roster = load_roster(path)
        if roster.fingerprint != key.public.fingerprint:
            raise RecordError(
                f"{shown(path)} is the roster of {shown(roster.school)}.", "Sign it with that school's key."
            )
        entry = link(
            {**body, "at": now(), "key": key.public.text}, roster.digests[-1], len(roster.digests) + 1, key.sign
        )
        descriptor = os.open(path, os.O_WRONLY | os.O_APPEND | getattr(os, "O_BINARY", 0))
        try:
            write_all(descriptor, entry.line)
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
    except OSError as cause:
        raise _refused(path, cause) from cause
    finally:
        lock.release(force=True)
    return _noted(path, book)


def _noted(path: Path, book: "HeadBook | None") -> Roster:
    roster = load_roster(path)
    if book is not None:
        book.note("roster", path, roster.digests[0], len(roster.digests), roster.digests[-1])
    return roster


def _refused(path: Path, cause: OSError) -> RecordError:
    return RecordError(f"The roster {shown(path)} cannot be written: {reason_of(cause)}.", "Check folder and disk.")
