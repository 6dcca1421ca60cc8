# ruff: noqa: T201, S311 - a command prints its answer; chance for tests, not for secrets
"""Power cuts: ``python -m tests.record.power [POINTS] [SEED]`` (default 2,000).

What the program writes is recorded call by call: files made, written, cut, unlinked, synced. Then the power is cut
after any of these calls, and what was not synced by then (fsync(2): a file's content; its folder: its name) is kept,
dropped, reordered or torn within a write, by chance. However that comes out, no entry that was acknowledged may be
lost, the book of heads may not be ahead of a record nor be called broken, and everything can be gone on with.
"""

import fcntl
import os
import random
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from assistant.record.instructors import load_roster
from assistant.record.paths import sound_folder
from assistant.record.roster_file import begin_roster, enrol
from assistant.record.signing import load_key, new_key
from assistant.record.sound import erase_files
from assistant.record.verify import read_entries, read_record, verify
from tests.record.examples import at, body, opening

POINTS = 2_000


@dataclass(frozen=True)
class Call:
    """One call to the system.

    Attributes:
        kind: "make", "write", "cut", "unlink", "folder", "sync", "acknowledged".
        path: of the file, relative.
        place: where it was written; the size to which it was cut; the number of entries that were acknowledged.
        content: what was written.
    """

    kind: str
    path: str
    place: int = 0
    content: bytes = b""


@dataclass
class Recording:
    """All calls below a folder, in their order.

    Attributes:
        root: the folder.
        calls: what was recorded.
    """

    root: Path
    calls: list[Call] = field(default_factory=list)
    _names: dict[int, str] = field(default_factory=dict)

    def acknowledged(self, record: Path, count: int) -> None:
        """The caller was told that so many entries are on disk."""
        self.calls.append(Call("acknowledged", self._relative(record) or "", count))

    def _relative(self, path: object) -> str | None:
        try:
            return str(Path(os.fspath(path)).relative_to(self.root))  # type: ignore[call-overload]
        except (ValueError, TypeError):
            return None

    @contextmanager
    def listening(self) -> Iterator[None]:
        """Record what is called meanwhile."""
        real = {name: getattr(os, name) for name in ("open", "write", "fsync", "truncate", "unlink", "mkdir", "close")}

        def opened(path, flags, mode=0o777, **more):
            name = self._relative(path)
            new = name is not None and not Path(path).exists()
            descriptor = real["open"](path, flags, mode, **more)
            if name is not None:
                self._names[descriptor] = name
                if new and flags & os.O_CREAT:
                    self.calls.append(Call("make", name))
            return descriptor

        def wrote(descriptor, content):
            name = self._names.get(descriptor)
            place = 0
            if name is not None:
                appends = fcntl.fcntl(descriptor, fcntl.F_GETFL) & os.O_APPEND
                place = os.fstat(descriptor).st_size if appends else os.lseek(descriptor, 0, os.SEEK_CUR)
            count = real["write"](descriptor, content)
            if name is not None:
                self.calls.append(Call("write", name, place, bytes(content[:count])))
            return count

        def synced(descriptor):
            real["fsync"](descriptor)
            if descriptor in self._names:
                self.calls.append(Call("sync", self._names[descriptor]))

        def changed(kind, name):
            def call(path, *arguments, **more):
                real[name](path, *arguments, **more)
                relative = self._relative(path)
                if relative is not None:
                    self.calls.append(Call(kind, relative, arguments[0] if kind == "cut" else 0))

            return call

        def closed(descriptor):
            self._names.pop(descriptor, None)
            real["close"](descriptor)

        new = {
            "open": opened,
            "write": wrote,
            "fsync": synced,
            "truncate": changed("cut", "truncate"),
            "unlink": changed("unlink", "unlink"),
            "mkdir": changed("folder", "mkdir"),
            "close": closed,
        }
        for name, call in new.items():
            setattr(os, name, call)
        try:
            yield
        finally:
            for name, call in real.items():
                setattr(os, name, call)


def lived(root: Path) -> Recording:
    """Two attempts side by side: stopped, resumed, sealed, signed, sound erased; a book, its copy, a roster."""
    recording = Recording(root)
    (root / "records").mkdir()
    (root / "stick").mkdir()
    keys = root.parent / "keys"
    for name in ("school", "lindqvist"):
        new_key(keys, name)
    with recording.listening():
        book = HeadBook(root / "heads", root / "stick", print)
        begin_roster(root / "roster.jsonl", "Harbour College", load_key(keys, "school"), book)
        first, second = root / "records" / "a.jsonl", root / "records" / "b.jsonl"
        sound = sound_folder(first)
        os.mkdir(sound)  # noqa: PTH102 - what is recorded are the calls of the system
        one = RecordFile.create(first, {**opening(), "learner": "A"}, book)
        recording.acknowledged(first, 1)
        two = RecordFile.create(second, {**opening(), "learner": "B"}, book)
        recording.acknowledged(second, 1)
        for number in range(2, 9):
            for record, path in ((one, first), (two, second)):
                recording.acknowledged(
                    path, record.append({**body(number), "words": "x" * 900 * (number % 3)}).sequence
                )
        one.close()
        with first.open("ab") as stream:  # a crash tore its last line
            stream.write(b'{"at":"2026')
        recording.calls.append(Call("write", "records/a.jsonl", first.stat().st_size - 11, b'{"at":"2026'))
        recording.calls.append(Call("sync", "records/a.jsonl"))
        with RecordFile.reopen(first, at=at(60), book=book) as record:
            recording.acknowledged(first, len(record.entries))
            recording.acknowledged(first, record.append({"kind": "resumed", "at": at(61)}).sequence)
            recording.acknowledged(first, record.append(body(62)).sequence)
            recording.acknowledged(first, record.seal({"at": at(63)}).sequence)
        recording.acknowledged(second, two.seal({"at": at(64)}).sequence)
        two.close()
        enrol(
            root / "roster.jsonl",
            load_key(keys, "school"),
            load_key(keys, "lindqvist").public,
            ("M. Lindqvist", "RN"),
            ("", ""),
            book,
        )
        told = {"kind": "signed off", "at": at(70), "signer": "M. Lindqvist", "decision": "passed"}
        for path in (first, second):
            recording.acknowledged(path, RecordFile.add_signed(path, told, load_key(keys, "lindqvist"), book).sequence)
        RecordFile.erase_sound(first, "asked for", book)
        recording.acknowledged(first, len(read_entries(first)))
    assert erase_files(first) == 0
    return recording


