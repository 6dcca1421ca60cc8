"""What entries make of an attempt as the desk shows it. Pure.

Entries tell what was said and what became of it, not what is asked next: where the attempt is now follows from the
plan and the steps that are closed. The result is never worked out here; it comes with the seal.
"""

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Self

from assistant.desk.watched import MarkSeen, Standing, StepSeen, Turn, Watched
from assistant.guide.helping import HELP, HELPED_ENOUGH
from assistant.link.messages import Begun
from assistant.report.steps import DONE_WELL, NOT_DONE
from assistant.report.times import moment
from assistant.spoken.meaning import Command

_CLOSES = frozenset({"agrees", "done", "waited", "seen", "chosen"})
"""Verdicts with which a step is closed."""
_SET_ASIDE = frozenset({"not applicable", "overruled"})
_HOLDS = frozenset({"does not agree", "not seen"})
"""Verdicts with which a step is held."""
_LEAVES = frozenset({"left open", "left out"})
_STILL = frozenset({"waiting", "paused", "with the instructor", "stopping", "offering a cue"})
"""States in which a timed wait that has begun still runs."""
_HELD = frozenset({"held", "paused", "with the instructor", "stopping"})
"""States in which a hold that has begun still holds; in any other one it has ended."""
_ENDS = frozenset({"stopped", "stopped for cause", "closed before its end"})


