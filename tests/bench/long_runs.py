"""The program left alone for long: its own voice in its microphone, devices pulled, somebody who talks over it."""

import collections
import contextlib
import dataclasses
import os
import random
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from assistant.adapters.sound import NO_HEADSET
from assistant.record.verify import verify
from tests.bench.program import Program
from tests.spoken_words import words
from tests.virtual_sound import SINK_RATE_HZ, VirtualSound, virtual_sound

SEED = 7
OWN_VOICE_DB = -20
SPOKEN_S_A_CHARACTER = 0.075
"""How long the voice takes, about; what it says next shall not cut off what it says now."""
LONGEST_SAYING_S = 45
ASKED = ("again", "what is my order", "where am i", "more", "again", "what is my order")
OPEN_EARS = {"headset": "headset = true", "canceller": "echo_cancellation = true"}
"""The ways to talk over the voice, by the setting that each needs."""


@contextlib.contextmanager
def _program(way: str = "", level_db: int | None = None) -> Iterator[tuple[VirtualSound, Program, Path]]:
    """The program on devices of its own, with an open ear where one is asked for, and its voice in its microphone."""
    with virtual_sound() as sound, tempfile.TemporaryDirectory() as name, contextlib.ExitStack() as room:
        folder = Path(name)
        settings = folder / "settings.toml"
        settings.write_text(f"[sound]\n{OPEN_EARS[way]}\n" if way else "")
        if level_db is not None:
            room.enter_context(sound.loop_back(level_db=level_db))
        own = dataclasses.replace(sound, environment=sound.environment | {"CHECKOFF_SETTINGS": str(settings)})
        program = Program(own, folder / "records")
        try:
            program.until("listening")
            yield sound, program, folder
        finally:
            program.end()


def own_voice(minutes: float, way: str = "", level_db: int = OWN_VOICE_DB) -> dict[str, object]:
    """The assistant speaks all the time and its microphone hears it: what does it take for an answer?

    Args:
        minutes: how long.
        way: "" for an ear that is closed while the voice sounds; "canceller" or "headset" (which then is none).
        level_db: how loud the voice is in the microphone beside the loudspeaker.
    """
    with _program(way, level_db) as (_, program, _folder):
        began = time.monotonic()
        spoken_s, asked, told = 0.0, 0, 1
        while time.monotonic() < began + 60 * minutes and program.process.poll() is None:
            program.type(ASKED[asked % len(ASKED)])
            asked += 1
            length_s = min(LONGEST_SAYING_S, _said_s(program))
            spoken_s += length_s
            time.sleep(length_s + 1)
            if time.monotonic() > began + 60 * told:
                told += 1
                _tell("own-voice", f"{asked} sayings in {time.monotonic() - began:.0f} s", _heard(program))
        return {
            "minutes": minutes,
            "way": way or "closed ear",
            "level_db": level_db,
            "spoken_minutes": round(spoken_s / 60, 1),
            "asked": asked,
            "alive": program.process.poll() is None,
            "noticed": any(line.get("say") == NO_HEADSET for line in program.seen),
            **_heard(program),
        }


def _said_s(program: Program) -> float:
    """About how long the voice takes to say what it says now."""
    since = len(program.seen)
    program.until("typed", 30)
    program.until("no such line", 1.0)  # what follows the typed line comes at once
    return sum(len(line["speech"]) for line in program.seen[since:] if "speech" in line) * SPOKEN_S_A_CHARACTER


def _heard(program: Program) -> dict[str, object]:
    heard = [entry for entry in program.entries() if entry["kind"] in ("heard", "not understood")]
    words_of = [entry for entry in heard if entry["kind"] == "heard"]
    return {
        "answers_taken": [entry["words"] for entry in words_of if not entry.get("during_speech")],
        "dropped": [entry["words"] for entry in words_of if entry.get("during_speech")],
        "not_understood": len(heard) - len(words_of),
    }


def interrupt(times: int, way: str = "headset") -> dict[str, object]:
    """How long after the learner's first sound does the voice fall silent, and is the word heard?

    With a canceller the voice comes into the microphone at -20 dB.
    """
    silent_ms: list[int] = []
    understood = 0
    chance = random.Random(SEED)  # noqa: S311 - repeatable, no secret
    with _program(way, OWN_VOICE_DB if way == "canceller" else None) as (sound, program, _):
        time.sleep(15)  # the first sentences
        for turn in range(times):
            before = len(program.entries())
            with sound.recording("loudspeaker") as voice, sound.recording("learner") as learner:
                program.type("what is my order")
                time.sleep(3.0 + chance.random())
                said = words(("en-us", "slt")[turn % 2], "where am i", SINK_RATE_HZ)
                loud_from_s = time.monotonic()
                sound.play_samples(said, SINK_RATE_HZ)
                time.sleep(0.5)
                # With the voice in the microphone the learner is what is louder than it there.
                spoke = learner.first_loud_s(threshold=2_000 if way == "canceller" else 300)
                gap = voice.first_silence_s(after=spoke)
            if spoke is not None and gap is not None and spoke > loud_from_s - 0.5:
                silent_ms.append(round(1000 * (gap - spoke)))
            time.sleep(2.5)
            new = [entry for entry in program.entries()[before:] if entry["kind"] == "heard"]
            understood += any(entry.get("meaning", {}).get("value") == "where am I" for entry in new)
            program.type("")
            time.sleep(0.5)
            if turn % 10 == 9:
                _tell("interrupt", f"{turn + 1} times", sorted(silent_ms))
    return {
        "times": times,
        "way": way,
        "silent_ms": sorted(silent_ms),
        "within_200_ms": sum(each <= 200 for each in silent_ms),
        "understood": understood,
    }


def pulled(times: int, way: str = "") -> dict[str, object]:
    """Microphone or loudspeaker pulled at random moments of an attempt, put back some seconds later."""
    chance = random.Random(SEED)  # noqa: S311 - repeatable, no secret
    went_on = typed = 0
    with _program(way) as (sound, program, folder):
        for turn in range(times):
            program.type("again")
            time.sleep(chance.choice((3, 15)) * chance.random())  # in the sentence, or while it listens
            is_microphone = turn % 2 == 0
            (sound.pull_microphone if is_microphone else sound.pull_loudspeaker)()
            time.sleep(chance.random())
            program.type("where am i")
            typed += 2
            went_on += program.until("typed", 30) and program.until("typed", 30)
            (sound.plug_in_microphone if is_microphone else sound.plug_in_loudspeaker)()
            time.sleep(chance.random())
            if turn % 10 == 9:
                _tell("pulled", f"{turn + 1} times", went_on)
        is_alive = program.process.poll() is None
        kinds = collections.Counter(entry["kind"] for entry in program.entries())
        program.end()
        (record,) = (folder / "records").glob("*.jsonl")
        is_whole = verify(record).intact
    return {
        "times": times,
        "way": way or "closed ear",
        "went_on": went_on,
        "alive": is_alive,
        "typed": typed,
        "on_record": kinds["typed"],
        "ear_lost": kinds["microphone lost"],
        "ear_back": kinds["microphone back"],
        "voice_lost": kinds["voice lost"],
        "intact": is_whole,
    }


def _tell(part: str, *what: object) -> None:
    sys.stderr.write(f"{part}, load {os.getloadavg()[0]:.0f}: {' '.join(map(str, what))}\n")
    sys.stderr.flush()
