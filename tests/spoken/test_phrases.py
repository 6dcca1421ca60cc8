"""The one table of phrases: nothing in it clashes."""

from decimal import Decimal
from itertools import product

import pytest

from assistant.errors import UsageError
from assistant.spoken import interpret, parse_expect, phrases, read_back, vocabulary
from assistant.spoken.english.carriers import CARRIERS, CORRECTIONS
from assistant.spoken.english.command_phrases import COMMANDS
from assistant.spoken.english.phrases import DONE, NO, YES
from assistant.spoken.english.sentences import Sentences
from assistant.spoken.english.writing import COURTESIES, HESITATIONS
from assistant.spoken.expect import (
    AnyExpected,
    ConfirmExpected,
    Expect,
    NameExpected,
    NumberExpected,
    TextExpected,
)
from assistant.spoken.meaning import Answer, Command, Kind, Meaning, NoMatch, Reason

from .parts import readings, tokens_of

FRAMES: tuple[Expect, ...] = (
    ConfirmExpected(),
    ConfirmExpected(done_is_yes=False),
    NumberExpected("mL/h"),
    NumberExpected("mL/h", digits_only=True),
    NumberExpected("min"),
    NameExpected(("0.9 % sodium chloride", "cefazolin")),
    TextExpected(),
    AnyExpected(),
)
ALL_COMMANDS = [(command, phrase) for command, known in COMMANDS.items() for phrase in known]
CONFIRMATIONS = [(label, p) for label, known in (("yes", YES), ("no", NO), ("done", DONE)) for p in known]


def test_every_command_has_several_ways_to_say_it() -> None:
    """No learner must remember one exact wording."""
    assert set(COMMANDS) == set(Command)
    assert all(len(known) >= 4 for known in COMMANDS.values())


@pytest.mark.parametrize("command", list(Command))
def test_the_name_of_a_command_is_a_way_to_say_it(command: Command) -> None:
    """What the assistant calls a command works when it is said or typed."""
    for frame in FRAMES:
        assert interpret(command.value, frame) == Answer(Kind.COMMAND, command)


@pytest.mark.parametrize("frame", FRAMES, ids=str)
def test_every_phrase_of_a_command_is_that_command_in_every_frame(frame: Expect) -> None:
    """Commands are legal always and mean the same everywhere."""
    for command, phrase in ALL_COMMANDS:
        assert interpret(phrase, frame) == Answer(Kind.COMMAND, command), phrase


def test_no_phrase_stands_twice() -> None:
    """No phrase means two things."""
    said = [phrase for _, phrase in ALL_COMMANDS] + [phrase for _, phrase in CONFIRMATIONS]
    assert len(said) == len(set(said))


def test_phrases_are_written_as_they_are_compared() -> None:
    """Small letters, short forms written out: otherwise a phrase could never match."""
    rest = [*CARRIERS, *CORRECTIONS, *COURTESIES, *HESITATIONS]
    for phrase in [p for _, p in ALL_COMMANDS] + [p for _, p in CONFIRMATIONS] + rest:
        assert " ".join(tokens_of(phrase)) == phrase


def test_no_confirmation_makes_a_command() -> None:
    """Two confirmations in a row never read as a command, nor a confirmation with a courtesy."""
    commands = {phrase for _, phrase in ALL_COMMANDS}
    said = [phrase for _, phrase in CONFIRMATIONS]
    assert not commands & {f"{a} {b}" for a, b in product(said, said)}
    assert not commands & {f"{a} {b}" for a, b in product(said, COURTESIES)}
    assert not commands & {f"{b} {a}" for a, b in product(said, COURTESIES)}


def test_no_two_confirmations_contradict_what_they_say_together() -> None:
    """No phrase of one kind can be read as phrases of the other kind ("not done" is no "done")."""
    label_of = {phrase: label for label, phrase in CONFIRMATIONS}
    for a, b in product(label_of, label_of):
        together = label_of.get(f"{a} {b}")
        if together is not None and {label_of[a], label_of[b]} <= {"yes", "done"}:
            assert together in ("yes", "done"), f"{a} + {b}"
        if together is not None and {label_of[a], label_of[b]} == {"no"}:
            assert together == "no", f"{a} + {b}"


def test_no_phrase_is_a_number() -> None:
    """Nothing that confirms or commands can be taken for a number."""
    for _, phrase in ALL_COMMANDS + CONFIRMATIONS:
        assert readings(tuple(phrase.split())) == ()


@pytest.mark.parametrize(("label", "phrase"), CONFIRMATIONS)
def test_a_confirmation_means_what_its_table_says(label: str, phrase: str) -> None:
    """Yes and no hold everywhere; done is no answer to a question."""
    wanted: Meaning = Answer(Kind.DONE, "done") if label == "done" else Answer(Kind.CONFIRM, label)
    assert interpret(phrase, ConfirmExpected()) == wanted
    assert interpret(phrase, AnyExpected()) == wanted
    asked = interpret(phrase, ConfirmExpected(done_is_yes=False))
    assert asked == (NoMatch(Reason.NOT_AN_ANSWER_HERE) if label == "done" else wanted)
    number = interpret(phrase, NumberExpected("mL/h"))
    assert number == NoMatch(Reason.NOT_AN_ANSWER_HERE)


