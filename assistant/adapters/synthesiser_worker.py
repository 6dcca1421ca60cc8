"""The process that turns sentences into sound files with pyttsx3; run as a script, killed when it hangs.

It imports nothing of the program, so that it starts quickly. Requests come as JSON lines on standard input:
``{"id": 1, "text": "...", "rate": 165, "file": "/where/to"}``. Each gets one JSON line on standard output:
``{"id": 1}`` or ``{"id": 1, "error": "..."}``. The first line, with id 0, says whether there is a voice at all.
"""

import json
import os
import signal
import sys
from typing import Any, TextIO

_LANGUAGES = ("en-gb", "en_gb", "en-us", "en_us", "en")
"""Which voice to take where the machine has several: British English first, as the sentences are."""


def main() -> None:
    """Answer requests until standard input ends."""
    # An interrupt from the keyboard goes to this process too; the program still has its last sentence to say.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    replies = _replies()
    try:
        import pyttsx3

        engine = pyttsx3.init()
        _choose_voice(engine)
    except Exception as failure:  # noqa: BLE001 - whatever the engine throws belongs into the reply
        _reply(replies, 0, failure)
        return
    _reply(replies, 0, None)
    for line in sys.stdin:
        request = json.loads(line)
        try:
            engine.setProperty("rate", request["rate"])
            engine.save_to_file(request["text"], request["file"])
            engine.runAndWait()
        except Exception as failure:  # noqa: BLE001 - as above
            _reply(replies, request["id"], failure)
        else:
            _reply(replies, request["id"], None)


def _replies() -> TextIO:
    # The engine prints to standard output ("Audio saved to ..."): replies get a descriptor of their own.
    replies = os.fdopen(os.dup(1), "w", encoding="utf-8")
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)
    sys.stdout = open(os.devnull, "w")  # noqa: PTH123, SIM115 - for as long as the process lives
    return replies


def _reply(replies: TextIO, number: int, failure: Exception | None) -> None:
    reply: dict[str, object] = {"id": number}
    if failure is not None:
        reply["error"] = " ".join(str(failure).split())[:300] or type(failure).__name__
    replies.write(json.dumps(reply) + "\n")
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
