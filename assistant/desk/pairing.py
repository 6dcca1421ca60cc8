"""Who is paired with this desk, and how one becomes it: by a code that the desk shows, once.

A token is 256 bits of chance, so its plain SHA-256 is kept in its place: nobody finds the one from the other.
"""

import hashlib
import hmac
import secrets
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from assistant.errors import LinkError
from assistant.link.addresses import write_owner_only
from assistant.link.messages import Digest, Name
from assistant.link.pairing_code import DIGEST_BYTES, SECRET_BYTES, PairingCode, in_groups
from assistant.record.disk import reason_of
from assistant.text import shown

Kind = Literal["station", "browser"]
LASTS_S = 300.0
"""A code is taken for so long, seconds."""
MOST_WRONG = 5
"""Wrong tries after which every code is void: whoever guesses 40 bits gets no further."""
MOST_A_MINUTE = 10
"""Tries that are looked at in a minute, whoever makes them."""
MOST_PAIRED = 200
_MINUTE_S = 60.0
_FILE = "paired.json"


class PairedOne(BaseModel):
    """Somebody who is paired.

    Attributes:
        name: of the station, or of the phone or tablet.
        kind: what it is.
        token: SHA-256 (hex) of its token.
        signs: a phone or tablet that may sign and start; off, it may watch and mark.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    name: Name
    kind: Kind
    token: Digest
    signs: bool = False


class _Paired(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    paired: Annotated[tuple[PairedOne, ...], Field(max_length=MOST_PAIRED)] = ()


class PairedStore:
    """Those who are paired, on disk for the owner alone.

    Args:
        folder: where the file is.

    Raises:
        LinkError: there is a file, and it cannot be used.
    """

    def __init__(self, folder: Path) -> None:
        self._path = folder / _FILE
        self._paired: dict[str, PairedOne] = {}
        if self._path.exists():
            try:
                found = _Paired.model_validate_json(self._path.read_bytes())
            except (OSError, ValidationError) as cause:
                why = reason_of(cause) if isinstance(cause, OSError) else "it is not what a desk writes"
                raise LinkError(
                    f"{shown(self._path)} cannot be used: {why}.", "Take it away, and pair the stations anew."
                ) from cause
            self._paired = {one.token: one for one in found.paired}

    @property
    def listed(self) -> tuple[PairedOne, ...]:
        """All of them, by kind and name."""
        return tuple(sorted(self._paired.values(), key=lambda one: (one.kind, one.name)))

    def add(self, kind: Kind, name: str) -> str:
        """Pair somebody, in place of whoever has had this name; return the token.

        Raises:
            LinkError: there are too many, or it cannot be written.
        """
        token = secrets.token_urlsafe(32)
        kept = {key: one for key, one in self._paired.items() if (one.kind, one.name) != (kind, name)}
        if len(kept) >= MOST_PAIRED:
            raise LinkError(f"{MOST_PAIRED} are paired already.", "Unpair some at the desk.")
        self._keep(kept | {_digest(token): PairedOne(name=name, kind=kind, token=_digest(token))})
        return token

    def remove(self, kind: Kind, name: str) -> None:
        """Unpair somebody: their token is taken no more.

        Raises:
            LinkError: it cannot be written.
        """
        self._keep({key: one for key, one in self._paired.items() if (one.kind, one.name) != (kind, name)})

    def allow(self, name: str, *, signs: bool) -> bool:
        """Let a phone or tablet sign and start, or no more; whether it is paired.

        Raises:
            LinkError: it cannot be written.
        """
        found = {key: one for key, one in self._paired.items() if (one.kind, one.name) == ("browser", name)}
        if found:
            self._keep(self._paired | {key: one.model_copy(update={"signs": signs}) for key, one in found.items()})
        return bool(found)

    def one(self, kind: Kind, token: str) -> PairedOne | None:
        """Who has this token; None for nobody."""
        found = self._paired.get(_digest(token))
        return found if found is not None and found.kind == kind else None

    def who(self, kind: Kind, token: str) -> str:
        """Whose token it is; empty for nobody's."""
        one = self.one(kind, token)
        return one.name if one is not None else ""

    def _keep(self, paired: dict[str, PairedOne]) -> None:
        write_owner_only(self._path, _Paired(paired=tuple(paired.values())).model_dump_json().encode())
        self._paired = paired


@dataclass
class _Open:
    """A code that waits to be used."""

    secret: bytes
    until: float


class Pairing:
    """Codes, and what becomes of tries.

    Args:
        store: those who are paired.
        fingerprint: SHA-256 (hex) of the desk's certificate.
        clock: the desk's steady clock, seconds.
    """

    def __init__(self, store: PairedStore, fingerprint: str, clock: Callable[[], float]) -> None:
        self._store = store
        self.fingerprint = fingerprint
        self._clock = clock
        self._open: dict[Kind, _Open] = {}
        self._tries: deque[float] = deque(maxlen=MOST_A_MINUTE)
        self._wrong = 0

    def new_code(self, kind: Kind) -> str:
        """A code to show, in groups of four; one that was shown before for this kind is void.

        That of a browser is the secret alone: a browser cannot look at the certificate before it sends something.
        """
        secret = secrets.token_bytes(SECRET_BYTES)
        self._open[kind] = _Open(secret, self._clock() + LASTS_S)
        self._wrong = 0
        if kind == "browser":
            return in_groups(secret)
        return PairingCode(self.fingerprint[: 2 * DIGEST_BYTES], secret.hex()).text

    def void(self) -> None:
        """No code that was shown is taken any more."""
        self._open.clear()

    def use(self, kind: Kind, secret: str, name: str) -> str:
        """Pair whoever knows the secret; return the token.

        Args:
            kind: what is paired.
            secret: in hexadecimal, as it came.
            name: under which it is known from now on.

        Raises:
            LinkError: it is wrong, used, too old, or there were too many tries; the sentence says what to do.
        """
        now = self._clock()
        if len(self._tries) == MOST_A_MINUTE and now < self._tries[0] + _MINUTE_S:
            raise LinkError("There were too many tries.", "Wait a minute, then try again.")
        self._tries.append(now)
        code = self._open.get(kind)
        if code is not None and now >= code.until:
            del self._open[kind]
            code = None
        if code is None or not hmac.compare_digest(secret.encode(), code.secret.hex().encode()):
            self._wrong += 1
            if self._wrong >= MOST_WRONG:
                self.void()
            raise LinkError("This code is not taken: it is wrong, used or too old.", "Have the desk show a new one.")
        del self._open[kind]
        return self._store.add(kind, name)


def _digest(token: str) -> str:
    return hashlib.sha256(token.encode()).hexdigest()
