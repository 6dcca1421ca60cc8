"""The rest of the library: order of steps, waits, gates, wording, and numbers worked by hand."""

import re
from decimal import Decimal
from functools import lru_cache

import pytest

from assistant.checklist.library import library_folder
from assistant.checklist.load import available, load
from assistant.checklist.model import (
    Checklist,
    ChoiceAsked,
    DoneAsked,
    DoubleCheckAsked,
    NameAsked,
    NoteAsked,
    NumberAsked,
    ObservationAsked,
    QuestionAsked,
    WaitAsked,
)
from assistant.checklist.works import work_of, works
from assistant.guide.asking import asked_of
from assistant.orders.key import KeyEntry
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from assistant.spoken import interpret, say_amount, speech
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected, NumberExpected
from assistant.spoken.meaning import Answer, Kind

NEW = [name for name in available() if name not in ("primary-line", "secondary-line", "primary-and-secondary")]
EACH = pytest.mark.parametrize("name", NEW)


@lru_cache
def checklist(name: str) -> Checklist:
    return load(name)


@lru_cache
def key(order: str) -> dict[str, KeyEntry]:
    return dict(answer_key(load_order(order)))


def place(name: str, step_id: str) -> int:
    return checklist(name).place(step_id)


FIVE_MOMENTS = "WHO Guidelines on Hand Hygiene (2009), five moments (from memory)"
DISCONTINUING = "Open RN Nursing Skills (second edition), section 23.9, checklist for discontinuing"
DRYING = "Antimicrobial Resistance and Infection Control 2018, s13756-018-0342-0, methods"
INFILTRATION = "Bonsall L, Complications of Peripheral Intravenous Therapy (2024), management of infiltration"
PRIMING = "BCcampus and TRU, Clinical Procedures for Safer Patient Care, section 8.7, checklist 66"
ALARMS = "Royal Marsden Manual of Clinical Nursing Procedures, infusion device alarms (read in an excerpt)"
TO_LOCK = "BCcampus, Clinical Procedures for Safer Patient Care (2015), section 8.6, checklist 71"
BY_HAND = "Open RN Nursing Advanced Skills, section 2.5, checklist: administer IV push medications"
NEW_TUBING = "Changing IV solution container and tubing (college skills checklist), docsbay.net/doc/1208525"
ALONE = "Baldwin and Walsh 2014, Nursing, independent double-checks: alone, then compared"

