"""Whatever stands in a name, a note or a checklist: it harms nothing and shows as it was typed."""

import csv
import html.parser
import io
import json
import re
import subprocess
import unicodedata

import pytest

from assistant.checklist.model import Checklist, Step
from assistant.cli.report import report_of
from assistant.report.form import form_of
from assistant.report.html import form_html, report_html
from assistant.report.paper import Paper
from assistant.report.pdf import form_pdf, report_pdf
from assistant.report.plain import one_line, plain
from assistant.report.sheet import BYTE_ORDER_MARK, cell, report_csv
from assistant.spoken import ENGLISH
from tests.report import attempts
from tests.report.hostile import LONG, WORDS

ALL = WORDS | LONG


@pytest.fixture
def report(request, tmp_path):
    """The report of a record that holds these words everywhere."""
    return report_of(attempts.written(tmp_path / "attempt.jsonl", request.param), str(tmp_path))


every_text = pytest.mark.parametrize("report", ALL.values(), ids=ALL, indirect=True)


class _Page(html.parser.HTMLParser):
    """Tags, attributes and text of a page."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: set[str] = set()
        self.attributes: set[str] = set()
        self.text: list[str] = []
        self.feed(page)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        self.attributes |= {name for name, _ in attrs}

    def handle_data(self, data):
        self.text.append(data)


@pytest.fixture(scope="module")
def harmless(tmp_path_factory):
    """Tags and attributes of a report of plain words."""
    path = attempts.written(tmp_path_factory.mktemp("plain") / "attempt.jsonl", "plain words")
    page = _Page(report_html(report_of(path, str(path.parent)), ENGLISH.report, Paper()))
    assert "script" not in page.tags
    return page.tags, page.attributes


@every_text
def test_in_a_page(report, harmless):
    """No tag and no attribute more than with plain words, and the words stand there as text."""
    page = _Page(report_html(report, ENGLISH.report, Paper()))
    assert (page.tags, page.attributes) == harmless
    assert plain(report.attempt.learner) in "".join(page.text)


@every_text
def test_in_a_table(report):
    """Every cell is read back as it was typed, and none begins as a formula does."""
    text = report_csv(report, ENGLISH.report)
    assert text.startswith(BYTE_ORDER_MARK)
    rows = list(csv.reader(io.StringIO(text.removeprefix(BYTE_ORDER_MARK), newline=""), strict=True))
    assert len({len(row) for row in rows}) == 1
    (row,) = [dict(zip(rows[0], one, strict=True)) for one in rows[1:]]
    shown = row["learner"].removeprefix("'")
    typed = one_line(report.attempt.learner)
    assert typed.startswith(shown.removesuffix(f" {ENGLISH.report.CUT}"))
    assert len(shown) > 31_000 or shown == typed
    for value in row.values():
        assert not unicodedata.normalize("NFKC", value).lstrip().startswith(("=", "+", "-", "@", "\t", "\r"))
        assert value.isprintable() or not re.search(r"[\x00-\x1f\x7f-\x9f]", value)


def test_a_plain_cell_is_left_alone():
    """Only what could be a formula gets its apostrophe."""
    assert [cell(text, ENGLISH.report) for text in ("83.3 mL/h", "yes", "", "a=b")] == ["83.3 mL/h", "yes", "", "a=b"]
    assert cell("=1+1", ENGLISH.report) == "'=1+1"


@every_text
def test_as_data(report):
    """JSON gives the very same characters back."""
    content = json.loads(report.model_dump_json())
    assert content["attempt"]["learner"] == report.attempt.learner
    assert content["happenings"][1]["words"] == report.attempt.learner


def _letters(text: str) -> str:
    """The letters of a text without blanks, places to break a line, and the ways to write one letter."""
    return re.sub(r"[\s\u200b]", "", unicodedata.normalize("NFKC", text))


BY_LETTER = ("direction", "scripts", "private", "pile", "wide")
"""Whose order or letters are others on paper."""
PAPER = {name: words for name, words in WORDS.items() if name not in BY_LETTER}


@pytest.mark.parametrize("words", PAPER.values(), ids=PAPER)
def test_on_paper(words, tmp_path):
    """The PDF is made, and another program reads the words in it as they were typed."""
    report = report_of(attempts.written(tmp_path / "attempt.jsonl", words), str(tmp_path))
    assert _letters(plain(words)) in _letters(_read_back(report_pdf(report, ENGLISH.report, Paper())))


@pytest.mark.slow
@pytest.mark.parametrize("words", LONG.values(), ids=LONG)
def test_a_long_text_on_paper(words, tmp_path):
    """A hundred kilobytes in one place run over pages, and all of them are there."""
    path = attempts.written(tmp_path / "attempt.jsonl", "short")
    report = report_of(path, str(tmp_path))
    long = report.model_copy(update={"failures": (words,)})
    read = _letters(_read_back(report_pdf(long, ENGLISH.report, Paper())))
    rare = "x" if words.startswith("x") else "+" if "+" in words else "practice"
    assert read.count(rare) >= words.count(rare)


@pytest.mark.parametrize("name", BY_LETTER)
def test_letters_of_many_kinds_on_paper(name, tmp_path):
    """Letters that no font has are written out by their code points; others are there, in whatever direction."""
    report = report_of(attempts.written(tmp_path / "attempt.jsonl", WORDS[name]), str(tmp_path))
    read = _read_back(report_pdf(report, ENGLISH.report, Paper()))
    for letter in set(re.sub(r"\s", "", plain(WORDS[name]))):
        assert letter in read or f"[U+{ord(letter):04X}]" in read, letter


def _read_back(content: bytes) -> str:
    """Text of a PDF by poppler."""
    return subprocess.run(["pdftotext", "-", "-"], input=content, capture_output=True, check=True).stdout.decode()


def test_on_the_screen(tmp_path):
    """Nothing reaches the terminal that could move its cursor or change its title."""
    for words in WORDS.values():
        path = tmp_path / "attempt.jsonl"
        path.unlink(missing_ok=True)
        code, out, console = attempts.run("report", attempts.written(path, words), "--keys", tmp_path)
        assert code == 0
        assert all(letter.isprintable() or letter in "\n\u200c\u200d" for letter in out + console)
        assert one_line(words) in out


def test_statements_take_any_text(tmp_path):
    """xAPI statements are data like the report."""
    for name, words in WORDS.items():
        path = tmp_path / "attempt.jsonl"
        path.unlink(missing_ok=True)
        code, out, _ = attempts.run("report", attempts.written(path, words), "--xapi", "--keys", tmp_path)
        assert code == 0, name
        assert json.loads(out)[0]["actor"]["account"]["name"] == words


@pytest.mark.parametrize("words", WORDS.values(), ids=WORDS)
def test_a_form_of_a_hostile_checklist(words):
    """Titles, lines and cautions of a checklist are text as well."""
    text = words.strip() or "x"
    checklist = Checklist(
        name="x", title=text, version=text, purpose=text, cautions=(text,), equipment=(text,), sources=(text,),
        steps=(Step(id="one", part=text, say=text, critical=True),), digest="0" * 64,
    )  # fmt: skip
    page = _Page(form_html(form_of(checklist, ENGLISH.report), ENGLISH.report, Paper()))
    assert "script" not in page.tags
    assert "img" not in page.tags
    assert plain(text) in "".join(page.text)
    assert form_pdf(form_of(checklist, ENGLISH.report), ENGLISH.report, Paper()).startswith(b"%PDF-")
