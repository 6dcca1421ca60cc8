"""What must not be taken for a yes: the rules as tables, and the bundled recogniser on synthesised near-misses."""

import math
from dataclasses import replace

import pytest

from assistant.adapters.recognisers.evidence import Evidence, Hypothesis
from assistant.adapters.recognisers.forms import Form
from assistant.adapters.recognisers.judgement import judge
from assistant.adapters.recognisers.limits import GENERAL, TRAINED
from assistant.adapters.recognisers.positives import alike, is_denied, is_positive, rivals
from assistant.adapters.recognisers.replay import hear_sound
from assistant.spoken import ENGLISH
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected
from assistant.spoken.statement import Asked, Want
from tests.speakers import spoken as speak

CLAMP = ConfirmExpected(asked=Asked("Close the roller clamp.", Want.DONE))
SPIKE = ConfirmExpected(asked=Asked("Spike the bag.", Want.DONE))
ORDER = ConfirmExpected(
    done_is_yes=False, asked=Asked("Read the order. Is it complete, clear and signed?", Want.ANSWER)
)
READ_BACK = ConfirmExpected(done_is_yes=False)


@pytest.mark.parametrize(
    ("free", "denied"),
    [
        (" Closed.", False),
        (" Clothes.", False),
        (" It's closed.", False),
        (" Not closed.", True),
        (" It isn't clothed.", True),
        (" Is it closed?", True),
        (" Clothes?", True),
        (" Almost closed.", True),
        (" Okay.", True),
        (" Still open.", True),
    ],
)
def test_what_the_free_text_denies(free, denied):
    """Left free, the model may spell it as it likes, but must not deny, ask or doubt."""
    assert is_denied("closed", free, CLAMP, ENGLISH) is denied


def evidence(*written, free):
    found = tuple(Hypothesis(text, math.log(share), 3) for text, share in written)
    return Evidence(Hypothesis(free, -0.5), 3, 0.0, {Form.WORDS: found})


@pytest.mark.parametrize(
    ("case", "expect", "words", "doubtful"),
    [
        (evidence((" Closed.", 0.8), free=" Closed."), CLAMP, "closed", False),
        # Wordings of one meaning stand together, a yes beside a done.
        (evidence((" Closed.", 0.4), (" Done.", 0.4), free=" Closed."), CLAMP, "closed", False),
        # It leads, and does not beat what is none.
        (evidence((" Closed.", 0.6), (" Not closed.", 0.2), free=" Closed."), CLAMP, "closed", True),
        (evidence((" Closed.", 0.6), (" Closed?", 0.2), free=" Closed."), CLAMP, "closed", True),
        # A question is handed on as one.
        (evidence((" Closed?", 0.8), free=" Closed?"), CLAMP, "closed?", False),
        (evidence((" Closed.", 0.8), free=" Not closed."), CLAMP, "", False),
        (evidence((" Yes.", 0.8), free=" Yes?"), READ_BACK, "", False),
        # A read-back asks again by itself.
        (evidence((" Yes.", 0.5), (" No.", 0.4), free=" Yes."), READ_BACK, "", False),
    ],
)
def test_when_a_positive_is_taken(case, expect, words, doubtful):
    """Clearly, and by all that was heard; or it is asked about; or nothing."""
    verdict = judge(case, expect, ENGLISH)
    assert (verdict.words, verdict.doubtful) == (words, doubtful)


@pytest.mark.parametrize(
    ("words", "others"),
    [
        ("it's spiked", {"is it spiked", "it is not spiked", "it's not spiked", "it isn't spiked", "it ain't spiked"}),
        ("i've hung it", {"have i hung it", "i have not hung it", "i've not hung it", "i haven't hung it"}),
        ("spiked", set()),
    ],
)
def test_what_asks_or_denies_in_nearly_the_same_words(words, others):
    """A single word has no such rival: nothing changes places, and a "not" before it is heard."""
    assert set(rivals(words, SPIKE, ENGLISH)) == others


