"""How an attempt and its steps went, in English: outcome, endings, slips, cues, feedback.

Tables are keyed by the names that a record uses. A name that a table lacks, as in a record of another version, is
shown as it is.
"""

from collections.abc import Mapping, Sequence


def hurried(count: int, of: int) -> str:
    """That hands-on steps were reported done faster than their lines can be read."""
    one = count == 1
    steps = "The one hands-on step" if of == 1 else f"{count} of {of} hands-on steps"
    return f"{steps} {'was' if one else 'were'} reported done faster than {'it' if one else 'they'} can be read."


class ResultWords:
    """Texts of results, wherever they are shown: on a terminal, on a page, in a table."""

    OUTCOMES: Mapping[str, str] = {
        "passed": "passed",
        "complete by own report": "complete by own report",
        "stopped for cause": "stopped for cause",
        "not passed": "not passed",
        "not completed": "not completed",
        "stopped": "stopped",
        "interrupted": "interrupted",
        "not known": "not known",
    }
    OUTCOME_HEADINGS: Mapping[str, str] = {
        "passed": "Passed",
        "complete by own report": "Complete by own report",
        "stopped for cause": "Stopped for cause",
        "not passed": "Not passed",
        "not completed": "Not completed",
        "stopped": "Stopped before the end",
        "interrupted": "Interrupted",
        "not known": "Not known",
    }
    """The outcome in large letters."""
    PRACTICE_COMPLETED = "Practice completed"
    STRIP = "The steps at a glance"
    STRIP_LEGEND = (
        "One mark for each step, the higher the longer it took: a dot done unaided, a triangle with help or not at "
        "once, a cross not done, a ring not reached, a dash not applicable. A bar stands before a gate."
    )
    SAID, NEEDED = "said", "by the order"
    OUTCOME_SENTENCES: Mapping[str, str] = {
        "passed": "Passed by the checklist's rule.",
        "complete by own report": "Right as far as the learner reports; an instructor has yet to see some of it.",
        "stopped for cause": "Stopped before the end for a fault that was there: rightly so.",
        "not passed": "Completed, and not passed by the checklist's rule.",
        "not completed": "Closed as not completed; it cannot be resumed.",
        "stopped": "Stopped before the end; there is no result.",
        "interrupted": "Interrupted: no end is on record; there is no result.",
        "not known": "How it ended is not known: this record does not show it.",
    }
    ENDINGS: Mapping[str, str] = {
        "not applicable": "not applicable",
        "left out": "left out",
        "not answered": "not answered",
        "not seen by the instructor": "not seen by the instructor",
        "not reached": "not reached",
        "wrong": "wrong",
        "found, and not put right": "found, and not put right",
        "found, and stopped for it": "found, and stopped for it",
        "corrected by the learner": "corrected by the learner",
        "done after a cue": "done after a cue",
        "out of order": "out of order",
        "done unaided": "done unaided",
        "not scored": "not scored",
    }
    """How a step ended."""
    NUMBER_VERDICTS: Mapping[str, str] = {
        "not given": "not given",
        "wrong at the end": "wrong at the end",
        "right only after a hold": "right only after a hold",
        "put right by the learner": "put right by the learner",
        "right the first time": "right the first time",
    }
    """How a number or a name went; where none of these fits, the step's ending."""
    SLIPS: Mapping[str, str] = {
        "tenfold": "tenfold",
        "thousandfold": "thousandfold",
        "decimal point": "decimal point",
        "teen-ty": "teen-ty",
        "swapped": "swapped",
        "transposed digits": "transposed digits",
        "time unit": "time unit",
        "another place": "rounded to another place",
        "double or half": "double or half",
        "drop factor": "another drop factor",
        "weight left out": "the weight left out",
        "lost or doubled digit": "a digit lost or written twice",
        "pounds and kilograms": "pounds and kilograms",
        "another name": "another name",
        "another choice": "another choice",
        "not as it is": "not as it is at the bench",
        "other": "other",
    }
    ADVICE: Mapping[str, str] = {
        "tenfold": "Estimate first: is the answer about as large as it must be? Then look at the decimal point.",
        "thousandfold": "Look at the units: mg and mcg, g and mg are a thousand apart.",
        "decimal point": "Say the decimal point aloud, with a zero before it where there is no other figure.",
        "teen-ty": "Numbers that sound alike are said digit by digit: one five, five zero.",
        "swapped": "Say what the number is before you say the number: rate, volume, time.",
        "transposed digits": "Compare the display with the order digit by digit, from left to right.",
        "time unit": "Turn the time into hours first, then divide.",
        "another place": "Round once, at the end, to the place that the pump or the order asks for.",
        "double or half": "Count what goes in: one bag, one dose, one hour.",
        "drop factor": "Read the drop factor from the package of the set in your hand.",
        "weight left out": "Multiply a dose per kilogram by the weight before anything else.",
        "lost or doubled digit": "Count the digits on the display, and compare them with your sum.",
        "pounds and kilograms": "Turn pounds into kilograms first, and write the unit beside the weight.",
        "another name": "Read the whole label aloud, and hold it beside the order before you go on.",
        "not as it is": "Look at the thing itself before you answer, and say what you see.",
        "other": "Work it out from the order once more, and write the working down.",
    }
    """What to do about each kind of slip (common practice, no source)."""
    CUES: Mapping[str, str] = {
        "help": "asked for help",
        "more": "asked for more",
        "spelled": "had a word spelled",
        "gate": "led back by a gate",
        "order": "led back by a later step",
        "hint": "given a hint",
        "instructor": "helped by the instructor",
    }
    TROUBLES: Mapping[str, str] = {
        "a finding": "a fault",
        "air in the line": "air in the line",
        "a leak": "a leak",
        "something was dropped": "something was dropped",
        "something sterile was touched": "something sterile was touched",
        "an alarm": "an alarm",
        "the patient is unwell": "the patient is unwell",
        "the wrong item": "the wrong item",
        "a mistake": "a mistake",
        "something is damaged": "something is damaged",
        "something else is wrong": "something else is wrong",
    }
    """What a learner found."""
    GIVEN: Mapping[str, str] = {"yes": "yes", "no": "no", "seen": "seen", "not seen": "not seen"}
    """Answers that are names in a record, and no words of the author's or the learner's."""
    MODES: Mapping[str, str] = {"practice": "practice", "check-off": "check-off"}

    EVIDENCES: Mapping[str, str] = {
        "worked out": "worked out: it agrees with the order and the bench",
        "seen by the instructor": "seen by the instructor",
        "the learner's word": "by the learner's own report",
    }
    """What a closed step rests on."""
    FATES: Mapping[str, str] = {
        "missed": "missed",
        "found, and stopped for it": "found, and the learner stopped for it",
        "found, and put right": "found, and put right",
        "found, and settled by the instructor": "found, and settled by the instructor",
        "found": "found, and not dealt with",
        "told of as something else": "told of as something else",
        "not reached": "not reached",
        "not found": "not found",
        "no step asks for it": "not found: no step of this checklist asks for it",
    }
    """What became of a fault that was laid out."""

    LAID_OUT = "Laid out with these faults"
    NOT_LAID_OUT = "Found, and not laid out on purpose: for the instructor to judge"
    TO_BE_SEEN = "By the learner's own report; an instructor has to see it"
    CAUTION = "Training only. This result does not license anyone; an instructor signs for a competency."
    CRITICAL_STEPS = "Critical steps"
    OTHER_STEPS = "Other steps"
    DONE_AGAIN = "done again: the settings were lost by waiting too long"
    NO_DIFFERENCE = "none"
    NOTHING = "nothing"
    NO_ANSWER = "no answer"
    NO_HELP_NEEDED = "No help was needed."
    FOUND_BY_THE_LEARNER = "Found by the learner"
    INSTRUCTORS_NOTES = "Notes of the instructor"
    UNSAFE = "marked as unsafe by the instructor"
    TAKEN_BACK = "taken back later"

    def ending(self, name: str) -> str:
        """How a step ended."""
        return self.ENDINGS.get(name, name)

    def number_verdict(self, name: str) -> str:
        """How a number or a name went."""
        return self.NUMBER_VERDICTS.get(name) or self.ending(name)

    def mode(self, name: str) -> str:
        """Practice or check-off."""
        return self.MODES.get(name, name)

    def slips(self, names: Sequence[str]) -> str:
        """Kinds of slip, in a list."""
        return ", ".join(self.SLIPS.get(name, name) for name in names)

    def given(self, answer: str) -> str:
        """An answer, in words where it is a name."""
        return self.GIVEN.get(answer, answer)

    def found_at(self, step: str, kind: str, said: str) -> str:
        """What the learner found, where, and in which words."""
        return f"{step}: {self.TROUBLES.get(kind, kind)}" + (f" (\u201c{said}\u201d)." if said else ".")

    def noted(self, step: str, words: str) -> str:
        """A note of the instructor's; `step` is empty where it is for the attempt."""
        return f"{step}: {words}" if step else words

    def evidence(self, name: str) -> str:
        """What a step rests on; empty where that is not on record."""
        return self.EVIDENCES.get(name, name)

    def fate(self, name: str, step: str) -> str:
        """What became of a fault, and where."""
        return self.FATES.get(name, name) + (f" at {step[:1].lower()}{step[1:]}" if step else "")

    def laid_out(self, what: str, fate: str, at: Sequence[str], step: str, reaches: str) -> str:
        """A fault that was laid out: what, what became of it, where it could be found, what it would have done."""
        others = [one for one in at if one != step]
        where = f" It could {'also ' if step else ''}be found at: {'; '.join(others)}." if others else ""
        became = self.fate(fate, step)
        return f"{what} {became[:1].upper()}{became[1:]}.{where} {self.would_reach(reaches)}"

    def would_reach(self, what: str) -> str:
        """What would have reached the patient."""
        return f"Would have reached the patient: {what[:1].lower()}{what[1:]}"

    def not_laid_out(self, step: str, answer: str) -> str:
        """A finding of what is not laid out."""
        return f"{step}: {self.given(answer)}."

    def hurried(self, count: int, of: int) -> str:
        """Hands-on steps that were reported done faster than their lines can be read."""
        return hurried(count, of)

    def cue(self, name: str, times: int) -> str:
        """One cue, given so many times."""
        return self.CUES.get(name, name) + (f" ({times} times)" if times > 1 else "")

    def recorded(self, name: str) -> str:
        """A name that only the record uses: a kind of entry, where it came from, a field."""
        return name.replace("_", " ")

    # Lines of a result.

    def result(self, outcome: str, mode: str) -> str:
        """The outcome by its name, as a line of a result."""
        return f"Result: {self.outcome_heading(outcome, mode).lower()}."

    def result_with_reason(self, outcome: str, mode: str, cause: str, sentence: str) -> str:
        """The outcome with what decided it and its sentence."""
        heading = self.headline(self.outcome_heading(outcome, mode).lower(), cause)
        return f"Result: {heading}. {sentence}"

    def outcome_heading(self, outcome: str, mode: str) -> str:
        """The outcome in large letters: practice that went well is never taken for a check-off that was passed."""
        if mode == "practice" and outcome == "passed":
            return self.PRACTICE_COMPLETED
        return self.OUTCOME_HEADINGS[outcome]

    def headline(self, heading: str, cause: str) -> str:
        """The outcome and what decided it."""
        return f"{heading}: {cause}" if cause else heading

    def found_at_step(self, number: int) -> str:
        """A fault that was found, as the end of a headline."""
        return f"a fault found{self._at(number)}"

    def missed_at_step(self, number: int) -> str:
        """A fault that was overlooked, as the end of a headline."""
        return f"a fault overlooked{self._at(number)}"

    def slip_at_step(self, slips: Sequence[str], number: int) -> str:
        """A wrong answer by its slips, as the end of a headline."""
        return f"a wrong answer ({self.slips(slips)}){self._at(number)}"

    def ended_at_step(self, ending: str, number: int) -> str:
        """How a step ended, as the end of a headline."""
        return f"step {number} {self.ending(ending)}" if number else f"a step {self.ending(ending)}"

    def strip(self, part: str, well: int, of: int, others: Sequence[tuple[int, str]]) -> str:
        """What the strip of marks shows of one part: how many went well, and the others by number and ending."""
        told = [f"{part or 'Steps'}: {well} of {of} done unaided"]
        told += [f"step {number} {self.ending(ending)}" for number, ending in others]
        return "; ".join(told) + "."

    @staticmethod
    def _at(number: int) -> str:
        return f" at step {number}" if number else ""

    def share_unaided(self, unaided: int, applicable: int, percent: object) -> str:
        """The score."""
        return f"{unaided} of {applicable} steps done unaided ({percent} %)."

    def and_more(self, count: int) -> str:
        """So many further lines of a list that was cut."""
        return f"and {count} more, in the report."

    def first_then(self, first: str, final: str) -> str:
        """A first answer and the one that was given in its place."""
        return f"first {first}, then {final or self.NOTHING}"

    def slips_made(self, slips: Sequence[str]) -> str:
        """The slips of one step."""
        return f"slip: {self.slips(slips)}"

    def help_given(self, cues: Sequence[str]) -> str:
        """The cues of one step, each already in words."""
        return f"help: {', '.join(cues)}"

    def reason(self, reason: str) -> str:
        """Why a step does not apply."""
        return f"reason: {reason}"

    def step_detail(self, field: str, value: str) -> str:
        """What a record tells of a step beside its answers, by the name of the field."""
        match field:
            case "wrong":
                return f"answers that were not right: {value}"
            case "seen_by":
                return f"seen by the {value}"
            case "marked_not_seen":
                return "marked as not seen by the instructor"
            case "taken_back":
                return "said to be done, and found later not to be"
            case "found":
                return f"faults found here: {value}"
            case "reopened":
                return f"asked again at no cost: {self.times(value)}"
            case "corrections":
                return f"taken up again by the learner: {self.times(value)}"
            case "expired":
                return f"done again because the settings were lost by waiting: {self.times(value)}"
            case "out_of_order":
                return "done out of order"
            case "reason":
                return self.reason(value)
            case _:
                return f"{self.recorded(field)}: {value}"

    def times(self, count: object) -> str:
        """So many times."""
        return f"{count} {'time' if str(count) == '1' else 'times'}"

    def too_high(self, size: str) -> str:
        """An answer that was off by this much."""
        return f"{size} too high"

    def too_low(self, size: str) -> str:
        """An answer that was off by this much."""
        return f"{size} too low"

    def number_given(self, step: int, answer: str, verdict: str) -> str:
        """One number or name on a line."""
        return f"step {step}: {answer or self.NO_ANSWER}, {self.number_verdict(verdict)}"

    def by_the_order(self, expected: str) -> str:
        """What follows from the order."""
        return f"by the order {expected}"

    def first_answer(self, first: str, difference: str) -> str:
        """A first answer, and how far off it was where that is known."""
        return f"first answer {first}" + (f" ({difference})" if difference else "")

    def first_answer_off(self, difference: str) -> str:
        """How far off the first answer was."""
        return f"first answer {difference}"

    # Feedback.

    def critical_unaided(self, some: int, of: int) -> str:
        """How many critical steps were done unaided."""
        return self._share(some, of, ("critical step", "critical steps"), "done unaided")

    def right_first_time(self, some: int, of: int) -> str:
        """How many numbers and labels were right the first time."""
        return self._share(some, of, ("number or label", "numbers and labels"), "right the first time")

    def _share(self, some: int, of: int, what: tuple[str, str], how: str) -> str:
        """A share in a sentence; `what` in the singular and the plural."""
        one, more = what
        if some == of:
            if of == 1:
                return f"The one {one} was {how}."
            return f"Both {more} were {how}." if of == 2 else f"All {of} {more} were {how}."
        return f"{some} of {of} {more} {'was' if some == 1 else 'were'} {how}."

    def own_correction(self, step: int) -> str:
        """A mistake that the learner saw."""
        return f"You saw a mistake yourself and put it right: step {step}."

    def step_quoted(self, number: int, line: str) -> str:
        """A step with its line; 0 where its number is not known."""
        return f"Step {number}, \u201c{line}\u201d" if number else f"\u201c{line}\u201d"

    def practise_ending(self, step: str, ending: str) -> str:
        """A step to practise, by how it ended."""
        return f"{step}: {self.ending(ending)}."

    def practise_slip(self, step: str, first: str, expected: str, slip: str) -> str:
        """A step to practise because of a slip; `expected` is empty where it is not known or not told."""
        follows = f"; {expected} follows from the order" if expected else ""
        advice = self.ADVICE.get(slip, self.ADVICE["other"])
        return f"{step}: your first answer was {first}{follows} ({self.slips_made([slip])}). {advice}"

    def practise_help(self, step: str, cues: Sequence[str]) -> str:
        """A step to practise because help was needed."""
        return f"{step}: done after help ({', '.join(cues)}). Go through it once more without."

    def practise_answer(self, step: str, first: str, final: str) -> str:
        """A step to practise because its first answer was changed."""
        return f"{step}: you answered {first} first, then {final}. Look before you answer."
