"""The report of a record: what holds of it, what is known beside it, and its papers where they are at hand."""

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from assistant.attempts.papers import AttemptPapers, papers_of
from assistant.attempts.proof import Here, Live, examine
from assistant.errors import AssistantError, RecordError
from assistant.record.lived import Finding, LivedAgain
from assistant.record.verify import Reading
from assistant.report.compose import compose
from assistant.report.content import Report
from assistant.report.reading import read_what_holds
from assistant.spoken import ENGLISH
from assistant.text import shown


def reported(path: Path, known: Here, tell: Callable[[str], None], *, with_entries: bool = True) -> Report:
    """The report of a record.

    Args:
        path: the record.
        known: what this machine knows.
        tell: takes cautions.
        with_entries: list every entry.

    Raises:
        RecordError: not even its first entry holds, or it is an attempt of another program without a seal.
    """
    papers, problem = _papers(path, read_what_holds(path))
    found = examine(path, known, _live_with(papers, problem), read=read_what_holds)
    for broken in known.book.problems():
        tell(f"Caution: the book of heads does not hold. {broken}")
    return compose(
        shown(path.name),
        found.reading.verdict,
        found.reading.entries,
        words=ENGLISH.report,
        papers=papers,
        papers_problem=problem,
        results=_as_it_stands(path, found.reading, papers, tell),
        signers=found.proof.signers,
        with_entries=with_entries,
        seen=found.proof.standing,
        lived=found.proof.lived,
        proven=found.claim,
    )


def _live_with(papers: AttemptPapers | None, problem: str) -> Live:
    """Lives a record again with the papers that are at hand for its report."""

    def live(entries: Sequence[Mapping[str, object]]) -> LivedAgain:
        if papers is None:
            return LivedAgain(Finding.NOT_POSSIBLE, problem)
        # Imported only here: the report of a record that is open or broken needs no guide.
        from assistant.attempts.relived import live_again_with

        return live_again_with(papers, entries)

    return live


def _papers(path: Path, reading: Reading) -> tuple[AttemptPapers | None, str]:
    """The papers of the attempt, or why they are not at hand: a report is made all the same."""
    try:
        return papers_of(reading.entries[0], Path(path.name), path.parent), ""
    except AssistantError as error:
        return None, error.what


def _as_it_stands(
    path: Path, reading: Reading, papers: AttemptPapers | None, tell: Callable[[str], None]
) -> Mapping[str, object] | None:
    """The result of an attempt without a seal, by living it again."""
    if papers is None or any("seal" in entry for entry in reading.entries):
        return None
    # Imported only here: the report of a sealed record needs no guide.
    from assistant.attempts.replay import lived_again

    try:
        guide = lived_again(papers, reading.entries, path)
    except (RecordError, ValueError) as cause:
        tell(f"Caution: the attempt cannot be lived again: {cause}")
        return None
    return guide.results().body()
