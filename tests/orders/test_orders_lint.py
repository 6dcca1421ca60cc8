"""What lint says about orders: every rule with a broken file and with a good one beside it."""

import json
from pathlib import Path

import pytest

from assistant.cli.main import main
from assistant.orders.checked import findings_of_order
from assistant.orders.lint import ORDER_RULES
from assistant.orders.load import available_orders
from tests.orders.papers import GOOD, written

TOLD = GOOD.replace('code = "T-1"', 'code = "T-1"\nteaching = "Plain."\nsources = ["common practice, no source"]')
CEFAZOLIN = TOLD.replace("famotidine", "cefazolin").replace('"20 mg"', '"1 g"').replace('"20 min"', '"30 min"')
PLANTED = 'code = "T-1"\nplanted = "{}"'
BROKEN = [
    # rule, severity, line, what is changed from, to
    ("order-key", "error", 1, 'over = "20 min"', 'over = "999,999 h"'),
    ("order-limits", "warning", 19, 'over = "20 min"', 'over = "5 min"'),
    ("order-limits", "warning", 19, 'dose = "20 mg"', 'dose = "200 mg"'),
    ("order-limits", "warning", 13, 'over = "12 h"', 'over = "2 h"'),
    ("order-limits", "error", 13, 'over = "12 h"', 'rate = "1,250 mL/h"'),
    ("order-planted", "error", 3, 'code = "T-1"', PLANTED.format("over-limit")),
    ("order-planted", "error", 3, 'code = "T-1"', PLANTED.format("wrong-bag")),
    ("order-planted", "error", 3, 'code = "T-1"', PLANTED.format("expired-bag") + "\nwritten = 2026-01-01"),
    ("order-planted", "error", 3, 'code = "T-1"', PLANTED.format("allergy")),
    ("order-planted", "error", 3, 'code = "T-1"', PLANTED.format("illegible-rate")),
    ("order-planted", "error", 3, 'code = "T-1"', PLANTED.format("wrong-concentration")),
    ("order-planted", "error", 3, 'code = "T-1"', PLANTED.format("incompatible-pair")),
    ("order-rate", "error", 16, 'over = "12 h"', 'rate = "83.33 mL/h"'),
    ("order-rate", "error", 17, 'over = "12 h"', 'rate = "62.5 mL/h"'),
    ("order-names", "warning", 13, "lactated Ringer's solution", "green water"),
    ("order-names", "warning", 19, 'drug = "famotidine"', 'drug = "famotidin"'),
    ("order-wording", "error", 24, "every 12 hours", "bid"),
    ("order-wording", "error", 1, 'title = "A bag"', 'title = "5.0 mg of it"'),
    ("order-teaching", "warning", 1, 'teaching = "Plain."\n', ""),
    ("order-sources", "warning", 1, 'sources = ["common practice, no source"]\n', ""),
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


@pytest.mark.parametrize(("rule", "severity", "line", "old", "new"), BROKEN)
def test_each_rule_finds_its_fault(tmp_path: Path, rule: str, severity: str, line: int, old: str, new: str) -> None:
    """The fault is named by its rule, and by nothing else that is an error."""
    assert old in TOLD
    text = TOLD.replace(old, new, 1)
    if "62.5" in new:
        text = text.replace('code = "T-1"', 'code = "T-1"\nrounding = "whole"')
    found = found_in(tmp_path, text)
    assert [(one, grave) for one, grave, _ in found] == [(rule, severity)], found


def test_every_rule_has_a_broken_file() -> None:
    """No rule is without a file that breaks it; the allergy has tests of its own."""
    assert {rule for rule, *_ in BROKEN} | {"order-allergy"} == set(ORDER_RULES)


def test_an_allergy_is_found_unless_it_was_planted(tmp_path: Path) -> None:
    """An allergy to the ordered drug's kind, or to the drug itself, in any letters; planted, it is right."""
    for allergy in ("Cephalosporins", "cefazolin", "penicillin"):
        text = CEFAZOLIN.replace('["latex"]', f'["latex", "{allergy}"]')
        assert found_in(tmp_path, text) == [("order-allergy", "error", 11)]
        assert found_in(tmp_path, text.replace('code = "T-1"', PLANTED.format("allergy"))) == []


def test_a_planted_fault_is_no_finding(tmp_path: Path) -> None:
    """What planted names is in the file, and then nothing is complained of."""
    pair = CEFAZOLIN.replace("cefazolin", "ceftriaxone")
    assert [one[:2] for one in found_in(tmp_path, pair)] == [("order-limits", "error")]
    assert found_in(tmp_path, pair.replace('code = "T-1"', PLANTED.format("incompatible-pair"))) == []
    wrong = TOLD.replace('code = "T-1"', PLANTED.format("wrong-bag"))
    assert found_in(tmp_path, wrong + '[hung]\nfluid = "5 % dextrose in water"\n') == []
    dated = TOLD.replace('code = "T-1"', PLANTED.format("expired-bag") + "\nwritten = 2026-02-01")
    assert found_in(tmp_path, dated + "[hung]\nexpires = 2026-01-31\n") == []


def test_what_does_not_load_is_told_with_its_line(tmp_path: Path) -> None:
    """A file that keeps the order from loading is one finding."""
    assert found_in(tmp_path, TOLD.replace('over = "20 min"', 'over = "20 mg"')) == [("loads", "error", 23)]


@pytest.mark.parametrize("name", list(available_orders()))
def test_the_library_is_clean(name: str) -> None:
    """No order of the library has a finding."""
    assert findings_of_order(name) == ()


def test_what_is_no_order(tmp_path: Path) -> None:
    """A checklist, and a name that nobody knows, are left to the checklists' linter."""
    assert findings_of_order("primary-line") is None
    assert findings_of_order("nothing-of-this-name") is None
    assert findings_of_order(str(tmp_path / "none.toml")) is None


def test_the_verb_takes_orders_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """One command for both; the exit code tells."""
    assert main(["lint", "--strict", "oh-101", written(tmp_path, TOLD)]) == 0
    capsys.readouterr()
    assert main(["lint", "--json", written(tmp_path, TOLD.replace('"famotidine"', '"ferry"'))]) == 0
    row = json.loads(capsys.readouterr().out)
    assert (row["rule"], row["severity"]) == ("order-names", "warning")
