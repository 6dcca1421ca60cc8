"""The roster: who may sign, and that nothing makes somebody an instructor but the key that was named."""

import json
from datetime import UTC, datetime, timedelta

import pytest

from assistant.errors import RecordError
from assistant.record.chain import Signature
from assistant.record.entry import GENESIS, OWN_FIELDS, link, read_line
from assistant.record.head_book import HeadBook
from assistant.record.instructors import (
    ROSTER,
    TRUSTED,
    Instructors,
    instructors_at,
    load_roster,
    trust_instructor,
    trust_school,
)
from assistant.record.look_alike import look_alike
from assistant.record.roster_file import begin_roster, enrol, renew, revoke
from assistant.record.signer import Right
from assistant.record.signing import add_key, load_key, new_key
from tests.record.instructors import lone_instructor

NOW = datetime.now(UTC)
YEAR = timedelta(days=365)


def day(days):
    """So many days from now, as an entry tells it."""
    return (NOW + timedelta(days=days)).isoformat(timespec="microseconds")


TERM = (day(-100), day(100))


@pytest.fixture
def keys(tmp_path):
    """A folder with the school's key, named, and keys of three people."""
    folder = tmp_path / "keys"
    for name in ("school", "lindqvist", "okafor", "other"):
        new_key(folder, name)
    trust_school(folder, "school")
    return folder


@pytest.fixture
def school(keys):
    return load_key(keys, "school")


@pytest.fixture
def roster(keys, school):
    """The school's roster with two instructors."""
    path = keys / ROSTER
    begin_roster(path, "Harbour College", school)
    enrol(path, school, load_key(keys, "lindqvist").public, ("M. Lindqvist", "RN"), TERM)
    enrol(path, school, load_key(keys, "okafor").public, ("A. Okafor", "lecturer"), TERM)
    return path


def right(keys, name, at, seen_at="", after="", read_at=None):
    """What an entry of this time counts, signed by the key of that name behind entries up to another time.

    It is read a thousand days from now unless another day is given.
    """
    fingerprint = load_key(keys, name).public.fingerprint
    signature = Signature(5, fingerprint, {"at": at})
    read_at = day(1000) if read_at is None else read_at
    (signer,) = instructors_at(keys).signers([signature], lambda _: seen_at, lambda _: after, read_at)
    return signer


def test_who_is_on_the_roster_decides(keys, roster):
    """With name, role and school; whoever is not on it decides nothing, the school's own key included."""
    signer = right(keys, "lindqvist", day(0))
    assert (signer.right, signer.title, signer.school) == (Right.VALID, "M. Lindqvist, RN", "Harbour College")
    for stranger in ("other", "school"):
        signer = right(keys, stranger, day(0))
        assert (signer.right, signer.decides, signer.title) == (Right.UNKNOWN, False, stranger)
        assert signer.why == f"The key {stranger} is known here, but not as an instructor's."


@pytest.mark.parametrize(
    ("at", "expected"),
    [
        (-101, Right.NOT_THEN),
        (-99, Right.VALID),
        (99, Right.VALID),
        (101, Right.NOT_THEN),
        ("", Right.NOT_THEN),
        ("yesterday", Right.NOT_THEN),
        ("2026-11-25T08:00:00", Right.NOT_THEN),  # without a zone it is no time
    ],
)
def test_only_who_was_valid_at_signing_decides(keys, roster, at, expected):
    """Before the term and after it, by days from now, the key signs and decides nothing."""
    assert right(keys, "lindqvist", day(at) if isinstance(at, int) else at).right is expected


def test_a_clock_set_back_makes_no_key_valid_again(keys, roster):
    """What is signed was there before it was signed: whatever the entry says, it was not signed earlier than that."""
    assert right(keys, "lindqvist", day(99), after=day(99.5)).right is Right.VALID
    assert right(keys, "lindqvist", day(-99), after=day(-101)).right is Right.VALID  # an attempt of before the term
    signer = right(keys, "lindqvist", day(99), after=day(101))
    assert signer.right is Right.NOT_THEN
    assert "but what it signs is of" in signer.why
    assert right(keys, "lindqvist", day(0), after="no time").right is Right.VALID


def test_nobody_signs_on_a_day_that_has_not_come(keys, roster):
    """Dated ahead, an entry would outlive every later term; two machines' clocks may differ by some hours."""
    for read_at in ("", day(0)):
        assert right(keys, "lindqvist", day(0.9), read_at=read_at).right is Right.VALID
        signer = right(keys, "lindqvist", day(2), read_at=read_at)
        assert (signer.right, signer.decides) == (Right.NOT_THEN, False)
        assert "still to come" in signer.why
    assert right(keys, "lindqvist", day(2), read_at=day(2)).right is Right.VALID


