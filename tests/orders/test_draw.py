"""Drawn orders: the same for a seed, none alike in a class, within the limits, and with a fault where one is wanted."""

from collections import Counter
from datetime import date
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from random import Random

import pytest

from assistant.checklist.load import available, load
from assistant.checklist.model import Step
from assistant.errors import UsageError
from assistant.orders.choices import primaries, secondaries
from assistant.orders.draft import Draft
from assistant.orders.draw import LEVELS, NOTHING_PLANTED, Wanted, draw, wanted_by
from assistant.orders.fault import container_of
from assistant.orders.load import load_order
from assistant.orders.planting import FAULTS, FaultKind, Findable, plant
from assistant.orders.plausible import table
from assistant.orders.sheet import instructors_sheet, learners_sheet
from assistant.orders.shelf import shelf
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of
from assistant.orders.write import text_of
from tests.orders.drawn import DRAWN, drawn
from tests.orders.looking import QUESTION, SITE, checklist_of, findable_at, findable_in, text_of_steps
from tests.orders.many import CLASS, CONCERNS, DAY, FINDABLE, KINDS, PLACES, drawn_for, look_at

BOTH = Wanted(frozenset({"primary", "secondary"}))


def test_a_sample_of_the_many() -> None:
    """Classes of every kind, level and fault: each order as it should be, and no two alike. More: `many`."""
    looked, planted, wrong = look_at(600)
    assert wrong == []
    assert looked >= 600
    assert len(planted) > 2


PLACED = [(fault, kind) for fault in FAULTS for kind in PLACES[fault]]
"""Each fault with each kind of order in which it has a place."""


@pytest.mark.parametrize(("fault", "kind"), PLACED)
def test_every_fault_can_be_planted(fault: FaultKind, kind: tuple[str, ...]) -> None:
    """A drawn order has the one fault that was asked for, where a step looks; the learner's sheet names none."""
    for order in drawn_for(kind, seed=5, level=2, count=4, fault=fault):
        (planted,) = truth_of(order, table()).faults
        _, _, matter = planted.fact.rpartition(".")
        assert matter in CONCERNS[fault] or f"{matter} {planted.state}" in CONCERNS[fault]
        assert planted.fact in FINDABLE[kind].facts
        assert order.teaching != NOTHING_PLANTED
        instructors, sheet = instructors_sheet(order), learners_sheet(order)
        assert order.teaching in instructors
        assert f"Laid out with these faults\n{planted.what}\n" in instructors
        for word in (order.teaching, planted.what, planted.reaches, fault, "lanted", "laid", "purpose"):
            assert word not in sheet
        for word in (planted.what, planted.reaches, "lanted"):
            assert word not in order.sentence()


def test_every_fault_has_a_place_in_each_kind_of_order_or_is_refused() -> None:
    """`PLACES` leaves nothing out: what is not there cannot be drawn."""
    for fault in FAULTS:
        for kind in set(KINDS) - set(PLACES[fault]):
            with pytest.raises(UsageError, match=f"No step of this checklist can find the fault {fault}"):
                drawn_for(kind, seed=5, level=1, count=1, fault=fault)


@pytest.mark.parametrize("kind", KINDS)
def test_an_order_without_a_fault_has_none(kind: tuple[str, ...]) -> None:
    """Silence: each label is the ordered one, and nothing is found."""
    for order in drawn_for(kind, seed=6, level=3, count=6):
        assert truth_of(order, table()).faults == ()
        assert order.teaching == NOTHING_PLANTED
        assert "Laid out as ordered, without a fault" in instructors_sheet(order)


TWO_DRUGS = KINDS[2]
SPREAD: list[tuple[FaultKind, tuple[str, ...], set[str]]] = [
    ("wrong-bag", TWO_DRUGS, {"primary", "secondary", "second_secondary"}),
    ("expired-bag", TWO_DRUGS, {"primary", "secondary", "second_secondary"}),
    ("unfit-bag", TWO_DRUGS, {"primary", "secondary", "second_secondary"}),
    ("wrong-concentration", TWO_DRUGS, {"secondary", "second_secondary"}),
    ("over-limit", TWO_DRUGS, {"primary", "secondary", "second_secondary"}),
    ("illegible-rate", TWO_DRUGS, {"primary", "secondary"}),
    ("allergy", TWO_DRUGS, {"secondary", "second_secondary"}),
    ("wrong-bag", KINDS[5], {"secondary", "flush"}),
    ("expired-bag", KINDS[5], {"secondary", "flush"}),
]


