"""The process that turns sentences into sound files; run as a script, killed when it hangs.

    synthesiser_worker.py system     one sentence with pyttsx3, then it ends
    synthesiser_worker.py neural     breath after breath with the neural voice

It imports nothing of the program, so that it starts quickly. When the engine is there it writes one JSON line to
standard output, ``{"error": ""}``, or says there why it is not. Then it reads requests from standard input, a line
each, and answers each with another such line: ``{"text": "...", "rate": 165, "pitch": 50, "file": "/where/to"}``
or ``{"words": "...", "speed": 1.0, "pitch": 1.0, "file": "/where/to"}``.
"""

import contextlib
import hashlib
import importlib.util
import json
import os
import signal
import sys
import threading
import time
import wave
from collections.abc import Callable
from pathlib import Path
from typing import Any, TextIO

_SETTLE_S = 0.01
_ESPEAK_RATE = 1
"""espeak-ng's number for the speed in `espeak_GetParameter` (speak_lib.h, espeak_PARAMETER)."""
_LANGUAGES = ("en-gb", "en_gb", "en-us", "en_us", "en")
"""Which voice to take where the machine has several: British English first, as the sentences are."""


WEIGHTS = {
    "hibari.onnx": "5f70741d4e900f4e85d0037498736cc1b3e1b9a63a13546a5da1e63abf4fccd8",
    "lexicon_us_gold.json.gz": "63ae94f8ef0e906d5b24fe9b59ffcbd1529aca5686a774610e43973cbaa86ad2",
    "lexicon_us_silver.json.gz": "c4c2546ebf1eb07010331e7ef785a431aa17ba8e7bfb6b4af8d654ee96a71fd3",
    "oov.onnx": "d3cfd8122c5f172a98c8de38268bf1213ee09f2c2ae4df6e055fc6532590fe76",
    "tagger.json.gz": "d2da7502284bbbe45d49e0b7ce3ce67bdab82254150f4317f1b8559b4d38d0eb",
}
"""The files of the neural voice that decide how a word sounds, with their SHA-256: no others are loaded."""

Request = dict[str, Any]
Speak = Callable[[Request], None]


def main() -> None:
    """Start the engine, speak what is asked for, end."""
    # An interrupt from the keyboard goes to this process too; the program still has its last sentence to say.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    replies = _replies()
    is_neural = sys.argv[1:] == ["neural"]
    try:
        speak = _neural() if is_neural else _system()
        _reply(replies, "")
        while line := sys.stdin.readline():
            speak(json.loads(line))
            _reply(replies, "")
            if not is_neural:
                break
    except Exception as failure:  # noqa: BLE001 - whatever the engine throws belongs into the reply
        _reply(replies, " ".join(str(failure).split())[:300].rstrip(".") or type(failure).__name__)
    # Without the interpreter's own end: an engine's threads may still run, and the sentence is on disk.
    os._exit(0)


# The neural voice.


def _neural() -> Speak:
    package = importlib.util.find_spec("hibari")
    if package is None or package.origin is None:
        raise RuntimeError("it is not installed")
    for name, digest in WEIGHTS.items():
        if hashlib.sha256((Path(package.origin).parent / "assets" / name).read_bytes()).hexdigest() != digest:
            raise RuntimeError(f"its file {name} is not the one that was tried")
    import numpy as np
    from hibari import Hibari, dsp

    voice = Hibari()
    voice.phonemize("ready")  # loads what turns words into sounds

    def spoken(sounds: str, speed: float, pitch: float) -> Any:
        inputs = {"ids": np.asarray([voice.ids(sounds)], np.int64), "speed": np.asarray([speed], np.float32)}
        *spectra, tone = (output[0] for output in voice.sess.run(None, inputs))
        # The same sentence always sounds the same.
        return dsp.synth(*spectra, tone * pitch, np.random.default_rng(0))

    def speak(request: Request) -> None:
        # What is too long for the model at once comes in several pieces.
        sounds = [spoken(one, request["speed"], request["pitch"]) for one in voice.phonemize(request["words"])]
        whole = np.clip(np.concatenate([np.zeros(1, np.float32), *sounds]), -1, 1)
        with wave.open(request["file"], "wb") as file:
            file.setnchannels(1)
            file.setsampwidth(2)
            file.setframerate(voice.sample_rate)
            file.writeframes((whole * 32_767).astype("<i2").tobytes())

    return speak


# The system's own voices.


def _system() -> Speak:
    import pyttsx3

    engine = pyttsx3.init()
    _choose_voice(engine)
    return lambda request: _speak(engine, request)


def _speak(engine: Any, request: dict[str, Any]) -> None:
    finished = threading.Event()
    failures: list[Exception] = []

    def fail(name: str | None, exception: Exception) -> None:
        failures.append(exception)
        finished.set()

    engine.connect("finished-utterance", lambda name, completed: finished.set())
    engine.connect("error", fail)
    _set(engine, request)
    engine.save_to_file(request["text"], request["file"])
    engine.runAndWait()
    if engine.driver_name == "espeak":
        # `runAndWait` comes back while this engine's thread is still writing; the notice comes after the file.
        finished.wait()
        if _espeak_rate() != request["rate"]:
            raise RuntimeError("it spoke at another speed")
    if failures:
        raise failures[0]


def _set(engine: Any, request: dict[str, Any]) -> None:
    for _ in range(2):
        # espeak sets these in a thread of its own, and now and then the engine's own start comes after them.
        engine.setProperty("rate", request["rate"])
        with contextlib.suppress(Exception):  # not every engine has a pitch, and the words matter more
            engine.setProperty("pitch", request["pitch"])
        time.sleep(_SETTLE_S)


def _espeak_rate() -> int:
    # The package's own question leaves out that the current figure is wanted, and so gets any.
    from pyttsx3.drivers import _espeak

    return int(_espeak.dll.espeak_GetParameter(_ESPEAK_RATE, 1))


def _replies() -> TextIO:
    # The engine prints to standard output ("Audio saved to ..."): replies get a descriptor of their own.
    replies = os.fdopen(os.dup(1), "w", encoding="utf-8")
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)
    sys.stdout = open(os.devnull, "w")  # noqa: PTH123, SIM115 - for as long as the process lives
    return replies


def _reply(replies: TextIO, error: str) -> None:
    replies.write(json.dumps({"error": error}) + "\n")
    replies.flush()


def _choose_voice(engine: Any) -> None:
    voices = engine.getProperty("voices") or []
    for language in _LANGUAGES:
        for voice in voices:
            spoken = [_text(name) for name in (*(voice.languages or ()), voice.id)]
            if any(name == language or f"_{language}_" in name for name in spoken):
                engine.setProperty("voice", voice.id)
                return


def _text(name: object) -> str:
    text = name.decode("utf-8", "replace") if isinstance(name, bytes) else str(name)
    return text.strip("\x00\x01\x02\x03\x04\x05\x06\x07").lower()


if __name__ == "__main__":
    main()