def test_a_renewed_key_has_two_terms(keys, roster, school):
    """What was signed between them does not count."""
    renew(roster, school, "M. Lindqvist", (day(200), day(300)))
    assert [right(keys, "lindqvist", day(days)).right for days in (0, 150, 250, 301)] == [
        *(Right.VALID, Right.NOT_THEN, Right.VALID, Right.NOT_THEN)
    ]


def test_what_a_revoked_key_signed_counts_only_where_it_was_seen_before(keys, roster, school):
    """A thief can write any time into an entry; a book of heads that saw it before cannot be fooled."""
    revoke(roster, school, "M. Lindqvist", "Key lost.")
    assert right(keys, "lindqvist", day(-1)).right is Right.REVOKED
    assert "Key lost." in right(keys, "lindqvist", day(-1)).why
    assert right(keys, "lindqvist", day(-1), seen_at=day(-1)).right is Right.VALID
    assert right(keys, "lindqvist", day(-1), seen_at=day(1)).right is Right.REVOKED
    assert right(keys, "lindqvist", day(1), seen_at=day(-1)).right is Right.REVOKED
    with pytest.raises(RecordError, match="was revoked"):
        renew(roster, school, "M. Lindqvist", TERM)
    with pytest.raises(RecordError, match="revoked already"):
        revoke(roster, school, "M. Lindqvist", "Again.")
    enrol(
        roster, school, load_key(keys, "other").public, ("M. Lindqvist", "RN"), TERM
    )  # the new key of the same person
    assert right(keys, "other", day(0)).decides


LOOK_ALIKE = [
    ("M. Lindqvist", "m. lindqvist"),
    ("M. Lindqvist", "M Lindqvist"),
    ("M. Lindqvist", "M.  Lindqvist."),
    ("M. Lindqvist", "M. L\u0456ndqvist"),  # Cyrillic i: UTS 39, confusables.txt
    ("M. Lindqvist", "\u039c. Lindqvist"),  # Greek capital Mu
    ("Lindqvist", "L1ndqvist"),
    ("Bernard", "Bemard"),  # rn and m
    ("O'Neil", "O\u2019Neil"),
    ("Anna", "\uff21\uff4e\uff4e\uff41"),  # full width
]


@pytest.mark.parametrize(("one", "other"), LOOK_ALIKE)
def test_names_that_look_alike(one, other):
    """Whichever comes first."""
    assert look_alike(one, other)
    assert look_alike(other, one)


@pytest.mark.parametrize(("one", "other"), [("M. Lindqvist", "M. Lindquist"), ("A. Berg", "A. Bergh"), ("Li", "Lo")])
def test_names_that_do_not(one, other):
    """One letter that is drawn otherwise is enough."""
    assert not look_alike(one, other)


@pytest.mark.parametrize("name", ["m. lindqvist", "M. L\u0456ndqvist", "M. Lindqvist"])
def test_a_look_alike_is_not_put_on_the_roster(keys, roster, school, name):
    """Nor the very same name while its bearer's key is valid."""
    before = roster.read_bytes()
    with pytest.raises(RecordError, match="looks like"):
        enrol(roster, school, load_key(keys, "other").public, (name, "RN"), TERM)
    assert roster.read_bytes() == before


@pytest.mark.parametrize("name", ["", "x" * 81, "two\nlines", "a\u202eb", " blank", "tab\tted"])
def test_what_is_no_name(keys, roster, school, name):
    """Nothing that hides or moves what is shown."""
    with pytest.raises(RecordError, match="letters that can be shown"):
        enrol(roster, school, load_key(keys, "other").public, (name, "RN"), TERM)


def test_what_the_roster_refuses(keys, roster, school):
    """A key twice, somebody who is not on it, another school's key, a roster twice."""
    with pytest.raises(RecordError, match="on the roster already"):
        enrol(roster, school, load_key(keys, "okafor").public, ("B. New", ""), TERM)
    with pytest.raises(RecordError, match="Nobody on the roster is called Nobody"):
        revoke(roster, school, "Nobody", "x")
    with pytest.raises(RecordError, match="is the roster of Harbour College"):
        revoke(roster, load_key(keys, "other"), "M. Lindqvist", "x")
    with pytest.raises(RecordError, match="already"):
        begin_roster(roster, "Harbour College", school)
    assert len(load_roster(roster).digests) == 3


@pytest.mark.parametrize("name", ["Lindqvist", "l1ndqvist", "l-indqvist", "LINDQVIST"])
def test_a_key_does_not_get_a_name_that_looks_like_another(keys, tmp_path, name):
    """Made or added, the list of keys holds no two that a reader takes for each other."""
    with pytest.raises(RecordError, match="looks like lindqvist"):
        new_key(keys, name)
    new_key(tmp_path / "elsewhere", "x")
    with pytest.raises(RecordError, match="looks like lindqvist"):
        add_key(keys, name, tmp_path / "elsewhere" / "x.public.pem")


