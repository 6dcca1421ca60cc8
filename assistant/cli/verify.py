"""`checkoff verify RECORD...`: what is proven of each record, and what speaks against it."""

import argparse
from collections.abc import Iterator, Mapping
from dataclasses import asdict, replace
from pathlib import Path

from assistant.attempts.day import Day, day_at
from assistant.attempts.proof import Examined, examine
from assistant.cli.folders import here
from assistant.cli.printing import say_line, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import AssistantError, UsageError
from assistant.record.chain import Problem, Signature
from assistant.record.claim import Proven
from assistant.record.day_head import missing_told
from assistant.record.entry import GENESIS
from assistant.record.lived import Finding, LivedAgain
from assistant.record.short_head import MisreadError, read_short_head, short_head
from assistant.record.signer import Signer
from assistant.record.verify import Reading, Verdict, sentence
from assistant.text import quoted, shown

HOLDS, FAILS, PROVES_NOTHING = 0, 1, 5
"""Exit codes: the last one where a record holds, and yet nothing is proven of it."""

_EXAMPLES = """\
  checkoff verify RECORD
  checkoff verify records/*.jsonl              every record of a folder
  checkoff verify RECORD --open                accept one that is not sealed yet
  checkoff verify RECORD --head "031 442 ..."  was its end cut off since this head was printed? (long or short)
  checkoff verify RECORD --papers              are checklist, order and limits still those it was made with?
  checkoff verify records/*.jsonl --day 2026-11-25   is every attempt of that day there?
  checkoff verify RECORD --json

Beside its chain, a sealed record is lived again: the same papers and the same words must give the same entries and
the same result. Where the papers are not those of the attempt any more, or another version of the program judged it
otherwise, that is said and is no fault. Each record is held against the book of heads, which remembers on this
machine where it ended.

Exit code 0 only if every record holds and something is proven of it: an instructor signed it whose key was valid
then (checkoff key), or the book of heads has seen it to its end. Exit code 5 where all hold and of one of them
nothing is proven: whoever could write that file could have made it. Exit code 1 where one does not hold. Without
--open a record that has no seal does not hold, because nothing shows that its end is there. Nor does one that was
signed with a key that is not an instructor's, whose entries and result disagree, or that is older or other than last
seen here; nor any while the book does not hold."""


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
    parser.add_argument(
        "--day",
        metavar="DAY",
        help="a day, or the file of its signed head (checkoff heads): is every attempt of it among these RECORDs?",
    )
    parser.add_argument("--keys", metavar="FOLDER", help="where known public keys are kept")
    parser.add_argument("--json", action="store_true", help="one JSON object per record")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Verify and print; one of `HOLDS`, `FAILS`, `PROVES_NOTHING`.

    Raises:
        UsageError: `--head` with several records, or with a mistake in it.
    """
    if args.head is not None and len(args.records) > 1:
        raise UsageError("A head digest belongs to one record; several were given.", "Verify that record by itself.")
    head = _head(args.head)
    known = here(args.keys)
    day = day_at(args.day, known) if args.day is not None else None
    all_hold, all_proven = not known.book.problems(), True
    there: dict[str, str] = {}
    for name in args.records:
        found = examine(Path(name), known, head=head)
        verdict = found.verdict
        if args.papers and verdict.intact:
            verdict = _against_papers(found.path, found.reading, verdict)
        twice = _twice(there, found)
        if day is not None and verdict.intact:
            verdict = day.against(found, verdict)
        all_hold = all_hold and (verdict.ok or (args.open and verdict.problem is Problem.NOT_SEALED))
        all_proven = all_proven and found.claim.proven is not Proven.NOTHING
        if args.json:
            write_json({"file": shown(name), **_as_json(verdict, found, known.book.problems())})
        else:
            say_line(_as_text(name, verdict, found))
            if twice:
                say_line(f"  note: {twice}")
    if day is not None:
        all_hold = _tell_day(day, there, as_json=args.json) and all_hold
    if not args.json:
        for problem in known.book.problems():
            say_line(f"BROKEN: the book of heads does not hold: {problem}")
    if not all_hold:
        return FAILS
    return HOLDS if all_proven else PROVES_NOTHING


def _twice(there: dict[str, str], found: Examined) -> str:
    """Remember the attempt; that it was there under another name already, in a sentence."""
    if not found.reading.entries:
        return ""
    name = shown(found.path)
    before = there.setdefault(str(found.reading.entries[0]["digest"]), name)
    return f"It is a record of the same attempt as {before}." if before != name else ""


def _tell_day(day: Day, there: Mapping[str, str], *, as_json: bool) -> bool:
    """Say what of a day is missing; whether nothing is, and its head may be relied on."""
    missing = day.head.missing(there.keys())
    if as_json:
        of = day.head.day.isoformat()
        write_json({"day": of, "attempts": len(day.head.attempts), "missing": list(missing), "signed": day.by})
    else:
        say_line(f"{missing_told(day.head, missing) or day.head.whole_told()} {day.by}".rstrip())
    return not missing and day.holds


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


def _against_papers(path: Path, reading: Reading, verdict: Verdict) -> Verdict:
    """The verdict, or a worse one where a file that the first entry pins is no longer the same."""
    # Imported only here: the papers bring the whole procedure with them.
    from assistant.attempts.papers import papers_here
    from assistant.attempts.pins import changed_table

    opening = reading.entries[0]
    try:
        papers_here(opening, path)
    except AssistantError as error:
        why = error.what
    else:
        why = changed_table(opening)
        if not why:
            return verdict
    return replace(verdict, ok=False, problem=Problem.PINNED_FILE_DIFFERS, line=1, why=why)


def _as_json(verdict: Verdict, found: Examined, book_problems: tuple[str, ...]) -> dict[str, object]:
    """Every field of the verdict; each signature also with who signed, null where the chain is broken."""
    proof = found.proof
    signers = {one.line: asdict(one) | {"decides": one.decides} for one in proof.signers}
    signatures = [asdict(signature) | {"by": signers.get(signature.line)} for signature in verdict.signatures]
    return {
        **asdict(verdict),
        "signatures": signatures,
        "proven": found.claim.proven,
        "claim": found.claim.sentence,
        "short_head": "" if verdict.head == GENESIS else short_head(verdict.head),
        "lived_again": None if proof.lived is None else asdict(proof.lived),
        "book": {**(asdict(proof.standing) if proof.standing else {}), "problems": list(book_problems)},
    }


def _decided(fields: Mapping[str, str]) -> str:
    """What a signed entry decides: ``passed, supervised``, ``overruled, prime-line, wrong``."""
    told = [fields.get("decision") or fields.get("kind", "")]
    return ", ".join([*told, *(fields[name] for name in ("rating", "step", "verdict", "correction") if name in fields)])


def _as_text(path: str, verdict: Verdict, found: Examined) -> str:
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
    signers = {one.line: one for one in found.proof.signers}
    signed = (_signature(signature, signers.get(signature.line)) for signature in verdict.signatures)
    more = _proven(verdict, found) if found.proof.standing is not None else ()
    return "\n".join(
        [text, f"  {found.claim.sentence}", *signed, *(f"  note: {note}" for note in verdict.notes), *more]
    )


def _signature(signature: Signature, signer: Signer | None) -> str:
    by = shown(signature.fields.get("signer", "nobody named"))
    title = shown(signer.title) if signer is not None and signer.title else "unknown"
    right = f": {signer.right}. {shown(signer.why)}".rstrip() if signer is not None else ""
    decided = shown(_decided(signature.fields))
    return f"  signed: entry {signature.line}: {decided}, by {by}, key {title} ({signature.fingerprint[:16]}){right}"


def _proven(verdict: Verdict, found: Examined) -> Iterator[str]:
    """What speaks for the record beside its chain, a line each."""
    standing, lived = found.proof.standing, found.proof.lived
    if lived is not None:
        yield from _lived(lived)
    if standing is not None:
        # A record that is not as it was seen has been told of with its reason.
        why = "" if standing.is_denied else standing.why
        yield f"  book of heads: {standing.seen}. {why}".rstrip()
    yield f"  short head: {short_head(verdict.head)}"


def _lived(lived: LivedAgain) -> Iterator[str]:
    match lived.finding:
        case Finding.SAME:
            yield f"  lived again: the same entries and the same result. {lived.why}".rstrip()
        case Finding.DIFFERS:
            yield "  lived again: not the same."
        case _:
            yield f"  {lived.finding}: {lived.why}"
    yield from (f"    {difference}." for difference in lived.differences)
    if lived.papers:
        yield f"  caution: {lived.papers}"
