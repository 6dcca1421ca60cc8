"""The two procedures and their union: every part of the trade is there, in order, with reason and source."""

import re
from decimal import Decimal

import pytest

from assistant.checklist.load import load
from assistant.checklist.model import (
    Checklist,
    DoneAsked,
    NameAsked,
    NumberAsked,
    QuestionAsked,
    Step,
    WaitAsked,
)
from assistant.checklist.rehearsal import rehearse
from assistant.orders.load import available_orders, load_order
from assistant.orders.solve import answer_key
from assistant.spoken import interpret, say_amount, speech
from assistant.spoken.expect import NameExpected, NumberExpected
from assistant.spoken.meaning import Answer, Kind

PRIMARY = load("primary-line")
SECONDARY = load("secondary-line")
BOTH = load("primary-and-secondary")
ALL = pytest.mark.parametrize("checklist", [PRIMARY, SECONDARY], ids=lambda checklist: str(checklist.name))


def text(step: Step) -> str:
    return f"{step.say} {step.more}".lower()


def place(checklist: Checklist, step_id: str) -> int:
    return [step.id for step in checklist.steps].index(step_id)


# Each part of the procedure, the step that holds it, and words that its lines must say.
PRIMARY_PARTS = [
    ("first check of the rights, at the stock", "p-first-check", "first check.*patient.*route.*time"),
    ("second check, when prepared", "p-second-check", "second check"),
    ("third check, at the bedside", "p-third-check", "third check, at the bedside"),
    ("two identifiers", "p-identify", "name and date of birth.*two identifiers"),
    ("allergies", "p-allergies", "allergies"),
    ("hand hygiene", "p-hand-rub", "hand rub"),
    ("hand hygiene at the patient", "p-hands-again", "before the patient is touched"),
    ("gloves", "p-gloves", "gloves"),
    ("fluid", "p-fluid", "what fluid"),
    ("volume", "p-bag-volume", "millilitres"),
    ("expiry of the set", "p-expiry", "sealed and in date, opened, or expired"),
    ("ordered rate against the usual range", "p-ordered-limits", "this fluid's usual rates.*out of range"),
    ("clarity, leaks and expiry of the bag", "p-inspect", "cloudy, leaking or expired"),
    ("bag labelled", "p-label", "bag with date and time"),
    ("set labelled", "p-label-set", "set with date and time"),
    ("clamp closed before spiking", "p-clamp-closed", "close"),
    ("spike", "p-spike", "spike"),
    ("chamber a third to half full", "p-chamber", "a third to half"),
    ("bag hung", "p-hang", "hang the bag"),
    ("primed to the tip", "p-prime", "prime slowly to the tip"),
    ("ports turned and tapped", "p-ports", "tap each port upside down"),
    ("no air", "p-no-air", "air in the line"),
    ("clamp closed after priming", "p-primed", "close the roller clamp again"),
    ("set seated as its manufacturer directs", "p-seat", "manufacturer directs"),
    ("the set's own clamp", "p-own-clamp", "own clamp.*manufacturer directs"),
    ("drug library used", "p-library", "drug library"),
    ("rate", "p-rate", "rate"),
    ("volume to be infused with a reserve", "p-vtbi", "volume to be infused.*the reserve stays in the bag"),
    ("gate: everything set before the patient is touched", "p-all-set", "before anything touches the patient"),
    ("site", "p-site", "pain, swelling and redness"),
    ("Luer-lock flush, no oral syringe", "p-syringe", "luer lock, or an oral one"),
    ("hub scrubbed", "p-hub-scrub", "scrub the hub"),
    ("hub dried", "p-hub-dry", "dry"),
    ("blood return", "p-blood-return", "blood return"),
    ("hub scrubbed again before the line", "p-again-scrub", "scrub the hub again"),
    ("hub dried again", "p-again-dry", "dry"),
    ("connect", "p-connect", "connect"),
    ("open every clamp", "p-clamps", "every clamp"),
    ("start", "p-start", "start"),
    ("drops seen", "p-drops", "drops"),
    ("line check", "p-line-check", "alarm"),
    ("documentation", "p-document", "document"),
]
SECONDARY_PARTS = [
    ("first check", "s-first-check", "first check"),
    ("second check", "s-second-check", "second check"),
    ("third check", "s-third-check", "third check, at the bedside"),
    ("identifiers", "s-identify", "two identifiers"),
    ("dose and time against the usual range", "s-ordered-limits", "usual dose and time. within range"),
    ("site before the hook-up", "s-site", "pain, swelling and redness"),
    ("first minutes", "s-watch", "feeling fine, itching, or short of breath"),
    ("compatible with the running fluid", "s-compatible", "drug and running fluid.*together"),
    ("short set clamped", "s-clamp-closed", "close the clamp"),
    ("spiked at the right port", "s-spike", "outlet port"),
    ("chamber", "s-chamber", "a third to half"),
    ("short set clamped after priming", "s-primed", "clamp again"),
    ("no air in the short set", "s-no-air", "air in the set"),
    ("slowly primed without losing drug", "s-prime", "prime slowly to the tip, without wasting drug"),
    ("hand hygiene before the hook-up", "s-hands-again", "before the line is opened"),
    ("gloves before the hook-up", "s-gloves", "gloves"),
    ("primary paused", "s-pause", "pause the primary"),
    ("primary hung lower on its hook", "s-hang-lower", "lower, on its hook"),
    ("port above the pump scrubbed", "s-scrub", "scrub the port above the pump"),
    ("port dried", "s-dry", "dry"),
    ("connected there", "s-connect", "that port, above the pump"),
    ("secondary chosen in the library", "s-library", "drug as a secondary. from the library"),
    ("drug on the label", "s-drug", "what drug"),
    ("concentration of label and pump", "s-concentration", "concentration do the label and the pump"),
    ("rate", "s-rate", "rate"),
    ("volume", "s-vtbi", "volume to be infused"),
    ("duration", "s-duration", "how many minutes"),
    ("clamp open", "s-clamp-open", "open the clamp on the secondary"),
    ("started", "s-start", "start"),
    ("secondary drips, primary does not", "s-drips", "which one drips: the secondary, the primary"),
    ("falls back to the primary's rate", "s-primary-rate", "the primary goes on"),
    ("return to check", "s-return", "return"),
    ("what is left in the set", "s-residual", "out of the short set"),
    ("hands at the end", "s-last-rub", "clean your hands once more"),
    ("documentation", "s-document", "document"),
]


