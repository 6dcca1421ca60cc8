"""Synthetic speakers for tests: words to sound, by programs that are installed for that."""

import io
import shutil
import subprocess

import numpy as np
import pytest
import soundfile
import soxr

ESPEAK, FLITE = "espeak-ng", "flite"


def spoken(words, voice="flite:slt", pause_s=0.3):
    """The words as 16 kHz mono 16-bit bytes, with silence around them; skips where the program is missing.

    Args:
        words: what is said.
        voice: "espeak-ng:VOICE" or "flite:VOICE".
        pause_s: silence before and after.
    """
    program, _, name = voice.partition(":")
    if shutil.which(program) is None:
        pytest.skip(f"{program} is not installed")
    if program == ESPEAK:
        command = [program, "-v", name, "-s", "150", "--stdout", words]
    else:
        command = [program, "-voice", name, "-t", words, "-o", "/dev/stdout"]
    raw = subprocess.run(command, capture_output=True, check=True).stdout
    samples, rate = soundfile.read(io.BytesIO(raw), dtype="float32")
    sound = soxr.resample(samples, rate, 16_000)
    quiet = np.zeros(round(16_000 * pause_s), dtype=np.float32)
    whole = np.concatenate([quiet, 0.5 * sound / np.abs(sound).max(), quiet])
    return (whole * 32_767).astype("<i2").tobytes()
