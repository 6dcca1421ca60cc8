"""The guide: one attempt as a machine that takes events and gives effects, and never acts itself."""

import copy
from collections.abc import Iterable, Mapping

from assistant.guide.asking import expectation
from assistant.guide.effects import Append, Effect, Finish, Listen, Outcome
from assistant.guide.events import (
    Event,
    FromDesk,
    Heard,
    Opened,
    Recorded,
    Resumed,
    Typed,
    Woke,
    body_of,
    event_of,
    meaning_body,
    stamp,
)
from assistant.guide.papers import Papers
from assistant.guide.path import passed_over
from assistant.guide.progress import Consent, Mode, Person, Progress, State, StepProgress
from assistant.guide.result import Results, score
from assistant.guide.table import TABLE
from assistant.guide.turn import Input, Terms, Turn, classify, draft_of
from assistant.spoken.expect import Expect

KEEP_SOUND = "kept with consent"
"""What the pin `sound` says where the learner is to be asked whether sound may be kept."""
WITH_CODE = "with a code"
"""What the pin `instructor` says where the instructor speaks only with a code."""


class GuideMisuseError(RuntimeError):
    """The caller broke the guide's protocol: a bug in the caller, never a slip of the learner's. Nothing changed."""


class ReplayError(Exception):
    """Entries that this guide would not have written: a bug, or another program's record.

    Attributes:
        sequence: the first entry that does not follow.
    """

    def __init__(self, sequence: object) -> None:
        super().__init__(f"entry {sequence} does not follow from the ones before it")
        self.sequence = sequence


