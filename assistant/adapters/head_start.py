"""What the voice needs and takes a while, begun before the rest of the program is imported."""

import contextlib
import threading
from collections.abc import Iterator

from assistant.adapters.quiet_console import keep_native_noise_out
from assistant.adapters.sound_devices import DEVICES
from assistant.adapters.speaking_process import OWN_COMMAND, SpeakingProcesses
from assistant.errors import DeviceError


@contextlib.contextmanager
def head_start() -> Iterator[SpeakingProcesses]:
    """Start the synthesiser, and look for sound devices, beside whatever follows.

    Yields:
        The synthesiser's processes, for whoever speaks; ended where nobody has taken them, or left them.
    """
    keep_native_noise_out()  # here, for another thread may be writing when that one moves the error output
    threading.Thread(target=_find_devices, name="sound devices", daemon=True).start()
    processes = SpeakingProcesses(OWN_COMMAND)
    try:
        yield processes
    finally:
        processes.close()


def _find_devices() -> None:
    with contextlib.suppress(DeviceError):  # told when one is wanted
        DEVICES.all()
