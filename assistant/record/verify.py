"""Does a record still say what was recorded? Reads a file, follows its chain, gives a verdict."""

import os
import stat
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO

from assistant.errors import RecordError
from assistant.record.chain import BrokenError, Chain, Problem, Signature, follow
from assistant.record.entry import ERASED
from assistant.record.short_head import short_head
from assistant.record.sound import SoundTrail
from assistant.text import shown

LARGEST_READ = 256 << 20
"""Bytes of a record that `read_entries` takes into memory; an attempt needs a thousandth of it."""


OTHERWISE_WHOLE = (
    *(Problem.NOT_SEALED, Problem.UNKNOWN_KEY, Problem.KEY_NOT_VALID, Problem.SOUND_MISSING, Problem.SOUND_DIFFERS),
    *(Problem.PINNED_FILE_DIFFERS, Problem.RESULT_DIFFERS, Problem.OLDER, Problem.OTHER),
)
"""Problems of a record whose every entry holds."""


@dataclass(frozen=True)
class Verdict:
    """What verification found.

    Attributes:
        ok: the chain is whole, sealed, signed only by keys that are known (where any were named) and, where a
            head was given, reaches it.
        sealed: a seal closes the chain; False as well where the chain breaks before.
        count: entries that hold, up to the first break.
        head: digest of the last entry that holds; `GENESIS` where none does.
        problem: what is wrong; None where nothing is.
        line: the line of the first broken entry, from 1; None where no line is to blame.
        why: one sentence about the problem; empty where there is none.
        notes: what is odd but breaks nothing, such as a clock set back.
        signatures: the signed entries that hold.
    """

    ok: bool
    sealed: bool
    count: int
    head: str
    problem: Problem | None = None
    line: int | None = None
    why: str = ""
    notes: tuple[str, ...] = ()
    signatures: tuple[Signature, ...] = ()

    @property
    def intact(self) -> bool:
        """Every entry on file holds; the record may be open, signed by an unknown key, or lack its sound."""
        return self.ok or self.problem in OTHERWISE_WHOLE


def open_record(path: Path) -> BinaryIO:
    """Open a record for reading.

    Raises:
        RecordError: there is no such file, it is no ordinary file, or it may not be read.
    """
    try:
        # Without O_NONBLOCK, opening a named pipe would wait for its writer.
        descriptor = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    except (OSError, ValueError) as cause:
        reason = getattr(cause, "strerror", None) or str(cause)
        raise RecordError(
            f"{shown(path)} cannot be read: {reason}.", "Check the path and your permission to read it."
        ) from cause
    if not stat.S_ISREG(os.fstat(descriptor).st_mode):
        os.close(descriptor)
        raise RecordError(f"{shown(path)} is not a file that could be a record.", "Name the file of an attempt.")
    return os.fdopen(descriptor, "rb", buffering=1 << 18)


def verify(path: Path | str, *, head: str | None = None, keys: Collection[str] | None = None) -> Verdict:
    """Verify one record; whatever the file holds, the answer is a verdict.

    Memory stays bounded by `LONGEST_LINE`, time grows with the file's length.

    Args:
        path: the record.
        head: a digest that one of the entries must have, or its short head, as printed earlier; shows a cut-off tail.
        keys: fingerprints of the keys that may sign; None takes any key.
    """
    return _followed(Path(path), head, keys, None)


@dataclass(frozen=True)
class Reading:
    """What a record holds, and whether to believe it.

    Attributes:
        entries: those that hold, oldest first; what stands behind a break is left out.
        verdict: of the whole file; says what is wrong, and at which line.
    """

    entries: tuple[Mapping[str, object], ...]
    verdict: Verdict


def read_record(path: Path | str, *, head: str | None = None, keys: Collection[str] | None = None) -> Reading:
    """Everything in a record that holds, with the verdict; whatever the file holds, there is an answer.

    Args:
        path: the record.
        head: as for `verify`.
        keys: as for `verify`.
    """
    entries: list[Mapping[str, object]] = []
    verdict = _followed(Path(path), head, keys, entries)
    return Reading(tuple(entries), verdict)


