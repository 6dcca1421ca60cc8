"""What the instructor sends from the desk: marks, what happens at the bench, and where the attempt goes.

An order is taken or refused, and each of them is an entry. What changes nothing that is asked is silent: the learner
neither hears it nor has to begin an answer anew. No mark keeps a number, none answers in the learner's place but an
observation, which is the instructor's to answer, and whatever is taken back is taken back to what was there before.
"""

from dataclasses import replace
from typing import assert_never

from assistant.checklist.model import Expiry, ObservationAsked
from assistant.guide.answers import observe
from assistant.guide.asking import asked_person, prompt
from assistant.guide.effects import Tone
from assistant.guide.events import LONGEST_WORDS, SOURCES, Directed, Happened, Happening, Mark, Marked
from assistant.guide.interruptions import (
    BETWEEN,
    end_holds,
    interrupt,
    leave,
    leave_all,
    pause,
    stop_here,
    take_the_step_up,
    take_up,
)
from assistant.guide.path import advance, forget_marks, lose_settings, note_latest, open_again, passed_over
from assistant.guide.path import settings_lost as settings_ran_out
from assistant.guide.progress import MarkMade, Person, SetAside, Sighting, State, Status, StepProgress
from assistant.guide.trouble import drop_what_was_asked, lead
from assistant.guide.turn import Turn
from assistant.spoken.meaning import InstructorWord, Trouble

CUE = "instructor"
"""The cue that an instructor gave, as at the station."""
DESK = "from the desk"
"""What is added to whoever saw a step."""
OVERRULED = "overruled"
"""The verdict on a step that was set aside by the instructor."""
DEALT_WITH = (State.ASKING, State.READING_BACK, State.GIVING_REASON, State.OFFERING_CUE, State.WITH_INSTRUCTOR)
"""States in which the instructor may deal with the step that is asked."""

NO_SUCH_STEP = "there is no such step"
NO_PROOF = "it is not known that an instructor marked it"
NEEDS_PROOF = "only an instructor with a code sets a critical step aside"
NOT_DONE_YET = "the step is not done"
NOT_ASKED_YET = "the step has not been asked"
NOT_APPLICABLE = "the step does not apply"
NO_WORDS = "it needs a reason or a text"
NO_SUCH_MARK = "there is no such mark to take back"
NOT_NOW = "not possible now"
NOTHING_SET = "there are no settings that could be lost now"

_TROUBLE = {Happening.ALARM: Trouble.ALARM, Happening.PAIN: Trouble.PAIN}


def refuse(turn: Turn, why: str = NOT_NOW) -> None:
    """The order is on record, and changes nothing; nobody hears of it."""
    turn.note["verdict"] = "refused"
    turn.note["why"] = why


# Marks.


def take_note_or_cue(turn: Turn) -> None:
    """A cue that the instructor gave, or a note for the record."""
    mark = _mark(turn)
    name = mark.step or (turn.step.id if mark.mark is Mark.CUE else "")
    done = turn.draft.steps.get(name)
    why = _why_not(turn, mark, name)
    if mark.mark is Mark.NOTE and not _words(mark):
        why = NO_WORDS
    elif mark.mark is Mark.CUE and done is not None and not done.opened:
        why = NOT_ASKED_YET
    if why:
        refuse(turn, why)
        return
    if mark.mark is Mark.CUE and done is not None:
        done.cues.append(CUE)
        turn.note["cue"] = CUE
    _keep(turn, mark, name)
    turn.note["verdict"] = "noted" if mark.mark is Mark.NOTE else "cue"


