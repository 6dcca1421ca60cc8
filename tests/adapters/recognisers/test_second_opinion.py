"""Two recognisers as one: the rule as a table, what becomes of a second one that fails, and both on real sound."""

import threading
import time
from dataclasses import replace
from functools import partial

import pytest

from assistant import spoken
from assistant.adapters.recognisers import second_opinion
from assistant.adapters.recognisers.replay import hear_sound
from assistant.adapters.recognition import Recognition
from assistant.guide.read_back import digits_follow
from assistant.ports import Alternative, Hearing
from assistant.spoken import ENGLISH
from assistant.spoken.expect import AnyExpected, ConfirmExpected, NumberExpected, TextExpected
from assistant.spoken.meaning import Answer
from assistant.spoken.statement import Asked, Want
from tests.adapters.recognisers.test_vosk import korean_model
from tests.speakers import spoken as speak

SecondOpinion = partial(second_opinion.SecondOpinion, language=ENGLISH)
combined = partial(second_opinion.combined, language=ENGLISH)

RATE, DIGITS = NumberExpected("mL/h"), NumberExpected("mL/h", digits_only=True)
AT_A_LINE = ConfirmExpected(asked=Asked("Close the roller clamp.", Want.DONE))
STANDS, ASKED, REFUSED = "stands", "asked", "refused"


def hearing(words, *others, doubtful=False):
    """What a recogniser gives; a star before the words: likeliest, but not stood for."""
    bare = words.removeprefix("*")
    alternatives = tuple(Alternative(wording, 0.5) for wording in (bare, *others) if wording)
    return Hearing("" if words.startswith("*") else words, alternatives, 1.0, 0.1, doubtful)


@pytest.mark.parametrize(
    ("expect", "first", "second", "outcome"),
    [
        # Alike, in whatever words: a number is compared by what it means.
        (RATE, "125", "one hundred and twenty five", STANDS),
        (RATE, "one twenty five", "one two five millilitres per hour", STANDS),
        (RATE, "83.3", "eighty three point three", STANDS),
        # Another number, or another unit: never the other's, never the surer's.
        (RATE, "125", "one twenty nine", ASKED),
        (RATE, "83.3", "eight hundred and thirty three", ASKED),
        (RATE, "fifty", "fifteen", ASKED),
        (AnyExpected(), "fifty millilitres", "fifty milligrams", ASKED),
        # Only one has heard a number.
        (RATE, "125", "", ASKED),
        (RATE, "125", "*one twenty five", ASKED),
        (RATE, "125", "yes", ASKED),
        (RATE, "125", "again", ASKED),
        (RATE, "125", "the weather is nice", ASKED),
        # One of two meanings is no opinion: "twelve fifty" is 1,250 or 12.50.
        (RATE, "1250", "twelve fifty", ASKED),
        # What the first one leads in: everything that is no number.
        (RATE, "again", "one hundred", STANDS),
        (RATE, "stop", "", STANDS),
        # A positive counts where both hear one; a clear other answer of the second refuses it.
        (ConfirmExpected(), "yes", "correct", STANDS),
        (ConfirmExpected(), "yes", "no", REFUSED),
        (ConfirmExpected(), "yes", "", REFUSED),
        (AT_A_LINE, "closed", "done", STANDS),
        (AT_A_LINE, "closed", "", ASKED),
        (AT_A_LINE, "closed", "not yet", REFUSED),
        (AT_A_LINE, "closed", "is it closed", REFUSED),
        (ConfirmExpected(), "no", "yes", STANDS),
        (AT_A_LINE, "", "closed", REFUSED),
        (TextExpected(), "the clamp was stuck", "one hundred", STANDS),
        # What the first one does not stand for.
        (RATE, "*125", "one twenty five", ASKED),
        (RATE, "*125", "one twenty nine", REFUSED),
        (RATE, "*125", "", REFUSED),
        (RATE, "", "one twenty five", REFUSED),
        (RATE, "*again", "one twenty five", REFUSED),
        (RATE, "*125", "again", REFUSED),
        # Digits that were asked for.
        (DIGITS, "one two five", "one two five", STANDS),
        (DIGITS, "one two five", "one two nine", REFUSED),
        (DIGITS, "one two five", "", REFUSED),
        (DIGITS, "one two five", "one twenty five", REFUSED),
        (DIGITS, "*one two five", "one two five", REFUSED),
        (DIGITS, "", "one two five", REFUSED),
        (DIGITS, "again", "one two five", STANDS),
    ],
)
def test_the_rule(expect, first, second, outcome):
    """A number or a yes goes on only where both hear it alike; no other number than the first one's ever comes out."""
    heard = combined(hearing(first), hearing(second), expect)
    if outcome == REFUSED:
        assert heard.words == ""
    else:
        assert heard.words == first.removeprefix("*")
    assert heard.doubtful is (outcome == ASKED)


