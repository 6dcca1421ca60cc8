"""What lint says about orders: every rule with a broken file and with a good one beside it."""

import json
from pathlib import Path

import pytest

from assistant.checklist.finding import Finding, Severity
from assistant.cli.main import main
from assistant.orders.checked import findings_of_order
from assistant.orders.lint import ORDER_RULES
from assistant.orders.load import available_orders
from tests.orders.papers import GOOD, written

TOLD = GOOD.replace('code = "T-1"', 'code = "T-1"\nteaching = "Plain."\nsources = ["common practice, no source"]')
CEFAZOLIN = TOLD.replace("famotidine", "cefazolin").replace('"20 mg"', '"1 g"').replace('"20 min"', '"30 min"')
ON_PURPOSE = '[laid_out]\non_purpose = ["{}"]\n'
EVERY_12 = 'frequency = "every 12 hours"'
MISREAD = ("is misread as ten times as much", "Leave the trailing zero out.")
GIVEN = 'drug = "famotidine"\ndose = "20 mg"\nvolume = "50 mL"\nover = "20 min"'
SECOND = '[second_secondary]\ndrug = "{}"\ndose = "1 g"\nvolume = "50 mL"\nover = "30 min"\nfrequency = "once"'
NOTICED = 'Change the order, or write on_purpose = ["{}"] under [laid_out] if it is there to be noticed.'
LIMITS = NOTICED.format("limits")
OLDER = " is how earlier versions wrote it, and is still read."
AS_LISTED = "Write it as the list of names has it; a new name can still be used, and is heard less surely."
POLICY = "Source: policy of the Ostrey Harbour Teaching Lab (fictional)."
BROKEN = [
    # rule, severity, line, what is changed from, to, what is wrong, what to do
    (
        ("order-sayable", "error", 19, 'dose = "20 mg"', 'dose = "10.12345 mg"'),
        "secondary.dose is 10.12345 mg, which nobody can say: the order states it.",
        "Order a number with fewer digits.",
    ),
    (
        ("order-sayable", "warning", 13, '"1,000 mL"\nover = "12 h"', '"10 L"\nover = "48 h"'),
        "primary.bag_volume is 10,000 mL, more than the 9,999 that can be said.",
        "Order less, or choose a checklist that does not ask for it.",
    ),
    (
        ("order-steps", "error", 23, 'volume = "50 mL"\nover = "20 min"', 'volume = "0.3 mL"\nover = "6 h"'),
        "0.1 mL/h for 6 h give 0.6 mL, not the 0.3 mL of the order: rounding (nearest tenth, half up) moves the rate"
        " too far.",
        "Order another time or volume, or a finer rounding.",
    ),
    (
        ("order-usual", "warning", 19, 'volume = "50 mL"\nover = "20 min"', 'volume = "500 mL"\nover = "20 min"'),
        "secondary.rate is 1,500 mL/h. Infusion pumps take 0.1 to 999 mL/h as a rule (common practice, no source):"
        " look at the units and the dose.",
        "Order what can be given.",
    ),
    (
        ("order-names", "error", 13, 'fluid = "lactated Ringer\'s solution"', 'fluid = "D5W"'),
        "D5W is understood as 5 % dextrose in water, so nobody can read it from the label.",
        "Write 5 % dextrose in water, as the list of names has it.",
    ),
    (
        ("order-names", "error", 13, 'fluid = "lactated Ringer\'s solution"', 'fluid = "0.9% sodium chloride"'),
        "0.9% sodium chloride is understood as 0.9 % sodium chloride, so nobody can read it from the label.",
        "Write 0.9 % sodium chloride, as the list of names has it.",
    ),
    (
        (
            "order-usual",
            "warning",
            19,
            'over = "12 h"\nreserve = "50 mL"',
            'over = "48 h"\nreserve = "50 mL"\n\n[gravity]\ndrop_factor = "10 gtt/mL"',
        ),
        "gravity.drops_per_minute is 3 gtt/min. Rounding changes it by 13 %, more than 5 % (common practice, no"
        " source). Round to a finer place, or ask a pharmacist.",
        "Order what can be given.",
    ),
    (
        ("order-key", "error", 1, 'over = "20 min"', 'over = "999,999 h"'),
        "no answer key follows from the order: about 0.00005 mL/h rounds to zero by the rule nearest tenth, half up.",
        "Use a finer rounding rule or look at the inputs.",
    ),
    (
        ("order-limits", "warning", 19, 'over = "20 min"', 'over = "5 min"'),
        "The infusion time of 5 min for famotidine is below the limit of 15 min: it needs a reason."
        " Source: FDA label text, famotidine injection: premixed over 15 to 30 minutes.",
        LIMITS,
    ),
    (
        ("order-limits", "warning", 19, 'dose = "20 mg"', 'dose = "200 mg"'),
        "The dose of 200 mg for famotidine is above the limit of 20 mg: it needs a reason."
        " Source: FDA label text, famotidine injection: 20 mg every 12 hours.",
        LIMITS,
    ),
    (
        ("order-limits", "warning", 13, 'over = "12 h"', 'over = "2 h"'),
        "The rate of 500 mL/h for lactated Ringer's solution is above the limit of 250 mL/h: it needs a reason."
        f" {POLICY}",
        LIMITS,
    ),
    (
        ("order-limits", "error", 13, 'over = "12 h"', 'rate = "1,250 mL/h"'),
        "The rate of 1,250 mL/h for lactated Ringer's solution is above the limit of 999 mL/h: it is refused."
        f" {POLICY}",
        LIMITS,
    ),
    (
        ("order-limits", "error", 19, GIVEN, GIVEN.replace("famotidine", "vancomycin").replace("20 mg", "1 g")),
        "The infusion time of 20 min for vancomycin is below the limit of 60 min: it is refused. Source: FDA label"
        " text, vancomycin hydrochloride for injection, preparation and stability."
        " The concentration of 20 mg/mL for vancomycin is above the limit of 10 mg/mL: it is refused. Source: FDA label"
        " text, vancomycin, dosage: only where fluid is restricted (quoted second-hand)."
        " The dose rate of 50 mg/min for vancomycin is above the limit of 10 mg/min: it is refused. Source: FDA label"
        " text, vancomycin, dosage (quoted second-hand).",
        LIMITS,
    ),
    (
        (
            *("order-pair", "error", 19, GIVEN),
            GIVEN.replace("famotidine", "ceftriaxone").replace("20 mg", "1 g").replace("20 min", "30 min"),
        ),
        "Ceftriaxone and lactated Ringer's solution must not share a line."
        " Source: FDA label text, ceftriaxone for injection: calcium-containing solutions (from memory).",
        NOTICED.format("pair"),
    ),
    (
        ("order-drugs", "error", 25, EVERY_12, f"{EVERY_12}\n{SECOND.format('cefepime')}"),
        "Cefepime and famotidine must not follow each other through one set. Source: Handbook on Injectable Drugs,"
        " tables of what meets in a line (from memory).",
        NOTICED.format("drugs"),
    ),
    (
        ("order-drugs", "warning", 25, EVERY_12, f"{EVERY_12}\n{SECOND.format('ampicillin')}"),
        "whether ampicillin may follow famotidine through one set is not known here.",
        "Choose a pair that is listed, or ask the pharmacist.",
    ),
    *(
        (
            ("order-on-purpose", "error", 26, EVERY_12, f"{EVERY_12}\n{ON_PURPOSE.format(matter)}"),
            f"on_purpose says {matter}, but nothing of that kind is wrong in the order.",
            "Put the fault into the order, or take the word out.",
        )
        for matter in ("allergy", "limits", "pair", "drugs")
    ),
    *(
        (
            ("order-dates", "error", 26, EVERY_12, f"{EVERY_12}\n[laid_out.{part}]\nexpires = 2026-01-31\n"),
            "a label bears a date, but the order has none, so nobody can tell whether it has passed.",
            "Add written = 2026-11-25 (the day of the order), or take the date out.",
        )
        for part in ("primary", "secondary")
    ),
    (
        (
            *("order-dates", "error", 27, EVERY_12),
            f'{EVERY_12}\n[laid_out.primary]\nexpires = 2026-02-01\nstate = "expired"\n',
        ),
        "the bag is laid out as expired, but its date has not passed on the day of the order.",
        "Write a date before that day, or take the state out.",
    ),
    (
        ("order-older", "warning", 25, EVERY_12, f'{EVERY_12}\n[hung]\ndrug = "cefazolin"\n'),
        f"hung{OLDER}",
        "Write what the labels say as [laid_out.primary], [laid_out.secondary] or [laid_out.dose].",
    ),
    (
        (
            "order-older",
            "warning",
            4,
            'code = "T-1"',
            'code = "T-1"\nillegible = ["primary"]\nplanted = "illegible-rate"',
        ),
        f"planted{OLDER}",
        "Take it out: the faults follow from what is laid out; on_purpose tells of one in the order itself.",
    ),
    (
        ("order-rate", "error", 16, 'over = "12 h"', 'rate = "83.33 mL/h"'),
        "83.33 mL/h cannot be entered where the pump takes steps of 0.1 mL/h.",
        "Order a rate that the pump takes, or change rounding.",
    ),
    (
        ("order-rate", "error", 17, 'over = "12 h"', 'rate = "62.5 mL/h"'),
        "62.5 mL/h cannot be entered where the pump takes steps of 1 mL/h.",
        "Order a rate that the pump takes, or change rounding.",
    ),
    (
        ("order-rate", "error", 23, 'over = "20 min"', 'rate = "150.05 mL/h"'),
        "150.05 mL/h cannot be entered where the pump takes steps of 0.1 mL/h.",
        "Order a rate that the pump takes, or change rounding.",
    ),
    *(
        (
            ("order-names", "warning", line, old, new),
            f"{name} is not among the names that labels in the lab carry.",
            AS_LISTED,
        )
        for line, old, new, name in (
            (13, "lactated Ringer's solution", "green water", "green water"),
            (19, 'drug = "famotidine"', 'drug = "famotidin"', "famotidin"),
            (25, EVERY_12, f'{EVERY_12}\n[flush]\nvolume = "5 mL"\nfluid = "tea"', "tea"),
            (26, EVERY_12, f'{EVERY_12}\n[laid_out.primary]\nfluid = "tea"', "tea"),
            (26, EVERY_12, f'{EVERY_12}\n[laid_out.secondary]\ndrug = "famotidin"', "famotidin"),
            (28, EVERY_12, f'{EVERY_12}\n[flush]\nvolume = "5 mL"\n[laid_out.flush]\nfluid = "tea"', "tea"),
        )
    ),
    *(
        (("order-wording", "error", line, old, new), f'"{found}" {reason}.', mend)
        for line, old, new, found, reason, mend in (
            (24, "every 12 hours", "bid", "bid", "is no word that is heard", "Write it in words."),
            (1, '"A bag"', '"5.0 mg"', "5.0", *MISREAD),
            (5, "(fictional)", "5.0 (fictional)", "5.0", *MISREAD),
            (17, 'over = "12 h"', 'over = "12 h"\nroute = "5.0"', "5.0", *MISREAD),
            (27, EVERY_12, f'{EVERY_12}\n[flush]\nvolume = "5 mL"\nfrequency = "5.0"', "5.0", *MISREAD),
        )
    ),
    (
        ("order-teaching", "warning", 1, 'teaching = "Plain."\n', ""),
        "the order does not say what it teaches.",
        'Add teaching = "...".',
    ),
    (
        ("order-sources", "warning", 1, 'sources = ["common practice, no source"]\n', ""),
        "the order names no source for its dose, dilution and time.",
        'Add sources = ["..."]; "common practice, no source" where there is none.',
    ),
]


