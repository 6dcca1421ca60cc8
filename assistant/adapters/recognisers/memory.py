"""Memory that is given back while models are loaded, where the machine's own allocator would keep it."""

import ctypes
from collections.abc import Iterator
from contextlib import contextmanager

_LARGE = -3
"""`M_MMAP_THRESHOLD` of GNU's <malloc.h>: from this size on a piece goes back to the system when it is freed."""
_WHILE_LOADING = 128 * 1024
_AFTERWARDS = 32 * 1024 * 1024
"""To give back and ask again takes time, and what comes now is asked for again and again."""


@contextmanager
def given_back() -> Iterator[None]:
    """Give back what is freed within, where the allocator is GNU's; elsewhere nothing happens.

    By itself it takes larger and larger pieces for its own when such are freed, and loading a model frees pieces of 20
    and 75 MB: what comes after would lie between what it keeps. See mallopt(3), "M_MMAP_THRESHOLD".
    """
    library = _gnu()
    if library is None:
        yield
        return
    library.mallopt(_LARGE, _WHILE_LOADING)
    try:
        yield
    finally:
        library.malloc_trim(0)
        library.mallopt(_LARGE, _AFTERWARDS)


def _gnu() -> ctypes.CDLL | None:
    """The C library of this process where it is GNU's, and None elsewhere."""
    try:
        library = ctypes.CDLL(None)
    except (OSError, TypeError):
        return None
    return library if hasattr(library, "mallopt") and hasattr(library, "malloc_trim") else None
