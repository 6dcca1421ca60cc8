"""How well the assistant's voice is understood: a recogniser that was not used to tune it writes down what it says.

    python -m tests.bench.understood words --out FOLDER [--voice system] [--count 200]      its sentences
    python -m tests.bench.understood numbers --out FOLDER [--half tuning]                   every read-back
    python -m tests.bench.understood names --out FOLDER                                     drugs, fluids, short forms
    python -m tests.bench.understood sounds --out FOLDER                                    the same, as phonemes
    python -m tests.bench.understood report --out FOLDER                                    what has been heard so far

Each sentence is heard clean and with four people talking at 5 dB. What was written down is kept in FOLDER, a line each,
so that a run that was broken off goes on where it was. `second_listener` tells who listens. How numbers are said was
chosen on the tuning half of them; the reporting half shares none with it, and its orders are drawn from other seeds.
"""

import argparse
import json
import re
import sys
import tomllib
import zlib
from collections.abc import Callable, Iterator, Mapping
from decimal import Decimal
from pathlib import Path
from random import Random

import numpy as np
import soxr
from jellyfish import levenshtein_distance, metaphone
from text_to_num import alpha2digit

from assistant.adapters.lasting_process import LastingProcess
from assistant.adapters.neural_voice import NeuralVoice
from assistant.adapters.speaking_process import NEURAL_COMMAND
from assistant.adapters.synthesiser import Synthesiser
from assistant.attempts.papers import take_papers
from assistant.checklist.load import available
from assistant.orders.key import KeyEntry
from assistant.orders.solve import answer_key
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken import ENGLISH, read_back, say_digits, say_unit, speech
from assistant.spoken.english.varieties import american
from tests.bench import conditions
from tests.bench.printing import say
from tests.bench.second_listener import Hears, reporting_listener, sounds_listener, tuning_listener, unseen_listener
from tests.bench.sounds_listener import SoundsListener
from tests.bench.voices import Sound
from tests.orders.many import KINDS, drawn_for

LIBRARY = Path(__file__).parent.parent.parent / "checklists"
WRITTEN = Path(__file__).parent.parent / "spoken" / "written.txt"
HEARD = ("clean", "babble 5 dB")
CAREFUL = -1
"""Step of rate at which the assistant reads a number back."""
ORDERS = 300
OTHER_SEEDS = 10_000
"""Where the seeds begin of orders with which nothing was tuned."""
UNLIKE = 0.25
LEAD_WORDS = "The label says"
LEAD = re.compile(rf"^\W*{LEAD_WORDS}\W*", re.IGNORECASE)
LEAD_SOUNDS = re.compile(r"^.*?se\u026a[zs] ?")
ONE_WRITING = {
    **{"d\u0361\u0292": "\u02a4", "t\u0361\u0283": "\u02a7", "g": "\u0261", "one": "w\u028cn"},
    **{"e\u026a": "A", "a\u026a": "I", "o\u028a": "O", "a\u028a": "W", "\u0254\u026a": "Y"},
    **{"\u025d": "\u0259\u0279", "\u025a": "\u0259\u0279", "\u025c\u0279": "\u0259\u0279"},
    **{"T": "t", "\u027e": "t", "\u1d7b": "\u026a", "\u1d4a": "\u0259", "\u0250": "\u0259"},
}
"""The same sound in two writings; the last row are sounds that are said alike."""
SHORT_FORMS = ("KCl", "NaCl", "IVPB", "q12h", "an 18-gauge catheter", "SpO2", "b.i.d.", "PRN", "BP 120/80", "the 21st")
SOUND_ALIKE = {
    **{"sight": "site", "cite": "site", "queue": "cue", "hole": "whole", "too": "to", "two": "to", "2": "to"},
    **{"4": "for", "u": "you", "wait": "weight", "write": "right"},
}
"""Words that sound the same: which one is written says nothing of the voice."""
SOUND_LIKE_DIGITS = {"for": "4", "four": "4", "to": "2", "too": "2", "ate": "8", "won": "1", "oh": "0", "o": "0"}
"""Spellings of a digit's sound: which one a recogniser writes says nothing of the voice."""
POINT = re.compile(rf"(?<=\bpoint )(?:{'|'.join(SOUND_LIKE_DIGITS)})\b", re.IGNORECASE)
"""Such a spelling behind a point, where nothing but a digit can stand: "seventy-one point for"."""
PAUSED = re.compile(rf"\bpoint(?:,? (?:{'|'.join(ENGLISH.tables.numbers.digits)})\b)+", re.IGNORECASE)
"""Decimals in words, with or without commas where the recogniser wrote a pause: "point zero, eight"."""
_QUIET_S = 0.3


# What is said.


