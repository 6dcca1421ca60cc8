"""A record as a crash leaves it: its end never reached the disk, nor did what the book of heads says of that end."""

import os
from pathlib import Path

from assistant.record.entry import read_line
from assistant.record.head_book import FILE


def crashed(path: Path, content: bytes) -> Path:
    """Leave only this beginning of the record, and of the book what was written before it ended there."""
    path.write_bytes(content)
    complete = content.count(b"\n")
    attempt = read_line(content.splitlines(keepends=True)[0]).digest
    book = Path(os.environ["CHECKOFF_HEADS"]) / FILE
    kept = b""
    for line in book.read_bytes().splitlines(keepends=True):
        fields = read_line(line).fields
        if fields.get("attempt") == attempt and int(fields["entries"]) > complete:
            break
        kept += line
    book.write_bytes(kept)
    return path
