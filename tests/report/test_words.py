"""Every text of reports and forms comes from the language: none is left in a template or between the lines of code."""

import ast
import csv
import html
import io
import re
import subprocess
from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path

import pytest

from assistant import report as room
from assistant.attempts.papers import papers_of
from assistant.attempts.proof import Here, examine
from assistant.attempts.replay import lived_again
from assistant.checklist.load import load
from assistant.dosing.compare import Slip
from assistant.guide.answers import ANOTHER_CHOICE
from assistant.guide.effects import Outcome
from assistant.guide.progress import FINDING, Mode
from assistant.guide.read_back import ANOTHER_NAME
from assistant.guide.result import Ending, Results, StepResult
from assistant.orders.load import load_order
from assistant.record.chain import Problem
from assistant.record.decisions import Decision, Rating
from assistant.record.head_book import HeadBook
from assistant.report.compose import compose
from assistant.report.content import Ended
from assistant.report.form import form_of
from assistant.report.html import form_html, report_html
from assistant.report.latency import STAGES
from assistant.report.lines import report_lines
from assistant.report.paper import Paper
from assistant.report.pdf import form_pdf, report_pdf
from assistant.report.reading import read_what_holds
from assistant.report.results import lines
from assistant.report.sheet import report_csv
from assistant.report.statements import statements
from assistant.spoken.language import ReportWords
from assistant.spoken.meaning import Trouble
from tests.record.instructors import lone_instructor
from tests.report import attempts
from tests.report.marked import MARKED, Texts, leaves, not_data

ROOM = Path(room.__file__).parent
TENFOLD = ("primary-line", "--mode", "check-off", "--slip", "tenfold", "--seed", "2")
TWO_LINES = ("--mode", "check-off", "--slip", "teen-ty")
PRACTICE = ("primary-line", "--slip", "skip-critical")


def _signed(path, keys):
    """Every kind of decision behind the seal."""
    lone_instructor(keys)
    step = read_what_holds(path).entries[-1]["results"]["steps"][0]["id"]
    for decision in (
        ("not-passed", "--rating", "assisted"),
        ("overruled", "--step", step, "--verdict", "left out"),
        ("corrected", "--correction", "Q7Z"),
    ):
        given = ("--signer", "M. Lindqvist", "--reason", "Q8Z", "--keys", keys, "--decision", *decision)
        assert attempts.run("sign-off", path, *given)[0] == 0
    return path


CASES = {
    "signed": (TENFOLD, _signed),
    "two lines": (TWO_LINES, None),
    "help in practice": (PRACTICE, None),
    "torn": (TENFOLD, lambda path, _: attempts.torn(path)),
    "changed": (TENFOLD, lambda path, _: attempts.changed(path)),
    "open": (TENFOLD, lambda path, _: attempts.unsealed(path, 45)),
    "hardly begun": (("primary-line",), lambda path, _: attempts.unsealed(path, 3)),
}
"""A demonstration, and what happened to its record."""


@pytest.fixture(scope="module", params=CASES.values(), ids=CASES)
def told(request, tmp_path_factory):
    """A report in the marked language, and the data that may stand in it as they are."""
    arguments, happened = request.param
    folder = tmp_path_factory.mktemp("words")
    path = attempts.attempt(folder, *arguments)
    if happened is not None:
        happened(path, folder / "keys")
    known = Here(HeadBook(folder / "heads", None, print), folder / "keys")
    found = examine(path, known, read=read_what_holds)
    reading = found.reading
    papers = papers_of(reading.entries[0], path)
    sealed = any("seal" in entry for entry in reading.entries)
    report = compose(
        path.name,
        reading.verdict,
        reading.entries,
        words=MARKED,
        papers=papers,
        results=None if sealed else lived_again(papers, reading.entries, path).results().body(),
        signers=found.proof.signers,
        proven=found.claim,
    )
    data = {*leaves(reading.entries), *leaves(papers.checklist.model_dump(mode="json")), *papers.order.sentences()}
    data |= {
        path.name,
        *(one.fingerprint for one in reading.verdict.signatures),
        *(one.title for one in found.proof.signers),
        *leaves(report.results),
    }
    return report, frozenset(data)


def test_on_the_screen(told):
    """Every line of the text."""
    report, data = told
    assert [line for line in report_lines(report, MARKED) if not_data(line, data)] == []


def test_on_a_page(told):
    """Every text of the page, its title too."""
    report, data = told
    texts = Texts(report_html(report, MARKED, Paper())).found
    assert len(texts) > 100
    assert [(text, left) for text in texts if (left := not_data(text, data))] == []


def test_in_a_table(told):
    """Every cell below the headings, which are names for programs."""
    report, data = told
    rows = list(csv.reader(io.StringIO(report_csv(report, MARKED), newline="")))[1:]
    assert [(cell, left) for row in rows for cell in row if (left := not_data(cell, data))] == []


def test_in_statements(told):
    """What a learning record store shows of a verb and an activity."""
    report, data = told
    for one in statements(report, "https://example.org/", MARKED):
        assert set(one["verb"]["display"]) == {MARKED.CODE}
        shown = (one["verb"]["display"], one["object"]["definition"]["description"])
        assert [text for text in leaves(shown) if not_data(text, data)] == []


def test_on_paper(told):
    """The text of the PDF in the order in which it was set, the words in the picture left out."""
    report, data = told
    text = _set(report_pdf(report, MARKED, Paper()))
    picture = re.findall(r">([^<>]+)<", html.unescape(report.course.picture)) if report.course else []
    assert not_data(text, {*data, *picture}) == ""