class Guide:
    """One attempt.

    The protocol: give `Opened` first, or `replay` the entries of an attempt that is taken up. Perform the effects
    of `receive` in order. An `Append` comes alone: put its body on disk, then give `Recorded`, and only then does
    anything else happen. After `Finish` only `Resumed` is taken. Whoever breaks this gets a `GuideMisuseError`.

    Attributes:
        papers: what the attempt is made from.
        terms: how it is taken.
        progress: how far it has come; replaced by `receive`, never changed in place.

    Args:
        papers: checklist, order, answer key and language.
        mode: practice or check-off.
        pins: what the first entry pins (digests, versions, the learner's code), text to text. The pins `sound`
            (`KEEP_SOUND`) and `instructor` (`WITH_CODE`) also say how the attempt is taken.

    Raises:
        GuideMisuseError: an argument of another type.
    """

    def __init__(self, papers: Papers, mode: Mode = Mode.PRACTICE, pins: Mapping[str, str] | None = None) -> None:
        pinned = dict(pins or {})
        if not isinstance(papers, Papers) or not isinstance(mode, Mode):
            # A mode given as text would compare unlike every mode, and so be taken for a check-off.
            raise GuideMisuseError(f"Papers and a Mode are needed, not {papers!r:.80} and {mode!r:.80}.")
        if not all(isinstance(text, str) for pair in pinned.items() for text in pair):
            raise GuideMisuseError("Pins are text to text, for a record keeps nothing else.")
        self.papers = papers
        self.terms = Terms(mode, pinned.get("sound") == KEEP_SOUND, pinned.get("instructor") == WITH_CODE)
        self.progress = Progress({step.id: StepProgress() for step in papers.checklist.steps})
        self._pins = pinned
        self._pending: tuple[Progress, list[Effect]] | None = None

    def receive(self, event: Event) -> list[Effect]:
        """Take one event; return what to do, in order.

        An event that was accepted gives exactly one `Append` and nothing else; what it leads to comes with
        `Recorded`. A wake-up call that has been replaced by a later one gives nothing and changes nothing, nor does
        an order from the desk that was dealt with.

        Raises:
            GuideMisuseError: the event breaks the protocol; nothing changed.
        """
        self._check_protocol(event)
        if self._pending is not None:
            self.progress, effects = self._pending
            self._pending = None
            return effects
        kind, meaning = classify(event, self.papers, self.progress, self.expectation())
        rule = TABLE.get((self.progress.state, kind)) if kind is not None else None
        if kind is None:
            return []
        if rule is None:
            if isinstance(event, Woke):
                return []
            raise GuideMisuseError(f"{type(event).__name__} is not possible while the guide is {self.progress.state}.")
        turn = Turn(self.papers, self.terms, event, meaning, draft_of(self.progress))
        if meaning is not None and kind is not Input.UNCLEAR:
            turn.draft.failures = 0
        if meaning is not None and kind is not Input.DOUBTFUL:
            turn.draft.doubted = False
        if isinstance(event, FromDesk) and event.order:
            turn.draft.orders.append(event.order)
        rule.action(turn)
        if turn.draft.state not in rule.to:
            raise AssertionError(f"{rule.action.__name__} ended in {turn.draft.state}, which the table does not allow")
        self._pending = (turn.draft, self._effects(turn))
        return [Append(self._body(turn, kind))]

    def _check_protocol(self, event: Event) -> None:
        """Refuse what a caller must not do.

        Raises:
            GuideMisuseError: it did.
        """
        name = type(event).__name__
        if not isinstance(event, Event):
            raise GuideMisuseError(f"{name} is no event.")
        if isinstance(event, Recorded):
            if self._pending is None:
                raise GuideMisuseError("Recorded came, but no entry is waiting to be put on disk.")
            return
        if self._pending is not None:
            raise GuideMisuseError(f"{name} came before Recorded: the last entry is not on disk yet.")
        if event.at.tzinfo is None:
            raise GuideMisuseError(f"The time of {name} has no zone, so no record could hold it.")
        state = self.progress.state
        if state is State.READY and not isinstance(event, Opened):
            raise GuideMisuseError(f"{name} came before Opened.")
        if state is not State.READY and isinstance(event, Opened):
            raise GuideMisuseError("Opened came twice.")
        if state is State.FINISHED and not isinstance(event, Resumed | Woke):
            raise GuideMisuseError(f"{name} came after the end; only Resumed takes an attempt up again.")

    def preview(self, event: Event) -> list[Effect]:
        """What would follow this event, as if its entry were on disk; the guide stays as it is.

        Raises:
            GuideMisuseError: as `receive`.
        """
        # receive() replaces self.progress and never changes it in place, so a shallow copy is safe to experiment on.
        trial = copy.copy(self)
        return trial.receive(Recorded(0, "")) if trial.receive(event) else []

    def expectation(self) -> Expect:
        """What is expected to be said now."""
        return expectation(self.papers, self.progress)

    def may_keep_sound(self) -> bool:
        """Whether the learner has agreed that sound is kept."""
        return self.progress.consent is Consent.GIVEN

    def results(self) -> Results:
        """The result as it stands."""
        return self._results(self.progress)

    def _results(self, progress: Progress) -> Results:
        return score(self.papers, self.terms.mode, progress, passed_over(self.papers, progress))

    def replay(self, entries: Iterable[Mapping[str, object]]) -> None:
        """Live the recorded entries again; afterwards the progress is what it was.

        Raises:
            ReplayError: an entry does not follow from the ones before it.
            ValueError: an entry gives a time without its zone.
        """
        for entry in entries:
            event = event_of(entry)
            if event is None:
                continue
            try:
                effects = self.receive(event)
            except GuideMisuseError as error:
                raise ReplayError(entry.get("sequence")) from error
            if not effects or not isinstance(effects[0], Append):
                raise ReplayError(entry.get("sequence"))
            body = effects[0].body
            if any(entry.get(name) != body.get(name) for name in ("kind", "step", "input", "verdict", "meaning")):
                raise ReplayError(entry.get("sequence"))
            self.receive(Recorded(0, ""))

    def _effects(self, turn: Turn) -> list[Effect]:
        """What is to be done once the entry is on disk; nothing where the learner is not to notice it."""
        after: list[Effect] = []
        if isinstance(turn.event, FromDesk) and not turn.said:
            return after
        if turn.outcome is not None:
            stopped = turn.outcome is Outcome.STOPPED
            after.append(Finish(turn.outcome, None if stopped else self._seal_body(turn, turn.outcome)))
        after += [*turn.said, *turn.wakes]
        if turn.outcome is None:
            wanted = turn.draft.state is not State.WAITING
            pause_s = turn.step.pause_s if turn.draft.state is State.ASKING else None
            rests = turn.draft.state in (State.PAUSED, State.HELD)
            after.append(Listen(expectation(self.papers, turn.draft), wanted, pause_s, rests))
        return after

    def _body(self, turn: Turn, kind: Input) -> dict[str, object]:
        body = body_of(turn.event)
        body["input"] = kind.value
        if isinstance(turn.event, Opened):
            body |= self._pins
        else:
            body["asked" if "step" in body else "step"] = self.papers.checklist.steps[self.progress.cursor].id
            body["state"] = self.progress.state.value
        speaker = self.progress.speaker
        if speaker is not Person.LEARNER and isinstance(turn.event, Heard | Typed):
            body["by"] = speaker.value
            if speaker is not Person.SECOND:
                body["source"] = "instructor"
        if turn.meaning is not None:
            body["meaning"] = meaning_body(turn.meaning)
        return body | turn.note

    def _seal_body(self, turn: Turn, outcome: Outcome) -> dict[str, object]:
        return {
            "kind": "finished",
            "at": stamp(turn.at),
            "outcome": outcome.value,
            "results": self._results(turn.draft).body(),
        }
