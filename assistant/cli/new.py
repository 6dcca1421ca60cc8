"""``checkoff new NAME``: start a checklist from questions."""

import argparse
import json
import re
import sys
from pathlib import Path

from assistant.checklist import library
from assistant.checklist.draft import NO_SOURCE, Draft, DraftStep, written
from assistant.checklist.includes import known_parts
from assistant.checklist.schema import FILE_NAME, checklist_schema
from assistant.cli.lint import findings_of, what_is_known
from assistant.cli.printing import say_line, tell
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import ChecklistError, UsageError
from assistant.orders.load import available_orders
from assistant.orders.solve import KEY_UNITS
from assistant.text import quoted, shown

_EXAMPLES = """\
  checkoff new my-bag-change                    asks, and writes my-bag-change.toml into your folder
  checkoff new my-bag-change --folder .         into this folder
  checkoff new my-bag-change < answers.txt      the same answers from a file, one a line

Enter accepts the answer in brackets. An empty line in place of a step ends the checklist.
The file is plain text: open it in any editor, add longer lines, cues and sources, then
  checkoff lint my-bag-change --strict
  checkoff rehearse my-bag-change
  checkoff print my-bag-change"""

_KINDS = {
    "done": "something to do; done closes it",
    "question": "something to look at; yes or no",
    "number": "a number that must agree with the order",
    "name": "a name read from a label",
    "wait": "a timed wait, such as drying",
    "choice": "one of a few answers",
    "note": "free words",
    "observation": "the instructor says seen or not seen",
}
_ANSWERED = frozenset({"question", "number", "name", "choice", "observation"})
"""Kinds whose answer can be wrong."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "new",
        "Asks for the steps of a procedure, and writes a checklist that can be rehearsed at once.",
        _EXAMPLES,
    )
    parser.add_argument("name", metavar="NAME", help="small letters, digits and hyphens, for example my-bag-change")
    parser.add_argument("--folder", type=Path, help="where to write it (default: your own checklists)")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code.

    Raises:
        UsageError: the name makes no file name, or an answer from a file is none.
        ChecklistError: there is such a checklist, no step was given, or it cannot be written.
    """
    name = arguments.name.removesuffix(".toml")
    if not re.fullmatch(r"[a-z][a-z0-9-]{0,59}", name) or name in library.NO_CHECKLISTS:
        raise UsageError(f"{quoted(name)} is not a valid checklist name.", "Use small letters, digits and hyphens.")
    folder = arguments.folder or library.user_folder()
    path = folder / f"{name}.toml"
    if path.exists():
        raise ChecklistError(f"{shown(path)} already exists.", "Choose another name, or edit that file.")
    if name in library.available():
        raise ChecklistError(
            f"There is a checklist called {quoted(name)}, and yours would hide it.", f"Call it my-{name}."
        )
    draft = _asked(name)
    if not draft.steps:
        raise ChecklistError("There are no steps, so nothing was written.", "Give at least one step.")
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as cause:
        raise ChecklistError(f"{shown(folder)} cannot be made: {cause.strerror}.", "Choose another folder.") from cause
    # Plain files, as any editor writes them: a checklist is there to be handed on.
    try:
        with path.open("x", encoding="utf-8", newline="\n") as stream:
            stream.write(written(draft))
        (folder / FILE_NAME).write_text(f"{json.dumps(checklist_schema(), indent=2)}\n", encoding="utf-8")
    except OSError as cause:
        raise ChecklistError(f"{shown(path)} cannot be written: {cause.strerror}.", "Choose another folder.") from cause
    say_line(str(path))
    findings = findings_of(str(path), what_is_known())
    for found in findings:
        tell(f"line {found.line}: {found.severity} {found.rule}: {found.what} {found.mend}")
    called = name if arguments.folder is None else path
    count = len(draft.steps)
    tell(f"{count} {'step' if count == 1 else 'steps'}. Next: checkoff lint {called}; checkoff rehearse {called}")
    return 0