@pytest.mark.parametrize(("part", "step_id", "words"), PRIMARY_PARTS + SECONDARY_PARTS)
def test_every_part_of_the_trade_has_its_step(part: str, step_id: str, words: str) -> None:
    """The part is asked for in the step's own lines."""
    assert re.search(words, text(BOTH.step(step_id)), re.DOTALL), part


HARMS = {
    # what harms a patient by itself: identity, allergies, drug, dose, rate and volume, hands and hub, air, clamps at
    # the start, the site, the gates (common practice, no source)
    "p-allergies", "p-ordered-limits", "p-fluid", "p-no-air", "p-rate", "p-vtbi", "p-identify", "p-all-set",
    "p-hands-again", "p-site", "p-hub-scrub", "p-hub-dry", "p-clamps",
    "p-air", "p-last-rub", "s-no-air", "s-last-rub",
    "s-allergies", "s-ordered-limits", "s-compatible", "s-drug", "s-dose", "s-identify", "s-hands-again", "s-site",
    "s-scrub", "s-dry", "s-ready", "s-rate", "s-vtbi", "s-clamp-open", "s-settings",
}  # fmt: skip


def test_what_harms_is_critical_and_nothing_else() -> None:
    """A check-off fails on what harms a patient; the rest counts for the score."""
    assert {step.id for step in BOTH.steps if step.critical} == HARMS


@pytest.mark.parametrize("gate", [step.id for step in BOTH.steps if step.gate])
def test_a_gate_waits_for_what_is_not_critical_too(gate: str) -> None:
    """Order, bag and set in order, primed and checked: each gate names what has to be closed before it."""
    earlier = {step.id for step in BOTH.steps[: place(BOTH, gate)] if step.critical}
    held = earlier | set(BOTH.step(gate).after)
    wanted = {
        "p-all-set": {"p-order", "p-expiry", "p-inspect", "p-primed", "p-seat", "p-third-check"},
        "s-ready": {"s-order", "s-inspect", "s-primed", "s-third-check", "s-settings", "s-hang-lower"},
        "s-settings": {"s-library", "s-concentration", "s-duration"},
    }
    assert wanted[gate] <= held


