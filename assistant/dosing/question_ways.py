"""What can be asked in a line: which things, taken together, make which formula's inputs."""

from collections.abc import Mapping
from dataclasses import dataclass

_BY_WEIGHT = "dose rate per weight"


@dataclass(frozen=True)
class Slot:
    """One thing that a way of asking needs.

    Attributes:
        name: for the steps, and for the sentence about what lacks.
        kinds: of a `Taken` that fills it; "bag:volume" and "bag:dose" open a bag.
        cue: a pattern for the words just before it (or, with ``>`` in front, just behind it), where only they tell
            it from another thing of its kind.
        example: how one is written, for the sentence about what lacks.
    """

    name: str
    kinds: tuple[str, ...]
    example: str
    cue: str = ""


@dataclass(frozen=True)
class Step:
    """One formula on the way; an input is a slot's name, or "=" for the answer of the step before."""

    formula: str
    inputs: Mapping[str, str]


@dataclass(frozen=True)
class Way:
    """One way to an answer.

    Attributes:
        gives: the kind of the answer.
        slots: all of them are needed.
        steps: the last one gives the answer.
        special: the words of `question_words.SPECIAL` that it needs.
        lets: those that it may have.
        spares: kinds that may stand in the line and are not needed.
        only_asked: it is never taken where the line does not say what it asks for.
    """

    gives: str
    slots: tuple[Slot, ...]
    steps: tuple[Step, ...]
    special: frozenset[str] = frozenset()
    lets: frozenset[str] = frozenset()
    spares: frozenset[str] = frozenset()
    only_asked: bool = False


_VOLUME = Slot("volume", ("volume",), "100 mL")
_BAG_VOLUME = Slot("volume", ("bag:volume",), "100 mL")
_DURATION = Slot("duration", ("duration",), "30 min")
_RATE = Slot("rate", ("rate",), "75 mL/h")
_FACTOR = Slot("drop factor", ("drop factor",), "20 gtt/mL")
_DOSE = Slot("dose", ("dose",), "80 mg")
_STRENGTH = Slot("concentration", ("bag", "concentration"), "400 mg in 250 mL")
_WEIGHT = Slot("weight", ("weight",), "70 kg")
_AREA = Slot("area", ("area",), "1.8 m\u00b2")
_HEIGHT = Slot("height", ("length",), "170 cm")
_DOSE_RATE = Slot("dose rate", ("dose rate",), "10 mg/h")
_RATE_PER_KG = Slot("dose rate", (_BY_WEIGHT,), "5 mcg/kg/min")
_DOSE_PER_KG = Slot("dose", ("dose per weight",), "0.2 mg/kg")
_DROP_RATE = Slot("drop rate", ("drop rate",), "30 gtt/min")
_START = Slot("start", ("start",), "08:00")

_FLOW_LETS = frozenset({"bolus", "day", "loading", "maintenance"})
_FLOW_SPARES = frozenset({"fluid", "interval", "weight", "dose", "concentration", "drop factor"})
_SPARES = frozenset({"fluid", "interval"})


def _plain(formula: str, gives: str, **slots: Slot) -> Way:
    return Way(gives, tuple(slots.values()), (_step(formula, **slots),), spares=frozenset({"fluid"}))


def _step(formula: str, **slots: Slot) -> Step:
    return Step(formula, {name.replace("_", "-"): slot.name for name, slot in slots.items()})


def _flow(formula: str, gives: str, **slots: Slot) -> tuple[Way, ...]:
    """A way for fluid that flows: with a volume, and with a bag whose volume counts and whose dose does not."""
    step = (_step(formula, **slots),)
    free = Way(gives, tuple(slots.values()), step, lets=_FLOW_LETS, spares=_FLOW_SPARES)
    if _VOLUME not in slots.values():
        return (free,)
    bagged = tuple(_BAG_VOLUME if slot is _VOLUME else slot for slot in slots.values())
    return free, Way(gives, bagged, step, lets=_FLOW_LETS, spares=_FLOW_SPARES - {"dose", "concentration"})


