"""Where a station finds its desk: small files for their owner alone, in the platform's folder for user data."""

import os
import tempfile
from contextlib import suppress
from pathlib import Path
from typing import Annotated

from platformdirs import user_data_path
from pydantic import BaseModel, ConfigDict, Field, ValidationError

from assistant.errors import LinkError
from assistant.record.disk import fsync_folder, make_folder, reason_of
from assistant.text import shown

FOLDER_VARIABLE = "CHECKOFF_LINK"
"""Environment variable that names the folder in place of the platform's."""
_DESK, _PAIRED = "desk.json", "paired-desk.json"


class DeskAddress(BaseModel):
    """A desk, and how a station is known there.

    Attributes:
        url: its address, without a path.
        token: known to the two alone.
        fingerprint: SHA-256 (hex) of its certificate; empty on this machine, where there is no TLS.
        station: the name under which the station was paired; empty on this machine, where any will do.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    url: Annotated[str, Field(pattern=r"^https?://[^/\s]+$", max_length=300)]
    token: Annotated[str, Field(min_length=20, max_length=100)]
    fingerprint: Annotated[str, Field(pattern=r"^([0-9a-f]{64})?$")] = ""
    station: Annotated[str, Field(max_length=64)] = ""


def link_folder() -> Path:
    """Where these files are, and what else desk and stations remember of each other."""
    named = os.environ.get(FOLDER_VARIABLE, "")
    return Path(named).expanduser() if named else user_data_path("checkoff", appauthor=False) / "link"


def desk_file() -> Path:
    """The file in which this machine's desk tells its address, while it is there."""
    return link_folder() / _DESK


def paired_file() -> Path:
    """The file with the desk on another computer that this station is paired with."""
    return link_folder() / _PAIRED


def read_address(path: Path) -> DeskAddress | None:
    """What a file says; None where there is none, or where it cannot be used."""
    try:
        return DeskAddress.model_validate_json(path.read_bytes())
    except (OSError, ValidationError):
        return None


def write_address(path: Path, address: DeskAddress) -> None:
    """Put an address into its file, for its owner alone; whoever reads it sees the old one or the new one.

    Raises:
        LinkError: the file cannot be written.
    """
    write_owner_only(path, address.model_dump_json().encode())


def write_owner_only(path: Path, content: bytes) -> None:
    """Write a file anew, for its owner alone; it is the old one or the new one, never half of it.

    Raises:
        LinkError: the file cannot be written.
    """
    try:
        make_folder(path.parent)
        descriptor, name = tempfile.mkstemp(prefix=".new-", dir=path.parent)  # readable by its owner only
        try:
            with os.fdopen(descriptor, "wb") as stream:
                stream.write(content)
                stream.flush()
                os.fsync(stream.fileno())
            os.replace(name, path)  # noqa: PTH105 - both are texts
        except BaseException:
            with suppress(OSError):
                Path(name).unlink()
            raise
        fsync_folder(path)
    except OSError as cause:
        raise LinkError(f"{shown(path)} cannot be written: {reason_of(cause)}.", "Check folder and disk.") from cause
