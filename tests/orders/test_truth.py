"""The truth of an attempt: each kind of fault from an order written by hand, and none where nothing is said."""

from pathlib import Path

import pytest

from assistant.checklist.model import Step
from assistant.dosing import Amount, parse_amount
from assistant.dosing.limits import Limits
from assistant.dosing.limits_file import limits_from
from assistant.orders.fault import (
    NOTHING_WRONG,
    Fault,
    Truth,
    can_be_put_right,
    container_of,
    ends_attempt,
    facts_of,
)
from assistant.orders.laid_out import CONTAINERS, LABELS
from assistant.orders.load import available_orders, load_order
from assistant.orders.model import Order
from assistant.orders.plausible import table
from assistant.orders.truth import truth_of
from tests.orders.looking import QUESTION, SITE, checklist_of, text_of_steps
from tests.orders.papers import GOOD, written

FULL = (
    GOOD.replace('"00-0001"', '"00-0001"\nweight = "70 kg"')
    + """
[second_secondary]
drug = "ondansetron"
dose = "8 mg"
volume = "50 mL"
over = "15 min"
frequency = "every 8 hours"

[dose]
drug = "dopamine"
ordered = "5 mcg/kg/min"
amount = "400 mg"
volume = "250 mL"

[flush]
volume = "5 mL"

[gravity]
drop_factor = "15 gtt/mL"

[push]
drug = "labetalol"
dose = "10 mg"
amount = "20 mg"
volume = "4 mL"
over = "2 min"
frequency = "once"
"""
)
"""An order with every part that can be laid out; nothing is wrong with it."""
DATED = "written = 2026-02-01\n"
NO_LIMITS: dict[str, object] = {"drug": {}}


def order_of(folder: Path, laid_out: str = "", text: str = FULL) -> Order:
    return load_order(written(folder, DATED + text + laid_out))


def faults_of(order: Order, limits: Limits | None = None) -> list[tuple[str, str | Amount]]:
    """The fact and the state of every fault."""
    return [(one.fact, one.state) for one in truth_of(order, limits or table()).faults]


def only(order: Order, limits: Limits | None = None) -> Fault:
    """The one fault that there is."""
    (fault,) = truth_of(order, limits or table()).faults
    return fault


def test_silence_gives_none(tmp_path: Path) -> None:
    """What is not said is as ordered, and nothing is wrong."""
    assert truth_of(order_of(tmp_path), table()) == NOTHING_WRONG
    assert truth_of(load_order(written(tmp_path)), table()) == NOTHING_WRONG


def test_what_is_laid_out_as_ordered_is_no_fault(tmp_path: Path) -> None:
    """A label that says the same, in capitals or in other units, too; a date of the day, and one to come."""
    same = """
[laid_out.primary]
fluid = "Lactated  Ringer's Solution"
bag_volume = "1 L"
expires = 2026-02-01

[laid_out.secondary]
drug = "Famotidine"
dose = "0.02 g"
volume = "0.05 L"
expires = 2027-01-01

[laid_out.dose]
amount = "400,000 mcg"

[laid_out.gravity]
drop_factor = "15 gtt/mL"
"""
    assert faults_of(order_of(tmp_path, same)) == []


