"""Text from outside is shown so that it can neither act on a terminal nor look like something else."""

import pytest

from assistant.text import LONGEST_REASON, SHORT, quoted, reason_shown, shown


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("83.3 mL/h, \u00b5g, \u4e2d", "83.3 mL/h, \u00b5g, \u4e2d"),
        ("a\x1b[31mb", "a\\x1b[31mb"),  # would colour what follows
        ("a\nb\r\x85\u2028", "a\\nb\\r\\x85\\u2028"),  # would begin a line of its own
        ("\u202e\u2066\u200f", "\\u202e\\u2066\\u200f"),  # would turn the direction (Unicode TR 36, 3.2)
        ("\u200b\ufeff\u00ad\u00a0", "\\u200b\\ufeff\\xad\\xa0"),  # cannot be seen
        ("\udcff\ud800", "\\xff\\ud800"),  # a stray byte of a file's name; half a character
    ],
)
def test_what_could_act_is_written_out(text, expected):
    """Visible text stays as it is; anything else is seen as its code, and all of it is on one line."""
    assert shown(text) == expected
    assert shown(text).isprintable()


def test_long_text_is_cut():
    """Only where a length is asked for, and what was cut says so."""
    assert shown("a" * 61) == "a" * 61
    assert quoted("a" * SHORT) == f'"{"a" * SHORT}"'
    assert quoted("a" * (SHORT + 1)) == f'"{"a" * (SHORT - 1)}\u2026"'
    assert shown("\n" * 9, 3) == "\\n\\n\u2026"


def test_an_error_without_words_is_called_by_its_kind():
    """One line, without a full stop: another sentence goes on after it."""
    assert reason_shown(ValueError("no\n  model.")) == "no model"
    assert reason_shown(TimeoutError()) == "TimeoutError"
    assert len(reason_shown(ValueError("x" * 999))) == LONGEST_REASON
