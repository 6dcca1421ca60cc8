"""An entry's form: canonical bytes, digest, link, and what may not stand in it."""

import hashlib
import json
import shutil
import subprocess
from decimal import Decimal
from enum import StrEnum

import pytest
import rfc8785
from hypothesis import example, given
from hypothesis import strategies as st

from assistant.errors import RecordError
from assistant.record.entry import (
    GENESIS,
    LARGEST_COUNT,
    LONGEST_LINE,
    NotAnEntryError,
    _quickly,
    canonical,
    link,
    read_line,
)
from tests.record.examples import body, opening


class Unit(StrEnum):
    ML_PER_HOUR = "mL/h"


# RFC 8785, sections 3.2.2 (input) and 3.2.4 (the bytes that must come out).
SAMPLE = r"""{
  "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
  "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
  "literals": [null, true, false]
}"""
SAMPLE_BYTES = """
7b 22 6c 69 74 65 72 61 6c 73 22 3a 5b 6e 75 6c 6c 2c 74 72 75 65 2c 66 61 6c 73 65 5d 2c 22 6e
75 6d 62 65 72 73 22 3a 5b 33 33 33 33 33 33 33 33 33 2e 33 33 33 33 33 33 33 2c 31 65 2b 33 30
2c 34 2e 35 2c 30 2e 30 30 32 2c 31 65 2d 32 37 5d 2c 22 73 74 72 69 6e 67 22 3a 22 e2 82 ac 24
5c 75 30 30 30 66 5c 6e 41 27 42 5c 22 5c 5c 5c 5c 5c 22 2f 22 7d
"""

# RFC 8785, section 3.2.3: names sort by UTF-16 code unit.
NAMES = {
    "\u20ac": "Euro Sign",
    "\r": "Carriage Return",
    "\ufb33": "Hebrew Letter Dalet With Dagesh",
    "1": "One",
    "\U0001f600": "Emoji: Grinning Face",
    "\u0080": "Control",
    "\u00f6": "Latin Small Letter O With Diaeresis",
}
NAMES_ORDER = [
    "Carriage Return",
    "One",
    "Control",
    "Latin Small Letter O With Diaeresis",
    "Euro Sign",
    "Emoji: Grinning Face",
    "Hebrew Letter Dalet With Dagesh",
]


def test_library_writes_the_bytes_of_the_standard():
    """The library's bytes are those printed in RFC 8785, section 3.2.4."""
    assert rfc8785.dumps(json.loads(SAMPLE)) == bytes.fromhex(SAMPLE_BYTES)


def test_names_sort_as_in_the_standard():
    """Names sort by UTF-16 unit as in RFC 8785, section 3.2.3, also on the way through an entry."""
    assert list(json.loads(canonical(NAMES)).values()) == NAMES_ORDER
    entry = link({"kind": "x", "names": NAMES}, GENESIS, 1)
    assert read_line(entry.line).fields["names"] == NAMES


@pytest.mark.parametrize(
    ("message", "digest"),
    [
        # FIPS 180-2, appendix B.1 and B.2.
        (b"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"),
        (
            b"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
        ),
    ],
)
def test_digest_is_sha_256(message, digest):
    """The digest used is the SHA-256 of the standard."""
    assert hashlib.sha256(message).hexdigest() == digest


@pytest.mark.parametrize("command", [["sha256sum"], ["openssl", "dgst", "-sha256", "-r"]])
def test_other_programs_find_the_same_digest(command):
    """sha256sum and openssl, given the line without its digest, name the digest that stands in it."""
    if shutil.which(command[0]) is None:
        pytest.skip(f"{command[0]} is not on this machine")
    entry = link(opening(), GENESIS, 1)
    without = entry.line.rstrip(b"\n").replace(f'"digest":"{entry.digest}",'.encode(), b"")
    answer = subprocess.run(command, input=without, capture_output=True, check=True).stdout
    assert answer.split()[0].decode() == entry.digest


def test_link_names_its_predecessor():
    """An entry holds its number, the digest before and its own, and its line reads back as the same."""
    first = link(opening(), GENESIS, 1)
    second = link(body(2), first.digest, 2)
    assert (second.sequence, second.previous) == (2, first.digest)
    assert second.fields == {**body(2), "sequence": 2, "previous": first.digest, "digest": second.digest}
    assert read_line(second.line) == second