def take_sighting(turn: Turn) -> None:
    """What the instructor saw: of a closed step, or as the answer to an observation that is asked."""
    aimed = _aimed(turn)
    if aimed is None:
        return
    mark, name = aimed
    step, done = turn.papers.checklist.step(name), turn.draft.steps[name]
    if name == turn.step.id and isinstance(step.expect, ObservationAsked) and _may_deal(turn):
        _answer(turn, mark)
    elif done.status is Status.CLOSED:
        seen = mark.mark is Mark.SEEN
        done.sightings = (*done.sightings, Sighting(f"{_person(turn, mark).value}, {DESK}", seen, mark.order))
        _keep(turn, mark, name)
        turn.note["verdict"] = mark.mark.value
        if not seen and turn.terms.practice:
            turn.say(turn.sentences.not_seen_done(step.say), Tone.NOTICE)
            prompt(turn)
    else:
        refuse(turn, NOT_NOW if isinstance(step.expect, ObservationAsked) and done.opened else NOT_DONE_YET)


def _answer(turn: Turn, mark: Marked) -> None:
    """The observation that is asked is answered, as at the station."""
    _keep(turn, mark, turn.step.id, answers=True)
    take_the_step_up(turn, State.ASKING)
    if settings_ran_out(turn):
        turn.draft.marks.pop()
        return
    turn.draft.speaker = _person(turn, mark)
    observe(turn, (InstructorWord.SEEN if mark.mark is Mark.SEEN else InstructorWord.NOT_SEEN).value)
    turn.note["source"] = SOURCES[Marked]


def set_aside(turn: Turn) -> None:
    """A step does not apply, or its verdict is overruled: the one that is asked, or one that was asked before."""
    aimed = _aimed(turn)
    if aimed is None:
        return
    mark, name = aimed
    step, done = turn.papers.checklist.step(name), turn.draft.steps[name]
    person, draft = _person(turn, mark), turn.draft
    is_asked = name == turn.step.id
    if step.critical and person is not Person.INSTRUCTOR:
        refuse(turn, NEEDS_PROOF)
    elif not _words(mark):
        refuse(turn, NO_WORDS)
    elif not done.opened:
        refuse(turn, NOT_ASKED_YET)
    elif is_asked and draft.state is not State.WAITING and not _may_deal(turn):
        refuse(turn)
    else:
        done.set_aside = SetAside(_words(mark), person, mark.order, done.by)
        if done.status is not Status.CLOSED:
            # What was answered stays an answer: steps that depend on it must not come and go.
            done.status, done.reason, done.by = Status.NOT_APPLICABLE, _words(mark), person
        _keep(turn, mark, name)
        turn.note["verdict"] = OVERRULED if mark.mark is Mark.OVERRULE or step.critical else mark.mark.value
        if is_asked:
            take_the_step_up(turn, State.ASKING)
            note_latest(turn)
            turn.say(turn.sentences.not_applicable(), Tone.NOTICE)
            advance(turn)
        elif name not in draft.history:
            # "Correct that" still leads to what the learner closed last.
            draft.history.insert(0, name)


def hold(turn: Turn) -> None:
    """Unsafe: the attempt is held at once; whatever was being read back or waited for is dropped."""
    mark, draft = _mark(turn), turn.draft
    if not _is_admitted(turn, mark):
        refuse(turn, NO_PROOF)
        return
    # Whatever else is wrong with the mark, the attempt is held.
    _keep(turn, mark, mark.step if mark.step in draft.steps else "", holds=True)
    turn.note["verdict"] = "held"
    leave_all(turn)
    if draft.state is State.HELD:
        prompt(turn)
        return
    drop_what_was_asked(turn)
    if draft.state is not State.ASKING_CONSENT:
        draft.state = State.ASKING
        draft.speaker = asked_person(turn.step)
    interrupt(turn, State.HELD)


