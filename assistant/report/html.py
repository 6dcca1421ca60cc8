"""A report and a blank form as one self-contained HTML file: no script, nothing fetched, two style sheets."""

from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING, Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from assistant.report.content import Report
from assistant.report.paper import Paper
from assistant.report.plain import plain_all
from assistant.report.view import fixed_texts, view
from assistant.spoken.language import ReportWords

if TYPE_CHECKING:
    from assistant.report.form import Form
    from assistant.report.review import Review


def report_html(report: Report, words: ReportWords, paper: Paper) -> str:
    """The page of a report.

    Args:
        report: what it says.
        words: the language of headings and labels.
        paper: size and print of the printed page.
    """
    return _filled("report.html", {"report": view(report, words)}, words, paper)


def form_html(form: "Form", words: ReportWords, paper: Paper) -> str:
    """The page of a blank form."""
    return _filled("form.html", {"form": plain_all(form.model_dump(mode="json"))}, words, paper)


def review_html(review: "Review", words: ReportWords, paper: Paper) -> str:
    """The page on which a checklist is reviewed."""
    return _filled("review.html", {"review": plain_all(review.model_dump(mode="json"))}, words, paper)


def _filled(template: str, values: Mapping[str, Any], words: ReportWords, paper: Paper) -> str:
    return _environment().get_template(template).render(**values, w=fixed_texts(words), paper=paper)


@cache
def _environment() -> Environment:
    return Environment(
        loader=PackageLoader("assistant.report"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
