"""How well a recogniser hears numbers and commands: right, wrong, refused; a bench, not part of the tests.

    python tests/bench/hearing.py                 the report half of the clips, the bundled recogniser
    python tests/bench/hearing.py --half tuning   the half that thresholds were chosen on
    python tests/bench/hearing.py --ear NAME --models FOLDER --most 200

Speakers: espeak-ng and flite voices speak whole phrases. Human speech comes from Debian's packages
asterisk-core-sounds-en-wav (one speaker, numbers joined from single words, prompts as speech from outside) and
pocketsphinx-testdata (readings from a novel, digits, as speech from outside and as numbers), where installed.
"""

import argparse
import hashlib
import io
import subprocess
import sys
import tempfile
from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path

import numpy as np
import numpy.typing as npt
import soundfile
import soxr

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from assistant import spoken
from assistant.adapters.recognisers.choose import open_recogniser
from assistant.adapters.recognisers.replay import hear_sound
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken.expect import AnyExpected, ConfirmExpected, Expect, NumberExpected
from assistant.spoken.meaning import Ambiguous, Answer, Kind

Sound = npt.NDArray[np.float32]

ESPEAK = ("en-gb", "en-us", "en-gb-scotland", "en-gb-x-rp", "en-us+f3", "en-gb+f2", "en-us+m3")
FLITE = ("slt", "rms", "awb")
ASTERISK = Path("/usr/share/asterisk/sounds/en_US_f_Allison")
SPHINX = Path("/usr/share/pocketsphinx/test/data")

UNITS = {
    "mL/h": ("millilitres per hour", "mils an hour", "milliliters an hour"),
    "mL": ("millilitres", "mils"),
    "min": ("minutes",),
    "mg": ("milligrams",),
}
ONES = [spoken.say_number(Decimal(n)) for n in range(20)]
TENS = ["-", "-", *(spoken.say_number(Decimal(10 * n)) for n in range(2, 10))]
VALUES = [
    *range(2, 21),
    *range(30, 100, 10),
    *(25, 42, 63, 75, 83, 105, 110, 115, 118, 125, 130, 150, 167, 175, 180, 208, 213, 217, 240, 250, 280, 333),
    *(350, 417, 450, 500, 550, 600, 715, 750, 800, 900, 918, 950, 980, 1000, 1200, 1500, 2000, 2400),
    *("0.5", "1.5", "2.5", "4.2", "12.5", "20.8", "31.3", "62.5", "83.3", "166.7", "41.7", "13.3", "33.3", "15.5"),
]
OUTSIDE = (
    "did you see the match last night",
    "could somebody open the window please",
    "I think she is still in the other room",
    "the bus leaves at ten fifteen from the station",
    "my shift starts at seven in the morning",
    "we need more towels over here",
    "there were fifty people at the party",
    "hold this for me would you",
    "let me show you how my sister does it",
    "what time is lunch today",
    "he said that he would be here by now",
    "this one looks a bit different from the last one",
    "it costs twenty five pounds a month",
    "have a look at the second page",
    "I have never been to the coast",
    "the weather is nice today",
    "turn the radio down a little",
    "she has two brothers and one dog",
    "yesterday we had to wait for an hour",
    "put it on the table next to the door",
    "is anybody sitting here",
    "that is not what I meant at all",
    "my phone number ends in four seven",
    "okay everybody gather round",
)


@dataclass(frozen=True)
class Clip:
    """One recording and what is right for it.

    Attributes:
        key: names it; decides its half.
        speaker: whose voice.
        kind: "number", "command" or "outside".
        expect: the frame.
        right: value, or the meaning's value as text; None for speech from outside.
    """

    key: str
    speaker: str
    kind: str
    expect: Expect
    right: Decimal | str | None

    @property
    def half(self) -> str:
        return "tuning" if hashlib.sha256(self.key.encode()).digest()[0] % 2 else "report"


