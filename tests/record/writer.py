"""A process that records until it is killed: ``python -m tests.record.writer RECORD``.

Opens or resumes RECORD, appends entry after entry, and acknowledges each on stdout, only after `append` has
returned, as "sequence digest". What cannot be recorded is told as "error: ..." and ends it.
"""

import itertools
import os
import sys
from pathlib import Path

from assistant.errors import RecordError
from assistant.record.file import RecordFile
from tests.record.examples import body, opening


def main() -> int:
    """Record until killed."""
    path = Path(sys.argv[1])
    try:
        record = RecordFile.reopen(path) if path.exists() else RecordFile.create(path, opening())
        _say("ready")
        for number in itertools.count(1):
            recorded = record.append(body(number))
            _say(f"{recorded.sequence} {recorded.digest}")
    except RecordError as error:
        _say(f"error: {error}")
    return 1


def _say(text: str) -> None:
    # One write, unbuffered: what the reader gets is what was acknowledged.
    os.write(1, f"{text}\n".encode())


if __name__ == "__main__":
    sys.exit(main())
