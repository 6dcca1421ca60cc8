"""The course: who flows when, what the pump falls back to, and whether the sums hold."""

import itertools
import xml.etree.ElementTree as ElementTree
from fractions import Fraction
from typing import Any

import pytest

from assistant.dosing import parse_amount as amount
from assistant.dosing.clock import parse_start
from assistant.dosing.course import Pause, Primary, RateChange, Secondary, course
from assistant.dosing.course_file import course_from
from assistant.dosing.course_picture import picture
from assistant.dosing.timeline import Course, Segment
from assistant.errors import QuantityError

START = parse_start("2026-11-25 08:00", "Europe/London")
SALINE = Primary("saline", amount("75 mL/h"), amount("1,000 mL"), amount("50 mL"))


def parts(given: Course) -> list[tuple[str, str, str, str]]:
    """Segments as line, from, to (hours after the start) and rate."""
    return [(s.line, str(s.begins), str(s.ends), str(s.rate)) for s in given.segments]


def test_a_piggyback_interrupts_and_the_pump_falls_back() -> None:
    """The primary stands still while the secondary runs, then goes on at its own rate."""
    drug = Secondary("drug", amount("50 mL"), due=amount("1 h"), duration=amount("30 min"))
    found = course(START, amount("3 h"), SALINE, [drug])
    assert parts(found) == [
        ("saline", "0", "1", "75"),
        ("drug", "1", "3/2", "100"),
        ("saline", "3/2", "3", "75"),
    ]
    assert found.intake("drug") == 50
    assert found.intake("saline") == Fraction("187.5")
    assert found.sentences()[2] == ("09:30 to 11:00: saline at 75 mL/h, 112.5 mL (the pump falls back to the primary)")
    assert found.flowing(Fraction(5, 4)) == Segment("drug", Fraction(1), Fraction(3, 2), Fraction(100))
    assert [found.flowing(Fraction(at)) for at in (0, 1)] == [found.segments[0], found.segments[1]]
    assert found.flowing(Fraction(3)) is None


def test_two_doses_collide() -> None:
    """A dose that is due while another runs waits for it, and the clash is told."""
    one = Secondary("one", amount("100 mL"), due=amount("1 h"), rate=amount("100 mL/h"))
    two = Secondary("two", amount("50 mL"), due=amount("90 min"), rate=amount("100 mL/h"))
    found = course(START, amount("4 h"), SALINE, [two, one])
    assert [p[:3] for p in parts(found)] == [
        ("saline", "0", "1"),
        ("one", "1", "2"),
        ("two", "2", "5/2"),
        ("saline", "5/2", "4"),
    ]
    (clash,) = found.collisions
    assert (clash.line, clash.running, clash.due, clash.begins) == ("two", "one", Fraction(3, 2), 2)
    assert "09:30: two is due while one runs; it begins at 10:00" in found.sentences()


def test_doses_at_the_same_time_go_in_the_order_given() -> None:
    """Of two doses due together the first one given runs first."""
    doses = [Secondary(name, amount("10 mL"), rate=amount("60 mL/h")) for name in ("b", "a")]
    found = course(START, amount("20 min"), SALINE, doses)
    assert [p[:3] for p in parts(found)] == [("b", "0", "1/6"), ("a", "1/6", "1/3")]


def test_a_late_dose_begins_late() -> None:
    """A dose hung twenty minutes late runs its whole time from then on."""
    drug = Secondary("drug", amount("50 mL"), due=amount("1 h"), duration=amount("30 min"), late=amount("20 min"))
    found = course(START, amount("3 h"), SALINE, [drug])
    assert parts(found)[1] == ("drug", "4/3", "11/6", "100")


def test_a_pause_of_the_pump_puts_everything_off() -> None:
    """Nothing flows in a pause; the dose is whole afterwards, only later."""
    drug = Secondary("drug", amount("50 mL"), due=amount("1 h"), duration=amount("30 min"))
    found = course(START, amount("3 h"), SALINE, [drug], [Pause("all", amount("75 min"), amount("30 min"))])
    assert [p[:3] for p in parts(found)] == [
        ("saline", "0", "1"),
        ("drug", "1", "5/4"),
        ("drug", "7/4", "2"),
        ("saline", "2", "3"),
    ]
    assert found.intake("drug") == 50


