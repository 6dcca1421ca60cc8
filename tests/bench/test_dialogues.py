"""A small sample of the dialogues; the command runs ten thousand."""

from random import Random

from .dialogues import Channel, run


def test_no_wrong_number_is_kept_where_read_backs_are_answered_truthfully() -> None:
    """Though three of ten numbers arrive as another one, a learner who says no to them keeps only the right ones."""
    found, _ = run(60, Channel(), assent=0.0)
    assert found["WRONG"] == 0
    assert found["right"] >= 55


def test_a_learner_who_agrees_to_everything_keeps_wrong_ones() -> None:
    """The channel does confuse: with a yes to every read-back, wrong numbers are kept."""
    found, _ = run(60, Channel(misheard=0.8), assent=1.0)
    assert found["WRONG"] > 0


def test_a_number_that_the_sound_tells_apart_takes_fewer_utterances_and_is_still_kept_right() -> None:
    """It is read back at once, and a truthful learner says no where it is another one."""
    asked, with_digits = run(60, Channel(), assent=0.0)
    told, without = run(60, Channel(sure=1.0), assent=0.0)
    assert told["WRONG"] == 0
    assert told["right"] >= asked["right"]
    assert without < with_digits


def test_the_channel_sends_other_numbers() -> None:
    """What arrives is the number said, or one that sounds like it."""
    chance = Random(1)  # noqa: S311 - see above
    assert Channel(misheard=0.0).confirmation(is_yes=True, chance=chance) == "yes"
    assert Channel(swapped=1.0).confirmation(is_yes=True, chance=chance) == "no"
