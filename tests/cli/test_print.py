"""The verb `print`: the blank form of a checklist."""

import re

import pytest

from assistant.checklist.library import available
from assistant.checklist.load import load
from tests.report.attempts import run


def test_its_name_is_the_checklists(tmp_path, monkeypatch):
    """Without -o the form is NAME.pdf in this folder."""
    monkeypatch.chdir(tmp_path)
    code, out, console = run("print", "primary-line")
    assert (code, out) == (0, "")
    assert console == "Form: primary-line.pdf\n"
    assert (tmp_path / "primary-line.pdf").read_bytes().startswith(b"%PDF-")


def test_every_step_is_on_the_form(tmp_path):
    """Each step with its number, three boxes, its marks; numbers with their unit; version, digest, cautions."""
    target = tmp_path / "form.html"
    assert run("print", "primary-line", "-o", target)[0] == 0
    page = target.read_text(encoding="utf-8")
    checklist = load("primary-line")
    rows = re.findall(r"<tr.*?</tr>", page, re.S)
    steps = [row for row in rows if "<td" in row]
    assert len(steps) == len(checklist.steps)
    for row, step in zip(steps, checklist.steps, strict=True):
        assert row.count('class="box"') == 3
        assert ("critical</span>" in row) is step.critical
        if step.expect.kind == "number":
            assert row.count(f"________\u00a0{step.expect.unit}") == 2
    assert checklist.digest in page
    assert f">{checklist.version}<" in page
    assert all(caution.split("'")[0] in page for caution in checklist.cautions)


def test_the_order_stands_on_it_without_its_answers(tmp_path):
    """The order as the learner sees it; nothing that follows from it."""
    target = tmp_path / "form.html"
    assert run("print", "primary-line", "--order", "oh-101", "-o", target)[0] == 0
    page = target.read_text(encoding="utf-8")
    assert "Order OH-101" in page
    assert "83.3" not in page


@pytest.mark.parametrize("name", sorted(available()))
def test_every_checklist_of_the_library_has_a_form(tmp_path, name):
    """Whatever a step asks for, the form is made."""
    assert run("print", name, "-o", tmp_path / "form.html")[0] == 0


@pytest.mark.parametrize(
    ("arguments", "code", "words"),
    [
        (["primary-line", "-o", "form.txt"], 2, 'cannot be a ".txt" file'),
        (["no-such-checklist"], 1, "no-such-checklist"),
        (["primary-line", "--order", "no-such-order"], 1, "no-such-order"),
        (["primary-line", "--paper", "a3"], 2, "a3"),
    ],
)
def test_what_is_refused(arguments, code, words):
    """One sentence and the right exit code."""
    found, _, console = run("print", *arguments)
    assert found == code
    assert words in console
