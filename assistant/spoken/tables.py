"""What a language folder holds: words and small rules, from which `assistant.spoken.language.Language` is made.

Words are written as they are compared: in small letters, with short forms written out and without marks.
"""

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal

from assistant.spoken.confusion import Confusion
from assistant.spoken.grammar import Rule
from assistant.spoken.meaning import Command
from assistant.spoken.statement import Statements


@dataclass(frozen=True, eq=False)
class Phrases:
    """What means something by itself.

    Attributes:
        commands: what can always be said or typed; the first phrase is the name that the assistant itself uses.
        yes, no: a clear yes, a clear no.
        done: something was done; a yes only where the step asks for something to do.
        also_done: the same as `done`, where it is written; recognisers do not listen for it.
        acknowledged: something was heard; it says nothing about the step.
        beside_an_answer: what of it may stand before or behind an answer and changes nothing: "okay, done".
        likely_answers: what is likeliest said where a confirmation is asked for.
        instructor_words: further ways to say what only an instructor says, with the instructor's word.
        carriers: what may stand before a number, and the kind of quantity that it names ("rate", "volume", "time",
            "mass").
        before_numbers: phrases that may stand before a number in a sentence, in any order: "it is", "set to".
        behind_numbers: what may stand behind one: "on the front".
        before_names, behind_names: the same for the name of a fluid or a drug: "it is a bag of".
        corrections: what parts a slip of the tongue from the number that was meant: the last one counts.
        between_amounts: what joins several amounts that are said together.
        between_numbers: words that show, between two numbers, that there are two.
    """

    commands: Mapping[Command, tuple[str, ...]]
    yes: tuple[str, ...]
    no: tuple[str, ...]
    done: tuple[str, ...]
    likely_answers: tuple[str, ...]
    also_done: tuple[str, ...] = ()
    acknowledged: tuple[str, ...] = ()
    beside_an_answer: tuple[str, ...] = ()
    instructor_words: tuple[tuple[str, str], ...] = ()
    carriers: Mapping[str, str | None] = field(default_factory=dict)
    before_numbers: tuple[str, ...] = ()
    behind_numbers: tuple[str, ...] = ()
    before_names: tuple[str, ...] = ()
    behind_names: tuple[str, ...] = ()
    corrections: tuple[str, ...] = ()
    between_amounts: tuple[str, ...] = ()
    between_numbers: frozenset[str] = frozenset()


@dataclass(frozen=True, eq=False)
class Writing:
    """How the language is written.

    Attributes:
        letters: its small letters, as a set of a regular expression has them.
        contractions: short forms, written out before anything is compared.
        same_word: spellings that mean one word.
        hesitations: sounds of thinking: dropped wherever they stand; inside a number they make it doubtful.
        courtesies: words that add nothing: dropped at the beginning and at the end only.
        said_after: those of them that people put behind an answer; recognisers listen for them there.
        short_forms: how written-out forms are also said; used to list what may be heard.
        one_letter_words: single letters that are words.
        capitals: words that are written with capitals inside a sentence too.
    """

    letters: str = "a-z"
    contractions: Mapping[str, str] = field(default_factory=dict)
    same_word: Mapping[str, str] = field(default_factory=dict)
    hesitations: frozenset[str] = frozenset()
    courtesies: tuple[str, ...] = ()
    said_after: tuple[str, ...] = ()
    short_forms: Mapping[str, str] = field(default_factory=dict)
    one_letter_words: frozenset[str] = frozenset()
    capitals: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, eq=False)
class Numbers:
    """How numbers are said.

    Attributes:
        number: the grammar of a number; its meanings are `assistant.spoken.said.Said`.
        digits: the ten digits, from zero.
        point, minus: what is said before decimals, and before a number below zero.
        cardinal: a whole number from 0 to 999,999,999, as a person says it.
        wordings: ways to say a number, from the number, its cardinal and its digits, the assistant's own way first.
            One that means another number as well is left out by who asks.
        changes: words that may be heard for the words of a number, and what was changed.
        small_words: words of the grammar that show by themselves no number ("a", "and").
        written_only: words of the grammar that recognisers write and nobody says.
    """

    number: Rule
    digits: tuple[str, ...]
    point: str
    minus: str
    cardinal: Callable[[int], str]
    wordings: Callable[[Decimal, str, str], Iterable[str]]
    changes: Callable[[tuple[str, ...]], Iterable[tuple[tuple[str, ...], Confusion]]]
    small_words: frozenset[str] = frozenset()
    written_only: frozenset[str] = frozenset()