def _asked(name: str) -> Draft:
    """Ask for everything; where input ends, what was not asked takes what stands in brackets."""
    title = _ask("Title", name.replace("-", " ").capitalize())
    draft = Draft(title, _ask("Purpose, in one sentence", f"Practise: {title[:1].lower()}{title[1:]}."))
    draft.order = _choose("Order to practise it with (- for none)", [*available_orders(), "-"], "oh-101")
    draft.order = "" if draft.order == "-" else draft.order
    draft.equipment = _several("Equipment, with commas between")
    draft.sources = _several("Published sources, with semicolons between", NO_SOURCE, ";")
    part, parts = "Steps", known_parts()
    tell(f"Parts that can be included: {', '.join(parts) or 'none'}")
    while True:
        tell("")
        say = _ask(f"Step {len(draft.steps) + 1}: the line that is read aloud, or a part (empty: no more steps)", "")
        if not say:
            return draft
        if say in parts:
            draft.steps.append(DraftStep(say, "", include=True))
            continue
        part = _ask("Heading that it belongs under", part)
        draft.steps.append(_step(say, part))


def _step(say: str, part: str) -> DraftStep:
    for kind, about in _KINDS.items():
        tell(f"    {kind:<12} {about}")
    kind = _choose("What is expected", list(_KINDS), _likely(say))
    step = DraftStep(say, part, _expect(kind))
    step.critical = _choose("Critical: may not be left out", ["yes", "no"], "no") == "yes"
    if step.critical:
        step.texts["why"] = _needed("Why")
        step.sources = _several("Published source, with semicolons between", NO_SOURCE, ";")
        step.texts["hint"] = _needed("Cue for a learner who asks for help")
    if kind in _ANSWERED:
        step.texts["if_wrong"] = _needed("What to do when the answer is not right")
    return step


def _likely(say: str) -> str:
    """The kind that a line most likely asks for."""
    if re.search(r"\bhow (?:many|much)\b", say, re.IGNORECASE):
        return "number"
    if re.search(r"\b\d+ (?:seconds|minutes)\b", say):
        return "wait"
    return "question" if "?" in say else "done"


def _expect(kind: str) -> dict[str, object]:
    match kind:
        case "done":
            return {}
        case "question":
            return {"kind": kind, "right": _choose("Right answer", ["yes", "no"], "yes")}
        case "number":
            numbers = {name: unit for name, unit in KEY_UNITS.items() if unit is not None}
            key = _choose("It must agree with", list(numbers), "primary.rate")
            return {"kind": kind, "unit": numbers[key], "key": key}
        case "name":
            names = [name for name, unit in KEY_UNITS.items() if unit is None]
            return {"kind": kind, "key": _choose("It must agree with", names, "primary.fluid")}
        case "wait":
            return {"kind": kind, "seconds": int(_matching("Seconds", r"[1-9]\d{0,3}", "30", "a whole number"))}
        case "choice":
            choices = _several("The answers, with commas between", "clear, cloudy")
            right = _choose("The right one (- where each is right)", [*choices, "-"], choices[0])
            expect: dict[str, object] = {"kind": kind, "choices": list(choices)}
            return expect if right == "-" else expect | {"right": right}
    return {"kind": kind}


# Asking. Prompts go to standard error, so that standard output holds the result alone.


def _ask(question: str, default: str) -> str:
    return _answer(question, default)[0]


def _needed(question: str) -> str:
    return _matching(question, r".+", "", "a sentence")


def _several(question: str, default: str = "", between: str = ",") -> tuple[str, ...]:
    return tuple(filter(None, (part.strip() for part in _ask(question, default).split(between))))


def _choose(question: str, known: list[str], default: str) -> str:
    wanted = "|".join(map(re.escape, known))
    return _matching(
        f"{question} ({', '.join(known)})", wanted, default if default in known else known[0], "one of these"
    )


def _matching(question: str, pattern: str, default: str, what: str) -> str:
    """Ask until the answer is of the form; a file that answers wrongly ends it, since the rest would be shifted."""
    while True:
        given, ended = _answer(question, default)
        if re.fullmatch(pattern, given):
            return given
        if ended:
            raise UsageError(f"The answers end before the question: {question}.", "Give an answer to each question.")
        if not sys.stdin.isatty():
            raise UsageError(f"{quoted(given)} does not answer: {question}.", f"Give {what}.")
        tell(f"Give {what}.")


def _answer(question: str, default: str) -> tuple[str, bool]:
    """The answer, and whether input has ended."""
    tell(f"{question} [{default}]" if default else question)
    line = sys.stdin.readline(2000)
    return " ".join(line.split()) or default, not line
