"""The formulas: known answers beside refusals, the working, and the table that declares them."""

import inspect
import random
from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction

import pytest

from assistant.dosing import Amount, dose, dose_rate, gravity, preparation, safe_dose
from assistant.dosing.clock import Moment
from assistant.dosing.formulas import FORMULAS, Form, find, solve
from assistant.dosing.result import EXAMPLES, Result
from assistant.dosing.rounding import EXACT
from assistant.dosing.units import QUANTITIES, unit
from assistant.errors import QuantityError


def texts(line: str) -> dict[str, str]:
    """Inputs from a line: ``volume=100 mL | duration=30 min``."""
    return {name: text for name, _, text in (part.partition("=") for part in line.split(" | "))}


def one(formula: str, line: str) -> Result:
    """The answer of a formula, a number; the first of several."""
    answer, *_ = solve(formula, texts(line))
    assert isinstance(answer, Result)
    return answer


INSTEAD = {
    "completion-time": {"duration": "30 min"},
    "latest-start": {"duration": "30 min"},
    "drop-rate": {"volume": "100 mL", "duration": "30 min"},
    "divided-dose": {"interval": "6 h"},
    "daily-dose": {"interval": "8 h"},
    "loading-then-maintenance": {"weight": "70 kg"},
}
"""Inputs that stand in for one another: one of them has to be given."""

