"""When a step applies: what must be so about the order, about an earlier answer, or about the lab."""

from collections.abc import Collection, Mapping
from typing import TYPE_CHECKING, Annotated, Literal, Self

from pydantic import BeforeValidator, Field, StrictBool, model_validator

from assistant.checklist.paper import Paper, Phrase, refuse
from assistant.dosing import Amount, parse_amount, show
from assistant.errors import QuantityError

if TYPE_CHECKING:
    from assistant.spoken.language import Sentences


def _one_or_several(given: object) -> object:
    """A single text stands for a list of one."""
    return (given,) if isinstance(given, str) else given


def _bound(given: object) -> object:
    """An amount as people write it."""
    if not isinstance(given, str):
        raise refuse("a bound is a number with its unit.", 'Write it like "100 mL/h".')
    try:
        return show(parse_amount(given))
    except QuantityError as cause:
        raise refuse(cause.what, cause.remedy) from cause


LabTrait = Literal["drug library", "own clamp", "settings lapse"]
"""What pumps and sets have in one lab and not in another: a library of drugs and fluids in the pump, a clamp on the
set that works with the pump, settings that are gone when the pump is not started for a while."""
USUAL_LAB: frozenset[LabTrait] = frozenset({"drug library", "settings lapse"})
"""A lab of which nothing else is known (common practice, no source)."""


Bound = Annotated[str, BeforeValidator(_bound)]
"""A number with its unit, as the trade prints it."""


class Condition(Paper):
    """One thing that must be so for a step to apply: about the order (`key`), an earlier answer (`step`), the `lab`.

    With `key` alone the answer key must hold that name (``present = false``: must not hold it). `equals` is
    compared as a name, capitals aside, or as an amount; `below` and `above` as amounts, their own bound left
    out. A name that the key does not hold meets none of the three. With `step`, the answer that stands there
    must be one of `answer`: "yes" or "no" of a question, a choice as it is written, "seen". A step that is
    open, passed over or not applicable has no answer and meets no condition. With `lab`, the lab must have that
    trait (``present = false``: must lack it).
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
    lab: LabTrait | None = None

    @model_validator(mode="after")
    def _about_one_thing(self) -> Self:
        compared = [name for name in ("equals", "below", "above") if getattr(self, name)]
        if sum(map(bool, (self.key, self.step, self.lab))) != 1:
            raise refuse(
                "A condition is about the order, about an earlier step, or about the lab.",
                "Write either key =, step = or lab =, one of them.",
            )
        if self.lab and (compared or self.answer):
            raise refuse("A condition about the lab compares nothing.", f'Write {{ lab = "{self.lab}" }}.')
        if self.step and (compared or not self.present or not self.answer):
            raise refuse("A condition about a step names its answer.", 'Write { step = "...", answer = "yes" }.')
        if self.key and (self.answer or (compared and not self.present)):
            raise refuse(
                "A condition about the order compares a value.",
                'Write { key = "primary.rate", above = "100 mL/h" }, or key alone for "it is there".',
            )
        return self

    def met(
        self,
        values: Mapping[str, str | Amount],
        answers: Mapping[str, str],
        lab: Collection[LabTrait] = USUAL_LAB,
    ) -> bool:
        """Whether it is so.

        Args:
            values: the answer key, by name: a text or an amount.
            answers: answers that stand, by the id of the step.
            lab: what the lab has.
        """
        if self.lab:
            return (self.lab in lab) is self.present
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

    def unmet_reason(self, sentences: "Sentences") -> str:
        """Why a step is passed over when this is not so: a clause for the record."""
        if self.step:
            return sentences.not_so_answered(self.step, self.answer)
        if self.lab:
            return sentences.not_so_in_lab(self.lab, present=self.present)
        if self.equals or self.above or self.below:
            return sentences.not_so_ordered(self.key, self.equals, self.above, self.below)
        return sentences.ordered(self.key, present=not self.present)
