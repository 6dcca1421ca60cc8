"""A checklist as the program holds it: typed, frozen, checked."""

from decimal import Decimal
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

Text = Annotated[str, Field(max_length=1000)]
"""Authored text: nobody listens to more at once."""


class Paper(BaseModel):
    """Base of everything authored: frozen, and a misspelt field is an error."""

    model_config = ConfigDict(frozen=True, extra="forbid", str_strip_whitespace=True)


class DoneAsked(Paper):
    """Something to do; "done" or "yes" closes it."""

    kind: Literal["done"]


class QuestionAsked(Paper):
    """Something to look at; only the right answer closes the step, the other one holds it."""

    kind: Literal["question"]
    right: Literal["yes", "no"] = "yes"


class NumberAsked(Paper):
    """A number with its unit that must agree with the answer key."""

    kind: Literal["number"]
    unit: str
    key: str
    """Name in the answer key, for example ``primary.rate``."""


class NameAsked(Paper):
    """A name read from a label that must agree with the answer key."""

    kind: Literal["name"]
    key: str


class WaitAsked(Paper):
    """Something timed, such as drying: "done" starts the time, the clock closes the step."""

    kind: Literal["wait"]
    seconds: Annotated[int, Field(gt=0, le=3600)]


Asked = Annotated[DoneAsked | QuestionAsked | NumberAsked | NameAsked | WaitAsked, Field(discriminator="kind")]


class Expiry(Paper):
    """Settings that a pump forgets when the learner waits too long before this step."""

    after_s: Annotated[int, Field(gt=0, le=3600)]
    reopen: Annotated[tuple[str, ...], Field(min_length=1, max_length=100)]
    """Ids of the steps to do again; the time runs from the last of them."""
    say: Text
    """What is said when the time has run out."""


class Step(Paper):
    """One thing to do, to say or to measure."""

    id: Annotated[str, Field(pattern=r"^[a-z][a-z0-9-]*$", max_length=40)]
    part: Text
    """The heading under which the step stands."""
    say: Annotated[str, Field(min_length=1, max_length=300)]
    """The short line that is read aloud."""
    more: Text = ""
    """The longer line, on request."""
    hint: Text = ""
    """What "I need help" says: a cue, counted."""
    why: Text = ""
    sources: tuple[Text, ...] = ()
    critical: bool = False
    gate: bool = False
    """May not be opened while an earlier critical step is open."""
    expect: Asked = DoneAsked(kind="done")
    if_wrong: Text = ""
    """What is said when the answer is not the right one."""
    after: Annotated[tuple[str, ...], Field(max_length=100)] = ()
    """Ids of steps that must be closed before this one can be closed."""
    expires: Expiry | None = None


class PassRule(Paper):
    """What a check-off takes to be passed, beside every critical step and gate."""

    score_percent: Annotated[Decimal, Field(ge=0, le=100)] = Decimal(80)
    """Share of the steps done unaided, in percent."""
    critical_corrections: Annotated[int, Field(ge=0)] = 0
    """How many critical numbers and names may have been corrected after the assistant held them."""
    critical_cues: Annotated[int, Field(ge=0)] = 0
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
    steps: Annotated[tuple[Step, ...], Field(min_length=1)]
    digest: str
    """SHA-256 (hex) over the bytes of the file and of every file that it includes, in order."""

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
