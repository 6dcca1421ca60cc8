"""What a reader must know before relying on a record: in words, never by colour alone."""

from collections.abc import Iterator, Mapping, Sequence

from assistant.record.chain import Problem
from assistant.record.claim import Claim
from assistant.record.heads import Standing
from assistant.record.lived import Finding, LivedAgain
from assistant.record.verify import Verdict
from assistant.report.content import Ended, Trust
from assistant.report.reading import text
from assistant.spoken.language import ReportWords

FEW_REFUSED = 2
"""How often the instructor's code may be given wrongly without a warning: fingers slip."""


def ended(entries: Sequence[Mapping[str, object]], verdict: Verdict, lived: LivedAgain | None = None) -> Ended:
    """How the attempt ended, as far as the entries that hold can tell; a seal that they deny tells nothing."""
    if lived is not None and lived.finding is Finding.DIFFERS:
        return Ended.NOT_KNOWN
    seal = next((entry for entry in entries if "seal" in entry), None)
    if seal is not None:
        outcome = text(seal.get("outcome"))
        return Ended(outcome) if outcome in list(Ended) else Ended.NOT_KNOWN
    if not verdict.intact and verdict.problem is not Problem.TORN_TAIL:
        return Ended.NOT_KNOWN
    return Ended.STOPPED if entries[-1].get("verdict") == "stopped" else Ended.INTERRUPTED


def trust(
    file: str,
    verdict: Verdict,
    opening: Mapping[str, object],
    how: Ended,
    papers_problem: str,
    words: ReportWords,
    *,
    tells: bool = True,
    standing: Standing | None = None,
    lived: LivedAgain | None = None,
    proven: Claim | None = None,
    refused: int = 0,
) -> Trust:
    """The verdict in words, and every warning, the gravest first.

    Args:
        file: the record's file name.
        verdict: what verification found.
        opening: the first entry.
        how: how the attempt ended.
        papers_problem: why checklist or order of the attempt are not at hand; empty if they are.
        words: the language of the report.
        tells: what follows from the order is told.
        standing: how the record stands to what was last seen of it here.
        lived: what living it again came to.
        proven: what may be claimed of the record; None where nobody asked.
        refused: how often somebody asked for the instructor and was refused.
    """
    denied = [*_against(standing, lived, words)]
    warnings = [*denied, *_on_the_record(verdict, how, words)]
    if papers_problem:
        warnings.append(words.papers_missing(papers_problem))
    if lived is not None and lived.finding is Finding.OTHER_VERSION:
        warnings.append(words.lived_again(lived.finding, lived.why))
    if lived is not None and lived.papers:
        warnings.append(words.found(lived.papers))
    if not tells:
        warnings.append(words.ANSWERS_WITHHELD)
    if text(opening.get("simulated")):
        warnings.append(words.simulated(text(opening["simulated"])))
    if refused > FEW_REFUSED:
        warnings.append(words.codes_refused(refused))
    if text(opening.get("waits")) == "short":
        warnings.append(words.WAITS_CUT_SHORT)
    return Trust(
        file=file,
        whole=verdict.ok and not denied,
        warnings=tuple(warnings),
        statement=_statement(verdict, words, whole=verdict.ok and not denied),
        notes=(*(words.found(note) for note in verdict.notes), *_beside(standing, lived, words)),
        count=verdict.count,
        proven=proven.proven if proven is not None else "",
        claim=words.found(proven.sentence) if proven is not None else "",
    )


def _against(standing: Standing | None, lived: LivedAgain | None, words: ReportWords) -> Iterator[str]:
    """What speaks against the record beside its chain."""
    if standing is not None and standing.is_denied:
        yield words.not_as_last_seen(standing.seen, standing.why)
    if lived is not None and lived.finding is Finding.DIFFERS:
        yield words.result_denied(lived.why)


def _beside(standing: Standing | None, lived: LivedAgain | None, words: ReportWords) -> Iterator[str]:
    """What is known of the record beside its chain, and is no warning."""
    if lived is not None and lived.finding in (Finding.SAME, Finding.NOT_POSSIBLE):
        yield words.lived_again(lived.finding, lived.why)
    if standing is not None and not standing.is_denied:
        yield words.last_seen(standing.seen, standing.why)


def _on_the_record(verdict: Verdict, how: Ended, words: ReportWords) -> Iterator[str]:
    """What is wrong with the record; that it is open is told beside another fault as well."""
    line, why = verdict.line, verdict.why
    match verdict.problem:
        case None | Problem.NOT_SEALED:
            pass
        case Problem.TORN_TAIL:
            yield words.torn(why, sealed=verdict.sealed)
        case Problem.SOUND_MISSING | Problem.SOUND_DIFFERS:
            yield words.sound_broken(line, verdict.problem, why)
        case Problem.UNKNOWN_KEY | Problem.KEY_NOT_VALID:
            yield words.unknown_key(why)
        case _:
            yield words.damaged(line, verdict.problem, why, verdict.count)
    if not verdict.sealed and how is not Ended.NOT_KNOWN:
        yield words.NOT_SEALED_STOPPED if how is Ended.STOPPED else words.NOT_SEALED


def _statement(verdict: Verdict, words: ReportWords, *, whole: bool) -> str:
    if not verdict.intact and verdict.problem is not Problem.TORN_TAIL:
        return words.record_damaged(verdict.count)
    if not verdict.sealed:
        return words.record_open(verdict.count)
    return words.record_whole(verdict.count) if whole else words.record_whole_but(verdict.count)
