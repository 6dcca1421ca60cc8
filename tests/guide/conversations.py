"""Attempts word for word: ``python -m tests.guide.conversations`` writes down anew what the guide says and records.

Each conversation goes through some of what can happen. ``conversations.txt`` holds, for everything that was typed or
heard, the entry that goes on disk, what is shown and in what tone, what is spoken where that is something else, what
the guide listens for and when it wants to be woken; at the end the result. It is there to be read: a change in it is a
change in what learners hear or in what a record says, and is to be judged as such.
"""

from collections.abc import Callable
from dataclasses import dataclass, fields
from datetime import datetime, timedelta
from decimal import Decimal
from itertools import takewhile
from pathlib import Path

from assistant.checklist.model import (
    Checklist,
    ChoiceAsked,
    DoubleCheckAsked,
    NameAsked,
    NoteAsked,
    NumberAsked,
    QuestionAsked,
    Step,
    WaitAsked,
)
from assistant.guide import Adjust, EarBack, Effect, NotUnderstood, VoiceLost
from assistant.guide.effects import Listen
from tests.guide.kinds import KINDS, SMOOTH_KINDS
from tests.guide.lived import (
    CHECKLIST,
    KEEP_SOUND,
    SMOOTH,
    WITH_CODE,
    EarLost,
    Event,
    Heard,
    InputEnded,
    InstructorCame,
    Lived,
    Mode,
    Opened,
    Resumed,
    Say,
    Typed,
    guide,
)

WRITTEN = Path(__file__).with_suffix(".txt")
LONG = (
    "Look at the bag, the chamber, the clamp and the line from top to bottom, and do not hurry while you do it. "
    "Then look at the site, at the dressing and at the skin around it, and feel whether it is warm or hard. "
    "Then say done."
)
"""A line that is said in two breaths."""
EDGES = Checklist(
    name="edges",
    title="What is rare",
    version="1",
    purpose="Has what the other checklists of these tests lack.",
    cautions=("Training only.", "Nobody is ill."),
    order="none",
    digest="0" * 64,
    abbreviations={"VTBI": "volume to be infused"},
    steps=(
        Step(id="look", part="Look", say=LONG, why="A look costs nothing.", pause_s=Decimal("1.5")),
        Step(
            id="pulse",
            part="Look",
            say="Tell me a rate from 5 to 20 mL/h.",
            expect=NumberAsked(kind="number", unit="mL/h", lowest=Decimal(5), highest=Decimal(20)),
            if_wrong="Count again.",
            critical=True,
        ),
        Step(
            id="near",
            part="Set",
            say="Set the VTBI and tell me the VTBI.",
            expect=NumberAsked(kind="number", unit="mL", key="primary.vtbi", within=Decimal(5)),
            tries=2,
            tries_spent="Stop, and fetch somebody.",
            critical=True,
        ),
        Step(
            id="label",
            part="Set",
            say="Read the label.",
            expect=NameAsked(kind="name", key="primary.fluid"),
            if_wrong="Take another bag.",
        ),
        Step(
            id="leak",
            part="Look",
            say="Is there a leak?",
            expect=QuestionAsked(kind="question", right="no"),
            critical=True,
        ),
        Step(
            id="side",
            part="Look",
            say="Which side?",
            expect=ChoiceAsked(kind="choice", choices=("left", "right"), right="left"),
        ),
        Step(id="rest", part="Wait", say="Wait a moment.", expect=WaitAsked(kind="wait", seconds=30)),
        Step(
            id="second",
            part="Set",
            say="Second person: tell me the VTBI.",
            expect=DoubleCheckAsked(kind="double-check", of="near"),
            if_wrong="Both of you again.",
        ),
        Step(id="clamp", part="Wait", say="Open the clamp.", if_wrong="Open it first.", more="The blue one."),
        Step(id="words", part="Wait", say="Say what you saw.", expect=NoteAsked(kind="note"), pause_s=Decimal(3)),
    ),
)

Item = str | int | Callable[[datetime], Event]
PRACTICE, CHECK_OFF = Mode.PRACTICE, Mode.CHECK_OFF


@dataclass(frozen=True)
class Conversation:
    """One attempt.

    Attributes:
        title: what it is about.
        mode, checklist, pins: how it is taken.
        items: typed words; words after "~" are heard; seconds to wait; other events.
    """

    title: str
    mode: Mode
    checklist: Checklist
    items: tuple[Item, ...]
    pins: tuple[tuple[str, str], ...] = ()


def heard(words: str, **more: object) -> Callable[[datetime], Event]:
    """An utterance with all that a recogniser tells of it."""
    told = {"alternatives": ("what else",), "confidence": "0.5", "ear": "ear", **more}
    return lambda at: Heard(at, words, **told)  # type: ignore[arg-type]