def cardinal(value: int, joint: str = " and ") -> str:
    """A whole number in words below a million."""
    if value < 20:
        return ONES[value]
    if value < 100:
        return TENS[value // 10] + (f" {ONES[value % 10]}" if value % 10 else "")
    for size, name in ((1000, "thousand"), (100, "hundred")):
        if value >= size:
            rest = value % size
            glue = joint if rest < 100 else " "
            return f"{cardinal(value // size, joint)} {name}" + (f"{glue}{cardinal(rest, joint)}" if rest else "")
    raise AssertionError(value)


def ways(value: str) -> list[str]:
    """How people say a number, from the plainest on; `value` is decimal text."""
    whole, _, part = value.partition(".")
    if part:
        digits = " ".join(ONES[int(d)] for d in part)
        return [f"{cardinal(int(whole))} point {digits}", f"{' '.join(ONES[int(d)] for d in whole)} point {digits}"]
    found = [cardinal(int(whole))]
    if int(whole) > 20:
        found.append(" ".join(ONES[int(d)] for d in whole))
    if int(whole) > 100 and int(whole) % 100:
        found.append(cardinal(int(whole), " "))
    if 100 < int(whole) < 1000 and int(whole) % 100 >= 10:
        found.append(f"{ONES[int(whole) // 100]} {cardinal(int(whole) % 100)}")
    return found


def synthetic() -> Iterator[tuple[Clip, str]]:
    """Clips of the synthesisers with the words to speak."""
    voices = [*(f"espeak:{v}" for v in ESPEAK), *(f"flite:{v}" for v in FLITE)]
    sentences: list[tuple[str, str, Expect, Decimal | str | None]] = []
    for index, value in enumerate(map(str, VALUES)):
        for way_index, way in enumerate(ways(value)):
            unit = tuple(UNITS)[(index + way_index) % len(UNITS)]
            spoken_units = UNITS[unit]
            tail = spoken_units[index % len(spoken_units)] if (index + way_index) % 3 else ""
            sentences.append((f"{way} {tail}".strip(), "number", NumberExpected(unit), Decimal(value)))
    confirm = ConfirmExpected()
    for phrase in spoken.phrases(confirm):
        meaning = spoken.interpret(phrase, confirm)
        if isinstance(meaning, Answer):
            sentences.append((phrase, "command", confirm, str(meaning.value)))
    frames = (confirm, NumberExpected("mL/h"), NumberExpected("min"), AnyExpected())
    sentences += [(words, "outside", frames[i % len(frames)], None) for i, words in enumerate(OUTSIDE)]
    for number, (words, kind, expect, right) in enumerate(sentences):
        # Each sentence by three of the voices, so that all of them get their share.
        for step in range(3):
            voice = voices[(number * 3 + step) % len(voices)]
            yield Clip(f"{voice}/{words}/{expect}", voice, kind, expect, right), words


def synthesise(voice: str, words: str) -> Sound:
    """The words as 16 kHz mono."""
    program, _, name = voice.partition(":")
    if program == "espeak":
        command = ["espeak-ng", "-v", name, "-s", "150", "--stdout", words]
        raw = subprocess.run(command, capture_output=True, check=True).stdout
        return read(io.BytesIO(raw))
    with tempfile.NamedTemporaryFile(suffix=".wav") as file:
        subprocess.run(["flite", "-voice", name, "-t", words, "-o", file.name], check=True)
        return read(Path(file.name))


def read(source: io.BytesIO | Path) -> Sound:
    samples, rate = soundfile.read(source, dtype="float32", always_2d=True)
    return np.asarray(soxr.resample(samples.mean(axis=1), rate, SAMPLE_RATE_HZ), dtype=np.float32)


def trimmed(sound: Sound) -> Sound:
    """Without the silence at both ends, so that joined words follow each other closely."""
    loud = np.flatnonzero(np.abs(sound) > 0.02 * np.abs(sound).max())
    return sound[max(0, loud[0] - 800) : loud[-1] + 1_600]


def human() -> Iterator[tuple[Clip, Sound]]:
    """Recorded people, where their packages are installed."""
    if ASTERISK.is_dir():
        names = dict(zip(ONES, map(str, range(20)), strict=True)) | {
            word: f"{10 * n}" for n, word in enumerate(TENS) if word != "-"
        }
        words = {word: trimmed(read(ASTERISK / "digits" / f"{name}.wav")) for word, name in names.items()}
        words |= {word: trimmed(read(ASTERISK / "digits" / f"{word}.wav")) for word in ("hundred", "thousand")}
        words |= {"minutes": trimmed(read(ASTERISK / "minutes.wav")), "and": trimmed(read(ASTERISK / "vm-and.wav"))}
        for index, value in enumerate(v for v in map(str, VALUES) if "." not in v):
            for way in ways(value):
                text = f"{way} minutes" if index % 2 else way
                sound = np.concatenate([words[word] for word in text.split()])
                clip = Clip(f"asterisk/{text}", "human", "number", NumberExpected("min"), Decimal(value))
                yield clip, sound
        frames = (ConfirmExpected(), NumberExpected("mL/h"), AnyExpected())
        for index, path in enumerate(sorted(ASTERISK.glob("*.wav"))):
            sound = read(path)
            if 1 < len(sound) / SAMPLE_RATE_HZ < 10 and "num" not in path.stem:
                yield Clip(path.stem, "human", "outside", frames[index % 3], None), sound
    for path in sorted((SPHINX / "librivox").glob("*.wav")):
        yield Clip(path.stem, "human", "outside", NumberExpected("mL"), None), read(path)


def noisy(sound: Sound, snr_db: float, seed: str) -> Sound:
    """With pink noise at a signal-to-noise ratio."""
    chance = np.random.default_rng(int.from_bytes(hashlib.sha256(seed.encode()).digest()[:4], "big"))
    spectrum = np.fft.rfft(chance.standard_normal(len(sound)))
    noise = np.fft.irfft(spectrum / np.sqrt(np.maximum(np.arange(len(spectrum)), 1)), len(sound))
    gain = np.sqrt(np.mean(sound**2) / np.mean(noise**2) / 10 ** (snr_db / 10))
    return (sound + gain * noise).astype(np.float32)


def clips(half: str | None, most: int | None = None) -> Iterator[tuple[Clip, bytes]]:
    """Every clip of a half with its sound as recognisers take it; the third of them with noise at 15 dB."""
    count = 0
    sources: list[tuple[Clip, str | Sound]] = [*synthetic(), *human()]
    # In an order that has nothing to do with the kinds, so that a part of them is a fair sample.
    for clip, source in sorted(sources, key=lambda one: hashlib.sha256(one[0].key.encode()).hexdigest()):
        if half is not None and clip.half != half:
            continue
        if most is not None and count >= most:
            return
        count += 1
        sound = synthesise(clip.speaker, source) if isinstance(source, str) else source
        sound = 0.5 * sound / max(1e-6, float(np.abs(sound).max()))
        if count % 3 == 0:
            sound = noisy(sound, 15, clip.key)
            clip = Clip(clip.key, clip.speaker, f"{clip.kind}, noise", clip.expect, clip.right)
        quiet = np.zeros(SAMPLE_RATE_HZ * 3 // 10, dtype=np.float32)
        padded = np.concatenate([quiet, sound, quiet])
        yield clip, (np.clip(padded, -1, 1) * 32_767).astype("<i2").tobytes()


def outcome(clip: Clip, words: str) -> str:
    """ "right", "wrong", "asked" (two readings) or "refused"; any answer to speech from outside is wrong."""
    meaning = spoken.interpret(words, clip.expect, heard=True) if words else None
    match meaning:
        case Answer(kind=Kind.NUMBER, value=value):
            return "right" if value == clip.right else "wrong"
        case Answer(value=value):
            return "right" if str(value) == clip.right else "wrong"
        case Ambiguous():
            return "asked"
        case _:
            return "refused" if clip.right is not None else "right"


def say(line: str) -> None:
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--half", choices=("report", "tuning"), default="report")
    parser.add_argument("--ear")
    parser.add_argument("--models", type=Path)
    parser.add_argument("--most", type=int, help="this many clips only")
    parser.add_argument("--verbose", action="store_true", help="each clip that was not heard right")
    args = parser.parse_args()
    recogniser = open_recogniser(args.ear, args.models)
    counts: dict[tuple[str, str], Counter[str]] = defaultdict(Counter)
    spent: dict[str, list[float]] = defaultdict(list)
    for clip, sound in clips(args.half, args.most):
        hearing = hear_sound(recogniser, sound, clip.expect)
        result = outcome(clip, hearing.words)
        group = "human" if clip.speaker == "human" else "synthetic"
        counts[clip.kind, group][result] += 1
        counts[clip.kind, f"  {clip.speaker}"][result] += 1
        spent[clip.kind].append(hearing.compute_s)
        if args.verbose and result != "right":
            say(f"{result:8}{clip.key}  {hearing.alternatives[:2]}")
    say(f"{recogniser.name}, {args.half} half; percent")
    say(f"{'':34}{'clips':>6}{'right':>7}{'wrong':>7}{'asked':>7}{'refused':>9}")
    for (kind, speaker), found in sorted(counts.items()):
        clips_in_all = sum(found.values())
        cells = "".join(f"{100 * found[name] / clips_in_all:7.1f}" for name in ("right", "wrong", "asked"))
        refused = 100 * found["refused"] / clips_in_all
        say(f"{kind:18}{speaker:16}{clips_in_all:6}{cells}{refused:9.1f}")
    for kind, seconds in sorted(spent.items()):
        say(f"{kind:18}mean compute {np.mean(seconds):.3f} s")


if __name__ == "__main__":
    main()
