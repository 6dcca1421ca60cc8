"""By ear alone: what a second recogniser writes down of the loudspeaker is enough to answer every step.

The learner sees nothing of what is printed. Whoever listens here is the published Whisper tiny.en, because the suite
has it installed; the voice was tuned with it, so this test shows that the way is open from end to end, and no more. How
well the voice is understood is reported by listeners with which nothing was tuned (`tests/bench/second_listener.py`).
"""

from decimal import Decimal

import numpy as np
import pytest

from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken import read_back
from tests import virtual_sound
from tests.attempt.library import NOISY_LAB, papers
from tests.bench.by_ear import LearnerByEar, attempt, written_down
from tests.bench.second_listener import Listener, tuning_listener
from tests.bench.understood import open_voice, sound_of

CHECKLIST = "saline-lock"
NUMBER_STEP = "How many millilitres will you flush with?"
RIGHT, WRONG = Decimal(5), Decimal(50)
LIMIT_S = 400

_MISSING = virtual_sound.missing_programs()
pytestmark = [pytest.mark.sound, pytest.mark.slow]


@pytest.fixture(scope="module")
def listener() -> Listener:
    """Whoever hears the loudspeaker."""
    return tuning_listener()


@pytest.mark.skipif(bool(_MISSING), reason=f"not installed: {', '.join(_MISSING)}")
@pytest.mark.timeout(LIMIT_S + 60)
def test_an_attempt_is_passed_by_what_was_heard_alone(listener: Listener) -> None:
    """Every step is answered to what was heard; a number typed by mistake is refused when it is read back.

    At the voice's usual speed: two steps faster, this listener writes "nine five zero" as 9500 in one of three takes,
    by where in its window the words begin. A whole procedure takes twice as long:
    ``python -m tests.bench.by_ear saline-lock``.
    """
    learner = LearnerByEar(papers(str(NOISY_LAB)), slip="125 mL/h")
    told = attempt(learner, listener, path=NOISY_LAB, limit_s=LIMIT_S)
    assert (told["outcome"], told["code"]) == ("passed", 0), told
    assert set(learner.steps) == {step.id for step in learner.given.checklist.steps}
    assert [refused.partition(":")[0] for refused in learner.refused] == ["125 mL/h"]
    assert learner.asked_again <= 1, told  # a busy machine may drop some sound


def test_a_learner_who_hears_nothing_gets_nowhere(listener: Listener) -> None:
    """Silence is written down as nothing; what is no step's line, or only part of one, answers no step."""
    silence = np.zeros(5 * SAMPLE_RATE_HZ, np.float32)
    assert written_down(listener, silence) == ""
    learner = LearnerByEar(papers(CHECKLIST))
    for heard in ("", "Thank you for watching.", "How many?", "Take the syringe."):
        assert learner.answer(heard) == "again"
    assert learner.steps == []


def test_a_wrong_number_that_is_read_back_is_refused(listener: Listener) -> None:
    """The same learner, the same step, by the sound of the voice: yes to what was meant, no to anything else."""
    voice = open_voice("neural")
    try:
        asked = written_down(listener, sound_of(voice, NUMBER_STEP, careful=False))
        for value, answer in ((RIGHT, "yes"), (WRONG, "no"), (Decimal("0.5"), "no"), (Decimal(15), "no")):
            learner = LearnerByEar(papers(CHECKLIST))
            assert learner.answer(asked) == f"{RIGHT} mL"
            read = written_down(listener, sound_of(voice, read_back(value, "mL"), careful=False))
            assert learner.answer(read) == answer, read
    finally:
        voice.close()