ORDER_OF_STEPS = [
    # earlier, later, source of the order
    ("p-hand-rub", "p-fluid", "Open RN Nursing Skills, section 23.6, step 8: before any line is handled"),
    ("p-clamp-closed", "p-spike", "East Carolina University, primary intravenous infusion checklist, step 8"),
    ("p-spike", "p-hang", "East Carolina University, primary intravenous infusion checklist, steps 9 and 10"),
    ("p-hang", "p-chamber", "East Carolina University, primary intravenous infusion checklist, steps 10 and 11"),
    ("p-chamber", "p-prime", "East Carolina University, primary intravenous infusion checklist, steps 11 and 12"),
    ("p-prime", "p-ports", "BCcampus and TRU, section 8.7, checklist 66, safety considerations"),
    ("p-ports", "p-primed", "BCcampus and TRU, section 8.7, checklist 66, steps 11 and 12"),
    ("p-primed", "p-no-air", "common practice, no source"),
    ("p-no-air", "p-rate", "East Carolina University, primary intravenous infusion checklist, steps 13 and 14"),
    ("p-rate", "p-connect", "East Carolina University, primary intravenous infusion checklist, steps 14 and 15"),
    ("p-connect", "p-clamps", "East Carolina University, primary intravenous infusion checklist, step 15"),
    ("p-clamps", "p-line-check", "East Carolina University, primary intravenous infusion checklist, steps 15 and 16"),
    ("p-line-check", "p-document", "East Carolina University, primary intravenous infusion checklist, step 18"),
    ("p-vtbi", "p-all-set", "common practice, no source"),
    ("p-all-set", "p-hands-again", "common practice, no source"),
    ("p-hub-scrub", "p-hub-dry", "Antimicrobial Resistance and Infection Control 2018, s13756-018-0342-0, methods"),
    ("p-again-scrub", "p-again-dry", "Antimicrobial Resistance and Infection Control 2018, s13756-018-0342-0, methods"),
    ("p-flush", "p-again-scrub", "Infusion Nurses Society, standards (2021): before each access (from memory)"),
    ("p-again-dry", "p-connect", "Antimicrobial Resistance and Infection Control 2018, s13756-018-0342-0, methods"),
    ("s-hands-again", "s-scrub", "WHO Guidelines on Hand Hygiene (2009), five moments (from memory)"),
    ("p-hub-dry", "p-blood-return", "Infusion Nursing Standards of Practice (2000), as reported"),
    ("p-first-check", "p-second-check", "Open RN Nursing Skills, section 23.6, steps 3 and 6"),
    ("p-second-check", "p-third-check", "Open RN Nursing Skills, section 23.6, steps 6 and 9"),
    ("p-identify", "p-third-check", "Open RN Nursing Skills, section 23.6, steps 8 and 9"),
    ("s-first-check", "s-second-check", "Open RN Nursing Skills, section 23.6, steps 3 and 6"),
    ("s-compatible", "s-inspect", "Open RN Nursing Skills, section 23.6, steps 4 and 5"),
    ("s-second-check", "s-identify", "Open RN Nursing Skills, section 23.6, steps 6 and 8"),
    ("s-identify", "s-third-check", "Open RN Nursing Skills, section 23.6, steps 8 and 9"),
    ("s-pause", "s-connect", "common practice, no source"),
    ("s-hang-lower", "s-connect", "common practice, no source"),
    ("s-vtbi", "s-settings", "common practice, no source"),
    ("s-settings", "s-connect", "common practice, no source: set the pump, then open the line"),
    ("s-dry", "s-connect", "Antimicrobial Resistance and Infection Control 2018, s13756-018-0342-0, methods"),
    ("s-clamp-open", "s-start", "Trbovich et al. 2010, Quality and Safety in Health Care 19(5):430-434, table 3"),
    ("s-start", "s-drips", "Institute for Safe Medication Practices Canada, module on secondary infusions"),
    ("s-drips", "s-primary-rate", "common practice, no source"),
]


@pytest.mark.parametrize(("earlier", "later", "source"), ORDER_OF_STEPS)
def test_steps_come_in_the_published_order(earlier: str, later: str, source: str) -> None:
    """What the source puts first comes first."""
    assert place(BOTH, earlier) < place(BOTH, later), source


