"""`checkoff verify RECORD...`: does each record still say what was recorded?"""

import argparse
from collections.abc import Mapping
from dataclasses import asdict, replace
from pathlib import Path

from assistant.cli.printing import say_line, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import AssistantError, RecordError, UsageError
from assistant.record.chain import Problem
from assistant.record.verify import Verdict, read_entries, sentence, verify
from assistant.text import shown

_EXAMPLES = """\
  checkoff verify RECORD
  checkoff verify records/*.jsonl              every record of a folder
  checkoff verify RECORD --open                accept one that is not sealed yet
  checkoff verify RECORD --head 9f2c           was its end cut off since this head was printed?
  checkoff verify RECORD --papers              are checklist, order and limits still those it was made with?
  checkoff verify RECORD --json

Exit code 0 only if every record holds. Without --open a record that has no seal does not hold, because
nothing shows that its end is there. Nor does a record that was signed with an unknown key: checkoff key add."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb `verify`."""
    parser = add_verb(
        subparsers,
        "verify",
        "Follows the chain of each record and names the first entry that does not hold.",
        _EXAMPLES,
    )
    parser.add_argument("records", nargs="+", metavar="RECORD", help="the file of an attempt")
    parser.add_argument(
        "--open", action="store_true", help="accept records that are not sealed yet, if their chain holds"
    )
    parser.add_argument(
        "--head",
        metavar="DIGEST",
        help="a head digest printed earlier; shows whether the end was cut off (one RECORD only)",
    )
    parser.add_argument(
        "--papers",
        action="store_true",
        help="check as well that checklist, order and limits here are those the attempt was made with",
    )
    parser.add_argument("--keys", metavar="FOLDER", help="where known public keys are kept")
    parser.add_argument("--json", action="store_true", help="one JSON object per record")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Verify and print; 0 if all hold, else 1.

    Raises:
        UsageError: `--head` with several records.
    """
    if args.head is not None and len(args.records) > 1:
        raise UsageError("A head digest belongs to one record; several were given.", "Verify that record by itself.")
    all_hold = True
    known: Mapping[str, str] | None = None
    for path in args.records:
        verdict = verify(path, head=args.head)
        if verdict.signatures:
            if known is None:
                known = _known_keys(args.keys)
            verdict = verify(path, head=args.head, keys=known)
        if args.papers and verdict.intact:
            verdict = _against_papers(Path(path), verdict)
        holds = verdict.ok or (args.open and verdict.problem is Problem.NOT_SEALED)
        all_hold = all_hold and holds
        if args.json:
            write_json({"file": shown(path), **_as_json(verdict, known or {})})
        else:
            say_line(_as_text(path, verdict, known or {}))
    return 0 if all_hold else 1


def _known_keys(folder: str | None) -> Mapping[str, str]:
    # Imported only here: most records are verified without a signature in them.
    from assistant.cli.folders import keys_folder
    from assistant.record.signing import known_keys

    return known_keys(keys_folder(folder))


def _against_papers(path: Path, verdict: Verdict) -> Verdict:
    """The verdict, or a worse one where a file that the first entry pins is no longer the same."""
    # Imported only here: the papers bring the whole procedure with them.
    from assistant.attempts.papers import papers_of
    from assistant.attempts.pins import table_digests

    try:
        opening = read_entries(path)[0]
        papers_of(opening, path)
        for pin, digest in table_digests().items():
            if pin in opening and opening[pin] != digest:
                table = pin.removesuffix("_digest")
                raise RecordError(f"The table of {table} has changed since the attempt began, or is gone.")
    except AssistantError as error:
        why = error.what
    else:
        return verdict
    return replace(verdict, ok=False, problem=Problem.PINNED_FILE_DIFFERS, line=1, why=why)


def _as_json(verdict: Verdict, known: Mapping[str, str]) -> dict[str, object]:
    """Every field of the verdict; each signature also with the name of its key, null where it is not known here."""
    signatures = [asdict(signature) | {"key": known.get(signature.fingerprint)} for signature in verdict.signatures]
    return {**asdict(verdict), "signatures": signatures}


def _decided(fields: Mapping[str, str]) -> str:
    """What a signed entry decides: ``passed, supervised``, ``overruled, prime-line, wrong``."""
    told = [fields.get("decision") or fields.get("kind", "")]
    return ", ".join([*told, *(fields[name] for name in ("rating", "step", "verdict", "correction") if name in fields)])


def _as_text(path: str, verdict: Verdict, known: Mapping[str, str]) -> str:
    entries = f"{verdict.count:,} {'entry' if verdict.count == 1 else 'entries'}"
    hold = "holds" if verdict.count == 1 else "hold"
    if verdict.ok:
        text = f"holds: {shown(path)}: {entries}, sealed. Head {verdict.head}."
    elif verdict.problem is Problem.NOT_SEALED:
        text = f"open: {sentence(path, verdict)} Its {entries} {hold}. Head {verdict.head}."
    elif verdict.intact or verdict.problem is Problem.PINNED_FILE_DIFFERS:
        text = f"BROKEN: {sentence(path, verdict)} Its {entries} {hold}. Head {verdict.head}."
    elif verdict.line is not None:
        text = f"BROKEN: {sentence(path, verdict)} {entries} before that {hold}."
    else:
        text = f"BROKEN: {sentence(path, verdict)}"
    signed = (
        f"  signed: entry {signature.line}: "
        f"{shown(_decided(signature.fields))}, "
        f"by {shown(signature.fields.get('signer', 'nobody named'))}, key "
        f"{known.get(signature.fingerprint, 'unknown')} ({signature.fingerprint[:16]})"
        for signature in verdict.signatures
    )
    return "\n".join([text, *signed, *(f"  note: {note}" for note in verdict.notes)])
