"""Stations as processes, and a desk: from start to seal, with kills, cuts and restarts; no entry is lost or doubled."""

import hashlib
import signal
import socket
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from assistant.adapters.desk_link import pair_with
from assistant.attempts.relived import live_again
from assistant.attempts.sitting import Wishes
from assistant.attempts.stationed import NOT_HERE, Bench, DeskStation
from assistant.cli.screen import PlainScreen
from assistant.desk.hub import new_id
from assistant.errors import LinkError
from assistant.link.addresses import read_address, write_address
from assistant.link.messages import Direct, Mark, Start, TakeUp
from assistant.link.pairing_code import read_code
from assistant.orders.load import load_order
from assistant.orders.write import text_of
from assistant.record.head_book import HeadBook
from assistant.record.lived import Finding
from assistant.record.verify import read_record, verify
from assistant.settings import SoundSettings
from tests.link.cut import Cut
from tests.link.lab import CHECKLIST, LIMIT_S, desk, lines_of, station, until

pytestmark = pytest.mark.slow
NAME = "bench-1"


def numbers(entries):
    return [entry["sequence"] for entry in entries]


def proven(path):
    """The record holds, is sealed, counts without gap or double, and lives again as it was."""
    reading = read_record(path)
    assert reading.verdict.ok, reading.verdict
    assert numbers(reading.entries) == list(range(1, len(reading.entries) + 1))
    lived = live_again(reading.entries, path)
    assert lived.finding is Finding.SAME, lived
    return reading.entries


def test_an_attempt_survives_kills_of_the_station_and_a_new_desk(tmp_path):
    """Started at the desk, killed, taken up, the desk closed and opened anew: the desk has what is on disk."""
    text = text_of(load_order("oh-118"))
    with desk(tmp_path) as first, station(tmp_path, NAME, pace=(0.1, 0.2)) as bench:
        until(lambda: first.seen(NAME), "the station")
        attempt = first.start(NAME, order="drawn-7", order_text=text)
        path = first.path(attempt)
        assert path.parent == tmp_path / "records"
        until(lambda: len(first.entries(attempt)) > 5, "some entries")
        bench.process.send_signal(signal.SIGSTOP)  # so that what comes now is pending when it is killed
        note = Mark(id=new_id(), attempt=attempt, mark="note", words="hands washed twice")
        pause = Direct(id=new_id(), attempt=attempt, what="pause")
        for order in (note, pause):
            first.give(NAME, order)
        bench.kill()
        bench.start()
        until(lambda: attempt in first.seen(NAME).hello.left, "what was left")
        until(lambda: first.seen(NAME).orders == [note], "the pause to be refused, the note to be kept")
        assert first.seen(NAME).refused == NOT_HERE
        take_up = TakeUp(id=new_id(), attempt=attempt)
        first.give(NAME, take_up)
        until(lambda: any(e["kind"] == "resumed" for e in first.entries(attempt)), "the attempt to go on")
        until(lambda: not first.seen(NAME).orders, "an answer")
        had = len(first.entries(attempt))
        first.close()
        with desk(tmp_path) as second:
            until(lambda: second.hub.attempts.get(attempt), "the attempt at the new desk")
            until(lambda: second.is_sealed(attempt), f"its end: {bench.said[-2000:]}")
            # An order that was carried out is not carried out again.
            opening = second.entries(attempt)[0]
            again = Start(id=opening["start"], checklist=CHECKLIST, learner="A17", mode="practice", short_waits=True)
            for order in (again, take_up):
                second.give(NAME, order)
                until(lambda: not second.seen(NAME).orders, "an answer")
            assert list(second.seen(NAME).refusals) == []
            entries = proven(path)
            assert len(entries) > had
            assert [entry["words"] for entry in entries if entry.get("order") == note.id] == [note.words]
            assert list(second.entries(attempt)) == list(entries)
            assert entries[0]["order_digest"] == hashlib.sha256(text.encode()).hexdigest()
            assert [one.name for one in path.parent.glob("*.jsonl")] == [path.name]


def test_orders_are_answered_once_their_entry_is_on_disk_or_refused(tmp_path):
    """A word of the instructor's becomes entries with the order's id; what cannot be is refused in plain words."""
    with desk(tmp_path) as here, station(tmp_path, NAME, pace=(30, 30)) as bench:
        until(lambda: here.seen(NAME), "the station")
        attempt = here.start(NAME)
        said = here.give(NAME, Direct(id=new_id(), attempt=attempt, what="say", words="cue given"))
        until(lambda: not here.seen(NAME).orders, "an answer")
        marked = [entry for entry in here.entries(attempt) if entry.get("order") == said]
        assert [entry["kind"] for entry in marked] == ["instructor here"]
        assert marked[0]["proven"] is True
        note = Mark(id=new_id(), attempt=attempt, mark="note", words="looks well")
        here.give(NAME, note)
        until(lambda: not here.seen(NAME).orders, "an answer")
        (noted,) = [entry for entry in here.entries(attempt) if entry.get("order") == note.id]
        assert (noted["kind"], noted["mark"], noted["words"], noted["source"]) == (
            "marked",
            "note",
            "looks well",
            "desk",
        )
        count = len(here.entries(attempt))
        for order, why in (
            (Direct(id=new_id(), attempt="0" * 64, what="say", words="seen"), "not going on"),
            (note, ""),
            (TakeUp(id=new_id(), attempt=attempt), "is going on"),
            (Start(id=new_id(), checklist="../secret", learner="A1", mode="practice"), "is going on"),
            (Direct(id=said, attempt=attempt, what="say", words="cue given"), ""),
            (Direct(id=new_id(), attempt=attempt, what="say", words=" "), "cannot be done"),
        ):
            here.give(NAME, order)
            until(lambda: not here.seen(NAME).orders, "an answer")
            refusals = [(one.id, text) for one, text in here.seen(NAME).refusals]
            assert [why in text for one, text in refusals if one == order.id] == ([True] if why else [])
        assert len(here.entries(attempt)) == count
        bench.close()
        assert bench.process.returncode == 0
        assert verify(here.path(attempt)).count == len(lines_of(here.path(attempt)))


