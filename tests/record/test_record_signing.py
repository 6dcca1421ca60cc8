"""Sign-offs: made by the real library, checked by openssl alone, and never taken where they do not fit."""

import base64
import shutil
import stat
import subprocess

import pytest
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from assistant.errors import RecordError
from assistant.record.chain import MOST_SIGNATURES, Problem
from assistant.record.entry import link, read_line
from assistant.record.file import RecordFile
from assistant.record.signing import (
    ROUNDS,
    SigningKey,
    add_key,
    check_signature,
    fingerprint_of,
    known_keys,
    load_key,
    needs_passphrase,
    new_key,
)
from assistant.record.verify import read_entries, verify
from tests.record.examples import at, body, written

needs_openssl = pytest.mark.skipif(shutil.which("openssl") is None, reason="openssl is not on this machine")

DECISION = {
    "kind": "signed off",
    "at": at(500),
    "source": "instructor",
    "signer": "M. Lindqvist, RN",
    "decision": "passed",
    "reason": "",
}


@pytest.fixture
def keys(tmp_path):
    """A folder with one key pair, lindqvist."""
    new_key(tmp_path / "keys", "lindqvist")
    return tmp_path / "keys"


@pytest.fixture
def record(tmp_path):
    return written(tmp_path / "attempt.jsonl", 6)


@pytest.mark.parametrize(
    ("seed", "public", "message", "signature"),
    [
        # RFC 8032, section 7.1, TEST 2 and TEST 3.
        (
            "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
            "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
            "72",
            "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
            "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
        ),
        (
            "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
            "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
            "af82",
            "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac"
            "18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
        ),
    ],
)
def test_signatures_are_those_of_the_standard(seed, public, message, signature):
    """Key and signature are those printed in RFC 8032."""
    key = SigningKey(Ed25519PrivateKey.from_private_bytes(bytes.fromhex(seed)))
    assert base64.b64decode(key.public.text) == bytes.fromhex(public)
    assert base64.b64decode(key.sign(bytes.fromhex(message))) == bytes.fromhex(signature)


def test_sign_off_and_withdrawal_are_further_entries(record, keys):
    """Each decision is a signed entry behind the seal; nothing before it changes, the record still holds."""
    key = load_key(keys, "lindqvist")
    before = record.read_bytes()
    sealed_head = verify(record).head
    first = RecordFile.add_signed(record, DECISION, key)
    second = RecordFile.add_signed(
        record, {**DECISION, "kind": "sign-off withdrawn", "decision": "withdrawn", "reason": "Wrong learner."}, key
    )
    assert (first.sequence, second.sequence) == (7, 8)
    assert record.read_bytes().startswith(before)
    verdict = verify(record, keys=known_keys(keys))
    assert (verdict.ok, verdict.sealed, verdict.count, verdict.head) == (True, True, 8, second.digest)
    assert [(s.line, s.fields["decision"], s.fingerprint) for s in verdict.signatures] == [
        (7, "passed", key.public.fingerprint),
        (8, "withdrawn", key.public.fingerprint),
    ]
    assert read_entries(record)[7]["reason"] == "Wrong learner."
    for head in (sealed_head, first.digest, second.digest):
        assert verify(record, head=head).ok, "heads printed earlier stay good"


def test_key_that_is_not_known_here(record, keys, tmp_path):
    """A good signature by a stranger is named as such; without a list of keys it is only listed."""
    new_key(tmp_path / "other", "stranger")
    stranger = load_key(tmp_path / "other", "stranger")
    RecordFile.add_signed(record, DECISION, load_key(keys, "lindqvist"))
    RecordFile.add_signed(record, DECISION, stranger)
    verdict = verify(record, keys=known_keys(keys))
    assert (verdict.ok, verdict.intact, verdict.problem, verdict.line) == (False, True, Problem.UNKNOWN_KEY, 8)
    assert stranger.public.fingerprint in verdict.why
    assert verify(record).ok
    add_key(keys, "stranger", tmp_path / "other" / "stranger.public.pem")
    assert verify(record, keys=known_keys(keys)).ok
    assert verify(record, keys=()).line == 7


def forged(record, change):
    """The record with its sign-off changed and the chain made to fit again, as a forger without the key can."""
    lines = record.read_bytes().splitlines(keepends=True)
    entry = read_line(lines[-1])
    fields = change(dict(entry.fields))
    content = {n: v for n, v in fields.items() if n not in ("sequence", "previous", "digest", "signature")}
    sign = None if "signature" not in fields else lambda _: fields["signature"]
    return b"".join([*lines[:-1], link(content, entry.previous, entry.sequence, sign).line])


