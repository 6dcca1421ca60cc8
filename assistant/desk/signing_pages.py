"""The pages of records: the list, the head of a day, reports, and the instructor's signature."""

import re
from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from pathlib import Path

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response
from starlette.routing import Route

from assistant.attempts.proof import Examined, Here, examine
from assistant.attempts.reported import reported
from assistant.attempts.signing_off import (
    refuse_what_has_no_reason,
    refuse_what_is_contradicted,
    sign,
    sign_day,
    the_only_key,
)
from assistant.attempts.to_sign import to_sign
from assistant.desk.pictured import page
from assistant.desk.posted import file_name, posted
from assistant.desk.record_list import listed, path_of
from assistant.errors import RecordError, UsageError
from assistant.record.decisions import Decision, Rating, Wish, standing
from assistant.record.short_head import short_head
from assistant.record.signing import own_keys
from assistant.record.verify import sentence
from assistant.report.html import report_html
from assistant.report.paper import Paper
from assistant.report.pdf import report_pdf
from assistant.spoken import ENGLISH

_REPORT_RULES = {
    "Content-Security-Policy": (
        "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
    )
}
"""A report brings its own style sheet in its page; nothing else is let in."""
_VERB = re.compile(r" ?(?:Give it with --reason, or run it in a terminal\.|[Dd]etails: checkoff [^.]*\.)")
"""Advice for whoever types verbs, which is none for whoever sees a page."""


class SigningPages:
    """The pages of records.

    Args:
        records: their folder.
        known: what this machine knows of records and signers; read anew for each request.
        keys: folder of the instructor's keys.
    """

    def __init__(self, records: Path, known: Callable[[], Here], keys: Path) -> None:
        self._records = records
        self._known = known
        self._keys = keys
        post = ["POST"]
        self.routes = [
            Route("/{token}/records", self._list),
            Route("/{token}/day", self._sign_day, methods=post),
            Route("/{token}/records/{file}/report", self._report),
            Route("/{token}/records/{file}/report.pdf", self._report_pdf),
            Route("/{token}/records/{file}/sign", self._to_sign),
            Route("/{token}/records/{file}/sign", self._sign, methods=post),
        ]

    async def _list(self, request: Request) -> Response:
        def draw() -> str:
            book = self._known().book
            head = book.day(datetime.now(UTC).date())
            values = {
                "records": list(listed(self._records)),
                "day": list(head.lines()),
                "problems": book.problems(),
                "keys": own_keys(self._keys),
            }
            return page("records", "Records", 0, request, **values)

        return HTMLResponse(await run_in_threadpool(draw))

    async def _report(self, request: Request) -> Response:
        path = self._path(request)

        def draw() -> str:
            return report_html(reported(path, self._known(), _nobody), ENGLISH.report, Paper())

        return HTMLResponse(await run_in_threadpool(draw), headers=_REPORT_RULES)

    async def _report_pdf(self, request: Request) -> Response:
        path = self._path(request)

        def draw() -> bytes:
            return report_pdf(reported(path, self._known(), _nobody), ENGLISH.report, Paper())

        name = f"{path.stem}.pdf"
        return Response(await run_in_threadpool(draw), media_type="application/pdf", headers=file_name(name))

    async def _to_sign(self, request: Request) -> Response:
        path = self._path(request)

        def draw() -> str:
            known = self._known()
            found = _examined(path, known)
            what = to_sign(found)
            says = _says(found)
            values = {
                "file": path.name,
                "lines": list(what.lines()),
                "keys": own_keys(self._keys),
                "ratings": ENGLISH.report.RATINGS,
                "not_seen": [(name, says.get(name, name)) for name in what.not_seen],
                "is_sealed": bool(what.outcome),
                "is_signed": standing(found.reading.entries, found.proof.deciding).sign_off is not None,
            }
            return page("sign", "Records", 2, request, **values)

        return HTMLResponse(await run_in_threadpool(draw))

    async def _sign(self, request: Request) -> Response:
        path, fields = self._path(request), await posted(request)

        def do() -> dict[str, str]:
            cautions: list[str] = []
            wish, close = _wish(fields), fields.get("close") == "yes"
            known = self._known()
            found = _examined(path, known)
            refuse_what_is_contradicted(found, wish)
            refuse_what_has_no_reason(wish, to_sign(found), close=close)
            name, passphrase = self._key(fields)
            recorded, _ = sign(found, wish, known, self._keys, name, lambda: passphrase, cautions.append, close=close)
            done = f"Entry {recorded.sequence} is signed: {wish.decision}. Short head {short_head(recorded.digest)}."
            return {"said": " ".join([done, *cautions])}

        try:
            return JSONResponse(await run_in_threadpool(do))
        except (UsageError, RecordError) as problem:
            raise HTTPException(409, _VERB.sub("", str(problem))) from problem

    async def _sign_day(self, request: Request) -> Response:
        fields = await posted(request)

        def do() -> dict[str, str]:
            name, passphrase = self._key(fields)
            now = datetime.now(UTC)
            head = self._known().book.day(now.date())
            path = self._records / f"{now.date().isoformat()}.head"
            at = now.isoformat(timespec="microseconds")
            entry = sign_day(head, at, self._keys, name, lambda: passphrase, path)
            return {"said": f"Signed: {path}. Short head of the day {short_head(entry.digest)}."}

        try:
            return JSONResponse(await run_in_threadpool(do))
        except (UsageError, RecordError) as problem:
            raise HTTPException(409, _VERB.sub("", str(problem))) from problem

    def _key(self, fields: Mapping[str, object]) -> tuple[str, str | None]:
        """The key to sign with and its passphrase.

        Raises:
            UsageError: there is no such key.
        """
        name = str(fields.get("key") or "") or the_only_key(self._keys)
        if name not in own_keys(self._keys):
            raise UsageError("There is no such key.", "Choose one of the list.")
        return name, str(fields.get("passphrase") or "") or None

    def _path(self, request: Request) -> Path:
        path = path_of(self._records, request.path_params["file"])
        if path is None:
            raise HTTPException(404, "There is no such record.")
        return path


def _examined(path: Path, known: Here) -> Examined:
    found = examine(path, known)
    if not found.reading.entries:
        raise RecordError(sentence(path, found.reading.verdict), "There is nothing to sign.")
    return found


def _says(found: Examined) -> dict[str, str]:
    """The line of each step by its id, as the result has it."""
    seal: Mapping[str, object] = next((entry for entry in found.reading.entries if "seal" in entry), {})
    results = seal.get("results")
    rows = results.get("steps") if isinstance(results, Mapping) else None
    return {
        str(row.get("id")): str(row.get("say") or row.get("id"))
        for row in (rows if isinstance(rows, list) else [])
        if isinstance(row, Mapping)
    }


def _wish(fields: Mapping[str, object]) -> Wish:
    """What the form asks for.

    Raises:
        UsageError: no decision was made.
    """
    decision = str(fields.get("decision", ""))
    if decision not in (Decision.PASSED, Decision.NOT_PASSED, Decision.WITHDRAWN):
        raise UsageError("What do you decide?", "Choose passed or not passed.")
    rating = str(fields.get("rating", ""))
    seen = fields.get("seen", ())
    return Wish(
        Decision(decision),
        str(fields.get("signer", "")).strip(),
        str(fields.get("reason", "")).strip(),
        Rating(rating) if rating in list(Rating) else None,
        seen=tuple(map(str, seen)) if isinstance(seen, list) else (),
    )


def _nobody(_sentence: str) -> None:
    """Cautions of a report stand in the report."""