LABELLED = [
    # part, line of its label, what is said of it
    ("primary", 'fluid = "5 % dextrose in water"', "5 % dextrose in water in place of lactated Ringer's solution"),
    ("primary", 'bag_volume = "500 mL"', "500 mL in place of 1,000 mL"),
    ("secondary", 'drug = "cefazolin"', "cefazolin in place of famotidine"),
    ("secondary", 'dose = "40 mg"', "40 mg in place of 20 mg"),
    ("secondary", 'dose = "20 g"', "20 g in place of 20 mg"),
    ("secondary", 'dose = "20 units"', "20 units in place of 20 mg"),  # of another kind: it agrees with nothing
    ("secondary", 'volume = "100 mL"', "100 mL in place of 50 mL"),
    ("second_secondary", 'drug = "famotidine"', "famotidine in place of ondansetron"),
    ("second_secondary", 'dose = "4 mg"', "4 mg in place of 8 mg"),
    ("second_secondary", 'volume = "25 mL"', "25 mL in place of 50 mL"),
    ("dose", 'drug = "dobutamine"', "dobutamine in place of dopamine"),
    ("dose", 'amount = "800 mg"', "800 mg in place of 400 mg"),
    ("dose", 'volume = "500 mL"', "500 mL in place of 250 mL"),
    ("flush", 'fluid = "sterile water"', "sterile water in place of 0.9 % sodium chloride"),
    ("flush", 'volume = "10 mL"', "10 mL in place of 5 mL"),
    ("push", 'drug = "metoprolol"', "metoprolol in place of labetalol"),
    ("push", 'amount = "40 mg"', "40 mg in place of 20 mg"),
    ("push", 'volume = "20 mL"', "20 mL in place of 4 mL"),
    ("gravity", 'drop_factor = "60 gtt/mL"', "60 gtt/mL in place of 15 gtt/mL"),
]


@pytest.mark.parametrize(("part", "line", "said"), LABELLED)
def test_a_label_that_does_not_agree(tmp_path: Path, part: str, line: str, said: str) -> None:
    """Its state is what the label says; the whole of what it says is told to the instructor, and what comes of it."""
    fault = only(order_of(tmp_path, f"[laid_out.{part}]\n{line}\n"))
    name, _, value = line.partition(" = ")
    says = value.strip('"')
    assert fault.fact == fault.key == f"{part}.{name}"
    assert fault.state == (says if name in ("fluid", "drug") else parse_amount(says))
    assert fault.container == part
    assert said in fault.what and fault.what.startswith("On the ")
    assert fault.reaches.startswith(said)
    assert (fault.at, fault.say, fault.grave) == ("", "", True)


def test_every_field_of_a_label_has_its_fault() -> None:
    """The list above leaves none out."""
    assert {(part, line.split(" ")[0]) for part, line, _ in LABELLED} == {
        (part, name) for part, names in LABELS.items() for name in names
    }


@pytest.mark.parametrize("part", CONTAINERS)
@pytest.mark.parametrize(
    ("lines", "states"),
    [
        ('state = "cloudy"', ["cloudy"]),
        ('state = "leaking"', ["leaking"]),
        ('state = "expired"', ["expired"]),  # without a date: the instructor writes one
        ('state = "expired"\nexpires = 2026-01-31', ["expired"]),
        ("expires = 2026-01-31", ["expired"]),
        ('state = "leaking"\nexpires = 2026-01-31', ["expired", "leaking"]),
        ('state = "cloudy"\nexpires = 2026-02-01', ["cloudy"]),
    ],
)
def test_how_a_bag_is(tmp_path: Path, part: str, lines: str, states: list[str]) -> None:
    """Its state, and a date that has passed on the day of the order: each is a fault that has a key of its own."""
    truth = truth_of(order_of(tmp_path, f"[laid_out.{part}]\n{lines}\n"), table())
    assert [(fault.fact, fault.state, fault.container) for fault in truth.faults] == [
        (f"{part}.bag", state, part) for state in states
    ]
    assert len({fault.key for fault in truth.faults}) == len(states)
    told = [fault.what for fault in truth.faults if fault.state == "expired"]
    assert ["31 January 2026" in what for what in told] == ["2026-01-31" in lines] * len(told)


def test_a_date_against_the_day_of_the_order(tmp_path: Path) -> None:
    """A date has passed on the day after it; where the order has no day, nobody can tell."""
    dated = "[laid_out.primary]\nexpires = 2026-02-01\n"
    for written_on, states in (("2026-01-31", []), ("2026-02-01", []), ("2026-02-02", ["expired"])):
        order = load_order(written(tmp_path, f"written = {written_on}\n{FULL}{dated}"))
        assert [state for _, state in faults_of(order)] == states
    assert faults_of(load_order(written(tmp_path, FULL + dated))) == []


