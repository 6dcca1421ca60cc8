"""What the entries of a record say of the attempt so far."""

from collections.abc import Mapping, Sequence
from contextlib import suppress
from datetime import datetime
from pathlib import Path

from assistant.attempts.papers import AttemptPapers
from assistant.errors import RecordError
from assistant.guide.guide import Guide, ReplayError
from assistant.guide.progress import Mode
from assistant.text import shown


def lived_again(papers: AttemptPapers, entries: Sequence[Mapping[str, object]], name: Path) -> Guide:
    """A guide that has lived through these entries.

    Raises:
        RecordError: the entries do not follow from each other by this program.
    """
    try:
        mode = Mode(str(entries[0].get("mode")))
        guide = papers.guide(mode, {key: value for key, value in entries[0].items() if isinstance(value, str)})
        guide.replay(entries)
    except (ReplayError, ValueError) as error:
        raise RecordError(
            f"{shown(name)}: {error}, so it was made by another version of this program.",
            "Use that version, or start a new attempt.",
        ) from error
    return guide


def last_time(entries: Sequence[Mapping[str, object]]) -> datetime | None:
    """The latest time in any of these entries; None where there is none."""
    times = []
    for entry in entries:
        with suppress(ValueError):
            times.append(datetime.fromisoformat(str(entry.get("at", ""))))
    return max((at for at in times if at.tzinfo is not None), default=None)
