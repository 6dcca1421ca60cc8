"""What the verbs `run`, `resume` and `demo` share: papers, record, signals, result, exit codes."""

import hashlib
import re
import signal
from collections.abc import Mapping, Sequence
from contextlib import suppress
from datetime import datetime
from pathlib import Path

from platformdirs import user_data_path

from assistant import __version__
from assistant.checklist.library import library_folder
from assistant.cli.papers import Papers
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.screen import JsonScreen, PlainScreen
from assistant.errors import RecordError, UsageError
from assistant.guide.effects import Outcome
from assistant.guide.guide import Guide, ReplayError
from assistant.guide.progress import Mode
from assistant.ports import Ear, Post
from assistant.record.file import RecordFile
from assistant.report.results import lines
from assistant.settings import load_settings
from assistant.station import Interrupted

DEFAULT_CHECKLIST = "primary-and-secondary"
EXIT_CODES = {Outcome.PASSED: 0, Outcome.NOT_PASSED: 3, Outcome.NOT_COMPLETED: 4, Outcome.STOPPED: 4}
"""How an attempt ended, as an exit code."""
_LEARNER_CODE = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]{0,31}")


def pins(papers: Papers, mode: Mode, learner: str, checklist: str, order: str | None) -> dict[str, str]:
    """What the first entry of a record pins, so that it can be told a year later.

    Raises:
        UsageError: the learner's code is none.
    """
    if not _LEARNER_CODE.fullmatch(learner):
        raise UsageError(
            "A learner's code has 1 to 32 letters, digits, hyphens or underscores.",
            "Use a code, not a name, for example A17.",
        )
    return {
        "program": f"checkoff {__version__}",
        "mode": mode.value,
        "learner": learner,
        "checklist": _findable(checklist),
        "checklist_version": papers.checklist.version,
        "checklist_digest": papers.checklist.digest,
        "order": _findable(order or papers.checklist.order),
        "order_digest": papers.order.digest,
        **table_digests(),
        "waits": "short" if papers.short_waits else "full",
    }


def table_digests() -> dict[str, str]:
    """Digests of the library's tables that every attempt uses, by the names of their pins."""
    return {f"{table}_digest": _digest_of(library_folder() / f"{table}.toml") for table in ("limits", "names")}


def ear_pins(ear: Ear | None) -> dict[str, str]:
    """Which recogniser and model listen; nothing where none does."""
    return {} if ear is None else {"ear": ear.name, "ear_model": ear.model_digest}


def _findable(name_or_path: str) -> str:
    """A path as it can be found from any folder; a name as it is."""
    path = Path(name_or_path)
    return str(path.resolve()) if path.suffix or len(path.parts) > 1 else name_or_path


def _digest_of(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest() if path.is_file() else ""


def lived_again(papers: Papers, entries: Sequence[Mapping[str, object]], name: Path) -> tuple[Guide, Mode]:
    """A guide that has lived through these entries, and the mode of the attempt.

    Raises:
        RecordError: the entries do not follow from each other by this program.
    """
    try:
        mode = Mode(str(entries[0].get("mode")))
        guide = papers.guide(mode, {key: value for key, value in entries[0].items() if isinstance(value, str)})
        guide.replay(entries)
    except (ReplayError, ValueError) as error:
        raise RecordError(
            f"{name}: {error}, so it was made by another version of this program.",
            "Use that version, or start a new attempt.",
        ) from error
    return guide, mode


def last_time(entries: Sequence[Mapping[str, object]]) -> datetime | None:
    """The latest time that any of these entries tells; None where none tells one."""
    times = []
    for entry in entries:
        with suppress(ValueError):
            times.append(datetime.fromisoformat(str(entry.get("at", ""))))
    return max((at for at in times if at.tzinfo is not None), default=None)


class RecordPlace:
    """Where the record of a new attempt goes.

    Args:
        folder: the folder, None for the platform's own for user data.
        checklist, learner: become part of the file's name.
        at: UTC, becomes part of the file's name.
    """

    def __init__(self, folder: str | None, checklist: str, learner: str, at: datetime) -> None:
        place = Path(folder).expanduser() if folder else records_folder()
        self.path = place / f"{at:%Y%m%dT%H%M%S}-{checklist}-{learner}.jsonl"

    def create(self, opening: Mapping[str, object]) -> RecordFile:
        """Make the record with its first entry on disk.

        Raises:
            RecordError: the folder or the file cannot be made.
        """
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        except OSError as cause:
            raise RecordError(
                f"The folder {self.path.parent} cannot be made: {cause.strerror}.",
                "Choose another one with --records.",
            ) from cause
        for count in range(1, 100):
            path = self.path if count == 1 else self.path.with_stem(f"{self.path.stem}-{count}")
            if not path.exists():
                self.path = path
                break
        return RecordFile.create(self.path, opening)


def records_folder() -> Path:
    """The folder for this user's records: that of the settings, else the platform's."""
    named = load_settings().records.folder
    return Path(named).expanduser() if named else user_data_path("checkoff", appauthor=False) / "records"


def end_on_signals(post: Post) -> None:
    """Let an interrupt or a request to end close the attempt properly, its record whole."""

    def handler(_number: int, _frame: object) -> None:
        post(Interrupted())

    for name in ("SIGINT", "SIGTERM", "SIGHUP"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), handler)


def screen_for(*, as_json: bool, echo_typed: bool, bare: bool = False) -> PlainScreen | JsonScreen:
    """The screen that was asked for."""
    return JsonScreen() if as_json else PlainScreen(echo_typed=echo_typed, bare=bare)


def tell_result(guide: Guide, outcome: Outcome, record: Path, *, as_json: bool) -> int:
    """Print the result and where the record is; return the exit code."""
    results = guide.results()
    if as_json:
        write_json({"outcome": outcome.value, "results": results.body(), "record": str(record)})
    else:
        for line in ["", *lines(results, outcome)]:
            say_line(line)
    tell(f"Record: {record}")
    if outcome is Outcome.STOPPED:
        tell(f"To go on: checkoff resume {record}")
    return EXIT_CODES[outcome]
