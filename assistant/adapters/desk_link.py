"""How a station speaks with its desk: one request at a time over HTTP, on this machine or over TLS."""

import hashlib
import socket
import ssl
from typing import TypeVar

import urllib3
from pydantic import BaseModel, ValidationError

from assistant.errors import LinkError
from assistant.link.addresses import DeskAddress
from assistant.link.messages import (
    WAIT_S,
    Answered,
    AnsweredBy,
    Begun,
    Greeting,
    Have,
    Hello,
    Lines,
    Order,
    Orders,
    Pair,
    Paired,
    Waiting,
)
from assistant.link.pairing_code import PairingCode
from assistant.text import shown

CONNECT_S = 3.0
ANSWER_S = 4.0
"""So long a desk may take to connect and to answer, seconds; then it counts as lost."""
LONGEST_ANSWER = 64 << 20
"""Bytes of an answer; orders with the texts of some drawn orders are the longest."""
_LONGEST_REASON = 300

_Answer = TypeVar("_Answer", bound=BaseModel)


class LostError(Exception):
    """The desk cannot be reached, or is another one than it should be."""


class RefusedError(Exception):
    """The desk is there, and does not take it; the text says why.

    Attributes:
        status: of HTTP; 401 where it does not know this station, 404 where it does not know the attempt.
    """

    def __init__(self, status: int, why: str) -> None:
        super().__init__(why)
        self.status = status


class DeskLink:
    """A desk at its address; for any number of threads.

    Args:
        desk: where it is, and how this station is known there.
    """

    def __init__(self, desk: DeskAddress) -> None:
        self._url = desk.url
        self._headers = {"Authorization": f"Bearer {desk.token}", "Content-Type": "application/json"}
        # The certificate is nobody's but the desk's own, so the pin takes the place of names and authorities: a
        # connection with another one is closed before anything is sent.
        self._pool = urllib3.PoolManager(
            2, retries=False, cert_reqs=ssl.CERT_NONE, assert_fingerprint=desk.fingerprint or None
        )

    def hello(self, hello: Hello) -> Greeting:
        """Say that the station is there.

        Raises:
            LostError, RefusedError: as every method here.
        """
        return self._sent("hello", hello, Greeting)

    def begun(self, begun: Begun) -> int:
        """Say that an attempt goes on; return how many of its entries the desk has."""
        return self._sent("begun", begun, Have).have

    def lines(self, lines: Lines) -> int:
        """Give entries; return how many the desk has now."""
        return self._sent("lines", lines, Have).have

    def orders(self, waiting: Waiting) -> tuple[Order, ...]:
        """Wait for orders beside those that are known; empty where none came for a while."""
        return self._sent("orders", waiting, Orders, WAIT_S + ANSWER_S).orders

    def answered(self, station: str, answered: Answered) -> None:
        """Say what became of an order."""
        self._sent("answered", AnsweredBy(station=station, answered=answered), None)

    def pair(self, pair: Pair) -> str:
        """Send the secret; return the token by which the station is known from now on."""
        return self._sent("pair", pair, Paired).token

    def close(self) -> None:
        """Let go of every connection."""
        self._pool.clear()

    def _sent(self, name: str, message: BaseModel, kind: type[_Answer] | None, answer_s: float = ANSWER_S) -> _Answer:
        try:
            answer = self._pool.request(
                "POST",
                f"{self._url}/link/{name}",
                body=message.model_dump_json().encode(),
                headers=self._headers,
                timeout=urllib3.Timeout(connect=CONNECT_S, read=answer_s),
                redirect=False,
                preload_content=False,
            )
            try:
                content = answer.read(LONGEST_ANSWER)
            finally:
                answer.drain_conn()
                answer.release_conn()
        except (urllib3.exceptions.HTTPError, OSError) as cause:
            raise LostError(str(cause)) from cause
        if answer.status >= 500:  # it ends, or has too much to do
            raise LostError(f"status {answer.status}")
        if answer.status not in (200, 204):
            raise RefusedError(answer.status, shown(content[:_LONGEST_REASON].decode("utf-8", "replace").strip()))
        if kind is None:
            return None  # type: ignore[return-value]
        try:
            return kind.model_validate_json(content)
        except ValidationError as cause:
            raise LostError("what answers there is not a desk") from cause


def pair_with(host: str, port: int, station: str, code: PairingCode) -> DeskAddress:
    """Pair this station with the desk at an address.

    The certificate is looked at first, over a connection on which nothing is sent: only where its digest begins as the
    code says, the secret goes to it, over a connection that takes no other certificate.

    Raises:
        LinkError: nobody answers there, it is another desk, or it refuses the code.
    """
    where = f"{host}:{port}"
    try:
        pem = ssl.get_server_certificate((host, port), timeout=CONNECT_S)
    except (OSError, ValueError) as cause:
        raise LinkError(
            f"No desk answers at {shown(where)}.", "Look whether the desk was started with --lab, and at the address."
        ) from cause
    fingerprint = hashlib.sha256(ssl.PEM_cert_to_DER_cert(pem)).hexdigest()
    if not fingerprint.startswith(code.digest):
        raise LinkError(
            f"What answers at {shown(where)} is not the desk that showed this code. Nothing was sent to it.",
            "Look at the code and the address; if both are right, something stands in between.",
        )
    host = f"[{host}]" if ":" in host else host
    address = DeskAddress(url=f"https://{host}:{port}", token=_NO_TOKEN, fingerprint=fingerprint, station=station)
    link = DeskLink(address)
    try:
        return address.model_copy(update={"token": link.pair(Pair(station=station, secret=code.secret))})
    except LostError as cause:
        raise LinkError(f"The desk at {shown(where)} cannot be reached any more.", "Try again.") from cause
    except RefusedError as refused:
        raise LinkError(f"The desk refuses: {refused}") from refused
    finally:
        link.close()


_NO_TOKEN = "-" * 20
"""What a station that is not paired yet has in place of one."""


def host_name() -> str:
    """What this machine is called, fit for a station's name."""
    name = "".join(letter for letter in socket.gethostname().split(".")[0] if letter.isalnum() or letter in "-_")
    return name[:64] or "station"