def _per(way: Way, rate: Slot, plain: Slot) -> Way:
    """The same way for a dose or dose rate per kg, with the weight."""
    slots = tuple(rate if slot is plain else slot for slot in way.slots)
    steps = tuple(
        Step(step.formula, {**step.inputs, "weight": _WEIGHT.name}) if place == 0 else step
        for place, step in enumerate(way.steps)
    )
    return Way(way.gives, (*slots, _WEIGHT), steps, way.special, way.lets, way.spares, way.only_asked)


_PUMP = Way(
    "rate",
    (_DOSE_RATE, _STRENGTH),
    (Step("pump-rate", {"dose-rate": "dose rate", "concentration": "concentration"}),),
    lets=frozenset({"maintenance"}),
    spares=_SPARES,
)
_PUMP_DROPS = Way(
    "drop rate",
    (_DOSE_RATE, _STRENGTH, _FACTOR),
    (*_PUMP.steps, Step("drop-rate", {"rate": "=", "drop-factor": "drop factor"})),
    spares=_SPARES,
)
_DRAW = Way(
    "volume",
    (_DOSE, _STRENGTH),
    (Step("volume-for-dose", {"dose": "dose", "concentration": "concentration"}),),
    lets=frozenset({"loading", "day"}),
    spares=_SPARES,
)
_BOLUS = Way(
    "rate",
    (_DOSE, _STRENGTH, _DURATION),
    (Step("bolus", {"dose": "dose", "concentration": "concentration", "duration": "duration"}),),
    lets=frozenset({"loading"}),
    spares=_SPARES,
)
_LASTS = Way(
    "duration",
    (_DOSE, _DOSE_RATE),
    (Step("dose-lasts", {"dose": "dose", "dose-rate": "dose rate"}),),
    spares=_SPARES,
)
_BAG_LASTS = Way(
    "duration",
    (Slot("dose", ("bag:dose",), "400 mg"), _DOSE_RATE),
    _LASTS.steps,
    spares=_SPARES,
    only_asked=True,
)
_SHORTEST = Way(
    "duration",
    (Slot("dose", ("dose", "bag:dose"), "1,500 mg"), _DOSE_RATE),
    (Step("shortest-time", {"dose": "dose", "highest-rate": "dose rate"}),),
    special=frozenset({"most"}),
    spares=frozenset({"fluid"}),
    only_asked=True,
)
_GIVEN = Way(
    "dose",
    (_DOSE_RATE, _DURATION),
    (Step("dose-over-time", {"dose-rate": "dose rate", "duration": "duration"}),),
    lets=frozenset({"day"}),
    spares=frozenset({"fluid", "bag", "concentration"}),
)
_DAILY = Slot("daily dose", ("dose rate",), "2 g/day")
_DAILY_PER_KG = Slot("daily dose", (_BY_WEIGHT,), "50 mg/kg/day")
_OFTEN = (
    (Slot("interval", ("interval",), "every 6 h"), "interval"),
    (Slot("doses", ("doses",), "4 doses"), "doses"),
)


def _by_day() -> tuple[Way, ...]:
    found: list[Way] = []
    for often, name in _OFTEN:
        for daily, more in ((_DAILY, ()), (_DAILY_PER_KG, (_WEIGHT,))):
            inputs = {"daily": daily.name, name: often.name} | ({"weight": "weight"} if more else {})
            step = Step("divided-dose", inputs)
            lets = frozenset({"day"})
            found.append(Way("dose", (daily, often, *more), (step,), lets=lets))
            draw = Step("volume-for-dose", {"dose": "=", "concentration": "concentration"})
            found.append(Way("volume", (daily, often, *more, _STRENGTH), (step, draw), lets=lets))
        day = Step("daily-dose", {"dose": "dose", name: often.name})
        found.append(Way("dose rate", (_DOSE, often), (day,), lets=frozenset({"day"})))
        found.append(Way("dose", (_DOSE, often), (day,), special=frozenset({"day"}), only_asked=True))
    return tuple(found)


