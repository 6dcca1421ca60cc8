"""A lab of many stations in little: ``python -m tests.bench.stations [--minutes 10] [--stations 20]``.

Real station processes with simulated learners who answer every 2 to 6 seconds; half of them on the desk's own machine,
half paired over TLS through a network that is cut for up to a minute. Stations are killed and started anew. The desk is
a process of its own, with its pages and a board that is kept up to date; it starts attempts, takes up what was left and
marks. Progress goes to standard error; one line of JSON comes at the end.

An entry's time is the machine's steady clock when it was made (`ticks`), so what is measured holds its way to the disk,
to the desk, and into what the pages are made from.
"""

import argparse
import asyncio
import contextlib
import http.client
import json
import random
import socket
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path
from urllib.parse import urlsplit

from assistant.adapters.desk_link import pair_with
from assistant.attempts.proof import Here
from assistant.desk.class_list import ClassList
from assistant.desk.doors import Doors
from assistant.desk.hub import Hub, new_id
from assistant.desk.instructor import Desk
from assistant.desk.keeping import KeptRecords
from assistant.desk.lab import Lab
from assistant.link.addresses import write_address
from assistant.link.messages import Mark, Start, TakeUp
from assistant.link.pairing_code import read_code
from assistant.record.head_book import HeadBook
from tests.link.cut import Cut
from tests.link.lab import StationProcess, until

PACE_S = (2.0, 6.0)
CHECKLISTS = ("primary-line", "secondary-line", "lock-infusion", "heparin", "hourly-round", "push-through-lock")
BAR_S = 0.3
"""Within so long an entry is on the desk, in 95 of 100."""
SLOW_S = 1.0
"""What takes longer is told."""
LONGEST_CUT_S = 60.0
KILL_EVERY_S, CUT_EVERY_S, MARK_EVERY_S = 25.0, 45.0, 2.0
CATCH_UP_S = 60.0


def serve(folder, port):
    """The desk's process: serves until standard input ends, then prints what it saw."""
    link, records = folder / "link", folder / "records"
    hub = Hub(KeptRecords(records, link, HeadBook(folder / "heads", None, note)), time.monotonic)
    known = lambda: Here(HeadBook(folder / "heads", None, note), folder / "keys")  # noqa: E731 - never asked here
    pages = Desk(Lab(hub, time.monotonic, records, ClassList(folder / "class.txt"), known, folder / "keys"))
    doors = Doors(hub, pages.app, link, lab=("127.0.0.1", port))
    say({"address": doors.address})
    wants = threading.Event()
    commands = threading.Thread(target=_commands, args=(doors, wants), daemon=True)
    commands.start()
    seen = Seen(hub)
    doors.server.run(seen.begin)
    began, spent = time.monotonic(), time.process_time()
    mark_at = began
    chance = random.Random(7)  # noqa: S311 - chooses what is started and marked
    given = {}
    while commands.is_alive():
        time.sleep(0.2)
        if not wants.is_set():
            continue
        doors.server.run(lambda: _keep_busy(hub, chance))
        if time.monotonic() > mark_at:
            mark_at = time.monotonic() + MARK_EVERY_S
            doors.server.run(lambda: _mark(hub, chance, given))
    share = (time.process_time() - spent) / (time.monotonic() - began)
    doors.close()
    answered = [seen.orders[order] - at for order, at in given.items() if order in seen.orders]
    told = {"arrived": seen.arrived, "share": share, "marks": len(given), "marked_s": answered}
    say({**told, "attempts": {one: watched.begun.station for one, watched in hub.attempts.items()}})


class Seen:
    """When each entry reached what the pages are made from."""

    def __init__(self, hub):
        self._hub = hub
        self._counts = {}
        self.arrived = []
        self.orders = {}

    def begin(self):
        self._task = asyncio.ensure_future(self._watch())

    async def _watch(self):
        async for _ in self._hub.changes(5.0):
            now = time.monotonic()
            for attempt, watched in self._hub.attempts.items():
                known = self._counts.get(attempt, 0)
                if watched.entries == known:
                    continue
                for entry in self._hub._keeping.bodies(attempt)[known:]:
                    self.arrived.append((watched.begun.station, attempt, entry["sequence"], float(entry["ticks"]), now))
                    if entry.get("order"):
                        self.orders[entry["order"]] = now
                self._counts[attempt] = watched.entries


def _keep_busy(hub, chance):
    for name, seen in hub.stations.items():
        if seen.orders or seen.hello.busy or time.monotonic() > seen.at + 6:
            continue
        if seen.hello.left and chance.random() < 0.9:
            hub.give(name, TakeUp(id=new_id(), attempt=seen.hello.left[-1]))
            continue
        checklist, mode = chance.choice(CHECKLISTS), chance.choice(("practice", "check-off"))
        learner = f"A{chance.randrange(100):02}"
        hub.give(name, Start(id=new_id(), checklist=checklist, learner=learner, mode=mode))