ANSWERS = [
    # By hand: 15 x 80 = 1,200, above 1,000; 15 x 40 = 600, below it; 500 / 40 = 12.5; 1,500 / 25 = 60.
    ("dose-with-maximum", "ordered=15 mg/kg | weight=80 kg | maximum=1 g", "1000", "mg"),
    ("dose-with-maximum", "ordered=15 mg/kg | weight=40 kg | maximum=1 g", "600", "mg"),
    ("dose-per-kg", "dose=500 mg | weight=40 kg | lowest=10 mg/kg | highest=15 mg/kg", "12.5", "mg/kg"),
    ("dose-per-kg", "dose=1.5 g/day | weight=25 kg | unit=mg/kg/day", "60", "mg/kg/day"),
    # By hand: 4,000 mg at 40 mg/mL are 100 mL in a third of an hour; 80 x 70 / 100 = 56 mL, six times that an hour.
    (
        "loading-then-maintenance",
        "loading=4 g | loading-duration=20 min | maintenance=2 g/h | concentration=20 g in 500 mL",
        "300",
        "mL/h",
    ),
    (
        "loading-then-maintenance",
        "loading=80 units/kg | loading-duration=10 min | maintenance=18 units/kg/h"
        " | concentration=25,000 units in 250 mL | weight=70 kg",
        "336",
        "mL/h",
    ),
    # By hand: 30 mL in 15 min, 270 mL at 2.5 mL/min in 108 min; 700 mL in 6 h; 100 mL in the 50 min that are left.
    ("two-rate-time", "volume=300 mL | first-rate=120 mL/h | first-duration=15 min | rate=150 mL/h", "123", "min"),
    (
        "two-rate-time",
        "volume=0.25 L | first-rate=1 mL/min | first-duration=0.25 h | rate=94 mL/h | unit=h",
        "2.8",
        "h",
    ),
    ("rate-for-the-rest", "volume=1 L | first-rate=75 mL/h | first-duration=4 h | duration=10 h", "116.7", "mL/h"),
    (
        "rate-for-the-rest",
        "volume=120 mL | first-rate=2 mL/min | first-duration=10 min | duration=1 h",
        "120",
        "mL/h",
    ),
    # Alligation: Pharmacy Math, alligations (pharmacy-tech-test.com/pharmacy-tech-math-page-2.html): 3 % and 1 %, here
    # with a volume of our own; pharmrx.yolasite.com/alligation-medial.php, example 1: 5 mL of 2 % and 10 mL of 4 %.
    ("alligation", "stronger=3 % | weaker=1 % | concentration=1.5 % | volume=500 mL", "125", "mL"),
    ("alligation", "stronger=100 mg/mL | weaker=10 mg/mL | concentration=0.04 g/mL | volume=0.3 L", "100", "mL"),
    (
        "mixture",
        "concentration=2 % | volume=5 mL | added-concentration=4 % | added-volume=10 mL | unit=% | rounding=hundredth",
        "3.33",
        "%",
    ),
    (
        "mixture",
        "concentration=50 % | volume=100 mL | added-concentration=50 mg/mL | added-volume=0.4 L | unit=g/L",
        "140",
        "g/L",
    ),
    # Salts: pharmacalculation.com, Milliequivalents and Millimoles, problem 3: 1 g of magnesium sulfate is 8.114 mEq.
    ("electrolyte", "given=1 g | salt=magnesium sulfate heptahydrate | rounding=hundredth", "8.11", "mEq"),
    # Problem 4 there: 3 mEq/mL of sodium chloride are 17.53 %, that is 175.3 g/L.
    ("electrolyte", "given=3 mEq/mL | salt=Sodium chloride | unit=g/L | rounding=tenth", "175.3", "g/L"),
    ("electrolyte", "given=10 mmol/h | salt=potassium chloride", "10", "mEq/h"),
    ("electrolyte", "given=2 mmol | salt=calcium chloride dihydrate | unit=mg", "294.02", "mg"),
    ("electrolyte", "given=2.5 mmol | salt=magnesium chloride hexahydrate | unit=mmol", "2.5", "mmol"),
    ("electrolyte", "given=13.6 mEq | salt=calcium chloride dihydrate | unit=mmol", "6.8", "mmol"),
    # Flow: Open RN, Nursing Skills, chapter 5, formula; figures of our own, checked by hand.
    ("rate", "volume=1,000 mL | duration=12 h", "83.3", "mL/h"),
    ("rate", "volume=1,000 mL | duration=12 h | rounding=whole", "83", "mL/h"),
    ("rate", "volume=1 L | duration=1 h 30 min", "666.7", "mL/h"),
    ("piggyback-rate", "volume=50 mL | duration=20 min", "150", "mL/h"),
    ("volume", "rate=2 mL/min | duration=30 min", "60", "mL"),
    ("duration", "volume=1,000 mL | rate=83.3 mL/h", "720.3", "min"),
    ("duration", "volume=100 mL | rate=200 mL/h | unit=h", "0.5", "h"),
    ("vtbi", "bag-volume=1,000 mL | reserve=50 mL", "950", "mL"),
    ("vtbi", "bag-volume=1 L | reserve=0 mL", "1000", "mL"),
    ("vtbi", "bag-volume=1,000 mL | reserve=50 mL | overfill=60 mL", "1010", "mL"),
    ("remaining-volume", "volume=500 mL | rate=75 mL/h | elapsed=2 h", "350", "mL"),
    ("remaining-volume", "volume=500 mL | rate=75 mL/h | elapsed=0 min", "500", "mL"),
    ("remaining-volume", "volume=500 mL | rate=75 mL/h | elapsed=9 h", "0", "mL"),
    ("remaining-time", "volume=500 mL | rate=75 mL/h | elapsed=2 h", "280", "min"),
    ("remaining-time", "volume=500 mL | rate=75 mL/h | elapsed=9 h", "0", "min"),
    ("bag-lasts", "available=950 mL | rate=125 mL/h | wanted=8 h", "50", "mL"),
    ("bag-lasts", "available=950 mL | rate=75 mL/h | wanted=12 h", "0", "mL"),
    # Gravity: US Army Subcourse MD0904, Lesson 2 Section IV, formula.
    ("drop-rate", "volume=1,000 mL | duration=8 h | drop-factor=15 gtt/mL", "31", "gtt/min"),
    ("drop-rate", "rate=125 mL/h | drop-factor=10 gtt/mL", "21", "gtt/min"),
    ("drop-rate", "rate=75 mL/h | drop-factor=60 gtt/mL", "75", "gtt/min"),
    ("rate-from-drops", "drops=15 gtt | window=30 s | drop-factor=20 gtt/mL", "90", "mL/h"),
    ("rate-from-drops", "drops=8 gtt | window=15 s | drop-factor=15 gtt/mL", "128", "mL/h"),
    ("percent-off", "found=120 mL/h | ordered=100 mL/h", "20", "%"),
    ("percent-off", "found=90 mL/h | ordered=100 mL/h", "-10", "%"),
    ("percent-off", "found=100 mL/h | ordered=100 mL/h", "0", "%"),
    ("percent-off", "found=30 gtt/min | ordered=33 gtt/min", "-9.1", "%"),
    # The time from a counted rate: 25 gtt/min at 15 gtt/mL is 100 mL/h; figures of our own, checked by hand.
    ("duration", "volume=1 L | rate=25 gtt/min | drop-factor=15 gtt/mL | unit=h", "10", "h"),
    # Weight by the factor that a question states: 154 lb / 2.2 = 70 kg; common teaching example, no source.
    (
        "pump-rate",
        "dose-rate=18 units/kg/h | concentration=25,000 units in 500 mL | weight=154 lb | weight-factor=2.2 lb/kg",
        "25.2",
        "mL/h",
    ),
    ("dose-by-weight", "ordered=15 mg/kg | weight=44 lb | weight-factor=2.2 lb/kg", "300", "mg"),
    ("body-weight", "weight=7 lb 8 oz", "3.4", "kg"),
    # A heparin bolus of 80 units/kg; common teaching example, no source.
    ("volume-for-dose", "dose=80 units/kg | weight=70 kg | concentration=1,000 units/mL", "5.6", "mL"),
    # Maintenance: Holliday and Segar, Pediatrics 1957; 19: 823 (from memory): 1,500 mL and 20 mL for each kg above 20.
    ("maintenance", "weight=25 kg | method=100-50-20", "1600", "mL/day"),
    ("maintenance", "weight=25 kg | method=100/50/20 | unit=mL/h", "66.7", "mL/h"),
    ("maintenance", "weight=25 kg", "65", "mL/h"),
    ("maintenance", "weight=8 kg", "32", "mL/h"),
    ("maintenance", "weight=10 kg", "40", "mL/h"),
    ("maintenance", "weight=20 kg | unit=mL/day", "1440", "mL/day"),
    ("maintenance", "weight=33 lb | weight-factor=2.2 lb/kg", "50", "mL/h"),
    # A day's dose in parts, totals, making up: the meaning of the words; figures of our own, checked by hand.
    ("divided-dose", "daily=50 mg/kg/day | weight=20 kg | interval=6 h", "250", "mg"),
    ("divided-dose", "daily=2 g/day | doses=4 doses | unit=mg", "500", "mg"),
    ("divided-dose", "daily=1 g/day | interval=24 h", "1", "g"),
    ("daily-dose", "dose=750 mg | interval=8 h", "2250", "mg/day"),
    ("daily-dose", "dose=750 mg | doses=3 doses | unit=g/day", "2.25", "g/day"),
    ("sum-of-volumes", "volumes=240 mL; 0.5 L; 50 mL", "790", "mL"),
    ("sum-of-volumes", "volumes=240 mL; 0.5 L; 50 mL | unit=L", "0.79", "L"),
    ("fluid-balance", "intake=2,150 mL | output=1.8 L", "350", "mL"),
    ("fluid-balance", "intake=800 mL | output=950 mL", "-150", "mL"),
    ("diluent", "dose=1 g | concentration=100 mg/mL | displacement=0.6 mL", "9.4", "mL"),
    ("diluent", "dose=1 g | concentration=100 mg/mL", "10", "mL"),
    ("concentration", "dose=25 g | volume=500 mL | unit=%", "5", "%"),
    ("convert", "given=40 mEq | unit=mg | factor=74.5 mg/mEq", "2980", "mg"),
    ("convert", "given=20 mmol | unit=mEq | factor=2 mEq/mmol", "40", "mEq"),
    ("volume-for-dose", "dose=77 mg | concentration=10 mg/mL | rounding=10 mL syringe", "7.8", "mL"),
    ("volume-for-dose", "dose=77 mg | concentration=10 mg/mL | rounding=20 mL syringe", "8", "mL"),
    # Dose: United States Pharmacopeia, General Notices, ratio and percentage strengths (from memory).
    ("volume-for-dose", "dose=0.5 mg | concentration=1:1000", "0.5", "mL"),
    ("volume-for-dose", "dose=9 g | concentration=0.9 %", "1000", "mL"),
    ("volume-for-dose", "dose=20 mEq | concentration=40 mEq/L", "500", "mL"),
    ("dose-in-volume", "volume=20 mL | concentration=1 g in 200 mL", "100", "mg"),
    ("dose-in-volume", "volume=1 mL | concentration=1:10,000", "0.1", "mg"),
    ("dose-by-weight", "ordered=15 mg/kg/dose | weight=20 kg", "300", "mg"),
    ("dose-by-weight", "ordered=10 mcg/kg | weight=3,500 g", "35", "mcg"),
    ("dose-by-weight", "ordered=10 mg/kg | weight=100 lb | rounding=tenth", "453.6", "mg"),
    ("dose-by-weight", "ordered=50 mg/kg/day | weight=20 kg", "1000", "mg/day"),
    ("dose-by-weight", "ordered=18 units/kg/h | weight=70 kg | unit=units/min", "21", "units/min"),
    ("dose-by-weight", "ordered=5 mg/lb/day | weight=20 kg | rounding=whole", "220", "mg/day"),
    ("dose-by-area", "ordered=75 mg/m2 | area=1.8 m2", "135", "mg"),
    ("volume-by-weight", "ordered=20 mL/kg | weight=14 kg", "280", "mL"),
    ("volume-by-weight", "ordered=2 mL/kg/h | weight=14 kg", "28", "mL/h"),
    ("pump-rate", "dose-rate=18 units/kg/h | weight=70 kg | concentration=25,000 units in 250 mL", "12.6", "mL/h"),
    ("pump-rate", "dose-rate=20 mEq/h | concentration=20 mEq in 100 mL", "100", "mL/h"),
    ("pump-rate", "dose-rate=50 mg/m2/h | area=1.6 m2 | concentration=2 mg/mL", "40", "mL/h"),
    ("pump-rate", "dose-rate=1 mg/min | concentration=1 g in 500 mL", "30", "mL/h"),
    ("pump-rate", "dose-rate=0.1 mcg/kg/min | weight=154.3 lb | concentration=16 mcg/mL", "26.2", "mL/h"),
    ("dose-rate", "rate=36 mL/h | concentration=200 mg in 250 mL | weight=95 kg", "5.053", "mcg/kg/min"),
    ("dose-rate", "rate=12.6 mL/h | concentration=100 units/mL | weight=70 kg", "18", "units/kg/h"),
    ("dose-rate", "rate=3 mL/h | concentration=1 mg/mL | unit=mcg/min", "50", "mcg/min"),
    ("rate-factor", "concentration=1 mg/mL | per=mg/min", "60", "mL/h per mg/min"),
    ("mean-dose-rate", "dose=1 g | duration=30 min | unit=mg/min | rounding=tenth", "33.3", "mg/min"),
    ("dose-over-time", "dose-rate=2 mg/kg/h | weight=50 kg | duration=90 min", "150", "mg"),
    ("dose-over-time", "dose-rate=10 units/h | duration=24 h | loading=60 units", "300", "units"),
    ("dose-lasts", "dose=250 mg | dose-rate=5 mcg/kg/min | weight=50 kg | unit=h", "16.7", "h"),
    ("shortest-time", "dose=1 g | highest-rate=10 mg/min", "100", "min"),
    ("shortest-time", "dose=1 g | highest-rate=1 mg/kg/min | weight=50 kg | never-under=15 min", "20", "min"),
    ("shortest-time", "dose=1 g | highest-rate=10 mg/min | never-under=2 h | unit=h", "2", "h"),
    ("bolus", "dose=4,000 units | concentration=50 units/mL | duration=10 min", "480", "mL/h"),
    ("bolus", "dose=5,000 units | concentration=40,000 units/mL | duration=5 min", "1.5", "mL/h"),
    ("body-weight", "weight=154 lb", "69.9", "kg"),
    ("body-weight", "weight=3,500 g", "3.5", "kg"),
    ("convert", "given=70 kg | unit=lb | factor=2.2 lb/kg", "154", "lb"),
    ("convert", "given=2 tsp | unit=mL | factor=5 mL/tsp", "10", "mL"),
    ("convert", "given=5 grains | unit=mg | factor=60 mg/grain", "300", "mg"),
    ("convert", "given=1.5 h | unit=min", "90", "min"),
    # ISMP, Hidden medication loss when using a primary administration set: 25 of 50 mL is half the dose.
    ("share-delivered", "volume=50 mL | tubing=25 mL", "50", "%"),
    ("share-delivered", "volume=50 mL | tubing=25 mL | flush=20 mL", "90", "%"),
    ("share-delivered", "volume=50 mL | tubing=18 mL | flush=30 mL", "100", "%"),
    ("share-delivered", "volume=50 mL | tubing=0 mL", "100", "%"),
    ("dose-left-behind", "dose=1 g | volume=50 mL | tubing=18 mL", "0.36", "g"),
    ("head-difference", "secondary=100 cm | primary=75 cm", "25", "cm"),
    ("head-difference", "secondary=100 cm | primary=75 cm | falls=10 cm", "15", "cm"),
    ("head-difference", "secondary=1 m | primary=40 in", "-1.6", "cm"),
    ("round", "given=62.5 mL/h | rounding=whole down", "62", "mL/h"),
]


