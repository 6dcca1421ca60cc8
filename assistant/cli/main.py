"""The program ``checkoff``: picks the verb, turns errors into one sentence and an exit code."""

import argparse
import contextlib
import errno
import importlib
import io
import os
import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

from assistant import __version__
from assistant.cli.printing import tell, why_not
from assistant.cli.verbs import VERBS
from assistant.errors import AssistantError, UsageError

if TYPE_CHECKING:
    from assistant.adapters.speaking_process import SpeakingProcesses

DONE, FAILED, WRONG_USAGE = 0, 1, 2
"""Exit codes that every verb shares; an attempt has two more (see `assistant.cli.outcome`)."""

SPEAKING = frozenset({"run", "resume"})
"""Verbs that speak unless they are told not to."""
SILENT = frozenset({"--typed", "--plain", "--help", "-h"})

_FULL = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG, errno.EIO)
"""What a disk says that takes no more."""

_MODULES = {"list": "catalogue", "sign-off": "sign_off", "erase-sound": "erase_sound", "print": "print_form"}
"""Modules that are not called like their verb."""

_ABOUT = """\
Offline, hands-free checklist assistant for nursing skills labs.
Training only: it controls no pump and treats no patient. Local policy and the maker's
instructions come first."""

_EXAMPLES = """\
examples:
  checkoff                          guide me through a primary and a secondary line, aloud
  checkoff demo                     show the whole job with a simulated learner
  checkoff run primary-line --typed --mode check-off --learner A17
  checkoff verify RECORD

Exit codes: 0 done (an attempt: completed and passed), 1 failed, 2 wrong usage,
3 completed but not passed, 4 stopped before the end."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one verb; return the exit code."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    # No other package's plugin may have a say in how papers are read; looking for them takes time at every start.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):  # a console without some letter gets it written out
            stream.reconfigure(errors="backslashreplace")
    try:
        with _voice_ahead(given) as voice_ahead:
            parsed = _parser(given).parse_args(given or ["run"])
            parsed.voice_ahead = voice_ahead
            code = int(parsed.run(parsed))
            sys.stdout.flush()
            return code
    except UsageError as error:
        tell(str(error))
        return WRONG_USAGE
    except AssistantError as error:
        tell(str(error))
        return FAILED
    except BrokenPipeError:
        _give_up_output()  # whoever read it has gone
        return FAILED
    except OSError as cause:
        if cause.errno not in _FULL:
            raise
        tell(f"Standard output cannot be written: {why_not(cause)}. What was recorded is safe.")
        _give_up_output()
        return FAILED
    except KeyboardInterrupt:
        tell("Interrupted.")
        return FAILED


def _give_up_output() -> None:
    """Let the interpreter find nothing to complain about at exit."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _voice_ahead(given: list[str]) -> contextlib.AbstractContextManager["SpeakingProcesses | None"]:
    """The voice's processes, started at once where the verb will speak: that goes on beside the imports."""
    if _verb(given) not in SPEAKING or SILENT & set(given):
        return contextlib.nullcontext()
    from assistant.adapters.head_start import head_start

    return head_start()


def _verb(given: list[str]) -> str | None:
    return next((word for word in given or ["run"] if word in VERBS), None)


def _parser(given: list[str]) -> argparse.ArgumentParser:
    """The parser; no verb is imported but the one that is asked for, so that a start is quick."""
    parser = argparse.ArgumentParser(
        prog="checkoff",
        description=_ABOUT,
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"checkoff {__version__}")
    subparsers = parser.add_subparsers(title="verbs", metavar="VERB", required=True)
    wanted = _verb(given)
    for verb, summary in VERBS.items():
        if verb == wanted:
            importlib.import_module(f"assistant.cli.{_MODULES.get(verb, verb)}").add_parser(subparsers)
        else:
            subparsers.add_parser(verb, help=summary)
    return parser
