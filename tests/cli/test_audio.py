"""The verb `audio` on a sound server: a room, a headset, a machine without devices."""

import json
import subprocess
import sys

import pytest

from assistant.adapters.recognisers.bundled import bundled_folder
from tests import spoken_words, virtual_sound

_MISSING = virtual_sound.missing_programs() + spoken_words.missing_programs()
pytestmark = [
    pytest.mark.sound,
    pytest.mark.slow,
    pytest.mark.skipif(bool(_MISSING), reason=f"not installed: {', '.join(_MISSING)}"),
    pytest.mark.skipif(bundled_folder() is None, reason="the bundled recogniser is not installed"),
]


@pytest.fixture(scope="module")
def sound():
    with virtual_sound.virtual_sound() as running:
        yield running


def checked(environment, *options):
    command = [sys.executable, "-m", "assistant", "audio", "--json", *options]
    done = subprocess.run(command, env=environment, capture_output=True, text=True, timeout=90)
    return done.returncode, json.loads(done.stdout), done.stderr


def test_round_trip_through_the_room(sound):
    """Where the microphone hears the loudspeaker, the word that is said is heard, and all is well."""
    with sound.loop_back():
        code, told, console = checked(sound.environment)
    assert told["faults"] == []
    assert code == 0
    assert told["heard"] in ("75", "seventy five", "seventy-five")
    assert told["loudest_dbfs"] > -40
    assert "microphone" in [one["name"] for one in told["microphones"]]
    assert [one["name"] for one in told["loudspeakers"] if one["default"]] == ["default"]
    assert console.splitlines() == [
        "Listening to the room: please be quiet.",
        'Saying "seventy five" and listening for it.',
    ]


def test_microphone_that_is_muted(sound):
    """A microphone that gives perfect silence is told as such."""
    code, told, _ = checked(sound.environment)
    assert code == 1
    assert told["heard"] is None
    (fault,) = told["faults"]
    assert fault.startswith("The microphone gives no sound at all")


def test_devices_that_do_not_exist(sound):
    """Names of devices that are not there are faults, with the names that are."""
    code, told, console = checked(sound.environment, "--microphone", "kitchen", "--loudspeaker", "garden")
    assert code == 1
    assert [fault.split(".")[0] for fault in told["faults"]] == [
        'There is no microphone called "kitchen"',
        'There is no loudspeaker called "garden"',
    ]
    assert all('"default"' in fault for fault in told["faults"])
    assert console == ""


def test_list_of_devices(sound):
    """The list names every device and marks the default ones."""
    done = subprocess.run(
        [sys.executable, "-m", "assistant", "audio", "--list"],
        env=sound.environment,
        capture_output=True,
        text=True,
        timeout=60,
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert "  microphone, ALSA, 44100 Hz\n" in done.stdout
    assert done.stdout.count("(default)") == 2