@pytest.mark.parametrize(
    ("first_doubts", "second_doubts", "outcome"), [(True, False, ASKED), (False, True, ASKED), (True, True, ASKED)]
)
def test_a_doubt_of_either_stays(first_doubts, second_doubts, outcome):
    """Where one of them holds another number for possible, the digits are asked for."""
    heard = combined(hearing("125", doubtful=first_doubts), hearing("125", doubtful=second_doubts), RATE)
    assert (heard.words, heard.doubtful) == ("125", outcome == ASKED)
    assert combined(hearing("one two five"), hearing("one two five", doubtful=True), DIGITS).words == ""


def test_a_number_that_is_held_back_is_asked_for_by_the_guide():
    """The guide's own rule: 125 has no neighbour that sounds nearly the same, so only the second opinion asks."""
    meaning = spoken.interpret("125", RATE, heard=True)
    alike = combined(hearing("125"), hearing("125"), RATE)
    apart = combined(hearing("125"), hearing("129"), RATE)
    assert not digits_follow(meaning, ENGLISH, doubtful=alike.doubtful)
    assert digits_follow(meaning, ENGLISH, doubtful=apart.doubtful)


def test_what_the_first_tells_apart_stays_so_where_both_hear_it():
    """Where the second hears another number, the doubt asks for the digits."""
    sure = replace(hearing("fifteen"), told_apart=True)
    meaning = spoken.interpret("fifteen", RATE, heard=True)
    for second, asks in (("fifteen", False), ("fifty", True), ("", True)):
        both = combined(sure, hearing(second), RATE)
        assert digits_follow(meaning, ENGLISH, doubtful=both.doubtful, told_apart=both.told_apart) is asks


def test_what_each_has_heard_is_told():
    """The first one's wordings come first, the second one's after them, none twice."""
    heard = combined(hearing("125", "129"), hearing("129", "one twenty five"), RATE)
    assert [one.words for one in heard.alternatives] == ["125", "129", "one twenty five"]


class Scripted:
    """Says what it was told to say; may be slow, hang until told, or fail somewhere."""

    def __init__(self, name, words="", fails_in="", waits_for=None):
        self.name = name
        self.model_digest = name.encode().hex()
        self.words = words
        self.fails_in = fails_in
        self.waits_for = waits_for
        self.fed = []
        self.is_closed = False
        self.given_up = threading.Event()

    def begin(self, expect):
        self.fed.append(b"")
        self._may_fail("begin")
        return self

    def feed(self, block):
        self._may_fail("feed")
        self.fed[-1] += block

    def finish(self):
        if self.waits_for is not None:
            self.waits_for.wait(10)
        self._may_fail("finish")
        return hearing(self.words)

    def give_up(self):
        self.given_up.set()

    def close(self):
        self.is_closed = True

    def _may_fail(self, place):
        if self.fails_in == place:
            raise RuntimeError("a native library has failed")


def hear(pair, *blocks, expect=RATE):
    utterance = pair.begin(expect)
    for block in blocks:
        utterance.feed(block)
    return utterance.finish()


