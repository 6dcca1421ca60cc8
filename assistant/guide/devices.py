"""Microphone and voice come and go; the attempt goes on."""

from assistant.guide.effects import Tone
from assistant.guide.turn import Turn
from assistant.spoken.english.sentences import SENTENCES as sentences


def ear_lost(turn: Turn) -> None:
    """The keyboard takes over at once."""
    turn.say(sentences.EAR_LOST, Tone.NOTICE)


def ear_back(turn: Turn) -> None:
    """Voice again."""
    turn.say(sentences.EAR_BACK, Tone.NOTICE)


def voice_lost(turn: Turn) -> None:
    """The text goes on."""
    turn.say(sentences.voice_lost(turn.detail), Tone.NOTICE, "")
