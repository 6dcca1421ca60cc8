"""A listener that hears sounds, not words: words of a list are looked for in them, none likelier than another.

``hama`` (``pip install --no-deps hama==1.7.0``, Apache-2.0) carries a small recogniser that writes phonemes and knows
no words. Its sounds are read as words of a given list, in any order and number: the row of words that fits them best.
So it cannot guess a number from what numbers usually are, as those can that were trained on whole sentences. What is
not in the list it can never write.
"""

import re
from collections.abc import Iterable

import numpy as np
import numpy.typing as npt

from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken.english.varieties import american
from tests.bench.voices import Sound

WORD_COST = 1.0
"""What a further word costs, in the natural logarithm of its likelihood: long words are not read as several."""
ALIKE = {"one": ("won",), "two": ("to", "too"), "four": ("for",), "eight": ("ate",)}
"""Words that sound as a number does; the number is written wherever one of them is heard."""

_NEVER = -1e9
_OF_ANOTHER_LANGUAGE = re.compile(r"[jw][a-z\u028c]|.*\u0348|.*\u02b0")
"""Sounds that the recogniser takes as one in Korean, which it hears as well, and as two in English."""


class SoundsListener:
    """Writes down words of a list, or the sounds themselves.

    Args:
        words: the list; of those that sound the same, the first one is written.
    """

    def __init__(self, words: Iterable[str]) -> None:
        from hama import ASRModel, G2PModel

        self._model = ASRModel()
        spell = G2PModel()
        known = {sound: at for at, sound in enumerate(self._model.decoder_tokens)}
        self._silences = [known["<blank>"], known["<wb>"]]
        english = {sound: at for sound, at in known.items() if not _OF_ANOTHER_LANGUAGE.fullmatch(sound)}
        said: dict[tuple[int, ...], str] = {}
        for word in dict.fromkeys(words):
            for spelled in (word, *ALIKE.get(word, ())):
                sounds = tuple(english[sound] for sound in _parted(spell.predict(american(spelled)).ipa, english))
                if sounds:
                    said.setdefault(sounds, word)
        self._words = list(said.values())
        self._lay_out(list(said), known["<blank>"])

    def _lay_out(self, said: list[tuple[int, ...]], blank: int) -> None:
        """One state for each sound of each word, and one for what is between two of them.

        From a state the way goes on to the next one, or over what is between two sounds that differ.
        """
        tokens: list[int] = []
        may_skip: list[bool] = []
        firsts: list[int] = []
        lasts: list[int] = []
        for sounds in said:
            firsts.append(len(tokens))
            for at, sound in enumerate(sounds):
                tokens += [blank, sound] if at else [sound]
                may_skip += [False, sound != sounds[at - 1]] if at else [False]
            lasts.append(len(tokens) - 1)
        self._tokens, self._firsts, self._lasts = np.array(tokens), np.array(firsts), np.array(lasts)
        self._may_step = np.ones(len(tokens), bool)
        self._may_step[self._firsts] = False
        self._may_skip = np.array(may_skip)

    def sounds(self, sound: Sound) -> str:
        """The sounds themselves, a word's together: mono at 16 kHz, -1 to 1."""
        heard = self._model.transcribe_waveform(sound.astype(np.float32), SAMPLE_RATE_HZ)
        return str(heard.word_phoneme_text).replace(" ", "").replace("|", " ")

    def written(self, sounds: list[Sound]) -> list[str]:
        """What was said, of each sound: mono at 16 kHz, -1 to 1."""
        return [self._read(self._likelihoods(sound)) for sound in sounds]

    def _likelihoods(self, sound: Sound) -> npt.NDArray[np.float32]:
        """Of each sound the model knows, moment by moment; natural logarithms."""
        wave = sound.astype(np.float32)[None]
        given = {"waveform": wave, "waveform_lengths": np.array([wave.shape[1]], np.int64)}
        found, length = self._model.session.run(["log_probs", "out_lengths"], given)
        return np.asarray(found[0][: int(length[0])], np.float32)

    def _read(self, likely: npt.NDArray[np.float32]) -> str:
        """The words whose sounds are likeliest in a row: Viterbi's way through a loop of all words.

        `before` tells of each state, of silence and of a word's end at which moment the word before it ended.
        """
        score = np.full(len(self._tokens), _NEVER)
        before = np.full(len(self._tokens), -1)
        silence, end = (0.0, -1), (_NEVER, -1)
        ended: list[tuple[int, int]] = []  # for each moment: the best word that ends there, and its `before`
        for now in likely:
            start = max(silence, end)
            last, last_before = score, before
            for back, allowed in ((1, self._may_step), (2, self._may_skip)):
                other = np.concatenate([np.full(back, _NEVER), last[:-back]])
                is_better = allowed & (other > score)
                score = np.where(is_better, other, score)
                before = np.where(is_better, np.concatenate([np.full(back, -1), last_before[:-back]]), before)
            is_begun = start[0] > score[self._firsts]
            score[self._firsts] = np.where(is_begun, start[0], score[self._firsts])
            before[self._firsts] = np.where(is_begun, start[1], before[self._firsts])
            score = score + now[self._tokens]
            word = int(np.argmax(score[self._lasts]))
            silence = (start[0] + float(now[self._silences].max()), start[1])
            end = (float(score[self._lasts[word]]) - WORD_COST, len(ended))
            ended.append((word, int(before[self._lasts[word]])))
        words: list[str] = []
        moment = max(silence, end)[1]
        while moment >= 0:
            word, moment = ended[moment]
            words.append(self._words[word])
        return " ".join(reversed(words))


def _parted(ipa: str, known: Iterable[str]) -> list[str]:
    """A word's sounds one by one, the longest that is known first; what is not known is left out."""
    sounds = "|".join(sorted(map(re.escape, known), key=len, reverse=True))
    return re.findall(sounds, ipa)
