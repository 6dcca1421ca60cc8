"""``checkoff say TEXT``: speaks or writes a sentence as the assistant would say it."""

import argparse
import queue
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.cli.printing import say_line, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import DeviceError, SoundError, UsageError
from assistant.spoken import speech
from assistant.text import quoted, shown

if TYPE_CHECKING:
    from assistant.adapters.synthesiser import Synthesiser

LONGEST_TEXT = 5_000
"""Characters; a sentence of the assistant has some hundred."""
SYNTHESISERS = ("neural", "system")
"""Whose voice speaks, as in the settings."""
_FORMATS = {".wav": "WAV", ".flac": "FLAC"}
_WAIT_S = 0.5

_EXAMPLES = """\
  checkoff say "Set the rate to 83.3 mL/h."
  checkoff say "Close the roller clamp." --rate -2 --synthesiser system
  checkoff say "1,000 mL over 12 h" -o order.wav"""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb `say`."""
    parser = add_verb(
        subparsers,
        "say",
        "Speaks as the assistant would: numbers and units in full words.",
        _EXAMPLES,
    )
    parser.add_argument("text", nargs="+", metavar="TEXT", help="what to say")
    parser.add_argument("-o", "--output", type=Path, metavar="FILE", help="write this WAV or FLAC file, play nothing")
    parser.add_argument(
        "--rate", type=int, default=0, choices=range(-4, 5), metavar="STEP", help="slower -4 to faster 4"
    )
    parser.add_argument("--synthesiser", choices=SYNTHESISERS, help="whose voice (default: as the settings say)")
    parser.add_argument("--loudspeaker", metavar="NAME", help="the loudspeaker's name or part of it")
    parser.add_argument("--json", action="store_true", help="one JSON object with what was said")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Speak or write; 0 when it was done.

    Raises:
        DeviceError: there is no synthesiser or no loudspeaker.
        SoundError: the file cannot be written.
        UsageError: there is nothing to say, too much, or the file is of another kind.
    """
    text = " ".join(arguments.text).strip()
    if len(text) > LONGEST_TEXT:
        raise UsageError(f"The text has {len(text):,} characters; {LONGEST_TEXT:,} can be said.", "Say it in parts.")
    words = speech(text)
    if not any(character.isalnum() for character in words):
        raise UsageError("The text contains nothing that can be said.", 'For example: checkoff say "Ready."')
    if arguments.output is None:
        _play(words, arguments.rate, arguments.loudspeaker, arguments.synthesiser)
        length_s = None
    else:
        length_s = write_speech([words], arguments.output, arguments.rate, arguments.synthesiser)
    if arguments.json:
        file = None if arguments.output is None else str(arguments.output)
        write_json({"text": text, "speech": words, "file": file, "audio_s": length_s})
    elif arguments.output is not None:
        say_line(f"{shown(arguments.output)}: {length_s} s")
    return 0


def write_speech(sentences: Sequence[str], file: Path, rate: int = 0, whose: str | None = None) -> float:
    """Write sentences, as they are spoken, to one sound file; return its length in seconds.

    Args:
        sentences: in words (see `assistant.spoken.speech`), one second of quiet between them.
        file: a name that ends in .wav or .flac.
        rate: steps slower or faster.
        whose: whose voice; None for that of the settings.

    Raises:
        DeviceError: there is no synthesiser.
        SoundError: the file cannot be written.
        UsageError: the file is of another kind.
    """
    # Only here: the words of a sentence need neither numpy nor a sound library.
    import numpy as np
    import soundfile

    kind = _FORMATS.get(file.suffix.lower())
    if kind is None:
        raise UsageError(f"{quoted(file.name)} is not the name of a sound file.", "End it with .wav or .flac.")
    synthesiser = _synthesiser(whose)
    try:
        spoken = [synthesiser.synthesise(words, rate) for words in sentences]
    finally:
        synthesiser.close()
    rate_hz = spoken[0].rate_hz
    quiet = np.zeros(rate_hz, dtype=spoken[0].samples.dtype)
    samples = np.concatenate([part for sentence in spoken for part in (sentence.samples, quiet)][:-1])
    try:
        soundfile.write(file, samples, rate_hz, subtype="PCM_16", format=kind)
    except (OSError, RuntimeError) as failure:  # soundfile's own errors are RuntimeErrors
        raise SoundError(
            f"{shown(file)} cannot be written.", "Check that its folder exists and that you may write there."
        ) from failure
    return round(len(samples) / rate_hz, 2)


def _synthesiser(whose: str | None) -> "Synthesiser":
    from assistant.adapters.voices import open_synthesiser
    from assistant.settings import load_settings

    wishes = load_settings().sound
    return open_synthesiser(wishes if whose is None else wishes.model_copy(update={"synthesiser": whose}))


def _play(words: str, rate: int, loudspeaker: str | None, whose: str | None) -> None:
    from assistant.adapters.clock import SystemClock
    from assistant.adapters.sound_devices import DEVICES
    from assistant.adapters.voice import SpeakingVoice
    from assistant.guide.events import VoiceLost
    from assistant.ports import SpeechEnded

    DEVICES.loudspeaker(loudspeaker)
    events: queue.Queue[object] = queue.Queue()
    voice = SpeakingVoice(events.put, SystemClock(), loudspeaker, _synthesiser(whose))
    try:
        voice.adjust(rate, loudness=0, pitch=0)
        voice.say(1, words)
        while True:
            try:
                event = events.get(timeout=_WAIT_S)  # in short waits, so that an interrupt is seen
            except queue.Empty:
                continue
            if isinstance(event, VoiceLost):
                raise DeviceError(event.reason)
            if isinstance(event, SpeechEnded):
                return
    finally:
        voice.close()
