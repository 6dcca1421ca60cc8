"""The desk's side of the link: takes what stations report and gives them their orders. Runs in the server's thread."""

import secrets
from collections.abc import Awaitable, Callable
from typing import TypeVar

from pydantic import BaseModel, ValidationError
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Route

from assistant.desk.hub import Hub
from assistant.desk.pairing import PairedStore, Pairing
from assistant.errors import AssistantError, LinkError
from assistant.link.messages import (
    WAIT_S,
    AnsweredBy,
    Begun,
    Greeting,
    Have,
    Hello,
    Lines,
    Orders,
    Pair,
    Paired,
    Waiting,
)

LONGEST_BODY = 8 << 20
"""Bytes of one report: some entries of the longest kind, or an attempt's papers."""
LONGEST_BEGINNING = 16_384
"""Bytes that are read of somebody who is not known yet."""
MOST_WAITING = 4
"""Requests of one station that wait for orders at once: after a cut, an old one may not have ended yet."""

_Message = TypeVar("_Message", bound=BaseModel)
_PLAIN = {"Cache-Control": "no-store", "X-Content-Type-Options": "nosniff"}


class _RefusedError(Exception):
    """A request is refused; says so in a status and a sentence. Never leaves this module."""

    def __init__(self, status: int, why: str) -> None:
        super().__init__(why)
        self.status = status


class Reception:
    """What stations speak with.

    Args:
        hub: the desk's memory.
        token: by which stations of this machine are known.
        store: stations of other machines that are paired.
        pairing: codes that are open; None where no other machine can reach this desk.
    """

    def __init__(self, hub: Hub, token: str, store: PairedStore, pairing: Pairing | None = None) -> None:
        self._hub = hub
        self._token = token
        self._store = store
        self._pairing = pairing
        self._desk = secrets.token_hex(32)
        self._waiting: dict[str, int] = {}
        self._here: set[str] = set()

    def app(self, *, here: bool) -> Starlette:
        """The routes below /link/.

        Args:
            here: for stations of this machine, over loopback; else for paired ones, over TLS.
        """
        handlers: dict[str, Callable[[Request, str | None], Awaitable[Response]]] = {
            "hello": self._hello,
            "begun": self._begun,
            "lines": self._lines,
            "orders": self._orders,
            "answered": self._answered,
        }
        guarded = {name: self._guarded(work, here) for name, work in handlers.items()}
        if not here and self._pairing is not None:
            guarded["pair"] = self._answering(self._pair)
        return Starlette(routes=[Route(f"/link/{name}", work, methods=["POST"]) for name, work in guarded.items()])

    def _guarded(
        self, work: Callable[[Request, str | None], Awaitable[Response]], here: bool
    ) -> Callable[[Request], Awaitable[Response]]:
        async def known(request: Request) -> Response:
            return await work(request, self._known(request, here))

        return self._answering(known)

    @staticmethod
    def _answering(work: Callable[[Request], Awaitable[Response]]) -> Callable[[Request], Awaitable[Response]]:
        async def answer(request: Request) -> Response:
            try:
                if "origin" in request.headers or "sec-fetch-site" in request.headers:
                    raise _RefusedError(403, "No page may do this.")
                return await work(request)
            except _RefusedError as refused:
                # What was not read of the request is never taken for the next one.
                return PlainTextResponse(f"{refused}\n", refused.status, {**_PLAIN, "Connection": "close"})

        return answer

    def _known(self, request: Request, here: bool) -> str | None:
        """The name of a paired station; None for one of this machine, which may have any.

        Raises:
            _RefusedError: it is nobody's.
        """
        scheme, _, token = request.headers.get("authorization", "").partition(" ")
        if scheme == "Bearer" and token:
            if here and secrets.compare_digest(token.encode(), self._token.encode()):
                return None
            if not here and (name := self._store.who("station", token)):
                return name
        raise _RefusedError(401, "This desk does not know the station. Pair it.")

    def _check_name(self, name: str | None, station: str) -> None:
        if station != name and (name is not None or self._is_paired(station)):
            raise _RefusedError(403, "Another station has this name.")

    async def _hello(self, request: Request, name: str | None) -> Response:
        hello = await _read(request, Hello)
        self._check_name(name, hello.station)
        if name is None:
            self._here.add(hello.station)
        self._hub.hello(hello)
        return _answer(Greeting(desk=self._desk))

    async def _begun(self, request: Request, name: str | None) -> Response:
        begun = await _read(request, Begun)
        self._check_name(name, begun.station)
        known = self._hub.attempts.get(begun.attempt)
        if known is not None and known.begun.station != begun.station:
            raise _RefusedError(403, "This attempt goes on at another station.")
        return _answer(Have(have=_done(lambda: self._hub.begun(begun, here=name is None))))

    async def _lines(self, request: Request, name: str | None) -> Response:
        lines = await _read(request, Lines)
        known = self._hub.attempts.get(lines.attempt)
        if known is None:
            raise _RefusedError(404, "This desk does not know that the attempt goes on.")
        self._check_name(name, known.begun.station)
        return _answer(Have(have=_done(lambda: self._hub.lines(lines))))

    async def _orders(self, request: Request, name: str | None) -> Response:
        waiting = await _read(request, Waiting)
        self._check_name(name, waiting.station)
        count = self._waiting.get(waiting.station, 0)
        if count >= MOST_WAITING:
            raise _RefusedError(429, "This station waits already.")
        self._waiting[waiting.station] = count + 1
        try:
            orders = await self._hub.orders(waiting.station, WAIT_S, frozenset(waiting.have))
        finally:
            self._waiting[waiting.station] -= 1
        return _answer(Orders(orders=orders))

    async def _answered(self, request: Request, name: str | None) -> Response:
        by = await _read(request, AnsweredBy)
        self._check_name(name, by.station)
        self._hub.answered(by.station, by.answered)
        return Response(status_code=204)

    async def _pair(self, request: Request) -> Response:
        pair = await _read(request, Pair, LONGEST_BEGINNING)
        if self._pairing is None:
            raise _RefusedError(404, "This desk pairs nobody.")
        if pair.station in self._here:
            raise _RefusedError(409, "A station of the desk's own machine has this name. Choose another.")
        try:
            return _answer(Paired(token=self._pairing.use("station", pair.secret, pair.station)))
        except LinkError as refused:
            raise _RefusedError(403, str(refused)) from refused

    def _is_paired(self, station: str) -> bool:
        return any(one.kind == "station" and one.name == station for one in self._store.listed)


