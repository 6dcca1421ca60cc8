"""The two ways in which a sitting begins: with a new attempt, or with one that was interrupted."""

from collections.abc import Callable, Mapping
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import NoReturn

from assistant.attempts.instructor_code import code_of, keep_code, refused_in_a_row
from assistant.attempts.papers import AttemptPapers
from assistant.attempts.pins import ear_pins, program_pins
from assistant.attempts.record_place import RecordPlace
from assistant.attempts.replay import last_time, lived_again
from assistant.errors import RecordError
from assistant.guide.guide import KEEP_SOUND, Guide
from assistant.guide.progress import Mode
from assistant.ports import Ear, Keeper
from assistant.record.file import RecordFile
from assistant.text import shown

FURTHEST_AHEAD = timedelta(days=366)
"""How far a record's last time may be ahead of this machine's clock."""


class NewAttempt:
    """An attempt that begins now.

    Args:
        papers, mode: of the attempt.
        pinned: what its record pins beside the ear (see `assistant.attempts.pins`).
        place: where its record goes.
        keeps_sound: ask the learner whether what they say may be kept as sound.
    """

    record: Keeper | None = None
    last_time = None
    wrong_codes = 0

    def __init__(
        self,
        papers: AttemptPapers,
        mode: Mode,
        pinned: Mapping[str, str],
        place: RecordPlace,
        *,
        keeps_sound: bool = False,
    ) -> None:
        self.papers = papers
        self._mode = mode
        self._pinned = pinned
        self._place = place
        self._keeps_sound = keeps_sound
        self._code = ""

    @property
    def path(self) -> Path:
        """Where the record is, or would be."""
        return self._place.path

    def instructor_code(self, given: str) -> str:
        """The code that was chosen for this attempt, "" for none; kept on this machine once there is a record."""
        self._code = given
        return given

    def create(self, opening: Mapping[str, object]) -> RecordFile:
        """Make the record with its first entry on disk.

        Raises:
            RecordError: the folder or the file cannot be made, or the code cannot be kept.
        """
        record = self._place.create(opening)
        if self._code:
            keep_code(self._place.heads, record.head, self._code)
        return record

    def guide(self, ear: Ear | None, tell: Callable[[str], None]) -> Guide:
        """The guide, whose record pins who listens.

        Args:
            ear: who listens, None for nobody: no sound can be kept then.
            tell: is told so.
        """
        kept = {}
        if self._keeps_sound:
            if ear is None:
                tell("Sound will not be saved, because no microphone is in use.")
            else:
                kept = {"sound": KEEP_SOUND}
        return self.papers.guide(self._mode, {**self._pinned, **kept, **ear_pins(ear)})


class _Continued:
    """A record that goes on; the entry that says so names the code that judges now, where it is another than before.

    Args:
        record: open for more entries.
        order: id of the order by which it goes on; empty for none.
    """

    def __init__(self, record: RecordFile, order: str) -> None:
        self._record = record
        before = [entry["program_digest"] for entry in record.entries if "program_digest" in entry]
        now = program_pins().get("program_digest", "")
        self._pinned = ({"program_digest": now} if before[-1:] != [now] else {}) | ({"order": order} if order else {})

    @property
    def head(self) -> str:
        """Digest of the last entry on disk."""
        return self._record.head

    def append(self, body: Mapping[str, object]) -> tuple[int, str]:
        """Put an entry on disk; return its sequence number and digest."""
        return self._record.append({**body, **self._pinned} if body.get("kind") == "resumed" else body)

    def seal(self, body: Mapping[str, object]) -> tuple[int, str]:
        """Put the last entry on disk."""
        return self._record.seal(body)

    def close(self) -> None:
        """Let go of the file."""
        self._record.close()


def _refuse_far_future(last: datetime | None, path: Path) -> None:
    """A clock goes on from the record's last time; from one beyond all sense it would soon run out of days.

    Raises:
        RecordError: it is more than a year ahead of this machine's clock.
    """
    if last is not None and last - datetime.now(UTC) > FURTHEST_AHEAD:
        raise RecordError(
            f"The last time in {shown(path)} is {last:%Y-%m-%d}, more than a year ahead of this machine's clock.",
            "Set the clock, or start a new attempt.",
        )


class ResumedAttempt:
    """An attempt that was interrupted and goes on.

    Args:
        papers: those that its record pins.
        record: open for more entries.
        heads: folder of the book of heads.
        order: id of the desk's order by which it goes on; empty for none.

    Raises:
        RecordError: the entries do not follow from each other by this program.
    """

    def __init__(self, papers: AttemptPapers, record: RecordFile, heads: Path, order: str = "") -> None:
        self.papers = papers
        self._file = record
        self._heads = heads
        self.record: Keeper = _Continued(record, order)
        self.last_time: datetime | None = last_time(record.entries)
        _refuse_far_future(self.last_time, record.path)
        self._guide = lived_again(papers, record.entries, record.path)

    @property
    def path(self) -> Path:
        """Where the record is."""
        return self._file.path

    def create(self, opening: Mapping[str, object]) -> NoReturn:
        """Never called: the record is there."""
        raise TypeError("an attempt that is resumed has its record")

    def instructor_code(self, given: str) -> str:
        """The code as it was given, if it is the one that the attempt began with; "" where it had none.

        Raises:
            UsageError: it is another one.
        """
        return code_of(self._file.entries[0], given, self._heads)

    @property
    def wrong_codes(self) -> int:
        """How often in a row a wrong code was given before."""
        return refused_in_a_row(self._file.entries)

    def guide(self, ear: Ear | None, tell: Callable[[str], None]) -> Guide:
        """The guide, which has lived through the record already; who listens now is recorded when it goes on."""
        return self._guide
