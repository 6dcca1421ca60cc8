"""What sounded before an utterance counted as begun belongs to it, as far as it may be a part of what was said."""

import pytest

from assistant.adapters.beforehand import LONGEST_GAP_S, LONGEST_S, PREROLL_S, Beforehand, sounds
from assistant.adapters.endpoint import FRAME_S, START_WINDOW
from assistant.adapters.level import Room

ROOM = 100.0
POWER = {".": ROOM, "w": 30_000.0, "S": 100_000.0, "n": 2_000.0}
"""Quiet; a loud word of which the detector is not sure; speech; something soft."""
PREROLL = round(PREROLL_S / FRAME_S)
GAP = int(LONGEST_GAP_S / FRAME_S)


def taken(figures: str, gap_at: int | None = None) -> tuple[int, bool]:
    """How many of the frames belong to the utterance that begins with the last of them."""
    before = Beforehand()
    for place, figure in enumerate(figures):
        likelihood = 0.9 if figure == "S" else 0.15
        before.add(bytes([place % 256]), POWER[figure], likelihood, follows_gap=place == gap_at)
    frames, is_broken = before.take(ROOM)
    assert frames == [bytes([place % 256]) for place in range(len(figures) - len(frames), len(figures))]
    return len(frames), is_broken


@pytest.mark.parametrize(
    ("figures", "length"),
    [
        ("." * 40 + "SSSS", PREROLL + 4),
        ("." * 40 + "wwwwww" + "." * 5 + "SSSS", PREROLL + 15),
        ("." * 40 + "www" + "." * GAP + "SSSS", PREROLL + 3 + GAP + 4),
        ("." * 40 + "www" + "." * (GAP + 1) + "SSSS", PREROLL + 4),
        ("." * 40 + "www" + "." * 10 + "www" + "." * 10 + "SSSS", PREROLL + 30),
        ("." * 40 + "S" + "." * 10 + "SSSS", PREROLL + 15),  # a frame of speech, however soft it is
        ("." * 40 + "nnnnnn" + "." * 5 + "SSSS", PREROLL + 4),  # something soft is not what was said
        ("..SSSS", 6),
    ],
)
def test_what_is_as_loud_as_the_speech_after_it_belongs_to_it(figures, length):
    """A word that the detector was not sure of is handed over with the next one; what is soft or long ago is not."""
    assert taken(figures)[0] == length


def test_what_is_long_ago_is_forgotten():
    """However much sounded before: nothing is kept for longer than the limit."""
    assert taken("w" * 300 + "SSSS")[0] == round(LONGEST_S / FRAME_S) + START_WINDOW


@pytest.mark.parametrize(("gap_at", "is_broken"), [(30, False), (41, True), (50, True)])
def test_lost_sound_counts_where_it_belongs_to_the_utterance(gap_at, is_broken):
    """Sound that was lost before the word is no matter; within it, or right before it, it is."""
    assert taken("." * 50 + "SSSS", gap_at)[1] is is_broken


def test_what_was_skipped_is_no_beginning():
    """Of what began before anybody listened no more than the last moment is handed over."""
    before = Beforehand()
    for _ in range(40):
        before.add(b"early", POWER["S"], 0.9, follows_gap=False)
    before.shorten()
    for _ in range(4):
        before.add(b"new", POWER["S"], 0.9, follows_gap=False)
    frames, _ = before.take(ROOM)
    assert frames.count(b"early") <= PREROLL


@pytest.mark.parametrize(("power", "is_loud"), [(25_000.0, True), (24_999.0, False), (100_000.0, True), (399.0, False)])
def test_sounds(power, is_loud):
    """6 dB below speech, and 6 dB above the room."""
    assert sounds(power, 100_000.0, ROOM) is is_loud


def test_in_a_loud_room_nothing_sounds_but_what_is_louder():
    """A steady noise 5 dB below the speaker is no speech."""
    assert not sounds(30_000.0, 100_000.0, 30_000.0)


def test_a_room_is_as_loud_as_its_quietest_moment():
    """What is quieter counts at once, what is louder slowly."""
    room = Room()
    for power in (500.0, 200.0, 90_000.0):
        room.take(power)
    assert room.power == pytest.approx(202.0)
    room.take(0.0)
    assert room.power == 1.0
