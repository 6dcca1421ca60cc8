"""The lint rules: one fault each, at its line; what looks odd and is right is left alone."""

import json
import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.checklist.lint import Finding, Known, Severity, lint
from assistant.checklist.load import load_sheet
from assistant.checklist.wording import ERROR_PRONE, error_prone, unspeakable
from assistant.cli.main import main
from assistant.orders.load import available_orders
from assistant.orders.solve import KEY_UNITS
from tests.checklist.papers import GOOD, changed, written

KNOWN = Known(KEY_UNITS, frozenset({"oh-101"}))


def found(tmp_path: Path, text: str) -> tuple[Finding, ...]:
    return lint(load_sheet(written(tmp_path, text)), KNOWN)


def test_a_good_file_has_no_finding(tmp_path: Path) -> None:
    """The text that the tests break has nothing to mend."""
    assert found(tmp_path, GOOD) == ()


SAY = 'say = "Start the pump."'
RATE = 'expect = { kind = "number", unit = "mL/h", key = "primary.rate" }'
FAULTS = [
    # what is changed, with what, rule, line, severity, what the finding says
    ('why = "Air belongs in no vein."\n', "", "critical-why", 9, "error", "does not say why"),
    ('hint = "Hold it against the light."\nsources', "sources", "cue", 9, "warning", "no cue"),
    ('light."\nsources = ["common practice, no source"]\n', 'light."\n', "critical-source", 9, "error", "no source"),
    ('if_wrong = "Stop the pump."\n', "", "advice", 9, "warning", "nothing is said"),
    ('if_wrong = "Look at the display again."\n', "", "advice", 20, "warning", "nothing is said"),
    ('sources = ["common practice, no source"]\n\n', "\n", "sources", 1, "warning", "names no source"),
    ('version = "1.0.0"', 'version = "first"', "version", 2, "warning", "no version"),
    ('order = "oh-101"', 'order = "oh-10l"', "order-known", 4, "error", 'no order called "oh-10l"'),
    ("critical = true", 'after = ["start"]\ncritical = true', "gate-opens", 32, "error", "can never open"),
    ("critical = true", 'after = ["start"]\ncritical = true', "order-of-steps", 12, "warning", "comes later"),
    ("critical = true", 'after = ["rate"]\ncritical = true', "reachable", 12, "error", "waits for itself"),
    ("critical = true", 'after = ["rate"]\ncritical = true', "reachable", 25, "error", "waits for itself"),
    (RATE, RATE.replace("primary.rate", "primary.rat"), "key-known", 23, "error", 'nothing called "primary.rat"'),
    (RATE, RATE.replace("mL/h", "mL"), "unit-fits", 23, "error", "measures a volume"),
    (RATE, RATE.replace("mL/h", "furlong"), "unit-known", 23, "error", "is not a unit"),
    (RATE, RATE.replace("mL/h", "cc/h"), "unit-known", 23, "error", "easily misread"),
    (RATE, RATE.replace("mL/h", "ml/hr"), "unit-spelling", 23, "warning", "prints"),
    (RATE, RATE.replace("primary.rate", "primary.fluid"), "key-kind", 23, "error", "is a name"),
    (RATE, 'expect = { kind = "name", key = "primary.rate" }', "key-kind", 23, "error", "is a number"),
    (RATE, 'expect = { kind = "name", key = "primary.drug" }', "key-known", 23, "error", "nothing called"),
    ("Is the line free of air?", "The line is free of air.", "answers-clash", 11, "error", "asks none"),
    ("free of air?", "full or is it empty?", "answers-clash", 11, "warning", "which side"),
    (SAY, 'say = "Is the pump started?"', "answers-clash", 30, "error", "done is expected"),
    (SAY, 'say = "Start the pump and say stop."', "answers-clash", 30, "error", '"stop" is a command'),
    (SAY, 'say = "Start it. Say Go On when it runs."', "answers-clash", 30, "error", "is a command"),
    (
        SAY,
        'say = "Rub for 20 seconds."\nexpect = { kind = "wait", seconds = 15 }',
        "wait-said",
        30,
        "error",
        "20 seconds, and 15",
    ),
    ("does the pump show?", "does it show, 125?", "gives-answer", 22, "error", "holds a number"),
    (RATE, f'{RATE}\nhint = "It is 125."', "gives-answer", 24, "error", "hint holds a number"),
    (SAY, f'say = "Start {"the pump and " * 8}go."', "say-length", 30, "warning", "26 words"),
    (
        SAY,
        'say = "Is the line free of air?"\nexpect = { kind = "question" }\nif_wrong = "Stop."',
        "said-twice",
        30,
        "warning",
        '"look" says the same',
    ),
    (SAY, 'say = "Start the pump at {rate}."', "speakable", 30, "error", "to be filled in"),
    (SAY, 'say = "Start **now**."', "speakable", 30, "error", "markup"),
    (SAY, 'say = "Start bag and/or pump."', "speakable", 30, "error", "slash"),
    (SAY, 'say = "Check the CRT."', "speakable", 30, "error", "abbreviation"),
    (SAY, 'say = "See https://example.org."', "speakable", 30, "error", "address"),
    (SAY, f'{SAY}\nmore = "Give 5 cc."', "error-prone", 31, "error", "units or 00"),
    (SAY, f'{SAY}\nwhy = "Give 5.0 mg."', "error-prone", 31, "error", "ten times"),
]


