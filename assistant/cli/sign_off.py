"""``checkoff sign-off``: an instructor's decision on an attempt, signed behind its seal."""

import argparse
import sys
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from assistant.attempts.proof import Examined, Here, examine
from assistant.attempts.to_sign import ToSign, to_sign
from assistant.cli.folders import add_keys_option, here, keys_folder
from assistant.cli.key import ask_passphrase, the_only_key
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import AssistantError, RecordError, UsageError
from assistant.guide.effects import Outcome
from assistant.record.decisions import CLOSED, EVERY, VERDICTS, Decision, Rating, Wish, body_of
from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from assistant.record.roster import now
from assistant.record.short_head import short_head
from assistant.record.signer import Right
from assistant.record.signing import is_encrypted, load_key, public_key_of
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
    at = datetime.now(UTC).isoformat(timespec="microseconds")
    if args.close and wish.decision is not Decision.NOT_PASSED:
        raise UsageError("A closed attempt counts as not completed.", "Give --decision not-passed with a reason.")
    # Asked before anything is written: a wish that cannot be met, or a wrong passphrase, closes no attempt.
    known = here(args.keys)
    found = examine(path, known)
    if not found.reading.entries:
        raise RecordError(sentence(path, found.reading.verdict), "There is nothing to sign.")
    what = to_sign(found)
    for line in what.lines():
        tell(line)
    _refuse_what_is_contradicted(found, wish)
    folder = keys_folder(args.keys)
    name = args.key or the_only_key(folder)
    wish = _with_signer(_with_reason(wish, what, close=args.close), name, folder, known)
    body = body_of(wish, found.reading.entries, at, found.proof.deciding)
    passphrase = ask_passphrase(f"Passphrase of {name}: ") if is_encrypted(folder, name) else None
    key = load_key(folder, name, passphrase)
    if args.close:
        _close(path, wish, at, known.book)
    recorded = RecordFile.add_signed(path, body, key, known.book)
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


def _refuse_what_is_contradicted(found: Examined, wish: Wish) -> None:
    """Let nobody vouch for a result that its own entries deny.

    Raises:
        RecordError: entries and result disagree. A withdrawal is taken all the same.
    """
    lived = found.proof.lived
    if lived is not None and found.proof.is_contradicted and wish.decision is not Decision.WITHDRAWN:
        raise RecordError(
            f"{shown(found.path)}: its entries and its result disagree. {lived.why}",
            "Do not sign it; keep the file as it is. Details: checkoff verify RECORD.",
        )


def _with_reason(wish: Wish, what: ToSign, *, close: bool) -> Wish:
    """The wish with its reason; asked for where one sits at a terminal and the decision goes beyond the result.

    Raises:
        UsageError: it needs a reason, and there is nobody to ask.
    """
    beyond = () if wish.reason else what.beyond(wish)
    if not beyond or (what.simulated and wish.decision is Decision.PASSED) or (not what.outcome and not close):
        return wish  # what cannot be signed at all is refused further on, in its own words
    if sys.stdin is None or not sys.stdin.isatty():
        raise UsageError(f"{' '.join(beyond)} That needs a reason.", "Give it with --reason, or run it in a terminal.")
    for one in beyond:
        tell(one)
    sys.stderr.write("Reason: ")
    sys.stderr.flush()
    return replace(wish, reason=sys.stdin.readline().strip())


def _with_signer(wish: Wish, name: str, folder: Path, known: Here) -> Wish:
    """The wish with its signer, whose key may sign now.

    Raises:
        RecordError: the key is not an instructor's now, though it is known here whose are.
        UsageError: another signer is named than the key belongs to.
    """
    instructor = known.instructors.of(public_key_of(folder, name).fingerprint)
    if instructor is None:
        problem = known.instructors.problem
        if not problem:
            raise RecordError(
                f"The key {shown(name)} is not an instructor's by what this machine knows.",
                "Sign with another key, or let the school add it: checkoff key enrol.",
            )
        tell(f"Caution: as it is, this entry will decide nothing. {problem} See: checkoff key trust --help")
        return wish
    right, why = instructor.right(now(), "")
    if right is not Right.VALID:
        raise RecordError(f"The key of {shown(instructor.title)} is not valid now. {why}", "Let the school renew it.")
    if not wish.signer:
        return replace(wish, signer=instructor.title)
    if instructor.name.casefold() not in wish.signer.casefold():
        raise UsageError(
            f"The key {shown(name)} belongs to {shown(instructor.title)}, not to {shown(wish.signer)}.",
            "Leave --signer out, or sign with your own key.",
        )
    return wish


def _close(path: Path, wish: Wish, at: str, book: HeadBook) -> None:
    """Seal an attempt that its learner did not bring to its end."""
    with RecordFile.reopen(path, book=book) as record:
        record.seal(
            {
                "kind": CLOSED,
                "at": at,
                "source": "instructor",
                "signer": wish.signer,
                "reason": wish.reason,
                "outcome": Outcome.NOT_COMPLETED.value,
                **_results(record, path),
            }
        )


def _results(record: RecordFile, path: Path) -> dict[str, object]:
    """The result as the attempt was left; none where its papers are no longer what they were.

    Raises:
        UsageError: every step was done: only the seal is missing.
    """
    # Imported only here: most sign-offs close nothing, and the papers bring the whole procedure with them.
    from assistant.attempts.papers import papers_of
    from assistant.attempts.replay import lived_again
    from assistant.guide.effects import Finish
    from assistant.guide.events import Recorded, Resumed

    try:
        guide = lived_again(papers_of(record.entries[0], path), record.entries, path)
    except AssistantError as error:
        tell(f"Closed without a result per step. {error}")
        return {}
    results = guide.results().body()
    guide.receive(Resumed(datetime.now(UTC)))
    effects = guide.receive(Recorded(len(record.entries) + 1, ""))
    if any(isinstance(effect, Finish) and effect.seal is not None for effect in effects):
        raise UsageError("This attempt was completed; only its seal is missing.", f"checkoff resume {shown(path)}")
    return {"results": results}
