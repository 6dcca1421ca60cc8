"""What another model bears out: digits are taken, choices asked about, and everything else stays refused."""

import math
from dataclasses import replace

import pytest

from assistant.adapters.recognisers.borne_out import borne_out, likeliest_choice, to_bear_out
from assistant.adapters.recognisers.evidence import Evidence, Hypothesis
from assistant.adapters.recognisers.forms import Form
from assistant.adapters.recognisers.judgement import judge
from assistant.adapters.recognisers.limits import GENERAL, TRAINED
from assistant.spoken import ENGLISH
from assistant.spoken.expect import AnyExpected, ChoiceExpected, ConfirmExpected, NumberExpected
from assistant.spoken.statement import Asked, Want

DIGITS = NumberExpected("mL", digits_only=True)
CLAMP = ConfirmExpected(asked=Asked("Close the roller clamp.", Want.DONE))
PULSE = ChoiceExpected(("thready", "bounding", "no pulse"), (), "Feel the pulse. Thready, bounding, or no pulse?")


def evidence(*written, free, **more):
    """What a model makes of an utterance: its sentences with their probability, and the wording without limits."""
    found = tuple(Hypothesis(text, math.log(share), 3) for text, share in written)
    return Evidence(Hypothesis(free, math.log(0.6)), 3, 0.0, {Form.WORDS: found}, **more)


def made_of(case, expect, other, limits=TRAINED):
    """What both models stand for together, as wording and doubt; the first one alone refuses it."""
    alone = judge(case, expect, ENGLISH, limits)
    assert not alone.words
    group = to_bear_out(alone, case, expect, ENGLISH, limits)
    verdict = alone if group is None else borne_out(alone, group, other, expect, ENGLISH)
    assert verdict.borne_out is bool(verdict.words)
    return verdict.words, verdict.doubtful


UNSURE = evidence((" seven one eight", 0.56), (" seven nine eight", 0.04), free=" seven one eight")


@pytest.mark.parametrize(
    ("other", "words"),
    [
        ("7 1 8", "seven one eight"),
        ("seven one eight", "seven one eight"),
        ("7 1 1", ""),
        ("7 1 8 8", ""),
        ("", ""),
    ],
)
def test_digits_are_taken_where_both_models_hear_them(other, words):
    """Not sure enough for one model alone: the other one decides, and only by the same."""
    assert made_of(UNSURE, DIGITS, other) == (words, False)


@pytest.mark.parametrize(
    ("case", "expect", "limits"),
    [
        # It hardly leads; something longer is as likely; a word was lost; the model writes another number; a cough.
        (evidence((" seven one", 0.5), (" seven nine", 0.4), free=" seven one"), DIGITS, TRAINED),
        (evidence((" seven one", 0.56), (" seven one one", 0.04), free=" seven one"), DIGITS, TRAINED),
        (replace(UNSURE, bursts=4), DIGITS, TRAINED),
        (replace(UNSURE, free=Hypothesis(" seven one nine", -0.5)), DIGITS, TRAINED),
        (replace(UNSURE, voiced=0.2), DIGITS, TRAINED),
        # A model as it comes asks no other one.
        (evidence((" seven one", 0.2), (" seven nine", 0.1), free=" seven one"), DIGITS, GENERAL),
        # At a line a yes is a yes by itself, or none.
        (evidence((" closed", 0.3), (" not closed", 0.1), free=" goes it"), CLAMP, TRAINED),
        (evidence((" stop", 0.3), (" again", 0.1), free=" top"), AnyExpected(), TRAINED),
    ],
)
def test_no_other_model_makes_them_better(case, expect, limits):
    """Refused whatever the other model says."""
    alone = judge(case, expect, ENGLISH, limits)
    assert to_bear_out(alone, case, expect, ENGLISH, limits) is None


