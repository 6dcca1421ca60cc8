"""What stands on the sheets for the bench before it is set: the learner's pages, the labels, the instructor's."""

from datetime import date

import pytest

from assistant.orders.laid_out import LABELS, LaidOut
from assistant.orders.load import load_order
from assistant.orders.model import ILLEGIBLE
from assistant.orders.planting import FAULTS
from assistant.orders.plausible import table
from assistant.orders.reading import day_in_words
from assistant.orders.sheet import in_words
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of
from assistant.report.bench_labels import another_patient, band_of, labels_of
from assistant.report.bench_sheets import instructors_sheet, labels_page, learners_pages
from assistant.spoken import ENGLISH
from tests.orders.many import DAY, PLACES
from tests.report.benches import EVERYTHING, busy, drawn, every_bench

WORDS = ENGLISH.report
BOTH = ("primary", "secondary")
TODAY = date(2026, 11, 28)


def everything():
    return load_order(str(EVERYTHING))


def by_part(order):
    return {label.part: label for label in labels_of(order, WORDS, TODAY)}


# Labels.


def test_labels_say_what_is_laid_out():
    """Worked out by hand from the file: what hangs in place of what is ordered, and as ordered elsewhere."""
    said = {part: (one.name, one.amounts, one.use_by) for part, one in by_part(everything()).items()}
    assert said == {
        "primary": ("5 % dextrose in water", ("500 mL",), "31 January 2027"),
        "secondary": ("ceftriaxone", ("2 g in 50 mL",), "31 January 2026"),
        "second_secondary": ("famotidine", ("20 mg in 100 mL",), "24 December 2026"),
        "dose": ("dopamine", ("800 mg in 250 mL", "3.2 mg/mL"), "1 February 2027"),  # 800 / 250, and a year
        "flush": ("0.9 % sodium chloride", ("5 mL",), "2 January 2026"),  # thirty days before
        "gravity": ("gravity set", ("15 gtt/mL",), ""),
    }


def test_the_concentration_is_that_of_what_is_laid_out():
    """As ordered it is another one: 400 mg in 250 mL are 1.6 mg/mL. What is not exact has three digits."""
    right = everything().model_copy(update={"laid_out": LaidOut()})
    assert by_part(right)["dose"].amounts == ("400 mg in 250 mL", "1.6 mg/mL")
    odd = right.model_copy(update={"laid_out": LaidOut.model_validate({"dose": {"volume": "300 mL"}})})
    assert by_part(odd)["dose"].amounts == ("400 mg in 300 mL", "1.33 mg/mL")


def test_every_label_follows_its_order():
    """Each field of each label, in every bench: what is laid out, else what is ordered."""
    for order in every_bench():
        labels = by_part(order)
        assert list(labels) == [part for part in LABELS if getattr(order, part) is not None]
        for part, label in labels.items():
            for field in LABELS[part]:
                says = getattr(getattr(order.laid_out, part), field) or getattr(getattr(order, part), field)
                assert str(says) in f"{label.name} {' '.join(label.amounts)}", (order.code, part)


def test_an_expired_label_has_expired_and_no_other_has():
    """The date is past on the day of the order where that is laid out, told or not, and in the future elsewhere."""
    order = busy()
    assert by_part(order)["flush"].use_by == "29 October 2026"  # thirty days before
    assert by_part(order)["primary"].use_by == "28 November 2027"
    for fault, expired in (("expired-bag", True), ("wrong-bag", False)):
        for order in drawn(fault, BOTH):
            past = [label for label in by_part(order).values() if label.use_by and _day(order, label) < DAY]
            assert len(past) == expired


def _day(order, label):
    day = getattr(order.laid_out, label.part).expires
    assert day_in_words(day) == label.use_by
    return day


def test_the_wristband_is_the_patients():
    """As on the order."""
    band = band_of(everything().model_copy(update={"laid_out": LaidOut()}), WORDS)
    assert (band.name, band.born, band.number) == ("Wilhelmina Test", "28 February 1990", "00-0001")
    assert band.allergies == "latex, peanuts"


def test_another_patients_wristband():
    """Somebody else in name, birth and number; the same one at every printing."""
    order = busy()
    band, own = band_of(order, WORDS), order.patient
    assert band == band_of(order, WORDS)
    assert not set(band.name.split()) & set(own.name.split())
    assert (band.born, band.number) != (day_in_words(own.born), own.number)
    for order in drawn("wrong-patient", BOTH):
        other = another_patient(order)
        assert (other.born, other.number) != (order.patient.born, order.patient.number)
        assert not set(other.name.split()) & set(order.patient.name.split())
        assert band_of(order, WORDS).name == other.name


# The learner's pages.


def test_the_learner_reads_the_whole_order():
    """Each line with its amounts, its pace, its way and what stays in the bag."""
    pages = learners_pages(everything(), WORDS)
    assert [(line.kind, line.what, "".join(line.how)) for line in pages.lines] == [
        (
            "Primary",
            "lactated Ringer's solution, 500 mL from a bag of 1 L",
            "over 6 h, intravenous, continuous, reserve 50 mL",
        ),
        ("By gravity", "with a set of 20 gtt/mL", ""),
        ("Secondary", "cefazolin 1 g in 50 mL", "over 30 min, intravenous, every 8 hours"),
        (
            "Secondary, after the first",
            "famotidine 20 mg in 50 mL",
            "at 200 mL/h, peripheral, every 12 hours, reserve 5 mL",
        ),
        ("By pump", "dopamine 400 mg in 250 mL", "at [cannot be read], intravenous, continuous, reserve 10 mL"),
        ("Flush", "0.9 % sodium chloride, 10 mL", "before and after each use"),
    ]
    assert (pages.about.allergies, pages.about.weight) == ("latex, peanuts", "154 lb")
    assert pages.history == ("The primary has been running for 2 h.",)
    assert pages.written == "1 February 2026"


