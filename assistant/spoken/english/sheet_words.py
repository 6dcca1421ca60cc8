"""What stands on bench sheets, in English: for the instructor, on labels to cut out, and for the learner."""

from collections.abc import Mapping


class SheetWords:
    """Texts of the sheets that an order is laid out by.

    Attributes in capitals are fixed texts, or tables of texts; methods make sentences with values in them. Nothing
    on a label, a wristband or a learner's page names a fault, or speaks of faults at all.
    """

    # The three documents, as their titles and the foot of every page name them.
    INSTRUCTORS_SHEET = "Instructor\u2019s sheet"
    LABELS_SHEET = "Labels"
    LEARNERS_PAGES = "Learner\u2019s pages"
    FOR_THE_INSTRUCTOR = "For the instructor: it holds answers and faults."

    # Of a patient, on every document.
    BORN = "Born"
    PATIENT_NUMBER = "Number"
    ALLERGIES = "Allergies"
    NONE_KNOWN = "none known"
    WEIGHT = "Weight"
    NOT_NOTED = "not noted"

    # On the learner's pages.
    ORDERED = "Ordered"
    ORDERED_BY = "Ordered by"
    WRITTEN_ON = "Written on"
    ORDER_KINDS: Mapping[str, str] = {
        "primary": "Primary",
        "gravity": "By gravity",
        "change": "Change",
        "secondary": "Secondary",
        "intermittent": "Intermittent infusion",
        "second_secondary": "Secondary, after the first",
        "dose": "By pump",
        "protocol": "By table",
        "syringe": "By syringe pump",
        "push": "By hand",
        "flush": "Flush",
    }
    """What kind of line of an order it is, by the part of the order."""
    TAKEN_UP = "Order read and taken up"
    CHART = "Chart"
    HISTORY = "History"
    NO_HISTORY = "Nothing on record."
    INFUSIONS_GIVEN = "Given"
    BEGUN_AT = "Date, time begun"
    ENDED_AT = "Time ended"
    NOTES = "Notes"
    WHEN = "Time"
    SEEN_AND_DONE = "Seen and done"

    # On labels and wristbands.
    LABEL_CAUTION = "For training only. Not for human use."
    LABEL_KINDS: Mapping[str, str] = {
        "primary": "Infusion bag",
        "secondary": "Infusion bag",
        "second_secondary": "Infusion bag",
        "dose": "Infusion bag",
        "flush": "Syringe, flush",
        "gravity": "Infusion set",
        "push": "Vial",
        "syringe": "Syringe",
    }
    """What a label is on, as it says itself; which line it hangs on is not a matter for a label."""
    GRAVITY_SET = "gravity set"
    USE_BY = "Use by"
    WRISTBAND = "Wristband"
    CUT_AND_TAPE = (
        "Print at full size. Cut along the marks, and tape each label over the one that is there. The line above a "
        "label says where it goes."
    )

    # On the instructor's sheet.
    ALL_ORDERS = "All orders"
    ORDER_COLUMN = "Order"
    PATIENT_COLUMN = "Patient"
    AS_ORDERED = "as ordered"
    WHAT_TO_LAY_OUT = "What to lay out"
    AT_THE_BENCH = "At the bench"
    LAY_IT_OUT = "Lay it out so"
    WHEN_IT_BEGINS = "When it begins"
    FAULTS = "Faults"
    NO_FAULT = "None: everything is laid out as ordered."
    REACHES = "Would reach the patient:"
    WHAT_HAPPENS = "What happens, and when"
    NOTHING_HAPPENS = "Nothing changes on the way."
    AT_STEP = "At the step"
    SAY_OR_DO = "Say or do"
    ANSWER_KEY = "Answer key"
    WHAT_IT_TEACHES = "What it teaches"
    BENCH_THINGS: Mapping[str, str] = {
        "wristband": "Wristband",
        "site": "Site",
        "clamp": "Clamps",
        "pump": "Pump",
        "patient": "Patient",
    }
    """What is at every bench beside bags and syringes, by a word of its name."""
    NOTHING_WRONG: Mapping[str, str] = {
        "site": "Nothing wrong.",
        "clamp": "As the steps of the checklist expect them.",
        "pump": "Nothing wrong.",
        "patient": "Has no complaints.",
    }
    """How these are where the order does not say otherwise."""
    BAG_STATES: Mapping[str, str] = {
        "cloudy": "Cloudy. A label cannot show it: use one that looks so, or say so when the learner looks at it.",
        "leaking": "Leaking. A label cannot show it: use one that leaks, or say so when the learner looks at it.",
        "expired": "Expired: the date is on its label.",
    }
    """How a bag or a syringe that is not fit is laid out, by its state."""

    def order_named(self, code: str) -> str:
        """An order by its code."""
        return f"{self.ORDER_COLUMN} {code}"

    def sheets_title(self, document: str, codes: str) -> str:
        """Title of a document.

        Args:
            document: which of the three.
            codes: the code of its order, or of the first and the last of them.
        """
        return f"{document}: {codes}"

    def from_to(self, first: str, last: str) -> str:
        """Orders from one to another."""
        return f"{first} to {last}"

    def held_in(self, dose: str, volume: str) -> str:
        """All the drug in a bag."""
        return f"{dose} in {volume}"

    def from_a_bag(self, volume: str, bag: str) -> str:
        """A volume that is less than the bag."""
        return f"{volume} from a bag of {bag}"

    def in_a_syringe(self, size: str) -> str:
        """The syringe of a syringe pump."""
        return f"in a syringe of {size}"

    def from_a_vial(self, held: str) -> str:
        """The vial from which a dose is drawn."""
        return f"from a vial of {held}"

    def in_time(self, time: str) -> str:
        """The time in which a dose goes in."""
        return f"over {time}"

    def with_a_set(self, drop_factor: str) -> str:
        """The set of a gravity infusion."""
        return f"with a set of {drop_factor}"

    def at_rate(self, ordered: str) -> str:
        """How fast an infusion runs that is ordered by its dose in a time."""
        return f"at {ordered}"

    def kept_back(self, reserve: str) -> str:
        """What stays in the bag."""
        return f"reserve {reserve}"

    def running_for(self, since: str) -> str:
        """Where a running primary stands."""
        return f"The primary has been running for {since}."

    def running_at(self, rate: str) -> str:
        """The rate at which a primary runs that a new order changes."""
        return f"The pump runs the primary at {rate}."

    def use_by(self, day: str) -> str:
        """The date on a label."""
        return f"{self.USE_BY} {day}"

    def band_says(self, name: str, born: str, number: str, allergies: str) -> str:
        """What stands on a wristband."""
        return f"{name}, born {born}, number {number}, allergies: {allergies}."

    def pump_takes(self, rounding: str) -> str:
        """To what place the pump takes a rate."""
        return f"Takes a rate to the {rounding}."

    def fault_number(self, number: int) -> str:
        """A fault by its number on the sheet."""
        return f"Fault {number}"

    def as_found(self, state: str) -> str:
        """How something is, where it is not as it should be."""
        return f"{state[:1].upper()}{state[1:]}."
