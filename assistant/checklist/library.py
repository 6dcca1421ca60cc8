"""Where authored files lie: the user's own folder first, then the project's own library."""

import difflib
import os
from collections.abc import Iterable
from pathlib import Path

from platformdirs import user_data_path

from assistant.errors import AssistantError
from assistant.text import quoted

FOLDER_SETTING = "CHECKOFF_CHECKLISTS"
"""Environment variable that names the user's own folder in place of the platform's."""
NO_CHECKLISTS = frozenset({"limits", "names", "pairs", "shelf", "works"})
"""Files of the library that are tables for the whole library and no checklists."""


def library_folder() -> Path:
    """The project's own checklists, with their orders in the folder ``orders`` below.

    An installed package carries them inside itself; a source checkout has them beside the package.
    """
    package = Path(__file__).resolve().parent.parent
    carried = package / "_checklists"
    return carried if carried.is_dir() else package.parent / "checklists"


def user_folder() -> Path:
    """The user's own checklists: `FOLDER_SETTING`, or the platform's folder for user data."""
    named = os.environ.get(FOLDER_SETTING, "")
    return Path(named).expanduser() if named else user_data_path("checkoff", appauthor=False) / "checklists"


def available(below: str = "") -> dict[str, Path]:
    """Names and files, in the order of the names; a user's file hides the project's of the same name.

    Args:
        below: "" for checklists, "orders" for orders.
    """
    found: dict[str, Path] = {}
    for folder in (library_folder() / below, user_folder() / below):
        try:
            files = sorted(folder.glob("*.toml"))
        except OSError:  # a folder that may not be read holds nothing for us
            continue
        found.update({file.stem: file for file in files if below or file.stem not in NO_CHECKLISTS})
    return dict(sorted(found.items()))


def find(name_or_path: str, kind: str, error: type[AssistantError], below: str = "") -> Path:
    """The file that a name or a path means.

    Args:
        name_or_path: a file stem, or a path where it ends with ``.toml`` or holds a separator.
        kind: what it is called in a sentence, "checklist" or "order".
        error: what is raised.
        below: as in `available`.

    Raises:
        AssistantError: `error`, where no such file is known; names the nearest known names.
    """
    if is_path(name_or_path):
        try:
            return Path(name_or_path).expanduser()
        except RuntimeError:  # a user that does not exist: then it is a folder of that name
            return Path(name_or_path)
    known = available(below)
    if not name_or_path:
        raise error(f"No {kind} is named.", f"Name one of: {', '.join(known) or 'none is there'}.")
    if name_or_path in known:
        return known[name_or_path]
    folded = {name.casefold(): path for name, path in known.items()}
    if name_or_path.casefold() in folded:
        return folded[name_or_path.casefold()]
    remedy = nearest(name_or_path, known) or f"Known are: {', '.join(known) or 'none'}."
    raise error(f"There is no {kind} called {quoted(name_or_path)}.", remedy)


def nearest(given: str, known: Iterable[str]) -> str:
    """``Did you mean "a" or "b"?`` for the known names nearest to a given one; "" where none is near."""
    near = difflib.get_close_matches(given[:60].casefold(), list(known), n=3, cutoff=0.6)
    return f"Did you mean {either(near)}?" if near else ""


def is_path(value: str) -> bool:
    """Whether a value is meant as a path and not as a name."""
    return value.endswith(".toml") or "/" in value or os.sep in value


def either(names: list[str]) -> str:
    """``"a"``, ``"a" or "b"``, ``"a", "b" or "c"``."""
    named = [quoted(name) for name in names]
    return named[0] if len(named) == 1 else f"{', '.join(named[:-1])} or {named[-1]}"
