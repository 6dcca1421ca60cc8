"""Every sentence with something in it, in English: ``python -m tests.spoken.written`` writes them down anew.

``written.txt`` is there to be read by whoever changes a sentence or writes them for a further language: each with
plain values in it, with one and with several, with and without what may be missing. Fixed sentences stand in the
classes themselves.
"""

from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from assistant.dosing import Amount, CannotCheck, Disagrees, Match, Slip
from assistant.spoken.english.report_words import ReportWords
from assistant.spoken.english.result_words import ResultWords
from assistant.spoken.english.sentences import Sentences
from assistant.spoken.meaning import Reason, Trouble

WRITTEN = Path(__file__).with_suffix(".txt")
RATE, RIGHT = Amount(Decimal(833), "mL/h"), Amount(Decimal("83.3"), "mL/h")


def wrong(slip: Slip, factor: Fraction | None = None, **more: object) -> Disagrees:
    """A number that is not the right one, by a kind of slip."""
    return Disagrees(RATE, RIGHT, Match(slip, factor=factor, **more))  # type: ignore[arg-type]


OTHER_UNIT = Disagrees(Amount(Decimal(1), "L"), Amount(Decimal(100), "mL"), Match(Slip.TENFOLD, Fraction(10)))
MULTIPLES = (*(Fraction(n) for n in (10, 100, 1000, 60, 24)), *(Fraction(1, n) for n in (10, 100, 1000, 60, 24)))
VERDICTS = (
    Disagrees(RATE, None, Match(Slip.OTHER)),
    wrong(Slip.OTHER),
    wrong(Slip.SWAPPED, other="primary.vtbi"),
    wrong(Slip.SWAPPED, other="primary.bag_volume"),
    wrong(Slip.SWAPPED, other="weight"),
    wrong(Slip.TEEN_TY),
    wrong(Slip.TRANSPOSED),
    wrong(Slip.TIME_UNIT, Fraction(60), exact=True),
    wrong(Slip.TIME_UNIT, Fraction(1, 60), exact=False),
    wrong(Slip.DECIMAL_POINT),
    OTHER_UNIT,
    *(wrong(Slip.TENFOLD, factor) for factor in MULTIPLES),
)
SAID: dict[str, tuple[tuple[object, ...], ...]] = {
    "refusal": tuple((reason,) for reason in Reason),
    "begins": (("A line", "Set it up."),),
    "which_is_it": (("closed", "still open"), ("", "")),
    "answer_read_back": (("closed",),),
    "heard_which": (("closed", "Closed, or still open?"),),
    "trouble": tuple((kind,) for kind in Trouble),
    "given": (("yes",), ("left arm",)),
    "hurried": ((1, 1), (1, 9), (3, 9)),
    "unit_needed": (("mL/h",),),
    "which_number": ((("10.5", "1,050"),),),
    "which_digits": (("one five", "five zero"),),
    "disagrees": (("It is wrong.",),),
    "wrong_name": (("saline",),),
    "name_agrees": (("saline",),),
    "explained": tuple((verdict,) for verdict in VERDICTS),
    "not_needed": tuple((verdict,) for verdict in VERDICTS[:2]),
    "different_things": ((CannotCheck(Amount(Decimal(5), "mL"), RIGHT),),),
    "working": ((("1 + 1 = 2.", "2 + 2 = 4"),),),
    "not_right": (("Look again.",), ("",)),
    "question_again": (("Is it dry?",),),
    "gate_holds": ((1,), (2,)),
    "still_open": ((1,), (2,)),
    "wait_begins": ((15,),),
    "wait_left": ((1,), (2,)),
    "reason_read_back": (("It fits.",), ("It fits",)),
    "note_read_back": (("All well.",), ("All well",)),
    "choices_are": ((("left", "right"),), (("left", "right", "neither"),)),
    "chosen": (("left arm",),),
    "number_read_back": (("fifteen", "one five", "mils"), ("fifteen", "", "mils")),
    "name_read_back": (("saline",),),
    "not_applicable": ((),),
    "where": ((3, 9, "Set", 0), (3, 9, "Set", 1), (3, 9, "Set", 2)),
    "reminder": (("Look.",),),
    "voice_lost": (("It is gone.",),),
    "spelled": (("sodium chloride",),),
    "summary": ((3, 4),),
    "failed_step": (("left out", "Look."),),
    "not_reached": ((1,), (2,)),
    "held_too_often": ((1, 0), (2, 1)),
    "cued_too_often": ((1, 0), (2, 1)),
    "too_few_unaided": ((Decimal(75), Decimal(80)),),
    "within": (("950 mL", "5 mL"),),
    "between": (("5 mL", "20 mL"), ("5 mL", ""), ("", "20 mL")),
    "not_so_answered": (("sore", ("sore",)), ("sore", ("sore", "warm"))),
    "not_so_ordered": (
        *(("rate", *bounds) for bounds in (("a", "", ""), ("", "5", ""), ("", "", "9"), ("", "5", "9"))),
        ("rate", "a", "5", "9"),
    ),
    "practise": ((("Look.",),), (("Look.", "Set."),)),
    "ending": (("left out",), ("new",)),
    "number_verdict": (("not given",), ("left out",), ("new",)),
    "mode": (("practice",), ("new",)),
    "slips": ((("tenfold", "new"),),),
    "cue": (("help", 1), ("help", 2), ("new", 1)),
    "recorded": (("time_is_up",),),
    "result": (("passed", "check-off"), ("passed", "practice")),
    "result_with_reason": (("not passed", "check-off", "step 3 wrong", "Too few."),),
    "outcome_heading": (("passed", "check-off"), ("passed", "practice"), ("not passed", "practice")),
    "headline": (("Not passed", "step 3 wrong"), ("Passed", "")),
    "found_at_step": ((3,), (0,)),
    "missed_at_step": ((3,), (0,)),
    "slip_at_step": ((("tenfold",), 3), (("teen-ty", "other"), 0)),
    "ended_at_step": (("left out", 3), ("wrong", 0)),
    "strip": (("Set up", 9, 9, ()), ("", 7, 9, ((3, "wrong"), (4, "done after a cue")))),
    "running_head": (("A line", "L-1", "6 May 2031, 09:00 UTC"),),
    "share_unaided": ((3, 4, 75),),
    "and_more": ((8,),),
    "noted": (("Step 3", "Asked well."), ("", "Came late.")),
    "first_then": (("15", "50"), ("15", "")),
    "slips_made": ((("teen-ty", "other"),),),
    "help_given": ((("asked for help", "asked for more"),),),
    "reason": (("it fits",),),
    "step_detail": tuple(
        (field, "2")
        for field in ("wrong", "taken_back", "seen_by", "corrections", "expired", "out_of_order", "reason", "new_field")
    ),
    "times": ((1,), (2,)),
    "too_high": (("5 mL",),),
    "too_low": (("5 mL",),),
    "number_given": ((3, "5 mL", "not given"), (3, "", "left out")),
    "by_the_order": (("5 mL",),),
    "first_answer": (("5 mL", "1 mL too high"), ("5 mL", "")),
    "first_answer_off": (("1 mL too high",),),
    "critical_unaided": ((1, 1), (2, 2), (3, 3), (1, 3), (2, 3)),
    "right_first_time": ((1, 1), (2, 2), (3, 3), (1, 3), (2, 3)),
    "own_correction": ((3,),),
    "step_quoted": ((3, "Look."), (0, "Look.")),
    "practise_ending": (("Step 3", "left out"),),
    "practise_slip": (("Step 3", "15", "50", "teen-ty"), ("Step 3", "15", "", "new")),
    "practise_help": (("Step 3", ("help", "more")),),
    "practise_answer": (("Step 3", "15", "50"),),
    "form_title": (("A line",),),
    "review_title": (("A line",),),
    "review_use": ((40, 13, 0), (40, 13, 2)),
    "work": ((2014, "https://nursing.example", "as published"), (None, "", "from memory")),
    "form_use": ((1, 1), (9, 4)),
    "form_rule": ((0, 2, 80), (1, 0, 90)),
    "timed": ((15,),),
    "steps": ((1,), (2,)),
    "at_most": ((0,), (1,)),
    "caution": (("Look.",),),
    "head": (("abc",),),
    "problem": (("edited",), ("new",)),
    "found": (("It is so.",),),
    "sound_broken": ((3, "sound missing", "It is gone."),),
    "codes_refused": ((3,), (711,)),
    "counts_not": (("It is so.",),),
    "unknown_key": (("It is abc.",),),
    "damaged": ((3, "edited", "It is so.", 1), (None, "tail missing", "It is so.", 2)),
    "papers_missing": (("They are gone.",),),
    "simulated": (("seed 3",),),
    "record_damaged": ((1,), (2,)),
    "record_open": ((1,), (1234,)),
    "record_whole": ((1,), (1234,)),
    "record_whole_but": ((12,),),
    "entries": ((1,), (1234,)),
    "number": ((1234567,),),
    "signed_off": (("passed", "by X"), ("not-passed", "by X"), ("new", "by X")),
    "withdrawn": (("by X",),),
    "signed_by": (("X", "1 May", "abc"), ("", "1 May", "")),
    "rated": tuple((level,) for level in ("independent", "supervised", "assisted", "marginal", "dependent", "new")),
    "because": (("it fits",),),
    "overruled": (("X", "wrong", "I saw it"),),
    "signed_entry": ((7, "1 May", "signed off", "passed", "X"), (7, "1 May", "correction", "", "")),
    "signed_with": (("abc",), ("",)),
    "taken_as": (("5 mL",),),
    "not_taken": (("too_long",),),
    "could_be": (("10.5 or 1050", "mL"), ("10.5 or 1050", "")),
    "of_step": (("look",),),
    "seal_over": (("9",),),
    "also_heard": (("fifty",),),
    "field": (("clock_behind_s", "3"),),
    "page_title": (("passed", "practice", "A line", "L-1"),),
    "document_title": (("stopped", "check-off", "A line"),),
    "attempt_line": (("A line", "L-1", "check-off", "1 May"),),
    "when": tuple((datetime(2031, month, 7, 8, 9, 5, tzinfo=UTC),) for month in range(1, 13)),
    "time_at_work": (("3 min",),),
    "resumptions": ((1,), (2,)),
    "answers_by": ((3, 4, 0), (30, 4, 1), (12, 4, 5)),
    "checklist_named": (("line", "1"), ("line", "")),
    "recogniser_named": (("ear", "abc"), ("ear", "abc def")),
    "rule": (("practice", 0, 0, 80), ("check-off", 0, 2, 80)),
    "why_it_matters": (("It is so.",),),
    "hourly": ((("83.3", "105.5", "0"),),),
    "first_secondary_at": ((1,), (2,)),
    "dose": (("cefazolin", 2),),
    "checklist_about": (("1",),),
    "order_named": (("D7-01",),),
    "sheets_title": (("Labels", "D7-01 to D7-40"),),
    "from_to": (("D7-01", "D7-40"),),
    "held_in": (("1 g", "50 mL"),),
    "from_a_bag": (("500 mL", "1 L"),),
    "with_a_set": (("20 gtt/mL",),),
    "at_rate": (("5 mcg/kg/min",),),
    "kept_back": (("50 mL",),),
    "running_for": (("2 h",),),
    "in_a_syringe": (("50 mL",),),
    "from_a_vial": (("40 mg in 4 mL",),),
    "in_time": (("2 min",),),
    "running_at": (("75 mL/h",),),
    "use_by": (("1 May 2031",),),
    "band_says": (("A B", "1 May 1981", "L-1", "latex"),),
    "pump_takes": (("nearest tenth, half up",),),
    "fault_number": ((3,),),
    "as_found": (("red and swollen",),),
    "evidence": (("worked out",), ("seen by the instructor",), ("the learner's word",), ("",), ("new",)),
    "fate": (("missed", "Step 3"), ("not found", ""), ("new", "")),
    "laid_out": (
        ("The bag leaks.", "found, and put right", ("Step 3", "Step 4"), "Step 3", "From the bag: germs."),
        ("The bag leaks.", "not found", ("Step 3",), "", "From the bag: germs."),
        ("The bag leaks.", "no step asks for it", (), "", "From the bag: germs."),
    ),
    "would_reach": (("Another drug.",),),
    "not_laid_out": (("Step 3", "no"), ("Step 3", "leaking")),
    "to_see": ((("Spike the bag.", "Scrub the hub."),), ((),)),
    "marked_seen": ((("Spike the bag.",),),),
    "missed": (("The bag leaks.",),),
    "left_as_it_was": (("The bag leaks.",),),
    "to_be_judged": (("The bag leaks.",),),
    "found_and_not_laid_out": ((1,), (2,)),
    "short_head": (("123 456",),),
    "not_as_last_seen": (("older than last seen here", "3 entries are missing."),),
    "last_seen": (("as last seen here", ""), ("never seen here", "The book is new.")),
    "result_denied": (("Entry 3 differs.",),),
    "lived_again": (("same", ""), ("could not be lived again", "The papers have changed.")),
}
"""Values for each sentence, by its name."""
WITH_NAMES: dict[str, tuple[dict[str, object], ...]] = {
    "step_line": tuple({"number": 3, "count": 9, "line": "Look.", "critical": critical} for critical in (True, False)),
    "check_off_begins": tuple({"more_counts": counts} for counts in (False, True)),
    "ended": (
        *({"outcome": outcome, "practice": True} for outcome in ("passed", "not passed", "stopped for cause")),
        *({"outcome": outcome, "practice": False} for outcome in ("passed", "not passed", "complete by own report")),
    ),
    "found_at": tuple({"step": "Look.", "kind": "a leak", "said": said} for said in ("it leaks", "")),
    "torn": tuple({"why": "It is so.", "sealed": sealed} for sealed in (True, False)),
    "not_so_in_lab": tuple({"trait": "own clamp", "present": present} for present in (True, False)),
    "ordered": tuple({"name": "primary.rate", "present": present} for present in (True, False)),
}
"""Those that take something by its name."""
PASSED_ON = {"working": "report words hand the lines on as they are"}


def sentences_of(words: object) -> Iterator[tuple[str, Callable[..., object]]]:
    """The methods of a class of words."""
    for name in dir(words):
        if not name.startswith("_") and callable(method := getattr(words, name)):
            yield name, method


def written() -> str:
    """Every sentence on a line, in the order of their names; where a class has its own, its name stands before."""
    lines: dict[str, None] = {}
    for words in (Sentences(), ResultWords(), ReportWords()):
        for name, method in sentences_of(words):
            if name in PASSED_ON and not isinstance(words, Sentences):
                continue
            if isinstance(words, ReportWords) and name not in SAID and name not in WITH_NAMES:
                raise KeyError(name)
            calls = [method(*given) for given in SAID.get(name, ())] + [method(**g) for g in WITH_NAMES.get(name, ())]
            lines |= {f"{name}: {said}": None for said in calls}
    return "\n".join(sorted(lines, key=lambda line: (line.partition(":")[0], list(lines).index(line)))) + "\n"


if __name__ == "__main__":
    WRITTEN.write_text(written(), encoding="utf-8")
