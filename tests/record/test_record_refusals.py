"""What a record, a key and a lock say when they refuse: the whole sentence, and the whole remedy."""

import errno
import os
import resource
from pathlib import Path

import pytest
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric.x25519 import X25519PrivateKey

from assistant.errors import RecordError
from assistant.record.chain import MOST_SIGNATURES, Problem
from assistant.record.disk import take_lock
from assistant.record.entry import ERASED, GENESIS, LONGEST_LINE, link, read_line
from assistant.record.file import RecordFile
from assistant.record.paths import lock_path
from assistant.record.signing import add_key, load_key, new_key, read_public
from assistant.record.verify import LARGEST_READ, read_entries, verify
from tests.record.examples import at, body, opening, written

SIGN_OFF = {"kind": "signed off", "at": at(500)}
SEE_TO_THE_DISK = "Check that the folder exists, that you may write in it and that the disk has room."
CHECK_THE_PATH = "Check the path and your permission to read it."
ANOTHER_NAME = "Choose another name."


@pytest.fixture
def sealed(tmp_path):
    return written(tmp_path / "sealed.jsonl", 6)


@pytest.fixture
def begun(tmp_path):
    return written(tmp_path / "begun.jsonl", 3, sealed=False)


@pytest.fixture
def keys(tmp_path):
    """A folder with the key pairs plain and guarded."""
    new_key(tmp_path / "keys", "plain")
    new_key(tmp_path / "keys", "guarded", "correct horse")
    return tmp_path / "keys"


def refusal(call, *given, **more):
    """What is wrong and what to do, as the call says it."""
    with pytest.raises(RecordError) as caught:
        call(*given, **more)
    return caught.value.what, caught.value.remedy


def test_starting_a_record(sealed, tmp_path):
    """There is one already, or no folder for it."""
    what = f"{sealed} exists already; a record is never overwritten."
    assert refusal(RecordFile.create, sealed, opening()) == (what, ANOTHER_NAME)
    lost = tmp_path / "no" / "a.jsonl"
    what = f"{lost} cannot be written: no such file or directory."
    assert refusal(RecordFile.create, lost, opening()) == (what, SEE_TO_THE_DISK)


def test_a_record_that_is_made_in_between_is_not_overwritten(begun, monkeypatch):
    """Whoever makes the file after it was looked for keeps it."""
    before = begun.read_bytes()
    with monkeypatch.context() as patch:
        patch.setattr(type(begun), "exists", lambda _: False)
        what = f"{begun} exists already; a record is never overwritten."
        assert refusal(RecordFile.create, begun, opening()) == (what, ANOTHER_NAME)
    assert begun.read_bytes() == before


def test_resuming_a_record(sealed, begun, tmp_path):
    """It is over, it is nothing, it is damaged, it is not there."""
    what = f"{sealed} is sealed: its attempt is over."
    assert refusal(RecordFile.reopen, sealed) == (what, "Start a new attempt, or ask for its report.")
    torn = tmp_path / "torn.jsonl"
    torn.write_bytes(begun.read_bytes()[:40])
    what = f"{torn} holds no complete entry, so nothing was recorded in it."
    assert refusal(RecordFile.reopen, torn) == (what, "Start a new attempt.")
    begun.write_bytes(begun.read_bytes().replace(b'"tries":2', b'"tries":3'))
    assert refusal(RecordFile.reopen, begun) == (
        f"{begun}, line 2: edited. Its content does not fit its digest. Nothing can be added to it.",
        "Keep the file as it is and show it to the instructor; start a new attempt if need be.",
    )
    none = tmp_path / "none.jsonl"
    assert refusal(RecordFile.reopen, none) == (
        f"{none} cannot be read: No such file or directory.",
        CHECK_THE_PATH,
    )


def test_signing_a_record(sealed, begun, keys):
    """The attempt is not over, or enough was signed."""
    key = load_key(keys, "plain")
    assert refusal(RecordFile.add_signed, begun, SIGN_OFF, key) == (
        f"{begun} is not sealed: its attempt is not over.",
        "Finish the attempt first, or close it as not completed: checkoff sign-off --close.",
    )
    lines = sealed.read_bytes()
    head = read_line(lines.splitlines(keepends=True)[-1]).digest
    for number in range(7, 7 + MOST_SIGNATURES):
        entry = link({**SIGN_OFF, "key": key.public.text}, head, number, key.sign)
        head, lines = entry.digest, lines + entry.line
    sealed.write_bytes(lines)
    what = f"{sealed} holds {MOST_SIGNATURES} entries signed by this key already."
    assert refusal(RecordFile.add_signed, sealed, SIGN_OFF, key) == (what, "Nothing can be added with it.")


