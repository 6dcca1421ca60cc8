"""The steps of an attempt as the desk shows them: what is asked, what has to be seen, what follows from the order."""

from typing import Literal

from assistant.checklist.model import DoubleCheckAsked, NameAsked, ObservationAsked, Step
from assistant.checklist.rehearsal import rehearse
from assistant.guide.papers import Papers
from assistant.link.messages import PlanStep

_LONGEST_NEEDED, _LONGEST_WORKING, _MOST_WORKING = 200, 500, 20


def plan_of(papers: Papers) -> tuple[PlanStep, ...]:
    """Every step that this order and this lab do not leave out, in order."""
    lines = rehearse(papers.checklist)
    return tuple(_planned(papers, line.step, line.seconds) for line in lines if line.step.id not in papers.never)


def _planned(papers: Papers, step: Step, seconds: int) -> PlanStep:
    asked = papers.numbers.get(step.id) or (step.expect if isinstance(step.expect, NameAsked) else None)
    return PlanStep(
        id=step.id,
        say=step.say,
        part=step.part[:_LONGEST_NEEDED],
        critical=step.critical,
        gate=step.gate,
        seen=step.seen,
        asks=_who(step),
        needed=papers.expected(step)[:_LONGEST_NEEDED] if asked is not None else "",
        working=tuple(line[:_LONGEST_WORKING] for line in papers.working(asked.key)[:_MOST_WORKING]) if asked else (),
        seconds=seconds,
    )


def _who(step: Step) -> Literal["learner", "instructor", "second person"]:
    match step.expect:
        case ObservationAsked():
            return "instructor"
        case DoubleCheckAsked():
            return "second person"
    return "learner"