def test_two_faults_on_one_bag(tmp_path: Path) -> None:
    """The wrong drug, twice the dose, and a leak: three faults of one bag, all gone with it."""
    truth = truth_of(
        order_of(tmp_path, '[laid_out.secondary]\ndrug = "cefazolin"\ndose = "40 mg"\nstate = "leaking"\n'), table()
    )
    assert [fault.fact for fault in truth.faults] == ["secondary.drug", "secondary.dose", "secondary.bag"]
    assert {fault.container for fault in truth.faults} == {"secondary"}
    assert len({fault.key for fault in truth.faults}) == 3


def test_what_is_found_and_what_happens(tmp_path: Path) -> None:
    """What is neither bag nor label is so from beginning to end, or at one step; its words are kept."""
    laid_out = """
[laid_out.found]
site = "red"
"blood return" = "none"

[[laid_out.happens]]
at = "s-1"
thing = "pump"
state = "alarm"
say = "The alarm sounds."

[[laid_out.happens]]
at = "s-2"
thing = "site"
state = "swollen"
"""
    truth = truth_of(order_of(tmp_path, laid_out), table())
    assert [(one.fact, one.state, one.at, one.say, one.key, one.container) for one in truth.faults] == [
        ("site", "red", "", "", "site", ""),
        ("blood return", "none", "", "", "blood return", ""),
        ("pump", "alarm", "s-1", "The alarm sounds.", "pump@s-1", ""),
        ("site", "swollen", "s-2", "", "site@s-2", ""),
    ]
    for fault in truth.faults:
        assert fault.fact in fault.what and str(fault.state) in fault.what and fault.reaches
    first, second = checklist_of(text_of_steps([("site", SITE, ""), ("site", SITE, "")])).steps
    assert [fault.state for fault in truth.seen_at(first)] == ["red"]
    assert [fault.state for fault in truth.seen_at(second)] == ["red", "swollen"]


@pytest.mark.parametrize("part", ["primary", "secondary", "dose"])
def test_a_speed_that_cannot_be_read(tmp_path: Path, part: str) -> None:
    """It is missing on the paper of the part."""
    fault = only(load_order(written(tmp_path, f'illegible = ["{part}"]\n{FULL}')))
    assert (fault.fact, fault.state, fault.container) == (f"{part}.paper", "something missing", "")
    called = "infusion" if part == "dose" else part
    assert fault.what == f"How fast the {called} is to run cannot be read on the order."
    assert fault.reaches == "An infusion at a rate that somebody guessed."


ALLERGIES = [
    # the patient's allergies, the ordered secondary, the allergy that is named ("" for none)
    ('["latex"]', "famotidine", ""),
    ('["famotidine"]', "famotidine", "famotidine"),
    ('["Famotidine"]', "famotidine", "famotidine"),
    ('["latex", " FAMOTIDINE "]', "famotidine", "famotidine"),
    ('["penicillin"]', "cefazolin", "penicillin"),
    ('["Cephalosporins"]', "cefazolin", "cephalosporins"),
    ('["penicillin"]', "Cefazolin", "penicillin"),  # a capital does not make it another drug
    ('["cefazolin"]', "Cefazolin", "Cefazolin"),
    ('["penicillin"]', "vancomycin", ""),
    ('["house dust"]', "a drug of no shelf", ""),
    ('["a drug of no shelf"]', "a drug of no shelf", "a drug of no shelf"),
]


@pytest.mark.parametrize(("allergies", "drug", "named"), ALLERGIES)
def test_allergies(tmp_path: Path, allergies: str, drug: str, named: str) -> None:
    """To the drug itself by its own name, or to its kind."""
    head, secondary = GOOD.split("[secondary]")
    text = head.split("[primary]")[0] + "[secondary]" + secondary
    order = order_of(tmp_path, text=text.replace('["latex"]', allergies).replace("famotidine", drug))
    found = truth_of(order, limits_from(NO_LIMITS)).faults
    assert [(fault.fact, fault.state) for fault in found] == ([("secondary.allergy", "allergic")] if named else [])
    for fault in found:
        assert fault.what == f"The patient's allergies name {named}, and {drug} is ordered."
        assert fault.reaches == f"{drug}, with an allergy to {named}."
        assert fault.grave and not fault.container