def sentences() -> list[str]:
    """Everything that the assistant says: its own sentences, and what the library has it read aloud."""
    found = {line.split(": ", 1)[1] for line in WRITTEN.read_text("utf-8").splitlines() if ": " in line}
    for file in sorted(LIBRARY.glob("*.toml")):
        for step in tomllib.loads(file.read_text("utf-8")).get("steps", ()):
            found |= {step[name] for name in ("say", "more", "hint", "if_wrong") if name in step}
    spoken = {speech(text) for text in found}
    return sorted(text for text in spoken if len(re.findall(r"[a-z]{2,}", text)) >= 2)


def numbers(half: str = "all") -> list[tuple[Decimal, str]]:
    """Every number of the library's answer keys and of the orders that are drawn, with its unit; or half of them."""
    first_seed = 0 if half == "tuning" else OTHER_SEEDS
    found: set[tuple[Decimal, str]] = set()
    for name in available():
        found |= set(_amounts(take_papers(name, None).key))
    for at in range(ORDERS):
        [order] = drawn_for(KINDS[at % len(KINDS)], seed=first_seed + at, level=1 + at % 3, count=1)
        found |= set(_amounts(answer_key(order)))
    wanted = {"tuning": (0,), "reporting": (1,), "all": (0, 1)}[half]
    return sorted(one for one in found if zlib.crc32(f"{one[0]:f} {one[1]}".encode()) % 2 in wanted)


def _amounts(key: Mapping[str, KeyEntry]) -> Iterator[tuple[Decimal, str]]:
    return ((e.value, e.unit) for e in key.values() if isinstance(e.value, Decimal) and e.unit is not None)


def names() -> list[str]:
    """Drugs, fluids and short forms."""
    shelf = tomllib.loads((LIBRARY / "shelf.toml").read_text("utf-8"))
    labels = tomllib.loads((LIBRARY / "names.toml").read_text("utf-8"))
    found = {entry["name"] for kind in ("fluids", "drugs", "rates") for entry in shelf[kind]}
    return sorted({*found, *labels["fluids"], *labels["drugs"], *SHORT_FORMS})


def sayings(part: str, count: int, half: str = "all") -> list[tuple[str, str]]:
    """What is said in a part of the bench, each with what it is judged by."""
    if part == "words":
        found = [(text, "") for text in sentences()]
        Random(18).shuffle(found)  # noqa: S311 - no secret
        return found[:count]
    if part == "numbers":
        found = [(read_back(value, unit), f"{value:f} {unit}") for value, unit in numbers(half)]
        Random(18).shuffle(found)  # noqa: S311 - no secret
        return found[:count]
    return [(f"{LEAD_WORDS}: {speech(name)}.", name) for name in names()][:count]


def vocabulary() -> list[str]:
    """Every word of what is said here, those of numbers first."""
    counted = [word for value, unit in numbers() for word in f"{read_back(value, unit)} {say_digits(value)}".split()]
    others = [word for text in (*sentences(), *map(speech, names())) for word in text.split()]
    words = [re.sub(r"[^a-z']", "", word.lower()).strip("'") for word in (*counted, *others, *LEAD_WORDS.split())]
    return [word for word in dict.fromkeys(words) if word]


LISTENERS: dict[str, Callable[[], Hears | None]] = {
    "tuning": tuning_listener,
    "reporting": reporting_listener,
    "unseen": unseen_listener,
    "sounds": lambda: sounds_listener(vocabulary()),
}


# What was heard.


def plain(text: str, *, ranges: bool = False) -> list[str]:
    """Words in the one form in which they are compared: figures for numbers, American spelling, no marks.

    Args:
        text: as it was said, or written down.
        ranges: "2-3" is two to three; otherwise digits one by one.
    """
    if not ranges:
        text = re.sub(r"(?<=\d)-(?=\d)", " ", text)
    text = american(speech(text.replace("%", " percent "))).lower().replace("-", " ").replace("'", "")
    text = re.sub(r"\bthousand, (?=[a-z]+ hundred\b)", "thousand ", text)  # one number, as some write it
    text = re.sub(r"\b(hundred|thousand) and ", r"\1 ", text)
    parts = [alpha2digit(part.strip(), "en", threshold=0) for part in re.split(r"[,;:!?()\"\u2026]|\.(?!\d)", text)]
    return [word for part in parts for word in _joined(part.split())]


def _joined(words: list[str]) -> list[str]:
    """Digits in a row as one number."""
    joined: list[str] = []
    for word in words:
        if joined and re.fullmatch(r"\d+(\.\d+)?", word) and joined[-1].isdigit() and len(word.split(".")[0]) == 1:
            joined[-1] += word
        else:
            joined.append(word)
    return joined


