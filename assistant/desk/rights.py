"""What a phone or tablet at the bench may do: watch and mark. The desk's own screen can allow it to sign and start.

Whoever picks it up can do as much, so it pairs nobody and allows nothing, whatever it may do.
"""

import re

from starlette.requests import Request
from starlette.types import Scope

from assistant.link.messages import Direct, Mark, Order

MARKS_ONLY = "This phone or tablet may watch and mark. The desk's own screen can let it sign and start, under Stations."
DESK_ONLY = "Only the desk's own screen may do this."
_PHONE = "assistant.desk.phone"
_FOR_AN_ATTEMPT = re.compile(r"/[^/]+/attempt/[0-9a-f]{64}/[^/]+")
_OF_THE_DESK = re.compile(r"/[^/]+/(pair|unpair|allow)")


def comes_by_phone(scope: Scope, *, signs: bool) -> None:
    """Note that a request comes from a paired phone or tablet.

    Args:
        scope: of the request.
        signs: it may sign and start.
    """
    scope[_PHONE] = signs


def is_here(request: Request) -> bool:
    """Whether it comes from the desk's own screen."""
    return _PHONE not in request.scope


def may_sign(request: Request) -> bool:
    """Whether it comes from where attempts are started and signed."""
    return bool(request.scope.get(_PHONE, True))


def why_not_sent(request: Request) -> str:
    """Why nothing of this kind may be sent from there; empty where it may."""
    if is_here(request) or _FOR_AN_ATTEMPT.fullmatch(request.scope["path"]):
        return ""
    if _OF_THE_DESK.fullmatch(request.scope["path"]):
        return DESK_ONLY
    return "" if may_sign(request) else MARKS_ONLY


def may_give(request: Request, order: Order) -> bool:
    """Whether this order may come from there: a mark, a rest, an end may; the instructor's own words may not."""
    is_plain = isinstance(order, Mark) or (isinstance(order, Direct) and order.what != "say")
    return is_plain or may_sign(request)
