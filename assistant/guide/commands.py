"""What can be said at any time and changes no step: once more, more, where, the order, the voice."""

from assistant.checklist.model import NameAsked
from assistant.guide.asking import breaths, more_counts, not_here, prompt, tell_options
from assistant.guide.effects import Tone
from assistant.guide.path import passed_over
from assistant.guide.progress import NameRead, NumberRead, Status
from assistant.guide.turn import Turn

FURTHEST = 4
"""Steps of the voice's rate, loudness and pitch, up and down."""


def again(turn: Turn) -> None:
    """Say once more what is asked."""
    prompt(turn)


def more(turn: Turn) -> None:
    """The rest of the line, the detail, the reason, a breath at a time: no cue, for it is what is asked."""
    if not turn.done.opened:
        not_here(turn)
        return
    further = [*breaths(turn.step.say)[1:], *breaths(turn.step.more), *breaths(turn.step.why)]
    said = turn.draft.breaths
    if said >= len(further):
        turn.say(turn.sentences.NO_MORE, Tone.NOTICE)
        return
    turn.say(further[said], Tone.STEP)
    if said + 1 < len(further):
        turn.say(turn.sentences.MORE_FOLLOWS, Tone.NOTICE)
    turn.draft.breaths = said + 1
    if more_counts(turn) and "more" not in turn.done.cues:
        turn.cue("more")


def options(turn: Turn) -> None:
    """What can be said."""
    tell_options(turn, Tone.NOTICE)


def hold_on(turn: Turn) -> None:
    """A moment's patience; nothing changes."""
    turn.say(turn.sentences.TAKE_YOUR_TIME, Tone.NOTICE)


def call(turn: Turn) -> None:
    """The learner asks for the instructor: on record, and no cue; whoever watches at a desk sees it."""
    turn.say(turn.sentences.CALLED, Tone.NOTICE)


def where(turn: Turn) -> None:
    """The place in the checklist and how much was left open before it."""
    draft, steps = turn.draft, turn.steps
    reasons = passed_over(turn.papers, turn.draft)
    left_open = sum(
        draft.steps[step.id].status is Status.OPEN and step.id not in reasons for step in steps[: draft.cursor]
    )
    turn.say(turn.sentences.where(draft.cursor + 1, len(steps), turn.step.part, left_open), Tone.NOTICE)
    prompt(turn)


def read_order(turn: Turn) -> None:
    """The order, as it was written."""
    turn.say(turn.papers.order_text, Tone.NOTICE, order=True)


def spell(turn: Turn) -> None:
    """What is being read back, digit by digit or letter by letter; in practice also the ordered name, a cue."""
    step, sentences = turn.step, turn.sentences
    match turn.draft.reading_back:
        case NumberRead(value):
            digits = turn.papers.language.say_digits(value)
            turn.say(digits, Tone.NOTICE, digits)
        case NameRead(name):
            turn.say(sentences.spelled(name), Tone.NOTICE)
        case _ if isinstance(step.expect, NameAsked) and turn.terms.practice:
            turn.say(sentences.spelled(str(turn.papers.key[step.expect.key].value)), Tone.CUE)
            if "spelled" in turn.papers.checklist.pass_rule.cues:
                turn.cue("spelled")
        case _:
            turn.say(sentences.NOTHING_TO_SPELL, Tone.NOTICE)


def slower(turn: Turn) -> None:
    """One step slower."""
    _adjust(turn, turn.sentences.SLOWER, rate=-1)


def faster(turn: Turn) -> None:
    """One step faster."""
    _adjust(turn, turn.sentences.FASTER, rate=1)


def louder(turn: Turn) -> None:
    """One step louder."""
    _adjust(turn, turn.sentences.LOUDER, loudness=1)


def softer(turn: Turn) -> None:
    """One step softer."""
    _adjust(turn, turn.sentences.SOFTER, loudness=-1)


def higher(turn: Turn) -> None:
    """One step higher."""
    _adjust(turn, turn.sentences.HIGHER, pitch=1)


def deeper(turn: Turn) -> None:
    """One step deeper."""
    _adjust(turn, turn.sentences.DEEPER, pitch=-1)


def _adjust(turn: Turn, sentence: str, rate: int = 0, loudness: int = 0, pitch: int = 0) -> None:
    draft = turn.draft
    wanted = (draft.rate + rate, draft.loudness + loudness, draft.pitch + pitch)
    if max(map(abs, wanted)) > FURTHEST:
        turn.say(turn.sentences.AT_THE_LIMIT, Tone.NOTICE)
        return
    draft.rate, draft.loudness, draft.pitch = wanted
    turn.adjust()
    turn.say(sentence, Tone.NOTICE)
