"""What the present state asks for: what is expected to be said, the sentence that asks, and what was not understood."""

import re
from datetime import timedelta

from assistant import dosing
from assistant.checklist.model import (
    ChoiceAsked,
    DoneAsked,
    DoubleCheckAsked,
    NameAsked,
    NoteAsked,
    NumberAsked,
    ObservationAsked,
    QuestionAsked,
    Step,
    WaitAsked,
)
from assistant.guide.effects import StepLine, Tone
from assistant.guide.events import Heard, NotUnderstood
from assistant.guide.papers import Papers
from assistant.guide.progress import AnswerRead, NameRead, NumberRead, Person, Progress, Purpose, State, WordsRead
from assistant.guide.turn import Turn
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected, Expect, NameExpected, NumberExpected, TextExpected
from assistant.spoken.language import Language
from assistant.spoken.meaning import Answer, InstructorWord, Kind, NoMatch, Reason, Surety
from assistant.spoken.statement import Asked, Want

OBSERVED = (InstructorWord.SEEN.value, InstructorWord.NOT_SEEN.value)
"""What an observation is answered with."""
LONGEST_BREATH_WORDS = 32
"""Words that are spoken at once, where sentences can be parted (common practice, no source)."""
FAILURES_BEFORE_OPTIONS = 2
"""Utterances not understood in a row before the learner hears what can be said."""
GAP = "sound was lost"
OWN_VOICE = "it overlapped the assistant's own voice"
_SENTENCE_END = re.compile(r"(?<=[.?!:;])\s+(?=[A-Z0-9])")


def expectation(papers: Papers, progress: Progress) -> Expect:
    """What is expected to be said now; never narrowed to the right answer."""
    match progress.state:
        case State.READING_BACK if isinstance(progress.reading_back, NumberRead):
            read = progress.reading_back
            return ConfirmExpected(done_is_yes=False, number=read.value, number_unit=read.unit)
        case State.READING_BACK if isinstance(progress.reading_back, AnswerRead):
            answer = progress.reading_back.answer
            # What was only heard with doubt may be misheard again: there a clear yes is needed.
            is_read = answer.surety is not Surety.PLAIN
            meant = _in_words(papers.language, papers.checklist.steps[progress.cursor], answer) if is_read else ""
            return ConfirmExpected(done_is_yes=False, repeated=meant)
        case State.READING_BACK | State.STOPPING | State.ASKING_CONSENT | State.OFFERING_CUE:
            return ConfirmExpected(done_is_yes=False)
        case State.GIVING_REASON:
            return TextExpected()
        case State.WITH_INSTRUCTOR:
            return _said_by_instructor(papers.language, tuple(word.value for word in InstructorWord))
        case State.ASKING:
            match papers.checklist.steps[progress.cursor].expect:
                case NumberAsked(unit=unit):
                    return NumberExpected(unit, digits_only=progress.digits_only)
                case NameAsked(key=key):
                    return NameExpected(papers.key[key].choices)
                case DoneAsked(bare=bare) | WaitAsked(bare=bare):
                    return ConfirmExpected(asked=asked_of(papers.checklist.steps[progress.cursor]), bare=bare)
                case QuestionAsked(bare=bare):
                    asked = asked_of(papers.checklist.steps[progress.cursor])
                    return ConfirmExpected(done_is_yes=False, asked=asked, bare=bare)
                case ChoiceAsked(choices=choices, phrases=phrases):
                    line = papers.checklist.steps[progress.cursor].say
                    return ChoiceExpected(choices, tuple((say, c) for c, ways in phrases.items() for say in ways), line)
                case NoteAsked():
                    return TextExpected()
                case ObservationAsked():
                    return _said_by_instructor(papers.language, OBSERVED)
                case DoubleCheckAsked(of=of):
                    first = papers.checklist.step(of).expect
                    unit = first.unit if isinstance(first, NumberAsked) else ""
                    return NumberExpected(unit, digits_only=progress.digits_only)
    return ConfirmExpected()


def asked_of(step: Step) -> Asked:
    """What a step asks for, as far as it helps to understand the answer."""
    match step.expect:
        case QuestionAsked(good=good, bad=bad):
            return Asked(step.say, Want.ANSWER, good, bad)
        case WaitAsked(good=good, bad=bad):
            return Asked(step.say, Want.START, good, bad)
        case DoneAsked(good=good, bad=bad):
            return Asked(step.say, Want.DONE, good, bad)
        case _:
            raise TypeError(f"a step that asks for a {step.expect.kind} is not answered by a yes")


def _said_by_instructor(language: Language, words: tuple[str, ...]) -> ChoiceExpected:
    return ChoiceExpected(words, tuple((said, word) for said, word in language.instructor_words if word in words))


