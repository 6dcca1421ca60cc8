"""Every sentence that the guide itself says, in English. Authored text comes from the checklist.

Sentences are written as they are shown; `assistant.spoken.speech` turns them into what is spoken.
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from assistant.dosing import CannotCheck, Disagrees
from assistant.spoken.english import slips
from assistant.spoken.english.result_words import hurried
from assistant.spoken.meaning import Reason, Trouble

_REFUSALS: Mapping[Reason, str] = {
    Reason.EMPTY: "I heard nothing I can use.",
    Reason.UNKNOWN_WORDS: "I did not understand that.",
    Reason.NOT_A_NUMBER: "I need a number here.",
    Reason.BADLY_WRITTEN: "That is easily misread. Write the number plainly, such as 5, 0.5 or 1,000, and its unit.",
    Reason.WRONG_UNIT: "That is not the unit I need here.",
    Reason.TWO_NUMBERS: "I heard two numbers. Please say one.",
    Reason.OUT_OF_RANGE: "That number is outside what can be said here.",
    Reason.DIGITS_WANTED: "Please say the number digit by digit.",
    Reason.TOO_LONG: "That was too long for me. Please say it in a few words.",
    Reason.NOT_AN_ANSWER_HERE: "That is not an answer to this.",
    Reason.QUESTION: "That sounded like a question. I can only take what you have done or seen.",
    Reason.UNSURE: "Tell me when it is done.",
}

_TROUBLES: Mapping[Trouble, str] = {
    Trouble.AIR: (
        "Make it safe first: stop the infusion if it is running, and clamp the line. Then remove the air the way your "
        "lab teaches it, or call your instructor."
    ),
    Trouble.LEAK: (
        "Make it safe first: stop, and clamp the line if it is open. Replace whatever leaks, or call your instructor."
    ),
    Trouble.DROPPED: "Do not use what was dropped if it has to be sterile. Get a new one.",
    Trouble.CONTAMINATED: "Do not use it: anything that may be contaminated is replaced. Get a new one.",
    Trouble.ALARM: "Read what the display says. Make it safe first, then deal with the alarm, or call your instructor.",
    Trouble.PAIN: "Stop, and clamp the line if it is open. Look at the patient and the site. Call your instructor now.",
    Trouble.WRONG_ITEM: "Good that you saw it. Put it aside, and get the right one.",
    Trouble.MISTAKE: "Which step? Say go back until you are there.",
    Trouble.DAMAGED: "Do not use it. Put it aside, and get a new one.",
    Trouble.OTHER: "Make it safe first: stop, and clamp the line if it is open. Then call your instructor.",
}
"""Common practice, no source; local policy and the instructor come first."""


_ENDED: Mapping[str, str] = {
    "passed": "Passed.",
    "complete by own report": "Complete by your own report. That is not passed yet.",
    "stopped for cause": "Stopped for cause, and rightly so.",
    "not passed": "Not passed.",
}


_HAPPENS: Mapping[str, str] = {
    "alarm": "The pump alarms.",
    "pain": "The patient says that it hurts.",
    "settings lost": "The pump has lost its settings.",
}


class Sentences:
    """What the guide says: fixed sentences as attributes, those with something in them as methods.

    Another language says the same things under the same names.
    """

    TRAINING_ONLY = (
        "This is training. It controls no pump and treats no patient. "
        "Local policy and the maker's instructions come first, and a licensed practitioner decides."
    )
    TRAINING_IN_SHORT = "This is training: I control no pump. Local policy and the maker's instructions come first."
    WHAT_CAN_BE_SAID = (
        "You can always say: again, more, back, go on, where am I, what is my order, correct that, "
        "I need help, call my instructor, not applicable, pause, or stop. Typing the same words works too."
    )

    FIRST_WORDS = "You can say: again, more, what is my order, or I need help."

    PRACTICE_BEGINS = "Practice: ask as often as you like."
    COUNTS_AS_CUE = "That counts as a cue. Shall I?"
    CALLED = "I've noted that you want your instructor. Raise your hand, too."
    CALL_INSTRUCTOR = "If that does not help, call your instructor."
    TAKE_YOUR_TIME = "Take your time."
    CHECKS_AGAIN = "Now repeat the checks that depend on it."
    WAIT_BROKEN_OFF = "I've stopped the timer. It starts again when you say so."
    IS_IT_DONE = "Is it done?"
    NO_WORDING = "I did not understand that."
    SOUND_LOST = "Some sound was lost. Please say it again."
    TRY_DIGITS = "Try it digit by digit, for example: one two point five. Or type it."
    TRY_TYPING = "You can also type it."
    YES_OR_NO = "Please say yes or no."
    AGREES = "Agrees."
    CORRECTION_ASKED = "Let us correct that."
    NOTHING_TO_CORRECT = "There is nothing to correct yet."
    TO_BE_SURE = "To be sure, please say the number once more, digit by digit."
    SAY_NUMBER_AGAIN = "Then please say it again, digit by digit."
    SAY_NAME_AGAIN = "Then please read the name from the label again."
    SAY_REASON_AGAIN = "Then please tell me again why it does not apply."
    WHY_NOT_APPLICABLE = "Why does it not apply?"
    REASON_DROPPED = "Then the step stays."
    CRITICAL_CANNOT_BE_SET_ASIDE = (
        "This is a critical step and cannot be set aside here. If you think it does not apply, say pause and ask "
        "your instructor."
    )
    THIS_COMES_FIRST = "This comes first:"
    FIRST_STEP = "This is the first step."
    LEFT_OPEN = "Left open."
    CRITICAL_LEFT_OPEN = "Left open. This is a critical step: the next gate will hold until it is done."
    LEFT_OUT = "Left out."
    NO_MORE = "There is nothing more to say about this step."
    NO_HINT = "Do the step as you were taught it. If you are not sure, say pause and ask your instructor."
    NOTHING_TO_SPELL = "There is nothing to spell here."
    TIME_UP = "Time is up."
    WAIT_DROPPED = "Then the time starts again."
    PAUSED = "Paused. Say go on when you are ready."
    GOING_ON = "Going on."
    STOP_ASKED = (
        "Stop the attempt here? Say yes to stop; it can be resumed later. Say no to go on. "
        "Or say close the attempt, to end it for good as not completed."
    )
    CLOSED_EARLY = "Closed as not completed. It is sealed, and your instructor can sign for it."
    CONSENT_ASKED = "May I keep the sound of what you say, beside the record of this attempt? Please say yes or no."
    CONSENT_GIVEN = "Thank you. The sound is kept."
    CONSENT_REFUSED = "No sound is kept."
    ONLY_THE_INSTRUCTOR = "Only your instructor can answer this: seen, or not seen. Say go on to leave it open."
    INSTRUCTOR_CODE_WANTED = "The instructor types the word instructor and the code."
    OVERRULE_NEEDS_CODE = "This is a critical step: only an instructor with a code can set it aside."
    WHY_OVERRULED = "Why is this step set aside?"
    CUE_COUNTED = "The cue is counted."
    PAUSED_BY_INSTRUCTOR = "Your instructor has paused the attempt."
    STOPPED_BY_INSTRUCTOR = "Your instructor has stopped the attempt. Nothing recorded is lost."
    MARK_TAKEN_BACK = "Your instructor wants an earlier step done again."
    TWO_PEOPLE_DIFFER = "The two people do not have the same number. Each works it out again from the order."
    SAY_NOTE_AGAIN = "Then please say the note again."
    MORE_FOLLOWS = "Say more for the rest."
    SAY_DIGITS = "Say the digits, please."
    STOPPED = "Stopped. Nothing recorded is lost, and the attempt can be resumed."
    INPUT_ENDED = "No more input can come, so the attempt stops here. Nothing recorded is lost."
    RESUMED = "The attempt goes on where it was."
    EAR_LOST = "I cannot hear you any more. Please type your answers; the same words work."
    EAR_BACK = "I can hear you again."
    SLOWER, FASTER, LOUDER, SOFTER = "Slower.", "Faster.", "Louder.", "Softer."
    HIGHER, DEEPER = "Higher.", "Deeper."
    AT_THE_LIMIT = "That is as far as it goes."
    ALL_DONE = "That was the last step."
    LOOK_AGAIN = "That does not match what is in front of you. Look again."
    STOP_FOR_THIS = "Make it safe, and call your instructor. To end here for this reason, say stop."
    STOP_FOR_CAUSE_ASKED = "Stop here for what you found? Say yes to stop, or no to go on."
    TAKEN_BACK = "So an earlier step was not done after all."
    CLOSED_BEFORE_ITS_END = "The attempt was closed before its end."
    FEEDBACK_GOOD = "Every step was done unaided."

    def refusal(self, reason: Reason) -> str:
        """Why words were not taken."""
        return _REFUSALS[reason]

    def begins(self, title: str, purpose: str) -> str:
        """The first sentence of an attempt."""
        return f"{title}. {purpose}"

    def step_line(self, number: int, count: int, line: str, *, critical: bool) -> str:
        """A step as it is shown: its place, whether it is critical, and its line."""
        return f"Step {number} of {count}{', critical' if critical else ''}. {line}"

    def which_is_it(self, good: str, bad: str) -> str:
        """Asks for the line's own words; both may be empty, where the line has none."""
        return f"{good[:1].upper()}{good[1:]}, or {bad}?" if good and bad else self.IS_IT_DONE

    def answer_read_back(self, words: str) -> str:
        """An answer that was doubted twice, read back."""
        return f'I heard "{words}". Is that right?'

    def meant(self, answer: str) -> str:
        """What words probably mean: only a yes to it counts."""
        return f'Do you mean "{answer}"?'

    def heard_which(self, words: str, question: str) -> str:
        """What was heard was not clear enough: it is asked once more."""
        return f'I heard "{words}". {question}'

    def instructor_here(self, words: tuple[str, ...]) -> str:
        """What the instructor can say now."""
        offered = ", or ".join((", ".join(words[:-1]), words[-1])) if len(words) > 1 else "".join(words)
        return f"Instructor: {f'say {offered}. ' if offered else ''}Say go on to hand back to the learner."

    def trouble(self, kind: Trouble) -> str:
        """What to do about trouble where the checklist does not say; it defers to the lab and the instructor."""
        return _TROUBLES[kind]

    def hurried(self, count: int, of: int) -> str:
        """Hands-on steps that were reported done faster than their lines can be read."""
        return hurried(count, of)

    def unit_needed(self, unit: str) -> str:
        """What unit the step needs."""
        return f"I need a number in {unit}."

    def which_number(self, readings: tuple[str, ...]) -> str:
        """Two readings of the same words."""
        return "That could be " + " or ".join(readings) + ". Please say it digit by digit."

    def which_digits(self, one: str, other: str) -> str:
        """A number that sounds like one other: both by their digits; only digits are taken then."""
        return f"Was that {one}, or {other}? {self.SAY_DIGITS}"

    def disagrees(self, sentence: str) -> str:
        """A number or a name that does not agree: hold."""
        return f"Hold. {sentence}"

    def wrong_name(self, heard: str) -> str:
        """A label that is not the one ordered."""
        return f"Hold. {heard} is not what your order says. Stop, and look at the order and the label again."

    def name_agrees(self, name: str) -> str:
        """A label that is the one ordered."""
        return f"{name}: agrees with the order."

    def explained(self, verdict: Disagrees) -> str:
        """What is wrong with a number, and the likeliest reason; gives the right one away."""
        return slips.explained(verdict)

    def not_needed(self, verdict: Disagrees) -> str:
        """That a number is wrong, without the right one or any way to it."""
        return slips.not_needed(verdict.stated) if verdict.expected else slips.explained(verdict)

    def different_things(self, verdict: CannotCheck) -> str:
        """Why a number cannot be compared with the one that follows from the order."""
        return slips.different_things(verdict)

    def working(self, lines: tuple[str, ...]) -> str:
        """The working of the right number, for practice."""
        return "The working: " + ", ".join(line.rstrip(".") for line in lines) + "."

    def not_right(self, advice: str) -> str:
        """An observation that must not be passed by."""
        return f"Hold. {advice or 'Do not go on. Put it right first.'}"

    def question_again(self, line: str) -> str:
        """The question, once the fault was dealt with."""
        return f"When it is put right: {line}"

    def gate_holds(self, count: int) -> str:
        """A gate that may not be passed."""
        return f"The gate holds: {_critical_steps(count)} still open. Going back there."

    def still_open(self, count: int) -> str:
        """The end is reached with steps open."""
        return (
            f"That was the last step, but {count} {'step is' if count == 1 else 'steps are'} still open. "
            "Say go on to leave one out."
        )

    def wait_begins(self, seconds: int) -> str:
        """A timed wait starts."""
        return f"Timing {'one second' if seconds == 1 else f'{seconds} seconds'}."

    def wait_left(self, seconds: int) -> str:
        """Too early."""
        return f"Not yet: {seconds} {'second' if seconds == 1 else 'seconds'} to go."

    def reason_read_back(self, reason: str) -> str:
        """The reason why a step does not apply, read back."""
        return f'Not applicable, because: "{reason.rstrip(".")}". Is that right?'

    def note_read_back(self, note: str) -> str:
        """A note, read back."""
        return f'I have noted: "{note.rstrip(".")}". Is that right?'

    def choices_are(self, choices: tuple[str, ...]) -> str:
        """What can be chosen."""
        return f"Please say {', '.join(choices[:-1])} or {choices[-1]}."

    def chosen(self, choice: str) -> str:
        """What was chosen."""
        return f"{choice[:1].upper()}{choice[1:]}."

    def number_read_back(self, number: str, digits: str, unit: str) -> str:
        """A number that was heard, read back; `digits` may be empty."""
        # With the unit between them, "sixty, six zero" is never "sixty six"; with one behind them as well, digits are
        # taken for a number of their own, and not for decimals ("nine zero" as 9.0).
        return f"I have {number} {unit}{f', {digits} {unit}' if digits else ''}. Is that right?"

    def name_read_back(self, name: str) -> str:
        """A name that was heard, read back."""
        return f"I have {name}. Is that right?"

    def not_applicable(self) -> str:
        """A step that was set aside."""
        return "Recorded as not applicable."

    def where(self, number: int, count: int, part: str, left_open: int) -> str:
        """Where the learner is."""
        tail = f" {left_open} earlier {'step is' if left_open == 1 else 'steps are'} open." if left_open else ""
        return f"You are at step {number} of {count}, {part}.{tail}"

    def reminder(self, line: str) -> str:
        """After a long silence."""
        return f"Still at this step: {line}"

    def voice_lost(self, reason: str) -> str:
        """The text goes on without a voice."""
        return f"I have lost my voice: {reason} Please read on here."

    def spelled(self, name: str) -> str:
        """A name letter by letter."""
        letters = [" ".join(word.upper()) for word in name.split()]
        return f"{name}: {', '.join(letters)}."

    def summary(self, unaided: int, applicable: int) -> str:
        """The result in one sentence."""
        return f"{unaided} of {applicable} steps were done unaided."

    def check_off_begins(self, *, more_counts: bool) -> str:
        """The rules of a check-off, in two sentences."""
        if more_counts:
            return (
                "Check-off: I read out no answers. Help counts as a cue, and so does hearing more about a step; "
                "hearing a line again does not."
            )
        return "Check-off: I read out no answers. Help counts as a cue; hearing a line again or more about it does not."

    def ended(self, outcome: str, *, practice: bool) -> str:
        """How the attempt ended, in a sentence."""
        if practice and outcome in ("passed", "not passed"):
            return "Practice complete." if outcome == "passed" else "Practice complete, with something left to do."
        return _ENDED[outcome]

    def to_see(self, lines: Sequence[str]) -> str:
        """Steps that an instructor has to see and has not; without the lines, only that there are some."""
        return "An instructor has to see this: " + " ".join(lines) if lines else "Your instructor has to see the rest."

    def marked_seen(self, lines: Sequence[str]) -> str:
        """Steps that the instructor saw done."""
        return "Marked as seen: " + " ".join(lines)

    def held(self, reason: str) -> str:
        """The instructor holds the attempt; the reason may be empty."""
        return f"Stop. Your instructor holds the attempt{f': {_sentence(reason)}' if reason else '.'}"

    def happens(self, what: str, words: str) -> str:
        """Something happens at the bench, in the instructor's words where there are any."""
        return f"Your instructor: {_sentence(words or _HAPPENS[what])}"

    def unsafe(self, reason: str) -> str:
        """The instructor marked the attempt as unsafe; the reason may be empty."""
        return f"Unsafe: {_sentence(reason)}" if reason else "Marked as unsafe by the instructor."

    def not_seen_done(self, line: str) -> str:
        """For practice: the instructor did not see a step done."""
        return f"Your instructor has not seen this done: {line}"

    def missed(self, fault: str) -> str:
        """A fault that was laid out and was not found, or not dealt with."""
        return f"Missed: {fault}"

    def left_as_it_was(self, fault: str) -> str:
        """A fault that was found, and neither put right nor a reason to stop."""
        return f"Found, and left as it was: {fault}"

    def to_be_judged(self, fault: str) -> str:
        """A fault in whose place another one was told of."""
        return f"Told of as something else; your instructor has to judge it: {fault}"

    def found_and_not_laid_out(self, count: int) -> str:
        """Findings of what is not laid out."""
        found = "One finding was" if count == 1 else f"{count} findings were"
        return f"{found} not laid out on purpose; your instructor has to judge {'it' if count == 1 else 'them'}."

    def failed_step(self, ending: str, line: str) -> str:
        """A critical step that was not done as it must be."""
        return f"{ending.capitalize()}: {line}"

    def not_reached(self, count: int) -> str:
        """Critical steps that were never asked."""
        return f"Not reached: {count} critical {_steps(count)}."

    def held_too_often(self, count: int, allowed: int) -> str:
        """Critical steps that were corrected only after a hold."""
        return f"Corrected only after a hold: {count} critical {_steps(count)}; {allowed} may be."

    def cued_too_often(self, count: int, allowed: int) -> str:
        """Critical steps that were done only after a cue."""
        return f"Done only after a cue: {count} critical {_steps(count)}; {allowed} may be."

    def too_few_unaided(self, percent: Decimal, needed: Decimal) -> str:
        """The share of steps done unaided is too small."""
        return f"{percent} % of the steps were done unaided; {needed} % are needed."

    def within(self, shown: str, allowance: str) -> str:
        """What an answer is compared with, and how far it may be off."""
        return f"{shown} within {allowance}"

    def between(self, lowest: str, highest: str) -> str:
        """The range in which an answer must be; either bound may be empty."""
        if lowest and highest:
            return f"{lowest} to {highest}"
        return f"at least {lowest}" if lowest else f"at most {highest}"

    def not_so_answered(self, step_id: str, answers: tuple[str, ...]) -> str:
        """Why a step is passed over: an earlier step was answered otherwise."""
        return f"step {step_id} was not answered with {' or '.join(answers)}"

    def not_so_ordered(self, name: str, equals: str, above: str, below: str) -> str:
        """Why a step is passed over: the order's value is not what the step is for; empty bounds are left out."""
        wanted = [equals] if equals else []
        wanted += [f"above {above}"] if above else []
        wanted += [f"below {below}"] if below else []
        return f"{name} is not {' and '.join(wanted)}"

    def ordered(self, name: str, *, present: bool) -> str:
        """Why a step is passed over: the order has a line, or lacks it."""
        return f"the order has {name}" if present else f"the order has no {name}"

    def not_so_in_lab(self, trait: str, *, present: bool) -> str:
        """Why a step is passed over: this lab lacks what the step is for, or has what the step does without."""
        return f"in this lab: {'no ' if present else ''}{trait}"

    def practise(self, lines: tuple[str, ...]) -> str:
        """What to practise next, the first one or two."""
        return "To practise: " + " And: ".join(lines)


def _sentence(words: str) -> str:
    """Words with a full stop, where they end in none."""
    return words if words.endswith((".", "!", "?")) else f"{words}."


def _critical_steps(count: int) -> str:
    return "one critical step is" if count == 1 else f"{count} critical steps are"


def _steps(count: int) -> str:
    return "step" if count == 1 else "steps"