def found_in(folder: Path, text: str) -> list[tuple[str, str, int]]:
    """Rule, severity and line of every finding."""
    findings = findings_of_order(written(folder, text))
    assert findings is not None
    return [(one.rule, one.severity.value, one.line) for one in findings]


def test_a_good_order_has_no_finding(tmp_path: Path) -> None:
    """What is right is left in peace."""
    assert found_in(tmp_path, TOLD) == []
    assert found_in(tmp_path, CEFAZOLIN) == []


STRONG = 'over = "120 min"\nroute = "{}"'
"""How a gram of vancomycin in 50 mL is given, 20 mg/mL: FDA label text, vancomycin, dosage: by a peripheral line
at most 5 mg/mL, 10 mg/mL where fluid is restricted, and at most 10 mg/min (quoted second-hand)."""


@pytest.mark.parametrize(
    ("route", "held"), [("intravenous", True), ("peripheral", True), ("central", False), ("central line", False)]
)
def test_a_limit_for_a_peripheral_line_holds_for_no_central_one(tmp_path: Path, route: str, held: bool) -> None:
    """What is too strong for a peripheral vein is held there, and where no line is named; a central line takes it."""
    text = TOLD.replace("famotidine", "vancomycin").replace('"20 mg"', '"1 g"')
    found = found_in(tmp_path, text.replace('over = "20 min"', STRONG.format(route)))
    assert found == ([("order-limits", "error", 19)] if held else [])


