"""A checklist as the program holds it: typed, frozen, checked."""

import re
from collections.abc import Mapping
from decimal import Decimal
from typing import Annotated, Literal, Self

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, StrictBool, model_validator
from pydantic_core import PydanticCustomError

from assistant.dosing import Amount, parse_amount, show
from assistant.errors import QuantityError
from assistant.spoken import speech

Text = Annotated[str, Field(max_length=1000)]
"""Authored text: nobody listens to more at once."""
LONGEST_ID = 40
StepId = Annotated[str, Field(pattern=r"^[a-z][a-z0-9-]*$", max_length=LONGEST_ID)]
"""The name of a step inside its checklist."""
Phrase = Annotated[str, Field(min_length=1, max_length=80)]
"""What is said in one breath: an alternative of a choice, or another way to say it."""


def refuse(what: str, remedy: str) -> PydanticCustomError:
    """The refusal of a field, in words that the reader of the file sees."""
    return PydanticCustomError("authored", "{what}", {"what": what, "remedy": remedy})


def _one_or_several(given: object) -> object:
    """A single text stands for a list of one."""
    return (given,) if isinstance(given, str) else given


class Paper(BaseModel):
    """Base of everything authored: frozen, and a misspelt field is an error."""

    model_config = ConfigDict(frozen=True, extra="forbid", str_strip_whitespace=True, use_attribute_docstrings=True)


class DoneAsked(Paper):
    """Something to do; "done" or "yes" closes it."""

    kind: Literal["done"]


class QuestionAsked(Paper):
    """Something to look at; only the right answer closes the step, the other one holds it."""

    kind: Literal["question"]
    right: Literal["yes", "no"] = "yes"


class NumberAsked(Paper):
    """A number with its unit that must agree with the answer key, or lie in a range.

    The number is read back, kept on a clear yes, then compared. With `key` it must agree with that value of
    the answer key; what is counted or measured may differ from it by `within`. With `lowest` or `highest` it
    must also lie in that range, both ends included. A number that does not is kept as a wrong answer: the step
    is held with `if_wrong`. The range never narrows what the recogniser can hear, and it is never told.
    """

    kind: Literal["number"]
    unit: str
    key: str = ""
    """Name in the answer key, for example ``primary.rate``; "" only where there is a range."""
    within: Annotated[Decimal, Field(ge=0)] = Decimal(0)
    """How far from the key it may be, in `unit`; 0 for everything that is set on a pump."""
    lowest: Decimal | None = None
    highest: Decimal | None = None

    @model_validator(mode="after")
    def _agrees_with_something(self) -> Self:
        if not self.key and self.lowest is None and self.highest is None:
            raise refuse(
                "The number is compared with nothing.", 'Add key = "primary.rate" or another name, or a range.'
            )
        return self


class NameAsked(Paper):
    """A name read from a label that must agree with the answer key."""

    kind: Literal["name"]
    key: str


class WaitAsked(Paper):
    """Something timed, such as drying: "done" starts the time, the clock closes the step."""

    kind: Literal["wait"]
    seconds: Annotated[int, Field(strict=True, gt=0, le=3600)]


class ChoiceAsked(Paper):
    """One of a few alternatives that the line names.

    The learner says one of `choices` or of its `phrases`, as they are written; nothing near them is taken.
    The right one closes the step; where `right` is "", every one does. Another one is a wrong answer: the
    step is held, `advice` for that choice is said, or `if_wrong` where there is none. The answer that is kept
    is the text in `choices`.
    """

    kind: Literal["choice"]
    choices: Annotated[tuple[Phrase, ...], Field(min_length=2, max_length=6)]
    right: str = ""
    """One of `choices`; "" takes every one, for example where a later step applies by it."""
    phrases: Annotated[Mapping[str, Annotated[tuple[Phrase, ...], Field(max_length=10)]], Field(max_length=6)] = {}
    """Other ways to say a choice, by the choice."""
    advice: Annotated[Mapping[str, Text], Field(max_length=6)] = {}
    """What is said when this choice is made and is not the right one, by the choice."""

    @model_validator(mode="after")
    def _names_its_choices(self) -> Self:
        for name in (*([self.right] if self.right else []), *self.phrases, *self.advice):
            if name not in self.choices:
                raise refuse(f'"{name}" is not one of the choices.', f"They are: {', '.join(self.choices)}.")
        return self