@pytest.mark.parametrize(("formula", "line", "value", "name"), ANSWERS)
def test_known_answers(formula: str, line: str, value: str, name: str) -> None:
    """Each formula gives the known answer, with its unit, its name and a working that ends in the value."""
    answer = one(formula, line)
    assert (answer.value, answer.unit) == (Decimal(value), unit(name).name)
    assert answer.formula == formula
    assert answer.working
    assert answer.rounding.apply(answer.exact) == answer.value


@pytest.mark.parametrize(
    ("height", "weight", "method", "value"),
    [
        # Mosteller 1987 gives the formula only: 180 cm and 80 kg is the root of 4, that is 2 m2 exactly.
        ("180 cm", "80 kg", "mosteller", "2"),
        ("1.8 m", "80,000 g", "Mosteller", "2"),
        # Worked by hand with logarithms of four places from the formulas as published (from memory).
        ("170 cm", "70 kg", "du bois", "1.81"),
        ("170 cm", "70 kg", "haycock", "1.83"),
        ("170 cm", "70 kg", "gehan-george", None),
        ("170 cm", "70 kg", "gehan and george", "1.83"),
    ],
)
def test_body_surface_area(height: str, weight: str, method: str, value: str | None) -> None:
    """Each named formula for body surface area gives its value; an unknown name is refused."""
    line = f"height={height} | weight={weight} | method={method}"
    if value is None:
        with pytest.raises(QuantityError, match="not a formula for body surface area"):
            one("surface-area", line)
    else:
        assert one("surface-area", line).value == Decimal(value)


