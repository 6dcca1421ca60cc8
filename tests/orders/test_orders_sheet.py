"""What stands on paper about an order that holds everything: its file, the learner's sheet, the instructor's."""

from datetime import date
from pathlib import Path

from assistant.dosing import parse_amount
from assistant.orders.laid_out import LaidOut, LaidOutByRate, LaidOutSyringe
from assistant.orders.load import load_order
from assistant.orders.model import Order
from assistant.orders.plausible import table
from assistant.orders.sheet import instructors_sheet, labels, learners_sheet
from assistant.orders.truth import truth_of
from assistant.orders.write import text_of
from tests.orders.papers import GOOD, written

EVERYTHING = Path(__file__).with_name("everything.toml")
"""Every part of an order, in the words and the order of fields in which this program writes one."""
SHEET = EVERYTHING.with_suffix(".txt").read_text(encoding="utf-8")
"""Its instructor's sheet, line by line; its numbers were worked out by hand with plain sums."""


def everything() -> Order:
    return load_order(str(EVERYTHING))


def test_the_instructors_sheet_holds_order_labels_key_faults_and_sources() -> None:
    """The instructor reads everything, with the working of each number."""
    assert instructors_sheet(everything()) == SHEET


def test_the_learners_sheet_is_the_instructors_without_what_the_learner_must_find() -> None:
    """The learner reads the order, the labels and the caution."""
    head, rest = SHEET.split("\n\nAnswer key\n")
    caution = rest.rpartition("\n\n")[2]
    assert learners_sheet(everything()) == head.replace(": instructor's sheet", "") + "\n\n" + caution


def test_no_fault_is_named_to_the_learner() -> None:
    """Labels say what they say; how a bag looks, what is found, what happens and what it leads to is not written."""
    order = everything()
    faults = truth_of(order, table()).faults
    assert len(faults) == 18
    sheet = learners_sheet(order)
    for fault in faults:
        assert fault.what not in sheet and fault.reaches not in sheet
    for word in ("leak", "cloudy", "expired", "another patient", "alarm", "swollen", "purpose", order.teaching):
        assert word not in sheet
        assert word not in order.sentence()
    bench = order.laid_out
    for said in (bench.primary.fluid, bench.secondary.drug, "800 mg", "15 gtt/mL", "31 January"):
        assert str(said) in sheet  # the labels, as they hang
        assert str(said) not in order.sentence()


def test_a_written_order_is_the_file_that_it_came_from() -> None:
    """Loading and writing loses nothing, adds nothing and moves nothing."""
    assert text_of(everything()) == EVERYTHING.read_text(encoding="utf-8")


def test_a_sheet_without_a_fault_says_so_and_what_it_teaches(tmp_path: Path) -> None:
    """All as ordered: the paper says so, and what the order is there for where that was written."""
    plain = load_order(written(tmp_path))
    assert "\n\nLaid out as ordered, without a fault\n\nSources\n" in instructors_sheet(plain)
    taught = plain.model_copy(update={"teaching": "A plain one."})
    assert (
        "\n\nLaid out as ordered, without a fault\n\nWhat it teaches\nA plain one.\n\nSources\n"
        in instructors_sheet(taught)
    )


def test_labels_of_a_bag_that_runs_alone() -> None:
    """Without a secondary the only label with a drug is on the bag that runs by its dose."""
    wrong = LaidOutByRate.model_validate(
        {"drug": "ceftriaxone", "amount": "2 g", "volume": "500 mL", "expires": "2026-12-24"}
    )
    syringe = LaidOutSyringe.model_validate({"fluid": "5 % dextrose in water", "expires": "2026-12-25"})
    alone = everything().model_copy(
        update={
            "primary": None,
            "gravity": None,
            "secondary": None,
            "second_secondary": None,
            "laid_out": LaidOut(dose=wrong, flush=syringe),
        }
    )
    assert list(labels(alone)) == [
        "Bag with the drug: drug ceftriaxone, drug in the bag 2 g, volume 500 mL, use by 24 December 2026",
        "Syringe for the flush: fluid 5 % dextrose in water, volume 10 mL, use by 25 December 2026",
    ]
    right = alone.model_copy(update={"laid_out": LaidOut(), "flush": None})
    assert list(labels(right)) == ["Bag with the drug: drug dopamine, drug in the bag 400 mg, volume 250 mL"]


