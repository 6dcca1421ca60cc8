"""Where the learner reads along: plain lines for people, or one JSON object per line for programs."""

import sys

from assistant.cli.printing import say_line, write_json
from assistant.guide.effects import Say, StepLine
from assistant.guide.events import Event, Heard, NotUnderstood, Typed
from assistant.text import shown

LONGEST_ECHO = 200
"""Characters of the learner's own words that are shown back."""

COVER_LINES = 100
"""More lines than a terminal shows at once."""


class PlainScreen:
    """Plain lines on standard output, one for each sentence.

    Args:
        echo_typed: show typed lines too (they are not on the screen yet where they come from a pipe).
        bare: for a screen reader, which reads every line: nothing that repeats itself, nothing set by spaces.
    """

    def __init__(self, *, echo_typed: bool, bare: bool = False) -> None:
        self._echo_typed = echo_typed
        self._bare = bare
        self._margin = "" if bare else "  "

    def show(self, say: Say) -> None:
        """A sentence of the assistant."""
        say_line(shown(_for_braille(say.step) if self._bare and say.step is not None else say.text))

    def listening(self) -> None:
        """The microphone is open."""
        if not self._bare:
            say_line("(listening)")

    def asked(self, *, paused: bool) -> None:
        """An answer is wanted: the question has said so."""

    def speaks(self, *, sounds: bool) -> None:
        """The voice: it is heard."""

    def waits(self, seconds: int) -> None:
        """A timed wait: its end is said."""

    def cover(self) -> None:
        """Blank lines move what was shown off a terminal: plain, and harmless to a screen reader."""
        if sys.stdout.isatty():
            say_line("\n" * COVER_LINES)

    def taken(self, event: Event) -> None:
        """What the learner said."""
        match event:
            case Heard(words=words):
                say_line(f"{self._margin}You said: {shown(words, LONGEST_ECHO)}")
            case NotUnderstood():
                say_line(f"{self._margin}You said: (not understood)")
            case Typed(words=words) if self._echo_typed:
                say_line(f"{self._margin}You typed: {shown(words, LONGEST_ECHO)}")


def _for_braille(step: StepLine) -> str:
    """A step with its place in few cells: a braille line has 40."""
    return f"{step.number}/{step.count}{' critical' if step.critical else ''}. {step.line}"


class JsonScreen:
    """One JSON object a line on standard output."""

    def show(self, say: Say) -> None:
        """A sentence of the assistant."""
        write_json({"say": say.text, "speech": say.speech, "tone": say.tone.value})

    def listening(self) -> None:
        """The microphone is open."""
        write_json({"listening": True})

    def asked(self, *, paused: bool) -> None:
        """An answer is wanted: programs see it by the question."""

    def speaks(self, *, sounds: bool) -> None:
        """The voice: it is heard."""

    def waits(self, seconds: int) -> None:
        """A timed wait: programs see it by its beginning and its end."""

    def cover(self) -> None:
        """What was shown so far must not be seen any more."""
        write_json({"cover": True})

    def taken(self, event: Event) -> None:
        """What the learner said."""
        match event:
            case Heard(words=words):
                write_json({"heard": words[:LONGEST_ECHO]})
            case NotUnderstood():
                write_json({"heard": None})
            case Typed(words=words):
                write_json({"typed": words[:LONGEST_ECHO]})