def late(words: str) -> Callable[[datetime], Event]:
    """Words that come long after, though no clock has said so yet."""
    return lambda at: Typed(at + timedelta(seconds=400), words)


def resumed(**more: str) -> Callable[[datetime], Event]:
    """The attempt is taken up."""
    return lambda at: Resumed(at, **more)


def instructor(*, proven: bool) -> Callable[[datetime], Event]:
    """The instructor comes."""
    return lambda at: InstructorCame(at, proven=proven)


def not_understood(at: datetime) -> Event:
    """Speech without a wording."""
    return NotUnderstood(at, "ear")


CODE = (("instructor", WITH_CODE),)
CONVERSATIONS = (
    Conversation("without a slip, typed", PRACTICE, CHECKLIST, SMOOTH),
    Conversation("without a slip, typed, for the record", CHECK_OFF, CHECKLIST, SMOOTH),
    Conversation("every kind of step, for the record", CHECK_OFF, KINDS, SMOOTH_KINDS),
    Conversation(
        "every word that can be said at a step",
        PRACTICE,
        CHECKLIST,
        (
            *("again", "more", "more", "more", "i need help", "i need help", "where am i", "what is my order"),
            *("slower", "faster", "faster", "louder", "softer", "higher", "deeper", "spell it", "back", "correct that"),
            *("no", "gibberish", "what now", "who knows", "not applicable", "go on", "where am i", "back", "done"),
            *("not applicable", "again", "it fits", "no", "it fits well.", "correct that", "not applicable"),
            *("it fits well.", "yes", "correct that", "done", "back", "go on", "spell it", "~saline", "no", "tea"),
        ),
    ),
    Conversation(
        "the voice as far as it goes",
        PRACTICE,
        CHECKLIST,
        (*("faster",) * 5, *("softer",) * 5, *("higher",) * 5, "slower", "louder", "deeper", resumed()),
    ),
    Conversation(
        "names and numbers by voice, in practice",
        PRACTICE,
        CHECKLIST,
        (
            *("done", "done", "spell it", "~five percent dextrose in water", "spell it", "again", "no"),
            *("~five percent dextrose in water", "yes", "~lactated ringer's", "yes", "done", 15),
            *("fifteen", "spell it", "no", "~fifteen", "~fifty", "~five zero", "yes", "~eight three three", "yes"),
            *("~ten fifty", "~eighty three", "gibberish", "~fifty", "i need help", "i need help"),
            heard("fifteen", doubtful=True),
            *("~eighty three no eighty four", "83.3 mL", "95 mL", "83.3 mL/h", "yes", "95", "yes", "correct that"),
            *("~eight three point three", "correct that", "~eight three point three", "yes", "950", "yes"),
        ),
    ),
    Conversation(
        "names and numbers by voice, for the record",
        CHECK_OFF,
        CHECKLIST,
        (
            *("done", "done", "spell it", "~five percent dextrose in water", "yes", "~lactated ringer's", "yes"),
            *("done", 15, "~fifteen", "~one five", "yes", "833", "yes", "i need help", "~fifty", "~five zero", "no"),
            *("83.3", "yes", "950 mL", "yes", "done", "done", "no", "yes", "done"),
        ),
    ),
    Conversation(
        "gates, order and what is left out",
        PRACTICE,
        CHECKLIST,
        (
            *("go on", "go on", "go on", "go on", "go on", "go on", "done", "done", "lactated ringer's", "83.3"),
            *("yes", "950", "yes", "go on", "done", "done", "yes", "go on", "go on", "go on"),
        ),
    ),
    Conversation(
        "a step that comes after another one",
        PRACTICE,
        CHECKLIST,
        (*("done", "go on"), *SMOOTH[2:10], "go on", "done", "done"),
    ),
    Conversation(
        "a second person before there is a first number",
        PRACTICE,
        EDGES,
        (*("go on",) * 3, *("lactated ringer's", "no", "left", "go on", "10", "yes", "go on", "go on")),
    ),
    Conversation(
        "settings that run out, and long silences",
        PRACTICE,
        CHECKLIST,
        (*SMOOTH[:10], 181, "83.3", 200, "yes", "950", "yes", "pause", 200, "go on", "83.3", "yes", "950", "yes", 121),
    ),
    Conversation(
        "settings that ran out before the clock said so",
        PRACTICE,
        CHECKLIST,
        (
            *SMOOTH[:10],
            *(late("done"), "83.3", "yes", "950", "yes", late("more"), late("pause"), "go on", late("no")),
            *("83.3", "yes", "950", "yes", late("not applicable"), late("done")),
        ),
    ),
    Conversation(
        "words that could be two numbers",
        PRACTICE,
        CHECKLIST,
        (*SMOOTH[:5], "ten fifty", "~ten fifty", "again", "~one zero five zero", "no", "ten point five", "9.999"),
    ),
    Conversation(
        "words that could be two numbers, for the record",
        CHECK_OFF,
        CHECKLIST,
        (*SMOOTH[:5], "~ten fifty", "~gibberish", "~gibberish", "ten fifty", "pause", "go on"),
    ),
    Conversation(
        "timed waits",
        PRACTICE,
        CHECKLIST,
        (
            *(
                "done",
                "done",
                "lactated ringer's",
                "done",
                "done",
                "again",
                "no",
                "done",
                5,
                "pause",
                "yes",
                4,
                "go on",
            ),
            *("where am i", 7, "back", "done", "pause", "again", 20, "go on", "back", "done", "stop", 20, "no", "back"),
            *("done", "instructor here", "cue given", 20, "go on", "back", "done", "stop", "yes", 30, resumed()),
        ),
    ),
    Conversation(
        "pause and stop, resumed",
        PRACTICE,
        CHECKLIST,
        (
            *("pause", "done", "stop", "again", "go on", "pause", "stop", "stop", resumed(), "done", "stop", "no"),
            *("not applicable", "pause", "go on", "stop", "yes", resumed(ear="ear", ear_model="m", clock_behind_s="3")),
            *("~it fits", InputEnded, resumed(), "no", "again", "back", 121),
        ),
    ),
    Conversation(
        "much left open, and closed for good",
        PRACTICE,
        CHECKLIST,
        (*("go on",) * 6, *("done", "go on", "go on", "go on", "go on", "go on"), *("close the attempt",) * 2),
    ),
    Conversation("closed for good", PRACTICE, CHECKLIST, ("done", "close the attempt", "close the attempt")),
    Conversation(
        "consent that is given",
        PRACTICE,
        CHECKLIST,
        ("maybe", "done", "again", "yes", "done"),
        (("sound", KEEP_SOUND),),
    ),
    Conversation("consent that is refused", CHECK_OFF, KINDS, ("more", "no", "left arm"), (("sound", KEEP_SOUND),)),
    Conversation(
        "devices that come and go",
        PRACTICE,
        CHECKLIST,
        (
            *(lambda at: EarLost(at, "It was unplugged."), lambda at: EarBack(at)),
            *(lambda at: VoiceLost(at, "It was unplugged."), not_understood, not_understood, not_understood),
            *(heard("done", gap=True), heard("done", during_speech=True), heard("done")),
        ),
    ),
    Conversation(
        "the instructor without a code, in practice",
        PRACTICE,
        KINDS,
        (
            *("instructor here", "tea", "cue given", "seen", "go on", "right arm", "neither", "i need help"),
            *(
                "i need help",
                "i need help",
                "i need help",
                "left",
                "left arm",
                "not sore",
                "83.3",
                "yes",
                "83.3",
                "yes",
            ),
            *("seen it", "not seen", "instructor here", "overrule", "again", "it is broken", "no", "it is broken"),
            *(
                "pause",
                "go on",
                "overrule",
                "instructor here",
                "overrule",
                "it is broken",
                "yes",
                "back",
                "seen",
                "done",
            ),
        ),
    ),
    Conversation(
        "the instructor with a code, for the record",
        CHECK_OFF,
        KINDS,
        (
            *("instructor here", instructor(proven=False), instructor(proven=True), "overrule", "no arm", "yes"),
            *("not sore", "83.3", "yes", "83.3", "yes", "seen", instructor(proven=True), "not seen", "instructor here"),
            *(instructor(proven=True), "seen", "done", "yes", "the line runs", "yes"),
        ),
        CODE,
    ),
    Conversation(
        "an instructor without a code cannot overrule for the record",
        CHECK_OFF,
        KINDS,
        ("instructor here", "overrule", "stop", "no", "pause", "go on", "seen"),
    ),
    Conversation(
        "a second person who differs",
        PRACTICE,
        KINDS,
        (
            *("left arm", "sore", "done", "833", "yes", "83.3 mL", "yes", "83.3", "yes", "~fifteen", "~one five"),
            *("yes", "84", "yes", "83.3 mL/h", "yes"),
        ),
    ),
    Conversation(
        "ranges, allowances, tries, and a line in two breaths",
        PRACTICE,
        EDGES,
        (
            *("more", "more", "more", "done", "4", "yes", "21", "yes", "20", "yes", "956", "yes", "944", "yes"),
            *("955", "yes", "saline", "lactated ringer's", "yes", "no", "right", "left", "done", 30, "~ten fifty"),
            *("955 mL no 950", "950", "yes", "955", "yes", "no", "yes", "~all is well", "no", "~all is well", "yes"),
        ),
    ),
    Conversation(
        "ranges, allowances and tries, for the record",
        CHECK_OFF,
        EDGES,
        (
            *("i need help", "done", "4", "yes", "5", "yes", "9.5 L", "yes", "956", "yes", "945", "yes", "go on"),
            *("no", "left", "done", "stop", "yes", resumed(), 30, "950", "yes", "945", "yes", "go on"),
            *("done", "all is well", "yes", "go on", "go on"),
        ),
    ),
)