def _by_clock() -> tuple[Way, ...]:
    found: list[Way] = []
    lets = frozenset({"day"})
    for volume in (_VOLUME, _BAG_VOLUME):
        for slots in ((volume, _RATE), (volume, _DROP_RATE, _FACTOR)):
            names = {"rate": slots[1].name, "volume": "volume"} | (
                {"drop-factor": "drop factor"} if len(slots) > 2 else {}
            )
            step = Step("completion-time", {"start": "start", **names})
            found.append(Way("clock", (_START, *slots), (step,), lets=lets, spares=_SPARES))
    end = Slot("end", ("end",), "by 16:00")
    for before in ((_VOLUME, _RATE), (_BAG_VOLUME, _RATE), (_DURATION,)):
        step = Step("latest-start", {"end": "end", **{slot.name: slot.name for slot in before}})
        found.append(Way("clock", (end, *before), (step,), special=frozenset({"until"}), spares=_SPARES))
    step = Step("completion-time", {"start": "start", "duration": "duration"})
    found.append(Way("clock", (_START, _DURATION), (step,), lets=lets, spares=_FLOW_SPARES | {"volume", "bag"}))
    return tuple(found)


_THEN = r"\bthen\b|\bfollowed by\b"


def _two_rates() -> tuple[Way, ...]:
    """One thing and then another: a slow start and the rest, a loading dose and the maintenance."""
    special, lets = frozenset({"then"}), frozenset({"loading", "maintenance"})
    then = Slot("rate", ("rate",), "150 mL/h", cue=_THEN)
    first = (Slot("first rate", ("rate",), "120 mL/h"), Slot("first duration", ("duration",), "15 min"))
    inputs = {"rate": "rate", "first-rate": "first rate", "first-duration": "first duration", "volume": "volume"}
    found = [Way("duration", (then, *first, _VOLUME), (Step("two-rate-time", inputs),), special, spares=_SPARES)]
    for kind, loading in (("dose", "4 g"), ("dose per weight", "80 units/kg")):
        for rate, maintenance in (("dose rate", "2 g/h"), (_BY_WEIGHT, "18 units/kg/h")):
            slots: tuple[Slot, ...] = (
                Slot("maintenance", (rate,), maintenance, cue=_THEN),
                Slot("loading dose", (kind,), loading),
                Slot("loading time", ("duration",), "20 min"),
                _STRENGTH,
            )
            inputs = {
                "loading": "loading dose",
                "loading-duration": "loading time",
                "maintenance": "maintenance",
                "concentration": "concentration",
            }
            if "weight" in kind + rate:
                slots, inputs = (*slots, _WEIGHT), inputs | {"weight": "weight"}
            found.append(
                Way("rate", slots, (Step("loading-then-maintenance", inputs),), special, lets, frozenset({"fluid"}))
            )
    return tuple(found)


