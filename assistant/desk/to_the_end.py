"""Requests are read to their end before they are answered, within bounds.

Who still sends does not read yet: where the connection is closed at once, the answer is lost with it (RFC 9112, 9.6,
from memory). So what is too long is refused in words that arrive, at every door, whoever refuses it.
"""

import asyncio
from contextlib import suppress

from starlette.datastructures import Headers
from starlette.exceptions import HTTPException
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

BODY_S = 20.0
"""So long a request may take to come, seconds."""
MOST_READ = 32 << 20
"""Bytes of a request that are read; of a longer one the connection is cut."""


class ToTheEnd:
    """Lets the answer wait for the rest of its request, which is thrown away.

    Args:
        app: what answers; a request that comes too slowly ends in it as an `HTTPException`.
    """

    def __init__(self, app: ASGIApp) -> None:
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request."""
        headers = Headers(scope=scope) if scope["type"] == "http" else Headers()
        if "content-length" not in headers and "transfer-encoding" not in headers:
            await self._app(scope, receive, send)
            return
        until = asyncio.get_running_loop().time() + BODY_S
        rest, size = True, 0

        async def read() -> Message:
            nonlocal rest, size
            if not rest:
                return await receive()
            try:
                async with asyncio.timeout_at(until):
                    message = await receive()
            except TimeoutError:
                raise HTTPException(408, "That took too long to come.", {"Connection": "close"}) from None
            rest = bool(message.get("more_body"))
            size += len(message.get("body", b""))
            return message

        async def answer(message: Message) -> None:
            # Whoever waits for leave to send has sent nothing that could be read.
            if message["type"] == "http.response.start" and not ("expect" in headers and not size):
                with suppress(HTTPException):
                    while rest and size < MOST_READ:
                        await read()
            await send(message)

        try:
            await self._app(scope, read, answer)
        except HTTPException as slow:
            await PlainTextResponse(f"{slow.detail}\n", slow.status_code, slow.headers)(scope, receive, send)
