"""What is expected, as people write it on a command line."""

from assistant.errors import QuantityError, UsageError
from assistant.spoken.expect import AnyExpected, ConfirmExpected, Expect, NumberExpected, TextExpected
from assistant.spoken.units import UnitWords


def parse_expect(text: str, units: UnitWords) -> Expect:
    """Read "confirm", "any", "text", "number mL/h" or "digits mL/h" (digit by digit only).

    Args:
        text: as it was written.
        units: those of the language.

    Raises:
        UsageError: it is none of them, or the unit cannot be said.
    """
    kind, _, unit = " ".join(text[:100].split()).partition(" ")
    match kind.lower(), unit:
        case "confirm", "":
            return ConfirmExpected()
        case "any", "":
            return AnyExpected()
        case "text", "":
            return TextExpected()
        case ("number" | "digits") as wanted, str(named) if named:
            try:
                return NumberExpected(units.canonical(named), digits_only=wanted == "digits")
            except QuantityError as cause:
                raise UsageError(cause.what, cause.remedy) from cause
    shown = "".join(c if c.isprintable() else "?" for c in text[:40])
    raise UsageError(
        f'"{shown}" is not something that can be expected.',
        'Use "confirm", "any", "text" or "number" with a unit, for example "number mL/h".',
    )
