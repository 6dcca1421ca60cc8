"""The page of the stations: what was left there, and who is paired."""

from collections.abc import Callable

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response
from starlette.routing import Route

from assistant.desk.board import key_of, rows_by_name
from assistant.desk.hub import StationSeen, new_id
from assistant.desk.lab import Lab, Network
from assistant.desk.need import LOST_S
from assistant.desk.pictured import page
from assistant.desk.posted import posted
from assistant.desk.rights import is_here
from assistant.desk.watched import Watched
from assistant.link.messages import TakeUp
from assistant.text import shown

_PAIRS = 4
"""Bytes of a fingerprint that are shown together."""


class StationPages:
    """The page, and what is sent from it.

    Args:
        lab: what it shows and changes.
        title: the title of an attempt's checklist.

    Attributes:
        network: set once other computers of the lab can reach the desk; None where they cannot.
    """

    def __init__(self, lab: Lab, title: Callable[[Watched], str]) -> None:
        self.network: Network | None = None
        self._lab = lab
        self._title = title
        post = ["POST"]
        self.routes = [
            Route("/{token}/stations", self._stations),
            Route("/{token}/take-up", self._take_up, methods=post),
            Route("/{token}/pair", self._pair, methods=post),
            Route("/{token}/unpair", self._unpair, methods=post),
            Route("/{token}/allow", self._allow, methods=post),
        ]

    async def _stations(self, request: Request) -> Response:
        now_s, found = self._lab.clock(), []
        for row in rows_by_name(self._lab.hub, now_s):
            seen = self._lab.hub.stations[row.name]
            left = [{"attempt": one, "what": self._left(one)} for one in seen.hello.left]
            found.append({"row": row, "heard": f"heard {int(now_s - seen.at)} s ago", "left": left})
        network = self.network
        values = {
            "stations": found,
            "where": network.where if network is not None else "",
            "paired": network.store.listed if network is not None else (),
            "fingerprint": in_pairs(network.pairing.fingerprint) if network is not None else (),
            "is_here": is_here(request),
        }
        return HTMLResponse(page("stations", "Stations", 0, request, **values))

    def _left(self, attempt: str) -> str:
        watched = self._lab.hub.attempts.get(attempt)
        return f"{watched.learner}, {self._title(watched)}" if watched is not None else f"attempt {attempt[:8]}"

    async def _take_up(self, request: Request) -> Response:
        fields = await posted(request)
        station = str(fields.get("station", ""))
        if fields.get("attempt") not in connected(self._lab, station).hello.left:
            raise HTTPException(409, "That attempt is not left there any more.")
        self._lab.hub.give(station, TakeUp(id=new_id(), attempt=str(fields["attempt"]), code=self._lab.code))
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

    async def _allow(self, request: Request) -> Response:
        fields = await posted(request)
        name, signs = str(fields.get("name", "")), fields.get("signs") == "yes"
        if self.network is None or not self.network.store.allow(name, signs=signs):
            raise HTTPException(409, "That phone or tablet is not paired.")
        may = "watch, mark, sign and start" if signs else "watch and mark"
        return JSONResponse({"said": f"{shown(name)} may {may}."})


def connected(lab: Lab, name: str) -> StationSeen:
    """A station that can begin now: what waits for one that is away would begin when nobody expects it.

    Raises:
        HTTPException: there is no such station, or it is away.
    """
    seen = lab.hub.stations.get(name)
    if seen is None:
        raise HTTPException(409, "Choose a station.")
    if lab.clock() - seen.at > LOST_S:
        raise HTTPException(409, "That station is not connected now. Start there once it is back.")
    return seen


def in_pairs(digest: str) -> tuple[str, ...]:
    """A digest as browsers show it, in groups that can be compared one by one."""
    pairs = [digest[start : start + 2].upper() for start in range(0, len(digest), 2)]
    return tuple(" ".join(pairs[start : start + _PAIRS]) for start in range(0, len(pairs), _PAIRS))