def _mark(hub, chance, given):
    now = time.monotonic()
    busy = [name for name, seen in hub.stations.items() if seen.hello.busy and seen.attempt and now < seen.at + 3]
    if busy:
        name = chance.choice(busy)
        order = Mark(id=new_id(), attempt=hub.stations[name].attempt, mark="note", words="looks well")
        given[order.id] = time.monotonic()
        hub.give(name, order)


def _commands(doors, wants):
    for line in sys.stdin:
        match line.split():
            case ["code"]:
                say({"code": doors.server.run(lambda: doors.pairing.new_code("station"))})
            case ["go"]:
                wants.set()
            case ["rest"]:
                wants.clear()


def say(told):
    sys.stdout.write(f"{json.dumps(told)}\n")
    sys.stdout.flush()


class Stations:
    """All stations, and what is done to them."""

    def __init__(self, folder, count, port, ask):
        self.folder = folder
        self.here, self.far, self.networks = [], [], {}
        self.cuts, self.kills = [], []
        for number in range(count):
            name = f"bench-{number + 1}"
            if number < count // 2:
                self.here.append(StationProcess(folder, name, pace=PACE_S, seed=number))
                continue
            network = Cut(port)
            place = folder / name
            place.mkdir()
            address = pair_with("127.0.0.1", network.port, name, read_code(ask("code")["code"]))
            write_address(place / "link" / "paired-desk.json", address)
            one = StationProcess(place, pace=PACE_S, seed=number)
            one.name = name
            self.networks[name] = network
            self.far.append(one)
        for one in self.here:
            one.name = one._call[one._call.index("--typed") - 1]

    @property
    def all(self):
        return [*self.here, *self.far]

    def trouble(self, seconds, chance):
        """Kill and cut at random for so long."""
        end = time.monotonic() + seconds
        kill_at, cut_at = time.monotonic() + KILL_EVERY_S, time.monotonic() + CUT_EVERY_S
        cut = {}
        while (now := time.monotonic()) < end:
            time.sleep(0.1)
            if now > kill_at and now < end - CATCH_UP_S / 2:
                kill_at = now + chance.uniform(0.5, 1.5) * KILL_EVERY_S
                one = chance.choice(self.all)
                self.kills.append((one.name, time.monotonic()))
                one.kill()
                one.start()
                note(f"killed {one.name} at {now:.2f}")
            if now > cut_at and now < end - LONGEST_CUT_S:
                cut_at = now + chance.uniform(0.5, 1.5) * CUT_EVERY_S
                name = chance.choice([name for name in self.networks if name not in cut])
                cut[name] = (now, now + chance.choice((LONGEST_CUT_S, 5.0)))
                self.networks[name].cut()
                note(f"cut {name}")
            for name, (began, until_s) in list(cut.items()):
                if now > until_s:
                    self.networks[name].heal()
                    self.cuts.append((name, began, now))
                    del cut[name]
        for name, (began, _) in cut.items():
            self.networks[name].heal()
            self.cuts.append((name, began, time.monotonic()))

    def close(self):
        for one in self.all:
            one.process.terminate()
        for one in self.all:
            one.close()
        for network in self.networks.values():
            network.close()

    def records(self):
        """Every record that a station wrote, each with the copy that the desk has of it, None where it needs none."""
        of_desk = {_opening(path)["digest"]: path for path in (self.folder / "records").glob("*.jsonl")}
        far = [path for one in self.far for path in one.records.glob("*.jsonl")]
        found = {path: of_desk.pop(_opening(path)["digest"], Path("none")) for path in far}
        return found | dict.fromkeys(of_desk.values())


def note(text):
    sys.stderr.write(f"{text}\n")


