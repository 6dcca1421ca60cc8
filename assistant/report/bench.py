"""What was laid out at the bench and what became of it; what rests on the learner's word and has to be seen."""

from collections.abc import Iterator, Mapping, Sequence

from assistant.report.content import LaidOut, StepLine
from assistant.report.reading import mapping, sequence, text, texts
from assistant.spoken.language import ReportWords

DEALT_WITH = ("found, and stopped for it", "found, and put right", "found, and settled by the instructor")
"""What may become of a fault, as a record has it: a blank form needs no guide."""


def laid_out(body: Mapping[str, object], lines: Sequence[StepLine], words: ReportWords) -> Iterator[LaidOut]:
    """Each fault: where it could be found, whether it was, and what would have reached the patient."""
    quoted = {line.id: words.step_quoted(line.number, line.say) for line in lines}
    for fault in map(mapping, sequence(body.get("faults"))):
        at = texts(fault.get("at"))
        name = text(fault.get("step"))
        yield LaidOut(
            what=text(fault.get("what")),
            reaches=text(fault.get("reaches")),
            fate=text(fault.get("fate")),
            at=tuple(quoted.get(one, one) for one in at),
            step=quoted.get(name, name),
        )


def for_the_instructor(body: Mapping[str, object], lines: Sequence[StepLine], words: ReportWords) -> Iterator[str]:
    """Findings of what is not laid out: real ones, or none."""
    quoted = {line.id: words.step_quoted(line.number, line.say) for line in lines}
    for found in map(mapping, sequence(body.get("not_laid_out"))):
        name = text(found.get("step"))
        yield words.not_laid_out(quoted.get(name, name), text(found.get("answer")))


def to_be_seen(
    lines: Sequence[StepLine], rows: Sequence[object], seen: frozenset[str], words: ReportWords
) -> Iterator[str]:
    """Steps that an instructor has to see, that none saw at the bench, and that none marked at the sign-off."""
    wanted = {text(row.get("id")) for row in map(mapping, rows) if row.get("to_be_seen")} - seen
    for line in lines:
        if line.id in wanted:
            yield words.step_quoted(line.number, line.say)
