"""Kinds of attacks on the evidence, each with what must be said: ``python -m tests.attempt.attacks``.

Each begins with the same small world, made once by the program itself: attempts of a day, sealed, signed, withdrawn,
stopped, with sound; a school's roster with an instructor, one whose term has run out and one whose key was revoked; the
book of heads with its copy; the signed head of the day. "Elsewhere" is a machine that has the keys and no book.
"""

import codecs
import contextlib
import hashlib
import io
import json
import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from assistant.checklist.library import FOLDER_SETTING, library_folder
from assistant.cli.main import main as program
from assistant.errors import AssistantError
from assistant.record.chain import MOST_SIGNATURES
from assistant.record.day_head import entry_of
from assistant.record.entry import GENESIS, OWN_FIELDS, link, read_line
from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from assistant.record.instructors import trust_school
from assistant.record.paths import sound_folder
from assistant.record.roster_file import begin_roster, enrol, revoke
from assistant.record.signing import add_key, load_key, new_key
from assistant.record.verify import read_entries
from tests.record.examples import at, body, opening
from tests.record.forge import as_a_person, forged, passed

NOW = datetime.now(UTC)
TODAY = NOW.date().isoformat()
SIGNED = {
    "kind": "signed off",
    "source": "instructor",
    "decision": "passed",
    "reason": "Seen.",
    "signer": "M. Lindqvist",
}


def moment(days: float) -> str:
    """So many days from now."""
    return (NOW + timedelta(days=days)).isoformat(timespec="microseconds")


@dataclass
class World:
    """Where everything lies.

    Attributes:
        folder: all of it.
        messages: what the book told.
    """

    folder: Path
    messages: list[str] = field(default_factory=list)

    @property
    def keys(self) -> Path:
        return self.folder / "keys"

    @property
    def heads(self) -> Path:
        return self.folder / "heads"

    @property
    def stick(self) -> Path:
        return self.folder / "stick"

    @property
    def roster(self) -> Path:
        return self.keys / "roster.jsonl"

    @property
    def day(self) -> Path:
        return self.folder / "day.head"

    @property
    def book(self) -> HeadBook:
        return HeadBook(self.heads, self.stick, self.messages.append)

    def record(self, name: str) -> Path:
        return self.folder / "records" / f"{name}.jsonl"

    def key(self, name: str):
        return load_key(self.keys, name)

    def lines(self, name: str) -> list[bytes]:
        return self.record(name).read_bytes().splitlines(keepends=True)

    def write(self, name: str, lines: list[bytes]) -> None:
        self.record(name).write_bytes(b"".join(lines))

    def sign(self, name: str, key: str, **changes: object) -> None:
        """Sign as a program without any check would."""
        told = {**SIGNED, "at": moment(0.01), **changes}
        RecordFile.add_signed(self.record(name), told, self.key(key), self.book)

    def elsewhere(self) -> None:
        """Another machine: nothing was ever seen there."""
        shutil.rmtree(self.heads)
        shutil.rmtree(self.stick)

    def call(self, *arguments: object) -> tuple[int, str]:
        """Run the program; exit code, and everything that it said."""
        said = io.StringIO()
        settings = self.folder / "settings.toml"
        settings.write_text(f"[records]\nheads_copy = {json.dumps(str(self.stick))}\n")
        before = {name: os.environ.get(name) for name in ("CHECKOFF_HEADS", "CHECKOFF_SETTINGS")}
        os.environ |= {"CHECKOFF_HEADS": str(self.heads), "CHECKOFF_SETTINGS": str(settings)}
        try:
            with contextlib.redirect_stdout(said), contextlib.redirect_stderr(said):
                code = program([*map(str, arguments)])
        except SystemExit as left:
            code = int(left.code or 0)
        finally:
            for name, value in before.items():
                if value is None:
                    del os.environ[name]
                else:
                    os.environ[name] = value
        return code, said.getvalue()

    def verify(self, *names: str, options: tuple[object, ...] = ()) -> tuple[int, str]:
        """Verify records of this world with its keys."""
        return self.call("verify", *map(self.record, names), "--open", "--keys", self.keys, *options)

    def sign_off(self, name: str, *options: object, key: str = "lindqvist") -> tuple[int, str]:
        """Sign as an instructor does."""
        given = ("--decision", "passed", "--reason", "Seen.", "--seen", "all")
        return self.call("sign-off", self.record(name), "--keys", self.keys, "--key", key, *(options or given))