def judged(stations, told):
    """What came of it: times of those that nothing held up, and whether anything is missing or double."""
    arrived = told["arrived"]
    held, quick = 0, []
    back = []
    for name, began, healed in stations.cuts:
        first = min((now for station, *_, now in arrived if station == name and now > healed + 0.01), default=None)
        back.append((name, began - 1, first if first is not None else float("inf")))
        if first is not None:
            stations_back.append(first - healed)
    for station, attempt, sequence, ticks, now in arrived:
        cut = any(station == name and began < ticks <= end for name, began, end in back)
        killed = any(station == name and ticks <= at < now for name, at in stations.kills)
        if cut or killed:
            held += 1
        else:
            quick.append(now - ticks)
            if now - ticks > SLOW_S:
                note(f"{station}, entry {sequence} of {attempt[:8]}: {now - ticks:.2f} s, at {ticks:.2f}")
    quick.sort()
    seen = {}
    for _, attempt, sequence, *_ in arrived:
        seen.setdefault(attempt, []).append(sequence)
    missing = doubled = 0
    entries = 0
    for path, copy in stations.records().items():
        lines = path.read_bytes().splitlines(keepends=True)
        whole = [json.loads(line) for line in lines if line.endswith(b"\n")]
        entries += len(whole)
        sequences = seen.pop(whole[0]["digest"], [])
        missing += len(set(range(1, len(whole) + 1)) - set(sequences))
        doubled += len(sequences) - len(set(sequences))
        if copy is not None and not (copy.exists() and copy.read_bytes() == path.read_bytes()):
            note(f"{copy} differs from {path}")
            missing += 1
    return {
        "entries": entries,
        "missing": missing,
        "doubled": doubled,
        "of_no_record": sum(map(len, seen.values())),
        "measured": len(quick),
        "held_up_by_a_cut_or_kill": held,
        "within_300_ms_percent": round(100 * sum(one <= BAR_S for one in quick) / max(1, len(quick)), 2),
        "median_ms": round(1000 * quick[len(quick) // 2], 1),
        "p95_ms": round(1000 * quick[int(0.95 * len(quick))], 1),
        "p99_ms": round(1000 * quick[int(0.99 * len(quick))], 1),
        "longest_ms": round(1000 * quick[-1], 1),
    }


stations_back = []


def _opening(path):
    with path.open("rb") as stream:
        return json.loads(stream.readline())


def main():
    """Run the bench, or the desk's process of it."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--minutes", type=float, default=10)
    parser.add_argument("--stations", type=int, default=20)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--desk", nargs=2, metavar=("FOLDER", "PORT"), help=argparse.SUPPRESS)
    arguments = parser.parse_args()
    if arguments.desk:
        serve(Path(arguments.desk[0]), int(arguments.desk[1]))
        return
    with tempfile.TemporaryDirectory(prefix="stations-") as name:
        say(_run(Path(name), arguments))


def _run(folder, arguments):
    with socket.create_server(("127.0.0.1", 0)) as free:
        port = free.getsockname()[1]
    (folder / "link").mkdir()
    call = [sys.executable, "-m", "tests.bench.stations", "--desk", str(folder), str(port)]
    desk = subprocess.Popen(call, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)

    def ask(command):
        desk.stdin.write(f"{command}\n")
        desk.stdin.flush()
        return json.loads(desk.stdout.readline())

    address = json.loads(desk.stdout.readline())["address"]
    board = threading.Thread(target=_look, args=(address,), daemon=True)
    began = time.monotonic()
    stations = Stations(folder, arguments.stations, port, ask)
    try:
        until(lambda: all("waits for the desk" in one.said for one in stations.all), "all stations", 300)
        start_up_s = time.monotonic() - began
        note(f"{arguments.stations} stations after {start_up_s:.1f} s")
        board.start()
        desk.stdin.write("go\n")
        desk.stdin.flush()
        stations.trouble(60 * arguments.minutes, random.Random(arguments.seed))  # noqa: S311 - chooses the trouble
        note("rest")
        desk.stdin.write("rest\n")
        desk.stdin.flush()
        time.sleep(CATCH_UP_S / 4)
    finally:
        stations.close()
        with contextlib.suppress(OSError):
            desk.stdin.close()
    told = json.loads(desk.stdout.readline())
    desk.wait(30)
    marked = sorted(told["marked_s"])
    return {
        "stations": arguments.stations,
        "minutes": arguments.minutes,
        "start_up_s": round(start_up_s, 1),
        "attempts": len(told["attempts"]),
        **judged(stations, told),
        "kills": len(stations.kills),
        "cuts": len(stations.cuts),
        "back_after_cut_s": [round(one, 1) for one in sorted(stations_back)],
        "marks": told["marks"],
        "marks_on_record": len(marked),
        "marks_median_ms": round(1000 * marked[len(marked) // 2], 1) if marked else None,
        "desk_processor_share": round(told["share"], 3),
    }


def _look(address):
    """An open board, as a browser keeps it."""
    where = urlsplit(address)
    connection = http.client.HTTPConnection(where.hostname, where.port)
    connection.request("GET", f"{where.path}events", headers={"Accept": "text/event-stream"})
    answer = connection.getresponse()
    with contextlib.suppress(OSError, http.client.HTTPException):
        while answer.read1(65_536):
            pass


if __name__ == "__main__":
    main()
