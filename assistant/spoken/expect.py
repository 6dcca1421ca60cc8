"""What a step expects to hear: the frame in which words get their meaning."""

from dataclasses import dataclass
from decimal import Decimal

from assistant.spoken.statement import Asked


@dataclass(frozen=True)
class ConfirmExpected:
    """A yes or a no, or what amounts to one.

    Attributes:
        done_is_yes: "done" counts as a yes.
        asked: the line that is answered, so that its own words count too ("closed", "it's still open"); None where
            what was heard is read back, which takes nothing but a clear yes.
        bare: a bare yes or done answers it; else it wants the line's own words.
        number: the number that is read back, so that a yes may repeat it: "yes, one twenty five"; None where none is.
        number_unit: its unit, so that a no may hold the right one: "no, a thousand"; "" where no number is.
        repeated: the answer that is asked about, which counts as a yes where it is said again; "" where none is.
    """

    done_is_yes: bool = True
    asked: Asked | None = None
    bare: bool = True
    number: Decimal | None = None
    number_unit: str = ""
    repeated: str = ""


@dataclass(frozen=True)
class NumberExpected:
    """A number in one unit.

    Attributes:
        unit: canonical unit as the trade prints it, for example ``mL/h``.
        digits_only: take the number only digit by digit ("eight three point three").
        lowest, highest: the whole range that a learner could say; never narrowed to the right answer.
    """

    unit: str
    digits_only: bool = False
    lowest: Decimal = Decimal(0)
    highest: Decimal = Decimal(9999)


@dataclass(frozen=True)
class NameExpected:
    """One of several names (fluids or drugs), as they may be spoken.

    Attributes:
        names: the names that a label may carry; the right one among them has no special place.
        alone: nothing but a name, not even a command; for a recogniser's second look, never for an answer.
    """

    names: tuple[str, ...]
    alone: bool = False


@dataclass(frozen=True)
class ChoiceExpected:
    """One of a few alternatives, as they are written.

    Attributes:
        choices: the alternatives; what is taken is one of them.
        phrases: other ways to say a choice: what is said, and the choice that it means.
        line: the line that is answered, so that its things may be named: "the chamber's empty"; "" where none is known.
    """

    choices: tuple[str, ...]
    phrases: tuple[tuple[str, str], ...] = ()
    line: str = ""

    def sayings(self) -> tuple[tuple[str, str], ...]:
        """Every way to say a choice, with the choice that it means."""
        return tuple((choice, choice) for choice in self.choices) + self.phrases


@dataclass(frozen=True)
class TextExpected:
    """Free words: a reason or a note; only commands keep their meaning."""


@dataclass(frozen=True)
class AnyExpected:
    """Whatever the language knows: command, confirmation or a number with its unit."""


Expect = ConfirmExpected | NumberExpected | NameExpected | ChoiceExpected | TextExpected | AnyExpected