@pytest.mark.parametrize("words", [" fifteen", " six"])
def test_a_number_is_asked_for_by_digits_without_another_model(words):
    """One that was said as a number, or as one digit: what sounds like it sounds like it to both models."""
    case = evidence((words, 0.5), (" fifty", 0.1), free=words)
    alone = judge(case, NumberExpected("mL"), ENGLISH, TRAINED)
    assert (alone.words, alone.doubtful) == (words.strip(), True)
    assert to_bear_out(alone, case, NumberExpected("mL"), ENGLISH, TRAINED) is None


FAINT = evidence((" thready", 2e-4), (" bounding", 1e-5), free=" ready")


@pytest.mark.parametrize(
    ("case", "other", "verdict"),
    [
        (FAINT, "thready", ("thready", True)),
        (FAINT, "bounding", ("", False)),
        (FAINT, "", ("", False)),
        # A third of the choices' probability is another one's; it is far from what is written; it is denied.
        (evidence((" thready", 2e-4), (" bounding", 1e-4), free=" ready"), "thready", ("", False)),
        (evidence((" thready", 1e-8), (" bounding", 1e-9), free=" ready"), "thready", ("", False)),
        (replace(FAINT, free=Hypothesis(" not ready", -0.5)), "thready", ("", False)),
    ],
)
def test_choices_are_asked_about_where_both_models_hear_them(case, other, verdict):
    """Never taken at once: a choice closes a step."""
    assert made_of(case, PULSE, other) == verdict


@pytest.mark.parametrize(
    ("written", "free", "words"),
    [
        ((" thready", 1e-3), " red he", "thready"),
        ((" no pulse", 1e-3), " no pulls", "no pulse"),
        # Denied; far from what it writes freely, so that it was not said to the assistant; a command.
        ((" thready", 1e-3), " no red he", ""),
        ((" thready", 1e-5), " red he", ""),
        ((" stop", 0.4), " top", ""),
    ],
)
def test_what_the_other_model_bears_out(written, free, words):
    """A choice that leads, and no command."""
    assert likeliest_choice(evidence(written, free=free), PULSE, ENGLISH) == words


def test_a_choice_that_goes_on_is_no_choice():
    """ "thready means what" is no answer; each of the models has to hear that nothing follows."""
    goes_on = replace(FAINT, bounded={Form.WORDS: (Hypothesis(" thready", math.log(2e-4), 3, ending=-4.0),)})
    assert made_of(goes_on, PULSE, "thready") == ("", False)
    assert likeliest_choice(goes_on, PULSE, ENGLISH) == ""
    ends = replace(FAINT, bounded={Form.WORDS: (Hypothesis(" thready", math.log(2e-4), 3, ending=-1.0),)})
    assert likeliest_choice(ends, PULSE, ENGLISH) == "thready"


def test_what_the_other_model_bears_out_of_nothing():
    """Where nothing fits, nothing is borne out."""
    assert likeliest_choice(evidence(free=" tomorrow"), PULSE, ENGLISH) == ""


@pytest.mark.parametrize(
    ("share", "other", "verdict"),
    [
        (0.57, "7 1 8", ("seven one eight", False)),
        (0.57, "7 9 8", ("seven one eight", True)),
        (0.57, "", ("seven one eight", True)),
        # It has to lead by more than where digits were asked for: to ask is easy.
        (0.5, "7 1 8", ("seven one eight", True)),
    ],
)
def test_a_number_that_was_said_digit_by_digit_is_not_asked_for_so_again(share, other, verdict):
    """It is doubtful to one model alone, and what it hears is borne out, or stays doubtful."""
    case = evidence((" seven one eight", share), (" seven nine eight", 0.6 - share), free=" seven one eight")
    expect = NumberExpected("mL")
    alone = judge(case, expect, ENGLISH, TRAINED)
    assert alone.doubtful
    group = to_bear_out(alone, case, expect, ENGLISH, TRAINED)
    both = alone if group is None else borne_out(alone, group, other, expect, ENGLISH)
    assert (both.words, both.doubtful) == verdict
    assert both.borne_out is not both.doubtful