ORDER_OF_STEPS = [
    # checklist, earlier, later, source of the order
    ("gravity-infusion", "g-clamp", "g-spike", f"{PRIMING}, steps 6 and 8"),
    ("gravity-infusion", "g-hang", "g-chamber", f"{PRIMING}, steps 4 and 9 (as charted)"),
    ("gravity-infusion", "g-chamber", "g-prime", f"{PRIMING}, steps 10 and 11"),
    ("gravity-infusion", "g-ports", "g-primed", f"{PRIMING}, steps 11 and 12"),
    ("gravity-infusion", "g-drop-factor", "g-target", "Open RN Nursing Skills, section 5.14: factor, then drops"),
    ("gravity-infusion", "g-target", "g-count", "common practice, no source"),
    ("gravity-infusion", "g-height", "g-open", "Performance checklist, regulating intravenous flow rates: 1a, then 1b"),
    ("gravity-infusion", "g-open", "g-count", "Performance checklist, regulating intravenous flow rates: 1b"),
    ("gravity-infusion", "g-patent", "g-connect", "Infusion Nursing Standards of Practice (2000), as reported"),
    ("gravity-infusion", "g-hub-dry", "g-connect", DRYING),
    ("bag-change", "b-chamber-left", "b-pause", "FDA label text, cefazolin injection, section 2.3: never run dry"),
    ("bag-change", "b-pause", "b-spike", "Changing the solution container, step 6, then step 7"),
    ("bag-change", "b-clamp", "b-spike", "Changing the solution container, step 6, then step 7"),
    ("bag-change", "b-no-air", "b-start", "Changing the solution container, step 9"),
    ("bag-change", "b-vtbi", "b-settings", "common practice, no source: set, check, then open"),
    ("bag-change", "b-rate", "b-settings", "common practice, no source: set, check, then open"),
    ("bag-change", "b-settings", "b-open", "common practice, no source: set, check, then open"),
    ("saline-lock", "f-hub-scrub", "f-hub-dry", DRYING),
    ("saline-lock", "f-blood-return", "f-flush", "Infusion Nursing Standards of Practice (2000), as reported"),
    ("saline-lock", "f-clamp", "f-off", "BCcampus, section 8.5, checklist 69: clamp, then syringe"),
    ("lock-infusion", "l-allergies", "l-drug", "Open RN Nursing Skills, section 23.6, step 3"),
    ("lock-infusion", "l-vtbi", "l-connect", "common practice, no source"),
    ("lock-infusion", "l-ready", "l-connect", "common practice, no source"),
    ("lock-infusion", "l-residual", "l-off", "Institute for Safe Medication Practices, hidden medication loss"),
    ("lock-infusion", "l-lock", "l-off", f"{TO_LOCK}, steps 5 and 7: clamp, then disconnect"),
    ("lock-infusion", "l-clamp-after", "l-syringe-off", "BCcampus, section 8.5, checklist 69: clamp, then syringe"),
    ("lock-infusion", "l-flush", "l-connect", "BCcampus, section 8.5: flush before and after"),
    ("lock-infusion", "l-start", "l-flush-after", "BCcampus, section 8.5: flush before and after"),
    ("weight-based-infusion", "w-weight", "w-calculated", "Institute for Safe Medication Practices, best practice 3"),
    ("weight-based-infusion", "w-calculated", "w-second", ALONE),
    ("weight-based-infusion", "w-second", "w-rate", ALONE),
    ("weight-based-infusion", "w-witness", "w-connect", "common practice, no source"),
    ("second-piggyback", "k-compatible", "k-lower", "as repeated on a secondary page: not when incompatible"),
    ("second-piggyback", "k-both-drugs", "k-lower", "as repeated on a secondary page: not when incompatible"),
    ("second-piggyback", "k-first-done", "k-lower", "common practice, no source"),
    ("second-piggyback", "k-clamp", "k-spike", "common practice, no source"),
    ("second-piggyback", "k-open", "k-start", "Trbovich et al. 2010, Quality and Safety in Health Care, table 3"),
    ("air-in-line", "a-patient", "a-follow", "Queen's University School of Nursing, air embolism: the patient first"),
    ("air-in-line", "a-clamp", "a-off", "Queen's University School of Nursing, air embolism: clamp"),
    ("air-in-line", "a-off", "a-prime", "common practice, no source"),
    ("air-in-line", "a-no-air", "a-connect", f"{PRIMING}, before connecting"),
    ("other-alarms", "m-read", "m-now-patient", "common practice, no source"),
    ("other-alarms", "m-now-patient", "m-which", "Queen's University School of Nursing: the patient first"),
    ("other-alarms", "m-clamp", "m-unlatch", "Changing IV solution container and set: clamp, then remove"),
    ("other-alarms", "m-no-air", "m-start", f"{PRIMING}, before connecting"),
    ("occlusion", "o-clamp", "o-off", "common practice, no source: clamp, then disconnect"),
    ("occlusion", "o-off", "o-relieve", f"{ALARMS}: relieve pressure away from the patient first"),
    ("occlusion", "o-relieve", "o-connect", f"{ALARMS}: relieve pressure away from the patient first"),
    ("site-gone-bad", "x-stop", "x-what", INFILTRATION),
    ("site-gone-bad", "x-drug", "x-remove", "the same, extravasation: the catheter is needed first"),
    ("site-gone-bad", "x-remove", "x-raise", INFILTRATION),
    ("discontinue", "d-clamp", "d-hands-again", f"{DISCONTINUING}, steps 4 and 5"),
    ("discontinue", "d-hands-again", "d-dressing", f"{DISCONTINUING}, steps 5 and 6"),
    ("discontinue", "d-dressing", "d-gauze", f"{DISCONTINUING}, steps 6 and 7"),
    ("discontinue", "d-gauze", "d-remove", f"{DISCONTINUING}, step 7"),
    ("discontinue", "d-cover", "d-last-rub", f"{DISCONTINUING}, steps 11 and 12"),
    ("discontinue", "d-remove", "d-press", f"{DISCONTINUING}, steps 7 and 8"),
    ("discontinue", "d-press", "d-whole", f"{DISCONTINUING}, steps 8 and 9"),
    ("discontinue", "d-whole", "d-bleeding", f"{DISCONTINUING}, steps 9 and 10"),
    ("discontinue", "d-bleeding", "d-cover", f"{DISCONTINUING}, steps 10 and 11"),
    ("hourly-round", "r-hand-rub", "r-identify", FIVE_MOMENTS),
    ("hourly-round", "r-patient", "r-fluid", "common practice, no source"),
    ("hand-over", "h-identify", "h-situation", "Communication using ISBAR for clinical handover: identify, situation"),
    ("hand-over", "h-situation", "h-background", "the same: situation, background"),
    ("hand-over", "h-background", "h-assessment", "the same: background, assessment"),
    ("hand-over", "h-assessment", "h-due", "the same: assessment, recommendations"),
    ("hand-over", "h-due", "h-read-back", "Pennsylvania Patient Safety Authority 2006: said, then read back"),
    ("rate-change", "c-bed-identify", "c-rate", "Open RN Nursing Skills, section 23.6: step 8 before step 9"),
    ("rate-change", "c-now-patient", "c-rate", "common practice, no source"),
    ("rate-change", "c-before", "c-rate", "common practice, no source"),
    ("infusion-to-lock", "v-order", "v-identify", f"{TO_LOCK}, steps 1 and 3"),
    ("infusion-to-lock", "v-identify", "v-hands-again", f"{TO_LOCK}, steps 3 and 4"),
    ("infusion-to-lock", "v-hands-again", "v-stop", f"{TO_LOCK}, steps 4 and 5"),
    ("infusion-to-lock", "v-stop", "v-join-hub-scrub", f"{TO_LOCK}, steps 5 and 6"),
    ("infusion-to-lock", "v-join-hub-dry", "v-off", f"{TO_LOCK}, steps 6 and 7"),
    ("infusion-to-lock", "v-off", "v-hub-scrub", f"{TO_LOCK}, steps 7 and 8"),
    ("infusion-to-lock", "v-hub-dry", "v-flush", f"{TO_LOCK}, steps 8 and 9"),
    ("push-through-lock", "i-chart-allergies", "i-vial-drug", f"{BY_HAND}: record, then drug"),
    ("push-through-lock", "i-vial-label", "i-bed-identify", f"{BY_HAND}: drug, then patient"),
    ("push-through-lock", "i-vein-flush", "i-give", "East Carolina University, IV push, steps 6 and 8"),
    ("push-through-lock", "i-unclamp", "i-give", "common practice, no source"),
    ("push-through-lock", "i-flush-air", "i-flush-on", "BCcampus and TRU, section 8.7, opening paragraph"),
    ("push-through-lock", "i-after-dry", "i-flush-after", "East Carolina University, IV push, steps 9 and 10"),
    ("push-through-lock", "i-flush-after", "i-then-watch", "East Carolina University, IV push, steps 10 and 12"),
    ("set-change", "n-line-no-air", "n-stop", f"{NEW_TUBING}, step 11, then 12"),
    ("set-change", "n-roller", "n-out", "Changing IV solution container and administration set: clamp, then remove"),
    ("set-change", "n-clamp", "n-off", f"{TO_LOCK}, steps 5 and 7: clamp, then disconnect"),
    ("set-change", "n-line-clamp", "n-line-spike", f"{PRIMING}, steps 6 and 8"),
    ("set-change", "n-line-chamber", "n-line-prime", f"{PRIMING}, steps 10 and 11"),
    ("set-change", "n-off", "n-hub-scrub", "BCcampus, section 8.6, checklist 71, steps 7 and 8"),
    ("set-change", "n-hub-dry", "n-connect", DRYING),
    ("next-piggyback", "e-empty", "e-spike", "common practice, no source"),
    ("next-piggyback", "e-chart-allergies", "e-bag-drug", "Open RN Nursing Skills, section 23.6, step 3"),
    ("next-piggyback", "e-table-pair", "e-spike", "Open RN Nursing Skills, section 23.6, step 4"),
    ("next-piggyback", "e-open", "e-start", "Trbovich et al. 2010, Quality and Safety in Health Care, table 3"),
    ("potassium", "q-calculated", "q-second", ALONE),
    ("potassium", "q-second", "q-rate", ALONE),
    ("potassium", "q-witness", "q-connect", "common practice, no source"),
    ("potassium", "q-hub-dry", "q-connect", DRYING),
    ("potassium", "q-open", "q-start", "Trbovich et al. 2010, Quality and Safety in Health Care, table 3"),
    ("push-into-line", "j-table-pair", "j-vial-drug", f"{BY_HAND}: compatibility, then patient"),
    ("push-into-line", "j-air", "j-flush-on", "BCcampus and TRU, section 8.7, opening paragraph: air out first"),
    ("push-into-line", "j-pinch", "j-vein", "East Carolina University, IV push, step 6"),
    ("push-into-line", "j-blood", "j-vein", "Infusion Nursing Standards of Practice (2000), as reported"),
    ("push-into-line", "j-vein", "j-give", "East Carolina University, IV push, steps 6 and 8"),
    ("push-into-line", "j-flush-after", "j-start", "East Carolina University, IV push, step 10"),
    ("syringe-pump", "y-no-air", "y-connect", f"{PRIMING}, before connecting"),
    ("syringe-pump", "y-size", "y-rate", "common practice, no source"),
    ("syringe-pump", "y-vein-hub-dry", "y-vein-flush", DRYING),
    ("library-alert", "z-wait", "z-entry", "common practice, no source"),
    ("library-alert", "z-ask", "z-reason", "common practice, no source"),
    ("library-alert", "z-guide-limits", "z-rate", "Institute for Safe Medication Practices (2020), clinical workflow"),
    ("heparin", "u-result", "u-way", "American Family Physician 2004, weight-based heparin table: result, then row"),
    ("heparin", "u-calculated", "u-second", ALONE),
    ("heparin", "u-second", "u-rate", ALONE),
    ("heparin", "u-bleeding", "u-rate", "common practice, no source"),
    ("heparin", "u-before", "u-pause", "common practice, no source"),
    ("heparin", "u-pause", "u-calculated", "common practice, no source: what is to be held is held first"),
    ("infusion-to-lock", "v-lock", "v-syringe-off", "BCcampus, section 8.5, checklist 69: clamp, then syringe"),
]


