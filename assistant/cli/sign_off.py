"""``checkoff sign-off``: an instructor's decision on an attempt, signed behind its seal."""

import argparse
from datetime import UTC, datetime
from pathlib import Path

from assistant.attempts.proof import Proof, prove
from assistant.cli.folders import add_keys_option, head_book, keys_folder
from assistant.cli.key import ask_passphrase, the_only_key
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import AssistantError, RecordError, UsageError
from assistant.guide.effects import Outcome
from assistant.record.decisions import CLOSED, EVERY, VERDICTS, Decision, Rating, Wish, body_of
from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from assistant.record.lived import Finding
from assistant.record.short_head import short_head
from assistant.record.signing import SigningKey, is_encrypted, load_key
from assistant.record.verify import read_record
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
        "Adds the decision to the record as a signed entry; nothing that is there already is changed.",
        _EXAMPLES,
    )
    parser.add_argument("record", metavar="RECORD", help="the record of the attempt")
    parser.add_argument("--key", metavar="NAME", help="the key to sign with (default: your only one)")
    parser.add_argument("--signer", required=True, metavar="TEXT", help="who signs: name and role")
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
    """Sign, and print the head that now stands.

    Raises:
        RecordError: the record is not sealed or does not hold, it is not what was last seen, its entries and its result
            disagree, the key cannot be used, or the disk refuses.
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
    reading, book = read_record(path), head_book()
    _refuse_what_is_contradicted(path, wish, prove(path, reading, book))
    body = body_of(wish, reading.entries, at)
    key = _key(args.key, keys_folder(args.keys))
    if args.close:
        _close(path, wish, at, book)
    recorded = RecordFile.add_signed(path, body, key, book)
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


def _refuse_what_is_contradicted(path: Path, wish: Wish, proof: Proof) -> None:
    """Let nobody vouch for a result that its own entries deny; to pass what cannot be worked out anew needs a reason.

    Raises:
        RecordError: entries and result disagree. A withdrawal is taken all the same.
        UsageError: the result was not confirmed, and no reason is given to pass it.
    """
    lived = proof.lived
    if lived is None or lived.finding is Finding.SAME:
        return
    if proof.is_contradicted and wish.decision is not Decision.WITHDRAWN:
        raise RecordError(
            f"{shown(path)}: its entries and its result disagree. {lived.why}",
            "Do not sign it; keep the file as it is. Details: checkoff verify RECORD.",
        )
    not_confirmed = f"The result was not confirmed by living the attempt again ({lived.finding}). {lived.why}"
    if wish.decision is Decision.PASSED and not wish.reason:
        raise UsageError(not_confirmed, "To pass it nevertheless needs a reason: give it with --reason.")
    tell(not_confirmed)


def _key(name: str | None, folder: Path) -> SigningKey:
    name = name or the_only_key(folder)
    passphrase = ask_passphrase(f"Passphrase of {name}: ") if is_encrypted(folder, name) else None
    return load_key(folder, name, passphrase)


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
