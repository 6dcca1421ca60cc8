"""What may be claimed of a record: one line, and never more than is proven."""

import pytest

from assistant.record.chain import Problem
from assistant.record.claim import Proven, claim
from assistant.record.heads import Seen, Sighting, Standing
from assistant.record.lived import Finding, LivedAgain
from assistant.record.signer import Right, Signer
from assistant.record.verify import Verdict
from tests.record.examples import at

WHOLE = Verdict(ok=True, sealed=True, count=9, head="ab" * 32)
KEPT = Standing(Seen.AS_LAST_SEEN)
BROUGHT = Standing(Seen.AS_LAST_SEEN, first_had=4)
NEVER = Standing(Seen.NEVER)
LONGER = Standing(Seen.LONGER, last_seen=Sighting("stopped", at(0), "a.jsonl", "d1", 4, "d4"))
VALID = Signer(8, Right.VALID, "M. Lindqvist, RN", "Harbour College")
LONE = Signer(9, Right.VALID, "M. Lindqvist, RN")
STRANGER = Signer(9, Right.UNKNOWN, "a18key")
REVOKED = Signer(9, Right.REVOKED, "S. Tolen, RN", "Harbour College")


def broken(problem, count=3):
    return Verdict(ok=False, sealed=False, count=count, head="ab" * 32, problem=problem)


CASES = [
    (broken(Problem.EDITED), None, None, (), Proven.BROKEN, "not whole; it holds up to entry 3"),
    (broken(Problem.NOT_A_RECORD, 0), None, None, (), Proven.BROKEN, "at none of its entries"),
    (broken(Problem.TORN_TAIL), LONGER, None, (), Proven.NOTHING, "seen only its first 4 entries"),
    (broken(Problem.NOT_SEALED), KEPT, None, (), Proven.KEPT, "nothing was changed since"),
    (WHOLE, Standing(Seen.OLDER), None, (VALID,), Proven.DENIED, "older than last seen here"),
    (WHOLE, Standing(Seen.OTHER), None, (VALID,), Proven.DENIED, "other than last seen here"),
    (WHOLE, KEPT, LivedAgain(Finding.DIFFERS), (VALID,), Proven.DENIED, "its result disagree"),
    (WHOLE, NEVER, LivedAgain(Finding.SAME), (), Proven.NOTHING, "whoever could write this file could have made it"),
    (WHOLE, LONGER, None, (), Proven.NOTHING, "seen only its first 4 entries"),
    (WHOLE, KEPT, None, (), Proven.KEPT, "Nobody signed it; who answered is claimed."),
    (WHOLE, BROUGHT, None, (), Proven.KEPT, "not begun here: how its first 4 entries came about is claimed."),
    (WHOLE, NEVER, None, (STRANGER,), Proven.NOTHING, "not known as an instructor's: a18key"),
    (WHOLE, NEVER, None, (REVOKED,), Proven.NOTHING, "(revoked: S. Tolen, RN)"),
    (WHOLE, KEPT, None, (STRANGER,), Proven.KEPT, "Nobody known as an instructor signed it"),
    (WHOLE, NEVER, None, (VALID,), Proven.SIGNED, "up to entry 8 is as it was signed; 1 later entry is not covered"),
    (WHOLE, KEPT, None, (VALID, STRANGER), Proven.SIGNED, "by the roster of Harbour College"),
    (WHOLE, KEPT, None, (LONE,), Proven.SIGNED, "by the one key that is named here"),
]


@pytest.mark.parametrize(("verdict", "standing", "lived", "signers", "proven", "said"), CASES)
def test_what_may_be_claimed(verdict, standing, lived, signers, proven, said):
    """The word, and the sentence; who answered is never proven."""
    found = claim(verdict, standing, lived, signers)
    assert (found.proven, said in found.sentence) == (proven, True), found.sentence
    if proven in (Proven.KEPT, Proven.SIGNED):
        assert "ho answered is claimed" in found.sentence
