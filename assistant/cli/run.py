"""``checkoff run``: one attempt, by voice where this machine can, by keyboard always."""

import argparse
import os
import sys
from datetime import UTC, datetime
from typing import get_args

from assistant.attempts.begun import NewAttempt, ResumedAttempt
from assistant.attempts.instructor_code import CODE_VARIABLE, code_pins
from assistant.attempts.papers import take_papers
from assistant.attempts.pins import pins
from assistant.attempts.record_place import RecordPlace
from assistant.attempts.sitting import Wishes, sit_down
from assistant.cli.display import add_display_option, display
from assistant.cli.folders import head_book, records_folder
from assistant.cli.outcome import DEFAULT_CHECKLIST, live, screen_for
from assistant.cli.printing import tell
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import UsageError
from assistant.guide.progress import Mode
from assistant.settings import SoundSettings, Synthesiser, load_settings

_EXAMPLES = """\
  checkoff run
  checkoff run primary-line --order oh-101 --learner A17 --mode check-off
  checkoff run --typed < answers.txt
  checkoff run secondary-line --school ~/lab/school.toml --mode check-off
  checkoff run --voice --records ~/lab/records
  checkoff run --headset                        talk over the voice; your first word stops it

Say or type at any time: again, more, back, go on, where am I, what is my order, hold on,
what can I say, slower, faster, louder, softer, higher, deeper, spell it, pause, correct that,
I need help, call my instructor, not applicable, stop."""


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
    parser.add_argument("--school", metavar="FILE", help="your school's own file (default: the setting lab.school)")
    parser.add_argument("--learner", default="learner", metavar="CODE", help="the learner's code, not a name")
    parser.add_argument(
        "--mode", choices=[mode.value for mode in Mode], default=Mode.PRACTICE.value, help="default: practice"
    )
    parser.add_argument("--short-waits", action="store_true", help="shorten timed waits to one second (practice only)")
    add_sound_options(parser)
    parser.add_argument("--records", metavar="FOLDER", help="where the record goes")
    parser.add_argument(
        "--keep-sound", action="store_true", help="save the learner's speech as sound, if they agree when asked"
    )
    parser.set_defaults(run=run)


def add_sound_options(parser: argparse.ArgumentParser) -> None:
    """Options that say how one talks with the assistant."""
    way = parser.add_mutually_exclusive_group()
    way.add_argument("--voice", action="store_true", help="by voice, even if the settings say not to speak")
    way.add_argument("--typed", action="store_true", help="by typed lines from standard input, silently")
    parser.add_argument("--ear", metavar="NAME", help="which recogniser listens (see: checkoff models list)")
    parser.add_argument(
        "--instructor-code",
        metavar="CODE",
        default=os.environ.get(CODE_VARIABLE, ""),
        help=f"the instructor then has to give it: instructor CODE (or set {CODE_VARIABLE})",
    )
    parser.add_argument(
        "--synthesiser", choices=get_args(Synthesiser), help="whose voice speaks (default: as the settings say)"
    )
    parser.add_argument(
        "--headset", action="store_true", help="the microphone does not hear the voice, so you may talk over it"
    )
    parser.add_argument("--plain", action="store_true", help="for a screen reader or braille: no voice, plain lines")
    parser.add_argument("--json", action="store_true", help="one JSON object per line instead of text")
    add_display_option(parser)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    mode = Mode(arguments.mode)
    if arguments.short_waits and mode is Mode.CHECK_OFF:
        raise UsageError("A check-off has no short waits.", "Leave out --short-waits, or practise.")
    school = load_settings().lab.school if arguments.school is None else arguments.school
    papers = take_papers(arguments.checklist, arguments.order, short_waits=arguments.short_waits, school=school)
    for warning in papers.warnings():
        tell(warning)
    pinned = pins(papers, mode, arguments.learner, arguments.checklist, arguments.order)
    if arguments.keep_sound and arguments.typed:
        raise UsageError("Typed input makes no sound to keep.", "Leave out --keep-sound or --typed.")
    pinned |= code_pins(arguments.instructor_code)
    folder = records_folder(arguments.records)
    place = RecordPlace(folder, papers.checklist.name, arguments.learner, datetime.now(UTC), head_book())
    attempt = NewAttempt(papers, mode, pinned, place, keeps_sound=arguments.keep_sound)
    return sit_and_live(attempt, arguments)


def sit_and_live(attempt: NewAttempt | ResumedAttempt, arguments: argparse.Namespace) -> int:
    """Live through an attempt as the sound options say; return the exit code."""
    terminal = sys.stdin is not None and sys.stdin.isatty()
    wishes = Wishes(
        typed=arguments.typed,
        terminal=terminal,
        ear=arguments.ear,
        sound=_sound_wishes(arguments),
        instructor_code=arguments.instructor_code,
        voice_ahead=arguments.voice_ahead,
    )
    screen = screen_for(as_json=arguments.json, echo_typed=not terminal, bare=arguments.plain)
    with display(arguments.display) as page:
        return live(sit_down(attempt, wishes, screen, tell, page), as_json=arguments.json, page=page)


def _sound_wishes(arguments: argparse.Namespace) -> SoundSettings:
    """The settings of sound, as the options of this run change them."""
    wishes = load_settings().sound
    changes: dict[str, object] = {"headset": True} if arguments.headset else {}
    if arguments.synthesiser is not None:
        changes["synthesiser"] = arguments.synthesiser
    if arguments.plain or arguments.voice:
        changes["own_voice"] = not arguments.plain
    return wishes.model_copy(update=changes)
