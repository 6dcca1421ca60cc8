"""The end of an attempt: the result, and what to practise."""

from assistant.guide.applicability import note_passed_over
from assistant.guide.effects import Outcome, Tone
from assistant.guide.progress import State
from assistant.guide.scoring import Ending, Results, score
from assistant.guide.turn import Turn
from assistant.spoken.english.sentences import SENTENCES as sentences

MOST_SPOKEN = 4
"""Reasons for not passing that are said aloud; the others are shown (common practice, no source)."""


def finish(turn: Turn) -> None:
    """The attempt is over: say the result."""
    note_passed_over(turn, len(turn.given.checklist.steps))
    results = score(turn.given, turn.draft)
    turn.draft.state = State.FINISHED
    turn.draft.token = ""
    if turn.draft.closed_early:
        turn.outcome = Outcome.NOT_COMPLETED
    else:
        turn.outcome = Outcome.PASSED if results.passed else Outcome.NOT_PASSED
        turn.say(sentences.PASSED if results.passed else sentences.NOT_PASSED, Tone.RESULT)
    turn.say(sentences.summary(results.unaided, results.applicable), Tone.RESULT)
    for place, failure in enumerate(results.failures):
        turn.say(failure, Tone.RESULT, None if place < MOST_SPOKEN else "")
    weak = _weakest(results)
    turn.say(sentences.practise(weak) if weak else sentences.FEEDBACK_GOOD, Tone.RESULT)


def _weakest(results: Results) -> tuple[str, ...]:
    """The one or two lines that most need practice: critical first, wrong before cued."""
    order = (Ending.LEFT_OUT, Ending.WRONG, Ending.CORRECTED, Ending.CUED, Ending.OUT_OF_ORDER)
    weak = [line for line in results.steps if line.ending in order]
    weak.sort(key=lambda line: (not line.critical, order.index(line.ending)))
    return tuple(line.say for line in weak[:2])
