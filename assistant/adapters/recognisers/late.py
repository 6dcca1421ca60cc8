"""A recogniser that is loaded after the assistant has begun to speak: loading takes longer than all the rest."""

from collections.abc import Callable

from assistant.errors import ModelError
from assistant.ports import Recogniser, Utterance
from assistant.spoken.expect import Expect


class LateRecogniser:
    """Loads a recogniser when it is first asked to listen; see `assistant.ports.Recogniser`.

    A record names the recogniser and its digest before anything is heard: only what bears both is taken. What
    failed once is not tried again, for its files would be read anew with every try.

    Args:
        name, digest: of the recogniser that will listen.
        load: loads it, in the thread that calls `begin`.
    """

    def __init__(self, name: str, digest: str, load: Callable[[], Recogniser]) -> None:
        self.name = name
        self.model_digest = digest
        self._load = load
        self._loaded: Recogniser | None = None
        self._failure: ModelError | None = None

    def begin(self, expect: Expect) -> Utterance:
        """Start an utterance, after loading where that has not been done.

        Raises:
            ModelError: the recogniser cannot be used, or is not the one that was named.
        """
        if self._failure is not None:
            raise self._failure
        if self._loaded is None:
            try:
                self._loaded = self._named(self._load())
            except ModelError as failure:
                self._failure = failure
                raise
        return self._loaded.begin(expect)

    def close(self) -> None:
        """Free the model, where it has been loaded."""
        if self._loaded is not None:
            self._loaded.close()

    def _named(self, loaded: Recogniser) -> Recogniser:
        if (loaded.name, loaded.model_digest) != (self.name, self.model_digest):
            loaded.close()
            raise ModelError(
                f"The recogniser {self.name} has changed.",
                "Start a new attempt, so that its record names the new recogniser.",
            )
        return loaded
