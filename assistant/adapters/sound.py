"""This machine's ear and voice put together; what is missing becomes a sentence, never an error."""

import itertools
import threading
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

import numpy as np
import soxr

from assistant.adapters.echo import WithoutOwnVoice, canceller_maker
from assistant.adapters.head_start import VoiceAhead
from assistant.adapters.listener import Listener
from assistant.adapters.loudspeaker import Loudspeaker
from assistant.adapters.microphone import Microphone, SoundSource
from assistant.adapters.played import Played
from assistant.adapters.recognisers.choose import open_recogniser, promise_recogniser
from assistant.adapters.sound_devices import DEVICES, looks_like_headset
from assistant.adapters.synthesiser import Speech, Synthesiser
from assistant.adapters.voice import SpeakingVoice
from assistant.adapters.voices import advice_on_voice, open_synthesiser
from assistant.errors import DeviceError, ModelError
from assistant.guide.events import VoiceLost
from assistant.ports import (
    SAMPLE_RATE_HZ,
    Clock,
    OwnVoiceHeard,
    Post,
    Recogniser,
    Sound,
    SpeechEnded,
    SpeechStarted,
    Voice,
)
from assistant.settings import SoundSettings, load_settings

LEARNER_RATES = (-2, -1, -3)
LEARNER_PITCHES = (0, 2, -2, 1)
"""Steps of speed and pitch of the synthesised learner, in turn: nobody says a thing twice in just the same way."""
QUIET_S = 0.3
"""Quiet before and after the synthesised learner's words."""
FIRST_WORD_LIMIT_S = 5.0
"""Longest time that the recogniser's loading leaves the processor to the assistant's first word."""
LIKE_A_HEADSET = "This looks like a headset: --headset lets you talk over me."
NO_HEADSET = "The microphone hears my voice, so I listen only when I have finished. Enter hushes me."
NO_CANCELLER = (
    "Echo cancellation is not installed, so I listen only when I have finished. Get it with: pip install '.[echo]'."
)
GOES_ON = "The attempt continues by keyboard and text."


@dataclass(frozen=True)
class LearnerSound:
    """What a synthesised learner needs, and the assistant's voice where there is a loudspeaker."""

    synthesise: Callable[[str], bytes]
    recogniser: Recogniser
    voice: Voice | None
    notices: tuple[str, ...]


def open_sound(
    post: Post,
    clock: Clock,
    ear: str | None,
    wishes: SoundSettings | None = None,
    voice_ahead: VoiceAhead | None = None,
    show_level: Callable[[int], None] | None = None,
) -> Sound:
    """Open microphone, recogniser, voice and loudspeaker. The voice can speak while the recogniser is loaded.

    Args:
        post: where their events go.
        clock: stamps them.
        ear: which recogniser listens; None for the best one.
        wishes: which devices, and how the voice sounds; None for the defaults.
        voice_ahead: the voices' processes where they have been started already.
        show_level: as for `Listener`.

    Raises:
        ModelError: the recogniser that was asked for is not there.
    """
    wishes = wishes or SoundSettings()
    notices: list[str] = []
    listener = None
    # A recogniser that was named and is not there is an error also where no microphone is.
    begun = threading.Event()
    promise = partial(promise_recogniser, ear, partial(begun.wait, FIRST_WORD_LIMIT_S))
    named = promise() if ear is not None else None
    played = Played() if wishes.headset or _cancels(wishes) else None
    voice = None
    if wishes.own_voice:
        voice = _open_voice(_telling(begun, post), clock, notices, wishes, played, voice_ahead)
    if voice is not None:
        notices += advice_on_voice(wishes)
    else:
        begun.set()
        if voice_ahead is not None:
            voice_ahead.close()
    try:
        device = DEVICES.microphone(wishes.microphone or None)
        if voice is not None:
            notices += advice_on_talking_over(wishes, device.name)
        listener = Listener(
            named or promise(),
            post,
            clock,
            source=_source(wishes, played, post),
            slow_speaker=wishes.slow_speaker,
            advises=wishes.level_check,
            reopen=lambda: open_recogniser(ear),
            is_tried=False,
            show_level=show_level,
        )
    except (DeviceError, ModelError) as missing:
        notices.append(str(missing))
    if notices:
        notices.append(GOES_ON if listener is None else "")
    return Sound(listener, voice, tuple(dict.fromkeys(filter(None, notices))), _cancels(wishes))


