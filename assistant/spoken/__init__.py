"""The words: numbers, units, phrases, interpretation, values to speech."""

from assistant.spoken.alike import confusions, neighbours, pair_to_offer, possible, wants_digits, wordings
from assistant.spoken.aloud import speech
from assistant.spoken.english.language import ENGLISH
from assistant.spoken.expecting import parse_expect
from assistant.spoken.interpretation import interpret
from assistant.spoken.language import Language
from assistant.spoken.listing import phrases, vocabulary
from assistant.spoken.sampling import continuations, number_sentences, sample_sentences
from assistant.spoken.saying import read_back, say_amount, say_digits, say_number, sounds_like_another
from assistant.spoken.suggestions import suggest
from assistant.spoken.units import say_unit

__all__ = [
    "ENGLISH",
    "Language",
    "confusions",
    "continuations",
    "interpret",
    "neighbours",
    "number_sentences",
    "pair_to_offer",
    "parse_expect",
    "phrases",
    "possible",
    "read_back",
    "sample_sentences",
    "say_amount",
    "say_digits",
    "say_number",
    "say_unit",
    "sounds_like_another",
    "speech",
    "suggest",
    "vocabulary",
    "wants_digits",
    "wordings",
]
