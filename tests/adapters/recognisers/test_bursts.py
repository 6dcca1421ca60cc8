"""Stretches of voice: counted where pauses part them, and a number that has fewer words is not stood for."""

import math

import numpy as np
import pytest

from assistant.adapters.recognisers.bursts import count
from assistant.adapters.recognisers.evidence import Evidence, Hypothesis
from assistant.adapters.recognisers.forms import Form
from assistant.adapters.recognisers.judgement import judge
from assistant.adapters.recognisers.limits import TRAINED
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken import ENGLISH
from assistant.spoken.expect import NumberExpected


def voice(seconds, hertz=300, loudness=0.3):
    return loudness * np.sin(2 * np.pi * hertz * np.arange(round(seconds * SAMPLE_RATE_HZ)) / SAMPLE_RATE_HZ)


def pause(seconds):
    return np.zeros(round(seconds * SAMPLE_RATE_HZ))


@pytest.mark.parametrize(
    ("parts", "bursts"),
    [
        ((), 0),
        ((pause(0.5),), 1),  # silence has no loud part: all of it is one
        ((pause(0.3), voice(0.4), pause(0.3)), 1),
        ((voice(0.4), pause(0.3), voice(0.4)), 2),
        # Half as loud is a word still; a fifth of it is what somebody else says, or breath.
        ((voice(0.4), pause(0.3), voice(0.4, loudness=0.15)), 2),
        ((voice(0.4), pause(0.3), voice(0.4, loudness=0.06)), 1),
        # The stop within "six" parts nothing, nor does a click make a word, nor what is far below the rest.
        ((voice(0.2), pause(0.08), voice(0.2)), 1),
        ((voice(0.4), pause(0.3), voice(0.04)), 1),
        ((voice(0.4), pause(0.3), voice(0.4, loudness=0.01)), 1),
        # An "s" is loud where no vowel is.
        ((voice(0.4), pause(0.3), voice(0.3, hertz=5_000)), 1),
    ],
)
def test_counted(parts, bursts):
    """What pauses part, in the band of vowels."""
    sound = np.concatenate([*parts, pause(0)]).astype(np.float32)
    assert count(sound) == bursts


@pytest.mark.parametrize(("bursts", "words"), [(1, "six"), (2, "")])
@pytest.mark.parametrize("digits_only", [True, False])
def test_a_digit_that_was_lost_still_sounded(bursts, words, digits_only):
    """ "six seven" written as "six", with certainty: where two words sounded it is not stood for."""
    found = (Hypothesis(" six", math.log(0.999), 2),)
    case = Evidence(Hypothesis(" six", math.log(0.999)), 2, 0.0, {Form.WORDS: found}, bursts=bursts)
    verdict = judge(case, NumberExpected("mL", digits_only=digits_only), ENGLISH, TRAINED)
    assert ("" if verdict.doubtful else verdict.words) == words
