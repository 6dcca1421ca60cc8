"""Clips for training: words, speaker and sound, many in one file."""

import json
from dataclasses import asdict, dataclass
from pathlib import Path

import numpy as np

RATE_HZ = 16_000
_QUIET = 0.015
_MARGIN_S = 0.04
_LEVEL = 0.1


@dataclass(frozen=True)
class Clip:
    """One recording.

    Attributes:
        words: what is said, as the model is to write it; "" where nobody speaks.
        speaker: who says it.
        kind: what sort of saying it is.
        part: "training", "tuning" or "report"; a speaker is in one of them alone.
    """

    words: str
    speaker: str
    kind: str
    part: str = "training"


class Store:
    """Clips with their sound, mono 16 bits at `RATE_HZ`, without the quiet at their ends."""

    def __init__(self) -> None:
        self.clips: list[Clip] = []
        self.sounds: list[np.ndarray] = []

    def add(self, clip: Clip, sound: np.ndarray) -> None:
        """Keep a clip at a usual level; one in which there is no sound is left out."""
        cut = trimmed(sound)
        if not len(cut):
            return
        cut = cut * (_LEVEL / max(1e-6, float(np.sqrt(np.mean(np.square(cut))))))
        self.clips.append(clip)
        self.sounds.append((np.clip(cut, -1, 1) * 32_767).astype("<i2"))

    def write(self, path: Path) -> None:
        """Write all of it into one file."""
        ends = np.cumsum([len(sound) for sound in self.sounds])
        listed = json.dumps([asdict(clip) for clip in self.clips])
        np.savez(path, clips=np.frombuffer(listed.encode(), np.uint8), ends=ends, sound=np.concatenate(self.sounds))

    @classmethod
    def read(cls, path: Path) -> "Store":
        """What `write` has written."""
        store = cls()
        with np.load(path) as file:
            store.clips = [Clip(**one) for one in json.loads(file["clips"].tobytes())]
            store.sounds = np.split(file["sound"], file["ends"][:-1])
        return store


def trimmed(sound: np.ndarray) -> np.ndarray:
    """Without the quiet at both ends; nothing where all of it is quiet."""
    level = float(np.abs(sound).max(initial=0.0))
    loud = np.flatnonzero(np.abs(sound) > _QUIET * level)
    margin = round(_MARGIN_S * RATE_HZ)
    return sound[max(0, loud[0] - margin) : loud[-1] + margin] if len(loud) else sound[:0]
