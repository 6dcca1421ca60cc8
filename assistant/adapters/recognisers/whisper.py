"""A Whisper model run by CTranslate2, held to the words that a step can understand.

What the decoder may write is limited to the tokens of the step's words and numbers. That alone would turn any
speech into an answer, so `assistant.adapters.recognisers.judgement` weighs the hypotheses by meaning and against
what the same model writes without limits.
"""

import logging
import math
import threading
import time
from collections.abc import Mapping
from functools import lru_cache

import ctranslate2
import numpy as np
import tokenizers

from assistant.adapters.recognisers.features import Floats, log_mel
from assistant.adapters.recognisers.judgement import Evidence, Hypothesis, judge
from assistant.adapters.recognisers.tokens import Form, TokenLimits, forms
from assistant.errors import ModelError
from assistant.ports import SAMPLE_RATE_HZ, Alternative, Hearing
from assistant.spoken.expect import Expect, TextExpected

THREADS = 2
BEAM = 5
HYPOTHESES = 5
LONGEST_S = 30.0
"""Whisper's window; no spoken answer is longer."""
SHORT_WINDOW_S = 12.0
"""Most answers are far shorter than the window, and the encoder's time grows with it."""
_MOST_TOKENS = 32
"""Tokens of an answer; a long number with its unit has some twenty."""
_FOLLOWING = 5
_LEAST_PROBABILITY = 1e-12
_MOST_FREE_TOKENS = 160
# The library stops at half of its `max_length`, the prompt apart.
_BYTES_A_SAMPLE = 2
_SILENCE = 1e-4
"""Root mean square, of full scale, under which there is no sound at all to listen to."""


