"""A report as pages show it: harmless text, grouped and with times in words. HTML and PDF are made from this."""

import re
from collections.abc import Iterable, Mapping
from datetime import datetime
from decimal import Decimal
from itertools import groupby
from pathlib import PurePath
from typing import Any

from assistant.report.bench import DEALT_WITH
from assistant.report.content import Report
from assistant.report.plain import plain, plain_all
from assistant.report.steps import NOT_REACHED, RIGHT
from assistant.report.strip import Strip, strip
from assistant.report.times import clock
from assistant.spoken.language import ReportWords

_LONGEST_HEADING, _LONGEST_CODE = 120, 40
_QUANTITY = re.compile(r"(?<=\d) (?=[A-Za-z%])")


def fixed_texts(words: ReportWords) -> dict[str, str]:
    """All fixed texts of a language by their names, as the templates take them."""
    texts = {name: getattr(words, name) for name in dir(words) if name.isupper()}
    return {name: text for name, text in texts.items() if isinstance(text, str)}


def view(report: Report, words: ReportWords) -> dict[str, Any]:
    """What the pages are filled with: texts, numbers for counting and lists of both.

    Args:
        report: the report, as typed.
        words: the language of the page.

    Returns:
        The fields of `Report` with all texts made plain, and beside them ``heading``, ``facts``, ``evidence``,
        ``look`` (steps to review), ``strips``, ``wrong`` and ``right`` numbers, ``parts`` (all steps by their
        heading) and ``log``. What takes a sentence with values in it is put into words here: the templates know fixed
        texts alone.
    """
    shown: dict[str, Any] = plain_all(report.model_dump(mode="json"))  # type: ignore[assignment]
    for line in shown["steps"]:
        _show_step(line, words)
    for line in shown["numbers"]:
        _show_number(line, words)
    for fault in shown["laid_out"]:
        fault["missed"] = fault["fate"] not in DEALT_WITH
        fault["what"], fault["reaches"] = together(fault["what"]), together(fault["reaches"])
        fault["fate"] = words.fate(fault["fate"], fault["step"])
    shown["bench"] = [
        (heading, shown[name])
        for heading, name in ((words.NOT_LAID_OUT, "not_laid_out"), (words.TO_BE_SEEN, "to_see"))
        if shown[name]
    ]
    for one in shown["feedback"]["practise"]:
        one["why"] = words.why_it_matters(one["why"]) if one["why"] else ""
    for one in shown["decisions"]:
        one["sentence"] = words.signed_entry(one["entry"], one["at"], one["kind"], one["decision"], one["signer"])
        one["reason"] = words.because(one["reason"]) if one["reason"] else ""
        one["key"] = words.signed_with(one["key_name"])
    shown["order_text"] = [together(sentence) for sentence in shown["order_text"]]
    _show_head(shown, report, words)
    shown["evidence"] = list(_evidence(shown, words))
    shown["look"] = [line for line in shown["steps"] if line["needs_a_look"] and line["reached"]]
    not_reached = sum(not line["reached"] for line in shown["steps"])
    shown["not_reached"] = words.not_reached(not_reached) if not_reached else ""
    shown["all_unaided"] = words.EVERY_REACHED_STEP_UNAIDED if not_reached else words.EVERY_STEP_UNAIDED
    shown["parts"] = [
        {"name": name, "steps": steps, "look": any(line["needs_a_look"] for line in steps)}
        for name, lines in groupby(shown["steps"], key=lambda line: line["part"])
        for steps in [list(lines)]
    ]
    shown["strips"] = [one._asdict() for one in _strips(report, words)]
    shown["wrong"] = [line for line in shown["numbers"] if not line["right"]]
    shown["numbers_right"] = words.right_first_time(
        sum(one["right"] for one in shown["numbers"]), len(shown["numbers"])
    )
    shown["right"] = [line for line in shown["numbers"] if line["right"]]
    shown["log"] = [_log_line(line, words) for line in shown["happenings"]]
    return shown


def _strips(report: Report, words: ReportWords) -> Iterable[Strip]:
    """A strip of marks for each part of the checklist."""
    for name, lines in groupby(report.steps, key=lambda line: line.part):
        steps = list(lines)
        others = [(line.number, line.ending) for line in steps if line.needs_a_look and line.ending != NOT_REACHED]
        well = sum(not line.needs_a_look for line in steps)
        yield strip(plain(name), steps, words.strip(plain(name), well, len(steps), others))


def _show_step(line: dict[str, Any], words: ReportWords) -> None:
    line["time"] = clock(Decimal(line["seconds"])) if Decimal(line["seconds"]) else ""
    line["answer"] = _answer(line, words)
    line["reached"] = line["ending"] != NOT_REACHED
    line["ending"] = words.ending(line["ending"])
    line["slips"] = words.slips_made(line["slips"]) if line["slips"] else ""
    line["cues"] = words.help_given(line["cues"]) if line["cues"] else ""
    line["evidence"] = words.evidence(line["evidence"])


