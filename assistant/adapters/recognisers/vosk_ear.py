"""Vosk: hears while one speaks, held to the words of a step where the model allows that."""

import json
import time
from collections.abc import Sequence

import vosk

from assistant.adapters import models
from assistant.adapters.models import StoredModel
from assistant.adapters.quiet_console import keep_native_noise_out
from assistant.adapters.recognisers.bundled import refuse_changed
from assistant.errors import ModelError
from assistant.ports import SAMPLE_RATE_HZ, Alternative, Hearing
from assistant.spoken import Language
from assistant.spoken.expect import Expect, TextExpected

UNKNOWN = "[unk]"
"""What Vosk writes for speech from outside the run-time vocabulary, where the model has that word."""
LEAST_CONFIDENCE = 0.7
"""Least confidence of the least certain word. Common practice, no source: no English model was at hand to measure."""
_BYTES_A_SAMPLE = 2


def open_vosk(model: StoredModel, language: Language) -> "VoskRecogniser":
    """Load a Vosk model by path; native messages are kept off the console.

    Raises:
        ModelError: its files cannot be read, or are not what they were when the model was added.
    """
    found = models.digests(model.path)
    expected = models.read_manifest(model.path.parent).models.get(model.name)
    if expected is not None:
        refuse_changed(model, expected, found)
    # Some warnings are written at any log level.
    keep_native_noise_out()
    vosk.SetLogLevel(-1)
    try:
        loaded = vosk.Model(str(model.path))
    except Exception as cause:
        raise ModelError(
            f"The model {model.name} cannot be loaded: {model.path} holds no Vosk model.",
            "Delete that folder and add the model again.",
        ) from cause
    # Only a graph in two parts can be held to a vocabulary at run time.
    return VoskRecogniser(
        model.name,
        models.joint_digest(found),
        loaded,
        language,
        takes_vocabulary=(model.path / "graph" / "HCLr.fst").is_file(),
    )


class VoskRecogniser:
    """A Vosk model; see `assistant.ports.Recogniser`.

    Args:
        name: short name for records and `--ear`.
        digest: SHA-256 (hex) of the files.
        model: the loaded model.
        language: which it hears.
        takes_vocabulary: the model's graph can be held to a vocabulary at run time.
    """

    def __init__(
        self, name: str, digest: str, model: vosk.Model, language: Language, *, takes_vocabulary: bool
    ) -> None:
        self.name = name
        self.model_digest = digest
        self._model: vosk.Model | None = model
        self._language = language
        self.takes_vocabulary = takes_vocabulary
        self.knows_unknown = self.knows(UNKNOWN)

    def begin(self, expect: Expect) -> "VoskUtterance":
        """Start an utterance with the vocabulary of what is expected.

        A model without `UNKNOWN` would turn any speech into words of the vocabulary, with full confidence; it
        hears freely instead.
        """
        if isinstance(expect, TextExpected) or not self.knows_unknown:
            return self.utterance()
        return self.utterance((*self._language.phrases(expect), *self._language.vocabulary(expect)))

    def utterance(self, vocabulary: Sequence[str] = ()) -> "VoskUtterance":
        """Start an utterance.

        Args:
            vocabulary: words and whole phrases that may be heard; what the model does not know is left out.
                Nothing, or a model that takes no vocabulary: free words.
        """
        if not (vocabulary and self.takes_vocabulary):
            return VoskUtterance(self._recogniser())
        known = [entry for entry in dict.fromkeys(vocabulary) if all(map(self.knows, entry.split()))]
        if self.knows_unknown:
            known.append(UNKNOWN)
        return VoskUtterance(self._recogniser(json.dumps(known, ensure_ascii=False)))

    def unknown_words(self, expect: Expect) -> tuple[str, ...]:
        """Words of what is expected that the model can never hear."""
        words = {word for phrase in self._language.phrases(expect) for word in phrase.split()}
        words.update(self._language.vocabulary(expect))
        return tuple(sorted(word for word in words if not self.knows(word)))

    def knows(self, word: str) -> bool:
        """Whether the model's dictionary holds the word."""
        return bool(self._loaded().vosk_model_find_word(word) >= 0)

    def close(self) -> None:
        """Free the model, as soon as no utterance uses it any more."""
        self._model = None

    def _loaded(self) -> vosk.Model:
        if self._model is None:
            raise ModelError(f"The recogniser {self.name} was closed.", "Open it again.")
        return self._model

    def _recogniser(self, *grammar: str) -> vosk.KaldiRecognizer:
        recogniser = vosk.KaldiRecognizer(self._loaded(), SAMPLE_RATE_HZ, *grammar)
        recogniser.SetWords(True)
        return recogniser


class VoskUtterance:
    """One utterance; may hold several of the stretches that Vosk cuts at pauses."""

    def __init__(self, recogniser: vosk.KaldiRecognizer) -> None:
        self._recogniser = recogniser
        self._heard: list[tuple[str, float]] = []
        self._bytes = 0
        self._compute_s = 0.0

    def feed(self, block: bytes) -> str | None:
        """Recognise a block; the words so far, or None where there are none yet."""
        began = time.perf_counter()
        self._bytes += len(block)
        partial = ""
        if self._recogniser.AcceptWaveform(bytes(block)):
            self._keep(self._recogniser.Result())
        else:
            partial = json.loads(self._recogniser.PartialResult()).get("partial", "")
        self._compute_s += time.perf_counter() - began
        return " ".join([*(word for word, _ in self._heard), *partial.split()]) or None

    def finish(self) -> Hearing:
        """The words; none where one of them is unknown or uncertain."""
        began = time.perf_counter()
        self._keep(self._recogniser.FinalResult())
        self._compute_s += time.perf_counter() - began
        words = " ".join(word for word, _ in self._heard)
        confidence = min((confidence for _, confidence in self._heard), default=0.0)
        stands = confidence >= LEAST_CONFIDENCE and all(word != UNKNOWN for word, _ in self._heard)
        return Hearing(
            words=words if stands else "",
            alternatives=(Alternative(words, confidence),) if words else (),
            audio_s=self._bytes / _BYTES_A_SAMPLE / SAMPLE_RATE_HZ,
            compute_s=self._compute_s,
        )

    def give_up(self) -> None:
        """Nothing to do: all but the last moment has been recognised while it was fed."""

    def _keep(self, result: str) -> None:
        for word in json.loads(result).get("result", ()):
            self._heard.append((str(word["word"]), min(1.0, float(word["conf"]))))