@pytest.mark.parametrize(("name", "earlier", "later", "source"), ORDER_OF_STEPS)
def test_steps_come_in_the_published_order(name: str, earlier: str, later: str, source: str) -> None:
    """What the source puts first comes first."""
    assert place(name, earlier) < place(name, later), source


WAITS = [
    # last part of the id, shortest and longest published time in s, source
    ("hand-rub", 20, 30, "WHO Guidelines on Hand Hygiene (2009), hand-rub technique (from memory)"),
    ("hands-again", 20, 30, "WHO Guidelines on Hand Hygiene (2009), hand-rub technique (from memory)"),
    ("last-rub", 20, 30, "WHO Guidelines on Hand Hygiene (2009), hand-rub technique (from memory)"),
    ("end-rub", 20, 30, "WHO Guidelines on Hand Hygiene (2009), hand-rub technique (from memory)"),
    ("scrub", 10, 15, "Smith et al. 2012, Journal of the Association for Vascular Access 17(3):137-143"),
    ("dry", 5, 30, "Antimicrobial Resistance and Infection Control 2018; Slater et al. 2018: from 5 s up"),
    ("press", 120, 180, f"{DISCONTINUING}, step 8: 2 to 3 minutes"),
    ("press-longer", 300, 600, f"{DISCONTINUING}, step 8: 5 to 10 minutes with anticoagulants"),
]


