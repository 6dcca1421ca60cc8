"""``checkoff station``: takes attempts from an instructor's desk, one after the other, until it is ended."""

import argparse
import sys
from collections.abc import Callable
from pathlib import Path

from assistant.adapters.desk_link import host_name, pair_with
from assistant.adapters.keyboard import LineSource, StandingKeyboard, standard_input
from assistant.adapters.press_key import space_bar_presses
from assistant.attempts.sitting import Sitting, Wishes, end_on_signals
from assistant.attempts.stationed import Bench, DeskStation
from assistant.cli.display import add_display_option, display, has_desktop
from assistant.cli.folders import head_book, records_folder
from assistant.cli.outcome import say_result, screen_for
from assistant.cli.printing import tell
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import DeviceError, UsageError
from assistant.guide.effects import Outcome
from assistant.guide.guide import Guide
from assistant.link.addresses import DeskAddress, desk_file, link_folder, paired_file, read_address, write_address
from assistant.link.pairing_code import read_code
from assistant.ports import Clock, Post, Source
from assistant.settings import load_settings
from assistant.text import shown

FORGOTTEN_S = 600.0
"""A station that a desk has started ends after so long without that desk, seconds, unless an attempt goes on."""
_PAIR = "pair"
_LONGEST_NAME = 64
_EXAMPLES = """\
  checkoff station                              for the desk on this machine
  checkoff station bench-3                      under a name of its own
  checkoff station pair 192.168.1.20:8443 ABCD EFGH IJKL MNOP QRST UVWX
  checkoff station pair 192.168.1.20:8443 CODE --name bench-3

The desk on another computer shows the code. Once paired, checkoff station finds it again
by itself, and goes on alone while the network is gone."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "station",
        "Waits for an instructor's desk, on this machine or on another one that this station is paired with, and goes "
        "through the attempts that the instructor starts there. The record of each stays on this machine.",
        _EXAMPLES,
    )
    parser.add_argument("name", nargs="?", metavar="NAME", help='its name in the lab (this machine\'s), or "pair"')
    parser.add_argument("where", nargs="?", metavar="HOST:PORT", help="with pair: where the desk is")
    parser.add_argument("code", nargs="*", metavar="CODE", help="with pair: the code that the desk shows")
    parser.add_argument("--name", dest="paired_name", metavar="NAME", help="with pair: the station's name in the lab")
    parser.add_argument("--typed", action="store_true", help="by typed lines alone, silently")
    parser.add_argument("--ear", metavar="NAME", help="which recogniser listens (see: checkoff models list)")
    parser.add_argument("--school", metavar="FILE", help="your school's own file (default: the setting lab.school)")
    parser.add_argument("--records", metavar="FOLDER", help="where records go")
    parser.add_argument(
        "--desk-file",
        metavar="FILE",
        help="where a desk on this machine tells its address; without that desk for ten minutes, the station ends",
    )
    parser.add_argument("--json", action="store_true", help="one JSON object per line instead of text")
    add_display_option(parser)
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    if arguments.name == _PAIR:
        return _pair(arguments)
    if arguments.where is not None:
        raise UsageError(
            "Only checkoff station pair takes an address and a code.", "Write: checkoff station pair HOST:PORT CODE."
        )
    settings = load_settings()
    paired = None if arguments.desk_file else read_address(paired_file())
    name = _named(arguments.name or (paired.station if paired else "") or host_name())
    if paired is not None and name != paired.station:
        raise UsageError(
            f"This machine is paired as {shown(paired.station)}.", "Leave the name out, or pair it under the other one."
        )
    terminal = sys.stdin is not None and sys.stdin.isatty()
    wanted = arguments.display
    if wanted is None:
        wanted = settings.display.open and has_desktop()
    with display(wanted) as page:
        if page is not None:
            page.idle()

        def ended(sitting: Sitting, outcome: Outcome) -> None:
            say_result(sitting, outcome, as_json=arguments.json, page=page)

        bench = Bench(
            station=name,
            records=records_folder(arguments.records),
            remembers=link_folder(),
            book=head_book(),
            school=settings.lab.school if arguments.school is None else arguments.school,
            wishes=Wishes(typed=arguments.typed, terminal=terminal, ear=arguments.ear, sound=settings.sound),
            screen=screen_for(as_json=arguments.json, echo_typed=not terminal, bare=False),
            page=page,
            hands=_keyboard(by_key=terminal and settings.sound.press_to_talk),
            tell=tell,
            ended=ended,
            sends_papers=paired is not None,
            sound=not arguments.typed and _has_sound(),
            alone_s=FORGOTTEN_S if arguments.desk_file else 0,
        )
        here = Path(arguments.desk_file) if arguments.desk_file else desk_file()
        station = DeskStation(bench, lambda: paired or read_address(here))
        end_on_signals(lambda _: station.end())
        tell(f"Station {shown(name)} waits for the desk{f' at {paired.url}' if paired else ''}.")
        station.run()
    return 0


def _has_sound() -> bool:
    """Whether there is a microphone and a loudspeaker now."""
    # Only here: typed lines need none of the libraries for sound.
    from assistant.adapters.sound_devices import DEVICES

    try:
        DEVICES.microphone()
        DEVICES.loudspeaker()
    except DeviceError:
        return False
    return True


def _keyboard(*, by_key: bool) -> Callable[[Guide, Clock, Post], tuple[Source | None, Callable[[], None]]]:
    """Connects this terminal's keyboard, which outlives attempts, with each of them."""
    keyboard = StandingKeyboard(LineSource(space_bar_presses(standard_input(), sys.stdin.fileno()) if by_key else None))

    def connect(_guide: Guide, clock: Clock, post: Post) -> tuple[Source | None, Callable[[], None]]:
        return None, keyboard.connect(post, clock)

    return connect


def _pair(arguments: argparse.Namespace) -> int:
    if not arguments.where or not arguments.code:
        raise UsageError(
            "To pair, an address and a code are needed.", "The desk shows both: checkoff station pair HOST:PORT CODE."
        )
    host, colon, port = arguments.where.rpartition(":")
    if not colon or not host or not port.isdecimal() or not 0 < int(port) < 65_536:
        raise UsageError(f"{shown(arguments.where)} is not an address like 192.168.1.20:8443.", "Give host and port.")
    name = _named(arguments.paired_name or host_name())
    address: DeskAddress = pair_with(
        host.removeprefix("[").removesuffix("]"), int(port), name, read_code(" ".join(arguments.code))
    )
    write_address(paired_file(), address)
    tell(f"Paired with the desk at {shown(arguments.where)} as {shown(name)}. Now start: checkoff station")
    return 0


def _named(name: str) -> str:
    if not 0 < len(name) <= _LONGEST_NAME or not name.isprintable():
        raise UsageError(f"A station's name has 1 to {_LONGEST_NAME} letters.", "Choose another one, such as bench-3.")
    return name