@pytest.mark.parametrize(("old", "new", "rule", "line", "severity", "says"), FAULTS)
def test_each_fault_is_found_at_its_line(
    tmp_path: Path, old: str, new: str, rule: str, line: int, severity: str, says: str
) -> None:
    """The rule's finding stands at the line of the fault and says how to mend it."""
    hits = [f for f in found(tmp_path, changed(old, new)) if f.rule == rule and f.line == line]
    assert len(hits) == 1, found(tmp_path, changed(old, new))
    assert says in hits[0].what
    assert hits[0].severity == severity
    assert hits[0].mend.endswith((".", "?", "...", '"', "]"))


def test_no_fault_brings_false_alarms(tmp_path: Path) -> None:
    """A fault is named by its own rule only, or by one that follows from it."""
    follow = {"gate-opens": {"order-of-steps"}, "order-of-steps": {"gate-opens"}, "reachable": {"order-of-steps"}}
    for old, new, rule, *_ in FAULTS:
        rules = {f.rule for f in found(tmp_path, changed(old, new))}
        assert rules <= {rule} | follow.get(rule, set()), (new, rules)


def test_what_comes_after_an_expiry_cannot_be_reopened(tmp_path: Path) -> None:
    """A start that would reopen a later step is named at that line."""
    later = '\n[[steps]]\nid = "end"\npart = "Going on"\nsay = "Clean your hands."\n'
    text = changed('reopen = ["rate"]', 'reopen = ["rate", "end"]') + later
    (finding,) = found(tmp_path, text)
    assert (finding.rule, finding.line) == ("expiry", 35)


ODD = [
    (SAY, 'say = "Put 1,000 mL on the stand."'),
    (SAY, 'say = "Rub for 15 to 20 seconds."\nexpect = { kind = "wait", seconds = 15 }'),
    (SAY, 'say = "Connect the IV line, then say done."'),
    (SAY, 'say = "Stop the pump and go back to the bag."'),
    (SAY, f'{SAY}\nmore = "Between 0.5 mL and 5 mL; 83.3 mL/h is no trailing zero, nor is 10 mL."'),
    (SAY, f'{SAY}\nmore = "It ends with 5 mL. Then stop."'),
    (SAY, f'{SAY}\nmore = "Use 0.9 % sodium chloride, at 5 mcg/kg/min."'),
    ('version = "1.0.0"', 'version = "10.20.3"'),
    ('id = "start"', 'id = "s-1-2-3"'),
    (RATE, 'expect = { kind = "number", unit = "mL/min", key = "primary.rate" }'),
    (RATE, 'expect = { kind = "name", key = "primary.fluid" }'),
    ("Is the line free of air?", "Look. Is the line, from end to end, free of air?"),
    ("gate = true", "gate = true\ncritical = false"),
    ("[[steps]]", "# [[steps]] is a step\n[[steps]]"),
]


@pytest.mark.parametrize(("old", "new"), ODD)
def test_what_looks_odd_and_is_right_is_left_alone(tmp_path: Path, old: str, new: str) -> None:
    """No false alarm."""
    assert found(tmp_path, changed(old, new)) == ()


