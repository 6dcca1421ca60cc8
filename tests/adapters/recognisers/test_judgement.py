"""From hypotheses to one wording or none: tables with the refusals beside the successes."""

import math
from dataclasses import replace
from functools import partial

import pytest

from assistant.adapters.recognisers import judgement, ranking
from assistant.adapters.recognisers.evidence import Evidence, Hypothesis
from assistant.adapters.recognisers.forms import Form, forms
from assistant.adapters.recognisers.judgement import Judgement
from assistant.adapters.recognisers.limits import CLEAR_COMMAND, COMMAND, DIGITS, DOUBTFUL, FAINT_COMMAND, NUMBER
from assistant.spoken import ENGLISH
from assistant.spoken.expect import AnyExpected, ChoiceExpected, ConfirmExpected, NumberExpected, TextExpected
from assistant.spoken.meaning import Answer
from assistant.spoken.statement import Asked, Want

judge = partial(judgement.judge, language=ENGLISH)
rank = partial(ranking.rank, language=ENGLISH)
plain = partial(ranking.plain, language=ENGLISH)
without_what_may_lack_words = partial(judgement.without_what_may_lack_words, language=ENGLISH)
is_faint_command = partial(judgement.is_faint_command, language=ENGLISH)

RATE = NumberExpected("mL/h")
LINE = ConfirmExpected(asked=Asked("Close the roller clamp.", Want.DONE))
SITE = ChoiceExpected(("clear", "swollen"))


