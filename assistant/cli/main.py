"""The program ``checkoff``: picks the verb, turns errors into one sentence and an exit code."""

import contextlib
import errno
import io
import os
import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

from assistant.cli.parsers import named_verb, parser_for, refuse_unknown_verb
from assistant.cli.printing import tell, why_not
from assistant.errors import AssistantError, UsageError

if TYPE_CHECKING:
    from assistant.adapters.head_start import VoiceAhead

DONE, FAILED, WRONG_USAGE = 0, 1, 2
"""Exit codes that every verb shares; an attempt has two more (see `assistant.cli.outcome`)."""

SPEAKING = frozenset({"run", "resume"})
"""Verbs that speak unless they are told not to."""
SILENT = frozenset({"--typed", "--plain", "--help", "-h"})

_FULL = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG, errno.EIO)
"""What a disk says that takes no more."""


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
            refuse_unknown_verb(given)
            parsed = parser_for(given).parse_args(given or ["run"])
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


def _voice_ahead(given: list[str]) -> contextlib.AbstractContextManager["VoiceAhead | None"]:
    """The voice's processes, started at once where the verb will speak: that goes on beside the imports."""
    if named_verb(given) not in SPEAKING or SILENT & set(given):
        return contextlib.nullcontext()
    from assistant.adapters.head_start import head_start

    return head_start()