def without(name):
    return lambda fields: {key: value for key, value in fields.items() if key != name}


OTHER = SigningKey(Ed25519PrivateKey.from_private_bytes(bytes(32)))


@pytest.mark.parametrize(
    ("change", "problem"),
    [
        (lambda f: {**f, "decision": "not-passed"}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "signer": "Somebody else"}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "at": at(501)}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "added": "more"}, Problem.SIGNATURE_WRONG),
        (without("reason"), Problem.SIGNATURE_WRONG),
        (without("key"), Problem.SIGNATURE_WRONG),
        (without("signature"), Problem.AFTER_SEAL),
        (lambda f: {**f, "key": OTHER.public.text}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "key": ""}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "key": "not base64!"}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "key": {"a": "b"}}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "key": base64.b64encode(bytes([255] * 32)).decode()}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "signature": OTHER.sign(b"")}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "signature": f["signature"].rstrip("=")}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "signature": f["signature"] + "\n"}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "signature": 7}, Problem.SIGNATURE_WRONG),
        (lambda f: {**f, "seal": {"count": 6, "head": f["previous"]}}, Problem.AFTER_SEAL),
    ],
)
def test_forged_sign_off_is_named(record, keys, change, problem):
    """A sign-off changed in any part does not hold, though the chain around it fits."""
    RecordFile.add_signed(record, DECISION, load_key(keys, "lindqvist"))
    record.write_bytes(forged(record, lambda fields: fields))
    assert verify(record).ok, "the forger's way of linking is sound; only the signature stops it"
    record.write_bytes(forged(record, change))
    verdict = verify(record)
    assert (verdict.ok, verdict.problem, verdict.line, verdict.count) == (False, problem, 7, 6)
    with pytest.raises(RecordError, match="line 7"):
        RecordFile.add_signed(record, DECISION, load_key(keys, "lindqvist"))


def test_sign_off_does_not_move_to_another_record(record, keys, tmp_path):
    """A sign-off vouches for the entries before it: behind another attempt it does not hold."""
    RecordFile.add_signed(record, DECISION, load_key(keys, "lindqvist"))
    other = written(tmp_path / "other.jsonl", 6, of=lambda number: {**body(number), "verdict": "disagrees"})
    fields = read_line(record.read_bytes().splitlines(keepends=True)[-1]).fields
    content = {n: v for n, v in fields.items() if n not in ("sequence", "previous", "digest", "signature")}
    moved = link(content, verify(other).head, 7, lambda _: str(fields["signature"]))
    other.write_bytes(other.read_bytes() + moved.line)
    assert verify(other).problem is Problem.SIGNATURE_WRONG


def test_only_a_finished_attempt_is_signed(tmp_path, keys):
    """An attempt that still goes on, or a record that is damaged, is not signed and stays as it is."""
    key = load_key(keys, "lindqvist")
    path = written(tmp_path / "open.jsonl", 3, sealed=False)
    before = path.read_bytes()
    with pytest.raises(RecordError, match="not sealed"):
        RecordFile.add_signed(path, DECISION, key)
    assert path.read_bytes() == before
    with pytest.raises(RecordError, match="cannot be read"):
        RecordFile.add_signed(tmp_path / "missing.jsonl", DECISION, key)


ADDED = r"^a signed entry brings no seal, and its key is added$"


@pytest.mark.parametrize(
    ("extra", "why"), [({"seal": {}}, ADDED), ({"key": "mine"}, ADDED), ({"signature": "mine"}, "^the chain writes ")]
)
def test_body_of_a_sign_off_brings_nothing_of_the_chain(record, keys, extra, why):
    """Key, signature and seal are not the caller's to give."""
    with pytest.raises(TypeError, match=why):
        RecordFile.add_signed(record, {**DECISION, **extra}, load_key(keys, "lindqvist"))
    assert verify(record).count == 6


def test_bodies_of_an_attempt_bring_no_signature(tmp_path):
    """While an attempt goes on nobody signs."""
    record = RecordFile.create(tmp_path / "a.jsonl", {"kind": "opened", "at": at(0)})
    with record, pytest.raises(TypeError):
        record.append({**body(2), "signature": "mine"})


