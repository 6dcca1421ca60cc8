"""Feedback to the learner in plain sentences: what went well, and one or two things to practise."""

from collections.abc import Mapping, Sequence

from assistant.report.content import Feedback, NumberLine, Practise, StepLine
from assistant.report.steps import DONE_WELL, NOT_DONE

MOST_TO_PRACTISE = 2
"""More at once is not taken in (common practice, no source)."""

ADVICE: Mapping[str, str] = {
    "tenfold": "Estimate first: is the answer about as large as it must be? Then look at the decimal point.",
    "thousandfold": "Look at the units: mg and mcg, g and mg are a thousand apart.",
    "decimal point": "Say the decimal point aloud, with a zero before it where there is no other figure.",
    "teen-ty": "Numbers that sound alike are said digit by digit: one five, five zero.",
    "swapped": "Say what the number is before you say the number: rate, volume, time.",
    "transposed digits": "Compare the display with the order digit by digit, from left to right.",
    "time unit": "Turn the time into hours first, then divide.",
    "another name": "Read the whole label aloud, and hold it beside the order before you go on.",
    "other": "Work it out from the order once more, and write the working down.",
}
"""What to do about each kind of slip (common practice, no source)."""

_NOT_REACHED = "not reached"
_LONGEST_QUOTE = 80


def feedback(steps: Sequence[StepLine], numbers: Sequence[NumberLine], reasons: Mapping[str, str]) -> Feedback:
    """Feedback on an attempt; steps that were never reached are not held against anybody.

    Args:
        steps: every step.
        numbers: every number and name that had to agree with the order.
        reasons: why a step matters, by its id.
    """
    reached = [line for line in steps if line.ending != _NOT_REACHED]
    answered = {line.id: line for line in numbers if line.id in {step.id for step in reached}}
    weak = sorted((line for line in reached if line.needs_a_look), key=lambda line: (_gravity(line), line.number))
    chosen = [
        Practise(
            sentence=_sentence(line, answered.get(line.id)),
            why=reasons.get(line.id, ""),
            steps=(line.number,) if line.number else (),
        )
        for line in weak[:MOST_TO_PRACTISE]
    ]
    return Feedback(went_well=tuple(_went_well(reached, list(answered.values()))), practise=tuple(chosen))


def _went_well(reached: Sequence[StepLine], numbers: Sequence[NumberLine]) -> list[str]:
    found = []
    critical = [line for line in reached if line.critical and line.ending != "not applicable"]
    unaided = sum(not line.needs_a_look for line in critical)
    if unaided:
        found.append(_share(unaided, len(critical), "critical step", "was done unaided", "were done unaided"))
    right = sum(line.verdict == "right the first time" for line in numbers)
    if right:
        found.append(
            _share(right, len(numbers), "number or label", "was right the first time", "were right the first time")
        )
    if reached and not any(line.cues for line in reached):
        found.append("No help was needed.")
    own = [line.step for line in numbers if line.verdict == "put right by the learner"]
    if own:
        found.append(f"You saw a mistake yourself and put it right: step {own[0]}.")
    return found


def _share(some: int, of: int, what: str, one: str, more: str) -> str:
    plural = what.replace("number or label", "numbers and labels") if "number" in what else f"{what}s"
    if some == of == 2:
        return f"Both {plural} {more}."
    if some == of:
        return f"The one {what} {one}." if of == 1 else f"All {of} {plural} {more}."
    return f"{some} of {of} {plural} {one if some == 1 else more}."


def _gravity(line: StepLine) -> int:
    """0 for what weighs most."""
    if line.ending in NOT_DONE:
        kind = 0
    elif line.slips:
        kind = 1
    elif line.cues:
        kind = 2
    else:
        kind = 3
    return kind if line.critical else kind + 4


def _sentence(line: StepLine, number: NumberLine | None) -> str:
    step = f"Step {line.number}" if line.number else "A step"
    quote = line.say if len(line.say) <= _LONGEST_QUOTE else f"{line.say[: _LONGEST_QUOTE - 1].rstrip()}\u2026"
    start = f"{step}, \u201c{quote}\u201d"
    if line.ending in NOT_DONE:
        return f"{start}: {line.ending}."
    if line.slips:
        expected = number.expected if number is not None else ""
        follows = f"; {expected} follows from the order" if expected else ""
        advice = ADVICE.get(line.slips[0], ADVICE["other"])
        return f"{start}: your first answer was {line.first}{follows} (slip: {line.slips[0]}). {advice}"
    if line.cues:
        return f"{start}: done after help ({', '.join(line.cues)}). Go through it once more without."
    if line.ending in DONE_WELL:
        return f"{start}: {line.ending}."
    if line.first and line.first != line.final:
        return f"{start}: you answered {line.first} first, then {line.final}. Look before you answer."
    return f"{start}: {line.ending}."