def test_over_tls_a_cut_and_a_killed_desk_lose_nothing(tmp_path):
    """A paired station goes on alone; the desk's copy ends as the very record, byte for byte, with its papers."""
    far, near = tmp_path / "station", tmp_path / "desk"
    far.mkdir()
    near.mkdir()
    with socket.create_server(("127.0.0.1", 0)) as free:
        port = free.getsockname()[1]
    network = Cut(port)
    with desk(near, lab=("127.0.0.1", port)) as first:
        code = first.on(lambda: first.doors.pairing.new_code("station"))
        address = pair_with("127.0.0.1", network.port, NAME, read_code(code.lower()))
    write_address(far / "link" / "paired-desk.json", address)
    assert (far / "link" / "paired-desk.json").stat().st_mode & 0o077 == 0
    assert read_address(far / "link" / "paired-desk.json") == address
    call = [sys.executable, "-m", "tests.link.desk_process", str(near), str(port)]
    killed = subprocess.Popen(call, stdout=subprocess.DEVNULL)
    try:
        with station(far, pace=(0.05, 0.1)) as bench:
            copies = near / "records"
            until(lambda: list(copies.glob("*.jsonl")) and len(lines_of(copy_in(copies))) > 4, "the first entries")
            network.cut()
            own = copy_in(bench.records)
            until(lambda: len(lines_of(own)) > len(lines_of(copy_in(copies))) + 3, "entries that the desk lacks")
            killed.kill()
            killed.wait(LIMIT_S)
            with copy_in(copies).open("ab") as torn:  # what a write that was cut short leaves behind
                torn.write(b'{"at":"2026')
            network.heal()
            with desk(near, lab=("127.0.0.1", port)) as second:
                until(lambda: second.hub.attempts, f"the attempt at the new desk: {bench.said}")
                (attempt,) = second.hub.attempts
                until(lambda: second.is_sealed(attempt), "its end")
                assert second.path(attempt).read_bytes() == own.read_bytes()
                proven(second.path(attempt))
                assert second.seen(NAME).trouble == ""
    finally:
        killed.kill()
        network.close()


def test_a_station_ends_whenever_it_is_asked_to(tmp_path):
    """A signal's handler runs between any two lines, as in the middle of a look whether its desk has forgotten it."""
    heads = HeadBook(tmp_path / "heads", None, print)
    wishes = Wishes(typed=True, terminal=False, ear=None, sound=SoundSettings())
    screen = PlainScreen(echo_typed=False)
    parts = (NAME, tmp_path / "records", tmp_path / "link", heads, "", wishes, screen, None, None, print, print)
    one = DeskStation(Bench(*parts), lambda: None)

    def asked_meanwhile():
        one.end()
        return False

    one._is_forgotten = asked_meanwhile
    thread = threading.Thread(target=one.run, daemon=True)
    thread.start()
    thread.join(LIMIT_S)
    assert not thread.is_alive()


def test_a_station_that_a_desk_started_ends_without_it(tmp_path):
    """One that somebody started waits for as long as they like."""
    heads = HeadBook(tmp_path / "heads", None, print)
    wishes = Wishes(typed=True, terminal=False, ear=None, sound=SoundSettings())
    screen = PlainScreen(echo_typed=False)
    parts = (NAME, tmp_path / "records", tmp_path / "link", heads, "", wishes, screen, None, None, print, print)
    ended = []

    def run(alone_s):
        one = DeskStation(Bench(*parts, alone_s=alone_s), lambda: None)
        with pytest.raises(LinkError, match="runs already"):
            DeskStation(Bench(*parts), lambda: None)
        thread = threading.Thread(target=lambda: (one.run(), ended.append(alone_s)), daemon=True)
        thread.start()
        return one, thread

    run(0.1)[1].join(LIMIT_S)
    assert ended == [0.1]
    one, thread = run(0.0)
    thread.join(1.0)
    assert ended == [0.1]
    one.end()
    thread.join(LIMIT_S)
    assert ended == [0.1, 0.0]


def copy_in(folder: Path) -> Path:
    (found,) = folder.glob("*.jsonl")
    return found