def test_an_allergy_to_what_runs_by_dose_rate_and_to_the_second_drug(tmp_path: Path) -> None:
    """Every drug is looked at, each by itself."""
    text = FULL.replace('["latex"]', '["dopamine", "ondansetron"]')
    assert faults_of(order_of(tmp_path, text=text)) == [
        ("second_secondary.allergy", "allergic"),
        ("dose.allergy", "allergic"),
    ]


LIMIT = {"source": "invented"}
BOUNDS = [
    # part, name, field of the table, its bound, one that the order keeps
    ("primary", "lactated Ringer's solution", "highest_rate", "80 mL/h", "90 mL/h"),
    ("secondary", "famotidine", "shortest_time", "25 min", "20 min"),
    ("secondary", "famotidine", "highest_usual_dose", "10 mg", "20 mg"),
    ("secondary", "famotidine", "highest_dose_rate", "0.5 mg/min", "1 mg/min"),
    ("secondary", "famotidine", "highest_peripheral_concentration", "0.2 mg/mL", "0.4 mg/mL"),
    ("second_secondary", "ondansetron", "lowest_usual_dose", "16 mg", "8 mg"),
    ("dose", "dopamine", "highest_dose_rate", "4 mcg/kg/min", "5 mcg/kg/min"),
    ("dose", "dopamine", "highest_peripheral_concentration", "1 mg/mL", "1.6 mg/mL"),
]


@pytest.mark.parametrize("level", ["soft", "hard"])
@pytest.mark.parametrize(("part", "name", "field", "bound", "kept"), BOUNDS)
def test_limits(tmp_path: Path, level: str, part: str, name: str, field: str, bound: str, kept: str) -> None:
    """What is beyond a soft limit is a fault, what is beyond a hard one a grave one; at the bound it is none."""
    order = order_of(tmp_path)
    fault = only(order, limits_from({"drug": {name: {field: {"value": bound, "level": level, **LIMIT}}}}))
    assert (fault.fact, fault.state, fault.container) == (f"{part}.limits", "out of range", "")
    assert fault.grave == (level == "hard")
    assert name in fault.what and bound in fault.what and fault.what.endswith("Source: invented.")
    assert fault.reaches.startswith(f"{name} beyond a limit: ")
    assert faults_of(order, limits_from({"drug": {name: {field: {"value": kept, "level": level, **LIMIT}}}})) == []


def test_several_limits_are_one_fault(tmp_path: Path) -> None:
    """The part's numbers are out of range: each is told, and one hard limit makes it grave."""
    bounds = {
        "highest_usual_dose": {"value": "10 mg", "level": "soft", **LIMIT},
        "shortest_time": {"value": "25 min", "level": "hard", **LIMIT},
    }
    fault = only(order_of(tmp_path), limits_from({"drug": {"famotidine": bounds}}))
    assert fault.grave
    assert "The infusion time of 20 min" in fault.what and "The dose of 20 mg" in fault.what
    assert fault.reaches == "famotidine beyond a limit: infusion time, dose."


@pytest.mark.parametrize(
    ("route", "held"), [("intravenous", True), ("peripheral", True), ("central", False), ("central line", False)]
)
@pytest.mark.parametrize(("part", "name"), [("secondary", "famotidine"), ("dose", "dopamine")])
def test_a_limit_for_a_peripheral_line(tmp_path: Path, part: str, name: str, route: str, held: bool) -> None:
    """What is too strong for a peripheral vein is held there, and where no line is named; a central line takes it."""
    bound = {"highest_peripheral_concentration": {"value": "0.1 mg/mL", "level": "hard", **LIMIT}}
    text = FULL.replace(f"[{part}]", f'[{part}]\nroute = "{route}"')
    found = faults_of(order_of(tmp_path, text=text), limits_from({"drug": {name: bound}}))
    assert found == ([(f"{part}.limits", "out of range")] if held else [])