@dataclass(frozen=True)
class Followed(Watched):
    """An attempt that takes in its entries as they come."""

    @classmethod
    def of(cls, begun: Begun, bodies: Sequence[Mapping[str, object]]) -> Self:
        """An attempt with the entries that are there already."""
        steps = tuple(StepSeen(step, number) for number, step in enumerate(begun.plan, 1))
        return cls(begun, steps=steps).with_entries(bodies)

    def with_entries(self, bodies: Sequence[Mapping[str, object]]) -> Self:
        """The attempt after further entries."""
        for body in bodies:
            self = self._took(body)
        return self

    def _took(self, entry: Mapping[str, object]) -> Self:
        first = self.opening is None
        at = moment(entry)
        now = replace(
            self,
            opening=entry if first else self.opening,
            log=self.log if first else (*self.log, entry),
            entries=self.entries + 1,
            last_at=at or self.last_at,
        )
        if first:
            return replace(now, now=now._next_after(""), since=at, turn=Turn.ASKED)
        if "seal" in entry:
            return now._sealed(entry)
        match entry.get("kind"):
            case "marked" | "happened" | "directed":
                return now._by_the_desk(entry, at)
            case "microphone lost":
                return replace(now, deaf=True)
            case "microphone back":
                return replace(now, deaf=False)
            case "resumed":
                return replace(now, turn=Turn.HELD if now.unsafe else Turn.ASKED, since=at)
        return now._answered(entry, at)

    def _answered(self, entry: Mapping[str, object], at: datetime | None) -> Self:
        name, verdict, state = _text(entry, "step"), _text(entry, "verdict"), _text(entry, "state")
        # An instructor at the station ends a hold by handing back, and by dealing with the step.
        if state not in _HELD or (state == "with the instructor" and entry.get("input") == "go on"):
            self = self._released()
        if entry.get("seen"):  # earlier steps were marked at the station; this one is as it was
            return self._marked_there(entry)
        now = self._told(entry) if entry.get("kind") in ("heard", "typed", "not understood") else self
        if entry.get("cue"):
            now = now._with(name, lambda step: replace(step, cues=(*step.cues, _text(entry, "cue"))))
        if kept := _kept(entry):
            now = now._with(name, lambda step: replace(step, first=step.first or kept, said=kept))
        now = now._passed_over(entry)._opened_again(entry)
        if verdict in _CLOSES or (verdict in _SET_ASIDE and name):
            now = now._closed(name, verdict, entry)
        elif verdict in _HOLDS:
            now = now._with(name, lambda step: replace(step, standing=Standing.HELD, wrong=step.wrong + 1))
        elif verdict in _LEAVES:
            now = now._with(name, lambda step: replace(step, standing=Standing.LEFT))
        return now._moved(entry, at)._turned(entry)._called(entry)

    def _marked_there(self, entry: Mapping[str, object]) -> Self:
        now = replace(self, turn=Turn.WITH_INSTRUCTOR)
        for name in _texts(entry.get("seen")):
            now = now._with(name, lambda step: replace(step, seen="seen", marked=""))
        return now

    def _told(self, entry: Mapping[str, object]) -> Self:
        unclear = self.unclear + 1 if _text(entry, "verdict") == "not understood" else 0
        heard = _text(entry, "words") or "(not understood)"
        now = replace(self, heard=heard, understood=_understood(entry), unclear=unclear)
        trouble = entry.get("trouble")
        if isinstance(trouble, Mapping):
            return replace(now, trouble=f"{trouble.get('kind', '')}: {trouble.get('words', '')}")
        return replace(now, found=heard) if _text(entry, "verdict") == "found" else now

    def _closed(self, name: str, verdict: str, entry: Mapping[str, object]) -> Self:
        asked_s = None
        at = moment(entry)
        if verdict == "done" and self.since is not None and at is not None and name == self.now:
            asked_s = int((at - self.since).total_seconds())

        def close(step: StepSeen) -> StepSeen:
            if verdict in _SET_ASIDE:
                by_learner = verdict == "not applicable"
                return replace(step, standing=Standing.NOT_APPLICABLE if by_learner else Standing.SET_ASIDE)
            looked_at = step.wrong or step.cues or bool(entry.get("correction"))
            standing = Standing.LOOK if looked_at else Standing.DONE
            seen = verdict if verdict == "seen" else step.seen
            return replace(step, standing=standing, took_s=asked_s, closed=self.entries, seen=seen)

        now = self._with(name, close)
        step = now.step_of(name)
        fast = name if step is not None and step.is_fast else ""
        return replace(now, fast=fast, trouble="", found="", calls="")

    def _passed_over(self, entry: Mapping[str, object]) -> Self:
        changed = entry.get("passed_over")
        now = self
        for name, reason in changed.items() if isinstance(changed, Mapping) else ():
            standing = Standing.AHEAD if reason == "applies" else Standing.NOT_APPLICABLE
            now = now._with(str(name), lambda step, to=standing: replace(step, standing=to))  # type: ignore[misc]
        return now

    def _opened_again(self, entry: Mapping[str, object]) -> Self:
        now = self
        for name in (*_texts(entry.get("reopened")), *_texts(entry.get("taken_back"))):
            now = now._with(name, _open_again)
        return now

    def _moved(self, entry: Mapping[str, object], at: datetime | None) -> Self:
        """Where the attempt is after this entry."""
        name, verdict = _text(entry, "step"), _text(entry, "verdict")
        step = self.step_of(name)
        if step is None:
            return self
        gate = entry.get("gate")
        led = [
            *_texts(entry.get("reopened")),
            *_texts(entry.get("taken_back")),
            *(_texts(gate.get("open")) if isinstance(gate, Mapping) else ()),
            *_texts([entry.get("comes_first")]),
            *_texts([entry.get("correcting")]),
        ]
        if led:
            numbers = {one.plan.id: one.number for one in self.steps}
            to = min(led, key=lambda one: numbers.get(one, math.inf))
        elif entry.get("input") == "back" and not verdict:
            before = [one for one in self.steps[: step.number - 1] if one.standing is not Standing.NOT_APPLICABLE]
            to = before[-1].plan.id if before else name
        elif not step.is_open or verdict in _LEAVES:
            to = self._next_after(name)
        else:
            to = name
        moved = to != self.now or verdict in _CLOSES
        return replace(self, now=to, since=at if moved else self.since)

    def _next_after(self, name: str) -> str:
        """The next open step, round to the first one that was left."""
        ids = [step.plan.id for step in self.steps]
        after = ids.index(name) + 1 if name in ids else 0
        in_turn = (*self.steps[after:], *self.steps[:after])
        return next((step.plan.id for step in in_turn if step.is_open), "")

    def _turned(self, entry: Mapping[str, object]) -> Self:
        verdict, state, took = _text(entry, "verdict"), _text(entry, "state"), _text(entry, "input")
        waits = verdict == "wait started" or (
            self.turn is Turn.WAITING and state in _STILL and verdict not in ("waited", "time is up")
        )
        if verdict in _ENDS:
            turn = Turn.STOPPED
        elif self.unsafe:
            turn = Turn.HELD
        elif took == "pause" or (state == "paused" and took != "go on"):
            turn = Turn.PAUSED
        elif verdict == "instructor admitted" or (state == "with the instructor" and took != "go on"):
            turn = Turn.WITH_INSTRUCTOR if verdict != "seen" else Turn.ASKED
        elif waits:
            turn = Turn.WAITING
        else:
            turn = Turn.READING_BACK if verdict in ("read back", "digits asked") else Turn.ASKED
        return replace(self, turn=turn)

    def _called(self, entry: Mapping[str, object]) -> Self:
        """Why the learner waits for the instructor."""
        step = self.step
        if entry.get("tries_spent"):
            return replace(self, calls="No tries are left at this step.")
        if entry.get("kind") == "instructor here" and entry.get("verdict") == "refused":
            return replace(self, calls="Asked for the instructor at the station; the code was missing or wrong.")
        if self.turn is Turn.WITH_INSTRUCTOR:
            return replace(self, calls="")
        if entry.get("input") == Command.CALL.value:
            return replace(self, calls="Asks for you.")
        if step is not None and step.plan.asks == "instructor":
            return replace(self, calls="This step is answered by the instructor.")
        if step is not None and sum(cue.startswith(HELP) for cue in step.cues) >= HELPED_ENOUGH:
            return replace(self, calls="Asked for help more than once at this step.")
        return replace(self, calls="") if step is not None and step.plan.id != _text(entry, "step") else self

    def _by_the_desk(self, entry: Mapping[str, object], at: datetime | None) -> Self:
        what, words, name = _text(entry, "mark") or _text(entry, "what"), _text(entry, "words"), _text(entry, "step")
        refused = (_text(entry, "why") or "not possible now") if entry.get("verdict") == "refused" else ""
        mark = MarkSeen(_text(entry, "order"), what, name, words, at, refused=refused)
        now = replace(self, marks=(*self.marks, mark))
        if refused:
            return now
        now = now._passed_over(entry)._opened_again(entry)
        if entry.get("cue"):
            now = now._with(name, lambda step: replace(step, cues=(*step.cues, _text(entry, "cue"))))
        match (_text(entry, "kind"), what):
            case "marked", "seen" | "not seen":
                now = now._with(name, lambda step: replace(step, seen=what, marked=mark.order))
                asked = now.step_of(name)
                if what == "seen" and name == now.now and asked is not None and asked.plan.asks == "instructor":
                    now = now._closed(name, "seen", entry)
            case "marked", "unsafe":
                now = replace(now, marks=(*self.marks, replace(mark, holds=True)), turn=Turn.HELD)
            case "marked", "overrule" | "not applicable":
                now = now._closed(name, "overruled" if what == "overrule" else "not applicable", entry)
            case "marked", "undo":
                now = now._undone(_text(entry, "undoes"))
            case "directed", "pause":
                now = replace(now, turn=Turn.PAUSED)
            case "directed", "go on":
                now = replace(now._released(), turn=Turn.ASKED, since=at)
            case "directed", "stop":
                now = replace(now, turn=Turn.STOPPED)
        if not now.goes_on:
            return now
        led = {**entry, "step": now.now, "verdict": ""}
        reopened = _texts(entry.get("reopened"))
        if what == "undo" and reopened:  # what comes back ahead is asked in its turn
            led["reopened"] = (*reopened, now.now)
        return now._moved(led, at)

    def _undone(self, order: str) -> Self:
        """An earlier mark is taken back."""
        marks = tuple(replace(mark, undone=True, holds=False) if mark.order == order else mark for mark in self.marks)
        mark = next((mark for mark in self.marks if mark.order == order), None)
        now = replace(self, marks=marks)
        if mark is None:
            return now
        if mark.what == "unsafe":
            return replace(now, turn=Turn.ASKED) if now.turn is Turn.HELD and not now.unsafe else now
        if mark.what in ("seen", "not seen"):
            left = [one for one in marks if one.step == mark.step and one.what in ("seen", "not seen")]
            stands = next((one for one in reversed(left) if not one.undone and not one.refused), None)
            seen, by = (stands.what, stands.order) if stands is not None else ("", "")
            return now._with(mark.step, lambda step: replace(step, seen=seen, marked=by))
        if mark.what in ("overrule", "not applicable"):
            return now._with(mark.step, _as_answered)
        return now

    def _released(self) -> Self:
        """The attempt is held for no mark any more."""
        return replace(self, marks=tuple(replace(mark, holds=False) for mark in self.marks))

    def _sealed(self, entry: Mapping[str, object]) -> Self:
        """The attempt is over: each step stands as the result has it."""
        now = replace(self, outcome=_text(entry, "outcome"), turn=Turn.OVER, now="", calls="", trouble="", found="")
        results = entry.get("results")
        rows = results.get("steps") if isinstance(results, Mapping) else None
        for row in rows if isinstance(rows, list | tuple) else ():
            if isinstance(row, Mapping):
                ending = str(row.get("ending", ""))
                now = now._with(str(row.get("id", "")), lambda step, to=ending: _ended(step, to))  # type: ignore[misc]
        return now

    def _with(self, name: str, change: Callable[[StepSeen], StepSeen]) -> Self:
        steps = tuple(change(step) if step.plan.id == name else step for step in self.steps)
        return replace(self, steps=steps)


