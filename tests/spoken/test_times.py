"""Times of day: from words, to speech, and back."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.spoken import interpret, read_back_time, say_number, say_time, say_time_by_digits, speech
from assistant.spoken.english.times import DAY
from assistant.spoken.expect import ConfirmExpected, TimeExpected
from assistant.spoken.meaning import TIME_OF_DAY, Ambiguous, Answer, Kind, NoMatch
from assistant.spoken.times import show_time

MINUTES = [Decimal(minute) for minute in range(DAY)]
TIME, DIGITS = TimeExpected(), TimeExpected(digits_only=True)


@pytest.mark.parametrize("heard", [False, True])
def test_a_time_that_is_said_is_understood_as_itself(heard: bool) -> None:
    """What the assistant says for each minute of the day means that minute and no other."""
    for minute in MINUTES:
        for say, expect in ((say_time, TIME), (say_time_by_digits, TIME), (say_time_by_digits, DIGITS)):
            meaning = interpret(say(minute), expect, heard=heard)
            assert isinstance(meaning, Answer), say(minute)
            assert (meaning.kind, meaning.value, meaning.unit) == (Kind.TIME, minute, TIME_OF_DAY)
            by_digits = say(minute) == say_time_by_digits(minute)
            assert meaning.digit_by_digit == by_digits and not meaning.corrected


def test_figures_are_the_24_hour_clock_where_the_speaker_wrote_them() -> None:
    """Source: ISO 8601-1:2019, hours 00 to 23 and minutes 00 to 59, with and without the colon (from memory)."""
    for minute in MINUTES:
        shown = show_time(minute)
        for text in (shown, shown.replace(":", "")):
            meaning = interpret(text, DIGITS)
            assert isinstance(meaning, Answer) and meaning.value == minute, text
            as_heard = interpret(text, TIME, heard=True)
            hour = int(minute) // 60
            if 10 <= hour <= 12:
                assert isinstance(as_heard, Ambiguous) and minute in as_heard.readings
            else:
                assert isinstance(as_heard, Answer) and as_heard.value == minute


@settings(max_examples=100, deadline=None)
@given(st.integers(1, 12), st.integers(10, 59), st.sampled_from(["", " pm", " am"]))
def test_an_hour_up_to_twelve_is_in_two_halves_of_the_day(hour: int, minutes: int, half: str) -> None:
    """Without the half of the day both are readings, twelve hours apart; with it, it is the one in that half."""
    meaning = interpret(f"{say_number(Decimal(hour))} {say_number(Decimal(minutes))}{half}", TIME)
    both = (Decimal(60 * (hour % 12) + minutes), Decimal(60 * (hour % 12 + 12) + minutes))
    if half:
        assert isinstance(meaning, Answer) and meaning.value == both[half == " pm"]
    else:
        assert meaning == Ambiguous(both, TIME_OF_DAY)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(MINUTES), st.sampled_from(("not", "about", "around", "or", "patient", "[unk]")), st.data())
def test_a_time_is_never_spotted_inside_other_words(minute: Decimal, foreign: str, data: st.DataObject) -> None:
    """One word that does not belong there, anywhere, and the whole utterance is refused."""
    words = data.draw(st.sampled_from((say_time(minute), say_time_by_digits(minute)))).split()
    words.insert(data.draw(st.integers(0, len(words))), foreign)
    assert isinstance(interpret(" ".join(words), TIME), NoMatch)


def test_what_is_said_for_a_time_has_no_figures_and_is_said_for_no_other() -> None:
    """Words only, and a read-back of its own for each minute."""
    said = [read_back_time(minute) for minute in MINUTES]
    assert len(set(said)) == DAY
    assert not any(c.isdigit() for text in said for c in text)
    assert read_back_time(Decimal(870)) == "I have fourteen thirty, one four three zero. Is that right?"


def test_a_time_that_is_shown_by_the_24_hour_clock_is_spoken_so() -> None:
    """An hour with a zero in front or after twelve; other figures are spoken as they stand."""
    for minute in MINUTES:
        if not 10 <= minute // 60 <= 12:
            assert speech(f"at {show_time(minute)}.") == f"at {say_time(minute)}."


@pytest.mark.parametrize("minute", ["-1", "1440", "0.5", "NaN", "Infinity"])
def test_refuses_to_say(minute: str) -> None:
    """What is no minute of the day cannot be said."""
    for say in (say_time, say_time_by_digits, read_back_time):
        with pytest.raises(ValueError, match="no time of day"):
            say(Decimal(minute))


def test_the_assistant_does_not_answer_itself() -> None:
    """A read-back that the microphone catches is neither a time nor a yes."""
    for minute in MINUTES[::97]:
        said = read_back_time(minute)
        for heard in (said, said.removesuffix(" Is that right?")):
            for frame in (TIME, DIGITS, ConfirmExpected()):
                assert isinstance(interpret(heard, frame, heard=True), NoMatch)
