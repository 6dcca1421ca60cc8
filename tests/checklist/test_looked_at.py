"""What the library's steps look at: every fault has its place, every state can be told, a third of the steps harm."""

from datetime import date

import pytest

from assistant.checklist.load import available, load
from assistant.checklist.model import Checklist, ChoiceAsked, DoneAsked, NameAsked, NumberAsked, QuestionAsked
from assistant.checklist.rules.looking import TOLD_AS, WRISTBAND
from assistant.cli.main import main
from assistant.orders import truth
from assistant.orders.draw import draw, wanted_by
from assistant.orders.fault import facts_of
from assistant.orders.laid_out import CONTAINERS
from assistant.orders.load import load_order
from assistant.orders.planting import ANOTHER_PATIENT, FAULTS, FaultKind, Findable
from assistant.orders.plausible import table
from assistant.orders.truth import truth_of

EVERY = pytest.mark.parametrize("name", available())
UNION = "primary-and-secondary"
DAY = date(2026, 11, 25)


def share(*checklists: Checklist) -> float:
    """Which part of the steps is critical."""
    steps = [step for checklist in checklists for step in checklist.steps]
    return sum(step.critical for step in steps) / len(steps)


@EVERY
def test_about_a_third_of_the_steps_is_critical(name: str) -> None:
    """A published check-off marks few steps as fatal; all of them, or none, would tell an instructor nothing."""
    assert 0.25 <= share(load(name)) <= 0.45


def test_about_a_third_of_the_library_is_critical() -> None:
    """The same over all, each step counted once."""
    assert 0.30 <= share(*(load(name) for name in available() if name != UNION)) <= 0.40


@EVERY
def test_an_instructor_has_to_see_a_few_steps(name: str) -> None:
    """Three to six, twice that in the union: what no answer proves, and never a number or a name."""
    seen = [step for step in load(name).steps if step.seen]
    assert 3 <= len(seen) <= (12 if name == UNION else 6)
    assert not any(isinstance(step.expect, NameAsked | NumberAsked) for step in seen)
    assert all(step.seen for step in load(name).steps if step.id.endswith(("hands-again", "hub-scrub")))


MATTERS = {
    "allergy": ("secondary", "second_secondary", "dose", "push"),
    "bag": CONTAINERS,
    "label": (*CONTAINERS, "gravity"),
    "drugs": ("second_secondary",),
    "limits": ("primary", "secondary", "second_secondary", "dose", "push"),
    "pair": ("secondary", "second_secondary", "dose", "push"),
    "paper": ("primary", "secondary", "dose"),
}
"""For which parts of an order something can be wrong, by what is looked at."""


@EVERY
def test_what_is_looked_at_can_be_met_and_told(name: str) -> None:
    """Each fact is one that a truth can hold, of a part that the order has; at a choice each of its states is told."""
    checklist = load(name)
    order = load_order(checklist.order)
    for step in checklist.steps:
        for fact in step.looks_at:
            part, dot, matter = fact.partition(".")
            if dot:
                assert part in MATTERS[matter], (step.id, fact)
                applies = {condition.key.partition(".")[0] for condition in step.applies}
                assert getattr(order, part) is not None or part in applies, (step.id, fact)
            match step.expect:
                case QuestionAsked():
                    continue
                case ChoiceAsked(faults=faults, phrases=phrases):
                    told = {word for one in faults for word in (one, *phrases.get(one, ()))}
                    assert told >= set(TOLD_AS.get(f".{matter}" if dot else fact, ())), (step.id, fact)
                    assert faults, step.id
                case _:
                    raise AssertionError(step.id)


def test_the_linter_and_the_truth_use_the_same_words() -> None:
    """What a choice must be able to tell is what the truth says."""
    assert TOLD_AS == {
        ".allergy": (truth.ALLERGIC,),
        ".bag": ("cloudy", "leaking", "expired"),
        ".limits": (truth.OUT_OF_RANGE,),
        ".pair": (truth.APART,),
        ".paper": (truth.SOMETHING_MISSING,),
        WRISTBAND: (ANOTHER_PATIENT,),
    }