def errors(said: list[str], heard: list[str]) -> int:
    """Words left out, put in or replaced (Levenshtein's distance, by words)."""
    row = list(range(len(heard) + 1))
    for number, word in enumerate(said, 1):
        last, row[0] = row[0], number
        for at, other in enumerate(heard, 1):
            last, row[at] = row[at], min(row[at] + 1, row[at - 1] + 1, last + (word != other))
    return row[-1]


def lost(said: str, heard: str) -> int:
    """Words of a sentence that were written down as others, however they are spelled and parted."""
    wanted = [SOUND_ALIKE.get(word, word) for word in plain(said)]
    if "".join(wanted) == "".join(SOUND_ALIKE.get(word, word) for word in plain(heard)):
        return 0
    read = ([SOUND_ALIKE.get(word, word) for word in plain(heard, ranges=ranges)] for ranges in (False, True))
    return min(errors(wanted, words) for words in read)


def number_is_right(value: Decimal, unit: str, heard: str) -> bool:
    """Whether nothing but this number was written down, once or twice, every digit of it, each time with its unit."""
    spelled = POINT.sub(lambda digit: ENGLISH.tables.numbers.digits[int(SOUND_LIKE_DIGITS[digit[0].lower()])], heard)
    words = plain(PAUSED.sub(lambda decimals: decimals[0].replace(",", ""), spelled))
    for at, word in enumerate(words):
        beside = words[max(0, at - 1) : at] + words[at + 1 : at + 2]
        if word in SOUND_LIKE_DIGITS and any(other[:1].isdigit() for other in beside):
            words[at] = SOUND_LIKE_DIGITS[word]
    figures = f"{value.normalize():f}"
    digits = figures.replace(".", "")
    found = [word for word in words if word[0].isdigit()]
    # How digits that were said one by one are grouped is the recogniser's choice; a point has to stand in its place.
    times = {digits: 1, digits * 2: 2}.get("".join(found).replace(".", ""), 0)
    named = " ".join(words).replace(" a ", " per ").replace(" an ", " per ")
    has_units = named.count(" ".join(plain(say_unit(unit, plural=value != 1)))) >= times
    return times > 0 and has_units and ("." not in figures or figures in found)


# The bench.


def sound_of(voice: Synthesiser, text: str, careful: bool) -> Sound:
    """A sentence as it leaves the loudspeaker, at 16 kHz."""
    speech = voice.synthesise(text, CAREFUL if careful else 0)
    samples = soxr.resample(speech.samples.astype(np.float32) / 32_768, speech.rate_hz, SAMPLE_RATE_HZ)
    quiet = np.zeros(round(_QUIET_S * SAMPLE_RATE_HZ), np.float32)
    return np.concatenate([quiet, np.asarray(samples, np.float32), quiet])


def open_voice(name: str) -> Synthesiser:
    """The voice, in no hurry to start."""
    if name == "system":
        return Synthesiser()
    return Synthesiser(neural=NeuralVoice(LastingProcess(NEURAL_COMMAND, patience_s=60), ENGLISH.diction))


def listen(part: str, voice_name: str, listener_name: str, folder: Path, count: int, half: str = "all") -> None:
    """Say what has not been said yet, and keep what is written down."""
    file = folder / f"{part}-{voice_name}-{listener_name}{'' if half == 'all' else '-' + half}.jsonl"
    done = {(row["said"], row["condition"]) for row in _rows(file)}
    wanted = [
        (said, by, condition)
        for said, by in sayings(part, count, half)
        for condition in HEARD
        if (said, condition) not in done
    ]
    sys.stderr.write(f"{part}: {len(done)} heard, {len(wanted)} to hear\n")
    if not wanted:
        return
    listener = LISTENERS[listener_name]()
    if listener is None:
        raise SystemExit("The listener is not installed: see tests/bench/second_listener.py.")
    voice = open_voice(voice_name)
    try:
        with file.open("a", encoding="utf-8") as out:
            for said, by, condition in wanted:
                sound = conditions.CONDITIONS[condition](sound_of(voice, said, part == "numbers"), f"voice {said}")
                [heard] = listener.written([sound])
                row = {"said": said, "by": by, "condition": condition, "heard": heard}
                if isinstance(listener, SoundsListener) and part == "names":
                    row["sounds"] = listener.sounds(sound)
                out.write(json.dumps(row, ensure_ascii=False) + "\n")
                out.flush()
    finally:
        voice.close()


