"""Words cut into pieces, and rules that read them."""

import pytest

from assistant.spoken.grammar import Many, Opt, Parse, Word, Words, Written, alt, seq, walk, words_of
from assistant.spoken.tokens import UNKNOWN, clean_text

from .parts import tokens_of


@pytest.mark.parametrize(
    ("words", "tokens"),
    [
        ("Done.", "done"),
        ("Yes, correct.", "yes correct"),
        ("yes,correct", "yes correct"),
        ("twenty-five", "twenty five"),
        ("twenty\u2013five", "twenty five"),
        ("that\u2019s RIGHT", "that is right"),
        ("Ringer's", "ringers"),
        ("83.3 mL/hr.", "83.3 ml / hr"),
        ("75ml/hr", "75 ml / hr"),
        ("83 .3", "83.3"),
        ("83, .3", "83 .3"),
        ("83 . 3", "83 3"),
        ("1,000", "1000"),
        ("1,000,000.5", "1000000.5"),
        ("1,5", "1,5"),
        ("1,2,5", "1 2 5"),
        ("1-2-5", "1 2 5"),
        ("1\u202f000", "1000"),
        ("1\u00bd", "1 1/2"),
        ("5 \u00b5g", "5 mcg"),
        ("5 \u03bcg", "5 mcg"),
        ("-5", "minus 5"),
        ("\u22125", "minus 5"),
        ("5%", "5 %"),
        ("hello \u2014 there", "hello there"),
        ("  tab\tand\nline ", "tab and line"),
        ("?!...", ""),
        ("", ""),
        ("umm yeah OK", "um yes okay"),
        ("[unk] five", f"{UNKNOWN} five"),
        ("five <unk>", f"five {UNKNOWN}"),
        ("5*2", UNKNOWN),
        ("12:50", "12:50"),
        ("2:30pm", "2:30 pm"),
        ("12:50:30", UNKNOWN),
        ("1:5", UNKNOWN),
        ("1.2.3", UNKNOWN),
        ("na\u00efve", UNKNOWN),
        ("five\x00", UNKNOWN),
        ("\u202efive", UNKNOWN),
        ("five\u200b", UNKNOWN),
    ],
)
def test_cuts_words_into_pieces(words: str, tokens: str) -> None:
    """As people type and recognisers write; what has no plain meaning is unknown, not guessed."""
    assert " ".join(tokens_of(words)) == tokens


def test_cutting_twice_changes_nothing() -> None:
    """Pieces are themselves in the form in which they are compared."""
    for words in ("Seventy-five mL/hr, please.", "It's the pump's display", "83 .3"):
        tokens = tokens_of(words)
        assert tokens_of(" ".join(tokens)) == tokens


def test_cleans_text_for_one_line() -> None:
    """What cannot be shown is left out; words stay apart."""
    assert clean_text(" a\x00b \n c\u202ed ") == "a b c d"


PAIR = seq(Words({"one": 1, "two": 2}), Opt(Word("and")), Word("half", 0.5), build=lambda a, _, b: a + b)


def test_a_grammar_gives_every_reading() -> None:
    """Two ways to read the words are two readings, never the first of them."""
    either = alt(Word("ten fifty", 1050), seq(Word("ten", 10), Word("fifty", 50), build=lambda a, b: a + b / 100))
    assert set(Parse(("ten", "fifty")).whole(either)) == {1050, 10.5}
    assert Parse(("ten",)).whole(either) == ()


def test_a_grammar_refuses_what_its_builder_refuses() -> None:
    """A rule may fit the words and still not mean anything."""
    odd = seq(Words({"one": 1, "two": 2}), build=lambda value: value if value % 2 else None)
    assert Parse(("one",)).whole(odd) == (1,)
    assert Parse(("two",)).whole(odd) == ()


def test_a_grammar_lists_its_words_and_what_may_come_next() -> None:
    """Words, each once; after a beginning, only those that lead on."""
    assert words_of(PAIR) == ("one", "two", "half", "and")
    parse = Parse(("one",), wanting=True)
    assert parse.whole(PAIR) == () and parse.wanted == {"and", "half"}


def test_a_grammar_can_be_walked() -> None:
    """Always the first way, and always the last one; what is only written cannot be walked."""
    assert walk(PAIR, lambda ways: 0) == ("one", "half")
    assert walk(PAIR, lambda ways: ways - 1) == ("two", "and", "half")
    assert walk(Many(Word("x"), 2, 3), lambda ways: 0) == ("x", "x")
    assert walk(Written("figures", lambda token: ()), lambda ways: 0) is None
