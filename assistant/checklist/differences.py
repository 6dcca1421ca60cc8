"""What changed between two checklists, step by step, in words."""

from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher

from assistant.checklist.model import Checklist, Condition, Step, TroublePlan
from assistant.checklist.rehearsal import expected
from assistant.spoken import ENGLISH

_HEAD = ("title", "version", "purpose", "order", "cautions", "equipment", "sources", "pass_rule", "abbreviations")
_WORDS = {
    "part": "heading",
    "say": "line",
    "more": "longer line",
    "hint": "cue",
    "stronger": "stronger cues",
    "why": "reason",
    "sources": "sources",
    "if_wrong": "advice when not right",
    "tries_spent": "what is said when the tries are spent",
    "pass_rule": "rule for passing",
    "pause_s": "listening pause",
}


@dataclass(frozen=True)
class Difference:
    """One thing that changed.

    Attributes:
        step: the step's id; "" for the head.
        kind: "head", "added", "taken out", "moved", "renamed" or "changed".
        words: what changed, a sentence.
    """

    step: str
    kind: str
    words: str


def differences(before: Checklist, after: Checklist) -> tuple[Difference, ...]:
    """Every difference: the head, then the steps in the order of the later checklist, then those taken out."""
    return (*_head(before, after), *_steps(before, after))


def _head(before: Checklist, after: Checklist) -> Iterator[Difference]:
    for name in _HEAD:
        old, new = getattr(before, name), getattr(after, name)
        if old != new:
            yield Difference("", "head", _changed(name.replace("_", " "), old, new))
    old_plans, new_plans = (tuple(map(_plan, one.troubles)) for one in (before, after))
    if old_plans != new_plans:
        yield Difference("", "head", _changed("what to do about trouble", old_plans, new_plans))


def _steps(before: Checklist, after: Checklist) -> Iterator[Difference]:
    old = {step.id: step for step in before.steps}
    new = {step.id: step for step in after.steps}
    renamed = _renamed(old, new)
    moved = _moved([renamed.get(name, name) for name in old], list(new), renamed)
    known_as = {name: earlier for earlier, name in renamed.items()}
    for number, step in enumerate(after.steps, 1):
        earlier = old.get(known_as.get(step.id, step.id))
        if earlier is None:
            yield Difference(step.id, "added", f'added as step {number}: "{step.say}"{_marks(step)}')
            continue
        if earlier.id != step.id:
            yield Difference(step.id, "renamed", f"called {earlier.id} before")
        if step.id in moved:
            was = before.place(earlier.id) + 1
            yield Difference(step.id, "moved", f"moved from place {was} to place {number}")
        for words in _inside(earlier, step, renamed):
            yield Difference(step.id, "changed", words)
    for name, step in old.items():
        if name not in new and name not in renamed:
            yield Difference(name, "taken out", f'taken out: "{step.say}"{_marks(step)}')


def _renamed(old: dict[str, Step], new: dict[str, Step]) -> dict[str, str]:
    """Steps whose id alone is another: the earlier id, and the later one."""
    gone = {step.say: name for name, step in old.items() if name not in new}
    return {gone[step.say]: name for name, step in new.items() if name not in old and step.say in gone}


def _moved(old: list[str], new: list[str], renamed: dict[str, str]) -> set[str]:
    """As few steps as make one order of the other."""
    common = [name for name in old if name in new]
    now = [name for name in new if name in common]
    blocks = SequenceMatcher(None, common, now, autojunk=False).get_matching_blocks()
    return set(now) - {name for block in blocks for name in now[block.b : block.b + block.size]}


def _inside(old: Step, new: Step, renamed: dict[str, str]) -> Iterator[str]:
    """What changed in one step; that another step is called otherwise now is no change of this one."""
    for name, yes, no in (
        ("critical", "is critical now", "is no longer critical"),
        ("gate", "is a gate now", "is no longer a gate"),
        ("seen", "must be seen now", "need no longer be seen"),
    ):
        if getattr(old, name) is not getattr(new, name):
            yield yes if getattr(new, name) else no
    for name, words in _WORDS.items():
        if name in Step.model_fields and getattr(old, name) != getattr(new, name):
            yield _changed(words, getattr(old, name), getattr(new, name))
    if old.expect != new.expect:
        was, now = expected(old), expected(new)
        yield f"expected was {was}, is {now}" if was != now else "what is expected has other details"
    after = tuple(renamed.get(name, name) for name in old.after)
    if after != new.after:
        yield _changed("what must come first", after, new.after)
    reopen = tuple(renamed.get(name, name) for name in old.reopen)
    if reopen != new.reopen:
        yield _changed("what is asked again once a fault is put right", reopen, new.reopen)
    if old.looks_at != new.looks_at:
        yield _changed("what at the bench it looks at", old.looks_at, new.looks_at)
    taken = tuple(renamed.get(name, name) for name in old.takes_back)
    if taken != new.takes_back:
        yield _changed("what a finding takes back", taken, new.takes_back)
    if old.way_on != new.way_on:
        yield _changed("the way on from a fault", old.way_on, new.way_on)
    if old.applies != new.applies:
        yield _changed("when it applies", _conditions(old.applies), _conditions(new.applies))
    if old.tries != new.tries:
        yield _changed("allowed tries", old.tries or "no limit", new.tries or "no limit")
    if old.expires != new.expires:
        yield _changed("when settings are lost", _expiry(old), _expiry(new))


def _changed(name: str, old: object, new: object) -> str:
    if isinstance(old, tuple) and isinstance(new, tuple):
        out = [f'without "{entry}"' for entry in old if entry not in new]
        come = [f'with "{entry}"' for entry in new if entry not in old]
        return f"{name}: {', '.join(out + come) or 'in another order'}"
    if not old or not new:
        return f'{name}: "{new}" is new' if new else f'{name}: "{old}" was taken out'
    return f'{name}: was "{old}", is "{new}"'


def _plan(plan: TroublePlan) -> str:
    back = f", back to {plan.back_to}" if plan.back_to else ""
    again = f", again {', '.join(plan.reopen)}" if plan.reopen else ""
    where = f", at {', '.join(plan.at)}" if plan.at else ""
    return f"{plan.kind}: {plan.say}{back}{again}{where}"


def _conditions(conditions: tuple[Condition, ...]) -> str:
    return "; ".join(f"not where {condition.unmet_reason(ENGLISH.sentences)}" for condition in conditions) or "always"


def _expiry(step: Step) -> str:
    return f"after {step.expires.after_s} s, back to {', '.join(step.expires.reopen)}" if step.expires else ""


def _marks(step: Step) -> str:
    marks = [name for name, there in (("critical", step.critical), ("a gate", step.gate)) if there]
    return f" ({', '.join(marks)})" if marks else ""