def test_a_stopped_dose_keeps_the_channel() -> None:
    """A secondary that was stopped for good leaves its rest in the bag, and the primary does not run meanwhile."""
    drug = Secondary("drug", amount("50 mL"), due=amount("1 h"), duration=amount("30 min"))
    found = course(START, amount("3 h"), SALINE, [drug], [Pause("drug", amount("75 min"))])
    assert [p[:3] for p in parts(found)] == [("saline", "0", "1"), ("drug", "1", "5/4")]
    assert found.unfinished == {"drug": 25}
    assert "drug: 25 mL not given by the end" in found.sentences()


def test_a_paused_primary_lets_doses_run() -> None:
    """Stopping the primary alone does not stop a dose."""
    drug = Secondary("drug", amount("50 mL"), due=amount("1 h"), duration=amount("30 min"))
    found = course(START, amount("2 h"), SALINE, [drug], [Pause("saline")])
    assert parts(found) == [("drug", "1", "3/2", "100")]


def test_bags_end_and_are_changed() -> None:
    """Each bag ends at its reserve; the next one follows after the change; without one the primary stands still."""
    fast = Primary("saline", amount("100 mL/h"), amount("250 mL"), amount("50 mL"), 2, amount("6 min"))
    found = course(START, amount("6 h"), fast)
    assert [p[:3] for p in parts(found)] == [("saline", "0", "2"), ("saline", "21/10", "41/10")]
    assert [(e.number, e.at, e.then) for e in found.bag_ends] == [
        (1, 2, "the next bag is hung"),
        (2, Fraction(41, 10), "no bag is left, the primary stands still"),
    ]
    assert found.left_in_bag == 50
    assert "12:06: bag 2 of saline ends; no bag is left, the primary stands still" in found.sentences()


def test_what_stays_in_the_tubing_is_not_given() -> None:
    """Of 50 mL with 15 mL in the tubing 35 mL are given, which is 70 % (as `share-delivered` has it), and it is said.

    Source: ISMP, Hidden medication loss when using a primary administration set for small-volume infusions.
    """
    drug = Secondary("drug", amount("50 mL"), due=amount("1 h"), duration=amount("30 min"), tubing=amount("15 mL"))
    found = course(START, amount("3 h"), SALINE, [drug])
    assert parts(found)[1] == ("drug", "1", "27/20", "100")
    assert found.intake("drug") == 35
    (left,) = found.residuals
    assert (left.line, left.at, left.volume, left.share) == ("drug", Fraction(27, 20), 15, Fraction(3, 10))
    assert found.sentences()[2] == "09:21: 15 mL of drug stay in the tubing, 30 % of the dose"
    stopped = course(START, amount("3 h"), SALINE, [drug], [Pause("drug", amount("75 min"))])
    assert not stopped.residuals and stopped.unfinished == {"drug": 10}


def test_the_reserve_keeps_the_vein_open() -> None:
    """When the last bag is down to its reserve, that flows at the keep-open rate, and then nothing does."""
    kept = Primary("saline", amount("100 mL/h"), amount("250 mL"), amount("50 mL"), keep_open=amount("20 mL/h"))
    found = course(START, amount("6 h"), kept)
    assert parts(found) == [("saline", "0", "2", "100"), ("saline", "2", "9/2", "20")]
    assert found.left_in_bag == 0
    assert [still.why for still in found.standstills] == ["no bag of saline is left"]
    assert found.sentences() == (
        "08:00 to 10:00: saline at 100 mL/h, 200 mL",
        "10:00: bag 1 of saline ends; no bag is left, its reserve keeps the vein open",
        "10:00 to 12:30: saline at 20 mL/h, 50 mL",
        "12:30: bag 1 of saline ends; its reserve is used up, the primary stands still",
        "12:30 to 14:00: nothing flows; no bag of saline is left",
    )
    assert course(START, amount("3 h"), kept).left_in_bag == 30


def test_every_standstill_has_its_reason() -> None:
    """A late start, a pause of the pump, a pause of one line and a bag change are told apart, once each."""
    slow = Primary("saline", amount("100 mL/h"), amount("100 mL"), None, 2, amount("6 min"), amount("30 min"))
    pauses = [Pause("all", amount("1 h"), amount("10 min")), Pause("saline", amount("65 min"), amount("15 min"))]
    found = course(START, amount("2 h"), slow, pauses=pauses)
    assert [(found.when(one.begins), found.when(one.ends), one.why) for one in found.standstills] == [
        ("08:00", "08:30", "saline has not begun"),
        ("09:00", "09:10", "the pump is paused"),
        ("09:10", "09:20", "saline is paused"),
        ("09:50", "09:56", "the bag of saline is changed"),
    ]
    filled = sorted([(one.begins, one.ends) for one in (*found.segments, *found.standstills)])
    assert filled[0][0] == 0 and filled[-1][1] == 2
    assert all(before[1] == after[0] for before, after in itertools.pairwise(filled))


