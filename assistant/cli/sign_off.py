"""``checkoff sign-off``: an instructor's decision on a finished attempt, signed behind its seal."""

import argparse
from datetime import UTC, datetime

from assistant.cli.key import add_keys_option, ask_passphrase, keys_folder
from assistant.cli.screen import say_line
from assistant.errors import UsageError
from assistant.record.file import RecordFile
from assistant.record.paths import shown
from assistant.record.signing import is_encrypted, load_key

_KINDS = {"passed": "signed off", "not-passed": "signed off", "withdrawn": "sign-off withdrawn"}
"""What an instructor can decide, and the kind of entry that tells it."""

_EXAMPLES = """\
examples:
  checkoff sign-off RECORD --key lindqvist --signer "M. Lindqvist, RN" --decision passed
  checkoff sign-off RECORD --key lindqvist --signer "M. Lindqvist, RN" --decision withdrawn \\
      --reason "Wrong learner chosen."

Nothing is ever changed: every decision is a further entry, and the last one counts."""


def add_parser(subparsers: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Add the verb."""
    parser = subparsers.add_parser(
        "sign-off",
        help="sign an instructor's decision on a finished attempt",
        description="Add a signed entry with an instructor's decision to the record of a finished attempt.",
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("record", metavar="RECORD", help="the record of the attempt")
    parser.add_argument("--key", required=True, metavar="NAME", help="the key to sign with")
    parser.add_argument("--signer", required=True, metavar="TEXT", help="who signs: name and role")
    parser.add_argument("--decision", required=True, choices=list(_KINDS))
    parser.add_argument("--reason", default="", help="why; needed for all but a plain pass")
    add_keys_option(parser)
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Sign, and print the head that now stands.

    Raises:
        RecordError: the record is not sealed or does not hold, the key cannot be used, or the disk refuses.
        UsageError: a reason or the signer's name is missing.
    """
    if not args.signer.strip():
        raise UsageError("A sign-off needs the signer's name.", "Give it with --signer.")
    if args.decision != "passed" and not args.reason.strip():
        raise UsageError(f"The decision {args.decision} needs a reason.", "Give it with --reason.")
    folder = keys_folder(args.keys)
    passphrase = ask_passphrase(f"Passphrase of {args.key}: ") if is_encrypted(folder, args.key) else None
    key = load_key(folder, args.key, passphrase)
    body = {
        "kind": _KINDS[args.decision],
        "at": datetime.now(UTC).isoformat(timespec="microseconds"),
        "source": "instructor",
        "signer": args.signer.strip(),
        "decision": args.decision,
        "reason": args.reason.strip(),
    }
    recorded = RecordFile.add_signed(args.record, body, key)
    say_line(f"{shown(args.record)}: entry {recorded.sequence} is signed: {args.decision}.")
    say_line(f"Head {recorded.digest}.")
    return 0