class NoteAsked(Paper):
    """A note in free words: it is read back, and a clear yes keeps it and closes the step.

    Nothing is compared; commands keep their meaning. No to the read-back asks for the note again.
    """

    kind: Literal["note"]


class ObservationAsked(Paper):
    """Something that the instructor watches: only "seen" or "not seen" answers it, and the instructor gives it.

    The line is read aloud to both. "Done" and "yes" from the learner do not close the step. "Seen" closes it
    as the instructor's answer (at the keyboard, the instructor's page or aloud; the entry says which); "not
    seen" is a wrong answer: the step is held with `if_wrong`.
    """

    kind: Literal["observation"]


class DoubleCheckAsked(Paper):
    """A second person's independent number: the same quantity as an earlier step asked of the learner.

    The line calls the second person. Until that person's number is kept, neither the learner's number nor the
    right one is said or shown. The number is read back to the second person; on a clear yes it is compared
    with the answer key and with the number that stands at step `of`. Agreement of all closes the step. If not,
    it is held with `if_wrong`, without telling either number in a check-off. Unit, key and range are those
    of step `of` (`Checklist.number_asked`).
    """

    kind: Literal["double-check"]
    of: StepId
    """Id of the earlier step at which the learner gave the number."""


Asked = Annotated[
    DoneAsked
    | QuestionAsked
    | NumberAsked
    | NameAsked
    | WaitAsked
    | ChoiceAsked
    | NoteAsked
    | ObservationAsked
    | DoubleCheckAsked,
    Field(discriminator="kind"),
]


def _bound(given: object) -> object:
    """An amount as people write it."""
    if not isinstance(given, str):
        raise refuse("a bound is a number with its unit.", 'Write it like "100 mL/h".')
    try:
        return show(parse_amount(given))
    except QuantityError as cause:
        raise refuse(cause.what, cause.remedy) from cause


Bound = Annotated[str, BeforeValidator(_bound)]
"""A number with its unit, as the trade prints it."""


