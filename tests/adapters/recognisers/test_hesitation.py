"""A sound of thinking before a number is listened past, and never turns one number into another."""

import pytest

from assistant.adapters.recognisers import hesitation
from assistant.adapters.recognisers.evidence import Hypothesis
from assistant.adapters.recognisers.forms import Form
from assistant.adapters.recognisers.replay import hear_sound
from assistant.spoken import ENGLISH
from assistant.spoken.expect import NumberExpected
from assistant.spoken.meaning import Answer
from tests.bench import voices
from tests.bench.conditions import as_recorded

PIECES = {1: " uh", 2: " fifty", 3: ",", 4: " er", 5: " u", 6: "mm", 7: " umbrella", 8: "er"}


def read(tokens):
    return "".join(PIECES[token] for token in tokens)


@pytest.mark.parametrize(
    ("tokens", "found"),
    [
        ((1, 2), (1,)),
        ((1, 3, 2), (1, 3)),
        ((1, 3, 4, 2), (1, 3, 4)),
        ((5, 6, 2), (5, 6)),
        ((2, 1), ()),
        ((7, 2), ()),
        # Nothing but a sound of thinking is no number, and half a word is none.
        ((1,), ()),
        ((1, 8, 2), ()),
        ((), ()),
    ],
)
def test_sounds_of_thinking_at_the_beginning(tokens, found):
    """ "uh", "uh, er", a word in two tokens; not in the middle, nor as the beginning of another word."""
    assert hesitation.leading(tokens, read, ENGLISH) == found


def test_what_was_heard_without_it_stands_beside():
    """ "uh five" may be "eight five": what is as likely with the sound as without it does not lead."""
    sure_of_sound = -0.1
    behind = {Form.WORDS: (Hypothesis("five", -0.2, 2),)}
    whole = {Form.WORDS: (Hypothesis("eight five", -0.4, 3), Hypothesis("nine five", -9.0, 3))}
    found = hesitation.with_both(behind, whole, sure_of_sound)[Form.WORDS]
    assert [(one.text, round(one.score, 3)) for one in found] == [
        *(("five", -0.2), ("eight five", -0.3), ("nine five", -8.9)),
    ]


@pytest.mark.sound
def test_a_number_after_a_sound_of_thinking(ear):
    """Said by a voice that was not heard in training: none is another number, and half are taken or asked about."""
    if "flite:slt" not in voices.synthesisers():
        pytest.skip("flite is not installed")
    said = {
        "uh, five hundred fifty": 550,
        "uh, sixty three millilitres": 63,
        "um, eighty five": 85,
        "uh, two hundred millilitres": 200,
        "um, one hundred twenty five millilitres": 125,
        "uh, seven hundred fifty": 750,
    }
    expect = NumberExpected("mL")
    understood = 0
    for words, value in said.items():
        hearing = hear_sound(ear, as_recorded(voices.synthesise("flite:slt", words)), expect)
        if not hearing.words:
            continue
        meaning = ENGLISH.interpret(hearing.words, expect, heard=True)
        assert hearing.doubtful or (isinstance(meaning, Answer) and meaning.value == value), words
        understood += 1
    assert understood >= len(said) // 2
