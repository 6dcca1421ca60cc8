"""Keeps what native sound libraries write by themselves off the console."""

import io
import os
import sys
import threading

_once = threading.Lock()
_done = False


def keep_native_noise_out() -> None:
    """Send what native libraries write to the error output to nowhere, for the rest of the run.

    PortAudio, ALSA and JACK write to file descriptor 2 whenever they like, also from threads of their own when
    a microphone is pulled, so it is not enough to look away while a stream is opened. `sys.stderr` moves to a
    copy of the descriptor first: what the program itself says is seen as before. Where there is no descriptor
    2, or `sys.stderr` does not use it (a test's capture), that part is left as it is.
    """
    global _done
    with _once:
        if _done:
            return
        _done = True
        try:
            copy = os.dup(2)
        except OSError:
            return
        os.set_inheritable(copy, False)
        if _uses_descriptor_2(sys.stderr):
            sys.stderr.flush()
            sys.stderr = io.TextIOWrapper(
                os.fdopen(copy, "wb", buffering=0),
                encoding=sys.stderr.encoding,
                errors="backslashreplace",
                line_buffering=True,
                write_through=True,
            )
        else:
            os.close(copy)
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, 2)
        os.close(nowhere)


def _uses_descriptor_2(stream: object) -> bool:
    try:
        return stream is not None and stream.fileno() == 2  # type: ignore[attr-defined]
    except (AttributeError, OSError, ValueError):
        return False
