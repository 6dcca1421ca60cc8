"""Where the record of a new attempt goes."""

from collections.abc import Mapping
from contextlib import suppress
from datetime import datetime
from pathlib import Path

from assistant.attempts.kept_papers import keep_papers
from assistant.errors import RecordError
from assistant.record.disk import make_folder
from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from assistant.text import shown

MOST_OF_ONE_NAME = 99
"""Records of the same checklist and learner that may begin within one second."""


class RecordPlace:
    """Where the record of a new attempt goes.

    Args:
        folder: the folder with the records.
        checklist, learner: become part of the file's name.
        at: UTC, becomes part of the file's name.
        book: where the record's heads are noted; None for nowhere.
    """

    def __init__(self, folder: Path, checklist: str, learner: str, at: datetime, book: HeadBook | None = None) -> None:
        self._book = book
        self.path = folder / f"{at:%Y%m%dT%H%M%S}-{checklist}-{learner}.jsonl"

    @property
    def heads(self) -> Path:
        """Folder of the book of heads; that of the record where there is none."""
        return (self._book.path if self._book is not None else self.path).parent

    def create(self, opening: Mapping[str, object]) -> RecordFile:
        """Make the record with its first entry on disk.

        Raises:
            RecordError: the folder or the file cannot be made.
        """
        try:
            make_folder(self.path.parent)
        except OSError as cause:
            raise RecordError(
                f"The folder {shown(self.path.parent)} cannot be made: {cause.strerror}.",
                "Choose another one with --records.",
            ) from cause
        for count in range(1, MOST_OF_ONE_NAME + 1):
            path = self.path if count == 1 else self.path.with_stem(f"{self.path.stem}-{count}")
            if not path.exists():
                self.path = path
                break
        with suppress(RecordError):  # without them a later change of a paper is told, and nothing else is lost
            keep_papers(self.path.parent, opening)
        return RecordFile.create(self.path, opening, self._book)