def test_labels_say_what_was_ordered_where_nothing_else_is_laid_out() -> None:
    """The right bags carry the order's own names, amounts and volumes, the set its drop factor."""
    right = everything().model_copy(update={"laid_out": LaidOut(), "dose": None, "flush": None})
    assert list(labels(right)) == [
        "Bag of the primary: fluid lactated Ringer's solution, volume 1 L",
        "Bag with the drug: drug cefazolin, dose in the bag 1 g, volume 50 mL",
        "Second bag with a drug: drug famotidine, dose in the bag 20 mg, volume 50 mL",
        "Set: drops 20 gtt/mL",
    ]


def test_what_cannot_be_read_is_marked_where_it_cannot(tmp_path: Path) -> None:
    """Only the speed is gone, only of the infusion that is named; the rest of the sentence stays."""
    order = load_order(written(tmp_path))
    primary = order.model_copy(update={"illegible": ("primary",)})
    assert "1,000 mL over [cannot be read], intravenous, continuous. Reserve 50 mL." in primary.sentence()
    assert "in 50 mL over 20 min, intravenous" in primary.sentence()
    secondary = order.model_copy(update={"illegible": ("secondary",)})
    assert "1,000 mL over 12 h, intravenous" in secondary.sentence()
    assert "in 50 mL over [cannot be read], intravenous, every 12 hours." in secondary.sentence()
    by_rate = load_order(written(tmp_path, GOOD.replace('over = "12 h"', 'rate = "75 mL/h"')))
    assert "1,000 mL at 75 mL/h, intravenous" in by_rate.sentence()
    blurred = by_rate.model_copy(update={"illegible": ("primary",)})
    assert "1,000 mL at [cannot be read], intravenous" in blurred.sentence()


def test_an_order_without_allergies_weight_and_day(tmp_path: Path) -> None:
    """What is not known is said to be so, or not mentioned; a secondary alone is an intermittent infusion."""
    head, secondary = GOOD.replace('allergies = ["latex"]\n', "").split("[secondary]")
    order = load_order(written(tmp_path, head.split("[primary]")[0] + "[secondary]" + secondary))
    assert order.sentences() == (
        "Order T-1 for Wilhelmina Test, born 28 February 1990, number 00-0001.",
        "Allergies: none known.",
        "Intermittent: famotidine 20 mg in 50 mL over 20 min, intravenous, every 12 hours.",
        "Ordered by Dr Nobody (fictional), signed.",
    )


def test_everything_is_as_it_was_written() -> None:
    """Each field of the file is in the order, as the kind of thing that it is."""
    order = everything()
    assert (order.written, order.illegible) == (date(2026, 2, 1), ("dose",))
    assert order.second_secondary is not None and order.dose is not None and order.running is not None
    assert order.second_secondary.rate == parse_amount("200 mL/h")
    assert order.dose.ordered == parse_amount("5 mcg/kg/min")
    assert order.running.since == parse_amount("2 h")
    bench = order.laid_out
    assert (bench.primary.fluid, bench.primary.bag_volume) == ("5 % dextrose in water", parse_amount("500 mL"))
    assert (bench.secondary.dose, bench.secondary.expires) == (parse_amount("2 g"), date(2026, 1, 31))
    assert (bench.secondary.state, bench.second_secondary.state, bench.flush.state) == ("leaking", "cloudy", "expired")
    assert (bench.dose.amount, bench.gravity.drop_factor) == (parse_amount("800 mg"), parse_amount("15 gtt/mL"))
    assert bench.found == {"wristband": "another patient", "blood return": "none"}
    assert [(one.at, one.thing, one.state) for one in bench.happens] == [
        ("s-start", "pump", "alarm"),
        ("s-watch", "site", "swollen"),
    ]
    assert (bench.happens[0].say, bench.happens[1].say) == ("The pump sounds an alarm.", "")
    assert bench.on_purpose == ("limits",)
