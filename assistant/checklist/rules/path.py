"""Rules about the way through a checklist: gates, what waits for what, what applies, what is opened again."""

from collections.abc import Iterator

from assistant.checklist.finding import Bench, Complaint, error, warning
from assistant.checklist.library import either, nearest
from assistant.checklist.model import (
    ChoiceAsked,
    Condition,
    DoubleCheckAsked,
    NameAsked,
    NumberAsked,
    ObservationAsked,
    QuestionAsked,
    Step,
)
from assistant.dosing.amount import parse_amount
from assistant.dosing.units import unit
from assistant.errors import QuantityError
from assistant.text import quoted


def gate(step: Step, number: int, bench: Bench) -> Iterator[Complaint]:
    """A gate waits for every earlier critical step: there is one, and none of them waits for a later step."""
    if not step.gate:
        return
    earlier = [before for before in bench.earlier(number) if before.critical]
    # A part is looked at alone: what comes before it stands in the checklist.
    if not earlier and not bench.sheet.is_part:
        yield warning(
            "gate-empty",
            "gate",
            "no critical step comes before this gate, so it keeps nothing back.",
            "Move it behind the steps that it should wait for, or make these critical.",
        )
    behind = [name for name in sorted(bench.needed[step.id]) if bench.at[name] > number]
    if behind:
        yield error(
            "gate-opens",
            "after",
            f"this gate can never open: it waits for {either(behind)}, which lies behind it.",
            "Name only earlier steps in the after of a gate.",
        )
    for before in earlier:
        late = [name for name in sorted(bench.needed[before.id]) if bench.at[name] >= number]
        if late:
            yield error(
                "gate-opens",
                "gate",
                f"this gate can never open: {quoted(before.id)} comes before it and waits for {either(late)}.",
                f"Take that out of the after of {quoted(before.id)}, or move the gate.",
            )


def waits_for(step: Step, number: int, bench: Bench) -> Iterator[Complaint]:
    """A step may wait only for steps that come before it, and never for itself."""
    if step.id in bench.needed[step.id]:
        yield error(
            "reachable",
            "after",
            "this step waits for itself by way of others, so it can never be closed.",
            "Break the circle: take one name out of after.",
        )
        return
    late = [name for name in step.after if bench.at[name] > number]
    if late and not step.gate:
        yield warning(
            "order-of-steps",
            "after",
            f"this step waits for {either(late)}, which comes later.",
            "Move the step behind what it waits for.",
        )


def double_check(step: Step, number: int, bench: Bench) -> Iterator[Complaint]:
    """A second person checks a number that was given before."""
    asked = step.expect
    if isinstance(asked, DoubleCheckAsked) and bench.at[asked.of] > number:
        yield error(
            "reachable",
            "expect",
            f"{quoted(asked.of)} comes after this step, so its number is not there yet.",
            "Move this step behind it.",
        )


def expiry(step: Step, number: int, bench: Bench) -> Iterator[Complaint]:
    """What is opened again must come before the step whose settings ran out."""
    if step.expires is None:
        return
    late = [name for name in step.expires.reopen if bench.at[name] > number]
    if late:
        yield error(
            "expiry",
            ("expires", "reopen"),
            f"{either(late)} comes after this step and cannot be opened again from it.",
            "Name only earlier steps in reopen.",
        )


def reopening(step: Step, number: int, bench: Bench) -> Iterator[Complaint]:
    """What is asked again after a fault comes before the step that finds it, and that step can find one."""
    late = [name for name in step.reopen if bench.at[name] > number]
    if late:
        yield error(
            "reopen",
            "reopen",
            f"{either(late)} comes after this step, so it is not asked again but asked anyway.",
            "Name only earlier steps in reopen.",
        )
    match step.expect:
        case QuestionAsked():
            return
        case ChoiceAsked(right=right) if right:
            return
    if step.reopen:
        yield error(
            "reopen",
            "reopen",
            "no answer to this step finds a fault, so nothing is ever asked again.",
            "Put it in a question, or in a choice that has a right answer.",
        )


