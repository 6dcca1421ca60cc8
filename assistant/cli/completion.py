"""``checkoff completion``: a script with which a shell completes verbs, options and names."""

import argparse

from assistant.checklist.load import available
from assistant.cli.printing import say_line
from assistant.cli.verbs import Subparsers, add_verb
from assistant.orders.load import available_orders

_EXAMPLES = """\
  checkoff completion bash > ~/.checkoff-completion
  checkoff completion zsh > ~/.zfunc/_checkoff

For bash, add the line ". ~/.checkoff-completion" to ~/.bashrc; for zsh, the folder has to be in
fpath. Names of checklists and orders are those of this machine when the script is written; write
it anew when yours have changed."""

SHELLS = ("bash", "zsh", "tcsh")
_FILES = frozenset({"FILE", "RECORD", "FOLDER", "record", "records"})
"""Names of arguments that are paths."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "completion",
        "Prints the script for your shell; save it where the shell looks for such scripts, and open a new one.",
        _EXAMPLES,
    )
    parser.add_argument("shell", choices=SHELLS, help="which shell")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    # Only here: no other verb needs them.
    import shtab

    from assistant.cli.parsers import whole_parser

    parser = whole_parser()
    names = {"checklist": sorted(available()), "order": sorted(available_orders())}
    for action in _actions(parser):
        if action.dest in names and action.choices is None:
            action.choices = names[action.dest]
        elif {action.metavar, action.dest} & _FILES:
            action.complete = shtab.FILE  # type: ignore[attr-defined] # where the library looks for it
    say_line(shtab.complete(parser, arguments.shell))
    return 0


def _actions(parser: argparse.ArgumentParser) -> list[argparse.Action]:
    """Every option and argument, those of the verbs too."""
    found: list[argparse.Action] = []
    for action in parser._actions:  # argparse has no public list of them
        found.append(action)
        if isinstance(action, argparse._SubParsersAction):
            found += [inner for verb in action.choices.values() for inner in _actions(verb)]
    return found
