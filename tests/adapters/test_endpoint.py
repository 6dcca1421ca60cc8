"""Where an utterance begins and ends, over hand-made figures of a speech detector."""

from decimal import Decimal

import pytest

from assistant.adapters.endpoint import FRAME_S, LONGEST_S, Endpointer, Moment, pause_s
from assistant.spoken.expect import AnyExpected, ConfirmExpected, NameExpected, NumberExpected, TextExpected

PAUSE = 10  # frames


def follow(figures: str, endpointer: Endpointer | None = None) -> str:
    """One letter for each frame; figures: S speech, s soft speech, . silence."""
    if endpointer is None:
        endpointer = Endpointer()
        endpointer.restart(PAUSE * FRAME_S)
    likelihoods = {"S": 0.9, "s": 0.4, ".": 0.02}
    letters = {
        Moment.NOTHING: ".",
        Moment.STARTED: "(",
        Moment.GOING: "-",
        Moment.ENDED: ")",
        Moment.CUT: "|",
        Moment.NOISE: "x",
    }
    return "".join(letters[endpointer.take(likelihoods[figure])] for figure in figures)


@pytest.mark.parametrize(
    ("figures", "moments"),
    [
        ("." * 20, "." * 20),
        # begins with the third speech frame, ends with the tenth silent one
        ("..SSSSSS" + "." * 12, "....(" + "-" * 12 + ").."),
        # one frame missing at the beginning is no matter
        ("..S.SSSS" + "." * 12, ".....(" + "-" * 11 + ").."),
        # a click
        ("..S" + "." * 17, "." * 20),
        # a knock: begins, but is too short to be speech
        ("..SS.S" + "." * 14, ".....(" + "-" * 9 + "x...."),
        # a pause within the utterance
        ("..SSSSS" + "." * 8 + "SSS" + "." * 10, "....(" + "-" * 22 + ")"),
        # a soft end belongs to the word, soft noise after it does not
        ("..SSSSSssss" + "." * 10, "....(" + "-" * 15 + ")"),
        ("..SSSSS.ssss" + "." * 9, "....(" + "-" * 11 + ")...."),
        # soft noise alone is no beginning
        ("ssssssssssss", "............"),
        # two utterances
        (("..SSSSS" + "." * 10) * 2, ("....(" + "-" * 11 + ")") * 2),
    ],
)
def test_moments(figures, moments):
    """An utterance begins with speech, survives short pauses, ends with silence; noises are none."""
    assert follow(figures) == moments


# What the detector makes of single words of people that are as loud as those after them, frame by frame (hundredths).
UNSURE = (
    (14, 54, 68, 50, 21, 19, 16, 26, 63, 77, 38, 9, 3),
    (4, 24, 87, 76, 46, 26, 14, 11, 25, 32, 30, 55, 68, 41, 16),
)


@pytest.mark.parametrize("likelihoods", UNSURE)
def test_a_word_of_which_the_detector_is_not_sure_begins(likelihoods):
    """A "two" that stands alone, loud and clear, is an utterance."""
    endpointer = Endpointer()
    endpointer.restart(PAUSE * FRAME_S)
    moments = [endpointer.take(likelihood / 100) for likelihood in (*[1] * 20, *likelihoods, *[1] * 20)]
    assert Moment.STARTED in moments
    assert Moment.ENDED in moments


@pytest.mark.parametrize(
    "likelihoods", [(15, 20, 20, 15, 30, 40, 45, 45, 30, 20), (90, 5, 5, 5, 90, 5, 5, 5), (60, 60, 5, 5)]
)
def test_noise_of_which_the_detector_is_not_sure_does_not_begin(likelihoods):
    """Something that is never speech, two clicks, and half a word of somebody far away are none."""
    endpointer = Endpointer()
    endpointer.restart(PAUSE * FRAME_S)
    moments = {endpointer.take(likelihood / 100) for likelihood in (*[1] * 20, *likelihoods, *[1] * 20)}
    assert moments == {Moment.NOTHING}


