"""What a reader must know before relying on a record: in words, never by colour alone."""

from collections.abc import Mapping, Sequence

from assistant.record.chain import Problem
from assistant.record.verify import Verdict
from assistant.report.content import Ended, Trust
from assistant.report.reading import text

_OPEN = (Problem.NOT_SEALED, Problem.TORN_TAIL)
_SOUND = (Problem.SOUND_MISSING, Problem.SOUND_DIFFERS)


def ended(entries: Sequence[Mapping[str, object]], verdict: Verdict) -> Ended:
    """How the attempt ended, as far as the entries that hold can tell."""
    seal = next((entry for entry in entries if "seal" in entry), None)
    if seal is not None:
        outcome = text(seal.get("outcome"))
        told = (Ended.PASSED, Ended.NOT_PASSED, Ended.NOT_COMPLETED, Ended.STOPPED)
        return Ended(outcome) if outcome in told else Ended.NOT_KNOWN
    if verdict.problem not in (*_OPEN, *_SOUND):
        return Ended.NOT_KNOWN
    last = entries[-1]
    return Ended.STOPPED if last.get("verdict") == "stopped" else Ended.INTERRUPTED


def trust(file: str, verdict: Verdict, opening: Mapping[str, object], how: Ended, papers_problem: str) -> Trust:
    """The verdict in words, and every warning, the gravest first.

    Args:
        file: the record's file name.
        verdict: what verification found.
        opening: the first entry.
        how: how the attempt ended.
        papers_problem: why checklist or order of the attempt are not at hand; empty if they are.
    """
    warnings = [*_on_the_record(verdict, how)]
    if papers_problem:
        warnings.append(
            f"The checklist and the order of this attempt are not at hand: {papers_problem} "
            "Workings, reasons and the picture are left out."
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


def _on_the_record(verdict: Verdict, how: Ended) -> list[str]:
    match verdict.problem:
        case None:
            return []
        case Problem.NOT_SEALED if how is Ended.STOPPED:
            return ["This record is not sealed: the attempt was stopped before its end. It can be resumed."]
        case Problem.NOT_SEALED:
            return [
                "This record is not sealed: the attempt was interrupted, still goes on, or its end was cut off. "
                "What follows is how things stood at the last entry."
            ]
        case Problem.TORN_TAIL if verdict.sealed:
            return [f"The end of this record is torn. {verdict.why} Everything up to the seal holds."]
        case Problem.TORN_TAIL:
            return [
                f"The end of this record is torn, as after a crash. {verdict.why} It was never acknowledged; "
                "what follows is how things stood at the last complete entry. This record is not sealed."
            ]
        case Problem.UNKNOWN_KEY:
            return [f"This record is signed with a key that is not known on this machine. {verdict.why}"]
        case Problem.SOUND_MISSING | Problem.SOUND_DIFFERS as problem:
            return [f"The sound kept beside this record does not hold (line {verdict.line}: {problem}). {verdict.why}"]
        case problem:
            where = f"line {verdict.line}: " if verdict.line else ""
            entries = f"{verdict.count} {'entry that holds' if verdict.count == 1 else 'entries that hold'}"
            return [
                f"This record was changed or is damaged ({where}{problem}). {verdict.why} Only the {entries} "
                "before the damage are reported. Do not sign on the strength of this report."
            ]


def _statement(verdict: Verdict) -> str:
    entries = f"{verdict.count:,} {'entry' if verdict.count == 1 else 'entries'}"
    if verdict.ok:
        return f"The record is whole: {entries}, each follows from the one before it, and a seal closes them."
    if verdict.problem is Problem.UNKNOWN_KEY:
        return f"The record is whole and sealed: {entries}; it is signed by a key that is not known here."
    if verdict.problem in _SOUND:
        return f"The entries of the record are whole: {entries}; the sound beside it is not what was kept."
    if verdict.problem in _OPEN:
        return f"The record is not closed: {entries}, each follows from the one before it, and nothing shows its end."
    return f"The record does not hold: {entries} before the damage follow from each other."
