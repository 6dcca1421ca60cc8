"""The pairing code: what it holds, and what is taken for it."""

import base64

import pytest

from assistant.errors import UsageError
from assistant.link.pairing_code import PairingCode, in_groups, read_code, read_secret


def test_the_letters_are_those_of_base_32():
    """Source: RFC 4648, section 10, test vectors ("foobar" is MZXW6YTBOI======; "fooba" is MZXW6YTB)."""
    assert in_groups(b"fooba") == "MZXW 6YTB"
    assert read_secret("mzxw6ytb") == b"fooba".hex()


def test_a_code_is_six_groups_of_four_and_comes_back():
    """80 bits of the digest and 40 of the secret are 24 letters of five bits."""
    code = PairingCode("00112233445566778899", "aabbccddee")
    assert [len(group) for group in code.text.split()] == [4] * 6
    assert base64.b32decode(code.text.replace(" ", "")).hex() == code.digest + code.secret
    assert read_code(code.text) == code


@pytest.mark.parametrize(
    "spoil", [str.lower, lambda text: text.replace(" ", "-"), lambda text: text.replace(" ", ""), "  {} ".format]
)
def test_it_is_read_however_it_is_typed(spoil):
    """Small letters, hyphens, no gaps, gaps around."""
    code = PairingCode("ffffffffffffffffffff", "0102030405")
    assert read_code(spoil(code.text)) == code


def test_figures_that_are_not_in_it_are_taken_for_the_letters_they_look_like():
    """Base 32 has no 0, 1 or 8."""
    assert read_secret("O0L1 B8AA") == read_secret("OOLL BBAA")


@pytest.mark.parametrize("text", ["", "ABCD", "ABCD EFGH", "A" * 25, "!" * 24, "ÄBCD " * 6, "9" * 24, "A" * 1_000_000])
def test_what_is_no_whole_code_is_refused(text):
    """In a sentence that says what a code looks like."""
    with pytest.raises(UsageError, match="six groups of four"):
        read_code(text)
    assert read_secret("9" * 8) == ""
