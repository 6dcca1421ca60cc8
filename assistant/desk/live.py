"""Pages that stay up to date: a stream of the pieces that have changed."""

import asyncio
import json
import time
from collections.abc import AsyncIterator, Callable, Mapping

from assistant.desk.hub import Hub

TICK_S = 5.0
"""So often silence is looked for, and a lost page noticed, seconds."""
GATHER_S = 0.04
"""Changes within so short a time are sent together, seconds."""

Pieces = Callable[[], Mapping[str, object]]
"""What a page shows now, by name: HTML by the id of its element under "parts", anything else as it is."""


async def stream(hub: Hub, pieces: Pieces) -> AsyncIterator[str]:
    """The events of one page: everything at first, from then on what has changed.

    Args:
        hub: whose changes are followed.
        pieces: draws the page's pieces.
    """
    sent: dict[str, str] = {}
    async for changed in hub.changes(TICK_S):
        if changed:
            await asyncio.sleep(GATHER_S)
        event = _event(pieces(), sent)
        if event or not changed:
            yield event or ":\n\n"


def _event(now: Mapping[str, object], sent: dict[str, str]) -> str:
    """An event with the pieces that were not sent so; empty where there is none."""
    news: dict[str, object] = {}
    parts = now.get("parts")
    fresh = {}
    for name, html in parts.items() if isinstance(parts, Mapping) else ():
        if sent.get(f"parts/{name}") != html:
            sent[f"parts/{name}"] = html
            fresh[name] = html
    if fresh:
        news["parts"] = fresh
    for name, value in now.items():
        text = json.dumps(value) if name != "parts" else ""
        if text and sent.get(name) != text:
            sent[name] = text
            news[name] = value
    if not news:
        return ""
    news["clock"] = int(time.time() * 1000)
    return f"data: {json.dumps(news)}\n\n"