WAITS = [
    # step, shortest and longest published time in s, source
    ("p-hand-rub", 20, 30, "WHO Guidelines on Hand Hygiene (2009), hand-rub technique (from memory)"),
    ("p-hands-again", 20, 30, "WHO Guidelines on Hand Hygiene (2009), hand-rub technique (from memory)"),
    ("s-hand-rub", 20, 30, "WHO Guidelines on Hand Hygiene (2009), hand-rub technique (from memory)"),
    ("p-hub-scrub", 10, 15, "Smith et al. 2012, Journal of the Association for Vascular Access 17(3):137-143"),
    ("p-again-scrub", 10, 15, "Smith et al. 2012, Journal of the Association for Vascular Access 17(3):137-143"),
    ("p-again-dry", 5, 30, "Antimicrobial Resistance and Infection Control 2018; Slater et al. 2018: from 5 s up"),
    ("s-hands-again", 20, 30, "WHO Guidelines on Hand Hygiene (2009), hand-rub technique (from memory)"),
    ("s-scrub", 10, 15, "Smith et al. 2012, Journal of the Association for Vascular Access 17(3):137-143"),
    ("p-hub-dry", 5, 30, "Antimicrobial Resistance and Infection Control 2018; Slater et al. 2018: from 5 s up"),
    ("s-dry", 5, 30, "Antimicrobial Resistance and Infection Control 2018; Slater et al. 2018: from 5 s up"),
]


@pytest.mark.parametrize(("step_id", "shortest", "longest", "source"), WAITS)
def test_timed_waits_are_as_long_as_published(step_id: str, shortest: int, longest: int, source: str) -> None:
    """The clock runs as long as the source says."""
    expect = BOTH.step(step_id).expect
    assert isinstance(expect, WaitAsked)
    assert shortest <= expect.seconds <= longest, source
    assert f"{expect.seconds} seconds" in BOTH.step(step_id).say


@ALL
def test_critical_steps_say_why_and_where_that_is_published(checklist: Checklist) -> None:
    """Reason and source on every critical step; a source names a place in it, or says that there is none."""
    for step in checklist.steps:
        assert step.sources, step.id
        if step.critical:
            assert step.why, step.id
        for source in step.sources:
            title, _, locator = source.partition(", ")
            assert title and locator, source


@ALL
def test_lines_are_short_and_ask_for_what_they_expect(checklist: Checklist) -> None:
    """Less than 20 words; a question where an answer is wanted, something to do where done is wanted."""
    for step in checklist.steps:
        assert len(step.say.split()) < 20, step.id
        assert step.say.endswith((".", "?")), step.id
        assert step.more, step.id
        assert step.hint, step.id
        assert step.if_wrong, step.id
        match step.expect:
            case QuestionAsked() | NumberAsked() | NameAsked():
                assert step.say.endswith("?"), step.id
            case DoneAsked() | WaitAsked():
                assert "?" not in step.say, step.id


@ALL
def test_no_line_holds_an_answer_of_an_order(checklist: Checklist) -> None:
    """No order's number with its unit, and no order's fluid or drug, stands in any line."""
    for name in available_orders():
        for entry in answer_key(load_order(name)).values():
            for step in checklist.steps:
                lines = " ".join((step.say, step.more, step.hint, step.if_wrong))
                if entry.unit is None:
                    if entry.value != "0.9 % sodium chloride":  # what every flush is filled with
                        assert str(entry.value) not in lines, (step.id, entry)
                elif isinstance(step.expect, NumberAsked):
                    assert not re.search(rf"(?<![\d.,]){entry.value:,f}(?![\d.,])", lines), (step.id, entry)


@ALL
def test_settings_run_out_only_before_the_start(checklist: Checklist) -> None:
    """Waiting too long before the start reopens every setting and its last verification, and nothing else does."""
    (start,) = [step for step in checklist.steps if step.expires]
    assert start.id.endswith("-start")
    assert start.expires is not None
    assert start.expires.after_s == 180
    settings = [
        step.id
        for step in checklist.steps
        if isinstance(step.expect, NumberAsked) and re.search(r"^(Enter|How many minutes)", step.say)
    ]
    assert list(start.expires.reopen[:-1]) == settings
    verified = checklist.step(start.expires.reopen[-1])
    assert "display" in verified.say
    assert place(checklist, verified.id) == place(checklist, start.id) - 1


