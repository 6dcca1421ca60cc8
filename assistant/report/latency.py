"""How long a learner waited for each spoken answer, from the entries of a record."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import median

STAGES = ("decided_ms", "understood_ms", "recorded_ms", "sounded_ms")
"""The stages of an entry of kind ``latency``, each in ms after the learner's last sound."""


@dataclass(frozen=True)
class Stage:
    """One stage over several answers, ms after the learner's last sound.

    Attributes:
        median_ms, most_ms: the middle one, and the one that 95 of 100 do not exceed.
    """

    median_ms: int
    most_ms: int


@dataclass(frozen=True)
class Latency:
    """Spoken answers of one sort.

    Attributes:
        sort: "confirmations", "numbers" or "other".
        answers: how many.
        stages: by the names in `STAGES`.
    """

    sort: str
    answers: int
    stages: Mapping[str, Stage]


def latencies(entries: Sequence[Mapping[str, object]]) -> tuple[Latency, ...]:
    """What the record says, by sort of answer; empty where no answer was timed."""
    answers = {entry.get("sequence"): entry for entry in entries}
    by_sort: dict[str, list[Mapping[str, object]]] = {}
    for entry in entries:
        if entry.get("kind") == "latency":
            by_sort.setdefault(_sort(answers.get(entry.get("of"), {})), []).append(entry)
    return tuple(
        Latency(sort, len(by_sort[sort]), {stage: _stage(by_sort[sort], stage) for stage in STAGES})
        for sort in ("confirmations", "numbers", "other")
        if sort in by_sort
    )


def _sort(answer: Mapping[str, object]) -> str:
    meaning = answer.get("meaning")
    kind = meaning.get("kind") if isinstance(meaning, Mapping) else None
    if kind in ("confirm", "done"):
        return "confirmations"
    return "numbers" if kind == "number" else "other"


def _stage(entries: Sequence[Mapping[str, object]], name: str) -> Stage:
    figures = sorted(figure for entry in entries if isinstance(figure := entry.get(name), int))
    if not figures:
        return Stage(0, 0)
    return Stage(round(median(figures)), figures[min(len(figures) - 1, len(figures) * 95 // 100)])
