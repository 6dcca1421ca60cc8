"""A second language is one folder: with the words of `tests.spoken.tiny` the same engine understands and speaks it."""

import inspect
import subprocess
import sys
from decimal import Decimal

import pytest

from assistant.errors import QuantityError, UsageError
from assistant.spoken import ENGLISH
from assistant.spoken.completeness import Completeness
from assistant.spoken.expect import (
    AnyExpected,
    ChoiceExpected,
    ConfirmExpected,
    Expect,
    NameExpected,
    NumberExpected,
    TextExpected,
)
from assistant.spoken.meaning import Answer, Command, Kind, Meaning, NoMatch, Reason

from .tiny import TINY
from .tiny.marked import marked, unmarked

YES_OR_NO, RATE, DIGITS, ANY = (
    ConfirmExpected(),
    NumberExpected("mL/h"),
    NumberExpected("mL/h", digits_only=True),
    AnyExpected(),
)
YES, NO, DONE = Answer(Kind.CONFIRM, "yes"), Answer(Kind.CONFIRM, "no"), Answer(Kind.DONE, "done")


def rate(value: str, *, digits: bool = False, unit: bool = True, corrected: bool = False) -> Answer:
    return Answer(Kind.NUMBER, Decimal(value), "mL/h", digit_by_digit=digits, unit_said=unit, corrected=corrected)


@pytest.mark.parametrize(
    ("words", "expect", "meaning"),
    [
        ("ova", YES_OR_NO, YES),
        ("Ova da, bitar!", YES_OR_NO, YES),
        ("nek", YES_OR_NO, NO),
        ("fert", YES_OR_NO, DONE),
        ("fert", ConfirmExpected(done_is_yes=False), NoMatch(Reason.NOT_AN_ANSWER_HERE)),
        ("ova nek", YES_OR_NO, NoMatch(Reason.NOT_AN_ANSWER_HERE)),
        ("ruk", RATE, Answer(Kind.COMMAND, Command.AGAIN)),
        ("pluv", YES_OR_NO, Answer(Kind.COMMAND, Command.GO_ON)),
        ("H\u00d8LT", TextExpected(), Answer(Kind.COMMAND, Command.STOP)),
        ("suk mi bitar", ANY, Answer(Kind.COMMAND, Command.HELP)),
        ("mmf", YES_OR_NO, NoMatch(Reason.EMPTY)),
        # Numbers.
        ("bem dak tiv telki pri jar", RATE, rate("23")),
        ("bem dak-tiv", RATE, rate("23", unit=False)),
        ("kaf bem pesk telki pri jar", DIGITS, rate("125", digits=True)),
        ("bem dak tiv telki pri jar", DIGITS, NoMatch(Reason.DIGITS_WANTED)),
        ("sep pik pesk pri jar", RATE, rate("7.5", digits=True)),
        ("nol pik pesk telki pri jar", RATE, rate("0.5", digits=True)),
        ("zi da dak telki pri jar", RATE, rate("10")),
        ("z'da dak telki pri jar", RATE, rate("10")),
        ("83.3 mL/h", RATE, rate("83.3", digits=True)),
        ("83.3 telki pri jar", ANY, rate("83.3", digits=True)),
        ("bem dak nek tiv dak telki pri jar", RATE, rate("30", corrected=True)),
        ("tiv mmf dak telki pri jar", RATE, rate("30", corrected=True)),
        ("bem dak og tiv dak", RATE, NoMatch(Reason.TWO_NUMBERS)),
        ("bem dak jari", RATE, NoMatch(Reason.WRONG_UNIT)),
        ("zi tempa bem dak", RATE, NoMatch(Reason.WRONG_UNIT)),
        ("bem dak telki", NumberExpected("mL", highest=Decimal(15)), NoMatch(Reason.OUT_OF_RANGE)),
        ("ova", RATE, NoMatch(Reason.NOT_AN_ANSWER_HERE)),
        ("dak dak", RATE, NoMatch(Reason.TWO_NUMBERS)),
        ("pik", RATE, NoMatch(Reason.NOT_A_NUMBER)),
        ("krumpel", RATE, NoMatch(Reason.UNKNOWN_WORDS)),
        # Names, choices, free words.
        ("Salva", NameExpected(("sal 2 %",)), Answer(Kind.NAME, "sal 2 %")),
        ("sal bem zentu", NameExpected(("sal 2 %",)), Answer(Kind.NAME, "sal 2 %")),
        ("bem telki", ChoiceExpected(("2 mL", "3 mL")), Answer(Kind.CHOICE, "2 mL")),
        ("dra wex zun", TextExpected(), Answer(Kind.TEXT, "dra wex zun")),
    ],
)
def test_words_are_understood(words: str, expect: Expect, meaning: Meaning) -> None:
    """Typed, every kind of answer and refusal; letters that English lacks are letters."""
    assert TINY.interpret(words, expect) == meaning


