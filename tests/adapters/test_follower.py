"""Frame by frame, what of the sound is handed to the recogniser, over hand-made figures of a speech detector."""

import numpy as np
import pytest

from assistant.adapters.endpoint import FRAME_SAMPLES
from assistant.adapters.follower import Follower, Manner, Wanted
from assistant.adapters.recognition import Guess
from assistant.ports import AnswerHeard, Hearing, LearnerSpeaks
from assistant.spoken.expect import ConfirmExpected, NumberExpected

FIGURES = {
    ".": (0.01, 5),
    "S": (0.9, 3_000),
    "w": (0.06, 2_500),  # a word that the detector takes for no speech
    "b": (0.0, 2_501),  # others who talk behind the learner
    "s": (0.15, 40),
    "f": (0.3, 41),
}
"""For each letter the detector's figure and the frame's loudness."""
SAID = "." * 9 + "S" * 8


class HandedOver:
    """A recogniser at once done, and what it has been handed."""

    def __init__(self, said: str) -> None:
        self.said, self.letters, self.guesses = said, "", 0
        self.names: dict[bytes, str] = {}

    def begin(self, _expect):
        self.letters = ""

    def feed(self, frame):
        self.letters += self.names[frame]

    def guess(self):
        self.guesses += 1
        guess = Guess(Hearing(self.said, (), 0.0, 0.0))
        guess.done.set()
        return guess

    def wait(self, _is_given_up):
        return Hearing(self.said, (), 0.0, 0.0)

    def drop(self):
        pass


class Clock:
    def now(self):
        return None


def follow(figures: str, said: str, expect) -> tuple[HandedOver, int | None]:
    """What was handed over, and after how many frames an answer was posted."""
    recognition, posted = HandedOver(said), []
    wanted = Wanted(expect, 0.0, 1, Manner().pause_s(expect, None))
    follower = Follower(recognition, posted.append, Clock(), "ear", Manner(), None, lambda: wanted)
    follower.turn_to(wanted)
    for place, letter in enumerate(figures):
        likelihood, level = FIGURES[letter]
        frame = np.full(FRAME_SAMPLES, level, dtype="<i2").tobytes()
        recognition.names[frame] = letter
        follower.take(wanted, frame, likelihood, 0.0, is_behind=letter == "b")
        if any(isinstance(event, AnswerHeard) for event in posted):
            return recognition, place
    assert all(isinstance(event, LearnerSpeaks) for event in posted)
    return recognition, None


@pytest.mark.parametrize("between", ["...........", "...sss....", "...f....", "....wwwwww....."])
def test_nothing_is_left_out_of_a_pause(between):
    """A soft "not" in a pause, after the recogniser has been asked what was said so far, is handed over as it was."""
    recognition, _ = follow(SAID + between + "SSSSSSSS", "it is", ConfirmExpected())
    assert recognition.guesses
    assert recognition.letters.endswith("S" + between + "SSSSSSSS")


@pytest.mark.parametrize(
    ("goes_on", "least", "most"),
    [
        ("", 7, 10),
        ("..wwwwwwww", 17, 20),  # what had been heard up to it is no longer all that was said
        ("..bbbbbbbb", 7, 10),
        ("w" * 200, 62, 75),  # an alarm: nobody waits for longer
    ],
)
def test_a_loud_word_that_counts_as_no_speech_puts_the_end_off(goes_on, least, most):
    """A yes ends a quarter of a second after its last word, be it one of which the detector is not sure."""
    _, ended = follow(SAID + goes_on + "." * 40, "done", ConfirmExpected())
    assert ended is not None
    assert least <= ended - len(SAID) <= most


def test_a_word_that_the_detector_misses_joins_those_beside_it():
    """Two digits 2.3 s apart are one number where there was another one between them, though no speech to it."""
    apart = "." * 30 + "w" * 12 + "." * 30
    recognition, _ = follow(SAID + apart + "SSSSSSSS", "two", NumberExpected("mL/h"))
    assert recognition.letters.endswith("S" + apart + "SSSSSSSS")


@pytest.mark.parametrize(
    ("said", "least", "most"), [("two", 54, 58), ("two four", 54, 58), ("one hundred", 36, 39), ("75 mL/h", 6, 9)]
)
def test_digits_said_one_by_one_may_be_followed_by_another(said, least, most):
    """1.8 s after a digit, though no digits were asked for; 1.2 s after another number, a quarter after its unit."""
    _, ended = follow(SAID + "." * 70, said, NumberExpected("mL/h"))
    assert ended is not None
    assert least <= ended - len(SAID) <= most


def test_a_word_of_which_the_detector_was_not_sure_comes_first():
    """What was as loud as the speech after it is handed over with it."""
    recognition, _ = follow("." * 40 + "wwwwwwww" + "....SSSSSSSS", "two", NumberExpected("mL/h"))
    assert recognition.letters.lstrip(".") == "wwwwwwww....SSSSSSSS"