@pytest.mark.parametrize(("fault", "kind", "parts"), SPREAD)
def test_faults_are_spread_over_the_parts(fault: FaultKind, kind: tuple[str, ...], parts: set[str]) -> None:
    """Over many seeds each part that can have the fault gets its share: half of an even one at the least."""
    many = [
        order for seed in range(20) for order in drawn_for(kind, seed=seed, level=1 + seed % 3, count=4, fault=fault)
    ]
    places = Counter(fault.fact.partition(".")[0] for order in many for fault in truth_of(order, table()).faults)
    assert set(places) == parts
    assert min(places.values()) >= len(many) / len(parts) / 2, places


def test_states_are_spread() -> None:
    """A bag is cloudy or leaks, a thing is in any of the ways that a step can tell."""
    bags = {order.laid_out.primary.state for order in drawn_for(KINDS[0], seed=1, level=1, count=20, fault="unfit-bag")}
    sites = {order.laid_out.found["site"] for order in drawn_for(KINDS[0], seed=1, level=1, count=20, fault="finding")}
    assert bags == {"cloudy", "leaking"}
    assert sites == {"red", "swollen"}


ONE_PLACE: list[tuple[FaultKind, str]] = [
    ("wrong-bag", "primary.fluid"),
    ("wrong-bag", "secondary.drug"),
    ("wrong-bag", "second_secondary.drug"),
    ("expired-bag", "second_secondary.bag"),
    ("unfit-bag", "secondary.bag"),
    ("wrong-concentration", "second_secondary.dose"),
    ("over-limit", "primary.limits"),
    ("over-limit", "second_secondary.limits"),
    ("illegible-rate", "secondary.paper"),
    ("allergy", "second_secondary.allergy"),
    ("incompatible-pair", "secondary.pair"),
    ("incompatible-pair", "second_secondary.pair"),
    ("incompatible-pair", "second_secondary.drugs"),
    ("wrong-patient", "wristband"),
]


@pytest.mark.parametrize(("fault", "fact"), ONE_PLACE)
def test_a_fault_is_where_a_step_looks_and_nowhere_else(fault: FaultKind, fact: str) -> None:
    """A checklist that looks at one thing alone gets the fault there, in every order."""
    wanted = Wanted(frozenset(TWO_DRUGS))
    for seed in range(4):
        for order in draw(
            wanted, seed=seed, level=1 + seed % 3, count=5, day=DAY, fault=fault, findable=findable_at(fact)
        ):
            assert [one.fact for one in truth_of(order, table()).faults] == [fact]


@pytest.mark.parametrize("fault", FAULTS)
def test_no_fault_where_no_step_looks(fault: FaultKind) -> None:
    """A checklist that looks at something else is given no such order."""
    elsewhere = findable_at("pump", "secondary.volume", "gravity.drop_factor")
    with pytest.raises(UsageError, match=f"can find the fault {fault} in the orders"):
        draw(BOTH, seed=1, level=1, count=1, day=DAY, fault=fault, findable=elsewhere)


def looking(*steps: tuple[str, str, str]) -> Findable:
    return Findable.by(checklist_of(text_of_steps(steps)))