@EACH
def test_timed_waits_are_as_long_as_published(name: str) -> None:
    """Every wait of the library has its published time, and the line says it."""
    for step in checklist(name).steps:
        if not isinstance(step.expect, WaitAsked):
            continue
        found = [row for row in WAITS if step.id.endswith(row[0])]
        assert len(found) == 1, step.id
        _, shortest, longest, source = found[0]
        assert shortest <= step.expect.seconds <= longest, (step.id, source)
        said = re.search(r"(\d+) (seconds|minutes)", step.say)
        assert said, step.id
        assert int(said[1]) * (60 if said[2] == "minutes" else 1) == step.expect.seconds


@EACH
def test_what_runs_starts_behind_a_gate(name: str) -> None:
    """Nothing is started but at or behind a gate, which waits for every critical step before it."""
    starts = [step for step in checklist(name).steps if step.id.endswith("-start")]
    gates = [step.id for step in checklist(name).steps if step.gate]
    for start in starts:
        assert any(place(name, gate) <= place(name, start.id) for gate in gates), start.id


@EACH
def test_lines_are_short_and_ask_for_what_they_expect(name: str) -> None:
    """Less than 20 words; a question where an answer is wanted, something to do where done is wanted; help for each."""
    for step in checklist(name).steps:
        assert len(step.say.split()) < 20, step.id
        assert step.say.endswith((".", "?")), step.id
        assert step.more, step.id
        assert step.hint, step.id
        match step.expect:
            case (
                QuestionAsked() | NumberAsked() | NameAsked() | ChoiceAsked() | ObservationAsked() | DoubleCheckAsked()
            ):
                assert step.say.endswith("?"), step.id
            case DoneAsked() | WaitAsked() | NoteAsked():
                assert "?" not in step.say, step.id
        if not isinstance(step.expect, ChoiceAsked | NoteAsked):
            assert step.if_wrong, step.id


