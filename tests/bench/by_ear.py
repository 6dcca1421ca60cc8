"""An attempt by ear alone: ``python -m tests.bench.by_ear NAME... [--talk]``.

The program runs on virtual devices. A recogniser that was not used to tune the voice (`second_listener`) hears the
loudspeaker, and what it writes down is all that the learner has: from it alone the learner tells which step is asked
for, and whether the number that is read back is the one that was given. The learner knows the order, the bench and the
procedure, and answers by keyboard. Prints one line of JSON for each attempt, and ends with 1 where one was not passed.
"""

import argparse
import json
import math
import queue
import subprocess
import sys
import tempfile
import threading
import time
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path

import numpy as np
import soxr

from assistant import dosing
from assistant.checklist.model import Step
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken import speech
from tests.attempt.library import Papers, amount, papers, right_words
from tests.bench.printing import say
from tests.bench.second_listener import WINDOW_S, Hears, reporting_listener
from tests.bench.understood import errors, number_is_right, plain
from tests.bench.voices import Sound
from tests.virtual_sound import SINK_RATE_HZ, virtual_sound

LIKE = 0.34
"""Share of a line's words that may be written down otherwise, and the line is still known."""
TURN_LIMIT_S = 180
_GAP_S = 0.25
_QUIET = 0.004


@dataclass
class LearnerByEar:
    """Answers what was written down; sees nothing.

    Attributes:
        slip: what is typed at first where a number is asked for, against what is meant; empty for no slip.
        steps: those that were answered.
        asked_again: how often nothing could be made of what was heard.
        refused: numbers read back that were not what was meant.
    """

    given: Papers
    slip: str = ""
    steps: list[str] = field(default_factory=list)
    asked_again: int = 0
    refused: list[str] = field(default_factory=list)
    _said: str = ""
    _number: tuple[Decimal, str] | None = None

    def answer(self, heard: str) -> str | None:
        """What to type; None where nothing is asked."""
        words = plain(heard)
        if words[-3:] == ["is", "that", "right"]:
            return self._confirm(heard)
        if words[-3:] == ["digit", "by", "digit"] and self._number is not None:
            self._said = dosing.show(dosing.Amount(*self._number))
            return self._said
        step = self._step(words)
        if step is None:
            if "timing" in words[-4:]:
                return None
            self.asked_again += 1
            return "again"
        self.steps.append(step.id)
        number = self.given.checklist.number_asked(step)
        self._number = None
        if number is not None:
            right = amount(self.given.key[number.key])
            self._number = (right.value, right.unit)
            if self.slip:
                self._said, self.slip = self.slip, ""
                return self._said
        self._said = right_words(step, self.given)
        return self._said

    def _confirm(self, heard: str) -> str:
        """A yes only to what was said."""
        last = heard[heard.lower().rfind("i have") :]
        if self._number is None:
            said, read = plain(self._said), plain(last)
            is_right = errors(said, [word for word in read if word in said]) <= LIKE * len(said)
        else:
            is_right = number_is_right(*self._number, last)
        if not is_right:
            self.refused.append(f"{self._said}: {last}")
        return "yes" if is_right else "no"

    def _step(self, words: list[str]) -> Step | None:
        """The step whose line ends what was heard, if one is like it; never by its place in the procedure."""
        found: list[tuple[float, int, Step]] = []
        for step in self.given.checklist.steps:
            line = plain(speech(step.say))
            ends = [words[-length:] for length in range(max(1, len(line) - 2), len(line) + 3)]
            found.append((min(errors(line, end) for end in ends) / len(line), -len(line), step))
        likeness, _, step = min(found, key=lambda one: one[:2])
        return step if likeness <= LIKE else None


