"""A checklist as the program holds it: typed, frozen, checked. What steps are made of comes from here, too."""

from collections.abc import Collection, Mapping
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import Field, StrictBool

from assistant.checklist.asked import (
    Asked,
    ChoiceAsked,
    DoneAsked,
    DoubleCheckAsked,
    NameAsked,
    NoteAsked,
    NumberAsked,
    ObservationAsked,
    QuestionAsked,
    WaitAsked,
)
from assistant.checklist.condition import USUAL_LAB, Condition, LabTrait
from assistant.checklist.paper import LONGEST_ID, Number, Paper, Phrase, StepId, Text, refuse
from assistant.dosing import Amount
from assistant.spoken import speech
from assistant.spoken.meaning import Trouble

__all__ = [
    "LONGEST_ID",
    "Asked",
    "Checklist",
    "ChoiceAsked",
    "Condition",
    "DoneAsked",
    "DoubleCheckAsked",
    "Expiry",
    "Inclusion",
    "NameAsked",
    "NoteAsked",
    "NumberAsked",
    "ObservationAsked",
    "Paper",
    "PassRule",
    "Phrase",
    "QuestionAsked",
    "Step",
    "StepId",
    "Text",
    "Trouble",
    "TroublePlan",
    "WaitAsked",
    "refuse",
]


HUNG = "hung"
"""In a part: the bag that the inclusion names."""
Fact = Annotated[str, Field(pattern=r"^[a-z][a-z_ -]*(\.[a-z_]+)?$", max_length=60)]
"""Something at the bench that an answer can tell about."""


class Expiry(Paper):
    """Settings that a pump forgets when the learner waits too long before this step."""

    after_s: Annotated[int, Field(strict=True, gt=0, le=3600)]
    reopen: Annotated[tuple[str, ...], Field(min_length=1, max_length=100)]
    """Ids of the steps to do again; the time runs from the last of them."""
    say: Text
    """What is said when the time has run out."""


class Step(Paper):
    """One thing to do, to say or to measure.

    A step that does not apply (`applies`) is passed over: nothing is said, one entry tells the reason
    (`unmet_reason`), it counts neither for nor against, closes what waits for it in `after`, and keeps no gate
    closed. Whether it applies is asked anew each time the place is decided, from the answers that stand then:
    a corrected answer can bring a step back.
    """

    id: StepId
    part: Text
    """The heading under which the step stands."""
    say: Annotated[str, Field(min_length=1, max_length=300)]
    """The short line that is read aloud."""
    more: Text = ""
    """The longer line, on request."""
    hint: Text = ""
    """What "I need help" says: a cue, counted."""
    stronger: Annotated[tuple[Text, ...], Field(max_length=4)] = ()
    """Stronger cues, from mild to strong: each further "I need help" at this step says the next one, the last
    one again and again. Each is counted; its level (1 is `hint`) is told in the record."""
    why: Text = ""
    sources: tuple[Text, ...] = ()
    critical: StrictBool = False
    gate: StrictBool = False
    """May not be opened while an earlier critical step is open."""
    expect: Asked = DoneAsked(kind="done")
    if_wrong: Text = ""
    """What is said when the answer is not the right one."""
    tries: Annotated[int, Field(strict=True, ge=1, le=9)] | None = None
    """How many answers may be wrong. With the last of them the assistant says `tries_spent` in place of asking
    once more by itself; the step stays open and can still be answered. In a check-off a step whose tries are
    spent counts as wrong, though it is put right later. None: no limit."""
    tries_spent: Text = "Stop here, and call your instructor."
    """What is said when the last allowed try was wrong."""
    applies: Annotated[tuple[Condition, ...], Field(max_length=6)] = ()
    """All of these must be so, or the step is passed over; empty: it always applies."""
    pause_s: Annotated[Number, Field(ge=Decimal("0.3"), le=5)] | None = None
    """Silence that ends an utterance at this step, in seconds: longer for a note, shorter for a plain done.
    None: as the ear is set."""
    after: Annotated[tuple[str, ...], Field(max_length=100)] = ()
    """Ids of steps that must be closed before this one can be closed."""
    reopen: Annotated[tuple[str, ...], Field(max_length=100)] = ()
    """Ids of earlier steps that are asked again once a fault that was found here has been put right: another bag
    has a label and an expiry date of its own. For a question or a choice that has a right answer."""
    looks_at: Annotated[tuple[Fact, ...], Field(max_length=20)] = ()
    """What at the bench the answer of a question or a choice tells about: ``secondary.bag``, ``site``. Where the
    order has laid out a fault there, the answer that tells of it is the right one. ``secondary.label`` is all that
    the label says; what a name or a number is read from need not be named. In a part, ``hung`` is the bag that the
    inclusion names in `hangs`."""
    way_on: Literal["put right", "stop"] | None = None
    """What becomes of a fault that is laid out and was found here: the learner puts it right, such as by taking
    another bag, or stops for this cause. None: another bag can be taken, everything else is a cause to stop."""
    seen: StrictBool = False
    """An instructor has to see it: without that a check-off is complete by the learner's own report alone."""
    takes_back: Annotated[tuple[str, ...], Field(max_length=100)] = ()
    """Ids of earlier steps whose "done" is proved false when a fault is found here: a drip chamber without drops
    takes back the clamp that was opened. They are asked again, and are no longer done unaided."""
    expires: Expiry | None = None

    @property
    def cues(self) -> tuple[str, ...]:
        """Every cue, from mild to strong."""
        return ((self.hint,) if self.hint else ()) + self.stronger

    def unmet(
        self,
        values: Mapping[str, str | Amount],
        answers: Mapping[str, str],
        lab: Collection[LabTrait] = USUAL_LAB,
    ) -> Condition | None:
        """The first condition that is not so, or None where the step applies; arguments as in `Condition.met`."""
        return next((condition for condition in self.applies if not condition.met(values, answers, lab)), None)