REFUSALS = [
    ("electrolyte", "given=1 g | salt=table salt", "is not a salt known here"),
    ("electrolyte", "given=1 units | salt=sodium chloride", "given must come in a unit such as mg, mEq/mL"),
    ("electrolyte", "given=1 mL | salt=sodium chloride", "given must come in a unit such as mg, mEq/mL"),
    ("electrolyte", "given=0 mg | salt=sodium chloride", "given must be above zero"),
    ("electrolyte", "given=1 mg | salt=sodium chloride | unit=mEq/mL", "cannot be turned into"),
    ("electrolyte", "given=1 mg | salt=sodium chloride | unit=units", "does not measure a salt"),
    ("alligation", "stronger=5 % | weaker=50 % | concentration=10 % | volume=1 L", "does not lie between"),
    ("alligation", "stronger=50 % | weaker=10 % | concentration=10 % | volume=1 L", "does not lie between"),
    ("alligation", "stronger=50 % | weaker=1 units/mL | concentration=10 % | volume=1 L", "do not count the same"),
    (
        "mixture",
        "concentration=5 % | volume=1 mL | added-concentration=1 mEq/mL | added-volume=1 mL",
        "do not count the same thing",
    ),
    (
        "loading-then-maintenance",
        "loading=4 g | loading-duration=20 min | maintenance=2 g/h | concentration=20 g in 500 mL | weight=70 kg",
        "Neither dose is per kg, but a weight came",
    ),
    (
        "loading-then-maintenance",
        "loading=4 g | loading-duration=20 min | maintenance=2 mg/kg/h | concentration=20 g in 500 mL",
        "is per kg, but no weight came",
    ),
    ("two-rate-time", "volume=30 mL | first-rate=2 mL/min | first-duration=15 min | rate=90 mL/h", "nothing of 30 mL"),
    ("rate-for-the-rest", "volume=1 L | first-rate=75 mL/h | first-duration=4 h | duration=4 h", "nothing is left"),
    ("rate", "volume=100 mL", "rate needs duration"),
    ("rate", "duration=30 min", "rate needs volume"),
    ("rate", "volume=100 mL | duration=0 min", "duration must be above zero, but 0 min came"),
    ("rate", "volume=0 mL | duration=30 min", "volume must be above zero, but 0 mL came"),
    ("rate", "volume=-5 mL | duration=30 min", "volume must be above zero, but -5 mL came"),
    ("rate", "volume=100 mg | duration=30 min", "volume must come in a unit such as"),
    ("rate", "volume=100 mL | duration=30 mL", "duration must come in a unit such as"),
    ("rate", "volume=NaN mL | duration=30 min", "volume: Expected a number with its unit"),
    ("rate", "volume=1e400 mL | duration=30 min", 'volume: "e400 mL" is not a unit'),
    ("rate", "volume=100 | duration=30 min", "volume: 100 came without a unit"),
    ("rate", "volume=100 milk | duration=30 min", 'volume: "milk" is not a unit'),
    ("rate", "volume=100 mL | duration=30 min | weight=70 kg", 'rate takes no input "weight"'),
    ("rate", "volume=100 mL | duration=30 min | rounding=often", "rounding:"),
    ("rate", "volume=0.001 mL | duration=24 h", "rounds to zero"),
    ("rate", "volume=999,999,999,999 mL | duration=0.000001 s", "beyond any clinical size"),
    ("rates", "volume=100 mL", 'There is no formula "rates"'),
    ("", "volume=100 mL", "There is no formula"),
    ("vtbi", "bag-volume=50 mL | reserve=50 mL", "leaves nothing"),
    ("vtbi", "bag-volume=50 mL | reserve=-1 mL", "reserve must be zero or above"),
    ("drop-rate", "drop-factor=20 gtt/mL", "either the rate, or the volume"),
    ("drop-rate", "drop-factor=20 gtt/mL | volume=1 L", "either the rate, or the volume"),
    ("drop-rate", "drop-factor=20 gtt/mL | volume=1 L | duration=8 h | rate=75 mL/h", "either the rate, or the volume"),
    ("drop-rate", "drop-factor=20 mL/h | rate=75 mL/h", "drop factor must come in a unit such as"),
    ("rate-from-drops", "drops=15.5 gtt | window=30 s | drop-factor=20 gtt/mL", "Drops are whole"),
    ("live-count", "times=0, 1 | drop-factor=20 gtt/mL", "Three drops at least"),
    ("live-count", "times=0, 1, 1 | drop-factor=20 gtt/mL", "must rise"),
    ("live-count", "times=0, 2, 1 | drop-factor=20 gtt/mL", "must rise"),
    ("live-count", "times=a, b, c | drop-factor=20 gtt/mL", "times: Expected a number"),
    ("volume-for-dose", "dose=5 mg | concentration=5 units/mL", "do not count the same thing"),
    ("volume-for-dose", "dose=5 mL | concentration=5 mg/mL", "dose must come in a unit such as"),
    ("volume-for-dose", "dose=5 mg | concentration=5 mg", "concentration must come in a unit such as"),
    ("volume-for-dose", "dose=5 mg | concentration=strong", "concentration:"),
    ("dose-by-weight", "ordered=5 mg | weight=70 kg", "ordered must come in a unit such as"),
    ("dose-by-weight", "ordered=5 mg/kg/day | weight=70 kg | unit=mg", "mg/day cannot be turned into mg"),
    ("dose-by-weight", "ordered=5 mg/kg | weight=70 mL", "weight must come in a unit such as"),
    ("dose-by-weight", "ordered=5 mg/kg | weight=70 g", "no body weight"),
    ("dose-by-weight", "ordered=5 mg/kg | weight=7,000 kg", "no body weight"),
    ("body-weight", "weight=70 lb | adult=yes", "unlikely for an adult"),
    ("body-weight", "weight=30 kg | adult=yes", "unlikely for an adult"),
    ("body-weight", "weight=70 lb | adult=perhaps", "Expected yes or no"),
    ("pump-rate", "dose-rate=5 mcg/kg/min | concentration=1 mg/mL", "is per kg, but no weight came"),
    ("pump-rate", "dose-rate=5 mg/m2/h | concentration=1 mg/mL", "but no area came"),
    ("pump-rate", "dose-rate=5 mg/h | concentration=1 mg/mL | weight=70 kg", "but a weight or an area came"),
    ("pump-rate", "dose-rate=5 mg/m2/h | concentration=1 mg/mL | area=2 m2 | weight=70 kg", "but a weight came"),
    ("pump-rate", "dose-rate=5 mg/kg/h | concentration=1 mg/mL | area=2 m2 | weight=70 kg", "but an area came"),
    ("pump-rate", "dose-rate=5 cm | concentration=1 mg/mL", "A dose rate was expected, but 5 cm came"),
    ("dose-lasts", "dose=5 mg | dose-rate=5 cm", "A dose rate was expected, but 5 cm came"),
    ("dose-over-time", "dose-rate=5 cm | duration=1 h", "A dose rate was expected, but 5 cm came"),
    ("pump-rate", "dose-rate=5 mg/h | concentration=1 units/mL", "do not count the same thing"),
    ("pump-rate", "dose-rate=5 mg | concentration=1 mg/mL", "A dose rate was expected"),
    ("pump-rate", "dose-rate=5 mg/h | concentration=1 mg/mL | unit=gtt/min", "The answer is a rate"),
    (
        "pump-rate",
        "dose-rate=5 mcg/kg/min | concentration=1 mg/mL | weight=70 kg | unit=mL/kg/h",
        "The answer is a rate",
    ),
    ("rate-factor", "concentration=1 mg/mL | per=mL/h", "mL"),
    ("rate-factor", "concentration=1 mg/mL | per=mg", "is not a dose rate"),
    ("rate-factor", "concentration=1 mg/mL | per=units/h", "do not count the same thing"),
    ("dose-over-time", "dose-rate=5 mg/h | duration=1 h | loading=5 units", "do not count the same thing"),
    ("sum-of-doses", "doses=1 mg; 1 units", "do not count the same thing"),
    ("sum-of-doses", "doses=;", "At least one dose"),
    ("titration", "start=5 mg/h | step=0 mg/h | highest=9 mg/h | concentration=1 mg/mL", "above zero"),
    ("titration", "start=5 mg/h | step=1 mg/h | highest=4 mg/h | concentration=1 mg/mL", "not below the start"),
    ("titration", "start=1 mg/h | step=1 mcg/h | highest=9 mg/h | concentration=1 mg/mL", "more than 200 steps"),
    ("surface-area", "height=170 cm | weight=70 kg | method=guess", "not a formula"),
    ("surface-area", "height=17 cm | weight=70 kg", "no body height"),
    ("surface-area", "height=170 kg | weight=70 kg", "height must come in a unit such as"),
    ("convert", "given=5 tsp | unit=mL", "cannot be turned into"),
    ("convert", "given=5 tsp | unit=mL | factor=5 mL/tbsp", "does not join"),
    ("convert", "given=5 tsp | unit=mL | factor=0 mL/tsp", "must be above zero"),
    ("convert", "given=5 mg | unit=mL", "cannot be turned into"),
    ("share-delivered", "volume=50 mL | tubing=51 mL", "cannot hold"),
    ("percent-off", "found=50 mL/h | ordered=0 mL/h", "ordered must be above zero"),
    ("completion-time", "start=22:00 | volume=500 mL", "either the duration, or the volume"),
    ("completion-time", "start=25:00 | duration=1 h", "24-hour clock"),
    ("completion-time", "start=2560 | duration=1 h", "24-hour clock"),
    ("completion-time", "start=13 pm | duration=1 h", "24-hour clock"),
    ("completion-time", "start=0 am | duration=1 h", "24-hour clock"),
    ("completion-time", "start=8 | duration=1 h", "24-hour clock"),
    ("completion-time", "start=08:00 | volume=1 L | rate=25 gtt/min", "needs the set's drop factor"),
    ("latest-start", "end=16:00", "either the duration, or the volume"),
    ("next-bag-due", "start=08:00 | bag-volume=1 L | rate=95 mL/h | reserve=1 L", "leaves nothing"),
    ("next-bag-due", "start=08:00 | bag-volume=100 mL | rate=100 mL/h | ahead=2 h", "less than the time ahead"),
    ("duration", "volume=1 L | rate=100 mL/h | drop-factor=15 gtt/mL", "rate must come in a unit such as gtt/min"),
    ("drop-rate", "rate=75 mL/h | drop-factor=20", 'Write it like "20 gtt/mL"'),
    ("percent-off", "found=30 mL/h | ordered=33 gtt/min", "found must come in a unit such as gtt/min"),
    ("maintenance", "weight=25 kg | method=5-3-1", "Use one of: 4-2-1, 100-50-20"),
    ("maintenance", "weight=25 kg | unit=mg", "cannot be turned into"),
    ("maintenance", "weight=25 kg | weight-factor=2.2 lb/kg", "does not join"),
    ("pump-rate", "dose-rate=5 mg/h | concentration=1 mg/mL | weight-factor=2.2 lb/kg", "without a weight"),
    ("divided-dose", "daily=50 mg/kg/day | interval=6 h", "no weight came"),
    ("volume-for-dose", "dose=80 units/kg | concentration=100 units/mL", "is per kg, but no weight came"),
    ("bolus", "dose=80 units/kg | concentration=100 units/mL | duration=5 min", "is per kg, but no weight came"),
    ("divided-dose", "daily=2 g/day | interval=6 h | weight=20 kg", "is not per kg"),
    ("divided-dose", "daily=2 g/day", "either the interval between them, or their number"),
    ("divided-dose", "daily=2 g/day | interval=6 h | doses=4 doses", "either the interval"),
    ("divided-dose", "daily=2 g/day | doses=2.5 doses", "The number of doses must be whole, but you gave 2.5 doses"),
    ("divided-dose", "daily=2 g | doses=4 doses", "must come in a unit such as"),
    ("daily-dose", "dose=2 g/day | doses=4 doses", "must come in a unit such as"),
    ("sum-of-volumes", "volumes=;", "At least one volume"),
    ("sum-of-volumes", "volumes=5 mL; 5 mg", "volume 2 must come"),
    ("diluent", "dose=1 g | concentration=100 mg/mL | displacement=10 mL", "The powder alone takes"),
    ("diluent", "dose=1 g | concentration=100 units/mL", "do not count the same thing"),
    ("dilution", "stock=5 % | concentration=10 % | volume=1 L", "cannot make"),
    ("concentration", "dose=25 units | volume=500 mL | unit=%", "cannot be turned into"),
    ("concentration", "dose=25 mg | volume=500 mL | unit=mL", "of no concentration"),
    ("volume-for-dose", "dose=77 mg | concentration=10 mg/mL | rounding=4 mL syringe", "No marks"),
    ("body-weight", "weight=7 lb 16 oz", "Ounces beside pounds go up to 15"),
    ("surface-area", "height=5 ft 12 in | weight=150 lb", "Inches beside feet go up to 11"),
    ("rate", "volume=100 mL | duration=/2 h", "Expected a number with its unit"),
    ("rate", "volume=100 mL | duration=1/2 h", '"1/2 h" is written with a fraction'),
    ("completion-time", "start=22:00 | duration=999,999,999 h", "beyond the calendar"),
]


