"""What the first entry of a record pins, so that a year later it is known what the attempt was made with."""

import functools
import hashlib
import re
from collections.abc import Mapping
from pathlib import Path

import assistant
from assistant.adapters import answer_reader
from assistant.attempts.papers import AttemptPapers
from assistant.checklist.library import library_folder
from assistant.checklist.load import load
from assistant.errors import AssistantError, UsageError
from assistant.guide.progress import Mode
from assistant.orders.load import load_order
from assistant.ports import Ear, Recogniser
from assistant.text import shown

JUDGING = ("checklist", "dosing", "guide", "orders", "spoken")
"""Rooms whose code decides what an attempt's entries and result are."""

_LEARNER_CODE = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]{0,31}")


def pins(papers: AttemptPapers, mode: Mode, learner: str, checklist: str, order: str | None) -> dict[str, str]:
    """What is known before anybody listens.

    Args:
        papers: of the attempt.
        mode: practice or check-off.
        learner: the learner's code.
        checklist: name or path, as it was given.
        order: the same; None takes the checklist's own.

    Raises:
        UsageError: the learner's code is not valid.
    """
    if not _LEARNER_CODE.fullmatch(learner):
        raise UsageError(
            "A learner's code has 1 to 32 letters, digits, hyphens or underscores.",
            "Use a code, not a name, for example A17.",
        )
    return {
        **program_pins(),
        "mode": mode.value,
        "learner": learner,
        "checklist": _findable(checklist),
        "checklist_version": papers.checklist.version,
        "checklist_digest": papers.checklist.digest,
        "order": _findable(order or papers.checklist.order),
        "order_digest": papers.order.digest,
        **table_digests(),
        **({"school": _findable(papers.school), "school_digest": papers.school_digest} if papers.school else {}),
        "waits": "short" if papers.short_waits else "full",
    }


_TABLES = ("limits", "names", "pairs", "shelf")


def table_digests() -> dict[str, str]:
    """Digests of the library's tables that every attempt uses, by the names of their pins."""
    return {f"{table}_digest": _digest_of(library_folder() / f"{table}.toml") for table in _TABLES}


@functools.cache
def program_pins() -> dict[str, str]:
    """Which program judges: its version, and SHA-256 (hex) over the code of the rooms of `JUDGING` and the reader.

    Many states of the code have the same version; the digest tells them apart, and so it does where the second reader
    of answers is another one or was left out. There is none where only compiled files are installed.
    """
    package = Path(assistant.__file__).parent
    digest = hashlib.sha256()
    files = [path for room in JUDGING for path in sorted((package / room).rglob("*.py"))]
    for path in files:
        # Line ends are made alike: some installations change them, and they change no judgement.
        content = path.read_bytes().replace(b"\r\n", b"\n")
        digest.update(f"{path.relative_to(package).as_posix()} {len(content)}\n".encode() + content)
    digest.update(f"{answer_reader.NAME} {answer_reader.reader_digest()}\n".encode())
    pinned = {"program": f"checkoff {assistant.__version__}"}
    return pinned | ({"program_digest": digest.hexdigest()} if files else {})


def changed_table(opening: Mapping[str, object]) -> str:
    """Which of the library's tables is not what the attempt began with, in a sentence; empty where all are."""
    for pin, digest in table_digests().items():
        if pin in opening and opening[pin] != digest:
            return f"The table of {pin.removesuffix('_digest')} has changed since the attempt began, or is gone."
    return ""


def under_a_librarys_name(opening: Mapping[str, object]) -> str:
    """Which pinned paper has a name of the library and other content, in a sentence; empty where none has.

    A file of the user's own hides the library's of the same name, and a path may end in any name: whoever reads the
    name would take it for the library's. So is one that an update of the library has changed since.
    """
    for what, below in (("checklist", ""), ("order", "orders")):
        name = Path(str(opening.get(what, ""))).stem
        digest = _library_digest(what, library_folder() / below / f"{name}.toml")
        if digest and digest != opening.get(f"{what}_digest"):
            return f"Its {what} is not the library's {shown(name)}: it has the same name and other content."
    return ""


@functools.cache
def _library_digest(what: str, path: Path) -> str:
    """Of a checklist or an order of the library; empty where there is none that can be used."""
    if not path.is_file():
        return ""
    try:
        return load(str(path)).digest if what == "checklist" else load_order(str(path)).digest
    except AssistantError:
        return ""


def ear_pins(ear: Ear | Recogniser | None) -> dict[str, str]:
    """Which recogniser and model listen; nothing where none does."""
    return {} if ear is None else {"ear": ear.name, "ear_model": ear.model_digest}


def _findable(name_or_path: str) -> str:
    """A path as it can be found from any folder; a name as it is."""
    path = Path(name_or_path)
    return str(path.resolve()) if path.suffix or len(path.parts) > 1 else name_or_path


def _digest_of(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest() if path.is_file() else ""
