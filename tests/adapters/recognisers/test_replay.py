"""Sound files: what can be read, and what is refused with one sentence."""

import numpy as np
import pytest
import soundfile

from assistant.adapters.recognisers.replay import LONGEST_FILE_S, hear_sound, read_sound
from assistant.errors import SoundError
from assistant.ports import Hearing
from assistant.spoken.expect import ConfirmExpected


def tone(rate_hz, length_s=0.5, hertz=500):
    return 0.5 * np.sin(2 * np.pi * hertz * np.arange(int(rate_hz * length_s)) / rate_hz)


@pytest.mark.parametrize("rate_hz", [8_000, 11_025, 16_000, 22_050, 44_100, 48_000, 96_000])
@pytest.mark.parametrize("channels", [1, 2])
@pytest.mark.parametrize("kind", ["WAV", "FLAC"])
def test_any_rate_mono_or_stereo(tmp_path, rate_hz, channels, kind):
    """A tone keeps its length, its pitch and its loudness."""
    path = tmp_path / f"tone.{kind.lower()}"
    soundfile.write(path, np.column_stack([tone(rate_hz)] * channels), rate_hz, format=kind)
    samples = np.frombuffer(read_sound(path), "<i2") / 32_768
    assert abs(len(samples) - 8_000) <= 2
    spectrum = np.abs(np.fft.rfft(samples[:8_000]))
    assert abs(spectrum.argmax() * 2 - 500) <= 2
    assert abs(np.abs(samples[1_000:7_000]).max() - 0.5) < 0.03


@pytest.mark.parametrize("subtype", ["PCM_U8", "PCM_16", "PCM_24", "FLOAT", "ULAW", "IMA_ADPCM"])
def test_any_usual_coding(tmp_path, subtype):
    """However the samples are coded, they come out as 16-bit numbers of the same loudness."""
    path = tmp_path / "tone.wav"
    soundfile.write(path, tone(16_000), 16_000, subtype=subtype)
    samples = np.frombuffer(read_sound(path), "<i2") / 32_768
    assert abs(np.abs(samples[1_000:7_000]).max() - 0.5) < 0.05


def written(tmp_path, change=lambda content: content, **options):
    path = tmp_path / "broken.wav"
    soundfile.write(path, tone(16_000), 16_000, **options)
    path.write_bytes(change(path.read_bytes()))
    return path


def test_a_header_without_a_length_is_read(tmp_path):
    """A program that writes to a pipe cannot know the length; such files are whole nevertheless."""
    path = written(tmp_path, lambda c: c[:4] + b"\xff" * 4 + c[8:40] + b"\xff" * 4 + c[44:])
    assert abs(len(read_sound(path)) / 2 - 8_000) <= 2


@pytest.mark.parametrize(
    ("make", "sentence"),
    [
        (lambda folder: folder / "nowhere.wav", "is no file"),
        (lambda folder: folder, "is no file"),
        (lambda folder: written(folder, lambda c: b""), "no sound file"),
        (lambda folder: written(folder, lambda c: b"Yes, this is text.\n" * 50), "no sound file"),
        (lambda folder: written(folder, lambda c: bytes(5_000)), "no sound file"),
        (lambda folder: written(folder, lambda c: c[:20]), "no sound file"),
        (lambda folder: written(folder, lambda c: c[:40] + bytes(4)), "holds no sound"),
        (lambda folder: written(folder, lambda c: c[: len(c) // 2]), "cut off"),
        (lambda folder: written(folder, lambda c: c[:-1]), "cut off"),
        (lambda folder: long_file(folder), "longer than"),
        (lambda folder: many_channels(folder), "channels"),
        (lambda folder: not_a_number(folder), "no sound"),
    ],
)
def test_refuses_with_one_sentence(tmp_path, make, sentence):
    """What is missing, no sound file, empty, cut off or too long is refused, never heard in part."""
    with pytest.raises(SoundError) as raised:
        read_sound(make(tmp_path))
    assert sentence in raised.value.what
    assert raised.value.what.count(". ") == 0
    assert raised.value.remedy


def long_file(folder):
    path = folder / "long.flac"
    soundfile.write(path, np.zeros(8_000 * (LONGEST_FILE_S + 1), np.int16), 8_000)
    return path


def many_channels(folder):
    path = folder / "many.wav"
    soundfile.write(path, np.zeros((100, 12)), 16_000)
    return path


def not_a_number(folder):
    path = folder / "nan.wav"
    soundfile.write(path, np.full(1_000, np.nan), 16_000, subtype="FLOAT")
    return path


class Collecting:
    """A recogniser that only keeps what it is fed."""

    name, model_digest = "collecting", "00"

    def begin(self, expect):
        self.expect, self.blocks = expect, []
        return self

    def feed(self, block):
        self.blocks.append(block)

    def finish(self):
        return Hearing("yes", (), 0.0, 0.0)

    def close(self):
        pass


def test_sound_is_fed_in_blocks_and_whole():
    """Replay loses nothing, in order, at the end neither."""
    sound = bytes(range(256)) * 101
    recogniser = Collecting()
    assert hear_sound(recogniser, sound, ConfirmExpected()).words == "yes"
    assert b"".join(recogniser.blocks) == sound
    assert len(recogniser.blocks) > 2
