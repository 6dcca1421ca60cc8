"""A name read from a label: read back where it was heard, compared with the order."""

from assistant.checklist.model import NameAsked
from assistant.guide.asking import prompt
from assistant.guide.effects import Tone
from assistant.guide.holds import hold
from assistant.guide.moving import close, nothing_read_back, reopen_by_learner
from assistant.guide.progress import State
from assistant.guide.turn import Turn
from assistant.spoken.english.sentences import SENTENCES as sentences
from assistant.spoken.meaning import Answer

ANOTHER_NAME = "another name"
"""The slip of reading a label that was not ordered."""


def take_name(turn: Turn) -> None:
    """A name read from a label: read it back where it was heard, compare it where it was typed."""
    if not isinstance(turn.meaning, Answer):
        raise TypeError("a name without a value")
    name = str(turn.meaning.value)
    if not turn.spoken:
        compare_name(turn, name)
        return
    turn.draft.name = name
    turn.draft.state = State.READING_BACK
    turn.draft.failures = 0
    turn.note["verdict"] = "read back"
    prompt(turn)


def compare_name(turn: Turn, heard: str) -> None:
    """Keep the name, and compare it with the one that was ordered."""
    step, done = turn.step, turn.done
    if not isinstance(step.expect, NameAsked):
        raise TypeError("a name was given at a step that asks for none")
    right = str(turn.given.key[step.expect.key].value)
    nothing_read_back(turn.draft)
    turn.draft.state = State.ASKING
    reopen_by_learner(turn)
    done.tries += 1
    done.first = done.first or heard
    done.final = heard
    if heard == right:
        turn.note["verdict"] = "agrees"
        turn.say(sentences.name_agrees(heard), Tone.AGREES)
        close(turn, heard)
        return
    hold(turn, "does not agree", sentences.wrong_name(heard), step.if_wrong, slip=ANOTHER_NAME)