class Heeded(Lived):
    """An attempt whose every turn is written down."""

    def __init__(self, conversation: Conversation) -> None:
        self.lines: list[str] = []
        self.listens = ""
        fresh = guide(conversation.mode, conversation.checklist, **dict(conversation.pins))
        super().__init__(fresh)

    def give(self, event: Event) -> list[Effect]:
        """Take one event and write down what comes of it."""
        count = len(self.entries)
        effects = super().give(event)
        if len(self.entries) > count:
            self.lines += ["", f"> {_event(event)}", f"    entry: {_plain(self.entries[-1])}"]
            self.lines += [line for effect in effects for line in self._effect(effect)]
        return effects

    def _effect(self, effect: Effect) -> list[str]:
        match effect:
            case Say(text, speech, tone):
                aloud = [] if speech == text else [f"      aloud: {speech or 'nothing'}"]
                return [f"    {tone.value}: {text}", *aloud]
            case Listen(expect, wanted, pause_s):
                told = ", ".join(f"{one.name}={getattr(expect, one.name)!r}" for one in fields(expect))
                quiet = "" if wanted else ", not asked for"
                pause = "" if pause_s is None else f", after {pause_s} s of silence"
                before, self.listens = self.listens, f"    listens: {type(expect).__name__}({told}){quiet}{pause}"
                return [self.listens] if self.listens != before else []
            case Adjust(rate, loudness, pitch):
                return [f"    voice: rate {rate}, loudness {loudness}, pitch {pitch}"]
        if hasattr(effect, "token"):
            return [f"    wakes: {effect.token} in {(effect.at - self.at).total_seconds():g} s"]
        if hasattr(effect, "outcome"):
            return [f"    ends: {effect.outcome.value}, {'sealed' if effect.seal else 'to be resumed'}"]
        return [f"    {type(effect).__name__.lower()}"]


