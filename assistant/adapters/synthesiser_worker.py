"""The process that turns one sentence into a sound file with pyttsx3; run as a script, killed when it hangs.

It imports nothing of the program, so that it starts quickly. When the engine is there it writes one JSON line to
standard output, ``{"error": ""}``, or says there why it is not. Then it reads one request from standard input,
``{"text": "...", "rate": 165, "pitch": 50, "file": "/where/to"}``, and answers with another such line.
"""

import contextlib
import json
import os
import signal
import sys
import threading
import time
from typing import Any, TextIO

_SETTLE_S = 0.01
_ESPEAK_RATE = 1
"""espeak-ng's number for the speed in `espeak_GetParameter` (speak_lib.h, espeak_PARAMETER)."""
_LANGUAGES = ("en-gb", "en_gb", "en-us", "en_us", "en")
"""Which voice to take where the machine has several: British English first, as the sentences are."""


def main() -> None:
    """Start the engine, speak one sentence, end."""
    # An interrupt from the keyboard goes to this process too; the program still has its last sentence to say.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    replies = _replies()
    try:
        import pyttsx3

        engine = pyttsx3.init()
        _choose_voice(engine)
        _reply(replies, "")
        line = sys.stdin.readline()
        if line:
            _speak(engine, json.loads(line))
            _reply(replies, "")
    except Exception as failure:  # noqa: BLE001 - whatever the engine throws belongs into the reply
        _reply(replies, " ".join(str(failure).split())[:300].rstrip(".") or type(failure).__name__)
    # Without the interpreter's own end: an engine's threads may still run, and the sentence is on disk.
    os._exit(0)


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
