"""A report as xAPI statements (IEEE 9274.1.1-2023), for a learning record store.

One statement for the attempt, one for each step that was reached. Every identifier follows from the content:
the same report sent twice is the same statements, and another one never has the number of the first. The
learner is an anonymous account: a code, no name. Verbs and extensions have ``tag:`` addresses (RFC 4151) under a
reserved domain; activities, statements and the registration are UUIDs of version 5 (RFC 9562).
"""

import json
from collections.abc import Iterator, Mapping
from datetime import datetime
from decimal import Decimal
from urllib.parse import urlsplit
from uuid import UUID, uuid5

from assistant.errors import UsageError
from assistant.report.content import Ended, Report, StepLine
from assistant.report.steps import NOT_DONE, NOT_REACHED, NOT_SCORED
from assistant.report.times import moment
from assistant.spoken.language import ReportWords

_NAMESPACE = UUID("7c1a4f0e-5b0e-5d0e-9b57-3c7d1f2a6e10")
"""Of every identifier here; drawn once."""
_TAG = "tag:example.org,2026:checkoff"
_VERBS = {
    Ended.PASSED: "passed",
    Ended.OWN_REPORT: "completed",
    Ended.STOPPED_FOR_CAUSE: "stopped-for-cause",
    Ended.NOT_PASSED: "failed",
    Ended.NOT_COMPLETED: "did-not-complete",
    Ended.STOPPED: "stopped",
    Ended.INTERRUPTED: "was-interrupted-at",
    Ended.NOT_KNOWN: "attempted",
}
"""Names of verbs within their addresses."""


_COMPLETED = (Ended.PASSED, Ended.OWN_REPORT, Ended.STOPPED_FOR_CAUSE, Ended.NOT_PASSED)


def statements(report: Report, home: str, words: ReportWords) -> list[dict[str, object]]:
    """The statements, the attempt's first.

    Args:
        report: the report.
        home: address (IRI) of the system that gives out the learners' codes.
        words: the language of the texts that people read.

    Raises:
        UsageError: `home` is no address.
    """
    _check(home)
    return [_identified(one) for one in (_attempt(report, home, words), *_steps(report, home, words))]


def _identified(statement: dict[str, object]) -> dict[str, object]:
    """With an identifier that follows from the content: what was sent once is never something else later."""
    return {"id": _uuid("statement", json.dumps(statement, sort_keys=True)), **statement}


def _check(home: str) -> None:
    try:
        parts = urlsplit(home)
    except ValueError:
        parts = urlsplit("")
    if not parts.scheme or not parts.netloc or not home.isprintable() or " " in home:
        raise UsageError("The home of the learners' codes must be an address.", "Write it like https://example.org/.")


def _attempt(report: Report, home: str, words: ReportWords) -> dict[str, object]:
    result: dict[str, object] = {
        "completion": report.sealed and report.outcome in _COMPLETED,
        "duration": _duration(report.attempt.seconds),
        "response": report.outcome_sentence,
        "extensions": {
            f"{_TAG}/head": report.head,
            f"{_TAG}/record-whole": report.trust.whole,
            f"{_TAG}/proven": report.trust.proven,
            f"{_TAG}/claim": report.trust.claim,
            f"{_TAG}/decision": report.decision,
        },
    }
    if report.outcome in _COMPLETED:
        # What an instructor has yet to see is neither a success nor a failure.
        if not report.to_see:
            result["success"] = report.outcome in (Ended.PASSED, Ended.STOPPED_FOR_CAUSE)
        result |= _score(report.results.get("score_percent"))
    made = _statement(report, home, _VERBS[report.outcome], _checklist(report, words), result, words)
    if report.trust.warnings:
        result["extensions"] |= {f"{_TAG}/warnings": list(report.trust.warnings)}  # type: ignore[operator]
    return made


def _score(percent: object) -> dict[str, object]:
    """A score as the standard wants it: a number, and no clinical one."""
    try:
        value = Decimal(str(percent))
    except ArithmeticError:
        return {}
    if not value.is_finite() or not 0 <= value <= 100:
        return {}
    return {"score": {"scaled": float(value / 100), "raw": float(value), "min": 0, "max": 100}}


def _steps(report: Report, home: str, words: ReportWords) -> Iterator[dict[str, object]]:
    expected = {line.id: line.expected for line in report.numbers}
    for line in report.steps:
        if line.ending in (NOT_REACHED, NOT_SCORED, "not applicable"):
            continue
        done = line.ending not in NOT_DONE
        result: dict[str, object] = {
            "completion": done,
            "success": not line.needs_a_look,
            "duration": _duration(line.seconds),
            "extensions": {
                f"{_TAG}/ending": line.ending,
                f"{_TAG}/cues": list(line.cues),
                f"{_TAG}/slips": list(line.slips),
                f"{_TAG}/evidence": line.evidence,
                f"{_TAG}/first-answer": line.first,
                f"{_TAG}/expected": expected.get(line.id, ""),
            },
        }
        if line.final:
            result["response"] = line.final
        verb = "did" if done else "did-not-do"
        made = _statement(report, home, verb, _step(report, line, words), result, words)
        context = made["context"]
        if isinstance(context, dict):
            context["contextActivities"] = {"parent": [_checklist(report, words)]}
        yield made


def _statement(
    report: Report,
    home: str,
    verb: str,
    activity: Mapping[str, object],
    result: dict[str, object],
    words: ReportWords,
) -> dict[str, object]:
    at = moment({"at": report.attempt.ended})
    statement: dict[str, object] = {
        "actor": {
            "objectType": "Agent",
            "account": {"homePage": home, "name": report.attempt.learner or "unknown"},
        },
        "verb": {"id": f"{_TAG}/verbs/{verb}", "display": {words.CODE: words.VERBS[verb]}},
        "object": dict(activity),
        "result": result,
        "context": {
            "registration": _uuid("attempt", report.attempt.began, report.attempt.checklist_digest, home),
            "platform": report.attempt.program or "checkoff",
            "language": words.CODE,
            "extensions": {
                f"{_TAG}/mode": report.attempt.mode,
                f"{_TAG}/order": report.attempt.order,
                f"{_TAG}/simulated": report.attempt.simulated,
            },
        },
    }
    if at is not None:
        statement["timestamp"] = _stamp(at)
    return statement


def _checklist(report: Report, words: ReportWords) -> dict[str, object]:
    attempt = report.attempt
    return _activity(
        _uuid("checklist", attempt.checklist, attempt.checklist_digest),
        report.title or attempt.checklist,
        words.checklist_about(attempt.checklist_version),
        "checklist",
        words,
    )


def _step(report: Report, line: StepLine, words: ReportWords) -> dict[str, object]:
    attempt = report.attempt
    name = _uuid("step", attempt.checklist, attempt.checklist_digest, line.id)
    return _activity(name, line.say, words.A_CRITICAL_STEP if line.critical else words.A_STEP, "step", words)


def _activity(name: str, title: str, about: str, kind: str, words: ReportWords) -> dict[str, object]:
    return {
        "objectType": "Activity",
        "id": f"urn:uuid:{name}",
        "definition": {
            "type": f"{_TAG}/activities/{kind}",
            "name": {words.CODE: title},
            "description": {words.CODE: about},
        },
    }


def _uuid(*names: str) -> str:
    return str(uuid5(_NAMESPACE, "\n".join(names)))


def _duration(seconds: str) -> str:
    """A length of time by ISO 8601, to a hundredth of a second."""
    return f"PT{Decimal(seconds or 0).quantize(Decimal('0.01'))}S"


def _stamp(at: datetime) -> str:
    return at.isoformat(timespec="milliseconds")
