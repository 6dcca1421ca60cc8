"""The model beside the one that leads: loaded once, when it is needed, and not missed where it cannot be."""

import pytest

from assistant.adapters.recognisers.witness import Witness
from assistant.errors import ModelError
from assistant.spoken.expect import NumberExpected, TextExpected

DIGITS = NumberExpected("mL", digits_only=True)


class Says:
    """A model that takes every sound for the same."""

    def __init__(self):
        self.closed = False

    def begin(self, expect):
        return f"an utterance of {type(expect).__name__}"

    def takes_for(self, samples, expect, is_given_up):
        return "7 1 8"

    def close(self):
        self.closed = True


def test_it_is_loaded_once_for_whatever_comes_first():
    """Free words and what is to be borne out are heard by the same model; its digest is known before."""
    loads = []

    def load():
        loads.append(Says())
        return loads[-1]

    witness = Witness("digest", load)
    assert witness.model_digest == "digest"
    witness.close()
    assert not loads
    assert witness.takes_for(None, DIGITS, lambda: False) == "7 1 8"
    assert witness.begin(TextExpected()) == "an utterance of TextExpected"
    assert len(loads) == 1
    witness.close()
    assert loads[0].closed


def test_one_that_cannot_be_loaded_bears_nothing_out():
    """It is tried once; free words say what is wrong."""
    tries = []

    def load():
        tries.append(1)
        raise ModelError("broken", "Install it again.")

    witness = Witness("digest", load)
    assert not witness.fails
    assert [witness.takes_for(None, DIGITS, lambda: False) for _ in range(3)] == ["", "", ""]
    assert len(tries) == 1
    assert witness.fails
    with pytest.raises(ModelError, match="broken"):
        witness.begin(TextExpected())