def made(folder: Path) -> World:
    """The world as it is before anybody attacks it."""
    world = World(folder)
    for place in (world.stick, folder / "records"):
        place.mkdir(parents=True)
    for name in ("school", "lindqvist", "former", "stolen", "a18"):
        new_key(world.keys, name)
    trust_school(world.keys, "school")
    school = world.key("school")
    begin_roster(world.roster, "Harbour College", school, world.book)
    for name, person, until in (
        ("lindqvist", "M. Lindqvist", 300),
        ("former", "F. Ormer", -30),
        ("stolen", "S. Tolen", 300),
    ):
        enrol(world.roster, school, world.key(name).public, (person, "RN"), (moment(-300), moment(until)), world.book)
    for name, slip in (("passed", ()), ("failed", ("--slip", "tenfold")), ("withdrawn", ()), ("other", ())):
        _attempt(world, name, slip)
    world.sign("passed", "lindqvist")
    world.sign("withdrawn", "lindqvist")
    world.sign("withdrawn", "lindqvist", kind="sign-off withdrawn", decision="withdrawn", at=moment(0.02))
    _open_attempt(world)
    _with_sound(world)
    revoke(world.roster, school, "S. Tolen", "Key stolen.", world.book)
    key = world.key("lindqvist")
    world.day.write_bytes(entry_of(world.book.day(NOW.date()), moment(0), key.public.text, key.sign).line)
    return world


def _attempt(world: World, name: str, slip: tuple[str, ...]) -> None:
    """A check-off as a simulated learner does it, recorded as that of a person."""
    demo = ("demo", "hourly-round", "--mode", "check-off", *slip, "--learner", name, "--json")
    with fresh(world) as aside:  # a demonstration leaves its line in the book as well
        _, said = aside.call(*demo, "--records", world.folder / "demo")
    path = Path(next(json.loads(line)["record"] for line in said.splitlines() if line.startswith('{"outcome"')))
    forged(path, as_a_person)
    bodies = [{key: value for key, value in entry.items() if key not in OWN_FIELDS} for entry in read_entries(path)]
    shutil.rmtree(world.folder / "demo")
    with RecordFile.create(world.record(name), bodies[0], world.book) as record:
        for one in bodies[1:-1]:
            record.append(one)
        seal = dict(bodies[-1])
        del seal["seal"]
        record.seal(seal)


def _open_attempt(world: World) -> None:
    """An attempt whose process was killed: no line of the book says where it was."""
    bodies = [{name: value for name, value in one.items() if name not in OWN_FIELDS} for one in _of(world, "other")]
    record = RecordFile.create(world.record("open"), {**bodies[0], "learner": "open"}, world.book)
    for one in bodies[1:20]:
        record.append(one)
    os.close(record._descriptor)
    record._descriptor = None
    record._lock.release(force=True)


def _of(world: World, name: str):
    return read_entries(world.record(name))


def _with_sound(world: World) -> None:
    path = world.record("sound")
    sound_folder(path).mkdir()
    with RecordFile.create(path, opening(), world.book) as record:
        kept = sound_folder(path) / "0001.flac"
        kept.write_bytes(b"sound")
        digest = hashlib.sha256(b"sound").hexdigest()
        record.append({**body(2), "sound": {"file": "0001.flac", "digest": digest}})
        record.seal({"at": at(9), "outcome": "not completed"})


# What an attacker does to lines.


def relinked(world: World, name: str, lines: list[bytes]) -> None:
    """Number and link these lines anew; signatures stay as they are."""
    head, content = GENESIS, b""
    for number, line in enumerate(lines, 1):
        fields = json.loads(line)
        told = {key: value for key, value in fields.items() if key not in OWN_FIELDS}
        if "seal" in told:
            told["seal"] = {"count": number - 1, "head": head}
        old = fields.get("signature")
        entry = link(told, head, number, (lambda _, old=old: old) if old else None)
        head, content = entry.digest, content + entry.line
    world.record(name).write_bytes(content)


def edited(name: str, change: Callable[[list[dict[str, object]]], object], *, elsewhere: bool = True):
    """Change bodies and link all anew; then verify."""

    def attack(world: World) -> tuple[int, str]:
        if elsewhere:
            world.elsewhere()
        forged(world.record(name), change)
        return world.verify(name)

    return attack