_BAG: tuple[FaultKind, ...] = ("wrong-bag", "expired-bag", "unfit-bag", "wrong-patient", "finding")
_FLUID: tuple[FaultKind, ...] = (*_BAG, "over-limit", "illegible-rate")
_DRUG: tuple[FaultKind, ...] = (*_FLUID, "wrong-concentration", "allergy")
PLACES: dict[str, tuple[FaultKind, ...]] = {
    "primary-line": _FLUID,
    "secondary-line": FAULTS,
    UNION: FAULTS,
    "gravity-infusion": tuple(kind for kind in _FLUID if kind != "over-limit"),  # no drawn one is beyond the limits
    "bag-change": _FLUID,
    "saline-lock": _BAG,
    "lock-infusion": _DRUG,
    # no drug of the shelf that is ordered by dose rate has an allergy
    "weight-based-infusion": tuple(kind for kind in _DRUG if kind != "allergy"),
    # the second piggyback's time is never illegible
    "second-piggyback": tuple(kind for kind in FAULTS if kind != "illegible-rate"),
    "air-in-line": ("finding",),
    "occlusion": ("finding",),
    "other-alarms": ("finding",),
    "site-gone-bad": ("finding",),
    "discontinue": ("wrong-patient", "finding"),
    "hourly-round": _BAG,
    "hand-over": _BAG,
    # who changes a rate hangs no bag: its label is read once more
    "rate-change": ("wrong-bag", "over-limit", "illegible-rate", "wrong-patient", "finding"),
    "infusion-to-lock": _BAG,
    "next-piggyback": FAULTS,
    # no fluid of the shelf is apart from potassium chloride
    "potassium": tuple(kind for kind in FAULTS if kind != "incompatible-pair"),
    # no fluid of the shelf is apart from a drug by hand
    "push-into-line": tuple(kind for kind in _DRUG if kind != "illegible-rate"),
    "syringe-pump": _DRUG,
    "library-alert": _DRUG,
    # a bag that hangs: its strength is read, and no drug of the shelf by dose rate has an allergy
    "heparin": (*_BAG, "over-limit", "illegible-rate"),
    "set-change": _FLUID,
    "push-through-lock": tuple(kind for kind in _DRUG if kind != "illegible-rate"),
}
"""Which faults can be drawn for a checklist: each where an infusion nurse would look for it."""


def test_every_checklist_has_its_faults() -> None:
    """None is left out."""
    assert sorted(PLACES) == sorted(available())


@pytest.mark.parametrize(("name", "fault"), [(name, fault) for name, faults in PLACES.items() for fault in faults])
def test_a_fault_that_is_drawn_is_looked_at(name: str, fault: FaultKind) -> None:
    """Each fault of the drawn order is one that a step looks at, and at a choice its state is one of the answers."""
    checklist = load(name)
    asked: set[tuple[str, str | None]] = set()
    for step in checklist.steps:
        match step.expect:
            case NumberAsked(key=key, unit=unit):
                asked.add((key, unit))
            case NameAsked(key=key):
                asked.add((key, None))
    wanted = wanted_by(asked, load_order(checklist.order))
    level = 2 if name in ("weight-based-infusion", "second-piggyback") else 1
    (order,) = draw(wanted, seed=5, level=level, count=1, day=DAY, fault=fault, findable=Findable.by(checklist))
    faults = truth_of(order, table()).faults
    assert faults
    for one in faults:
        looking = [step for step in checklist.steps if one.fact in facts_of(step)]
        assert looking, one
        for step in looking:
            if isinstance(step.expect, ChoiceAsked):
                phrases = step.expect.phrases
                told = {word for fault in step.expect.faults for word in (fault, *phrases.get(fault, ()))}
                assert one.state in told, (step.id, one)


@pytest.mark.parametrize("name", ["hourly-round", "hand-over"])
def test_who_only_watches_hangs_nothing(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    """A round reads labels, and is not asked for the usual range of what hangs already."""
    assert main(["lint", "--strict", name]) == 0
    assert capsys.readouterr().out == ""
    assert not any(fact.endswith((".limits", ".allergy")) for step in load(name).steps for fact in step.looks_at)


@EVERY
def test_what_is_taken_back_was_done(name: str) -> None:
    """A finding takes back what was said to be done, and never a wait, a number or a finding of its own."""
    checklist = load(name)
    for step in checklist.steps:
        for taken in step.takes_back:
            assert isinstance(checklist.step(taken).expect, DoneAsked), (step.id, taken)


DROPS = [
    # only drops tell of a closed clamp: ECRI, Health Devices 1986;15(6):182-184, hazard report
    ("primary-line", "p-drops", "p-clamps"),
    ("secondary-line", "s-drips", "s-clamp-open"),
    ("second-piggyback", "k-drips", "k-open"),
    ("bag-change", "b-drops", "b-open"),
    ("lock-infusion", "l-drops", "l-open"),
    ("weight-based-infusion", "w-drops", "w-open"),
    ("set-change", "n-drops", "n-open"),
    ("library-alert", "z-drops", "z-open"),
    ("push-into-line", "j-drops", "j-open"),
    ("potassium", "q-drips", "q-open"),
    ("next-piggyback", "e-drops", "e-open"),
    ("air-in-line", "a-drops", "a-open"),
    ("occlusion", "o-drops", "o-open"),
    ("other-alarms", "m-drops", "m-open"),
]


@pytest.mark.parametrize(("name", "drops", "clamp"), DROPS)
def test_missing_drops_take_back_the_clamp(name: str, drops: str, clamp: str) -> None:
    """The clamp is asked again; the checklist's own line of it says what was opened."""
    checklist = load(name)
    assert checklist.step(drops).takes_back == (clamp,)
    assert "pen" in checklist.step(clamp).say
    assert checklist.place(clamp) < checklist.place(drops)
