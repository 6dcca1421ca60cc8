"""Every text of reports, blank forms and bench sheets that is not data, in English."""

from collections.abc import Mapping, Sequence
from datetime import datetime

from assistant.spoken.english.evidence_words import EvidenceWords
from assistant.spoken.english.form_words import FormWords
from assistant.spoken.english.sheet_words import SheetWords

_OFTEN_UNHEARD = 4
"""So many utterances that were not understood, and a quarter of the answers, are no accident."""


class ReportWords(EvidenceWords, FormWords, SheetWords):
    """All texts of the reports; a further language is a class with the same names.

    Attributes in capitals are fixed texts, or tables of texts by the names that a record uses. Methods make sentences
    with values in them. What is authored, ordered, answered or recorded passes through as it is.
    """

    # Headings of a report, and its tables.
    REPORT_OF_AN_ATTEMPT = "Report of an attempt. Training only."
    READ_THIS_FIRST = "Read this first"
    FEEDBACK = "Feedback"
    WHAT_WENT_WELL = "What went well"
    WHAT_TO_PRACTISE = "What to practise"
    TO_PRACTISE = "To practise"
    NOTHING_TO_PRACTISE = "Nothing in particular; go through it again from time to time."
    STEPS_TO_LOOK_AT = "Steps to review"
    STEPS_TO_LOOK_AT_CAPTION = (
        "Everything that was not simply done unaided: where help was needed, what was corrected, what is missing."
    )
    WHAT = "What"
    HOW_IT_ENDED = "How it ended"
    HELP_SLIPS_MORE = "Help, slips, more"
    EVERY_STEP_UNAIDED = "Every step was done unaided."
    EVERY_REACHED_STEP_UNAIDED = "Every step that was reached was done unaided."
    NUMBERS_AND_LABELS = "Numbers and labels"
    NUMBERS_CAPTION = "What the learner gave, and what follows from the order."
    ASKED = "Asked"
    ANSWER = "Answer"
    BY_THE_ORDER_WITH_WORKING = "By the order, with its working"
    NO_NUMBER = "No number is on record."
    NONE = "none"
    NOT_TOLD = "not told here"
    COURSE = "Course of the infusion, by the order"
    EVERY_STEP = "Every step"
    WHAT_WAS_WRONG = "What was wrong"
    WHERE_TO_FIND = "Where it could be found"
    WHAT_BECAME_OF_IT = "What became of it"
    WHAT_WOULD_REACH = "What would have reached the patient"
    TIME = "Time"
    EVIDENCE = "Evidence"
    DIGESTS = "Digests, versions and the recogniser"
    SIGNED_ENTRIES = "Signatures after sealing"
    SIGNED_ON_PAPER = "Signed on paper"
    EVERYTHING_ON_RECORD = "Everything on record"
    LOG_CAPTION = "Every entry in its order; times count from the beginning (h:mm:ss)."
    WHAT_CAME = "What came"
    WHAT_IT_WAS_TAKEN_FOR = "Understood as"
    SOURCES_OF_THE_CHECKLIST = "Sources of the checklist:"

    # Names of facts and of evidence.
    MODE = "Mode"
    TIME_AT_WORK = "Time at work"
    TAKEN_UP_AGAIN = "Taken up again"
    ANSWERS = "Answers"
    CHECKLIST = "Checklist"
    ORDER = "Order"
    TITLE_IN_FULL = "Title in full"
    RECORD = "Record"
    ENTRIES = "Entries"
    HEAD_DIGEST = "Head digest (SHA-256)"
    SHORT_HEAD = "Short head"
    CHECKLIST_DIGEST = "Checklist digest"
    ORDER_DIGEST = "Order digest"
    LIMITS_DIGEST = "Limits digest"
    PROGRAM = "Program"
    RECOGNISER = "Recogniser"
    NOT_NAMED = "not named"

    # Values in a table for a spreadsheet.
    WHOLE = "whole"
    NOT_WHOLE = "not whole"
    CUT = "[cut; the whole text is in the record]"

    # The course of an infusion.
    PRIMARY = "primary"
    SECONDARY = "secondary"
    COURSE_ASSUMPTIONS = "Times count from the start of the primary, at 00:00, as the order has it; not as it was done."

    # Statements for a learning record store: what verbs and activities are called.
    VERBS: Mapping[str, str] = {
        "passed": "passed",
        "completed": "completed",
        "stopped-for-cause": "stopped for cause",
        "failed": "failed",
        "did-not-complete": "did not complete",
        "stopped": "stopped",
        "was-interrupted-at": "was interrupted at",
        "attempted": "attempted",
        "did": "did",
        "did-not-do": "did not do",
    }
    A_STEP = "A step."
    A_CRITICAL_STEP = "A critical step."

    LATENCY_STAGES: Mapping[str, str] = {
        "decided_ms": "end of the answer decided",
        "understood_ms": "words understood",
        "recorded_ms": "on disk",
        "sounded_ms": "first sound of the reply",
    }

    # The head of a report.

    def page_title(self, outcome: str, mode: str, title: str, learner: str) -> str:
        """Title of a page."""
        return f"{self.document_title(outcome, mode, title)}, learner {learner}"

    def document_title(self, outcome: str, mode: str, title: str) -> str:
        """Title of a document on paper."""
        return f"{self.outcome_heading(outcome, mode)}: {title}"

    def running_head(self, title: str, learner: str, began: str) -> str:
        """What stands at the top of each sheet of paper, so that loose ones can be told apart."""
        return f"{title}, learner {learner}, {began}"

    def attempt_line(self, title: str, learner: str, mode: str, began: str) -> str:
        """Which attempt this is."""
        return f"{title}: learner {learner}, {self.mode(mode)}, {began}"

    def when(self, at: datetime) -> str:
        """A moment, UTC."""
        return f"{at.day} {_MONTHS[at.month - 1]} {at:%Y, %H:%M:%S} UTC"

    def time_at_work(self, length: str) -> str:
        """How long it took."""
        return f"{self.TIME_AT_WORK}: {length}."

    def resumptions(self, count: int) -> str:
        """How often the attempt was resumed."""
        return f"{self.times(count)}, after a stop or an interruption"

    def answers_by(self, spoken: int, typed: int, unheard: int) -> str:
        """How many answers came by voice and by keyboard, and whether the learner was kept from being understood.

        Args:
            spoken: answers by voice.
            typed: answers by keyboard.
            unheard: utterances that were not understood; a few are usual (common practice, no source).
        """
        counted = f"{spoken} spoken, {typed} typed"
        if not unheard:
            return counted
        often = unheard >= _OFTEN_UNHEARD and unheard * _OFTEN_UNHEARD >= spoken
        advice = (
            ": the ear kept missing this learner, so try another microphone or let answers be typed" if often else ""
        )
        return f"{counted}; {self.times(unheard)} not understood{advice}"

    def checklist_named(self, name: str, version: str) -> str:
        """A checklist with its version."""
        return f"{name}, version {version or 'unknown'}"

    def recogniser_named(self, name: str, model: str) -> str:
        """A recogniser with the digest of its model, or of each, with spaces between them."""
        models = model.split()
        return f"{name}, {'model' if len(models) == 1 else 'models'} {' and '.join(models)}"

    def rule(self, mode: str, corrections: int, cues: int, percent: object) -> str:
        """What it takes to pass; see `form_rule` for the numbers."""
        base = "Every critical step must be closed in the end."
        if mode != "check-off":
            return f"Practice: {base[0].lower()}{base[1:]}"
        return (
            f"{base} Of the critical steps, {self.at_most(corrections)} may be right only after a hold, and "
            f"{self.at_most(cues)} may be done only after a cue. At least {percent} % of all steps must be done "
            "unaided."
        )

    def not_reached(self, count: int) -> str:
        """Steps that were never come to."""
        return f"{self.steps(count)} {'was' if count == 1 else 'were'} not reached."

    def why_it_matters(self, why: str) -> str:
        """Why a step matters, as the checklist has it."""
        return f"Why it matters: {why}"

    def working(self, lines: Sequence[str]) -> tuple[str, ...]:
        """Lines of arithmetic as `assistant.dosing` writes them, in this language."""
        return tuple(lines)

    # The course of an infusion.

    def first_secondary_at(self, hours: int) -> str:
        """Where the first secondary is drawn, hours after the start of the primary."""
        return f"The first secondary is drawn {hours} {'hour' if hours == 1 else 'hours'} after that, as an example."

    def hourly(self, values: Sequence[str]) -> str:
        """What flows in each hour, in mL, in order."""
        return f"Millilitres in each hour, in order: {', '.join(values)}"

    def dose(self, name: str, count: int) -> str:
        """One of several doses of a secondary."""
        return f"{name}, dose {count}"

    # Statements for a learning record store.

    def checklist_about(self, version: str) -> str:
        """What a checklist is, as an activity."""
        return f"Version {version}. {self.TRAINING_ONLY}"


_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)