@pytest.mark.parametrize(
    ("found", "doubtful"),
    [
        ({"is it spiked": -9.0, "it isn't spiked": -12.0}, False),
        ({"is it spiked": -4.0, "it isn't spiked": -12.0}, True),
        ({"is it spiked": -9.0, "it isn't spiked": -4.0}, True),
        # What was never compared is not taken.
        ({}, True),
    ],
)
def test_a_yes_in_words_of_the_learners_own_beats_its_rivals(found, doubtful):
    """Each of them, and clearly; else it is asked about once more."""
    likely = Hypothesis(" it's spiked", -0.01)
    unlikely = Hypothesis(" done", -8.0, 2)
    case = Evidence(likely, 5, 0.0, {Form.WORDS: (unlikely,)}, rivals=found)
    verdict = judge(case, SPIKE, ENGLISH, TRAINED)
    assert (verdict.words, verdict.doubtful) == ("it's spiked", doubtful)


def test_what_is_one_letter_away_from_a_no():
    """ "I did it" is one letter away from "I didn't"; "closed" is like nothing else."""
    assert "i didn't" in alike("i did it", CLAMP, ENGLISH)
    assert "i didn't" in alike("i did", CLAMP, ENGLISH)
    assert not alike("closed", CLAMP, ENGLISH)
    assert not alike("done", CLAMP, ENGLISH)


@pytest.mark.parametrize(
    ("against", "doubtful"),
    [({}, True), ({"i didn't": -4.5}, True), ({"i didn't": -7.5}, True), ({"i didn't": -12.0}, False)],
)
def test_a_yes_that_is_one_letter_away_from_a_no_is_asked_about_unless_it_is_far_likelier(against, doubtful):
    """Of "I didn't" by 35 voices a model was sure of "I did it" by up to 4.3; it has to be surer by far."""
    case = evidence((" I did it.", 0.99), free=" I did it.")
    others = rivals("i did it", CLAMP, ENGLISH)
    scores = dict.fromkeys(others, -30.0) | against if against else {}
    case = replace(case, free=replace(case.free, text=" i did it", score=-0.01), rivals=scores)
    assert judge(case, CLAMP, ENGLISH, TRAINED).doubtful is doubtful
    assert judge(case, CLAMP, ENGLISH, GENERAL).doubtful


NEAR_MISSES = (
    "I didn't",
    "is it done",
    "not complete",
    "almost done",
    "it's not closed",
    "is it closed",
    "not done",
    "I haven't closed it",
)


@pytest.mark.sound
@pytest.mark.parametrize("voice", ["flite:slt", "flite:rms", "espeak-ng:en-gb+f2"])
@pytest.mark.parametrize("words", NEAR_MISSES)
def test_a_near_miss_is_never_taken(whisper, words, voice):
    """At a line it closes nothing; the worst is that it is asked about."""
    hearing = hear_sound(whisper, speak(words, voice), CLAMP)
    positive = is_positive(ENGLISH.interpret(hearing.words, CLAMP, heard=True), CLAMP)
    assert not positive or hearing.doubtful, hearing


@pytest.mark.sound
@pytest.mark.parametrize("voice", ["flite:slt", "flite:rms"])
@pytest.mark.parametrize(
    ("words", "expect"),
    [("the clamp is closed", CLAMP), ("it's closed", CLAMP), ("done", CLAMP), ("yes", ORDER), ("correct", ORDER)],
)
def test_a_clear_positive_is_taken_at_first_hearing(whisper, words, expect, voice):
    """Where nothing speaks against it, the learner is not asked again."""
    hearing = hear_sound(whisper, speak(words, voice), expect)
    assert is_positive(ENGLISH.interpret(hearing.words, expect, heard=True), expect), hearing
    assert not hearing.doubtful


SOME = ChoiceExpected(("none", "some", "red"), (), "Look at the chamber. None, or some?")


@pytest.mark.parametrize(
    ("free", "score", "limits", "verdict"),
    [
        (" none", -0.05, TRAINED, ("none", False)),
        (" none", -0.31, TRAINED, ("none", True)),
        (" none", -2.5, TRAINED, ("", False)),
        (" some", -0.31, TRAINED, ("", False)),
        (" not none", -0.31, TRAINED, ("", False)),
        (" none", -0.31, GENERAL, ("none", False)),
        (" none", -4.0, GENERAL, ("", False)),
    ],
)
def test_a_choice_that_both_witnesses_write_is_asked_about(free, score, limits, verdict):
    """Where it is not clear enough to close the step; never where the model, left free, writes another thing."""
    bounded = {Form.WORDS: (Hypothesis(" none", score, 2), Hypothesis(" no", score - 6.2, 2))}
    made = judge(Evidence(Hypothesis(free, -0.35, 2), 2, 0.0, bounded), SOME, ENGLISH, limits)
    assert (made.words, made.doubtful) == verdict