def undo(turn: Turn) -> None:
    """Take an earlier mark back, with exactly what it had done to the result."""
    mark, marks = _mark(turn), turn.draft.marks
    at = next((i for i, one in enumerate(marks) if one.order == mark.undoes and not one.undone), None)
    if at is None or not mark.undoes or not _is_admitted(turn, mark):
        refuse(turn, NO_SUCH_MARK if _is_admitted(turn, mark) else NO_PROOF)
        return
    undone = marks[at]
    marks[at] = replace(undone, undone=True, holds=False)
    turn.note["step"] = undone.step
    turn.note["verdict"] = "taken back"
    turn.note["took_back"] = undone.mark.value
    match undone.mark:
        case Mark.CUE:
            cues = turn.draft.steps[undone.step].cues
            if CUE in cues:
                cues.remove(CUE)
        case Mark.SEEN | Mark.NOT_SEEN:
            _undo_sighting(turn, undone)
        case Mark.UNSAFE:
            _undo_hold(turn)
        case Mark.NOT_APPLICABLE | Mark.OVERRULE:
            _undo_set_aside(turn, undone)
        case Mark.NOTE | Mark.UNDO:
            return
        case _:
            assert_never(undone.mark)


def _undo_sighting(turn: Turn, undone: MarkMade) -> None:
    done = turn.draft.steps[undone.step]
    if not undone.answers:
        done.sightings = tuple(one for one in done.sightings if one.order != undone.order)
        return
    answered = [one for one in turn.draft.standing_marks if one.answers and one.step == undone.step]
    done.tries = max(0, done.tries - 1)
    if undone.mark is Mark.NOT_SEEN:
        done.wrong = max(0, done.wrong - 1)
    done.first = answered[0].mark.value if answered else ""
    done.final = answered[-1].mark.value if answered else ""
    if undone.mark is Mark.SEEN and done.status is Status.CLOSED:
        _open_again(turn, undone.step, done)


def _undo_hold(turn: Turn) -> None:
    draft = turn.draft
    if any(one.holds for one in draft.marks):
        return
    if draft.state is State.HELD:
        leave(turn)
        turn.say(turn.sentences.GOING_ON, Tone.NOTICE)
        take_up(turn)
    elif State.HELD in draft.before:
        draft.before.remove(State.HELD)


def _undo_set_aside(turn: Turn, undone: MarkMade) -> None:
    done = turn.draft.steps[undone.step]
    if done.set_aside is None or done.set_aside.order != undone.order:
        return
    was_by, done.set_aside = done.set_aside.was_by, None
    if done.status is Status.NOT_APPLICABLE:
        done.by, done.reason = was_by, ""
        _open_again(turn, undone.step, done)


def _open_again(turn: Turn, name: str, done: StepProgress) -> None:
    """A step is open as it was before the mark; one that lies behind is asked again, for a gate may hang on it."""
    done.status, done.closed_at, done.took_s = Status.OPEN, None, None
    forget_marks(done)
    turn.note["reopened"] = [name]
    if name in turn.draft.history:
        turn.draft.history.remove(name)
    place = turn.papers.checklist.place(name)
    if place < turn.draft.cursor:
        turn.say(turn.sentences.MARK_TAKEN_BACK, Tone.NOTICE)
        lead(turn, place, spoils_wait=True)


# What happens at the bench, for teaching.


def happen(turn: Turn) -> None:
    """Something happens: it is said, and leads to what the checklist has for such trouble, at no cost."""
    event = turn.event
    if not isinstance(event, Happened):
        raise TypeError("nothing happened")
    words = _tidy(event.words)
    at_stake = _settings_at_stake(turn) if event.what is Happening.SETTINGS_LOST else None
    if event.what is Happening.OTHER and not words:
        refuse(turn, NO_WORDS)
        return
    if event.what is Happening.SETTINGS_LOST and at_stake is None:
        refuse(turn, NOTHING_SET)
        return
    if turn.draft.state is State.OFFERING_CUE:
        leave(turn)
    turn.say(turn.sentences.happens(event.what.value, words), Tone.HOLD)
    kind = _TROUBLE.get(event.what)
    place = None
    if at_stake is not None:
        place = lose_settings(turn, *at_stake)
    elif kind is not None:
        plan = turn.papers.checklist.plan_for(kind, turn.step.id)
        turn.say(plan.say if plan else turn.sentences.trouble(kind), Tone.HOLD)
        place = open_again(turn, plan.again) if plan else None
    turn.note["verdict"] = "happened"
    lead(turn, place, spoils_wait=kind is Trouble.PAIN)


