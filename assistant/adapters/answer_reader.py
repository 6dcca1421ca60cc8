"""The second reader of answers: this project's own weights, in the models folder, run by CTranslate2.

A BERT encoder (Devlin and others 2019) of six layers over `[CLS] line [SEP] meaning [SEP] words [SEP]`; the odds are
read off its first place.
"""

import json
from collections.abc import Mapping
from functools import cache, lru_cache, partial
from importlib.util import find_spec
from pathlib import Path

from assistant.adapters.models import Check, file_digest, joint_digest
from assistant.adapters.shipped import Copies, check_shipped, pinned_copies, shipped_folder
from assistant.errors import ModelError

NAME = "answer-reader"
"""Its folder's name, and the model's in reports."""
PINNED = {
    "config.json": "8bd5305ee5a4cc0d4d7e037831da97e6a238c26de807ccf238367cf3f82b5c0c",
    "last.json": "0f59542d6f299747243caddac4be75471f7a686fcbe46a2ad2cb6fdfb9d2c2e5",
    "model.bin": "cb6ff62262d0670932acf93c2087c121fa73e9284a7091d6accb4164c37a30eb",
    "tokenizer.json.gz": "f74a8cb90001f0ea28e531721aa3126e20d43e8a4d9ea706a9a24272ba42701a",
    "vocabulary.json.gz": "bc218a9ebcaa0676a6c3e730ae5ee15b9408fd619249bc3ed1a240b87a985d05",
}
"""SHA-256 of its files; others with the same names are refused."""
LONGEST = 96
"""Pieces of words that are read together; what is longer is not weighed."""
_REMEDY = "Install the program again."


def reader_folder() -> Path | None:
    """Where it lies: in an installed package, or beside it in a checkout. None where it does not."""
    return shipped_folder(NAME)


def check_reader() -> Check:
    """Compare its files with the tested ones.

    Raises:
        ModelError: it is not there, or a file cannot be read.
    """
    return check_shipped(NAME, _found(None), PINNED)


@cache
def reader_digest() -> str:
    """SHA-256 (hex) of the reader as it lies here; empty where none reads: it, or what runs it, is not whole.

    Whoever judges a record again has to read its answers with the same one.
    """
    folder = reader_folder()
    if folder is None or find_spec("ctranslate2") is None or find_spec("tokenizers") is None:
        return ""
    try:
        return joint_digest({name: file_digest(folder / name) for name in PINNED})
    except ModelError:
        return ""


@cache
def answer_reader() -> "AnswerReader | None":
    """The reader that comes with the program, loaded when it is first asked; None where it was left out."""
    return AnswerReader() if reader_folder() is not None else None


class AnswerReader:
    """See `assistant.spoken.weighing.Weigher`.

    Args:
        folder: where it lies; found by itself where None.
        pinned: SHA-256 (hex) by file name; `PINNED` where None.
    """

    def __init__(self, folder: Path | None = None, pinned: Mapping[str, str] | None = None) -> None:
        self._folder = folder
        self._pinned = PINNED if pinned is None else pinned
        self._network: _Network | None = None
        self._is_lost = False
        self.weigh = lru_cache(maxsize=256)(self._weigh)

    def load(self) -> None:
        """Load it.

        Raises:
            ModelError: its files are not the tested ones, or cannot be loaded.
        """
        try:
            with pinned_copies("answer reader", _found(self._folder), self._pinned, _REMEDY) as files:
                self._network = _Network(files)
        except (ImportError, OSError, RuntimeError) as error:
            raise ModelError(f"The second reader of answers cannot be loaded: {error}.", _REMEDY) from error

    def _weigh(self, line: str, meanings: tuple[str, ...], words: str) -> tuple[float, ...]:
        """See `Weigher`; what cannot be loaded weighs nothing: an attempt goes on by the rules alone, and stricter."""
        if self._network is None and not self._is_lost:
            try:
                self.load()
            except ModelError:
                self._is_lost = True
        return self._network.odds(line, meanings, words) if self._network is not None else ()


class _Network:
    """The loaded model."""

    def __init__(self, files: Copies) -> None:
        # Only here: who types nothing that is weighed does not wait for them.
        import ctranslate2
        import tokenizers

        self._tokeniser = tokenizers.Tokenizer.from_str(files.read("tokenizer.json").decode())
        self._tokeniser.no_truncation()
        self._tokeniser.no_padding()
        self._first, self._last = (self._tokeniser.token_to_id(mark) for mark in ("[CLS]", "[SEP]"))
        last = json.loads(files.read("last.json"))
        self._weights: list[float] = last["weights"]
        self._bias: float = last["bias"]
        self._encoder = files.loaded_by(
            partial(ctranslate2.Encoder, device="cpu", compute_type="int8", intra_threads=1)
        )

    def odds(self, line: str, meanings: tuple[str, ...], words: str) -> tuple[float, ...]:
        """Natural logarithms of odds, one for each meaning; none for what is too long."""
        import numpy as np

        texts = self._tokeniser.encode_batch([line, words, *meanings], add_special_tokens=False)
        asked, said, *meant = (text.ids for text in texts)
        heads = [[self._first, *asked, self._last, *one, self._last] for one in meant]
        tail = [*said, self._last]
        if any(len(head) + len(tail) > LONGEST for head in heads):
            return ()
        kinds = [[0] * len(head) + [1] * len(tail) for head in heads]
        read = self._encoder.forward_batch([[*head, *tail] for head in heads], token_type_ids=kinds)
        first = np.asarray(read.last_hidden_state)[:, 0]
        return tuple((first @ np.array(self._weights, dtype=np.float32) + self._bias).tolist())


def _found(folder: Path | None) -> Path:
    folder = reader_folder() if folder is None else folder
    if folder is None:
        raise ModelError("The second reader of answers is not installed.", _REMEDY)
    return folder