def test_a_key_has_one_name(keys):
    """Added under a second name it would rename what it has signed."""
    with pytest.raises(RecordError, match="known already, as lindqvist"):
        add_key(keys, "zz-dean", keys / "lindqvist.public.pem")
    (keys / "zz-dean.public.pem").write_bytes((keys / "lindqvist.public.pem").read_bytes())
    assert instructors_at(keys).names[load_key(keys, "lindqvist").public.fingerprint] == "lindqvist"


def bodies(path):
    return [dict(read_line(line).fields) for line in path.read_bytes().splitlines(keepends=True)]


def relinked(path, contents, key, *, keep_signature=False):
    """The roster written anew with these contents, signed by whoever does it."""
    head, content = GENESIS, b""
    for number, fields in enumerate(contents, 1):
        body = {name: value for name, value in fields.items() if name not in OWN_FIELDS}
        old = str(fields["signature"])
        entry = link(body, head, number, (lambda _, old=old: old) if keep_signature else key.sign)
        head, content = entry.digest, content + entry.line
    path.write_bytes(content)


def test_a_roster_that_somebody_changed_makes_nobody_an_instructor(keys, roster):
    """Edited, signed by another key, with the school's key named and the signatures kept, cut in a line: nobody."""
    content, told = roster.read_bytes(), bodies(roster)
    other = load_key(keys, "other")
    added = {**told[1], "instructor": other.public.text, "name": "O. Ther"}
    for change in (
        lambda: roster.write_bytes(content.replace(b"M. Lindqvist", b"M. Lindqvisd")),
        lambda: relinked(roster, [*told, added], other, keep_signature=True),
        lambda: relinked(roster, [{**told[0], "key": other.public.text}, *told[1:]], other),
        lambda: relinked(roster, [*told, {**added, "key": other.public.text}], other),
        lambda: roster.write_bytes(content[:-20]),
        lambda: roster.write_bytes(b"".join(content.splitlines(keepends=True)[::2])),
        lambda: roster.write_bytes(b""),
        lambda: roster.write_bytes(b"hello\n"),
        roster.unlink,
    ):
        roster.write_bytes(content)
        change()
        found = instructors_at(keys)
        assert (tuple(found.instructors), bool(found.problem)) == ((), True)
        assert right(keys, "lindqvist", day(0)).why == found.problem


def test_another_schools_roster_is_not_taken(keys, roster):
    """Whole and signed, but not by the key that was named."""
    other = load_key(keys, "other")
    roster.unlink()
    begin_roster(roster, "Harbour College", other)
    assert "not signed by the school's key" in instructors_at(keys).problem


def test_a_roster_that_was_rolled_back_is_noticed(keys, roster, school, tmp_path):
    """Without its last line the revoked key would be valid again: the book of heads has seen that line."""
    book = HeadBook(tmp_path / "heads", None, print)
    before = roster.read_bytes()
    revoke(roster, school, "M. Lindqvist", "Key stolen.", book)
    assert not instructors_at(keys, standing=book.standing_of).problem
    roster.write_bytes(before)
    found = instructors_at(keys, standing=book.standing_of)
    assert (tuple(found.instructors), "older than last seen here" in found.problem) == ((), True)


# A lone instructor.


def test_a_key_that_was_made_makes_nobody_an_instructor(tmp_path):
    """Whoever can run the program can make a key: it has to be named."""
    new_key(tmp_path, "a18key")
    found = instructors_at(tmp_path)
    assert (tuple(found.instructors), found.problem) == ((), "Nobody is named as an instructor on this machine.")


def test_the_one_key_that_was_named_decides(tmp_path):
    """Named once, it is a roster of one; a second one is not named beside it."""
    lone_instructor(tmp_path)
    new_key(tmp_path, "a18key")
    assert right(tmp_path, "lindqvist", day(0)).title == "M. Lindqvist, RN"
    assert not right(tmp_path, "a18key", day(0)).decides
    for again in (
        lambda: trust_instructor(tmp_path, "a18key", "M. Lindqvist", "RN"),
        lambda: trust_school(tmp_path, "a18key"),
    ):
        with pytest.raises(RecordError, match="named in"):
            again()


@pytest.mark.parametrize(
    "content",
    [b"", b"[]", b"{", b"null", b"{}", b'{"key":"x"}', json.dumps({"key": "A" * 44}).encode(), b'{"key":7}'],
)
def test_a_naming_that_cannot_be_read_names_nobody(tmp_path, content):
    """It says so, and verification goes on."""
    lone_instructor(tmp_path)
    (tmp_path / TRUSTED).write_bytes(content)
    found = instructors_at(tmp_path)
    assert (tuple(found.instructors), TRUSTED in found.problem) == ((), True)


def test_nobody_at_all(tmp_path):
    """No folder, no keys: signatures are listed and decide nothing."""
    assert instructors_at(tmp_path / "none") == Instructors(problem="Nobody is named as an instructor on this machine.")
