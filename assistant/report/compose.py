"""The entries of a record, its verdict and its papers, put together as a report. Pure."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Protocol

from assistant.checklist.model import Checklist
from assistant.guide.progress import Mode
from assistant.guide.result import Evidence
from assistant.guide.turn import Input
from assistant.orders.key import KeyEntry
from assistant.orders.model import Order
from assistant.record.claim import Claim
from assistant.record.decisions import CAME, REFUSED, Standing, standing
from assistant.record.heads import Standing as HeadsStanding
from assistant.record.lived import LivedAgain
from assistant.record.short_head import short_head
from assistant.record.signer import Signer
from assistant.record.verify import Verdict
from assistant.report.bench import for_the_instructor, laid_out, to_be_seen
from assistant.report.content import Attempt, Report, StepLine
from assistant.report.feedback import feedback
from assistant.report.happenings import decisions, happenings
from assistant.report.headline import headline
from assistant.report.infusion import infusion_course
from assistant.report.reading import count, mapping, sequence, text, texts
from assistant.report.steps import from_entries, number_lines, step_lines, without_answers
from assistant.report.times import Times, times
from assistant.report.trust import ended, trust
from assistant.spoken.language import ReportWords


class PapersAtHand(Protocol):
    """What an attempt was made from, as its record pins it."""

    @property
    def checklist(self) -> Checklist:
        """The procedure."""

    @property
    def order(self) -> Order:
        """What was ordered."""

    @property
    def key(self) -> Mapping[str, KeyEntry]:
        """The answer key of the order."""


def compose(
    file: str,
    verdict: Verdict,
    entries: Sequence[Mapping[str, object]],
    *,
    words: ReportWords,
    papers: PapersAtHand | None = None,
    papers_problem: str = "",
    results: Mapping[str, object] | None = None,
    signers: Sequence[Signer] = (),
    with_entries: bool = True,
    seen: HeadsStanding | None = None,
    lived: LivedAgain | None = None,
    proven: Claim | None = None,
) -> Report:
    """Make the report.

    What a seal says of the result counts; `results` stands in where there is no seal.

    Args:
        file: name of the record's file.
        verdict: what verification found.
        entries: those that hold, at least the first.
        words: the language of the report.
        papers: checklist, order and key, where they are those of the attempt.
        papers_problem: why they are not at hand.
        results: the result as it stands, of an attempt without a seal.
        signers: who signed its signed entries; what nobody known as an instructor then has signed decides nothing.
        with_entries: list every entry.
        seen: how the record stands to what was last seen of it here; None where nobody remembers.
        lived: what living it again came to; None where that was not tried.
        proven: what may be claimed of the record; None where nobody asked.
    """
    opening = entries[0]
    signed = [entry for entry in entries if "signature" in entry]
    seal = next((entry for entry in entries if "seal" in entry), None)
    own = entries if seal is None else entries[: entries.index(seal) + 1]
    body = (mapping(seal.get("results")) if seal is not None else results) or from_entries(own)
    checklist = papers.checklist if papers else None
    # An open check-off can be taken up again: its report gives no answer away.
    check_off = text(opening.get("mode")) == Mode.CHECK_OFF
    tells = seal is not None or not check_off
    body = body if tells else without_answers(body)
    measured = times(own)
    lines = step_lines(body, checklist, measured.steps, words)
    numbers = number_lines(body, lines, checklist, papers.key if papers and tells else {}, words)
    how = ended(entries, verdict, lived)
    faults = tuple(laid_out(body, lines, words))
    unsafe = texts(body.get("unsafe"))
    why = headline(how, lines, numbers, faults, words, unsafe=bool(unsafe))
    by_line = {one.line: one for one in signers}
    decided = decisions(signed, {one.line: one.fingerprint for one in verdict.signatures}, by_line, words)
    stands = standing(signed, frozenset(one.line for one in signers if one.decides))
    return Report(
        title=checklist.title if checklist else text(opening.get("checklist")) or file,
        outcome=how,
        outcome_sentence=words.OUTCOME_SENTENCES[how],
        cause=why.cause,
        cause_step=why.step,
        decision=_decision(stands, by_line, words),
        sealed=verdict.sealed,
        head=verdict.head,
        short_head=short_head(verdict.head),
        trust=trust(
            file,
            verdict,
            opening,
            how,
            papers_problem,
            words,
            tells=tells,
            standing=seen,
            lived=lived,
            proven=proven,
            refused=sum(one.get("kind") == CAME and one.get("verdict") == REFUSED for one in own),
        ),
        attempt=_attempt(opening, own, measured),
        results=dict(body),
        rule=_rule(checklist, text(opening.get("mode")), words),
        summary=_summary(body, words),
        failures=(*texts(body.get("failures")), *texts(body.get("to_judge"))) if seal is not None else unsafe,
        laid_out=faults,
        not_laid_out=tuple(for_the_instructor(body, lines, words)),
        to_see=tuple(to_be_seen(lines, sequence(body.get("steps")), stands.seen, words)) if check_off else (),
        pace=_pace(body, words),
        found=tuple(_found(body, lines, words)),
        notes=tuple(_notes(body, lines, words)),
        feedback=feedback(lines, numbers, {step.id: step.why for step in checklist.steps} if checklist else {}, words),
        steps=tuple(_overruled(_seen(line, stands.seen), stands.overruled.get(line.id), words) for line in lines),
        numbers=numbers,
        order_text=papers.order.sentences() if papers else (),
        course=infusion_course(papers.order, papers.key, words) if papers and tells else None,
        decisions=decided,
        cautions=(words.CAUTION, *(checklist.cautions if checklist else ())),
        sources=checklist.sources if checklist else (),
        happenings=happenings(entries, {line.id: line.number for line in lines}, words) if with_entries else (),
    )


def _attempt(opening: Mapping[str, object], own: Sequence[Mapping[str, object]], measured: Times) -> Attempt:
    def pinned(name: str) -> str:
        return text(opening.get(name))

    return Attempt(
        learner=pinned("learner"),
        mode=pinned("mode"),
        checklist=pinned("checklist"),
        checklist_version=pinned("checklist_version"),
        checklist_digest=pinned("checklist_digest"),
        order=pinned("order"),
        order_digest=pinned("order_digest"),
        limits_digest=pinned("limits_digest"),
        program=pinned("program"),
        ear=pinned("ear"),
        ear_model=pinned("ear_model"),
        simulated=pinned("simulated"),
        waits=pinned("waits"),
        began=measured.began,
        ended=measured.ended,
        seconds=f"{measured.work}",
        interruptions=sum(entry.get("kind") == "resumed" for entry in own),
        typed=sum(entry.get("kind") == "typed" for entry in own),
        spoken=sum(entry.get("kind") == "heard" for entry in own),
        unheard=sum(_is_unheard(entry) for entry in own),
    )


def _is_unheard(entry: Mapping[str, object]) -> bool:
    """Whether something was said that came to nothing: no words at all, or words that answer nothing."""
    return entry.get("kind") in ("heard", Input.UNCLEAR.value) and entry.get("verdict") == Input.UNCLEAR.value


def _decision(stands: Standing, signers: Mapping[int, Signer], words: ReportWords) -> str:
    """The decision that counts, in sentences."""
    entry = stands.sign_off or (stands.withdrawn[-1] if stands.withdrawn else None)
    if entry is None:
        return words.NOT_SIGNED_OFF
    signer = signers.get(count(entry.get("sequence")))
    key = signer.title if signer is not None else ""
    by = words.signed_by(text(entry.get("signer")), text(entry.get("at"))[:10], key)
    said = [words.signed_off(text(entry.get("decision")), by) if entry is stands.sign_off else words.withdrawn(by)]
    if rating := text(entry.get("rating")):
        said.append(words.rated(rating))
    if reason := text(entry.get("reason")):
        said.append(words.because(reason))
    return " ".join(said)


def _seen(line: StepLine, seen: frozenset[str]) -> StepLine:
    """A step with the mark that an instructor gave it at the sign-off."""
    return line.model_copy(update={"evidence": Evidence.SEEN.value}) if line.id in seen else line


def _overruled(line: StepLine, entry: Mapping[str, object] | None, words: ReportWords) -> StepLine:
    """A step with what an instructor decided about it, beside what the record had found."""
    if entry is None:
        return line
    said = words.overruled(text(entry.get("signer")), text(entry.get("verdict")), text(entry.get("reason")))
    return line.model_copy(update={"details": (*line.details, said), "needs_a_look": True})


def _rule(checklist: Checklist | None, mode: str, words: ReportWords) -> str:
    if checklist is None:
        return ""
    rule = checklist.pass_rule
    return words.rule(mode, rule.critical_corrections, rule.critical_cues, rule.score_percent)


def _found(body: Mapping[str, object], lines: Sequence[StepLine], words: ReportWords) -> Iterator[str]:
    """What the learner found, a sentence for each."""
    steps = {line.id: words.step_quoted(line.number, line.say) for line in lines}
    for found in map(mapping, sequence(body.get("troubles"))):
        name = text(found.get("step"))
        yield words.found_at(steps.get(name, name), text(found.get("kind")), text(found.get("words")))


def _notes(body: Mapping[str, object], lines: Sequence[StepLine], words: ReportWords) -> Iterator[str]:
    """What the instructor noted, a sentence for each."""
    steps = {line.id: words.step_quoted(line.number, line.say) for line in lines}
    for note in map(mapping, sequence(body.get("notes"))):
        name = text(note.get("step"))
        yield words.noted(steps.get(name, name), text(note.get("words")))


def _pace(body: Mapping[str, object], words: ReportWords) -> str:
    hurried = len(sequence(body.get("hurried")))
    return words.hurried(hurried, count(body.get("hands_on"))) if hurried else ""


def _summary(body: Mapping[str, object], words: ReportWords) -> str:
    if "applicable" not in body:
        return ""
    return words.share_unaided(
        count(body.get("unaided")), count(body.get("applicable")), text(body.get("score_percent"))
    )
