"""A school's own file lies over checklists and orders, and is pinned in every record."""

from pathlib import Path

import pytest

from assistant.attempts.papers import take_papers
from assistant.attempts.school import load_school
from assistant.errors import SettingsError
from assistant.record.verify import read_record
from tests.attempt.program import here

SCHOOL = """\
title = "The lab of these tests"
rate = "whole"
pounds_per_kg = "2.2"

[pass_rule]
score_percent = 90
cues = ["spelled", "more"]

[checklists.primary-line]
critical = ["p-document"]
not_critical = ["p-fluid"]
seen = ["p-document"]
"""


@pytest.fixture
def school(tmp_path: Path) -> Path:
    """The file."""
    path = tmp_path / "school.toml"
    path.write_text(SCHOOL, encoding="utf-8")
    return path


def test_a_school_lies_over_a_checklist(school: Path) -> None:
    """Steps, pass rule and cues are the school's; what it does not name stays."""
    plain, own = take_papers("primary-line", None), take_papers("primary-line", None, school=str(school))
    assert own.checklist.step("p-document").critical
    assert own.checklist.step("p-document").seen
    assert plain.checklist.step("p-fluid").critical
    assert not own.checklist.step("p-fluid").critical
    assert own.checklist.pass_rule.score_percent == 90
    assert own.checklist.pass_rule.critical_cues == plain.checklist.pass_rule.critical_cues
    others = {"p-document", "p-fluid"}
    assert [step for step in own.checklist.steps if step.id not in others] == [
        step for step in plain.checklist.steps if step.id not in others
    ]


def test_a_school_lies_over_an_order(school: Path, tmp_path: Path) -> None:
    """The pump's place and the factor for pounds: 190 lb are 86.4 kg by 2.2 and 86.2 kg by the exact factor.

    Source: 2.2 lb/kg is what US courses teach (PR094 of the practice rules); NIST SP 811, Appendix B for the exact one.
    """
    text = (Path("checklists/orders/oh-115.toml")).read_text(encoding="utf-8")
    order = tmp_path / "pounds.toml"
    order.write_text(text.replace('weight = "72 kg"', 'weight = "190 lb"'), encoding="utf-8")
    assert "190 lb" in order.read_text(encoding="utf-8")
    plain = take_papers("weight-based-infusion", str(order))
    own = take_papers("weight-based-infusion", str(order), school=str(school))
    assert str(plain.key["patient.weight"].value) == "86.2"
    assert str(own.key["patient.weight"].value) == "86.4"
    assert any("2.2 lb/kg" in line for line in own.key["patient.weight"].working)
    assert own.key["dose.rate"].value == own.key["dose.rate"].value.to_integral_value()


def test_what_an_order_says_itself_stays(school: Path, tmp_path: Path) -> None:
    """An order for a pump of its own keeps its rounding."""
    text = Path("checklists/orders/oh-101.toml").read_text(encoding="utf-8")
    order = tmp_path / "own.toml"
    order.write_text('rounding = "tenth"\n' + text, encoding="utf-8")
    own = take_papers("primary-line", str(order), school=str(school))
    assert str(own.key["primary.rate"].value) == "83.3"
    assert str(take_papers("primary-line", None, school=str(school)).key["primary.rate"].value) == "83"


@pytest.mark.parametrize(
    ("line", "what"),
    [
        ('titel = "x"', '"titel" is not a field here'),
        ('pounds_per_kg = "2.3"', "pounds_per_kg"),
        ("[checklists.primary-line]\ncritical = ['p-nothing']", "has no step p-nothing"),
        ("[pass_rule]\ncues = ['again']", "cues"),
    ],
)
def test_what_is_wrong_in_it_is_told_with_its_line(tmp_path: Path, line: str, what: str) -> None:
    """A misspelt field, a value that does not exist, a step that is not there."""
    path = tmp_path / "school.toml"
    path.write_text(line + "\n", encoding="utf-8")
    with pytest.raises(SettingsError) as caught:
        take_papers("primary-line", None, school=str(path))
    assert f"{path}, line " in caught.value.what
    assert what in caught.value.what


def test_a_missing_file_is_told(tmp_path: Path) -> None:
    """Nobody goes on by another rule than the one that was meant."""
    with pytest.raises(SettingsError):
        load_school(tmp_path / "nowhere.toml")


def test_a_record_pins_its_school(capsys, school: Path, tmp_path: Path) -> None:
    """The file is named with its digest, and a report refuses to go by another one."""
    ended = here(capsys, "demo", "primary-line", "--json", "--school", str(school), "--records", str(tmp_path))
    record = Path(ended.last["record"])
    opening = read_record(record).entries[0]
    assert (opening["school"], len(str(opening["school_digest"]))) == (str(school), 64)
    report = here(capsys, "report", str(record), "--json")
    assert not any("school" in warning for warning in report.last["trust"]["warnings"])
    school.write_text(SCHOOL + "\n", encoding="utf-8")
    report = here(capsys, "report", str(record), "--json")
    assert any("school" in warning for warning in report.last["trust"]["warnings"])


def test_hearing_more_is_a_cue_where_the_school_says_so(school: Path) -> None:
    """The check-off says so at its beginning, and counts it once at a step."""
    from assistant.guide import Mode, Opened
    from tests.guide.lived import Lived

    for path, counted in ((str(school), ["more"]), ("", [])):
        papers = take_papers("primary-line", None, school=path)
        lived = Lived(papers.guide(Mode.CHECK_OFF, {}))
        lived.give(Opened(lived.at))
        lived.type("more", "more")
        assert lived.guide.progress.steps[papers.checklist.steps[0].id].cues == counted
        said = " ".join(say.text for say in lived.says)
        assert ("so does hearing more" in said) is bool(path)