def test_what_cannot_be_read_is_a_gap():
    """A piece of its own, so that ink can stand there, and no word."""
    assert learners_pages(busy(), WORDS).lines[1].how == ("over ", ILLEGIBLE, ", intravenous, every 6 hours")
    alone = busy().model_copy(update={"primary": None, "running": None})
    assert learners_pages(alone, WORDS).lines[0].kind == "Intermittent infusion"
    primary = busy().model_copy(update={"illegible": ("primary",)})
    assert learners_pages(primary, WORDS).lines[0].how[:2] == ("over ", ILLEGIBLE)


def test_the_learners_pages_do_not_know_the_bench():
    """Whatever is laid out, whatever the order is there for: the pages are the same."""
    for order in every_bench():
        plain = order.model_copy(update={"laid_out": LaidOut(), "teaching": "", "title": "Plain", "sources": ()})
        assert learners_pages(order, WORDS) == learners_pages(plain, WORDS)


# The instructor's sheet.


def test_the_instructor_lays_out_a_busy_bench():
    """Bags, syringe, wristband, site, clamps, pump, patient and the rest, each fault marked where it is."""
    sheet = instructors_sheet(busy(), WORDS, TODAY)
    places = {place.what: (" ".join(place.how), place.faults) for place in sheet.places}
    numbers = {fault.what: fault.number for fault in sheet.faults}
    assert list(places) == [
        "Bag of the primary", "Bag with the drug", "Syringe for the flush", "When it begins", "Wristband", "Site",
        "Roller clamp", "Pump", "Patient", "Line",
    ]  # fmt: skip
    assert places["Bag of the primary"][0].startswith("5 % dextrose in 0.45 % sodium chloride, 1,000 mL Use by 28")
    assert "Cloudy. A label cannot show it" in places["Bag of the primary"][0]
    assert places["Bag with the drug"][0].startswith("amikacin, 500 mg in 100 mL Use by")
    assert len(places["Bag with the drug"][1]) == 3  # drug, dose, volume
    assert places["When it begins"] == ("The primary has been running for 2 h.", ())
    assert places["Wristband"][0].startswith(f"Another patient. {another_patient(busy()).name}, born ")
    assert places["Site"] == ("Red.", (numbers["The site: red."],))
    assert places["Roller clamp"] == ("Open.", (numbers["The roller clamp: open."],))
    assert places["Pump"] == ("Nothing wrong. Takes a rate to the nearest tenth, half up.", ())
    assert places["Patient"] == ("Has no complaints.", ())
    events = [(fault.at, fault.say) for fault in sheet.faults if fault.at]
    assert events == [("watch", "My arm burns where the drip goes in."), ("start", "")]


@pytest.mark.parametrize(("fault", "parts"), [(fault, parts) for fault in FAULTS for parts in PLACES[fault]])
def test_every_fault_is_on_the_instructors_sheet(fault, parts):
    """Each with what would reach the patient, and marked where something is laid out for it."""
    for order in drawn(fault, parts):
        sheet = instructors_sheet(order, WORDS, TODAY)
        truth = truth_of(order, table()).faults
        assert truth
        assert [(one.what, one.reaches) for one in sheet.faults] == [(one.what, one.reaches) for one in truth]
        marked = {number for place in sheet.places for number in place.faults}
        on_paper = {"allergy", "drugs", "limits", "pair", "paper"}
        laid_out = [n for n, one in enumerate(truth, 1) if one.fact.partition(".")[2] not in on_paper]
        assert marked == {f"Fault {number}" for number in laid_out}
        assert sheet.teaching == order.teaching


def test_the_key_stands_with_its_units():
    """Every value of the key."""
    sheet = instructors_sheet(busy(), WORDS, TODAY)
    assert [name for name, _ in sheet.key] == [in_words(name) for name in answer_key(busy())]
    assert ("Primary, rate", "83.3 mL/h") in sheet.key  # 1,000 mL / 12 h
    assert ("Primary, volume to be infused", "950 mL") in sheet.key


def test_as_ordered_nothing_is_marked():
    """Silence means that nothing is wrong."""
    (order, *_) = drawn(None, BOTH)
    sheet = instructors_sheet(order, WORDS, TODAY)
    assert sheet.faults == ()
    assert not any(place.faults for place in sheet.places)
    assert [place.what for place in sheet.places][-5:] == ["Wristband", "Site", "Clamps", "Pump", "Patient"]
    assert labels_page(order, WORDS, TODAY).band.name == order.patient.name


def test_without_a_pump_none_is_laid_out():
    """By gravity: a set with its drops, and no pump."""
    what = {place.what for place in instructors_sheet(everything(), WORDS, TODAY).places}
    assert "Set" in what
    assert "Pump" not in what
