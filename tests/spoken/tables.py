"""Tables of sayings: how they are written, and how they are read.

A row is: words, what is expected, what they mean, parted by tabs. A line that begins with "# -- " is the
sentence that the rows below it show.

What is expected: as on the command line, with "heard" in front where the words come from a recogniser,
"yes-or-no" for a question that "done" does not answer, "text", or "name" with the names.
What they mean: "125" (a number in the unit expected), "1 L" (another unit), "1250|12.5" (two readings),
"! wrong unit" (a refusal), "/again" (a command), "=name", "'text'", "yes", "no", "done"; then
"digits" where it was said digit by digit, "corrected" where digits are wanted.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path

from assistant.spoken import parse_expect
from assistant.spoken.expect import ConfirmExpected, Expect, NameExpected, NumberExpected
from assistant.spoken.meaning import Ambiguous, Answer, Kind, Meaning, NoMatch
from assistant.spoken.statement import Asked, Want

DATA = Path(__file__).parent.parent / "data"


@dataclass(frozen=True)
class Saying:
    """One row."""

    line: int
    shows: str
    words: str
    expect: str
    meaning: str


def read(name: str) -> Iterator[Saying]:
    """The rows of a table."""
    shows = ""
    for number, line in enumerate((DATA / name).read_text(encoding="utf-8").splitlines(), start=1):
        if line.startswith("# -- "):
            shows = line.removeprefix("# -- ")
        elif line and not line.startswith("# "):
            words, expect, meaning = line.split("\t")
            yield Saying(number, shows, words, expect, meaning)


def frame(text: str) -> tuple[Expect, bool]:
    """What a row expects, and whether its words were heard."""
    bare = text.removeprefix("heard ")
    heard = bare != text
    if bare == "confirm":
        # As a step that is to be done asks for it.
        return ConfirmExpected(asked=Asked("Step.", Want.DONE)), heard
    if bare == "yes-or-no":
        return ConfirmExpected(done_is_yes=False), heard
    if bare.startswith("name "):
        return NameExpected(tuple(bare.removeprefix("name ").split("; "))), heard
    return parse_expect(bare), heard


def notation(meaning: Meaning, expect: Expect) -> str:
    """A meaning as the tables write it."""
    match meaning:
        case NoMatch(reason=reason):
            return f"! {reason.value}"
        case Ambiguous(readings=readings):
            return "|".join(f"{reading:f}" for reading in readings)
        case Answer(kind=Kind.NUMBER, value=Decimal() as value, unit=unit):
            expected = expect.unit if isinstance(expect, NumberExpected) else None
            marks = [f"{value:f}"] + ([unit] if unit is not None and unit != expected else [])
            marks += ["digits"] * meaning.digit_by_digit + ["corrected"] * meaning.corrected
            return " ".join(marks)
        case Answer(kind=Kind.COMMAND, value=value):
            return f"/{value}"
        case Answer(kind=Kind.NAME, value=value):
            return f"={value}"
        case Answer(kind=Kind.TEXT, value=value):
            return f"'{value}'"
        case Answer(value=value):
            return str(value)
