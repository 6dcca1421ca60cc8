"""What an instructor can add behind the seal: decisions, corrections, ratings. Pure.

Nothing before is ever changed: each is a further signed entry with its reason, and a reader takes them in order.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from assistant.errors import UsageError
from assistant.guide.effects import Outcome
from assistant.guide.result import Ending


class Decision(StrEnum):
    """What an instructor decides."""

    PASSED = "passed"
    NOT_PASSED = "not-passed"
    WITHDRAWN = "withdrawn"
    OVERRULED = "overruled"
    CORRECTED = "corrected"


KINDS = {
    Decision.PASSED: "signed off",
    Decision.NOT_PASSED: "signed off",
    Decision.WITHDRAWN: "sign-off withdrawn",
    Decision.OVERRULED: "verdict overruled",
    Decision.CORRECTED: "correction",
}
"""The kind of entry that tells each decision."""

CLOSED = "closed"
"""Kind of the seal that an instructor puts on an attempt which its learner did not bring to its end."""

CAME, REFUSED = "instructor here", "refused"
"""Kind of the entry that somebody asked for the instructor, and its verdict where the code was wrong or missing."""

LONGEST_REASON = 2_000
"""Characters of a reason; a longer one belongs in a letter."""


class Rating(StrEnum):
    """Level of a clinical performance: K. N. Bondy, "Criterion-referenced definitions for rating scales in
    clinical evaluation", Journal of Nursing Education 22(9), 1983, 376-382.
    """  # noqa: D205 - the source is the summary

    INDEPENDENT = "independent"
    SUPERVISED = "supervised"
    ASSISTED = "assisted"
    MARGINAL = "marginal"
    DEPENDENT = "dependent"


_FROM_THE_END = (Ending.NOT_REACHED, Ending.NOT_ANSWERED, Ending.STOPPED_FOR)
"""What only the end of an attempt can make of a step."""
VERDICTS = tuple(ending.value for ending in Ending if ending not in _FROM_THE_END)
"""How an instructor can say that a step ended."""


@dataclass(frozen=True)
class Standing:
    """Where the decisions on an attempt stand now; entries are those of the record.

    Attributes:
        sign_off: the one that counts, None where there is none or it was withdrawn.
        withdrawn: the withdrawals, oldest first.
        overruled: the entry that counts for each step, by the step's id.
        corrections: all, oldest first.
        seen: ids of the steps that were marked as seen with the sign-off that counts.
    """

    sign_off: Mapping[str, object] | None
    withdrawn: tuple[Mapping[str, object], ...]
    overruled: Mapping[str, Mapping[str, object]]
    corrections: tuple[Mapping[str, object], ...]
    seen: frozenset[str] = frozenset()


def standing(entries: Iterable[Mapping[str, object]], deciding: Collection[int] | None = None) -> Standing:
    """Where the decisions stand after these entries of a record (whose signatures hold).

    Args:
        entries: oldest first.
        deciding: numbers of the signed entries whose signer was an instructor then; None takes every one.
    """
    sign_off = None
    withdrawn, corrections = [], []
    overruled = {}
    for entry in entries:
        if "signature" not in entry or (deciding is not None and entry.get("sequence") not in deciding):
            continue
        match entry.get("kind"):
            case "signed off":
                sign_off = entry
            case "sign-off withdrawn":
                sign_off = None
                withdrawn.append(entry)
            case "verdict overruled":
                overruled[str(entry.get("step", ""))] = entry
            case "correction":
                corrections.append(entry)
    marked = sign_off.get("seen") if sign_off is not None else None
    seen = frozenset(map(str, marked)) if isinstance(marked, list) else frozenset()
    return Standing(sign_off, tuple(withdrawn), overruled, tuple(corrections), seen)


@dataclass(frozen=True)
class Wish:
    """What an instructor wants to add; texts are empty where they do not apply.

    Attributes:
        signer: who signs: name and role.
        rating: level of the whole performance; None for none.
        step, verdict: the step that is overruled, and how it ended by the instructor's judgement.
        correction: what is right, where the record says something else.
        seen: ids of steps that the signer saw done, or `EVERY`.
    """

    decision: Decision
    signer: str
    reason: str = ""
    rating: Rating | None = None
    step: str = ""
    verdict: str = ""
    correction: str = ""
    seen: tuple[str, ...] = ()


EVERY = "all"
"""In place of the ids of steps: every one that has to be seen."""


def body_of(
    wish: Wish, entries: Iterable[Mapping[str, object]], at: str, deciding: Collection[int] | None = None
) -> dict[str, object]:
    """The body of the signed entry.

    Args:
        wish: what is to be added.
        entries: what stands in the record.
        at: UTC, ISO 8601.
        deciding: as for `standing`.

    Raises:
        UsageError: something is missing, does not go together, or does not fit the record.
    """
    entries = tuple(entries)
    seal = next((entry for entry in entries if "seal" in entry), {})
    _check_texts(wish)
    decision = wish.decision
    unseen = steps_to_be_seen(seal)
    seen = tuple(unseen) if wish.seen == (EVERY,) else wish.seen
    _check_seen(wish, seen, seal)
    if decision in (Decision.PASSED, Decision.NOT_PASSED):
        unseen = [name for name in unseen if name not in seen]
        simulated = bool(entries and entries[0].get("simulated"))
        judged = is_to_be_judged(seal)
        _check_sign_off(wish, unseen, str(seal.get("outcome", "")), judged=judged, simulated=simulated)
    elif wish.rating is not None:
        raise UsageError(f"The decision {decision} takes no rating.", "A rating goes with passed or not-passed.")
    elif not wish.reason:
        raise UsageError(f"The decision {decision} needs a reason.", "Give it with --reason.")
    if decision is Decision.WITHDRAWN and standing(entries, deciding).sign_off is None:
        raise UsageError("No sign-off stands that could be withdrawn.", "Sign first, or leave it as it is.")
    if decision is Decision.OVERRULED:
        _check_overruled(wish, seal)
    if (decision is Decision.CORRECTED) != bool(wish.correction):
        raise UsageError(
            "A correction says what is right.", "Give --decision corrected with --correction and --reason."
        )
    body: dict[str, object] = {
        "kind": KINDS[decision],
        "at": at,
        "source": "instructor",
        "signer": wish.signer,
        "decision": decision.value,
        "reason": wish.reason,
    }
    more = {
        "rating": wish.rating.value if wish.rating else "",
        "rating_scale": "Bondy 1983" if wish.rating else "",
        "step": wish.step,
        "verdict": wish.verdict,
        "correction": wish.correction,
    }
    body |= {name: text for name, text in more.items() if text}
    return body | ({"seen": list(seen)} if seen else {})


def _steps(seal: Mapping[str, object]) -> list[Mapping[str, object]]:
    results = seal.get("results")
    lines = results.get("steps") if isinstance(results, Mapping) else None
    return [line for line in lines if isinstance(line, Mapping)] if isinstance(lines, list) else []


def is_to_be_judged(seal: Mapping[str, object]) -> bool:
    """The result holds findings that only an instructor can judge."""
    results = seal.get("results")
    return isinstance(results, Mapping) and bool(results.get("to_judge"))


def steps_to_be_seen(seal: Mapping[str, object]) -> list[str]:
    """Ids of the steps that nobody saw and somebody has to."""
    return [str(line.get("id")) for line in _steps(seal) if line.get("to_be_seen")]


def _check_seen(wish: Wish, seen: tuple[str, ...], seal: Mapping[str, object]) -> None:
    if not seen:
        return
    if wish.decision not in (Decision.PASSED, Decision.NOT_PASSED):
        raise UsageError("Steps are marked as seen with a sign-off.", "Give --decision passed or not-passed.")
    known = [str(line.get("id")) for line in _steps(seal)]
    for name in seen:
        if name not in known:
            raise UsageError(f"The record has no step {name}.", f"Its steps are: {', '.join(known)}.")


def _check_texts(wish: Wish) -> None:
    if not wish.signer:
        raise UsageError("A sign-off needs the signer's name.", "Give it with --signer.")
    for text in (wish.signer, wish.reason, wish.correction):
        if len(text) > LONGEST_REASON:
            raise UsageError(f"That is longer than {LONGEST_REASON:,} characters.", "Say it shorter.")


def _check_sign_off(wish: Wish, unseen: list[str], outcome: str, *, judged: bool, simulated: bool) -> None:
    if wish.step and wish.decision is Decision.PASSED:
        raise UsageError("A pass is for the whole attempt, not for a step.", "Leave --step out, or overrule the step.")
    if wish.decision is Decision.PASSED and simulated:
        raise UsageError("A simulated learner did this: there is nobody to pass.", "Sign the attempt of a person.")
    if wish.decision is Decision.PASSED and outcome in (Outcome.STOPPED, Outcome.NOT_COMPLETED):
        raise UsageError(
            "This attempt was not completed, so it cannot be passed.", "Sign it not-passed, and have it done again."
        )
    if wish.decision is Decision.NOT_PASSED and not wish.reason:
        raise UsageError("The decision not-passed needs a reason.", "Give it with --reason.")
    if wish.decision is Decision.PASSED and unseen and not wish.reason:
        raise UsageError(
            f"These steps have to be seen, and nobody has marked them: {', '.join(unseen)}.",
            f"Mark what you saw with --seen ID, or --seen {EVERY}; or give a reason with --reason.",
        )
    if wish.decision is Decision.PASSED and judged and not wish.reason:
        raise UsageError("The record holds findings that only you can judge.", "Say with --reason how you judge them.")
    right = ("", Outcome.PASSED, Outcome.OWN_REPORT, Outcome.STOPPED_FOR_CAUSE)
    if wish.decision is Decision.PASSED and outcome not in right and not wish.reason:
        raise UsageError(
            f"The result of the record is: {outcome}. To pass the attempt nevertheless needs a reason.",
            "Give it with --reason.",
        )


def _check_overruled(wish: Wish, seal: Mapping[str, object]) -> None:
    if not wish.step or wish.verdict not in VERDICTS:
        raise UsageError(
            "To overrule a verdict, give the step and the new verdict.",
            f"The options are --step ID and --verdict, one of: {', '.join(VERDICTS)}.",
        )
    known = [str(line.get("id")) for line in _steps(seal)]
    if known and wish.step not in known:
        raise UsageError(f"The record has no step {wish.step}.", f"Its steps are: {', '.join(known)}.")
