"""Verbs of the bench, in English: their forms, what is so once they are done, and what is so while they are not."""

from dataclasses import dataclass

from assistant.spoken.english import verbs_setting, verbs_telling, verbs_things


@dataclass(frozen=True)
class Verb:
    """One verb.

    Attributes:
        base: "close".
        past: what was done, and the participle: "closed"; the first is the plainest. Words of the bench for the same
            deed are among them: "rolled down".
        ing: "closing".
        states: what may be said of the thing once it is done: "shut", "on".
        undone: what may be said of it while it is not: "open", "off".
    """

    base: str
    past: tuple[str, ...]
    ing: str
    states: tuple[str, ...] = ()
    undone: tuple[str, ...] = ()


def _read(table: str) -> dict[str, Verb]:
    verbs: dict[str, Verb] = {}
    for row in table.replace("\\\n", "").strip().splitlines():
        if not row or row.startswith("#"):
            continue
        base, past, ing, states, undone = (cell.strip() for cell in row.split("|"))
        verbs[base] = Verb(base, _items(past), ing, _items(states), _items(undone))
    return verbs


def _items(cell: str) -> tuple[str, ...]:
    return tuple(item.strip() for item in cell.split(",") if item.strip())


VERBS = _read("".join((verbs_things.TABLE, verbs_setting.TABLE, verbs_telling.TABLE)))
"""Every verb by its base."""
