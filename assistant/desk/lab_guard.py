"""Who may see the desk's pages over the lab's network: a phone or tablet that was paired by a code, over TLS."""

import ipaddress
import socket
from collections.abc import Collection
from http.cookies import CookieError, SimpleCookie
from urllib.parse import parse_qs

from starlette.datastructures import Headers, MutableHeaders
from starlette.requests import Request
from starlette.responses import HTMLResponse, PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from assistant.desk.drawn import static
from assistant.desk.guard import HEADERS
from assistant.desk.pairing import PairedStore, Pairing
from assistant.desk.rights import comes_by_phone, why_not_sent
from assistant.errors import LinkError
from assistant.link.pairing_code import read_secret

COOKIE = "__Host-desk"
"""A name by which browsers insist on Secure, on this host alone and on every path (RFC 6265bis, from memory)."""
PAGES = "desk"
"""First part of every path of the pages here: the cookie takes the place of a token in it."""
LASTS_DAYS = 180
_PAIR = "/pair"
_LONGEST_BODY = 2_048
_A_DAY_S = 86_400
_CSP = HEADERS["Content-Security-Policy"].replace("form-action 'none'", "form-action 'self'")
_PAGE = """<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Pair with the desk</title>
<link rel="stylesheet" href="/pair.css">
</head>
<body>
<main>
<h1>Pair with the desk</h1>
<p>{told}</p>
<form method="post" action="/pair">
<label for="code">Code</label>
<input id="code" name="code" type="text" maxlength="40" autocomplete="off" autocapitalize="characters"
 spellcheck="false" required autofocus>
<button type="submit">Pair</button>
</form>
</main>
</body>
</html>
"""
_ASKS = "Compare the certificate as the desk says, then type the code that it shows for a phone or tablet."


class LabGuard:
    """Lets through what comes from a paired browser, and shows everybody else the page on which a code is typed.

    Args:
        app: what is guarded; it sees paths that begin with `PAGES`.
        store: those who are paired.
        pairing: codes that are open.
        port: of the server.
        names: names of this machine; an address in figures is always one.
    """

    def __init__(
        self, app: ASGIApp, store: PairedStore, pairing: Pairing, port: int, names: Collection[str] = ()
    ) -> None:
        self._app = app
        self._store = store
        self._pairing = pairing
        self._port = port
        own = socket.gethostname().lower()
        self._names = {own, f"{own}.local", "localhost", *(name.lower() for name in names)}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request."""
        if scope["type"] != "http":
            return

        async def send_guarded(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                headers.update({name: value for name, value in HEADERS.items() if name not in headers})
            await send(message)

        await (await self._answer(Request(scope, receive)))(scope, receive, send_guarded)

    async def _answer(self, request: Request) -> ASGIApp:
        refused = self._refusal(request.scope)
        if refused is not None:
            return refused
        path = request.url.path
        if path == "/pair.css":
            return Response(static("base.css") + static("desk.css"), media_type="text/css")
        if path == _PAIR:
            return await self._pair(request) if request.method == "POST" else _page(_ASKS)
        phone = self._store.one("browser", _cookie(request))
        if phone is None:
            if request.method in ("GET", "HEAD") and request.headers.get("sec-fetch-dest", "document") == "document":
                return RedirectResponse(_PAIR, 303)
            return PlainTextResponse("This browser is not paired with the desk.\n", 401)
        if path == "/":
            return RedirectResponse(f"/{PAGES}/", 303)
        if path.split("/", 2)[1] != PAGES:
            return PlainTextResponse("There is no such page.\n", 404)
        comes_by_phone(request.scope, signs=phone.signs)
        if request.method not in ("GET", "HEAD") and (why := why_not_sent(request)):
            return PlainTextResponse(f"{why}\n", 403)
        return self._app

    async def _pair(self, request: Request) -> Response:
        body = b""
        async for piece in request.stream():
            body += piece
            if len(body) > _LONGEST_BODY:
                return PlainTextResponse("That is too long for a code.\n", 413, {"Connection": "close"})
        given = parse_qs(body.decode("ascii", "replace"), max_num_fields=4) if body else {}
        try:
            name = f"browser at {request.client.host if request.client else 'an unknown address'}"
            token = self._pairing.use("browser", read_secret(given.get("code", [""])[0]), name)
        except LinkError as refused:
            return _page(str(refused), 403)
        answer = RedirectResponse(f"/{PAGES}/", 303)
        lasts_s = LASTS_DAYS * _A_DAY_S
        answer.set_cookie(COOKIE, token, max_age=lasts_s, secure=True, httponly=True, samesite="strict")
        return answer

    def _refusal(self, scope: Scope) -> PlainTextResponse | None:
        headers = Headers(scope=scope)
        host = headers.get("host", "")
        if not self._is_own(host):
            return PlainTextResponse("This is not the address of this page.\n", 421)
        origin = headers.get("origin")
        writes = scope["method"] not in ("GET", "HEAD")
        if (origin is not None or writes) and origin != f"https://{host}":
            return PlainTextResponse("Only the desk's own pages may do this.\n", 403)
        if headers.get("sec-fetch-site", "none") not in ("none", "same-origin"):
            return PlainTextResponse("Another site may not open this page.\n", 403)
        return None

    def _is_own(self, host: str) -> bool:
        """Whether a browser that names this host means this machine: another site's name that leads here does not."""
        name, _, port = host.rpartition(":")
        if port != str(self._port):
            return False
        if name.lower() in self._names:
            return True
        try:
            ipaddress.ip_address(name.removeprefix("[").removesuffix("]"))
        except ValueError:
            return False
        return True


def _page(told: str, status: int = 200) -> Response:
    # Without a referrer a browser sends a form with the origin "null" (Fetch standard, from memory).
    headers = {"Content-Security-Policy": _CSP, "Referrer-Policy": "same-origin"}
    return HTMLResponse(_PAGE.format(told=told), status, headers)


def _cookie(request: Request) -> str:
    try:
        cookies = SimpleCookie(request.headers.get("cookie", ""))
    except CookieError:
        return ""
    found = cookies.get(COOKIE)
    return found.value if found is not None else ""
