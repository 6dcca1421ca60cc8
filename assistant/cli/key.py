"""``checkoff key``: an instructor's key pair, and the public keys of others."""

import argparse
import getpass
from pathlib import Path

from assistant.cli.folders import add_keys_option, keys_folder
from assistant.cli.printing import say_line
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import UsageError
from assistant.record.signing import add_key, known_keys, new_key, own_keys
from assistant.text import shown

_EXAMPLES = """\
  checkoff key new lindqvist --passphrase
  checkoff key list
  checkoff key add lindqvist lindqvist.public.pem

NAME.key.pem signs: keep it to yourself. NAME.public.pem is for everyone who verifies."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "key",
        "Makes a key pair to sign attempts with, or adds someone else's public key.",
        _EXAMPLES,
    )
    actions = parser.add_subparsers(title="actions", metavar="ACTION", required=True)
    new = actions.add_parser("new", help="make a key pair")
    new.add_argument("name", metavar="NAME", help="letters, digits, hyphens, underscores")
    new.add_argument("--passphrase", action="store_true", help="ask for a passphrase that guards the key")
    new.set_defaults(run=_new)
    add = actions.add_parser("add", help="add someone else's public key")
    add.add_argument("name", metavar="NAME")
    add.add_argument("file", metavar="FILE", help="their NAME.public.pem")
    add.set_defaults(run=_add)
    listing = actions.add_parser("list", help="list the known keys")
    listing.set_defaults(run=_list)
    for action in (new, add, listing):
        add_keys_option(action)


def the_only_key(folder: Path) -> str:
    """The name of the one private key in the folder.

    Raises:
        UsageError: there is none, or more than one.
    """
    names = own_keys(folder)
    if not names:
        raise UsageError("There is no key to sign with.", "Make one with: checkoff key new NAME")
    if len(names) > 1:
        raise UsageError(f"There are several keys: {', '.join(names)}.", "Name one with --key.")
    return names[0]


def ask_passphrase(prompt: str) -> str:
    """Ask for a passphrase without showing it.

    Raises:
        UsageError: there is nobody to answer, or the answer is empty.
    """
    try:
        answer = getpass.getpass(prompt)
    except (EOFError, OSError) as cause:
        raise UsageError("No passphrase was given.", "Run it in a terminal.") from cause
    if not answer:
        raise UsageError("The passphrase is empty.", "Give one, or leave --passphrase out.")
    return answer


def _new(args: argparse.Namespace) -> int:
    folder = keys_folder(args.keys)
    passphrase = None
    if args.passphrase:
        passphrase = ask_passphrase("Passphrase: ")
        if ask_passphrase("Again: ") != passphrase:
            raise UsageError("The two passphrases differ.", "Try again.")
    key = new_key(folder, args.name, passphrase)
    say_line(f"Made the key {args.name} in {shown(folder)}.")
    say_line(f"Fingerprint: {key.fingerprint}")
    say_line(f"Give {args.name}.public.pem to those who verify; keep {args.name}.key.pem to yourself.")
    return 0


def _add(args: argparse.Namespace) -> int:
    key = add_key(keys_folder(args.keys), args.name, Path(args.file))
    say_line(f"Added the key {args.name}. Fingerprint: {key.fingerprint}")
    return 0


def _list(args: argparse.Namespace) -> int:
    folder = keys_folder(args.keys)
    for fingerprint, name in sorted(known_keys(folder).items(), key=lambda item: item[1]):
        say_line(f"{name}  {fingerprint}")
    return 0
