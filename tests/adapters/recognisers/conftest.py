"""The bundled recogniser, loaded once for all tests that hear."""

import pytest

from assistant.adapters.recognisers import bundled


@pytest.fixture(scope="session")
def whisper():
    if bundled.bundled_folder() is None:
        pytest.skip("the bundled model's package is not installed")
    recogniser = bundled.open_bundled()
    yield recogniser
    recogniser.close()