def report(folder: Path) -> None:
    """Print what each file comes to, with what was not right."""
    for file in sorted(folder.glob("*.jsonl")):
        part = file.stem.split("-")[0]
        for condition in HEARD:
            rows = [row for row in _rows(file) if row["condition"] == condition]
            if not rows:
                continue
            if part == "words":
                wrong = [lost(row["said"], row["heard"]) for row in rows]
                total = sum(len(plain(row["said"])) for row in rows)
                share = 100 * sum(wrong) / total
                say(f"{file.stem}, {condition}: {len(rows)} sentences, {share:.1f} % of {total} words lost")
                marked = []
            elif part == "numbers":
                marked = [row for row in rows if not _right(row)]
                say(f"{file.stem}, {condition}: {len(rows) - len(marked)} of {len(rows)} right")
            else:
                marked = [row for row in rows if not _holds(row["heard"], row["by"])]
                other = [row for row in rows if speech(nearest(row["heard"])) != speech(row["by"])]
                taken = len(rows) - len(other)
                say(f"{file.stem}, {condition}: {taken} of {len(rows)} sound most like what was written down")
                say(f"  spelled rightly: {len(rows) - len(marked)}; the others (! sounds more like another):")
                marked = [{**row, "by": ("! " if row in other else "") + row["by"]} for row in marked]
            for row in marked:
                say(f"    {row['by']}: {row['heard']}")


def in_one_writing(sounds: str) -> str:
    """Sounds in the voice's own signs, whoever wrote them down, without what is written otherwise and said alike."""
    for theirs, own in ONE_WRITING.items():
        sounds = sounds.replace(theirs, own)
    return sounds


def sounds(folder: Path) -> None:
    """Print drugs, fluids and short forms by their sounds: as they are said, and as what was written down is said.

    An exception is marked with !: more than `UNLIKE` of its sounds are others, by Levenshtein's distance, stress aside.
    """
    from hibari import Hibari

    process = LastingProcess(NEURAL_COMMAND)
    voice, model = NeuralVoice(process, ENGLISH.diction), Hibari()

    def phonemes(text: str) -> str:
        marked = " ".join(str(voice.request(stretch)["words"]) for stretch in voice.stretches(text))
        return re.sub(r"[^\w ]|[\u02c8\u02cc]", "", " ".join(model.phonemize(marked)))

    try:
        for file in sorted(folder.glob("names-*.jsonl")):
            for condition in HEARD:
                rows = [row for row in _rows(file) if row["condition"] == condition]
                say(f"{file.stem}, {condition}:")
                for row in rows:
                    said = in_one_writing(phonemes(speech(row["by"])))
                    by_ear = LEAD_SOUNDS.sub("", row.get("sounds", ""))
                    heard = in_one_writing(by_ear or phonemes(speech(LEAD.sub("", row["heard"]))))
                    unlike = levenshtein_distance(said.replace(" ", ""), heard.replace(" ", "")) / len(said)
                    mark = "!" if unlike > UNLIKE else " "
                    say(f"  {mark} {row['by']}: /{said}/ heard as {row['heard']!r} /{heard}/")
    finally:
        voice.close()


def _right(row: Mapping[str, str]) -> bool:
    value, _, unit = row["by"].partition(" ")
    return number_is_right(Decimal(value), unit, row["heard"])


def _holds(heard: str, name: str) -> bool:
    """Whether the name was written down, however its parts are parted."""
    return "".join(plain(speech(name))) in "".join(plain(heard))


def nearest(heard: str) -> str:
    """The name of all those of the bench that sounds most like what was heard: a recogniser spells by ear."""
    written = "".join(plain(heard)).removeprefix("thelabelsays")

    def unlike(name: str) -> tuple[float, int]:
        known = "".join(plain(speech(name)))
        theirs, ours = metaphone(written), metaphone(known)
        return levenshtein_distance(theirs, ours) / max(len(theirs), len(ours), 1), levenshtein_distance(written, known)

    return min(names(), key=unlike)


def _rows(file: Path) -> list[dict[str, str]]:
    return [json.loads(line) for line in file.read_text("utf-8").splitlines()] if file.exists() else []


def main() -> None:
    """Run a part of the bench, or tell what it came to."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("part", choices=("words", "numbers", "names", "sounds", "report"))
    parser.add_argument("--out", type=Path, required=True, metavar="FOLDER")
    parser.add_argument("--voice", choices=("neural", "system"), default="neural")
    parser.add_argument("--listener", choices=tuple(LISTENERS), default="reporting")
    parser.add_argument("--half", choices=("all", "tuning", "reporting"), default="all", help="of the numbers")
    parser.add_argument("--count", type=int, default=100_000)
    args = parser.parse_args()
    args.out.mkdir(parents=True, exist_ok=True)
    if args.part == "report":
        report(args.out)
    elif args.part == "sounds":
        sounds(args.out)
    else:
        listen(args.part, args.voice, args.listener, args.out, args.count, args.half)


if __name__ == "__main__":
    main()