def taking_back(step: Step, number: int, bench: Bench) -> Iterator[Complaint]:
    """What a finding proves false comes before the step that finds it, and that step can find something."""
    late = [name for name in step.takes_back if bench.at[name] > number]
    if late:
        yield error("reopen", "takes_back", f"{either(late)} comes after this step.", "Name only earlier steps.")
    finds = isinstance(step.expect, QuestionAsked) or (isinstance(step.expect, ChoiceAsked) and step.expect.right)
    for field in ("takes_back", "looks_at"):
        read = field == "looks_at" and isinstance(step.expect, NameAsked | NumberAsked)
        if getattr(step, field) and not finds and not read:
            yield error(
                "reopen",
                field,
                f"no answer to this step tells of a fault, so {field} does nothing.",
                "Put it in a question, or in a choice that has a right answer.",
            )


def applies(step: Step, number: int, bench: Bench) -> Iterator[Complaint]:
    """A step must be able to apply: its conditions can be met, all of them together."""
    for condition in step.applies:
        if condition.lab:
            continue  # which traits there are is checked on loading
        yield from (_about_order if condition.key else _about_step)(condition, number, bench)
    yield from _together(step.applies)


def _about_order(condition: Condition, _number: int, bench: Bench) -> Iterator[Complaint]:
    if condition.key not in bench.known.keys:
        yield error(
            "key-known",
            "applies",
            f"the answer key holds nothing called {quoted(condition.key)}.",
            nearest(condition.key, bench.known.keys) or f"It holds: {', '.join(bench.known.keys)}.",
        )
        return
    wanted = bench.known.keys[condition.key]
    if wanted is None:
        if condition.below or condition.above:
            yield error(
                "never-applies",
                "applies",
                f"{quoted(condition.key)} is a name, and never above or below anything.",
                "Compare it with equals.",
            )
        return
    for bound in filter(None, (condition.equals, condition.below, condition.above)):
        try:
            kind = unit(parse_amount(bound).unit).kind
        except QuantityError as cause:
            yield error("unit-known", "applies", cause.what, cause.remedy)
            continue
        if kind != unit(wanted).kind:
            yield error(
                "unit-fits",
                "applies",
                f"{quoted(bound)} is a {kind}, and {quoted(condition.key)} is a {unit(wanted).kind}.",
                f"Compare it with a number in {wanted}.",
            )


def _about_step(condition: Condition, number: int, bench: Bench) -> Iterator[Complaint]:
    asked = bench.sheet.checklist.steps[bench.at[condition.step]]
    if bench.at[condition.step] >= number:
        yield error(
            "never-applies",
            "applies",
            f"{quoted(condition.step)} does not come before this step, so it has no answer yet.",
            "Name an earlier step.",
        )
        return
    match asked.expect:
        case QuestionAsked(right=right):
            # Only the right answer closes a question, so only that one can stand when the next step comes.
            possible: tuple[str, ...] = (right,)
        case ChoiceAsked(choices=choices, right=right):
            possible = (right,) if right else choices
        case ObservationAsked():
            possible = ("seen",)
        case _:
            yield error(
                "never-applies",
                "applies",
                f"{quoted(condition.step)} is answered with nothing that a condition can compare.",
                "Name a step that expects a choice.",
            )
            return
    wrong = [name for name in condition.answer if name not in possible]
    if len(wrong) == len(condition.answer):
        yield error(
            "never-applies",
            "applies",
            f"{quoted(condition.step)} is never closed with {either(wrong)}, so this step never applies.",
            f"It is closed with {either(list(possible))}. To branch, expect a choice without right.",
        )
    elif wrong:
        yield warning(
            "never-applies",
            "applies",
            f"{quoted(condition.step)} is never closed with {either(wrong)}.",
            "Take it out of answer.",
        )


def _together(conditions: tuple[Condition, ...]) -> Iterator[Complaint]:
    """Two conditions about one thing must leave something."""
    for place, first in enumerate(conditions):
        for second in conditions[place:]:
            if (first.key, first.step, first.lab) == (second.key, second.step, second.lab) and _exclude(first, second):
                yield error(
                    "never-applies",
                    "applies",
                    f"what is asked of {quoted(first.key or first.step or str(first.lab))} cannot all be so at once.",
                    "Take one of the conditions out.",
                )
                return


def _exclude(first: Condition, second: Condition) -> bool:
    if first.step:
        return not set(first.answer) & set(second.answer)
    if first.present is not second.present:
        return True
    equals = {text.casefold() for text in (first.equals, second.equals) if text}
    above, below = first.above or second.above, second.below or first.below
    try:
        if above and below:
            low, high = parse_amount(above), parse_amount(below)
            return high.in_unit(low.unit) <= low.value
    except QuantityError:  # told by another rule
        return False
    return len(equals) > 1