_LEFT = frozenset({"left"})
_ELAPSED = Slot("elapsed", ("duration",), "3 h", cue=r"\bafter\b|\bin\b|\bfor\b|\bhas\b|\bsince\b|\bbeen\b")
_RESERVE = Slot(
    "reserve",
    ("volume",),
    "50 mL",
    cue=r"\breserve\b|\bleav(?:e|ing)\b|\bkeep|\bless\b|>^\s*(?:\w+\s+){0,2}(?:reserve|left|in the (?:bag|chamber))",
)
_STOCK = (
    Slot("stock", ("bag", "concentration", "fluid"), "50 %", cue="strongest"),
    Slot("concentration", ("bag", "concentration", "fluid"), "10 %", cue="weakest"),
)
_MIXED = (
    Slot("stronger", ("bag", "concentration", "fluid"), "50 %", cue="strongest"),
    Slot("weaker", ("bag", "concentration", "fluid"), "5 %", cue="weakest"),
    Slot("concentration", ("bag", "concentration", "fluid"), "10 %", cue="middle"),
)
_INTAKE = Slot("intake", ("volume",), "2,150 mL", cue=r"\bin(?:take)?\b[^#]*$|>^\s*(?:of )?(?:in\b|intake)")
_OUTPUT = Slot("output", ("volume",), "1,800 mL", cue=r"\bout(?:put)?\b[^#]*$|>^\s*(?:of )?(?:out\b|output)")
_TUBING = Slot("tubing", ("volume",), "18 mL", cue=r"\btubing\b|\bline\b|\bset\b|>^\s*(?:in the )?(?:tubing|line)")
_FOUND = Slot("found", ("rate", "drop rate"), "120 mL/h", cue=r"\brun\w*|\bfound\b|\bcount\w*|\bactual\w*|\bmeasured\b")
_ORDERED = Slot("ordered", ("rate", "drop rate"), "125 mL/h", cue=r"\border\w*|\bprescri\w*|\bshould\b")