def _event(event: Event) -> str:
    name = type(event).__name__
    return f"{name}: {event.words}" if isinstance(event, Typed | Heard) else name


def _plain(entry: dict[str, object]) -> str:
    return "; ".join(f"{name}={value!r}" for name, value in entry.items() if name not in ("at", "sequence", "words"))


def begun_alike(conversation: Conversation) -> int:
    """With how many items an earlier conversation begins in the same way: those are written down there; -1 for none."""
    most = -1
    for earlier in CONVERSATIONS[: CONVERSATIONS.index(conversation)]:
        if (earlier.mode, earlier.checklist, earlier.pins) == (
            conversation.mode,
            conversation.checklist,
            conversation.pins,
        ):
            pairs = zip(earlier.items, conversation.items, strict=False)
            most = max(most, sum(1 for _ in takewhile(lambda pair: pair[0] == pair[1], pairs)))
    return most


def held(conversation: Conversation) -> list[str]:
    """One conversation, line by line; without the beginning that it shares with an earlier one."""
    lived = Heeded(conversation)
    lived.give(Opened(lived.at))
    known = begun_alike(conversation)
    for place, item in enumerate(conversation.items):
        if place == known:
            lived.lines = ["", "..."]
        match item:
            case int():
                lived.wait(item)
            case str() if item.startswith("~"):
                lived.hear(item[1:])
            case str():
                lived.type(item)
            case _:
                lived.wait(1)
                event = item(lived.at)
                lived.at = max(lived.at, getattr(event, "at", lived.at))
                lived.give(event)
    result = lived.guide.results()
    lines = [f"==== {conversation.title} ({conversation.mode.value}, {conversation.checklist.name})", *lived.lines]
    lines += ["", "result"]
    body = result.body()
    lines += [f"    {name}: {value!r}" for name, value in body.items() if name != "steps"]
    for line in result.steps:
        told = {one.name: getattr(line, one.name) for one in fields(line) if getattr(line, one.name) != one.default}
        lines.append("    " + "; ".join(f"{name}={_told(value)}" for name, value in told.items() if name != "say"))
    return [*lines, ""]


def _told(value: object) -> str:
    return repr(value.value) if hasattr(value, "value") else repr(value)


def conversations() -> str:
    """All of them."""
    return "\n".join(line for conversation in CONVERSATIONS for line in held(conversation)) + "\n"


if __name__ == "__main__":
    WRITTEN.write_text(conversations(), encoding="utf-8")
