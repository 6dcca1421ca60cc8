"""What the voice needs and takes a while, begun before the rest of the program is imported."""

import contextlib
import threading
from collections.abc import Iterator
from dataclasses import dataclass

from assistant.adapters.lasting_process import LastingProcess
from assistant.adapters.quiet_console import keep_native_noise_out
from assistant.adapters.sound_devices import DEVICES
from assistant.adapters.speaking_process import NEURAL_COMMAND, OWN_COMMAND, SpeakingProcesses
from assistant.errors import DeviceError


@dataclass(frozen=True)
class VoiceAhead:
    """Processes that speak, started already.

    Attributes:
        neural: with the neural voice, as far as it is installed.
        system: with the system's own.
    """

    neural: LastingProcess
    system: SpeakingProcesses

    def close(self) -> None:
        """End them all."""
        self.neural.close()
        self.system.close()


@contextlib.contextmanager
def head_start() -> Iterator[VoiceAhead]:
    """Start the voices, and look for sound devices, beside whatever follows.

    Yields:
        The voices' processes, for whoever speaks; ended where nobody has taken them, or left them.
    """
    keep_native_noise_out()  # here, for another thread may be writing when that one moves the error output
    threading.Thread(target=_find_devices, name="sound devices", daemon=True).start()
    ahead = VoiceAhead(LastingProcess(NEURAL_COMMAND), SpeakingProcesses(OWN_COMMAND))
    try:
        yield ahead
    finally:
        ahead.close()


def _find_devices() -> None:
    with contextlib.suppress(DeviceError):  # told when one is wanted
        DEVICES.all()
