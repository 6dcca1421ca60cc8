"""A school's own file lies over checklists and orders, and is pinned in every record."""

import shutil
from collections.abc import Mapping
from pathlib import Path

import pytest

from assistant.attempts.papers import take_papers
from assistant.attempts.school import load_school
from assistant.checklist.load import load
from assistant.errors import ChecklistError, SettingsError
from assistant.guide import Mode, Opened
from assistant.guide import Papers as GuidePapers
from assistant.record.verify import read_record
from assistant.spoken import ENGLISH
from tests.attempt.program import here
from tests.guide.lived import START, Lived

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
    shutil.rmtree(tmp_path / "papers")  # the school's file as it was is kept there
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


HEAD = """\
title = "A line"
version = "1.0.0"
purpose = "Two steps that are not for every lab."
cautions = ["For training only."]
order = "oh-101"
"""
STEPS = """
[[steps]]
id = "load"
part = "The line"
say = "Load the set."

[[steps]]
id = "own-clamp"
part = "The line"
say = "Put the set's own clamp into the pump."
applies = [{ lab = "own clamp" }]

[[steps]]
id = "by-hand"
part = "The line"
say = "Compare each number with the lab's table."
applies = [{ lab = "drug library", present = false }]
"""


@pytest.mark.parametrize(
    ("school", "passed_over"),
    [
        ("", {"own-clamp": "in this lab: no own clamp", "by-hand": "in this lab: drug library"}),
        ('lab = ["own clamp"]', {}),
        ('lab = ["drug library", "own clamp"]', {"by-hand": "in this lab: drug library"}),
        ("lab = []", {"own-clamp": "in this lab: no own clamp"}),
    ],
)
def test_what_a_lab_lacks_is_passed_over(tmp_path: Path, school: str, passed_over: Mapping[str, str]) -> None:
    """A step for one kind of pump or set applies only where the lab has it."""
    checklist, place = tmp_path / "clamped.toml", tmp_path / "lab.toml"
    checklist.write_text(HEAD + STEPS, encoding="utf-8")
    place.write_text(school, encoding="utf-8")
    papers = take_papers(str(checklist), None, school=str(place))
    assert GuidePapers(papers.checklist, "", papers.key, ENGLISH).never == passed_over


def test_a_lab_has_only_what_there_is_a_name_for(tmp_path: Path) -> None:
    """A trait that no condition knows is refused, and so is a checklist that says what the lab has."""
    place, checklist = tmp_path / "lab.toml", tmp_path / "own.toml"
    place.write_text('lab = ["wireless"]', encoding="utf-8")
    with pytest.raises(SettingsError, match="lab"):
        load_school(place)
    checklist.write_text(f'lab_has = ["own clamp"]\n{HEAD}{STEPS}', encoding="utf-8")
    with pytest.raises(ChecklistError, match="lab_has"):
        load(str(checklist))


def test_settings_lapse_as_the_pumps_do(tmp_path: Path) -> None:
    """Where the pumps keep their settings nothing runs out; where they forget sooner, it runs out sooner."""
    place = tmp_path / "lab.toml"
    for school, lasts_s in (("", 180), ('lab = ["drug library"]', None), ("settings_last_s = 60", 60)):
        place.write_text(school, encoding="utf-8")
        expires = take_papers("primary-line", None, school=str(place)).checklist.step("p-start").expires
        assert (expires.after_s if expires else None) == lasts_s


@pytest.mark.parametrize(("words", "shown", "other"), [("British", "litre", "liter"), ("American", "liter", "litre")])
def test_a_school_says_it_in_its_own_words(tmp_path: Path, words: str, shown: str, other: str) -> None:
    """A line and a number that is read back are shown and spoken in the words of the school."""
    place = tmp_path / "lab.toml"
    place.write_text(f'words = "{words}"', encoding="utf-8")
    lived = Lived(take_papers("gravity-infusion", None, school=str(place)).guide(Mode.PRACTICE, {"mode": "practice"}))
    lived.give(Opened(START))
    lived.do(("all there", "safe to use", "within range", "start", 25, "lactated Ringer's solution"))
    lived.hear("one thousand millilitres")
    assert lived.step == "g-bag-volume"
    for told in (lived.says[-1].text, lived.says[-1].speech, lived.texts()):
        assert shown in told
        assert other not in told