@pytest.mark.parametrize("level", ["soft", "hard"])
@pytest.mark.parametrize(
    ("part", "name"), [("secondary", "famotidine"), ("second_secondary", "ondansetron"), ("dose", "dopamine")]
)
@pytest.mark.parametrize("by_drug", [True, False])
def test_a_pair_that_must_not_meet(tmp_path: Path, level: str, part: str, name: str, by_drug: bool) -> None:
    """The drug's entry or the fluid's says so; nothing meets where no primary runs."""
    fluid = "lactated Ringer's solution"
    one, other = (name, fluid) if by_drug else (fluid, name)
    limits = limits_from({"drug": {one: {"not_in_one_line_with": {"names": [other], "level": level, **LIMIT}}}})
    fault = only(order_of(tmp_path), limits)
    assert (fault.fact, fault.state, fault.container) == (f"{part}.pair", "apart", "")
    assert fault.grave == (level == "hard")
    assert fault.what == f"{name.capitalize()} and {fluid} must not share a line. Source: invented."
    alone = FULL[: FULL.index("[primary]")] + FULL[FULL.index("[secondary]") : FULL.index("[gravity]")]
    assert faults_of(order_of(tmp_path, text=alone), limits) == []


def test_what_is_on_purpose_is_a_fault_all_the_same(tmp_path: Path) -> None:
    """The word is there for the linter alone."""
    order = order_of(tmp_path, '[laid_out]\non_purpose = ["allergy"]\n')
    assert faults_of(order) == []
    allergic = order_of(tmp_path, '[laid_out]\non_purpose = ["allergy"]\n', FULL.replace('["latex"]', '["famotidine"]'))
    assert faults_of(allergic) == [("secondary.allergy", "allergic")]


def test_faults_of_many_kinds_at_once(tmp_path: Path) -> None:
    """Nothing hides anything else, and no two have one key."""
    everything = load_order(str(Path(__file__).with_name("everything.toml")))
    truth = truth_of(everything, table())
    assert [fault.key for fault in truth.faults] == [
        "dose.paper",
        "second_secondary.limits",
        "primary.fluid",
        "primary.bag_volume",
        "secondary.drug",
        "secondary.dose",
        "secondary.bag:expired",
        "secondary.bag:leaking",
        "second_secondary.volume",
        "second_secondary.bag:cloudy",
        "dose.amount",
        "flush.volume",
        "flush.bag:expired",
        "gravity.drop_factor",
        "wristband",
        "blood return",
        "pump@s-start",
        "site@s-watch",
    ]


TAUGHT = {
    # Read from the teaching of each order of the library by a person; the others teach no fault.
    "oh-104": [("primary.fluid", "0.9 % sodium chloride")],  # "The wrong bag hangs on the stand: 0.9 % ..."
    "oh-106": [("secondary.dose", Amount(parse_amount("2 g").value, "g"))],  # "holds twice the ordered dose"
    "oh-109": [("primary.fluid", "0.9 % sodium chloride")],  # "the bag on the stand is 0.9 % sodium chloride"
    "oh-111": [("primary.bag_volume", parse_amount("1,000 mL"))],  # "holds four times the ordered volume"
    "oh-114": [("secondary.allergy", "allergic")],  # "allergic to penicillin, and ampicillin is one"
    "oh-116": [("dose.drug", "dobutamine")],  # "the bag on the stand is dobutamine"
    "oh-119": [("primary.fluid", "5 % dextrose in 0.45 % sodium chloride")],  # "5 % dextrose ... hangs"
    "oh-133": [("patient", "short of breath")],  # "short of breath while more fluid is ordered"
    "oh-135": [("site", "red")],  # "the site is red"
    "oh-137": [("push.drug", "metoprolol")],  # "the vial on the tray is metoprolol"
    "oh-139": [("primary.fluid", "0.45 % sodium chloride")],  # "the new bag is 0.45 % sodium chloride"
    "oh-141": [("secondary.drug", "cefepime")],  # "the second bag is cefepime"
    "oh-145": [("push.allergy", "allergic")],  # "allergic to metoclopramide"
    "oh-147": [("secondary.dose", parse_amount("2 g"))],  # "the label on the syringe says 2 g"
    "oh-149": [("secondary.limits", "out of range")],  # "1 g in 15 minutes"
    "oh-151": [("bleeding", "bleeding")],  # "the patient bleeds from the gums"
    "oh-143": [("secondary.limits", "out of range")],  # "ten milliequivalents in half an hour"
}
NOTICES = ("must notice", "must stop", "four times")
"""Words of a teaching that tells of a fault."""


