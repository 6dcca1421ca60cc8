"""The instructor's desk: its pages and what is sent from them."""

from collections.abc import AsyncIterator, Callable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from pydantic import ValidationError
from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, PlainTextResponse, Response, StreamingResponse
from starlette.routing import Route

from assistant.attempts.proof import Here
from assistant.desk.board import Row, key_of, need_at, rows, rows_by_name
from assistant.desk.class_list import ClassList, next_code
from assistant.desk.drawn import static
from assistant.desk.hub import Hub, StationSeen, new_id
from assistant.desk.live import stream
from assistant.desk.need import LOST_S, Level
from assistant.desk.pairing import PairedStore, Pairing
from assistant.desk.pictured import AttemptPieces, page, piece, row_piece, step_told
from assistant.desk.posted import attempt_order, file_name, posted, told
from assistant.desk.record_list import learners_of, listed
from assistant.desk.signing_pages import SigningPages
from assistant.desk.starting import LEVEL_WORDS, Wanted, a_seed, order_shown, sheet, titles
from assistant.desk.watched import Watched
from assistant.errors import AssistantError
from assistant.link.messages import TakeUp
from assistant.orders.planting import FAULTS
from assistant.text import shown

MOST_STREAMS = 40
"""Pages that are kept up to date at once."""
_FILES = {"base.css": "text/css", "desk.css": "text/css", "desk.js": "text/javascript", "look.js": "text/javascript"}
_PDF = "application/pdf"


@dataclass(frozen=True)
class Network:
    """What lets other computers of the lab in.

    Attributes:
        pairing: codes.
        store: those who are paired.
        where: host and port under which the lab reaches the desk.
    """

    pairing: Pairing
    store: PairedStore
    where: str


@dataclass(frozen=True)
class Lab:
    """What the desk works with.

    Attributes:
        hub: its stations and attempts.
        clock: the steady clock of that hub, seconds.
        records: folder with the records.
        class_list: the learners' codes.
        known: what this machine knows of records and signers; read anew for each page that asks.
        keys: folder of the instructor's keys.
        code: what an instructor types at a station; empty where nobody is to know it.
    """

    hub: Hub
    clock: Callable[[], float]
    records: Path
    class_list: ClassList
    known: Callable[[], Here]
    keys: Path
    code: str = ""


class Desk:
    """The pages.

    Args:
        lab: what they show and change.

    Attributes:
        network: set once other computers of the lab can reach the desk; None where they cannot.
    """

    def __init__(self, lab: Lab) -> None:
        self.network: Network | None = None
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
                Route("/{token}/stations", self._stations),
                Route("/{token}/take-up", self._take_up, methods=post),
                Route("/{token}/pair", self._pair, methods=post),
                Route("/{token}/unpair", self._unpair, methods=post),
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
        return HTMLResponse(page("board", "Desk", 0, nobody=nobody))

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
        return HTMLResponse(page("attempt", "", 1, watched=watched, title=self._title(watched), some_to_see=some))

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
        return HTMLResponse(page("start", "Start", 0, **values))

    def _codes_of_today(self) -> set[str]:
        day = datetime.now(UTC).date().isoformat()
        return learners_of(day, listed(self._lab.records)) | {one.learner for one in self._hub.attempts.values()}

    async def _start(self, request: Request) -> Response:
        wanted = Wanted.model_validate(await posted(request))
        self._connected(wanted.station)
        start = await run_in_threadpool(wanted.start, self._lab.code)
        self._hub.give(wanted.station, start)
        return JSONResponse({"to": f"./#station-{key_of(wanted.station)}"})

    def _connected(self, station: str) -> StationSeen:
        """A station that can begin now: what waits for one that is away would begin when nobody expects it."""
        seen = self._hub.stations.get(station)
        if seen is None:
            raise HTTPException(409, "Choose a station.")
        if self._lab.clock() - seen.at > LOST_S:
            raise HTTPException(409, "That station is not connected now. Start there once it is back.")
        return seen

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

    # Stations.

    async def _stations(self, request: Request) -> Response:
        now_s, found = self._lab.clock(), []
        for row in rows_by_name(self._hub, now_s):
            seen = self._hub.stations[row.name]
            left = [{"attempt": one, "what": self._left(one)} for one in seen.hello.left]
            found.append({"row": row, "heard": f"heard {int(now_s - seen.at)} s ago", "left": left})
        network = self.network
        values = {
            "stations": found,
            "where": network.where if network is not None else "",
            "paired": network.store.listed if network is not None else (),
        }
        return HTMLResponse(page("stations", "Stations", 0, **values))

    def _left(self, attempt: str) -> str:
        watched = self._hub.attempts.get(attempt)
        return f"{watched.learner}, {self._title(watched)}" if watched is not None else f"attempt {attempt[:8]}"

    async def _take_up(self, request: Request) -> Response:
        fields = await posted(request)
        station = str(fields.get("station", ""))
        if fields.get("attempt") not in self._connected(station).hello.left:
            raise HTTPException(409, "That attempt is not left there any more.")
        self._hub.give(station, TakeUp(id=new_id(), attempt=str(fields["attempt"]), code=self._lab.code))
        return JSONResponse({"to": f"./#station-{key_of(station)}"})

    async def _pair(self, request: Request) -> Response:
        kind = (await posted(request)).get("kind")
        if self.network is None or kind not in ("station", "browser"):
            raise HTTPException(409, "The desk was started without a network.")
        return JSONResponse({"code": self.network.pairing.new_code(kind)})

    async def _unpair(self, request: Request) -> Response:
        fields = await posted(request)
        kind, name = fields.get("kind"), str(fields.get("name", ""))
        if self.network is None or kind not in ("station", "browser"):
            raise HTTPException(409, "That computer is not paired.")
        self.network.store.remove(kind, name)
        return JSONResponse({"said": f"{shown(name)} is not paired any more."})

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
