"""A timed wait: the clock closes it."""

from assistant.guide.asking import seconds_left
from assistant.guide.effects import Tone
from assistant.guide.moving import close, go_to
from assistant.guide.turn import Turn
from assistant.spoken.english.sentences import SENTENCES as sentences


def end_wait(turn: Turn) -> None:
    """The time is up: the step is closed."""
    turn.say(sentences.TIME_UP, Tone.AGREES)
    turn.note["verdict"] = "waited"
    close(turn)


def tell_time_left(turn: Turn) -> None:
    """Too early."""
    turn.note["verdict"] = "too early"
    turn.say(sentences.wait_left(seconds_left(turn)), Tone.HOLD)


def restart_wait(turn: Turn) -> None:
    """The wait was broken off; it starts again when the learner says so."""
    turn.say(sentences.WAIT_DROPPED, Tone.NOTICE)
    go_to(turn, turn.draft.cursor)