def test_the_picture_shows_short_spans_pauses_and_both_hours_of_a_clock_change() -> None:
    """A bar too short for its rate has a note; a pause is drawn; an hour that comes twice is told apart."""
    drug = Secondary("drug", amount("5 mL"), due=amount("1 h"), duration=amount("3 min"))
    change = RateChange(amount("65 min"), amount("50 mL/h"))
    night = parse_start("2026-10-24 23:00", "Europe/London")
    drawn = picture(
        course(night, amount("12 h"), SALINE, [drug], [Pause("all", amount("5 h"), amount("1 h"))], [change])
    )
    assert "1: saline at 75 mL/h, 00:03 next day to 00:05 next day" in drawn
    assert "nothing flows; the pump is paused" in drawn and ">paused<" in drawn
    assert ">01:00<" in drawn and ">01:00 GMT<" in drawn


def test_a_bag_that_lasts_is_not_reported() -> None:
    """A bag with something left at the end has no end in the course."""
    found = course(START, amount("12 h"), SALINE)
    assert found.bag_ends == ()
    assert found.left_in_bag == 100


def test_a_late_start_and_a_new_rate() -> None:
    """The primary begins late, and takes a new rate when it is told to, also in mid-pause."""
    late = Primary("saline", amount("75 mL/h"), amount("1,000 mL"), starts=amount("20 min"))
    changes = [RateChange(amount("2 h"), amount("50 mL/h")), RateChange(amount("1 h"), amount("100 mL/h"))]
    found = course(START, amount("3 h"), late, changes=changes)
    assert parts(found) == [
        ("saline", "1/3", "1", "75"),
        ("saline", "1", "2", "100"),
        ("saline", "2", "3", "50"),
    ]


def test_intake_by_clock_hour() -> None:
    """Every mL stands in the clock hour in which it flowed, and the hours add up to the whole."""
    half_past = parse_start("2026-11-25 07:30", "Europe/London")
    drug = Secondary("drug", amount("50 mL"), due=amount("1 h"), duration=amount("30 min"))
    found = course(half_past, amount("3 h"), SALINE, [drug])
    assert [(f"{hour:%H:%M}", str(total)) for hour, total in found.hourly()] == [
        ("07:00", "75/2"),
        ("08:00", "175/2"),
        ("09:00", "75"),
        ("10:00", "75/2"),
    ]
    assert [str(total) for _, total in found.hourly("drug")] == ["0", "50", "0", "0"]
    assert sum(total for _, total in found.hourly()) == found.intake()


def test_clock_hours_over_a_clock_change() -> None:
    """The night on which clocks go back has an hour more, the other one an hour less."""
    back = course(parse_start("2026-10-25 00:00", "Europe/London"), amount("3 h"), SALINE)
    assert [f"{hour:%H:%M %Z}" for hour, _ in back.hourly()] == ["00:00 BST", "01:00 BST", "01:00 GMT"]
    forward = course(parse_start("2026-03-29 00:00", "Europe/London"), amount("3 h"), SALINE)
    assert [f"{hour:%H:%M %Z}" for hour, _ in forward.hourly()] == ["00:00 GMT", "02:00 BST", "03:00 BST"]


def test_a_day_with_twelve_doses() -> None:
    """Twelve doses in a day are given whole, and all the rest of the day belongs to the primary."""
    doses = [
        Secondary(f"dose {n}", amount("50 mL"), due=amount(f"{2 * n} h"), duration=amount("30 min")) for n in range(12)
    ]
    bags = Primary("saline", amount("75 mL/h"), amount("1,000 mL"), amount("50 mL"), 3)
    found = course(START, amount("24 h"), bags, doses)
    assert all(found.intake(dose.name) == 50 for dose in doses)
    assert found.intake("saline") == 75 * 18
    assert not found.collisions and not found.unfinished


