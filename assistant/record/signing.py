"""Signatures of an instructor: Ed25519 (RFC 8032) over the bytes of an entry. Keys are kept as PEM files.

What is signed are the canonical bytes of the whole entry without its `signature` and its `digest`. They hold
`previous`, so a signature vouches for every entry before it, and `key`, the signer's public key. The `openssl`
program alone can check it; the public key is SubjectPublicKeyInfo (RFC 8410) in PEM. The private key is in the form of
OpenSSH where a passphrase guards it, else PKCS #8 (RFC 5958); keys under PKCS #8 with a passphrase are read as well.
"""

import base64
import binascii
import hashlib
import os
import re
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from cryptography.exceptions import InvalidSignature, UnsupportedAlgorithm
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

from assistant.errors import RecordError
from assistant.record.disk import FOR_ALL, OWNER_ONLY, make_folder, write_new
from assistant.record.entry import canonical
from assistant.record.look_alike import look_alike
from assistant.text import shown

LONGEST_KEY_FILE = 10_000
"""Bytes; a key file has some hundred."""

ROUNDS = 32
"""Rounds of bcrypt_pbkdf for a passphrase: half a second on a small machine of 2026; ssh-keygen takes 24."""
_OPENSSH = b"BEGIN OPENSSH PRIVATE KEY"

_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]{0,31}")
_PRIVATE, _PUBLIC = ".key.pem", ".public.pem"


@dataclass(frozen=True)
class PublicKey:
    """A public key.

    Attributes:
        text: its 32 bytes in base64, as an entry names it.
        fingerprint: SHA-256 (hex) of its SubjectPublicKeyInfo in DER, as
            ``openssl pkey -pubin -outform DER | openssl dgst -sha256`` prints it.
    """

    text: str
    fingerprint: str


def public_key(text: object) -> PublicKey:
    """The public key that an entry names.

    Raises:
        SignatureError: it is none.
    """
    try:
        return _named(Ed25519PublicKey.from_public_bytes(_decoded(text, 32)))
    except (ValueError, UnsupportedAlgorithm):
        raise SignatureError("it names no key") from None


class SigningKey:
    """An instructor's private key; made by `new_key` or `load_key`."""

    def __init__(self, private: Ed25519PrivateKey) -> None:
        self._private = private
        self.public = _named(private.public_key())

    def sign(self, content: bytes) -> str:
        """The signature of these bytes in base64."""
        return base64.b64encode(self._private.sign(content)).decode()


class SignatureError(ValueError):
    """A signature does not fit; the text says why. Never leaves this room."""


def check_signature(fields: Mapping[str, object]) -> PublicKey:
    """Check the signature of an entry against the key that it names.

    Args:
        fields: everything that stands on the entry's line.

    Raises:
        SignatureError: the entry has no signature, or it does not fit.
    """
    try:
        key = Ed25519PublicKey.from_public_bytes(_decoded(fields.get("key"), 32))
        signature = _decoded(fields.get("signature"), 64)
        content = {name: value for name, value in fields.items() if name not in ("digest", "signature")}
        key.verify(signature, canonical(content))
    except InvalidSignature:
        raise SignatureError("its signature is wrong") from None
    except (ValueError, UnsupportedAlgorithm):
        raise SignatureError("its signature or its key cannot be read") from None
    return _named(key)


def new_key(folder: Path, name: str, passphrase: str | None = None) -> PublicKey:
    """Make a key pair: ``NAME.key.pem`` for its owner alone, ``NAME.public.pem`` to be given to others.

    Args:
        folder: where keys are kept; made if it is not there.
        name: the key's name.
        passphrase: encrypts the private key where it is given.

    Raises:
        RecordError: the name is none, a key of that name exists, or the files cannot be written.
    """
    private_path = _path(folder, name, _PRIVATE)
    _refuse_look_alike(folder, name)
    private = Ed25519PrivateKey.generate()
    secret = _pem_under(private, passphrase) if passphrase else _bare_pem(private)
    _write_new(private_path, secret, OWNER_ONLY)
    _write_new(_path(folder, name, _PUBLIC), _pem(private.public_key()), FOR_ALL)
    return _named(private.public_key())