def signed_entry(name: str, **changes: object):
    """Change the sign-off, link it anew, keep its signature; then verify."""

    def attack(world: World) -> tuple[int, str]:
        lines = world.lines(name)
        relinked(world, name, [*lines[:-1], json.dumps(json.loads(lines[-1]) | changes).encode()])
        return world.verify(name)

    return attack


def lines(name: str, change: Callable[[list[bytes]], list[bytes]], *options: object, elsewhere: bool = False):
    """Write these lines in place of the record's; then verify."""

    def attack(world: World) -> tuple[int, str]:
        if elsewhere:
            world.elsewhere()
        world.write(name, change(world.lines(name)))
        given = tuple(world.day if one == "DAY" else one for one in options)
        return world.verify(name, options=given)

    return attack


def _held(bodies: list[dict[str, object]]) -> dict[str, object]:
    return next(one for one in bodies if one.get("verdict") == "does not agree")


def _later(bodies: list[dict[str, object]]) -> None:
    for one in bodies[9:]:
        one["at"] = (datetime.fromisoformat(str(one["at"])) + timedelta(hours=2)).isoformat(timespec="microseconds")


def _as_it_ran(bodies: list[dict[str, object]]) -> None:
    for place, one in enumerate(bodies):
        one["ticks"] = f"{500 + place / 100:.6f}"


def _spliced(world: World) -> tuple[int, str]:
    world.write("failed", [*world.lines("failed")[:10], *world.lines("other")[10:]])
    return world.verify("failed")


def _result_of_another(world: World) -> tuple[int, str]:
    world.elsewhere()
    results = _of(world, "passed")[-2]["results"]
    forged(world.record("failed"), lambda bodies: bodies[-1].update(outcome="passed", results=results))
    return world.verify("failed")


def _sign_off_moved(world: World) -> tuple[int, str]:
    relinked(world, "failed", [*world.lines("failed"), world.lines("passed")[-1]])
    return world.verify("failed")


def _sign_off_replayed(world: World) -> tuple[int, str]:
    lines_now = world.lines("withdrawn")
    relinked(world, "withdrawn", [*lines_now, lines_now[-2]])
    return world.verify("withdrawn")


def _unsigned_behind(told: dict[str, object]):
    def change(before: list[bytes]) -> list[bytes]:
        last = read_line(before[-1])
        body = dict(told)
        if "seal" in body:
            body["seal"] = {"count": last.sequence, "head": last.digest}
        return [*before, link({"at": moment(0), **body}, last.digest, last.sequence + 1).line]

    return change


def _cut_and_resumed(world: World) -> tuple[int, str]:
    copy = world.folder / "copy.jsonl"
    copy.write_bytes(b"".join(world.lines("failed")[:15]))
    return world.call("resume", copy, "--typed")


def _cut_renamed_and_resumed(world: World) -> tuple[int, str]:
    """As if it were another attempt, which no book has seen."""
    copy = world.record("copy")
    copy.write_bytes(b"".join(world.lines("failed")[:15]))
    forged(copy, lambda bodies: bodies[0].update(learner="A99"))
    standard_input, sys.stdin = sys.stdin, io.StringIO()
    try:
        _, told = world.call("resume", copy, "--typed", "--no-display")
    finally:
        sys.stdin = standard_input
    assert "this machine has never seen" in told
    return world.verify("copy")


def _cut_open(world: World) -> tuple[int, str]:
    world.write("open", world.lines("open")[:12])
    return world.verify("open")


def _both_rolled_back(world: World) -> tuple[int, str]:
    """The record and this machine's book; the copy of the book is elsewhere."""
    world.write("passed", world.lines("passed")[:-1])
    book = world.heads / "heads.jsonl"
    told = book.read_bytes().splitlines(keepends=True)
    place = next(n for n, line in enumerate(told) if b'"kind":"signed"' in line)
    book.write_bytes(b"".join(told[:place]))
    return world.verify("passed")


def _book(change: Callable[[list[bytes]], list[bytes]]):
    def attack(world: World) -> tuple[int, str]:
        book = world.heads / "heads.jsonl"
        book.write_bytes(b"".join(change(book.read_bytes().splitlines(keepends=True))))
        return world.verify("passed")

    return attack


def _no_book(world: World) -> tuple[int, str]:
    world.elsewhere()
    return world.verify("failed")


