"""How many of our files one answer goes through: ``python -m tests.guide.touched``.

Counts the files under ``assistant/`` in which a function runs between an event and the last effect after it, in a guide
that has already answered once (what is made once at the first use is not counted).
"""

import sys
from collections.abc import Callable
from pathlib import Path
from types import FrameType

from assistant.guide import Heard, Typed
from tests.guide.lived import SMOOTH, Lived, begin

OURS = Path(__file__).parents[2] / "assistant"


def touched(live: Callable[[], object]) -> list[str]:
    """The files in which a function ran, as paths below ``assistant/``, sorted."""
    seen: set[str] = set()

    def note(frame: FrameType, happened: str, _argument: object) -> None:
        if happened == "call":
            seen.add(frame.f_code.co_filename)

    before = sys.getprofile()
    sys.setprofile(note)
    try:
        live()
    finally:
        sys.setprofile(before)
    ours = (Path(name) for name in seen)
    return sorted(str(path.relative_to(OURS)) for path in ours if path.is_relative_to(OURS))


def at_the_rate() -> Lived:
    """An attempt that asks for the rate, with everything warm that is made once."""
    lived = begin()
    lived.do(SMOOTH[:5])
    lived.hear("seventy three millilitres per hour")
    lived.type("no")
    return lived


def answers() -> dict[str, list[str]]:
    """The files of a typed "done", of a spoken number, of the "yes" to its read-back, and of these two together."""
    lived = begin()
    lived.type("done", "back")
    done = touched(lambda: lived.give(Typed(lived.at, "done")))
    lived = at_the_rate()
    number = touched(lambda: lived.give(Heard(lived.at, "eight three point three millilitres per hour")))
    yes = touched(lambda: lived.give(Heard(lived.at, "yes")))
    return {
        'a typed "done"': done,
        "a spoken number": number,
        'the "yes" to its read-back': yes,
        "both together": sorted({*number, *yes}),
    }


if __name__ == "__main__":
    for name, files in answers().items():
        print(f"{name}: {len(files)} files: {', '.join(files)}")  # noqa: T201
