"""What a reader must know before relying on a record: in words, never by colour alone."""

from collections.abc import Iterator, Mapping, Sequence

from assistant.record.chain import Problem
from assistant.record.verify import Verdict
from assistant.report.content import Ended, Trust
from assistant.report.reading import text


def ended(entries: Sequence[Mapping[str, object]], verdict: Verdict) -> Ended:
    """How the attempt ended, as far as the entries that hold can tell."""
    seal = next((entry for entry in entries if "seal" in entry), None)
    if seal is not None:
        outcome = text(seal.get("outcome"))
        return Ended(outcome) if outcome in list(Ended) else Ended.NOT_KNOWN
    if not verdict.intact and verdict.problem is not Problem.TORN_TAIL:
        return Ended.NOT_KNOWN
    return Ended.STOPPED if entries[-1].get("verdict") == "stopped" else Ended.INTERRUPTED


def trust(
    file: str, verdict: Verdict, opening: Mapping[str, object], how: Ended, papers_problem: str, *, tells: bool = True
) -> Trust:
    """The verdict in words, and every warning, the gravest first.

    Args:
        file: the record's file name.
        verdict: what verification found.
        opening: the first entry.
        how: how the attempt ended.
        tells: what follows from the order is told.
        papers_problem: why checklist or order of the attempt are not at hand; empty if they are.
    """
    warnings = [*_on_the_record(verdict, how)]
    if papers_problem:
        warnings.append(
            f"The checklist and the order of this attempt are not at hand: {papers_problem} "
            "Workings, reasons and the picture are left out."
        )
    if not tells:
        warnings.append(
            "This check-off can be taken up again: what follows from its order is left out until it is sealed."
        )
    if text(opening.get("simulated")):
        warnings.append(f"No person did this: a simulated learner did ({text(opening['simulated'])}).")
    if text(opening.get("waits")) == "short":
        warnings.append("Timed waits were cut short, for a rehearsal.")
    return Trust(
        file=file,
        whole=verdict.ok,
        warnings=tuple(warnings),
        statement=_statement(verdict),
        notes=verdict.notes,
        count=verdict.count,
    )


def _on_the_record(verdict: Verdict, how: Ended) -> Iterator[str]:
    """What is wrong with the record; that it is open is told beside another fault as well."""
    if verdict.problem is Problem.TORN_TAIL:
        what = "" if verdict.sealed else ", as after a crash"
        yield (
            f"The end of this record is torn{what}. {verdict.why} It was never acknowledged; every complete entry "
            "before it holds."
        )
    elif verdict.problem in (Problem.SOUND_MISSING, Problem.SOUND_DIFFERS):
        yield (
            f"The sound kept beside this record does not hold (line {verdict.line}: {verdict.problem}). "
            f"{verdict.why} Every entry holds."
        )
    elif verdict.problem is Problem.UNKNOWN_KEY:
        yield f"This record is signed with a key that is not known on this machine. {verdict.why}"
    elif verdict.problem not in (None, Problem.NOT_SEALED):
        where = f"line {verdict.line}: " if verdict.line else ""
        entries = f"{verdict.count} {'entry that holds' if verdict.count == 1 else 'entries that hold'}"
        yield (
            f"This record was changed or is damaged ({where}{verdict.problem}). {verdict.why} Only the {entries} "
            "before the damage are reported. Do not sign on the strength of this report."
        )
    if verdict.sealed or how is Ended.NOT_KNOWN:
        return
    if how is Ended.STOPPED:
        yield "This record is not sealed: the attempt was stopped before its end. It can be resumed."
    else:
        yield (
            "This record is not sealed: the attempt was interrupted, still goes on, or its end was cut off. "
            "What follows is how things stood at the last entry."
        )


def _statement(verdict: Verdict) -> str:
    entries = f"{verdict.count:,} {'entry' if verdict.count == 1 else 'entries'}"
    if not verdict.intact and verdict.problem is not Problem.TORN_TAIL:
        return f"The record does not hold: {entries} before the damage follow from each other."
    if not verdict.sealed:
        return f"The record is not closed: {entries}, each follows from the one before it, and nothing shows its end."
    holds = f"{entries}, each follows from the one before it, and a seal closes the attempt"
    return f"The record is whole: {holds}." if verdict.ok else f"The record holds but for what is said above: {holds}."