def test_what_the_assistant_offers_can_be_said() -> None:
    """Each command that the help sentence names is one."""
    offered = Sentences.WHAT_CAN_BE_SAID.split(":")[1].split(".")[0].replace(" or ", " ").split(",")
    assert len(offered) > 5
    for phrase in offered:
        meaning = interpret(phrase, ConfirmExpected())
        assert isinstance(meaning, Answer) and meaning.kind is Kind.COMMAND, phrase


@pytest.mark.parametrize("frame", FRAMES, ids=str)
def test_every_listed_phrase_is_understood(frame: Expect) -> None:
    """What a recogniser is told to listen for is understood, or is a confirmation where none is wanted.

    Where anything may come, near-misses of a yes are among it; they are there to be refused.
    """
    refused = {Reason.NOT_AN_ANSWER_HERE, *([Reason.UNKNOWN_WORDS] if isinstance(frame, AnyExpected) else [])}
    for phrase in phrases(frame):
        meaning = interpret(phrase, frame)
        assert not isinstance(meaning, NoMatch) or meaning.reason in refused, phrase


@pytest.mark.parametrize("frame", FRAMES, ids=str)
def test_the_vocabulary_holds_every_word_of_every_phrase(frame: Expect) -> None:
    """Words in small letters, each once; those of numbers and units only where numbers are expected."""
    words = vocabulary(frame)
    assert len(words) == len(set(words))
    assert all(word == word.lower() and " " not in word for word in words)
    assert {word for phrase in phrases(frame) for word in phrase.split()} <= set(words)
    numbers = {"zero", "oh", "thirteen", "ninety", "hundred", "point", "double", "half"}
    if isinstance(frame, NumberExpected | AnyExpected):
        assert numbers <= set(words)
    elif not isinstance(frame, NameExpected):
        assert not numbers & set(words)


def test_the_vocabulary_knows_no_right_answer() -> None:
    """The same words are listened for whichever number or name is the right one."""
    assert phrases(NameExpected(("cefazolin",))) == phrases(NameExpected(("ceftriaxone",)))
    assert set(vocabulary(NumberExpected("mL/h"))) == set(vocabulary(NumberExpected("mL/h", digits_only=True)))


def test_sound_alikes_are_not_listened_for() -> None:
    """Nobody says "ate" for a number: a recogniser that may write it would write it for eight."""
    assert not {"ate", "won", "fore"} & set(vocabulary(NumberExpected("mL/h")))


@pytest.mark.parametrize("word", ["not confirmed", "unconfirmed", "never stop", "incorrectly", "yes sir no sir"])
def test_near_is_not_enough(word: str) -> None:
    """ "not confirmed" is 95 % like "confirmed" and is no yes."""
    meaning = interpret(word, ConfirmExpected())
    assert isinstance(meaning, NoMatch)


@pytest.mark.parametrize("value", ["15", "75", "83.3", "125", "980"])
def test_the_assistant_does_not_answer_itself(value: str) -> None:
    """A read-back that the microphone catches, or its first half, is neither a number nor a yes."""
    said = read_back(Decimal(value), "mL/h")
    for heard in (said, said.removesuffix(" Is that right?"), "Is that right?", "that right"):
        for frame in (ConfirmExpected(), NumberExpected("mL/h"), AnyExpected()):
            assert isinstance(interpret(heard, frame, heard=True), NoMatch), heard


def test_no_sentence_of_the_assistant_confirms_anything() -> None:
    """None of its fixed sentences, whole or one by one, is a yes, a no, a done or a number."""
    fixed = [value for name, value in vars(Sentences).items() if name.isupper() and isinstance(value, str)]
    for text in [*fixed, *map(Sentences().refusal, Reason)]:
        for sentence in [text, *text.split(". ")]:
            meaning = interpret(sentence, AnyExpected(), heard=True)
            assert not isinstance(meaning, Answer) or meaning.kind is Kind.COMMAND, sentence


@pytest.mark.parametrize(
    ("text", "expect"),
    [
        ("confirm", ConfirmExpected()),
        (" Confirm ", ConfirmExpected()),
        ("any", AnyExpected()),
        ("text", TextExpected()),
        ("number mL/h", NumberExpected("mL/h")),
        ("number ml/hr", NumberExpected("mL/h")),
        ("number millilitres per hour", NumberExpected("mL/h")),
        ("number  mL", NumberExpected("mL")),
        ("number gtt/min", NumberExpected("gtt/min")),
        ("number mcg/kg/min", NumberExpected("mcg/kg/min")),
        ("number %", NumberExpected("%")),
        ("digits mg", NumberExpected("mg", digits_only=True)),
    ],
)
def test_reads_what_is_expected(text: str, expect: Expect) -> None:
    """What is written on a command line; units however people write them."""
    assert parse_expect(text) == expect


@pytest.mark.parametrize(
    "text", ["", "number", "numbers mL", "number xyz", "confirm please", "\x00", "number 5 mL", "time"]
)
def test_refuses_what_cannot_be_expected(text: str) -> None:
    """One sentence with what to write instead."""
    with pytest.raises(UsageError, match="Use"):
        parse_expect(text)