def _taken_from_instructor(turn: Turn) -> tuple[InstructorWord, ...]:
    """What the instructor can say at the current step."""
    words: list[InstructorWord] = []
    if isinstance(turn.step.expect, ObservationAsked):
        words += [InstructorWord.SEEN, InstructorWord.NOT_SEEN]
    elif to_be_seen(turn):
        words += [InstructorWord.SEEN, InstructorWord.ALL_SEEN]
    if turn.done.opened:
        words.append(InstructorWord.CUE)
        if may_overrule(turn):
            words.append(InstructorWord.OVERRULE)
    return tuple(words)


def to_be_seen(turn: Turn) -> tuple[str, ...]:
    """Ids of the steps that are done, that an instructor has to see, and that none has marked; the latest last."""
    seen = {step.id for step in turn.steps if step.seen}
    return tuple(name for name in turn.draft.history if name in seen and not turn.draft.steps[name].seen_by)


def may_overrule(turn: Turn) -> bool:
    """Whether the instructor's word sets the current step aside: a critical one only with the code."""
    return turn.draft.speaker is Person.INSTRUCTOR or not turn.step.critical


def asked_person(step: Step) -> Person:
    """Who is asked at this step."""
    return Person.SECOND if isinstance(step.expect, DoubleCheckAsked) else Person.LEARNER


def prompt(turn: Turn) -> None:
    """Say what the present state asks for."""
    draft, step, sentences = turn.draft, turn.step, turn.sentences
    match draft.state:
        case State.ASKING:
            line = StepLine(draft.cursor + 1, len(turn.steps), step.critical, step.part, step.say)
            shown = sentences.step_line(line.number, line.count, line.line, critical=line.critical)
            first, *rest = breaths(step.say)
            aloud = turn.aloud(f"{first} {sentences.MORE_FOLLOWS}" if rest else first)
            turn.say(shown, Tone.STEP, aloud, line)
        case State.ASKING_CONSENT:
            turn.say(sentences.CONSENT_ASKED, Tone.STEP)
        case State.READING_BACK:
            _read_back(turn)
        case State.GIVING_REASON:
            overruled = draft.purpose is Purpose.OVERRULED
            turn.say(sentences.WHY_OVERRULED if overruled else sentences.WHY_NOT_APPLICABLE, Tone.STEP)
        case State.WITH_INSTRUCTOR:
            turn.say(sentences.instructor_here(_taken_from_instructor(turn)), Tone.NOTICE)
        case State.OFFERING_CUE:
            turn.say(sentences.COUNTS_AS_CUE, Tone.NOTICE)
        case State.WAITING:
            turn.say(sentences.wait_left(seconds_left(turn)), Tone.NOTICE)
        case State.PAUSED:
            turn.say(sentences.PAUSED, Tone.NOTICE)
        case State.HELD:
            reasons = dict.fromkeys(mark.words for mark in draft.marks if mark.holds and mark.words)
            turn.say(sentences.held("; ".join(reasons)), Tone.HOLD)
        case State.STOPPING:
            found = any(step.fault for step in draft.steps.values())
            turn.say(sentences.STOP_FOR_CAUSE_ASKED if found else sentences.STOP_ASKED, Tone.NOTICE)
        case _:
            return


def _read_back(turn: Turn) -> None:
    sentences = turn.sentences
    match turn.draft.reading_back:
        case NumberRead(value, unit):
            said = turn.papers.language.read_back(value, unit)
            number = dosing.Amount(value, unit)
            turn.say(f"{dosing.show(number)}: {said}", Tone.READ_BACK, said, number=number)
        case NameRead(name):
            turn.say(sentences.name_read_back(name), Tone.READ_BACK)
        case WordsRead(words):
            note = turn.draft.purpose is Purpose.NOTE
            turn.say(sentences.note_read_back(words) if note else sentences.reason_read_back(words), Tone.READ_BACK)
        case AnswerRead(_, answer) if answer.surety is not Surety.PLAIN:
            turn.say(sentences.meant(_in_words(turn.papers.language, turn.step, answer)), Tone.READ_BACK)
        case AnswerRead(words):
            turn.say(sentences.answer_read_back(words), Tone.READ_BACK)
        case None:
            raise AssertionError("nothing is being read back")


