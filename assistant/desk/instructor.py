"""The instructor's desk: its pages and what is sent from them."""

from collections.abc import AsyncIterator, Callable, Mapping
from datetime import UTC, datetime

from pydantic import ValidationError
from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, PlainTextResponse, Response, StreamingResponse
from starlette.routing import Route

from assistant.desk.board import Row, key_of, need_at, rows, rows_by_name
from assistant.desk.class_list import next_code
from assistant.desk.drawn import static
from assistant.desk.lab import Lab
from assistant.desk.live import stream
from assistant.desk.need import Level
from assistant.desk.pictured import AttemptPieces, page, piece, row_piece, step_told
from assistant.desk.posted import attempt_order, file_name, posted, told
from assistant.desk.record_list import learners_of, listed
from assistant.desk.rights import MARKS_ONLY, may_give
from assistant.desk.signing_pages import SigningPages
from assistant.desk.starting import LEVEL_WORDS, Wanted, a_seed, order_shown, sheet, titles
from assistant.desk.station_pages import StationPages, connected
from assistant.desk.watched import Watched
from assistant.errors import AssistantError
from assistant.orders.planting import FAULTS

MOST_STREAMS = 40
"""Pages that are kept up to date at once."""
_FILES = {"base.css": "text/css", "desk.css": "text/css", "desk.js": "text/javascript", "look.js": "text/javascript"}
_PDF = "application/pdf"


