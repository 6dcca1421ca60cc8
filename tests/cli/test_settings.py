"""The settings: typed, with defaults, every mistake named with what was meant."""

import pytest

from assistant.cli.folders import records_folder
from assistant.errors import SettingsError
from assistant.settings import Settings, change_setting, load_settings
from tests.attempt.program import here


@pytest.fixture
def file(tmp_path, monkeypatch):
    """Where the settings of this test are kept; not there yet."""
    path = tmp_path / "below" / "settings.toml"
    monkeypatch.setenv("CHECKOFF_SETTINGS", str(path))
    return path


def test_without_a_file_everything_has_its_default(file, capsys):
    """Nothing need be set, and looking at the settings makes no file."""
    assert load_settings() == Settings()
    shown = here(capsys, "settings")
    assert shown.code == 0
    assert shown.lines[0].endswith("(does not exist yet; these are the defaults)")
    assert "records.sound_days = 30" in shown.lines
    assert not file.exists()


def test_a_setting_is_changed_and_the_rest_stays(file, capsys, tmp_path):
    """One value changes; comments and other values stay, and the program uses it."""
    file.parent.mkdir()
    file.write_text("# of the lab\n[records]\nsound_days = 7 # by policy\n", encoding="utf-8")
    assert here(capsys, "settings", "set", "records.folder", str(tmp_path / "lab")).code == 0
    text = file.read_text(encoding="utf-8")
    assert "# of the lab" in text
    assert "sound_days = 7 # by policy" in text
    assert records_folder() == tmp_path / "lab"
    assert load_settings().records.sound_days == 7
    assert here(capsys, "settings", "--json").last["settings"]["records"]["sound_days"] == 7


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("[records]\n\nsound_dais = 3\n", 'line 3: "sound_dais" is not a field here. Did you mean "sound_days"?'),
        ("[record]\nfolder = ''\n", 'line 1: "record" is not a field here. Did you mean "records"?'),
        ("[records]\nsound_days = -1\n", 'line 2: "sound_days" must be at least 0.'),
        ('[records]\nsound_days = "7"\n', 'line 2: "sound_days" must be a number.'),
        ("[records]\nsound_days = 1.5\n", 'line 2: "sound_days"'),
        ("[records\n", "line 1: this is not TOML"),
        ("records = 3\n", 'line 1: "records" must be a table.'),
        (b"\xff", "line 1: this is not UTF-8 text"),
    ],
)
def test_a_mistake_in_the_file_is_named(file, capsys, text, told):
    """File, line and the nearest name, and nothing is changed by a verb that would write."""
    content = text if isinstance(text, bytes) else text.encode()
    file.parent.mkdir()
    file.write_bytes(content)
    ended = here(capsys, "settings")
    assert ended.code == 1
    assert f"{file}, {told}" in ended.console
    with pytest.raises(SettingsError, match="line"):
        change_setting("records.sound_days", "3")
    assert file.read_bytes() == content


@pytest.mark.parametrize(
    ("name", "value", "told"),
    [
        ("records.sound_day", "3", 'There is no setting "records.sound_day". Did you mean "records.sound_days"'),
        ("records.sound_days", "many", '"many" does not fit records.sound_days'),
        ("records.sound_days", "-1", '"-1" does not fit records.sound_days'),
        ("records.folder", "3", '"3" does not fit records.folder'),
    ],
)
def test_a_setting_that_cannot_be(file, capsys, name, value, told):
    """Refused with the nearest name or what would fit; no file is made."""
    ended = here(capsys, "settings", "set", name, value)
    assert ended.code == 1
    assert told in ended.console
    assert not file.exists()
