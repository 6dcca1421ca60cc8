"""In a check-off nothing favours the right answer: wrong numbers that sound like it are heard as what they are.

    python -m tests.bench.favour [COUNT]

For each number of the answer key, its neighbours are spoken. Each is heard twice: with what the guide of that
check-off expects, and with a neutral vocabulary that knows of no order. Heard as the right answer more often than
by the neutral one would be a favour.
"""

import argparse
from collections.abc import Iterator
from decimal import Decimal

from assistant.adapters.recognisers.choose import open_recogniser
from assistant.adapters.recognisers.replay import hear_sound
from assistant.checklist.model import NumberAsked
from assistant.guide import Guide, Papers
from assistant.guide.events import Opened
from assistant.guide.progress import Mode
from assistant.orders.key import KeyEntry
from assistant.ports import Recogniser
from assistant.spoken import ENGLISH, interpret, neighbours, say_amount
from assistant.spoken.expect import Expect, NumberExpected
from assistant.spoken.meaning import Answer
from tests.bench.conditions import as_recorded
from tests.bench.printing import say
from tests.bench.voices import synthesise, synthesisers
from tests.guide.lived import CHECKLIST, Lived

UNIT = "mL/h"
NEUTRAL = NumberExpected(UNIT)
RIGHT = tuple(map(Decimal, ("83.3", "125", "150", "15", "50", "250", "117", "980", "200", "62.5", "60", "75")))
_RATE = next(step for step in CHECKLIST.steps if isinstance(step.expect, NumberAsked))


def expected_at(right: Decimal) -> Expect:
    """What the guide listens for in a check-off whose answer is this."""
    key = {"primary.rate": KeyEntry("primary.rate", right, UNIT, (), "rate")}
    one_step = CHECKLIST.model_copy(update={"steps": (_RATE,)})
    lived = Lived(Guide(Papers(one_step, "The order.", key, ENGLISH), Mode.CHECK_OFF, {"mode": "check-off"}))
    lived.give(Opened(lived.at))
    assert lived.listen is not None
    return lived.listen.expect


def pairs(count: int) -> Iterator[tuple[Decimal, Decimal]]:
    """Right answers with wrong numbers that sound like them, the answers taking turns."""
    found = {right: list(neighbours(right, UNIT)) for right in RIGHT}
    given = 0
    while given < count and any(found.values()):
        for right, others in found.items():
            if others and given < count:
                given += 1
                yield right, others.pop(0)


def heard_as(recogniser: Recogniser, sound: bytes, expect: Expect) -> Decimal | None:
    """The number that is heard; None where none is stood for."""
    meaning = interpret(hear_sound(recogniser, sound, expect).words, expect, heard=True)
    return meaning.value if isinstance(meaning, Answer) and isinstance(meaning.value, Decimal) else None


def main() -> None:
    """Speak them and count."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("count", type=int, nargs="?", default=200)
    args = parser.parse_args()
    recogniser = open_recogniser()
    voices = synthesisers()
    favoured = neutral = as_said = spoken = 0
    for number, (right, wrong) in enumerate(pairs(args.count)):
        sound = as_recorded(synthesise(voices[number % len(voices)], say_amount(wrong, UNIT)))
        heard = heard_as(recogniser, sound, expected_at(right))
        spoken += 1
        as_said += heard == wrong
        favoured += heard == right
        neutral += heard_as(recogniser, sound, NEUTRAL) == right
    recogniser.close()
    say(f"{spoken} wrong numbers spoken: {as_said} heard as said; heard as the right answer {favoured} times,")
    say(f"{neutral} times with a neutral vocabulary")


if __name__ == "__main__":
    main()
