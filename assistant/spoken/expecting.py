"""What is expected, as people write it on a command line."""

from assistant.errors import QuantityError, UsageError
from assistant.spoken.expect import (
    AnyExpected,
    ChoiceExpected,
    ConfirmExpected,
    Expect,
    NumberExpected,
    TextExpected,
)
from assistant.spoken.statement import Asked, Want
from assistant.spoken.units import UnitWords

_LONGEST = 400
"""Characters that are looked at."""


def parse_expect(text: str, units: UnitWords) -> Expect:
    """Read "confirm", "any", "text", "number mL/h" or "digits mL/h" (digit by digit only), or a line with its kind.

    A line of a checklist is written behind what it asks for: "done: Close the roller clamp.", "start: Scrub the hub.",
    "question: Is the line free of air?", "choice: none, some".

    Args:
        text: as it was written.
        units: those of the language.

    Raises:
        UsageError: it is none of them, or the unit cannot be said.
    """
    kind, _, unit = " ".join(text[:_LONGEST].split()).partition(" ")
    match kind.lower(), unit:
        case ("done:" | "start:" | "question:") as wanted, str(line) if line:
            want = {"done:": Want.DONE, "start:": Want.START, "question:": Want.ANSWER}[wanted]
            return ConfirmExpected(done_is_yes=want is not Want.ANSWER, asked=Asked(line, want))
        case "choice:", str(named) if len(choices := [one.strip() for one in named.split(",") if one.strip()]) > 1:
            return ChoiceExpected(tuple(choices))
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
        'Use "confirm", "any", "text", "number" with a unit ("number mL/h"), or a line: "done: Close the clamp.".',
    )