def after_a_cut(recording: Recording, point: int, chance: random.Random, folder: Path) -> dict[str, int]:
    """Lay out what a power cut after this call leaves; return how many entries were acknowledged by then."""
    calls = recording.calls[:point]
    acknowledged: dict[str, int] = {}
    last_sync: dict[str, int] = {}
    for place, call in enumerate(calls):
        if call.kind == "sync":
            last_sync[call.path] = place
        if call.kind == "acknowledged":
            acknowledged[call.path] = call.place
    contents: dict[str, bytearray | None] = {"records": None, "stick": None}
    for place, call in enumerate(calls):
        name = call.path
        parent = str(Path(name).parent)
        if call.kind in ("make", "folder", "unlink"):
            if place < last_sync.get(parent, -1) or chance.random() < 0.5:
                if call.kind == "unlink":
                    contents.pop(name, None)
                else:
                    contents.setdefault(name, None if call.kind == "folder" else bytearray())
        elif call.kind in ("write", "cut"):
            content = contents.get(name)
            durable = place < last_sync.get(name, -1)
            if content is None or not (durable or chance.random() < 0.6):
                continue
            if call.kind == "cut":
                del content[call.place :]
                continue
            written = call.content
            if not durable and chance.random() < 0.4:
                written = written[: chance.randrange(len(written) + 1)]
            if len(content) < call.place:
                content.extend(bytes(call.place - len(content)))  # a block that never came shows as zeros
            content[call.place : call.place + len(written)] = written
    for name, content in sorted(contents.items()):
        path = folder / name
        if content is None:
            path.mkdir(parents=True, exist_ok=True)
        elif path.parent.is_dir():
            path.write_bytes(content)
    return acknowledged


def check(recording: Recording, point: int, seed: int, truth: dict[str, list[str]]) -> None:
    """Cut the power after this call, then look at what is there and go on with it.

    Raises:
        AssertionError: an acknowledged entry is lost, or a false alarm is raised.
    """
    memory = "/dev/shm" if os.path.isdir("/dev/shm") else None  # noqa: PTH112, S108 - a fresh folder is made in it
    with tempfile.TemporaryDirectory(dir=memory) as name:
        folder = Path(name)
        acknowledged = after_a_cut(recording, point, random.Random(seed), folder)
        told: list[str] = []
        book = HeadBook(folder / "heads", folder / "stick", told.append)
        where = f"after call {point}, seed {seed}"
        assert book.problems() == (), f"{where}: {book.problems()}"
        for record, count in acknowledged.items():
            path = folder / record
            verdict = verify(path)
            assert verdict.count >= count, f"{where}: {record} has {verdict.count} entries, {count} were acknowledged"
            if verdict.sealed:
                kept = [str(one["digest"]) for one in read_record(path).entries]
                assert not book.standing_of(kept).is_denied, f"{where}: {book.standing_of(kept)}"
            else:
                with RecordFile.reopen(path, at=at(90), book=book) as again:
                    kept = [str(one["digest"]) for one in again.entries]
                    again.append(body(91))
            shared = min(len(kept), len(truth[record]), count)
            assert kept[:shared] == truth[record][:shared], f"{where}: {record} holds other entries"
        book.note("stopped", folder / "x.jsonl", "ab" * 32, 1, "ab" * 32)
        assert told == [], f"{where}: {told}"
        assert book.problems() == (), f"{where}: {book.problems()}"
        if (folder / "roster.jsonl").exists() and _roster_synced(recording, point):
            load_roster(folder / "roster.jsonl")


def _roster_synced(recording: Recording, point: int) -> bool:
    """Every line of the roster that was written was synced by then."""
    last = [call.kind for call in recording.calls[:point] if call.path == "roster.jsonl"]
    return bool(last) and last[-1] == "sync"


def cut_often(points: int, seed: int, tell: Callable[[str], object]) -> int:
    """Cut the power so often, after each call in turn; return after how many calls."""
    with tempfile.TemporaryDirectory() as name:
        root = Path(name).resolve() / "root"
        root.mkdir()
        recording = lived(root)
        truth = {
            f"records/{one}.jsonl": [str(entry["digest"]) for entry in read_entries(root / "records" / f"{one}.jsonl")]
            for one in "ab"
        }
    calls = len(recording.calls)
    for number in range(points):
        check(recording, 1 + (number * 7) % calls if points < calls else 1 + number % calls, seed + number, truth)
        if number % 500 == 499:
            tell(f"{number + 1} cuts")
    return calls


def main() -> int:
    """Cut and tell; 0 if nothing was lost."""
    points = int(sys.argv[1]) if len(sys.argv) > 1 else POINTS
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    calls = cut_often(points, seed, print)
    print(f"{points} power cuts among {calls} calls, seed {seed}: no acknowledged entry lost, no false alarm")
    return 0


if __name__ == "__main__":
    sys.exit(main())
