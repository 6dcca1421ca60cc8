"""Rules about numbers: keys, units, ranges, waits."""

import re
from collections.abc import Iterator
from decimal import Decimal

from assistant.checklist.finding import Bench, Complaint, error, warning
from assistant.checklist.library import nearest
from assistant.checklist.model import NameAsked, NumberAsked, Step, WaitAsked
from assistant.dosing import show
from assistant.dosing.units import unit
from assistant.errors import QuantityError
from assistant.spoken import ENGLISH, expect, say_number
from assistant.text import quoted

LONGEST_WAIT_S = 900
"""A wait at a lab station beyond this is more likely a wrong unit (common practice, no source)."""
SHORTEST_EXPIRY_S = 10
"""Nobody reaches the next step faster (common practice, no source)."""
SHORTEST_WAIT_S = 3
"""A shorter wait is more likely a wrong unit (common practice, no source)."""
_WAIT = re.compile(r"(?:(\d+)\s*(?:to|-|\u2013)\s*)?(\d+)\s*(s\b|sec\b|seconds?\b|min\b|minutes?\b)", re.IGNORECASE)
_NUMBERS = {
    said.replace(" ", between): number
    for number in range(100)
    for said in [say_number(Decimal(number))]
    for between in (" ", "-")
}
_IN_WORDS = re.compile(rf"\b(?:{'|'.join(sorted(_NUMBERS, key=len, reverse=True))})\b", re.IGNORECASE)

_OTHERWISE_COUNTED = {"mg": "dose"}
"""By the unit of a dose in the key, the kind of what is no mass: units and milliequivalents."""


def key(step: Step, _number: int, bench: Bench) -> Iterator[Complaint]:
    """A number or a name must be one that the answer key holds, in a unit of its kind."""
    asked = step.expect
    if not isinstance(asked, NumberAsked | NameAsked):
        return
    if asked.key and asked.key not in bench.known.keys:
        yield error(
            "key-known",
            ("expect", "key"),
            f"the answer key holds nothing called {quoted(asked.key)}.",
            nearest(asked.key, bench.known.keys) or f"It holds: {', '.join(bench.known.keys)}.",
        )
    if isinstance(asked, NameAsked):
        if bench.known.keys.get(asked.key) is not None:
            yield error(
                "key-kind", ("expect", "key"), f"{quoted(asked.key)} is a number, not a name.", 'Write kind = "number".'
            )
        return
    try:
        written = unit(asked.unit)
    except QuantityError as cause:
        yield error("unit-known", ("expect", "unit"), cause.what, cause.remedy)
        return
    if written.name != asked.unit:
        yield warning(
            "unit-spelling",
            ("expect", "unit"),
            f"the trade prints {quoted(asked.unit)} as {quoted(written.name)}.",
            f'Write unit = "{written.name}".',
        )
    if asked.key in bench.known.keys:
        wanted = bench.known.keys[asked.key]
        if wanted is None:
            yield error(
                "key-kind", ("expect", "key"), f"{quoted(asked.key)} is a name, not a number.", 'Write kind = "name".'
            )
        elif written.kind not in (unit(wanted).kind, _OTHERWISE_COUNTED.get(wanted)):
            yield error(
                "unit-fits",
                ("expect", "unit"),
                f"{quoted(asked.unit)} measures a {written.kind}, and {quoted(asked.key)} is a {unit(wanted).kind}.",
                f"Use a unit such as {wanted}.",
            )


def answerable(step: Step, _number: int, bench: Bench) -> Iterator[Complaint]:
    """The order that the checklist names answers the step, and its answer lies in the range."""
    asked, order = step.expect, bench.sheet.checklist.order
    answers = bench.known.answers.get(order)
    if answers is None or not isinstance(asked, NumberAsked | NameAsked) or asked.key not in bench.known.keys:
        return
    if asked.key not in answers:
        if step.unmet(answers, {}) is None:
            yield error(
                "key-in-order",
                ("expect", "key"),
                f"the order {order} has no {asked.key}, so this step cannot be answered.",
                f'Name another order, or let the step apply where it is: applies = [{{ key = "{asked.key}" }}].',
            )
        return
    right = answers[asked.key]
    if isinstance(right, str) or not isinstance(asked, NumberAsked):
        return
    try:
        value = right.in_unit(asked.unit)
    except QuantityError:  # told by another rule
        return
    if (asked.lowest is not None and value < asked.lowest) or (asked.highest is not None and value > asked.highest):
        yield error(
            "range",
            ("expect", "lowest"),
            f"the order {order} asks for {show(right)}, which the range does not allow.",
            "Widen the range, or take it out.",
        )


def ranges(step: Step, _number: int, _bench: Bench) -> Iterator[Complaint]:
    """A range can be met, and a tolerance leaves something to be wrong."""
    asked = step.expect
    if not isinstance(asked, NumberAsked):
        return
    low = asked.lowest if asked.lowest is not None else Decimal(0)
    high = asked.highest
    if high is not None and low > high:
        yield error(
            "range",
            ("expect", "lowest"),
            f"no number is at least {low} and at most {high}.",
            "Change lowest and highest round.",
        )
    elif low < 0 or (high is not None and high < 0):
        yield error("range", ("expect", "lowest"), "no quantity of this trade is below zero.", "Begin the range at 0.")
    elif high is not None and low == high:
        yield warning(
            "range",
            ("expect", "highest"),
            f"the range allows nothing but {high}.",
            "Compare with a key, or widen the range.",
        )
    if low > expect.NumberExpected("mL").highest:
        yield error(
            "range", ("expect", "lowest"), f"a number of {low} or more cannot be said.", "Ask in a larger unit."
        )
    if asked.within and not asked.key:
        yield warning(
            "range", ("expect", "within"), "within is compared with no key.", "Widen the range, and take within out."
        )
    if asked.within and unit_kind(asked) == "rate" and asked.unit != "gtt/min":
        yield warning(
            "range",
            ("expect", "within"),
            "a rate that is set on a pump is right or wrong, and never nearly right.",
            "Take within out; it is for what is counted or measured.",
        )