def test_both_hear_the_same_sound():
    """Each gets every block, in order, and the pair bears both names and both digests."""
    first, second = Scripted("one", "125"), Scripted("two", "one twenty five")
    pair = SecondOpinion(first, second)
    for _ in range(2):
        heard = hear(pair, b"a", b"bc", b"d")
        assert (heard.words, heard.doubtful) == ("125", False)
    assert first.fed == second.fed == [b"abcd", b"abcd"]
    assert (pair.name, pair.model_digest) == ("one and two", f"{first.model_digest} {second.model_digest}")
    pair.close()
    assert first.is_closed
    assert second.is_closed


@pytest.mark.parametrize("place", ["begin", "feed", "finish"])
def test_a_second_one_that_fails_has_no_opinion(place):
    """The first one is then on its own, and asks the other again at the next utterance."""
    second = Scripted("two", "129", fails_in=place)
    pair = SecondOpinion(Scripted("one", "125"), second)
    assert not hear(pair, b"a", b"b").doubtful
    second.fails_in = ""
    assert hear(pair, b"a", b"b").doubtful
    pair.close()


@pytest.mark.parametrize("place", ["begin", "feed", "finish"])
def test_a_first_one_that_fails_is_told(place):
    """Without the one that leads nothing is heard: whoever asked is told why."""
    pair = SecondOpinion(Scripted("one", "125", fails_in=place), Scripted("two", "125"))
    with pytest.raises(RuntimeError, match="native"):
        hear(pair, b"a")
    pair.close()


def test_a_second_one_that_is_late_has_no_opinion():
    """It is not waited for, and told that nobody wants it any more."""
    go = threading.Event()
    second = Scripted("two", "129", waits_for=go)
    pair = SecondOpinion(Scripted("one", "125"), second, limit_s=0.05)
    assert not hear(pair, b"a").doubtful
    assert second.given_up.wait(10)
    go.set()
    pair.close()


def test_a_command_waits_for_nobody():
    """The second one is waited for only where its opinion counts."""
    go = threading.Event()
    pair = SecondOpinion(Scripted("one", "again"), Scripted("two", "125", waits_for=go), limit_s=60)
    assert hear(pair, b"a").words == "again"
    go.set()
    pair.close()


def test_an_utterance_given_up_waits_for_nobody():
    """Whoever waits for the second opinion is let go."""
    go = threading.Event()
    first = Scripted("one", "125")
    pair = SecondOpinion(first, Scripted("two", "125", waits_for=go), limit_s=60)
    utterance = pair.begin(RATE)
    done = threading.Thread(target=utterance.finish)
    done.start()
    utterance.give_up()
    done.join(10)
    assert not done.is_alive()
    assert first.given_up.is_set()
    go.set()
    pair.close()


def test_an_earlier_utterance_takes_nothing_of_a_later_one():
    """The second one hears one utterance at a time: the earlier one is without an opinion then."""
    second = Scripted("two", "129")
    pair = SecondOpinion(Scripted("one", "125"), second)
    earlier = pair.begin(RATE)
    later = pair.begin(RATE)
    earlier.feed(b"a")
    later.feed(b"b")
    assert not earlier.finish().doubtful
    assert later.finish().doubtful
    assert second.fed == [b"", b"b"]
    pair.close()


def test_speech_that_goes_on_after_a_guess():
    """As the ear asks: what was guessed too early is void, and both hear the whole anew."""
    first, second = Scripted("one", "125"), Scripted("two", "129")
    recognition = Recognition(SecondOpinion(first, second))
    recognition.begin(RATE)
    recognition.feed(b"a")
    assert recognition.guess().done.wait(10)
    recognition.feed(b"b")
    assert recognition.wait(lambda: False).doubtful
    recognition.close()
    assert first.fed == second.fed == [b"a", b"ab"]


