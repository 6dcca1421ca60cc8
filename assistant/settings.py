"""The user's settings: one TOML file in the user's configuration folder, typed, with a default for everything.

A new setting is a field of one of the models below with its docstring line; `checkoff settings` shows it and
README's table names it.
"""

import os
import tempfile
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from assistant.checklist.library import nearest
from assistant.checklist.paper_file import read_paper
from assistant.errors import SettingsError
from assistant.settings_path import settings_path
from assistant.text import quoted


class _Section(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)


class RecordSettings(_Section):
    """Records and what is kept beside them.

    Attributes:
        folder: where records of new attempts go; empty for the platform's folder for user data.
        sound_days: days for which recorded speech may be kept; ``checkoff erase-sound --due`` erases older.
        heads: folder of the book of heads, better not that of the records; empty for the platform's.
        heads_copy: folder of a copy of the book, such as a network folder or a stick; empty for none.
    """

    folder: str = ""
    heads: str = ""
    heads_copy: str = ""
    sound_days: Annotated[int, Field(ge=0, le=36_500)] = 30


Step = Annotated[int, Field(ge=-4, le=4)]
"""Steps from a voice's own way, as "faster" and "louder" count them."""


Synthesiser = Literal["neural", "system"]
"""Whose voice speaks."""


class SoundSettings(_Section):
    """Microphone, loudspeaker and voice.

    Attributes:
        microphone: its name or part of it; empty for the system's own choice.
        loudspeaker: the same.
        headset: the microphone does not hear the voice: the learner may talk over it, and the first word stops it.
        echo_cancellation: take the voice out of the microphone, so that commands can be said over a loudspeaker; needs
            the extra `echo`.
        slow_speaker: twice as long a silence before an answer counts as over.
        press_to_talk: listen only after the space bar or Enter, or a pedal that is one of them, and until the answer.
        own_voice: speak; false for those who read with a screen reader.
        synthesiser: whose voice: the neural one where it is installed, or the system's own.
        rate: speed of the voice.
        pitch: how high it is.
        loudness: how loud it is.
        sounds: short sounds for listening, understood, not understood and hold.
        level_check: say so where the microphone is muted, the learner too soft or too loud, the room in the way.
    """

    microphone: str = ""
    loudspeaker: str = ""
    headset: bool = False
    echo_cancellation: bool = False
    slow_speaker: bool = False
    press_to_talk: bool = False
    own_voice: bool = True
    synthesiser: Synthesiser = "neural"
    rate: Step = 0
    pitch: Step = 0
    loudness: Step = 0
    sounds: bool = False
    level_check: bool = True


class LabSettings(_Section):
    """The lab in which attempts are taken.

    Attributes:
        school: path of the school's own file: critical steps, what it takes to pass, weights, pumps; empty for none.
        roster: path of the roster of instructors that the school's key signed; empty for the one beside the keys.
    """

    school: str = ""
    roster: str = ""


class DisplaySettings(_Section):
    """The learner's display.

    Attributes:
        open: show it where an attempt is started at a terminal of a desktop that has a browser.
    """

    open: bool = True


class Settings(_Section):
    """Everything that can be set; a section each."""

    records: RecordSettings = RecordSettings()
    sound: SoundSettings = SoundSettings()
    lab: LabSettings = LabSettings()
    display: DisplaySettings = DisplaySettings()


def load_settings() -> Settings:
    """The settings as they stand; all defaults where there is no file.

    Raises:
        SettingsError: the file cannot be read, or holds what is no setting; the line and the nearest name
            are told.
    """
    path = settings_path()
    if not path.exists():
        return Settings()
    paper = read_paper(path, SettingsError)
    try:
        return Settings.model_validate(paper.table)
    except ValidationError as invalid:
        raise paper.complain_about(invalid, (), Settings) from invalid


def shown_settings(settings: Settings) -> Iterator[tuple[str, object]]:
    """Every setting as ``section.name`` with its value, in the order of the models."""
    for section, values in settings.model_dump().items():
        for name, value in values.items():
            yield f"{section}.{name}", value


def change_setting(name: str, text: str) -> object:
    """Write one setting into the file; everything else in it, comments too, stays.

    Args:
        name: ``section.name`` as `shown_settings` gives it.
        text: the value as TOML writes it, or plain text.

    Returns:
        The value that is now set.

    Raises:
        SettingsError: there is no such setting, the value does not fit, or the file cannot be read or
            written; then the file is as it was.
    """
    # Only here: an attempt changes no settings.
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    known = [setting for setting, _ in shown_settings(Settings())]
    if name not in known:
        near = nearest(name, known) or f"Known are: {', '.join(known)}."
        raise SettingsError(f"There is no setting {quoted(name)}.", near)
    load_settings()  # what is wrong in the file already is told first, with its line
    path = settings_path()
    section, _, field = name.partition(".")
    value = _value(text)
    try:
        document = tomlkit.parse(path.read_text(encoding="utf-8-sig")) if path.is_file() else tomlkit.document()
        if section not in document:
            document[section] = tomlkit.table()
        document[section][field] = value
        content = tomlkit.dumps(document)
        Settings.model_validate(tomllib.loads(content))
    except ValidationError as invalid:
        why = invalid.errors(include_url=False)[0]["msg"]
        raise SettingsError(
            f"{quoted(text)} does not fit {name}: {why[0].lower()}{why[1:]}.", "Give another."
        ) from None
    except (OSError, ValueError, TOMLKitError) as cause:
        raise SettingsError(f"{path} cannot be changed: {cause}.", "Change the file by hand.") from cause
    _replace(path, content)
    return value


def _value(text: str) -> object:
    """A value written as in TOML where it is one, otherwise the text itself."""
    try:
        return tomllib.loads(f"value = {text}")["value"]
    except tomllib.TOMLDecodeError:
        return text


def _replace(path: Path, content: str) -> None:
    """Put the new file in the old one's place in one step, so that a crash leaves one of the two."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        descriptor, name = tempfile.mkstemp(dir=path.parent, prefix=".settings-")
        with open(descriptor, "w", encoding="utf-8") as stream:  # noqa: PTH123 - a descriptor, not a path
            stream.write(content)
            stream.flush()
            os.fsync(stream.fileno())
        Path(name).replace(path)
    except OSError as cause:
        raise SettingsError(f"{path} cannot be written: {cause.strerror}.", "Check the folder and the disk.") from cause
