"""What the verbs `run`, `resume` and `demo` share: the screen, and how an attempt ended."""

import sys
from typing import TYPE_CHECKING

from assistant.attempts.sitting import Sitting
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.screen import JsonScreen, PlainScreen
from assistant.cli.terminal import TerminalScreen, wrapped
from assistant.guide.effects import Outcome
from assistant.guide.progress import Mode
from assistant.record.short_head import short_head
from assistant.report.results import lines
from assistant.spoken import ENGLISH

if TYPE_CHECKING:
    from assistant.desk.display import Display

DEFAULT_CHECKLIST = "primary-and-secondary"
EXIT_CODES = {
    Outcome.PASSED: 0,
    Outcome.STOPPED_FOR_CAUSE: 0,
    Outcome.OWN_REPORT: 3,
    Outcome.NOT_PASSED: 3,
    Outcome.NOT_COMPLETED: 4,
    Outcome.STOPPED: 4,
}
"""How an attempt ended, as an exit code."""
_HANGING = "    "
"""What the further lines of a wrapped line of the result begin with."""
_NOT_SEEN = 3
"""The exit code of one that is right as far as it goes, and that an instructor has yet to see or to judge."""


def screen_for(*, as_json: bool, echo_typed: bool, bare: bool) -> PlainScreen | TerminalScreen | JsonScreen:
    """The screen that was asked for: set out where somebody reads it on a terminal."""
    if as_json:
        return JsonScreen()
    if sys.stdout.isatty() and not bare:
        return TerminalScreen(prompts=not echo_typed)
    return PlainScreen(echo_typed=echo_typed, bare=bare)


def live(sitting: Sitting, *, as_json: bool, page: "Display | None" = None) -> int:
    """Live through an attempt; print its result and where its record is, tell a page; return the exit code."""
    outcome = sitting.live()
    code = say_result(sitting, outcome, as_json=as_json, page=page)
    if outcome is Outcome.STOPPED:
        tell(f"To continue: checkoff resume {sitting.record_path()}")
    return code


def say_result(sitting: Sitting, outcome: Outcome, *, as_json: bool, page: "Display | None") -> int:
    """Print the result of an attempt that has ended and where its record is, tell a page; return the exit code."""
    results, record = sitting.guide.results(), sitting.record_path()
    head = sitting.station.head
    if page is not None:
        page.over(short_head(head), _course(sitting))
    if as_json:
        told = {"outcome": outcome.value, "results": results.body(), "record": str(record)}
        write_json({**told, "head": head, "short_head": short_head(head)})
    else:
        for line in ["", *lines(results, outcome, sitting.guide.terms.mode, ENGLISH.report)]:
            say_line(wrapped(line, "", _HANGING) if sys.stdout.isatty() else line)
    tell(f"Record: {record}")
    tell(f"Short head: {short_head(head)}")
    return _NOT_SEEN if not results.passed and not EXIT_CODES[outcome] else EXIT_CODES[outcome]


def _course(sitting: Sitting) -> str:
    """A picture of who flows when by the order; in practice alone, for it shows what follows from the order."""
    if sitting.guide.terms.mode is not Mode.PRACTICE:
        return ""
    # Only where a page shows it: a result on the terminal needs no report.
    from assistant.report.infusion import infusion_course

    course = infusion_course(sitting.papers.order, sitting.papers.key, ENGLISH.report)
    return "" if course is None else course.picture
