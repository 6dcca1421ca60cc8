"""The program's parser: its verbs, each imported only when it is asked for, so that a start is quick."""

import argparse
import difflib
import importlib

from assistant import __version__
from assistant.cli.verbs import VERBS
from assistant.errors import UsageError
from assistant.text import quoted

_MODULES = {"list": "catalogue", "sign-off": "sign_off", "erase-sound": "erase_sound", "print": "print_form"}
"""Modules that are not called like their verb."""

_ABOUT = """\
Offline, hands-free checklist assistant for nursing skills labs.
Training only: it controls no pump and treats no patient. Local policy and the
maker's instructions come first."""

_EXAMPLES = """\
examples:
  checkoff                          a primary and a secondary line, aloud
  checkoff demo                     show the whole job with a simulated learner
  checkoff run primary-line --typed --mode check-off --learner A17
  checkoff verify RECORD

Exit codes: 0 done (an attempt: completed and passed), 1 failed, 2 wrong usage,
3 completed but not passed, 4 stopped before the end, 5 (verify) unproven."""


def named_verb(given: list[str]) -> str | None:
    """The verb among the words of a call; the first where there is no word at all."""
    return next((word for word in given or ["run"] if word in VERBS), None)


def refuse_unknown_verb(given: list[str]) -> None:
    """Name the nearest verb where a call begins with a word that is none.

    Raises:
        UsageError: it does.
    """
    if not given or given[0].startswith("-") or given[0] in VERBS:
        return
    near = difflib.get_close_matches(given[0].lower(), VERBS, n=1)
    hint = f"Did you mean {near[0]}? " if near else ""
    raise UsageError(f"There is no verb {quoted(given[0])}.", f"{hint}checkoff --help lists them all.")


def parser_for(given: list[str]) -> argparse.ArgumentParser:
    """The parser that a call needs: of all verbs, but only the one that is asked for has its options."""
    wanted = named_verb(given)
    return _parser({wanted} if wanted else set())


def whole_parser() -> argparse.ArgumentParser:
    """The parser with the options of every verb."""
    return _parser(set(VERBS))


def _parser(wanted: set[str]) -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="checkoff",
        description=_ABOUT,
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"checkoff {__version__}")
    subparsers = parser.add_subparsers(title="verbs", metavar="VERB", required=True)
    for verb, summary in VERBS.items():
        if verb in wanted:
            importlib.import_module(f"assistant.cli.{_MODULES.get(verb, verb)}").add_parser(subparsers)
        else:
            subparsers.add_parser(verb, help=summary)
    return parser