class WhisperRecogniser:
    """A Whisper model; see `assistant.ports.Recogniser`.

    Args:
        name: short name for records and `--ear`.
        digest: SHA-256 (hex) of the files.
        files: the model's files by name, already checked.

    Raises:
        ModelError: the files are no English Whisper model for CTranslate2.
    """

    def __init__(self, name: str, digest: str, files: Mapping[str, bytes]) -> None:
        self.name = name
        self.model_digest = digest
        self._turn = threading.Lock()
        # Its own messages go to standard error, which belongs to the learner's screen.
        ctranslate2.set_log_level(logging.CRITICAL)
        try:
            self._tokens = tokenizers.Tokenizer.from_str(files["tokenizer.json"].decode())
            self._model = ctranslate2.models.Whisper(
                name,
                device="cpu",
                compute_type="int8",
                intra_threads=THREADS,
                files={file: content for file, content in files.items() if file != "tokenizer.json"},
            )
        except Exception as cause:
            raise ModelError(
                f"The recogniser {name} cannot be loaded: its files are no Whisper model for CTranslate2.",
                "Check it with: checkoff models check",
            ) from cause
        self._limits = TokenLimits(self._tokens)
        start = self._tokens.token_to_id("<|startoftranscript|>")
        if self._model.is_multilingual or self._limits.end is None or start is None:
            raise ModelError(
                f"The recogniser {name} is not an English-only Whisper model.",
                "Take a model whose name ends in .en.",
            )
        self._start = start
        self._prompt = [start, self._tokens.token_to_id("<|notimestamps|>")]
        self._suppressed = lru_cache(maxsize=64)(self._limits.suppressed)

    def begin(self, expect: Expect) -> "WhisperUtterance":
        """Start an utterance; the limits of this expectation are worked out now, not after the sound."""
        if not isinstance(expect, TextExpected):
            for form in forms(expect):
                self._suppressed(expect, form)
        return WhisperUtterance(self, expect)

    def close(self) -> None:
        """Free the model."""
        with self._turn:
            self._model.unload_model()

    def recognise(self, samples: Floats, expect: Expect) -> tuple[str, tuple[Alternative, ...]]:
        """The best wording, or an empty one, and all wordings with their confidence.

        Args:
            samples: mono at 16 kHz, -1 to 1.
            expect: what the step expects.
        """
        length_s = len(samples) / SAMPLE_RATE_HZ
        free_text = isinstance(expect, TextExpected)
        if length_s > LONGEST_S and not free_text:
            return "", ()
        if not len(samples) or float(np.sqrt(np.mean(np.square(samples)))) < _SILENCE:
            return "", ()
        window_s = SHORT_WINDOW_S if length_s <= SHORT_WINDOW_S - 1 else LONGEST_S
        with self._turn:
            return judge(self.evidence(samples, expect, window_s), expect)

    def evidence(self, samples: Floats, expect: Expect, window_s: float) -> Evidence:
        """What the decoder writes, held to the expectation in each form of numbers, and freely."""
        picture = ctranslate2.StorageView.from_array(log_mel(samples, window_s)[None])
        sound = self._model.encode(picture)
        free = self._model.generate(
            sound,
            [self._prompt],
            beam_size=1,
            length_penalty=0,
            max_length=2 * _MOST_FREE_TOKENS,
            return_scores=True,
            return_no_speech_prob=True,
        )[0]
        bounded: dict[Form, tuple[Hypothesis, ...]] = {}
        if not isinstance(expect, TextExpected):
            bounded = {form: self._bounded(sound, self._suppressed(expect, form)) for form in forms(expect)}
        return Evidence(
            free=Hypothesis(self._text(free.sequences_ids[0]), free.scores[0]),
            free_tokens=len(free.sequences_ids[0]) + 1,
            no_speech=free.no_speech_prob,
            bounded=bounded,
            score=lambda text: self._score(sound, text),
        )

    def _bounded(self, sound: object, suppressed: tuple[int, ...]) -> tuple[Hypothesis, ...]:
        written = self._model.generate(
            sound,
            [self._prompt],
            beam_size=BEAM,
            num_hypotheses=HYPOTHESES,
            # A hypothesis' score is then the logarithm of its probability, so that several can be added up.
            length_penalty=0,
            max_length=2 * _MOST_TOKENS,
            return_scores=True,
            suppress_tokens=list(suppressed),
        )[0]
        return tuple(
            Hypothesis(self._text(tokens), score)
            for tokens, score in zip(written.sequences_ids, written.scores, strict=True)
        )

    def _score(self, sound: object, text: str) -> float:
        """Logarithm of the probability that the model, without limits, writes exactly this text and stops."""
        tokens = self._tokens.encode(text, add_special_tokens=False).ids
        if not tokens:
            return -math.inf
        aligned = self._model.align(sound, [self._start], [tokens], 1)[0]
        written = float(np.sum(np.log(np.maximum(aligned.text_token_probs, _LEAST_PROBABILITY))))
        following = self._model.generate(
            sound,
            [[*self._prompt, *tokens]],
            beam_size=_FOLLOWING,
            num_hypotheses=_FOLLOWING,
            length_penalty=0,
            max_length=max(2 * (len(tokens) + 1), len(tokens) + 4),
            return_scores=True,
            suppress_blank=False,
            suppress_tokens=[],
        )[0]
        # What is not longer than the text has ended with it. Where that is not among the likeliest, it is at
        # most as likely as the last of them.
        ends = [
            score
            for ids, score in zip(following.sequences_ids, following.scores, strict=True)
            if len(ids) == len(tokens) or ids[-1] == self._limits.end
        ]
        end = max(ends) if ends else max(min(following.scores), math.log(_LEAST_PROBABILITY))
        return written + float(end)

    def _text(self, tokens: list[int]) -> str:
        return str(self._tokens.decode(tokens))


class WhisperUtterance:
    """One utterance; Whisper hears it as a whole, so there are no partial words."""

    def __init__(self, recogniser: WhisperRecogniser, expect: Expect) -> None:
        self._recogniser = recogniser
        self._expect = expect
        self._sound = bytearray()

    def feed(self, block: bytes) -> str | None:
        """Keep the block; what is beyond `LONGEST_S` only counts as too long."""
        room = round((LONGEST_S + 1) * SAMPLE_RATE_HZ) * _BYTES_A_SAMPLE - len(self._sound)
        self._sound += block[: max(0, room)]
        return None

    def finish(self) -> Hearing:
        """Recognise what was fed."""
        began = time.perf_counter()
        whole = len(self._sound) // _BYTES_A_SAMPLE * _BYTES_A_SAMPLE
        samples = np.frombuffer(self._sound[:whole], dtype="<i2").astype(np.float32) / np.float32(32_768)
        words, alternatives = self._recogniser.recognise(samples, self._expect)
        return Hearing(
            words=words,
            alternatives=alternatives,
            audio_s=len(samples) / SAMPLE_RATE_HZ,
            compute_s=time.perf_counter() - began,
        )
