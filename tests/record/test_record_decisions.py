"""What an instructor adds behind the seal: its form, what is refused and why, and which decision counts."""

from dataclasses import replace

import pytest

from assistant.errors import UsageError
from assistant.record.decisions import LONGEST_REASON, Decision, Rating, Wish, body_of, standing
from tests.record.examples import at

SIGNER = "M. Lindqvist, RN"
SEAL = {"kind": "finished", "seal": {"count": 1}, "outcome": "passed", "results": {"steps": [{"id": "a"}, {"id": "b"}]}}
PASSED = ({"kind": "opened"}, SEAL)
SIGNED = (*PASSED, {"kind": "signed off", "signature": "s"})


def ended(outcome: str) -> tuple[dict[str, object], ...]:
    """A record with this outcome."""
    return ({"kind": "opened"}, {**SEAL, "outcome": outcome})


def by_own_report(*unseen: str, judge: bool = False) -> tuple[dict[str, object], ...]:
    """A check-off with steps that nobody saw, or with findings that only an instructor can judge."""
    steps = [{"id": name, "to_be_seen": name in unseen} for name in "abc"]
    results = {"steps": steps, "to_judge": ["One finding was not laid out."] if judge else []}
    return ({"kind": "opened"}, {**SEAL, "outcome": "complete by own report", "results": results})


WISH = Wish(Decision.PASSED, SIGNER)
NOT_PASSED = Wish(Decision.NOT_PASSED, SIGNER, "Not yet.")
WITHDRAWN = Wish(Decision.WITHDRAWN, SIGNER, "Wrong learner.")
OVERRULED = Wish(Decision.OVERRULED, SIGNER, "I saw it.", step="a", verdict="done unaided")
CORRECTED = Wish(Decision.CORRECTED, SIGNER, "A slip of the pen.", correction="It was bag 2.")

TAKEN = [
    (WISH, PASSED, "signed off", {}),
    (WISH, ended(""), "signed off", {}),
    (replace(WISH, reason="I stood beside."), ended("not passed"), "signed off", {}),
    (
        replace(WISH, rating=Rating.SUPERVISED),
        PASSED,
        "signed off",
        {"rating": "supervised", "rating_scale": "Bondy 1983"},
    ),
    (replace(NOT_PASSED, step="a"), PASSED, "signed off", {"step": "a"}),
    (NOT_PASSED, ended("stopped"), "signed off", {}),
    (NOT_PASSED, ({"kind": "opened", "simulated": True}, SEAL), "signed off", {}),
    (replace(WISH, seen=("all",)), by_own_report("a", "c"), "signed off", {"seen": ["a", "c"]}),
    (replace(WISH, seen=("a", "b")), by_own_report("a"), "signed off", {"seen": ["a", "b"]}),
    (replace(WISH, seen=("all",)), PASSED, "signed off", {}),
    (replace(WISH, reason="I asked her about it."), by_own_report("a"), "signed off", {}),
    (replace(WISH, reason="The bag did leak."), by_own_report(judge=True), "signed off", {}),
    (replace(NOT_PASSED, seen=("a",)), by_own_report("a", "c"), "signed off", {"seen": ["a"]}),
    (WISH, ended("stopped for cause"), "signed off", {}),
    (WITHDRAWN, SIGNED, "sign-off withdrawn", {}),
    (OVERRULED, PASSED, "verdict overruled", {"step": "a", "verdict": "done unaided"}),
    (OVERRULED, ({"kind": "opened"}, {"seal": {}}), "verdict overruled", {"step": "a", "verdict": "done unaided"}),
    (CORRECTED, PASSED, "correction", {"correction": "It was bag 2."}),
    (replace(NOT_PASSED, reason="x" * LONGEST_REASON), PASSED, "signed off", {}),
]


@pytest.mark.parametrize(("wish", "entries", "kind", "more"), TAKEN)
def test_a_decision_becomes_an_entry(wish, entries, kind, more):
    """It says who decided what and why, and nothing that does not apply."""
    assert body_of(wish, entries, at(9)) == {
        "kind": kind,
        "at": at(9),
        "source": "instructor",
        "signer": SIGNER,
        "decision": wish.decision.value,
        "reason": wish.reason,
        **more,
    }


