"""Recorded speech: a sound file of any usual kind and rate becomes what recognisers take."""

from pathlib import Path

import numpy as np
import soundfile
import soxr

from assistant.errors import SoundError
from assistant.ports import SAMPLE_RATE_HZ, Hearing, Recogniser
from assistant.spoken.expect import Expect

LONGEST_FILE_S = 120
"""An answer takes seconds; a file of hours is a mistake and would fill the memory."""
BLOCK_S = 0.1
_MOST_CHANNELS = 8
_REMEDY = "Give a WAV or FLAC file of up to two minutes of speech."


def read_sound(path: Path) -> bytes:
    """A sound file as mono 16-bit little-endian samples at `SAMPLE_RATE_HZ`; channels are averaged.

    Raises:
        SoundError: it cannot be read, is no sound file, empty, cut off, or longer than `LONGEST_FILE_S`.
    """
    if not path.is_file():
        raise SoundError(f"{path} is no file.", _REMEDY)
    try:
        with soundfile.SoundFile(path) as file:
            rate_hz, frames, channels = file.samplerate, file.frames, file.channels
            if frames <= 0:
                raise SoundError(f"{path} holds no sound.", _REMEDY)
            if rate_hz < 1 or frames / rate_hz > LONGEST_FILE_S:
                raise SoundError(f"{path} is longer than {LONGEST_FILE_S} seconds.", _REMEDY)
            if channels > _MOST_CHANNELS:
                raise SoundError(f"{path} has {channels} channels.", _REMEDY)
            _refuse_cut_off(path, file)
            samples = file.read(dtype="float32", always_2d=True)
    except (soundfile.LibsndfileError, OSError, RuntimeError) as cause:
        raise SoundError(f"{path} is no sound file that can be read.", _REMEDY) from cause
    if len(samples) < frames:
        raise _cut_off(path)
    mono = samples.mean(axis=1)
    if not np.isfinite(mono).all():
        raise SoundError(f"{path} holds values that are no sound.", _REMEDY)
    resampled = mono if rate_hz == SAMPLE_RATE_HZ else soxr.resample(mono, rate_hz, SAMPLE_RATE_HZ)
    return bytes((np.clip(resampled, -1, 1) * 32_767).astype("<i2").tobytes())


def hear_sound(recogniser: Recogniser, sound: bytes, expect: Expect) -> Hearing:
    """Feed recorded sound to a recogniser in blocks, as a microphone would.

    Args:
        recogniser: hears it.
        sound: mono 16-bit little-endian samples at `SAMPLE_RATE_HZ`.
        expect: what the step expects.
    """
    utterance = recogniser.begin(expect)
    size = 2 * round(BLOCK_S * SAMPLE_RATE_HZ)
    for start in range(0, len(sound), size):
        utterance.feed(sound[start : start + size])
    return utterance.finish()


def _refuse_cut_off(path: Path, file: soundfile.SoundFile) -> None:
    """Refuse a WAV file with less sound than its header promises.

    libsndfile takes such a file and gives what is there; the missing end may be the end of a number.
    """
    if file.format not in ("WAV", "WAVEX"):
        return
    with path.open("rb") as raw:
        header = raw.read(65_536)
    place = header.find(b"data", 12)
    if place < 0:
        return
    promised = int.from_bytes(header[place + 4 : place + 8], "little")
    # A writer to a pipe cannot know the length; it leaves all bits, or the sign's, set, or zero.
    if 0 < promised < 0x7FFF_0000 and place + 8 + promised > path.stat().st_size:
        raise _cut_off(path)


def _cut_off(path: Path) -> SoundError:
    return SoundError(f"{path} ends before its sound does: the file was cut off.", _REMEDY)
