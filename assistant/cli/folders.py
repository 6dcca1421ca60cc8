"""The user's folders: records and keys."""

import argparse
from pathlib import Path


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


def add_keys_option(parser: argparse.ArgumentParser) -> None:
    """Add the option that names the folder with the keys."""
    parser.add_argument("--keys", metavar="FOLDER", help="where keys are kept (default: your own folder)")
