"""One entry of a record: its canonical bytes, its digest, its link to the entry before it. Pure.

Rules of the form:

1. An entry is one JSON object on one line: canonical bytes by RFC 8785, then a line feed.
2. ``digest`` is the SHA-256 (FIPS 180-4, lower-case hexadecimal) of the canonical bytes of the entry
   without ``digest`` itself; ``previous`` is the digest of the entry before, `GENESIS` in the first.
3. ``sequence`` counts from 1, so that it is also the number of the line.
4. Quantities are decimal text. Whole numbers are for counting only; fractions are refused, for two
   programs need not read the same binary fraction from the same text.
5. The first entry names the `FORMAT`; an entry with a ``seal`` closes the attempt. After it only signed
   entries may stand (see `assistant.record.signing`): sign-offs, corrections, withdrawals; and those that say
   that the sound beside the record was erased (`ERASED`), which nobody needs a key for.
"""

import hashlib
import json
import re
from collections.abc import Callable, Mapping
from typing import NamedTuple, NoReturn

import orjson
import rfc8785

from assistant.errors import RecordError

GENESIS = "0" * 64
"""Stands in the first entry where all others name the entry before them."""

FORMAT = "1"
"""The form described above; a program that changes the form changes this."""

LONGEST_LINE = 1 << 20
"""Bytes of one line, its line feed included; bounds the memory that a hostile file can cost."""

LARGEST_COUNT = 2**53 - 1
"""Whole numbers above this are not the same in every JSON reader (RFC 8259, section 6)."""

OWN_FIELDS = frozenset({"sequence", "previous", "digest", "signature"})
"""Fields that the chain writes itself; no body may hold them."""


ERASED = "sound erased"
"""Kind of the entry that tells of an erasure."""

ERASURE_FIELDS = frozenset({"kind", "at", "ticks", "files", "reason", "bytes", "aside"})
"""All that an erasure may hold: what nobody signed may say nothing else behind a seal."""

ERASURE_REASONS = ("asked for", "past its time")
"""Why sound is erased."""


class Recorded(NamedTuple):
    """An entry is on disk: written, flushed, fsynced."""

    sequence: int
    digest: str


class Entry(NamedTuple):
    """A linked entry.

    Attributes:
        sequence: its number, from 1.
        previous: the digest of the entry before it.
        digest: its own digest.
        fields: everything that stands on its line, the three above included.
        line: the bytes on disk, line feed included.
    """

    sequence: int
    previous: str
    digest: str
    fields: Mapping[str, object]
    line: bytes


class NotAnEntryError(ValueError):
    """Bytes that are no canonical entry; the text says why. Never leaves this room."""


def link(body: Mapping[str, object], previous: str, sequence: int, sign: Callable[[bytes], str] | None = None) -> Entry:
    """Make the entry that follows the one with the digest `previous`.

    Args:
        body: what happened; texts, whole numbers for counting, true, false, None, lists and mappings.
        previous: digest of the entry before, `GENESIS` for the first.
        sequence: the number of this entry, from 1.
        sign: gives the signature of the entry's canonical bytes; None for an entry without one.

    Raises:
        TypeError: the body holds a fraction, a Decimal, another object, a whole number too large or a
            field of `OWN_FIELDS`: a bug of the caller.
        RecordError: a text holds half a character (a lone surrogate), or the entry is too long.
    """
    if sequence < 1:
        raise TypeError(f"sequence numbers start at 1, not {sequence}")
    if not OWN_FIELDS.isdisjoint(body):
        raise TypeError(f"the chain writes {', '.join(sorted(OWN_FIELDS))} itself")
    fields: dict[str, object] = {
        **plain(body),
        "sequence": sequence,
        "previous": previous,
    }
    if sign is not None:
        fields["signature"] = sign(canonical(fields))
    digest = hashlib.sha256(canonical(fields)).hexdigest()
    fields["digest"] = digest
    line = canonical(fields) + b"\n"
    if len(line) > LONGEST_LINE:
        raise RecordError(
            f"An entry of {len(line):,} bytes is too long for a record: {LONGEST_LINE:,} is the most.",
            "Say or type less in one go.",
        )
    return Entry(sequence, previous, digest, fields, line)


def plain(body: Mapping[str, object]) -> dict[str, object]:
    """A body as it is read back from a record: lists for tuples, texts for enumerations.

    Raises:
        TypeError: as for `link`.
    """
    return _plain_members(body, "body")


def canonical(fields: Mapping[str, object]) -> bytes:
    """The bytes of RFC 8785 for plain fields (see `link`).

    Raises:
        RecordError: a text holds a lone surrogate, which has no bytes in UTF-8.
    """
    try:
        return rfc8785.dumps(fields)  # type: ignore[arg-type]
    except ValueError as cause:
        raise RecordError(
            "An entry holds text that is not made of whole Unicode characters.",
            "Type the words again, or set the terminal to UTF-8.",
        ) from cause