@pytest.mark.parametrize(("fault", "what", "mend"), BROKEN)
def test_each_rule_finds_its_fault(tmp_path: Path, fault: tuple[str, str, int, str, str], what: str, mend: str) -> None:
    """The fault is named by its rule at its line, and nothing else is; what is wrong and what to do is said in full."""
    rule, severity, line, old, new = fault
    assert old in TOLD
    text = TOLD.replace(old, new, 1)
    if 'state = "expired"' in new:
        text = text.replace('title = "A bag"', 'written = 2026-02-01\ntitle = "A bag"')
    if "62.5" in new:
        text = text.replace('code = "T-1"', 'code = "T-1"\nrounding = "whole"')
    path = written(tmp_path, text)
    assert findings_of_order(path) == (Finding(path, line, rule, Severity(severity), what, mend),)


def test_every_rule_has_a_broken_file() -> None:
    """No rule is without a file that breaks it; the allergy has tests of its own."""
    assert {fault[0] for fault, *_ in BROKEN} | {"order-allergy"} == set(ORDER_RULES)


def test_an_allergy_is_found_unless_it_is_there_on_purpose(tmp_path: Path) -> None:
    """An allergy to the ordered drug's kind, or to the drug itself, in any letters; on purpose, it is right."""
    for allergy, known in (("Cephalosporins", "cephalosporins"), ("cefazolin", "cefazolin"), ("penicillin",) * 2):
        text = CEFAZOLIN.replace('["latex"]', f'["latex", "{allergy}"]')
        path = written(tmp_path, text)
        what = f"The patient's allergies name {known}, and cefazolin is ordered."
        mend = NOTICED.format("allergy")
        assert findings_of_order(path) == (Finding(path, 11, "order-allergy", Severity.ERROR, what, mend),)
        assert found_in(tmp_path, text + ON_PURPOSE.format("allergy")) == []


