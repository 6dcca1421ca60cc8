"""Words as sound, from synthesisers other than the one that the program speaks with."""

import shutil
import subprocess
import tempfile
import wave
from pathlib import Path

import numpy as np
import numpy.typing as npt
import soxr

FLITE_VOICES = ("slt", "kal16", "rms", "awb")
"""Voices of flite; every other name is one of espeak-ng's: en-us, en-gb, en-gb-scotland, en-us+f3."""
CLEAR_WPM = 140
"""Words a minute of somebody who speaks clearly to a machine."""
_LIMIT_S = 60


def missing_programs() -> list[str]:
    """Names of the programs needed here that this machine lacks."""
    return [name for name in ("espeak-ng", "flite") if shutil.which(name) is None]


def write_words(voice: str, text: str, file: Path) -> None:
    """Write `text`, spoken clearly by `voice`, into a WAV file."""
    if voice in FLITE_VOICES:
        command = ["flite", "-voice", voice, "--setf", "duration_stretch=1.15", "-t", text, "-o", str(file)]
    else:
        command = ["espeak-ng", "-v", voice, "-s", str(CLEAR_WPM), "-w", str(file), "--", text]
    subprocess.run(command, check=True, capture_output=True, timeout=_LIMIT_S)


def words(voice: str, text: str, rate_hz: int = 16_000) -> npt.NDArray[np.int16]:
    """The same as mono samples."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "words.wav"
        write_words(voice, text, file)
        with wave.open(str(file), "rb") as sound:
            own_rate_hz = sound.getframerate()
            samples = np.frombuffer(sound.readframes(sound.getnframes()), dtype="<i2")
    return samples if own_rate_hz == rate_hz else soxr.resample(samples, own_rate_hz, rate_hz)