def test_adding_to_a_record_that_takes_nothing_more(tmp_path):
    """It is sealed, it is closed; a body that claims to be an erasure is none."""
    path = tmp_path / "a.jsonl"
    record = RecordFile.create(path, opening())
    record.seal({"at": at(1)})
    for content in (body(2), {"kind": ERASED, "at": at(2), "files": 1, "reason": "asked for", "words": "more"}):
        assert refusal(record.append, content) == (
            f"{path} is sealed: nothing can be added.",
            "Start a new attempt.",
        )
    record.close()
    assert refusal(record.append, body(2)) == (f"{path} is closed.", "Resume the attempt to go on recording.")


def test_a_disk_that_fails(tmp_path, monkeypatch):
    """The first failure says what is safe; from then on nothing is taken, and it is said why."""
    path = tmp_path / "a.jsonl"
    with RecordFile.create(path, opening()) as record:
        record.append(body(2))

        def failing(descriptor):
            raise OSError(errno.EIO, os.strerror(errno.EIO))

        with monkeypatch.context() as patch:
            # No disk breaks on demand: the error is the one a kernel gives.
            patch.setattr(os, "fsync", failing)
            assert refusal(record.append, body(3)) == (
                f"{path} could not be written: input/output error.",
                "The attempt ends here; its first 2 entries are safe. See to the disk, then resume it.",
            )
        assert refusal(record.append, body(3)) == (
            f"{path} could not be written: input/output error. Nothing more can be recorded in this attempt.",
            "Stop, see to the disk, then resume the attempt.",
        )


@pytest.mark.parametrize(
    ("left", "owner"),
    [
        (b"", "by another process"),
        (b"12a", "by another process"),
        (b" 4711\n", "by process 4711"),
        (b"1" * 25, "by process " + "1" * 20),
    ],
)
def test_a_record_in_use(begun, left, owner):
    """Whoever writes it is named as far as the lock tells."""
    with RecordFile.reopen(begun):
        lock_path(begun).write_bytes(left)
        what = f"{begun} is in use {owner}."
        assert refusal(RecordFile.reopen, begun) == (what, "Close the other attempt first, or wait until it is over.")


def test_the_lock_names_its_owner_and_goes_with_it(begun):
    """The number of this process stands in it; a lock that was given back can be taken again."""
    for _ in range(2):
        lock = take_lock(begun)
        assert lock_path(begun).read_bytes() == f"{os.getpid()}\n".encode()
        lock.release()


def test_a_lock_that_cannot_name_its_owner_is_a_lock_all_the_same(tmp_path):
    """The number in it is a courtesy: a disk that takes no byte more keeps nobody from locking."""
    path = tmp_path / "a.jsonl"
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (0, hard))
    try:
        lock = take_lock(path)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
    assert lock.is_locked
    assert lock_path(path).read_bytes() == b""
    lock.release()


def test_a_lock_that_cannot_be_made(tmp_path):
    """A lock that is a folder is a refusal of the disk."""
    path = tmp_path / "a.jsonl"
    lock_path(path).mkdir()
    what, remedy = refusal(take_lock, path)
    assert what.startswith(f"{path} cannot be written: ")
    assert remedy == SEE_TO_THE_DISK


def test_reading_a_record(sealed, tmp_path):
    """It is no file, it is too large, it does not hold."""
    what = f"{tmp_path} is not a file that could be a record."
    assert refusal(read_entries, tmp_path) == (what, "Name the file of an attempt.")
    assert refusal(read_entries, "nul\0byte") == ("nul\\x00byte cannot be read: embedded null byte.", CHECK_THE_PATH)
    large = tmp_path / "large.jsonl"
    with large.open("wb") as stream:
        stream.truncate(LARGEST_READ + 1)
    assert refusal(read_entries, large) == (
        f"{large} has 268,435,457 bytes; a record of an attempt has 268,435,456 at the most.",
        "Name the file of an attempt.",
    )
    sealed.write_bytes(sealed.read_bytes()[:-2])
    what, remedy = refusal(read_entries, sealed)
    assert what.startswith(f"{sealed}, line 6: torn tail. ")
    assert remedy == "Do not rely on it; keep the file as it is."


def test_entries_that_cannot_be_written(tmp_path):
    """Too long, or not Unicode: the words can be given again."""
    with RecordFile.create(tmp_path / "a.jsonl", opening()) as record:
        content = {**body(2), "ticks": "1"}
        short = len(link(content, GENESIS, 2).line) - len(str(content["words"]))
        for more in (0, 1):
            words = "x" * (LONGEST_LINE - short + more)
            if not more:
                record.append({**content, "words": words})
                continue
            assert refusal(record.append, {**content, "words": words}) == (
                "An entry of 1,048,577 bytes is too long for a record: 1,048,576 is the most.",
                "Say or type less in one go.",
            )
        assert refusal(record.append, {**content, "words": "\ud800"}) == (
            "An entry holds text that is not made of whole Unicode characters.",
            "Type the words again, or set the terminal to UTF-8.",
        )