class Condition(Paper):
    """One thing that must be so for a step to apply: about the order (`key`) or an earlier answer (`step`).

    With `key` alone the answer key must hold that name (``present = false``: must not hold it). `equals` is
    compared as a name, capitals aside, or as an amount; `below` and `above` as amounts, their own bound left
    out. A name that the key does not hold meets none of the three. With `step`, the answer that stands there
    must be one of `answer`: "yes" or "no" of a question, a choice as it is written, "seen". A step that is
    open, passed over or not applicable has no answer and meets no condition.
    """

    key: str = ""
    """Name in the answer key, for example ``secondary.drug``."""
    present: StrictBool = True
    equals: str = ""
    below: Bound = ""
    above: Bound = ""
    step: str = ""
    """Id of an earlier step."""
    answer: Annotated[
        Annotated[tuple[Phrase, ...], Field(max_length=6)],
        BeforeValidator(_one_or_several, json_schema_input_type=Phrase | tuple[Phrase, ...]),
    ] = ()

    @model_validator(mode="after")
    def _about_one_thing(self) -> Self:
        compared = [name for name in ("equals", "below", "above") if getattr(self, name)]
        if bool(self.key) == bool(self.step):
            raise refuse(
                "A condition is about the order or about an earlier step.", "Write either key = or step =, one of them."
            )
        if self.step and (compared or not self.present or not self.answer):
            raise refuse("A condition about a step names its answer.", 'Write { step = "...", answer = "yes" }.')
        if self.key and (self.answer or (compared and not self.present)):
            raise refuse(
                "A condition about the order compares a value.",
                'Write { key = "primary.rate", above = "100 mL/h" }, or key alone for "it is there".',
            )
        return self

    def met(self, values: Mapping[str, str | Amount], answers: Mapping[str, str]) -> bool:
        """Whether it is so.

        Args:
            values: the answer key, by name: a text or an amount.
            answers: answers that stand, by the id of the step.
        """
        if self.step:
            return answers.get(self.step, "") in self.answer
        value = values.get(self.key)
        if value is None or not self.present:
            return (value is not None) is self.present
        if isinstance(value, str):
            return not self.below and not self.above and (not self.equals or value.casefold() == self.equals.casefold())
        try:
            return (
                (not self.equals or parse_amount(self.equals).in_unit(value.unit) == value.value)
                and (not self.below or value.value < parse_amount(self.below).in_unit(value.unit))
                and (not self.above or value.value > parse_amount(self.above).in_unit(value.unit))
            )
        except QuantityError:  # another kind of quantity; the linter names it
            return False

    def unmet_reason(self) -> str:
        """Why a step is passed over when this is not so: a clause for the record."""
        if self.step:
            return f"step {self.step} was not answered with {' or '.join(self.answer)}"
        wanted = [f"{self.equals}"] if self.equals else []
        wanted += [f"above {self.above}"] if self.above else []
        wanted += [f"below {self.below}"] if self.below else []
        if wanted:
            return f"{self.key} is not {' and '.join(wanted)}"
        return f"the order has no {self.key}" if self.present else f"the order has {self.key}"


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
    pause_s: Annotated[Decimal, Field(ge=Decimal("0.3"), le=5)] | None = None
    """Silence that ends an utterance at this step, in seconds: longer for a note, shorter for a plain done.
    None: as the ear is set."""
    after: Annotated[tuple[str, ...], Field(max_length=100)] = ()
    """Ids of steps that must be closed before this one can be closed."""
    expires: Expiry | None = None

    @property
    def cues(self) -> tuple[str, ...]:
        """Every cue, from mild to strong."""
        return ((self.hint,) if self.hint else ()) + self.stronger

    def unmet(self, values: Mapping[str, str | Amount], answers: Mapping[str, str]) -> Condition | None:
        """The first condition that is not so, or None where the step applies; arguments as in `Condition.met`."""
        return next((condition for condition in self.applies if not condition.met(values, answers)), None)


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


class PassRule(Paper):
    """What a check-off takes to be passed, beside every critical step and gate."""

    score_percent: Annotated[Decimal, Field(ge=0, le=100)] = Decimal(80)
    """Share of the steps done unaided, in percent."""
    critical_corrections: Annotated[int, Field(strict=True, ge=0)] = 0
    """How many critical numbers and names may have been corrected after the assistant held them."""
    critical_cues: Annotated[int, Field(strict=True, ge=0)] = 0
    """How many critical steps may have been done after a cue."""


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
    digest: str
    """SHA-256 (hex) over the bytes of the file and of every file that it includes, in order."""

    def aloud(self, text: str) -> str:
        """A text of this checklist as a voice says it: numbers, units and abbreviations in words."""
        for short, full in self.abbreviations.items():
            text = re.sub(rf"(?<!\w){re.escape(short)}(?!\w)", full.replace("\\", r"\\"), text)
        return speech(text)

    def number_asked(self, step: Step) -> NumberAsked | None:
        """The number that a step asks for, of the learner or of a second person; None where it asks for none.

        Raises:
            KeyError: a double check names no step that is there (the loader refuses such a file).
        """
        asked = step.expect
        if isinstance(asked, DoubleCheckAsked):
            asked = self.step(asked.of).expect
        return asked if isinstance(asked, NumberAsked) else None

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
