"""``checkoff audio``: microphones and loudspeakers, a level check and a round trip through the air."""

import argparse
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import RecordError
from assistant.text import quoted, shown

if TYPE_CHECKING:
    from assistant.adapters.sound_check import SoundCheck
    from assistant.adapters.sound_devices import Device


_EXAMPLES = """\
  checkoff audio                     list the devices, listen to the room, say a word and hear it
  checkoff audio --list              list the devices only
  checkoff audio --by-mouth          you say the word (with a headset)
  checkoff audio --microphone USB --json
  checkoff audio --latency RECORD    how long each reply of a recorded attempt took

Exit code 0 where all is well, else 1."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb `audio`."""
    parser = add_verb(
        subparsers,
        "audio",
        "Measures the level, says a word through the loudspeaker and listens for it.",
        _EXAMPLES,
    )
    parser.add_argument("--list", action="store_true", help="list the devices, check nothing")
    parser.add_argument("--microphone", metavar="NAME", help="the microphone's name or part of it")
    parser.add_argument("--loudspeaker", metavar="NAME", help="the loudspeaker's name or part of it")
    parser.add_argument("--ear", metavar="NAME", help="which recogniser listens (see: checkoff models list)")
    parser.add_argument("--by-mouth", action="store_true", help="you say the word, not the loudspeaker")
    parser.add_argument("--latency", metavar="RECORD", help="how long replies took in a recorded attempt; no check")
    parser.add_argument("--json", action="store_true", help="one JSON object")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Check and tell; 0 where all is well, 1 where something is wrong.

    Raises:
        DeviceError: with `--list`, there is no PortAudio.
        RecordError: with `--latency`, the record cannot be read, or holds no timed answer.
    """
    if arguments.latency:
        return _show_latency(Path(arguments.latency), as_json=arguments.json)
    # Only here: the library of the sound devices takes time to start, and may be missing.
    from assistant.adapters.recognisers.choose import open_recogniser
    from assistant.adapters.sound_check import SoundCheck, check_sound, devices

    if arguments.list:
        found = SoundCheck(*devices())
    else:
        from assistant.settings import load_settings

        wishes = load_settings().sound
        found = check_sound(
            lambda: open_recogniser(arguments.ear),
            arguments.microphone or wishes.microphone or None,
            arguments.loudspeaker or wishes.loudspeaker or None,
            tell,
            by_mouth=arguments.by_mouth,
        )
    if arguments.json:
        write_json(_plain(found))
    else:
        _show(found)
    return 1 if found.faults else 0


def _show_latency(record: Path, *, as_json: bool) -> int:
    from assistant.record.verify import read_entries
    from assistant.report.latency import latencies
    from assistant.spoken import ENGLISH

    found = latencies(read_entries(record))
    if not found:
        raise RecordError(
            f"{shown(record)} holds no timed answer.",
            "Only answers by voice that were replied to aloud are timed.",
        )
    if as_json:
        write_json({"record": str(record), "latency": [asdict(sort) for sort in found]})
        return 0
    say_line("Milliseconds after the learner's last sound: median and 95th percentile.")
    for sort in found:
        say_line(f"{sort.sort.capitalize()} ({sort.answers}):")
        for name, stage in sort.stages.items():
            say_line(f"  {ENGLISH.report.LATENCY_STAGES[name]}: {stage.median_ms}, {stage.most_ms}")
    return 0


def _list(heading: str, found: "tuple[Device, ...]", default: str) -> None:
    say_line(f"{heading}:" if found else f"{heading}: none")
    for device in found:
        mark = " (default)" if getattr(device, default) else ""
        say_line(f"  {shown(device.name)}, {device.system}, {device.rate_hz} Hz{mark}")


def _show(found: "SoundCheck") -> None:
    _list("Microphones", found.microphones, "default_input")
    _list("Loudspeakers", found.loudspeakers, "default_output")
    if found.said:
        say_line(f"Microphone: {shown(found.microphone)}; recogniser: {found.ear}")
        say_line(f"Level: room {_level(found.room_dbfs)}, loudest {_level(found.loudest_dbfs)}")
        heard = quoted(found.heard) if found.heard else "nothing"
        say_line(f'Said "{found.said}", heard {heard}.')
    for fault in found.faults:
        say_line(shown(fault))
    if found.said and not found.faults:
        say_line("All is well.")


def _level(dbfs: float | None) -> str:
    return "no sound at all" if dbfs is None else f"{dbfs} dB of full scale"


def _plain(found: "SoundCheck") -> dict[str, object]:
    def names(devices: "tuple[Device, ...]", default: str) -> list[dict[str, object]]:
        return [
            {"name": one.name, "system": one.system, "rate_hz": one.rate_hz, "default": getattr(one, default)}
            for one in devices
        ]

    return {
        "microphones": names(found.microphones, "default_input"),
        "loudspeakers": names(found.loudspeakers, "default_output"),
        "microphone": found.microphone or None,
        "loudspeaker": found.loudspeaker or None,
        "ear": found.ear or None,
        "room_dbfs": found.room_dbfs,
        "loudest_dbfs": found.loudest_dbfs,
        "said": found.said or None,
        "heard": found.heard or None,
        "faults": list(found.faults),
    }
