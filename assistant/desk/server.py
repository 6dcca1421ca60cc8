"""A small web server on this machine, in a thread of its own: whatever happens to it, an attempt goes on."""

import asyncio
import secrets
import socket
import threading
from typing import cast

import uvicorn
from starlette.types import ASGIApp
from uvicorn.protocols.http.h11_impl import H11Protocol

from assistant.desk.guard import Guard

LOOPBACK = "127.0.0.1"
MOST_CONNECTIONS = 64
"""Open at once; more are refused, so that the program keeps files to open for its record."""
HEAD_S = 10.0
"""A connection that has asked for nothing after so long is closed, seconds."""
HEAD_BYTES = 16_384
"""Longest head of a request."""
CLOSE_S = 2.0
"""Longest wait for the last answers at the end, seconds."""
_REFUSED = (
    b"HTTP/1.1 503 Service Unavailable\r\nContent-Type: text/plain\r\nConnection: close\r\n\r\n"
    b"Too many connections. Close some pages.\n"
)


class LocalServer:
    """Serves an application to this machine's browser alone, at an address with a token of its own.

    Args:
        app: what it serves; it sees paths that begin with the token.
    """

    def __init__(self, app: ASGIApp) -> None:
        self._socket = socket.create_server((LOOPBACK, 0))
        self._host = f"{LOOPBACK}:{self._socket.getsockname()[1]}"
        self._token = secrets.token_urlsafe(24)
        self._server = uvicorn.Server(
            uvicorn.Config(
                Guard(app, self._token, self._host),
                http=_Sparing,
                ws="none",
                loop="asyncio",
                lifespan="off",
                log_config=None,
                access_log=False,
                server_header=False,
                proxy_headers=False,
                h11_max_incomplete_event_size=HEAD_BYTES,
                timeout_graceful_shutdown=1,
            )
        )
        self._thread = threading.Thread(
            target=self._server.run, kwargs={"sockets": [self._socket]}, name="pages", daemon=True
        )
        self._thread.start()

    @property
    def address(self) -> str:
        """What the browser opens."""
        return f"http://{self._host}/{self._token}/"

    def close(self) -> None:
        """Give the last answers and end; returns within 2 s."""
        self._server.should_exit = True
        self._thread.join(CLOSE_S)
        self._socket.close()


class _Sparing(H11Protocol):
    """A connection; there are never many, and none waits for ever for its first request."""

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        super().connection_made(transport)
        if len(self.connections) > MOST_CONNECTIONS:
            transport.write(_REFUSED)
            transport.close()
            return
        self.loop.call_later(HEAD_S, self._close_unasked)

    def _close_unasked(self) -> None:
        if cast("object | None", self.cycle) is None:  # no request was read yet
            self.transport.close()
