"""A process with a real ear and a real voice, for tests: commands in, events out, a line each.

Commands: ``listen confirm``, ``listen number mL/h``, ``mute``, ``say 3 Close the clamp.``, ``hush``, ``close``.
Arguments: the ear's recogniser, which is "none", "length" or the name of a real one; the devices' names; and
"canceller" where the voice is to be taken out of what the ear hears.
"""

import json
import sys
import time

from assistant.adapters.clock import SystemClock
from assistant.adapters.echo import WithoutOwnVoice, canceller_maker
from assistant.adapters.listener import Listener
from assistant.adapters.loudspeaker import Loudspeaker
from assistant.adapters.microphone import Microphone
from assistant.adapters.played import Played
from assistant.adapters.synthesiser import Synthesiser
from assistant.adapters.voice import SpeakingVoice
from assistant.ports import Alternative, AnswerHeard, Hearing, LearnerSilent, LearnerSpeaks
from assistant.spoken.expect import ConfirmExpected, NumberExpected


class LengthRecogniser:
    """Says how long an utterance is, in tenths of a second: enough to know that the right sound has arrived."""

    name = "length"
    model_digest = "00"

    def begin(self, expect):
        return _Measured()

    def close(self):
        pass


class _Measured:
    def __init__(self):
        self.size = 0

    def feed(self, block):
        self.size += len(block)

    def finish(self):
        length_s = self.size / 32_000
        words = str(round(length_s * 10))
        return Hearing(words, (Alternative(words, 1.0),), length_s, 0.0)

    def give_up(self):
        pass


def recogniser_called(name):
    if name == "length":
        return LengthRecogniser()
    from assistant.adapters.recognisers.choose import open_recogniser

    return open_recogniser(name)


def post(event):
    if isinstance(event, LearnerSpeaks | LearnerSilent):
        return
    event = event.event if isinstance(event, AnswerHeard) else event
    told = {"event": type(event).__name__, "ticks": time.monotonic()}
    told |= {name: value for name, value in vars(event).items() if name not in ("at", "sound")}
    tell(told)


def tell(told):
    sys.stdout.write(json.dumps(told) + "\n")
    sys.stdout.flush()


def main():
    ear_name, microphone, loudspeaker, *how = sys.argv[1:]
    clock = SystemClock()
    played = Played()
    source = Microphone(microphone)
    if how == ["canceller"]:
        source = WithoutOwnVoice(source, played, canceller_maker())
    ear = None if ear_name == "none" else Listener(recogniser_called(ear_name), post, clock, source=source)
    # Where the ear stays open the voice is not made clearer (`assistant.adapters.voices`).
    synthesiser = Synthesiser(is_clearer=how != ["canceller"])
    voice = SpeakingVoice(post, clock, synthesiser=synthesiser, loudspeaker=Loudspeaker(loudspeaker, played=played))
    expectations = {"confirm": ConfirmExpected(), "number mL/h": NumberExpected("mL/h")}
    for line in sys.stdin:
        verb, _, rest = line.strip().partition(" ")
        if verb == "listen":
            ear.listen(expectations[rest])
        elif verb == "mute":
            ear.mute()
        elif verb == "say":
            number, _, text = rest.partition(" ")
            voice.say(int(number), text)
        elif verb == "hush":
            voice.hush()
        elif verb == "close":
            break
    started = time.monotonic()
    voice.close()
    if ear is not None:
        ear.close()
    tell({"event": "Closed", "took_s": time.monotonic() - started})


if __name__ == "__main__":
    main()
