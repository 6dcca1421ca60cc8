"""Memory that is given back while a model is loaded: what the allocator is asked, and when."""

import platform

import pytest

from assistant.adapters.recognisers import memory


class Allocator:
    """Keeps what it is asked."""

    def __init__(self):
        self.asked = []

    def mallopt(self, option, size):
        self.asked.append((option, size))

    def malloc_trim(self, pad):
        self.asked.append(("trim", pad))


def test_it_is_put_back_whatever_happens(monkeypatch):
    """Also where loading fails, what comes afterwards is not given back piece by piece: that takes time."""
    allocator = Allocator()
    monkeypatch.setattr(memory, "_gnu", lambda: allocator)
    with pytest.raises(ValueError, match="broken"), memory.given_back():
        assert allocator.asked == [(-3, 131_072)]
        raise ValueError("broken")
    assert allocator.asked[1:] == [("trim", 0), (-3, 33_554_432)]


def test_another_allocator_is_left_alone(monkeypatch):
    """Where there is none that can be asked, loading goes on."""
    monkeypatch.setattr(memory, "_gnu", lambda: None)
    with memory.given_back():
        pass


@pytest.mark.skipif(platform.libc_ver()[0] != "glibc", reason="another C library")
def test_the_real_one_is_found():
    """On Linux with GNU's library it is there, and takes the option."""
    assert memory._gnu().mallopt(-3, 33_554_432) == 1
