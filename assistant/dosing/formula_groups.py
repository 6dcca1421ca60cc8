"""The formulas by what they are about, and the words by which people look for them."""

from collections.abc import Mapping
from types import MappingProxyType

from assistant.dosing.declared import Formula
from assistant.dosing.formula_table import FORMULAS

GROUPS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "Flow by pump": (
            "rate",
            "piggyback-rate",
            "volume",
            "duration",
            "vtbi",
            "remaining-volume",
            "remaining-time",
            "bag-lasts",
            "two-rate-time",
            "rate-for-the-rest",
        ),
        "Flow by gravity": ("drop-rate", "rate-from-drops", "rate-from-drop-rate", "percent-off", "live-count"),
        "By the clock": ("completion-time", "latest-start", "next-bag-due", "due-time", "hourly-intake"),
        "Dose and strength": (
            "concentration",
            "volume-for-dose",
            "dose-in-volume",
            "dose-by-weight",
            "dose-with-maximum",
            "dose-per-kg",
            "dose-by-area",
            "volume-by-weight",
            "divided-dose",
            "daily-dose",
            "sum-of-doses",
        ),
        "Dose in time": (
            "pump-rate",
            "dose-rate",
            "rate-factor",
            "mean-dose-rate",
            "dose-over-time",
            "dose-lasts",
            "shortest-time",
            "bolus",
            "loading-then-maintenance",
            "titration",
        ),
        "Making up": (
            "diluent",
            "dilution",
            "alligation",
            "mixture",
            "electrolyte",
            "share-delivered",
            "dose-left-behind",
            "head-difference",
        ),
        "Body and fluid": ("body-weight", "surface-area", "maintenance", "sum-of-volumes", "fluid-balance"),
        "Numbers": ("convert", "round"),
    }
)
"""Every formula, once."""

CALLED: Mapping[str, str] = MappingProxyType(
    {
        "rate": "infusion rate, flow rate, pump rate, how fast, mL/h, ml/hr, drip",
        "piggyback-rate": "ivpb, secondary, intermittent infusion, antibiotic, infusion rate",
        "volume": "how much fluid, amount infused",
        "duration": "how long, infusion time, run time",
        "vtbi": "volume to be infused, reserve",
        "remaining-volume": "what is left, amount remaining",
        "remaining-time": "time left",
        "bag-lasts": "enough, next bag",
        "completion-time": "when does it finish, end time, eta",
        "latest-start": "when to start, finish by",
        "next-bag-due": "bag change, spike the next bag",
        "due-time": "set change, hang time",
        "drop-rate": "drip rate, drops per minute, gtt/min, gravity, drop factor, microdrip, macrodrip",
        "rate-from-drops": "count drops, drip chamber, drip",
        "rate-from-drop-rate": "gtt/min to mL/h, drip rate",
        "percent-off": "deviation, too fast, too slow, tolerance",
        "live-count": "tap drops",
        "concentration": "strength, mg/mL, dilution strength",
        "volume-for-dose": "draw up, how many mL, desired over have, injection volume",
        "dose-in-volume": "how many mg, amount of drug",
        "dose-by-weight": "mg/kg, weight-based dose, paediatric, pediatric",
        "dose-with-maximum": "maximum dose, capped dose, ceiling",
        "dose-per-kg": "safe range, safe dose, is this dose safe, mg/kg check",
        "volume-by-weight": "mL/kg, fluid bolus",
        "dose-by-area": "bsa, mg/m2, chemotherapy",
        "pump-rate": "infusion rate, titrated drip, vasoactive drip, mcg/kg/min, units/h, dose to rate",
        "dose-rate": "rate to dose, what dose, mcg/kg/min",
        "rate-factor": "drip factor of a bag, titration factor",
        "mean-dose-rate": "mg/min, dose over time",
        "dose-over-time": "total dose, cumulative dose",
        "dose-lasts": "how long a bag lasts",
        "shortest-time": "maximum rate, no faster than",
        "bolus": "loading dose, iv push by pump",
        "loading-then-maintenance": "loading dose, bolus then infusion, maintenance dose, heparin protocol",
        "two-rate-time": "slow start, transfusion, first 15 minutes, rate change, two rates",
        "rate-for-the-rest": "behind schedule, ahead of schedule, catch up, recalculate, new rate, two rates",
        "alligation": "mix two strengths, alligation alternate, two stocks",
        "mixture": "mix two strengths, alligation medial, resulting concentration",
        "electrolyte": "mEq to mg, mEq to mmol, milliequivalents, millimoles, salt, valence, molar mass",
        "titration": "titration table, steps",
        "body-weight": "lb to kg, pounds",
        "convert": "unit conversion, lb, ounces, mcg to mg",
        "round": "rounding",
        "surface-area": "bsa, body surface area, mosteller",
        "divided-dose": "q6h, each dose, mg/kg/day",
        "daily-dose": "per day, total daily",
        "maintenance": "4-2-1, holliday, child's fluid",
        "sum-of-volumes": "intake total",
        "fluid-balance": "intake and output, i&o",
        "hourly-intake": "hour by hour",
        "diluent": "reconstitute, powder",
        "dilution": "stock solution, weaken, c1v1",
        "share-delivered": "residual volume, tubing",
        "dose-left-behind": "residual volume, dead space",
        "head-difference": "hang height, gravity piggyback",
        "sum-of-doses": "total of doses",
    }
)
"""Words of the trade for each formula."""


def looked_for(word: str) -> tuple[Formula, ...]:
    """The formulas that a word leads to, in the order of the groups.

    Args:
        word: one word or several; every one of them has to stand in the name, the words or what it is about.
    """
    parts = word.lower().replace("-", " ").replace("_", " ").split()
    if not parts:
        return ()
    return tuple(
        FORMULAS[name]
        for names in GROUPS.values()
        for name in names
        if all(part in _said_of(FORMULAS[name]) for part in parts)
    )


def _said_of(formula: Formula) -> str:
    return f"{formula.name} {formula.about} {formula.gives} {CALLED[formula.name]}".lower().replace("-", " ")
