"""What holds for all words: nothing is spotted, nothing is guessed, nothing breaks."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.spoken import (
    continuations,
    interpret,
    number_sentences,
    phrases,
    read_back,
    sample_sentences,
    say_digits,
    say_number,
    speech,
    vocabulary,
    wordings,
)
from assistant.spoken.english.numbers import ONES, POINT
from assistant.spoken.expect import (
    AnyExpected,
    ConfirmExpected,
    Expect,
    NameExpected,
    NumberExpected,
    TextExpected,
)
from assistant.spoken.meaning import Ambiguous, Answer, Kind, NoMatch, Reason

from .parts import several, tokens_of

RATE = NumberExpected("mL/h")
DIGITS = NumberExpected("mL/h", digits_only=True)
NAMES = NameExpected(("0.9 % sodium chloride", "cefazolin"))
FRAMES: tuple[Expect, ...] = (
    ConfirmExpected(),
    ConfirmExpected(done_is_yes=False),
    RATE,
    DIGITS,
    NumberExpected("min"),
    NAMES,
    TextExpected(),
    AnyExpected(),
)
frames = st.sampled_from(FRAMES)
values = st.one_of(st.integers(0, 9999).map(Decimal), st.integers(0, 99_999).map(lambda n: Decimal(n) / 100))
WORDS = tuple(dict.fromkeys(word for frame in FRAMES for word in vocabulary(frame)))
FOREIGN = ("not", "about", "maybe", "think", "bed", "patient", "nurse", "never", "almost", "[unk]", "under")
quick = settings(max_examples=60, deadline=None)


@quick
@given(st.text(max_size=450), frames, st.booleans())
def test_any_text_has_a_meaning_or_a_reason(words: str, frame: Expect, heard: bool) -> None:
    """No text breaks anything, however strange; what is too long is refused for that."""
    meaning = interpret(words, frame, heard=heard)
    assert isinstance(meaning, Answer | Ambiguous | NoMatch)
    too_long = meaning == NoMatch(Reason.TOO_LONG)
    assert too_long == (len(words) > 400) or (too_long and len(tokens_of(words)) > 60)


@quick
@given(st.lists(st.sampled_from(WORDS), min_size=1, max_size=8), frames)
def test_known_words_in_any_order_have_a_meaning_or_a_reason(words: list[str], frame: Expect) -> None:
    """A number is finite and in range, two readings are two, and a kind comes only where it is expected."""
    meaning = interpret(" ".join(words), frame)
    match meaning:
        case Answer(kind=Kind.NUMBER, value=Decimal() as value, unit=str(unit)):
            assert isinstance(frame, NumberExpected | AnyExpected)
            assert value.is_finite() and value >= 0
            if isinstance(frame, NumberExpected) and unit == frame.unit:
                assert frame.lowest <= value <= frame.highest
            assert read_back(value, unit)
        case Answer(kind=Kind.CONFIRM | Kind.DONE):
            assert isinstance(frame, ConfirmExpected | AnyExpected)
        case Answer(kind=Kind.NAME):
            assert isinstance(frame, NameExpected)
        case Ambiguous(readings=readings):
            assert len(set(readings)) == len(readings) > 1


@quick
@given(values, st.sampled_from(FOREIGN), st.data())
def test_a_number_is_never_spotted_inside_other_words(value: Decimal, foreign: str, data: st.DataObject) -> None:
    """One word that does not belong there, anywhere, and the whole utterance is refused."""
    words = data.draw(st.sampled_from(wordings(value))).split()
    words.insert(data.draw(st.integers(0, len(words))), foreign)
    for frame in (RATE, DIGITS, AnyExpected()):
        assert isinstance(interpret(" ".join(words), frame), NoMatch)


@quick
@given(st.sampled_from(phrases(AnyExpected())), st.sampled_from(FOREIGN), st.booleans())
def test_a_phrase_is_never_spotted_inside_other_words(phrase: str, foreign: str, before: bool) -> None:
    """A foreign word before or after a command or confirmation never leaves it as it was."""
    words = f"{foreign} {phrase}" if before else f"{phrase} {foreign}"
    meant = interpret(phrase, AnyExpected())
    meaning = interpret(words, AnyExpected())
    assert isinstance(meaning, NoMatch) or (meaning != meant and words in phrases(AnyExpected()))


@quick
@given(values, st.data())
def test_every_wording_means_its_number_whatever_surrounds_it(value: Decimal, data: st.DataObject) -> None:
    """Case, punctuation, courtesies and the unit change nothing."""
    words = data.draw(st.sampled_from(wordings(value)))
    unit = data.draw(st.sampled_from(("", " millilitres per hour", " mils an hour", " mL/h")))
    before = data.draw(st.sampled_from(("", "um ", "Please ", "it is ", "It's ")))
    after = data.draw(st.sampled_from(("", ".", "!", ", please.", " thank you", " um")))
    shape = data.draw(st.sampled_from((str.lower, str.upper, str.capitalize)))
    meaning = interpret(shape(before + words + unit + after), NumberExpected("mL/h", highest=Decimal(99_999)))
    assert isinstance(meaning, Answer)
    assert (meaning.value, meaning.unit, meaning.unit_said) == (value, "mL/h", bool(unit))


@quick
@given(st.lists(st.sampled_from(WORDS), min_size=1, max_size=6))
def test_only_digits_are_taken_where_digits_are_wanted(words: list[str]) -> None:
    """Whatever is taken there names every digit by itself, and gives the digits that were said."""
    meaning = interpret(" ".join(words), DIGITS)
    if isinstance(meaning, Answer) and meaning.kind is Kind.NUMBER and not meaning.corrected:
        assert meaning.digit_by_digit
        digit_words = {*ONES, "oh", "nought", "niner", "double", "triple", POINT, "decimal", "dot"}
        number = [word for word in words if word in digit_words]
        assert number, words
        assert not {"ten", "thirteen", "fifty", "hundred", "half", "a"} & set(words) or meaning.unit_said


@quick
@given(values, values)
def test_two_numbers_are_never_one_of_them(one: Decimal, other: Decimal) -> None:
    """Two numbers one after the other are refused, asked about, or read as one number of all their words."""
    words = f"{say_number(one)} {say_number(other)}"
    meaning = interpret(words, NumberExpected("mL/h", highest=Decimal(10**9)))
    if isinstance(meaning, Answer) and one and other:
        # "one point five" and "ten" may be 1.510: zeros at the end do not tell.
        ends = [f"{number:f}".replace(".", "").rstrip("0") for number in (meaning.value, other)]
        assert meaning.value not in (one, other)
        assert ends[0].endswith(ends[1])


@quick
@given(st.integers(0, 99_999).map(lambda n: Decimal(n) / 100), st.integers(0, 3))
def test_figures_are_read_exactly(value: Decimal, zeros: int) -> None:
    """A number in figures is that number, with or without a thousands comma; or it is asked about."""
    frame = NumberExpected("mL/h", highest=Decimal(10**7))
    for text in (f"{value:f}", f"{value:,f}", f"{value:f} mL/h", f"{value:f}ml/hr."):
        meaning = interpret(text, frame)
        if isinstance(meaning, Ambiguous):
            assert value in meaning.readings
        else:
            assert isinstance(meaning, Answer) and meaning.value == value
            assert meaning.digit_by_digit


@quick
@given(st.lists(st.integers(0, 9), min_size=1, max_size=4), st.lists(st.integers(0, 9), max_size=3))
def test_digits_are_read_in_their_order(whole: list[int], fraction: list[int]) -> None:
    """Digits one by one give exactly these digits; a zero in front is asked about."""
    words = " ".join(ONES[d] for d in whole)
    text = "".join(map(str, whole))
    if fraction:
        words += f" {POINT} " + " ".join(ONES[d] for d in fraction)
        text += "." + "".join(map(str, fraction))
    meaning = interpret(words, DIGITS)
    if Decimal(text) > DIGITS.highest:
        assert meaning == NoMatch(Reason.OUT_OF_RANGE)
    elif len(whole) > 1 and whole[0] == 0:
        assert not isinstance(meaning, Answer) or not any(whole)
    else:
        assert isinstance(meaning, Answer) and meaning.value == Decimal(text)


@quick
@given(values, values)
def test_a_corrected_number_is_the_last_and_wants_digits(slip: Decimal, meant: Decimal) -> None:
    """ "one fifty, no, one fifteen" is 115, marked; never the first one, and never unmarked."""
    frame = NumberExpected("mL/h", highest=Decimal(99_999))
    for word in ("no", "sorry", "I mean"):
        meaning = interpret(f"{say_number(slip)}, {word}, {say_number(meant)}", frame)
        assert isinstance(meaning, Answer)
        assert meaning.value == meant and meaning.corrected


@pytest.mark.parametrize("frame", [f for f in FRAMES if not isinstance(f, TextExpected)], ids=str)
def test_sampled_sentences_mean_what_they_are_said_to_mean(frame: Expect) -> None:
    """The sampler gives the same sentences for the same seed, each with its meaning, and none is refused."""
    sampled = sample_sentences(frame, seed=7, count=60)
    assert sampled == sample_sentences(frame, seed=7, count=60)
    assert sampled != sample_sentences(frame, seed=8, count=60)
    for sentence, meaning in sampled:
        assert not isinstance(meaning, NoMatch)
        assert interpret(sentence, frame, heard=True) == meaning


@pytest.mark.parametrize("frame", [ConfirmExpected(), RATE, DIGITS, NAMES, AnyExpected()], ids=str)
def test_the_automaton_allows_every_sampled_sentence(frame: Expect) -> None:
    """Word by word, each next word of a sentence is among those that may come; at the end it may end."""
    for sentence, _ in sample_sentences(frame, seed=3, count=60):
        words = tuple(sentence.split())
        for at, word in enumerate(words):
            assert word in continuations(frame, words[:at]).words, (sentence, word)
        assert continuations(frame, words).complete, sentence


@pytest.mark.parametrize(
    ("frame", "said"),
    [
        (ConfirmExpected(), "yes please"),
        (ConfirmExpected(), "again please"),
        (ConfirmExpected(), "no thank you"),
        (ConfirmExpected(), "no thanks"),
        (RATE, "one twenty five millilitres per hour please"),
        (AnyExpected(), "stop please"),
    ],
)
def test_the_automaton_allows_a_courtesy_behind_a_sentence(frame: Expect, said: str) -> None:
    """ "Again, please" is heard as "again"; a courtesy is no sentence by itself, and half of one is no end."""
    words = tuple(said.split())
    for at, word in enumerate(words):
        assert word in continuations(frame, words[:at]).words, (said, word)
    assert continuations(frame, words).complete
    assert not isinstance(interpret(said, frame, heard=True), NoMatch)
    assert not continuations(frame, ("please",)).words
    assert not continuations(frame, ("thank",)).complete
    assert not continuations(ConfirmExpected(), ("yes", "thank")).complete


def test_the_automaton_says_nothing_after_what_cannot_be_said() -> None:
    """No word leads on from words that no sentence begins with."""
    after = continuations(RATE, ("bananas",))
    assert after.words == frozenset() and not after.complete


def test_the_automaton_allows_only_known_words() -> None:
    """What may come next is in the vocabulary."""
    known = set(vocabulary(RATE))
    for sentence, _ in sample_sentences(RATE, seed=11, count=30):
        words = tuple(sentence.split())
        for at in range(len(words) + 1):
            assert continuations(RATE, words[:at]).words <= known


def test_number_sentences_cover_their_numbers() -> None:
    """Each number has sentences with and without its unit, and each means that number."""
    wanted = [Decimal(n) for n in (5, 15, 50, 105, 125, 980)]
    said: dict[Decimal, list[str]] = {}
    for sentence, value in number_sentences(RATE, iter(wanted)):
        meaning = interpret(sentence, RATE, heard=True)
        assert isinstance(meaning, Answer) and meaning.value == value
        said.setdefault(value, []).append(sentence)
    assert list(said) == wanted
    assert all(any(s.endswith("per hour") for s in said[v]) for v in wanted)
    digits = {value: sentence for sentence, value in number_sentences(DIGITS, iter(wanted))}
    assert digits[Decimal(125)].startswith("one two five")


@quick
@given(st.text(max_size=200))
def test_any_text_can_be_spoken(text: str) -> None:
    """No text breaks the turning into speech, and no figure is left in it."""
    spoken = speech(text)
    assert not any(c in "0123456789" for c in spoken)


@quick
@given(values)
def test_what_is_said_has_no_figures_and_one_space_between_words(value: Decimal) -> None:
    """Words only, so that a voice has nothing to guess."""
    for said in (say_number(value), say_digits(value), read_back(value, "mL/h")):
        assert " ".join(said.split()) == said
        assert not any(c.isdigit() for c in said)


def test_many_amounts_in_a_row_are_seen_quickly() -> None:
    """The longest utterance that is looked at is still only looked at once."""
    assert several(("five", "ten") * 30)
