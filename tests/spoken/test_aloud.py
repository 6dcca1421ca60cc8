"""Text as it is shown, turned into what is spoken."""

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.dosing.units import SIMPLE_UNITS, unit
from assistant.errors import QuantityError
from assistant.spoken import speech
from assistant.spoken.english.sentences import Sentences

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
        ("8:05", "eight zero five"),
        ("08:05", "zero eight zero five"),
        ("08:00", "zero eight hundred"),
        ("14:00", "fourteen hundred"),
        ("at 00:30", "at zero zero thirty"),
        ("10:30", "ten thirty"),
        ("born 14 March 1961", "born fourteen March nineteen sixty one"),
        ("born 8 May 2001", "born eight May two thousand and one"),
        ("25 November 2026", "twenty five November twenty twenty six"),
        ("version 1.0.2", "version one point zero point two"),
        ("Dr Ilse Vantongeren", "Doctor Ilse Vantongeren"),
        ("e.g. saline", "for example saline"),
        ("5 g/100 mL", "five grams per one hundred millilitres"),
        ("500 mg/5\u00a0mL", "five hundred milligrams per five millilitres"),
        ("1,000 mL/8 h", "one thousand millilitres per eight hours"),
        ("mg/100 mL", "milligrams per one hundred millilitres"),
        ("20 mEq/L", "twenty milliequivalents per litre"),
        ("mEq/L", "milliequivalents per litre"),
        ("18 units/kg/h", "eighteen units per kilogram per hour"),
        ("in units/kg/h", "in units per kilogram per hour"),
        ("mg/kg/day", "milligrams per kilogram per day"),
        ("1 mg/kg/day", "one milligram per kilogram per day"),
        ("for each mL", "for each millilitres"),
        ("drops per mL", "drops per millilitre"),
        ("75 mg/m2", "seventy five milligrams per square metre"),
        ("the area in m2", "the area in square metres"),
        ("m\u00b2", "square metres"),
        ("75 ml/hr for 30 mins", "seventy five millilitres per hour for thirty minutes"),
        ("120 mmHg", "one hundred and twenty millimetres of mercury"),
        ("37.5 \u00b0C", "thirty seven point five degrees Celsius"),
        ("at 45\u00b0", "at forty five degrees"),
        ("over 1 1/2 hours", "over one and a half hours"),
        ("2\u00bd tablets", "two and a half tablets"),
        ("2 \u00be L", "two and three quarters litres"),
        ("1/2 L, then 3/4 h", "one half of a litre, then three quarters of an hour"),
        ("1/2 mL/h", "one half of a millilitre per hour"),
        ("\u00bc full", "one quarter full"),
        ("1/2 to 3/4 full", "one half to three quarters full"),
        ("a 10 mL/h rate", "a ten millilitre per hour rate"),
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


WORDS_THEMSELVES = {"units", "milliunits", "days", "dose", "cup", "pint", "quart", "grain", "in"}
"""Printed names that are words as well."""
LETTERS = {"g", "L", "s", "h", "m", "min"}
"""Printed names that may be an initial or a word, and so are units only beside a number or a line."""


@pytest.mark.parametrize("name", SIMPLE_UNITS)
def test_every_unit_of_the_arithmetic_can_be_said(name: str) -> None:
    """No printed name of a unit is left to the voice: beside a number, below a line, above one, alone."""
    shown = [f"2 {name} = 3 {name}", f"Give 5 {name}.", f"5 g/100 {name}", f"1 {name}/kg/h", f"in {name}/kg/h"]
    shown += [f"2 mg/{name}", f"in mg/kg/{name}", f"12 mL/h per mcg/{name}"]
    shown += [f"the number of {name}"] if name not in LETTERS else []
    for text in shown:
        if name == "in" and "=" not in text and "/kg" not in text:
            continue  # "5 in the bag"
        said = speech(text)
        words = set(re.findall(r"[A-Za-z\u00b2%]+", said))
        assert words.isdisjoint({"mg", "kg", "mL", "mcg", *({name} - WORDS_THEMSELVES)}), (text, said)
        assert not set(said) & set("/%\u00b20123456789"), (text, said)


def test_every_quantity_of_the_arithmetic_can_be_said() -> None:
    """Every quantity that the arithmetic knows, made of two or three simple units, with and without a number."""
    count = 0
    for above in SIMPLE_UNITS:
        for below in ("mL", "L", "kg", "h", "min", "day", "dose", "m\u00b2", "kg/h", "kg/min", "kg/day", "m\u00b2/day"):
            try:
                name = unit(f"{above}/{below}").name
            except QuantityError:
                continue
            count += 1
            for text in (f"2.5 {name}", f"The {name} is"):
                said = speech(text)
                assert " per " in said and not set(said) & set("/%\u00b20123456789"), (text, said)
                assert not re.search(r"\b(?!is\b)[a-zA-Z]{1,2}\b", said), (text, said)
    assert count > 100


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
    fixed = [value for name, value in vars(Sentences).items() if name.isupper() and isinstance(value, str)]
    assert len(fixed) > 20
    for text in fixed:
        assert not set(speech(text)) & set("0123456789%/="), text
