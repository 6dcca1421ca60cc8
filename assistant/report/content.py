"""What a report says, as data: every document is made from it, and its JSON Schema is made from these classes.

Clinical numbers are text as shown, with their unit; counters are whole numbers; times are ISO 8601 in UTC;
lengths of time are seconds as decimal text.
"""

from enum import StrEnum
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

FORM: Literal["1"] = "1"
"""The form of these classes; a change that an old reader cannot take changes it."""


class Ended(StrEnum):
    """How an attempt ended, as far as its record shows."""

    PASSED = "passed"
    OWN_REPORT = "complete by own report"
    STOPPED_FOR_CAUSE = "stopped for cause"
    NOT_PASSED = "not passed"
    NOT_COMPLETED = "not completed"
    STOPPED = "stopped"
    INTERRUPTED = "interrupted"
    NOT_KNOWN = "not known"


class Part(BaseModel):
    """Base of all parts: frozen, nothing beside what is named."""

    model_config = ConfigDict(frozen=True, extra="forbid")


class Trust(Part):
    """What the record is worth as evidence."""

    file: str = Field(description="Name of the record's file, without its folder.")
    whole: bool = Field(
        description="Every entry holds, a seal closes them, every signer's key is known, and nothing speaks against it."
    )
    warnings: tuple[str, ...] = Field(description="What a reader must know before reading on; empty if nothing.")
    statement: str = Field(description="The verdict in one sentence.")
    notes: tuple[str, ...] = Field(description="What is odd and breaks nothing, such as a clock set back.")
    count: int = Field(description="Entries that hold.")
    proven: str = Field(description="How far: broken, denied, nothing, kept here, signed; or empty.")
    claim: str = Field(description="The same in one to three sentences; empty where nobody asked.")


class Attempt(Part):
    """Who did what, when, by which papers, heard by what."""

    learner: str
    mode: str = Field(description="practice or check-off")
    checklist: str
    checklist_version: str
    checklist_digest: str
    order: str
    order_digest: str
    limits_digest: str
    program: str
    ear: str = Field(description="Recogniser; empty where everything was typed.")
    ear_model: str
    simulated: str = Field(description="How a simulated learner was set; empty for a person.")
    waits: str = Field(description="full, or short for a rehearsal")
    began: str
    ended: str
    seconds: str = Field(description="Time at work: pauses and interruptions left out.")
    interruptions: int
    typed: int = Field(description="Answers that were typed.")
    spoken: int = Field(description="Answers that came by voice.")
    unheard: int = Field(default=0, description="Utterances that were not understood.")


class StepLine(Part):
    """One step: how it ended."""

    number: int = Field(description="Place in the checklist from 1; 0 where the checklist is not at hand.")
    id: str
    part: str
    say: str
    critical: bool
    gate: bool
    ending: str
    needs_a_look: bool = Field(description="It did not end as done unaided, nor as not applicable.")
    first: str
    final: str
    slips: tuple[str, ...]
    cues: tuple[str, ...] = Field(description="Help that was given, in words.")
    evidence: str = Field(description="What a closed step rests on; empty where that is not on record.")
    details: tuple[str, ...] = Field(description="Everything else about this step, in words.")
    seconds: str = Field(description="Time at work at this step.")


class NumberLine(Part):
    """One number or name that had to agree with the order."""

    step: int
    id: str
    say: str
    critical: bool
    first: str
    final: str
    expected: str = Field(description="What follows from the order; empty where that is not known here.")
    difference: str = Field(description="First answer less what follows from the order, in words.")
    slips: tuple[str, ...]
    working: tuple[str, ...]
    verdict: str


class LaidOut(Part):
    """One fault that was laid out at the bench, or that is in the order itself."""

    what: str
    reaches: str = Field(description="What would have reached the patient.")
    fate: str = Field(description="What became of it.")
    at: tuple[str, ...] = Field(description="Steps at which it could be found; empty where no step asks for it.")
    step: str = Field(description="The step at which it was found or missed; empty where neither.")


class Practise(Part):
    """One thing to practise."""

    sentence: str
    why: str
    steps: tuple[int, ...]


class Feedback(Part):
    """Plain words for the learner."""

    went_well: tuple[str, ...]
    practise: tuple[Practise, ...]


class Course(Part):
    """Who flows when by the order."""

    sentences: tuple[str, ...]
    assumptions: str
    picture: str = Field(description="SVG with a title and a description.")


class Decision(Part):
    """A signed entry behind the seal."""

    entry: int
    kind: str
    at: str
    signer: str
    decision: str
    reason: str
    key_name: str = Field(description="Whose key it is, as far as it is known here; empty where it is not.")
    fingerprint: str
    counts: bool = Field(description="The signer was an instructor whose key was valid then; others decide nothing.")
    why_not: str = Field(description="Why it does not count; empty where it does.")
    details: tuple[str, ...]


class Happening(Part):
    """One entry of the record as a line."""

    entry: int
    at: str
    clock: str = Field(description="Time since the attempt began, h:mm:ss.")
    step: int
    kind: str
    source: str
    words: str
    taken_as: str
    verdict: str
    details: tuple[str, ...]
    undone: bool = Field(default=False, description="A mark that the instructor took back later.")


class Report(Part):
    """The whole report of one attempt."""

    form: Literal["1"] = FORM
    title: str
    outcome: Ended
    outcome_sentence: str
    cause: str = Field(description="The step or the fault that decided it, in a few words; or empty.")
    cause_step: str = Field(description="Id of that step; or empty.")
    decision: str = Field(description="The instructor's decision that counts, in one sentence.")
    sealed: bool
    head: str = Field(description="Digest of the last entry that holds.")
    short_head: str = Field(description="The same in eight groups of digits, to write down and to compare by ear.")
    trust: Trust
    attempt: Attempt
    results: dict[str, object] = Field(description="The result as the record holds it, or as its entries stand.")
    rule: str = Field(description="What it takes to pass.")
    summary: str
    failures: tuple[str, ...]
    laid_out: tuple[LaidOut, ...] = Field(description="What was wrong at the bench or in the order, on purpose.")
    not_laid_out: tuple[str, ...] = Field(description="Findings of what was not laid out, for the instructor to judge.")
    to_see: tuple[str, ...] = Field(description="Steps that an instructor has to see and has not.")
    pace: str = Field(description="How many hands-on steps of a check-off were done too fast to read; or empty.")
    feedback: Feedback
    found: tuple[str, ...] = Field(description="What the learner found and reported, in the order of its reports.")
    notes: tuple[str, ...] = Field(default=(), description="What the instructor noted at the desk.")
    steps: tuple[StepLine, ...] = Field(description="In the order of the checklist.")
    numbers: tuple[NumberLine, ...]
    order_text: tuple[str, ...]
    course: Course | None
    decisions: tuple[Decision, ...]
    cautions: tuple[str, ...]
    sources: tuple[str, ...]
    happenings: tuple[Happening, ...] = Field(description="Every entry; empty where they were not wanted.")


def schema() -> dict[str, object]:
    """The JSON Schema (draft 2020-12) of a report."""
    made = Report.model_json_schema(mode="serialization")
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"urn:checkoff:report:{FORM}",
        **made,
        "title": "Report of an attempt",
    }
