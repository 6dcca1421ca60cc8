"""Another model beside the one that leads: it is loaded when it is first needed."""

import threading
from collections.abc import Callable
from typing import TYPE_CHECKING

from assistant.errors import ModelError
from assistant.ports import Utterance
from assistant.spoken.expect import Expect

if TYPE_CHECKING:
    from assistant.adapters.recognisers.features import Floats
    from assistant.adapters.recognisers.whisper import WhisperRecogniser


class Witness:
    """A model that hears free words, and what the leading one is not sure of.

    Args:
        model_digest: of the model that will be loaded.
        load: loads it; what fails once is not tried again for what only needs to be borne out.

    Attributes:
        fails: it was to bear something out, and could not be loaded.
    """

    def __init__(self, model_digest: str, load: "Callable[[], WhisperRecogniser]") -> None:
        self.model_digest = model_digest
        self._load = load
        self._loading = threading.Lock()
        self._loaded: WhisperRecogniser | None = None
        self.fails = False

    def begin(self, expect: Expect) -> Utterance:
        """Start an utterance of its own.

        Raises:
            ModelError: the model cannot be loaded.
        """
        return self._model().begin(expect)

    def takes_for(self, samples: "Floats", expect: Expect, is_given_up: Callable[[], bool]) -> str:
        """What it takes the sound for; "" for nothing, and where it cannot be loaded.

        Args:
            samples: mono at 16 kHz, -1 to 1.
            expect: digits, or choices.
            is_given_up: asked now and then; once it is so, the outcome is "", soon.
        """
        if self.fails:
            return ""
        try:
            model = self._model()
        except ModelError:
            # The leading model hears without it, as it does where the other one is not installed.
            self.fails = True
            return ""
        return model.takes_for(samples, expect, is_given_up)

    def close(self) -> None:
        """Free the model, where it has been loaded."""
        if self._loaded is not None:
            self._loaded.close()

    def _model(self) -> "WhisperRecogniser":
        with self._loading:
            if self._loaded is None:
                self._loaded = self._load()
            return self._loaded
