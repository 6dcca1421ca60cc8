"""Power cuts, a sample of them: `tests.record.power` does many more."""

import os

import pytest

from assistant.record import file
from tests.record.power import cut_often


def test_no_acknowledged_entry_is_lost_and_no_false_alarm_raised():
    """Wherever the power is cut, and whatever was not synced by then is dropped, reordered or torn."""
    assert cut_often(170, 11, print) > 100


def test_the_sample_would_notice(monkeypatch):
    """An entry that is acknowledged without being synced is lost by one of these cuts."""
    real = file.RecordFile._write

    def without_sync(self, line):
        with monkeypatch.context() as patched:
            patched.setattr(os, "fsync", lambda _: None)
            real(self, line)

    monkeypatch.setattr(file.RecordFile, "_write", without_sync)
    with pytest.raises(AssertionError, match="were acknowledged"):
        cut_often(170, 11, print)
