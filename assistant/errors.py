"""The one tree of errors that come from outside: bad files, devices, words, numbers.

A broken promise between our own modules is not in this tree: it is a bug and stops the run.
"""


class AssistantError(Exception):
    """Something from outside is wrong; says what, and what to do about it.

    Attributes:
        what: what was expected and what came, one sentence.
        remedy: what to do next, one sentence; may be empty.
    """

    def __init__(self, what: str, remedy: str = "") -> None:
        super().__init__(f"{what} {remedy}".strip())
        self.what = what
        self.remedy = remedy


class QuantityError(AssistantError):
    """A clinical quantity, a unit or a formula's input makes no sense."""


class ChecklistError(AssistantError):
    """A checklist file cannot be used; the sentence names file and line."""


class OrderError(AssistantError):
    """An order file cannot be used; the sentence names file and line."""


class RecordError(AssistantError):
    """A record cannot be written, read or trusted."""


class DeviceError(AssistantError):
    """A microphone, loudspeaker or voice cannot be used."""


class ModelError(AssistantError):
    """A recogniser or its model cannot be used."""


class SoundError(AssistantError):
    """A sound file cannot be read."""


class SettingsError(AssistantError):
    """The settings cannot be read, or hold what is no setting."""


class LinkError(AssistantError):
    """A station and its desk cannot speak with each other, or one refuses what the other says."""


class UsageError(AssistantError):
    """The command line asks for something that does not exist."""
