"""Numbers through the real guide over a channel that confuses them: is a wrong one ever kept?

    python -m tests.bench.dialogues [COUNT] [--misheard 0.3] [--lost 0.1] [--swapped 0.0] [--assent 0.1] [--sure 0.0]

Each dialogue: a step asks for a number, the learner says it in one of its wordings, the channel makes another
number of it as often as `--misheard` says (by the table of what sounds alike; in digits, five and nine are exchanged
and digits lost), or nothing (`--lost`). Two learners: one answers read-backs truthfully; one says yes to everything in
10 % of the dialogues (`--assent`). `--sure` is the part of numbers, right or wrong, that the recogniser calls told
from those that sound like them, so that no digits are asked for. `--swapped` lets the channel take a no for a yes,
and a yes for a no, which no recording ever did.
"""

import argparse
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from random import Random

from assistant.checklist.model import NumberAsked
from assistant.guide import Guide, Papers
from assistant.guide.events import Heard, NotUnderstood, Opened
from assistant.guide.progress import Mode, State
from assistant.orders.key import KeyEntry
from assistant.spoken import ENGLISH, confusions, say_digits, wordings
from tests.bench.printing import say
from tests.guide.lived import CHECKLIST, Lived

ASSENT = 0.1
MOST_UTTERANCES = 40
_RATE = next(step for step in CHECKLIST.steps if isinstance(step.expect, NumberAsked))
_ONE_STEP = CHECKLIST.model_copy(update={"steps": (_RATE,)})
_EXCHANGED = {"five": "nine", "nine": "five"}


@dataclass(frozen=True)
class Channel:
    """What happens to words on their way.

    Attributes:
        misheard: part of the numbers that arrive as another one.
        lost: part of the utterances that arrive as nothing.
        swapped: part of the confirmations that arrive as their opposite.
        sure: part of the numbers, right or wrong, that arrive as told from what sounds like them.
    """

    misheard: float = 0.3
    lost: float = 0.1
    swapped: float = 0.0
    sure: float = 0.0

    def number(self, value: Decimal, digits_only: bool, chance: Random) -> str:
        """The words that arrive for a number."""
        if digits_only:
            words = say_digits(value)
            return _other_digits(words.split(), chance) if chance.random() < self.misheard else words
        arrived = value
        if chance.random() < self.misheard:
            others = [neighbour.value for neighbour in confusions(value)]
            arrived = chance.choice(others) if others else value
        return chance.choice(wordings(arrived))

    def confirmation(self, is_yes: bool, chance: Random) -> str:
        """The word that arrives for a yes or a no."""
        return "yes" if is_yes is not (chance.random() < self.swapped) else "no"


def _other_digits(words: list[str], chance: Random) -> str:
    at = chance.randrange(len(words))
    if words[at] in _EXCHANGED:
        words[at] = _EXCHANGED[words[at]]
    elif len(words) > 1:
        del words[at]
    return " ".join(words)


def dialogue(value: Decimal, channel: Channel, agrees: Callable[[bool], bool], chance: Random) -> tuple[str, int]:
    """What becomes of a number: "right", "WRONG" or "not kept", and after how many utterances."""
    key = {"primary.rate": KeyEntry("primary.rate", value, "mL/h", (), "rate")}
    lived = Lived(Guide(Papers(_ONE_STEP, "The order.", key, ENGLISH), Mode.CHECK_OFF, {"mode": "check-off"}))
    lived.give(Opened(lived.at))
    for count in range(1, MOST_UTTERANCES + 1):
        progress = lived.guide.progress
        kept = next((str(entry["kept"]) for entry in lived.entries if "kept" in entry), None)
        if kept is not None:
            return ("right" if Decimal(kept.split()[0].replace(",", "")) == value else "WRONG"), count
        if chance.random() < channel.lost:
            lived.give(NotUnderstood(lived.at))
        elif progress.state is State.READING_BACK:
            says_yes = agrees(progress.reading_back.value == value)
            lived.give(Heard(lived.at, channel.confirmation(says_yes, chance)))
        else:
            words = channel.number(value, progress.digits_only, chance)
            lived.give(Heard(lived.at, words, told_apart=chance.random() < channel.sure))
    return "not kept", MOST_UTTERANCES


def run(count: int, channel: Channel, assent: float, seed: int = 0) -> tuple[Counter[str], float]:
    """Outcomes of so many dialogues, and the mean number of utterances.

    Args:
        count: dialogues.
        channel: what happens to words.
        assent: part of the dialogues in which the learner says yes to everything.
        seed: the same seed gives the same dialogues.
    """
    chance = Random(seed)  # noqa: S311 - chooses what is said, guards nothing
    found: Counter[str] = Counter()
    utterances = 0
    for _ in range(count):
        whole = chance.choice((chance.randint(1, 99), chance.randint(100, 999), chance.randint(1000, 2500)))
        value = Decimal(whole) if chance.random() < 0.7 else Decimal(whole) / 10
        assents = chance.random() < assent
        result, needed = dialogue(value, channel, lambda true, yes=assents: true or yes, chance)  # type: ignore[misc]
        found[result] += 1
        utterances += needed
    return found, utterances / count


def main() -> None:
    """Run the dialogues and print what became of them."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("count", type=int, nargs="?", default=10_000)
    parser.add_argument("--misheard", type=float, default=0.3)
    parser.add_argument("--lost", type=float, default=0.1)
    parser.add_argument("--swapped", type=float, default=0.0)
    parser.add_argument("--assent", type=float, default=ASSENT)
    parser.add_argument("--sure", type=float, default=0.0)
    args = parser.parse_args()
    channel = Channel(args.misheard, args.lost, args.swapped, args.sure)
    for name, assent in (("truthful", 0.0), (f"yes to everything in {100 * args.assent:.0f} %", args.assent)):
        found, utterances = run(args.count, channel, assent)
        shown = ", ".join(f"{result} {found[result]}" for result in ("right", "WRONG", "not kept"))
        say(f"{name}: {args.count} dialogues, kept {shown}; {utterances:.1f} utterances each")


if __name__ == "__main__":
    main()
