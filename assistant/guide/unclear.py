"""What was not understood, has no place here, or cannot be trusted."""

from assistant.checklist.model import ObservationAsked
from assistant.guide.asking import expectation, prompt
from assistant.guide.effects import Tone
from assistant.guide.progress import State
from assistant.guide.turn import Turn
from assistant.spoken.english.sentences import SENTENCES as sentences
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected, NumberExpected
from assistant.spoken.meaning import NoMatch, Reason

FAILURES_BEFORE_OPTIONS = 2
"""Utterances not understood in a row before the learner is told what can be said."""
GAP = "sound was lost"
OWN_VOICE = "it overlapped the assistant's own voice"


def not_here(turn: Turn) -> None:
    """A command that has no place here: say so, and ask again."""
    turn.note["verdict"] = "not taken here"
    turn.say(sentences.refusal(Reason.NOT_AN_ANSWER_HERE), Tone.UNCLEAR)
    prompt(turn)


def unclear(turn: Turn) -> None:
    """Not understood: why, then what can be said, then one short sentence."""
    draft = turn.draft
    draft.failures += 1
    turn.note["verdict"] = "not understood"
    first, *further = _why_unclear(turn)
    turn.say(first, Tone.UNCLEAR)
    for text in further:
        turn.say(text, Tone.UNCLEAR, "" if draft.failures > FAILURES_BEFORE_OPTIONS else None)
    if draft.failures == FAILURES_BEFORE_OPTIONS:
        by_number = isinstance(expectation(turn.given, draft), NumberExpected)
        turn.say(sentences.TRY_DIGITS if by_number else sentences.WHAT_CAN_BE_SAID, Tone.UNCLEAR)
        prompt(turn)


def _why_unclear(turn: Turn) -> list[str]:
    if not isinstance(turn.meaning, NoMatch):
        return [sentences.NO_WORDING]
    why = [sentences.refusal(turn.meaning.reason)]
    match expectation(turn.given, turn.draft):
        case NumberExpected(unit=unit) if turn.meaning.reason is not Reason.DIGITS_WANTED:
            why.append(sentences.unit_needed(unit))
        case ChoiceExpected(choices=choices):
            only = turn.draft.state is State.ASKING and isinstance(turn.step.expect, ObservationAsked)
            why.append(sentences.ONLY_THE_INSTRUCTOR if only else sentences.choices_are(choices))
        case ConfirmExpected(done_is_yes=False):
            why.append(sentences.YES_OR_NO)
    if turn.meaning.near:
        why.append(sentences.did_you_mean(turn.meaning.near))
    return why


def drop(turn: Turn) -> None:
    """Sound that cannot be trusted: our own voice in it, or a gap."""
    turn.note["verdict"] = f"dropped: {turn.detail}"
    if turn.detail == GAP:
        turn.say(sentences.SOUND_LOST, Tone.UNCLEAR)
