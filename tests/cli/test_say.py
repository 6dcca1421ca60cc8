"""The verb `say`: a sentence to the loudspeaker or into a file."""

import json
import shutil
import subprocess
import sys
import time
import wave

import numpy as np
import pytest
import soundfile

from assistant.cli.main import main
from tests import virtual_sound

needs_voice = pytest.mark.skipif(shutil.which("espeak-ng") is None, reason="espeak-ng is not installed")


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["..."], 'The text contains nothing that can be said. For example: checkoff say "Ready."'),
        ([""], 'The text contains nothing that can be said. For example: checkoff say "Ready."'),
        (["no " * 3_000], "The text has 8,999 characters; 5,000 can be said. Say it in parts."),
        (["yes", "-o", "yes.mp3"], '"yes.mp3" is not the name of a sound file. End it with .wav or .flac.'),
        (["yes", "-o", "yes"], '"yes" is not the name of a sound file. End it with .wav or .flac.'),
    ],
)
def test_refusals_are_one_sentence(arguments, sentence, capsys):
    """What cannot be said or written is refused in one sentence, with what to do."""
    assert main(["say", *arguments]) == 2
    assert capsys.readouterr() == ("", sentence + "\n")


def test_step_of_speed_out_of_range_is_wrong_usage(capsys):
    """A step beyond the range is wrong usage, told by the parser."""
    with pytest.raises(SystemExit) as ended:
        main(["say", "yes", "--rate", "9"])
    assert ended.value.code == 2
    assert "invalid choice: 9" in capsys.readouterr().err


@pytest.mark.sound
@needs_voice
def test_writes_what_would_be_said(tmp_path, capsys):
    """The file holds speech as any program reads it; the JSON tells the words, in full."""
    file = tmp_path / "rate.wav"
    assert main(["say", "Set the rate to 83.3 mL/h.", "-o", str(file), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["file"] == str(file)
    assert "millilitres" in told["speech"]
    assert not any(character.isdigit() for character in told["speech"])
    with wave.open(str(file), "rb") as sound:
        assert (sound.getnchannels(), sound.getsampwidth()) == (1, 2)
        assert sound.getnframes() / sound.getframerate() == pytest.approx(told["audio_s"], abs=0.01)
        samples = np.frombuffer(sound.readframes(sound.getnframes()), "<i2").astype(int)
    assert 1 < told["audio_s"] < 10
    assert np.abs(samples).max() > 3_000


@pytest.mark.sound
@needs_voice
def test_slower_is_longer_and_flac_is_flac(tmp_path):
    """The step of speed reaches the file, and the file's ending chooses its kind."""
    lengths = []
    for rate in (-4, 0, 4):
        file = tmp_path / f"again{rate}.flac"
        assert main(["say", "Close the roller clamp.", "--rate", str(rate), "-o", str(file)]) == 0
        found = soundfile.info(file)
        assert found.format == "FLAC"
        lengths.append(found.duration)
    assert lengths == sorted(lengths, reverse=True)


@pytest.mark.sound
@needs_voice
def test_folder_that_is_not_there(tmp_path, capsys):
    """A file that cannot be written is one sentence."""
    assert main(["say", "yes", "-o", str(tmp_path / "none" / "yes.wav")]) == 1
    assert capsys.readouterr().err.endswith(
        "yes.wav cannot be written. Check that its folder exists and that you may write there.\n"
    )


@pytest.mark.sound
@needs_voice
@pytest.mark.skipif(bool(virtual_sound.missing_programs()), reason="PulseAudio is not installed")
def test_speaks_through_the_loudspeaker():
    """Without a file the sentence sounds, and the console stays empty; without a loudspeaker it says so."""
    command = [sys.executable, "-m", "assistant", "say", "Close the roller clamp."]
    with virtual_sound.virtual_sound() as sound:
        with sound.recording() as recording:
            spoken = subprocess.run(command, env=sound.environment, capture_output=True, text=True, timeout=60)
            time.sleep(0.3)
            assert recording.loud_s() > 0.7
        assert (spoken.returncode, spoken.stdout, spoken.stderr) == (0, "", "")
        sound.pull_loudspeaker()
        silent = subprocess.run(command, env=sound.environment, capture_output=True, text=True, timeout=60)
        assert silent.returncode == 1
        assert silent.stdout == ""
        assert silent.stderr.count("\n") == 1
        assert '"default" cannot be opened' in silent.stderr
