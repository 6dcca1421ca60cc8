"""What each entry of a record says to a person."""

import pytest

from assistant.report.happenings import happenings
from assistant.spoken import ENGLISH

ENTRY = {"at": "2026-03-02T09:00:00.000000+00:00", "kind": "heard", "source": "voice", "words": "one two five"}


@pytest.mark.parametrize(
    ("mark", "says"),
    [
        ("borne_out", "a second recogniser heard it too: yes"),
        ("unaided", "the second recogniser could not be loaded: yes"),
        ("gap", "part of the sound was lost: yes"),
        ("token", None),
    ],
)
def test_marks_of_an_utterance_are_written_out(mark, says):
    """What the record has in a word stands in the sheets in plain ones; what only the guide needs does not."""
    plain, marked = happenings([ENTRY, {**ENTRY, mark: True}], {}, ENGLISH.report)
    assert plain.details == ()
    assert marked.details == (() if says is None else (says,))