def test_a_step_that_may_not_come_finds_nothing() -> None:
    """Not where it hangs on an answer; where it hangs on the order, only in orders in which it applies."""
    on_an_answer = 'applies = [{ step = "s-1", answer = "red" }]'
    with pytest.raises(UsageError):
        finds = looking(("site", SITE, ""), ("primary.bag", QUESTION, on_an_answer))
        draw(BOTH, seed=1, level=1, count=1, day=DAY, fault="expired-bag", findable=finds)
    above_eighty = looking(("primary.bag", QUESTION, 'applies = [{ key = "primary.rate", above = "80 mL/h" }]'))
    drawn = draw(BOTH, seed=1, level=1, count=20, day=DAY, fault="expired-bag", findable=above_eighty)
    rates = [answer_key(order)["primary.rate"].value for order in drawn]
    assert all(rate > 80 for rate in rates)  # type: ignore[operator]
    expired = truth_of(drawn[0], table()).faults[0]
    assert above_eighty.finds(expired, drawn[0])
    there, gone = (f'applies = [{{ key = "secondary.drug", present = {present} }}]' for present in ("true", "false"))
    assert looking(("primary.bag", QUESTION, there)).finds(expired, drawn[0])
    assert not looking(("primary.bag", QUESTION, gone)).finds(expired, drawn[0])
    assert looking(("primary.bag", QUESTION, gone), ("primary.bag", QUESTION, "")).finds(expired, drawn[0])
    assert not looking(("secondary.bag", QUESTION, "")).finds(expired, drawn[0])


def test_what_can_be_found() -> None:
    """Facts that steps name, what names and numbers are read from, all of a label; states that each choice tells."""
    sore = '{ kind = "choice", choices = ["good", "red", "sore"], right = "good", faults = ["sore", "red"] }'
    name = '{ kind = "name", key = "primary.fluid" }'
    found = looking(("site", SITE, ""), ("site", sore, ""), ("", name, ""), ("dose.label", QUESTION, ""))
    assert found.facts == {"site", "primary.fluid", "dose.drug", "dose.amount", "dose.volume"}
    assert found.states == {"site": ("red",)}
    # A wristband is another patient's by a fault of its own; what has no answer in common is not planted.
    other = sore.replace("red", "hot")
    assert looking(("wristband", SITE, ""), ("lock", SITE, ""), ("lock", other, "")).states == {}
    assert looking(("lock", QUESTION, "")).states == {}


@pytest.mark.parametrize(
    ("fact", "fluid", "drug", "never"),
    [
        ("secondary.drug", "lactated Ringer's solution", "famotidine", "ceftriaxone"),
        ("primary.fluid", "0.9 % sodium chloride", "ceftriaxone", "lactated Ringer's solution"),
    ],
)
def test_a_wrong_bag_is_wrong_for_its_name_alone(fact: str, fluid: str, drug: str, never: str) -> None:
    """What is laid out in its place makes no pair with the rest of the line that must not meet.

    FDA label text, ceftriaxone: not with fluids that hold calcium, such as Ringer's (from memory).
    """
    primary = next(one for one in primaries(by_gravity=False) if one.primary.fluid == fluid)
    secondary = next(one for one in secondaries() if one.drug.name == drug)
    part, _, field = fact.partition(".")
    chance, findable = Random(1), findable_at(fact)  # noqa: S311 - orders by chance are no secret
    laid_out = set()
    for _ in range(200):
        draft = Draft(primary=primary, first=secondary)
        assert plant(draft, "wrong-bag", findable, chance)
        laid_out.add(draft.laid_out[part][field])
    assert len(laid_out) >= 3
    assert never not in laid_out


def test_a_wrong_concentration_is_half_or_twice() -> None:
    """The label has another dose in the ordered volume; an exact one, though the order writes it in grams."""
    seen = set()
    for order in drawn_for(KINDS[1], seed=3, level=3, count=CLASS, fault="wrong-concentration"):
        assert order.secondary is not None and order.laid_out.secondary.dose is not None
        seen.add(order.laid_out.secondary.dose.ratio / order.secondary.dose.in_unit(order.laid_out.secondary.dose.unit))
    assert seen == {2, Fraction(1, 2)}


