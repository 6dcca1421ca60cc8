"""Which steps do not apply, by the order and by the answers that stand."""

from assistant.guide.given import Given
from assistant.guide.progress import Progress, Status


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
