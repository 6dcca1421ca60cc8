"""What the guide does: one method for each action that the transition table names.

Each method changes only the turn that it is given; none looks at a clock or a device.
"""

from collections.abc import Mapping
from datetime import datetime, timedelta
from decimal import Decimal

from assistant import dosing
from assistant.checklist.model import (
    Checklist,
    DoneAsked,
    NameAsked,
    NumberAsked,
    QuestionAsked,
    Step,
    WaitAsked,
)
from assistant.guide.effects import Outcome, Tone
from assistant.guide.progress import Mode, Progress, State, Status, StepProgress
from assistant.guide.scoring import Ending, Results, score
from assistant.guide.turn import Turn
from assistant.orders.key import KeyEntry
from assistant.spoken import read_back, say_digits, speech
from assistant.spoken.english import sentences
from assistant.spoken.expect import (
    ConfirmExpected,
    Expect,
    NameExpected,
    NumberExpected,
    TextExpected,
)
from assistant.spoken.meaning import Ambiguous, Answer, NoMatch, Reason

REMINDER_AFTER_S = 120
"""Silence after which the step is said once more (common practice, no source)."""
FAILURES_BEFORE_OPTIONS = 2
"""Utterances not understood in a row before the learner is told what can be said."""
FURTHEST = 4
"""Steps of the voice's rate and loudness, up and down."""