def test_what_is_there_on_purpose_is_no_finding(tmp_path: Path) -> None:
    """What on_purpose names is in the order, and then nothing is complained of; another matter still is."""
    pair = CEFAZOLIN.replace("cefazolin", "ceftriaxone")
    assert [one[:2] for one in found_in(tmp_path, pair)] == [("order-pair", "error")]
    assert found_in(tmp_path, pair + ON_PURPOSE.format("pair")) == []
    limits = [("order-on-purpose", "error"), ("order-pair", "error")]
    assert sorted(one[:2] for one in found_in(tmp_path, pair + ON_PURPOSE.format("limits"))) == limits


def test_what_is_laid_out_is_no_finding(tmp_path: Path) -> None:
    """A wrong label, a date that has passed, a leak, a site: they are the instructor's to lay out."""
    dated = TOLD.replace('code = "T-1"', 'code = "T-1"\nwritten = 2026-02-01')
    for laid_out in (
        '[laid_out.primary]\nfluid = "5 % dextrose in water"\n',
        "[laid_out.primary]\nexpires = 2026-01-31\n",
        '[laid_out.primary]\nexpires = 2026-01-31\nstate = "expired"\n',
        '[laid_out.secondary]\nstate = "leaking"\n',
        '[laid_out.found]\nsite = "red"\n',
    ):
        assert found_in(tmp_path, dated + laid_out) == []
    assert found_in(tmp_path, TOLD + '[laid_out.primary]\nexpires = 2026-01-31\nstate = "expired"\n') == []


def test_lines_of_an_older_file(tmp_path: Path) -> None:
    """What is wrong about a label is told at the line of the older file that says it."""
    text = f'{TOLD}[hung]\nfluid = "tea"\ndrug = "famotidin"\ndrug_expires = 2026-01-31\n'
    assert found_in(tmp_path, text) == [
        ("order-older", "warning", 25),
        ("order-names", "warning", 26),
        ("order-names", "warning", 27),
        ("order-dates", "error", 28),
    ]


def test_what_does_not_load_is_told_with_its_line(tmp_path: Path) -> None:
    """A file that keeps the order from loading is one finding."""
    assert found_in(tmp_path, TOLD.replace('over = "20 min"', 'over = "20 mg"')) == [("loads", "error", 23)]


@pytest.mark.parametrize("name", list(available_orders()))
def test_the_library_is_clean(name: str) -> None:
    """No order of the library has a finding, but that one may still be written as earlier versions had it."""
    findings = findings_of_order(name)
    assert findings is not None
    assert [one for one in findings if one.rule != "order-older"] == []


def test_what_is_no_order(tmp_path: Path) -> None:
    """A checklist, and a name that nobody knows, are left to the checklists' linter."""
    assert findings_of_order("primary-line") is None
    assert findings_of_order("nothing-of-this-name") is None
    assert findings_of_order(str(tmp_path / "none.toml")) is None


def test_what_cannot_be_read_is_an_order_where_it_lies_among_orders(tmp_path: Path) -> None:
    """Elsewhere it may be a checklist, and is left to the checklists' linter."""
    (tmp_path / "orders").mkdir()
    assert [one[:2] for one in found_in(tmp_path / "orders", "[[title")] == [("loads", "error")]
    assert findings_of_order(written(tmp_path, "[[title")) is None


def test_the_verb_takes_orders_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """One command for both; the exit code tells."""
    assert main(["lint", "--strict", "oh-101", written(tmp_path, TOLD)]) == 0
    capsys.readouterr()
    assert main(["lint", "--json", written(tmp_path, TOLD.replace('"famotidine"', '"ferry"'))]) == 0
    row = json.loads(capsys.readouterr().out)
    assert (row["rule"], row["severity"]) == ("order-names", "warning")