@pytest.mark.parametrize(("formula", "line", "words"), REFUSALS)
def test_refuses_in_one_line(formula: str, line: str, words: str) -> None:
    """What cannot be worked out is refused in one line: what was expected, what came, what to do."""
    with pytest.raises(QuantityError) as refused:
        solve(formula, texts(line))
    assert words in str(refused.value)
    assert str(refused.value).isprintable() and len(str(refused.value)) < 400
    assert refused.value.remedy.endswith((".", "?"))


MOMENTS = [
    # 1,000 mL at 125 mL/h take 8 h; a time in four figures or by halves of the day is the same time.
    ("completion-time", "start=0800 | volume=1,000 mL | rate=125 mL/h", "16:00"),
    ("completion-time", "start=8:00 AM | volume=1,000 mL | rate=125 mL/h", "16:00"),
    ("completion-time", "start=11:30 pm | duration=8 h", "07:30 next day"),
    ("completion-time", "start=12 am | duration=1 h", "01:00"),
    ("completion-time", "start=12:15 p.m. | duration=1 h", "13:15"),
    ("completion-time", "start=08:00 | volume=1 L | rate=25 gtt/min | drop-factor=15 gtt/mL", "18:00"),
    ("completion-time", "start=2026-10-25 01:30 | zone=Europe/London | second=yes | duration=1 h", "02:30"),
    ("completion-time", "start=2026-10-25 01:30 | zone=Europe/London | second=no | duration=1 h", "01:30 GMT"),
    ("latest-start", "end=16:00 | duration=6 h", "10:00"),
    ("latest-start", "end=02:00 | volume=500 mL | rate=100 mL/h", "21:00 the day before"),
    ("latest-start", "end=2026-03-29 04:00 | zone=Europe/London | duration=4 h", "23:00 GMT the day before"),
    ("latest-start", "end=02:00 | duration=60 h", "14:00 3 days before"),
    ("next-bag-due", "start=08:00 | bag-volume=1,000 mL | rate=100 mL/h", "18:00"),
    ("next-bag-due", "start=08:00 | bag-volume=1 L | rate=95 mL/h | reserve=50 mL | ahead=30 min", "17:30"),
]


