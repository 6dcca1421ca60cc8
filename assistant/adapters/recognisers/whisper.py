"""A Whisper model run by CTranslate2, held to the sentences that a step can understand.

CTranslate2 turns sound into what the decoder attends to, and writes freely. The search for the step's own
sentences is ours (`search`), for no library can be told what may follow what. Holding a decoder to sentences
alone would turn any speech into an answer, so `judgement` weighs the sentences by meaning and against what the
same model writes without limits.
"""

import threading
import time
from collections.abc import Callable
from dataclasses import replace
from functools import cache, lru_cache

import ctranslate2
import numpy as np
from threadpoolctl import ThreadpoolController

from assistant.adapters.answer_reader import answer_reader
from assistant.adapters.models import joint_digest
from assistant.adapters.recognisers import bursts, hesitation, pauses, voicing
from assistant.adapters.recognisers.borne_out import borne_out, likeliest_choice, to_bear_out
from assistant.adapters.recognisers.decoder import Listening
from assistant.adapters.recognisers.evidence import Bounded, Evidence, Hypothesis
from assistant.adapters.recognisers.features import Floats
from assistant.adapters.recognisers.forms import Form, forms
from assistant.adapters.recognisers.front import prepared, samples_of
from assistant.adapters.recognisers.judgement import (
    NOTHING,
    Judgement,
    is_faint_command,
    judge,
    without_what_may_lack_words,
)
from assistant.adapters.recognisers.manner import AS_IT_COMES, Manner
from assistant.adapters.recognisers.own_words import in_own_words
from assistant.adapters.recognisers.positives import is_positive, rivals
from assistant.adapters.recognisers.ranking import plain
from assistant.adapters.recognisers.search import Written, log_probabilities, search
from assistant.adapters.recognisers.sentences import START, Sentences
from assistant.adapters.recognisers.whisper_model import WhisperModel
from assistant.adapters.recognisers.witness import Witness
from assistant.adapters.shipped import Copies
from assistant.ports import SAMPLE_RATE_HZ, Hearing
from assistant.spoken import Language
from assistant.spoken.expect import ConfirmExpected, Expect, NameExpected, NumberExpected, TextExpected

LONGEST_S = 30.0
"""Whisper's window; no spoken answer is longer."""
MIDDLE_WINDOW_S = 12.0
"""Most answers are far shorter than the longest picture, and the encoder's time grows with it."""
_ROOM_S = {6.0: 0.2, MIDDLE_WINDOW_S: 1.0}
"""Quiet that has to be left at the end of a picture, by its length, seconds."""
_ROOM_OF_SLOW_S = 0.8
"""The same where pauses are made shorter: with more room more is heard (271 of 287 slow strings, 264 with 0.2)."""
_MOST_FREE_TOKENS = 160
"""Of free words."""
_MOST_COMPARED_TOKENS = 48
"""Of free words that an answer is only compared with; what is longer is no answer, and part of it is enough."""
_FREE_WAYS = 5
"""Ways to write a yes freely that are compared: among them stands what it may have been instead."""
_FAR_BEHIND = 10.0
"""How far (logarithm) behind what is written freely its rival is no rival any more."""
_HISS = 0.02
"""Root mean square, of full scale, of the noise that an answer is compared with."""
_MOST_KEPT = 2 * 121 * SAMPLE_RATE_HZ
"""Bytes of sound that are kept: two minutes; most of that can be quiet."""