def _open_again(step: StepSeen) -> StepSeen:
    return replace(step, standing=Standing.AHEAD, closed=0, seen="", marked="")


def _as_answered(step: StepSeen) -> StepSeen:
    """A step whose verdict was set aside, with its own verdict again; one that was opened again stays open."""
    if step.is_open:
        return step
    return replace(step, standing=Standing.LOOK if step.wrong or step.cues else Standing.DONE)


def _ended(step: StepSeen, ending: str) -> StepSeen:
    if ending == "not applicable":
        return replace(step, standing=Standing.NOT_APPLICABLE)
    if step.standing is Standing.SET_ASIDE:
        return step
    if ending in NOT_DONE:
        return replace(step, standing=Standing.LEFT)
    return replace(step, standing=Standing.DONE if ending in DONE_WELL and not step.cues else Standing.LOOK)


def _understood(entry: Mapping[str, object]) -> str:
    """What words were taken for, in a few words."""
    meaning = entry.get("meaning")
    if not isinstance(meaning, Mapping):
        return _text(entry, "verdict")
    if "refused" in meaning:
        return f"not taken: {meaning['refused']}"
    if "readings" in meaning:
        return f"could be {', '.join(_texts(meaning['readings']))}"
    return f"{meaning.get('value', '')} {meaning.get('unit') or ''}".strip()


def _kept(entry: Mapping[str, object]) -> str:
    """The answer that was kept: a number after its read-back, a name, a choice."""
    if kept := _text(entry, "kept"):
        return kept
    meaning = entry.get("meaning")
    decided = entry.get("verdict") in _CLOSES | _HOLDS
    if decided and isinstance(meaning, Mapping) and meaning.get("kind") in ("name", "choice", "text"):
        return str(meaning.get("value", ""))
    return ""


def _text(entry: Mapping[str, object], name: str) -> str:
    value = entry.get(name)
    return value if isinstance(value, str) else ""


def _texts(value: object) -> tuple[str, ...]:
    return tuple(one for one in value if isinstance(one, str) and one) if isinstance(value, Iterable) else ()
