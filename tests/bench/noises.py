"""Hours of a skills lab's noise: what is taken for an answer while a step waits for one?

Alarm tones by the patterns of IEC 60601-1-8 (high priority: ten pulses as three, two, three, two; medium: three; low:
one or two) at several pitches, a neighbour's talk 10 dB softer than a learner, and clatter, doors and footsteps.
"""

import functools
import random
import sys
import time
from pathlib import Path

import numpy as np
import soundfile
import soxr

from assistant.guide.events import Heard, NotUnderstood
from assistant.guide.read_back import digits_follow
from assistant.spoken import ENGLISH, interpret
from assistant.spoken.expect import AnyExpected, ConfirmExpected, Expect, NumberExpected
from assistant.spoken.meaning import Answer, Kind
from tests.bench.ear import RATE_HZ, answers, ear
from tests.spoken_words import words

LEARNER_PEAK = 16_000
SOFTER = 10 ** (-10 / 20)
"""The neighbour beside the learner: -10 dB."""
TURN_S = 10
PROMPTS = Path("/usr/share/asterisk/sounds")
"""Where Debian's packages of telephone prompts put a woman's recorded speech; used where installed."""
VOICES = ("en-us", "en-gb", "en-gb-scotland", "en-us+f3", "slt", "rms", "awb", "kal16")
TALK = (
    "did you see the new schedule for next week, I am on nights again",
    "could you pass me the tape please, the other one is empty",
    "she said that the lecture was moved to room seventeen at half past two",
    "take the blood pressure again, it was one hundred and thirty over eighty",
    "yes I know, but it is done differently on our ward",
    "no, that is not the one, look in the second drawer on the left",
    "I had a sandwich at twelve and I am hungry already",
    "his heart rate went up to ninety five when he stood up",
    "wait, stop, you are standing on my foot",
    "right, so we do the left arm first and then the other one",
    "have you got a pen, I want to write that down",
    "the bus was twenty five minutes late this morning",
    "is it five hundred or a thousand, I can never remember",
    "okay, done, now it is your turn, go on",
    "my sister is having her birthday on the third of May",
    "can you hear that, somebody's pump is beeping again",
    "put it back where it was when you have finished with it",
    "eighty three point three, no, I think that was another patient",
    "we could ask the instructor again after the break",
    "it is clear to me, but the others did not get it at all",
)
KINDS: tuple[Expect, ...] = (ConfirmExpected(), NumberExpected("mL/h"), AnyExpected())


def noise(minutes: float) -> dict[str, object]:
    """Let an open ear with the real recogniser hear so many minutes of noise; count what it takes.

    A number counts as kept, as in an attempt, when the next thing taken is a yes to its read-back.
    """
    found: dict[str, int] = dict.fromkeys(
        ("answers", "numbers_heard", "numbers_kept", "digits_wanted", "not_understood"), 0
    )
    taken: list[str] = []
    chance = random.Random(7)  # noqa: S311 - repeatable, no secret
    began = time.monotonic()
    is_read_back = False
    turns = max(1, round(minutes * 60 / TURN_S))
    with ear(is_real_time=False) as (source, listener, events):
        for turn in range(turns):
            expect = ConfirmExpected() if is_read_back else KINDS[turn % len(KINDS)]
            listener.listen(expect, turn)
            source.say(ten_seconds(turn, chance))
            for heard in answers(events, 2.0, source):
                answer = _meant(heard, expect)
                if answer is None:
                    found["not_understood"] += 1
                elif answer.kind is Kind.NUMBER and _wants_digits(answer, heard):
                    found["digits_wanted"] += 1
                else:
                    found["answers"] += 1
                    found["numbers_heard"] += answer.kind is Kind.NUMBER
                    found["numbers_kept"] += is_read_back and answer.value == "yes"
                    is_read_back = answer.kind is Kind.NUMBER
                    taken.append(heard.words)
            if turn % 30 == 29:
                spent = time.monotonic() - began
                sys.stderr.write(f"noise: {turn + 1} of {turns} turns after {spent:.0f} s: {found} {taken}\n")
    return {"minutes": round(turns * TURN_S / 60, 1), **found, "taken": taken}


def _meant(heard: Heard | NotUnderstood, expect: Expect) -> Answer | None:
    """The answer that these words are; free words, which nothing depends on, are none."""
    meaning = interpret(heard.words, expect, heard=True) if isinstance(heard, Heard) else None
    return meaning if isinstance(meaning, Answer) and meaning.kind is not Kind.TEXT else None


