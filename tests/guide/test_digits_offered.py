"""A number that sounds like one other: in practice both are offered by their digits."""

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.checklist.model import DoubleCheckAsked, NumberAsked, Step
from assistant.guide import Guide, Papers
from assistant.guide.effects import Tone
from assistant.guide.events import Opened
from assistant.guide.progress import Mode, NumberRead, State
from assistant.spoken import ENGLISH, pair_to_offer, say_number, wants_digits
from assistant.spoken.expect import NumberExpected

from .lived import CHECKLIST, KEY, Lived

RATE = next(step for step in CHECKLIST.steps if isinstance(step.expect, NumberAsked))
SECOND = Step(
    id="second", part="Set", say="Second person: the rate?", expect=DoubleCheckAsked(kind="double-check", of="rate")
)
PLAIN = "Say the digits, please."


def asked_for_the_rate(mode: Mode = Mode.PRACTICE, right: Decimal = Decimal(15)) -> Lived:
    """An attempt that asks for the rate at once, and then a second person."""
    key = {"primary.rate": replace(KEY["primary.rate"], value=right)}
    lived = Lived(
        Guide(
            Papers(CHECKLIST.model_copy(update={"steps": (RATE, SECOND)}), "The order.", key, ENGLISH),
            mode,
            {"mode": mode.value},
        )
    )
    lived.give(Opened(lived.at))
    return lived


def question_for(words: str, mode: Mode = Mode.PRACTICE, right: Decimal = Decimal(15), **more: object) -> str:
    """What the guide asks when it has heard these words."""
    lived = asked_for_the_rate(mode, right)
    said = len(lived.says)
    lived.hear(words, **more)
    return " ".join(say.speech for say in lived.says[said:])


@pytest.mark.parametrize(
    ("words", "question"),
    [
        ("thirteen", "Was that one three, or three zero? Say the digits, please."),
        ("thirty", "Was that one three, or three zero? Say the digits, please."),
        ("ten", "Was that two, or one zero? Say the digits, please."),
        ("one fifty", "Was that one one five, or one five zero? Say the digits, please."),
        ("nine eighteen", "Was that nine one eight, or nine eight zero? Say the digits, please."),
        # Several others are likely, or the point is doubted: the digits alone are asked for.
        ("nine hundred and eighty", PLAIN),
        ("ninety", PLAIN),
        ("eighty three point three", PLAIN),
        ("fifteen point five", PLAIN),
    ],
)
def test_two_are_offered_where_there_are_two(words: str, question: str) -> None:
    """The smaller one first, whichever was heard; one sentence with the question."""
    assert question_for(words) == question


@pytest.mark.parametrize("mode", list(Mode))
def test_two_readings_of_the_same_words_are_spoken_by_digits(mode: Mode) -> None:
    """Shown in figures with the unit; both are what was said, whatever the order says."""
    said = "That could be one two five zero or one two point five. Please say it digit by digit."
    assert question_for("twelve fifty", mode) == question_for("twelve fifty", mode, Decimal(1250)) == said
    lived = asked_for_the_rate(mode)
    lived.type("twelve fifty")
    assert "That could be 1,250 mL/h or 12.5 mL/h." in lived.texts(Tone.UNCLEAR)
    assert lived.guide.expectation() == NumberExpected("mL/h", digits_only=True)


def test_only_digits_answer_the_offer() -> None:
    """Neither a yes nor the number said as before, nor "the first one": only its digits, and then the read-back."""
    lived = asked_for_the_rate()
    lived.hear("fifty")
    assert lived.entries[-1]["verdict"] == "digits asked"
    assert lived.guide.expectation() == NumberExpected("mL/h", digits_only=True)
    for words in (
        "fifty",
        "yes",
        "the first one",
        "first",
        "fifteen",
        "50",
        "was that one five or five zero",
    ):
        lived.hear(words)
        assert lived.state is State.ASKING, words
        assert "kept" not in lived.entries[-1]
    lived.hear("five zero")
    assert lived.state is State.READING_BACK
    assert "I have fifty millilitres per hour, five zero millilitres per hour." in lived.texts(Tone.READ_BACK)


def test_neither_of_the_two_can_be_said_too() -> None:
    """What was said may be a third number."""
    lived = asked_for_the_rate()
    lived.hear("fifty")
    lived.hear("one zero five")
    assert lived.state is State.READING_BACK
    assert lived.guide.progress.reading_back == NumberRead(Decimal(105), "mL/h")


@pytest.mark.parametrize("words", ["fifteen", "fifty", "one fifteen", "thirty"])
def test_a_check_off_says_no_number_that_was_not_said(words: str) -> None:
    """The other of the two could be the right one."""
    assert question_for(words, Mode.CHECK_OFF) == PLAIN


def test_a_second_person_is_offered_nothing() -> None:
    """The other of the two could be the first person's number."""
    lived = asked_for_the_rate()
    lived.type("15", "yes")
    assert lived.step == "second"
    lived.hear("fifty")
    assert lived.says[-1].speech == PLAIN


def test_a_doubtful_hearing_is_offered_nothing() -> None:
    """What the recogniser holds for possible may be any number."""
    assert question_for("fifteen", doubtful=True) == PLAIN


@pytest.mark.parametrize("mode", list(Mode))
@pytest.mark.parametrize("words", ["fifteen", "fifty", "eighty three point three"])
def test_what_the_sound_tells_apart_is_read_back_at_once(words: str, mode: Mode) -> None:
    """No digits are asked for; the number is read back as any other, and kept after a clear yes alone."""
    lived = asked_for_the_rate(mode)
    lived.hear(words, told_apart=True)
    assert lived.state is State.READING_BACK
    said = lived.texts(Tone.READ_BACK)
    value = ENGLISH.interpret(words, NumberExpected("mL/h"), heard=True).value
    assert ENGLISH.read_back(value, "mL/h") in said
    lived.hear("okay")
    assert lived.state is State.READING_BACK
    lived.hear("yes")
    assert lived.state is not State.READING_BACK


@pytest.mark.parametrize("also", [{"doubtful": True}, {"gap": True}, {"during_speech": True}])
def test_what_spoils_an_utterance_spoils_that_too(also: dict[str, bool]) -> None:
    """What is doubtful, cut or spoken over is not read back at once."""
    lived = asked_for_the_rate()
    lived.hear("fifteen", told_apart=True, **also)
    assert lived.state is not State.READING_BACK


whole = st.integers(1, 2500).map(Decimal)


@settings(max_examples=40, deadline=None)
@given(whole, whole, whole, st.sampled_from(list(Mode)))
def test_the_question_depends_on_what_was_heard_alone(heard: Decimal, one: Decimal, other: Decimal, mode: Mode) -> None:
    """Whatever the order says, and the heard number itself or its neighbour, the same question comes."""
    words = say_number(heard)
    assert question_for(words, mode, one) == question_for(words, mode, other) == question_for(words, mode, heard)


def test_the_two_of_a_pair_are_asked_about_alike() -> None:
    """Where each is the only neighbour of the other, nobody can tell from the question which one was heard."""
    pairs = {value: pair_to_offer(value) for value in map(Decimal, range(1, 1000))}
    assert pairs[Decimal(13)] == (13, 30) and pairs[Decimal(980)] is None
    for value, pair in pairs.items():
        if pair is not None:
            assert value in pair and pair[0] < pair[1] and wants_digits(value, "mL/h")
            other = pairs.get(pair[0] if value == pair[1] else pair[1])
            assert other is None or other == pair
