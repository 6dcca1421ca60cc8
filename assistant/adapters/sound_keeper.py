"""Keeps the sound of utterances as FLAC files beside the record, once the learner has agreed."""

import hashlib
import io
import os
from collections.abc import Callable, Mapping
from pathlib import Path

from assistant.ports import SAMPLE_RATE_HZ
from assistant.record.paths import sound_folder

_SAMPLE_BYTES = 2


class SoundKeeper:
    """Writes one file an utterance. Implements `assistant.ports.SoundStore`.

    Args:
        record: gives the path of the record; asked when the first sound is kept, for it is not known before.
    """

    def __init__(self, record: Callable[[], Path]) -> None:
        self._record = record
        self._count = 0

    def keep(self, sound: bytes) -> Mapping[str, object]:
        """Put one utterance on disk: written, flushed, fsynced.

        Args:
            sound: mono 16-bit little-endian samples at `SAMPLE_RATE_HZ`: what the recogniser got.

        Returns:
            What the entry says of it: file, SHA-256 digest of the file, and length in seconds; or, where the
            disk refused, why it was not kept. A sound that cannot be kept must not cost the answer.
        """
        # Only here: most attempts keep no sound.
        import numpy as np
        import soundfile

        content = io.BytesIO()
        samples = np.frombuffer(sound, dtype="<i2")
        soundfile.write(content, samples, SAMPLE_RATE_HZ, format="FLAC", subtype="PCM_16")
        try:
            name = self._write(content.getvalue())
        except OSError as cause:
            return {"not_kept": cause.strerror or type(cause).__name__}
        seconds = len(sound) / _SAMPLE_BYTES / SAMPLE_RATE_HZ
        digest = hashlib.sha256(content.getvalue()).hexdigest()
        return {"file": name, "digest": digest, "seconds": f"{seconds:.2f}"}

    def _write(self, content: bytes) -> str:
        folder = sound_folder(self._record())
        folder.mkdir(mode=0o700, exist_ok=True)
        while True:
            self._count += 1  # a resumed attempt finds the next free number
            name = f"{self._count:04}.flac"
            try:
                flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
                descriptor = os.open(folder / name, flags, 0o600)
            except FileExistsError:
                continue
            with open(descriptor, "wb") as stream:  # noqa: PTH123 - a descriptor, not a path
                stream.write(content)
                stream.flush()
                os.fsync(stream.fileno())
            return name
