"""Which steps do not apply, by the order and by the answers that stand."""

from assistant.guide.given import Given
from assistant.guide.progress import Progress, Status
from assistant.guide.turn import Turn


def passed_over(given: Given, progress: Progress) -> dict[str, str]:
    """Why steps are passed over, by the step's id; a step that applies is not in it.

    It is asked anew whenever it is needed and never stored, so that a corrected answer can bring a step back.
    """
    values = given.values()
    answers: dict[str, str] = {}
    reasons: dict[str, str] = {}
    for step in given.checklist.steps:
        unmet = step.unmet(values, answers)
        done = progress.steps[step.id]
        if unmet is not None:
            reasons[step.id] = unmet.unmet_reason()
        elif done.status is Status.CLOSED:
            # What was passed over has no answer, whatever was said there before.
            answers[step.id] = done.final
    return reasons


def note_passed_over(turn: Turn, place: int) -> None:
    """Let the entry tell which steps on the way to `place` do not apply, and which apply after all."""
    reasons = passed_over(turn.given, turn.draft)
    changed = {}
    for step in turn.given.checklist.steps[:place]:
        reason, done = reasons.get(step.id, ""), turn.draft.steps[step.id]
        if reason != done.passed_over:
            done.passed_over = reason
            # Asked late through no fault of the learner's: an answer brought it back.
            done.brought_back = done.brought_back or not reason
            changed[step.id] = reason or "applies"
    if changed:
        turn.note["passed_over"] = changed
