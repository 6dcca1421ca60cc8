"""A sealed record lived again: do its entries, its outcome and its results follow from each other?

The chain shows that entries follow each other; here it is shown that this program, given the same papers and the same
words, makes the same entries and comes to the same result. That proves nothing of who said the words.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import chain, islice
from pathlib import Path

import orjson

from assistant.attempts.papers import AttemptPapers, papers_of
from assistant.attempts.pins import changed_table, program_pins, under_a_librarys_name
from assistant.errors import AssistantError
from assistant.guide.effects import Append, Finish, Outcome
from assistant.guide.events import Recorded, event_of
from assistant.guide.guide import Guide, GuideMisuseError
from assistant.guide.progress import Mode
from assistant.record.clocks import clock_differences
from assistant.record.decisions import CLOSED
from assistant.record.entry import ERASED, OWN_FIELDS, plain
from assistant.record.lived import Difference, Finding, LivedAgain
from assistant.text import shown

MOST_DIFFERENCES = 10
"""Differences that are named; one is enough, and a hostile record could hold one in each field."""

_ADDED = OWN_FIELDS | {"ticks", "format", "sound", "order"}
"""Fields that the guide does not write: the record and the station do."""
_ADDED_ON_RESUMING = _ADDED | {"program_digest"}
"""The same for an entry `resumed`."""
_NO_EVENTS = frozenset({"latency", "recovered", ERASED})
"""Kinds of entries that nothing of the attempt depends on."""
_PAPERS = ("checklist", "checklist_digest", "order", "order_digest", "school", "school_digest", "waits")
_READ: dict[tuple[str, ...], AttemptPapers] = {}
"""Papers by their pins; digests are among these, so what was read stays right."""
_LONGEST = 80
"""Characters of a value that is named."""


class _DifferError(Exception):
    """The entries cease to follow from each other here. Never leaves this module."""

    def __init__(self, difference: Difference) -> None:
        super().__init__()
        self.difference = difference


def live_again(entries: Sequence[Mapping[str, object]], name: Path, beside: Path | None = None) -> LivedAgain:
    """Live a sealed record again with the papers that its first entry pins.

    Args:
        entries: all of them; their chain holds.
        name: the record's file, for sentences.
        beside: folder of the record, in which its papers may be kept; None for that of `name`.
    """
    try:
        papers = _papers(entries[0], name, beside)
    except AssistantError as error:
        return LivedAgain(Finding.NOT_POSSIBLE, error.what)
    return live_again_with(papers, entries)


def _papers(opening: Mapping[str, object], name: Path, beside: Path | None) -> AttemptPapers:
    """The papers that a first entry pins, read once for all records with the same pins.

    Raises:
        AssistantError: they are not at hand.
    """
    key = tuple(str(opening.get(pin, "")) for pin in _PAPERS)
    if key not in _READ:
        _READ[key] = papers_of(opening, name, beside)
    return _READ[key]


def live_again_with(papers: AttemptPapers, entries: Sequence[Mapping[str, object]]) -> LivedAgain:
    """Live a sealed record again with these papers, those that it pins."""
    return replace(_lived_with(papers, entries), papers=under_a_librarys_name(entries[0]))


def _lived_with(papers: AttemptPapers, entries: Sequence[Mapping[str, object]]) -> LivedAgain:
    opening = entries[0]
    found: list[Difference] = []
    try:
        own = entries[: next((place for place, entry in enumerate(entries, 1) if "seal" in entry), len(entries))]
        found += islice(chain(_differences(papers, entries), clock_differences(own)), MOST_DIFFERENCES)
    except AssistantError as error:  # a table of the library cannot be used
        return LivedAgain(Finding.NOT_POSSIBLE, error.what)
    table = changed_table(opening)
    if not found:  # a table that has changed, and changed nothing here, speaks against nothing
        return LivedAgain(Finding.SAME, table)
    if table:
        return LivedAgain(Finding.NOT_POSSIBLE, table)
    first = f"{str(found[0])[0].upper()}{str(found[0])[1:]}."
    if _judged_here(entries):
        return LivedAgain(Finding.DIFFERS, first, tuple(found))
    why = f"It was judged by another version of this program ({_program(opening)}); by this one it comes out otherwise."
    return LivedAgain(Finding.OTHER_VERSION, f"{why} {first}", tuple(found))


def _judged_here(entries: Sequence[Mapping[str, object]]) -> bool:
    """Every sitting of the attempt was judged by the code that judges now."""
    here = program_pins()
    if any(entries[0].get(name) != value for name, value in here.items()):
        return False
    code = here.get("program_digest")
    return all(entry.get("program_digest", code) == code for entry in entries if entry.get("kind") == "resumed")


def _program(opening: Mapping[str, object]) -> str:
    digest = opening.get("program_digest")
    state = f"code {shown(digest[:12])}" if isinstance(digest, str) and digest else "code not pinned"
    return f"{shown(str(opening.get('program', 'not named'))[:_LONGEST])}, {state}"


def _differences(papers: AttemptPapers, entries: Sequence[Mapping[str, object]]) -> Iterator[Difference]:
    opening = entries[0]
    try:
        mode = Mode(str(opening.get("mode")))
    except ValueError:
        yield _difference(opening, "mode", None)
        return
    guide = papers.guide(mode, {key: value for key, value in opening.items() if isinstance(value, str)})
    finish: Finish | None = None
    for entry in entries:
        if "seal" in entry:
            yield from _of_seal(entry, guide, finish)
            return
        try:
            body, finish = _lived(guide, entry, finish)
        except _DifferError as differ:
            yield differ.difference
            return  # whatever comes after it follows from something else
        if body is not None:
            yield from _of_entry(entry, body)


def _lived(
    guide: Guide, entry: Mapping[str, object], finish: Finish | None
) -> tuple[Mapping[str, object] | None, Finish | None]:
    """What the guide writes about the event of an entry, and the end that it leads to, if any.

    Raises:
        _DifferError: the event cannot have happened here.
    """
    try:
        event = event_of(entry)
        if event is None:
            if str(entry.get("kind")) not in _NO_EVENTS:
                raise _DifferError(_difference(entry, "kind", None))
            return None, finish
        effects = guide.receive(event)
        if not effects or not isinstance(effects[0], Append):
            raise _DifferError(_difference(entry, "kind", None))
        body = plain(effects[0].body)
        following = guide.receive(Recorded(0, ""))
    except GuideMisuseError:
        raise _DifferError(_difference(entry, "kind", None)) from None
    except (ValueError, ArithmeticError, RecursionError):  # no time, one beyond the calendar's end, a nested text
        raise _DifferError(_difference(entry, "at", None)) from None
    return body, next((effect for effect in following if isinstance(effect, Finish)), None)


def _of_entry(entry: Mapping[str, object], body: Mapping[str, object]) -> Iterator[Difference]:
    added = _ADDED_ON_RESUMING if entry.get("kind") == "resumed" else _ADDED
    for name in sorted(body.keys() | (entry.keys() - added)):
        if name not in body or name not in entry or not _same(entry[name], body[name]):
            yield _difference(entry, name, body.get(name))


def _of_seal(entry: Mapping[str, object], guide: Guide, finish: Finish | None) -> Iterator[Difference]:
    if entry.get("kind") == CLOSED:  # by an instructor, for whoever left the attempt
        lived: dict[str, object] = {"outcome": Outcome.NOT_COMPLETED.value, "results": guide.results().body()}
        if "results" not in entry:  # its papers were not at hand when it was closed
            del lived["results"]
    elif finish is None or finish.seal is None:
        yield _difference(entry, "seal", None)
        return
    else:
        lived = dict.fromkeys(entry.keys() - _ADDED - {"seal"}) | dict(finish.seal)
    lived = plain(lived)
    for name in sorted(lived):
        if name == "results":
            yield from _of_results(entry, entry.get(name), lived[name])
        elif not _same(entry.get(name), lived[name]):
            yield _difference(entry, name, lived[name])


def _of_results(entry: Mapping[str, object], recorded: object, lived: object) -> Iterator[Difference]:
    """Field by field, and step by step: that is what a person can look up in the report."""
    if not isinstance(recorded, Mapping) or not isinstance(lived, Mapping):
        yield _difference(entry, "results", lived)
        return
    for name in sorted(recorded.keys() | lived.keys()):
        before, after = recorded.get(name), lived.get(name)
        if _same(before, after):
            continue
        if name != "steps" or not _same_steps(before, after):
            yield _difference(entry, f"results, {name}", after, before)
            continue
        for was, comes in zip(_lines(before), _lines(after), strict=True):
            for field in sorted(was.keys() | comes.keys()):
                if not _same(was.get(field), comes.get(field)):
                    yield _difference(entry, field, comes.get(field), was.get(field), str(comes.get("id", "")))


def _lines(steps: object) -> list[Mapping[str, object]]:
    return [line for line in steps if isinstance(line, Mapping)] if isinstance(steps, list) else []


def _same_steps(recorded: object, lived: object) -> bool:
    """Both are lists of the same steps in the same order, and nothing else stands between them."""
    lines = _lines(recorded)
    return (
        isinstance(recorded, list)
        and len(lines) == len(recorded)
        and [line.get("id") for line in lines] == [line.get("id") for line in _lines(lived)]
    )


def _same(recorded: object, lived: object) -> bool:
    """The same when written: true is not 1."""
    try:
        return orjson.dumps(recorded, option=orjson.OPT_SORT_KEYS) == orjson.dumps(lived, option=orjson.OPT_SORT_KEYS)
    except orjson.JSONEncodeError:  # nested deeper than anything that the guide writes
        return False


_AS_IN_THE_ENTRY = object()


def _difference(
    entry: Mapping[str, object], name: str, lived: object, recorded: object = _AS_IN_THE_ENTRY, step: str | None = None
) -> Difference:
    was = entry.get(name) if recorded is _AS_IN_THE_ENTRY else recorded
    of_step = str(entry.get("step", "")) if step is None else step
    number = entry.get("sequence")
    return Difference(
        number if isinstance(number, int) else 0, shown(of_step[:_LONGEST]), name, _told(was), _told(lived)
    )


def _told(value: object) -> str:
    """A value in a sentence, cut where it is long."""
    if value is None:
        return ""
    try:
        text = shown(str(value))
    except RecursionError:
        return "something nested"
    return text if len(text) <= _LONGEST else f"{text[:_LONGEST]} ..."