class WhisperRecogniser:
    """A Whisper model; see `assistant.ports.Recogniser`.

    Args:
        name: short name for records and `--ear`.
        files: the model's, already checked.
        language: which it hears.
        manner: how it is used.
        witness: another model, asked about what this one is not sure of.

    Raises:
        ModelError: the files are no English Whisper model for CTranslate2.
    """

    def __init__(
        self,
        name: str,
        files: Copies,
        language: Language,
        manner: Manner = AS_IT_COMES,
        witness: Witness | None = None,
    ) -> None:
        self.name = name
        self.manner = manner
        self.model_digest = joint_digest(dict(files.digests))
        self._language = language
        self._witness = witness
        self._weighed = language.weighed_by(answer_reader())
        self._turn = threading.Lock()
        self._pools = ThreadpoolController()
        self._model = WhisperModel(name, files)
        self._decoder = self._model.decoder
        self._sentences = Sentences(self._model.tokeniser, self._model.end, language, small=manner.small)
        self._noise = cache(self._find_noise)
        self._of_noise = lru_cache(maxsize=1_000)(self._find_of_noise)

    def begin(self, expect: Expect) -> "WhisperUtterance":
        """Start an utterance; how its sentences begin is worked out now, not after the sound."""
        if not isinstance(expect, TextExpected):
            for form in forms(expect, figures=self.manner.figures):
                self._sentences.allowed(START, expect, form)
        return WhisperUtterance(self, expect)

    @property
    def is_unaided(self) -> bool:
        """Whether the other model has been asked for once, and cannot be loaded."""
        return self._witness is not None and self._witness.fails

    def close(self) -> None:
        """Free the model."""
        with self._turn:
            self._model.close()

    def recognise(self, samples: Floats, expect: Expect, is_given_up: Callable[[], bool] = lambda: False) -> Judgement:
        """The best wording, or an empty one, and all wordings with their confidence.

        Args:
            samples: mono at 16 kHz, -1 to 1.
            expect: what the step expects.
            is_given_up: asked now and then; once it is so, the outcome is an empty wording, soon.
        """
        with self._turn:
            evidence = self.evidence(samples, expect, is_given_up)
        return NOTHING if evidence is None else self.judged(evidence, samples, expect, is_given_up)

    def takes_for(self, samples: Floats, expect: Expect, is_given_up: Callable[[], bool] = lambda: False) -> str:
        """What it takes digits, or a choice, for, to bear out what another model heard; "" for nothing.

        Args:
            samples: mono at 16 kHz, -1 to 1.
            expect: digits, or choices.
            is_given_up: as in `recognise`.
        """
        with self._turn:
            if isinstance(expect, NumberExpected):
                speech = prepared(samples)
                return "" if speech is None or is_given_up() else self._model.digits(self._encoded(speech))
            evidence = self.evidence(samples, expect, is_given_up)
        return "" if evidence is None else likeliest_choice(evidence, expect, self._language)

    def judged(
        self, evidence: Evidence, samples: Floats, expect: Expect, is_given_up: Callable[[], bool] = lambda: False
    ) -> Judgement:
        """What to stand for, from what the model made of an utterance, and the witness where it is asked.

        Args:
            evidence: what the model made of it.
            samples: its sound, mono at 16 kHz, -1 to 1.
            expect: what the step expects.
            is_given_up: as in `recognise`.
        """
        limits = self.manner.limits
        judged = judge(evidence, expect, self._language, limits)
        if self.manner.own_words:
            judged = in_own_words(judged, evidence, expect, self._weighed)
        judged = without_what_may_lack_words(judged, evidence, expect, self._language)
        if self._witness is None:
            return judged
        group = to_bear_out(judged, evidence, expect, self._language, limits)
        if group is None:
            return judged
        words = self._witness.takes_for(samples, expect, is_given_up)
        return borne_out(judged, group, words, expect, self._language)

    def evidence(
        self, samples: Floats, expect: Expect, is_given_up: Callable[[], bool] = lambda: False
    ) -> Evidence | None:
        """What the model makes of the sound: freely, and held to the expectation in each form of numbers.

        None where there is nothing to listen to, more than an answer is long, or nobody wants it any more.
        """
        speech = prepared(samples)
        if speech is None:
            return None
        if len(speech) / SAMPLE_RATE_HZ > LONGEST_S and not isinstance(expect, TextExpected):
            return None
        if is_given_up():
            return None
        sound = self._encoded(self._slow_made_usual(speech) if isinstance(expect, NumberExpected) else speech)
        if is_given_up():
            return None
        ways = _FREE_WAYS if isinstance(expect, ConfirmExpected) and expect.asked is not None else 1
        most_tokens = _MOST_FREE_TOKENS if isinstance(expect, TextExpected) else _MOST_COMPARED_TOKENS
        free_later = self._model.write(sound, ways, most_tokens)
        bounded: Bounded = {}
        named: tuple[Hypothesis, ...] = ()
        rival_scores: dict[str, float] = {}
        if not isinstance(expect, TextExpected):
            # The arrays are small: a second thread would spend its time on waiting for the first.
            with self._pools.limit(limits=1, user_api="blas"):
                listening = self._decoder.listen(np.asarray(sound)[0])
                ways_of_numbers = forms(expect, figures=self.manner.figures)
                bounded = self._bounded(listening, self._model.prompt, expect, ways_of_numbers, is_given_up)
                named = self._names(listening, expect, is_given_up) if isinstance(expect, NameExpected) else ()
        if is_given_up():
            return None
        (likeliest, *others), written, no_speech = free_later.result()
        if isinstance(expect, NumberExpected):
            thinking = hesitation.leading(written, self._model.text, self._language)
            if thinking:
                likeliest, bounded = self._behind(thinking, listening, likeliest, bounded, expect, is_given_up)
        if ways > 1 and self.manner.limits.free_at_once is not None:
            rival_scores = self._rivals(listening, likeliest, expect)
        return Evidence(
            free=likeliest,
            free_tokens=likeliest.tokens,
            others=tuple(others),
            no_speech=no_speech,
            bounded=bounded,
            named=named,
            of_noise={
                plain(found[0].text, self._language): self._of_noise(found[0].text)
                for found in bounded.values()
                if found and is_faint_command(found[0], expect, self._language, self.manner.limits)
            },
            # A number in figures is said in more words than it is written in.
            bursts=0 if self.manner.figures else bursts.count(speech),
            voiced=voicing.strength(speech) if self.manner.limits.voiced else 1.0,
            rivals=rival_scores,
            is_whole=not self.manner.loses_words or _fits(speech, self.manner.window_s),
        )

    def _behind(
        self,
        thinking: tuple[int, ...],
        listening: Listening,
        free: Hypothesis,
        whole: Bounded,
        expect: NumberExpected,
        is_given_up: Callable[[], bool],
    ) -> tuple[Hypothesis, Bounded]:
        """What is written freely, and the sentences of the step, behind a sound of thinking."""
        prompt = [*self._model.prompt, *thinking]
        with self._pools.limit(limits=1, user_api="blas"):
            (sound,) = log_probabilities(listening, self._model.prompt, [thinking])
            behind = self._bounded(listening, prompt, expect, tuple(whole), is_given_up)
        rest = Hypothesis(
            free.text.removeprefix(self._model.text(thinking)), free.score - sound, free.tokens - len(thinking)
        )
        return rest, hesitation.with_both(behind, whole, sound)

    def _bounded(
        self,
        listening: Listening,
        prompt: list[int],
        expect: Expect,
        ways: tuple[Form, ...],
        is_given_up: Callable[[], bool],
    ) -> Bounded:
        """The likeliest sentences of the step behind a prompt, by form of numbers."""
        found = search(listening, prompt, self._sentences, expect, ways, is_given_up)
        return {form: tuple(self._hypothesis(one) for one in sentences) for form, sentences in found.items()}

    def _rivals(self, listening: Listening, free: Hypothesis, expect: Expect) -> dict[str, float]:
        """How likely it is that what is written freely, where it closes a step, was asked or denied instead."""
        words = plain(free.text, self._language)
        if not is_positive(self._language.interpret(words, expect, heard=True), expect):
            return {}
        others = rivals(words, expect, self._language)
        if not others:
            return {}
        with self._pools.limit(limits=1, user_api="blas"):
            written = [self._model.tokens(f" {other}") for other in others]
            scores = log_probabilities(listening, self._model.prompt, written, free.score - _FAR_BEHIND)
        return dict(zip(others, scores, strict=True))

    def _names(
        self, listening: Listening, expect: NameExpected, is_given_up: Callable[[], bool]
    ) -> tuple[Hypothesis, ...]:
        """Every name of the step with its probability; few are given up early, for all are unlikely words."""
        alone = replace(expect, alone=True)
        found = search(
            listening, self._model.prompt, self._sentences, alone, (Form.WORDS,), is_given_up, beam=40, hopeless=40.0
        )
        return tuple(self._hypothesis(one) for one in found[Form.WORDS])

    def _hypothesis(self, one: Written) -> Hypothesis:
        return Hypothesis(self._model.text(one.tokens), one.score, len(one.tokens) + 1, one.ending)

    def _find_of_noise(self, text: str) -> float:
        """Logarithm of the probability that the model writes this where there is nothing but noise."""
        with self._pools.limit(limits=1, user_api="blas"):
            return log_probabilities(self._noise(), self._model.prompt, [self._model.tokens(text)])[0]

    def _find_noise(self) -> Listening:
        """A second of hiss, listened to once; of it words are likelier than of silence."""
        hiss = np.random.default_rng(0).normal(scale=_HISS, size=SAMPLE_RATE_HZ).astype(np.float32)
        return self._decoder.listen(np.asarray(self._model.encode(hiss, self.manner.window_s))[0])

    def _slow_made_usual(self, speech: Floats) -> Floats:
        """A number that was said slowly, as long as the picture that the model is used to.

        Of nothing else: a soft "not" between two pauses would make a yes of a no.
        """
        window_s = self.manner.window_s
        shorter = pauses.shortened(speech, window_s - _ROOM_OF_SLOW_S)
        return shorter if shorter is not speech else pauses.shortened(speech, window_s - _ROOM_S[window_s])

    def _encoded(self, speech: Floats) -> ctranslate2.StorageView:
        """What the decoder attends to, from the shortest picture that has room for the sound."""
        lengths = (self.manner.window_s, MIDDLE_WINDOW_S)
        return self._model.encode(speech, next((one for one in lengths if _fits(speech, one)), LONGEST_S))