class Inclusion(Paper):
    """An entry of `[[steps]]` that stands for the steps of a part.

    A part is a file in the folder ``parts`` beside the checklist, or else of the library, with `[[steps]]` of
    its own. Its steps stand in place of this entry; their ids, and every id that they name, get the prefix.
    After loading no inclusion is left: whoever runs the checklist sees steps only.
    """

    include: Annotated[str, Field(max_length=80)]
    """The part, for example ``parts/scrub-and-dry``."""
    prefix: Annotated[str, Field(pattern=r"^[a-z][a-z0-9-]*$", max_length=20)] | None = None
    """What stands before each id with a hyphen between, for example ``hub`` for ``hub-scrub``; the name of the
    part where it is left out. Needed where a checklist uses a part twice."""
    part: Text = ""
    """The heading under which all its steps stand, in place of their own."""
    after: Annotated[tuple[str, ...], Field(max_length=100)] = ()
    """Ids of steps that must be closed before the first step of the part."""
    applies: Annotated[tuple[Condition, ...], Field(max_length=6)] = ()
    """When the part applies: added to what each of its steps says."""
    hangs: Annotated[str, Field(pattern=r"^[a-z_]+$", max_length=20)] = ""
    """The bag that is handled there, by the order's name for it, such as ``secondary``: it stands for ``hung`` in
    what the part's steps look at."""


class TroublePlan(Paper):
    """What is said, and done, when the learner reports trouble of one kind.

    The learner is praised for it in the report, and it costs nothing. Without a plan for its kind the assistant
    has the learner make it safe and call the instructor. Where several plans fit, the first one counts; those of a
    part come before those of the checklist around it.
    """

    kind: Trouble
    say: Text
    """What to do then, in one or two short sentences."""
    back_to: str = ""
    """Id of the step that is asked again first, if it has been done already; "" stays at the current step."""
    reopen: Annotated[tuple[str, ...], Field(max_length=100)] = ()
    """Ids of further steps that are asked again, if they have been done already."""
    at: Annotated[tuple[str, ...], Field(max_length=1000)] = ()
    """Ids of the steps at which the plan holds; empty: at every step of the file in which it is written."""

    @property
    def again(self) -> tuple[str, ...]:
        """Ids of every step that is asked again."""
        return (*([self.back_to] if self.back_to else []), *self.reopen)


Cue = Literal["spelled", "more"]
"""What a learner can ask for that may count as a cue."""


class PassRule(Paper):
    """What a check-off takes to be passed, beside every critical step and gate."""

    score_percent: Annotated[Number, Field(ge=0, le=100)] = Decimal(80)
    """Share of the steps done unaided, in percent."""
    critical_corrections: Annotated[int, Field(strict=True, ge=0)] = 0
    """How many critical numbers and names may have been corrected after the assistant held them."""
    critical_cues: Annotated[int, Field(strict=True, ge=0)] = 0
    """How many critical steps may have been done after a cue."""
    cues: tuple[Cue, ...] = ("spelled",)
    """What counts as a cue when the learner asks for it: having a name spelled, hearing more. "I need help", what
    an instructor gives, and being led back by a gate always count."""


class Checklist(Paper):
    """An authored procedure: ordered steps."""

    name: str
    """The file's stem."""
    title: Text
    version: Text
    purpose: Text
    cautions: Annotated[tuple[Text, ...], Field(min_length=1)]
    equipment: tuple[Text, ...] = ()
    sources: tuple[Text, ...] = ()
    order: Text = ""
    """Name of the order that is used where none is named."""
    pass_rule: PassRule = PassRule()
    abbreviations: Annotated[Mapping[str, Phrase], Field(max_length=100)] = {}
    """Spoken form of short forms that the texts use, for example ``VTBI = "volume to be infused"``: shown and
    printed as written, spoken in full (`aloud`)."""
    steps: Annotated[tuple[Step, ...], Field(min_length=1)]
    troubles: Annotated[tuple[TroublePlan, ...], Field(max_length=200)] = ()
    """What to do about trouble that the learner reports; the most specific come first."""
    lab_has: frozenset[LabTrait] = USUAL_LAB
    """What the lab's pumps and sets have; a school's file says it, never the checklist's own."""
    digest: str
    """SHA-256 (hex) over the bytes of the file and of every file that it includes, in order."""

    def aloud(self, text: str) -> str:
        """A text of this checklist as a voice says it: numbers, units and abbreviations in words."""
        return speech(text, self.abbreviations)

    def number_asked(self, step: Step) -> NumberAsked | None:
        """The number that a step asks for, of the learner or of a second person; None where it asks for none.

        Raises:
            KeyError: a double check names no step that is there (the loader refuses such a file).
        """
        asked = step.expect
        if isinstance(asked, DoubleCheckAsked):
            asked = self.step(asked.of).expect
        return asked if isinstance(asked, NumberAsked) else None

    def plan_for(self, kind: Trouble, step_id: str) -> TroublePlan | None:
        """The plan for trouble of a kind that is reported at a step; None where there is none."""
        fits = (plan for plan in self.troubles if plan.kind is kind and (not plan.at or step_id in plan.at))
        return next(fits, None)

    def place(self, step_id: str) -> int:
        """The place of the step with this id, from 0.

        Raises:
            KeyError: there is none.
        """
        for place, step in enumerate(self.steps):
            if step.id == step_id:
                return place
        raise KeyError(step_id)

    def step(self, step_id: str) -> Step:
        """The step with this id.

        Raises:
            KeyError: there is none.
        """
        return self.steps[self.place(step_id)]
