"""The guide: one attempt as a machine that takes events and gives effects, and never acts itself."""

import copy
from collections.abc import Iterable, Mapping

from assistant.checklist.model import Checklist
from assistant.guide.actions import ACTIONS
from assistant.guide.asking import expectation
from assistant.guide.effects import Append, Effect, Finish, Listen, Outcome
from assistant.guide.entries import answer_body, event_of, meaning_body, stamp
from assistant.guide.events import Event, Heard, InstructorCame, Opened, Recorded
from assistant.guide.fit import check_fit
from assistant.guide.given import Given
from assistant.guide.inputs import classify, detail
from assistant.guide.progress import Consent, Mode, Person, Progress, State, StepProgress
from assistant.guide.scoring import Results, score
from assistant.guide.states import TABLE, Input
from assistant.guide.turn import Turn
from assistant.orders.key import KeyEntry
from assistant.spoken.expect import Expect

KEEP_SOUND = "kept with consent"
"""What the pin `sound` says where the learner is to be asked whether sound may be kept."""
WITH_CODE = "with a code"
"""What the pin `instructor` says where the instructor speaks only with a code."""


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

    Attributes:
        given: the attempt's papers and mode.
        progress: where it stands; changed only by `receive`.

    Args:
        checklist: the authored procedure.
        order_text: the order in sentences, as shown.
        key: the answer key; must hold every name that the checklist asks for.
        mode: practice or check-off.
        pins: what the first entry pins (digests, versions, learner's code), text to text.

    Raises:
        OrderError: the order does not give what the checklist asks for.
    """

    def __init__(
        self,
        checklist: Checklist,
        order_text: str,
        key: Mapping[str, KeyEntry],
        mode: Mode,
        pins: Mapping[str, str],
    ) -> None:
        self.given = Given(
            checklist,
            order_text,
            key,
            mode,
            asks_consent=pins.get("sound") == KEEP_SOUND,
            instructor_code=pins.get("instructor") == WITH_CODE,
        )
        check_fit(self.given)
        self.progress = Progress({step.id: StepProgress() for step in checklist.steps})
        self._pins = dict(pins)
        self._pending: tuple[Progress, list[Effect]] | None = None

    def receive(self, event: Event) -> list[Effect]:
        """Take one event; return what to do, in order.

        An event that is not legal now gives no effects and changes nothing. Everything else gives exactly
        one `Append` (or `Finish`) and goes on when `Recorded` comes.
        """
        if isinstance(event, Recorded):
            return self._recorded()
        if self._pending is not None:
            return []
        kind, meaning = classify(event, self.progress, self.expectation())
        rule = TABLE.get((self.progress.state, kind)) if kind is not None else None
        if kind is None or rule is None:
            return []
        turn = Turn(
            self.given,
            copy.deepcopy(self.progress),
            event.at,
            spoken=isinstance(event, Heard),
            doubtful=isinstance(event, Heard) and event.doubtful,
            meaning=meaning,
            proven=isinstance(event, InstructorCame) and event.proven,
            detail=detail(event),
        )
        before = self.progress.state
        if meaning is not None and kind is not Input.UNCLEAR:
            turn.draft.failures = 0
        ACTIONS[rule.action](turn)
        if turn.draft.state not in rule.to:
            raise AssertionError(f"{rule.action} ended in {turn.draft.state}, which the table does not allow")
        body = self._body(event, kind, before, turn)
        after: list[Effect] = []
        if turn.outcome is not None:
            stopped = turn.outcome is Outcome.STOPPED
            seal = None if stopped else _seal_body(turn, self._results(turn.draft))
            after.append(Finish(turn.outcome, seal))
        after += [*turn.said, *turn.wakes]
        if turn.outcome is None:
            wanted = turn.draft.state is not State.WAITING
            pause_s = turn.step.pause_s if turn.draft.state is State.ASKING else None
            after.append(Listen(expectation(self.given, turn.draft), wanted, pause_s))
        self._pending = (turn.draft, after)
        return [Append(body)]

    def _recorded(self) -> list[Effect]:
        if self._pending is None:
            return []
        self.progress, effects = self._pending
        self._pending = None
        return effects

    def expectation(self) -> Expect:
        """What is expected now."""
        return expectation(self.given, self.progress)

    def may_keep_sound(self) -> bool:
        """Whether the learner has agreed that sound is kept."""
        return self.progress.consent is Consent.GIVEN

    def results(self) -> Results:
        """The result as it stands."""
        return self._results(self.progress)

    def _results(self, progress: Progress) -> Results:
        return score(self.given, progress)

    def replay(self, entries: Iterable[Mapping[str, object]]) -> None:
        """Live the recorded entries again; afterwards the progress is what it was.

        Raises:
            ReplayError: an entry does not follow from the ones before it.
        """
        for entry in entries:
            event = event_of(entry)
            if event is None:
                continue
            effects = self.receive(event)
            if not effects or not isinstance(effects[0], Append):
                raise ReplayError(entry.get("sequence"))
            body = effects[0].body
            if any(entry.get(name) != body.get(name) for name in ("kind", "step", "input", "verdict", "meaning")):
                raise ReplayError(entry.get("sequence"))
            self._recorded()

    def _body(self, event: Event, kind: Input, before: State, turn: Turn) -> dict[str, object]:
        body = answer_body(event)
        body["input"] = kind.value
        if isinstance(event, Opened):
            body |= self._pins
        else:
            body["step"] = self.given.checklist.steps[self.progress.cursor].id
            body["state"] = before.value
        speaker = self.progress.speaker
        if speaker is not Person.LEARNER and "words" in body:
            body["by"] = speaker.value
            if speaker is not Person.SECOND:
                body["source"] = "instructor"
        if turn.meaning is not None:
            body["meaning"] = meaning_body(turn.meaning)
        return body | turn.note


def _seal_body(turn: Turn, results: Results) -> dict[str, object]:
    return {
        "kind": "finished",
        "at": stamp(turn.at),
        "outcome": turn.outcome.value if turn.outcome else "",
        "results": results.body(),
    }
