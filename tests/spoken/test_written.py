"""English sentences as they were read and found right; ways to say a number; what a recogniser is told may be said."""

from collections.abc import Iterable
from decimal import Decimal

import pytest

from assistant.spoken import confusions, interpret, phrases, vocabulary, wordings
from assistant.spoken.confusion import Confusion
from assistant.spoken.expect import ChoiceExpected, Expect, NameExpected, NumberExpected
from assistant.spoken.meaning import Ambiguous, Answer, Kind, Meaning, NoMatch, Reason
from tests.spoken.parts import forms_of
from tests.spoken.written import WRITTEN, written

RATE = NumberExpected("mL/h")


def test_every_sentence_reads_as_it_was_written_down() -> None:
    """Whatever stands in it, one or several, with or without what may be missing: see `written`."""
    assert written().splitlines() == WRITTEN.read_text(encoding="utf-8").splitlines()


def with_and(number: str) -> list[str]:
    """With "and" and without."""
    return [number, number.replace(" and ", " ")]


WORDINGS: list[tuple[str, list[str]]] = [
    ("0", ["zero"]),
    ("15", ["fifteen", "one five"]),
    ("100", ["one hundred", "a hundred", "one zero zero", "one oh oh"]),
    (
        "109",
        [*with_and("one hundred and nine"), *with_and("a hundred and nine"), "one zero nine", "one oh nine"],
    ),
    (
        "110",
        [*with_and("one hundred and ten"), *with_and("a hundred and ten"), "one ten", "one one zero", "one one oh"],
    ),
    ("999", [*with_and("nine hundred and ninety nine"), "nine ninety nine", "nine nine nine"]),
    ("1000", ["one thousand", "a thousand", "one zero zero zero", "one oh oh oh"]),
    (
        "1100",
        ["one thousand one hundred", "a thousand one hundred", "eleven hundred", "one one zero zero", "one one oh oh"],
    ),
    (
        "1250",
        [
            *with_and("one thousand two hundred and fifty"),
            *with_and("a thousand two hundred and fifty"),
            *with_and("twelve hundred and fifty"),
            *("one two five zero", "one two five oh"),
        ],
    ),
    ("2010", [*with_and("two thousand and ten"), "two zero one zero", "two oh one oh"]),
    ("2100", ["two thousand one hundred", "twenty one hundred", "two one zero zero", "two one oh oh"]),
    (
        "9999",
        [
            *with_and("nine thousand nine hundred and ninety nine"),
            *with_and("ninety nine hundred and ninety nine"),
            "nine nine nine nine",
        ],
    ),
    ("0.5", ["zero point five", "point five"]),
    (
        "1000.5",
        [
            *("one thousand point five", "a thousand point five"),
            *("one zero zero zero point five", "one oh oh oh point five"),
        ],
    ),
]
"""Ways to say a number in English, the assistant's own first (common practice, no source)."""


@pytest.mark.parametrize(("value", "ways"), WORDINGS)
def test_the_ways_to_say_a_number(value: str, ways: list[str]) -> None:
    """These and no others; each is taken for this number."""
    assert list(wordings(Decimal(value))) == ways
    for way in ways:
        meaning = interpret(way, RATE)
        readings = meaning.readings if isinstance(meaning, Ambiguous) else (getattr(meaning, "value", None),)
        assert Decimal(value) in readings, way


HEARD = [
    # a number, and by kind the others that it may be heard for, beside those with a digit more or less
    ("2", {"two for ten": "10", "hundred lost": "200"}),
    ("5", {"five for nine": "9", "six for sixty": "50", "hundred lost": "500"}),
    ("10", {"two for ten": "2"}),
    ("15", {"five for nine": "19", "teen for ty": "50", "hundred lost": "105", "six for sixty": "150"}),
    ("80", {"six for sixty": "8", "teen for ty": "18", "pair for ten": "880"}),
    ("90", {"six for sixty": "9", "teen for ty": "19", "five for nine": "50", "pair for ten": "980"}),
    ("100", {"hundred lost": "1", "a for eight": "800"}),
    (
        "105",
        {
            "point lost": "10.5",
            "hundred lost": "15",
            "five for nine": "109",
            "six for sixty": "150",
            "a for eight": "805",
        },
    ),
    ("118", {"point lost": "11.8", "teen for ty": "180", "a for eight": "818"}),
    ("250", {"six for sixty": "25 205", "teen for ty": "215", "five for nine": "290"}),
    ("833", {"point lost": "83.3", "a for eight": "133"}),
    ("980", {"pair for ten": "90", "six for sixty": "98 908", "five for nine": "580", "teen for ty": "918"}),
    ("1000", {"a for eight": "8000"}),
    ("83.3", {"point lost": "833"}),
    ("0.5", {"five for nine": "0.9", "point lost": "5"}),
]


