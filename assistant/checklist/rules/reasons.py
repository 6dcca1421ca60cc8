"""Rules about what a step must say beside its line: why, source, cue, advice, tries."""

from collections.abc import Iterator

from assistant.checklist.finding import Bench, Complaint, error, warning
from assistant.checklist.model import (
    ChoiceAsked,
    DoneAsked,
    DoubleCheckAsked,
    NameAsked,
    NoteAsked,
    NumberAsked,
    ObservationAsked,
    QuestionAsked,
    Step,
    WaitAsked,
)


def critical_reasons(step: Step, _number: int, _bench: Bench) -> Iterator[Complaint]:
    """A critical step says why and where that is published."""
    if not step.critical:
        return
    if not step.why:
        yield error("critical-why", "id", "this critical step does not say why.", 'Add why = "...".')
    if not step.sources:
        yield error(
            "critical-source",
            "id",
            "this critical step names no source.",
            'Add sources = ["..."], or "common practice, no source".',
        )


def cues(step: Step, _number: int, _bench: Bench) -> Iterator[Complaint]:
    """Who asks for help at a critical step is helped, and each further cue says something new."""
    if step.critical and not step.hint:
        yield warning("cue", "id", "this critical step has no cue for who asks for help.", 'Add hint = "...".')
    elif step.stronger and not step.hint:
        yield warning("cue", "stronger", "there are stronger cues, and no first one.", 'Add hint = "...".')
    elif len(set(step.cues)) < len(step.cues):
        yield warning("cue", "stronger", "two cues say the same.", "Let each one help more than the one before.")


def advice(step: Step, _number: int, _bench: Bench) -> Iterator[Complaint]:
    """Whoever is held must be told what to do."""
    held = step.expect
    if step.if_wrong or not has_wrong_answers(step):
        return
    if isinstance(held, ChoiceAsked) and all(name in held.advice for name in held.choices if name != held.right):
        return
    yield warning("advice", "id", "nothing is said when the answer is not the right one.", 'Add if_wrong = "...".')


def tries(step: Step, _number: int, _bench: Bench) -> Iterator[Complaint]:
    """Tries are counted only where an answer can be wrong."""
    if step.tries is None:
        return
    if isinstance(step.expect, QuestionAsked):
        yield warning("tries", "tries", "a fault that the learner finds spends no try.", "Take tries out.")
    elif not has_wrong_answers(step):
        yield warning("tries", "tries", "no answer to this step can be wrong.", "Take tries out.")


def has_wrong_answers(step: Step) -> bool:
    """Whether an answer to the step can hold it."""
    match step.expect:
        case ChoiceAsked(right=right):
            return bool(right)
        case DoneAsked() | WaitAsked() | NoteAsked():
            return False
        case QuestionAsked() | NumberAsked() | NameAsked() | ObservationAsked() | DoubleCheckAsked():
            return True
