"""A number: asked for digit by digit where it must be, read back, kept, cross-checked."""

from decimal import Decimal

from assistant import dosing
from assistant.checklist.model import DoubleCheckAsked
from assistant.guide.asking import prompt
from assistant.guide.compared import compare, number_of
from assistant.guide.effects import Tone
from assistant.guide.holds import hold
from assistant.guide.moving import close, nothing_read_back, reopen_by_learner
from assistant.guide.progress import State
from assistant.guide.turn import Turn
from assistant.spoken import pair_to_offer, say_digits, wants_digits
from assistant.spoken.english.sentences import SENTENCES as sentences
from assistant.spoken.meaning import Ambiguous, Answer


def take_number(turn: Turn) -> None:
    """A number: read it back; nothing is kept yet."""
    answer = turn.meaning
    if not isinstance(answer, Answer) or not isinstance(answer.value, Decimal):
        raise TypeError("a number without a value")
    if answer.corrected:
        _want_digits(turn, sentences.TO_BE_SURE)
        return
    # Asked for once: what is then said digit by digit is settled by the read-back, and never asked for in a circle.
    given_as_asked = turn.draft.digits_only and answer.digit_by_digit
    if turn.spoken and not given_as_asked and must_be_spelled(answer, doubtful=turn.doubtful):
        _want_digits(turn, _which(turn, answer.value))
        return
    turn.draft.number = answer.value
    turn.draft.unit = answer.unit or ""
    turn.draft.state = State.READING_BACK
    turn.draft.failures = 0
    turn.note["verdict"] = "read back"
    prompt(turn)


def _which(turn: Turn, heard: Decimal) -> str:
    """The question for the digits of a number that was heard.

    In practice it offers the number and the one other that it could be, whichever the order says; the answer must
    still be said digit by digit. In a check-off, and to a second person, no number is said that the speaker has
    not said: the other one could be the right one, or the first person's.
    """
    offers = turn.given.practice and not turn.doubtful and not isinstance(turn.step.expect, DoubleCheckAsked)
    pair = pair_to_offer(heard) if offers else None
    return sentences.which_digits(*map(say_digits, pair)) if pair is not None else sentences.SAY_DIGITS


def must_be_spelled(answer: Answer, *, doubtful: bool = False) -> bool:
    """Whether a number that came by voice is asked for digit by digit before it is read back.

    Typed figures cannot be misheard; said digit by digit, a number has no neighbour that sounds like it.

    Args:
        answer: the number.
        doubtful: the recogniser holds another number for possible.
    """
    if not isinstance(answer.value, Decimal):
        raise TypeError("a number without a value")
    return doubtful or (not answer.digit_by_digit and wants_digits(answer.value, answer.unit or ""))


def digits_follow(answer: Answer, *, doubtful: bool = False) -> bool:
    """Whether the guide asks for the digits of a number that was heard: as above, or after a slip of the tongue."""
    return answer.corrected or must_be_spelled(answer, doubtful=doubtful)


def ask_digits(turn: Turn) -> None:
    """Words that could be two numbers are asked about: shown in figures, spoken digit by digit."""
    if not isinstance(turn.meaning, Ambiguous):
        raise TypeError("two meanings without readings")
    readings, unit = turn.meaning.readings, turn.meaning.unit
    shown = tuple(dosing.show(dosing.Amount(value, unit)) for value in readings)
    _want_digits(turn, sentences.which_number(shown), sentences.which_number(tuple(map(say_digits, readings))))


def _want_digits(turn: Turn, sentence: str, spoken_sentence: str | None = None) -> None:
    turn.draft.digits_only = True
    turn.note["verdict"] = "digits asked"
    turn.say(sentence, Tone.UNCLEAR, spoken_sentence)


def keep_number(turn: Turn, number: Decimal) -> None:
    """A clear yes to the read-back: keep the number, then cross-check it with the answer key."""
    draft, step, done = turn.draft, turn.step, turn.done
    asked = number_of(turn.given, step)
    if asked is None:
        raise TypeError("a number was read back at a step that asks for none")
    stated = dosing.Amount(number, draft.unit)
    shown = dosing.show(stated)
    reopen_by_learner(turn)
    done.tries += 1
    done.first = done.first or shown
    done.final = shown
    turn.note["kept"] = shown
    done.first_amount = done.first_amount or stated
    done.final_amount = stated
    verdict = compare(turn.given, asked, stated)
    first_agrees = _agrees_with_the_first(turn, stated)
    nothing_read_back(draft)
    draft.state = State.ASKING
    if isinstance(verdict, dosing.Agrees) and first_agrees:
        turn.note["verdict"] = "agrees"
        turn.say(sentences.AGREES, Tone.AGREES)
        close(turn, shown)
        return
    slip, told = "", ""
    if isinstance(verdict, dosing.Disagrees):
        slip = verdict.slip.value
        told = sentences.explained(verdict) if turn.given.practice else sentences.not_needed(verdict)
    elif isinstance(verdict, dosing.CannotCheck):
        told = sentences.different_things(verdict)
    else:
        told = sentences.TWO_PEOPLE_DIFFER
    working = turn.given.working(asked.key) if turn.given.practice else ()
    shown_working = sentences.working(working) if working else ""
    hold(turn, "does not agree", sentences.disagrees(told), shown_working, step.if_wrong, slip=slip)


def _agrees_with_the_first(turn: Turn, stated: dosing.Amount) -> bool:
    """Whether a second person's number is the learner's; the entry tells both. True where nobody is second."""
    if not isinstance(turn.step.expect, DoubleCheckAsked):
        return True
    first = turn.draft.steps[turn.step.expect.of].final_amount
    turn.note["first_person"] = "" if first is None else dosing.show(first)
    return first is not None and isinstance(dosing.compare(stated, first), dosing.Agrees)
