"""An attempt that is watched while it is lived: what the promises of the guide are held against."""

import pickle
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path

from assistant.checklist.load import load
from assistant.checklist.model import Checklist
from assistant.orders.fault import NOTHING_WRONG, Truth
from assistant.orders.key import KeyEntry
from assistant.orders.load import load_order
from assistant.orders.plausible import table
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of
from tests.guide.benches import BENCH, BENCH_KEY, LEAK, OTHER_PATIENT, WRONG_DRUG, truth
from tests.guide.kinds import KINDS
from tests.guide.lived import (
    CHECKLIST,
    KEY,
    Append,
    Effect,
    Event,
    Guide,
    InputEnded,
    Lived,
    Mode,
    Progress,
    Tone,
    guide,
    is_refused,
)

FOLDER = Path(__file__).parents[2] / "checklists"


@dataclass(frozen=True)
class Papers:
    """What an attempt is made of."""

    checklist: Checklist
    order: str
    key: Mapping[str, KeyEntry]
    truth: Truth = NOTHING_WRONG


@cache
def made_for_tests() -> tuple[Papers, ...]:
    """The short checklists of these tests, one of them with faults at its bench."""
    plain = tuple(Papers(checklist, "The order.", KEY) for checklist in (CHECKLIST, KINDS))
    faulty = truth(WRONG_DRUG, LEAK, OTHER_PATIENT)
    return (*plain, Papers(BENCH, "The order.", BENCH_KEY), Papers(BENCH, "The order.", BENCH_KEY, faulty))


@cache
def library() -> tuple[Papers, ...]:
    """Every checklist of the library with the order that belongs to it."""
    names = sorted(path.stem for path in FOLDER.glob("*.toml") if "[[steps]]" in path.read_text(encoding="utf-8"))
    checklists = [load(name) for name in names]
    orders = [load_order(checklist.order) for checklist in checklists]
    return tuple(
        Papers(checklist, order.sentence(), answer_key(order), truth_of(order, table()))
        for checklist, order in zip(checklists, orders, strict=True)
    )


@dataclass(frozen=True)
class Moment:
    """One event that was taken: its entry, the progress before and after it, what was last read back before it."""

    event: Event
    entry: Mapping[str, object]
    before: Progress
    after: Progress
    read_back: str


def apart(progress: Progress, before: Progress) -> Progress:
    """A copy that shares nothing with the guide, whatever the guide's own copying does.

    Pickling is the quickest way to one. Few steps change at an event: those that are as they were `before`, a copy that
    was made in this way, are taken from there.
    """
    changed = {name: step for name, step in progress.steps.items() if step != before.steps[name]}
    copied: Progress = pickle.loads(pickle.dumps(replace(progress, steps=changed)))  # noqa: S301 - written here
    copied.steps = {name: copied.steps.get(name, before.steps[name]) for name in progress.steps}
    return copied


@dataclass
class Script(Lived):
    """An attempt that is watched: each event is held against "nothing is done before it is on disk".

    Attributes:
        seed: what it was drawn from.
        moments: everything that was taken, in order.
        refused: events that were refused while an entry was on its way to the disk.
    """

    papers: Papers = field(default_factory=lambda: made_for_tests()[0])
    mode: Mode = Mode.PRACTICE
    pins: Mapping[str, str] = field(default_factory=dict)
    seed: str = ""
    moments: list[Moment] = field(default_factory=list)
    refused: int = 0

    def anew(self) -> Guide:
        """A guide with the same papers that has lived through nothing."""
        papers = self.papers
        return guide(self.mode, papers.checklist, papers.key, papers.order, papers.truth, **self.pins)

    @property
    def latest(self) -> Progress:
        """A copy of the progress as it was after the last event that was taken."""
        return self.moments[-1].after if self.moments else self.anew().progress

    def give(self, event: Event) -> list[Effect]:
        before, count = self.latest, len(self.entries)
        read_back = next((say.text for say in reversed(self.says) if say.tone is Tone.READ_BACK), "")
        effects = super().give(event)
        if len(self.entries) == count:
            assert self.guide.progress == before, f"{event} was refused, and changed something"
            return effects
        after = apart(self.guide.progress, before)
        self.moments.append(Moment(event, self.entries[-1], before, after, read_back))
        return effects

    def write(self, append: Append) -> None:
        # The entry is on its way: nothing is true yet, and nothing else is taken.
        assert self.guide.progress == self.latest, f"{append.body} was true before it was on disk"
        assert is_refused(self.guide, InputEnded(self.at)), f"something came between {append.body} and the disk"
        self.refused += 1
        super().write(append)