def _fits(speech: Floats, window_s: float) -> bool:
    """Whether a picture of that length has room for the sound."""
    return len(speech) / SAMPLE_RATE_HZ <= window_s - _ROOM_S[window_s]


class WhisperUtterance:
    """One utterance; Whisper hears it as a whole, so there are no partial words."""

    def __init__(self, recogniser: WhisperRecogniser, expect: Expect) -> None:
        self._recogniser = recogniser
        self._expect = expect
        self._sound = bytearray()
        self._is_cut = False
        self._is_given_up = threading.Event()

    def feed(self, block: bytes) -> str | None:
        """Keep the block; beyond what is kept, only that there was more."""
        room = max(0, _MOST_KEPT - len(self._sound))
        self._sound += block[:room]
        self._is_cut = self._is_cut or len(block) > room
        return None

    def finish(self) -> Hearing:
        """Recognise what was fed."""
        began = time.perf_counter()
        samples = samples_of(self._sound)
        # What is left of a number that was cut may be another number.
        verdict = (
            NOTHING if self._is_cut else self._recogniser.recognise(samples, self._expect, self._is_given_up.is_set)
        )
        return Hearing(
            words=verdict.words,
            alternatives=verdict.alternatives,
            audio_s=len(samples) / SAMPLE_RATE_HZ,
            compute_s=time.perf_counter() - began,
            doubtful=verdict.doubtful,
            told_apart=verdict.told_apart,
            borne_out=verdict.borne_out,
            unaided=self._recogniser.is_unaided,
        )

    def give_up(self) -> None:
        """See `assistant.ports.Utterance`: the search ends at its next token."""
        self._is_given_up.set()
