"""What the display shows, without a browser: one thing at a time, and nothing but what the guide says."""

import pytest

from assistant.checklist.load import load
from assistant.desk.drawn import bands
from assistant.desk.shown import Kind, Shown, Whose
from assistant.guide import Guide, Opened, Recorded, Typed
from assistant.guide.effects import Append, Cover, Listen, Say, Tone
from assistant.guide.papers import Papers
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from assistant.spoken import ENGLISH
from tests.desk.pages import ASKED, AT, STATES, number, say, step


@pytest.mark.parametrize(
    ("name", "kind", "whose"),
    [
        ("step", Kind.STEP, Whose.YOURS),
        ("listening", Kind.STEP, Whose.LISTENING),
        ("speaking", Kind.STEP, Whose.SPEAKING),
        ("deaf", Kind.TALK, Whose.DEAF),
        ("number", Kind.NUMBER, Whose.LISTENING),
        ("unclear", Kind.STEP, Whose.YOURS),
        ("hold", Kind.HOLD, Whose.LISTENING),
        ("help", Kind.CUE, Whose.YOURS),
        ("order", Kind.ORDER, Whose.YOURS),
        ("wait", Kind.STEP, Whose.WAIT),
        ("paused", Kind.TALK, Whose.PAUSED),
        ("covered", Kind.COVERED, Whose.YOURS),
        ("result", Kind.RESULT, Whose.OVER),
    ],
)
def test_one_thing_in_the_middle_and_one_whose_turn(name, kind, whose):
    assert (STATES[name].middle.kind, STATES[name].whose) == (kind, whose)


def test_a_cleared_display_keeps_nothing_of_what_was_said():
    """A second person who is to work a number out alone reads neither the first one's words nor the answer to them."""
    before = ASKED.took(Typed(AT, "83.3 mL/h")).told(number("83.3", "mL/h")).told(say("83.3 agrees.", Tone.AGREES))
    assert "83.3" in "".join(bands(before).values())
    assert "83.3" not in "".join(bands(before.covered()).values())


def test_a_hold_is_not_pushed_out_by_the_step_that_is_asked_again():
    held = ASKED.took(Typed(AT, "x")).told(say("It does not match.", Tone.HOLD)).told(step(18, "Enter the rate."))
    assert (held.middle.kind, held.beneath) == (Kind.HOLD, "Enter the rate.")
    again = held.took(Typed(AT, "again")).told(step(18, "Enter the rate."))
    assert again.middle.kind is Kind.STEP


@pytest.mark.parametrize(
    ("value", "unit", "drawn"),
    [
        ("1000", "mL", ["1", "000"]),
        ("0.5", "mL/h", ["0"]),
        ("83.3", "mL/h", ["83"]),
        ("1234567.25", "mL", ["1", "234", "567"]),
    ],
)
def test_a_number_is_drawn_in_groups_with_a_point_of_its_own(value, unit, drawn):
    """Thousands apart, a leading zero, the unit as printed. Source: ISMP, Error-Prone Abbreviations (from memory)."""
    html = bands(Shown().told(number(value, unit)))["what"]
    assert [piece.split("<")[0] for piece in html.split('class="group">')[1:]] == drawn
    assert ('class="point"' in html) == ("." in value)
    assert f'class="unit">{unit}<' in html


def test_everything_from_outside_is_escaped():
    html = bands(ASKED.took(Typed(AT, "<img src=x onerror=alert(1)>")).told(say("<script>", Tone.HOLD)))
    assert "<img" not in "".join(html.values())
    assert "<script" not in "".join(html.values())


def lived(*lines):
    """What a real guide says, effect by effect, when these lines are typed."""
    checklist = load("primary-line")
    order = load_order(checklist.order)
    guide = Guide(Papers(checklist, order.sentence(), answer_key(order), ENGLISH))
    effects = []
    for sequence, event in enumerate([Opened(AT), *(Typed(AT, line) for line in lines)], 1):
        (entry,) = guide.receive(event)
        assert isinstance(entry, Append)
        effects += guide.receive(Recorded(sequence, "00"))
    return effects


def test_the_guide_tells_what_a_screen_needs_as_data():
    """A number that is read back, the order and a pause come as data beside their sentences."""
    effects = lived("all there", "what is my order", "pause", "go on")
    orders = [effect.text for effect in effects if isinstance(effect, Say) and effect.order]
    assert len(orders) == 2
    assert all("OH-101" in text for text in orders)
    assert [effect.paused for effect in effects if isinstance(effect, Listen)] == [False, False, False, True, False]
    assert not any(isinstance(effect, Cover) for effect in effects)
