"""The sound of the room, measured on virtual devices: ``python -m tests.bench.room [PART...]``.

Parts, each printing one line of JSON: latency, latency-numbers, latency-fixed, cuts, noise, own-voice, interrupt,
pulled, machine. Sound passes through PulseAudio null sinks and PortAudio as it would through a sound card; the clock
of the sound server adds up to 50 ms to a figure. Nothing is faked but the people.
"""

import argparse
import json
import os
import sys
import tempfile
import time
from pathlib import Path

import numpy as np

from assistant.guide.events import Heard, NotUnderstood
from assistant.guide.read_back import digits_follow
from assistant.spoken import ENGLISH, interpret
from assistant.spoken.expect import NumberExpected
from assistant.spoken.meaning import Answer, Kind
from tests.bench.ear import RATE_HZ, answers, ear
from tests.bench.long_runs import OPEN_EARS, interrupt, own_voice, pulled
from tests.bench.noises import noise
from tests.bench.program import Program
from tests.bench.replies import latency
from tests.spoken_words import words
from tests.virtual_sound import SINK_RATE_HZ, virtual_sound

SEED = 7
PAUSED = (
    ("one hundred", "twenty five", "125"),
    ("eighty three", "point three", "83.3"),
    ("eighty three point", "three", "83.3"),
    ("two hundred", "and fifty", "250"),
    ("nine hundred", "fifty", "950"),
    ("one", "twenty five", "125"),
)
"""Numbers with the place where their speaker stops to look at the display."""


def cuts(repeats: int, pause_s: float) -> dict:
    """Numbers with a pause inside them: in how many was only a part taken as an answer?"""
    found = {}
    for name, fixed_s in (("by_meaning", None), ("fixed_800_ms", 0.8)):
        counts = {"utterances": 0, "cut": 0, "right": 0, "digits_wanted": 0, "not_understood": 0, "wrong": 0}
        with ear(fixed_s=fixed_s) as (source, listener, events):
            for number in range(repeats * len(PAUSED)):
                first, second, value = PAUSED[number % len(PAUSED)]
                voice = ("en-us", "en-gb", "slt")[number % 3]
                listener.listen(NumberExpected("mL/h"), number)
                source.say(_paused(voice, first, f"{second} millilitres per hour", pause_s))
                heard = answers(events, 3.0, source)
                counts["utterances"] += 1
                counts["cut"] += len(heard) > 1
                if len(heard) == 1:
                    counts[_outcome(heard[0], value)] += 1
        found[name] = counts
    return found


def _outcome(heard: Heard | NotUnderstood, value: str) -> str:
    """What became of a number, by the guide's own rule for asking digit by digit."""
    meaning = interpret(heard.words, NumberExpected("mL/h"), heard=True) if isinstance(heard, Heard) else None
    if not isinstance(heard, Heard) or not isinstance(meaning, Answer) or meaning.kind is not Kind.NUMBER:
        return "not_understood"
    if digits_follow(meaning, ENGLISH, doubtful=heard.doubtful, told_apart=heard.told_apart):
        return "digits_wanted"
    return "right" if str(meaning.value) == value else "wrong"


def machine(minutes: float) -> dict:
    """Start to the first spoken word, processor and memory while waiting and while somebody speaks."""
    with virtual_sound() as sound, tempfile.TemporaryDirectory() as folder:
        starts = []
        for number in range(2):
            with sound.recording("loudspeaker") as voice:
                place = Path(folder) / str(number)
                program = Program(sound, place)
                while voice.first_loud_s() is None and time.monotonic() < program.began + 60:
                    time.sleep(0.02)
                starts.append(round(time.monotonic() - program.began, 2))
            if number == 0:
                program.end()
        program.until("listening")
        time.sleep(3)
        waiting = _busy(program.process.pid, lambda: time.sleep(20))
        before = _memory_mb(program.process.pid)
        speech = np.tile(words("en-us", "seventy five and eighty six, it is a lovely morning", SINK_RATE_HZ), 6)
        listening = _busy(program.process.pid, lambda: sound.play_samples(speech, SINK_RATE_HZ))
        deadline = time.monotonic() + 60 * minutes
        while time.monotonic() < deadline:
            program.type("again")
            program.until("listening")
            sound.play_samples(words("en-us", "where am i", SINK_RATE_HZ), SINK_RATE_HZ)
            program.until("listening")
        after = _memory_mb(program.process.pid)
        program.end()
    return {
        "first_word_s": starts,
        "processor_waiting_%": waiting,
        "processor_while_spoken_to_%": listening,
        "memory_mb": [before, after],
        "soak_minutes": minutes,
    }


def _paused(voice: str, first: str, second: str, pause_s: float) -> np.ndarray:
    parts = []
    for text in (first, second):
        spoken = words(voice, text, RATE_HZ)
        loud = np.flatnonzero(np.abs(spoken.astype(int)) > 300)
        parts.append(spoken[max(0, loud[0] - 800) : loud[-1] + 800])
    quiet = np.zeros(int(RATE_HZ * pause_s) - 1600, np.int16)
    return np.concatenate([np.zeros(8_000, np.int16), parts[0], quiet, parts[1]])


def _busy(process: int, act) -> float:
    """Per cent of one core that the process took meanwhile."""

    def spent() -> float:
        fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

    before, began = spent(), time.monotonic()
    act()
    return round(100 * (spent() - before) / (time.monotonic() - began), 1)


def _memory_mb(process: int) -> int:
    status = Path(f"/proc/{process}/status").read_text()
    return next(int(line.split()[1]) // 1024 for line in status.splitlines() if line.startswith("VmRSS"))


def main() -> None:
    """Run the parts that are asked for, or all."""
    parts = {
        "latency": lambda given: latency(given.minutes),
        "latency-numbers": lambda given: latency(given.minutes, numbers=True),
        "latency-fixed": lambda given: latency(given.minutes, fixed=True),
        "cuts": lambda given: cuts(given.times, given.pause),
        "noise": lambda given: noise(given.minutes),
        "own-voice": lambda given: own_voice(given.minutes, given.way, given.level),
        "interrupt": lambda given: interrupt(given.times, given.way or "headset"),
        "pulled": lambda given: pulled(given.times, given.way),
        "machine": lambda given: machine(given.minutes),
    }
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("parts", nargs="*", choices=[[], *parts], default=list(parts), metavar="PART")
    parser.add_argument("--minutes", type=float, default=10, help="of each part that has a length")
    parser.add_argument("--times", type=int, default=50, help="of each part that repeats something")
    parser.add_argument("--pause", type=float, default=0.6, help="seconds, inside a number")
    parser.add_argument("--level", type=int, default=-20, help="of the own voice in the microphone, dB")
    parser.add_argument("--way", choices=["", *OPEN_EARS], default="", help="of talking over the voice")
    given = parser.parse_args()
    for name in given.parts:
        sys.stdout.write(json.dumps({"part": name, "load": os.getloadavg()[0], **parts[name](given)}) + "\n")
        sys.stdout.flush()


if __name__ == "__main__":
    main()
