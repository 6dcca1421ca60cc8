"""Documents on disk: whole or not at all, readable by their owner only."""

import os
import tempfile
from contextlib import suppress
from pathlib import Path

from assistant.errors import RecordError
from assistant.text import shown


def write_document(path: Path, content: bytes) -> None:
    """Write a document; a file that is there is replaced once the new one is whole.

    Args:
        path: where to.
        content: all of it.

    Raises:
        RecordError: it cannot be written.
    """
    try:
        descriptor, name = tempfile.mkstemp(prefix=".checkoff-", dir=path.parent)  # mode 0600
        try:
            with os.fdopen(descriptor, "wb") as stream:
                stream.write(content)
            os.replace(name, path)  # noqa: PTH105 - a name from mkstemp
        except BaseException:
            with suppress(OSError):
                os.unlink(name)  # noqa: PTH108 - a name from mkstemp
            raise
    except (OSError, ValueError) as cause:
        why = getattr(cause, "strerror", None) or "its name is not a valid path"
        raise RecordError(
            f"{shown(path)} cannot be written: {why}.",
            "Check folder and disk, or choose another file.",
        ) from cause
