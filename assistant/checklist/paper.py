"""What everything authored is made of: texts, names, and how a field is refused."""

from decimal import Decimal
from typing import Annotated

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field
from pydantic_core import PydanticCustomError

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


class Paper(BaseModel):
    """Base of everything authored: frozen, and a misspelt field is an error."""

    model_config = ConfigDict(frozen=True, extra="forbid", str_strip_whitespace=True)


def _no_text(given: object) -> object:
    """A number in quotation marks is a text."""
    if isinstance(given, str):
        raise refuse("a number is wanted, and a text came.", "Write the number without quotation marks or unit.")
    return given


Number = Annotated[Decimal, BeforeValidator(_no_text)]
"""An authored number."""
