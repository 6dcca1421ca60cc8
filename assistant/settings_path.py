"""Where the settings are: it can be asked for without the library that reads them."""

import os
from pathlib import Path

from platformdirs import user_config_path

FILE_SETTING = "CHECKOFF_SETTINGS"
"""Environment variable that names the file in place of the platform's."""


def settings_path() -> Path:
    """The file of the settings: `FILE_SETTING`, or ``settings.toml`` in the platform's folder."""
    named = os.environ.get(FILE_SETTING, "")
    return Path(named).expanduser() if named else user_config_path("checkoff", appauthor=False) / "settings.toml"