SPEAKABLE = re.compile(r"[A-Za-z \u2019',.;:?!()-]+")


@pytest.mark.parametrize("checklist", [PRIMARY, SECONDARY], ids=lambda checklist: str(checklist.name))
def test_every_line_can_be_spoken(checklist: Checklist) -> None:
    """Turned into speech, no figure, sign or abbreviation is left in any line."""
    for step in checklist.steps:
        for line in filter(None, (step.say, step.more, step.hint, step.why, step.if_wrong)):
            assert SPEAKABLE.fullmatch(speech(line)), speech(line)
            assert not re.search(r"\b[A-Z]{2,}\b", speech(line)), speech(line)
        if step.expires:
            assert SPEAKABLE.fullmatch(speech(step.expires.say))


@pytest.mark.parametrize("name", list(available_orders()))
def test_every_name_on_a_label_is_heard_as_itself(name: str) -> None:
    """Each name that a label in the lab may carry, spoken as it is written, is taken for that name and no other."""
    for entry in answer_key(load_order(name)).values():
        for choice in entry.choices:
            heard = interpret(speech(choice), NameExpected(entry.choices))
            assert isinstance(heard, Answer), (choice, heard)
            assert (heard.kind, heard.value) == (Kind.NAME, choice)


@pytest.mark.parametrize("name", list(available_orders()))
def test_every_number_of_an_order_can_be_said_at_its_step(name: str) -> None:
    """The right number, said with its unit, is taken at the step that asks for it."""
    key = answer_key(load_order(name))
    for step in BOTH.steps:
        if isinstance(step.expect, NumberAsked) and step.expect.key in key:
            value = key[step.expect.key].value
            assert isinstance(value, Decimal)
            heard = interpret(say_amount(value, step.expect.unit), NumberExpected(step.expect.unit))
            assert isinstance(heard, Answer), (step.id, heard)
            assert (heard.value, heard.unit) == (value, step.expect.unit)


def test_the_union_is_both_one_after_the_other() -> None:
    """No step is lost, doubled or changed."""
    assert BOTH.steps == PRIMARY.steps + SECONDARY.steps
    assert len({PRIMARY.digest, SECONDARY.digest, BOTH.digest}) == 3


def test_the_length_of_the_procedures() -> None:
    """One thing a line makes many lines, but no more than are done in one sitting, as long as it is read aloud."""
    for checklist, fewest, most in ((PRIMARY, 33, 52), (SECONDARY, 24, 46)):
        assert fewest <= len(checklist.steps) <= most
        assert sum(line.seconds for line in rehearse(checklist)) <= 12 * 60


@pytest.mark.parametrize("checklist", [PRIMARY, SECONDARY, BOTH], ids=lambda checklist: str(checklist.name))
def test_cautions_come_first(checklist: Checklist) -> None:
    """Training only; local policy and the makers first; a licensed practitioner decides."""
    cautions = " ".join(checklist.cautions).lower()
    for words in ("training", "no patient", "local policy", "makers' instructions", "licensed practitioner decides"):
        assert words in cautions
    assert load_order(checklist.order).code == "OH-101"


def test_an_alarm_brings_advice() -> None:
    """A line check that fails names the clamp, a kink, air and the site."""
    advice = BOTH.step("p-line-check").if_wrong + BOTH.step("p-drops").if_wrong + BOTH.step("s-drips").if_wrong
    for word in ("clamp", "kink", "air", "site", "empty"):
        assert word in advice


def test_the_lab_has_several_orders() -> None:
    """Different fluids, drugs and numbers; one wrong bag on the stand, one primary only."""
    orders = [load_order(name) for name in available_orders()]
    assert len(orders) >= 4
    assert len({order.primary.fluid for order in orders if order.primary}) >= 4
    assert len({order.secondary.drug for order in orders if order.secondary}) >= 4
    assert any(order.laid_out.primary.fluid for order in orders)
    assert any(order.secondary is None for order in orders)
    assert len({order.patient.name for order in orders}) == len(orders)
    assert all(order.sources for order in orders)
