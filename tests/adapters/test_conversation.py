"""Who may speak when: ear and voice of one station, written down by ports that only note what they are told."""

from datetime import UTC, datetime
from decimal import Decimal

import pytest

from assistant import conversation as conversation_module
from assistant.conversation import Conversation
from assistant.guide.effects import Listen, Say, Tone
from assistant.guide.events import Heard, NotUnderstood
from assistant.ports import AnswerHeard, LearnerSilent, LearnerSpeaks, Timing
from assistant.spoken.expect import ConfirmExpected, NumberExpected

AT = datetime(2026, 11, 25, tzinfo=UTC)
CONFIRM = Listen(ConfirmExpected())
NUMBER = Listen(NumberExpected("mL/h"), pause_s=Decimal("1.8"))


class Ports:
    """An ear and a voice in one, noting every call."""

    name = "noting"
    model_digest = "00"

    def __init__(self):
        self.told = []

    def listen(self, expect, question, pause_s):
        self.told.append(f"listen {question}" + (f" {pause_s}" if pause_s else ""))

    def mute(self):
        self.told.append("mute")

    def say(self, utterance, text, *, careful):
        self.told.append(f"say {utterance} {text}" + (" carefully" if careful else ""))

    def signal(self, utterance, signal):
        self.told.append(f"sound {utterance} {signal}")

    def hush(self):
        self.told.append("hush")

    def close(self):
        self.told.append("close")


def sentence(text, tone=Tone.STEP):
    return Say(text, text, tone)


def said(question, words="yes"):
    timing = Timing(10.0, 11.0, 11.25, 11.2)
    return AnswerHeard(question, Heard(AT, words) if words else NotUnderstood(AT), timing)


@pytest.fixture
def ports():
    return Ports()


def test_over_a_loudspeaker_one_at_a_time(ports):
    """The ear is closed before the voice sounds, and opened when the last sentence is over."""
    talk = Conversation(ports, ports)
    for text in ("one", "two"):
        talk.say(sentence(text))
    talk.listen(NUMBER)
    talk.ended(1)
    assert ports.told == ["mute", "say 1 one", "mute", "say 2 two"]
    talk.ended(2)
    assert ports.told[4:] == ["listen 1 1.8"]


def test_numbers_are_said_carefully(ports):
    """A read-back and a hold are slower than a step."""
    talk = Conversation(None, ports)
    for text, tone in (("step", Tone.STEP), ("back", Tone.READ_BACK), ("hold", Tone.HOLD)):
        talk.say(sentence(text, tone))
    assert ports.told == ["say 1 step", "say 2 back carefully", "say 3 hold carefully"]


def test_an_end_that_comes_late_is_not_taken_for_a_newer_one(ports, monkeypatch):
    """A sentence that was given up ends later: the ear stays closed while the next one sounds."""
    monkeypatch.setattr(conversation_module, "SPEECH_GRACE_S", -1)
    talk = Conversation(ports, ports)
    talk.say(sentence("one"))
    talk.listen(CONFIRM)
    talk.give_up_overdue()
    assert ports.told == ["mute", "say 1 one", "hush", "listen 1"]
    talk.say(sentence("two"))
    talk.ended(1)
    assert talk.is_speaking
    assert ports.told[4:] == ["mute", "say 2 two"]
    talk.ended(2)
    assert ports.told[6:] == ["listen 1"]


@pytest.mark.parametrize(
    ("answer", "given"),
    [
        (said(2), Heard(AT, "yes")),
        (said(2, ""), NotUnderstood(AT)),
        # Begun for the question before: on record, but no answer.
        (said(1), Heard(AT, "yes", during_speech=True)),
        (said(1, ""), None),
    ],
)
def test_an_answer_belongs_to_its_question(ports, answer, given):
    """What was said to an earlier question does not answer the one that stands."""
    talk = Conversation(ports, ports)
    talk.listen(CONFIRM)
    talk.listen(CONFIRM)
    assert talk.answer(answer) == given


def test_with_a_headset_the_first_word_stops_the_voice(ports):
    """The ear stays open; speech hushes the voice, and an answer to the question that is being asked counts."""
    talk = Conversation(ports, ports, talk_over=True)
    talk.say(sentence("one"))
    talk.say(sentence("two"))
    talk.listen(CONFIRM)
    assert ports.told == ["say 1 one", "say 2 two", "listen 1"]
    talk.speaks(LearnerSpeaks(1))
    assert ports.told[3:] == ["hush"]
    talk.ended(1)
    talk.ended(2)
    assert talk.answer(said(1)) == Heard(AT, "yes")
    talk.silent(LearnerSilent(1))
    assert ports.told[4:] == []  # what was interrupted for an answer is not said again


@pytest.mark.parametrize(
    ("words", "is_taken"),
    [("stop", True), ("where am I", True), ("yes", False), ("right", False), ("eighty three point three", False)],
)
def test_through_a_canceller_only_commands_are_taken(ports, words, is_taken):
    """Half of "that is not right" is "right": what is no command is on record, and what it stopped is said again."""
    talk = Conversation(ports, ports, talk_over=True, through_canceller=True)
    talk.say(sentence("one"))
    talk.listen(CONFIRM)
    talk.speaks(LearnerSpeaks(1))
    assert ports.told[-1] == "hush"
    talk.ended(1)
    assert talk.answer(said(1, words)) == Heard(AT, words, during_speech=not is_taken)
    assert ports.told[-1] == ("hush" if is_taken else "say 2 one")