def _roster(change: Callable[[World, list[bytes]], list[bytes] | None]):
    def attack(world: World) -> tuple[int, str]:
        found = change(world, world.roster.read_bytes().splitlines(keepends=True))
        if found is not None:
            world.roster.write_bytes(b"".join(found))
        return world.verify("passed")

    return attack


def _roster_of_a18(world: World, told: list[bytes]) -> list[bytes]:
    """Its own entry behind the school's, signed by itself."""
    key, last = world.key("a18"), read_line(told[-1])
    added = {"kind": "instructor added", "at": moment(0), "key": key.public.text, "instructor": key.public.text}
    more = {"name": "A. Eighteen", "role": "RN", "from": "", "until": ""}
    return [*told, link({**added, **more}, last.digest, last.sequence + 1, key.sign).line]


def _another_roster(world: World, _: list[bytes]) -> None:
    world.roster.unlink()
    begin_roster(world.roster, "Harbour College", world.key("a18"))


def _roster_removed(world: World, _: list[bytes]) -> None:
    world.roster.unlink()


def _day(*names: str, spoil: Callable[[World], object] = lambda _: None, elsewhere: bool = True):
    def attack(world: World) -> tuple[int, str]:
        spoil(world)
        if elsewhere:
            world.elsewhere()
        return world.verify(*names, options=("--day", world.day if elsewhere else TODAY))

    return attack


ALL = ("passed", "failed", "withdrawn", "other", "open", "sound")


def _day_edited(world: World) -> None:
    told = json.loads(world.day.read_bytes())
    told["attempts"].pop()
    world.day.write_bytes(json.dumps(told).encode())


def _day_by_a18(world: World) -> None:
    key = world.key("a18")
    world.day.write_bytes(entry_of(world.book.day(NOW.date()), moment(0), key.public.text, key.sign).line)


def _replaced_by_another(world: World) -> None:
    shutil.copy(world.record("other"), world.record("failed"))


def _signed(key: str, **changes: object):
    def attack(world: World) -> tuple[int, str]:
        world.sign("failed", key, **changes)
        return world.verify("failed")

    return attack


def _decision_of_a_stranger(world: World) -> tuple[int, str]:
    world.sign("passed", "a18", decision="not-passed")
    code, said = world.call("report", world.record("passed"), "--json", "--keys", world.keys)
    told = json.loads(next(line for line in said.splitlines() if line.startswith('{"form"')))
    return code, told["decision"]


def _crowded(world: World) -> tuple[int, str]:
    key, last = world.key("a18"), read_line(world.lines("failed")[-1])
    content, head = b"", last.digest
    for number in range(last.sequence + 1, last.sequence + MOST_SIGNATURES + 20):
        entry = link({**SIGNED, "at": moment(0), "key": key.public.text}, head, number, key.sign)
        content, head = content + entry.line, entry.digest
    with world.record("failed").open("ab") as stream:
        stream.write(content)
    return world.sign_off("failed")


def _refused(act: Callable[[World], object]):
    def attack(world: World) -> tuple[int, str]:
        try:
            act(world)
        except AssistantError as error:
            return 1, str(error)
        return 0, "nothing was said"

    return attack


def _look_alike(world: World) -> None:
    public = world.key("a18").public
    enrol(world.roster, world.key("school"), public, ("M. L\u0456ndqvist", "RN"), (moment(0), moment(9)))


def _second_name(world: World) -> None:
    add_key(world.keys, "zz-dean", world.keys / "lindqvist.public.pem")


def _key_that_looks_alike(world: World) -> None:
    new_key(world.keys, "Lindqvist")


def _while_it_runs(happening: Callable[[World], object]):
    def act(world: World) -> None:
        with RecordFile.reopen(world.record("open"), book=world.book) as record:
            happening(world)
            record.append({**body(30), "at": moment(0)})

    return _refused(act)


def _second_name_of(kind: str):
    def happening(world: World) -> None:
        path = world.folder / "second.jsonl"
        if kind == "link":
            path.symlink_to(world.record("open"))
        else:
            path.hardlink_to(world.record("open"))
        RecordFile.reopen(path, book=world.book)

    return happening


def _swapped_file(world: World) -> None:
    copy = world.folder / "swapped"
    shutil.copy(world.record("open"), copy)
    copy.replace(world.record("open"))


def _sound(change: Callable[[Path], object]):
    def attack(world: World) -> tuple[int, str]:
        change(sound_folder(world.record("sound")) / "0001.flac")
        return world.verify("sound")

    return attack