async def _read(request: Request, kind: type[_Message], most: int = LONGEST_BODY) -> _Message:
    """The message of a request.

    Raises:
        _RefusedError: it is too long, or is no such message.
    """
    if request.headers.get("content-type") != "application/json":
        raise _RefusedError(415, "Reports come as JSON.")
    body = await _body(request, most)
    try:
        return kind.model_validate_json(body)
    except ValidationError as invalid:
        first = invalid.errors(include_url=False, include_input=False, include_context=False)[0]
        where = ".".join(str(one) for one in first["loc"])
        raise _RefusedError(400, f"That is no such report: {where}: {first['msg']}"[:300]) from None


async def _body(request: Request, most: int) -> bytes:
    pieces: list[bytes] = []
    size = 0
    async for piece in request.stream():
        size += len(piece)
        if size > most:
            raise _RefusedError(413, "That is too long for one report.")
        pieces.append(piece)
    return b"".join(pieces)


def _done(work: Callable[[], int]) -> int:
    """What the hub makes of a report.

    Raises:
        _RefusedError: it does not take it.
    """
    try:
        return work()
    except AssistantError as refused:
        # What this machine's disk refuses now it may take later: the station keeps trying.
        status = 503 if isinstance(refused.__cause__, OSError) else 409
        raise _RefusedError(status, str(refused)) from refused


def _answer(message: BaseModel) -> Response:
    return Response(message.model_dump_json(), media_type="application/json", headers=_PLAIN)