def test_one_that_hangs_is_fed_no_more(monkeypatch):
    """Sound must not pile up before a library that never answers; when it does after all, it is asked again."""
    go = threading.Event()
    second = Scripted("two", "129", waits_for=go)
    pair = SecondOpinion(Scripted("one", "125"), second, limit_s=0.01)
    hear(pair, b"a")
    monkeypatch.setattr(second_opinion, "ANSWER_LIMIT_S", -1.0)
    hear(pair, b"b")
    monkeypatch.undo()
    go.set()
    assert hear(pair, b"c").words == "125"
    deadline = time.monotonic() + 10
    while second.fed != [b"a", b"c"] and time.monotonic() < deadline:
        time.sleep(0.01)
    assert second.fed == [b"a", b"c"]
    pair.close()


class Borrowed:
    """A recogniser of the whole run, which is not closed with the pair."""

    def __init__(self, recogniser):
        self.name, self.model_digest, self.begin = recogniser.name, recogniser.model_digest, recogniser.begin

    def close(self):
        pass


@pytest.mark.sound
class TestOnSound:
    """Real recognisers on synthesised speech: the bundled one beside itself, and beside one of another tongue."""

    @pytest.fixture(scope="class")
    @classmethod
    def alike(cls, whisper):
        pair = SecondOpinion(Borrowed(whisper), Borrowed(whisper), limit_s=60)
        yield pair
        pair.close()

    @pytest.fixture(scope="class")
    @classmethod
    def apart(cls, whisper):
        from assistant.adapters.recognisers.vosk_ear import open_vosk

        pair = SecondOpinion(Borrowed(whisper), open_vosk(korean_model(), ENGLISH), limit_s=60)
        yield pair
        pair.close()

    @pytest.mark.parametrize(
        ("words", "expect", "value"),
        [
            ("one hundred and twenty five millilitres per hour", RATE, "125"),
            ("yes", ConfirmExpected(), "yes"),
            ("again", RATE, "again"),
        ],
    )
    def test_two_that_hear_alike(self, alike, words, expect, value):
        """What both have heard stands, as with one alone."""
        heard = hear_sound(alike, speak(words), expect)
        meaning = spoken.interpret(heard.words, expect, heard=True)
        assert isinstance(meaning, Answer), heard
        assert (str(meaning.value), heard.doubtful) == (value, False)

    def test_a_number_that_one_alone_has_heard(self, apart):
        """A recogniser of another tongue hears no English number: the digits are asked for, and then refused."""
        sound = speak("one hundred and twenty five millilitres per hour")
        heard = hear_sound(apart, sound, RATE)
        assert str(spoken.interpret(heard.words, RATE, heard=True).value) == "125"
        assert heard.doubtful
        assert len({one.words for one in heard.alternatives}) == len(heard.alternatives) > 1
        assert hear_sound(apart, speak("one two five"), DIGITS).words == ""

    def test_a_command_that_one_alone_has_heard(self, apart):
        """The first one leads in what is no number."""
        heard = hear_sound(apart, speak("what is my order"), RATE)
        assert str(spoken.interpret(heard.words, RATE, heard=True).value) == "what is my order"

    def test_talk_is_no_answer(self, alike):
        """Two that refuse alike refuse; nothing is asked for either."""
        heard = hear_sound(alike, speak("there were fifty people at the party"), RATE)
        assert (heard.words, heard.doubtful) == ("", False)

    def test_silence_is_nothing(self, apart):
        """Where nobody speaks, nothing is heard."""
        assert hear_sound(apart, bytes(16_000), RATE).words == ""

    def test_blocks_of_any_size_are_heard_alike(self, apart):
        """How sound is cut into blocks changes nothing."""
        sound = speak("seventy")
        found = set()
        for size in (640, len(sound)):
            heard = hear(apart, *(sound[start : start + size] for start in range(0, len(sound), size)))
            found.add((heard.words, heard.doubtful, len(heard.alternatives)))
            assert heard.audio_s == pytest.approx(len(sound) / 32_000)
        assert len(found) == 1
