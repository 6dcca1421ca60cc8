"""What pages send, and how what cannot be done is told."""

import json
from collections.abc import Mapping

from pydantic import ValidationError
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, PlainTextResponse, Response

from assistant.desk.pictured import page
from assistant.errors import AssistantError
from assistant.link.messages import Direct, Happen, Mark, Order

LONGEST_BODY = 1 << 16
"""Bytes of what a page sends: a class list is the longest."""
_KINDS: Mapping[str, type[Mark] | type[Happen] | type[Direct]] = {"mark": Mark, "happen": Happen, "direct": Direct}
_ORDER_FIELDS = frozenset({"id", "mark", "what", "step", "words", "undoes"})


async def posted(request: Request) -> Mapping[str, object]:
    """The fields that a page sent, as JSON.

    Raises:
        HTTPException: it is no JSON object, or too long.
    """
    if request.headers.get("content-type") != "application/json":
        raise HTTPException(415, "Fields come as JSON.")
    body = b""
    async for piece in request.stream():
        body += piece
        if len(body) > LONGEST_BODY:
            raise HTTPException(413, "That is too long.", {"Connection": "close"})
    try:
        fields = json.loads(body)
    except (ValueError, RecursionError):
        fields = None
    if not isinstance(fields, dict):
        raise HTTPException(400, "Fields come as a JSON object.")
    return fields


def attempt_order(kind: str, attempt: str, fields: Mapping[str, object]) -> Order | None:
    """The order that a page sent for an attempt; None where there is no such kind.

    Raises:
        ValidationError: a field does not fit.
    """
    form = _KINDS.get(kind)
    if form is None:
        return None
    given = {name: value for name, value in fields.items() if name in _ORDER_FIELDS and value != ""}
    return form.model_validate({**given, "attempt": attempt})


async def told(request: Request, problem: Exception) -> Response:
    """The answer to what cannot be done: a page for whoever opened one, a sentence for a page's script."""
    status, text, headers = 400, str(problem), {}
    match problem:
        case HTTPException(status_code=status, detail=text, headers=given):
            headers = dict(given or {})
        case ValidationError():
            first = problem.errors(include_url=False, include_input=False)[0]
            field = ", ".join(str(one) for one in first["loc"])
            text = f"{field[:1].upper()}{field[1:]} does not fit: {first['msg'].lower()}."
        case AssistantError():
            status = 409
        case _:
            status, text = 500, "Something went wrong at the desk. The attempts go on; nothing of them is lost."
    if request.method == "GET" and "text/html" in request.headers.get("accept", ""):
        depth = max(0, request.url.path.count("/") - 2)
        html = page("plain", "", depth, request, heading="That cannot be shown", text=text)
        return HTMLResponse(html, status, headers)
    return PlainTextResponse(f"{text}\n", status, headers)


def file_name(name: str) -> dict[str, str]:
    """The header by which a browser keeps a document under this name."""
    return {"Content-Disposition": f'attachment; filename="{name}"'}
