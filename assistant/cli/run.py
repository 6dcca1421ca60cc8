"""``checkoff run``: one attempt, by voice where this machine can, by keyboard always."""

import argparse
import os
import queue
import sys
from datetime import UTC, datetime

from assistant.adapters.clock import SystemClock
from assistant.adapters.keyboard import Keyboard, LineSource, standard_input
from assistant.adapters.press_key import space_bar_presses
from assistant.adapters.sound import Sound, open_sound
from assistant.adapters.sound_keeper import SoundKeeper
from assistant.adapters.sources import PipeSource
from assistant.cli.attempt import (
    DEFAULT_CHECKLIST,
    RecordPlace,
    ear_pins,
    end_on_signals,
    last_time,
    pins,
    screen_for,
    tell_result,
)
from assistant.cli.instructor_code import CODE_VARIABLE, code_of, code_pins
from assistant.cli.papers import Papers, take_papers
from assistant.cli.printing import tell
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import UsageError
from assistant.guide.guide import KEEP_SOUND, Guide
from assistant.guide.progress import Mode
from assistant.record.file import RecordFile
from assistant.settings import SoundSettings, load_settings
from assistant.station import Station

NOTABLE_S = 1.0
"""Seconds that a clock may be behind the record without a word about it."""

_EXAMPLES = """\
  checkoff run
  checkoff run primary-line --order oh-101 --learner A17 --mode check-off
  checkoff run --typed < answers.txt
  checkoff run --voice --records ~/lab/records
  checkoff run --headset                        talk over the voice; your first word stops it

Say or type at any time: again, more, back, go on, where am I, what is my order, slower, faster,
louder, softer, higher, deeper, spell it, pause, correct that, I need help, not applicable, stop."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "run",
        "Guides one learner through one checklist with one order, by voice or keyboard, and records everything.",
        _EXAMPLES,
    )
    parser.add_argument("checklist", nargs="?", default=DEFAULT_CHECKLIST, help="name or path of a checklist")
    parser.add_argument("--order", help="name or path of an order (default: the checklist's own)")
    parser.add_argument("--learner", default="learner", metavar="CODE", help="the learner's code, not a name")
    parser.add_argument(
        "--mode", choices=[mode.value for mode in Mode], default=Mode.PRACTICE.value, help="default: practice"
    )
    parser.add_argument("--short-waits", action="store_true", help="let timed waits last one second (practice only)")
    add_sound_options(parser)
    parser.add_argument("--records", metavar="FOLDER", help="where the record goes")
    parser.add_argument(
        "--keep-sound", action="store_true", help="keep what the learner says as sound, if they agree when asked"
    )
    parser.set_defaults(run=run)


def add_sound_options(parser: argparse.ArgumentParser) -> None:
    """Options that say how one talks with the assistant."""
    way = parser.add_mutually_exclusive_group()
    way.add_argument(
        "--voice", action="store_true", help="by voice, also where the settings say that it does not speak"
    )
    way.add_argument("--typed", action="store_true", help="by typed lines from standard input, silently")
    parser.add_argument("--ear", metavar="NAME", help="which recogniser listens (see: checkoff models list)")
    parser.add_argument(
        "--instructor-code",
        metavar="CODE",
        default=os.environ.get(CODE_VARIABLE, ""),
        help=f"the instructor then speaks only with it: instructor CODE (also: {CODE_VARIABLE})",
    )
    parser.add_argument(
        "--headset", action="store_true", help="the microphone does not hear the voice: you may talk over it"
    )
    parser.add_argument(
        "--plain", action="store_true", help="for a screen reader or braille: no voice of its own, bare lines"
    )
    parser.add_argument("--json", action="store_true", help="one JSON object a line in place of text")


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    mode = Mode(arguments.mode)
    if arguments.short_waits and mode is Mode.CHECK_OFF:
        raise UsageError("A check-off has no short waits.", "Leave --short-waits out, or practise.")
    papers = take_papers(arguments.checklist, arguments.order, short_waits=arguments.short_waits)
    pinned = pins(papers, mode, arguments.learner, arguments.checklist, arguments.order)
    if arguments.keep_sound:
        if arguments.typed:
            raise UsageError("Typed input makes no sound to keep.", "Leave out --keep-sound or --typed.")
        pinned["sound"] = KEEP_SOUND
    pinned |= code_pins(arguments.instructor_code)
    place = RecordPlace(arguments.records, papers.checklist.name, arguments.learner, datetime.now(UTC))
    return attempt(arguments, papers, mode, pinned, place)


def sound_wishes(arguments: argparse.Namespace) -> SoundSettings:
    """The settings of sound, as the options of this run change them."""
    wishes = load_settings().sound
    changes = {"headset": True} if arguments.headset else {}
    if arguments.plain or arguments.voice:
        changes["own_voice"] = not arguments.plain
    return wishes.model_copy(update=changes)


def attempt(
    arguments: argparse.Namespace,
    papers: Papers,
    mode: Mode,
    pinned: dict[str, str],
    place: RecordPlace,
    taken_up: tuple[Guide, RecordFile] | None = None,
) -> int:
    """Live through a new attempt, or one that is taken up; return the exit code."""
    code = arguments.instructor_code if taken_up is None else code_of(taken_up[1].entries[0], arguments.instructor_code)
    # Its put may be called from a signal's handler.
    inbox: queue.SimpleQueue[object] = queue.SimpleQueue()
    clock = SystemClock(last_time(taken_up[1].entries) if taken_up else None)
    behind_s = f"{clock.behind_s:.0f}" if clock.behind_s >= NOTABLE_S else ""
    if behind_s:
        tell(f"This machine's clock is {behind_s} s behind the record: times go on from the record's last one.")
    wishes = sound_wishes(arguments)
    ahead = arguments.voice_ahead
    sound = Sound() if arguments.typed else open_sound(inbox.put, clock, arguments.ear, wishes, ahead)
    for notice in sound.notices:
        tell(notice)
    terminal = sys.stdin is not None and sys.stdin.isatty()
    presses = space_bar_presses(standard_input(), sys.stdin.fileno()) if terminal and wishes.press_to_talk else None
    typed_lines = LineSource(presses)
    # With an ear, typed lines are taken as they come; a pipe without one is read line by line as asked.
    piped = not terminal and sound.ear is None
    source = PipeSource(typed_lines, clock) if piped else None
    if source is None:
        Keyboard(typed_lines, inbox.put, clock)
    if sound.ear is None and taken_up is None and pinned.pop("sound", ""):
        tell("No sound is kept, for nothing listens.")
    guide, record = taken_up or (papers.guide(mode, pinned | ear_pins(sound.ear)), None)
    end_on_signals(inbox.put)
    station = Station(
        guide,
        place.create,
        clock,
        screen_for(as_json=arguments.json, echo_typed=not terminal, bare=arguments.plain),
        inbox,
        sound.ear,
        sound.voice,
        source,
        SoundKeeper(lambda: record.path if record else place.path) if guide.given.asks_consent else None,
        code,
        talk_over=wishes.headset or not wishes.own_voice or sound.cancels_echo,
        through_canceller=sound.cancels_echo,
        signals=wishes.sounds,
        press_to_talk=wishes.press_to_talk,
    )
    outcome = station.run(record, behind_s)
    typed_lines.close()
    if presses is not None:
        presses.close()
    return tell_result(guide, outcome, record.path if record else place.path, as_json=arguments.json)
