"""The user's folders: records, keys and the book of heads."""

import argparse
import os
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.cli.printing import tell

if TYPE_CHECKING:
    from assistant.attempts.proof import Here
    from assistant.record.head_book import HeadBook

HEADS_VARIABLE = "CHECKOFF_HEADS"
"""Environment variable that names the folder of the book of heads in place of the setting and the platform's."""


def records_folder(given: str | None = None) -> Path:
    """The folder with this user's records: the one that was named, else that of the settings, else the platform's."""
    # Only here: reading the settings takes a library that most verbs do not need.
    from platformdirs import user_data_path

    from assistant.settings import load_settings

    named = given or load_settings().records.folder
    return Path(named).expanduser() if named else user_data_path("checkoff", appauthor=False) / "records"


def keys_folder(given: str | None) -> Path:
    """The folder with the keys: the one that was named, else the platform's for this user's configuration."""
    from platformdirs import user_config_path

    return Path(given).expanduser() if given is not None else user_config_path("checkoff", appauthor=False) / "keys"


def here(keys: str | None = None) -> "Here":
    """What this machine knows: its book of heads, its keys, the school's roster.

    Args:
        keys: the folder with the keys, with the roster in it; None for this user's own, and the roster of the settings.

    Raises:
        SettingsError: there are settings, and they cannot be read.
    """
    from assistant.attempts.proof import Here

    return Here(head_book(), keys_folder(keys), roster_path(keys))


def roster_path(keys: str | None) -> Path | None:
    """The roster of the settings, where no folder of keys is named; None for the one in the folder of the keys.

    Raises:
        SettingsError: there are settings, and they cannot be read.
    """
    from assistant.settings_path import settings_path

    if keys is not None or not settings_path().exists():
        return None
    from assistant.settings import load_settings

    named = load_settings().lab.roster
    return Path(named).expanduser() if named else None


def add_keys_option(parser: argparse.ArgumentParser) -> None:
    """Add the option that names the folder with the keys."""
    parser.add_argument("--keys", metavar="FOLDER", help="where keys are kept (default: your own folder)")


def head_book() -> "HeadBook":
    """The book of heads of this user: where `HEADS_VARIABLE` or the settings say, else in the platform's folder.

    Raises:
        SettingsError: there are settings, and they cannot be read.
    """
    # Only here: most verbs do not need them, and the settings' library only where there are settings.
    from platformdirs import user_data_path

    from assistant.record.head_book import HeadBook
    from assistant.settings_path import settings_path

    folder, copies = os.environ.get(HEADS_VARIABLE, ""), ""
    if settings_path().exists():
        from assistant.settings import load_settings

        records = load_settings().records
        folder, copies = folder or records.heads, records.heads_copy
    place = Path(folder).expanduser() if folder else user_data_path("checkoff", appauthor=False) / "heads"
    return HeadBook(place, Path(copies).expanduser() if copies else None, tell)
