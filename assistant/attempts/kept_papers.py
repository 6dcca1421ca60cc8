"""The papers of attempts, kept beside their records by digest: a checklist that changes later takes no record with it.

In the folder `FOLDER` beside the records lies a folder for each digest that a first entry pins, with the files as they
were. What is found there is believed only if it gives that digest again. The tables of the library are not kept.
"""

import hashlib
import os
import re
import shutil
import tempfile
from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path

from assistant.checklist.library import find, library_folder
from assistant.checklist.load import load, load_sheet
from assistant.errors import AssistantError, ChecklistError, OrderError, RecordError
from assistant.orders.load import FOLDER as ORDERS
from assistant.orders.load import load_order
from assistant.record.disk import OWNER_ONLY, fsync_folder, make_folder, reason_of, refused, write_new
from assistant.text import shown

FOLDER = "papers"


def keep_papers(folder: Path, opening: Mapping[str, object]) -> None:
    """Keep the papers that a first entry pins, where they are not kept yet.

    Args:
        folder: that of the record.
        opening: the first entry.

    Raises:
        RecordError: they cannot be written.
    """
    place = folder / FOLDER
    for pin, files in (
        ("checklist", _files_of_checklist),
        ("order", _files_of_order),
        ("school", _file_of_school),
    ):
        digest = str(opening.get(f"{pin}_digest", ""))
        if not _is_digest(digest) or (place / digest).is_dir():
            continue
        try:
            found = files(str(opening.get(pin, "")))
            _keep(place, digest, {name: path.read_bytes() for name, path in found.items()}, _PINS[pin])
        except OSError as cause:
            raise RecordError(
                f"The papers of this attempt cannot be kept in {shown(place)}: {reason_of(cause)}.",
                "Check folder and disk.",
            ) from cause
        except AssistantError:  # it has changed since it was read for the attempt, or was drawn and never a file
            continue


def keep_order(folder: Path, name: str, text: str) -> Path:
    """Keep an order that was drawn and never a file, before an attempt with it begins; return where it is.

    Args:
        folder: that of the records.
        name: what the order is called.
        text: of its file.

    Raises:
        OrderError: it is no order.
        RecordError: it cannot be written.
    """
    digest = hashlib.sha256(text.encode()).hexdigest()
    kept = folder / FOLDER / digest / f"{name}.toml"
    try:
        _keep(folder / FOLDER, digest, {kept.name: text.encode()}, lambda path: load_order(str(path)).digest)
        if not kept.is_file():  # the same order under another name
            write_new(kept, text.encode(), OWNER_ONLY)
    except OSError as cause:
        raise refused(kept, cause) from cause
    return kept


def papers_to_send(folder: Path, opening: Mapping[str, object], longest: int) -> dict[str, dict[str, str]]:
    """What is kept of the papers that a first entry pins: by digest the texts of the files, the main one first.

    Args:
        folder: that of the record.
        opening: the first entry.
        longest: characters of a file; a paper with a longer one is left out.
    """
    found: dict[str, dict[str, str]] = {}
    for pin in _PINS:
        digest = str(opening.get(f"{pin}_digest", ""))
        place = folder / FOLDER / digest
        main = f"{Path(str(opening.get(pin, ''))).stem}.toml"
        if not _is_digest(digest) or not (place / main).is_file():
            continue
        paths = sorted(place.rglob("*.toml"), key=lambda path: (path != place / main, path))
        with suppress(OSError, ValueError):  # without it the desk takes its own, if that is the same
            texts = {path.relative_to(place).as_posix(): path.read_text(encoding="utf-8") for path in paths}
            if max(map(len, texts.values())) <= longest:
                found[digest] = texts
    return found


def keep_received(folder: Path, opening: Mapping[str, object], papers: Mapping[str, Mapping[str, str]]) -> None:
    """Keep papers that came with a record from another machine, if they are what its first entry pins.

    Args:
        folder: that of the record.
        opening: the first entry.
        papers: as of `papers_to_send`.

    Raises:
        RecordError: they cannot be written.
    """
    for pin, digest_of in _PINS.items():
        digest = str(opening.get(f"{pin}_digest", ""))
        files = {name: text.encode() for name, text in papers.get(digest, {}).items()}
        if not files or (folder / FOLDER / digest).is_dir() or not all(map(_SAFE.fullmatch, files)):
            continue
        try:
            _keep(folder / FOLDER, digest, files, digest_of)
        except OSError as cause:
            raise refused(folder / FOLDER, cause) from cause
        except AssistantError:  # it is no such paper
            continue


def kept_paper(folder: Path, opening: Mapping[str, object], pin: str) -> str:
    """The path of a kept paper; as the first entry names it where none is kept.

    Args:
        folder: that of the record.
        opening: the first entry.
        pin: "checklist", "order" or "school".
    """
    named = str(opening.get(pin, ""))
    digest = str(opening.get(f"{pin}_digest", ""))
    kept = folder / FOLDER / digest / f"{Path(named).stem}.toml"
    return str(kept) if _is_digest(digest) and kept.is_file() else named


def _digest_of_file(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()


_PINS: Mapping[str, Callable[[Path], str]] = {
    "checklist": lambda path: load(str(path)).digest,
    "order": lambda path: load_order(str(path)).digest,
    "school": _digest_of_file,
}
"""What a first entry pins, with what gives the digest."""
_SAFE = re.compile(r"(?:[A-Za-z0-9_-][A-Za-z0-9._-]{0,63}/){0,3}[A-Za-z0-9_-][A-Za-z0-9._-]{0,63}\.toml")
"""Names of files that are taken from another machine: none leads out of its folder."""


def _is_digest(text: str) -> bool:
    return re.fullmatch(r"[0-9a-f]{64}", text) is not None


def _files_of_checklist(named: str) -> dict[str, Path]:
    """Its file and those of its parts, by their places below the folder of the checklist."""
    sheet = load_sheet(named)
    root = sheet.paper.path.parent.resolve()
    found = {sheet.paper.path.name: sheet.paper.path}
    for place in (*sheet.places.values(), *sheet.plans):
        path = place.paper.path.resolve()
        base = root if path.is_relative_to(root) else library_folder().resolve()
        found[str(path.relative_to(base))] = path
    return found


def _files_of_order(named: str) -> dict[str, Path]:
    path = find(named, "order", OrderError, ORDERS)
    return {path.name: path}


def _file_of_school(named: str) -> dict[str, Path]:
    path = Path(named)
    if not path.is_file():
        raise ChecklistError(f"There is no file {shown(path)}.")
    return {path.name: path}


def _keep(place: Path, digest: str, files: Mapping[str, bytes], digest_of: Callable[[Path], str]) -> None:
    """Write files, see whether they give that digest, and only then put them in their place.

    Raises:
        AssistantError: what was written cannot be read.
        OSError: it cannot be written.
    """
    make_folder(place)
    with tempfile.TemporaryDirectory(prefix=".keeping-", dir=place) as name:
        made = Path(name) / digest
        for relative, content in files.items():
            make_folder((made / relative).parent)
            write_new(made / relative, content, OWNER_ONLY)
        first = made / next(iter(files))
        if digest_of(first) != digest:
            return
        with suppress(FileExistsError):  # another attempt was quicker
            if not (place / digest).exists():
                os.rename(made, place / digest)  # noqa: PTH104 - a folder of its own
                fsync_folder(place / digest)
        shutil.rmtree(made, ignore_errors=True)