def _show_number(line: dict[str, Any], words: ReportWords) -> None:
    line["right"] = line["verdict"] == RIGHT
    line["verdict"] = words.number_verdict(line["verdict"])
    line["working"] = [together(one) for one in line["working"]]
    off = line["difference"] not in ("", words.NO_DIFFERENCE)
    line["difference"] = words.first_answer_off(together(line["difference"])) if off else ""
    line["slips"] = words.slips_made(line["slips"]) if line["slips"] else ""
    answers = _answer(line, words) if line["first"] != line["final"] else ""
    line["beside"] = [one for one in (answers, line["difference"], line["slips"]) if one]


def _show_head(shown: dict[str, Any], report: Report, words: ReportWords) -> None:
    attempt, title = shown["attempt"], shown["title"]
    heading = shown["heading"] = _cut(" ".join(title.split()), _LONGEST_HEADING)
    mode, learner = report.attempt.mode, _cut(attempt["learner"], _LONGEST_CODE)
    shown["outcome_word"] = words.outcome_heading(report.outcome, mode)
    shown["outcome_class"] = report.outcome.replace(" ", "-") if mode != "practice" else "practice"
    shown["headline"] = words.headline(shown["outcome_word"], shown["cause"])
    shown["document_title"] = words.document_title(report.outcome, mode, heading)
    shown["page_title"] = words.page_title(report.outcome, mode, heading, learner)
    shown["running_head"] = words.running_head(heading, learner, when(attempt["began"], words))
    shown["facts"] = list(_facts(attempt, words))
    if heading != title:
        shown["facts"].append((words.TITLE_IN_FULL, title))


def together(words: str) -> str:
    """Numbers stay on one line with their units: a number at the end of a line is read without its unit."""
    return _QUANTITY.sub("\u00a0", words)


def _cut(text: str, longest: int) -> str:
    """A text that leaves room for what must be seen at once."""
    return text if len(text) <= longest else f"{text[: longest - 1]}\u2026"


def _answer(line: Mapping[str, Any], words: ReportWords) -> str:
    if line["first"] and line["first"] != line["final"]:
        return words.first_then(line["first"], line["final"])
    return str(line["final"])


def when(stamp: str, words: ReportWords) -> str:
    """An ISO 8601 time as people read it; whatever else is in its place, as it is."""
    try:
        return words.when(datetime.fromisoformat(stamp))
    except ValueError:
        return stamp


def _facts(attempt: Mapping[str, Any], words: ReportWords) -> Iterable[tuple[str, str]]:
    yield words.LEARNER, attempt["learner"] or words.NOT_NAMED
    yield words.MODE, words.mode(attempt["mode"])
    yield words.BEGAN, when(attempt["began"], words)
    yield words.ENDED, when(attempt["ended"], words)
    yield words.TIME_AT_WORK, clock(Decimal(attempt["seconds"]))
    if attempt["interruptions"]:
        yield words.TAKEN_UP_AGAIN, words.resumptions(attempt["interruptions"])
    yield words.ANSWERS, words.answers_by(attempt["spoken"], attempt["typed"], attempt.get("unheard", 0))
    yield words.CHECKLIST, words.checklist_named(PurePath(attempt["checklist"]).stem, attempt["checklist_version"])
    yield words.ORDER, PurePath(attempt["order"]).stem


def _evidence(shown: Mapping[str, Any], words: ReportWords) -> Iterable[tuple[str, str]]:
    attempt, trust = shown["attempt"], shown["trust"]
    yield words.RECORD, trust["file"]
    yield words.ENTRIES, words.number(trust["count"])
    yield words.HEAD_DIGEST, shown["head"]
    yield words.SHORT_HEAD, shown["short_head"]
    yield words.CHECKLIST_DIGEST, attempt["checklist_digest"]
    yield words.ORDER_DIGEST, attempt["order_digest"]
    yield words.LIMITS_DIGEST, attempt["limits_digest"]
    yield words.PROGRAM, attempt["program"]
    if attempt["ear"]:
        yield words.RECOGNISER, words.recogniser_named(attempt["ear"], attempt["ear_model"])


def _log_line(line: Mapping[str, Any], words: ReportWords) -> dict[str, Any]:
    said = words.field(line["source"], line["words"]) if line["words"] else words.recorded(line["kind"])
    taken_as = words.taken_as(line["taken_as"]) if line["taken_as"] else ""
    found = [taken_as, words.recorded(line["verdict"]), *line["details"]]
    return {
        "entry": line["entry"],
        "clock": line["clock"],
        "step": line["step"] or "",
        "said": said,
        "found": "; ".join(part for part in found if part),
        "undone": line["undone"],
    }
