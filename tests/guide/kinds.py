"""A checklist with every kind of step, for tests."""

from assistant.checklist.model import (
    Checklist,
    ChoiceAsked,
    Condition,
    DoubleCheckAsked,
    NoteAsked,
    NumberAsked,
    ObservationAsked,
    QuestionAsked,
    Step,
)

KINDS = Checklist(
    name="kinds",
    title="Every kind",
    version="1",
    purpose="Has a step of every kind, for tests only.",
    cautions=("Training only.",),
    order="none",
    digest="0" * 64,
    abbreviations={"VTBI": "volume to be infused"},
    steps=(
        Step(
            id="site",
            part="Look",
            say="Which arm has the line?",
            hint="Look at the sleeve.",
            stronger=("It is the arm with the dressing.", "Lift the left sleeve."),
            expect=ChoiceAsked(
                kind="choice",
                choices=("left arm", "right arm", "neither"),
                right="left arm",
                phrases={"left arm": ("the left one",)},
                advice={"neither": "There is a line: look again."},
            ),
            critical=True,
            if_wrong="Look at both arms.",
        ),
        Step(
            id="sore",
            part="Look",
            say="Is the site sore or not?",
            expect=ChoiceAsked(kind="choice", choices=("sore", "not sore")),
        ),
        Step(
            id="report",
            part="Look",
            say="Report it. Then say done.",
            critical=True,
            applies=(Condition(step="sore", answer=("sore",)),),
        ),
        Step(id="drug", part="Look", say="Look at the drug.", applies=(Condition(key="secondary.drug"),)),
        Step(
            id="rate",
            part="Set",
            say="Enter the rate and tell me the rate.",
            expect=NumberAsked(kind="number", unit="mL/h", key="primary.rate"),
            critical=True,
        ),
        Step(
            id="second",
            part="Set",
            say="Second person, alone: work the rate out, and tell me the rate.",
            expect=DoubleCheckAsked(kind="double-check", of="rate"),
            critical=True,
            if_wrong="Each of you works it out again.",
        ),
        Step(
            id="technique",
            part="Set",
            say="Connect the line without touching the tip. Your instructor watches.",
            expect=ObservationAsked(kind="observation"),
            critical=True,
            if_wrong="Take a new tip.",
        ),
        Step(id="gate", part="Start", say="Look over everything.", gate=True, critical=True),
        Step(
            id="drops",
            part="Start",
            say="Do you see drops?",
            expect=QuestionAsked(kind="question"),
            applies=(Condition(key="primary.rate", above="50 mL/h"),),
        ),
        Step(
            id="note",
            part="Start",
            say="Tell me what you write in the chart.",
            expect=NoteAsked(kind="note"),
        ),
    ),
)

SMOOTH_KINDS = (
    *("left arm", "not sore", "83.3", "yes", "83.3", "yes", "seen", "done", "yes"),
    *("line runs, no complaints", "yes"),
)
"""Answers that go through `KINDS` without a slip, where the instructor has no code."""
