"""Reading the lines of a record while another thread or process writes it."""

from pathlib import Path

from assistant.record.entry import LONGEST_LINE
from assistant.record.verify import open_record


class RecordLines:
    """The lines of a record by their numbers, from 1; going on where the last ones ended costs no reading again.

    Args:
        path: the record.
    """

    def __init__(self, path: Path) -> None:
        self._path = path
        self._next = 1
        self._offset = 0

    def read(self, first: int, last: int, most_bytes: int) -> list[bytes]:
        """Whole lines without their line feeds; at least one where there is one, however long.

        Args:
            first: number of the first line.
            last: of the last one; fewer come where the file ends before.
            most_bytes: after so many no further line is read.

        Raises:
            RecordError: the file cannot be read.
            OSError: reading failed.
        """
        if first < self._next:
            self._next, self._offset = 1, 0
        found: list[bytes] = []
        size = 0
        with open_record(self._path) as stream:
            stream.seek(self._offset)
            while self._next <= last and size < most_bytes:
                line = stream.readline(LONGEST_LINE + 1)
                if not line.endswith(b"\n"):
                    break
                if self._next >= first:
                    found.append(line[:-1])
                    size += len(line)
                self._next += 1
                self._offset += len(line)
        return found
