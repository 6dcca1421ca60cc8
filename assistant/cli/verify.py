"""`checkoff verify RECORD...`: what is proven of each record, and what speaks against it."""

import argparse
from collections.abc import Iterator, Mapping
from dataclasses import asdict, replace
from pathlib import Path

from assistant.attempts.proof import Proof, prove
from assistant.cli.folders import head_book
from assistant.cli.printing import say_line, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import AssistantError, UsageError
from assistant.record.chain import Problem
from assistant.record.entry import GENESIS
from assistant.record.heads import Standing
from assistant.record.lived import Finding, LivedAgain
from assistant.record.short_head import MisreadError, read_short_head, short_head
from assistant.record.verify import Reading, Verdict, read_record, sentence
from assistant.text import quoted, shown

UNSIGNED = "whoever could write this file could have made it"
"""Who could have made a record that nobody signed."""

_EXAMPLES = """\
  checkoff verify RECORD
  checkoff verify records/*.jsonl              every record of a folder
  checkoff verify RECORD --open                accept one that is not sealed yet
  checkoff verify RECORD --head "031 442 ..."  was its end cut off since this head was printed? (long or short)
  checkoff verify RECORD --papers              are checklist, order and limits still those it was made with?
  checkoff verify RECORD --json

Beside its chain, a sealed record is lived again: the same papers and the same words must give the same entries and
the same result. Where the papers are not those of the attempt any more, or another version of the program judged it
otherwise, that is said and is no fault. Each record is held against the book of heads, which remembers on this
machine where it ended.

Exit code 0 only if every record holds. Without --open a record that has no seal does not hold, because
nothing shows that its end is there. Nor does one that was signed with an unknown key (checkoff key add), whose
entries and result disagree, or that is older or other than last seen here; nor any while the book does not hold.
An unsigned record that holds may still be made up: whoever can write the file can make one."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb `verify`."""
    parser = add_verb(
        subparsers,
        "verify",
        "Follows the chain of each record, works its result out anew and holds it against what was last seen of it "
        "here; names what does not hold.",
        _EXAMPLES,
    )
    parser.add_argument("records", nargs="+", metavar="RECORD", help="the file of an attempt")
    parser.add_argument(
        "--open", action="store_true", help="accept records that are not sealed yet, if their chain holds"
    )
    parser.add_argument(
        "--head",
        metavar="DIGEST",
        help="a head printed earlier, long or short; shows whether the end was cut off (one RECORD only)",
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
        UsageError: `--head` with several records, or with a mistake in it.
    """
    if args.head is not None and len(args.records) > 1:
        raise UsageError("A head digest belongs to one record; several were given.", "Verify that record by itself.")
    head = _head(args.head)
    book = head_book()
    all_hold = not book.problems()
    known: Mapping[str, str] | None = None
    for name in args.records:
        path = Path(name)
        reading = read_record(path, head=head)
        if reading.verdict.signatures:
            if known is None:
                known = _known_keys(args.keys)
            reading = read_record(path, head=head, keys=known)
        proof = prove(path, reading, book)
        verdict = proof.worsen(reading.verdict)
        if args.papers and verdict.intact:
            verdict = _against_papers(path, reading, verdict)
        holds = verdict.ok or (args.open and verdict.problem is Problem.NOT_SEALED)
        all_hold = all_hold and holds
        if args.json:
            write_json({"file": shown(name), **_as_json(verdict, proof, book.problems(), known or {})})
        else:
            say_line(_as_text(name, verdict, proof, known or {}))
    if not args.json:
        for problem in book.problems():
            say_line(f"BROKEN: the book of heads does not hold: {problem}")
    return 0 if all_hold else 1


def _head(given: str | None) -> str | None:
    """The head as it was given; a short one in its own form.

    Raises:
        UsageError: a short one that was misread.
    """
    if given is None:
        return None
    try:
        return read_short_head(given) or given
    except MisreadError as cause:
        raise UsageError(f"{quoted(given)} was misread: {cause}.", "Compare it group by group.") from None


def _known_keys(folder: str | None) -> Mapping[str, str]:
    # Imported only here: most records are verified without a signature in them.
    from assistant.cli.folders import keys_folder
    from assistant.record.signing import known_keys

    return known_keys(keys_folder(folder))


def _against_papers(path: Path, reading: Reading, verdict: Verdict) -> Verdict:
    """The verdict, or a worse one where a file that the first entry pins is no longer the same."""
    # Imported only here: the papers bring the whole procedure with them.
    from assistant.attempts.papers import papers_of
    from assistant.attempts.pins import changed_table

    opening = reading.entries[0]
    try:
        papers_of(opening, path)
    except AssistantError as error:
        why = error.what
    else:
        why = changed_table(opening)
        if not why:
            return verdict
    return replace(verdict, ok=False, problem=Problem.PINNED_FILE_DIFFERS, line=1, why=why)


def _as_json(
    verdict: Verdict, proof: Proof, book_problems: tuple[str, ...], known: Mapping[str, str]
) -> dict[str, object]:
    """Every field of the verdict; each signature also with the name of its key, null where it is not known here."""
    signatures = [asdict(signature) | {"key": known.get(signature.fingerprint)} for signature in verdict.signatures]
    return {
        **asdict(verdict),
        "signatures": signatures,
        "unsigned": "" if verdict.signatures or not verdict.count else UNSIGNED,
        "short_head": "" if verdict.head == GENESIS else short_head(verdict.head),
        "lived_again": None if proof.lived is None else asdict(proof.lived),
        "book": {**(asdict(proof.standing) if proof.standing else {}), "problems": list(book_problems)},
    }


def _decided(fields: Mapping[str, str]) -> str:
    """What a signed entry decides: ``passed, supervised``, ``overruled, prime-line, wrong``."""
    told = [fields.get("decision") or fields.get("kind", "")]
    return ", ".join([*told, *(fields[name] for name in ("rating", "step", "verdict", "correction") if name in fields)])


def _as_text(path: str, verdict: Verdict, proof: Proof, known: Mapping[str, str]) -> str:
    entries = f"{verdict.count:,} {'entry' if verdict.count == 1 else 'entries'}"
    hold = "holds" if verdict.count == 1 else "hold"
    if verdict.ok:
        text = f"holds: {shown(path)}: {entries}, sealed. Head {verdict.head}."
    elif verdict.problem is Problem.NOT_SEALED:
        text = f"open: {sentence(path, verdict)} Its {entries} {hold}. Head {verdict.head}."
    elif verdict.intact:
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
    more = _proven(verdict, proof.standing, proof.lived) if proof.standing is not None else ()
    return "\n".join([text, *signed, *(f"  note: {note}" for note in verdict.notes), *more])


def _proven(verdict: Verdict, standing: Standing, lived: LivedAgain | None) -> Iterator[str]:
    """What is proven beside the chain, a line each."""
    if not verdict.signatures:
        yield f"  unsigned: {UNSIGNED}."
    if lived is not None:
        yield from _lived(lived)
    # A record that is not as it was seen has been told of with its reason.
    why = "" if standing.is_denied else standing.why
    yield f"  book of heads: {standing.seen}. {why}".rstrip()
    yield f"  short head: {short_head(verdict.head)}"


def _lived(lived: LivedAgain) -> Iterator[str]:
    match lived.finding:
        case Finding.SAME:
            yield "  lived again: the same entries and the same result."
        case Finding.DIFFERS:
            yield "  lived again: not the same."
        case _:
            yield f"  {lived.finding}: {lived.why}"
    yield from (f"    {difference}." for difference in lived.differences)
