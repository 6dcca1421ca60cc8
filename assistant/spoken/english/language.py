"""English as one object: its tables and its sentences."""

from assistant.spoken.english import (
    abbreviations,
    carriers,
    command_phrases,
    lexicon,
    names,
    phrases,
    sound,
    times,
    units,
    writing,
)
from assistant.spoken.english.amounts import amounts
from assistant.spoken.english.numbers import NUMBER, ONES, POINT, SMALL_WORDS, SOUND_ALIKES, cardinal
from assistant.spoken.english.report_words import ReportWords
from assistant.spoken.english.sentences import Sentences
from assistant.spoken.english.statements import EnglishStatements
from assistant.spoken.english.varieties import american
from assistant.spoken.language import Language, Variety
from assistant.spoken.tables import Names, Numbers, Phrases, Shown, Tables, Units, Writing

TABLES = Tables(
    phrases=Phrases(
        commands=command_phrases.COMMANDS,
        yes=phrases.YES,
        no=phrases.NO,
        done=phrases.DONE,
        also_done=phrases.ALSO_DONE,
        acknowledged=phrases.ACKNOWLEDGED,
        beside_an_answer=phrases.BESIDE_AN_ANSWER,
        likely_answers=("yes", "done", "no"),
        instructor_words=command_phrases.INSTRUCTOR_WORDS,
        carriers=carriers.CARRIERS,
        before_numbers=carriers.BEFORE_NUMBERS,
        behind_numbers=carriers.BEHIND_NUMBERS,
        before_names=carriers.BEFORE_NAMES,
        behind_names=carriers.BEHIND_NAMES,
        corrections=carriers.CORRECTIONS,
        between_amounts=carriers.BETWEEN_AMOUNTS,
        between_numbers=carriers.BETWEEN_NUMBERS,
    ),
    writing=Writing(
        contractions=writing.CONTRACTIONS,
        same_word=writing.SAME_WORD,
        hesitations=writing.HESITATIONS,
        courtesies=writing.COURTESIES,
        said_after=writing.SAID_AFTER,
        short_forms=writing.SHORT_FORMS,
        one_letter_words=writing.ONE_LETTER_WORDS,
        capitals=writing.CAPITALS,
    ),
    numbers=Numbers(
        number=NUMBER,
        digits=ONES,
        point=POINT,
        minus="minus",
        cardinal=cardinal,
        wordings=sound.wordings,
        changes=sound.changes,
        small_words=SMALL_WORDS,
        written_only=SOUND_ALIKES,
    ),
    units=Units(
        units=units.UNITS,
        per=units.PER,
        joins=units.JOINS,
        denominators=units.DENOMINATORS,
        further_per=units.further_per,
        every=units.EVERY,
        abbreviated=units.ABBREVIATED,
        never_shown=units.NEVER_SHOWN,
        only_said=units.ONLY_SAID,
        said_alone=units.SAID_ALONE,
        words=units.WORDS,
        amounts=amounts,
    ),
    names=Names(
        known=(*names.FLUIDS, *names.DRUGS),
        left_out=names.LEFT_OUT,
        one_word=names.ONE_WORD,
        no_numbers=names.NO_NUMBERS,
    ),
    shown=Shown(
        clock=times.clock,
        to=abbreviations.TO,
        one_in=abbreviations.ONE_IN,
        abbreviations=lexicon.ABBREVIATIONS,
        year=(times.YEAR, times.year),
        fractions=abbreviations.FRACTIONS,
        mixed=abbreviations.mixed,
        of_one=abbreviations.of_one,
        article=abbreviations.ARTICLE,
        between=abbreviations.BETWEEN,
        signs=abbreviations.SIGNS,
        sounds=lexicon.SOUNDS,
        hissed=lexicon.HISSED,
    ),
    statements=EnglishStatements(),
)
"""The words of English."""

ENGLISH = Language("en", TABLES, Sentences(), ReportWords())
"""The language of this program: British words, as everything in it is written."""


def english(variety: Variety) -> Language:
    """English in the spelling and the trade words of one shore."""
    return ENGLISH.in_words(american) if variety == "American" else ENGLISH
