"""The roster of a school: which keys belong to its instructors, in which role, and from when until when. Pure.

A roster is a chain of entries in the form of a record's (`assistant.record.entry`), each signed by the school's key,
which its first entry names. It is only ever added to: an instructor is added, renewed or revoked. A lone instructor
needs none; see `assistant.record.instructors`.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

from assistant.record.entry import FORMAT, GENESIS, Entry, NotAnEntryError, read_line
from assistant.record.look_alike import look_alike
from assistant.record.signer import Right
from assistant.record.signing import PublicKey, SignatureError, check_signature, public_key

OPENED, ADDED, RENEWED, REVOKED = "roster opened", "instructor added", "instructor renewed", "instructor revoked"

MOST_INSTRUCTORS = 2_000
"""Instructors of one roster; look-alike names are looked for among all of them."""
LONGEST_NAME = 80
"""Characters of a name or a role."""
CLOCKS_DIFFER = timedelta(days=1)
"""How far the clock of a machine that signs may be ahead of one that reads: a wrong time zone is no forgery."""


@dataclass(frozen=True)
class Instructor:
    """Somebody who may sign.

    Attributes:
        name, role: as the school writes them.
        key: the public key in base64, as an entry names it.
        fingerprint: of that key.
        terms: from when until when the key is valid, UTC in ISO 8601; an empty text is no limit.
        revoked_at: since when it is not to be relied on, whatever it says; empty where it was not revoked.
        revoked_why: the reason.
    """

    name: str
    role: str
    key: str
    fingerprint: str
    terms: tuple[tuple[str, str], ...] = (("", ""),)
    revoked_at: str = ""
    revoked_why: str = ""

    @property
    def title(self) -> str:
        """Name and role."""
        return f"{self.name}, {self.role}" if self.role else self.name

    def is_current(self, at: str) -> bool:
        """Not revoked, and valid at this time or later."""
        moment = _moment(at)
        return not self.revoked_at and any(moment is None or _within(moment, "", until) for _, until in self.terms)

    def right(self, at: str, seen_at: str, after: str = "", read_at: str = "") -> tuple[Right, str]:
        """Whether an entry signed by this key may decide, and why not.

        Whoever has a stolen key can write any time into an entry. So what a revoked key signed counts only where
        somebody else saw it before: the book of heads. And nobody signs what is yet to happen: where an entry says
        that it is older than what it signs, the key has to be valid at the time of that, too. Nor does anybody sign
        on a day that has not come.

        Args:
            at: when it was signed, as the entry says.
            seen_at: when a book of heads first saw that entry; empty where none did.
            after: the latest time in the entries before it; empty where there is none.
            read_at: when it is read; empty for now, by this machine's clock.
        """
        signed = _moment(at)
        if signed is None:
            return Right.NOT_THEN, "It does not say when it was signed."
        read = _moment(read_at or now())
        if read is not None and signed > read + CLOCKS_DIFFER:
            return (
                Right.NOT_THEN,
                f"It says that it was signed at {at[:10]}, and by this machine's clock that day is still to come.",
            )
        if not any(_within(signed, since, until) for since, until in self.terms):
            terms = "; ".join(f"{since[:10] or 'ever'} to {until[:10] or 'ever'}" for since, until in self.terms)
            return Right.NOT_THEN, f"It was signed at {at[:10]}, and the key is valid from {terms}."
        covered = _moment(after)
        if covered is not None and signed < covered and not any(_within(covered, *term) for term in self.terms):
            return (
                Right.NOT_THEN,
                f"It says that it was signed at {at[:10]}, but what it signs is of {after[:10]}, when the key was not "
                "valid.",
            )
        revoked, seen = _moment(self.revoked_at), _moment(seen_at)
        if revoked is not None and not (seen is not None and seen < revoked and signed < revoked):
            return (
                Right.REVOKED,
                f"The key was revoked at {self.revoked_at[:10]} ({self.revoked_why}), and no book of heads here "
                "saw this entry before.",
            )
        return Right.VALID, ""


class RosterError(ValueError):
    """A roster does not hold; the text says where and why. Never leaves this room."""


@dataclass(frozen=True)
class Roster:
    """A roster whose every entry holds and is signed by the school's key.

    Attributes:
        school: its name.
        key: the school's public key in base64.
        fingerprint: of that key.
        instructors: all that were ever added, the newest key of a person last.
        digests: of its entries, oldest first.
    """

    school: str
    key: str
    fingerprint: str
    instructors: tuple[Instructor, ...] = ()
    digests: tuple[str, ...] = ()

    def of(self, fingerprint: str) -> Instructor | None:
        """The instructor with this key."""
        return next((one for one in self.instructors if one.fingerprint == fingerprint), None)

    def clash(self, name: str, at: str) -> Instructor | None:
        """Somebody whose name could be taken for this one.

        The very same name is free once every key of its bearer is revoked or has run out: then it is a new key.
        """
        for one in self.instructors:
            if look_alike(one.name, name) and (one.name != name or one.is_current(at)):
                return one
        return None


def read_roster(lines: Iterable[bytes]) -> Roster:
    """Follow a roster line by line.

    Args:
        lines: with their line feeds.

    Raises:
        RosterError: it does not hold.
    """
    roster: Roster | None = None
    head = GENESIS
    for number, line in enumerate(lines, 1):
        try:
            entry = read_line(line)
            key = check_signature(entry.fields)
        except (NotAnEntryError, SignatureError) as cause:
            raise RosterError(f"line {number}: {cause}") from None
        if (entry.sequence, entry.previous) != (number, head):
            raise RosterError(f"line {number}: it does not follow the line before")
        head = entry.digest
        if roster is None:
            roster = _opened(entry, key)
        elif key.fingerprint != roster.fingerprint:
            raise RosterError(f"line {number}: it is not signed by the school's key")
        else:
            roster = _changed(roster, entry)
        roster = replace(roster, digests=(*roster.digests, entry.digest))
    if roster is None:
        raise RosterError("it is empty")
    return roster


def _opened(entry: Entry, key: PublicKey) -> Roster:
    school = _text(entry.fields, "school")
    if entry.fields.get("kind") != OPENED or entry.fields.get("format") != FORMAT or not school:
        raise RosterError("line 1: it is not the beginning of a roster")
    return Roster(school, key.text, key.fingerprint)


def _changed(roster: Roster, entry: Entry) -> Roster:
    fields, where = entry.fields, f"line {entry.sequence}"
    try:
        key = public_key(fields.get("instructor"))
    except SignatureError:
        raise RosterError(f"{where}: it names no key") from None
    known = roster.of(key.fingerprint)
    kind, at = fields.get("kind"), _text(fields, "at")
    if kind == ADDED and known is None and len(roster.instructors) < MOST_INSTRUCTORS:
        new = Instructor(
            _text(fields, "name"),
            _text(fields, "role"),
            key.text,
            key.fingerprint,
            ((_text(fields, "from"), _text(fields, "until")),),
        )
        return replace(roster, instructors=(*roster.instructors, new))
    if kind == RENEWED and known is not None and not known.revoked_at:
        changed = replace(known, terms=(*known.terms, (_text(fields, "from"), _text(fields, "until"))))
    elif kind == REVOKED and known is not None:
        changed = replace(known, revoked_at=at, revoked_why=_text(fields, "reason"))
    else:
        raise RosterError(f"{where}: nothing that a roster says here")
    others = tuple(changed if one.fingerprint == key.fingerprint else one for one in roster.instructors)
    return replace(roster, instructors=others)


def _text(fields: Mapping[str, object], name: str) -> str:
    value = fields.get(name, "")
    return value if isinstance(value, str) else ""


def _within(at: datetime, since: str, until: str) -> bool:
    """A limit that cannot be read lets nothing through."""
    first, last = _moment(since), _moment(until)
    begun = not since or (first is not None and first <= at)
    return begun and (not until or (last is not None and at <= last))


def _moment(text: str) -> datetime | None:
    try:
        moment = datetime.fromisoformat(text)
    except ValueError:
        return None
    return moment if moment.tzinfo is not None else None


def now() -> str:
    """This machine's time, UTC in ISO 8601."""
    return datetime.now(UTC).isoformat(timespec="microseconds")
