"""A cough or a clatter is no number; whoever speaks uses their voice."""

import math
from decimal import Decimal

import numpy as np
import pytest

from assistant.adapters.recognisers.evidence import Evidence, Hypothesis
from assistant.adapters.recognisers.forms import Form
from assistant.adapters.recognisers.judgement import judge
from assistant.adapters.recognisers.limits import GENERAL, TRAINED
from assistant.adapters.recognisers.voicing import strength
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken import ENGLISH
from assistant.spoken.expect import ConfirmExpected, NumberExpected
from tests.bench import voices

SECOND = np.arange(SAMPLE_RATE_HZ) / SAMPLE_RATE_HZ


@pytest.mark.parametrize("hertz", [75, 120, 220, 390])
def test_a_voice_repeats_itself(hertz):
    """A sound with overtones, at any pitch that people have, with noise 10 dB below it."""
    sound = sum(np.sin(2 * math.pi * hertz * part * SECOND) / part for part in range(1, 8))
    noise = np.random.default_rng(1).normal(scale=float(np.std(sound)) * 10 ** (-10 / 20), size=len(SECOND))
    assert strength((sound + noise).astype(np.float32)) > 0.8


@pytest.mark.parametrize("seed", range(5))
def test_noise_does_not(seed):
    """A burst of noise that dies away, as a cough or a clatter does; a click; nothing."""
    chance = np.random.default_rng(seed)
    burst = chance.normal(size=SAMPLE_RATE_HZ // 2) * np.exp(-np.arange(SAMPLE_RATE_HZ // 2) / 2_000)
    assert strength(burst.astype(np.float32)) < TRAINED.voiced
    assert strength(burst[:300].astype(np.float32)) == 0.0
    assert strength(np.zeros(SAMPLE_RATE_HZ, dtype=np.float32)) == 0.0


@pytest.mark.sound
@pytest.mark.parametrize("words", ["six", "two", "eight", "fifty", "twenty", "one"])
@pytest.mark.parametrize("voice", ["flite:slt", "espeak:en-gb-scotland"])
def test_the_shortest_numbers_are_voiced(voice, words):
    """Even "six" and "two", of which little is."""
    if voice not in voices.synthesisers():
        pytest.skip(f"{voice} is not installed")
    assert strength(voices.synthesise(voice, words)) > TRAINED.voiced + 0.1


def _evidence(text, voiced):
    heard = (Hypothesis(text, math.log(0.999), 2),)
    return Evidence(Hypothesis(f" {text}", math.log(0.999), 2), 2, 0.0, {Form.WORDS: heard}, bursts=1, voiced=voiced)


def test_a_number_without_a_voice_is_refused():
    """It is neither taken nor asked about; a command is, and so is a number of a model that does not look."""
    number = NumberExpected("mL", highest=Decimal(100))
    assert judge(_evidence("twenty", 0.9), number, ENGLISH, TRAINED).words == "twenty"
    refused = judge(_evidence("twenty", 0.2), number, ENGLISH, TRAINED)
    assert (refused.words, refused.doubtful) == ("", False)
    assert judge(_evidence("twenty", 0.2), number, ENGLISH, GENERAL).words == "twenty"
    assert judge(_evidence("stop", 0.2), ConfirmExpected(), ENGLISH, TRAINED).words == "stop"
