"""What is read back before it is kept: numbers, names by voice, notes and reasons; then the cross-check."""

from decimal import Decimal

from assistant import dosing
from assistant.checklist.model import DoubleCheckAsked, NameAsked
from assistant.guide.answers import answer_no, answer_yes, hold, met_the_bench, take_choice
from assistant.guide.asking import prompt
from assistant.guide.effects import Tone
from assistant.guide.events import Heard
from assistant.guide.path import advance, close, go_to, note_latest, reopen_by_learner, settings_lost
from assistant.guide.progress import AnswerRead, NameRead, NumberRead, Purpose, ReadBack, State, Status, WordsRead
from assistant.guide.turn import Input, Turn, input_of
from assistant.spoken.language import Language
from assistant.spoken.meaning import Ambiguous, Answer

ANOTHER_NAME = "another name"
"""The slip of reading a label that was not ordered."""


def keep(turn: Turn) -> None:
    """A clear yes: keep it, then cross-check."""
    draft = turn.draft
    if settings_lost(turn):
        return
    match draft.reading_back:
        case NumberRead() as number:
            _keep_number(turn, number)
        case NameRead(name):
            _keep_name(turn, name)
        case WordsRead(words):
            _keep_words(turn, words)
        case AnswerRead(answer=answer):
            _take_answer(turn, answer)
        case None:
            raise AssertionError("nothing is being read back")


def ask_anew(turn: Turn) -> None:
    """No: nothing is kept, ask again."""
    draft, sentences = turn.draft, turn.sentences
    turn.note["verdict"] = "not kept"
    draft.state = State.ASKING
    if isinstance(turn.meaning, Answer) and turn.meaning.instead is not None:
        draft.reading_back = None
        _take_number(turn, turn.meaning.instead)
        return
    match draft.reading_back:
        case WordsRead() if draft.purpose is not Purpose.NOTE:
            draft.state = State.GIVING_REASON
            turn.say(sentences.SAY_REASON_AGAIN, Tone.STEP)
        case WordsRead():
            turn.say(sentences.SAY_NOTE_AGAIN, Tone.STEP)
        case NameRead():
            turn.say(sentences.SAY_NAME_AGAIN, Tone.STEP)
        case AnswerRead():
            prompt(turn)
        case _:
            draft.digits_only = True
            turn.say(sentences.SAY_NUMBER_AGAIN, Tone.STEP)
    draft.reading_back = None


def _read_back(turn: Turn, what: ReadBack) -> None:
    """Read it back; nothing is kept yet."""
    turn.draft.reading_back = what
    turn.draft.state = State.READING_BACK
    turn.note["verdict"] = "read back"
    prompt(turn)


def _take_answer(turn: Turn, answer: Answer) -> None:
    """A clear yes to an answer that was doubted twice: it is taken as if it had been heard clearly."""
    turn.draft.reading_back = None
    turn.draft.state = State.ASKING
    turn.note["means"] = str(answer.value)
    turn.meaning = answer
    match input_of(answer):
        case Input.CHOICE:
            take_choice(turn)
        case Input.NO:
            answer_no(turn)
        case _:
            answer_yes(turn)


# Numbers.


def take_number(turn: Turn) -> None:
    """A number: read it back; nothing is kept yet."""
    if not isinstance(turn.meaning, Answer):
        raise TypeError("a number without a value")
    _take_number(turn, turn.meaning)


def _take_number(turn: Turn, answer: Answer) -> None:
    if not isinstance(answer.value, Decimal):
        raise TypeError("a number without a value")
    if answer.corrected:
        _want_digits(turn, turn.sentences.TO_BE_SURE)
        return
    # Asked for once: what is then said digit by digit is settled by the read-back, and never asked for in a circle.
    given_as_asked = turn.draft.digits_only and answer.digit_by_digit
    if isinstance(turn.event, Heard) and not given_as_asked:
        heard, language = turn.event, turn.papers.language
        if digits_follow(answer, language, doubtful=heard.doubtful, told_apart=heard.told_apart):
            _want_digits(turn, _which(turn, answer.value, doubtful=heard.doubtful))
            return
    _read_back(turn, NumberRead(answer.value, answer.unit or ""))


