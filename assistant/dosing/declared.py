"""How a formula is declared: its inputs, how each is written, and what it gives."""

import inspect
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import Any


class Form(StrEnum):
    """How an input is written."""

    AMOUNT = "an amount with its unit"
    CONCENTRATION = "a concentration"
    AMOUNTS = "amounts, one or more"
    NUMBERS = "numbers, three or more"
    UNIT = "a unit"
    TEXT = "a name"
    START = "a time such as 22:00, or with its date 2026-10-24 22:00"
    ROUNDING = "a rounding rule: exact, whole, tenth, hundredth, thousandth; with up, down or half even"
    FLAG = "yes or no"


@dataclass(frozen=True)
class Input:
    """One declared input.

    Attributes:
        name: as it is given on the command line, without the dashes.
        form: how it is written.
        example: a value as people write it.
        needed: the formula cannot do without; others have a default or stand in for one another.
    """

    name: str
    form: Form
    example: str
    needed: bool = True

    @property
    def parameter(self) -> str:
        """The function's own name for it."""
        return self.name.replace("-", "_")


@dataclass(frozen=True)
class Formula:
    """A named formula.

    Attributes:
        name: as it is asked for.
        gives: unit of the answer, or what it is where the unit follows from the inputs.
        inputs: in order.
        function: what works it out.
        usual: inputs that an example has beside the needed ones, where they stand in for one another.
    """

    name: str
    gives: str
    inputs: tuple[Input, ...]
    function: Callable[..., Any]
    usual: tuple[str, ...] = ()

    @property
    def about(self) -> str:
        """What it answers: the first line of its docstring."""
        return (inspect.getdoc(self.function) or self.name).split("\n", 1)[0].rstrip(".")

    @property
    def source(self) -> str:
        """Where it stands: the docstring's source."""
        text = inspect.getdoc(self.function) or ""
        return " ".join(text.partition("Source")[2].partition(":")[2].split())

    @property
    def example(self) -> str:
        """The options of an example on the command line."""
        return " ".join(f'--{one.name} "{one.example}"' for one in self.inputs if one.needed or one.name in self.usual)
