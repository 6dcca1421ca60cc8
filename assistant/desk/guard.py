"""Who may speak with a server on this machine: this machine's browser, at the very address that was opened."""

import secrets
from collections.abc import Mapping

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

HEADERS: Mapping[str, str] = {
    "Content-Security-Policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; form-action 'none'; "
        "base-uri 'none'; frame-ancestors 'none'"
    ),
    "Cache-Control": "no-store",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
}
"""Go with every answer that has no stricter or other one of its own: nothing from elsewhere runs, frames or keeps a
page."""


class Guard:
    """Lets through what comes from the opened page; refuses everything else in plain words.

    A page of another site can reach this address but knows no token; one whose host name was pointed at this machine
    is refused by its Host; one that tries to write is refused by its Origin.

    Args:
        app: what is guarded.
        token: the first part of every path; made anew at each start.
        host: the address and port that the browser has to name.
    """

    def __init__(self, app: ASGIApp, token: str, host: str) -> None:
        self._app = app
        self._token = token.encode()
        self._host = host

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request."""
        if scope["type"] != "http":
            return
        refused = self._refusal(scope)

        async def send_guarded(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                headers.update({name: value for name, value in HEADERS.items() if name not in headers})
            await send(message)

        await (refused or self._app)(scope, receive, send_guarded)

    def _refusal(self, scope: Scope) -> PlainTextResponse | None:
        headers = Headers(scope=scope)
        if headers.get("host") != self._host:
            return PlainTextResponse("This is not the address of this page.\n", 421)
        token = scope["path"].split("/", 2)[1].encode()
        if not secrets.compare_digest(token, self._token):
            return PlainTextResponse("There is no such page. Open the address that the program printed.\n", 404)
        origin = headers.get("origin")
        is_own = origin == f"http://{self._host}"
        writes = scope["method"] not in ("GET", "HEAD")
        if (origin is not None or writes) and not is_own:
            return PlainTextResponse("Only the opened page may do this.\n", 403)
        if headers.get("sec-fetch-site", "none") not in ("none", "same-origin"):
            return PlainTextResponse("Another site may not open this page.\n", 403)
        return None