@pytest.mark.parametrize(("formula", "line", "text"), MOMENTS)
def test_known_times(formula: str, line: str, text: str) -> None:
    """Figures of our own, checked by hand."""
    (answer,) = solve(formula, texts(line))
    assert isinstance(answer, Moment)
    assert str(answer) == text


def test_hours_of_the_clock_share_an_intake() -> None:
    """From 08:20 for two hours at 60 mL/h: 40, 60 and 20 mL."""
    answers = solve("hourly-intake", {"start": "08:20", "rate": "60 mL/h", "duration": "2 h"})
    assert [str(answer) for answer in answers] == ["40 mL", "60 mL", "20 mL"]
    assert [answer.inputs["hour"] for answer in answers] == ["08:00", "09:00", "10:00"]


SALT_LABELS = [
    # Lactated Ringer's injection, label text (dataemia.com/2022/12/08, dailymed): in 100 mL sodium chloride 600 mg,
    # potassium chloride 30 mg, calcium chloride dihydrate 20 mg; in a litre potassium 4 mEq, calcium 3 mEq.
    ("300 mg", "potassium chloride", "4"),
    ("200 mg", "calcium chloride dihydrate", "3"),
    # From memory, labels: 0.9 % is 154 mEq/L; 8.4 % is 1 mEq/mL; 2 mEq/mL of potassium chloride are 149 mg/mL; 1 g of
    # calcium chloride is 13.6 mEq; 50 % magnesium sulfate is 4.06 mEq/mL; 1 g of calcium gluconate is 4.65 mEq (as
    # labels have it, with their own rounding: 4.46 by the molar mass of the monohydrate, so it is not a row).
    ("9 g", "sodium chloride", "154"),
    ("84 g", "sodium bicarbonate", "1000"),
    ("149.1 mg", "potassium chloride", "2"),
    ("1.47 g", "calcium chloride dihydrate", "20"),
    ("500 g", "magnesium sulfate heptahydrate", "4057"),
    ("196.3 mg", "potassium acetate", "2"),
    ("164 mg", "sodium acetate", "2"),
    ("448.4 mg", "calcium gluconate monohydrate", "2"),
    ("136.1 mg", "sodium acetate trihydrate", "1"),
    ("203.3 mg", "magnesium chloride hexahydrate", "2"),
    ("53.5 mg", "ammonium chloride", "1"),
]


@pytest.mark.parametrize(("mass", "salt", "meq"), SALT_LABELS)
def test_salts_as_their_labels_have_them(mass: str, salt: str, meq: str) -> None:
    """The milliequivalents that labels print beside a salt's mass, to the digits that they print."""
    assert one("electrolyte", f"given={mass} | salt={salt} | rounding=whole").value == Decimal(meq)


def test_a_stock_and_its_diluent() -> None:
    """100 mL of 10 % from 50 %: 20 mL of the stock and 80 mL of diluent (the dose is the same)."""
    answers = solve("dilution", {"stock": "50 %", "concentration": "10 %", "volume": "100 mL"})
    assert [str(answer) for answer in answers] == ["20 mL", "80 mL"]


@pytest.mark.parametrize("name", FORMULAS)
def test_a_unit_of_any_other_kind_is_refused_politely(name: str) -> None:
    """Whatever unit is wanted, the answer comes in it or the project's own error does."""
    formula = find(name)
    if "unit" not in {one.name for one in formula.inputs}:
        return
    given = {one.name: one.example for one in formula.inputs if one.needed} | INSTEAD.get(name, {})
    for wanted in ("%", "mL", "mg", "units", "mL/h", "h", "kg", "mg/mL", "mcg/kg/min", "mg/m2", "gtt/min", "dose"):
        try:
            answers = solve(name, given | {"unit": wanted})
        except QuantityError as refused:
            assert "\n" not in str(refused)
        else:
            assert all(isinstance(answer, Result) and answer.unit == unit(wanted).name for answer in answers)


def test_titration_steps_up_to_the_highest() -> None:
    """Each step has its own pump rate; the highest dose rate is never passed."""
    line = "start=5 mcg/kg/min | step=5 mcg/kg/min | highest=22 mcg/kg/min | concentration=1,600 mcg/mL | weight=70 kg"
    answers = solve("titration", texts(line))
    assert [str(answer) for answer in answers] == ["13.1 mL/h", "26.3 mL/h", "39.4 mL/h", "52.5 mL/h"]
    assert [str(answer.inputs["dose_rate"]) for answer in answers] == [f"{n} mcg/kg/min" for n in (5, 10, 15, 20)]


def test_live_count_gives_rate_and_uncertainty() -> None:
    """Drops at even times have no scatter; uneven ones have twice the standard error of their mean."""
    even, none = solve("live-count", {"times": "0, 1, 2, 3", "drop-factor": "20 gtt/mL"})
    assert (str(even), str(none)) == ("180 mL/h", "0 mL/h")
    uneven, error = solve("live-count", {"times": ["0", "0.9", "2"], "drop-factor": "20 gtt/mL"})
    # intervals 0.9 and 1.1 s: mean 1 s, deviation 0.1414 s, standard error 0.1 s, doubled and of 180 mL/h: 36 mL/h
    assert (str(uneven), str(error)) == ("180 mL/h", "36 mL/h")