def _settings_at_stake(turn: Turn) -> tuple[Expiry, tuple[str, ...]] | None:
    """What the next step says that relies on settings, and ids of those that are in; None where none can be lost."""
    reasons = passed_over(turn.papers, turn.draft)
    for step in turn.steps[turn.draft.cursor :]:
        if step.expires is None or step.id in reasons or turn.draft.steps[step.id].status is not Status.OPEN:
            continue
        entered = tuple(name for name in step.expires.reopen if turn.draft.steps[name].status is Status.CLOSED)
        if entered:
            return step.expires, entered
    return None


# Where the attempt goes.


def let_rest(turn: Turn) -> None:
    """A pause in the instructor's name."""
    if State.HELD in turn.draft.before:
        refuse(turn)
        return
    turn.note["verdict"] = "paused"
    turn.say(turn.sentences.PAUSED_BY_INSTRUCTOR, Tone.NOTICE)
    pause(turn)


def let_go_on(turn: Turn) -> None:
    """An interruption is over, whatever it is; an unsafe mark stays on record, and holds nothing any more."""
    turn.note["verdict"] = "going on"
    end_holds(turn.draft)
    while turn.draft.state in (*BETWEEN, State.HELD):
        leave(turn)
    turn.say(turn.sentences.GOING_ON, Tone.NOTICE)
    take_up(turn)


def let_stop(turn: Turn) -> None:
    """The instructor stops the attempt; it can be taken up again, and a hold holds then as before."""
    if not isinstance(turn.event, Directed):
        raise TypeError("nobody directed the attempt")
    stop_here(turn, turn.sentences.STOPPED_BY_INSTRUCTOR)


# Whose mark it is.


def _mark(turn: Turn) -> Marked:
    if not isinstance(turn.event, Marked):
        raise TypeError("nothing was marked")
    return turn.event


def _person(turn: Turn, mark: Marked) -> Person:
    proven = turn.terms.instructor_code and mark.proven
    return Person.INSTRUCTOR if proven else Person.INSTRUCTOR_UNPROVEN


def _is_admitted(turn: Turn, mark: Marked) -> bool:
    """Where the instructor has a code, nobody marks without it."""
    return mark.proven or not turn.terms.instructor_code


def _may_deal(turn: Turn) -> bool:
    """Whether the step that is asked can be dealt with; in a pause, a stop or a hold it rests."""
    return turn.draft.state in DEALT_WITH and State.HELD not in turn.draft.before


def _aimed(turn: Turn) -> tuple[Marked, str] | None:
    """A mark for a step, and that step: the one that is asked where it names none; None where it is refused."""
    mark = _mark(turn)
    name = mark.step or turn.step.id
    why = _why_not(turn, mark, name)
    if why:
        refuse(turn, why)
        return None
    return mark, name


def _why_not(turn: Turn, mark: Marked, name: str) -> str:
    """Why a mark for this step, or for the attempt, is not taken; empty where nothing speaks against it."""
    if not _is_admitted(turn, mark):
        return NO_PROOF
    if name and name not in turn.draft.steps:
        return NO_SUCH_STEP
    if name and mark.mark is not Mark.NOTE and name in passed_over(turn.papers, turn.draft):
        return NOT_APPLICABLE
    return ""


def _keep(turn: Turn, mark: Marked, name: str, *, answers: bool = False, holds: bool = False) -> None:
    turn.note["step"] = name
    turn.note["by"] = _person(turn, mark).value
    turn.draft.marks.append(MarkMade(mark.mark, name, _words(mark), mark.order, answers, holds))


def _words(mark: Marked) -> str:
    return _tidy(mark.words)


def _tidy(words: str) -> str:
    """On one line, as far as an entry keeps it."""
    return " ".join(words[:LONGEST_WORDS].split())