def test_a_new_order_changes_what_runs() -> None:
    """Another rate than until now; some orders hold, and the way is what plain comparing gives."""
    ways = set()
    for order in draw(Wanted(frozenset({"primary", "change"})), seed=4, level=1, count=CLASS, day=DAY):
        assert order.primary is not None and order.primary.rate is not None and order.change is not None
        assert order.change.before != order.primary.rate
        higher = order.primary.rate.value > order.change.before.value
        way = "hold the infusion" if order.change.hold else "raise the rate" if higher else "lower the rate"
        key = answer_key(order)
        assert key["change.way"].value == way
        assert ("change.by" in key) is not order.change.hold
        ways.add(way)
    assert len(ways) == 3


def test_a_running_infusion_is_not_over_yet() -> None:
    """One that runs too fast has something left all the same."""
    for order in drawn_for(KINDS[4], seed=2, level=1, count=CLASS, fault="over-limit"):
        left = answer_key(order)["running.remaining"].value
        assert isinstance(left, Decimal) and left > 0


@pytest.mark.parametrize("name", available())
def test_what_the_library_can_find_is_drawn_for_it(name: str) -> None:
    """For each checklist and fault: orders whose one fault it finds, or a refusal, never a fault that it does not."""
    checklist = load(name)
    keys = {(key, None) for step in checklist.steps if not step.applies and (key := getattr(step.expect, "key", ""))}
    own = load_order(checklist.order) if checklist.order else None
    if not keys and own is None:
        return
    findable = Findable.by(checklist)
    looked_at = {fact.rpartition(".")[2] for fact in findable.facts}
    for fault in FAULTS:
        if not looked_at & {matter.partition(" ")[0] for matter in CONCERNS[fault]}:
            continue  # refused at once, see above
        try:
            drawn = draw(wanted_by(keys, own), seed=1, level=1, count=1, day=DAY, fault=fault, findable=findable)
        except UsageError as refused:
            assert "No step of this checklist can find" in refused.what, name
            continue
        for order in drawn:
            (planted,) = truth_of(order, table()).faults
            assert any(truth_of(order, table()).seen_at(step) for step in checklist.steps), (name, planted)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("level", LEVELS)
def test_the_same_seed_gives_the_same_orders(kind: tuple[str, ...], level: int) -> None:
    """A draw depends on its arguments alone; another seed gives other orders."""
    wanted = Wanted(frozenset(kind))
    first = draw(wanted, seed=9, level=level, count=6, day=DAY)
    assert draw(wanted, seed=9, level=level, count=6, day=DAY) == first
    assert [order.patient for order in draw(wanted, seed=10, level=level, count=6, day=DAY)] != [
        order.patient for order in first
    ]
    for order in first:
        for part in kind:
            assert getattr(order, part) is not None


def test_a_seed_draws_what_it_has_always_drawn() -> None:
    """Not only twice in one run: the same orders, with the same people, labels and faults, as in every version."""
    assert drawn() == DRAWN.read_text(encoding="utf-8")


def test_levels_are_what_they_say() -> None:
    """Level 1 rounds and converts nothing, level 2 does one of the two once, level 3 at least twice."""
    for level in LEVELS:
        for order in draw(BOTH, seed=2, level=level, count=CLASS, day=DAY):
            assert order.primary is not None and order.secondary is not None and order.secondary.over is not None
            key = answer_key(order)
            lines = [line for name in ("primary.rate", "secondary.rate") for line in key[name].working]
            rounded = sum(line.startswith("rounded") for line in lines)
            converted = (order.primary.bag_volume.unit == "L") + (order.secondary.dose.unit == "g")
            minutes = order.secondary.over.in_unit("min")
            odd = minutes not in (15, 20, 30) and minutes % 60 != 0
            assert min(rounded + converted + odd, 2) == level - 1


@pytest.mark.parametrize("kind", KINDS)
def test_a_written_order_loads_again(tmp_path: Path, kind: tuple[str, ...]) -> None:
    """The file of a drawn order is an order that is loaded as it was drawn."""
    faults: list[FaultKind | None] = [None, *(fault for fault in FAULTS if kind in PLACES[fault])]
    for number, fault in enumerate(faults):
        (order,) = drawn_for(kind, seed=3, level=1 + number % 3, count=1, fault=fault)
        path = tmp_path / f"{order.name}.toml"
        path.write_text(text_of(order), encoding="utf-8")
        assert load_order(str(path)).model_copy(update={"digest": order.digest}) == order


