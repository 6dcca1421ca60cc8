"""Short heads: groups of digits that people copy by hand and read out to each other."""

import hashlib

import pytest

from assistant.record.short_head import MisreadError, check_digits, read_short_head, short_head

DIGEST = hashlib.sha256(b"a head").hexdigest()


@pytest.mark.parametrize(
    ("text", "check"),
    [
        # ISO 13616 (IBAN) takes its check digits by MOD 97-10 over the account and the country, letters from A = 10;
        # the examples of the United Kingdom and of Germany in its registry, from memory: GB82 WEST 1234 5698 7654 32,
        # DE89 3704 0044 0532 0130 00.
        ("WEST12345698765432GB", "82"),
        ("370400440532013000DE", "89"),
    ],
)
def test_check_digits_are_those_of_bank_accounts(text, check):
    """The published system, by published examples."""
    assert check_digits("".join(str(int(letter, 36)) for letter in text)) == check


def test_a_short_head_is_eight_groups_of_three():
    """It is made of the digest alone, and is read back however it was written down."""
    short = short_head(DIGEST)
    assert [len(group) for group in short.split(" ")] == [3] * 8
    assert short.replace(" ", "")[:22] == f"{int(DIGEST, 16) % 10**22:022d}"
    for written in (short, short.replace(" ", ""), short.replace(" ", "-"), f" {short}\n"):
        assert read_short_head(written) == short
    assert short_head("0" * 64) != short_head(f"{'0' * 63}1")


def test_a_slip_of_the_pen_or_of_the_ear_is_noticed():
    """Every single wrong digit, and every two neighbours that changed places."""
    digits = short_head(DIGEST).replace(" ", "")
    slips = [f"{digits[:at]}{wrong}{digits[at + 1 :]}" for at in range(24) for wrong in "0123456789"]
    slips += [f"{digits[:at]}{digits[at + 1]}{digits[at]}{digits[at + 2 :]}" for at in range(23)]
    for slip in set(slips) - {digits}:
        with pytest.raises(MisreadError):
            read_short_head(slip)
    for slip in (digits[:-3], digits + "123"):
        with pytest.raises(MisreadError, match=f"it has {len(slip)} digits"):
            read_short_head(slip)


@pytest.mark.parametrize("text", ["", "9f2c", DIGEST, "1" * 64, "\u0661\u0662\u0663", "123 abc"])
def test_what_is_no_short_head(text):
    """A long head, or anything else, is left to others."""
    assert read_short_head(text) is None


def test_different_heads_are_told_apart():
    """Ten thousand digests, ten thousand short heads."""
    digests = (hashlib.sha256(b"%d" % number).hexdigest() for number in range(10_000))
    assert len(set(map(short_head, digests))) == 10_000