class Desk:
    """The pages.

    Args:
        lab: what they show and change.

    Attributes:
        stations: the page of the stations, which knows of the network.
    """

    def __init__(self, lab: Lab) -> None:
        self.stations = StationPages(lab, self._title)
        self._lab = lab
        self._hub = lab.hub
        self._titles: dict[str, str] = {}
        self._drawn: dict[str, tuple[object, str]] = {}
        self._streams = 0
        signing = SigningPages(lab.records, lab.known, lab.keys)
        post = ["POST"]
        self.app = Starlette(
            routes=[
                Route("/{token}/", self._board),
                Route("/{token}/events", self._board_events),
                Route("/{token}/attempt/{attempt}", self._attempt),
                Route("/{token}/attempt/{attempt}/events", self._attempt_events),
                Route("/{token}/attempt/{attempt}/{what:str}", self._order, methods=post),
                Route("/{token}/start", self._start_page),
                Route("/{token}/start", self._start, methods=post),
                Route("/{token}/order", self._order_shown),
                Route("/{token}/sheets/{kind}.pdf", self._sheet),
                Route("/{token}/codes", self._codes, methods=post),
                *self.stations.routes,
                *signing.routes,
                Route("/{token}/{name}", self._file),
            ],
            exception_handlers={
                HTTPException: told,
                AssistantError: told,
                ValidationError: told,
                Exception: told,
            },
        )

    # The first page.

    async def _board(self, request: Request) -> Response:
        nobody = "No station is here yet. This machine's own takes a few seconds to come up."
        return HTMLResponse(page("board", "Desk", 0, request, nobody=nobody))

    async def _board_events(self, request: Request) -> Response:
        await self._know_titles()
        return self._live(self._board_pieces)

    def _board_pieces(self) -> Mapping[str, object]:
        found = rows(self._hub, self._lab.clock())
        return {
            "rows": [self._row_facts(row) for row in found],
            "parts": {f"row-{row.key}": self._row_html(row) for row in found},
        }

    def _row_facts(self, row: Row) -> Mapping[str, object]:
        watched = row.watched
        mark = watched.to_mark if watched is not None else None
        return {
            "key": row.key,
            "name": row.name,
            "learner": watched.learner if watched is not None else "",
            "attempt": watched.begun.attempt if watched is not None else "",
            "step": mark.plan.id if mark is not None else "",
            "target": step_told(mark),
            "now": row.step.plan.id if row.step is not None else "",
            "say": step_told(row.step),
            "goesOn": watched is not None and watched.goes_on,
            "free": row.is_free,
            "file": watched.begun.file if watched is not None and row.need.level is Level.SIGN else "",
            "waits": row.need.waits,
            "word": row.need.word,
            "why": row.need.why,
        }

    def _row_html(self, row: Row) -> str:
        drawn_from, html = self._drawn.get(row.key, (None, ""))
        if drawn_from != row:
            title = self._title(row.watched) if row.watched is not None else ""
            html = row_piece(row, title)
            self._drawn[row.key] = row, html
        return html

    async def _know_titles(self) -> None:
        if not self._titles:
            self._titles = await run_in_threadpool(titles)

    def _title(self, watched: Watched) -> str:
        return self._titles.get(watched.checklist, watched.checklist)

    # One attempt.

    async def _attempt(self, request: Request) -> Response:
        await self._know_titles()
        watched = self._watched(request)
        some = any(step.plan.seen for step in watched.steps)
        return HTMLResponse(
            page("attempt", "", 1, request, watched=watched, title=self._title(watched), some_to_see=some)
        )

    async def _attempt_events(self, request: Request) -> Response:
        name = self._watched(request).begun.attempt

        drawn = AttemptPieces()

        def pieces() -> Mapping[str, object]:
            watched = self._hub.attempts[name]
            seen = self._hub.stations[watched.begun.station]
            sent = tuple(order for order in seen.orders if getattr(order, "attempt", "") == name)
            refused = tuple(one for one in seen.refusals if getattr(one[0], "attempt", "") == name)
            return drawn.of(watched, need_at(self._hub, watched.begun.station, self._lab.clock()), sent, refused)

        return self._live(pieces)

    async def _order(self, request: Request) -> Response:
        watched = self._watched(request)
        order = attempt_order(request.path_params["what"], watched.begun.attempt, await posted(request))
        if order is None:
            raise HTTPException(404, "There is no such mark.")
        if not may_give(request, order):
            raise HTTPException(403, MARKS_ONLY)
        self._hub.give(watched.begun.station, order)
        return Response(status_code=204)

    def _watched(self, request: Request) -> Watched:
        watched = self._hub.attempts.get(request.path_params["attempt"])
        if watched is None:
            raise HTTPException(
                404, "The desk knows of no such attempt. Its record, if there is one, is under Records."
            )
        return watched

    # Starting one.

    async def _start_page(self, request: Request) -> Response:
        await self._know_titles()
        found = rows_by_name(self._hub, self._lab.clock())
        asked = request.query_params.get("station", "")
        free = [row.name for row in found if row.is_free]
        station = asked if asked in self._hub.stations else next(iter(free), "")
        codes = self._lab.class_list.codes()
        begun = await run_in_threadpool(self._codes_of_today)
        values = {
            "rows": found,
            "station": station,
            "codes": codes,
            "learner": next_code(codes, begun),
            "checklists": list(self._titles.items()),
            "checklist": Wanted().checklist,
            "levels": LEVEL_WORDS,
            "seed": a_seed(),
            "faults": FAULTS,
        }
        return HTMLResponse(page("start", "Start", 0, request, **values))

    def _codes_of_today(self) -> set[str]:
        day = datetime.now(UTC).date().isoformat()
        return learners_of(day, listed(self._lab.records)) | {one.learner for one in self._hub.attempts.values()}

    async def _start(self, request: Request) -> Response:
        wanted = Wanted.model_validate(await posted(request))
        connected(self._lab, wanted.station)
        start = await run_in_threadpool(wanted.start, self._lab.code)
        self._hub.give(wanted.station, start)
        return JSONResponse({"to": f"./#station-{key_of(wanted.station)}"})

    async def _order_shown(self, request: Request) -> Response:
        wanted = Wanted.model_validate(dict(request.query_params))
        order = await run_in_threadpool(order_shown, wanted)
        values = {"sentences": order.sentences, "faults": order.faults, "query": order.query}
        return HTMLResponse(piece("order", root="", **values))

    async def _sheet(self, request: Request) -> Response:
        wanted = Wanted.model_validate(dict(request.query_params))
        kind = request.path_params["kind"]
        try:
            content = await run_in_threadpool(sheet, wanted, kind)
        except KeyError:
            raise HTTPException(404, "There is no such sheet.") from None
        return Response(content, media_type=_PDF, headers=file_name(f"{wanted.checklist}-{kind}.pdf"))

    async def _codes(self, request: Request) -> Response:
        codes = self._lab.class_list.keep(str((await posted(request)).get("codes", "")))
        return JSONResponse({"said": f"The class list has {len(codes)} codes now.", "to": "start"})

    # All pages.

    async def _file(self, request: Request) -> Response:
        name = request.path_params["name"]
        if name not in _FILES:
            raise HTTPException(404, "There is no such page.")
        return Response(static(name), media_type=_FILES[name])

    def _live(self, pieces: Callable[[], Mapping[str, object]]) -> Response:
        if self._streams >= MOST_STREAMS:
            return PlainTextResponse("Too many pages are open. Close some.\n", 503)

        async def counted() -> AsyncIterator[str]:
            self._streams += 1
            try:
                async for event in stream(self._hub, pieces):
                    yield event
            finally:
                self._streams -= 1

        return StreamingResponse(counted(), media_type="text/event-stream")