@EACH
def test_critical_steps_say_why_and_where_that_is_published(name: str) -> None:
    """Reason and source on every critical step; a source names a place in it, or says that there is none."""
    for step in checklist(name).steps:
        assert step.sources, step.id
        assert step.why or not step.critical, step.id
        for source in step.sources:
            title, _, locator = source.partition(", ")
            assert (title and locator) or source.startswith("Secondary page"), source


NO_WORK = ("common practice, no source", "Secondary page")


@pytest.mark.parametrize("name", available())
def test_every_source_names_a_listed_work(name: str) -> None:
    """Each source begins with the title of a work whose year, address and reading are listed, or says it has none."""
    for step in checklist(name).steps:
        for source in step.sources:
            assert work_of(source) or source.startswith(NO_WORK), (step.id, source)
            work = work_of(source)
            if work and work.read == "from memory":
                assert "from memory" in source, (step.id, source)


def test_no_work_is_listed_for_nothing() -> None:
    """Each is named by some line of the library, or by a table beside it."""
    texts = " ".join(
        path.read_text(encoding="utf-8") for path in library_folder().rglob("*.toml") if path.stem != "works"
    )
    assert [work.title for work in works() if work.title not in texts] == []
    titles = [work.title for work in works()]
    assert sorted(set(titles)) == sorted(titles), "a work is listed twice"


