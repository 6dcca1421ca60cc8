"""The sound of the room, measured on virtual devices: ``python -m tests.bench.room [PART...]``.

Parts, each printing one line of JSON: latency, latency-numbers, latency-fixed, cuts, noise, own-voice, interrupt,
pulled, machine. Sound passes through PulseAudio null sinks and PortAudio as it would through a sound card; the clock
of the sound server adds up to 50 ms to a figure. Nothing is faked but the people.
"""

import argparse
import contextlib
import json
import os
import queue
import random
import sys
import tempfile
import time
from pathlib import Path

import numpy as np

from assistant.adapters.clock import SystemClock
from assistant.adapters.listener import Listener
from assistant.adapters.recognisers.choose import open_recogniser
from assistant.guide.events import Heard, NotUnderstood
from assistant.ports import AnswerHeard
from assistant.record.verify import verify
from assistant.spoken import interpret
from assistant.spoken.expect import AnyExpected, ConfirmExpected, NumberExpected
from assistant.spoken.meaning import Answer, Kind
from tests.bench.program import Program
from tests.bench.replies import latency
from tests.spoken_words import words
from tests.virtual_sound import SINK_RATE_HZ, virtual_sound

RATE_HZ = 16_000
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
        counts = {"utterances": 0, "cut": 0, "right": 0, "not_understood": 0, "wrong": 0}
        with _ear(fixed_s=fixed_s) as (source, ear, events):
            for number in range(repeats * len(PAUSED)):
                first, second, value = PAUSED[number % len(PAUSED)]
                voice = ("en-us", "en-gb", "slt")[number % 3]
                ear.listen(NumberExpected("mL/h"), number)
                source.say(_paused(voice, first, f"{second} millilitres per hour", pause_s))
                answers = _answers(events, 3.0, source)
                counts["utterances"] += 1
                counts["cut"] += len(answers) > 1
                means = [interpret(each.words, NumberExpected("mL/h"), heard=True) for each in answers if each.words]
                if len(answers) == 1:
                    right = [isinstance(one, Answer) and str(one.value) == value for one in means]
                    counts["right" if right == [True] else "wrong" if right else "not_understood"] += 1
        found[name] = counts
    return found


def noise(minutes: float) -> dict:
    """Alarm tones, a neighbour at -10 dB, clatter: what is taken for an answer while a step waits for one?"""
    found = {"minutes": minutes, "answers": 0, "numbers": 0, "not_understood": 0, "taken": []}
    chance = random.Random(SEED)  # noqa: S311 - repeatable, no secret
    kinds = (ConfirmExpected(), NumberExpected("mL/h"), AnyExpected())
    with _ear(is_real_time=False) as (source, ear, events):
        expect = kinds[0]
        for turn in range(int(minutes * 6)):
            expect = kinds[turn % len(kinds)]
            ear.listen(expect, turn)
            source.say(_ten_seconds(turn, chance))
            for heard in _answers(events, 2.0, source):
                meaning = interpret(heard.words, expect, heard=True) if heard.words else None
                if isinstance(meaning, Answer) and meaning.kind is not Kind.TEXT:
                    found["answers"] += 1
                    found["numbers"] += meaning.kind is Kind.NUMBER
                    found["taken"].append(heard.words)
                else:
                    found["not_understood"] += 1
    return found


def own_voice(minutes: float) -> dict:
    """The assistant speaks all the time and its microphone hears it at -20 dB: what does it take for an answer?"""
    with virtual_sound() as sound, tempfile.TemporaryDirectory() as folder, sound.loop_back(level_db=-20):
        program = Program(sound, Path(folder))
        deadline = time.monotonic() + 60 * minutes
        again = 0
        while time.monotonic() < deadline and program.until("listening"):
            time.sleep(1.5)  # what comes late of the sentence is in the room now
            program.type("again")
            again += 1
        entries = program.entries()
        program.end()
    spoken = [entry for entry in entries if entry["kind"] in ("heard", "not understood")]
    taken = [entry["words"] for entry in spoken if entry["kind"] == "heard"]
    return {
        "minutes": minutes,
        "sentences_again": again,
        "answers_taken": taken,
        "not_understood": len(spoken) - len(taken),
    }