def test_figures_that_were_heard_are_no_digits_that_were_said() -> None:
    """What the words of a recogniser show does not depend on the language."""
    assert TINY.interpret("83.3 telki pri jar", RATE, heard=True) == rate("83.3")
    assert TINY.interpret("mok tiv pik tiv", RATE, heard=True) == rate("83.3", digits=True, unit=False)


def test_what_comes_near_is_never_taken() -> None:
    """One letter away from a phrase is nothing."""
    assert TINY.interpret("suk mo", YES_OR_NO) == NoMatch(Reason.UNKNOWN_WORDS)


@pytest.mark.parametrize("frame", [YES_OR_NO, RATE, NumberExpected("mL"), NameExpected(()), ANY], ids=str)
def test_english_means_nothing(frame: Expect) -> None:
    """No phrase, no number and no unit of English is understood, and none of this language by English."""
    for words in ENGLISH.phrases(frame):
        assert isinstance(TINY.interpret(words, frame), NoMatch), words
    for words in (*map(ENGLISH.say_number, map(Decimal, range(0, 1000, 7))), "7 hours", "7 millilitres per hour"):
        assert isinstance(TINY.interpret(words, frame), NoMatch), words
    for words in ("ova", "ruk", "salva", "dak", "bem dak tiv telki pri jar"):
        assert isinstance(ENGLISH.interpret(words, frame), NoMatch), words


def test_a_command_goes_by_no_english_name() -> None:
    """Not even the name that the program has for a command is understood where the language has no such words."""
    for command in Command:
        assert isinstance(TINY.interpret(command.value, YES_OR_NO), NoMatch)


@pytest.mark.parametrize(
    ("value", "said", "digits"),
    [
        ("0", "n\u00f8l", "n\u00f8l"),
        ("10", "dak", "kaf n\u00f8l"),
        ("23", "bem dak tiv", "bem tiv"),
        ("125", "kaf bem pesk", "kaf bem pesk"),
        ("83.3", "mok dak tiv pik tiv", "mok tiv pik tiv"),
        ("-5", "ned pesk", "ned pesk"),
    ],
)
def test_numbers_are_said(value: str, said: str, digits: str) -> None:
    """As a number and digit by digit."""
    assert TINY.say_number(Decimal(value)) == said
    assert TINY.say_digits(Decimal(value)) == digits


