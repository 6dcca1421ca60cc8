"""What a statement must be: rules of the xAPI text (part two, data), with the section of each.

IEEE 9274.1.1-2023 makes a standard of that text; the section numbers are those of its public version 1.0.3,
whose table of contents and section 2.2 were read, the rest from memory.
"""

import re
import uuid
from collections.abc import Iterator
from datetime import datetime

_IRI = re.compile(r"[A-Za-z][A-Za-z0-9+.-]*:\S+")
_IRL = re.compile(r"https?://[^\s/]+\S*")
_TAG = re.compile(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*")
_DURATION = re.compile(r"P(?=.)(\d+D)?(T(?=\d)(\d+H)?(\d+M)?(\d+(\.\d{1,2})?S)?)?")
STATEMENT = {"id", "actor", "verb", "object", "result", "context", "timestamp"}
RESULT = {"score", "success", "completion", "response", "duration", "extensions"}
CONTEXT = {"registration", "platform", "language", "contextActivities", "extensions"}
DEFINITION = {"name", "description", "type", "moreInfo", "extensions"}


def broken_rules(statement: dict) -> list[str]:
    """Every rule that a statement breaks, by section."""
    return list(_statement(statement))


def _statement(one: dict) -> Iterator[str]:
    if not {"actor", "verb", "object"} <= one.keys():
        yield "2.2: a statement has actor, verb and object"
        return
    yield from _only("2.2", one, STATEMENT)
    yield from _no_null(one)
    if "id" in one and not _is_uuid(one["id"]):
        yield "2.4.1: an id is a UUID"
    yield from _actor(one["actor"])
    yield from _verb(one["verb"])
    yield from _activity(one["object"])
    yield from _result(one.get("result", {}))
    yield from _context(one.get("context", {}), one["object"])
    if "timestamp" in one and not _is_time(one["timestamp"]):
        yield "4.5: a timestamp is ISO 8601 with its offset"


def _actor(actor: dict) -> Iterator[str]:
    identifiers = {"mbox", "mbox_sha1sum", "openid", "account"} & actor.keys()
    if len(identifiers) != 1:
        yield "2.4.2.3: an agent has exactly one inverse functional identifier"
    if actor.get("objectType", "Agent") != "Agent":
        yield "2.4.2.1: objectType is Agent"
    if "account" in identifiers:
        account = actor["account"]
        if set(account) != {"homePage", "name"} or not _IRL.fullmatch(account["homePage"]) or not account["name"]:
            yield "2.4.2.4: an account has a homePage, which is an IRL, and a name"


def _verb(verb: dict) -> Iterator[str]:
    yield from _only("2.4.3", verb, {"id", "display"})
    if not _is_iri(verb.get("id")):
        yield "2.4.3: the id of a verb is an IRI"
    yield from _language_map("2.4.3", verb.get("display", {}))


def _activity(activity: dict) -> Iterator[str]:
    yield from _only("2.4.4.1", activity, {"objectType", "id", "definition"})
    if activity.get("objectType", "Activity") != "Activity" or not _is_iri(activity.get("id")):
        yield "2.4.4.1: an activity has an IRI as its id"
    definition = activity.get("definition", {})
    yield from _only("2.4.4.1", definition, DEFINITION)
    for name in ("name", "description"):
        yield from _language_map("2.4.4.1", definition.get(name, {}))
    if "type" in definition and not _is_iri(definition["type"]):
        yield "2.4.4.1: the type of an activity is an IRI"


def _result(result: dict) -> Iterator[str]:
    yield from _only("2.4.5", result, RESULT)
    for name in ("success", "completion"):
        if not isinstance(result.get(name, True), bool):
            yield f"2.2: {name} is a boolean"
    if not isinstance(result.get("response", ""), str):
        yield "2.4.5: a response is text"
    if "duration" in result and not _DURATION.fullmatch(str(result["duration"])):
        yield "4.6: a duration is ISO 8601, to a hundredth of a second"
    yield from _extensions(result.get("extensions", {}))
    score = result.get("score")
    if score is not None:
        yield from _only("2.4.5.1", score, {"scaled", "raw", "min", "max"})
        if any(isinstance(value, str | bool) for value in score.values()):
            yield "2.2: a score is made of numbers"
        elif not -1 <= score.get("scaled", 0) <= 1:
            yield "2.4.5.1: scaled lies between -1 and 1"
        elif not score.get("min", 0) <= score.get("raw", 0) <= score.get("max", 100) > score.get("min", 0):
            yield "2.4.5.1: raw lies between min and max"


def _context(context: dict, activity: dict) -> Iterator[str]:
    yield from _only("2.4.6", context, CONTEXT)
    if "registration" in context and not _is_uuid(context["registration"]):
        yield "2.4.6: a registration is a UUID"
    if "platform" in context and activity.get("objectType", "Activity") != "Activity":
        yield "2.4.6: a platform goes with an activity"
    if "language" in context and not _TAG.fullmatch(context["language"]):
        yield "2.4.6: the language is an RFC 5646 tag"
    yield from _extensions(context.get("extensions", {}))
    for name, activities in context.get("contextActivities", {}).items():
        if name not in ("parent", "grouping", "category", "other"):
            yield "2.4.6.2: context activities are parent, grouping, category or other"
        for one in activities:
            yield from _activity(one)


def _only(section: str, given: dict, known: set[str]) -> Iterator[str]:
    for name in given.keys() - known:
        yield f"{section}: {name} is no property here"


def _no_null(value: object) -> Iterator[str]:
    if isinstance(value, dict):
        for name, member in value.items():
            if member is None:
                yield f"2.2: {name} is null"
            elif name != "extensions":
                yield from _no_null(member)
    elif isinstance(value, list):
        for member in value:
            yield from _no_null(member)


def _extensions(extensions: dict) -> Iterator[str]:
    if not all(_is_iri(name) for name in extensions):
        yield "4.1: names of extensions are IRIs"


def _language_map(section: str, words: dict) -> Iterator[str]:
    if not all(_TAG.fullmatch(tag) and isinstance(text, str) for tag, text in words.items()):
        yield f"{section}, 4.2: a language map has RFC 5646 tags and texts"


def _is_iri(text: object) -> bool:
    return isinstance(text, str) and _IRI.fullmatch(text) is not None


def _is_uuid(text: object) -> bool:
    try:
        return str(uuid.UUID(str(text))) == text
    except ValueError:
        return False


def _is_time(text: object) -> bool:
    try:
        return datetime.fromisoformat(str(text)).utcoffset() is not None
    except ValueError:
        return False