@dataclass(frozen=True)
class SpokenUnit:
    """One unit without a denominator.

    Attributes:
        name: canonical, as the trade prints it.
        dimension: what it measures; two units of one dimension measure the same thing.
        one, many: how it is said.
        forms: every way in which people say it or a recogniser writes it, in small letters.
    """

    name: str
    dimension: str
    one: str
    many: str
    forms: tuple[str, ...] = ()


@dataclass(frozen=True, eq=False)
class UnitRules:
    """The grammar of units, made of their table; what it means is the canonical name.

    Attributes:
        simple: a unit without a denominator.
        unit: any unit.
        denominator: a denominator by itself, where the step makes plain of what; ``/h``.
    """

    simple: Rule
    unit: Rule
    denominator: Rule


@dataclass(frozen=True, eq=False)
class Units:
    """How units are said.

    Attributes:
        units: those that may be said.
        per: what the assistant says for the line in a unit.
        joins: whatever joins a unit and its denominator.
        further_per: what else people say there, by the word for the denominator.
        every: one word for "per hour" and its like, with the name of the denominator.
        denominators: names of the units that may stand below the line.
        abbreviated: forms that are written and not said, or that recognisers alone write.
        never_shown: those of them that nobody writes for others to read, and that are words, too.
        only_said: units that a text names, and nobody is asked for: one of it, and many.
        said_alone: units that are spoken without a number too; none is a word or an initial.
        words: names that are words too: spoken as they stand, but below a line they are units.
        amounts: further ways to say an amount than a number with its unit; their meanings are
            `assistant.spoken.quantities.SaidAmount`.
    """

    units: tuple[SpokenUnit, ...]
    per: str
    joins: tuple[str, ...]
    denominators: tuple[str, ...]
    further_per: Callable[[str], tuple[str, ...]] = lambda _below: ()
    every: Mapping[str, str] = field(default_factory=dict)
    abbreviated: frozenset[str] = frozenset()
    never_shown: frozenset[str] = frozenset()
    only_said: Mapping[str, tuple[str, str]] = field(default_factory=dict)
    said_alone: frozenset[str] = frozenset()
    words: tuple[str, ...] = ()
    amounts: Callable[[UnitRules], Sequence[Rule]] = lambda _rules: ()


@dataclass(frozen=True, eq=False)
class Names:
    """Names of fluids and drugs.

    Attributes:
        known: the ways to say each; the first is canonical.
        left_out: words that labels carry and people leave out.
        one_word: runs of words and signs that are one word ("per cent").
        no_numbers: words that begin a number elsewhere, and in a name are words.
    """

    known: tuple[tuple[str, ...], ...] = ()
    left_out: frozenset[str] = frozenset()
    one_word: Mapping[str, str] = field(default_factory=dict)
    no_numbers: frozenset[str] = frozenset()


@dataclass(frozen=True, eq=False)
class Shown:
    """How a voice says what a text shows in figures, signs and short forms.

    Attributes:
        abbreviations: short forms and what is said for them, first of all.
        year: a year after its month, and what is said for both; None where a year is said as a number.
        clock: a time of day, from its hour and its minutes in figures.
        to: what stands for the dash in "20-30".
        one_in: what stands for "1:" in "1:1000", in figures and words.
        fractions: parts of one, as they are written, in words.
        mixed: a whole number with a part in words.
        of_one: a part of one unit, from the part and the word for the unit.
        article: the end of what stands before "10 mL syringe" where the unit describes and has no plural.
        between: signs between two values, once their figures are words.
        signs: signs, in words.
        sounds: words whose sounds a voice would guess, in small letters, by the International Phonetic Alphabet.
        hissed: digits that end in a hiss, with the sounds that a voice needs for them where they are said alone.
    """

    clock: Callable[[str, str], str]
    to: str
    one_in: str
    abbreviations: tuple[tuple[re.Pattern[str], str | Callable[[re.Match[str]], str]], ...] = ()
    year: tuple[re.Pattern[str], Callable[[re.Match[str]], str]] | None = None
    fractions: Mapping[str, str] = field(default_factory=dict)
    mixed: Callable[[str, str], str] = "{} {}".format
    of_one: Callable[[str, str], str] = "{} {}".format
    article: re.Pattern[str] | None = None
    between: tuple[tuple[re.Pattern[str], str], ...] = ()
    signs: Mapping[str, str] = field(default_factory=dict)
    sounds: Mapping[str, str] = field(default_factory=dict)
    hissed: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, eq=False)
class Tables:
    """Everything of a language but the sentences that the assistant says.

    Attributes:
        statements: how it understands what is said about a step; None where only its phrases are understood.
    """

    phrases: Phrases
    writing: Writing
    numbers: Numbers
    units: Units
    names: Names
    shown: Shown
    statements: Statements | None = None
