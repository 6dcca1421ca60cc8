"""``checkoff sign-off``: an instructor's decision on an attempt, signed behind its seal."""

import argparse
import sys
from dataclasses import replace
from pathlib import Path

from assistant.attempts.proof import examine
from assistant.attempts.signing_off import (
    ReasonWantedError,
    refuse_what_has_no_reason,
    refuse_what_is_contradicted,
    sign,
    the_only_key,
)
from assistant.attempts.to_sign import ToSign, to_sign
from assistant.cli.folders import add_keys_option, here, keys_folder
from assistant.cli.key import ask_passphrase
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import RecordError
from assistant.record.decisions import EVERY, VERDICTS, Decision, Rating, Wish
from assistant.record.short_head import short_head
from assistant.record.verify import sentence
from assistant.spoken import ENGLISH
from assistant.text import shown

_LEVELS = "\n".join(f"  {rating:<12} {meaning}" for rating, meaning in ENGLISH.report.RATINGS.items())
_EXAMPLES = f"""\
  checkoff sign-off RECORD --signer "M. Lindqvist, RN" --decision passed --rating supervised
  checkoff sign-off RECORD --signer "M. Lindqvist, RN" --decision passed --seen all
  checkoff sign-off RECORD --signer "M. Lindqvist, RN" --decision withdrawn --reason "Wrong learner chosen."
  checkoff sign-off RECORD --signer "M. Lindqvist, RN" --decision overruled --step prime-line \\
      --verdict "done unaided" --reason "I saw it; the microphone did not hear it."
  checkoff sign-off RECORD --signer "M. Lindqvist, RN" --decision corrected \\
      --correction "The learner was A18." --reason "Code mistyped at the start."
  checkoff sign-off RECORD --signer "M. Lindqvist, RN" --close --decision not-passed --reason "Left the lab."

Nothing is ever changed: every decision is a further signed entry, and the last one counts.

Levels of --rating (K. N. Bondy, Journal of Nursing Education 22(9), 1983, 376-382; in short):
{_LEVELS}

Verdicts of --verdict: {", ".join(VERDICTS)}."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "sign-off",
        "Shows what is signed, then adds the decision to the record as a signed entry; what is there stays as it is.",
        _EXAMPLES,
    )
    parser.add_argument("record", metavar="RECORD", help="the record of the attempt")
    parser.add_argument("--key", metavar="NAME", help="the key to sign with (default: your only one)")
    parser.add_argument(
        "--signer", default="", metavar="TEXT", help="who signs: name and role (default: as they belong to the key)"
    )
    parser.add_argument("--decision", required=True, choices=[decision.value for decision in Decision])
    levels = [rating.value for rating in Rating]
    parser.add_argument("--rating", choices=levels, metavar="LEVEL", help="level of the performance: see below")
    parser.add_argument("--step", default="", metavar="ID", help="the step that is overruled or corrected")
    parser.add_argument(
        "--seen",
        action="append",
        default=[],
        metavar="ID",
        help=f"a step that you saw done, again for each; or {EVERY} for every one that has to be seen",
    )
    parser.add_argument("--verdict", default="", metavar="TEXT", help="how the step ended, by your judgement")
    parser.add_argument("--correction", default="", metavar="TEXT", help="what is right, where the record is wrong")
    parser.add_argument("--reason", default="", metavar="TEXT", help="why; needed for all but a plain pass")
    parser.add_argument(
        "--close",
        action="store_true",
        help="first seal an attempt that was stopped or left, as not completed; it cannot be resumed then",
    )
    parser.add_argument("--json", action="store_true", help="one JSON object")
    add_keys_option(parser)
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Show what is signed, sign it, and print the head that now stands.

    Raises:
        RecordError: the record is not sealed or does not hold, it is not what was last seen, its entries and its result
            disagree, the key cannot be used or is not an instructor's now, or the disk refuses.
        UsageError: something is missing or does not go together.
    """
    wish = Wish(
        Decision(args.decision),
        args.signer.strip(),
        args.reason.strip(),
        Rating(args.rating) if args.rating else None,
        args.step.strip(),
        args.verdict.strip(),
        args.correction.strip(),
        tuple(name.strip() for name in args.seen),
    )
    path = Path(args.record)
    known = here(args.keys)
    found = examine(path, known)
    if not found.reading.entries:
        raise RecordError(sentence(path, found.reading.verdict), "There is nothing to sign.")
    what = to_sign(found)
    for line in what.lines():
        tell(line)
    refuse_what_is_contradicted(found, wish)
    folder = keys_folder(args.keys)
    name = args.key or the_only_key(folder)
    wish = _with_reason(wish, what, close=args.close)
    recorded, body = sign(
        found, wish, known, folder, name, lambda: ask_passphrase(f"Passphrase of {name}: "), tell, close=args.close
    )
    short = short_head(recorded.digest)
    if args.json:
        told = {"entry": recorded.sequence, **body, "head": recorded.digest, "short_head": short}
        write_json({"file": shown(path), **told})
        return 0
    rated = f", {wish.rating}" if wish.rating else ""
    say_line(f"{shown(path)}: entry {recorded.sequence} is signed: {wish.decision}{rated}.")
    say_line(f"Head {recorded.digest}.")
    say_line(f"Short head {short}.")
    return 0


def _with_reason(wish: Wish, what: ToSign, *, close: bool) -> Wish:
    """The wish with its reason; asked for where one sits at a terminal and the decision goes beyond the result.

    Raises:
        UsageError: it needs a reason, and there is nobody to ask.
    """
    try:
        refuse_what_has_no_reason(wish, what, close=close)
    except ReasonWantedError as wanted:
        if sys.stdin is None or not sys.stdin.isatty():
            raise
        for one in wanted.beyond:
            tell(one)
        sys.stderr.write("Reason: ")
        sys.stderr.flush()
        return replace(wish, reason=sys.stdin.readline().strip())
    return wish
