"""A source's blocks as frames of the speech detector: mono, at the recognisers' rate."""

import numpy as np
import numpy.typing as npt
import soxr

from assistant.adapters.endpoint import FRAME_SAMPLES
from assistant.adapters.microphone import SoundBlock, SoundSource
from assistant.ports import SAMPLE_RATE_HZ


class MonoSound:
    """A source's blocks as mono samples at the recognisers' rate; one follows the other."""

    def __init__(self, source: SoundSource) -> None:
        self._source = source
        self._resampler: soxr.ResampleStream | None = None

    def of(self, block: SoundBlock) -> npt.NDArray[np.int16]:
        """The samples that are complete with this block."""
        samples = np.frombuffer(block.samples, dtype=np.int16)
        if self._source.channels > 1:
            by_channel = samples.reshape(-1, self._source.channels)
            samples = by_channel.mean(axis=1).astype(np.int16)
        if self._source.rate_hz == SAMPLE_RATE_HZ:
            return samples
        if self._resampler is None:
            self._resampler = soxr.ResampleStream(self._source.rate_hz, SAMPLE_RATE_HZ, 1, dtype="int16")
        resampled: npt.NDArray[np.int16] = self._resampler.resample_chunk(samples)
        return resampled


class Frames:
    """Cuts a source's blocks into mono frames at the recognisers' rate."""

    def __init__(self, source: SoundSource) -> None:
        self._mono = MonoSound(source)
        self._rest = b""

    def of(self, block: SoundBlock) -> list[bytes]:
        """Frames of `FRAME_SAMPLES` that are complete with this block."""
        sound = self._rest + self._mono.of(block).astype("<i2").tobytes()
        size = 2 * FRAME_SAMPLES
        complete = len(sound) // size * size
        self._rest = sound[complete:]
        return [sound[start : start + size] for start in range(0, complete, size)]
