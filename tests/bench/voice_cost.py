"""What a voice costs: ``python -m tests.bench.voice_cost [--times 5]``; the neural and the system's, in turns.

With ``--long 1200`` so many sentences are made one after the other by the neural voice instead, and a line tells, after
every hundred, the memory of the bench and of the voice's processes, and what the processor did for a second of speech.
Otherwise one line of JSON for each: seconds from the start of the program to its first sound, and from a typed command
to the first sound of the reply, in the room (virtual devices); seconds to make a sentence; memory and processor of the
voice's processes. Both are measured in the same run, for a busy machine makes either slower.
"""

import argparse
import json
import os
import statistics
import tempfile
import time
from pathlib import Path

from assistant.adapters.synthesiser import Synthesiser
from tests.bench.printing import say
from tests.bench.program import Program
from tests.bench.understood import open_voice, sentences
from tests.virtual_sound import VirtualSound, virtual_sound

VOICES = ("neural", "system")
COMMANDS = ("where am i", "more", "what is my order", "again")
SENTENCES = 40
_LIMIT_S = 30.0
_SETTLE_S = 2.0


def in_the_room(voice: str, sound: VirtualSound) -> tuple[float, list[float]]:
    """Seconds to the first word of the program, and to the first sound after each typed command."""
    with tempfile.TemporaryDirectory() as name, sound.recording() as recording:
        program = Program(sound, Path(name) / "records", "--synthesiser", voice)
        try:
            deadline = time.monotonic() + _LIMIT_S
            while (first := recording.first_loud_s()) is None and time.monotonic() < deadline:
                time.sleep(0.05)
            program.until("listening")
            replies = []
            for command in COMMANDS:
                program.type("")  # hushes what still sounds
                time.sleep(_SETTLE_S)
                typed = time.monotonic()
                program.type(command)
                time.sleep(_SETTLE_S)
                loud = recording.loud_moments_s(typed, time.monotonic())
                if len(loud):
                    replies.append(float(loud[0]) - typed)
        finally:
            program.end()
    return (first or float("nan")) - program.began, replies


def sentence_s(synthesiser: Synthesiser, texts: list[str]) -> list[float]:
    """Seconds for each sentence."""
    found = []
    for text in texts:
        began = time.monotonic()
        synthesiser.synthesise(text)
        found.append(time.monotonic() - began)
    return found


def processes(parent: int) -> tuple[int, float]:
    """Memory of the processes that a process has started, MB, shared pages by their share, and their seconds."""
    memory, spent = 0, 0.0
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            fields = (folder / "stat").read_text().rpartition(")")[2].split()
            if int(fields[1]) != parent:
                continue
            memory += _memory_mb(folder)
        except OSError:
            continue  # it has ended meanwhile
        spent += (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")
    return memory, spent


def _memory_mb(folder: Path) -> int:
    lines = (folder / "smaps_rollup").read_text().splitlines()
    return next(int(line.split()[1]) for line in lines if line.startswith("Pss:")) // 1024


def long_run(count: int) -> None:
    """Print what many different sentences cost, a hundred at a time."""
    texts = sentences()
    synthesiser = open_voice("neural")
    synthesiser.synthesise("Ready.")
    spoken_s, before_s = 0.0, time.process_time() + processes(os.getpid())[1]
    for number in range(1, count + 1):
        # A second round at another speed: what has been made already would only be remembered.
        rate = (number - 1) // len(texts) % 4
        spoken_s += synthesiser.synthesise(texts[(number - 1) % len(texts)], rate).length_s
        if number % 100 == 0:
            memory_mb, after_s = processes(os.getpid())
            told = {
                "sentences": number,
                "spoken_s": round(spoken_s),
                "memory_mb": memory_mb,
                "bench_mb": _memory_mb(Path("/proc/self")),
                "processor_s_per_spoken_s": round((time.process_time() + after_s - before_s) / spoken_s, 4),
            }
            say(json.dumps(told))
    synthesiser.close()


def main() -> None:
    """Measure both voices in turns."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--times", type=int, default=5, help="starts of the program with each voice")
    parser.add_argument("--long", type=int, metavar="COUNT", help="sentences made one after the other instead")
    args = parser.parse_args()
    if args.long:
        long_run(args.long)
        return
    texts = sentences()[:: max(1, len(sentences()) // SENTENCES)]
    firsts: dict[str, list[float]] = {voice: [] for voice in VOICES}
    replies: dict[str, list[float]] = {voice: [] for voice in VOICES}
    with virtual_sound() as sound:
        for _ in range(args.times):
            for voice in VOICES:
                first, later = in_the_room(voice, sound)
                firsts[voice].append(first)
                replies[voice] += later
    for voice in VOICES:
        synthesiser = open_voice(voice)
        synthesiser.synthesise("Ready.")
        _, before_s = processes(os.getpid())
        made = sorted(sentence_s(synthesiser, texts))
        memory_mb, after_s = processes(os.getpid())
        synthesiser.close()
        told = {
            "voice": voice,
            "load": round(os.getloadavg()[0], 1),
            "first_word_s": [round(first, 2) for first in firsts[voice]],
            "reply_s_median": round(statistics.median(replies[voice]), 2),
            "reply_s_most": round(max(replies[voice]), 2),
            "replies": len(replies[voice]),
            "sentence_s_median": round(statistics.median(made), 3),
            "sentence_s_95": round(made[int(0.95 * len(made))], 3),
            "memory_mb": memory_mb,
            "processor_s": round(after_s - before_s, 2) if voice == "neural" else None,
        }
        say(json.dumps(told))


if __name__ == "__main__":
    main()