SPEAKABLE = re.compile(r"[A-Za-z \u2019',.;:?!()-]+")


@EACH
def test_every_line_can_be_spoken(name: str) -> None:
    """Turned into speech, no figure, sign or abbreviation is left in any line."""
    for step in checklist(name).steps:
        for line in filter(None, (step.say, step.more, step.hint, *step.stronger, step.why, step.if_wrong)):
            assert SPEAKABLE.fullmatch(speech(line)), (step.id, speech(line))
            assert not re.search(r"\b[A-Z]{2,}\b", speech(line)), speech(line)


@EACH
def test_no_line_holds_an_answer_of_its_order(name: str) -> None:
    """No cue gives the number away, and no line names the ordered fluid or drug, unless it names all that there are."""
    for entry in key(checklist(name).order).values():
        for step in checklist(name).steps:
            lines = " ".join((step.say, step.more, step.hint, *step.stronger, step.if_wrong))
            if isinstance(entry.value, str):
                if entry.value != "0.9 % sodium chloride":  # what every flush is filled with
                    of_all = entry.choices and all(choice in lines for choice in entry.choices)
                    assert entry.value not in lines or of_all, (step.id, entry)
            elif checklist(name).number_asked(step) is not None:
                assert not re.search(rf"(?<![\d.,]){entry.value:,f}(?![\d.,])", lines), (step.id, entry)


@EACH
def test_every_number_can_be_said_at_its_step(name: str) -> None:
    """The right number of the checklist's own order, said with its unit, is taken at the step that asks for it."""
    for step in checklist(name).steps:
        asked = checklist(name).number_asked(step)
        if asked is None or asked.key not in key(checklist(name).order):  # asked of some orders only
            continue
        value = key(checklist(name).order)[asked.key].value
        assert isinstance(value, Decimal)
        heard = interpret(say_amount(value, asked.unit), NumberExpected(asked.unit))
        assert isinstance(heard, Answer), (step.id, heard)
        assert (heard.value, heard.unit) == (value, asked.unit)


EVERY = pytest.mark.parametrize("name", available())


@EVERY
def test_every_authored_word_is_understood_at_its_step(name: str) -> None:
    """What an author wrote as good or bad words, or as ways to say a choice, means just that where it is said."""
    for step in checklist(name).steps:
        match step.expect:
            case ChoiceAsked(choices=choices, phrases=phrases):
                expect = ChoiceExpected(choices, tuple((way, one) for one, ways in phrases.items() for way in ways))
                for way, choice in expect.sayings():
                    assert interpret(way, expect) == Answer(Kind.CHOICE, choice), (step.id, way)
            case (
                DoneAsked(good=good, bad=bad, bare=bare)
                | WaitAsked(good=good, bad=bad, bare=bare)
                | QuestionAsked(good=good, bad=bad, bare=bare)
            ):
                done = not isinstance(step.expect, QuestionAsked)
                asked = ConfirmExpected(done_is_yes=done, asked=asked_of(step), bare=bare)
                closes = {Answer(Kind.DONE, "done"), Answer(Kind.CONFIRM, "yes")}
                assert [way for way in good if interpret(way, asked) not in closes] == [], step.id
                assert [way for way in bad if interpret(way, asked) != Answer(Kind.CONFIRM, "no")] == [], step.id


@EVERY
def test_critical_questions_have_words_of_their_own(name: str) -> None:
    """Each has words for what is found, good and bad: a yes alone says nothing about what was seen."""
    for step in checklist(name).steps:
        if step.critical and isinstance(step.expect, QuestionAsked):
            assert step.expect.good, step.id
            assert step.expect.bad, step.id


