"""How well the recogniser hears choices that lines name, by voices that it has not met.

    python -m tests.bench.choices                  the library's choices, the recogniser that comes with the program
    python -m tests.bench.choices --unseen         choices of an author's own, which nobody said in training
    python -m tests.bench.choices --unseen --half tuning  others of the kind, that limits and trainings are chosen by
    python -m tests.bench.choices --model FOLDER   another training, as `tests.bench.training.convert` writes it

Each choice is said as it is written by three synthesisers' voices (espeak-ng and flite, `HELD_BACK` in
`tests.bench.training.speech`), clean and with pink noise or babble at 10 dB. Synthetic voices stand for no people: this
is for comparing one training with another.
"""

import argparse
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from assistant import spoken
from assistant.adapters.recognisers.trained import open_trained
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken.expect import ChoiceExpected
from assistant.spoken.meaning import Answer
from tests.bench import conditions
from tests.bench.clips import Clip
from tests.bench.conditions import CLEAN, CONDITIONS, NOISY_10_DB
from tests.bench.hearing import hear
from tests.bench.near_misses import choices, unseen_choices
from tests.bench.printing import say
from tests.bench.sayings import Saying
from tests.bench.scoring import Heard
from tests.bench.training.speech import HELD_BACK
from tests.bench.training.written import candidate
from tests.bench.voices import synthesise

VOICES = tuple(voice for voice in HELD_BACK if voice.startswith(("espeak:", "flite:")))


def clips(named: list[tuple[str, ChoiceExpected]]) -> Iterator[tuple[Clip, bytes]]:
    """Each choice by each voice, clean and in one noise."""
    for number, (choice, expect) in enumerate(named):
        for voice in VOICES:
            sound = synthesise(voice, choice)
            saying = Saying(choice, "choice", expect, choice)
            for name in (CLEAN, NOISY_10_DB[number % len(NOISY_10_DB)]):
                changed = conditions.as_recorded(CONDITIONS[name](sound, f"{voice}/{choice}"))
                yield Clip(saying, voice, name, len(changed) / 2 / SAMPLE_RATE_HZ), changed


def became(heard: Heard) -> str:
    """What the guide would do: it takes a choice, asks whether it was meant, or hears nothing."""
    expect = heard.clip.saying.expect
    meaning = spoken.interpret(heard.words, expect, heard=True) if heard.words else None
    if not isinstance(meaning, Answer):
        return "refused"
    right = str(meaning.value) == heard.clip.saying.right
    return ("asked" if right else "asked wrongly") if heard.doubtful else "taken" if right else "WRONG"


def main() -> None:
    """Run the bench."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--model", type=Path, help="the folder of another training")
    parser.add_argument("--unseen", action="store_true", help="choices that nobody said in training")
    parser.add_argument("--half", default="report", choices=("report", "tuning"), help="of the choices with --unseen")
    parser.add_argument("--verbose", action="store_true", help="each choice that was not taken")
    args = parser.parse_args()
    ear = open_trained().model if args.model is None else candidate(args.model)
    counts: Counter[tuple[str, str]] = Counter()
    for clip, sound in clips(unseen_choices(args.half) if args.unseen else choices()):
        heard = hear(ear, clip, sound)
        place = CLEAN if clip.condition == CLEAN else "10 dB"
        counts[place, became(heard)] += 1
        if became(heard) == "WRONG" or (args.verbose and became(heard) != "taken"):
            free = "" if heard.evidence is None else heard.evidence.free.text
            say(f"{clip.key}: {became(heard)} as {heard.words!r}; free {free!r}")
    say(
        "| choices | n | taken | asked | asked wrongly | WRONG | refused |\n| --- | --- | --- | --- | --- | --- | --- |"
    )
    for place in (CLEAN, "10 dB"):
        total = sum(count for (where, _), count in counts.items() if where == place)
        kinds = ("taken", "asked", "asked wrongly", "WRONG", "refused")
        cells = " | ".join(f"{100 * counts[place, kind] / total:.1f}" for kind in kinds)
        say(f"| {place} | {total} | {cells} |")


if __name__ == "__main__":
    main()