REFUSED: list[tuple[dict[str, Any], str]] = [
    ({"length": "0 h"}, "length must be above zero"),
    ({"length": "32 h", "start": "noon"}, "24-hour clock"),
    ({"length": "800 h"}, "31 days at most"),
    ({"length": "5 mL"}, "length must come in a unit such as"),
    ({"length": 24}, "length must be a text"),
    ({"length": None}, "lacks length"),
    ({"speed": "1"}, 'no field "speed"'),
    ({"second": "yes"}, "second must be true or false"),
    ({"primary": None}, "The primary must be a table"),
    ({"primary": {"rate": "75 mL/h"}}, "The primary lacks bag_volume"),
    ({"primary": {"bag_volume": "1 L"}}, "The primary lacks rate"),
    ({"primary": {"rate": "75", "bag_volume": "1 L"}}, "The primary, rate: 75 came without a unit"),
    ({"primary": {"rate": "75 mL", "bag_volume": "1 L"}}, "rate must come in a unit such as"),
    ({"primary": {"rate": "75 mL/h", "bag_volume": "1 L", "reserve": "1 L"}}, "leaves nothing"),
    ({"primary": {"rate": "75 mL/h", "bag_volume": "1 L", "bags": 0}}, "Between 1 and 100 bags"),
    ({"primary": {"rate": "75 mL/h", "bag_volume": "1 L", "bags": True}}, "bags must be a whole number"),
    ({"primary": {"rate": "75 mL/h", "bag_volume": "1 L", "colour": "red"}}, 'no field "colour"'),
    (
        {"primary": {"rate": "75 mL/h", "bag_volume": "1 L", "reserve": "50 mL", "keep_open": "75 mL/h"}},
        "keep-open rate is not below",
    ),
    ({"primary": {"rate": "75 mL/h", "bag_volume": "1 L", "keep_open": "20 mL/h"}}, "needs a reserve"),
    ({"secondary": [{"volume": "50 mL", "duration": "1 h", "tubing": "50 mL"}]}, "holds its whole volume"),
    ({"secondary": {}}, "secondary must be a list"),
    ({"secondary": [5]}, "Secondary 1 must be a table"),
    ({"secondary": [{"volume": "50 mL"}]}, "needs either a rate or a duration"),
    ({"secondary": [{"volume": "50 mL", "rate": "50 mL/h", "duration": "1 h"}]}, "either a rate or a duration"),
    ({"secondary": [{"duration": "1 h"}]}, "Secondary 1 lacks volume"),
    ({"secondary": [{"volume": "50 mL", "duration": "1 h", "times": 3}]}, "every and times together"),
    ({"secondary": [{"volume": "50 mL", "duration": "1 h", "every": "8 h"}]}, "every and times together"),
    ({"secondary": [{"volume": "50 mL", "duration": "1 h", "every": "8 h", "times": 201}]}, "times must lie"),
    (
        {"secondary": [{"volume": "50 mL", "duration": "1 h", "due": "8:75"}]},
        'Secondary 1, due: Expected a time such as 22:00 or 2026-10-25 22:00, got "8:75"',
    ),
    ({"secondary": [{"name": "a", "volume": "50 mL", "duration": "1 h"}] * 2}, "a name of its own"),
    ({"secondary": [{"name": "all", "volume": "50 mL", "duration": "1 h"}]}, "a name of its own"),
    ({"pause": [{"line": "nobody"}]}, "which is no line here"),
    ({"pause": [{"at": "1 h", "lasts": "0 h"}]}, "lasts must be above zero"),
    ({"change": [{"rate": "50 mL/h"}]}, "Change 1 lacks at"),
    ({"change": [{"at": "1 h"}]}, "Change 1 lacks rate"),
    ({"start": "2026-11-25 08:00", "change": [{"at": "2026-11-25 07:00", "rate": "5 mL/h"}]}, "before the start"),
]


def table(**changed: Any) -> dict[str, Any]:
    """A whole table with some fields changed; None leaves one out."""
    plain: dict[str, Any] = {
        "start": "08:00",
        "length": "24 h",
        "primary": {"name": "saline", "rate": "75 mL/h", "bag_volume": "1,000 mL"},
    }
    return {name: value for name, value in (plain | changed).items() if value is not None}