CAUTIONED = [
    ("alligation", "stronger=3 % | weaker=1 % | concentration=1.5 % | volume=500 mL", "for the label and the pharma"),
    ("rate-for-the-rest", "volume=1 L | first-rate=75 mL/h | first-duration=4 h | duration=10 h", "a quarter faster"),
    ("rate-for-the-rest", "volume=1 L | first-rate=95 mL/h | first-duration=4 h | duration=10 h", None),
    ("percent-off", "found=111 mL/h | ordered=100 mL/h", "too fast"),
    ("percent-off", "found=89 mL/h | ordered=100 mL/h", "too slow"),
    ("percent-off", "found=110 mL/h | ordered=100 mL/h", None),
    ("percent-off", "found=104 mL/h | ordered=100 mL/h | tolerance=3 %", "too fast"),
    ("head-difference", "secondary=75 cm | primary=75 cm", "both bags will run"),
    ("head-difference", "secondary=90 cm | primary=75 cm", "may run along"),
    ("head-difference", "secondary=95 cm | primary=75 cm", None),
    ("share-delivered", "volume=50 mL | tubing=18 mL", "stays in the tubing"),
    ("share-delivered", "volume=500 mL | tubing=18 mL", None),
    ("share-delivered", "volume=500 mL | tubing=18 mL | flush=18 mL", "mixes"),
    ("bag-lasts", "available=950 mL | rate=125 mL/h | wanted=8 h", "This bag ends after 7.6 h"),
    ("bag-lasts", "available=950 mL | rate=125 mL/h | wanted=7.6 h", None),
    ("vtbi", "bag-volume=1 L | reserve=0 mL | overfill=30 mL", "differs from bag to bag"),
    ("dose-by-weight", "ordered=1 mg/kg | weight=70 lb", "70 lb is a child's weight: if kg was meant"),
    ("dose-by-weight", "ordered=1 mg/kg | weight=80 lb", None),
    ("dose-by-weight", "ordered=1 mg/kg | weight=20 kg", None),
    ("convert", "given=110 lb | unit=kg | factor=2.2 lb/kg", "By the exact factor it is about 49.8952 kg"),
]


@pytest.mark.parametrize(("formula", "line", "caution"), CAUTIONED)
def test_cautions_where_the_reader_must_know(formula: str, line: str, caution: str | None) -> None:
    """A result that must not be used without knowing something says so; another says nothing."""
    answer = one(formula, line)
    if caution is None:
        assert answer.cautions == ()
    else:
        assert any(caution in told for told in answer.cautions)


def test_the_working_shows_every_step() -> None:
    """The working leads from what came to what goes into the pump, one step a line."""
    answer = one("pump-rate", "dose-rate=5 mcg/kg/min | weight=95 kg | concentration=200 mg in 250 mL")
    assert answer.working == (
        "5 mcg/kg/min \u00d7 95 kg = 475 mcg/min",
        "475 mcg/min \u00d7 60 = 28,500 mcg/h",
        "28,500 mcg/h \u00f7 1,000 = 28.5 mg/h",
        "200 mg \u00f7 250 mL = 0.8 mg/mL",
        "28.5 mg/h \u00f7 0.8 mg/mL = 35.625 mL/h",
        "rounded (nearest tenth, half up): 35.6 mL/h",
    )
    assert one("rate", "volume=100 mL | duration=30 min").working == (
        "30 min = 0.5 h",
        "100 mL \u00f7 0.5 h = 200 mL/h",
    )
    assert one("rate", "volume=1 L | duration=20 min").working == (
        "1 L = 1,000 mL",
        "1,000 mL \u00f7 20 min = 50 mL/min",
        "50 mL/min \u00d7 60 min/h = 3,000 mL/h",
    )
    assert one("bolus", "dose=4 g | concentration=20 g in 500 mL | duration=20 min").working == (
        "4 g = 4,000 mg",
        "20 g = 20,000 mg",
        "20,000 mg \u00f7 500 mL = 40 mg/mL",
        "4,000 mg \u00f7 40 mg/mL = 100 mL",
        "100 mL \u00f7 20 min = 5 mL/min",
        "5 mL/min \u00d7 60 min/h = 300 mL/h",
    )
    assert one("dose-lasts", "dose=0.4 g | dose-rate=5 mcg/kg/min | weight=80 kg | unit=h").working == (
        "5 mcg/kg/min \u00d7 80 kg = 400 mcg/min",
        "400 mcg/min \u00d7 60 = 24,000 mcg/h",
        "24,000 mcg/h \u00f7 1,000,000 = 0.024 g/h",
        "0.4 g \u00f7 0.024 g/h = about 16.6667 h",
        "rounded (nearest tenth, half up): 16.7 h",
    )
    assert one("remaining-time", "volume=500 mL | rate=75 mL/h | elapsed=2 h").working == (
        "75 mL/h \u00d7 2 h = 150 mL",
        "500 mL \u2212 150 mL = 350 mL",
        "350 mL \u00f7 75 mL/h = about 4.6667 h",
        "about 4.6667 h = 280 min",
    )


@pytest.mark.parametrize(
    ("formula", "line", "said"),
    [
        ("rate", "volume=1 L | duration=1 h", "Infusion pumps take 0.1 to 999 mL/h"),
        ("rate", "volume=1 mL | duration=12 h | rounding=hundredth", "Infusion pumps take 0.1 to 999 mL/h"),
        ("piggyback-rate", "volume=500 mL | duration=15 min", "Infusion pumps take 0.1 to 999 mL/h"),
        ("drop-rate", "volume=1 L | duration=1 h | drop-factor=20 gtt/mL", "Nobody counts more than 250 drops"),
        ("pump-rate", "dose-rate=90 mg/h | concentration=1 mg/mL | unit=mL/min", ""),
        ("pump-rate", "dose-rate=90 g/h | concentration=1 mg/mL | unit=L/h", "Infusion pumps take 0.1 to 999 mL/h"),
        ("sum-of-volumes", "volumes=6 L; 5 L", "More than 10 L is more than people receive"),
        ("dose-by-weight", "ordered=10 g/kg | weight=70 kg", "More than 500 g"),
        ("electrolyte", "given=60 g | salt=sodium chloride", "More than 1,000 mEq"),
        ("electrolyte", "given=60 g | salt=sodium chloride | unit=mmol", "More than 1,000 mmol"),
        ("dose-by-weight", "ordered=2,000,000 units/kg | weight=70 kg", "More than 100 million units"),
        ("concentration", "dose=4 g | volume=2 mL", "No solution for infusion holds more than 1 g in 1 mL"),
        ("concentration", "dose=2 g | volume=2 mL", ""),
        ("duration", "volume=1 L | rate=5 mL/h", "a set is changed within 7 days"),
        ("duration", "volume=1 L | rate=6 mL/h", ""),
        ("maintenance", "weight=75 kg | method=100-50-20", "where the rule ends"),
        ("hourly-intake", "start=08:00 | rate=1,000 mL/h | duration=1 h", "Infusion pumps take 0.1 to 999 mL/h"),
        ("rate", "volume=999 mL | duration=1 h", ""),
        ("drop-rate", "volume=250 mL | duration=1 h | drop-factor=60 gtt/mL", ""),
    ],
)
def test_a_rate_that_nobody_can_set_has_a_caution(formula: str, line: str, said: str) -> None:
    """What no pump takes and nobody counts is said, up to the limit itself it is not."""
    cautions = one(formula, line).cautions
    assert any(said in caution for caution in cautions) if said else not cautions


