"""A record as far as it holds: what comes before a break is still worth reading, with a warning."""

from collections.abc import Collection, Mapping, Sequence
from pathlib import Path

from assistant.errors import RecordError
from assistant.record.verify import Reading, read_record, sentence
from assistant.spoken.language import ReportWords


def read_what_holds(path: Path, *, head: str | None = None, keys: Collection[str] | None = None) -> Reading:
    """The entries of a record up to the first break, with the verdict on all of it.

    Args:
        path: the record.
        head: as for `read_record`.
        keys: as for `read_record`.

    Raises:
        RecordError: it cannot be read, or not even its first entry holds.
    """
    found = read_record(path, head=head, keys=keys)
    if not found.entries:
        raise RecordError(sentence(path, found.verdict), "Nothing in it can be reported; keep the file as it is.")
    return found


def text(value: object) -> str:
    """Whatever an entry holds, as text; nothing in it is put into words."""
    match value:
        case str():
            return value
        case None:
            return ""
        case bool():
            return "true" if value else "false"
        case Mapping():
            return ", ".join(f"{name}: {text(member)}" for name, member in value.items())
        case list() | tuple():
            return ", ".join(map(text, value))
        case _:
            return str(value)


def shown(value: object, words: ReportWords) -> str:
    """Whatever an entry holds, for a person to read: yes and no, and the names of fields, in words."""
    match value:
        case bool():
            return words.YES if value else words.NO
        case Mapping():
            return ", ".join(words.field(str(name), shown(member, words)) for name, member in value.items())
        case list() | tuple():
            return ", ".join(shown(member, words) for member in value)
        case _:
            return text(value)


def texts(value: object) -> tuple[str, ...]:
    """A list in an entry, as texts; whatever else stands there is a list of one, nothing of none."""
    if isinstance(value, list | tuple):
        return tuple(map(text, value))
    return (text(value),) if value else ()


def mapping(value: object) -> Mapping[str, object]:
    """A mapping in an entry; empty where something else stands."""
    return value if isinstance(value, Mapping) else {}


def sequence(value: object) -> Sequence[object]:
    """A list in an entry; empty where something else stands."""
    return value if isinstance(value, list | tuple) else ()


def count(value: object) -> int:
    """A counter in an entry; 0 where something else stands."""
    return value if isinstance(value, int) and not isinstance(value, bool) else 0