# Error-prone designations, each from the published list that the entry names.
MISREAD = [
    # text, what is found; Joint Commission, official Do Not Use list
    ("Give 10 U now", "0 U"),
    ("Give 10 IU now", "IU"),
    ("once QD", "QD"),
    ("once q.d. only", "q.d."),
    ("once QOD", "QOD"),
    ("Give MgSO4", "MgSO4"),
    ("Give 1.0 mg", "1.0"),
    ("Give .5 mg", ".5"),
    # ISMP list (as republished)
    ("Give 5 \u00b5g", "\u00b5g"),
    ("Give 5 cc", "cc"),
    ("Give 10mg", "0mg"),
    ("Give 1000 mL", "1000"),
    ("Give 10 mL. with food", "mL."),
    # ISMP list (from memory)
    ("rate @ 75 mL/h", "@"),
    ("if > 5 mL", "> 5"),
    ("at HS", "HS"),
    ("inject SQ", "SQ"),
    ("then D/C it", "D/C"),
    ("take TID", "TID"),
    ("Give 10 u now", "0 u"),
    ("Give 5 ug", "ug"),
    ("twice tiw", "tiw"),
    ("drops OD", "OD"),
    ("take it qhs", "qhs"),
    ("heparin 5 K units", "5 K"),
    ("for 5 d", "5 d"),
    ("take bid", "bid"),
    ("take b.i.d.", "b.i.d."),
    ("Give 1.50 mg", "1.50"),
    ("Give 0,5 mL", "0,5"),
    ("Give 5 mgs", "5 mgs"),
    ("Give 10 I.U. now", "I.U."),
    ("give it SubQ", "SubQ"),
    ("Give 5 ml now", "5 ml"),
    ("Give HCTZ", "HCTZ"),
    ("saline + dextrose", "+"),
    ("every q6\u00b0", "q6\u00b0"),
    ("give it x 3 d", "x 3 d"),
]


@pytest.mark.parametrize(("text", "what"), MISREAD)
def test_published_designations_are_found(text: str, what: str) -> None:
    """Each entry of the lists is found in a sentence (ISMP list; Joint Commission Do Not Use list)."""
    assert what in [slip.found for slip in error_prone(text)]


def test_every_designation_names_its_source_and_is_tried() -> None:
    """No entry without a source, and none that no row of the table reaches."""
    for designation in ERROR_PRONE:
        assert "ISMP" in designation.source or "Joint Commission" in designation.source
        assert any(re.search(designation.pattern, text) for text, _ in MISREAD), designation.pattern


@pytest.mark.parametrize(
    "text",
    [
        "Give 0.5 mg.",
        "Give 1,000 mL over 12 h.",
        "Between 5 and 10 mL. Then stop.",
        "10 units of insulin",
        "5 mcg",
        "Version 1.0.0",
        "at 83.3 mL/h",
        "about 2.05 mL",
        "for 10 to 15 seconds",
        "since 2021, at 0800 or at 1400, in room 1204",
        "e.g. the bag, i.e. the container",
        "Do NOT open it; STOP the pump.",
        "The IV line, a PICC, the VTBI, factor VIII, your ID",
        "The rate (mL/h) stands first.",
    ],
)
def test_right_designations_are_left_alone(text: str) -> None:
    """What the lists recommend is no finding."""
    assert [slip.found for slip in error_prone(text)] == []
    assert list(unspeakable(text)) == []


LINE = st.text(st.characters(exclude_categories=["C", "Zl", "Zp"]), min_size=1, max_size=200).filter(str.strip)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(say=LINE, more=LINE)
def test_any_text_can_be_looked_at(tmp_path: Path, say: str, more: str) -> None:
    """Whatever an author writes, the rules give findings at the step's lines and raise nothing."""
    text = changed(SAY, f"say = {json.dumps(say)}\nmore = {json.dumps(more)}")
    text = re.sub(r"\\u(d[89ab]..)\\u(d[c-f]..)", _joined, text)
    for finding in found(tmp_path, text):
        assert 27 <= finding.line <= 36, finding
        assert finding.what
        assert finding.mend


