"""Which voice speaks: as the settings say, and what is told where the neural one is missing."""

import pytest

from assistant.adapters import voices
from assistant.adapters.head_start import VoiceAhead
from assistant.adapters.voices import NO_NEURAL_VOICE, advice_on_voice, open_synthesiser
from assistant.errors import SettingsError
from assistant.settings import SoundSettings, change_setting, load_settings


class Processes:
    """Stands for processes that have been started; says whether they were ended."""

    ended = False

    def close(self):
        self.ended = True


@pytest.mark.parametrize("name", ["neural", "system"])
def test_the_voice_that_is_chosen_gets_the_processes_that_were_started(name):
    """Both keep the system's processes; those of the neural voice are ended where it is not wanted."""
    ahead = VoiceAhead(Processes(), Processes())
    voice = open_synthesiser(SoundSettings(synthesiser=name), ahead)
    assert ahead.neural.ended == (name == "system")
    assert not ahead.system.ended
    voice.close()
    assert ahead.neural.ended and ahead.system.ended


@pytest.mark.parametrize(
    ("wishes", "is_clearer"),
    [({}, True), ({"synthesiser": "system"}, True), ({"headset": True}, False), ({"echo_cancellation": True}, False)],
)
def test_only_with_a_closed_ear_is_the_voice_made_clearer(wishes, is_clearer, monkeypatch):
    """An open ear tells its own voice by measures taken of the voice as it comes."""
    made = []
    monkeypatch.setattr(voices, "Synthesiser", lambda **chosen: made.append(chosen["is_clearer"]))
    open_synthesiser(SoundSettings(**wishes), VoiceAhead(Processes(), Processes()))
    assert made == [is_clearer]


def test_a_missing_package_is_told_to_whom_it_concerns(monkeypatch):
    """Who would get the neural voice hears how to get it; who chose the system's, or none, hears nothing."""
    monkeypatch.setattr(voices, "PACKAGE", "no_such_package")
    assert advice_on_voice(SoundSettings()) == [NO_NEURAL_VOICE]
    assert advice_on_voice(SoundSettings(synthesiser="system")) == []
    assert advice_on_voice(SoundSettings(own_voice=False)) == []


def test_the_choice_is_a_setting(tmp_path, monkeypatch):
    """It is kept like any other; a third voice is refused."""
    monkeypatch.setenv("CHECKOFF_SETTINGS", str(tmp_path / "settings.toml"))
    change_setting("sound.synthesiser", "system")
    assert load_settings().sound.synthesiser == "system"
    with pytest.raises(SettingsError):
        change_setting("sound.synthesiser", "robot")