def _sound_linked(world: World) -> tuple[int, str]:
    folder = sound_folder(world.record("sound"))
    folder.rename(world.folder / "elsewhere")
    folder.symlink_to(world.folder / "elsewhere")
    return world.call("erase-sound", world.record("sound"))


def _erasure_forged(world: World) -> tuple[int, str]:
    world.elsewhere()
    shutil.rmtree(sound_folder(world.record("sound")))
    told = {"kind": "sound erased", "at": moment(0), "ticks": "1.0", "files": 1, "reason": "asked for"}
    world.write("sound", _unsigned_behind(told)(world.lines("sound")))
    return world.verify("sound")


def _easier_checklist_signed(world: World) -> tuple[int, str]:
    """A file of the learner's own hides the library's of the same name."""
    own = world.folder / "own"
    own.mkdir()
    told = (library_folder() / "hourly-round.toml").read_text(encoding="utf-8")
    (own / "hourly-round.toml").write_text(f"# Easier.\n{told}", encoding="utf-8")
    with pytest.MonkeyPatch.context() as patched:
        patched.setenv(FOLDER_SETTING, str(own))
        _attempt(world, "easier", ())
        return world.sign_off("easier", "--decision", "passed", "--seen", "all")


def _false_result_signed(world: World) -> tuple[int, str]:
    world.elsewhere()
    forged(world.record("failed"), passed)
    return world.sign_off("failed")


def _cut_record_signed(world: World) -> tuple[int, str]:
    world.write("withdrawn", world.lines("withdrawn")[:-1])
    return world.sign_off("withdrawn")


def _copied(world: World) -> tuple[int, str]:
    shutil.copy(world.record("passed"), world.record("copy"))
    return world.verify("passed", "copy")


def _old_head(world: World) -> tuple[int, str]:
    head = read_line(world.lines("passed")[-1]).digest
    world.elsewhere()
    world.write("passed", world.lines("passed")[:-1])
    return world.verify("passed", options=("--head", head))


DISAGREE = "entries and result disagree"
OLDER = "older than last seen here"
NOTHING = "whoever could write this file could have made it"
WRONG = "signature wrong"
MISSING = f"Not whole: attempt 2 of {TODAY} is missing."

