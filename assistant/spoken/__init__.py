"""The words: numbers, units, phrases, interpretation, values to speech."""

from assistant.spoken.aloud import speech
from assistant.spoken.expecting import parse_expect
from assistant.spoken.interpretation import interpret
from assistant.spoken.listing import phrases, vocabulary
from assistant.spoken.saying import read_back, say_amount, say_digits, say_number, sounds_like_another
from assistant.spoken.suggestions import suggest
from assistant.spoken.units import say_unit

__all__ = [
    "interpret",
    "parse_expect",
    "phrases",
    "read_back",
    "say_amount",
    "say_digits",
    "say_number",
    "say_unit",
    "sounds_like_another",
    "speech",
    "suggest",
    "vocabulary",
]