def test_text_of_an_enumeration_is_written():
    """A named text is written as its text and a tuple as a list, as a reader will find them."""
    entry = link({"unit": Unit.ML_PER_HOUR, "alternatives": ("a", "b")}, GENESIS, 1)
    assert entry.fields["unit"] == "mL/h"
    assert type(entry.fields["unit"]) is str
    assert entry.fields["alternatives"] == ["a", "b"]


LARGE = "body.count: {} is too large for a counter; write it as decimal text"
OWN = "the chain writes digest, previous, sequence, signature itself"


@pytest.mark.parametrize(
    ("bad", "named"),
    [
        ({"rate": 83.3}, "body.rate: float cannot stand in a record; write quantities as decimal text"),
        ({"rate": float("nan")}, "body.rate: float cannot stand in a record; write quantities as decimal text"),
        ({"rate": Decimal("83.3")}, "body.rate: Decimal cannot stand in a record; write quantities as decimal text"),
        (
            {"deep": [{"rate": 1.0}]},
            "body.deep[0].rate: float cannot stand in a record; write quantities as decimal text",
        ),
        ({"at": object()}, "body.at: object cannot stand in a record; write quantities as decimal text"),
        ({"raw": b"bytes"}, "body.raw: bytes cannot stand in a record; write quantities as decimal text"),
        ({"set": {"a"}}, "body.set: set cannot stand in a record; write quantities as decimal text"),
        ({"count": LARGEST_COUNT + 1}, LARGE.format("9007199254740992")),
        ({"count": -LARGEST_COUNT - 1}, LARGE.format("-9007199254740992")),
        ({1: "one"}, "body: a field's name must be text, not int"),
        ({"digest": "mine"}, OWN),
        ({"sequence": 7}, OWN),
        ({"previous": GENESIS}, OWN),
    ],
)
def test_what_may_not_stand_in_a_body(bad, named):
    """A fraction, a quantity that is not text, or a field of the chain is a bug of the caller."""
    with pytest.raises(TypeError) as caught:
        link(bad, GENESIS, 1)
    assert str(caught.value) == named


def test_numbers_start_at_one():
    """There is no entry 0."""
    with pytest.raises(TypeError, match="start at 1"):
        link({}, GENESIS, 0)
    assert link({}, GENESIS, 1).sequence == 1


@pytest.mark.parametrize("words", ["\ud800", "half a sign \udc99"])
def test_text_that_is_no_unicode_is_refused_politely(words):
    """Stray bytes of a terminal are bad input, not a bug."""
    with pytest.raises(RecordError, match="whole Unicode characters"):
        link({"words": words}, GENESIS, 1)
    with pytest.raises(RecordError):
        link({words: "name"}, GENESIS, 1)


def test_overlong_entry_is_refused_politely():
    """An entry that no reader would take is not written."""
    with pytest.raises(RecordError, match="too long"):
        link({"words": "x" * LONGEST_LINE}, GENESIS, 1)
    assert len(link({"words": "x" * (LONGEST_LINE - 400)}, GENESIS, 1).line) <= LONGEST_LINE


def _crafted(text: str) -> bytes:
    """A line whose digest fits the bytes that stand there, whatever their form."""
    digest = hashlib.sha256(f"{{{text}}}".encode()).hexdigest()
    return f'{{"digest":"{digest}",{text}}}\n'.encode()


PLAIN = f'"kind":"x","previous":"{GENESIS}","sequence":1'


def test_crafted_line_in_canonical_form_is_read():
    """The lines crafted below are refused for their form alone: in canonical form one is read."""
    assert read_line(_crafted(PLAIN)).fields["kind"] == "x"


NOT_CANONICAL = "the line is not in canonical form"
NO_JSON = "the line is not an entry in JSON"
LACKS = "the line lacks its sequence number or its digests"
TOO_LARGE = "a whole number is too large for a record"
FRACTION = "a number with a fraction or an exponent, {}, has no place in a record"


