"""A Whisper model run by CTranslate2: what it makes of sound, and what it writes of that without a step's sentences."""

import hashlib
import logging
from functools import cache, partial
from pathlib import Path
from weakref import WeakValueDictionary

import ctranslate2
import tokenizers

from assistant.adapters.recognisers.decoder import Decoder
from assistant.adapters.recognisers.evidence import Hypothesis
from assistant.adapters.recognisers.features import Floats, log_mel
from assistant.adapters.recognisers.weights import has_wide, write_in_eight_bits
from assistant.adapters.shipped import Copies
from assistant.errors import ModelError

THREADS = 2
_WEIGHTS, _TABLE = "model.bin", "tokenizer.json"
_TOKENISERS: WeakValueDictionary[bytes, tokenizers.Tokenizer] = WeakValueDictionary()
_SPECIAL = ("<|startoftranscript|>", "<|notimestamps|>", "<|endoftext|>")
_DIGITS_WAYS = 5
"""Ways to write digits that are followed side by side."""
_MOST_DIGITS_TOKENS = 48
_TIMES = 1_501
"""Tokens of moments, from 0 to 30 s by 0.02 s; they follow all others, and no tokeniser's table has them."""


class FreeWriting:
    """What the library writes in a thread of its own, while the search goes on.

    Args:
        model: wrote it.
        later: the library's promise.
    """

    def __init__(self, model: "WhisperModel", later: ctranslate2.models.WhisperGenerationResultAsync) -> None:
        self._model = model
        self._later = later

    def result(self) -> tuple[tuple[Hypothesis, ...], tuple[int, ...], float]:
        """The wordings, likeliest first, the tokens of the likeliest, and the probability that nobody speaks."""
        found = self._later.result()
        ways = tuple(
            Hypothesis(self._model.text(tokens), float(score), len(tokens) + 1)
            for tokens, score in zip(found.sequences_ids, found.scores, strict=True)
        )
        return ways, tuple(found.sequences_ids[0]), float(found.no_speech_prob)


class WhisperModel:
    """A Whisper model that hears English.

    Args:
        name: short name, for errors.
        files: the model's, already checked.

    Raises:
        ModelError: the files are no English Whisper model for CTranslate2.
    """

    def __init__(self, name: str, files: Copies) -> None:
        # Its own messages go to standard error, which belongs to the learner's screen.
        ctranslate2.set_log_level(logging.CRITICAL)
        try:
            self._tokeniser = _tokeniser(files.read(_TABLE))
            self.decoder, self._model = _loaded(files)
        except Exception as cause:
            raise ModelError(
                f"The recogniser {name} cannot be loaded: its files are no Whisper model for CTranslate2.",
                "Check it with: checkoff models check. A model in another form has to be converted with CTranslate2 4.",
            ) from cause
        special = [self._tokeniser.token_to_id(mark) for mark in _SPECIAL]
        known = [token for token in special if token is not None]
        if self._model.is_multilingual or len(known) < len(special):
            raise ModelError(
                f"The recogniser {name} is not an English-only Whisper model.",
                "Take a model whose name ends in .en.",
            )
        *self.prompt, self.end = known
        self._no_digits = cache(self._find_no_digits)

    @property
    def tokeniser(self) -> tokenizers.Tokenizer:
        """What makes tokens of text, without the one that ends it."""
        return self._tokeniser

    def tokens(self, text: str) -> list[int]:
        """The tokens of a text, and the one that ends it."""
        return [*self._tokeniser.encode(text, add_special_tokens=False).ids, self.end]

    def text(self, tokens: list[int] | tuple[int, ...]) -> str:
        """What the tokens write."""
        return str(self._tokeniser.decode(list(tokens)))

    def encode(self, speech: Floats, window_s: float) -> ctranslate2.StorageView:
        """What the decoder attends to, a row for each 20 ms.

        Args:
            speech: mono at 16 kHz, -1 to 1.
            window_s: length of the picture, seconds; the time that this takes grows with it.
        """
        return self._model.encode(ctranslate2.StorageView.from_array(log_mel(speech, window_s)[None]))

    def write(self, sound: ctranslate2.StorageView, ways: int, most_tokens: int) -> FreeWriting:
        """Begin to write without limits, in the library's own thread.

        Args:
            sound: of `encode`.
            ways: how many wordings are wanted.
            most_tokens: what is longer is cut off.
        """
        (later,) = self._model.generate(
            sound,
            [self.prompt],
            asynchronous=True,
            beam_size=ways,
            num_hypotheses=ways,
            # A score is then the logarithm of the whole text's probability.
            length_penalty=0,
            # The library stops at half of it.
            max_length=2 * most_tokens,
            return_scores=True,
            return_no_speech_prob=True,
        )
        return FreeWriting(self, later)

    def digits(self, sound: ctranslate2.StorageView) -> str:
        """What it writes where it may write nothing but digits: "7 1 8"; something even where nobody said any.

        Args:
            sound: of `encode`.
        """
        (found,) = self._model.generate(
            sound,
            [self.prompt],
            beam_size=_DIGITS_WAYS,
            length_penalty=0,
            max_length=2 * _MOST_DIGITS_TOKENS,
            suppress_tokens=self._no_digits(),
            suppress_blank=False,
        )
        return " ".join(sign for sign in self.text(found.sequences_ids[0]) if sign.isdigit())

    def _find_no_digits(self) -> list[int]:
        """The tokens that are no digits, and do not end what is written."""
        count = self._tokeniser.get_vocab_size()
        written = map(self._tokeniser.id_to_token, range(count))
        digits = {token for token, text in enumerate(written) if (text or "").removeprefix("Ġ") in {*"0123456789,", ""}}
        return sorted(set(range(count + _TIMES)) - digits - {self.end})

    def close(self) -> None:
        """Free the memory."""
        self._model.unload_model()


def _tokeniser(table: bytes) -> tokenizers.Tokenizer:
    """The tokeniser of a table; models of one family have the same, and it takes 20 MB."""
    digest = hashlib.sha256(table).digest()
    found = _TOKENISERS.get(digest)
    if found is None:
        found = _TOKENISERS[digest] = tokenizers.Tokenizer.from_str(table.decode())
    return found


def _loaded(files: Copies) -> tuple[Decoder, ctranslate2.models.Whisper]:
    """The decoder, and the library's model, from these very files."""
    if _WEIGHTS not in files.kept:
        _make_small(files.folder / _WEIGHTS)
    with files.open(_WEIGHTS) as weights:
        decoder = Decoder(weights)
    load = partial(ctranslate2.models.Whisper, device="cpu", compute_type="int8", intra_threads=THREADS)
    return decoder, files.loaded_by(load)


def _make_small(weights: Path) -> None:
    """Put a model's weights in eight bits in their place, if they are in more, and there is room for them."""
    with weights.open("rb") as stored:
        if not has_wide(stored):
            return
    small = weights.with_suffix(".small")
    try:
        with weights.open("rb") as stored, small.open("wb") as target:
            write_in_eight_bits(stored, target)
        small.replace(weights)
    except OSError:
        small.unlink(missing_ok=True)
