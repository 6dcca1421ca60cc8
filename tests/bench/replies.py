"""How long a learner waits for the reply: by the program's own record, and as somebody in the room hears it."""

import itertools
import queue
import tempfile
import threading
import time
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from statistics import median

from assistant.checklist.load import load
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from assistant.report.latency import STAGES, latencies
from tests.attempt.spoken_learner import SpokenLearner
from tests.bench.program import Program
from tests.virtual_sound import LoudspeakerRecording, VirtualSound, virtual_sound

CHECKLIST = "primary-line"
CONFIRMATIONS = frozenset({"yes", "no", "done"})
VOLUMES = ("500", "1000", "250", "125", "83.3", "75", "62.5", "100")
"""Numbers said in turn, with the unit that is asked for."""
LEAST_LOUD = 100
"""What is at least so far from silence, of 32,768, is still heard of a learner: some voices fade slowly."""
LONGEST_REPLY_S = 8.0
HEARD_ENOUGH_S = 1.5
"""So much of a reply is heard before the next answer."""


@dataclass(frozen=True)
class _Said:
    """Something the learner said, between two moments of the steady clock, seconds."""

    words: str
    began: float
    ended: float


class _TimedLearner(SpokenLearner):
    """A spoken learner that notes when it said what."""

    def __init__(self, sound: VirtualSound) -> None:
        checklist = load(CHECKLIST)
        super().__init__(sound, checklist, answer_key(load_order(checklist.order)), {})
        self.said: list[_Said] = []

    def _speak(self, words: str) -> None:
        began = time.monotonic()
        super()._speak(words)
        self.said.append(_Said(words, began, time.monotonic()))


class _NumbersLearner(_TimedLearner):
    """Types its way to the first number, and then says one after the other, and "no" to each read-back."""

    def __init__(self, sound: VirtualSound, program: Program) -> None:
        super().__init__(sound)
        self._program = program
        self._volumes = itertools.cycle(VOLUMES)

    def take(self, line: dict[str, object]) -> None:
        super().take(line)
        if "say" in line and line["tone"] in ("step", "read-back", "unclear"):
            threading.Timer(HEARD_ENOUGH_S if self.said else 0.1, self._program.type, ("",)).start()

    def _is_number(self) -> bool:
        return self._step is not None and self._checklist.number_asked(self._step) is not None

    def _words(self) -> str:
        number = self._checklist.number_asked(self._step)
        if number is None:
            return super()._words()
        return "no" if self._asked == "read-back" else self._number(Decimal(next(self._volumes)), number.unit)

    def _speak(self, words: str) -> None:
        if self._is_number():
            super()._speak(words)
        else:
            self._program.type(words)


def latency(minutes: float, *, fixed: bool = False, numbers: bool = False) -> dict:
    """Spoken answers to one checklist, in order, or to its first number alone.

    ``room_ms`` is taken from the sound of both sides as it passes the sound server, the other figures from the record.
    """
    with virtual_sound() as sound, tempfile.TemporaryDirectory() as folder:
        with sound.recording("loudspeaker") as voice, sound.recording("learner") as mouth:
            program = Program(sound, Path(folder), fixed=fixed)
            learner = _NumbersLearner(sound, program) if numbers else _TimedLearner(sound)
            deadline = time.monotonic() + 60 * minutes
            while time.monotonic() < deadline:
                try:
                    line = program.lines.get(timeout=60)
                except queue.Empty:
                    break
                if "outcome" in line:
                    break
                learner.take(line)
            time.sleep(2)
            waits = _waits_ms(learner.said, mouth, voice)
        entries = program.entries()
        program.end()
    found = {
        one.sort: {"answers": one.answers, "95 %_ms": one.stages["sounded_ms"].most_ms}
        | {name: one.stages[name].median_ms for name in STAGES}
        for one in latencies(entries)
    }
    return {"by_record": found, "room_ms": waits}


def _waits_ms(said: list[_Said], mouth: LoudspeakerRecording, voice: LoudspeakerRecording) -> dict:
    """From the last sound of each answer to the first of the reply, by sort of answer."""
    found: dict[str, list[int]] = {}
    for one in said:
        spoken = mouth.loud_moments_s(one.began, one.ended, LEAST_LOUD)
        if not len(spoken):
            continue
        reply = voice.loud_moments_s(spoken[-1], spoken[-1] + LONGEST_REPLY_S)
        if len(reply):
            found.setdefault(_sort(one.words), []).append(round(1000 * (reply[0] - spoken[-1])))
    return {
        sort: {"answers": len(waits), "median": round(median(waits)), "all": sorted(waits)}
        for sort, waits in found.items()
    }


def _sort(words: str) -> str:
    if words in CONFIRMATIONS:
        return "confirmations"
    return "numbers" if words.endswith("litres") else "other"
