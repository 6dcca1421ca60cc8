"""The words: numbers, units, phrases, interpretation, values to speech.

`Language` is what other rooms are handed. The functions here are those of `ENGLISH`, for who speaks English only: tests
and command-line verbs.
"""

from assistant.spoken.english.language import ENGLISH, english
from assistant.spoken.language import Language, Variety

confusions = ENGLISH.confusions
continuations = ENGLISH.continuations
interpret = ENGLISH.interpret
neighbours = ENGLISH.neighbours
number_sentences = ENGLISH.number_sentences
pair_to_offer = ENGLISH.pair_to_offer
parse_expect = ENGLISH.parse_expect
phrases = ENGLISH.phrases
possible = ENGLISH.possible
read_back = ENGLISH.read_back
sample_sentences = ENGLISH.sample_sentences
say_amount = ENGLISH.say_amount
say_digits = ENGLISH.say_digits
say_number = ENGLISH.say_number
say_unit = ENGLISH.say_unit
speech = ENGLISH.speech
vocabulary = ENGLISH.vocabulary
wants_digits = ENGLISH.wants_digits
wordings = ENGLISH.wordings

__all__ = [
    "ENGLISH",
    "Language",
    "Variety",
    "confusions",
    "continuations",
    "english",
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
    "speech",
    "vocabulary",
    "wants_digits",
    "wordings",
]
