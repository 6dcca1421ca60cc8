"""What an author writes for a frame, sentences that may be said, and how words that were begun can go on."""

from decimal import Decimal

import pytest

from assistant.errors import QuantityError, UsageError
from assistant.spoken import continuations, interpret, number_sentences, parse_expect, sample_sentences, say_unit
from assistant.spoken.expect import (
    AnyExpected,
    ChoiceExpected,
    ConfirmExpected,
    Expect,
    NameExpected,
    NumberExpected,
    TextExpected,
)
from assistant.spoken.meaning import Ambiguous, NoMatch
from assistant.spoken.statement import Asked, Want

RATE = NumberExpected("mL/h")
DIGITS = NumberExpected("mL/h", digits_only=True)
FRAMES: tuple[Expect, ...] = (
    *(RATE, DIGITS, AnyExpected(), ConfirmExpected(), TextExpected()),
    *(NameExpected(("cefazolin",)), ChoiceExpected(("left", "right"))),
)


@pytest.mark.parametrize(
    ("text", "expect"),
    [
        ("confirm", ConfirmExpected()),
        (" ANY ", AnyExpected()),
        ("text", TextExpected()),
        ("Number  ml/hr", RATE),
        ("digits mils per hour", DIGITS),
        ("done: Close the clamp.", ConfirmExpected(asked=Asked("Close the clamp.", Want.DONE))),
        ("start: Scrub it.", ConfirmExpected(asked=Asked("Scrub it.", Want.START))),
        ("question: Is it dry?", ConfirmExpected(done_is_yes=False, asked=Asked("Is it dry?", Want.ANSWER))),
        ("choice: none, some ", ChoiceExpected(("none", "some"))),
    ],
)
def test_a_frame_that_is_written(text: str, expect: Expect) -> None:
    """In any letters, and with a unit as people write it."""
    assert parse_expect(text) == expect


FRAME = 'Use "confirm", "any", "text", "number" with a unit ("number mL/h"), or a line: "done: Close the clamp.".'
UNIT = "Use a unit such as mL/h, mL, min or mg."


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("number", "number"),
        ("done:", "done:"),
        ("choice: one", "choice: one"),
        ("confirm x", "confirm x"),
        ("", ""),
        ("x" * 50, "x" * 40),
        ("a\x07", "a?"),
    ],
)
def test_what_is_no_frame(text: str, shown: str) -> None:
    """It is named, as far as it can be shown, with what can be written."""
    with pytest.raises(UsageError) as caught:
        parse_expect(text)
    assert (caught.value.what, caught.value.remedy) == (f'"{shown}" is not something that can be expected.', FRAME)


@pytest.mark.parametrize(
    ("unit", "shown"),
    [("tea", "tea"), ("mL/tea", "mL/tea"), ("", ""), ("mL/mL", "mL/mL"), ("x" * 50, "x" * 40), ("\x07", "?")],
)
def test_what_is_no_unit(unit: str, shown: str) -> None:
    """Named with units that can be said; the same where a frame is written."""
    what = f'"{shown}" is not a unit that can be said here.'
    with pytest.raises(QuantityError) as caught:
        say_unit(unit)
    assert (caught.value.what, caught.value.remedy) == (what, UNIT)
    if unit.isalpha():
        with pytest.raises(UsageError) as refused:
            parse_expect(f"number {unit}")
        assert (refused.value.what, refused.value.remedy) == (what, UNIT)


SAMPLES = [
    (
        RATE,
        [
            "seven cubic centimeter per hour",
            "go back",
            "read the order",
            "louder",
            "give me one minute",
            "previous step",
        ],
    ),
    (
        ConfirmExpected(),
        [
            "read my order",
            "go to the one before",
            "what do i do now",
            "this isn't applicable",
            "hold up",
            "they are not",
        ],
    ),
    (ChoiceExpected(("left", "right")), ["keep going", "help me", "just a sec", "stop the attempt", "speak higher"]),
]


@pytest.mark.parametrize(("expect", "sentences"), SAMPLES)
def test_a_seed_gives_the_sentences_that_it_has_always_given(expect: Expect, sentences: list[str]) -> None:
    """On every machine and in every version, as long as nothing more can be said."""
    assert [sentence for sentence, _ in sample_sentences(expect, 7, len(sentences))] == sentences


@pytest.mark.parametrize("expect", FRAMES, ids=str)
def test_sentences_that_are_drawn_mean_what_they_are_said_to_mean(expect: Expect) -> None:
    """Each is understood; numbers are among them where they may be said; another seed gives others."""
    drawn = sample_sentences(expect, 3, 200)
    assert len(drawn) == 200
    for sentence, meaning in drawn:
        assert meaning == interpret(sentence, expect, heard=True)
        assert not isinstance(meaning, NoMatch)
    numbers = [meaning for _, meaning in drawn if isinstance(meaning, Ambiguous) or meaning.unit]  # type: ignore[union-attr]
    assert bool(numbers) == isinstance(expect, NumberExpected | AnyExpected)
    assert sample_sentences(expect, 4, 20) != drawn[:20] == sample_sentences(expect, 3, 20)


def test_plain_sentences_for_numbers() -> None:
    """Each way to say them, without a unit and with it as most people say it; digit by digit only where asked so."""
    units = ("", " millilitres per hour", " millilitres an hour", " millilitre an hour")
    both = iter([Decimal(15), Decimal("83.3")])
    assert list(number_sentences(RATE, both)) == [
        (way + unit, value)
        for value, ways in (
            (Decimal(15), ("fifteen", "one five")),
            (Decimal("83.3"), ("eighty three point three", "eight three point three")),
        )
        for way in ways
        for unit in units
    ]
    assert [sentence for sentence, _ in number_sentences(DIGITS, iter([Decimal(15)]))] == [
        f"one five{unit}" for unit in units
    ]


BEGUN = [
    # what was said, words among those that can follow, some that cannot, whether it may end here, whether figures may
    (RATE, "", {"eighty", "again", "pause", "yes", "the"}, {"please", "mils", "hundred"}, False, True),
    (RATE, "eighty", {"three", "point", "mils", "please", "thank", "thanks", "sorry"}, {"you"}, True, False),
    (RATE, "eighty three point three mils", {"per", "an", "please", "no"}, {"four", "point"}, True, False),
    (RATE, "eighty three thank", {"you"}, {"please"}, False, False),
    (RATE, "eighty three thank you", set(), {"you", "please"}, True, False),
    (RATE, "tea", set(), {"please", "eighty"}, False, False),
    (ConfirmExpected(), "yes", {"please", "thank"}, {"eighty", "you"}, True, False),
    (ConfirmExpected(), "yes please", set(), {"please"}, True, False),
    (ConfirmExpected(), "thank", set(), {"you"}, False, False),
    (NameExpected(("cefazolin",)), "normal", {"saline"}, {"please"}, False, False),
    (TextExpected(), "go", {"back", "on"}, {"eighty"}, False, False),
]


@pytest.mark.parametrize(("expect", "said", "follow", "never", "complete", "figures"), BEGUN)
def test_how_words_can_go_on(
    expect: Expect, said: str, follow: set[str], never: set[str], complete: bool, figures: bool
) -> None:
    """By the grammar of what is expected, with a courtesy behind what is complete."""
    found = continuations(expect, tuple(said.split()))
    assert follow <= found.words
    assert not never & found.words
    assert bool(found.words) == bool(follow)
    assert (found.complete, found.figures) == (complete, figures)
