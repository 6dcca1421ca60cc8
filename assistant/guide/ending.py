"""The end of an attempt: how it ended, why, and what to practise, said aloud."""

from collections.abc import Mapping

from assistant.guide.effects import Outcome, Tone
from assistant.guide.progress import State
from assistant.guide.result import Ending, Results, score
from assistant.guide.turn import Turn

MOST_SPOKEN = 4
"""Reasons for not passing that are said aloud; the others are shown (common practice, no source)."""


def announce(turn: Turn, passed_over: Mapping[str, str]) -> None:
    """The attempt is over: say the result, and what to practise.

    Args:
        turn: the turn.
        passed_over: why steps do not apply, by the step's id.
    """
    # Over first: the result of what is over tells everything.
    turn.draft.state = State.FINISHED
    turn.draft.before.clear()
    results = score(turn.papers, turn.terms.mode, turn.draft, passed_over)
    turn.draft.wake_up = None
    if turn.draft.closed_early:
        turn.outcome = Outcome.NOT_COMPLETED
    else:
        turn.outcome = _outcome(results)
        turn.say(turn.sentences.ended(turn.outcome.value, practice=turn.terms.practice), Tone.RESULT)
        for sentence in results.stopped_for:
            turn.say(sentence, Tone.RESULT)
        if results.to_see:
            turn.say(turn.sentences.to_see(results.to_see), Tone.RESULT, turn.sentences.to_see(()))
        for sentence in results.to_judge:
            turn.say(sentence, Tone.RESULT)
    turn.say(turn.sentences.summary(results.unaided, results.applicable), Tone.RESULT)
    if results.hurried:
        turn.say(turn.sentences.hurried(len(results.hurried), results.hands_on), Tone.RESULT)
    for place, failure in enumerate(results.failures):
        turn.say(failure, Tone.RESULT, None if place < MOST_SPOKEN else "")
    weak = _weakest(results)
    turn.say(turn.sentences.practise(weak) if weak else turn.sentences.FEEDBACK_GOOD, Tone.RESULT)


def _outcome(results: Results) -> Outcome:
    if results.failures:
        return Outcome.NOT_PASSED
    if results.stopped_for:
        return Outcome.STOPPED_FOR_CAUSE
    return Outcome.PASSED if results.passed else Outcome.OWN_REPORT


def _weakest(results: Results) -> tuple[str, ...]:
    """The one or two lines that most need practice: critical first, wrong before cued."""
    order = (Ending.LEFT_OUT, Ending.WRONG, Ending.NOT_PUT_RIGHT, Ending.CORRECTED, Ending.CUED, Ending.OUT_OF_ORDER)
    weak = [line for line in results.steps if line.ending in order]
    weak.sort(key=lambda line: (not line.critical, order.index(line.ending)))
    return tuple(line.say for line in weak[:2])