def interrupt(times: int) -> dict:
    """With a headset: how long after the learner's first sound does the voice fall silent, and is the word heard?"""
    silent_ms, understood = [], 0
    with virtual_sound() as sound, tempfile.TemporaryDirectory() as folder:
        program = Program(sound, Path(folder), "--headset")
        chance = random.Random(SEED)  # noqa: S311 - repeatable, no secret
        program.until("listening")
        time.sleep(2)
        for _ in range(times):
            before = len(program.entries())
            with sound.recording("loudspeaker") as voice, sound.recording("learner") as learner:
                program.type("what is my order")
                time.sleep(2.5 + chance.random())
                sound.play_samples(words(("en-us", "slt")[_ % 2], "where am i", SINK_RATE_HZ), SINK_RATE_HZ)
                time.sleep(0.4)
                spoke = learner.first_loud_s()
                gap = voice.first_silence_s(after=spoke)
            silent_ms.append(round(1000 * (gap - spoke)) if gap is not None and spoke is not None else None)
            time.sleep(2.5)
            said = [
                entry.get("meaning", {}).get("value")
                for entry in program.entries()[before:]
                if entry["kind"] == "heard"
            ]
            understood += "where am I" in said
            program.type("")
            time.sleep(0.5)
        program.end()
    known = sorted(each for each in silent_ms if each is not None)
    return {
        "times": times,
        "silent_ms": known,
        "within_200_ms": sum(each <= 200 for each in known),
        "understood": understood,
    }


def pulled(times: int) -> dict:
    """Microphone or loudspeaker pulled at random moments of an attempt, put back some seconds later."""
    chance = random.Random(SEED)  # noqa: S311 - repeatable, no secret
    went_on = 0
    with virtual_sound() as sound, tempfile.TemporaryDirectory() as folder:
        program = Program(sound, Path(folder))
        program.until("listening")
        typed = 0
        for turn in range(times):
            program.type("again")
            typed += 1
            time.sleep(3 * chance.random())
            is_microphone = turn % 2 == 0
            (sound.pull_microphone if is_microphone else sound.pull_loudspeaker)()
            time.sleep(chance.random())
            program.type("where am i")
            typed += 1
            went_on += program.until("typed", 30) and program.until("typed", 30)
            (sound.plug_in_microphone if is_microphone else sound.plug_in_loudspeaker)()
            time.sleep(chance.random())
        alive = program.process.poll() is None
        entries = program.entries()
        program.end()
        (record,) = Path(folder).glob("*.jsonl")
        whole = verify(record).intact
    kept = sum(entry["kind"] == "typed" for entry in entries)
    return {"times": times, "went_on": went_on, "alive": alive, "typed": typed, "on_record": kept, "intact": whole}


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


class _Played:
    """Sound for an ear without devices; blocks of 30 ms, as fast as the ear takes them or in real time."""

    rate_hz = RATE_HZ
    channels = 1
    latency_s = 0.0

    def __init__(self, *, is_real_time: bool) -> None:
        self._sound: queue.Queue[np.ndarray] = queue.Queue()
        self._is_real_time = is_real_time
        self.silent_s = 0.0
        self._due = time.monotonic()

    def say(self, samples: np.ndarray) -> None:
        size = 480
        for start in range(0, len(samples) - size + 1, size):
            self._sound.put(samples[start : start + size])
        self.silent_s = 0.0

    def open(self) -> None:
        pass

    def close(self) -> None:
        pass

    def has_ended(self) -> bool:
        return False

    def next_block(self, timeout: float):
        from assistant.adapters.microphone import SoundBlock

        if self._is_real_time:
            self._due = max(self._due + 0.03, time.monotonic() - 0.3)
            time.sleep(max(0.0, self._due - time.monotonic()))
        try:
            block = self._sound.get_nowait()
        except queue.Empty:
            self.silent_s += 0.03
            block = np.zeros(480, np.int16)
            time.sleep(0.002)
        return SoundBlock(block.astype("<i2").tobytes(), time.monotonic(), False)