def written_down(listener: Hears, sound: Sound) -> str:
    """What the listener writes of a whole turn, cut where the voice pauses into what it takes at once."""
    size = round(_GAP_S * SAMPLE_RATE_HZ)
    frames = np.abs(sound[: len(sound) // size * size]).reshape(-1, size).max(axis=1)
    parts: list[Sound] = []
    start = 0
    limit = round(0.8 * WINDOW_S / _GAP_S)
    while start < len(frames):
        end = min(len(frames), start + limit)
        if end < len(frames):
            quiet = [at for at in range(start + 4, end) if frames[at] < _QUIET]
            end = quiet[-1] if quiet else end
        if frames[start:end].max(initial=0) >= _QUIET:
            parts.append(sound[start * size : end * size])
        start = end
    return " ".join(listener.written([part])[0] for part in parts)


def attempt(
    learner: LearnerByEar,
    listener: Hears,
    *,
    path: Path | None = None,
    talk: bool = False,
    limit_s: float = math.inf,
) -> dict[str, object]:
    """Live through an attempt; what came of it.

    Args:
        learner: whose attempt it is, with its papers.
        listener: writes down what the loudspeaker says.
        path: of the learner's checklist, where it is not one of the library.
        talk: print what was heard and typed as well.
        limit_s: longest time; an attempt that takes longer is broken off, with no outcome.
    """
    name = learner.given.checklist.name
    began = time.monotonic()
    last: dict[str, object] = {}
    with tempfile.TemporaryDirectory() as folder, virtual_sound() as sound, sound.recording() as recording:
        settings = Path(folder) / "none.toml"  # the user's own count for nothing here
        command = [sys.executable, "-m", "assistant", "run", str(path or name), "--json", "--short-waits", "--voice"]
        pipe = subprocess.PIPE
        with subprocess.Popen(
            [*command, "--ear", "bundled", "--synthesiser", "neural", "--records", folder],
            env=sound.environment | {"CHECKOFF_SETTINGS": str(settings)},
            stdin=pipe,
            stdout=pipe,
            stderr=subprocess.DEVNULL,
            text=True,
        ) as process:
            lines: queue.Queue[dict[str, object] | None] = queue.Queue()
            reader = threading.Thread(target=_read, args=(process, lines), daemon=True)
            reader.start()
            at = 0
            while time.monotonic() < began + limit_s and (line := lines.get(timeout=TURN_LIMIT_S)) is not None:
                last = line if "outcome" in line else last
                if not line.get("listening") or not lines.empty():
                    continue
                samples = recording.samples()
                turn, at = samples[at:], len(samples)
                heard = written_down(listener, _at_listeners_rate(turn))
                if not heard:
                    continue
                answer = learner.answer(heard)
                if talk:
                    say(f"    heard: {heard}\n    typed: {answer}")
                if answer is not None:
                    process.stdin.write(answer + "\n")
                    process.stdin.flush()
            if "outcome" not in last:
                process.kill()
            code = process.wait(30)
            reader.join()
    return {
        "checklist": name,
        "outcome": last.get("outcome"),
        "code": code,
        "steps_answered": len(learner.steps),
        "of": len(learner.given.checklist.steps),
        "asked_again": learner.asked_again,
        "read_backs_refused": learner.refused,
        "minutes": round((time.monotonic() - began) / 60, 1),
    }


def _read(process: subprocess.Popen[str], lines: "queue.Queue[dict[str, object] | None]") -> None:
    for line in process.stdout or ():
        lines.put(json.loads(line))
    lines.put(None)


def _at_listeners_rate(samples: np.ndarray) -> Sound:
    return np.asarray(soxr.resample(samples.astype(np.float32) / 32_768, SINK_RATE_HZ, SAMPLE_RATE_HZ))


def main() -> int:
    """Live through the attempts that are named; 0 where all were passed."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("names", nargs="+", metavar="NAME")
    parser.add_argument("--talk", action="store_true", help="print what was heard and typed as well")
    args = parser.parse_args()
    listener = reporting_listener()
    if listener is None:
        raise SystemExit("The listener is not installed: see tests/bench/second_listener.py.")
    found = [attempt(LearnerByEar(papers(name)), listener, talk=args.talk) for name in args.names]
    for one in found:
        say(json.dumps(one))
    return 0 if all(one["code"] == 0 for one in found) else 1


if __name__ == "__main__":
    sys.exit(main())
