"""``checkoff key``: an instructor's key pair, the public keys of others, and who counts as an instructor."""

import argparse
import getpass
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path

from assistant.cli.folders import add_keys_option, head_book, here, keys_folder, roster_path
from assistant.cli.printing import say_line
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import UsageError
from assistant.record.instructors import ROSTER, load_roster, trust_instructor, trust_school
from assistant.record.passphrase import check_passphrase
from assistant.record.roster import Roster, now
from assistant.record.roster_file import begin_roster, enrol, renew, revoke
from assistant.record.signing import (
    SigningKey,
    add_key,
    is_encrypted,
    known_keys,
    load_key,
    new_key,
    own_keys,
    public_key_of,
)
from assistant.text import quoted, shown

TERM = timedelta(days=365)
"""How long a key is valid where nothing else is said."""

_EXAMPLES = """\
  checkoff key new lindqvist                                      a key pair
  checkoff key trust lindqvist --name "M. Lindqvist" --role RN    a lone instructor, once: this key decides here
  checkoff key begin school --school "Harbour College"            a school, with its own key: begins the roster
  checkoff key add lindqvist lindqvist.public.pem
  checkoff key enrol lindqvist --name "M. Lindqvist" --role RN --until 2027-07-31
  checkoff key renew "M. Lindqvist" --until 2028-07-31
  checkoff key revoke "M. Lindqvist" --reason "Key lost."
  checkoff key trust school --school                              on every machine: only who is on the roster decides
  checkoff key list

The roster lies beside the keys, or where the setting lab.roster says. NAME.key.pem signs: keep it to yourself.
NAME.public.pem is for everyone who verifies. A key that is made or added makes nobody an instructor. An entry counts
if its key was valid when it was signed. What a revoked key signed counts only where a book of heads saw it before:
revoke a key that was lost, stolen or misused, and let that of somebody who leaves run out."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "key",
        "Makes a key pair to sign attempts with, adds someone else's public key, and says whose keys decide.",
        _EXAMPLES,
    )
    actions = parser.add_subparsers(title="actions", metavar="ACTION", required=True)
    new = actions.add_parser("new", help="make a key pair")
    new.add_argument("name", metavar="NAME", help="letters, digits, hyphens, underscores")
    new.add_argument("--no-passphrase", action="store_true", help="whoever can read the file can sign")
    new.set_defaults(run=_new)
    add = actions.add_parser("add", help="add someone else's public key")
    add.add_argument("name", metavar="NAME")
    add.add_argument("file", metavar="FILE", help="their NAME.public.pem")
    add.set_defaults(run=_add)
    trust = actions.add_parser("trust", help="name the one key on which all others rest, once")
    trust.add_argument("key", metavar="NAME", help="your own key, or your school's")
    trust.add_argument("--school", action="store_true", help="it is a school's: only who is on its roster decides")
    _add_person(trust, required=False)
    trust.set_defaults(run=_trust)
    begin = actions.add_parser("begin", help="begin a school's roster")
    begin.add_argument("key", metavar="NAME", help="the school's key")
    begin.add_argument("--school", required=True, metavar="TEXT", help="the school's name")
    begin.set_defaults(run=_begin)
    enrolling = actions.add_parser("enrol", help="put an instructor on the roster")
    enrolling.add_argument("key", metavar="NAME", help="the instructor's key, made or added here")
    _add_person(enrolling, required=True)
    enrolling.set_defaults(run=_enrol)
    renewing = actions.add_parser("renew", help="give an instructor's key a further term")
    renewing.set_defaults(run=_renew)
    revoking = actions.add_parser("revoke", help="take a key off that was lost, stolen or misused")
    revoking.add_argument("--reason", required=True, metavar="TEXT", help="why")
    revoking.set_defaults(run=_revoke)
    for action in (renewing, revoking):
        action.add_argument("who", metavar="WHO", help="the name as on the roster, or the key's fingerprint")
    for action in (enrolling, renewing):
        action.add_argument("--from", dest="since", type=_day, metavar="YYYY-MM-DD", help="valid from (default: now)")
        action.add_argument("--until", type=_day, metavar="YYYY-MM-DD", help="valid until (default: for a year)")
    for action in (enrolling, renewing, revoking):
        action.add_argument("--sign-with", metavar="NAME", help="the school's key (default: the one of the roster)")
    for action in (begin, enrolling, renewing, revoking):
        action.add_argument("--roster", metavar="FILE", help="the roster (default: the setting, or beside the keys)")
    listing = actions.add_parser("list", help="list the known keys, and whose decide")
    listing.set_defaults(run=_list)
    for action in (new, add, trust, begin, enrolling, renewing, revoking, listing):
        add_keys_option(action)


def _add_person(parser: argparse.ArgumentParser, *, required: bool) -> None:
    parser.add_argument("--name", required=required, default="", metavar="TEXT", help="the instructor's name")
    parser.add_argument("--role", default="", metavar="TEXT", help="the instructor's role, such as RN")


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{quoted(text)} is not a day; write it like 2027-07-31") from None


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
        raise UsageError("The passphrase is empty.", "Give one. (A new key can do without: --no-passphrase.)")
    return answer


def _new(args: argparse.Namespace) -> int:
    folder = keys_folder(args.keys)
    passphrase = None
    if not args.no_passphrase:
        passphrase = ask_passphrase("Passphrase: ")
        check_passphrase(passphrase)
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


def _trust(args: argparse.Namespace) -> int:
    folder = keys_folder(args.keys)
    if args.school:
        fingerprint = trust_school(folder, args.key)
        say_line(f"From now on who is on the roster of this school decides. Fingerprint of its key: {fingerprint}")
    else:
        instructor = trust_instructor(folder, args.key, args.name, args.role)
        say_line(f"From now on {shown(instructor.title)} decides here. Fingerprint: {instructor.fingerprint}")
    say_line("Compare the fingerprint with its owner's.")
    return 0


def _roster(args: argparse.Namespace) -> Path:
    if args.roster is not None:
        return Path(args.roster).expanduser()
    return roster_path(args.keys) or keys_folder(args.keys) / ROSTER


def _schools_key(args: argparse.Namespace, folder: Path, name: str | None) -> SigningKey:
    if name is None:
        fingerprint = load_roster(_roster(args)).fingerprint
        name = next((own for own in own_keys(folder) if public_key_of(folder, own).fingerprint == fingerprint), None)
        if name is None:
            raise UsageError("The school's key is not here.", "Do it on the machine that has it.")
    return load_key(folder, name, ask_passphrase(f"Passphrase of {name}: ") if is_encrypted(folder, name) else None)


def _begin(args: argparse.Namespace) -> int:
    folder, path = keys_folder(args.keys), _roster(args)
    begin_roster(path, args.school, _schools_key(args, folder, args.key), head_book())
    say_line(f"Began the roster of {shown(args.school)}: {shown(path)}")
    return 0


def _term(args: argparse.Namespace) -> tuple[str, str]:
    since = now() if args.since is None else datetime.combine(args.since, time.min, UTC).isoformat()
    if args.until is None:
        return since, (datetime.fromisoformat(since) + TERM).isoformat()
    until = datetime.combine(args.until, time.max, UTC).isoformat()
    if until <= since:
        raise UsageError("The term ends before it begins.", "Give another --until.")
    return since, until


def _enrol(args: argparse.Namespace) -> int:
    folder = keys_folder(args.keys)
    key, public = _schools_key(args, folder, args.sign_with), public_key_of(folder, args.key)
    return _tell_roster(enrol(_roster(args), key, public, (args.name, args.role), _term(args), head_book()))


def _renew(args: argparse.Namespace) -> int:
    key = _schools_key(args, keys_folder(args.keys), args.sign_with)
    return _tell_roster(renew(_roster(args), key, args.who, _term(args), head_book()))


def _revoke(args: argparse.Namespace) -> int:
    key = _schools_key(args, keys_folder(args.keys), args.sign_with)
    return _tell_roster(revoke(_roster(args), key, args.who, args.reason, head_book()))


def _tell_roster(roster: Roster) -> int:
    say_line(f"Roster of {shown(roster.school)}: {len(roster.digests)} entries. Head {roster.digests[-1]}.")
    for one in roster.instructors:
        terms = ", ".join(f"{since[:10] or 'ever'} to {until[:10] or 'ever'}" for since, until in one.terms)
        revoked = f"; revoked at {one.revoked_at[:10]}: {shown(one.revoked_why)}" if one.revoked_at else ""
        say_line(f"  {shown(one.title)}: {terms}{revoked}  {one.fingerprint}")
    return 0


def _list(args: argparse.Namespace) -> int:
    known = here(args.keys).instructors
    for fingerprint, name in sorted(known_keys(keys_folder(args.keys)).items(), key=lambda item: item[1]):
        instructor = known.of(fingerprint)
        say_line(f"{name}  {fingerprint}{f'  {shown(instructor.title)}' if instructor is not None else ''}")
    if known.roster is not None:
        return _tell_roster(known.roster)
    if known.problem:
        say_line(known.problem)
    return 0
