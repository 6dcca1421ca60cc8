"""The learner's display: a screen of the station's, shown on a page, on which one may also type."""

import asyncio
import contextlib
import json
import threading
import time
from collections.abc import AsyncIterator, Callable

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import HTMLResponse, PlainTextResponse, Response, StreamingResponse
from starlette.routing import Route

from assistant.desk.drawn import bands, page, static
from assistant.desk.shown import Kind, Middle, Shown
from assistant.guide.effects import Say
from assistant.guide.events import Event

LONGEST_LINE = 1_000
"""Characters kept of one line, as of one that is typed at the terminal."""
LONGEST_BODY = 8_192
"""Bytes of what is sent with one line."""
MOST_STREAMS = 8
"""Pages that are kept up to date at once."""
ONE_ANSWER_S = 2.0
"""So long a second line is refused while the first one to the same question is on its way to the record, seconds."""
STILL_THERE_S = 15.0
"""A page that hears nothing for so long is sent an empty line, so that a lost one is noticed."""
_FILES = {"base.css": "text/css", "display.css": "text/css", "display.js": "text/javascript"}


class Display:
    """What is shown now, for every page that is open.

    The station's thread only replaces what is shown; pages are drawn and sent in the server's thread, and a page that
    reads slowly is sent the newest state and misses what came between.
    """

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._shown = Shown()
        self._version = 0
        self._level = 0
        self._closed = False
        self._give: Callable[[str], None] | None = None
        self._given = (-1, 0.0)
        self._readers: dict[asyncio.Event, asyncio.AbstractEventLoop] = {}
        self.app = Starlette(
            routes=[
                Route("/{token}/", self._page),
                Route("/{token}/events", self._events),
                Route("/{token}/words", self._words, methods=["POST"]),
                Route("/{token}/{name}", self._file),
            ]
        )

    # The station's side.

    def idle(self) -> None:
        """No attempt goes on; an instructor starts one."""
        self._give = None
        self._put(Shown(middle=Middle(Kind.IDLE)))

    def begins(self) -> None:
        """An attempt begins: nothing of an earlier one is shown any more."""
        self._put(Shown())

    def takes(self, give: Callable[[str], None]) -> None:
        """From now on, give each typed line to `give`."""
        self._give = give

    def show(self, say: Say) -> None:
        """A sentence of the assistant."""
        self._put(self._shown.told(say))

    def listening(self) -> None:
        """The microphone is open."""
        self._level = 0
        self._put(self._shown.hears())

    def level(self, step: int) -> None:
        """So loud is what comes into the open microphone, 0 to 4: all that changes on a page without an entry."""
        if step != self._level:
            self._level = step
            self._wake()

    def asked(self, *, paused: bool) -> None:
        """An answer is wanted now."""
        self._put(self._shown.asks(paused=paused))

    def speaks(self, *, sounds: bool) -> None:
        """The voice begins to sound, or is silent again."""
        self._put(self._shown.sounds(sounds=sounds))

    def waits(self, seconds: int) -> None:
        """So many seconds of a timed wait are left."""
        self._put(self._shown.counts(seconds))

    def cover(self) -> None:
        """Take away what was shown so far."""
        self._put(self._shown.covered())

    def taken(self, event: Event) -> None:
        """What was heard or typed, once it is on disk."""
        self._put(self._shown.took(event))

    def over(self, short_head: str, course: str = "") -> None:
        """The attempt is over; its record has this short head.

        Args:
            short_head: of the record.
            course: a picture of the infusion (SVG) that may be looked at now; empty for none.
        """
        self._put(self._shown.ended(short_head, course))

    def close(self) -> None:
        """Send what is shown for the last time; no line is taken any more."""
        self._give = None
        self._closed = True
        self._wake()

    def _put(self, shown: Shown) -> None:
        if shown != self._shown:
            self._shown = shown
            self._version += 1
            self._wake()

    def _wake(self) -> None:
        with self._lock:
            readers = list(self._readers.items())
        for changed, loop in readers:
            with contextlib.suppress(RuntimeError):  # the server has ended; its pages are gone
                loop.call_soon_threadsafe(changed.set)

    # The browser's side.

    async def _page(self, request: Request) -> Response:
        return HTMLResponse(page(self._shown))

    async def _file(self, request: Request) -> Response:
        name = request.path_params["name"]
        if name not in _FILES:
            return PlainTextResponse("There is no such page.\n", 404)
        return Response(static(name), media_type=_FILES[name])

    async def _events(self, request: Request) -> Response:
        if len(self._readers) >= MOST_STREAMS:
            return PlainTextResponse("Too many pages are open. Close some.\n", 503)
        return StreamingResponse(self._states(), media_type="text/event-stream")

    async def _states(self) -> AsyncIterator[str]:
        """Every state as an event of its stream, the present one first."""
        changed = asyncio.Event()
        with self._lock:
            self._readers[changed] = asyncio.get_running_loop()
        try:
            sent, told = -1, 0
            while True:
                changed.clear()
                closed, version, shown, level = self._closed, self._version, self._shown, self._level
                if version != sent:
                    sent = version
                    yield f"data: {json.dumps(_state(shown))}\n\n"
                elif level != told:
                    told = level
                    yield f"event: level\ndata: {level}\n\n"
                elif closed:
                    return
                else:
                    try:
                        await asyncio.wait_for(changed.wait(), STILL_THERE_S)
                    except TimeoutError:
                        yield ":\n\n"
        finally:
            with self._lock:
                del self._readers[changed]

    async def _words(self, request: Request) -> Response:
        if request.headers.get("content-type") != "application/json":
            return PlainTextResponse("Words come as JSON.\n", 415)
        body = b""
        async for piece in request.stream():
            body += piece
            if len(body) > LONGEST_BODY:
                return PlainTextResponse("That is too long for one line.\n", 413, {"Connection": "close"})
        try:
            sent = json.loads(body)
        except (ValueError, RecursionError):
            sent = None
        if not isinstance(sent, dict) or set(sent) != {"words", "events"} or not isinstance(sent["words"], str):
            return PlainTextResponse('Words come as {"words": "...", "events": 7}.\n', 400)
        words, give = sent["words"], self._give
        if give is None:
            return PlainTextResponse("Nothing is asked now.\n", 409)
        if words.strip() and not self._is_answer_to_this(sent["events"]):
            return PlainTextResponse("The question has changed. Read it, then answer again.\n", 409)
        give("".join(words.splitlines()[:1]).encode("utf-8", "replace").decode()[:LONGEST_LINE])
        return Response(status_code=204)

    def _is_answer_to_this(self, events: object) -> bool:
        """Whether words are the first to the question that stands: a key pressed twice must not answer the next one."""
        now = self._shown.events
        given, at = self._given
        if events != now or (given == now and time.monotonic() < at + ONE_ANSWER_S):
            return False
        self._given = (now, time.monotonic())
        return True


def _state(shown: Shown) -> dict[str, object]:
    return {
        **bands(shown),
        "kind": shown.middle.kind.value,
        "whose": shown.whose.value,
        "live": " ".join([*shown.asides, *shown.middle.lines]),
        "covers": shown.covers,
        "events": shown.events,
    }