def unit_kind(asked: NumberAsked) -> str:
    """The kind of quantity that is asked for; "" where the unit is unknown."""
    try:
        return unit(asked.unit).kind
    except QuantityError:
        return ""


def waits(step: Step, number: int, bench: Bench) -> Iterator[Complaint]:
    """A timed wait is as long as the line says, and as a lab session allows."""
    if step.expires is not None and step.expires.after_s < SHORTEST_EXPIRY_S:
        yield warning(
            "wait",
            ("expires", "after_s"),
            f"the settings are lost after {step.expires.after_s} seconds, before anyone can go on.",
            "Give seconds, for example after_s = 180.",
        )
    if step.expires is not None:
        yield from _waits_outlast(step, number, bench)
    if not isinstance(step.expect, WaitAsked):
        return
    seconds = step.expect.seconds
    if seconds < SHORTEST_WAIT_S:
        yield warning(
            "wait",
            ("expect", "seconds"),
            f"{seconds} s is over before it is noticed.",
            "Write the time in seconds, not in minutes.",
        )
    if seconds > LONGEST_WAIT_S:
        yield warning(
            "wait",
            ("expect", "seconds"),
            f"{seconds} seconds are {seconds // 60} minutes of waiting.",
            "Write the time in seconds; a longer wait belongs into a session of its own.",
        )
    # "Thirty seconds" is 30 seconds.
    said = list(_WAIT.finditer(_IN_WORDS.sub(lambda word: str(_NUMBERS[word[0].lower()]), step.say)))
    if said and not any(_says(seconds, time) for time in said):
        yield error(
            "wait-said",
            "say",
            f"the line says {said[0][2]} {said[0][3]}, and {seconds} seconds are waited for.",
            "Make them the same.",
        )


def _says(seconds: int, time: re.Match[str]) -> bool:
    """Whether a time that is said, or a range of times, means so many seconds."""
    factor = 60 if time[3].lower().startswith("min") else 1
    bounds = [int(part) * factor for part in time.groups()[:2] if part]
    return bounds[0] <= seconds <= bounds[-1]


def _waits_outlast(step: Step, number: int, bench: Bench) -> Iterator[Complaint]:
    """Settings that are lost while the checklist itself makes the learner wait."""
    if step.expires is None:
        return
    last = max(bench.at[name] for name in step.expires.reopen)
    between = sum(
        other.expect.seconds for other in bench.earlier(number)[last + 1 :] if isinstance(other.expect, WaitAsked)
    )
    if between >= step.expires.after_s:
        yield warning(
            "wait",
            ("expires", "after_s"),
            f"the waits before this step take {between} s, and the settings are lost after {step.expires.after_s} s.",
            "Allow more time, or wait before the settings are entered.",
        )


def unit_said(step: Step, _number: int, bench: Bench) -> Iterator[Complaint]:
    """The line asks for the unit in which the number is taken."""
    asked = bench.sheet.checklist.number_asked(step)
    said = re.search(r"\bhow many ([a-z]+)", step.say, re.IGNORECASE)
    if asked is None or said is None:
        return
    try:
        named, taken = ENGLISH.canonical(said[1].lower()), unit(asked.unit).name.partition("/")[0]
    except QuantityError:
        return
    if named != taken:
        yield error(
            "unit-said",
            "say",
            f"the line asks for {said[1].lower()}, and the number is taken in {asked.unit}.",
            "Make them the same.",
        )


def gives_answer(step: Step, _number: int, bench: Bench) -> Iterator[Complaint]:
    """A line that asks for a number holds none: it could be the right one."""
    asked = bench.sheet.checklist.number_asked(step)
    if asked is None:
        return
    for name, texts in (("say", (step.say,)), ("hint", (step.hint,)), ("stronger", step.stronger)):
        if any(_may_answer(found, asked) for text in texts for found in _NUMBER.finditer(text)):
            yield error(
                "gives-answer",
                name,
                f"{name} holds a number, and the step asks for one.",
                "Take the number out: it comes from the order.",
            )


_NUMBER = re.compile(r"(?P<before>[A-Za-z]+ )?(?P<number>\d[\d.,]*)(?P<behind>\s?%|[ -]?[A-Za-z/]+)?")
_NUMBERED = frozenset({"bag", "pump", "line", "channel", "step", "page", "port", "bed", "bottle", "syringe", "second"})


def _may_answer(found: re.Match[str], asked: NumberAsked) -> bool:
    """Whether a number in a text could be what is asked for: not a strength, a numbered thing or another quantity."""
    behind = (found["behind"] or "").strip(" -")
    if behind == "%" or (found["before"] or "").strip().lower() in _NUMBERED:
        return False
    try:
        return unit(ENGLISH.canonical(behind)).kind == unit_kind(asked)
    except QuantityError:
        return True
