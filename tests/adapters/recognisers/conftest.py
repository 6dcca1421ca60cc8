"""The recognisers that come with the program, each loaded once for all tests that hear."""

import pytest

from assistant.adapters.recognisers import bundled, trained


@pytest.fixture(scope="session")
def whisper():
    if bundled.bundled_folder() is None:
        pytest.skip("the bundled model's package is not installed")
    recogniser = bundled.open_bundled()
    yield recogniser
    recogniser.close()


@pytest.fixture(scope="session")
def ear():
    if trained.trained_folder() is None or bundled.bundled_folder() is None:
        pytest.skip("a model is not here")
    recogniser = trained.open_trained()
    yield recogniser
    recogniser.close()