@pytest.mark.parametrize("name", [name for name in available_orders() if name.startswith("oh-")])
def test_orders_of_the_library_have_the_faults_that_they_teach(name: str) -> None:
    """Exactly those: none besides, and none where the teaching tells of none."""
    order = load_order(name)
    found = faults_of(order)
    assert any(word in order.teaching for word in NOTICES) == bool(found)
    assert found == TAUGHT.get(name, [])


# What steps look at.


def step_of(fact: str, expect: str = QUESTION, more: str = "") -> Step:
    return checklist_of(text_of_steps([(fact, expect, more)])).steps[0]


@pytest.mark.parametrize(
    ("fact", "expect", "facts"),
    [
        ("", QUESTION, set()),
        ("site", QUESTION, {"site"}),
        ("secondary.bag", QUESTION, {"secondary.bag"}),
        ("secondary.label", QUESTION, {"secondary.drug", "secondary.dose", "secondary.volume"}),
        ("primary.label", QUESTION, {"primary.fluid", "primary.bag_volume"}),
        ("gravity.label", QUESTION, {"gravity.drop_factor"}),
        ("", '{ kind = "name", key = "primary.fluid" }', {"primary.fluid"}),
        ("", '{ kind = "number", unit = "mg", key = "secondary.dose" }', {"secondary.dose"}),
        ("", '{ kind = "number", unit = "mL/h", key = "primary.rate" }', set()),  # no label says it
        ("library", '{ kind = "name", key = "dose.drug" }', {"library", "dose.drug"}),
    ],
)
def test_facts_of_a_step(fact: str, expect: str, facts: set[str]) -> None:
    """What it names, all of a label, and what it reads from one."""
    assert facts_of(step_of(fact, expect)) == facts


def test_a_step_sees_what_it_looks_at() -> None:
    """And nothing else."""
    truth = Truth(
        (Fault("secondary.dose", "2 g", "", ""), Fault("site", "red", "", ""), Fault("pump", "x", "", "", "s-9"))
    )
    assert [fault.fact for fault in truth.seen_at(step_of("secondary.label"))] == ["secondary.dose"]
    assert [fault.fact for fault in truth.seen_at(step_of("site"))] == ["site"]
    assert truth.seen_at(step_of("pump")) == ()  # at another step
    assert truth.seen_at(step_of("")) == ()


@pytest.mark.parametrize(
    ("fact", "container"),
    [
        *((f"{part}.{name}", part) for part, names in LABELS.items() for name in names),
        *((f"{part}.bag", part) for part in CONTAINERS),
        ("gravity.bag", ""),
        ("secondary.allergy", ""),
        ("secondary.fluid", ""),
        ("primary.paper", ""),
        ("primary", ""),
        ("site", ""),
    ],
)
def test_what_another_bag_puts_right(fact: str, container: str) -> None:
    """Labels and bags; nothing else, unless its step says that the learner puts it right."""
    assert container_of(fact) == container
    assert can_be_put_right(step_of("site"), fact) == bool(container)
    assert can_be_put_right(step_of("site", more='way_on = "put right"'), fact)
    assert not can_be_put_right(step_of("site", more='way_on = "stop"'), fact)


def test_what_is_a_cause_to_stop() -> None:
    """A step that finds only what cannot be put right."""
    assert ends_attempt(step_of("site"))
    assert not ends_attempt(step_of(""))
    assert not ends_attempt(step_of("secondary.label"))
    assert not ends_attempt(step_of("library", '{ kind = "name", key = "dose.drug" }'))
    assert ends_attempt(step_of("secondary.bag", more='way_on = "stop"'))
    assert not ends_attempt(step_of("site", more='way_on = "put right"'))