@pytest.mark.parametrize(
    ("figures", "moments"),
    [
        # The echo of the own voice: over at once, and the answer after it is heard.
        ("SS" + "." * 6 + "SSSSS" + "." * 10, "." * 10 + "(" + "-" * 11 + ")"),
        # Somebody who began too early is skipped to the end, also after a pause within the number.
        ("S" * 10 + "." * 9 + "SSSS" + "." * 10 + "SSSSS" + "." * 10, "." * 35 + "(" + "-" * 11 + ")"),
        # The same with a pause right after listening began, which an echo could have too.
        ("SS...SSSSSSSS" + "." * 9 + "SSSS" + "." * 10, "." * 36),
    ],
)
def test_speech_that_goes_on_at_restart_is_skipped_to_its_end(figures, moments):
    """A sound that began before anybody listened is not heard, and the next utterance is."""
    endpointer = Endpointer()
    for likelihood in (0.9, 0.9, 0.9):
        endpointer.overhear(likelihood)
    endpointer.restart(PAUSE * FRAME_S)
    assert follow(figures, endpointer) == moments


@pytest.mark.parametrize(("silent_frames", "begins"), [(0, False), (2, False), (3, False), (4, True)])
def test_gap_within_a_word_is_no_end(silent_frames, begins):
    """Listening that begins in the gap of a word does not take its rest for a beginning."""
    endpointer = Endpointer()
    for likelihood in (0.9, 0.9, 0.9, *([0.02] * silent_frames)):
        endpointer.overhear(likelihood)
    endpointer.restart(PAUSE * FRAME_S)
    assert ("(" in follow("SSSSS", endpointer)) is begins


def test_silence_at_restart_lets_the_first_word_in():
    """After silence an utterance that begins with the very first frame is heard."""
    endpointer = Endpointer()
    for likelihood in (0.9, 0.9, 0.02, 0.02, 0.02, 0.02):
        endpointer.overhear(likelihood)
    endpointer.restart(PAUSE * FRAME_S)
    assert follow("SSSSS..........", endpointer).startswith("..(--")


@pytest.mark.parametrize("said_before", ["SSSSSS", "SSSSSS....", "S", ""])
def test_restart_drops_the_utterance_under_way(said_before):
    """A new question is not answered with the rest of what was said to the one before, whenever it comes."""
    endpointer = Endpointer()
    endpointer.overhear(0.9)
    endpointer.restart(PAUSE * FRAME_S)
    follow("......" + said_before, endpointer)
    for _ in range(2):  # also where it is asked twice in a row
        endpointer.restart(PAUSE * FRAME_S)
    moments = follow("SSSSSS..........", endpointer)
    assert ("(" in moments) is (said_before == "")
    assert "(" in follow("SSSS", endpointer)


def test_endless_speech_is_cut_once_and_skipped():
    """Speech without an end is cut at the limit, and its rest does not become another utterance."""
    frames = int(LONGEST_S / FRAME_S)
    moments = follow("S" * (frames + 200) + "." * 12 + "SSSS" + "." * 11)
    assert moments.count("|") == 1
    assert abs(moments.index("|") - frames) <= 2
    assert set(moments[moments.index("|") + 1 : frames + 212]) == {"."}
    assert moments.endswith(").")


@pytest.mark.parametrize(
    ("expect", "pause"),
    [
        (ConfirmExpected(), Decimal("0.9")),
        (NumberExpected("mL/h"), Decimal("1.2")),
        (NumberExpected("mL/h", digits_only=True), Decimal("1.8")),
        (NameExpected(("heparin",)), Decimal("1.2")),
        (AnyExpected(), Decimal("1.2")),
        (TextExpected(), Decimal("1.2")),
    ],
)
def test_pause_for_each_expectation(expect, pause):
    """People pause longer within a number than within a yes, and longest within a reason."""
    assert Decimal(str(pause_s(expect))) == pause
