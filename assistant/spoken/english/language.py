"""English as one object: what guide, scoring and reports get of it."""

from assistant.spoken.alike import pair_to_offer, wants_digits
from assistant.spoken.aloud import speech
from assistant.spoken.english.phrases import INSTRUCTOR_WORDS
from assistant.spoken.english.report_words import ReportWords
from assistant.spoken.english.sentences import Sentences
from assistant.spoken.interpretation import interpret
from assistant.spoken.language import Language
from assistant.spoken.saying import read_back, say_digits

ENGLISH = Language(
    code="en",
    sentences=Sentences(),
    report=ReportWords(),
    interpret=interpret,
    speech=speech,
    say_digits=say_digits,
    read_back=read_back,
    wants_digits=wants_digits,
    pair_to_offer=pair_to_offer,
    likely_answers=("yes", "done", "no"),
    instructor_words=INSTRUCTOR_WORDS,
)
"""The language of this program."""