def _wants_digits(answer: Answer, heard: Heard) -> bool:
    """Whether the guide would ask for this number again, digit by digit."""
    return not answer.digit_by_digit and digits_follow(
        answer, ENGLISH, doubtful=heard.doubtful, told_apart=heard.told_apart
    )


def ten_seconds(turn: int, chance: random.Random) -> np.ndarray:
    """Ten seconds of a lab, 16-bit at `RATE_HZ`: the room, and two of its noises, now and then all."""
    size = TURN_S * RATE_HZ
    room = np.random.default_rng(turn).normal(0, 40, size)
    parts = {
        "alarm": lambda: alarm(chance),
        "talk": lambda: talk(chance),
        "clatter": lambda: _sum(size, [_clatter(chance) for _ in range(12)], chance),
        "steps": lambda: _sum(size, [_thud(chance, 90, 0.06) for _ in range(14)], chance),
        "door": lambda: _sum(size, [_thud(chance, 55, 0.25), _squeak(chance)], chance),
    }
    for name in chance.sample(sorted(parts), 5 if turn % 6 == 5 else 2):
        sound = parts[name]()[:size]
        at = chance.randrange(max(1, size - len(sound)))
        room[at : at + len(sound)] += sound
    return np.clip(room, -32_768, 32_767).astype(np.int16)


def alarm(chance: random.Random) -> np.ndarray:
    """One alarm signal: pulses of a tone with harmonics, in the rhythm of its priority."""
    pitch = chance.choice((262, 330, 392, 440, 523, 587, 659, 784, 880, 988))
    loud = chance.choice((1_500, 4_000, 8_000))
    pulse_s, gap_s, rhythm = chance.choice(
        ((0.15, 0.1, (3, 2, 3, 2)), (0.2, 0.2, (3,)), (0.2, 0.2, (3, 3)), (0.25, 0.2, (2,)), (0.25, 0.0, (1,)))
    )
    at = np.arange(int(pulse_s * RATE_HZ)) / RATE_HZ
    rises = np.minimum(1, np.minimum(at, at[::-1]) / 0.02)
    parts = []
    for group in rhythm:
        for _ in range(group):
            tone = sum(np.sin(2 * np.pi * pitch * harmonic * at) / harmonic for harmonic in (1, 2, 3, 4))
            parts += [loud / 2 * rises * tone, np.zeros(int(gap_s * RATE_HZ))]
            pitch = chance.choice((pitch, pitch, pitch * 1.26))
        parts.append(np.zeros(int(0.4 * RATE_HZ)))
    return np.concatenate(parts)


def talk(chance: random.Random) -> np.ndarray:
    """A neighbour's sentence, 10 dB below a learner."""
    prompts = _prompts()
    if prompts and chance.random() < 0.5:
        samples, rate_hz = soundfile.read(chance.choice(prompts), dtype="float32")
        spoken = soxr.resample(samples, rate_hz, RATE_HZ)
    else:
        spoken = words(chance.choice(VOICES), chance.choice(TALK), RATE_HZ).astype(float)
    return spoken / max(1e-6, np.abs(spoken).max()) * LEARNER_PEAK * SOFTER


@functools.cache
def _prompts() -> list[Path]:
    return sorted(PROMPTS.rglob("*.wav"))


def _sum(size: int, parts: list[np.ndarray], chance: random.Random) -> np.ndarray:
    room = np.zeros(size)
    for part in parts:
        at = chance.randrange(size - len(part))
        room[at : at + len(part)] += part
    return room


def _clatter(chance: random.Random) -> np.ndarray:
    """Something of metal or plastic falls: noise, or a ringing, that dies away."""
    at = np.arange(int(0.15 * RATE_HZ))
    fall = np.exp(-at / chance.choice((120, 300, 700)))
    if chance.random() < 0.5:
        return np.random.default_rng(chance.randrange(10**6)).normal(0, 8_000, len(at)) * fall
    ring = chance.randrange(1_500, 5_000)
    return 9_000 * fall * np.sin(2 * np.pi * ring * at / RATE_HZ) * np.sin(2 * np.pi * ring * 1.37 * at / RATE_HZ)


def _thud(chance: random.Random, pitch: int, length_s: float) -> np.ndarray:
    at = np.arange(int(4 * length_s * RATE_HZ)) / RATE_HZ
    return chance.uniform(0.5, 1) * 9_000 * np.exp(-at / length_s) * np.sin(2 * np.pi * pitch * at)


def _squeak(chance: random.Random) -> np.ndarray:
    at = np.arange(int(0.7 * RATE_HZ)) / RATE_HZ
    return 2_500 * np.sin(2 * np.pi * (chance.uniform(300, 700) * at + 250 * at**2)) * np.hanning(len(at))