def _which(turn: Turn, heard: Decimal, *, doubtful: bool) -> str:
    """The question for the digits of a number that was heard.

    In practice it offers the number and the one other that it could be, whichever the order says; the answer must
    still be said digit by digit. In a check-off, and to a second person, no number is said that the speaker has
    not said: the other one could be the right one, or the first person's.
    """
    language = turn.papers.language
    offers = turn.terms.practice and not doubtful and not isinstance(turn.step.expect, DoubleCheckAsked)
    pair = language.pair_to_offer(heard) if offers else None
    if pair is None:
        return language.sentences.SAY_DIGITS
    return language.sentences.which_digits(*map(language.say_digits, pair))


def digits_follow(answer: Answer, language: Language, *, doubtful: bool = False, told_apart: bool = False) -> bool:
    """Whether a number that came by voice is asked for digit by digit before it is read back.

    Typed figures cannot be misheard; said digit by digit, a number has no neighbour that sounds like it.

    Args:
        answer: the number.
        language: tells which numbers sound alike.
        doubtful: the recogniser holds another number for possible.
        told_apart: the sound itself tells it from the numbers that sound like it.
    """
    if not isinstance(answer.value, Decimal):
        raise TypeError("a number without a value")
    sounds_alike = (
        not told_apart and not answer.digit_by_digit and language.wants_digits(answer.value, answer.unit or "")
    )
    return doubtful or answer.corrected or sounds_alike


def ask_digits(turn: Turn) -> None:
    """Words that could be two numbers are asked about: shown in figures, spoken digit by digit."""
    if not isinstance(turn.meaning, Ambiguous):
        raise TypeError("two meanings without readings")
    language, readings = turn.papers.language, turn.meaning.readings
    shown = tuple(dosing.show(dosing.Amount(value, turn.meaning.unit)) for value in readings)
    aloud = tuple(map(language.say_digits, readings))
    _want_digits(turn, language.sentences.which_number(shown), language.sentences.which_number(aloud))


def _want_digits(turn: Turn, sentence: str, spoken_sentence: str | None = None) -> None:
    turn.draft.digits_only = True
    turn.note["verdict"] = "digits asked"
    turn.say(sentence, Tone.UNCLEAR, spoken_sentence)


def _keep_number(turn: Turn, number: NumberRead) -> None:
    """A clear yes to the read-back: keep the number, then cross-check it with the answer key."""
    draft, step, done = turn.draft, turn.step, turn.done
    asked = turn.papers.numbers.get(step.id)
    if asked is None:
        raise TypeError("a number was read back at a step that asks for none")
    stated = dosing.Amount(number.value, number.unit)
    shown = dosing.show(stated)
    verdict = turn.papers.compare(asked, stated)
    draft.reading_back = None
    draft.state = State.ASKING
    turn.note["kept"] = shown
    if turn.faults and met_the_bench(turn, stated, shown, agrees=isinstance(verdict, dosing.Agrees)):
        return
    reopen_by_learner(turn)
    done.tries += 1
    done.first = done.first or shown
    done.final = shown
    done.first_amount = done.first_amount or stated
    done.final_amount = stated
    first_agrees = _agrees_with_the_first(turn, stated)
    if isinstance(verdict, dosing.Agrees) and first_agrees:
        turn.note["verdict"] = "agrees"
        turn.say(turn.sentences.AGREES, Tone.AGREES)
        close(turn, shown)
        return
    slip, told = "", ""
    if isinstance(verdict, dosing.Disagrees):
        slip = verdict.slip.value
        told = turn.sentences.explained(verdict) if turn.terms.practice else turn.sentences.not_needed(verdict)
    elif isinstance(verdict, dosing.CannotCheck):
        told = turn.sentences.different_things(verdict)
    else:
        told = turn.sentences.TWO_PEOPLE_DIFFER
    working = turn.papers.working(asked.key) if turn.terms.practice else ()
    shown_working = turn.sentences.working(working) if working else ""
    hold(turn, "does not agree", turn.sentences.disagrees(told), shown_working, step.if_wrong, slip=slip)


