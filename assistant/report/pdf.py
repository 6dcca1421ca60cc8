"""A report and a blank form as PDF: tagged (PDF/UA-1), fonts embedded, the same bytes for the same content."""

import json
import re
from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from functools import cache
from importlib.resources import as_file, files
from typing import TYPE_CHECKING, Any, Literal

import typst

from assistant.report.content import Report
from assistant.report.paper import TYPST_NAMES, Paper
from assistant.report.plain import plain_all, written_out
from assistant.report.times import moment
from assistant.report.view import fixed_texts, view
from assistant.spoken.language import ReportWords

if TYPE_CHECKING:
    from assistant.report.form import Form
    from assistant.report.review import Review

STANDARD: Literal["ua-1"] = "ua-1"
"""PDF/UA-1 (ISO 14289-1)."""
_BREAK = "\u200b"
_LONG_WORD = re.compile(r"\S{21,}")
_PIECE = re.compile(r"\S{10}(?=\S)")
"""A word of more than 20 letters may be broken after every ten, so that nothing runs into the next column."""
_WHOLE = frozenset({"head", "evidence", "fingerprint", "digest", "picture"})
"""What is never broken: digests are copied and compared, and have a line of their own."""
_NO_FONT = re.compile(r"the text `\"(.+?)\"` could not be displayed")
NO_DATE = datetime(2000, 1, 1, tzinfo=UTC)
"""The date of a document that has none of its own: the same form is the same file at any time."""


def report_pdf(report: Report, words: ReportWords, paper: Paper) -> bytes:
    """The report on paper; its date is that of the attempt's end."""
    at = moment({"at": report.attempt.ended}) or NO_DATE
    return compiled("report.typ", {"report": view(report, words), "w": fixed_texts(words)}, paper, at)


def form_pdf(form: "Form", words: ReportWords, paper: Paper) -> bytes:
    """The blank form."""
    return compiled("form.typ", {"form": form.model_dump(mode="json"), "w": fixed_texts(words)}, paper, NO_DATE)


def review_pdf(review: "Review", words: ReportWords, paper: Paper) -> bytes:
    """The page on which a checklist is reviewed."""
    return compiled("review.typ", {"review": review.model_dump(mode="json"), "w": fixed_texts(words)}, paper, NO_DATE)


def compiled(template: str, content: Mapping[str, Any], paper: Paper, at: datetime) -> bytes:
    """Compile a template; letters that no font has are written out by their code points."""
    shown = json.dumps(every_text(_breakable, plain_all(content)), ensure_ascii=False)
    try:
        return _compile(template, shown, paper, at, system_fonts=False)
    except typst.TypstError as cause:
        if not _NO_FONT.search(str(cause)):
            raise
    while True:  # each round writes out at least one letter that no font has
        try:
            return _compile(template, shown, paper, at, system_fonts=True)
        except typst.TypstError as cause:
            missing = {letter for words in _NO_FONT.findall(str(cause)) for letter in words if not letter.isascii()}
            if not missing:
                raise
            shown = shown.translate({ord(letter): written_out(letter) for letter in missing})


def _compile(template: str, content: str, paper: Paper, at: datetime, *, system_fonts: bool) -> bytes:
    with as_file(files("assistant.report") / "templates") as folder:
        return typst.compile(
            str(folder / template),
            root=str(folder),
            font_paths=_fonts(system_fonts),
            format="pdf",
            pdf_standards=STANDARD,
            sys_inputs={"content": content, "paper": TYPST_NAMES[paper.size], "points": str(paper.points)},
            timestamp=int(at.timestamp()),
        )


@cache
def _fonts(system: bool) -> typst.Fonts:
    return typst.Fonts(include_system_fonts=system)


def _breakable(text: str) -> str:
    """Long words with places at which a line may be broken."""
    return _LONG_WORD.sub(lambda word: _PIECE.sub(rf"\g<0>{_BREAK}", word[0]), text)


def every_text(change: Callable[[str], str], value: Any) -> Any:
    """All texts in lists and mappings changed, but for names of members and what is never broken."""
    match value:
        case str():
            return change(value)
        case dict():
            return {name: member if name in _WHOLE else every_text(change, member) for name, member in value.items()}
        case list():
            return [every_text(change, member) for member in value]
        case _:
            return value