def a_digit_more_or_less(text: str) -> set[Decimal]:
    """Whole numbers with one digit taken out or put in."""
    if "." in text:
        return set()
    less = {text[:at] + text[at + 1 :] for at in range(len(text))} - {""}
    more = {text[:at] + digit + text[at:] for at in range(len(text) + 1) for digit in "0123456789"}
    return {Decimal(other) for other in less | more if other[0] != "0" and len(other) <= 4} - {Decimal(text)}


@pytest.mark.parametrize(("value", "by_kind"), HEARD)
def test_what_a_number_may_be_heard_for(value: str, by_kind: dict[str, str]) -> None:
    """Every kind of mishearing, with its numbers, and no other."""
    found: dict[str, set[Decimal]] = {}
    for neighbour in confusions(Decimal(value)):
        found.setdefault(neighbour.kind.value, set()).add(neighbour.value)
    lost = found.pop(Confusion.DIGIT_LOST.value, set())
    assert lost == a_digit_more_or_less(value)
    assert found == {kind: set(map(Decimal, others.split())) for kind, others in by_kind.items()}


def number(
    value: str, unit: str = "mL/h", *, by_digits: bool = True, said: bool = False, corrected: bool = False
) -> Answer:
    return Answer(Kind.NUMBER, Decimal(value), unit, digit_by_digit=by_digits, unit_said=said, corrected=corrected)


TYPED: list[tuple[str, Expect, Meaning]] = [
    ("83.3 an hour", RATE, number("83.3", said=True)),
    ("83 mL per hour no 84", RATE, number("84", said=True, corrected=True)),
    ("83 no 84 mL per hour", RATE, number("84", said=True, corrected=True)),
    # A unit that was said once holds for the correction too: another one than is asked for is never lost.
    ("83 mL no 84", RATE, NoMatch(Reason.WRONG_UNIT)),
    ("83 no 84 mL", RATE, NoMatch(Reason.WRONG_UNIT)),
    # A point that parts thousands elsewhere: both numbers, up to the ends of the range.
    ("9.999", RATE, Ambiguous((Decimal("9.999"), Decimal(9999)), "mL/h")),
    ("1.000", NumberExpected("mL/h", lowest=Decimal(1000)), Ambiguous((Decimal(1), Decimal(1000)), "mL/h")),
    ("10.000", RATE, number("10")),
    # No zero stands before a whole number that has a point: these words could be cut in two.
    ("zero five point three", RATE, NoMatch(Reason.TWO_NUMBERS)),
    ("oh five point three", RATE, NoMatch(Reason.TWO_NUMBERS)),
    ("oh point five", RATE, number("0.5")),
]


@pytest.mark.parametrize(("words", "expect", "meaning"), TYPED)
def test_numbers_at_the_edges(words: str, expect: Expect, meaning: Meaning) -> None:
    """Corrections keep the unit, ambiguous points are asked about, the ends of a range belong to it."""
    assert interpret(words, expect) == meaning


def test_the_names_that_a_recogniser_is_given_alone() -> None:
    """For a second look at a name: every way to say one of these, in words, and nothing else."""
    expect = NameExpected(("normal saline", "cefazolin"), alone=True)
    assert phrases(expect) == (
        *("zero point nine percent normal saline", "zero point nine percent saline"),
        *("zero point nine percent sodium chloride", "zero point nine saline", "cefazolin", "cephazolin"),
        *("isotonic saline", "n s", "normal saline", "physiological saline", "saline zero point nine percent"),
        "sodium chloride zero point nine percent",
    )
    assert set(vocabulary(expect)) == words_in([*phrases(expect), "please", "thank you", "thanks"])
    among_all = phrases(NameExpected(("normal saline", "cefazolin")))
    assert {"pause", "lactated ringers", "normal saline", "vancomycin"} <= set(among_all)


def words_in(sentences: Iterable[str]) -> set[str]:
    return {word for sentence in sentences for word in sentence.split()}


def test_the_choices_that_a_recogniser_is_given() -> None:
    """Each choice and each of its phrases, beside what is always said."""
    said = phrases(ChoiceExpected(("left", "right arm"), (("the left one", "left"),)))
    assert {"left", "right arm", "the left one"} <= set(said)
    assert {"not left", "is it right arm", "almost the left one"} <= set(said)
    assert {"pause", "yes", "not yet", "done"} <= set(said)


@pytest.mark.parametrize(
    ("unit", "forms"),
    [
        ("mL/h", {"millilitres per hour", "mils an hour", "milliliters per hour", "mils per hour"}),
        ("gtt/min", {"drops per minute", "drops a minute"}),
        ("mL", {"millilitres", "mils", "cc"}),
    ],
)
def test_ways_to_say_a_unit(unit: str, forms: set[str]) -> None:
    """People say "mils an hour" and "drops a minute"."""
    assert forms <= set(forms_of(unit))
    assert words_in(forms) <= set(vocabulary(NumberExpected(unit)))


def test_a_unit_that_nobody_knows_is_listened_for_as_it_is_written() -> None:
    """A checklist may ask for anything."""
    assert set(vocabulary(NumberExpected("old furlongs"))) - set(vocabulary(RATE)) == {"old", "furlongs"}