def test_nothing_is_rounded_before_the_last_step() -> None:
    """A result that goes into another formula goes in unrounded: a third comes out whole again."""
    from assistant.dosing import flow, parse_amount

    rate = flow.flow_rate(parse_amount("1,000 mL"), parse_amount("12 h"))
    assert rate.value == Decimal("83.3")
    assert flow.volume(rate, parse_amount("12 h")).exact == 1000
    assert flow.volume(rate.amount, parse_amount("12 h")).value == Decimal("999.6")


def test_an_earlier_result_is_rounded_from_its_exact_value() -> None:
    """Rounding a result anew starts from what it was before its first rounding."""
    from assistant.dosing import body, flow, parse_amount
    from assistant.dosing.rounding import HUNDREDTH

    rate = flow.flow_rate(parse_amount("1,000 mL"), parse_amount("12 h"))
    assert body.rounded(rate, rounding=HUNDREDTH).value == Decimal("83.33")
    assert body.rounded(rate.amount, rounding=HUNDREDTH).value == Decimal("83.3")


@pytest.mark.parametrize("formula", FORMULAS.values(), ids=lambda formula: formula.name)
def test_the_table_declares_what_the_functions_take(formula: object) -> None:
    """Every input of the table is a parameter of the function, and every parameter is in the table."""
    assert hasattr(formula, "inputs") and hasattr(formula, "function")
    declared = {one.parameter for one in formula.inputs} - {"zone", "second", "weight_factor"}
    parameters = inspect.signature(formula.function).parameters
    if "given" in parameters and parameters["given"].kind is inspect.Parameter.VAR_KEYWORD:
        return  # bolus: the function behind it gives two results
    assert declared == set(parameters)
    for one_input in formula.inputs:
        needed = parameters.get(one_input.parameter)
        if one_input.form is not Form.AMOUNTS and needed is not None and one_input.name != "rounding":
            assert one_input.needed == (needed.default is inspect.Parameter.empty), one_input.name


@pytest.mark.parametrize("name", FORMULAS)
def test_every_formula_has_an_example_that_works(name: str) -> None:
    """The examples of the help work, alone and with everything that may be left out, and a source is named."""
    formula = find(name)
    assert formula.source and formula.about and formula.gives
    needed = {one.name: one.example for one in formula.inputs if one.needed}
    needed |= INSTEAD.get(name, {})
    answers = solve(name, needed)
    assert answers and all(isinstance(answer, (Result, Moment)) for answer in answers)


def test_every_kind_of_quantity_has_an_example() -> None:
    """An error can always say in which unit a quantity is to be given."""
    assert set(EXAMPLES) == set(QUANTITIES)
    for kind, example in EXAMPLES.items():
        for text in example.split(" or "):
            assert unit(text).signature in QUANTITIES[kind]


def test_exact_values_are_kept() -> None:
    """The rounded value never replaces the exact one."""
    answer = one("rate", "volume=1,000 mL | duration=12 h")
    assert f"{answer.exact_decimal:f}" == "83.33333333333333333333333333"
    unrounded = one("rate", "volume=1,000 mL | duration=12 h | rounding=exact")
    assert unrounded.exact == Fraction(1000, 12)
    assert str(unrounded) == "83.3333 mL/h"  # no more digits than mean something
    assert one("body-weight", "weight=80 kg | rounding=exact").rounding == EXACT


WRONG_KIND = Amount(Decimal(5), "mL")
MG, MG_H, MG_ML, MINUTES = (Amount(Decimal(5), name) for name in ("mg", "mg/h", "mg/mL", "min"))


@pytest.mark.parametrize(
    "work",
    [
        lambda: dose.volume_for_dose(MG, WRONG_KIND),
        lambda: dose.dose_in_volume(WRONG_KIND, WRONG_KIND),
        lambda: dose.bolus(MG, WRONG_KIND, MINUTES),
        lambda: dose_rate.pump_rate(MG_H, WRONG_KIND),
        lambda: dose_rate.dose_rate(Amount(Decimal(5), "mL/h"), WRONG_KIND),
        lambda: dose_rate.rate_factor(WRONG_KIND),
        lambda: dose_rate.titration(MG_H, MG_H, MG_H, WRONG_KIND),
        lambda: preparation.diluent(MG, WRONG_KIND),
        lambda: preparation.dilution(MG_ML, WRONG_KIND, WRONG_KIND),
    ],
)
def test_a_wrong_concentration_is_named(work: Callable[[], object]) -> None:
    """A public function that is given another quantity says which input it was, and what belongs there."""
    with pytest.raises(QuantityError, match=r"^concentration must come in a unit such as mg/mL, but 5 mL came\."):
        work()


def test_times_of_drops_are_decimals() -> None:
    """What is no finite time is refused with what to do."""
    with pytest.raises(QuantityError, match=r"Up to 10,000 times in seconds were expected\. Mark the drops again\."):
        gravity.live_count([Decimal(0), Decimal(1), Decimal("NaN")], Amount(Decimal(20), "gtt/mL"))


def test_a_dose_is_held_against_its_range_and_its_maximum() -> None:
    """Below, within and above the range are told apart, its bounds belong to it; a maximum that holds is said."""
    bounds = "lowest=10 mg/kg | highest=15 mg/kg"
    assert "below the range" in one("dose-per-kg", f"dose=399 mg | weight=40 kg | {bounds}").cautions[0]
    assert not one("dose-per-kg", f"dose=400 mg | weight=40 kg | {bounds}").cautions
    assert one("dose-per-kg", f"dose=600 mg | weight=40 kg | {bounds}").working[-1] == "within the range"
    assert "above the range" in one("dose-per-kg", f"dose=601 mg | weight=40 kg | {bounds}").cautions[0]
    assert (
        "maximum of 1 g holds" in one("dose-with-maximum", "ordered=15 mg/kg | weight=80 kg | maximum=1 g").cautions[0]
    )
    with pytest.raises(QuantityError, match="lowest is above the highest"):
        one("dose-per-kg", "dose=5 mg | weight=40 kg | lowest=5 mg/kg | highest=1 mg/kg")


def test_doses_against_plain_fractions() -> None:
    """Ten thousand seeded cases of the two formulas against sums in fractions."""
    chance = random.Random(15)  # noqa: S311 - a test that repeats
    for _ in range(10_000):
        kilos, per_kg, top = (Decimal(chance.randrange(1, 4000)).scaleb(-1) for _ in range(3))
        kilos = max(kilos, Decimal("0.5"))
        weight, ordered, most = Amount(kilos, "kg"), Amount(per_kg, "mg/kg"), Amount(top, "g")
        capped = safe_dose.dose_with_maximum(ordered, weight, most)
        assert capped.exact == min(Fraction(kilos) * Fraction(per_kg), 1000 * Fraction(top))
        assert safe_dose.dose_per_kg(Amount(top, "mg"), weight).exact == Fraction(top) / Fraction(kilos)