def _plain_members(members: Mapping[str, object], where: str) -> dict[str, object]:
    plain: dict[str, object] = {}
    for name, value in members.items():
        if not isinstance(name, str):
            raise TypeError(f"{where}: a field's name must be text, not {type(name).__name__}")
        plain[str(name)] = _plain(value, f"{where}.{name}")
    return plain


def _plain(value: object, where: str) -> object:
    match value:
        case None | bool():
            return value
        case str():
            return str(value)  # an enumeration's own text, not its name
        case int():
            if abs(value) > LARGEST_COUNT:
                raise TypeError(f"{where}: {value} is too large for a counter; write it as decimal text")
            return int(value)
        case Mapping():
            return _plain_members(value, where)
        case list() | tuple():
            return [_plain(item, f"{where}[{index}]") for index, item in enumerate(value)]
        case _:
            raise TypeError(
                f"{where}: {type(value).__name__} cannot stand in a record; write quantities as decimal text"
            )


def read_line(line: bytes) -> Entry:
    """Read one line of a record and prove that it is canonical and that its digest fits.

    Args:
        line: the bytes with their line feed.

    Raises:
        NotAnEntryError: it is not so; the text says why.
    """
    if len(line) > LONGEST_LINE:
        raise NotAnEntryError(f"the line is longer than {LONGEST_LINE:,} bytes")
    if not line.endswith(b"\n"):
        raise NotAnEntryError("the line has no end")
    fields = _quickly(line)
    is_canonical = fields is not None
    if fields is None:
        fields = _slowly(line)
    sequence, previous, digest = fields.get("sequence"), fields.get("previous"), fields.get("digest")
    if type(sequence) is not int or type(previous) is not str or type(digest) is not str:
        raise NotAnEntryError("the line lacks its sequence number or its digests")
    if not is_canonical and not _is_canonical(fields, line):
        raise NotAnEntryError("the line is not in canonical form")
    if hashlib.sha256(_without_digest(line, digest)).hexdigest() != digest:
        raise NotAnEntryError("its content does not fit its digest")
    return Entry(sequence, previous, digest, fields, line)


def _quickly(line: bytes) -> dict[str, object] | None:
    """The fields of a line that is certainly canonical; None where that must be looked at more closely.

    orjson writes what RFC 8785 wants as long as no number has a fraction and names sort alike by code point and
    by UTF-16 unit, which differ only beyond U+FFFF (bytes from F0 on, in UTF-8).
    """
    try:
        fields = orjson.loads(line)
        if type(fields) is not dict or _has_fraction(fields):
            return None
        if not line.isascii() and _ASTRAL.search(line) is not None:
            return None
        return fields if orjson.dumps(fields, option=_SORTED_LINE) == line else None
    except (orjson.JSONDecodeError, orjson.JSONEncodeError, RecursionError):
        return None  # no JSON, half a character, a whole number too large, nested deeper than orjson goes


def _has_fraction(fields: dict[str, object]) -> bool:
    left: list[object] = [fields]
    while left:
        value = left.pop()
        for inner in value.values() if type(value) is dict else value:  # type: ignore[attr-defined]
            kind = type(inner)
            if kind is float:
                return True
            if kind is dict or kind is list:
                left.append(inner)
    return False


def _slowly(line: bytes) -> dict[str, object]:
    try:
        text = line.decode()
        fields, end = _DECODER.raw_decode(text)
    except NotAnEntryError:
        raise
    except (ValueError, RecursionError):
        raise NotAnEntryError("the line is not an entry in JSON") from None
    if type(fields) is not dict or end != len(text) - 1:
        raise NotAnEntryError("the line is not an entry in JSON")
    return fields


def _is_canonical(fields: dict[str, object], line: bytes) -> bool:
    try:
        return rfc8785.dumps(fields) == line[:-1]  # type: ignore[arg-type]
    except (ValueError, RecursionError):
        return False


def _without_digest(line: bytes, digest: str) -> bytes:
    """The canonical bytes of a canonical line's entry without its own digest."""
    member = f'"digest":"{digest}"'.encode()
    start = line.find(member)
    end = start + len(member)
    if line.find(member, end) >= 0:
        # Something inside the entry looks the same: take the long way.
        fields = json.loads(line)
        del fields["digest"]
        return rfc8785.dumps(fields)
    if line[end : end + 1] == b",":
        return line[:start] + line[end + 1 : -1]
    return line[: start - 1] + line[end:-1]


def _refuse_fraction(text: str) -> NoReturn:
    raise NotAnEntryError(f"a number with a fraction or an exponent, {text[:40]}, has no place in a record")


def _whole(text: str) -> int:
    if len(text) > 17 or abs(number := int(text)) > LARGEST_COUNT:
        raise NotAnEntryError("a whole number is too large for a record")
    return number


_ASTRAL = re.compile(rb"[\xf0-\xf4]")
_DECODER = json.JSONDecoder(parse_float=_refuse_fraction, parse_int=_whole, parse_constant=_refuse_fraction)
_SORTED_LINE = orjson.OPT_SORT_KEYS | orjson.OPT_STRICT_INTEGER | orjson.OPT_APPEND_NEWLINE
