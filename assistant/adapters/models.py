"""Where recogniser models lie, and whether their files are still what they were."""

import hashlib
import mmap
import os
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

from platformdirs import user_data_path
from pydantic import BaseModel, ConfigDict, Field, ValidationError

from assistant.errors import ModelError

FOLDER_SETTING = "CHECKOFF_MODELS"
"""Environment variable that names the models folder in place of the platform's and the checkout's."""
MANIFEST = "manifest.json"
"""In the models folder: digests of the files of every model that was added."""
HOW_TO_ADD = "Put a model folder there, or add one with: checkoff models add FILE"

_ENGLISH_WORDS = ("seven", "thirty", "hundred")


class Engine(StrEnum):
    """What runs a model."""

    VOSK = "vosk"
    WHISPER = "whisper"


@dataclass(frozen=True)
class StoredModel:
    """A model folder; its name is the folder's."""

    name: str
    path: Path
    engine: Engine


class Manifest(BaseModel):
    """Models that were added, each with the SHA-256 (hex) of its files by relative path."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    models: dict[str, dict[str, str]] = Field(default_factory=dict)


def user_folder() -> Path:
    """Where models are added: `FOLDER_SETTING`, or the platform's folder for user data."""
    named = os.environ.get(FOLDER_SETTING, "")
    return Path(named).expanduser() if named else user_data_path("checkoff", appauthor=False) / "models"


def folders(chosen: Path | None = None) -> tuple[Path, ...]:
    """The folders that are looked through, first found first.

    Args:
        chosen: only this one (the option ``--models``).
    """
    if chosen is not None:
        return (chosen,)
    if os.environ.get(FOLDER_SETTING):
        return (user_folder(),)
    checkout = Path(__file__).resolve().parents[2]
    beside = (checkout / "models",) if (checkout / "pyproject.toml").is_file() else ()
    return (user_folder(), *beside)


def stored(chosen: Path | None = None) -> tuple[StoredModel, ...]:
    """Every model folder, in the order of the names; a name counts where it is found first."""
    found: dict[str, StoredModel] = {}
    for folder in folders(chosen):
        try:
            entries = sorted(folder.iterdir())
        except OSError:  # a folder that is not there, or may not be read, holds nothing for us
            continue
        for path in entries:
            engine = engine_of(path)
            if engine is not None and path.name not in found and not path.name.startswith("."):
                found[path.name] = StoredModel(path.name, path, engine)
    return tuple(found[name] for name in sorted(found))


def engine_of(folder: Path) -> Engine | None:
    """What runs the model in this folder; None where it holds none."""
    if (folder / "am" / "final.mdl").is_file() and (folder / "graph").is_dir():
        return Engine.VOSK
    if (folder / "model.bin").is_file() and (folder / "tokenizer.json").is_file():
        return Engine.WHISPER
    return None


def knows_english(model: StoredModel) -> bool:
    """Whether a Vosk model's word table holds English number words; a Whisper model tells when it is loaded."""
    if model.engine is Engine.WHISPER:
        return True
    return all(_holds_word(model.path / "graph", word) for word in _ENGLISH_WORDS)


def digests(folder: Path) -> dict[str, str]:
    """SHA-256 (hex) of each file below a folder, by its path with forward slashes.

    Raises:
        ModelError: a file cannot be read.
    """
    return {path.relative_to(folder).as_posix(): file_digest(path) for path in _files(folder)}


def file_digest(path: Path) -> str:
    """SHA-256 (hex) of a file.

    Raises:
        ModelError: it cannot be read.
    """
    try:
        with path.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except OSError as cause:
        raise ModelError(f"The model file {path} cannot be read ({cause.strerror}).", "Add the model again.") from cause


def joint_digest(by_file: dict[str, str]) -> str:
    """One SHA-256 (hex) for a whole model: of the lines that ``sha256sum`` prints, in the order of the paths."""
    lines = "".join(f"{by_file[name]}  {name}\n" for name in sorted(by_file))
    return hashlib.sha256(lines.encode()).hexdigest()


def read_manifest(folder: Path) -> Manifest:
    """The manifest of a models folder; an empty one where there is none.

    Raises:
        ModelError: the file cannot be read or is no manifest.
    """
    path = folder / MANIFEST
    try:
        return Manifest.model_validate_json(path.read_bytes())
    except FileNotFoundError:
        return Manifest()
    except (OSError, ValidationError) as cause:
        raise ModelError(f"{path} is not a list of model digests.", "Delete it and add the models again.") from cause


def write_manifest(folder: Path, manifest: Manifest) -> None:
    """Replace the manifest of a models folder in one step."""
    fresh = folder / f".{MANIFEST}.new"
    fresh.write_text(manifest.model_dump_json(indent=1) + "\n", encoding="utf-8")
    fresh.replace(folder / MANIFEST)


@dataclass(frozen=True)
class Check:
    """What became of a model's files since it was added.

    Attributes:
        name: the model's.
        changed, missing, extra: relative paths.
        known: the manifest knows the model.
    """

    name: str
    changed: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    extra: tuple[str, ...] = ()
    known: bool = True

    @property
    def is_whole(self) -> bool:
        """Every file is what it was."""
        return self.known and not (self.changed or self.missing or self.extra)


def check(model: StoredModel) -> Check:
    """Compare a model's files with the manifest beside it.

    Raises:
        ModelError: a file or the manifest cannot be read.
    """
    expected = read_manifest(model.path.parent).models.get(model.name)
    if expected is None:
        return Check(model.name, known=False)
    return compare(model.name, expected, digests(model.path))


def compare(name: str, expected: dict[str, str], found: dict[str, str]) -> Check:
    """Compare digests by file."""
    return Check(
        name,
        changed=tuple(sorted(file for file in expected.keys() & found.keys() if expected[file] != found[file])),
        missing=tuple(sorted(expected.keys() - found.keys())),
        extra=tuple(sorted(found.keys() - expected.keys())),
    )


def _files(folder: Path) -> Iterator[Path]:
    return (path for path in sorted(folder.rglob("*")) if path.is_file())


def _holds_word(graph: Path, word: str) -> bool:
    """Whether the word table has this word: lines of text, or inside the graph, each word after its length."""
    table = graph / "words.txt"
    if table.is_file():
        return _contains(table, f"\n{word} ".encode())
    entry = len(word).to_bytes(4, "little") + word.encode()
    return any(_contains(path, entry) for path in sorted(graph.glob("*.fst")))


def _contains(path: Path, wanted: bytes) -> bool:
    try:
        with path.open("rb") as file, mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ) as content:
            return content.find(wanted) >= 0
    except (OSError, ValueError):  # unreadable or empty
        return False