RIGHT = ("A correction says what is right.", "Give --decision corrected with --correction and --reason.")
REASON = "Give it with --reason."
OPTIONS = (
    "The options are --step ID and --verdict, one of: not applicable, left out, not seen by the instructor, wrong,"
    " found, and not put right,"
    " corrected by the learner, done after a cue, out of order, done unaided."
)
REFUSED = [
    (replace(WISH, signer=""), PASSED, "A sign-off needs the signer's name.", "Give it with --signer."),
    *(
        (replace(CORRECTED, **{text: "x" * 2001}), PASSED, "That is longer than 2,000 characters.", "Say it shorter.")
        for text in ("signer", "reason", "correction")
    ),
    (
        replace(WISH, step="a"),
        PASSED,
        "A pass is for the whole attempt, not for a step.",
        "Leave --step out, or overrule the step.",
    ),
    (
        WISH,
        ({"kind": "opened", "simulated": True}, SEAL),
        "A simulated learner did this: there is nobody to pass.",
        "Sign the attempt of a person.",
    ),
    *(
        (
            replace(WISH, reason="I stood beside."),
            ended(outcome),
            "This attempt was not completed, so it cannot be passed.",
            "Sign it not-passed, and have it done again.",
        )
        for outcome in ("stopped", "not completed")
    ),
    (
        WISH,
        ended("not passed"),
        "The result of the record is: not passed. To pass the attempt nevertheless needs a reason.",
        REASON,
    ),
    (replace(NOT_PASSED, reason=""), PASSED, "The decision not-passed needs a reason.", REASON),
    *(
        (replace(wish, reason=""), SIGNED, f"The decision {wish.decision.value} needs a reason.", REASON)
        for wish in (WITHDRAWN, OVERRULED, CORRECTED)
    ),
    *(
        (
            replace(wish, rating=Rating.MARGINAL),
            SIGNED,
            f"The decision {wish.decision.value} takes no rating.",
            "A rating goes with passed or not-passed.",
        )
        for wish in (WITHDRAWN, OVERRULED, CORRECTED)
    ),
    *(
        (WITHDRAWN, entries, "No sign-off stands that could be withdrawn.", "Sign first, or leave it as it is.")
        for entries in (PASSED, (*SIGNED, {"kind": "sign-off withdrawn", "signature": "s"}))
    ),
    *(
        (wish, PASSED, "To overrule a verdict, give the step and the new verdict.", OPTIONS)
        for wish in (replace(OVERRULED, step=""), replace(OVERRULED, verdict=""), replace(OVERRULED, verdict="fine"))
    ),
    (
        replace(WISH, seen=("a",)),
        by_own_report("a", "b", "c"),
        "These steps have to be seen, and nobody has marked them: b, c.",
        "Mark what you saw with --seen ID, or --seen all; or give a reason with --reason.",
    ),
    (
        WISH,
        by_own_report(judge=True),
        "The record holds findings that only you can judge.",
        "Say with --reason how you judge them.",
    ),
    (replace(WISH, seen=("d",)), by_own_report("a"), "The record has no step d.", "Its steps are: a, b, c."),
    (
        replace(WITHDRAWN, seen=("a",)),
        SIGNED,
        "Steps are marked as seen with a sign-off.",
        "Give --decision passed or not-passed.",
    ),
    (replace(OVERRULED, step="c"), PASSED, "The record has no step c.", "Its steps are: a, b."),
    *((wish, SIGNED, *RIGHT) for wish in (replace(CORRECTED, correction=""), replace(WITHDRAWN, correction="x"))),
]


@pytest.mark.parametrize(("wish", "entries", "what", "remedy"), REFUSED)
def test_what_does_not_go_together_is_refused_with_what_to_do(wish, entries, what, remedy):
    """Each refusal says what is wrong and how to give it rightly."""
    with pytest.raises(UsageError) as caught:
        body_of(wish, entries, at(9))
    assert (caught.value.what, caught.value.remedy) == (what, remedy)


def signed(kind, **more):
    return {"kind": kind, "signature": "s", **more}


def test_the_last_decision_counts():
    """A new sign-off replaces the old one, a withdrawal ends it; the last overruling of each step counts."""
    first, second = signed("signed off", decision="passed"), signed("signed off", decision="not-passed")
    withdrawal = signed("sign-off withdrawn")
    one, other, again = (signed("verdict overruled", step=step, n=n) for n, step in enumerate("aba"))
    corrections = (signed("correction", correction="x"), signed("correction", correction="y"))
    entries = [*PASSED, first, second, one, other, again, *corrections]
    now = standing(entries)
    assert (now.sign_off, now.withdrawn, now.corrections) == (second, (), corrections)
    assert now.overruled == {"a": again, "b": other}
    after = standing([*entries, withdrawal, withdrawal])
    assert (after.sign_off, after.withdrawn) == (None, (withdrawal, withdrawal))
    assert standing([*entries, withdrawal, first]).sign_off == first
    assert list(standing([signed("verdict overruled")]).overruled) == [""]


def test_what_was_seen_counts_with_the_sign_off_that_counts():
    """Marks go with their sign-off: a withdrawn one leaves none behind."""
    marked = signed("signed off", seen=["a", "c"])
    assert standing([*PASSED, marked]).seen == {"a", "c"}
    assert standing([*PASSED, marked, signed("signed off")]).seen == set()
    assert standing([*PASSED, marked, signed("sign-off withdrawn")]).seen == set()


def test_what_is_not_signed_decides_nothing():
    """Entries of the attempt itself and unsigned ones behind the seal are passed over, and those after them count."""
    unsigned = ({"kind": kind} for kind in ("signed off", "sign-off withdrawn", "verdict overruled", "correction"))
    signature = signed("signed off")
    now = standing([*unsigned, signature, {"kind": "sign-off withdrawn"}])
    assert (now.sign_off, now.withdrawn, now.overruled, now.corrections) == (signature, (), {}, ())
