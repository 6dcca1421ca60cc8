"""Small web servers in one thread of their own: whatever happens to them, an attempt goes on."""

import asyncio
import secrets
import socket
import threading
from collections.abc import Awaitable, Callable
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar, cast

import uvicorn
from starlette.types import ASGIApp
from uvicorn.protocols.http.h11_impl import H11Protocol

from assistant.desk.guard import Guard
from assistant.desk.to_the_end import ToTheEnd

LOOPBACK = "127.0.0.1"
MOST_CONNECTIONS = 64
"""Open at once; more are refused, so that the program keeps files to open for its record."""
HEAD_S = 10.0
"""A connection that has asked for nothing after so long is closed, seconds."""
HEAD_BYTES = 16_384
"""Longest head of a request."""
IDLE_S = 30
"""A connection between two requests is closed after so long, seconds; a station says more often that it is there."""
CLOSE_S = 2.0
"""Longest wait for the last answers at the end, seconds."""
_REFUSED = (
    b"HTTP/1.1 503 Service Unavailable\r\nContent-Type: text/plain\r\nConnection: close\r\n\r\n"
    b"Too many connections. Close some pages.\n"
)

_Result = TypeVar("_Result")


@dataclass(frozen=True)
class Listening:
    """What is served where.

    Attributes:
        at: the socket, bound and listening.
        app: what it serves.
        most: connections that may be open at once.
        certificate, key: files for TLS; None without.
    """

    at: socket.socket
    app: ASGIApp
    most: int = MOST_CONNECTIONS
    certificate: Path | None = None
    key: Path | None = None


class Server:
    """Serves on several sockets in one thread, so that what they serve may share a state without locks.

    Args:
        listening: one for each socket.
    """

    def __init__(self, *listening: Listening) -> None:
        self._sockets = [one.at for one in listening]
        self._servers = [_server(one) for one in listening]
        self._loop = _Loop()
        self._thread = threading.Thread(target=self._serve, name="pages", daemon=True)
        self._thread.start()

    def run(self, work: Callable[[], Awaitable[_Result] | _Result]) -> _Result:
        """Do something in the server's thread, from another one; return what comes of it.

        Raises:
            Exception: whatever it raises.
        """

        async def done() -> _Result:
            result = work()
            return await result if isinstance(result, Awaitable) else result

        return asyncio.run_coroutine_threadsafe(done(), self._loop).result(HEAD_S)

    def close(self) -> None:
        """Give the last answers and end; returns within 2 s."""
        for server in self._servers:
            server.should_exit = True
        self._thread.join(CLOSE_S)
        for one in self._sockets:
            one.close()

    def _serve(self) -> None:
        pairs = zip(self._servers, self._sockets, strict=True)

        async def serve() -> None:
            await asyncio.gather(*(server.serve(sockets=[at]) for server, at in pairs))
            # Whoever reads nothing takes neither the rest of an answer nor TLS's goodbye.
            for server in self._servers:
                for connection in list(server.server_state.connections):
                    connection.transport.abort()

        with asyncio.Runner(loop_factory=lambda: self._loop) as runner, suppress(asyncio.CancelledError):
            runner.run(serve())


class LocalServer:
    """Serves an application to this machine's browser alone, at an address with a token of its own.

    Args:
        app: what it serves; it sees paths that begin with the token.
    """

    def __init__(self, app: ASGIApp) -> None:
        at = local_socket()
        self._host = host_of(at)
        self._token = new_token()
        self._server = Server(Listening(at, Guard(app, self._token, self._host)))

    @property
    def address(self) -> str:
        """What the browser opens."""
        return f"http://{self._host}/{self._token}/"

    def close(self) -> None:
        """Give the last answers and end; returns within 2 s."""
        self._server.close()


def new_token() -> str:
    """The first part of every path: who knows it was given it."""
    return secrets.token_urlsafe(24)


def local_socket(port: int = 0) -> socket.socket:
    """A socket that only this machine reaches; port 0 takes one that is free.

    Raises:
        OSError: the port is taken.
    """
    return socket.create_server((LOOPBACK, port))


def host_of(at: socket.socket) -> str:
    """Address and port, as a browser names them."""
    host, port = at.getsockname()[:2]
    return f"{host}:{port}"


class _Loop(asyncio.SelectorEventLoop):
    """An event loop that gives nobody long to agree on TLS: until then a connection counts nowhere."""

    async def create_server(self, *arguments, ssl=None, **named):  # type: ignore[no-untyped-def]
        if ssl is not None:
            named["ssl_handshake_timeout"] = HEAD_S
        return await super().create_server(*arguments, ssl=ssl, **named)


def _server(listening: Listening) -> uvicorn.Server:
    return uvicorn.Server(
        uvicorn.Config(
            ToTheEnd(listening.app),
            http=type("Sparing", (_Sparing,), {"most": listening.most}),
            ws="none",
            loop="asyncio",
            lifespan="off",
            log_config=None,
            access_log=False,
            server_header=False,
            proxy_headers=False,
            h11_max_incomplete_event_size=HEAD_BYTES,
            timeout_keep_alive=IDLE_S,
            timeout_graceful_shutdown=1,
            ssl_certfile=listening.certificate,
            ssl_keyfile=listening.key,
        )
    )


class _Sparing(H11Protocol):
    """A connection; there are never too many, and none waits for ever for its first request."""

    most = MOST_CONNECTIONS

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        super().connection_made(transport)
        if len(self.connections) > self.most:
            transport.write(_REFUSED)
            transport.close()
            return
        self.loop.call_later(HEAD_S, self._close_unasked)

    def _close_unasked(self) -> None:
        if cast("object | None", self.cycle) is None:  # no request was read yet
            self.transport.close()