def test_people_are_nobody_twice() -> None:
    """In a class nobody is there twice, and everybody is grown up."""
    orders = draw(BOTH, seed=1, level=1, count=CLASS, day=DAY)
    assert len({order.patient.name for order in orders}) == CLASS
    assert all(order.patient.born <= date(DAY.year - 18, DAY.month, DAY.day) for order in orders)
    assert all("(fictional)" in order.ordered_by for order in orders)


def test_what_a_checklist_needs() -> None:
    """Parts follow from what is asked for and from the checklist's own order."""
    assert wanted_by({("gravity.drops_per_minute", "gtt/min")}, None).parts == {"gravity", "primary"}
    assert wanted_by({("second_secondary.rate", "mL/h")}, None).parts == {"secondary", "second_secondary"}
    assert wanted_by({("patient.weight", "kg"), ("dose.rate", "mL/h")}, None).weight
    assert wanted_by(set(), load_order("oh-101")).parts == {"primary", "secondary"}


def test_units_of_a_checklist_are_kept() -> None:
    """A checklist that asks for micrograms for each kg is given no drug in units."""
    wanted = wanted_by({("dose.ordered", "mcg/kg/min"), ("dose.concentration", "mg/mL")}, None)
    drugs = {order.dose.drug for order in draw(wanted, seed=1, level=1, count=CLASS, day=DAY) if order.dose}
    assert drugs <= {"dopamine", "dobutamine", "nitroprusside"}
    assert len(drugs) > 1


def test_a_checklist_that_asks_for_the_weight_is_given_one() -> None:
    """Where the weight is asked for, only what is ordered by weight is drawn; else the other drugs, too."""
    weighed = draw(Wanted(frozenset({"dose"}), weight=True), seed=1, level=2, count=CLASS, day=DAY)
    kilos = [order.patient.weight.in_unit("kg") for order in weighed if order.patient.weight is not None]
    assert len(kilos) == CLASS
    assert all(48 <= number <= 110 for number in kilos)
    by_the_hour = Wanted(frozenset({"dose"}), (("dose.ordered", "mg/h"),))
    assert all(order.patient.weight is None for order in draw(by_the_hour, seed=1, level=1, count=6, day=DAY))


def test_what_a_checklist_asks_for_is_kept_with_its_unit() -> None:
    """Names of labels have none."""
    wanted = wanted_by({("secondary.rate", "mL/h"), ("secondary.drug", None), ("patient.weight", "kg")}, None)
    assert wanted == Wanted(frozenset({"secondary"}), (("patient.weight", "kg"), ("secondary.rate", "mL/h")), True)


