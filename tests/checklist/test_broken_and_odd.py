"""Files as authors get them wrong, one fault each, and files that look odd and are right."""

import re
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from assistant.checklist.finding import Finding, Known, Severity
from assistant.checklist.library import library_folder
from assistant.checklist.mending import mend
from assistant.checklist.rules.listing import RULES
from assistant.cli.lint import findings_of
from assistant.cli.main import main
from assistant.dosing import Amount
from assistant.orders.solve import KEY_UNITS
from tests.checklist.fuzz import fuzz

HERE = Path(__file__).parent
PRIMARY = {"primary.rate": Amount(Decimal("83.3"), "mL/h"), "primary.fluid": "lactated Ringer's solution"}
KNOWN = Known(
    KEY_UNITS,
    frozenset({"oh-101", "oh-primary"}),
    {"oh-101": {**PRIMARY, "primary.vtbi": Amount(Decimal(950), "mL")}, "oh-primary": PRIMARY},
)
BROKEN = sorted((HERE / "broken").glob("*.toml"))
ODD = sorted((HERE / "odd").glob("*.toml"))
_HEAD = re.compile(rb"# (\S+) (\d+)((?: also \S+)*)")


def told(path: Path) -> tuple[str, int, set[str]]:
    """What the first line of a broken file promises: rule, line, and rules that follow from the same fault."""
    head = _HEAD.match(path.read_bytes())
    assert head, path
    return head[1].decode(), int(head[2]), set(head[3].decode().split()) - {"also"}


@cache
def found_in(path: Path) -> tuple[Finding, ...]:
    """The findings of a file of the two sets."""
    return findings_of(str(path), KNOWN)


@pytest.mark.parametrize("path", BROKEN, ids=lambda path: path.stem)
def test_each_fault_is_named_at_its_line_and_nothing_else(path: Path) -> None:
    """The rule and the line that the file's first line names; other findings only where the fault brings them."""
    rule, line, also = told(path)
    found = found_in(path)
    assert [f for f in found if (f.rule, f.line) == (rule, line)], found
    others = [f for f in found if (f.rule, f.line) != (rule, line) and f.rule not in also]
    assert not others, others
    assert all(finding.mend for finding in found)


@pytest.mark.parametrize("path", ODD, ids=lambda path: path.stem)
def test_what_looks_odd_and_is_right_brings_no_finding(path: Path) -> None:
    """No false alarm, not even a warning."""
    assert findings_of(str(path), KNOWN) == ()


def test_the_sets_are_large_and_no_rule_is_left_out() -> None:
    """At least sixty broken files and twenty odd ones; every rule is broken twice, and listed with an example."""
    assert len(BROKEN) >= 60
    assert len(ODD) >= 20
    broken = [told(path)[0] for path in BROKEN]
    assert {rule for rule in set(broken) if broken.count(rule) < 2} == set()
    assert set(broken) == {rule.name for rule in RULES}
    assert all(rule.about and rule.example for rule in RULES)


def test_every_finding_has_the_severity_of_the_list() -> None:
    """A rule is listed with the gravest severity that it gives."""
    listed = {(rule.name, rule.severity) for rule in RULES}
    found = {(f.rule, f.severity) for path in BROKEN for f in found_in(path)}
    assert listed <= found
    assert {rule for rule, severity in found - listed if severity is Severity.ERROR} == set()


def test_a_word_that_an_installed_recogniser_lacks_is_named() -> None:
    """Where a recogniser has a fixed list of words, each word of a choice is looked up in it."""
    small = Known(KEY_UNITS, frozenset({"oh-101"}), {}, {"small-model": frozenset({"steadily", "slowly"})})
    (finding,) = findings_of(str(HERE / "odd" / "choices.toml"), small)
    assert finding.rule == "hearable"
    assert 'the recogniser small-model has no word "none"' in finding.what


