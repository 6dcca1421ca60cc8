"""Text as it is shown, turned into what is spoken."""

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.dosing.units import SIMPLE_UNITS
from assistant.spoken import speech
from assistant.spoken.english import sentences

LIBRARY = Path(__file__).parent.parent.parent / "checklists"


@pytest.mark.parametrize(
    ("shown", "spoken"),
    [
        ("83.3 mL/h", "eighty three point three millilitres per hour"),
        ("1,000 mL", "one thousand millilitres"),
        ("30 min", "thirty minutes"),
        ("1 min", "one minute"),
        ("1 mL", "one millilitre"),
        ("0.5 mL", "zero point five millilitres"),
        ("12 h", "twelve hours"),
        ("20 s", "twenty seconds"),
        ("20-30 s", "twenty to thirty seconds"),
        ("20\u201330 s", "twenty to thirty seconds"),
        ("10 to 40 mg/mL", "ten to forty milligrams per millilitre"),
        ("5 mcg/kg/min", "five micrograms per kilogram per minute"),
        ("20 gtt/mL", "twenty drops per millilitre"),
        ("1 g", "one gram"),
        ("2 days", "two days"),
        ("50mL", "fifty millilitres"),
        ("0.9 % sodium chloride", "zero point nine percent sodium chloride"),
        ("5% dextrose in 0.45% sodium chloride", None),
        ("About 3 cm below the chamber", "About three centimetres below the chamber"),
        ("a 10 mL syringe", "a ten millilitre syringe"),
        ("125 mL/h is not what your order needs.", None),
        ("Step 3 of 35.", "Step three of thirty five."),
        ("Step 30 of 35, critical. Hang the bag.", "Step thirty of thirty five, critical. Hang the bag."),
        (
            "1,000 mL / 8 h = 125 mL/h",
            "one thousand millilitres divided by eight hours equals one hundred and twenty five millilitres per hour",
        ),
        ("250 mL \u00d7 20 gtt/mL \u00f7 30 min", None),
        ("1,000 mL - 50 mL = 950 mL", None),
        ("VTBI 950 mL", "volume to be infused nine hundred and fifty millilitres"),
        ("an IV line", "an intravenous line"),
        ("rate (mL/h)", "rate (millilitres per hour)"),
        ("Order OH-101", "Order O H one zero one"),
        ("learner A17", "learner A one seven"),
        ("number 40-7719", "number four zero seven seven one nine"),
        ("14:30", "fourteen thirty"),
        ("8:00", "eight o'clock"),
        ("08:05", "eight zero five"),
        ("born 14 March 1961", "born fourteen March nineteen sixty one"),
        ("born 8 May 2001", "born eight May two thousand and one"),
        ("25 November 2026", "twenty five November twenty twenty six"),
        ("version 1.0.2", "version one point zero point two"),
        ("Dr Ilse Vantongeren", "Doctor Ilse Vantongeren"),
        ("e.g. saline", "for example saline"),
        ("75 mg/m\u00b2", "seventy five milligrams per square metre"),
        ("1.8 m\u00b2", "one point eight square metres"),
        ("2.2 lb/kg", "two point two pounds per kilogram"),
        ("66 in = 167.64 cm", "sixty six inches equals one hundred and sixty seven point six four centimetres"),
        ("5 in the bag", "five in the bag"),
        ("12 mL/h per mcg/min", "twelve millilitres per hour per microgram per minute"),
        ("mL/h per mcg/min", "millilitres per hour per microgram per minute"),
        ("about 1.2 kPa", "about one point two kilopascals"),
        ("1:10,000", "one in ten thousand"),
        ("\u00bd full", "one half full"),
        ("a third to half full", "a third to half full"),
        ("Luer-lock", "Luer-lock"),
        ("Is that right?", "Is that right?"),
        ("", ""),
        ("   ", ""),
    ],
)
def test_speaks(shown: str, spoken: str | None) -> None:
    """No figure, sign or abbreviation is left; where no words are given, only that is asked."""
    said = speech(shown)
    assert not set(said) & set("0123456789%/=+\u00d7\u00f7")
    if spoken is not None:
        assert said == spoken


def test_every_unit_of_the_arithmetic_can_be_said() -> None:
    """No printed name of a unit is left to the voice, beside a number or below a line."""
    for name in SIMPLE_UNITS:
        for shown in (f"2 {name} = 3 {name}", f"2 mg/{name}" if name != "units" else "2 mg/mL"):
            said = speech(shown)
            words = set(re.split(r"[ /]", said))
            assert words.isdisjoint({name} - {"units", "milliunits", "days", "dose", "cup", "pint", "quart", "grain"})
            assert "/" not in said


def test_speech_leaves_speech_alone() -> None:
    """What is already words stays as it is."""
    for shown in ("Take the bag from stock. What fluid does its label name?", "Hold. Stop, and look again."):
        assert speech(shown) == shown


def _texts(tree: object) -> Iterator[str]:
    match tree:
        case str():
            yield tree
        case dict():
            for name, value in tree.items():
                if name in ("say", "more", "hint", "why", "if_wrong", "title", "purpose", "cautions", "steps"):
                    yield from _texts(value)
                elif name == "expires":
                    yield value["say"]
        case list():
            for value in tree:
                yield from _texts(value)


def test_everything_in_the_library_can_be_spoken() -> None:
    """Of every checklist, nothing that is read aloud keeps a figure or a sign."""
    texts = [text for file in LIBRARY.glob("*.toml") for text in _texts(tomllib.loads(file.read_text("utf-8")))]
    assert len(texts) > 100
    for text in texts:
        assert not set(speech(text)) & set("0123456789%/="), text


def test_every_fixed_sentence_can_be_spoken() -> None:
    """Of the assistant's own sentences too."""
    fixed = [value for name, value in vars(sentences).items() if name.isupper() and isinstance(value, str)]
    assert len(fixed) > 20
    for text in fixed:
        assert not set(speech(text)) & set("0123456789%/="), text
