"""A learner made of sound: another process speaks into the virtual microphone what it is asked for.

It sees what a learner sees and hears (the assistant's sentences), answers read-backs truthfully, and says what
was not understood once more. It never types.
"""

import json
import queue
import re
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path

from assistant import dosing
from assistant.checklist.model import (
    Checklist,
    ChoiceAsked,
    DoneAsked,
    NameAsked,
    NoteAsked,
    ObservationAsked,
    QuestionAsked,
    WaitAsked,
)
from assistant.spoken import say_amount, say_digits, say_unit, speech
from tests.spoken_words import write_words
from tests.virtual_sound import VirtualSound

VOICES = ("en-us", "slt", "en-gb")
"""Voices in turn, so that no single one carries the test: espeak-ng's American and British one, one of flite's."""
PATIENCE_S = 15.0
"""After so long without a sign that they were heard, people say it again."""
_LONGEST_SILENCE_S = 120.0
_STEP = re.compile(r"Step (\d+) of \d+")


@dataclass
class Heard:
    """What happened, in order: (kind, text)."""

    log: list[tuple[str, str]] = field(default_factory=list)

    def of(self, kind: str) -> list[str]:
        return [text for what, text in self.log if what == kind]


class SpokenLearner:
    """Speaks its way through an attempt.

    Args:
        sound: the virtual sound system.
        checklist, key: what is asked and what is right.
        first: for a step's id, what is said there before the right answer.
        write: writes words, spoken by one of `VOICES` or by whoever else, into a WAV file.
    """

    def __init__(
        self,
        sound: VirtualSound,
        checklist: Checklist,
        key,
        first: dict[str, list[str]],
        write: Callable[[str, str, Path], None] = write_words,
    ) -> None:
        self._sound = sound
        self._write = write
        self._checklist = checklist
        self._key = key
        self._first = {name: list(words) for name, words in first.items()}
        self._step = None
        self._asked = "step"
        self._intended = ""
        self._shown = ""
        self._digits = False
        self._misses = 0
        self._said = ""
        self._turns = 0
        self._voice = 0
        self._planned = ""
        self._repeated: set[tuple[str, str]] = set()
        self.heard = Heard()

    def take(self, line: dict[str, object]) -> None:
        """See one line of the assistant's output; speak when it listens."""
        if "say" in line:
            text, tone = str(line["say"]), str(line["tone"])
            self.heard.log.append((tone, text))
            step = _STEP.match(text)
            if step:
                asked = self._checklist.steps[int(step[1]) - 1]
                self._misses = self._misses if asked is self._step else 0
                self._step = asked
                self._digits = False
            if tone in ("step", "read-back"):
                self._asked = tone
                self._shown = text.removeprefix("I have ").removesuffix(". Is that right?").partition(":")[0]
                self._digits = self._digits or "digit by digit" in text
            self._misses += tone == "unclear"
            if tone == "unclear" and ("digit by digit" in text or "the digits" in text):
                self._digits = True
                self._plan_again()
        elif "heard" in line:
            self.heard.log.append(("heard", str(line["heard"])))
            self._voice += line["heard"] is None  # what one voice cannot make clear, another one may
            if line["heard"] is None:
                self._plan_again()
        elif line.get("listening"):
            self._planned = ""
            self._speak(self._words())

    def say_again(self) -> None:
        """Say once more what nobody seems to have heard."""
        file = self._sound.folder / "learner.wav"
        if file.is_file():
            self.heard.log.append(("said again", self._said))
            self._sound.play(file)

    def _plan_again(self) -> None:
        """What was planned and not understood is said once more."""
        if self._planned and (self._step.id, self._planned) not in self._repeated:
            self._repeated.add((self._step.id, self._planned))
            self._first[self._step.id].insert(0, self._planned)
        self._planned = ""

    def _words(self) -> str:
        if self._asked == "read-back" and isinstance(self._step.expect, NoteAsked):
            return "yes"  # free words are heard as well as they can be; nothing depends on one of them
        if self._asked == "read-back":
            if self._shown in (self._intended, f'I heard "{self._said}"'):
                return "yes"
            self._voice += 1  # what was taken for something else is said in another way
            return "no"
        planned = self._first.get(self._step.id)
        if planned:
            words = self._planned = planned.pop(0)
            number = re.match(r"([\d.,]+) (\S+)$", words)
            if not number:
                return words
            return self._number(Decimal(number[1].replace(",", "")), number[2])
        number = self._checklist.number_asked(self._step)
        if number is not None:
            return self._number(self._key[number.key].value, number.unit)
        match self._step.expect:
            case NameAsked(key=name):
                self._intended = str(self._key[name].value)
                return speech(self._intended)
            case DoneAsked(good=(_, *_) as good) | WaitAsked(good=(_, *_) as good):
                return self._in_other_words(good)
            case QuestionAsked(right=right, good=good, bad=bad):
                return self._in_other_words((good if right == "yes" else bad) or (right,))
            case ChoiceAsked(choices=choices, right=right, phrases=phrases):
                choice = right or choices[0]
                return self._in_other_words((choice, *phrases.get(choice, ())))
            case NoteAsked():
                self._intended = "the site is pale and cool"
                return self._intended
            case ObservationAsked():
                return "seen"
            case WaitAsked():
                return "done"
        return "done"

    def _in_other_words(self, ways: tuple[str, ...]) -> str:
        """What was not understood is said in the next of the words that the author wrote down for it."""
        return ways[self._misses % len(ways)]

    def _number(self, value: Decimal, unit: str) -> str:
        self._intended = dosing.show(dosing.Amount(value, unit))
        return f"{say_digits(value)} {say_unit(unit)}" if self._digits else say_amount(value, unit)

    def _speak(self, words: str) -> None:
        self._turns += 1
        self._said = words if self._asked != "read-back" else self._said
        voice = VOICES[self._voice % len(VOICES)]
        file = self._sound.folder / "learner.wav"
        self._write(voice, words, file)
        self.heard.log.append(("said", words))
        self._sound.play(file)


