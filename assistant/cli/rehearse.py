"""``checkoff rehearse FILE``: read a checklist through as it will sound, without waiting."""

import argparse
from pathlib import Path

from assistant.checklist.load import load_sheet
from assistant.checklist.model import Checklist, ChoiceAsked
from assistant.checklist.rehearsal import Line, rehearse
from assistant.cli.printing import say_line, write_json
from assistant.cli.say import write_speech
from assistant.cli.verbs import Subparsers, add_verb
from assistant.spoken import ENGLISH
from assistant.text import shown

_EXAMPLES = """\
  checkoff rehearse primary-line           every step as it is read aloud, with the estimated time
  checkoff rehearse my-checklist.toml --all    with the longer lines, cues and reasons
  checkoff rehearse secondary-line -o rehearsal.wav    the same as sound
  checkoff rehearse secondary-line > rehearsal.txt     the same to print out
  checkoff rehearse secondary-line --json  one JSON object per step"""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "rehearse",
        "Step by step, with the estimated time; on the screen or as a sound file.",
        _EXAMPLES,
    )
    parser.add_argument("checklist", metavar="FILE", help="path or name of a checklist")
    parser.add_argument("--all", action="store_true", help="also what is said on request, for help, and when wrong")
    parser.add_argument("-o", "--output", type=Path, metavar="FILE.wav", help="write what is said to a sound file")
    parser.add_argument("--json", action="store_true", help="one JSON object per step")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    sheet = load_sheet(arguments.checklist)
    checklist = sheet.checklist
    lines = rehearse(checklist)
    if arguments.output is not None:
        spoken = [
            checklist.aloud(checklist.title),
            *(said for line in lines for said in _aloud(checklist, line, arguments.all)),
        ]
        length_s = write_speech(spoken, arguments.output)
        file = shown(arguments.output)
        say_line(f"{file}: {len(lines)} steps, {length_s:.0f} s of speech; {_about(lines)} including the tasks.")
        return 0
    if arguments.json:
        for line in lines:
            write_json(_row(line))
        return 0
    say_line(f"{checklist.title}, version {checklist.version}. {checklist.purpose}")
    for caution in checklist.cautions:
        say_line(f"Caution: {caution}")
    part = ""
    for line in lines:
        if line.step.part != part:
            part = line.step.part
            say_line(f"\n{part}")
        marks = [name for name, there in (("critical", line.step.critical), ("gate", line.step.gate)) if there]
        say_line(f"{line.number:>3}. {line.spoken}  [{'; '.join([*marks, line.expected])}]")
        if arguments.all:
            for name, text in _further(line):
                say_line(f"     {name}: {text}")
    say_line(f"\n{len(lines)} steps, {_about(lines)}.")
    return 0


def _about(lines: tuple[Line, ...]) -> str:
    minutes = round(sum(line.seconds for line in lines) / 60)
    return f"about {minutes} {'minute' if minutes == 1 else 'minutes'}"


def _aloud(checklist: Checklist, line: Line, everything: bool) -> list[str]:
    """What is said at a step: its line, and on request the rest."""
    further = [
        checklist.aloud(text)
        for name, text in _further(line)
        if everything and name not in ("source", "passed over where")
    ]
    return [line.spoken, *further]


def _further(line: Line) -> list[tuple[str, str]]:
    step = line.step
    named = [("more", step.more), *(("cue", cue) for cue in step.cues), ("why", step.why)]
    named += [("when not right", step.if_wrong)]
    if isinstance(step.expect, ChoiceAsked):
        named += [(f"when {choice}", text) for choice, text in step.expect.advice.items()]
    found = [(name, text) for name, text in named if text]
    found += [("passed over where", condition.unmet_reason(ENGLISH.sentences)) for condition in step.applies]
    if step.expires:
        found.append((f"after {step.expires.after_s} seconds of waiting", step.expires.say))
    return found + [("source", source) for source in step.sources]


def _row(line: Line) -> dict[str, object]:
    return {
        "number": line.number,
        "id": line.step.id,
        "part": line.step.part,
        "say": line.step.say,
        "speech": line.spoken,
        "expected": line.expected,
        "critical": line.step.critical,
        "gate": line.step.gate,
        "seconds": line.seconds,
    }