def advice_on_talking_over(wishes: SoundSettings, microphone: str) -> list[str]:
    """What somebody had better know who cannot talk over the voice, but could with this microphone or a package."""
    advice = [NO_CANCELLER] if _wants_canceller(wishes) and not _cancels(wishes) else []
    return [*advice, LIKE_A_HEADSET] if looks_like_headset(microphone) and not wishes.headset else advice


def _wants_canceller(wishes: SoundSettings) -> bool:
    return wishes.own_voice and wishes.echo_cancellation and not wishes.headset


def _cancels(wishes: SoundSettings) -> bool:
    """Whether the voice is to be taken out of what the microphone hears, and can be."""
    return _wants_canceller(wishes) and canceller_maker() is not None


def _source(wishes: SoundSettings, played: Played | None, post: Post) -> SoundSource:
    """The microphone as it is; or without the voice; or a headset's, which is watched for it."""
    microphone = Microphone(wishes.microphone or None)
    if played is None or not wishes.own_voice:
        return microphone
    if wishes.headset:
        return WithoutOwnVoice(microphone, played, None, lambda: post(OwnVoiceHeard(NO_HEADSET)))
    return WithoutOwnVoice(microphone, played, canceller_maker())


def _telling(begun: threading.Event, post: Post) -> Post:
    """A post that also sets the event once the voice has begun, or will not."""

    def tell(event: object) -> None:
        if isinstance(event, SpeechStarted | SpeechEnded | VoiceLost):
            begun.set()
        post(event)

    return tell


def _open_voice(
    post: Post,
    clock: Clock,
    notices: list[str],
    wishes: SoundSettings,
    played: Played | None = None,
    ahead: VoiceAhead | None = None,
) -> Voice | None:
    try:
        DEVICES.loudspeaker(wishes.loudspeaker or None)
    except DeviceError as missing:
        notices.append(str(missing))
        return None
    return SpeakingVoice(
        post,
        clock,
        synthesiser=open_synthesiser(wishes, ahead),
        loudspeaker=Loudspeaker(wishes.loudspeaker or None, played=played),
        rate=wishes.rate,
        pitch=wishes.pitch,
        loudness=wishes.loudness,
    )


def open_learner_sound(post: Post, clock: Clock, ear: str | None) -> LearnerSound:
    """A synthesiser and a recogniser for a simulated learner; a loudspeaker is used where there is one.

    Raises:
        ModelError: there is no recogniser.
        DeviceError: there is no synthesiser.
    """
    recogniser = open_recogniser(ear)
    synthesiser = Synthesiser()
    notices: list[str] = []
    voice = _open_voice(post, clock, notices, load_settings().sound)
    rates, pitches = itertools.cycle(LEARNER_RATES), itertools.cycle(LEARNER_PITCHES)
    return LearnerSound(
        lambda words: _for_recogniser(synthesiser.synthesise(words, next(rates), pitch=next(pitches))),
        recogniser,
        voice,
        tuple(notices),
    )


def _for_recogniser(speech: Speech) -> bytes:
    """Mono 16-bit samples at the recognisers' rate."""
    # A microphone always gives a little of the quiet around the words.
    quiet = bytes(2 * int(QUIET_S * SAMPLE_RATE_HZ))
    resampled = soxr.resample(speech.samples.astype(np.float32), speech.rate_hz, SAMPLE_RATE_HZ)
    samples: bytes = np.clip(resampled, -32768, 32767).astype("<i2").tobytes()
    return quiet + samples + quiet
