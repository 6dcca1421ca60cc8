"""The page on which a nurse reviews a checklist: each step with its reason, its sources, and a place to sign."""

from itertools import groupby

from assistant.checklist.model import Checklist, Step
from assistant.checklist.works import UNPUBLISHED, works_of
from assistant.report.content import Part
from assistant.spoken.language import ReportWords


class ReviewStep(Part):
    """One row: what is done, why, and who says so."""

    number: int
    say: str
    more: str
    why: str
    sources: tuple[str, ...]
    critical: bool
    gate: bool
    bare: bool
    """It is critical, and nothing published that was read bears it."""


class ReviewPart(Part):
    """A heading with its rows."""

    name: str
    steps: tuple[ReviewStep, ...]


class ReviewWork(Part):
    """A work that the sources name."""

    title: str
    where: str
    """Year and address, and how it was read."""


class Review(Part):
    """The whole page."""

    title: str
    page_title: str
    version: str
    digest: str
    purpose: str
    use: str
    parts: tuple[ReviewPart, ...]
    works: tuple[ReviewWork, ...]


def review_of(checklist: Checklist, words: ReportWords) -> Review:
    """The page of a checklist.

    Args:
        checklist: the procedure.
        words: the language of headings and labels.
    """
    rows = [(step.part, _row(number, step)) for number, step in enumerate(checklist.steps, 1)]
    critical = [row for _, row in rows if row.critical]
    return Review(
        title=checklist.title,
        page_title=words.review_title(checklist.title),
        version=checklist.version,
        digest=checklist.digest,
        purpose=checklist.purpose,
        use=words.review_use(len(rows), len(critical), sum(row.bare for row in critical)),
        parts=tuple(
            ReviewPart(name=name, steps=tuple(row for _, row in group))
            for name, group in groupby(rows, key=lambda pair: pair[0])
        ),
        works=tuple(
            ReviewWork(title=work.title, where=words.work(work.year, work.address, work.read))
            for work in works_of(source for step in checklist.steps for source in step.sources)
        ),
    )


def is_borne(step: Step) -> bool:
    """Whether a published source that was read bears a step."""
    return any(not any(mark in source for mark in UNPUBLISHED) for source in step.sources)


def _row(number: int, step: Step) -> ReviewStep:
    return ReviewStep(
        number=number,
        say=step.say,
        more=step.more,
        why=step.why,
        sources=step.sources,
        critical=step.critical,
        gate=step.gate,
        bare=step.critical and not is_borne(step),
    )