def live(
    command: list[str], sound: VirtualSound, learner: SpokenLearner, limit_s: float, *, stays: bool = False
) -> tuple[int, dict, str]:
    """Run the program and let the learner speak with it; return exit code, last line and its console.

    Args:
        command: its arguments.
        sound: what it hears and plays.
        learner: who speaks with it.
        limit_s: longest time, seconds.
        stays: it waits for the next attempt, and is asked to end.

    Raises:
        AssertionError: it took longer than `limit_s`.
    """
    lines: queue.Queue[str] = queue.Queue()
    console: list[str] = []
    deadline = time.monotonic() + limit_s
    last: dict[str, object] = {}
    unheard = 0
    with subprocess.Popen(
        [sys.executable, "-m", "assistant", *command],
        env=sound.environment,
        stdin=subprocess.DEVNULL,  # zero keystrokes
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    ) as process:
        readers = [
            threading.Thread(target=lambda: [lines.put(line) for line in process.stdout], daemon=True),
            threading.Thread(target=lambda: console.extend(process.stderr), daemon=True),
        ]
        for reader in readers:
            reader.start()
        try:
            while "outcome" not in last:
                left = deadline - time.monotonic()
                assert left > 0, ("the attempt took too long", learner.heard.log[-20:])
                try:
                    last = json.loads(lines.get(timeout=min(left, PATIENCE_S)))
                except queue.Empty:
                    unheard += 1
                    assert unheard * PATIENCE_S < _LONGEST_SILENCE_S, (
                        "nothing came for two minutes",
                        learner.heard.log[-20:],
                        console,
                    )
                    learner.say_again()
                    continue
                unheard = 0
                learner.take(last)
            if stays:
                process.terminate()
            code = process.wait(30)
        finally:
            process.kill()
            process.wait()
            for reader in readers:
                reader.join(10)
    return code, last, "".join(console)
