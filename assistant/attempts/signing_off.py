"""An instructor's decision on an attempt: checked, closed where it was left, and signed behind its seal."""

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from assistant.attempts.proof import Examined, Here
from assistant.attempts.to_sign import ToSign
from assistant.errors import AssistantError, RecordError, UsageError
from assistant.guide.effects import Outcome
from assistant.record.day_head import DayHead, entry_of
from assistant.record.decisions import CLOSED, Decision, Wish, body_of
from assistant.record.document import write_document
from assistant.record.entry import Entry, Recorded
from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from assistant.record.roster import now
from assistant.record.signer import Right
from assistant.record.signing import is_encrypted, load_key, own_keys, public_key_of
from assistant.text import shown

Tell = Callable[[str], None]
"""Takes a sentence for whoever signs."""


class ReasonWantedError(UsageError):
    """The decision goes beyond the result and has no reason.

    Attributes:
        beyond: in what, a sentence each.
    """

    def __init__(self, beyond: tuple[str, ...]) -> None:
        super().__init__(f"{' '.join(beyond)} That needs a reason.", "Give it with --reason, or run it in a terminal.")
        self.beyond = beyond


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


def refuse_what_is_contradicted(found: Examined, wish: Wish) -> None:
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


def refuse_what_has_no_reason(wish: Wish, what: ToSign, *, close: bool) -> None:
    """Ask for a reason where a decision goes beyond the result.

    What cannot be signed at all is let through: it is refused further on, in its own words.

    Raises:
        ReasonWantedError: there is none.
    """
    beyond = () if wish.reason else what.beyond(wish)
    if beyond and not (what.simulated and wish.decision is Decision.PASSED) and (what.outcome or close):
        raise ReasonWantedError(beyond)


def sign(
    found: Examined,
    wish: Wish,
    known: Here,
    folder: Path,
    name: str,
    passphrase: Callable[[], str | None],
    tell: Tell,
    *,
    close: bool = False,
) -> tuple[Recorded, dict[str, object]]:
    """Add a decision to a record; return the entry's place and its body.

    Everything is asked before anything is written: a wish that cannot be met, or a wrong passphrase, closes no attempt.

    Args:
        found: the record with all that is known of it.
        wish: what is added; its reason has been looked at.
        known: what this machine knows.
        folder: where the keys are.
        name: of the key to sign with.
        passphrase: asks for that of the key; called where it has one.
        tell: takes cautions.
        close: seal it first, as not completed.

    Raises:
        RecordError: the record is not sealed or does not hold, it is not what was last seen, the key cannot be used or
            is not an instructor's now, or the disk refuses.
        UsageError: something is missing or does not go together.
    """
    if close and wish.decision is not Decision.NOT_PASSED:
        raise UsageError("A closed attempt counts as not completed.", "Give --decision not-passed with a reason.")
    at = datetime.now(UTC).isoformat(timespec="microseconds")
    wish = _with_signer(wish, name, folder, known, tell)
    body = body_of(wish, found.reading.entries, at, found.proof.deciding)
    key = load_key(folder, name, passphrase() if is_encrypted(folder, name) else None)
    if close:
        _close(found.path, wish, at, known.book, tell)
    return RecordFile.add_signed(found.path, body, key, known.book), body


def sign_day(
    head: DayHead, at: str, folder: Path, name: str, passphrase: Callable[[], str | None], path: Path
) -> Entry:
    """Sign the list of a day's attempts and write it; return its entry.

    Args:
        head: the list.
        at: when it is made, UTC in ISO 8601.
        folder: where the keys are.
        name: of the key to sign with.
        passphrase: asks for that of the key; called where it has one.
        path: where to; a file that is there is replaced.

    Raises:
        RecordError: the key cannot be used, or the disk refuses.
    """
    key = load_key(folder, name, passphrase() if is_encrypted(folder, name) else None)
    entry = entry_of(head, at, key.public.text, key.sign)
    write_document(path, entry.line)
    return entry


def _with_signer(wish: Wish, name: str, folder: Path, known: Here, tell: Tell) -> Wish:
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


def _close(path: Path, wish: Wish, at: str, book: HeadBook, tell: Tell) -> None:
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
                **_results(record, path, tell),
            }
        )


def _results(record: RecordFile, path: Path, tell: Tell) -> dict[str, object]:
    """The result as the attempt was left; none where its papers are no longer what they were.

    Raises:
        UsageError: every step was done: only the seal is missing.
    """
    # Imported only here: most sign-offs close nothing, and the papers bring the whole procedure with them.
    from assistant.attempts.papers import papers_of
    from assistant.attempts.replay import lived_again
    from assistant.guide.effects import Finish
    from assistant.guide.events import Recorded as WasRecorded
    from assistant.guide.events import Resumed

    try:
        guide = lived_again(papers_of(record.entries[0], path), record.entries, path)
    except AssistantError as error:
        tell(f"Closed without a result per step. {error}")
        return {}
    results = guide.results().body()
    guide.receive(Resumed(datetime.now(UTC)))
    effects = guide.receive(WasRecorded(len(record.entries) + 1, ""))
    if any(isinstance(effect, Finish) and effect.seal is not None for effect in effects):
        raise UsageError("This attempt was completed; only its seal is missing.", f"checkoff resume {shown(path)}")
    return {"results": results}