DAMAGED = "the file is damaged; use a copy or a new key."


def test_keys_that_cannot_be_used(keys, tmp_path):
    """There is none, it is not one's own, it is under a passphrase, it is damaged, it is too large."""
    list_them = "List the keys with: checkoff key list."
    missing = keys / "missing.key.pem"
    what = f"The key {missing} cannot be read: No such file or directory."
    assert refusal(load_key, keys, "missing") == (what, list_them)
    plain = keys / "plain.key.pem"
    plain.chmod(0o604)
    assert refusal(load_key, keys, "plain") == (
        f"Others on this machine can read the key {plain}.",
        "Make a new one, or take their permission away if you are sure that nobody used it.",
    )
    what = "The key guarded is under a passphrase."
    for passphrase in (None, ""):
        assert refusal(load_key, keys, "guarded", passphrase) == (what, "Give the passphrase.")
    what = f"The key {keys / 'guarded.key.pem'} cannot be read."
    assert refusal(load_key, keys, "guarded", "x") == (what, f"The passphrase is wrong, or {DAMAGED}")
    plain.chmod(0o600)
    plain.write_bytes(b"x" * 10_000)
    assert refusal(load_key, keys, "plain") == (f"The key {plain} cannot be read.", f"It may be that {DAMAGED}")
    plain.write_bytes(b"x" * 10_001)
    what = f"{plain} is too large for a key."
    assert refusal(load_key, keys, "plain") == (what, "Name a key file in PEM.")
    assert refusal(load_key, keys, "no name") == (
        "A key's name has 1 to 32 letters, digits, hyphens or underscores.",
        ANOTHER_NAME,
    )
    what = "The key nul\\x00byte cannot be read: it is no file's name."
    assert refusal(add_key, keys, "other", Path("nul\0byte")) == (what, list_them)


def test_a_passphrase_for_a_key_without_one_is_not_needed(keys):
    """It is passed over: the key is loaded all the same."""
    assert load_key(keys, "plain", "anything").public == load_key(keys, "plain").public


def test_keys_that_cannot_be_made_or_added(keys, tmp_path):
    """The name is taken, the folder is none, the file holds no key."""
    other = tmp_path / "other"
    new_key(other, "x")
    for name, call, given in (
        ("plain.key.pem", new_key, (keys, "plain")),
        ("plain.public.pem", add_key, (keys, "plain", other / "x.public.pem")),
    ):
        what = f"There is a key {keys / name} already; a key is never overwritten."
        assert refusal(call, *given) == (what, ANOTHER_NAME)
    file = keys / "plain.key.pem"
    assert refusal(new_key, file / "keys", "x") == (
        f"The key {file / 'keys' / 'x.key.pem'} cannot be written: Not a directory.",
        "Check the folder and the disk.",
    )
    assert refusal(read_public, file) == (f"{file} holds no public key in PEM.", "Ask its owner for the file.")


def test_keys_of_another_kind(keys):
    """Signatures are Ed25519 alone."""
    other = X25519PrivateKey.generate()
    form = serialization.Encoding.PEM
    private, public = keys / "other.key.pem", keys / "other.public.pem"
    plain = serialization.NoEncryption()
    private.write_bytes(other.private_bytes(form, serialization.PrivateFormat.PKCS8, plain))
    private.chmod(0o600)
    public.write_bytes(other.public_key().public_bytes(form, serialization.PublicFormat.SubjectPublicKeyInfo))
    what = f"{private} is not an Ed25519 key."
    assert refusal(load_key, keys, "other") == (what, "Make one with: checkoff key new.")
    what = f"{public} is not an Ed25519 key."
    assert refusal(read_public, public) == (what, "Ask for a key made with: checkoff key new.")


@pytest.mark.skipif(not Path("/proc/self/mem").exists(), reason="needs a file that opens and cannot be read")
def test_a_disk_that_cannot_be_read(tmp_path):
    """A file that opens and then fails under the reader: said in words, by each that reads."""
    path = tmp_path / "bad.jsonl"
    path.symlink_to("/proc/self/mem")
    another_disk = "Copy it to another disk."
    assert refusal(RecordFile.reopen, path) == (f"Reading {path} failed: input/output error.", another_disk)
    why = f"Reading {path} failed: Input/output error."
    assert refusal(read_entries, path) == (why, another_disk)
    verdict = verify(path)
    assert (verdict.problem, verdict.line, verdict.why) == (Problem.CANNOT_BE_READ, None, why)
    assert (verdict.ok, verdict.intact, verdict.count, verdict.head) == (False, False, 0, GENESIS)
