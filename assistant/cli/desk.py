"""``checkoff desk``: the instructor's desk in this machine's browser, until it is ended."""

import argparse
import os
import signal
import socket
import subprocess
import sys
import threading
import time
from contextlib import suppress
from functools import partial
from typing import TYPE_CHECKING

from assistant.attempts.instructor_code import CODE_VARIABLE, code_pins
from assistant.cli.folders import add_keys_option, head_book, here, keys_folder, records_folder
from assistant.cli.printing import say_line, tell
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import UsageError
from assistant.link.addresses import link_folder

if TYPE_CHECKING:
    from assistant.desk.doors import Doors
    from assistant.desk.lab import Network

CLASS_LIST = "class-list.txt"
"""The learners' codes, beside the records."""
_STATION = "this station"
"""The name of this machine's own station where it is given no other one."""
_END_S = 10.0
"""So long the station has to put its attempt away at the end, seconds."""
_ANYWHERE = "anywhere"
_EXAMPLES = """\
  checkoff desk                            opens in the browser; this machine is a station as well
  checkoff desk --no-station --lab         only the desk; other computers of the lab pair as stations
  checkoff desk --lab 192.168.1.20:8443    on this network and port alone
  checkoff desk --no-browser --port 8000   prints its address only

Choose a station, a learner and a checklist, and start. Whatever you mark is an entry in
the learner's record at once. When the desk is closed, attempts at other stations go on,
and that of this machine can be taken up again."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "desk",
        "Watches every station of the lab, starts attempts there, takes an instructor's marks, and signs.",
        _EXAMPLES,
    )
    parser.add_argument("--no-browser", action="store_true", help="open no page; the address is printed in any case")
    parser.add_argument("--port", type=int, default=0, metavar="N", help="on this machine (default: one that is free)")
    parser.add_argument("--no-station", action="store_true", help="this machine is no station")
    parser.add_argument("--station", default=_STATION, metavar="NAME", help=f"its name (default: {_STATION})")
    parser.add_argument("--typed", action="store_true", help="its learners type; nothing is spoken")
    parser.add_argument(
        "--lab",
        nargs="?",
        const=_ANYWHERE,
        metavar="HOST:PORT",
        help="let other computers pair, over TLS (default: every network, port 8443)",
    )
    parser.add_argument("--records", metavar="FOLDER", help="where records go")
    parser.add_argument("--school", metavar="FILE", help="your school's own file (default: the setting lab.school)")
    parser.add_argument(
        "--instructor-code",
        metavar="CODE",
        default=os.environ.get(CODE_VARIABLE, ""),
        help=f"for whoever acts as instructor at a station (or set {CODE_VARIABLE}; default: nobody knows it)",
    )
    add_keys_option(parser)
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Serve until the desk is ended; return the exit code.

    Raises:
        LinkError: a port is taken, or a file of the desk cannot be used.
        UsageError: the address of the lab is none.
    """
    # Only here: other verbs need none of the libraries that serve pages.
    from assistant.desk.browser import has_desktop, open_page
    from assistant.desk.class_list import ClassList
    from assistant.desk.doors import Doors
    from assistant.desk.hub import Hub
    from assistant.desk.instructor import Desk
    from assistant.desk.keeping import KeptRecords
    from assistant.desk.lab import Lab
    from assistant.desk.station_pages import in_pairs

    code_pins(args.instructor_code)  # refuses what no station would take
    ended = threading.Event()
    for name in (signal.SIGINT, signal.SIGTERM):
        signal.signal(name, lambda *_: ended.set())
    records, folder = records_folder(args.records), link_folder()
    hub = Hub(KeptRecords(records, folder, head_book()), time.monotonic)
    class_list = ClassList(records.parent / CLASS_LIST)
    known = partial(here, args.keys)
    lab = Lab(hub, time.monotonic, records, class_list, known, keys_folder(args.keys), args.instructor_code)
    desk = Desk(lab)
    doors = Doors(hub, desk.app, folder, port=args.port, lab=_lab(args.lab))
    desk.stations.network = network = _network(doors, args.lab)
    station = None
    try:
        say_line(f"Desk: {doors.address}")
        sys.stdout.flush()
        if network is not None:
            tell(f"The lab reaches it at https://{network.where}/. The SHA-256 fingerprint of its certificate:")
            tell("  ".join(in_pairs(network.pairing.fingerprint)))
        station = None if args.no_station else _station(args)
        if not args.no_browser and has_desktop() and not open_page(doors.address):
            tell("The browser did not open. Open that address in a browser of this machine.")
        while not ended.wait(1.0):
            if station is not None and station.poll() is not None:
                tell(f"This machine's station has ended ({station.returncode}). The desk goes on.")
                station = None
    finally:
        doors.close()
        if station is not None:
            _end(station)
    return 0


def _lab(given: str | None) -> tuple[str, int] | None:
    """Where the lab reaches the desk.

    Raises:
        UsageError: it is no address.
    """
    from assistant.desk.doors import DEFAULT_PORT

    if given is None:
        return None
    if given == _ANYWHERE:
        return "", DEFAULT_PORT
    host, colon, port = given.rpartition(":")
    if not colon or not port.isdecimal() or not 0 < int(port) < 65_536:
        raise UsageError("The lab's address has a host and a port, like 192.168.1.20:8443.", "Give both, or neither.")
    return host.removeprefix("[").removesuffix("]"), int(port)


def _network(doors: "Doors", given: str | None) -> "Network | None":
    from assistant.desk.lab import Network

    if doors.pairing is None:
        return None
    host = socket.gethostname() if given in (None, _ANYWHERE) else str(given).rpartition(":")[0]
    return Network(doors.pairing, doors.store, f"{host}:{doors.lab_port}")


def _station(args: argparse.Namespace) -> "subprocess.Popen[bytes]":
    """This machine's station, as a process of its own: if the desk should fail, its attempt goes on."""
    call = [sys.executable, "-m", "assistant", "station", args.station, "--desk-file", str(link_folder() / "desk.json")]
    call += [*(["--typed"] if args.typed else []), *(["--records", args.records] if args.records else [])]
    call += ["--school", args.school] if args.school is not None else []
    # Its learners have the display and the voice; what it prints would stand between the lines of the desk.
    return subprocess.Popen(  # noqa: S603 - this program itself
        call, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, start_new_session=True
    )


def _end(station: "subprocess.Popen[bytes]") -> None:
    """Let the station put its attempt away, so that it can be taken up again."""
    station.terminate()
    with suppress(subprocess.TimeoutExpired):
        station.wait(_END_S)