def _followed(
    path: Path, head: str | None, keys: Collection[str] | None, entries: list[Mapping[str, object]] | None
) -> Verdict:
    chain = Chain(keys)
    trail = SoundTrail(path)
    reached = None
    try:
        with open_record(path) as stream:
            if entries is not None:
                refuse_if_too_large(path, stream)
            for entry in follow(chain, stream):
                if entries is not None:
                    entries.append(entry.fields)
                if "sound" in entry.fields or entry.fields.get("kind") == ERASED:
                    trail.take(entry.sequence, entry.fields)
                if head is not None and head.lower() in (entry.digest, short_head(entry.digest)):
                    reached = entry.sequence
        _check_sound(trail, chain)
        if head is not None and reached is None:
            raise BrokenError(
                Problem.TAIL_MISSING, None, f"It ends with {chain.head} and never reaches the head that was given."
            )
        if not chain.sealed:
            raise BrokenError(
                Problem.NOT_SEALED,
                None,
                "No seal closes it: the attempt goes on, was interrupted, or its end was cut off.",
            )
        if chain.unlisted:
            chain.notes.append(f"{chain.unlisted:,} further signed entries are not listed.")
        if chain.stranger is not None:
            why = f"The fingerprint of the key is {chain.stranger.fingerprint}."
            raise BrokenError(Problem.UNKNOWN_KEY, chain.stranger.line, why)
    except BrokenError as broken:
        return _verdict(chain, broken)
    except RecordError as cause:
        return _verdict(chain, BrokenError(Problem.CANNOT_BE_READ, None, cause.what))
    except OSError as cause:
        reason = cause.strerror or type(cause).__name__
        why = f"Reading {shown(path)} failed: {reason}."
        return _verdict(chain, BrokenError(Problem.CANNOT_BE_READ, None, why))
    return _verdict(chain, None)


def _check_sound(trail: SoundTrail, chain: Chain) -> None:
    if trail.erased:
        chain.notes.append(f"Its sound ({trail.erased} in all) was erased on purpose at {trail.erased_at}.")
    if trail.differs is not None:
        raise BrokenError(Problem.SOUND_DIFFERS, trail.differs, "The sound beside it is not what was kept.")
    if trail.missing is not None:
        raise BrokenError(
            Problem.SOUND_MISSING,
            trail.missing,
            "The sound that it names is gone, and no entry says that it was erased.",
        )


def _verdict(chain: Chain, broken: BrokenError | None) -> Verdict:
    return Verdict(
        broken is None,
        chain.sealed,
        chain.count,
        chain.head,
        broken.problem if broken else None,
        broken.line if broken else None,
        broken.why if broken else "",
        tuple(chain.notes),
        tuple(chain.signatures),
    )


def read_entries(path: Path | str) -> tuple[Mapping[str, object], ...]:
    """The entries of a record whose chain holds; it need not be sealed.

    Raises:
        RecordError: it cannot be read, its chain is broken, or it is too large for an attempt.
    """
    path = Path(path)
    chain = Chain()
    with open_record(path) as stream:
        refuse_if_too_large(path, stream)
        try:
            return tuple(entry.fields for entry in follow(chain, stream))
        except BrokenError as broken:
            raise RecordError(sentence(path, broken), "Do not rely on it; keep the file as it is.") from broken
        except OSError as cause:
            reason = cause.strerror or type(cause).__name__
            raise RecordError(f"Reading {shown(path)} failed: {reason}.", "Copy it to another disk.") from cause


def refuse_if_too_large(path: Path, stream: BinaryIO) -> None:
    """Refuse a record that no attempt could have made before it fills the memory.

    Raises:
        RecordError: it is larger than `LARGEST_READ`.
    """
    size = os.fstat(stream.fileno()).st_size
    if size > LARGEST_READ:
        raise RecordError(
            f"{shown(path)} has {size:,} bytes; a record of an attempt has {LARGEST_READ:,} at the most.",
            "Name the file of an attempt.",
        )


def sentence(path: Path | str, broken: BrokenError | Verdict) -> str:
    """One or two sentences that name the file, the line and the problem."""
    if broken.problem is Problem.CANNOT_BE_READ:
        return broken.why
    where = shown(path) if broken.line is None else f"{shown(path)}, line {broken.line}"
    return f"{where}: {broken.problem}. {broken.why}"