def add_key(folder: Path, name: str, source: Path) -> PublicKey:
    """Know somebody else's public key from now on.

    Args:
        folder: where keys are kept; made if it is not there.
        name: the name under which it will be known.
        source: a PEM file with an Ed25519 public key.

    Raises:
        RecordError: the file holds no such key, the name is none or is taken, or nothing can be written.
    """
    key = read_public(source)
    before = known_keys(folder).get(_named(key).fingerprint)
    if before is not None:
        raise RecordError(f"That key is known already, as {before}.", "One key has one name.")
    _path(folder, name, _PUBLIC)
    _refuse_look_alike(folder, name)
    _write_new(_path(folder, name, _PUBLIC), _pem(key), FOR_ALL)
    return _named(key)


def load_key(folder: Path, name: str, passphrase: str | None = None) -> SigningKey:
    """Load a private key.

    Raises:
        RecordError: there is none of that name, others can read its file, the passphrase is missing or
            wrong, or the file holds no Ed25519 key.
    """
    path = _path(folder, name, _PRIVATE)
    content = _read(path)
    if os.name != "nt" and path.stat().st_mode & 0o077:
        raise RecordError(
            f"Others on this machine can read the key {shown(path)}.",
            "Make a new one, or take their permission away if you are sure that nobody used it.",
        )
    if needs_passphrase(content) and not passphrase:
        raise RecordError(f"The key {name} is under a passphrase.", "Give the passphrase.")
    try:
        load = serialization.load_ssh_private_key if _OPENSSH in content else serialization.load_pem_private_key
        private = load(content, passphrase.encode() if passphrase and needs_passphrase(content) else None)
    except (ValueError, TypeError, UnsupportedAlgorithm) as cause:
        wrong = "The passphrase is wrong, or" if needs_passphrase(content) else "It may be that"
        raise RecordError(
            f"The key {shown(path)} cannot be read.", f"{wrong} the file is damaged; use a copy or a new key."
        ) from cause
    if not isinstance(private, Ed25519PrivateKey):
        raise RecordError(f"{shown(path)} is not an Ed25519 key.", "Make one with: checkoff key new.")
    return SigningKey(private)


def is_encrypted(folder: Path, name: str) -> bool:
    """The private key of that name is under a passphrase.

    Raises:
        RecordError: there is none.
    """
    return needs_passphrase(_read(_path(folder, name, _PRIVATE)))


def needs_passphrase(content: bytes) -> bool:
    """The file of a private key is encrypted."""
    if _OPENSSH not in content:
        return b"ENCRYPTED" in content
    try:
        serialization.load_ssh_private_key(content, None)
    except TypeError:  # that is how the library says that it needs one
        return True
    except (ValueError, UnsupportedAlgorithm):  # then it is damaged, and loading it says so
        return False
    return False


def known_keys(folder: Path) -> dict[str, str]:
    """Fingerprints of all public keys in a folder and the names under which they are known.

    A file that holds no key is passed over: it must not keep anybody's signature from being checked.
    """
    known: dict[str, str] = {}
    for path in sorted(folder.glob(f"*{_PUBLIC}")) if folder.is_dir() else []:
        with suppress(RecordError):
            # A second name for a key does not take the first one's place.
            known.setdefault(_named(read_public(path)).fingerprint, path.name.removesuffix(_PUBLIC))
    return known


def own_keys(folder: Path) -> list[str]:
    """The names of all private keys in a folder."""
    return sorted(path.name.removesuffix(_PRIVATE) for path in folder.glob(f"*{_PRIVATE}")) if folder.is_dir() else []