def test_every_number_that_is_said_is_understood_as_itself() -> None:
    """Up to 999, whole and with a decimal, as an amount and by its digits, and as it is shown."""
    for number in range(0, 10_000, 7):
        value = Decimal(number) / 10 if number % 2 else Decimal(number // 10)
        for words in (TINY.say_amount(value, "mL/h"), TINY.speech(f"{value} mL/h")):
            answer = TINY.interpret(words, RATE)
            assert isinstance(answer, Answer) and (answer.value, answer.unit_said) == (value, True), words
        assert TINY.interpret(TINY.say_digits(value), DIGITS) == rate(f"{value}", digits=True, unit=False)


def test_a_read_back_is_a_sentence_of_the_language() -> None:
    """With the number, its digits and its unit in words."""
    said = TINY.read_back(Decimal(50), "mL/h")
    assert said.startswith("<<number_read_back ")
    assert "pesk dak telki pri jar, pesk n\u00f8l" in said
    with pytest.raises(QuantityError):
        TINY.read_back(Decimal(50), "mg")


@pytest.mark.parametrize(
    ("text", "spoken"),
    [
        ("VTBI 950 mL", "volu lim pesk n\u00f8l telki"),
        ("1 mL", "kaf telk"),
        ("20-30", "bem dak ad tiv dak"),
        ("1:1000", "kaf en kaf n\u00f8l n\u00f8l n\u00f8l"),
        ("14:30", "dak vur jar tiv dak"),
        ("OH-101", "O H kaf n\u00f8l kaf"),
        ("10 mL/h = 10 %", "dak telki pri jar eg dak zentu"),
    ],
)
def test_texts_are_spoken(text: str, spoken: str) -> None:
    """No figure, unit or sign is left to the voice, and nothing becomes English."""
    assert TINY.speech(text) == spoken


def test_the_author_s_short_forms_are_spoken() -> None:
    """As in every language."""
    assert TINY.speech("KVO 5", {"KVO": "krum vol"}) == "krum vol pesk"


def test_a_number_that_sounds_like_another_is_asked_for_by_digits() -> None:
    """Which numbers do is the language's own: six and seven here, and not fifteen and fifty."""
    six, seven = Decimal(6), Decimal(7)
    assert TINY.wants_digits(six, "mL/h") and TINY.pair_to_offer(six) == (six, seven)
    assert TINY.possible(seven) == (seven, six)
    assert not TINY.wants_digits(Decimal(15), "mL/h") and ENGLISH.wants_digits(Decimal(15), "mL/h")
    assert not ENGLISH.wants_digits(six, "mL/h")
    assert TINY.wordings(Decimal(23)) == ("bem dak tiv", "bem tiv")


def test_a_recogniser_is_given_the_words_of_the_language() -> None:
    """Phrases, single words, how a sentence goes on, and sentences to try; no English word is among them."""
    assert TINY.phrases(YES_OR_NO) == ("ruk", "ruk da", "pluv", "h\u00f8lt", "suk mi", "ova", "ova da", "nek", "fert")
    words = set(TINY.vocabulary(RATE))
    assert {"n\u00f8l", "dak", "pik", "telki", "pri", "jar", "bitar", "ova"} <= words
    assert not words & set(ENGLISH.vocabulary(RATE))
    ahead = TINY.continuations(RATE, ("bem", "dak"))
    assert ahead.complete and {"tiv", "pik", "telki", "bitar"} <= ahead.words <= words
    for sentence, meaning in TINY.sample_sentences(RATE, seed=1, count=50):
        assert TINY.interpret(sentence, RATE, heard=True) == meaning
        assert set(sentence.split()) <= words
    assert dict(TINY.number_sentences(RATE, iter([Decimal(23)]))) == {
        f"{way}{unit}": Decimal(23) for way in ("bem dak tiv", "bem tiv") for unit in ("", " telki pri jar")
    }


def test_a_silence_is_judged_by_the_words_of_the_language() -> None:
    """A number is finished with its unit, "ruk" may go on as "ruk da"."""
    assert TINY.completeness("bem dak", RATE) is Completeness.OPEN
    assert TINY.completeness("bem dak telki pri jar", RATE) is Completeness.FINISHED
    assert TINY.completeness("nek", YES_OR_NO) is Completeness.FINISHED
    assert TINY.completeness("yes", YES_OR_NO) is Completeness.OPEN


def test_what_is_expected_is_written_with_the_units_of_the_language() -> None:
    """The frames are the program's own words; a unit is written by its name or said."""
    assert TINY.parse_expect("number telki pri jar") == RATE == TINY.parse_expect("number mL/h")
    with pytest.raises(UsageError):
        TINY.parse_expect("number mg")


@pytest.mark.parametrize("words", ["sentences", "report"])
def test_every_sentence_is_marked(words: str) -> None:
    """Each attribute and what each method gives, under its own name, so that a sentence past the language shows."""
    own, english = getattr(TINY, words), getattr(ENGLISH, words)
    names = [name for name in dir(own) if not name.startswith("_")]
    assert len(names) > 80
    for name in names:
        text = getattr(own, name)
        if isinstance(text, str) and name not in ("CODE", "REGION", "PAGE_OF_PAGES"):
            assert text == f"<<{name} {getattr(english, name)}>>"
        if isinstance(text, dict):
            assert text == {key: f"<<{name} {value}>>" for key, value in getattr(english, name).items()}
    assert len([name for name in names if inspect.ismethod(getattr(own, name))]) > 20


def test_what_a_method_gives_is_marked() -> None:
    """Whatever stands in it."""
    assert TINY.sentences.wait_left(1) == f"<<wait_left {ENGLISH.sentences.wait_left(1)}>>"
    assert TINY.sentences.refusal(Reason.EMPTY) == "<<refusal I heard nothing I can use.>>"
    assert marked(ENGLISH.sentences).PAUSED == TINY.sentences.PAUSED


@pytest.mark.parametrize(
    ("text", "outside"),
    [
        ("", ""),
        ("plain", "plain"),
        ("<<ONE Words.>>", ""),
        ("a <<ONE Words.>> b <<two x>> c", "a  b  c"),
        ("<<one x <<TWO y>> z>> left", " left"),
    ],
)
def test_what_stands_outside_the_marks(text: str, outside: str) -> None:
    """Marks may stand in marks."""
    assert unmarked(text) == outside


def test_a_voice_speaks_marks_as_they_stand() -> None:
    """What becomes of a sentence on its way to the voice leaves its mark whole."""
    said = TINY.speech(TINY.sentences.step_line(1, 5, "dra wex", critical=True))
    assert said.startswith("<<step_line ") and said.endswith(">>") and unmarked(said) == ""


def test_the_folder_alone_makes_the_language() -> None:
    """Understanding and speaking work with the modules of English wiped out; only the marked sentences need them."""
    script = (
        "import sys\n"
        "from tests.spoken.tiny import TINY\n"
        "from assistant.spoken.expect import NumberExpected\n"
        "for name in [n for n in sys.modules if n.startswith('assistant.spoken.english')]:\n"
        "    vars(sys.modules[name]).clear()\n"
        "print(TINY.interpret('bem dak tiv telki pri jar', NumberExpected('mL/h')).value)\n"
        "print(TINY.speech('23 mL/h'))\n"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines() == ["23", "bem dak tiv telki pri jar"]