WAYS: tuple[Way, ...] = (
    *_flow("rate", "rate", volume=_VOLUME, duration=_DURATION),
    *_flow("drop-rate", "drop rate", volume=_VOLUME, duration=_DURATION, drop_factor=_FACTOR),
    *_flow("drop-rate", "drop rate", rate=_RATE, drop_factor=_FACTOR),
    *_flow("duration", "duration", volume=_VOLUME, rate=_RATE),
    *_flow("duration", "duration", volume=_VOLUME, rate=_DROP_RATE, drop_factor=_FACTOR),
    *_flow("volume", "volume", rate=_RATE, duration=_DURATION),
    _plain("rate-from-drops", "rate", drops=Slot("drops", ("drops",), "15 gtt"), window=_DURATION, drop_factor=_FACTOR),
    _plain("rate-from-drop-rate", "rate", drop_rate=_DROP_RATE, drop_factor=_FACTOR),
    Way(
        "volume",
        (_DROP_RATE, _FACTOR, _DURATION),
        (
            Step("rate-from-drop-rate", {"drop-rate": "drop rate", "drop-factor": "drop factor"}),
            Step("volume", {"rate": "=", "duration": "duration"}),
        ),
        spares=_SPARES,
    ),
    _DRAW,
    _per(_DRAW, _DOSE_PER_KG, _DOSE),
    Way(
        "dose",
        (_VOLUME, _STRENGTH),
        (_step("dose-in-volume", volume=_VOLUME, concentration=_STRENGTH),),
        spares=frozenset({"interval"}),
    ),
    Way(
        "dose",
        (_VOLUME, Slot("concentration", ("fluid",), "5 %")),
        (_step("dose-in-volume", volume=_VOLUME, concentration=_STRENGTH),),
    ),
    Way(
        "dose",
        (_DOSE_PER_KG, _WEIGHT),
        (Step("dose-by-weight", {"ordered": "dose", "weight": "weight"}),),
        lets=frozenset({"loading"}),
        spares=_SPARES | {"bag", "concentration"},
    ),
    Way(
        "dose rate",
        (_RATE_PER_KG, _WEIGHT),
        (Step("dose-by-weight", {"ordered": "dose rate", "weight": "weight"}),),
        lets=frozenset({"day", "maintenance"}),
        spares=_SPARES | {"bag", "concentration"},
    ),
    _plain(
        "volume-by-weight",
        "volume",
        ordered=Slot("volume per kg", ("volume per weight",), "20 mL/kg"),
        weight=_WEIGHT,
    ),
    Way(
        "volume",
        (Slot("volume per kg", ("volume per weight",), "20 mL/kg"), _WEIGHT),
        (Step("volume-by-weight", {"ordered": "volume per kg", "weight": "weight"}),),
        special=frozenset({"loading"}),
        spares=frozenset({"fluid", "duration"}),
    ),
    Way(
        "rate",
        (Slot("rate per kg", ("rate per weight",), "2 mL/kg/h"), _WEIGHT),
        (Step("volume-by-weight", {"ordered": "rate per kg", "weight": "weight"}),),
        lets=frozenset({"maintenance", "day"}),
        spares=_SPARES,
    ),
    Way(
        "rate",
        (Slot("volume per kg", ("volume per weight",), "20 mL/kg"), _WEIGHT, _DURATION),
        (
            Step("volume-by-weight", {"ordered": "volume per kg", "weight": "weight"}),
            Step("rate", {"volume": "=", "duration": "duration"}),
        ),
        lets=frozenset({"loading"}),
        spares=_SPARES,
    ),
    Way(
        "dose",
        (_DOSE_PER_KG, _WEIGHT, Slot("maximum", ("dose",), "1 g", cue=r"\bmax\w*\b|\bat most\b|no more than")),
        (Step("dose-with-maximum", {"ordered": "dose", "weight": "weight", "maximum": "maximum"}),),
        special=frozenset({"most"}),
        spares=_SPARES,
    ),
    Way(
        "dose per weight",
        (_DOSE, _WEIGHT),
        (Step("dose-per-kg", {"dose": "dose", "weight": "weight"}),),
        spares=_SPARES,
        only_asked=True,
    ),
    _plain("dose-by-area", "dose", ordered=Slot("dose per area", ("dose per area",), "75 mg/m\u00b2"), area=_AREA),
    Way(
        "dose",
        (Slot("dose per area", ("dose per area",), "75 mg/m\u00b2"), _AREA),
        (Step("dose-by-area", {"ordered": "dose per area", "area": "area"}),),
        special=frozenset({"bsa"}),
        spares=_SPARES,
    ),
    Way(
        "dose",
        (Slot("dose per area", ("dose per area",), "75 mg/m\u00b2"), _HEIGHT, _WEIGHT),
        (
            Step("surface-area", {"height": "height", "weight": "weight"}),
            Step("dose-by-area", {"ordered": "dose per area", "area": "="}),
        ),
        lets=frozenset({"bsa"}),
        spares=_SPARES,
    ),
    _PUMP,
    _per(_PUMP, _RATE_PER_KG, _DOSE_RATE),
    Way(
        "rate",
        (Slot("dose rate", ("dose rate per area",), "10 mg/m\u00b2/h"), _STRENGTH, _AREA),
        (Step("pump-rate", {"dose-rate": "dose rate", "concentration": "concentration", "area": "area"}),),
        lets=frozenset({"bsa"}),
        spares=_SPARES,
    ),
    _PUMP_DROPS,
    _per(_PUMP_DROPS, _RATE_PER_KG, _DOSE_RATE),
    Way(
        "dose rate",
        (_RATE, _STRENGTH),
        (Step("dose-rate", {"rate": "rate", "concentration": "concentration"}),),
        lets=frozenset({"day"}),
        spares=_SPARES,
    ),
    Way(
        "dose",
        (_RATE, _STRENGTH),
        (Step("dose-rate", {"rate": "rate", "concentration": "concentration"}),),
        spares=_SPARES,
        only_asked=True,
    ),
    Way(
        _BY_WEIGHT,
        (_RATE, _STRENGTH, _WEIGHT),
        (Step("dose-rate", {"rate": "rate", "concentration": "concentration", "weight": "weight"}),),
        spares=_SPARES,
    ),
    Way(
        "dose rate",
        (_DOSE, _DURATION),
        (Step("mean-dose-rate", {"dose": "dose", "duration": "duration"}),),
        spares=_SPARES,
    ),
    Way(
        "dose rate",
        (Slot("dose", ("bag:dose",), "150 mg"), _DURATION),
        (Step("mean-dose-rate", {"dose": "dose", "duration": "duration"}),),
        spares=_SPARES,
        only_asked=True,
    ),
    _GIVEN,
    _per(_GIVEN, _RATE_PER_KG, _DOSE_RATE),
    _LASTS,
    _per(_LASTS, _RATE_PER_KG, _DOSE_RATE),
    _BAG_LASTS,
    _per(_BAG_LASTS, _RATE_PER_KG, _DOSE_RATE),
    _SHORTEST,
    _per(_SHORTEST, _RATE_PER_KG, _DOSE_RATE),
    _BOLUS,
    _per(_BOLUS, _DOSE_PER_KG, _DOSE),
    Way("mass", (_WEIGHT,), (Step("body-weight", {"weight": "weight"}),), only_asked=True),
    Way(
        "area",
        (_HEIGHT, _WEIGHT),
        (Step("surface-area", {"height": "height", "weight": "weight"}),),
        lets=frozenset({"bsa"}),
    ),
    *_by_day(),
    *_by_clock(),
    *_two_rates(),
    Way(
        "rate",
        (_WEIGHT,),
        (Step("maintenance", {"weight": "weight"}),),
        special=frozenset({"maintenance"}),
        lets=frozenset({"day"}),
        spares=_SPARES,
    ),
    Way(
        "volume",
        (_DOSE, Slot("concentration", ("bag", "concentration"), "100 mg/mL")),
        (Step("diluent", {"dose": "dose", "concentration": "concentration"}),),
        special=frozenset({"powder"}),
        spares=frozenset(),
    ),
    Way(
        "volume",
        (*_STOCK, _VOLUME),
        (Step("dilution", {"stock": "stock", "concentration": "concentration", "volume": "volume"}),),
        lets=frozenset({"dilute"}),
    ),
    Way(
        "volume",
        (_RESERVE, Slot("bag volume", ("volume", "bag:volume"), "1,000 mL")),
        (Step("vtbi", {"bag-volume": "bag volume", "reserve": "reserve"}),),
        special=frozenset({"reserve"}),
        lets=_LEFT,
    ),
    Way(
        "volume",
        (_ELAPSED, _VOLUME, _RATE),
        (Step("remaining-volume", {"volume": "volume", "rate": "rate", "elapsed": "elapsed"}),),
        special=_LEFT,
        spares=_SPARES,
    ),
    Way(
        "duration",
        (_ELAPSED, _VOLUME, _RATE),
        (Step("remaining-time", {"volume": "volume", "rate": "rate", "elapsed": "elapsed"}),),
        special=_LEFT,
        spares=_SPARES,
    ),
    Way(
        "duration",
        (_VOLUME, _RATE),
        (Step("duration", {"volume": "volume", "rate": "rate"}),),
        special=_LEFT,
        spares=_SPARES,
        only_asked=True,
    ),
    Way(
        "concentration",
        (Slot("dose", ("bag:dose", "dose"), "400 mg"), Slot("volume", ("bag:volume", "volume"), "250 mL")),
        (Step("concentration", {"dose": "dose", "volume": "volume"}),),
        spares=_SPARES,
    ),
    Way(
        "volume balance",
        (_INTAKE, _OUTPUT),
        (Step("fluid-balance", {"intake": "intake", "output": "output"}),),
        special=frozenset({"balance"}),
    ),
    Way(
        "volume",
        (*_MIXED, _VOLUME),
        (Step("alligation", {**{slot.name: slot.name for slot in _MIXED}, "volume": "volume"}),),
        special=frozenset({"mix"}),
        lets=frozenset({"dilute"}),
    ),
    Way(
        "percentage",
        (_VOLUME, _TUBING),
        (Step("share-delivered", {"volume": "volume", "tubing": "tubing"}),),
        special=frozenset({"tubing"}),
    ),
    Way(
        "percentage",
        (_FOUND, _ORDERED),
        (Step("percent-off", {"found": "found", "ordered": "ordered"}),),
        special=frozenset({"off"}),
    ),
)
"""Every way; where two fit, the line has to say which is meant."""
