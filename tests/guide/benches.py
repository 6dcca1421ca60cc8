"""A short checklist whose steps look at the bench, an order, and what is laid out for it."""

from collections.abc import Mapping
from decimal import Decimal

from assistant.checklist.model import Checklist, ChoiceAsked, DoneAsked, NameAsked, NumberAsked, QuestionAsked, Step
from assistant.dosing import parse_amount
from assistant.orders.fault import Fault, Truth
from assistant.orders.key import KeyEntry

BENCH = Checklist(
    name="bench",
    title="A bag on a bench",
    version="1",
    purpose="Look at what is laid out, for tests only.",
    cautions=("Training only.",),
    digest="0" * 64,
    steps=(
        Step(
            id="allergies",
            part="Chart",
            say="Check the chart for allergies. Safe to give, or allergic?",
            critical=True,
            looks_at=("secondary.allergy",),
            if_wrong="Call the prescriber.",
            expect=ChoiceAsked(
                kind="choice", choices=("safe to give", "allergic"), right="safe to give", faults=("allergic",)
            ),
        ),
        Step(id="hands", part="Bag", say="Clean your hands.", seen=True),
        Step(
            id="drug",
            part="Bag",
            say="What drug does the label name?",
            critical=True,
            if_wrong="Put it back, and take another one.",
            expect=NameAsked(kind="name", key="secondary.drug"),
        ),
        Step(
            id="dose",
            part="Bag",
            say="What dose does the label state, in milligrams?",
            critical=True,
            if_wrong="Compare the label with the order.",
            expect=NumberAsked(kind="number", unit="mg", key="secondary.dose"),
        ),
        Step(
            id="inspect",
            part="Bag",
            say="Is the bag fit to use, cloudy, leaking or expired?",
            critical=True,
            looks_at=("secondary.bag",),
            reopen=("drug", "dose"),
            if_wrong="Take another bag.",
            expect=ChoiceAsked(
                kind="choice",
                choices=("fit to use", "cloudy", "leaking", "expired"),
                right="fit to use",
                faults=("cloudy", "leaking", "expired"),
            ),
        ),
        Step(
            id="wristband",
            part="Bedside",
            say="Do name and date of birth match the wristband?",
            critical=True,
            looks_at=("wristband",),
            if_wrong="Do nothing more before the identity is certain.",
            expect=QuestionAsked(kind="question"),
        ),
        Step(id="spike", part="Bedside", say="Spike the bag.", critical=True, seen=True),
        Step(id="clamp", part="Bedside", say="Open the clamp.", critical=True, expect=DoneAsked(kind="done")),
        Step(id="gate", part="Bedside", say="Stop, and look once more.", critical=True, gate=True),
        Step(
            id="drips",
            part="Bedside",
            say="Watch the chambers. Which one drips: the secondary, or neither?",
            takes_back=("clamp",),
            if_wrong="Look for a closed clamp.",
            expect=ChoiceAsked(
                kind="choice", choices=("the secondary", "neither"), right="the secondary", faults=("neither",)
            ),
        ),
        Step(
            id="patient",
            part="Bedside",
            say="Is the patient comfortable, or in pain?",
            looks_at=("patient",),
            if_wrong="Stop the infusion.",
            expect=ChoiceAsked(
                kind="choice", choices=("comfortable", "in pain"), right="comfortable", faults=("in pain",)
            ),
        ),
        Step(id="note", part="Bedside", say="Document."),
    ),
)

DRUGS = ("ampicillin", "cefazolin", "famotidine")
BENCH_KEY: Mapping[str, KeyEntry] = {
    "secondary.drug": KeyEntry("secondary.drug", "ampicillin", None, choices=DRUGS),
    "secondary.dose": KeyEntry("secondary.dose", Decimal(1000), "mg"),
}
WELL = {
    "allergies": ("safe to give",),
    "hands": ("done",),
    "drug": ("ampicillin",),
    "dose": ("1000 mg", "yes"),
    "inspect": ("fit to use",),
    "wristband": ("yes",),
    "spike": ("done",),
    "clamp": ("done",),
    "gate": ("done",),
    "drips": ("the secondary",),
    "patient": ("comfortable",),
    "note": ("done",),
}
"""What is typed at each step where all is well."""

ALLERGY = Fault("secondary.allergy", "allergic", "The patient is allergic to it.", "Ampicillin.")
WRONG_DRUG = Fault("secondary.drug", "cefazolin", "The bag is cefazolin.", "Another drug.")
WRONG_DOSE = Fault("secondary.dose", parse_amount("2 g"), "The bag holds 2 g.", "Twice the dose.")
LEAK = Fault("secondary.bag", "leaking", "The bag leaks.", "Germs.")
OTHER_PATIENT = Fault("wristband", "another patient", "The wristband is another patient's.", "Another order.")
PAIN = Fault("patient", "in pain", "The patient is in pain.", "More of it.", "patient", 'Say: "That hurts."')
UNASKED = Fault("primary.limits", "out of range", "The primary is too fast.", "Too much.")
TELLS = {
    ALLERGY: ("allergies", ("allergic",)),
    WRONG_DRUG: ("drug", ("cefazolin",)),
    WRONG_DOSE: ("dose", ("2000 mg", "yes")),
    LEAK: ("inspect", ("leaking",)),
    OTHER_PATIENT: ("wristband", ("no",)),
    PAIN: ("patient", ("in pain",)),
}
"""For each fault that can be found: at which step, and what tells of it."""
CAUSES = (ALLERGY, OTHER_PATIENT, PAIN)
"""Faults that are a cause to stop; another bag can be taken for the others."""


def truth(*faults: Fault) -> Truth:
    """What is laid out."""
    return Truth(faults)
