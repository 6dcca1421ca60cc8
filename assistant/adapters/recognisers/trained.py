"""The recogniser that was trained for the bench: this project's own weights, in the models folder.

It hears what is said at a bench, and writes it in small letters. The model that it began as hears free words (a reason,
a note), and bears out digits and choices of which the trained one is not sure (`borne_out`); it is loaded when it is
first needed.
"""

from collections.abc import Mapping
from pathlib import Path

from assistant.adapters.models import Check, joint_digest
from assistant.adapters.recognisers import bundled
from assistant.adapters.recognisers.manner import TRAINED
from assistant.adapters.recognisers.witness import Witness
from assistant.adapters.shipped import check_shipped, shipped_folder
from assistant.errors import ModelError
from assistant.ports import Recogniser, Utterance
from assistant.spoken.expect import Expect, TextExpected

NAME = "whisper-tiny.en-bench"
"""The trained model's name in records and for `--ear`, and its folder's."""
PINNED = {
    "config.json": "14b1b421a90349bc551b881461426b561a874049cb9e4c4864f2ca384f6a7cc5",
    "model.bin": "3651a334e86686def747ef5cefa74673ede40d0b8f2ca3c39511e350ab10ae55",
    "tokenizer.json.gz": "931ed9139b3b7dba71b2121b2d3fcd51a9b8df1a4aac48a945a83c8713318168",
    "vocabulary.json.gz": "89a77f2643b21172ab7539cbc584271c984c3c1ee36a9cc40b5369e9274a01c8",
}
"""SHA-256 of its files; others with the same names are refused."""

_REMEDY = "Install the program again, or name another recogniser with --ear."


def trained_folder() -> Path | None:
    """Where the model lies: in an installed package, or beside it in a checkout. None where it does not."""
    return shipped_folder(NAME)


def open_trained(folder: Path | None = None, pinned: Mapping[str, str] | None = None) -> "TrainedEar":
    """Load the trained model, which hears English.

    Args:
        folder: where it lies; found by itself where None.
        pinned: SHA-256 (hex) by file name; `PINNED` where None.

    Raises:
        ModelError: it is not there, or its files are not the tested ones.
    """
    folder = _found(folder)
    pinned = PINNED if pinned is None else pinned
    witness = Witness(_published_digest(), bundled.open_bundled) if bundled.bundled_folder() else None
    return TrainedEar(bundled.open_pinned(NAME, folder, pinned, _REMEDY, TRAINED, witness), witness)


def digest() -> str:
    """The digests of the models that listen, as they were tested: of the trained one, and of the one beside it."""
    beside = [_published_digest()] if bundled.bundled_folder() else []
    return " ".join([joint_digest(dict(PINNED)), *beside])


def check_trained(folder: Path | None = None) -> Check:
    """Compare the trained model's files with the tested ones.

    Raises:
        ModelError: it is not there, or a file cannot be read.
    """
    return check_shipped(NAME, _found(folder), PINNED)


def _published_digest() -> str:
    return joint_digest(dict(bundled.PINNED))


def _found(folder: Path | None) -> Path:
    folder = trained_folder() if folder is None else folder
    if folder is None:
        raise ModelError("The recogniser that was trained for the bench is not installed.", _REMEDY)
    return folder


class TrainedEar:
    """The trained model, and another one beside it; see `assistant.ports.Recogniser`.

    Args:
        model: hears everything but free words.
        witness: hears those, and bears out what `model` is not sure of; None where there is none, and the trained one
            hears them too.
    """

    def __init__(self, model: Recogniser, witness: Witness | None) -> None:
        self.name = model.name
        # Both, and not one of the two together: so each can be compared with its files.
        self.model_digest = model.model_digest if witness is None else f"{model.model_digest} {witness.model_digest}"
        self._model = model
        self._witness = witness

    @property
    def model(self) -> Recogniser:
        """The trained model itself, which asks the other one."""
        return self._model

    def begin(self, expect: Expect) -> Utterance:
        """Start an utterance.

        Raises:
            ModelError: the model for free words cannot be loaded.
        """
        if isinstance(expect, TextExpected) and self._witness is not None:
            return self._witness.begin(expect)
        return self._model.begin(expect)

    def close(self) -> None:
        """Free the models."""
        self._model.close()
        if self._witness is not None:
            self._witness.close()