def seconds_left(turn: Turn) -> int:
    """Whole seconds of a timed wait that are still to go, rounded up."""
    if turn.draft.wake_up is None:
        return 0
    left = turn.draft.wake_up.at - turn.at
    return max(0, -(-left // timedelta(seconds=1)))


def breaths(text: str) -> tuple[str, ...]:
    """A text in parts of whole sentences, each as long as a breath allows; none for an empty text."""
    parts: list[str] = []
    for sentence in _SENTENCE_END.split(text.strip()):
        joined = f"{parts[-1]} {sentence}" if parts else sentence
        if parts and len(joined.split()) <= LONGEST_BREATH_WORDS:
            parts[-1] = joined
        elif sentence:
            parts.append(sentence)
    return tuple(parts)


# What was not understood, has no place here, or cannot be trusted.


def more_counts(turn: Turn) -> bool:
    """Whether hearing more about a step counts as a cue: by the school's rule, and in a check-off alone."""
    return not turn.terms.practice and "more" in turn.papers.checklist.pass_rule.cues


def not_here(turn: Turn) -> None:
    """A command that has no place here: say so, and ask again."""
    turn.note["verdict"] = "not taken here"
    turn.say(turn.sentences.refusal(Reason.NOT_AN_ANSWER_HERE), Tone.UNCLEAR)
    prompt(turn)


def unclear(turn: Turn) -> None:
    """Not understood: why, then what can be said, then one short sentence."""
    draft, sentences = turn.draft, turn.sentences
    draft.failures += 1
    turn.note["verdict"] = "not understood"
    first, *further = _why_unclear(turn)
    turn.say(first, Tone.UNCLEAR)
    for text in further:
        turn.say(text, Tone.UNCLEAR, "" if draft.failures > FAILURES_BEFORE_OPTIONS else None)
    if draft.failures == FAILURES_BEFORE_OPTIONS:
        by_number = isinstance(expectation(turn.papers, draft), NumberExpected)
        if by_number:
            turn.say(sentences.TRY_DIGITS, Tone.UNCLEAR)
        else:
            if not draft.options_given:
                tell_options(turn, Tone.UNCLEAR)
            if isinstance(turn.event, Heard | NotUnderstood):
                turn.say(sentences.TRY_TYPING, Tone.UNCLEAR)
        prompt(turn)


def tell_options(turn: Turn, tone: Tone) -> None:
    """Everything that can always be said."""
    turn.draft.options_given = True
    turn.say(turn.sentences.WHAT_CAN_BE_SAID, tone)


def ask_once_more(turn: Turn) -> None:
    """A yes, a no or a choice that was not heard clearly is never taken; asking once more costs nothing.

    Doubted again, it is read back as a number is: only a clear yes to that takes it.
    """
    draft = turn.draft
    if draft.state is State.ASKING and draft.doubted and isinstance(turn.meaning, Answer):
        ask_whether(turn)
        return
    turn.note["verdict"] = "asked once more"
    if draft.state is not State.ASKING:
        prompt(turn)
        return
    draft.doubted = True
    match expectation(turn.papers, turn.draft):
        case ChoiceExpected(choices=choices):
            question = turn.sentences.choices_are(choices)
        case _:
            question = question_in_full(turn)
    turn.say(turn.sentences.heard_which(turn.words, question), Tone.UNCLEAR)


def ask_whether(turn: Turn) -> None:
    """An answer in doubt is read back, and only a clear yes to that takes it; asking costs nothing."""
    if not isinstance(turn.meaning, Answer):
        raise TypeError("a likely answer without an answer")
    turn.draft.reading_back = AnswerRead(turn.words, turn.meaning)
    turn.draft.state = State.READING_BACK
    turn.note["verdict"] = "read back"
    prompt(turn)


def _in_words(language: Language, step: Step, answer: Answer) -> str:
    """An answer as the learner would give it: the alternative, or the line's own word for done."""
    if answer.kind is not Kind.DONE:
        return str(answer.value)
    good, _bad = language.offer(asked_of(step))
    return good or str(answer.value)


def question_in_full(turn: Turn) -> str:
    """The question whose answer says what was done or seen."""
    good, bad = turn.papers.language.offer(asked_of(turn.step))
    if isinstance(turn.step.expect, QuestionAsked) and not (good and bad):
        return turn.sentences.YES_OR_NO
    return turn.sentences.which_is_it(good, bad)


def _why_unclear(turn: Turn) -> list[str]:
    sentences = turn.sentences
    if not isinstance(turn.meaning, NoMatch):
        return [sentences.NO_WORDING]
    why = [sentences.refusal(turn.meaning.reason)]
    match expectation(turn.papers, turn.draft):
        case NumberExpected(unit=unit) if turn.meaning.reason is not Reason.DIGITS_WANTED:
            why.append(sentences.unit_needed(unit))
        case ChoiceExpected(choices=choices):
            only = turn.draft.state is State.ASKING and isinstance(turn.step.expect, ObservationAsked)
            why.append(sentences.ONLY_THE_INSTRUCTOR if only else sentences.choices_are(choices))
        case ConfirmExpected(done_is_yes=False):
            why.append(sentences.YES_OR_NO)
    return why


def drop(turn: Turn) -> None:
    """Sound that cannot be trusted: our own voice in it, or a gap."""
    if isinstance(turn.event, Heard) and turn.event.during_speech:
        turn.note["verdict"] = f"dropped: {OWN_VOICE}"
    else:
        turn.note["verdict"] = f"dropped: {GAP}"
        turn.say(turn.sentences.SOUND_LOST, Tone.UNCLEAR)
