"""The recipe in checked_by_hand.md: run exactly as it is printed, on honest and on forged records."""

import os
import shutil
import subprocess
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from assistant.record import signing
from assistant.record.day_head import day_head, entry_of
from assistant.record.entry import link, read_line
from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook, read_pages
from assistant.record.roster_file import begin_roster, enrol, revoke
from assistant.record.signing import load_key, new_key
from assistant.record.verify import verify
from tests.record.examples import at, written
from tests.record.forge import forged

BY_HAND = Path(signing.__file__).with_name("checked_by_hand.md")
pytestmark = pytest.mark.skipif(shutil.which("openssl") is None, reason="openssl is not on this machine")
NOW = datetime.now(UTC)
TERM = tuple((NOW + timedelta(days=days)).isoformat(timespec="microseconds") for days in (-10, 10))
DECISION = {
    "kind": "signed off",
    "at": NOW.isoformat(timespec="microseconds"),
    "source": "instructor",
    "signer": "M. Lindqvist, RN",
    "decision": "passed",
    "reason": 'said "digest":"' + "0" * 64 + '", "key":"x", and "signature":"x", \\ so',
}


class Evidence:
    """A record of twelve lines, its sign-off, the roster and the head of its day."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.keys = folder / "keys"
        for name in ("school", "lindqvist", "stranger", "second"):
            new_key(self.keys, name)
        self.record = written(folder / "attempt.jsonl", 12)
        self.roster = folder / "roster.jsonl"
        self.school = load_key(self.keys, "school")
        begin_roster(self.roster, "Harbour College", self.school)
        enrol(self.roster, self.school, self.key("lindqvist").public, ("M. Lindqvist", "RN"), TERM)
        RecordFile.add_signed(self.record, DECISION, self.key("lindqvist"))
        self.day = folder / "day.head"
        self.make_day()

    def key(self, name):
        return load_key(self.keys, name)

    def make_day(self):
        """A head of the day that knows where the record ends now."""
        book = HeadBook(self.folder / "book", None, print)
        verdict, lines = verify(self.record), self.record.read_bytes().splitlines(keepends=True)
        first = read_line(lines[0])
        book.note("opened", self.record, first.digest, 1, first.digest)
        book.note("signed", self.record, first.digest, verdict.count, verdict.head)
        head = day_head(NOW.date(), read_pages(book.path).sightings.values())
        key = self.key("lindqvist")
        self.day.write_bytes(entry_of(head, DECISION["at"], key.public.text, key.sign).line)

    def run(self, **changes):
        """Run the recipe; exit code and what it printed."""
        recipe = BY_HAND.read_text(encoding="utf-8").partition("```sh\n")[2].partition("```")[0]
        given = {
            "RECORD": self.record,
            "SCHOOL": self.keys / "school.public.pem",
            "ROSTER": self.roster,
            "DAY": self.day,
        } | changes
        workshop = self.folder / "workshop"
        workshop.mkdir(exist_ok=True)
        done = subprocess.run(
            ["sh", "-u", "-c", recipe],
            cwd=workshop,
            env={**os.environ, **{name: str(value) for name, value in given.items()}},
            capture_output=True,
            check=False,
        )
        return done.returncode, done.stdout.decode().splitlines()


@pytest.fixture
def evidence(tmp_path):
    return Evidence(tmp_path)


def test_an_honest_record(evidence):
    """The whole chain, the signature, the roster, the head of the day; then the head that the report prints."""
    code, told = evidence.run()
    assert code == 0, told
    assert told[-1] == verify(evidence.record).head
    assert told[0] == f"signed at {DECISION['at']} by M. Lindqvist"
    assert told[-2] == "13 lines, sealed: yes. Head:"
    assert evidence.run(DAY="")[0] == evidence.run(DAY="", ROSTER="", SCHOOL="")[0] == 0
    alone = {"ROSTER": "", "SCHOOL": evidence.keys / "lindqvist.public.pem"}
    assert evidence.run(**alone)[0] == 0


def test_an_honest_record_after_an_erasure(evidence):
    """What is added behind the sign-off does not undo it."""
    RecordFile.erase_sound(evidence.record, "asked for")
    RecordFile.add_signed(evidence.record, {**DECISION, "decision": "withdrawn"}, evidence.key("lindqvist"))
    evidence.make_day()
    code, told = evidence.run()
    assert (code, told[-1]) == (0, verify(evidence.record).head)


def edit(number, before, after):
    """Change the text of one line."""

    def change(evidence):
        lines = evidence.record.read_bytes().splitlines(keepends=True)
        assert before in lines[number - 1]
        lines[number - 1] = lines[number - 1].replace(before, after)
        evidence.record.write_bytes(b"".join(lines))

    return change


def relinked_before_the_signature(evidence):
    """The learner changed, everything linked anew, and the old sign-off behind it."""
    lines = evidence.record.read_bytes().splitlines(keepends=True)
    evidence.record.write_bytes(b"".join(lines[:-1]))
    forged(evidence.record, lambda bodies: bodies[0].update(learner="L-015"))
    fields = dict(read_line(lines[-1]).fields)
    body = {
        name: value for name, value in fields.items() if name not in ("sequence", "previous", "digest", "signature")
    }
    last = read_line(evidence.record.read_bytes().splitlines(keepends=True)[-1])
    entry = link(body, last.digest, 13, lambda _: fields["signature"])
    evidence.record.write_bytes(evidence.record.read_bytes() + entry.line)


def signed_by_a_stranger(evidence):
    RecordFile.add_signed(evidence.record, DECISION, evidence.key("stranger"))
    evidence.make_day()


def signed_too_late(evidence):
    late = (NOW + timedelta(days=11)).isoformat(timespec="microseconds")
    RecordFile.add_signed(evidence.record, {**DECISION, "at": late}, evidence.key("lindqvist"))
    evidence.make_day()


def signed_by_a_clock_set_back(evidence):
    """The term ended before the last answer; the sign-off says that it was before that."""
    terms = tuple((datetime.fromisoformat(at(0)) + timedelta(days=days)).isoformat() for days in (-30, -20))
    enrol(evidence.roster, evidence.school, evidence.key("second").public, ("S. Econd", "RN"), terms)
    early = (datetime.fromisoformat(at(0)) + timedelta(days=-25)).isoformat(timespec="microseconds")
    RecordFile.add_signed(evidence.record, {**DECISION, "at": early}, evidence.key("second"))
    evidence.make_day()


def unsigned_behind_the_seal(evidence):
    lines = evidence.record.read_bytes()
    last = read_line(lines.splitlines(keepends=True)[-1])
    evidence.record.write_bytes(lines + link({"kind": "noted", "at": at(99)}, last.digest, 14).line)


def a_false_seal(evidence):
    lines = evidence.record.read_bytes().splitlines(keepends=True)
    before = read_line(lines[10])
    seal = {"kind": "finished", "at": at(60), "outcome": "passed", "seal": {"count": 9, "head": before.digest}}
    evidence.record.write_bytes(b"".join([*lines[:11], link(seal, before.digest, 12).line]))


def the_roster_edited(evidence):
    evidence.roster.write_bytes(evidence.roster.read_bytes().replace(b'"RN"', b'"MD"'))


def the_roster_added_to_by_a_stranger(evidence):
    last = read_line(evidence.roster.read_bytes().splitlines(keepends=True)[-1])
    key = evidence.key("stranger")
    told = {"kind": "instructor added", "at": DECISION["at"], "key": key.public.text, "instructor": key.public.text}
    entry = link({**told, "name": "S", "role": "", "from": TERM[0], "until": TERM[1]}, last.digest, 3, key.sign)
    evidence.roster.write_bytes(evidence.roster.read_bytes() + entry.line)


def cut(lines_kept):
    def change(evidence):
        lines = evidence.record.read_bytes().splitlines(keepends=True)
        evidence.record.write_bytes(b"".join(lines[:lines_kept]))

    return change


FORGED = {
    "the learner": (edit(1, b"L-014", b"L-015"), "line 1: changed"),
    "a word in the middle": (edit(6, b"mils an hour", b"mils an houR"), "line 6: changed"),
    "the decision": (edit(13, b'"decision":"passed"', b'"decision":"Passed"'), "line 13: changed"),
    "all linked anew": (relinked_before_the_signature, "line 13: wrongly signed"),
    "a line taken out": (
        lambda evidence: evidence.record.write_bytes(
            b"".join(line for n, line in enumerate(evidence.record.read_bytes().splitlines(keepends=True)) if n != 4)
        ),
        "line 5: does not follow the line before",
    ),
    "a false seal": (a_false_seal, "a false seal"),
    "behind the seal": (unsigned_behind_the_seal, "after the seal, and not signed"),
    "a stranger": (signed_by_a_stranger, "not on the roster"),
    "after the term": (signed_too_late, "was not valid at"),
    "a clock set back": (signed_by_a_clock_set_back, "was not valid at"),
    "revoked": (
        lambda evidence: revoke(evidence.roster, evidence.school, "M. Lindqvist", "Key lost."),
        "a key that was revoked",
    ),
    "the roster edited": (the_roster_edited, "roster.jsonl, line 2: changed"),
    "the roster added to": (the_roster_added_to_by_a_stranger, "roster.jsonl, line 3: not signed by its key"),
    "the sign-off cut off": (cut(12), "knows another end of this record"),
    "the end cut off": (cut(8), "knows another end of this record"),
}


@pytest.mark.parametrize(("change", "told"), FORGED.values(), ids=list(FORGED))
def test_a_forged_record(evidence, change, told):
    """Each forgery ends it with the line that says what is wrong."""
    change(evidence)
    code, lines = evidence.run()
    assert (code, told in lines[-1]) == (1, True), lines


def test_another_schools_key(evidence):
    """The roster is not signed by it."""
    code, lines = evidence.run(SCHOOL=evidence.keys / "second.public.pem")
    assert (code, "roster.jsonl, line 1: not signed by its key" in lines[-1]) == (1, True)
