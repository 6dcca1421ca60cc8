"""The sheets for the bench by the verbs that make them: `print` of an order, `orders draw --out`."""

import re
import subprocess

import pikepdf
import pytest

from assistant.cli import bench_sheets, orders
from assistant.orders.load import available_orders
from tests.report.attempts import run
from tests.report.benches import BUSY, EVERYTHING

SHEETS = ["instructor.pdf", "labels.pdf", "learners.pdf"]
LETTER_PT, A4_PT = (612, 792), (595, 842)
"""ANSI/ASME Y14.1: 8.5 by 11 inches; ISO 216: 210 by 297 mm; in whole points."""


def text(path) -> str:
    done = subprocess.run(["pdftotext", "-raw", path, "-"], capture_output=True, text=True, check=True)
    return " ".join(done.stdout.split())


def size(path) -> tuple[int, int]:
    with pikepdf.open(path) as pdf:
        found = {tuple(round(float(edge)) for edge in page.mediabox[2:]) for page in pdf.pages}
    assert len(found) == 1
    return found.pop()


def names(folder) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_an_order_by_its_name(tmp_path, monkeypatch):
    """Three documents in a folder of the order's name."""
    monkeypatch.chdir(tmp_path)
    code, out, console = run("print", "OH-111")
    assert (code, out) == (0, "")
    assert console == "Sheets of order OH-111 in oh-111. To print: instructor.pdf, labels.pdf, learners.pdf.\n"
    assert names(tmp_path / "oh-111") == SHEETS
    assert size(tmp_path / "oh-111" / "labels.pdf") == A4_PT


def test_an_order_by_its_path(tmp_path):
    """A file about a patient is an order, whatever it is called; a folder of folders is made."""
    own = tmp_path / "primary-line.toml"
    own.write_text(BUSY, encoding="utf-8")
    folder = tmp_path / "bench" / "3"
    assert run("print", own, "-o", folder, "--paper", "letter", "--large-print")[0] == 0
    assert names(folder) == SHEETS
    assert all(size(folder / name) == LETTER_PT for name in SHEETS)
    assert "T-3" in text(folder / "learners.pdf")


def test_a_checklist_is_still_a_form(tmp_path):
    """By name and by path."""
    for given in ("primary-line", EVERYTHING.parents[2] / "checklists" / "primary-line.toml"):
        assert run("print", given, "-o", tmp_path / "form.pdf")[2].startswith("Form: ")


@pytest.mark.parametrize("name", sorted(available_orders()))
def test_every_order_of_the_library_has_its_sheets(tmp_path, name):
    """Whatever an order holds, its sheets are made."""
    assert run("print", name, "-o", tmp_path)[0] == 0
    assert names(tmp_path) == SHEETS


@pytest.mark.parametrize(
    ("arguments", "code", "words"),
    [
        (["oh-101", "--order", "oh-102"], 2, "printed by itself"),
        (["oh-1111"], 1, 'no order called "oh-1111". Did you mean'),
        (["oh-101", "-o", "/dev/null/x"], 1, "cannot be made"),
        (["/no/such.toml"], 1, "no file"),
    ],
)
def test_what_is_refused(arguments, code, words):
    """One sentence and the right exit code."""
    found, _, console = run("print", *arguments)
    assert found == code
    assert words in console
    assert "Traceback" not in console


def test_a_class_of_forty_in_one_call(tmp_path):
    """Files that run and three documents on the paper that was asked for, with all of the class in each."""
    draw = ("orders", "draw", "primary-and-secondary", "--seed", "7", "--count", "40", "--day", "2026-11-25")
    code, out, console = run(*draw, "--out", tmp_path, "--paper", "letter")
    assert (code, out) == (0, "")
    assert "40 orders" in console
    assert "To print: instructor.pdf, labels.pdf, learners.pdf." in console
    for name in SHEETS:
        assert size(tmp_path / name) == LETTER_PT
        assert set(re.findall(r"D7-\d\d", text(tmp_path / name))) == {f"D7-{n:02}" for n in range(1, 41)}
    assert "Answer key" in text(tmp_path / "instructor.pdf")
    assert "Answer key" not in text(tmp_path / "learners.pdf")


def test_long_work_says_what_it_is_at(tmp_path, monkeypatch):
    """Each document is announced where there are many orders; a class of forty is done before one could read it."""
    monkeypatch.setattr(bench_sheets, "MANY", 2)
    console = run("orders", "draw", "primary-line", "--count", "2", "--out", tmp_path)[2]
    assert [line.rpartition("/")[2] for line in console.splitlines()[:3]] == [f"{name} ..." for name in SHEETS]


def test_more_than_paper_is_for(tmp_path, monkeypatch):
    """Too many for one document: the files are there, and it is said that no PDF is."""
    monkeypatch.setattr(orders, "MOST_ON_PAPER", 2)
    console = run("orders", "draw", "primary-line", "--count", "3", "--out", tmp_path)[2]
    assert "3 orders" in console
    assert "No PDF: one holds 2 orders at most." in console
    assert not [name for name in names(tmp_path) if name.endswith(".pdf")]
