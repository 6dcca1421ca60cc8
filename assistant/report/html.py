"""A report and a blank form as one self-contained HTML file: no script, nothing fetched, two style sheets."""

from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING, Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from assistant.report.content import Report
from assistant.report.paper import Paper
from assistant.report.plain import plain_all
from assistant.report.view import view

if TYPE_CHECKING:
    from assistant.report.form import Form


def report_html(report: Report, paper: Paper) -> str:
    """The page of a report.

    Args:
        report: what it says.
        paper: size and print of the printed page.
    """
    return _filled("report.html", {"report": view(report)}, paper)


def form_html(form: "Form", paper: Paper) -> str:
    """The page of a blank form."""
    return _filled("form.html", {"form": plain_all(form.model_dump(mode="json"))}, paper)


def _filled(template: str, values: Mapping[str, Any], paper: Paper) -> str:
    return _environment().get_template(template).render(**values, paper=paper)


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
