"""Feedback to the learner in plain sentences: what went well, and one or two things to practise."""

from collections.abc import Iterator, Mapping, Sequence

from assistant.report.content import Feedback, NumberLine, Practise, StepLine
from assistant.report.steps import DONE_WELL, NOT_ANSWERED, NOT_DONE, NOT_REACHED, PUT_RIGHT, RIGHT
from assistant.spoken.language import ReportWords

MOST_TO_PRACTISE = 2
"""More at once is not taken in (common practice, no source)."""

_LONGEST_QUOTE = 80


def feedback(
    steps: Sequence[StepLine], numbers: Sequence[NumberLine], reasons: Mapping[str, str], words: ReportWords
) -> Feedback:
    """Feedback on an attempt; steps that were not reached, or not answered, are not held against anybody.

    Args:
        steps: every step.
        numbers: every number and name that had to agree with the order.
        reasons: why a step matters, by its id.
        words: the language of the sentences.
    """
    reached = [line for line in steps if line.ending not in (NOT_REACHED, NOT_ANSWERED)]
    answered = {line.id: line for line in numbers if line.id in {step.id for step in reached}}
    weak = sorted((line for line in reached if line.needs_a_look), key=lambda line: (_gravity(line), line.number))
    chosen = [
        Practise(
            sentence=_sentence(line, answered.get(line.id), words),
            why=reasons.get(line.id, ""),
            steps=(line.number,) if line.number else (),
        )
        for line in weak[:MOST_TO_PRACTISE]
    ]
    return Feedback(went_well=tuple(_went_well(reached, list(answered.values()), words)), practise=tuple(chosen))


def _went_well(reached: Sequence[StepLine], numbers: Sequence[NumberLine], words: ReportWords) -> Iterator[str]:
    critical = [line for line in reached if line.critical and line.ending != "not applicable"]
    unaided = sum(not line.needs_a_look for line in critical)
    if unaided:
        yield words.critical_unaided(unaided, len(critical))
    right = sum(line.verdict == RIGHT for line in numbers)
    if right:
        yield words.right_first_time(right, len(numbers))
    if reached and not any(line.cues for line in reached):
        yield words.NO_HELP_NEEDED
    own = [line.step for line in numbers if line.verdict == PUT_RIGHT]
    if own:
        yield words.own_correction(own[0])


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


def _sentence(line: StepLine, number: NumberLine | None, words: ReportWords) -> str:
    quote = line.say if len(line.say) <= _LONGEST_QUOTE else f"{line.say[: _LONGEST_QUOTE - 1].rstrip()}\u2026"
    step = words.step_quoted(line.number, quote)
    if line.ending in NOT_DONE:
        return words.practise_ending(step, line.ending)
    if line.slips:
        return words.practise_slip(step, line.first, number.expected if number else "", line.slips[0])
    if line.cues:
        return words.practise_help(step, line.cues)
    if line.ending not in DONE_WELL and line.first and line.first != line.final:
        return words.practise_answer(step, line.first, line.final)
    return words.practise_ending(step, line.ending)
