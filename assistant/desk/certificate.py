"""The desk's own certificate, made once: self-signed, for those who know its digest."""

import hashlib
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import NameOID

from assistant.errors import LinkError
from assistant.link.addresses import write_owner_only
from assistant.record.disk import reason_of
from assistant.text import shown

_CERTIFICATE, _KEY = "desk-certificate.pem", "desk-key.pem"
_YEARS = 20
"""Nobody renews it by themselves: whoever wants another one takes the files away and pairs anew."""
_A_DAY = timedelta(days=1)


@dataclass(frozen=True)
class Certificate:
    """Where certificate and key are.

    Attributes:
        path, key: files, in PEM.
        fingerprint: SHA-256 (hex) of the certificate in DER.
    """

    path: Path
    key: Path
    fingerprint: str


def own_certificate(folder: Path) -> Certificate:
    """The certificate of this machine's desk; made now, with its key for its owner alone, where there is none.

    Args:
        folder: where both are kept.

    Raises:
        LinkError: it cannot be read or written.
    """
    path, key = folder / _CERTIFICATE, folder / _KEY
    if not (path.exists() and key.exists()):
        made, private = _made()
        write_owner_only(key, private)
        write_owner_only(path, made)
    try:
        found = x509.load_pem_x509_certificate(path.read_bytes())
    except (OSError, ValueError) as cause:
        raise LinkError(
            f"The desk's certificate {shown(path)} cannot be used: {reason_of(cause)}.",
            "Take it away with its key; a new one is made, and stations are paired anew.",
        ) from cause
    return Certificate(path, key, hashlib.sha256(found.public_bytes(serialization.Encoding.DER)).hexdigest())


def _made() -> tuple[bytes, bytes]:
    """A certificate and its key, in PEM."""
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "Instructor's desk")])
    now = datetime.now(UTC)
    certificate = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - _A_DAY)  # a station's clock may be behind
        .not_valid_after(now + _YEARS * 365 * _A_DAY)
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .sign(key, hashes.SHA256())
    )
    private = key.private_bytes(
        serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    )
    return certificate.public_bytes(serialization.Encoding.PEM), private