@pytest.mark.parametrize("kind", KINDS)
def test_labels_bear_a_date_in_the_future(kind: tuple[str, ...]) -> None:
    """Each bag and syringe has one, 45 to 700 days ahead; the expired one is at most 60 days over, the others good."""
    bags = {part for part in kind if container_of(f"{part}.bag")}
    faults: tuple[FaultKind | None, ...] = (None, "expired-bag")
    for fault in faults:
        seen = set()
        for order in drawn_for(kind, seed=4, level=2, count=CLASS // 2, fault=fault):
            dates = {part: getattr(order.laid_out, part).expires for part in bags}
            ahead = {part: (day - DAY).days for part, day in dates.items()}
            over = {part for part, days in ahead.items() if days < 0}
            assert all(-60 <= days <= -1 or 45 <= days <= 700 for days in ahead.values())
            assert len(over) == (fault is not None)
            seen |= over
        assert seen == (bags if fault else set())


REFUSED = [
    (BOTH, {"level": 4}, "There is no level 4.", "Levels are 1, 2 and 3."),
    (
        Wanted(frozenset({"flush"})),
        {"count": 100},
        "Only 30 different orders of this kind could be drawn, but 100 are wanted.",
        "Ask for fewer, another level or another fault.",
    ),
    (
        Wanted(frozenset({"primary"})),
        {"fault": "allergy"},
        "No step of this checklist can find the fault allergy in the orders that are drawn for it.",
        "Ask for another fault.",
    ),
    (
        Wanted(frozenset({"dose"}), (("dose.ordered", "mg/h"),)),
        {"level": 2},
        "Nothing on the shelf has level 2 for this checklist.",
        "Ask for another level.",
    ),
    (
        Wanted(frozenset({"dose"}), (("dose.ordered", "mmol/kg/h"),)),
        {},
        "Nothing on the shelf can be asked for in the units of this checklist.",
        "Write the order by hand.",
    ),
    (
        Wanted(frozenset({"dose"}), (("dose.ordered", "mg/h"),), weight=True),
        {},
        "Nothing on the shelf can be asked for in the units of this checklist.",
        "Write the order by hand.",
    ),
]


@pytest.mark.parametrize(("wanted", "changed", "what", "remedy"), REFUSED)
def test_what_cannot_be_drawn(wanted: Wanted, changed: dict[str, object], what: str, remedy: str) -> None:
    """What the shelf cannot give is refused with its reason and with what to do, and ends."""
    findable = findable_in(sorted(wanted.parts))
    given: dict[str, object] = {"seed": 1, "level": 1, "count": 1, "day": DAY, "fault": None, "findable": findable}
    with pytest.raises(UsageError) as caught:
        draw(wanted, **(given | changed))  # type: ignore[arg-type]
    assert (caught.value.what, caught.value.remedy) == (what, remedy)


def test_a_fault_needs_to_be_looked_for() -> None:
    """A mistake of the caller, not of the user."""
    with pytest.raises(TypeError, match="only where a checklist looks"):
        draw(BOTH, seed=1, level=1, count=1, day=DAY, fault="allergy")


def test_nothing_to_ask_for() -> None:
    """A checklist that asks for nothing, or for what no order holds, is told so."""
    with pytest.raises(UsageError) as caught:
        wanted_by(set(), None)
    assert caught.value.what == "This checklist asks for nothing that an order states."
    assert caught.value.remedy == "It needs no drawn order."
    with pytest.raises(UsageError) as caught:
        wanted_by({("tea.milk", "mL"), ("cake.slice", "g")}, None)
    assert caught.value.what == "No order with cake, tea can be drawn."
    assert caught.value.remedy == "Write the order by hand."


def test_the_shelf_names_its_sources() -> None:
    """Each drug and fluid has a source, and rides only on fluids of the shelf."""
    fluids = {fluid.name for fluid in shelf().fluids}
    for drug in shelf().drugs:
        assert drug.source and set(drug.with_fluids) <= fluids, drug.name
    assert all(fluid.source for fluid in shelf().fluids)
    assert all(drug.source for drug in shelf().rates)


NEVER_ASKED_FOR = {"diltiazem"}
"""Ordered in mg/h without a weight: it is on the shelf for a checklist of one's own that asks for that (see above)."""


def test_everything_on_the_shelf_is_drawn_for_some_checklist() -> None:
    """Every fluid, every intermittent drug and every drug by dose rate comes up in classes of the library."""
    seen: set[str] = set()
    for name in ("bag-change", "secondary-line", "lock-infusion", "weight-based-infusion", "heparin"):
        checklist = load(name)
        keys = {(key, getattr(step.expect, "unit", None)) for step in checklist.steps if (key := step_key(step))}
        wanted = wanted_by(keys, load_order(checklist.order))
        for seed in range(6):
            for order in draw(wanted, seed=seed, level=1 + seed % 3, count=CLASS, day=DAY):
                seen |= {part for part in (order.primary and order.primary.fluid,) if part}
                seen |= {given.drug for given in (order.secondary, order.dose) if given}
    shelved = {one.name for one in (*shelf().fluids, *shelf().drugs, *shelf().rates)}
    assert shelved - seen == NEVER_ASKED_FOR


def step_key(step: Step) -> str:
    """What a step asks of the answer key; "" where it asks nothing of it."""
    return str(getattr(step.expect, "key", ""))