CONTENT_WANTED = re.compile(
    r"\b(?:close|open)\b[^.]*\bclamp|^start the|date of birth|see blood return|\bpatent\b|found all the air",
    re.IGNORECASE,
)
"""Where a bare yes or done is not enough: clamps, start, identity, patency, air (common practice, no source)."""


@EVERY
def test_a_bare_yes_is_not_enough_where_it_would_be_dangerous(name: str) -> None:
    """Clamps, the start, identity, patency, air and every gate are answered in content words."""
    met = 0
    for step in checklist(name).steps:
        if not (step.critical and (step.gate or CONTENT_WANTED.search(step.say))):
            continue
        met += 1
        match step.expect:
            case DoneAsked(bare=bare) | QuestionAsked(bare=bare):
                assert not bare, step.id
            case _:
                assert isinstance(step.expect, ChoiceAsked | NumberAsked), step.id
    assert met


WORKED = [
    # order, name in the key, value, worked by hand
    ("oh-107", "primary.vtbi", "950", "1,000 - 50"),
    ("oh-108", "primary.rate", "125", "500 / 4"),
    ("oh-110", "gravity.drops_per_minute", "31", "1,000 x 15 / 480 = 31.25"),
    ("oh-111", "gravity.drops_per_minute", "50", "250 x 60 / 300"),
    ("oh-113", "secondary.rate", "100", "50 / 0.5"),
    ("oh-115", "dose.concentration", "1.6", "400 / 250"),
    ("oh-115", "dose.rate", "13.5", "5 x 72 x 60 / 1,000 / 1.6"),
    ("oh-116", "dose.rate", "9.8", "4 x 65 x 60 / 1,000 / 1.6 = 9.75, half up"),
    ("oh-117", "second_secondary.rate", "150", "50 x 60 / 20"),
    ("oh-118", "running.infused", "300", "100 x 3"),
    ("oh-118", "running.remaining", "650", "950 - 300"),
    ("oh-131", "change.by", "50", "125 - 75"),
    ("oh-136", "push.to_draw", "3", "15 / (100 / 20)"),
    ("oh-136", "push.per_minute", "1.5", "3 / 2"),
    ("oh-138", "primary.vtbi", "950", "1,000 - 50"),
    ("oh-140", "secondary.rate", "100", "50 / 0.5"),
    ("oh-142", "secondary.rate", "200", "250 x 60 / 75"),
    ("oh-144", "push.to_draw", "1", "5 / (10 / 2)"),
    ("oh-146", "secondary.rate", "100", "50 / 0.5"),
    ("oh-150", "protocol.rate", "13.5", "(16 + 2) x 75 / 100"),
    ("oh-151", "protocol.rate", "7.8", "(16 - 3) x 60 / 100"),
    ("oh-134", "running.infused", "400", "100 x 4"),
    ("oh-133", "change.by", "70", "150 - 80"),
]


@pytest.mark.parametrize(("order", "name", "value", "by_hand"), WORKED)
def test_keys_are_what_is_worked_by_hand(order: str, name: str, value: str, by_hand: str) -> None:
    """The orders' answers, checked without the program."""
    assert key(order)[name].value == Decimal(value), by_hand


FAULTY = [
    # order, what the label says that the order does not, what the teaching line must tell the instructor
    ("oh-109", "primary.fluid", "0.9 % sodium chloride"),
    ("oh-111", "primary.bag_volume", "four times"),
    ("oh-116", "dose.drug", "dobutamine"),
    ("oh-119", "primary.fluid", "5 % dextrose"),
]


@pytest.mark.parametrize(("order", "name", "teaching"), FAULTY)
def test_a_planted_fault_shows_on_the_label_only(order: str, name: str, teaching: str) -> None:
    """The label differs from the order, the instructor is told, and neither title nor order gives it away."""
    given = load_order(order)
    label = given.labels()[name]
    assert label != key(order)[name].value
    assert teaching in given.teaching
    assert "wrong" not in given.title.lower()
    assert not isinstance(label, str) or label not in given.sentence()