@contextlib.contextmanager
def _ear(fixed_s: float | None = None, *, is_real_time: bool = True):
    events: queue.Queue[object] = queue.Queue()
    source = _Played(is_real_time=is_real_time)
    ear = Listener(open_recogniser(None), events.put, SystemClock(), source=source, fixed_pause_s=fixed_s)
    try:
        yield source, ear, events
    finally:
        ear.close()


class _NoWords:
    words = ""


def _answers(events: "queue.Queue[object]", silence_s: float, source: _Played) -> list:
    """What was heard until the room had been silent for so long and the recogniser had come to rest."""
    found = []
    while source.silent_s < silence_s:
        with contextlib.suppress(queue.Empty):
            event = events.get(timeout=0.05)
            if isinstance(event, AnswerHeard):
                match event.event:
                    case Heard():
                        found.append(event.event)
                    case NotUnderstood():
                        found.append(_NoWords())
    return found


def _paused(voice: str, first: str, second: str, pause_s: float) -> np.ndarray:
    parts = []
    for text in (first, second):
        spoken = words(voice, text, RATE_HZ)
        loud = np.flatnonzero(np.abs(spoken.astype(int)) > 300)
        parts.append(spoken[max(0, loud[0] - 800) : loud[-1] + 800])
    quiet = np.zeros(int(RATE_HZ * pause_s) - 1600, np.int16)
    return np.concatenate([np.zeros(8_000, np.int16), parts[0], quiet, parts[1]])


def _ten_seconds(turn: int, chance: random.Random) -> np.ndarray:
    """Ten seconds of a lab: tones of an alarm, somebody at the next bench 10 dB softer than a learner, clatter."""
    size = 10 * RATE_HZ
    at = np.arange(size) / RATE_HZ
    room = np.random.default_rng(turn).normal(0, 40, size)
    # Five pulses with a pause between the third and the fourth, a form that IEC 60601-1-8 describes; 500 to 900 Hz.
    if turn % 3 != 1:
        pitch = chance.choice((523, 659, 784, 880))
        for start in (0.5, 0.8, 1.1, 1.8, 2.1, 5.5, 5.8, 6.1, 6.8, 7.1):
            on = (at >= start) & (at < start + 0.2)
            room += on * 6_000 * np.sin(2 * np.pi * pitch * at) * chance.choice((0.5, 1.0))
    if turn % 3 != 0:
        talk = chance.choice(
            (
                "did you see the new schedule for next week, I am on nights again",
                "could you pass me the tape please, the other one is empty",
                "she said that the lecture was moved to room seventeen at half past two",
                "take the blood pressure again, it was one hundred and thirty over eighty",
                "yes I know, but it is done differently on our ward",
            )
        )
        spoken = words(chance.choice(("en-us", "en-gb", "slt", "rms")), talk, RATE_HZ).astype(float) * 0.316
        room[RATE_HZ : RATE_HZ + len(spoken)] += spoken[: size - RATE_HZ]
    if turn % 2:
        for _ in range(12):
            start = chance.randrange(size - 1_600)
            fall = np.exp(-np.arange(1_600) / 200)
            room[start : start + 1_600] += np.random.default_rng(start).normal(0, 8_000, 1_600) * fall
    return np.clip(room, -32_768, 32_767).astype(np.int16)


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
        "own-voice": lambda given: own_voice(given.minutes),
        "interrupt": lambda given: interrupt(given.times),
        "pulled": lambda given: pulled(given.times),
        "machine": lambda given: machine(given.minutes),
    }
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("parts", nargs="*", choices=[[], *parts], default=list(parts), metavar="PART")
    parser.add_argument("--minutes", type=float, default=10, help="of each part that has a length")
    parser.add_argument("--times", type=int, default=50, help="of each part that repeats something")
    parser.add_argument("--pause", type=float, default=0.6, help="seconds, inside a number")
    given = parser.parse_args()
    for name in given.parts:
        sys.stdout.write(json.dumps({"part": name, "load": os.getloadavg()[0], **parts[name](given)}) + "\n")
        sys.stdout.flush()


if __name__ == "__main__":
    main()