class Actions:
    """The actions on one attempt.

    Args:
        checklist: the authored procedure.
        order_text: the order in sentences, as shown.
        key: the answer key.
        mode: practice or check-off.
    """

    def __init__(self, checklist: Checklist, order_text: str, key: Mapping[str, KeyEntry], mode: Mode) -> None:
        self.checklist = checklist
        self.order_text = order_text
        self.key = key
        self.mode = mode

    # What is asked now.

    def step(self, draft: Progress) -> Step:
        """The current step."""
        return self.checklist.steps[draft.cursor]

    def expectation(self, draft: Progress) -> Expect:
        """What the present state expects to hear; never narrowed to the right answer."""
        match draft.state:
            case State.READING_BACK | State.STOPPING:
                return ConfirmExpected(done_is_yes=False)
            case State.GIVING_REASON:
                return TextExpected()
            case State.ASKING:
                match self.step(draft).expect:
                    case NumberAsked(unit=unit):
                        return NumberExpected(unit, digits_only=draft.digits_only)
                    case NameAsked(key=key):
                        return NameExpected(self.key[key].choices or (str(self.key[key].value),))
                    case QuestionAsked():
                        return ConfirmExpected(done_is_yes=False)
        return ConfirmExpected()

    def prompt(self, draft: Progress, turn: Turn) -> None:
        """Say what the present state asks for."""
        step = self.step(draft)
        match draft.state:
            case State.ASKING:
                count = len(self.checklist.steps)
                shown = sentences.step_line(draft.cursor + 1, count, step.say, critical=step.critical)
                turn.say(shown, Tone.STEP, speech(step.say))
            case State.READING_BACK if draft.number is not None:
                said = read_back(draft.number, draft.unit)
                shown = dosing.show(dosing.Amount(draft.number, draft.unit))
                turn.say(f"{shown}: {said}", Tone.READ_BACK, said)
            case State.READING_BACK if draft.name:
                turn.say(sentences.name_read_back(draft.name), Tone.READ_BACK)
            case State.READING_BACK:
                turn.say(sentences.reason_read_back(draft.reason), Tone.READ_BACK)
            case State.GIVING_REASON:
                turn.say(sentences.WHY_NOT_APPLICABLE, Tone.STEP)
            case State.WAITING:
                turn.say(sentences.wait_left(self._seconds_left(turn)), Tone.NOTICE)
            case State.PAUSED:
                turn.say(sentences.PAUSED, Tone.NOTICE)
            case State.STOPPING:
                turn.say(sentences.STOP_ASKED, Tone.NOTICE)
            case _:
                return

    # Opening and moving.

    def open(self, turn: Turn) -> None:
        """The attempt begins: what it is, what it is not, the order, the first step."""
        turn.say(sentences.begins(self.checklist.title, self.checklist.purpose), Tone.NOTICE, self.checklist.title)
        turn.say(sentences.TRAINING_ONLY, Tone.NOTICE)
        for caution in self.checklist.cautions:
            turn.say(caution, Tone.NOTICE, "")
        check_off = self.mode is Mode.CHECK_OFF
        turn.say(sentences.CHECK_OFF_BEGINS if check_off else sentences.PRACTICE_BEGINS, Tone.NOTICE)
        # The whole list is read out on "I need help"; at the start it would keep a learner waiting.
        turn.say(sentences.WHAT_CAN_BE_SAID, Tone.NOTICE, speech(sentences.FIRST_WORDS))
        turn.say(self.order_text, Tone.NOTICE)
        self._go_to(turn, 0)

    def _go_to(self, turn: Turn, place: int) -> None:
        """Open the step at `place`, unless a gate holds or its settings have run out."""
        draft = turn.draft
        draft.state = State.ASKING
        gate, blockers = self._gate_before(draft, place)
        if gate is not None:
            turn.note["gate"] = {"step": gate.id, "open": [self.checklist.steps[i].id for i in blockers]}
            turn.say(sentences.gate_holds(len(blockers)), Tone.HOLD)
            for blocker in blockers:
                self._progress_at(draft, blocker).cues.append("gate")
            place = blockers[0]
        place = self._what_comes_first(turn, place)
        draft.cursor = place
        self._nothing_read_back(draft)
        draft.digits_only = False
        draft.failures = 0
        draft.reminded = False
        draft.wait_over = False
        if self._settings_ran_out(turn):
            self.reopen_settings(turn)
            return
        self.prompt(draft, turn)
        self._arm(turn)

    @staticmethod
    def _nothing_read_back(draft: Progress) -> None:
        draft.number, draft.unit, draft.name, draft.reason = None, "", "", ""

    def _arm(self, turn: Turn) -> None:
        """Ask for the wake-up call that fits the current step."""
        due = self._settings_due(turn.draft)
        if due is not None:
            turn.wake_at("settings", due)
        elif not turn.draft.reminded:
            turn.wake_at("reminder", turn.at + timedelta(seconds=REMINDER_AFTER_S))
        else:
            turn.draft.token = ""

    def _gate_before(self, draft: Progress, place: int) -> tuple[Step | None, list[int]]:
        """The first gate on the way to `place` with critical steps open before it."""
        for at, step in enumerate(self.checklist.steps[: place + 1]):
            if not step.gate:
                continue
            blockers = [
                i
                for i, earlier in enumerate(self.checklist.steps[:at])
                if earlier.critical and self._progress_at(draft, i).status in (Status.OPEN, Status.LEFT_OUT)
            ]
            if at < place and self._progress_at(draft, at).status in (Status.OPEN, Status.LEFT_OUT):
                blockers.append(at)
            if blockers:
                return step, blockers
        return None, []

    def _what_comes_first(self, turn: Turn, place: int) -> int:
        """`place`, or the step that must be closed before it and is not."""
        draft = turn.draft
        done = (Status.CLOSED, Status.NOT_APPLICABLE, *((Status.LEFT_OUT,) if draft.last_pass else ()))
        for name in self.checklist.steps[place].after:
            if draft.steps[name].status not in done:
                needed = self.checklist.place(name)
                turn.note["comes_first"] = name
                turn.say(sentences.SOMETHING_COMES_FIRST, Tone.HOLD)
                draft.steps[name].cues.append("order")
                return self._what_comes_first(turn, needed)
        return place

    def _advance(self, turn: Turn) -> None:
        """Go to the next open step; at the end, to what is still open; else finish."""
        draft = turn.draft
        still_open = [i for i, step in enumerate(self.checklist.steps) if draft.steps[step.id].status is Status.OPEN]
        ahead = [i for i in still_open if i > draft.cursor]
        if ahead:
            self._go_to(turn, ahead[0])
        elif still_open:
            if not draft.last_pass:
                draft.last_pass = True
                turn.say(sentences.still_open(len(still_open)), Tone.HOLD)
            self._go_to(turn, still_open[0])
        else:
            turn.say(sentences.ALL_DONE, Tone.NOTICE)
            self._finish(turn)

    def _finish(self, turn: Turn) -> None:
        results = score(self.checklist, turn.draft, self.mode)
        turn.draft.state = State.FINISHED
        turn.draft.token = ""
        turn.outcome = Outcome.PASSED if results.passed else Outcome.NOT_PASSED
        turn.say(sentences.PASSED if results.passed else sentences.NOT_PASSED, Tone.RESULT)
        turn.say(sentences.summary(results.unaided, results.applicable), Tone.RESULT)
        for failure in results.failures:
            turn.say(failure, Tone.RESULT)
        weak = _weakest(results)
        turn.say(sentences.practise(weak) if weak else sentences.FEEDBACK_GOOD, Tone.RESULT)

    def _progress_at(self, draft: Progress, place: int) -> StepProgress:
        return draft.steps[self.checklist.steps[place].id]

    def _current(self, turn: Turn) -> StepProgress:
        return self._progress_at(turn.draft, turn.draft.cursor)

    def _close(self, turn: Turn, answer: str = "") -> None:
        """Close the current step with its final answer and go on."""
        step, done = self.step(turn.draft), self._current(turn)
        done.status = Status.CLOSED
        done.reason = ""
        done.closed_at = turn.at
        if answer:
            done.first = done.first or answer
            done.final = answer
        if step.id in turn.draft.history:
            turn.draft.history.remove(step.id)
        turn.draft.history.append(step.id)
        turn.note.setdefault("verdict", "done")
        self._advance(turn)

    # Answers.

    def answer_yes(self, turn: Turn) -> None:
        """Yes or done: closes an action, answers a question, starts a timed wait."""
        step = self.step(turn.draft)
        if self._settings_ran_out(turn):
            self.reopen_settings(turn)
            return
        match step.expect:
            case DoneAsked():
                self._reopened_by_learner(turn)
                self._close(turn)
            case QuestionAsked(right=right):
                self._answer_question(turn, "yes", right)
            case WaitAsked(seconds=seconds):
                self._reopened_by_learner(turn)
                turn.draft.state = State.WAITING
                turn.note["verdict"] = "wait started"
                turn.say(sentences.wait_begins(seconds), Tone.NOTICE)
                turn.wake_at("wait", turn.at + timedelta(seconds=seconds))
            case _:
                self.unclear(turn)

    def answer_no(self, turn: Turn) -> None:
        """No: an answer to a question; at an action it means "not yet"."""
        step = self.step(turn.draft)
        match step.expect:
            case QuestionAsked(right=right):
                self._answer_question(turn, "no", right)
            case _:
                self._reopened_by_learner(turn)
                turn.note["verdict"] = "not yet"
                turn.say(sentences.not_right(step.if_wrong) if step.if_wrong else step.say, Tone.HOLD)

    def _answer_question(self, turn: Turn, answer: str, right: str) -> None:
        step, done = self.step(turn.draft), self._current(turn)
        self._reopened_by_learner(turn)
        done.tries += 1
        done.first = done.first or answer
        done.final = answer
        if answer == right:
            turn.note["verdict"] = "agrees"
            self._close(turn, answer)
            return
        done.wrong += 1
        turn.note["verdict"] = "hold"
        turn.say(sentences.not_right(step.if_wrong), Tone.HOLD)
        turn.say(sentences.question_again(step.say), Tone.STEP)

    def _reopened_by_learner(self, turn: Turn) -> None:
        """A closed step that is answered anew was corrected by the learner."""
        done = self._current(turn)
        if done.status is Status.CLOSED:
            done.corrections += 1
            done.status = Status.OPEN
            turn.draft.history.remove(self.step(turn.draft).id)
            turn.note["correction"] = True

    def take_number(self, turn: Turn) -> None:
        """A number: read it back; nothing is kept yet."""
        answer = turn.meaning
        if not isinstance(answer, Answer) or not isinstance(answer.value, Decimal):
            raise TypeError("a number without a value")
        if answer.corrected:
            turn.draft.digits_only = True
            turn.note["verdict"] = "digits asked"
            turn.say(sentences.CORRECTED_WHILE_SPEAKING, Tone.UNCLEAR)
            return
        turn.draft.number = answer.value
        turn.draft.unit = answer.unit or ""
        turn.draft.state = State.READING_BACK
        turn.draft.failures = 0
        turn.note["verdict"] = "read back"
        self.prompt(turn.draft, turn)

    def ask_digits(self, turn: Turn) -> None:
        """Words that could be two numbers are asked about, digit by digit."""
        if isinstance(turn.meaning, Ambiguous):
            unit = turn.meaning.unit
            shown = tuple(dosing.show(dosing.Amount(value, unit)) for value in turn.meaning.readings)
            turn.say(sentences.which_number(shown), Tone.UNCLEAR)
        turn.draft.digits_only = True
        turn.note["verdict"] = "digits asked"

    def keep(self, turn: Turn) -> None:
        """A clear yes to the read-back: keep it, then cross-check."""
        draft = turn.draft
        if self._settings_ran_out(turn):
            self.reopen_settings(turn)
            return
        if draft.number is None:
            if draft.name:
                self._compare_name(turn, draft.name)
            else:
                self._keep_reason(turn)
            return
        step, done = self.step(draft), self._current(turn)
        if not isinstance(step.expect, NumberAsked):
            raise TypeError("a number was read back at a step that asks for none")
        stated = dosing.Amount(draft.number, draft.unit)
        shown = dosing.show(stated)
        self._reopened_by_learner(turn)
        done.tries += 1
        done.first = done.first or shown
        done.final = shown
        turn.note["kept"] = shown
        entry = self.key[step.expect.key]
        verdict = dosing.compare(stated, _amount(entry), self._other_amounts(step.expect.key))
        self._nothing_read_back(draft)
        draft.state = State.ASKING
        if isinstance(verdict, dosing.Agrees):
            turn.note["verdict"] = "agrees"
            turn.say(sentences.AGREES, Tone.AGREES)
            self._close(turn, shown)
            return
        done.wrong += 1
        turn.note["verdict"] = "does not agree"
        practice = self.mode is Mode.PRACTICE
        if isinstance(verdict, dosing.Disagrees):
            done.slips.append(verdict.slip.value)
            turn.note["slip"] = verdict.slip.value
            turn.say(sentences.disagrees(verdict.sentence if practice else verdict.plain), Tone.HOLD)
        else:
            turn.say(sentences.disagrees(verdict.reason), Tone.HOLD)
        if practice and entry.working:
            turn.say(sentences.working(entry.working), Tone.HOLD)
        if step.if_wrong:
            turn.say(step.if_wrong, Tone.HOLD)
        self.prompt(draft, turn)
        self._arm(turn)

    def _keep_reason(self, turn: Turn) -> None:
        done = self._current(turn)
        done.status = Status.NOT_APPLICABLE
        done.reason = turn.draft.reason
        turn.note["verdict"] = "not applicable"
        turn.say(sentences.not_applicable(), Tone.NOTICE)
        self._advance(turn)

    def _other_amounts(self, key: str) -> dict[str, dosing.Amount]:
        return {
            name: _amount(entry) for name, entry in self.key.items() if name != key and isinstance(entry.value, Decimal)
        }

    def ask_anew(self, turn: Turn) -> None:
        """No to the read-back: nothing is kept, ask again."""
        draft = turn.draft
        turn.note["verdict"] = "not kept"
        if draft.reason:
            draft.state = State.GIVING_REASON
            turn.say(sentences.SAY_REASON_AGAIN, Tone.STEP)
        elif draft.name:
            draft.state = State.ASKING
            turn.say(sentences.SAY_NAME_AGAIN, Tone.STEP)
        else:
            draft.state = State.ASKING
            draft.digits_only = True
            turn.say(sentences.SAY_NUMBER_AGAIN, Tone.STEP)
        self._nothing_read_back(draft)

    def take_name(self, turn: Turn) -> None:
        """A name read from a label: read it back where it was heard, compare it where it was typed."""
        if not isinstance(turn.meaning, Answer):
            raise TypeError("a name without a value")
        name = str(turn.meaning.value)
        if not turn.spoken:
            self._compare_name(turn, name)
            return
        turn.draft.name = name
        turn.draft.state = State.READING_BACK
        turn.draft.failures = 0
        turn.note["verdict"] = "read back"
        self.prompt(turn.draft, turn)

    def _compare_name(self, turn: Turn, heard: str) -> None:
        step, done = self.step(turn.draft), self._current(turn)
        if not isinstance(step.expect, NameAsked):
            raise TypeError("a name was given at a step that asks for none")
        right = str(self.key[step.expect.key].value)
        self._nothing_read_back(turn.draft)
        turn.draft.state = State.ASKING
        self._reopened_by_learner(turn)
        done.tries += 1
        done.first = done.first or heard
        done.final = heard
        if heard == right:
            turn.note["verdict"] = "agrees"
            turn.say(sentences.name_agrees(heard), Tone.AGREES)
            self._close(turn, heard)
            return
        done.wrong += 1
        done.slips.append("another name")
        turn.note["verdict"] = "does not agree"
        turn.note["slip"] = "another name"
        turn.say(sentences.wrong_name(heard), Tone.HOLD)
        if step.if_wrong:
            turn.say(step.if_wrong, Tone.HOLD)
        self.prompt(turn.draft, turn)

    # Reasons, corrections, moving by word.

    def ask_reason(self, turn: Turn) -> None:
        """Not applicable: ask why; a critical step cannot be set aside."""
        if self.step(turn.draft).critical:
            turn.note["verdict"] = "refused"
            turn.say(sentences.CRITICAL_CANNOT_BE_SET_ASIDE, Tone.HOLD)
            return
        turn.draft.state = State.GIVING_REASON
        self.prompt(turn.draft, turn)

    def take_reason(self, turn: Turn) -> None:
        """The reason, read back."""
        if isinstance(turn.meaning, Answer):
            turn.draft.reason = str(turn.meaning.value)
        turn.draft.state = State.READING_BACK
        self.prompt(turn.draft, turn)

    def drop_reason(self, turn: Turn) -> None:
        """The step applies after all."""
        turn.say(sentences.REASON_DROPPED, Tone.NOTICE)
        self._go_to(turn, turn.draft.cursor)

    def back(self, turn: Turn) -> None:
        """To the step before; answering it again is a correction, "go on" leaves it as it is."""
        if turn.draft.cursor == 0:
            turn.say(sentences.FIRST_STEP, Tone.NOTICE)
        self._go_to(turn, max(0, turn.draft.cursor - 1))

    def leave_open(self, turn: Turn) -> None:
        """Go on without an answer: an open step stays open, or is left out in the last pass."""
        step, done = self.step(turn.draft), self._current(turn)
        if done.status is Status.OPEN:
            turn.note["verdict"] = "left open"
            if turn.draft.last_pass:
                done.status = Status.LEFT_OUT
                turn.note["verdict"] = "left out"
                turn.say(sentences.LEFT_OUT, Tone.NOTICE)
            else:
                later = self.checklist.steps[turn.draft.cursor + 1 :]
                held = step.critical and any(other.gate for other in later)
                turn.say(sentences.CRITICAL_LEFT_OPEN if held else sentences.LEFT_OPEN, Tone.NOTICE)
        self._advance(turn)

    def correct(self, turn: Turn) -> None:
        """Go to the step that was closed last; a new answer is a new entry, "go on" leaves it as it is."""
        if not turn.draft.history:
            turn.say(sentences.NOTHING_TO_CORRECT, Tone.NOTICE)
            return
        last = turn.draft.history[-1]
        turn.note["verdict"] = "correcting"
        turn.note["correcting"] = last
        turn.say(sentences.CORRECTION_ASKED, Tone.NOTICE)
        self._go_to(turn, self.checklist.place(last))

    # Timed waits and reminders.

    def end_wait(self, turn: Turn) -> None:
        """The time is up: the step is closed."""
        turn.say(sentences.TIME_UP, Tone.AGREES)
        turn.note["verdict"] = "waited"
        self._close(turn)

    def tell_time_left(self, turn: Turn) -> None:
        """Too early."""
        turn.note["verdict"] = "too early"
        turn.say(sentences.wait_left(self._seconds_left(turn)), Tone.HOLD)

    def restart_wait(self, turn: Turn) -> None:
        """The wait was broken off; it starts again when the learner says so."""
        turn.say(sentences.WAIT_DROPPED, Tone.NOTICE)
        self._go_to(turn, turn.draft.cursor)

    def _seconds_left(self, turn: Turn) -> int:
        if turn.draft.wakes_at is None:
            return 0
        left = turn.draft.wakes_at - turn.at
        return max(0, -(-left // timedelta(seconds=1)))

    def remind(self, turn: Turn) -> None:
        """A wake-up call while something is asked: settings ran out, or a long silence."""
        if turn.draft.token.startswith("settings"):
            self.reopen_settings(turn)
            return
        turn.draft.reminded = True
        turn.draft.token = ""
        turn.note["verdict"] = "reminded"
        if turn.draft.state is State.ASKING:
            turn.say(sentences.reminder(self.step(turn.draft).say), Tone.NOTICE)
        else:
            self.prompt(turn.draft, turn)

    def _settings_due(self, draft: Progress) -> datetime | None:
        """When the settings that the current step relies on run out; None where it relies on none."""
        step = self.step(draft)
        if step.expires is None or draft.steps[step.id].status is not Status.OPEN:
            return None
        closed = [draft.steps[name].closed_at for name in step.expires.reopen]
        latest = max((at for at in closed if at is not None), default=None)
        return None if latest is None else latest + timedelta(seconds=step.expires.after_s)

    def _settings_ran_out(self, turn: Turn) -> bool:
        due = self._settings_due(turn.draft)
        return due is not None and turn.at >= due

    def reopen_settings(self, turn: Turn) -> None:
        """The pump has forgotten what was set: enter and verify it again."""
        expires = self.step(turn.draft).expires
        if expires is None:
            raise TypeError("settings ran out at a step that relies on none")
        turn.note["verdict"] = "settings lost"
        turn.note["reopened"] = list(expires.reopen)
        for name in expires.reopen:
            done = turn.draft.steps[name]
            done.status = Status.OPEN
            done.closed_at = None
            done.expired += 1
            if name in turn.draft.history:
                turn.draft.history.remove(name)
        turn.say(sentences.disagrees(expires.say), Tone.HOLD)
        first = next(i for i, step in enumerate(self.checklist.steps) if step.id in expires.reopen)
        self._go_to(turn, first)

    # What can be said at any time.

    def again(self, turn: Turn) -> None:
        """Say once more what is asked."""
        self.prompt(turn.draft, turn)

    def more(self, turn: Turn) -> None:
        """The detail and the reason: a cue, counted."""
        step = self.step(turn.draft)
        lines = [line for line in (step.more, step.why) if line]
        for line in lines or [sentences.NO_MORE]:
            turn.say(line, Tone.CUE)
        if lines:
            self._count_cue(turn, "more")

    def help(self, turn: Turn) -> None:
        """A hint, and in practice the working of the number: a cue, counted."""
        step = self.step(turn.draft)
        turn.say(step.hint or step.more or sentences.NO_HINT, Tone.CUE)
        if self.mode is Mode.PRACTICE and isinstance(step.expect, NumberAsked):
            working = self.key[step.expect.key].working
            if working:
                turn.say(sentences.working(working), Tone.CUE)
        turn.say(sentences.WHAT_CAN_BE_SAID, Tone.CUE)
        self._count_cue(turn, "help")

    def _count_cue(self, turn: Turn, name: str) -> None:
        self._current(turn).cues.append(name)
        turn.note["cue"] = name

    def where(self, turn: Turn) -> None:
        """The place in the checklist and how much was left open before it."""
        draft, step = turn.draft, self.step(turn.draft)
        left_open = sum(self._progress_at(draft, i).status is Status.OPEN for i in range(draft.cursor))
        count = len(self.checklist.steps)
        turn.say(sentences.where(draft.cursor + 1, count, step.part, left_open), Tone.NOTICE)
        self.prompt(draft, turn)

    def read_order(self, turn: Turn) -> None:
        """The order, as it was written."""
        turn.say(self.order_text, Tone.NOTICE)

    def slower(self, turn: Turn) -> None:
        """One step slower."""
        self._adjust(turn, sentences.SLOWER, rate=-1)

    def faster(self, turn: Turn) -> None:
        """One step faster."""
        self._adjust(turn, sentences.FASTER, rate=1)

    def louder(self, turn: Turn) -> None:
        """One step louder."""
        self._adjust(turn, sentences.LOUDER, loudness=1)

    def softer(self, turn: Turn) -> None:
        """One step softer."""
        self._adjust(turn, sentences.SOFTER, loudness=-1)

    def _adjust(self, turn: Turn, sentence: str, rate: int = 0, loudness: int = 0) -> None:
        draft = turn.draft
        wanted = (draft.rate + rate, draft.loudness + loudness)
        if max(map(abs, wanted)) > FURTHEST:
            turn.say(sentences.AT_THE_LIMIT, Tone.NOTICE)
            return
        draft.rate, draft.loudness = wanted
        turn.adjust()
        turn.say(sentence, Tone.NOTICE)

    def spell(self, turn: Turn) -> None:
        """What is being read back, digit by digit or letter by letter; in practice also the ordered name, a cue."""
        draft, step = turn.draft, self.step(turn.draft)
        if draft.number is not None:
            digits = say_digits(draft.number)
            turn.say(digits, Tone.NOTICE, digits)
        elif draft.name:
            turn.say(sentences.spelled(draft.name), Tone.NOTICE)
        elif isinstance(step.expect, NameAsked) and self.mode is Mode.PRACTICE:
            turn.say(sentences.spelled(str(self.key[step.expect.key].value)), Tone.CUE)
            self._count_cue(turn, "spelled")
        else:
            turn.say(sentences.NOTHING_TO_SPELL, Tone.NOTICE)

    def not_here(self, turn: Turn) -> None:
        """A command that has no place here: say so, and ask again."""
        turn.note["verdict"] = "not taken here"
        turn.say(sentences.UNCLEAR[Reason.NOT_AN_ANSWER_HERE], Tone.UNCLEAR)
        self.prompt(turn.draft, turn)

    def unclear(self, turn: Turn) -> None:
        """Not understood: why, then what can be said, then one short sentence."""
        draft = turn.draft
        draft.failures += 1
        turn.note["verdict"] = "not understood"
        first, *more = self._why_unclear(turn)
        turn.say(first, Tone.UNCLEAR)
        for text in more:
            turn.say(text, Tone.UNCLEAR, "" if draft.failures > FAILURES_BEFORE_OPTIONS else None)
        if draft.failures == FAILURES_BEFORE_OPTIONS:
            if isinstance(self.expectation(draft), NumberExpected):
                turn.say(sentences.TRY_DIGITS, Tone.UNCLEAR)
            else:
                turn.say(sentences.WHAT_CAN_BE_SAID, Tone.UNCLEAR)
            self.prompt(draft, turn)

    def _why_unclear(self, turn: Turn) -> list[str]:
        if not isinstance(turn.meaning, NoMatch):
            return [sentences.NO_WORDING]
        why = [sentences.UNCLEAR[turn.meaning.reason]]
        match self.expectation(turn.draft):
            case NumberExpected(unit=unit) if turn.meaning.reason is not Reason.DIGITS_WANTED:
                why.append(sentences.unit_needed(unit))
            case ConfirmExpected(done_is_yes=False):
                why.append(sentences.YES_OR_NO)
        if turn.meaning.near:
            why.append(sentences.did_you_mean(turn.meaning.near))
        return why

    def drop(self, turn: Turn) -> None:
        """Sound that cannot be trusted: our own voice in it, or a gap."""
        turn.note["verdict"] = f"dropped: {turn.detail}"
        if turn.detail == GAP:
            turn.say(sentences.SOUND_LOST, Tone.UNCLEAR)

    # Pause, stop, devices, resumption.

    def pause(self, turn: Turn) -> None:
        """Wait until "go on"."""
        draft = turn.draft
        if draft.state not in (State.PAUSED, State.STOPPING):
            draft.before.append(draft.state)
        if draft.before[-1:] != [State.WAITING]:
            draft.token = ""
        draft.state = State.PAUSED
        turn.say(sentences.PAUSED, Tone.NOTICE)

    def tell_paused(self, turn: Turn) -> None:
        """Nothing but "go on" ends a pause."""
        self.prompt(turn.draft, turn)

    def note_wait_over(self, turn: Turn) -> None:
        """The timed wait ended meanwhile."""
        turn.draft.wait_over = True
        turn.note["verdict"] = "time is up"

    def return_from_pause(self, turn: Turn) -> None:
        """Back to what was asked before."""
        draft = turn.draft
        draft.state = draft.before.pop()
        turn.say(sentences.GOING_ON, Tone.NOTICE)
        self._take_up(turn)

    def _take_up(self, turn: Turn) -> None:
        """Ask again what the state asks for, and keep its time."""
        draft = turn.draft
        match draft.state:
            case State.ASKING:
                if self._settings_ran_out(turn):
                    self.reopen_settings(turn)
                    return
                self.prompt(draft, turn)
                self._arm(turn)
            case State.WAITING if draft.wait_over or (draft.wakes_at is not None and turn.at >= draft.wakes_at):
                draft.wait_over = False
                self.end_wait(turn)
            case State.WAITING:
                self.prompt(draft, turn)
                turn.wake_at("wait", draft.wakes_at or turn.at)
            case _:
                self.prompt(draft, turn)

    def ask_stop(self, turn: Turn) -> None:
        """Ask once before stopping."""
        draft = turn.draft
        draft.before.append(draft.state)
        if draft.before[-1] is not State.WAITING:
            draft.token = ""
        draft.state = State.STOPPING
        self.prompt(draft, turn)

    def stop(self, turn: Turn) -> None:
        """The learner stops before the end."""
        self._stop(turn, sentences.STOPPED)

    def end_input(self, turn: Turn) -> None:
        """No more input can come."""
        self._stop(turn, sentences.INPUT_ENDED)

    def _stop(self, turn: Turn, sentence: str) -> None:
        turn.note["verdict"] = "stopped"
        if turn.draft.state not in (State.PAUSED, State.STOPPING):
            turn.draft.before.append(turn.draft.state)
        turn.draft.state = State.FINISHED
        turn.draft.token = ""
        turn.outcome = Outcome.STOPPED
        turn.say(sentence, Tone.RESULT)

    def ear_lost(self, turn: Turn) -> None:
        """The keyboard takes over at once."""
        turn.say(sentences.EAR_LOST, Tone.NOTICE)

    def ear_back(self, turn: Turn) -> None:
        """Voice again."""
        turn.say(sentences.EAR_BACK, Tone.NOTICE)

    def voice_lost(self, turn: Turn) -> None:
        """The text goes on."""
        turn.say(sentences.voice_lost(turn.detail), Tone.NOTICE, "")

    def resume(self, turn: Turn) -> None:
        """An interrupted attempt goes on where it was."""
        turn.say(sentences.RESUMED, Tone.NOTICE)
        turn.adjust()
        self._take_up(turn)

    def reopen(self, turn: Turn) -> None:
        """A stopped attempt goes on; one that was over, but not sealed, is ended again."""
        if not turn.draft.before:
            self._finish(turn)
            return
        # What was asked before any pause: whoever resumes an attempt is ready to go on.
        turn.draft.state = turn.draft.before[0]
        turn.draft.before.clear()
        self.resume(turn)


GAP = "sound was lost"
OWN_VOICE = "it overlapped the assistant's own voice"


def _amount(entry: KeyEntry) -> dosing.Amount:
    if not isinstance(entry.value, Decimal):
        raise TypeError(f"{entry.name} is a name, not a number")
    return dosing.Amount(entry.value, entry.unit or "")


def _weakest(results: Results) -> tuple[str, ...]:
    """The one or two lines that most need practice: critical first, wrong before cued."""
    order = (Ending.LEFT_OUT, Ending.WRONG, Ending.CORRECTED, Ending.CUED)
    weak = [line for line in results.steps if line.ending in order]
    weak.sort(key=lambda line: (not line.critical, order.index(line.ending)))
    return tuple(line.say for line in weak[:2])