def test_torn_sign_off_is_set_aside(record, keys):
    """A crash in the middle of signing loses nothing: the next sign-off tells what was set aside."""
    key = load_key(keys, "lindqvist")
    whole = record.read_bytes()
    record.write_bytes(whole + b'{"at":"2026')
    assert verify(record).problem is Problem.TORN_TAIL
    RecordFile.add_signed(record, DECISION, key)
    assert verify(record).ok
    last = read_entries(record)[-1]
    assert (last["bytes"], last["aside"]) == (11, "attempt.jsonl.torn")
    assert record.with_name("attempt.jsonl.torn").read_bytes() == b'{"at":"2026'


def many_signed(record, key, count):
    """So many further entries signed by this key, as its holder can write them without the program."""
    content = {**DECISION, "key": key.public.text}
    verdict = verify(record)
    lines, head = [record.read_bytes()], verdict.head
    for number in range(verdict.count + 1, verdict.count + 1 + count):
        entry = link(content, head, number, key.sign)
        head = entry.digest
        lines.append(entry.line)
    record.write_bytes(b"".join(lines))


def test_strangers_crowd_nobody_out(record, keys, tmp_path):
    """However many entries others sign, an instructor can still sign, and the verdict lists it."""
    new_key(tmp_path / "other", "stranger")
    many_signed(record, load_key(tmp_path / "other", "stranger"), MOST_SIGNATURES + 5)
    key = load_key(keys, "lindqvist")
    signed = RecordFile.add_signed(record, DECISION, key)
    verdict = verify(record, keys=known_keys(keys))
    assert (verdict.problem, verdict.count, verdict.signatures[-1].line) == (
        Problem.UNKNOWN_KEY,
        signed.sequence,
        signed.sequence,
    )
    assert len(verdict.signatures) == MOST_SIGNATURES + 1
    assert verdict.notes == ("5 further signed entries are not listed.",)


def test_one_key_signs_so_often_and_not_more(record, keys):
    """The record of an attempt does not grow without end."""
    key = load_key(keys, "lindqvist")
    many_signed(record, key, MOST_SIGNATURES)
    assert verify(record).ok
    with pytest.raises(RecordError, match="already"):
        RecordFile.add_signed(record, DECISION, key)


def test_a_key_under_the_older_form_is_read(tmp_path):
    """Keys that were made with PKCS #8 and a passphrase still sign."""
    private = Ed25519PrivateKey.generate()
    encryption = serialization.BestAvailableEncryption(b"horse")
    older = private.private_bytes(serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, encryption)
    (tmp_path / "older.key.pem").write_bytes(older)
    (tmp_path / "older.key.pem").chmod(0o600)
    assert load_key(tmp_path, "older", "horse").public == SigningKey(private).public
    with pytest.raises(RecordError, match="cannot be read"):
        load_key(tmp_path, "older", "mule")


# Key files.


def test_private_key_is_its_owners_alone(keys):
    """The private key's file is the owner's alone; one that others can read is not used."""
    private = keys / "lindqvist.key.pem"
    assert stat.S_IMODE(private.stat().st_mode) == 0o600
    assert stat.S_IMODE(keys.stat().st_mode) == 0o700
    private.chmod(0o640)
    with pytest.raises(RecordError, match="Others on this machine can read"):
        load_key(keys, "lindqvist")


def test_a_folder_for_keys_is_made_with_those_above_it(tmp_path):
    """For its owner alone, however deep it lies."""
    folder = tmp_path / "school" / "keys"
    assert new_key(folder, "first") == load_key(folder, "first").public
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700


def test_passphrase_guards_a_key(tmp_path):
    """A key under a passphrase is loaded with it alone; every failure is one sentence."""
    new_key(tmp_path, "guarded", "correct horse")
    assert b"BEGIN OPENSSH PRIVATE KEY" in (tmp_path / "guarded.key.pem").read_bytes()
    assert needs_passphrase((tmp_path / "guarded.key.pem").read_bytes())
    key = load_key(tmp_path, "guarded", "correct horse")
    assert known_keys(tmp_path) == {key.public.fingerprint: "guarded"}
    for wrong, message in ((None, "under a passphrase"), ("", "under a passphrase"), ("wrong", "cannot be read")):
        with pytest.raises(RecordError, match=message):
            load_key(tmp_path, "guarded", wrong)


def test_keys_are_never_overwritten(keys):
    """A second key of the same name is refused, and the first stays."""
    before = (keys / "lindqvist.key.pem").read_bytes()
    with pytest.raises(RecordError, match="never overwritten"):
        new_key(keys, "lindqvist")
    with pytest.raises(RecordError, match="known already, as lindqvist"):
        add_key(keys, "lindqvist", keys / "lindqvist.public.pem")
    assert (keys / "lindqvist.key.pem").read_bytes() == before


