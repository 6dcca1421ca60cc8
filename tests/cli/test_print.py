"""The verb `print`: the blank form of a checklist."""

import html
import re

import pytest

from assistant.checklist.library import available
from assistant.checklist.load import load
from assistant.checklist.works import work_of, works
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


@pytest.mark.parametrize("name", ["primary-line", "second-piggyback", "primary-and-secondary"])
def test_the_page_of_sources(tmp_path, name):
    """Each step with reason, sources and a place to sign; critical ones that nothing bears are marked and counted."""
    target = tmp_path / "page.html"
    assert run("print", name, "--sources", "-o", target)[0] == 0
    page = re.sub(r"\s+", " ", html.unescape(target.read_text(encoding="utf-8")))
    checklist = load(name)
    rows = re.findall(r"<tr.*?</tr>", page)
    steps = [row for row in rows if "<td" in row]
    assert len(steps) == len(checklist.steps)
    unborne = [step for step in checklist.steps if step.critical and all(map(is_unread, step.sources))]
    for row, step in zip(steps, checklist.steps, strict=True):
        assert 'class="blank"' in row
        assert all(text in row for text in (step.say, step.more, step.why, *step.sources))
        assert ("No published source was read" in row) is (step in unborne), step.id
    told = f"{len(unborne)} of these without a published source" if unborne else "each with a published source"
    assert told in page
    assert all(work.title in page for work in works() if any(map(work.title.__eq__, named(checklist))))


def is_unread(source):
    return "common practice, no source" in source or "from memory" in source


def named(checklist):
    return [work.title for step in checklist.steps for work in map(work_of, step.sources) if work]


def test_the_page_of_sources_as_a_pdf(tmp_path, monkeypatch):
    """Without -o it has a name of its own beside the form."""
    monkeypatch.chdir(tmp_path)
    assert run("print", "saline-lock", "--sources") == (0, "", "Sources: saline-lock-sources.pdf\n")
    assert (tmp_path / "saline-lock-sources.pdf").read_bytes().startswith(b"%PDF-")


def test_a_form_in_the_words_of_a_school(tmp_path):
    """The school's file lies over the checklist, and its words over form and page."""
    school = tmp_path / "school.toml"
    school.write_text('words = "American"\n[checklists.primary-line]\ncritical = ["p-label"]\n', encoding="utf-8")
    for more in ((), ("--sources",)):
        plain, own = tmp_path / "plain.html", tmp_path / "own.html"
        assert run("print", "primary-line", *more, "-o", plain)[0] == 0
        assert run("print", "primary-line", *more, "--school", school, "-o", own)[0] == 0
        first, second = (path.read_text(encoding="utf-8") for path in (plain, own))
        assert "millilitre" in first and "milliliter" not in first
        assert "milliliter" in second and "millilitre" not in second
        assert second.count("critical</span>") == first.count("critical</span>") + 1
