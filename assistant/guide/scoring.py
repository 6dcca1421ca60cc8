"""How each step ended and whether the attempt is passed: critical steps and gates first, then the score."""

from dataclasses import asdict, dataclass
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum

from assistant.checklist.model import Checklist, PassRule, Step
from assistant.guide.progress import Mode, Progress, Status, StepProgress


class Ending(StrEnum):
    """How a step ended."""

    UNAIDED = "done unaided"
    CUED = "done after a cue"
    CORRECTED = "corrected by the learner"
    NOT_APPLICABLE = "not applicable"
    LEFT_OUT = "left out"
    WRONG = "wrong"
    NOT_REACHED = "not reached"


@dataclass(frozen=True)
class StepResult:
    """One line of the result; texts are as shown, with units."""

    id: str
    say: str
    critical: bool
    ending: Ending
    first: str = ""
    final: str = ""
    wrong: int = 0
    slips: tuple[str, ...] = ()
    cues: tuple[str, ...] = ()
    expired: int = 0
    reason: str = ""


@dataclass(frozen=True)
class Results:
    """The whole result.

    Attributes:
        steps: critical steps first, each group in the checklist's order.
        unaided, applicable: counts.
        score_percent: share done unaided, whole percent, half up; 100 where nothing was applicable.
        passed: by the rule of the mode.
        failures: why not, one sentence each.
    """

    steps: tuple[StepResult, ...]
    unaided: int
    applicable: int
    score_percent: Decimal
    passed: bool
    failures: tuple[str, ...]

    def body(self) -> dict[str, object]:
        """The result as an entry holds it: numbers as text, counters as whole numbers."""
        return {
            "steps": [
                {key: list(value) if isinstance(value, tuple) else value for key, value in asdict(line).items()}
                for line in self.steps
            ],
            "unaided": self.unaided,
            "applicable": self.applicable,
            "score_percent": str(self.score_percent),
            "passed": self.passed,
            "failures": list(self.failures),
        }


def score(checklist: Checklist, progress: Progress, mode: Mode) -> Results:
    """The result of an attempt as it stands.

    In practice an attempt is passed when every step was closed in the end. In a check-off the checklist's
    own rule decides: no critical step open, left out or wrong; not more critical steps corrected or cued
    than the rule allows; then the share of steps done unaided.
    """
    ended_early = progress.cursor
    lines = []
    for place, step in enumerate(checklist.steps):
        lines.append(_result(step, progress.steps[step.id], reached=place <= ended_early))
    lines.sort(key=lambda line: not line.critical)
    applicable = [line for line in lines if line.ending is not Ending.NOT_APPLICABLE]
    unaided = sum(line.ending is Ending.UNAIDED for line in applicable)
    percent = Decimal(100)
    if applicable:
        share = Decimal(100) * unaided / len(applicable)
        percent = share.quantize(Decimal(1), rounding=ROUND_HALF_UP)
    failures = tuple(_failures(lines, percent, checklist.pass_rule, mode))
    return Results(tuple(lines), unaided, len(applicable), percent, not failures, failures)


def _result(step: Step, done: StepProgress, *, reached: bool) -> StepResult:
    return StepResult(
        id=step.id,
        say=step.say,
        critical=step.critical,
        ending=_ending(done, reached=reached),
        first=done.first,
        final=done.final,
        wrong=done.wrong,
        slips=tuple(done.slips),
        cues=tuple(done.cues),
        expired=done.expired,
        reason=done.reason,
    )


def _ending(done: StepProgress, *, reached: bool) -> Ending:
    match done.status:
        case Status.NOT_APPLICABLE:
            return Ending.NOT_APPLICABLE
        case Status.LEFT_OUT:
            return Ending.LEFT_OUT
        case Status.OPEN if done.wrong:
            return Ending.WRONG
        case Status.OPEN:
            return Ending.LEFT_OUT if reached else Ending.NOT_REACHED
        case Status.CLOSED:
            if done.wrong or done.corrections:
                return Ending.CORRECTED
            if done.cues:
                return Ending.CUED
            return Ending.UNAIDED


def _failures(lines: list[StepResult], percent: Decimal, rule: PassRule, mode: Mode) -> list[str]:
    not_closed = {Ending.LEFT_OUT, Ending.WRONG, Ending.NOT_REACHED}
    found = [f"{line.ending.capitalize()}: {line.say}" for line in lines if line.ending in not_closed and line.critical]
    if mode is Mode.PRACTICE:
        return found
    critical = [line for line in lines if line.critical]
    # What the learner saw and put right without being told is no failure; a slip was found by the hold.
    held = sum(bool(line.slips) for line in critical)
    if held > rule.critical_corrections:
        found.append(
            f"Corrected only after a hold: {held} critical {_steps(held)}; {rule.critical_corrections} may be."
        )
    cued = sum(bool(line.cues) for line in critical)
    if cued > rule.critical_cues:
        found.append(f"Done only after a cue: {cued} critical {_steps(cued)}; {rule.critical_cues} may be.")
    if percent < rule.score_percent:
        found.append(f"{percent} % of the steps were done unaided; {rule.score_percent} % are needed.")
    return found


def _steps(count: int) -> str:
    return "step" if count == 1 else "steps"
