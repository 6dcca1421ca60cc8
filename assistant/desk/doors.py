"""The desk's doors: one on loopback for this machine's browser and stations, one over TLS where a lab wants it."""

import secrets
import socket
import sys
import time
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from starlette.datastructures import Headers
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Receive, Scope, Send

from assistant.desk.certificate import own_certificate
from assistant.desk.guard import Guard
from assistant.desk.hub import Hub
from assistant.desk.lab_guard import LabGuard
from assistant.desk.pairing import PairedStore, Pairing
from assistant.desk.reception import Reception
from assistant.desk.server import Listening, Server, host_of, local_socket, new_token
from assistant.errors import LinkError
from assistant.link.addresses import DeskAddress, read_address, write_address
from assistant.record.disk import reason_of

LINK = "/link/"
"""Where the paths of the link begin."""
DEFAULT_PORT = 8443
"""The lab's port where none is named; stations look for the desk there again after it was away."""
MOST_CONNECTIONS = 256
"""At each door: a station has two or three, an open page one or two."""
FILES = 8_192
"""Files and connections of this process; connections that have not agreed on TLS yet count at no door."""


class Doors:
    """The desk's servers, open from now on; one thread serves them, in which the hub lives.

    Args:
        hub: the desk's memory.
        pages: the pages; they see paths whose first part is a token, or `PAGES`.
        folder: where certificate, pairings and the desk's address are kept.
        port: on loopback; 0 takes one that is free.
        lab: host and port for the lab; an empty host is every network of this machine. None: no other machine.

    Raises:
        LinkError: a port is taken, or something in the folder cannot be used.
    """

    def __init__(
        self, hub: Hub, pages: ASGIApp, folder: Path, *, port: int = 0, lab: tuple[str, int] | None = None
    ) -> None:
        _allow_files()
        self.hub = hub
        self._closed = False
        self.store = PairedStore(folder)
        self.pairing: Pairing | None = None
        at = _opened(lambda: local_socket(port), f"127.0.0.1:{port}")
        host, link_token, page_token = host_of(at), secrets.token_urlsafe(32), new_token()
        self.address = f"http://{host}/{page_token}/"
        self._link = DeskAddress(url=f"http://{host}", token=link_token)
        doors = []
        self.lab_port = 0
        if lab is not None:
            certificate = own_certificate(folder)
            self.pairing = Pairing(self.store, certificate.fingerprint, time.monotonic)
            lab_at = _opened(lambda: _lab_socket(*lab), f"{lab[0]}:{lab[1]}")
            self.lab_port = int(lab_at.getsockname()[1])
            guard = LabGuard(pages, self.store, self.pairing, self.lab_port, [lab[0]] if lab[0] else [])
            reception = Reception(hub, link_token, self.store, self.pairing)
            split = _Split(reception.app(here=False), guard)
            doors.append(Listening(lab_at, split, MOST_CONNECTIONS, certificate.path, certificate.key))
        else:
            reception = Reception(hub, link_token, self.store)
        local = _Split(_OnlyHost(reception.app(here=True), host), Guard(pages, page_token, host))
        self._file = folder / "desk.json"
        self.server = Server(Listening(at, local, MOST_CONNECTIONS), *doors)
        write_address(self._file, self._link)

    def close(self) -> None:
        """Close all doors; stations go on alone. Harmless when done twice."""
        if self._closed:
            return
        self._closed = True
        self.server.run(self.hub.close)
        if read_address(self._file) == self._link:
            with suppress(OSError):
                self._file.unlink()
        self.server.close()


class _Split:
    """The link to the one, everything else to the other."""

    def __init__(self, link: ASGIApp, pages: ASGIApp) -> None:
        self._link = link
        self._pages = pages

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        is_link = scope["type"] == "http" and scope["path"].startswith(LINK)
        await (self._link if is_link else self._pages)(scope, receive, send)


class _OnlyHost:
    """Refuses requests that name another host: a page whose name was pointed at this machine."""

    def __init__(self, app: ASGIApp, host: str) -> None:
        self._app = app
        self._host = host

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if Headers(scope=scope).get("host") == self._host:
            await self._app(scope, receive, send)
        else:
            await PlainTextResponse("This is not the address of this desk.\n", 421)(scope, receive, send)


def _allow_files() -> None:
    """Let this process open as many files as a full house at both doors takes, with room for those who knock."""
    if sys.platform == "win32":  # there is no such limit
        return
    import resource

    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    wanted = FILES if hard == resource.RLIM_INFINITY else min(FILES, hard)
    if soft != resource.RLIM_INFINITY and soft < wanted:
        with suppress(OSError, ValueError):
            resource.setrlimit(resource.RLIMIT_NOFILE, (wanted, hard))


def _lab_socket(host: str, port: int) -> socket.socket:
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    return socket.create_server((host, port), family=family)


def _opened(make: Callable[[], socket.socket], where: str) -> socket.socket:
    try:
        return make()
    except (OSError, OverflowError) as cause:
        raise LinkError(f"{where} cannot be opened: {reason_of(cause)}.", "Choose another port.") from cause
