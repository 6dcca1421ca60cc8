"""``checkoff settings``: shows the settings and changes one."""

import argparse

from assistant.cli.printing import say_line, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.settings import change_setting, load_settings, shown_settings
from assistant.settings_path import FILE_SETTING, settings_path

_EXAMPLES = f"""\
  checkoff settings
  checkoff settings set records.sound_days 14
  checkoff settings set records.folder ~/lab/records

The file can be changed by hand as well. {FILE_SETTING} names another one."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "settings",
        "Shows where they are kept and what they are, or changes one of them.",
        _EXAMPLES,
    )
    parser.add_argument("--json", action="store_true", help="one JSON object")
    parser.set_defaults(run=_show)
    actions = parser.add_subparsers(title="actions", metavar="ACTION")
    change = actions.add_parser("set", help="change one setting")
    change.add_argument("name", metavar="NAME", help="as shown, such as records.sound_days")
    change.add_argument("value", metavar="VALUE")
    change.set_defaults(run=_set)


def _show(args: argparse.Namespace) -> int:
    settings = load_settings()
    path = settings_path()
    if args.json:
        write_json({"file": str(path), "settings": settings.model_dump()})
        return 0
    say_line(f"Settings: {path}{'' if path.exists() else ' (does not exist yet; these are the defaults)'}")
    for name, value in shown_settings(settings):
        say_line(f"{name} = {_as_written(value)}")
    return 0


def _set(args: argparse.Namespace) -> int:
    value = change_setting(args.name, args.value)
    say_line(f"{args.name} = {_as_written(value)}")
    return 0


def _as_written(value: object) -> str:
    match value:
        case bool():
            return "true" if value else "false"
        case str():
            return f'"{value}"'
        case _:
            return str(value)