@pytest.mark.parametrize("name", ["", "../up", "a/b", "-x", "a b", "x" * 33, "nul\0"])
def test_names_of_keys(keys, name):
    """A key's name is no path."""
    for refused in (lambda: new_key(keys, name), lambda: load_key(keys, name)):
        with pytest.raises(RecordError, match="key's name"):
            refused()


@pytest.mark.parametrize("content", [b"", b"hello", bytes(20_000), b"-----BEGIN PUBLIC KEY-----\nAAAA\n"])
def test_files_that_hold_no_key(keys, tmp_path, content):
    """What is no key is refused with a sentence, wherever a key is looked for."""
    path = tmp_path / "bad.pem"
    path.write_bytes(content)
    with pytest.raises(RecordError):
        add_key(keys, "bad", path)
    (keys / "bad.key.pem").write_bytes(content)
    (keys / "bad.key.pem").chmod(0o600)
    with pytest.raises(RecordError):
        load_key(keys, "bad")
    with pytest.raises(RecordError, match="cannot be read"):
        load_key(keys, "missing")
    (keys / "bad.public.pem").write_bytes(content)
    assert list(known_keys(keys).values()) == ["lindqvist"], "one such file keeps nobody's signature from being checked"


# The same with openssl alone.


def openssl(*arguments, **options):
    return subprocess.run(["openssl", *map(str, arguments)], capture_output=True, check=False, **options)


@needs_openssl
def test_keys_and_fingerprints_are_those_of_openssl(tmp_path):
    """Keys made by openssl, plain and encrypted, sign here; fingerprints are what openssl prints."""
    plain = tmp_path / "plain.key.pem"
    guarded = tmp_path / "guarded.key.pem"
    assert openssl("genpkey", "-algorithm", "ed25519", "-out", plain).returncode == 0
    made = openssl("genpkey", "-algorithm", "ed25519", "-aes256", "-pass", "pass:secret", "-out", guarded)
    assert made.returncode == 0
    for name, passphrase in (("plain", None), ("guarded", "secret")):
        private = tmp_path / f"{name}.key.pem"
        private.chmod(0o600)
        public = tmp_path / f"{name}.public.pem"
        openssl("pkey", "-in", private, "-passin", "pass:secret", "-pubout", "-out", public)
        key = load_key(tmp_path, name, passphrase)
        der = openssl("pkey", "-pubin", "-in", public, "-outform", "DER").stdout
        digest = openssl("dgst", "-sha256", "-r", input=der).stdout.split()[0].decode()
        assert key.public.fingerprint == digest == fingerprint_of(public)
    assert openssl("genpkey", "-algorithm", "x25519", "-out", tmp_path / "other.key.pem").returncode == 0
    (tmp_path / "other.key.pem").chmod(0o600)
    with pytest.raises(RecordError, match="not an Ed25519 key"):
        load_key(tmp_path, "other")


@needs_openssl
def test_openssl_reads_the_key_files(tmp_path):
    """A private key without a passphrase, and the public key made of it."""
    new_key(tmp_path, "bare")
    read = openssl("pkey", "-in", tmp_path / "bare.key.pem", "-pubout")
    assert read.stdout == (tmp_path / "bare.public.pem").read_bytes()


@pytest.mark.skipif(shutil.which("ssh-keygen") is None, reason="ssh-keygen is not on this machine")
def test_openssh_reads_a_guarded_key(tmp_path):
    """A guarded key is in the form of OpenSSH, with its derivation and at least its number of rounds."""
    public = new_key(tmp_path, "guarded", "secret")
    assert ROUNDS >= 24  # ssh-keygen(1), -a: the default number of rounds is 24 (OpenSSH 9.9; before, 16)
    shown = [
        subprocess.run(["ssh-keygen", "-y", "-P", given, "-f", tmp_path / "guarded.key.pem"], capture_output=True)
        for given in ("secret", "wrong")
    ]
    assert [one.returncode == 0 for one in shown] == [True, False]
    assert base64.b64decode(shown[0].stdout.split()[1])[-32:] == base64.b64decode(public.text)


def test_check_signature_names_the_key(record, keys):
    """The signature of an entry leads to the fingerprint of its key."""
    key = load_key(keys, "lindqvist")
    RecordFile.add_signed(record, DECISION, key)
    assert check_signature(read_entries(record)[-1]) == key.public
