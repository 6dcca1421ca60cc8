"""Short sounds that tell the state without words: made here of plain tones, each with a rhythm of its own.

They differ in rhythm as well as in pitch, so that they can be told apart by those who hear no high or no low tones.
None is longer than 0.4 s. They are no imitation of any device's sounds.
"""

import numpy as np
import numpy.typing as npt

from assistant.adapters.synthesiser import Speech
from assistant.ports import Signal

RATE_HZ = 22_050
LEVEL = 0.3
"""Part of full scale before the voice's own loudness: softer than speech."""
_EDGE_S = 0.01


SCORE: dict[Signal, tuple[tuple[int, float], ...]] = {
    # Hertz (0 is silence) and seconds.
    Signal.LISTENING: ((440, 0.08),),
    Signal.UNDERSTOOD: ((523, 0.06), (0, 0.04), (784, 0.12)),
    Signal.NOT_UNDERSTOOD: ((330, 0.2), (0, 0.04), (330, 0.06)),
    Signal.HOLD: ((262, 0.1), (0, 0.05), (262, 0.1), (0, 0.05), (262, 0.1)),
}
"""One short; short, long and higher; long, short and low; three even and lowest."""


def sound_of(signal: Signal) -> Speech:
    """The sound, as samples to be played like speech."""
    parts = [_tone(pitch_hz, length_s) for pitch_hz, length_s in SCORE[signal]]
    return Speech(np.concatenate(parts), RATE_HZ)


def _tone(pitch_hz: int, length_s: float) -> npt.NDArray[np.int16]:
    at = np.arange(int(length_s * RATE_HZ)) / RATE_HZ
    edge = np.clip(np.minimum(at, length_s - at) / _EDGE_S, 0, 1)  # no clicks
    # A second harmonic lets a small loudspeaker carry the low ones.
    wave = np.sin(2 * np.pi * pitch_hz * at) + 0.5 * np.sin(4 * np.pi * pitch_hz * at)
    return np.asarray(LEVEL * 32_767 / 1.5 * edge * wave, dtype=np.int16)