FORMS = [("primary-line", "oh-101"), ("primary-and-secondary", None), ("hand-over", None)]


@pytest.mark.parametrize(("name", "order"), FORMS)
def test_a_form(name, order):
    """A blank form as page and on paper."""
    checklist, given = load(name), load_order(order) if order else None
    form = form_of(checklist, MARKED, given)
    data = frozenset({*leaves(checklist.model_dump(mode="json")), *(given.sentences() if given else ())})
    texts = Texts(form_html(form, MARKED, Paper())).found
    assert [(text, left) for text in texts if (left := not_data(text, data))] == []
    assert not_data(_set(form_pdf(form, MARKED, Paper())), data) == ""


def test_the_result_at_the_end_of_an_attempt():
    """The lines that are printed when an attempt is over."""
    step = StepResult(
        id="one", say="Q1Z", critical=True, gate=False, kind="number", ending=Ending.CORRECTED, first="Q2Z",
        final="Q3Z", slips=("tenfold",), cues=("help",), expired=1, reason="Q4Z",
    )  # fmt: skip
    results = Results((step,), 0, 1, Decimal(0), passed=False, failures=("Q5Z",), completed=True)
    data = {"Q1Z", "Q2Z", "Q3Z", "Q4Z", "Q5Z"}
    shown = lines(results, Outcome.NOT_PASSED, "check-off", MARKED)
    assert [line for line in shown if not_data(line, data)] == []
    assert any("Q4Z" in line for line in shown)


def _set(pdf: bytes) -> str:
    """Text of a PDF as it was set, cell after cell, without the places at which a word may be broken."""
    done = subprocess.run(["pdftotext", "-raw", "-", "-"], input=pdf, capture_output=True, check=True)
    return done.stdout.decode().replace("\u200b", "")


def test_the_check_finds_a_heading():
    """A word outside the marks is found, though single words of it are data; data and lengths of time are not."""
    data = {"Read the order.", "833 mL/h"}
    assert not_data("«Steps» Read the order. 833 mL/h 2 min 5 s", data) == ""
    assert not_data("«Steps» Read", data) == "Read"
    assert not_data("«Steps of «all»» more", data) == "more"


# What no attempt here reaches.


@pytest.mark.parametrize("template", sorted(ROOM.glob("templates/*.html")), ids=lambda path: path.name)
def test_no_text_in_a_page_template(template):
    """Between the tags stand expressions alone, in every branch."""
    text = re.sub(r"{%.*?%}|{{.*?}}|{#.*?#}", "", template.read_text(encoding="utf-8"), flags=re.DOTALL)
    text = re.sub(r"<style.*?</style>|<[^<>]*>", "", text, flags=re.DOTALL)
    assert re.findall(r"\w+", text) == []


TYPST_WORDS = r"//.*|\b(let|for|in|if|else|not|set|show|import|context)\b|DejaVu Sans Mono|Libertinus Serif"
"""Comments, keywords and fonts: what may be words in a row."""


@pytest.mark.parametrize("template", sorted(ROOM.glob("templates/*.typ")), ids=lambda path: path.name)
def test_no_text_in_a_template_for_paper(template):
    """No two words in a row, no word alone between brackets, none in a heading, in every branch."""
    text = re.sub(TYPST_WORDS, "|", template.read_text(encoding="utf-8"))
    assert re.findall(r"(?m)[A-Za-z]{2} [A-Za-z]{2,}|\[ ?[A-Za-z]{2,}[: ]*\]|^ *=+ [A-Za-z]", text) == []


def test_no_sentence_in_the_code():
    """Two words in a row are a name that a record uses, which the tables of the language know, or a refusal."""
    tables = [table for name in dir(ReportWords) if isinstance(table := getattr(ReportWords, name), Mapping)]
    names = {name for table in tables for name in table}
    found = []
    for module in sorted(ROOM.glob("*.py")):
        tree = ast.parse(module.read_text(encoding="utf-8"))
        for text in _texts(tree):
            if re.search(r"[A-Za-z]{2} [a-z]", text) and text not in names:
                found.append((module.name, text))
    assert found == []


def _texts(node: ast.AST):
    """The texts in code: no documentation, no pattern, no message of an error, nothing that describes a schema."""
    match node:
        case ast.Expr(value=ast.Constant()) | ast.Raise():
            return
        case ast.Call(func=ast.Name(id="Field") | ast.Attribute(attr="compile")):
            return
        case ast.FunctionDef(name="schema"):
            return
        case ast.Constant(value=str(text)):
            yield text
    for below in ast.iter_child_nodes(node):
        yield from _texts(below)


TABLES = [
    (ReportWords.OUTCOMES, [*Ended, *Outcome]),
    (ReportWords.OUTCOME_HEADINGS, [*Ended]),
    (ReportWords.OUTCOME_SENTENCES, [*Ended]),
    (ReportWords.ENDINGS, [*Ending]),
    (ReportWords.TROUBLES, [*Trouble, FINDING]),
    (ReportWords.SLIPS, [*Slip, ANOTHER_NAME, ANOTHER_CHOICE]),
    (ReportWords.MODES, [*Mode]),
    (ReportWords.PROBLEMS, [*Problem]),
    (ReportWords.DECISIONS, [*Decision]),
    (ReportWords.RATINGS, [*Rating]),
    (ReportWords.LATENCY_STAGES, [*STAGES]),
]


@pytest.mark.parametrize(("table", "names"), TABLES)
def test_the_tables_know_every_name(table, names):
    """A name that is new in a record has its word before it is shown."""
    assert set(map(str, names)) <= set(table)