def _agrees_with_the_first(turn: Turn, stated: dosing.Amount) -> bool:
    """Whether a second person's number is the learner's; the entry tells both. True where nobody is second."""
    if not isinstance(turn.step.expect, DoubleCheckAsked):
        return True
    first = turn.draft.steps[turn.step.expect.of].final_amount
    turn.note["first_person"] = "" if first is None else dosing.show(first)
    return first is not None and isinstance(dosing.compare(stated, first), dosing.Agrees)


# Names.


def take_name(turn: Turn) -> None:
    """A name read from a label: read it back where it was heard, compare it where it was typed."""
    if not isinstance(turn.meaning, Answer):
        raise TypeError("a name without a value")
    name = str(turn.meaning.value)
    if isinstance(turn.event, Heard):
        _read_back(turn, NameRead(name))
    else:
        _keep_name(turn, name)


def _keep_name(turn: Turn, heard: str) -> None:
    """Keep the name, and compare it with the one that was ordered."""
    step, done = turn.step, turn.done
    if not isinstance(step.expect, NameAsked):
        raise TypeError("a name was given at a step that asks for none")
    right = str(turn.papers.key[step.expect.key].value)
    turn.draft.reading_back = None
    turn.draft.state = State.ASKING
    if turn.faults and met_the_bench(turn, heard, heard, agrees=heard == right):
        return
    reopen_by_learner(turn)
    done.tries += 1
    done.first = done.first or heard
    done.final = heard
    if heard == right:
        turn.note["verdict"] = "agrees"
        turn.say(turn.sentences.name_agrees(heard), Tone.AGREES)
        close(turn, heard)
        return
    hold(turn, "does not agree", turn.sentences.wrong_name(heard), step.if_wrong, slip=ANOTHER_NAME)


# Free words.


def ask_reason(turn: Turn) -> None:
    """Not applicable: ask why; a critical step can be set aside by the instructor only."""
    if turn.step.critical:
        turn.note["verdict"] = "refused"
        turn.say(turn.sentences.CRITICAL_CANNOT_BE_SET_ASIDE, Tone.HOLD)
        return
    turn.draft.purpose = Purpose.NOT_APPLICABLE
    turn.draft.state = State.GIVING_REASON
    prompt(turn)


def take_words(turn: Turn) -> None:
    """A note or a reason: read it back; nothing is kept yet."""
    draft = turn.draft
    if not isinstance(turn.meaning, Answer):
        raise TypeError("free words without words")
    if draft.state is State.ASKING:
        draft.purpose = Purpose.NOTE
    _read_back(turn, WordsRead(str(turn.meaning.value)))


def drop_reason(turn: Turn) -> None:
    """The step applies after all."""
    turn.say(turn.sentences.REASON_DROPPED, Tone.NOTICE)
    go_to(turn, turn.draft.cursor)


def _keep_words(turn: Turn, words: str) -> None:
    """A clear yes to what was read back: the note closes the step, a reason sets it aside."""
    done, draft = turn.done, turn.draft
    if draft.purpose is Purpose.NOTE:
        turn.note["kept"] = words
        reopen_by_learner(turn)
        close(turn, words)
        return
    done.status = Status.NOT_APPLICABLE
    done.reason = words
    done.by = draft.speaker
    turn.note["verdict"] = draft.purpose.value
    note_latest(turn)
    turn.say(turn.sentences.not_applicable(), Tone.NOTICE)
    advance(turn)
