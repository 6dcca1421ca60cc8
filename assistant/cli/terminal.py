"""Where the learner reads along on a terminal: wrapped at words and set out by space and words alone.

No colour, and no moving of the cursor, so that nothing is lost in a log or to a screen reader.
"""

import shutil
import textwrap

from assistant.cli.printing import say_line
from assistant.cli.screen import COVER_LINES, LONGEST_ECHO
from assistant.guide.effects import Say, Tone
from assistant.guide.events import Event, Heard, NotUnderstood, Typed
from assistant.text import shown

WIDEST = 80
"""Characters of a line on a wide terminal: longer lines are hard to read."""
NARROWEST = 20
"""Characters of a line that words are still wrapped to; a narrower terminal breaks them by itself."""
COUNTED_S = 5
"""A timed wait shows what is left every so many seconds."""
_TALK = "   "
_LEARNER = "> "


class TerminalScreen:
    """A step has its place at the margin, talk is indented, the learner's words follow "> ", a hold has its word.

    Args:
        prompts: typed answers come from this terminal, which shows them as they are typed.
    """

    def __init__(self, *, prompts: bool) -> None:
        self._prompts = prompts
        self._open = ""
        self._counted = 0
        self._tone = Tone.NOTICE

    def show(self, say: Say) -> None:
        """A sentence of the assistant."""
        step = say.step
        if step is not None:
            self._line("")
            self._line(f"Step {step.number} of {step.count}{', critical' if step.critical else ''}")
            self._line(step.line, _TALK)
        elif say.tone is Tone.HOLD:
            if self._tone is not Tone.HOLD:
                self._line("HOLD", _TALK)
            self._line(say.text, f"{_TALK}| ")
        else:
            self._line(say.text, "" if say.tone is Tone.RESULT else _TALK)
        self._tone = say.tone

    def listening(self) -> None:
        """The microphone is open."""
        self._begin("(listening) ")

    def asked(self, *, paused: bool) -> None:
        """An answer is wanted."""
        if self._prompts:
            self._begin(_LEARNER)

    def speaks(self, *, sounds: bool) -> None:
        """The voice: it is heard."""

    def waits(self, seconds: int) -> None:
        """A timed wait: what is left, every few seconds on one line."""
        if seconds > 0 and seconds % COUNTED_S == 0 and seconds != self._counted:
            self._counted = seconds
            self._begin(f" {seconds} s ..." if self._open else f"{_TALK}{seconds} s ...")

    def cover(self) -> None:
        """Blank lines move what was shown off the terminal."""
        for _ in range(COVER_LINES):
            self._line("")

    def taken(self, event: Event) -> None:
        """What the learner said."""
        match event:
            case Heard(words=words):
                self._line(words, _LEARNER, LONGEST_ECHO)
            case NotUnderstood():
                self._line("(not understood)", _LEARNER)
            case Typed() if self._prompts:
                self._open = ""  # Enter has ended the line
            case Typed(words=words):
                self._line(words, _LEARNER, LONGEST_ECHO)

    def _line(self, text: str, margin: str = "", most: int | None = None) -> None:
        """Print a text on lines of its own."""
        if self._open:
            say_line("")
            self._open = ""
        self._counted = 0
        say_line(wrapped(shown(text, most), margin, " " * len(margin) if margin == _LEARNER else margin))

    def _begin(self, text: str) -> None:
        """Print a text and stay on its line; not twice the same."""
        if text not in self._open:
            print(text, end="", flush=True)
            self._open += text


def wrapped(text: str, first: str = "", further: str = "") -> str:
    """A text wrapped at its words to the terminal's width.

    Args:
        text: on one line.
        first: what the first line begins with.
        further: what every other line begins with.
    """
    width = max(NARROWEST, min(WIDEST, shutil.get_terminal_size().columns) - 1)
    return textwrap.fill(text, width, initial_indent=first, subsequent_indent=further, break_on_hyphens=False)