@pytest.mark.parametrize(
    ("line", "why"),
    [
        (_crafted(f'"kind":"y",{PLAIN}'), NOT_CANONICAL),  # the same name twice
        (_crafted(f"{PLAIN} "), NOT_CANONICAL),
        (_crafted(f'{PLAIN},"zeta":"\\u0041"'), NOT_CANONICAL),
        (_crafted(f'{PLAIN},"zeta":"\\u001F"'), NOT_CANONICAL),
        (_crafted(f'{PLAIN},"zeta":"\\/"'), NOT_CANONICAL),
        (_crafted(f'{PLAIN},"zeta":"\\ud83d\\ude00"'), NOT_CANONICAL),
        (_crafted(f'{PLAIN},"zeta":"\\ud800"'), NOT_CANONICAL),
        (_crafted(f'{PLAIN},"zeta":-0'), NOT_CANONICAL),
        (_crafted(f'"alpha":1,{PLAIN}'), NOT_CANONICAL),  # "alpha" sorts before "digest"
        (_crafted(f'{PLAIN},"zeta":{{"\ufb33":1,"\U0001f600":2}}'), NOT_CANONICAL),  # by code point
        (_crafted(f'{PLAIN},"zeta":1.5'), FRACTION.format("1.5")),
        (_crafted(f'{PLAIN},"zeta":1e3'), FRACTION.format("1e3")),
        (_crafted(f'{PLAIN},"zeta":1.{"5" * 60}'), FRACTION.format("1." + "5" * 38)),
        (_crafted(f'{PLAIN},"zeta":NaN'), FRACTION.format("NaN")),
        (_crafted(f'{PLAIN},"zeta":-Infinity'), FRACTION.format("-Infinity")),
        (_crafted(f'{PLAIN},"zeta":9007199254740992'), TOO_LARGE),
        (_crafted(f'{PLAIN},"zeta":{"9" * 100_000}'), TOO_LARGE),
        (_crafted(f'{PLAIN},"zeta":{"[" * 100_000}{"]" * 100_000}'), NO_JSON),
        (_crafted(PLAIN.replace("1", "true")), LACKS),
        (_crafted(PLAIN.replace('"sequence":1', '"sequence":"1"')), LACKS),
        (_crafted('"sequence":1'), LACKS),
        (b"[]\n", NO_JSON),
        (b"\n", NO_JSON),
        (b"\xff\xfe\n", NO_JSON),
        (b"\xef\xbb\xbf" + _crafted(PLAIN), NO_JSON),  # a byte order mark
        (_crafted(PLAIN)[:-1], "the line has no end"),
        (_crafted(PLAIN)[:-1] + b"\r\n", NO_JSON),
        (b"x" * LONGEST_LINE + b"\n", "the line is longer than 1,048,576 bytes"),
    ],
)
def test_line_that_is_no_entry(line, why):
    """Whatever is not the one canonical form of an entry is refused with a reason, however well it hashes."""
    with pytest.raises(NotAnEntryError) as caught:
        read_line(line)
    assert str(caught.value) == why


def test_nested_look_alike_of_the_digest_changes_nothing():
    """An entry that quotes a digest inside, even its own member's shape, is read and checked all the same."""
    entry = link({"kind": "x", "quoted": {"digest": "0" * 64}}, GENESIS, 1)
    assert read_line(entry.line) == entry
    twin = link({"kind": "x", "zz": {"digest": entry.digest}}, GENESIS, 1)
    assert read_line(twin.line) == twin


TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=8)
VALUES = st.recursive(
    st.none() | st.booleans() | st.integers(-LARGEST_COUNT, LARGEST_COUNT) | TEXTS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(TEXTS, inner, max_size=3),
    max_leaves=8,
)


@given(VALUES, st.booleans(), st.booleans(), st.sampled_from([(",", ":"), (", ", ": ")]))
@example([chr(code) for code in range(0x80)], False, True, (",", ":"))
@example({"\ufb33": 1, "\U0001f600": 2}, False, True, (",", ":"))
@example([2**53, -(2**53)], False, True, (",", ":"))
def test_the_quick_look_says_yes_to_nothing_else(value, escaped, in_order, separators):
    """What is taken for canonical at a glance is what the library of the standard writes, byte for byte."""
    text = json.dumps({"kind": value}, ensure_ascii=escaped, sort_keys=in_order, separators=separators)
    line = f"{text}\n".encode()
    fields = _quickly(line)
    if fields is not None:
        assert rfc8785.dumps(fields) + b"\n" == line
    elif not escaped and in_order and separators == (",", ":") and line.isascii() and "\x7f" not in text:
        assert max(map(abs, value)) > LARGEST_COUNT, "the quick look would be of no use"


@given(st.dictionaries(TEXTS.filter(lambda name: name not in {"sequence", "previous", "digest"}), VALUES))
def test_every_body_comes_back(content):
    """Any body that may stand in a record is read back as it was, from the bytes the library writes."""
    entry = link(content, GENESIS, 1)
    assert entry.line == rfc8785.dumps(dict(entry.fields)) + b"\n"
    assert read_line(entry.line) == entry
    assert {name: entry.fields[name] for name in content} == content