DAY = table(
    start="2026-10-24 07:30",
    zone="Europe/London",
    primary={
        "name": "saline <0.9 %>",
        "rate": "75 mL/h",
        "bag_volume": "1,000 mL",
        "reserve": "50 mL",
        "bags": 2,
        "change_takes": "5 min",
        "starts": "20 min",
        "keep_open": "20 mL/h",
    },
    secondary=[
        {"name": "one", "volume": "50 mL", "duration": "30 min", "due": "09:00", "every": "8 h", "times": 3},
        {"name": "two", "volume": "100 mL", "rate": "100 mL/h", "due": "09:15", "late": "5 min"},
        {"volume": "100 mL", "rate": "33 mL/h", "due": "22 h", "tubing": "15 mL"},
    ],
    pause=[{"at": "12:00", "lasts": "40 min"}, {"line": "saline <0.9 %>", "at": "05:00"}],
    change=[{"at": "20:00", "rate": "166.7 mL/h"}],
)
"""A day with everything in it, over the night on which clocks go back."""


@pytest.mark.parametrize(("changed", "words"), REFUSED)
def test_refuses_a_wrong_table(changed: dict[str, Any], words: str) -> None:
    """A wrong file is refused in one line that names the place."""
    with pytest.raises(QuantityError) as refused:
        course_from(table(**changed))
    assert words in str(refused.value)
    assert str(refused.value).isprintable()


def test_reads_a_table() -> None:
    """Clock times, repeats and pauses of a file come out as the course that they describe."""
    found = course_from(
        table(
            start="2026-11-25 22:30",
            zone="Europe/London",
            length="12 h",
            secondary=[
                {"name": "drug", "volume": "50 mL", "duration": "30 min", "due": "00:00", "every": "4 h", "times": 2},
                {"name": "other", "volume": "10 mL", "rate": "60 mL/h", "due": "90 min", "late": "5 min"},
            ],
            pause=[{"at": "06:00", "lasts": "30 min"}],
            change=[{"at": "07:00", "rate": "100 mL/h"}],
        )
    )
    assert [found.when(s.begins) for s in found.segments if s.line.startswith("drug")] == [
        "00:00 next day",
        "04:00 next day",
    ]
    assert found.lines == ("saline", "drug, dose 1", "drug, dose 2", "other")
    assert found.collisions[0].line == "other"
    assert found.flowing(Fraction("7.75")) is None
    assert found.segments[-1].rate == 100


def test_a_clock_time_means_the_next_one() -> None:
    """A due time earlier than the start is the next day's, also where the clocks change that night."""
    found = course_from(
        table(
            start="2026-10-24 23:00",
            zone="Europe/London",
            secondary=[{"name": "drug", "volume": "50 mL", "duration": "1 h", "due": "03:00"}],
        )
    )
    (drug,) = [s for s in found.segments if s.line == "drug"]
    assert drug.begins == 5
    assert found.when(drug.begins) == "03:00 GMT next day"


def test_the_picture_is_whole_and_speaks() -> None:
    """The picture is well-formed, has a bar for every segment, and words for a screen reader; names are escaped."""
    name = '<script>"&'
    drug = Secondary(name, amount("50 mL"), due=amount("1 h"), duration=amount("30 min"))
    other = Secondary("other", amount("50 mL"), due=amount("1 h"), duration=amount("30 min"))
    small = Primary("saline", amount("100 mL/h"), amount("150 mL"), bags=2)
    found = course(START, amount("5 h"), small, [drug, other])
    root = ElementTree.fromstring(picture(found))  # noqa: S314 - our own text
    space = "{http://www.w3.org/2000/svg}"
    bars = [bar for bar in root.iter(f"{space}rect") if bar.get("fill") != "#ffffff"]
    assert len(bars) == len(found.segments)
    titles = [title.text or "" for title in root.iter(f"{space}title")]
    assert any(title.startswith(name) for title in titles)
    assert any("bag 1 ends" in title for title in titles)
    assert any("due at 09:00" in title for title in titles)
    assert "falls back" in (root.findtext(f"{space}desc") or "")
    assert root.find(f".//{space}script") is None
    for bar in bars:
        assert float(bar.get("x", "0")) >= 190 and float(bar.get("x", "0")) + float(bar.get("width", "0")) <= 980.1


def test_a_picture_of_many_days_stays_readable() -> None:
    """A course of a week draws no row of 168 numbers."""
    long = Primary("saline", amount("50 mL/h"), amount("1,000 mL"), bags=10)
    drawn = picture(course(START, amount("168 h"), long))
    assert "too many hours to write out" in drawn
    assert len(drawn) < 30_000