def test_through_a_canceller_an_answer_after_the_voice_is_one(ports, monkeypatch):
    """What begins when the voice has been silent for a while was not touched."""
    monkeypatch.setattr(conversation_module, "ECHO_S", 0)
    talk = Conversation(ports, ports, talk_over=True, through_canceller=True)
    talk.say(sentence("one"))
    talk.listen(CONFIRM)
    talk.ended(1)
    talk.speaks(LearnerSpeaks(1))
    assert talk.answer(said(1)) == Heard(AT, "yes")


@pytest.mark.parametrize(("after_s", "overlaps"), [(0.0, True), (0.25, True), (0.5, False)])
def test_what_begins_just_after_the_voice_may_have_begun_in_it(ports, monkeypatch, after_s, overlaps):
    """A quarter of a second after the voice an answer is still taken for its echo; after half a second it counts."""
    now = 100.0
    monkeypatch.setattr(conversation_module.time, "monotonic", lambda: now)
    talk = Conversation(ports, ports, talk_over=True, through_canceller=True)
    talk.say(sentence("one"))
    talk.listen(CONFIRM)
    talk.ended(1)
    now += after_s
    talk.speaks(LearnerSpeaks(1))
    assert talk.answer(said(1)) == Heard(AT, "yes", during_speech=overlaps)


def test_a_headset_that_is_none(ports):
    """Once the own voice was heard, the ear is closed while the voice sounds, at once and from then on."""
    talk = Conversation(ports, ports, talk_over=True)
    talk.say(sentence("one"))
    talk.listen(CONFIRM)
    talk.own_voice_heard()
    talk.say(sentence("two"))
    talk.ended(1)
    talk.ended(2)
    assert ports.told == ["say 1 one", "listen 1", "mute", "mute", "say 2 two", "listen 1"]


def test_a_noise_interrupts_nothing_for_good(ports):
    """What a cough has stopped is said after all, from the sentence that it fell into."""
    talk = Conversation(ports, ports, talk_over=True)
    talk.say(sentence("one"))
    talk.say(sentence("two"))
    talk.listen(CONFIRM)
    talk.ended(1)
    talk.speaks(LearnerSpeaks(1))
    talk.ended(2)
    talk.silent(LearnerSilent(1))
    assert ports.told[3:] == ["hush", "say 3 two"]


def test_the_way_of_an_answer_is_timed_once(ports, monkeypatch):
    """Whole milliseconds after the learner's last sound, for the answer whose entry is on disk."""
    now = iter([11.27, 11.4])
    monkeypatch.setattr(conversation_module.time, "monotonic", lambda: next(now))
    talk = Conversation(ports, None)
    talk.listen(CONFIRM)
    talk.answer(said(1))
    talk.recorded(5)
    assert talk.sounded() == {
        "kind": "latency",
        "of": 5,
        "decided_ms": 250,
        "understood_ms": 200,
        "recorded_ms": 270,
        "sounded_ms": 400,
    }
    assert talk.sounded() is None


def test_nothing_listens_to_a_lost_microphone(ports):
    """A lost ear is not told to listen; back again, it gets the question that stands."""
    talk = Conversation(ports, ports)
    talk.ear_lost()
    talk.listen(CONFIRM)
    assert ports.told == []
    talk.ear_back()
    assert ports.told == ["listen 1"]


def test_short_sounds_tell_the_state(ports):
    """Understood before the reply, hold before a hold, not understood before asking again, listening at the end."""
    talk = Conversation(None, ports, signals=True)
    talk.say(sentence("step"))
    talk.listen(CONFIRM)
    talk.answer(said(1))
    for text, tone in (("next", Tone.STEP), ("hold", Tone.HOLD), ("what", Tone.UNCLEAR)):
        talk.say(sentence(text, tone))
    assert ports.told == [
        "say 1 step",
        "sound 2 listening",
        "sound 3 understood",
        "say 4 next",
        "sound 5 hold",
        "say 6 hold carefully",
        "sound 7 not understood",
        "say 8 what",
    ]


def test_without_the_setting_no_sounds(ports):
    """Short sounds are off unless somebody wants them."""
    talk = Conversation(None, ports)
    talk.say(sentence("hold", Tone.HOLD))
    talk.listen(CONFIRM)
    assert ports.told == ["say 1 hold carefully"]


def test_press_to_talk_opens_the_ear_for_one_question(ports):
    """The key opens the ear, a second press closes it; the next question has to be pressed for again."""
    talk = Conversation(ports, ports, press_to_talk=True)
    talk.say(sentence("one"))
    talk.listen(CONFIRM)
    talk.ended(1)
    assert ports.told == ["mute", "say 1 one", "mute"]
    talk.pressed()
    talk.pressed()
    talk.pressed()
    assert ports.told[3:] == ["listen 1", "mute", "listen 1"]
    talk.listen(CONFIRM)
    assert ports.told[6:] == ["mute"]


def test_a_press_while_the_voice_sounds(ports):
    """The voice gives way, and the ear opens when it is quiet: the own voice is never heard."""
    talk = Conversation(ports, ports, press_to_talk=True)
    talk.say(sentence("one"))
    talk.listen(CONFIRM)
    talk.pressed()
    assert ports.told == ["mute", "say 1 one", "mute", "hush"]
    talk.ended(1)
    assert ports.told[4:] == ["listen 1"]