def read_public(path: Path) -> Ed25519PublicKey:
    """Read a public key from a PEM file.

    Raises:
        RecordError: there is none in it.
    """
    try:
        key = serialization.load_pem_public_key(_read(path))
    except (ValueError, UnsupportedAlgorithm) as cause:
        raise RecordError(f"{shown(path)} holds no public key in PEM.", "Ask its owner for the file.") from cause
    if not isinstance(key, Ed25519PublicKey):
        raise RecordError(f"{shown(path)} is not an Ed25519 key.", "Ask for a key made with: checkoff key new.")
    return key


def public_key_of(folder: Path, name: str) -> PublicKey:
    """The public key of that name in a folder.

    Raises:
        RecordError: there is none.
    """
    return _named(read_public(_path(folder, name, _PUBLIC)))


def fingerprint_of(path: Path) -> str:
    """The fingerprint of the public key in a PEM file.

    Raises:
        RecordError: there is none in it.
    """
    return _named(read_public(path)).fingerprint


def _decoded(text: object, size: int) -> bytes:
    if not isinstance(text, str):
        raise SignatureError("it is not signed")
    try:
        content = base64.b64decode(text, validate=True)
    except binascii.Error:
        content = b""
    # Base64 of some lengths can be written in several ways; only one of them is taken.
    if len(content) != size or base64.b64encode(content).decode() != text:
        raise SignatureError("its signature or its key has the wrong form")
    return content


def _named(key: Ed25519PublicKey) -> PublicKey:
    raw = key.public_bytes(serialization.Encoding.Raw, serialization.PublicFormat.Raw)
    der = key.public_bytes(serialization.Encoding.DER, serialization.PublicFormat.SubjectPublicKeyInfo)
    return PublicKey(base64.b64encode(raw).decode(), hashlib.sha256(der).hexdigest())


def _bare_pem(key: Ed25519PrivateKey) -> bytes:
    return key.private_bytes(
        serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    )


def _pem_under(key: Ed25519PrivateKey, passphrase: str) -> bytes:
    """In the form of OpenSSH: its derivation (bcrypt) costs a guesser far more than that of PKCS #8 does here."""
    form = serialization.PrivateFormat.OpenSSH
    encryption = form.encryption_builder().kdf_rounds(ROUNDS).build(passphrase.encode())
    return key.private_bytes(serialization.Encoding.PEM, form, encryption)


def _refuse_look_alike(folder: Path, name: str) -> None:
    taken = {path.name.removesuffix(_PUBLIC) for path in folder.glob(f"*{_PUBLIC}")} if folder.is_dir() else set()
    for other in sorted(taken - {name}):
        if look_alike(other, name):
            raise RecordError(f"The name {name} looks like {other}, which is taken.", "Choose another name.")


def _pem(key: Ed25519PublicKey) -> bytes:
    return key.public_bytes(serialization.Encoding.PEM, serialization.PublicFormat.SubjectPublicKeyInfo)


def _path(folder: Path, name: str, ending: str) -> Path:
    if not _NAME.fullmatch(name):
        raise RecordError("A key's name has 1 to 32 letters, digits, hyphens or underscores.", "Choose another name.")
    return folder / f"{name}{ending}"


def _read(path: Path) -> bytes:
    try:
        if path.stat().st_size > LONGEST_KEY_FILE:
            raise RecordError(f"{shown(path)} is too large for a key.", "Name a key file in PEM.")
        return path.read_bytes()
    except (OSError, ValueError) as cause:
        reason = getattr(cause, "strerror", None) or "it is no file's name"
        raise RecordError(
            f"The key {shown(path)} cannot be read: {reason}.", "List the keys with: checkoff key list."
        ) from cause


def _write_new(path: Path, content: bytes, mode: int) -> None:
    try:
        make_folder(path.parent)
        write_new(path, content, mode)
    except FileExistsError as cause:
        raise RecordError(
            f"There is a key {shown(path)} already; a key is never overwritten.", "Choose another name."
        ) from cause
    except OSError as cause:
        raise RecordError(
            f"The key {shown(path)} cannot be written: {cause.strerror}.", "Check the folder and the disk."
        ) from cause
