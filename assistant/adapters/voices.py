"""Which voice speaks on this machine: the neural one, or the system's own."""

import importlib.util

from assistant.adapters.head_start import VoiceAhead
from assistant.adapters.lasting_process import LastingProcess
from assistant.adapters.neural_voice import NeuralVoice
from assistant.adapters.speaking_process import NEURAL_COMMAND
from assistant.adapters.synthesiser import Synthesiser
from assistant.settings import SoundSettings
from assistant.spoken import ENGLISH

PACKAGE = "hibari"
NO_NEURAL_VOICE = (
    "The neural voice is not installed, so the system's own voice speaks. Get it with: pip install hibari-tts==0.2.1."
)


def open_synthesiser(wishes: SoundSettings, ahead: VoiceAhead | None = None) -> Synthesiser:
    """The voice that the settings name; the system's goes on wherever the neural one does not.

    It is made clearer only where the ear is closed while it sounds: what tells an open ear its own voice from a
    learner's (`own_voice.py`) was measured with the voice as it comes, and lets more of the clearer one through.

    Args:
        wishes: the settings.
        ahead: processes that have been started already; they belong to the synthesiser.
    """
    system = None if ahead is None else ahead.system
    is_clearer = not (wishes.headset or wishes.echo_cancellation)
    if wishes.synthesiser == "system":
        if ahead is not None:
            ahead.neural.close()
        return Synthesiser(workers=system, is_clearer=is_clearer)
    process = LastingProcess(NEURAL_COMMAND) if ahead is None else ahead.neural
    return Synthesiser(workers=system, neural=NeuralVoice(process, ENGLISH.diction), is_clearer=is_clearer)


def advice_on_voice(wishes: SoundSettings) -> list[str]:
    """What somebody had better know who would get the neural voice, and has not installed it."""
    wants = wishes.own_voice and wishes.synthesiser == "neural"
    return [NO_NEURAL_VOICE] if wants and importlib.util.find_spec(PACKAGE) is None else []