def evidence(digits=(), words=(), free=("", -0.5), no_speech=0.0, tokens=5):
    bounded = {}
    for form, written in ((Form.DIGITS, digits), (Form.WORDS, words)):
        if written:
            # Four letters a token, roughly, and the end.
            bounded[form] = tuple(
                Hypothesis(text, math.log(share), 1 + max(1, len(text) // 4)) for text, share in written
            )
    return Evidence(Hypothesis(*free), tokens, no_speech, bounded)


@pytest.mark.parametrize(
    ("case", "expect", "words"),
    [
        (evidence([(" 125.", 0.5), (" 125 mL/h", 0.3)], [(" one twenty five", 0.1)]), RATE, "125"),
        # Too faint for a number, however it leads.
        (evidence([(" 125.", 1e-4)], [(" one twenty five", 1e-5)]), RATE, ""),
        (evidence([], [(" Yes.", 0.9)]), ConfirmExpected(), "yes"),
        (evidence([], [(" Yes.", 0.5), (" No.", 0.4)]), ConfirmExpected(), ""),
        (evidence([], [(" Yes.", 0.5), (" Yeah", 0.3), (" That's right.", 0.1)]), ConfirmExpected(), "yes"),
        (evidence(), ConfirmExpected(), ""),
        # The free decoder writes something far likelier: this was not said to us.
        (evidence([], [(" Yes.", 1e-5)], free=(" Yesterday it rained.", -1.0)), ConfirmExpected(), ""),
        # Refusals that help the learner are passed on, others are not.
        (evidence([(" 50 mL", 0.9)], [(" fifty millilitres", 0.5)]), RATE, "50 ml"),
        (evidence([(" and", 0.9)], [(" and", 0.9)]), RATE, ""),
    ],
)
def test_stands_for_a_wording_or_for_none(case, expect, words):
    """A wording is stood for only where its meaning clearly leads, in both forms, and is not far-fetched."""
    assert judge(case, expect).words == words


SPELLED = NumberExpected("mL/h", digits_only=True)


@pytest.mark.parametrize(
    ("case", "words"),
    [
        # The model's own figures are sure of 125; only the words tell how it was said.
        (evidence([(" 125.", 0.9)], [(" one two five", 1e-4)], free=(" 125.", -0.1)), "one two five"),
        (evidence([(" 125.", 0.9)], [(" one hundred and twenty five", 1e-4)]), "one hundred and twenty five"),
        (evidence([(" 125.", 0.9)], [(" one two five", 1e-4), (" one two nine", 1e-4)]), ""),
        # The words heard another number than the figures are sure of.
        (evidence([(" 129.", 0.9)], [(" one two five", 1e-4)], free=(" 129.", -0.1)), ""),
        (evidence([(" 125.", 0.9)], []), ""),
    ],
)
def test_digit_by_digit(case, words):
    """Where a number must be said digit by digit, words decide what it is, and figures that it was said."""
    assert judge(case, SPELLED).words == words


@pytest.mark.parametrize(
    ("case", "words"),
    [
        (evidence([(" 50", 0.5), (" 15", 0.3)], [(" fifty", 0.1), (" fifteen", 0.05)]), "50"),
        # Figures are sure of a point that the words have not heard.
        (evidence([(" 1.25", 0.9)], [(" one twenty five", 0.2)]), "1.25"),
    ],
)
def test_a_number_of_which_another_is_possible_is_doubtful(case, words):
    """That a number was said is clear, only not which: its digits are asked for; by digits, it is refused."""
    verdict = judge(case, RATE)
    assert (verdict.words, verdict.doubtful) == (words, True)
    assert not judge(case, SPELLED).doubtful


@pytest.mark.parametrize(
    ("best", "other", "expect", "stands"),
    [
        # The share of the longer one is small, and enough for doubt.
        (" two", " two eight two", RATE, False),
        (" eighty three", " eighty three point three", RATE, False),
        (" two", " six", RATE, True),
        (" two zero", " two zero eight", SPELLED, False),
        (" three point three", " eight three point three", SPELLED, False),
        (" two zero eight", " two zero", SPELLED, True),
        (" two zero eight", " two zero five", SPELLED, True),
    ],
)
def test_what_may_be_the_rest_of_a_longer_number_is_not_taken(best, other, expect, stands):
    """Where a longer number that begins or ends with it is possible at all, a digit may have been lost."""
    lead = 0.8 if expect is SPELLED else 0.94
    case = evidence([], [(best, 0.9 * lead), (other, 0.9 * (1 - lead))], free=(best, -1.0))
    verdict = judge(case, expect)
    assert (verdict.words == best.strip() and not verdict.doubtful) is stands
    assert verdict.doubtful is (not stands and expect is RATE)


@pytest.mark.parametrize(
    ("free", "stands"),
    [
        (" 68 minutes", True),
        (" Sixty-eight.", True),
        # A figure more, or another one: the number may have lost it.
        (" 688 minutes", False),
        (" 6 9", False),
        # It loses count of zeros, and writes in circles.
        (" 6800", True),
        (" 68 68 68 68", True),
    ],
)
def test_what_the_free_text_contradicts_is_doubtful(free, stands):
    """A number stands only where the model, left free, writes no figure that the number has not."""
    verdict = judge(evidence([(" 68", 0.9)], [(" sixty eight", 0.5)], free=(free, -1.0)), RATE)
    assert (verdict.words, verdict.doubtful) == ("68", not stands)


def test_what_is_no_number_is_never_doubtful():
    """Between a yes and a no there are no digits to ask for."""
    verdict = judge(evidence([], [(" Yes.", 0.5), (" No.", 0.4)]), ConfirmExpected())
    assert (verdict.words, verdict.doubtful) == ("", False)


@pytest.mark.parametrize(
    ("words", "expect", "is_whole", "stands"),
    [
        ("it is done", LINE, True, "it is done"),
        ("it is done", LINE, False, ""),
        ("yes", ConfirmExpected(), False, ""),
        ("it is not done", LINE, False, "it is not done"),
        ("no", ConfirmExpected(), False, "no"),
        ("swollen", SITE, True, "swollen"),
        ("swollen", SITE, False, ""),
        ("125", RATE, False, "125"),
    ],
)
@pytest.mark.parametrize("doubtful", [False, True])
def test_what_closes_a_step_stands_only_where_no_word_can_be_lost(words, expect, is_whole, stands, doubtful):
    """In a longer picture than the model is used to, the "not" may be what is missing; whoever is asked says yes."""
    made = replace(evidence(), is_whole=is_whole)
    found = without_what_may_lack_words(Judgement(words, doubtful=doubtful), made, expect)
    assert (found.words, found.doubtful) == (stands, doubtful and stands != "")


def of(text, score, tokens, other=0.0, free=-9.0, gain=None, ending=0.0):
    """Evidence for one wording in words, with another of a share `other`, so much likelier than of noise."""
    found = [Hypothesis(text, score, tokens, ending)]
    if other:
        found.append(Hypothesis(" No.", score + math.log(other / (1 - other)), 2))
    of_noise = {} if gain is None else {plain(text): score - gain}
    return Evidence(Hypothesis("?", free), 3, 0.0, {Form.WORDS: tuple(found)}, of_noise=of_noise)


@pytest.mark.parametrize(("offset", "heard"), [(0.01, True), (-0.01, False)])
def test_limits_are_where_they_are_said_to_be(offset, heard):
    """Share, clearness and ratio just above their limits pass, just below they do not."""
    assert bool(judge(of(" Yes.", -0.1, 2, other=1 - COMMAND.share - offset), ConfirmExpected()).words) is heard
    assert bool(judge(of(" Yes.", 2 * (COMMAND.clear + offset), 2, gain=9), ConfirmExpected()).words) is heard
    long = of(" Yes, that is right.", COMMAND.least + offset, 7, gain=9)
    assert bool(judge(long, ConfirmExpected()).words) is heard
    assert bool(judge(of(" Okay.", -3.0, 2, gain=COMMAND.gain + offset), ConfirmExpected()).words) is heard
    cut = of(" That is right.", -4.0, 7, gain=9, ending=COMMAND.ending + offset)
    assert bool(judge(cut, ConfirmExpected()).words) is heard
    cut = of(" Change my answer.", -5.0, 4, gain=13, ending=FAINT_COMMAND.ending + offset)
    assert bool(judge(cut, ConfirmExpected()).words) is heard
    assert bool(judge(of(" Okay.", CLEAR_COMMAND.least + offset, 2), ConfirmExpected()).words) is heard
    likely = of(" Yes.", -1.0, 2, free=-1.0 - COMMAND.ratio - offset)
    assert bool(judge(likely, ConfirmExpected()).words) is heard


@pytest.mark.parametrize(
    ("of_noise", "heard"),
    [
        ({"change my answer": -5.0 - FAINT_COMMAND.gain - 0.01}, "change my answer"),
        ({"change my answer": -5.0 - FAINT_COMMAND.gain + 0.01}, ""),
        # Nobody has looked: it stays unheard.
        ({}, ""),
    ],
)
def test_a_faint_command_stands_where_noise_would_not_be_taken_for_it(of_noise, heard):
    """A model writes "okay" of a cough; of "change my answer" it writes only where something like it was said."""
    case = replace(of(" Change my answer.", -5.0, 4), of_noise=of_noise)
    assert is_faint_command(case.bounded[Form.WORDS][0], ConfirmExpected())
    assert judge(case, ConfirmExpected()).words == heard


def test_a_clear_command_needs_no_comparison_with_noise():
    """What is clear by itself is not looked at again, and costs no time."""
    assert not is_faint_command(Hypothesis(" Yes.", -0.5, 2), ConfirmExpected())
    assert is_faint_command(Hypothesis(" Yes.", -3.0, 2), RATE)
    assert not is_faint_command(Hypothesis(" 125.", -3.0, 2), RATE)


def test_the_limits_for_doubt_are_the_wider_ones():
    """A number that is taken at once would be taken as doubtful too; digits, the last word, must be the clearest."""
    assert DOUBTFUL.share <= NUMBER.share
    assert DOUBTFUL.clear <= NUMBER.clear
    assert DOUBTFUL.least <= NUMBER.least
    assert DOUBTFUL.ratio <= NUMBER.ratio
    assert DIGITS.clear >= NUMBER.clear


def test_wordings_of_one_meaning_stand_together():
    """Probabilities of equal meanings are added; the likeliest wording speaks for them."""
    case = evidence([(" 125", 0.2), (" 125 mL/h.", 0.3), (" one two five", 0.1), (" 15", 0.4)])
    first, second = rank(case.bounded, RATE)
    assert isinstance(first.meaning, Answer)
    assert (str(first.meaning.value), first.text) == ("125", "125 ml/h")
    assert first.share == pytest.approx(0.6)
    assert first.score == pytest.approx(math.log(0.6))
    assert second.share == pytest.approx(0.4)


@pytest.mark.parametrize(
    ("case", "words"),
    [
        (evidence(free=(" The clamp was stuck.", -1.0)), "The clamp was stuck."),
        (evidence(free=(" you", -9.0), no_speech=0.9, tokens=2), ""),
        (evidence(free=(" The clamp was stuck.", -2.0), no_speech=0.9), "The clamp was stuck."),
    ],
)
def test_free_words(case, words):
    """A reason is taken as it is written, unless the model doubts that anybody spoke."""
    assert judge(case, TextExpected()).words == words


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (" 83.3 mL/h.", "83.3 ml/h"),
        (" One, two, five.", "one two five"),
        (" 1,000 milliliters!", "1,000 milliliters"),
        (" That's right.", "that's right"),
        (" twenty-five", "twenty-five"),
        (" .5", ".5"),
        (" 8 3.3", "8 3 point 3"),
        (" 1 6 6.7 mL/h", "1 6 6 point 7 ml/h"),
        (" 18 3.3", "18 3.3"),
        (" 125 3.3", "125 3.3"),
        ("?", ""),
    ],
)
def test_plain(text, expected):
    """Marks of a sentence go, marks within numbers and words stay."""
    assert plain(text) == expected


@pytest.mark.parametrize(
    ("expect", "expected"),
    [
        (RATE, (Form.DIGITS, Form.WORDS)),
        (AnyExpected(), (Form.DIGITS, Form.WORDS)),
        (NumberExpected("mL/h", digits_only=True), (Form.DIGITS, Form.WORDS)),
        (ConfirmExpected(), (Form.WORDS,)),
    ],
)
def test_forms(expect, expected):
    """Figures are searched for only where a number can come."""
    assert forms(expect) == expected
