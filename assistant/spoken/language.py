"""A language: all that is said and understood in it, as one object made of a language folder's tables.

Whoever needs words is handed a `Language`; only who puts a program together names one (`assistant.spoken.ENGLISH`).
"""

from collections.abc import Callable
from copy import copy
from functools import partial
from typing import Literal

from assistant.spoken.alike import SoundAlikes
from assistant.spoken.aloud import Aloud
from assistant.spoken.completeness import Silence
from assistant.spoken.diction import Diction
from assistant.spoken.english.report_words import ReportWords
from assistant.spoken.english.sentences import Sentences
from assistant.spoken.expecting import parse_expect
from assistant.spoken.interpretation import Interpreter
from assistant.spoken.listing import Listing
from assistant.spoken.names import NameWords
from assistant.spoken.quantities import Quantities
from assistant.spoken.sampling import Sampler
from assistant.spoken.saying import Saying
from assistant.spoken.tables import Tables
from assistant.spoken.tokens import Tokeniser
from assistant.spoken.units import UnitWords
from assistant.spoken.weighing import Weighed, Weigher

__all__ = ["Language", "ReportWords", "Sentences", "Variety"]

Variety = Literal["American", "British"]
"""Spelling and trade words of one of two shores."""


class Language:
    """One language. Its functions are attributes; each is described where it is defined.

    Args:
        code: its code, ISO 639-1.
        tables: its words.
        sentences: what the guide says.
        report: what reports and forms say.

    Attributes:
        code, tables, sentences, report: as given.
        worded: a text that is shown or spoken, in the words of the place (`in_words`); all that the guide says goes
            through it.
        likely_answers: what is likeliest said where a confirmation is asked for.
        instructor_words: further ways to say what only an instructor says, with the instructor's word.
        interpret, completeness: from words to meaning, and to whether that is all.
        offer: the two short answers that are offered to a line, good and bad; empty where it has none of its own.
        speech: a text that is shown, as a voice says it.
        diction: where a voice pauses in it, what it says more slowly, and the sounds of words that it would guess.
        say_number, say_digits, say_amount, say_unit, read_back: from values to words.
        wordings, confusions, neighbours, possible, wants_digits, pair_to_offer: numbers that sound alike.
        phrases, vocabulary, is_said, continuations, number_sentences, sample_sentences: what may be said, for
            recognisers.
        canonical, dimension, parse_expect: units and expectations as people write them.
    """

    def __init__(self, code: str, tables: Tables, sentences: Sentences, report: ReportWords) -> None:
        self.code = code
        self.tables = tables
        self.sentences = sentences
        self.report = report
        self.worded: Callable[[str], str] = str
        self.likely_answers = tables.phrases.likely_answers
        self.instructor_words = tables.phrases.instructor_words

        tokeniser = Tokeniser(tables.writing)
        units = UnitWords(tables.units, tokeniser)
        saying = Saying(tables.numbers, units, sentences.number_read_back)
        alike = SoundAlikes(tables.numbers, saying)
        aloud = Aloud(tables.shown, tables.units, saying)
        quantities = Quantities(tables, units.rules)
        names = NameWords(tables.names, tables.numbers.number, tokeniser)
        listing = Listing(tables, quantities.slot, names, units, aloud)
        interpreter = Interpreter(tables, tokeniser, units, quantities, names, aloud, listing)
        sampler = Sampler(tables, quantities.slot, listing, units, alike, interpreter)

        self.interpret = interpreter.interpret
        self.offer = tables.statements.words_for if tables.statements else lambda _asked: ("", "")
        self.completeness = Silence(tables.numbers, tokeniser, listing, interpreter).completeness
        self.speech = aloud.speech
        self.diction = Diction(tables.numbers, tables.shown.sounds, tables.shown.hissed)
        self.say_number = saying.say_number
        self.say_digits = saying.say_digits
        self.say_amount = saying.say_amount
        self.say_unit = units.say_unit
        self.read_back = saying.read_back
        self.wordings = alike.wordings
        self.confusions = alike.confusions
        self.neighbours = alike.neighbours
        self.possible = alike.possible
        self.wants_digits = alike.wants_digits
        self.pair_to_offer = alike.pair_to_offer
        self.phrases = listing.phrases
        self.vocabulary = listing.vocabulary
        self.is_said = listing.is_said
        self.continuations = sampler.continuations
        self.number_sentences = sampler.number_sentences
        self.sample_sentences = sampler.sample_sentences
        self.canonical = units.canonical
        self.dimension = units.dimension
        self.parse_expect = partial(parse_expect, units=units)

    def in_words(self, worded: Callable[[str], str]) -> "Language":
        """This language, with every text that is shown or spoken put into other words at the very end.

        Args:
            worded: gives a text in the words of the place. What is understood does not change.
        """
        other = copy(self)
        other.worded = worded
        return other

    def weighed_by(self, weigher: Weigher | None) -> "Language":
        """This language with a second reader of answers (`assistant.spoken.weighing`); None changes nothing."""
        if weigher is None:
            return self
        other = copy(self)
        other.interpret = Weighed(self.interpret, self.tables, weigher).interpret
        return other
