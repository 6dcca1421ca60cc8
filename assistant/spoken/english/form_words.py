"""What stands on a blank form and on every page, in English."""


class FormWords:
    """Texts of blank forms, and those that forms share with reports.

    Attributes in capitals are fixed texts; methods make sentences with values in them.
    """

    CODE = "en"
    """Language tag (BCP 47) of every document."""
    REGION = "gb"
    """Region (ISO 3166-1), for hyphenation and quotation marks on paper."""

    # On forms and reports alike.
    TRAINING_ONLY = "Training only."
    STEP = "Step"
    STEPS = "Steps"
    CRITICAL = "critical"
    GATE = "gate"
    YES = "yes"
    NO = "no"
    RESULT = "Result"
    CAUTIONS = "Cautions"
    SOURCES = "Sources"
    THE_ORDER = "The order (fictional)"
    LEARNER = "Learner"
    BEGAN = "Began"
    ENDED = "Ended"
    INSTRUCTOR_NAME_AND_ROLE = "Instructor: name and role"
    SIGNATURE_AND_DATE = "Signature and date"
    PAGE_OF_PAGES = "{page} of {pages}"
    """Foot of a page; the typesetting program puts the two numbers in."""

    # On forms alone.
    WHO_AND_WHEN = "Who and when"
    LEARNERS_CODE = "Learner\u2019s code"
    DATE = "Date"
    CHECKLIST_VERSION = "Checklist version"
    DIGEST = "digest (SHA-256)"
    PRACTICE = "practice"
    CHECK_OFF = "check-off"
    EQUIPMENT = "Equipment"
    NUMBER = "No."
    WRITTEN_DOWN = "Written down"
    DONE = "Done"
    CUE = "Cue"
    NOT_DONE = "Not done"
    STOP_AND_LOOK = "gate: stop and look"
    TICK_PASSED = "passed"
    TICK_NOT_PASSED = "not passed; to practise:"
    FIRST = "First"
    FINAL = "Final"
    SECOND_PERSON_ALONE = "Second person, alone"
    INITIALS = "Initials"
    LABEL_READS = "Label reads"
    ANSWER_IS = "Answer:"
    NOTE = "Note"
    SEEN_BY = "Seen by"
    # On the page on which a nurse reviews a checklist.
    STEP_AND_REASON = "Step and reason"
    WHY = "Why:"
    REVIEWED = "Agreed, initials"
    WORKS = "Works, and how they were read"
    REVIEWED_BY = "Reviewed by"
    REVIEWER_NAME_AND_ROLE = "Nurse: name and role"
    NOTHING_PUBLISHED = "No published source was read for this critical step."
    USUAL_CAUTIONS = (
        (
            "training",
            "For training on a mannequin or an arm only; it licenses nobody, and no patient is treated by it.",
        ),
        ("policy", "Local policy and the makers' instructions come first."),
        ("practitioner", "A licensed practitioner decides."),
    )
    """Cautions on every form: a word by which a checklist's own are recognised, and the sentence."""

    def form_title(self, title: str) -> str:
        """Title of the document."""
        return f"{title}: blank form"

    def review_title(self, title: str) -> str:
        """Title of the page on which a nurse reviews a checklist."""
        return f"{title}: steps, reasons and sources, to be reviewed"

    def review_use(self, steps: int, critical: int, bare: int) -> str:
        """How the page is used, and how many critical steps rest on nothing that was read."""
        rest = f"{bare} of these without a published source that was read" if bare else "each with a published source"
        return (
            f"{self.steps(steps)}, {critical} of them critical, {rest}. Put your initials beside each step that your "
            "lab agrees with, and write down what it does otherwise; a school\u2019s own file can set it."
        )

    def work(self, year: int | None, address: str, read: str) -> str:
        """Year and address of a work, and how it was read; what is not known is left out."""
        return ", ".join(filter(None, (str(year or ""), f"read {read}", address)))

    def form_use(self, steps: int, critical: int) -> str:
        """How the form is filled in."""
        return (
            f"{self.steps(steps)}, {critical} of them critical. Tick one box for each step; \u201ccue\u201d means any "
            "help that was given. Nothing is passed at a gate while an earlier critical step is open."
        )

    def form_rule(self, corrections: int, cues: int, percent: object) -> str:
        """What it takes to pass.

        Args:
            corrections: critical steps that may be corrected after a hold.
            cues: critical steps that may be done after a cue.
            percent: of all steps, to be done unaided.
        """
        return (
            f"To pass: every critical step is done; of the critical steps {self.at_most(corrections)} may be corrected "
            f"after a hold and {self.at_most(cues)} done after a cue; at least {percent} % of all steps are done "
            "unaided."
        )

    def timed(self, seconds: object) -> str:
        """Beside a wait; a line to write on follows."""
        return f"{seconds} s timed:"

    def steps(self, count: int) -> str:
        """A number of steps."""
        return f"{count} {'step' if count == 1 else 'steps'}"

    def at_most(self, count: int) -> str:
        """An upper limit."""
        return "none" if count == 0 else f"at most {count}"
