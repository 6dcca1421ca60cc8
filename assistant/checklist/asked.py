"""What a step expects of whoever answers it, and what becomes of the answer."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Annotated, Literal, Self

from pydantic import Field, StrictBool, model_validator

from assistant.checklist.paper import Number, Paper, Phrase, StepId, Text, refuse


class _Confirmed(Paper):
    """What is answered in words of its own, or by a yes, a no, a done."""

    good: Annotated[tuple[Phrase, ...], Field(max_length=20)] = ()
    """What is said when it is as it should be ("closed", "no air"), beside what follows from the line itself."""
    bad: Annotated[tuple[Phrase, ...], Field(max_length=20)] = ()
    """What is said when it is not ("still open", "a bubble")."""
    bare: StrictBool = True
    """Whether a bare yes or done is enough; else the assistant asks for the words: "Closed, or still open?"."""


class DoneAsked(_Confirmed):
    """Something to do; "done" or "yes" closes it, and what says so in the line's own words: "it's closed"."""

    kind: Literal["done"]


class QuestionAsked(_Confirmed):
    """Something to look at; only the right answer closes the step, the other one holds it.

    `good` are words for a yes to the question, `bad` for a no.
    """

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
    within: Annotated[Number, Field(ge=0)] = Decimal(0)
    """How far from the key it may be, in `unit`; 0 for everything that is set on a pump."""
    lowest: Number | None = None
    highest: Number | None = None

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


class WaitAsked(_Confirmed):
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
    faults: Annotated[tuple[str, ...], Field(max_length=6)] = ()
    """Choices that tell of a fault which the learner sees, such as a leak: whoever makes one has found it, and it
    costs nothing. Every other choice that is not the right one is a wrong answer."""

    @model_validator(mode="after")
    def _names_its_choices(self) -> Self:
        if self.faults and self.right in ("", *self.faults):
            raise refuse("faults are told from a right choice.", "Name the right choice, and leave it out of faults.")
        for name in (*([self.right] if self.right else []), *self.phrases, *self.advice, *self.faults):
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
