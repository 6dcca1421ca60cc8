"""Who passes: every checklist by every fault it can have, by every kind of learner: a sample of the bench."""

from collections import Counter

import pytest

from assistant.checklist.load import available
from assistant.learner import Character
from assistant.orders.planting import FAULTS
from tests.attempt.program import here
from tests.bench.learners import NO_FAULT, Ended, Trial, live, papers_of

SEED = 11
ALWAYS = (Character.ATTENTIVE, Character.UNAWARE)
BY_TURNS = tuple(character for character in Character if character not in ALWAYS)
LEAST_FAULTS = 1
"""Kinds of fault that every checklist of the library can find in some order."""


@pytest.fixture(scope="module", params=sorted(available()))
def lived(request) -> list[Ended]:
    """Every fault of one checklist, by those who see it and overlook it; by the others in turn."""
    ends = []
    for number, fault in enumerate((NO_FAULT, *FAULTS)):
        papers = papers_of(request.param, fault, SEED)
        if papers is not None:
            who = Character if fault == NO_FAULT else (*ALWAYS, BY_TURNS[number % len(BY_TURNS)])
            ends += [live(Trial(request.param, fault, character, SEED), papers) for character in who]
    return ends


def test_right_is_what_agrees_with_the_bench(lived: list[Ended]) -> None:
    """The rules of `tests.bench.learners`, at one seed."""
    assert [(one.trial, one.breaches) for one in lived if one.breaches] == []


def test_there_is_something_to_find(lived: list[Ended]) -> None:
    """The rules are not kept because nothing was laid out."""
    kinds = Counter(one.trial.fault for one in lived)
    assert len(kinds) > LEAST_FAULTS
    assert all(count > len(ALWAYS) for count in kinds.values())


@pytest.mark.parametrize(
    ("character", "code", "outcome"),
    [
        ("attentive", 0, "stopped for cause"),
        ("unaware", (3, 4), None),
        ("yes-sayer", (3, 4), None),
        ("over-cautious", (0, 3, 4), None),
        ("careless", (0, 3), None),
    ],
)
def test_the_planted_allergy(capsys, tmp_path, character: str, code, outcome: str | None) -> None:
    """Ampicillin is ordered for somebody who is allergic to penicillin: whoever does not stop does not pass."""
    ended = here(
        capsys,
        *("demo", "lock-infusion", "--order", "oh-114", "--mode", "check-off", "--json"),
        *("--as", character, "--records", str(tmp_path)),
    )
    assert ended.code in (code if isinstance(code, tuple) else (code,))
    results = ended.last["results"]
    assert [fault["what"] for fault in results["faults"]] or ended.code == 4
    if outcome is not None:
        assert ended.last["outcome"] == outcome
    if character in ("unaware", "yes-sayer"):
        assert not results["passed"]


def test_help_names_every_kind(capsys) -> None:
    """`demo --help` says who can be simulated."""
    ended = here(capsys, "demo", "--help")
    assert all(character.value in " ".join(ended.lines) for character in Character)
