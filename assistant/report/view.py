"""A report as pages show it: harmless text, grouped and with times in words. HTML and PDF are made from this."""

import re
from collections.abc import Iterable, Mapping
from datetime import datetime
from decimal import Decimal
from itertools import groupby
from pathlib import PurePath
from typing import Any

from assistant.report.content import Ended, Report
from assistant.report.plain import plain_all
from assistant.report.times import clock

WORDS = {
    Ended.PASSED: "Passed",
    Ended.NOT_PASSED: "Not passed",
    Ended.NOT_COMPLETED: "Not completed",
    Ended.STOPPED: "Stopped before the end",
    Ended.INTERRUPTED: "Interrupted",
    Ended.NOT_KNOWN: "Not known",
}
"""The outcome in large letters."""


_LONGEST_HEADING = 120
_QUANTITY = re.compile(r"(?<=\d) (?=[A-Za-z%])")


def view(report: Report) -> dict[str, Any]:
    """What the pages are filled with: texts, numbers for counting and lists of both.

    Args:
        report: the report, as typed.

    Returns:
        The fields of `Report` with all texts made plain, and beside them ``heading``, ``outcome_word``, ``facts``,
        ``evidence``, ``look`` (steps that need a look), ``parts`` (all steps by their heading) and ``log``.
    """
    shown: dict[str, Any] = plain_all(report.model_dump(mode="json"))  # type: ignore[assignment]
    for line in shown["steps"]:
        line["time"] = clock(Decimal(line["seconds"])) if Decimal(line["seconds"]) else ""
        line["marks"] = [word for word in ("critical", "gate") if line[word]]
        line["answer"] = _answer(line)
    for line in shown["numbers"]:
        line["working"] = [together(words) for words in line["working"]]
        line["difference"] = together(line["difference"])
    shown["order_text"] = [together(words) for words in shown["order_text"]]
    shown["heading"] = _heading(shown["title"])
    shown["outcome_word"] = WORDS[report.outcome]
    shown["facts"] = list(_facts(shown["attempt"]))
    if shown["heading"] != shown["title"]:
        shown["facts"].append(("Title in full", shown["title"]))
    shown["evidence"] = list(_evidence(shown))
    shown["look"] = [line for line in shown["steps"] if line["needs_a_look"] and line["ending"] != "not reached"]
    shown["not_reached"] = sum(line["ending"] == "not reached" for line in shown["steps"])
    shown["parts"] = [
        {"name": name, "steps": list(lines)} for name, lines in groupby(shown["steps"], key=lambda line: line["part"])
    ]
    shown["log"] = [_log_line(line) for line in shown["happenings"]]
    return shown


def together(words: str) -> str:
    """Numbers stay on one line with their units: a number at the end of a line is read without its unit."""
    return _QUANTITY.sub("\u00a0", words)


def _heading(title: str) -> str:
    """A title that leaves room for what must be seen at once."""
    flat = " ".join(title.split())
    return flat if len(flat) <= _LONGEST_HEADING else f"{flat[: _LONGEST_HEADING - 1]}\u2026"


def _answer(line: Mapping[str, Any]) -> str:
    if line["first"] and line["first"] != line["final"]:
        return f"first {line['first']}, then {line['final'] or 'nothing'}"
    return str(line["final"])


def when(stamp: str) -> str:
    """An ISO 8601 time as people read it, in UTC; whatever else stands there, as it is."""
    try:
        at = datetime.fromisoformat(stamp)
    except ValueError:
        return stamp
    return f"{at.day} {at:%B %Y, %H:%M:%S} UTC"


def _facts(attempt: Mapping[str, Any]) -> Iterable[tuple[str, str]]:
    yield "Learner", attempt["learner"] or "not named"
    yield "Mode", attempt["mode"]
    yield "Began", when(attempt["began"])
    yield "Ended", when(attempt["ended"])
    yield "Time at work", clock(Decimal(attempt["seconds"]))
    if attempt["interruptions"]:
        yield "Taken up again", f"{attempt['interruptions']} times, after a stop or an interruption"
    yield "Answers", f"{attempt['spoken']} spoken, {attempt['typed']} typed"
    yield "Checklist", f"{PurePath(attempt['checklist']).stem}, version {attempt['checklist_version'] or 'unknown'}"
    yield "Order", PurePath(attempt["order"]).stem


def _evidence(shown: Mapping[str, Any]) -> Iterable[tuple[str, str]]:
    attempt, trust = shown["attempt"], shown["trust"]
    yield "Record", trust["file"]
    yield "Entries", f"{trust['count']:,}"
    yield "Head digest (SHA-256)", shown["head"]
    yield "Checklist digest", attempt["checklist_digest"]
    yield "Order digest", attempt["order_digest"]
    yield "Limits digest", attempt["limits_digest"]
    yield "Program", attempt["program"]
    if attempt["ear"]:
        yield "Recogniser", f"{attempt['ear']}, model {attempt['ear_model']}"


def _log_line(line: Mapping[str, Any]) -> dict[str, Any]:
    said = f"{line['source']}: {line['words']}" if line["words"] else line["kind"]
    found = [line["taken_as"] and f"taken as {line['taken_as']}", line["verdict"], *line["details"]]
    return {
        "entry": line["entry"],
        "clock": line["clock"],
        "step": line["step"] or "",
        "said": said,
        "found": "; ".join(part for part in found if part),
    }