def _joined(pair: re.Match[str]) -> str:
    """JSON writes a far character as two; TOML wants it as one."""
    return f"\\U{0x10000 + ((int(pair[1], 16) - 0xD800) << 10) + int(pair[2], 16) - 0xDC00:08X}"


# The verb.


def test_the_projects_own_checklists_are_clean(capsys: pytest.CaptureFixture[str]) -> None:
    """Every checklist of the library is clean under --strict."""
    from assistant.checklist.library import NO_CHECKLISTS, library_folder

    own = [str(path) for path in sorted(library_folder().glob("*.toml")) if path.stem not in NO_CHECKLISTS]
    assert len(own) >= 3
    assert main(["lint", "--strict", *own]) == 0
    assert capsys.readouterr().out == ""


def test_exit_codes_and_lines(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Errors fail; warnings fail only under --strict; each line begins with file and line."""
    warning = written(tmp_path, changed('version = "1.0.0"', 'version = "one"'), "warning")
    assert main(["lint", warning]) == 0
    assert f"{warning}:2: warning version: " in capsys.readouterr().out
    assert main(["lint", "--strict", warning]) == 1
    broken = written(tmp_path, changed("[[steps]]", "[[steps]"), "broken")
    capsys.readouterr()
    assert main(["lint", warning, broken]) == 1
    written_out = capsys.readouterr()
    assert f"{broken}:8: error loads: this is not TOML" in written_out.out
    assert written_out.err == "1 error, 1 warning.\n"


def test_every_fault_of_a_file_is_named_at_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Who mends a file sees all of it, each fault once, and nothing that only follows from another one."""
    text = GOOD.replace("title =", "titel =").replace('kind = "number"', 'kind = "nummer"')
    text = text.replace(SAY, "sya = 4").replace('right = "yes"', 'right = "maybe"')
    path = written(tmp_path, text + '\n[[steps]]\nid = "look"\npart = "End"\nsay = "Clean your hands."\n')
    assert main(["lint", path]) == 1
    lines = capsys.readouterr().out.splitlines()
    assert [re.sub(r"^.*:(\d+): error loads: ", r"\1 ", line) for line in lines] == [
        '1 "titel" is not a field here. Did you mean "title"?',
        "16 \"maybe\" is no right. It can be 'yes' or 'no'.",
        "23 \"nummer\" is nothing that a step can expect. It can be 'done', 'question', 'number', 'name', 'wait', "
        "'choice', 'note', 'observation', 'double-check'.",
        '30 "sya" is not a field here. Did you mean "say"?',
    ]


def test_json_has_one_object_a_finding(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Programs read file, line, rule, severity, what and mend."""
    path = written(tmp_path, changed(SAY, 'say = "Is it on?"'))
    assert main(["lint", "--json", path]) == 1
    (row,) = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert set(row) == {"file", "line", "rule", "severity", "what", "mend"}
    assert (row["file"], row["line"], row["severity"]) == (path, 30, Severity.ERROR)


def test_an_unknown_name_is_a_finding(capsys: pytest.CaptureFixture[str]) -> None:
    """A name that is none is told like any other fault."""
    assert main(["lint", "primery-line"]) == 1
    assert 'no checklist called "primery-line"' in capsys.readouterr().out


def test_list_names_every_checklist_and_order(capsys: pytest.CaptureFixture[str]) -> None:
    """What the verb lists is what run takes; a file that cannot be used is told as such."""
    assert main(["list", "--json"]) == 0
    rows = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    names = {(row["kind"], row["name"]) for row in rows}
    assert {("checklist", "primary-line"), ("checklist", "secondary-line"), ("order", "oh-101")} <= names
    assert {name for kind, name in names if kind == "order"} == set(available_orders())
    assert all(row["usable"] for row in rows if row["library"])
    assert main(["list"]) == 0
    assert "oh-105" in capsys.readouterr().out


def test_list_tells_what_cannot_be_used(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """One broken file of the user hides no other."""
    monkeypatch.setenv("CHECKOFF_CHECKLISTS", str(tmp_path))
    written(tmp_path, "title = 4", "mine")
    assert main(["list"]) == 0
    out = capsys.readouterr().out
    assert re.search(r"mine +cannot be used: .*line 1.*\(yours\)", out)
    assert "primary-line" in out