Attack = tuple[Callable[[World], tuple[int, str]], int, str]
KINDS: dict[str, Attack] = {
    # Edited.
    "edit: a byte": (
        lines("failed", lambda x: [*x[:8], x[8].replace(b"typed", b"typeD", 1), *x[9:]]),
        1,
        "line 9: edited",
    ),
    "edit: the learner, all linked anew": (edited("failed", lambda b: b[0].update(learner="A99")), 5, NOTHING),
    "edit: the learner, linked anew, on this machine": (
        edited("failed", lambda b: b[0].update(learner="A99"), elsewhere=False),
        5,
        NOTHING,
    ),
    "edit: the learner, against the day": (
        _day(*ALL, spoil=lambda w: forged(w.record("failed"), lambda b: b[0].update(learner="A99"))),
        1,
        MISSING,
    ),
    "edit: the outcome, on this machine": (edited("failed", passed, elsewhere=False), 1, "other than last seen here"),
    "edit: the outcome, elsewhere": (edited("failed", passed), 1, DISAGREE),
    "edit: a verdict": (edited("failed", lambda b: _held(b).update(verdict="agrees")), 1, DISAGREE),
    "edit: the words": (edited("failed", lambda b: b[b.index(_held(b)) - 1].update(words="50 mL/h")), 1, DISAGREE),
    "edit: the points": (edited("failed", lambda b: b[-1]["results"].update(score_percent="100")), 1, DISAGREE),
    "edit: who spoke": (edited("failed", lambda b: b[2].update(source="instructor")), 1, DISAGREE),
    "edit: the times from here on": (edited("failed", _later), 1, DISAGREE),
    "edit: no steady clock": (edited("failed", lambda b: b[5].pop("ticks")), 1, DISAGREE),
    "edit: a demonstration made a person's": (edited("other", _as_it_ran), 1, "fits the steady clock"),
    "edit: the decision": (signed_entry("passed", decision="not-passed"), 1, WRONG),
    "edit: the signer": (signed_entry("passed", signer="A. Eighteen"), 1, WRONG),
    "edit: when it was signed": (signed_entry("passed", at=moment(-20)), 1, WRONG),
    "edit: line ends": (
        lines("passed", lambda x: [one.replace(b"\n", b"\r\n") for one in x]),
        1,
        "line ends were changed",
    ),
    "edit: a mark before it": (lines("passed", lambda x: [codecs.BOM_UTF8, *x]), 1, "line ends were changed"),
    "edit: junk behind": (lines("passed", lambda x: [*x, b"junk\n"]), 1, "edited"),
    "edit: zeros behind": (lines("passed", lambda x: [*x, bytes(600)]), 1, "torn tail"),
    # Cut.
    "cut: the seal": (lines("failed", lambda x: x[:-1]), 1, OLDER),
    "cut: and resumed": (_cut_and_resumed, 1, OLDER),
    "cut: made another attempt's, and resumed": (_cut_renamed_and_resumed, 0, "first 16 entries came about is claimed"),
    "cut: a sign-off": (lines("passed", lambda x: x[:-1]), 1, OLDER),
    "cut: a withdrawal": (lines("withdrawn", lambda x: x[:-1]), 1, OLDER),
    "cut: a withdrawal, elsewhere, against the day": (
        lines("withdrawn", lambda x: x[:-1], "--day", "DAY", elsewhere=True),
        1,
        OLDER,
    ),
    "cut: a withdrawal, elsewhere, against a printed head": (_old_head, 1, "tail missing"),
    "cut: between two lines of the book": (_cut_open, 1, OLDER),
    "cut: within a line": (lines("failed", lambda x: [*x[:-1], x[-1][:50]]), 1, "torn tail"),
    "cut: a line in the middle": (lines("failed", lambda x: [*x[:5], *x[6:]]), 1, "removed"),
    "cut: the first line": (lines("failed", lambda x: x[1:]), 1, "removed"),
    "cut: everything": (lines("failed", lambda _: []), 1, "not a record"),
    # Spliced, reordered, replayed.
    "splice: a line twice": (lines("failed", lambda x: [*x[:6], *x[5:]]), 1, "inserted"),
    "splice: the end of another record": (_spliced, 1, "edited"),
    "splice: another record's result": (_result_of_another, 1, DISAGREE),
    "splice: another record's sign-off": (_sign_off_moved, 1, WRONG),
    "splice: an answer twice, linked anew": (edited("failed", lambda b: b.insert(4, dict(b[4]))), 1, DISAGREE),
    "splice: an answer taken out, linked anew": (edited("failed", lambda b: b.remove(_held(b))), 1, DISAGREE),
    "splice: an end before the end": (edited("failed", lambda b: b.__delitem__(slice(15, -1))), 1, DISAGREE),
    "reorder: two lines": (lines("failed", lambda x: [*x[:5], x[6], x[5], *x[7:]]), 1, "reordered"),
    "replay: a sign-off as it is": (lines("passed", lambda x: [*x, x[-1]]), 1, "inserted"),
    "replay: a sign-off after its withdrawal": (_sign_off_replayed, 1, WRONG),
    "forge: an unsigned line behind the seal": (
        lines("failed", _unsigned_behind({"kind": "noted"})),
        1,
        "after the seal",
    ),
    "forge: a second seal": (lines("failed", _unsigned_behind({"kind": "finished", "seal": 1})), 1, "after the seal"),
    # Rolled back, renamed, removed.
    "roll back: record and book": (_both_rolled_back, 1, "holds entries that the book itself does not"),
    "roll back: no book any more": (_no_book, 5, NOTHING),
    "roll back: a line of the book": (_book(lambda x: [*x[:4], *x[5:]]), 1, "the book of heads does not hold"),
    "roll back: a word of the book": (
        _book(lambda x: [one.replace(b"passed.jsonl", b"parsed.jsonl") for one in x]),
        1,
        "the book of heads does not hold",
    ),
    "roll back: the roster, before a key was revoked": (_roster(lambda _, x: x[:-1]), 1, OLDER),
    "remove: a record of the day": (_day(*(n for n in ALL if n != "failed"), elsewhere=False), 1, MISSING),
    "remove: a record of the day, elsewhere": (_day(*(n for n in ALL if n != "failed")), 1, MISSING),
    "rename: another record in its place": (_day(*ALL, spoil=_replaced_by_another), 1, MISSING),
    "rename: a copy": (_copied, 0, "a record of the same attempt as"),
    "forge: the head of a day": (_day(*ALL, spoil=_day_edited), 1, "is not the head of a day"),
    "forge: the head of a day by a stranger": (_day(*ALL, spoil=_day_by_a18), 1, "not known as an instructor's"),
    # Keys.
    "keys: one made on this machine": (_signed("a18", signer="M. Lindqvist, RN"), 1, "signed by an unknown key"),
    "keys: a stranger's decision in the report": (_decision_of_a_stranger, 0, "Signed off as passed by M. Lindqvist"),
    "keys: the school's own": (_signed("school"), 1, "signed by an unknown key"),
    "keys: one whose term has run out": (_signed("former"), 1, "signed by a key that was not valid"),
    "keys: one whose term has run out, back-dated": (
        _signed("former", at=moment(-40)),
        1,
        "but what it signs is of",
    ),
    "keys: a revoked one, back-dated": (_signed("stolen", at=moment(-20)), 1, "Key stolen."),
    "keys: strangers crowd in": (_crowded, 0, "is signed: passed"),
    "keys: signing in another's name": (
        lambda w: w.sign_off("failed", "--decision", "passed", "--reason", "x", "--signer", "A. Okafor"),
        2,
        "belongs to M.",
    ),
    "keys: signing with one that is not on the roster": (
        lambda w: w.sign_off("failed", key="a18"),
        1,
        "not an instructor's",
    ),
    "keys: a look-alike name on the roster": (_refused(_look_alike), 1, "looks like"),
    "keys: a look-alike key": (_refused(_key_that_looks_alike), 1, "looks like"),
    "keys: a second name for a key": (_refused(_second_name), 1, "known already"),
    "keys: the roster edited": (
        _roster(lambda _, x: [one.replace(b"Lindqvist", b"Lindqvost") for one in x]),
        1,
        "does not hold",
    ),
    "keys: the roster added to": (_roster(_roster_of_a18), 1, "not signed by the school's key"),
    "keys: another roster": (_roster(_another_roster), 1, "not signed by the school's key"),
    "keys: no roster": (_roster(_roster_removed), 1, "cannot be read"),
    # Races.
    "race: a second writer by a link": (_while_it_runs(_second_name_of("link")), 1, "is in use"),
    "race: a second writer by a second name": (_while_it_runs(_second_name_of("name")), 1, "is in use"),
    "race: the record removed": (_while_it_runs(lambda w: w.record("open").unlink()), 1, "moved, removed or replaced"),
    "race: the record replaced": (_while_it_runs(_swapped_file), 1, "moved, removed or replaced"),
    "race: a line written in between": (
        _while_it_runs(lambda w: w.write("open", [*w.lines("open"), b"{}\n"])),
        1,
        "written into",
    ),
    # Sound, and what is signed.
    "sound: another one": (_sound(lambda path: path.write_bytes(b"other")), 1, "sound differs"),
    "sound: none": (_sound(lambda path: path.unlink()), 1, "sound missing"),
    "sound: a link at its erasure": (_sound_linked, 1, "nothing was erased"),
    "sound: an erasure forged": (_erasure_forged, 5, "erased on purpose"),
    "sign-off: by an easier checklist of the same name": (
        _easier_checklist_signed,
        2,
        "Its checklist is not the library's hourly-round: it has the same name and other content. That needs a reason.",
    ),
    "sign-off: a false result": (_false_result_signed, 1, "its entries and its result disagree"),
    "sign-off: a cut record": (_cut_record_signed, 1, OLDER),
}
"""What is done, the exit code, and what must be said."""


@contextlib.contextmanager
def fresh(world: World) -> Iterator[World]:
    """A copy of a world."""
    with tempfile.TemporaryDirectory() as name:
        copy = Path(name) / "world"
        shutil.copytree(world.folder, copy, symlinks=True)
        yield World(copy)


def main() -> int:
    """Attack in every way; 0 if each time what must be said was said."""
    with tempfile.TemporaryDirectory() as name:
        world = made(Path(name))
        found = 0
        for kind, (attack, code, said) in KINDS.items():
            with fresh(world) as copy:
                got, told = attack(copy)
            right = got == code and said in told
            found += right
            if not right:
                print(f"{kind}: exit code {got}, and it said: {told}")  # noqa: T201
    print(f"{found} of {len(KINDS)} kinds")  # noqa: T201
    return 0 if found == len(KINDS) else 1


if __name__ == "__main__":
    sys.exit(main())
