"""The library's procedures, and a learner who types his way through one of them without a screen or a file.

One row a procedure: which critical step is passed over, and where its planted fault shows. New procedures
get a row here; `test_library` finds any that has none.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from assistant import dosing
from assistant.checklist.load import load
from assistant.checklist.model import (
    Checklist,
    ChoiceAsked,
    DoneAsked,
    NameAsked,
    NoteAsked,
    NumberAsked,
    ObservationAsked,
    QuestionAsked,
    Step,
    WaitAsked,
)
from assistant.guide import Guide
from assistant.guide import Papers as GuidePapers
from assistant.guide.events import Opened
from assistant.guide.progress import Mode, Progress, State, Status
from assistant.orders.key import KeyEntry
from assistant.orders.load import load_order
from assistant.orders.model import Order
from assistant.orders.plausible import table
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of
from assistant.spoken import ENGLISH
from tests.guide.lived import Lived

STOPS = ("stop", "yes")
"""What a learner says who found something that must not go on."""

NOISY_LAB = Path(__file__).with_name("noisy-lab.toml")
"""A short checklist with a step of every kind, for attempts that take as long as they are spoken."""

LARGEST = 9999
"""Larger numbers are not heard as one answer."""


@dataclass(frozen=True)
class Procedure:
    """One procedure of the library.

    Attributes:
        name: of its checklist.
        passed_over: a critical step that is left open at first; a gate or a later step must lead back to it.
        fault: the step at which the planted fault shows.
        faulty_order: the order whose labels on the stand are not as ordered; "" where the fault is something
            that the learner finds at the patient, the pump or the line.
        advice: a word of what is said when the fault shows.
    """

    name: str
    passed_over: str
    fault: str
    faulty_order: str
    advice: str


PROCEDURES = (
    Procedure("primary-line", "p-no-air", "p-fluid", "oh-104", "put the bag back"),
    Procedure("secondary-line", "s-clamp-open", "s-dose", "oh-106", "compare dose and unit"),
    Procedure("primary-and-secondary", "s-compatible", "s-dose", "oh-106", "compare dose and unit"),
    Procedure("gravity-infusion", "g-no-air", "g-bag-volume", "oh-111", "take another bag"),
    Procedure("bag-change", "b-open", "b-fluid", "oh-109", "put the bag back"),
    Procedure("saline-lock", "f-site", "f-flush", "", "stop flushing"),
    Procedure("lock-infusion", "l-no-air", "l-allergies", "oh-114", "call the prescriber"),
    Procedure("weight-based-infusion", "w-limits", "w-drug", "oh-116", "put it back"),
    Procedure("second-piggyback", "k-open", "k-both-drugs", "", "take a new set"),
    Procedure("air-in-line", "a-clamp", "a-patient", "", "call for help now"),
    Procedure("occlusion", "o-relieve", "o-flush", "", "stop flushing"),
    Procedure("other-alarms", "m-rate", "m-now-patient", "", "tell the prescriber now"),
    Procedure("site-gone-bad", "x-clamp", "x-drug", "", "leave the catheter in"),
    Procedure("discontinue", "d-site", "d-whole", "", "tell the prescriber now"),
    Procedure("hourly-round", "r-identify", "r-fluid", "oh-119", "compare bag and order"),
    Procedure("hand-over", "h-identify", "h-fluid", "oh-119", "compare bag and order"),
    Procedure("rate-change", "c-way", "c-now-patient", "oh-133", "tell the prescriber now"),
    Procedure("infusion-to-lock", "v-clamp", "v-look-site", "oh-135", "nothing more goes through"),
    Procedure("push-through-lock", "i-vial-minutes", "i-vial-drug", "oh-137", "put it back"),
    Procedure("next-piggyback", "e-primary-rate", "e-bag-drug", "oh-141", "put it back"),
    Procedure("potassium", "q-second", "q-guide-limits", "oh-143", "tell the prescriber what you found"),
    Procedure("push-into-line", "j-vial-to-draw", "j-chart-allergies", "oh-145", "call the prescriber"),
    Procedure("syringe-pump", "y-size", "y-dose", "oh-147", "compare dose and unit"),
    Procedure("library-alert", "z-rate", "z-guide-limits", "oh-149", "tell the prescriber what you found"),
    Procedure("heparin", "u-second", "u-bleeding", "oh-151", "pause the pump now"),
    Procedure("set-change", "n-clamp", "n-fluid", "oh-139", "put the bag back"),
)


@dataclass(frozen=True)
class Papers:
    """What a walk needs: the checklist, its order, what follows from it."""

    checklist: Checklist
    order: Order
    key: Mapping[str, KeyEntry]

    def for_guide(self) -> GuidePapers:
        """The same as a guide takes them."""
        truth = truth_of(self.order, table())
        return GuidePapers(self.checklist, self.order.sentence(), self.key, ENGLISH, truth)


@lru_cache
def papers(name: str, order: str = "") -> Papers:
    """The papers of a procedure (name or path), by its own order where none is named."""
    checklist = load(name)
    prescription = load_order(order or checklist.order)
    return Papers(checklist, prescription, answer_key(prescription))


def amount(entry: KeyEntry) -> dosing.Amount:
    """A number of the answer key."""
    assert entry.unit is not None
    assert not isinstance(entry.value, str)
    return dosing.Amount(entry.value, entry.unit)


def right_words(step: Step, given: Papers) -> str:
    """What a learner types who does everything right, in the words of the step where it has some of its own.

    Of several choices that are all taken, the last.
    """
    number = given.checklist.number_asked(step)
    if number is not None:
        return dosing.show(amount(given.key[number.key]))
    match step.expect:
        case NameAsked(key=name):
            return str(given.key[name].value)
        case DoneAsked(good=(words, *_)) | WaitAsked(good=(words, *_)):
            return words
        case QuestionAsked(right=right, good=good, bad=bad):
            return next(iter(good if right == "yes" else bad), right)
        case ChoiceAsked(choices=choices, right=right):
            return right or choices[-1]
        case NoteAsked():
            return "two centimetres of pale swelling above the wrist"
        case ObservationAsked():
            return "seen"
    return "done"


def wrong_words(step: Step, given: Papers) -> str:
    """What a learner types who errs: a tenfold number (a tenth of one that is large), or the other answer."""
    number = given.checklist.number_asked(step)
    if number is not None:
        meant = amount(given.key[number.key])
        tenfold = meant.value * 10
        return dosing.show(dosing.Amount(tenfold if tenfold < LARGEST else meant.value / 10, meant.unit))
    match step.expect:
        case QuestionAsked(right="yes", bad=bad):
            return next(iter(bad), "no")
        case QuestionAsked(right="no", good=good):
            return next(iter(good), "yes")
        case ChoiceAsked(choices=choices, right=right):
            return next(choice for choice in choices if choice != right)
    raise AssertionError(f"{step.id} cannot be answered wrongly")


def found_words(step: Step, given: Papers) -> str:
    """What the label on the stand says, where the step asks for it; else that it is not as it should be."""
    if not isinstance(step.expect, NameAsked | NumberAsked):
        return wrong_words(step, given)
    label = given.order.labels()[step.expect.key]
    if isinstance(label, str) or isinstance(step.expect, NameAsked):
        return str(label)
    value = dosing.EXACT.apply(label.in_unit(step.expect.unit))
    return dosing.show(dosing.Amount(value, step.expect.unit))


def is_to_be_seen(checklist: Checklist, progress: Progress) -> bool:
    """Whether a step is done that an instructor has to see and has not marked."""
    return any(
        step.seen and progress.steps[step.id].status is Status.CLOSED and not progress.steps[step.id].seen_by
        for step in checklist.steps
    )


def walk(given: Papers, first: Mapping[str, Sequence[str]], mode: Mode = Mode.PRACTICE) -> Lived:
    """Type through a whole procedure.

    Args:
        given: the papers.
        first: for a step's id, what is typed there before the right answer.
        mode: practice or check-off; in a check-off an instructor marks what has to be seen.

    Raises:
        AssertionError: it does not come to an end.
    """
    said = {name: list(words) for name, words in first.items()}
    lived = Lived(Guide(given.for_guide(), mode, {"mode": mode.value}))
    lived.give(Opened(lived.at))
    for _ in range(6 * len(given.checklist.steps)):
        if lived.outcome is not None:
            return lived
        progress = lived.guide.progress
        step = given.checklist.steps[progress.cursor]
        if progress.state is State.WAITING and isinstance(step.expect, WaitAsked):
            lived.wait(step.expect.seconds)
        elif progress.state is State.READING_BACK:
            lived.type("yes")
        elif mode is Mode.CHECK_OFF and is_to_be_seen(given.checklist, progress):
            lived.type("instructor here", "all seen", "go on")
        elif said.get(step.id):
            lived.type(said[step.id].pop(0))
        else:
            lived.type(right_words(step, given))
    raise AssertionError(f"{given.checklist.name} does not come to an end: {lived.texts()[-500:]}")