FIXED = [
    ('more = "Give .5 mg, 1.0 mL and 10U."', 'more = "Give 0.5 mg, 1 mL and 10 units."'),
    ('more = "Give 1500mL @ 10 mL/h & stop." # kept', 'more = "Give 1,500 mL at 10 mL/h and stop." # kept'),
    ('hint = "5 \u00b5g in 5 cc"', 'hint = "5 mcg in 5 mL"'),
    (
        'expect = { kind = "number", unit = "ml/hr", key = "k" }',
        'expect = { kind = "number", unit = "mL/h", key = "k" }',
    ),
    ('more = "0.50 mg in 100 ml"', 'more = "0.5 mg in 100 mL"'),
    ('version = "1.2"', 'version = "1.2.0"'),
    ('version = "v2"', 'version = "2.0.0"'),
    ('sources = ["Table .5, 1000 pages"]', 'sources = ["Table .5, 1000 pages"]'),
    ('more = "At 83.3 mL/h, 0.9 %, version 1.0.0"', 'more = "At 83.3 mL/h, 0.9 %, version 1.0.0"'),
    ('more = "Give it qd, not QOD."', 'more = "Give it daily, not every other day."'),
    ('more = "Give MgSO4 at HS."', 'more = "Give MgSO4 at HS."'),
]


@pytest.mark.parametrize(("before", "after"), FIXED)
def test_only_what_is_mechanical_is_mended(before: str, after: str) -> None:
    """One right spelling is put in; what needs a decision, and everything around it, is left as it was."""
    text = f"# a comment\nx = 1   # and another\n\n{before}\n"
    mended = mend(text.encode())
    assert mended.text == text.replace(before, after)
    assert bool(mended.changes) is (before != after)
    assert mend(mended.text.encode()).changes == ()


def test_fix_writes_the_file_and_names_what_is_left(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """After --fix the file is clean of what could be mended; windows line ends stay."""
    path = tmp_path / "mine.toml"
    path.write_bytes((HERE / "broken" / "naked-point.toml").read_bytes().replace(b"\n", b"\r\n"))
    assert main(["lint", str(path)]) == 1
    assert main(["lint", "--fix", "--strict", str(path)]) == 0
    assert 'became "Give 0.5 mL."' in capsys.readouterr().err
    assert path.read_bytes().count(b"\r\n") == path.read_bytes().count(b"\n") > 50


def test_a_folder_is_looked_through_with_its_parts(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Checklists and parts of a folder are checked; a folder without any is told."""
    (tmp_path / "parts").mkdir()
    (tmp_path / "parts" / "rub.toml").write_text('[[steps]]\nid = "rub"\npart = "A"\nsay = "Rub **now**."\n')
    (tmp_path / "mine.toml").write_text((HERE / "broken" / "no-space.toml").read_text(encoding="utf-8"))
    assert main(["lint", str(tmp_path)]) == 1
    out = capsys.readouterr().out
    assert "rub.toml:4: error speakable" in out
    assert "error error-prone" in out
    (tmp_path / "empty").mkdir()
    assert main(["lint", str(tmp_path / "empty")]) == 1
    assert main(["lint"]) == 2


def test_a_short_run_of_the_fuzz_holds() -> None:
    """Forty changed files: findings or refusals, nothing else (the long run is a command)."""
    counts = fuzz(seconds=60, seed=3, cases=40)
    assert counts["refused"] + counts["warned"] + counts["clean"] == 40
    assert counts["refused"] < 40


def test_a_changed_copy_of_the_librarys_needs_a_new_version(tmp_path: Path) -> None:
    """A copy under the same name and version whose steps differ is told; with another version it is not."""
    text = (library_folder() / "primary-line.toml").read_text(encoding="utf-8")
    version = re.search(r'version = "(.*)"', text)
    assert version
    changed = text.replace('say = "Start the infusion."', 'say = "Start it."')
    assert changed != text
    path = tmp_path / "primary-line.toml"
    for written, rules in ((text, []), (changed, ["version"]), (changed.replace(version[1], "99.0.0"), [])):
        path.write_text(written, encoding="utf-8")
        assert [finding.rule for finding in findings_of(str(path), KNOWN) if finding.rule == "version"] == rules


def test_the_rules_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    """Every rule with what it is about and an example, for people and for programs."""
    assert main(["lint", "--rules"]) == 0
    out = capsys.readouterr().out
    assert all(rule.name in out and rule.example in out for rule in RULES)
    assert main(["lint", "--rules", "--json"]) == 0
    assert len(capsys.readouterr().out.splitlines()) == len(RULES)
