"""The verbs `key` and `sign-off`, and what `verify` says of signatures."""

import argparse
import getpass
import io
import json
import shutil
from pathlib import Path
from types import SimpleNamespace

import pytest

from assistant.cli import key, sign_off, verify
from assistant.errors import RecordError, UsageError
from assistant.record.decisions import Rating, standing
from assistant.record.file import RecordFile
from assistant.record.short_head import short_head
from assistant.record.signing import new_key
from assistant.record.verify import read_entries
from assistant.record.verify import verify as record_verdict
from tests import HEADS
from tests.attempt.program import here
from tests.record.crash import crashed
from tests.record.examples import at, written
from tests.record.forge import as_a_person, forged
from tests.record.instructors import lone_instructor

SIGNER = ["--signer", "M. Lindqvist, RN"]
STOOD_BY = ("--reason", "I stood by.")
"""These records are written by hand: nothing can be lived again, so a pass needs a reason."""


@pytest.fixture
def call(capsys, tmp_path):
    """Run a verb with the keys of this test; exit code and lines printed."""

    def run(*arguments):
        parser = argparse.ArgumentParser()
        verbs = parser.add_subparsers()
        for module in (key, sign_off, verify):
            module.add_parser(verbs)
        args = parser.parse_args([*map(str, arguments), "--keys", str(tmp_path / "keys")])
        code = args.run(args)
        return code, capsys.readouterr().out.splitlines()

    return run


@pytest.fixture
def record(tmp_path):
    return written(tmp_path / "attempt.jsonl", 4)


def test_from_key_to_verified_sign_off(call, record):
    """A key is made, an attempt signed, and the verdict names who signed what with which key."""
    code, lines = call("key", "new", "lindqvist", "--no-passphrase")
    assert code == 0
    fingerprint = lines[1].removeprefix("Fingerprint: ")
    assert call("key", "list")[1][0] == f"lindqvist  {fingerprint}"
    assert call("key", "trust", "lindqvist", "--name", "M. Lindqvist", "--role", "RN")[0] == 0
    assert call("key", "list") == (0, [f"lindqvist  {fingerprint}  M. Lindqvist, RN"])
    code, lines = call("sign-off", record, "--key", "lindqvist", *SIGNER, "--decision", "passed", *STOOD_BY)
    assert code == 0
    assert lines[0] == f"{record}: entry 5 is signed: passed."
    code, lines = call("verify", record)
    assert code == 0
    title = "M. Lindqvist, RN"
    assert lines[2] == f"  signed: entry 5: passed, by {title}, key {title} ({fingerprint[:16]}): valid then."
    answer = json.loads(call("verify", "--json", record)[1][0])
    assert answer["signatures"][0]["fingerprint"] == fingerprint
    assert answer["signatures"][0]["fields"]["decision"] == "passed"


def test_withdrawal_needs_a_reason_and_is_a_further_entry(call, record, tmp_path):
    """What is not a plain pass says why; the earlier sign-off stays where it is."""
    lone_instructor(tmp_path / "keys")
    signed = ["sign-off", record, "--key", "lindqvist", *SIGNER, "--decision"]
    call(*signed, "passed", *STOOD_BY)
    for decision in ("withdrawn", "not-passed"):
        with pytest.raises(UsageError, match="needs a reason"):
            call(*signed, decision)
    assert call(*signed, "withdrawn", "--reason", "Wrong learner chosen.")[0] == 0
    kinds = [entry["kind"] for entry in read_entries(record)]
    assert kinds[-2:] == ["signed off", "sign-off withdrawn"]
    code, lines = call("verify", record)
    assert code == 0
    assert [line.split(",")[0] for line in lines if "signed: entry" in line] == [
        "  signed: entry 5: passed",
        "  signed: entry 6: withdrawn",
    ]


def test_record_signed_by_an_unknown_key_does_not_hold(call, record, tmp_path):
    """A stranger's signature: exit code 1, also once the key is known, until it is named as an instructor's."""
    new_key(tmp_path / "keys", "stranger")
    call("sign-off", record, "--key", "stranger", *SIGNER, "--decision", "passed", *STOOD_BY)
    (tmp_path / "keys").rename(tmp_path / "elsewhere")
    code, lines = call("verify", record)
    assert code == 1
    assert "signed by an unknown key" in lines[0]
    assert "key unknown" in lines[2]
    assert call("key", "add", "visitor", tmp_path / "elsewhere" / "stranger.public.pem")[0] == 0
    code, lines = call("verify", record)
    assert (code, "key visitor" in lines[2], "not as an instructor's" in lines[2]) == (1, True, False)
    assert "Nobody is named as an instructor on this machine." in lines[2]
    assert call("key", "trust", "visitor", "--name", "A. Visitor")[0] == 0
    assert call("verify", record)[0] == 0


STRONG = "harbour violin eleven moss"


def test_passphrase_is_asked_for(call, record, monkeypatch):
    """A guarded key asks when it is made, twice, and when it signs; a wrong answer signs nothing."""
    answers = [STRONG, STRONG]
    monkeypatch.setattr(getpass, "getpass", lambda _: answers.pop(0))
    assert call("key", "new", "lindqvist")[0] == 0
    answers += ["mule", STRONG]
    arguments = ("sign-off", record, "--key", "lindqvist", *SIGNER, "--decision", "passed", *STOOD_BY)
    with pytest.raises(RecordError, match="cannot be read"):
        call(*arguments)
    assert len(read_entries(record)) == 4
    assert call(*arguments)[0] == 0
    answers += [STRONG, "another violin eleven moss"]
    with pytest.raises(UsageError, match="differ"):
        call("key", "new", "other")
    answers += [""]
    with pytest.raises(UsageError, match="empty"):
        call("key", "new", "other")


@pytest.mark.parametrize("weak", ["abc", "horse", "Password1!", "monkey2026", "qwertzuiop", "12345678901234"])
def test_a_weak_passphrase_is_refused(call, monkeypatch, weak):
    """What is soon guessed guards nothing; it says why, and what to take."""
    monkeypatch.setattr(getpass, "getpass", lambda _: weak)
    with pytest.raises(UsageError, match="too weak"):
        call("key", "new", "lindqvist")


def test_rating_of_the_performance(call, record, tmp_path):
    """The published five levels are taken by their names, told by verify, and no other word is."""
    # Bondy 1983: five levels from independent to dependent.
    assert [rating.value for rating in Rating] == ["independent", "supervised", "assisted", "marginal", "dependent"]
    lone_instructor(tmp_path / "keys")
    signed = ["sign-off", record, *SIGNER, "--decision", "passed", *STOOD_BY, "--rating"]
    code, lines = call(*signed, "supervised")
    assert (code, lines[0]) == (0, f"{record}: entry 5 is signed: passed, supervised.")
    with pytest.raises(SystemExit):
        call(*signed, "excellent")
    with pytest.raises(UsageError, match="takes no rating"):
        call("sign-off", record, *SIGNER, "--decision", "withdrawn", "--reason", "Mine.", "--rating", "marginal")
    assert "signed: entry 5: passed, supervised, by M. Lindqvist, RN" in call("verify", record)[1][2]
    (signature,) = json.loads(call("verify", "--json", record)[1][0])["signatures"]
    assert signature["fields"]["rating"] == "supervised"
    assert standing(read_entries(record)).sign_off["rating_scale"] == "Bondy 1983"


@pytest.fixture
def sealed(tmp_path):
    """A record whose result the assistant found not passed."""
    with RecordFile.create(tmp_path / "sealed.jsonl", {"kind": "opened", "at": at(0)}) as record:
        record.append({"kind": "typed", "at": at(1), "words": "yes"})
        results = {"steps": [{"id": "prime", "ending": "left out"}]}
        record.seal({"kind": "finished", "at": at(2), "outcome": "not passed", "results": results})
    return record.path


def test_corrections_and_overruled_verdicts_are_further_entries(call, sealed, tmp_path):
    """The last sign-off counts, a withdrawn one does not; corrections add up; nothing before is changed."""
    before = sealed.read_bytes()
    lone_instructor(tmp_path / "keys")
    signed = ["sign-off", sealed, *SIGNER, "--reason", "Seen by me.", "--decision"]
    assert call(*signed, "overruled", "--step", "prime", "--verdict", "done unaided")[0] == 0
    assert call(*signed, "corrected", "--correction", "The learner was A18.")[0] == 0
    assert call(*signed, "passed")[0] == 0
    now = standing(read_entries(sealed))
    assert (now.sign_off["decision"], now.overruled["prime"]["verdict"]) == ("passed", "done unaided")
    assert [entry["correction"] for entry in now.corrections] == ["The learner was A18."]
    assert call(*signed, "withdrawn")[0] == 0
    assert call(*signed, "overruled", "--step", "prime", "--verdict", "wrong")[0] == 0
    now = standing(read_entries(sealed))
    assert (now.sign_off, len(now.withdrawn), now.overruled["prime"]["verdict"]) == (None, 1, "wrong")
    assert sealed.read_bytes().startswith(before)
    code, lines = call("verify", sealed)
    assert code == 0
    assert "signed: entry 4: overruled, prime, done unaided, by" in lines[2]
    assert "signed: entry 5: corrected, The learner was A18., by" in lines[3]


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (["--decision", "passed"], "needs a reason"),  # against the result of the record
        (["--decision", "not-passed"], "needs a reason"),
        (["--decision", "overruled", "--step", "prime", "--verdict", "wrong"], "needs a reason"),
        (["--decision", "overruled", "--verdict", "wrong", "--reason", "x"], "give the step and"),
        (
            ["--decision", "overruled", "--step", "prime", "--verdict", "fine", "--reason", "x"],
            "give the step and",
        ),
        (["--decision", "overruled", "--step", "pray", "--verdict", "wrong", "--reason", "x"], "no step pray"),
        (["--decision", "corrected", "--reason", "x"], "says what is right"),
        (["--decision", "passed", "--correction", "A18", "--reason", "x"], "says what is right"),
        (["--decision", "withdrawn", "--reason", "x"], "No sign-off stands"),
        (["--decision", "not-passed", "--reason", "x" * 2_001], "longer than 2,000"),
        (["--decision", "passed", "--close", "--reason", "x"], "counts as not completed"),
    ],
)
def test_what_does_not_go_together(call, sealed, arguments, told, tmp_path):
    """Refused in one sentence before anything is signed."""
    lone_instructor(tmp_path / "keys")
    before = sealed.read_bytes()
    with pytest.raises(UsageError, match=told):
        call("sign-off", sealed, *SIGNER, *arguments)
    assert sealed.read_bytes() == before


def test_which_key_signs(call, record, tmp_path):
    """One's only key needs no name; with none or with several, one sentence says so."""
    signed = ["sign-off", record, *SIGNER, "--decision", "passed", *STOOD_BY]
    with pytest.raises(UsageError, match="no key to sign with"):
        call(*signed)
    lone_instructor(tmp_path / "keys")
    new_key(tmp_path / "keys", "second")
    with pytest.raises(UsageError, match="several keys: lindqvist, second"):
        call(*signed)
    with pytest.raises(RecordError, match="second is not an instructor's"):
        call(*signed, "--key", "second")
    assert call(*signed, "--key", "lindqvist")[0] == 0


def stopped(capsys, monkeypatch, tmp_path, words):
    """The record of a real attempt that ended after these words."""
    monkeypatch.setattr("sys.stdin", io.StringIO(words))
    ended = here(capsys, "run", "primary-line", "--typed", "--json", "--mode", "check-off", "--records", str(tmp_path))
    assert ended.code == 4
    return ended.last["record"]


@pytest.mark.parametrize("words", ["yes\nstop\nyes\n", "yes\n"])
def test_stopped_attempt_is_closed_as_not_completed(call, capsys, monkeypatch, tmp_path, words):
    """Ended by "stop" or simply left: the instructor seals what is there, signs it, and it cannot be resumed."""
    path = stopped(capsys, monkeypatch, tmp_path, words)
    lone_instructor(tmp_path / "keys")
    signed = ["sign-off", path, *SIGNER, "--decision", "not-passed", "--reason", "Left the lab."]
    with pytest.raises(RecordError, match="--close"):
        call(*signed)
    assert call(*signed, "--close")[0] == 0
    entries = read_entries(path)
    assert [entry["kind"] for entry in entries[-2:]] == ["closed", "signed off"]
    assert (entries[-2]["outcome"], entries[-2]["source"]) == ("not completed", "instructor")
    assert entries[-2]["results"]["passed"] is False
    assert "not reached" in {line["ending"] for line in entries[-2]["results"]["steps"]}
    assert call("verify", path)[0] == 0
    assert "Closed as not completed" in "\n".join(here(capsys, "report", path).lines)
    with pytest.raises(RecordError, match="is sealed"):
        call(*signed, "--close")
    with pytest.raises(UsageError, match="cannot be passed"):
        call("sign-off", path, *SIGNER, "--decision", "passed", "--reason", "x")
    again = here(capsys, "resume", path, "--typed")
    assert (again.code, "sealed" in again.console) == (1, True)


def test_attempt_that_lacks_only_its_seal_is_not_closed(call, capsys, tmp_path):
    """Every step was done when the power went: resuming seals it with its true result."""
    assert here(capsys, "demo", "primary-line", "--json", "--records", str(tmp_path)).code == 0
    path = next(tmp_path.glob("*.jsonl"))
    unsealed = b"".join(path.read_bytes().splitlines(keepends=True)[:-1])
    crashed(path, unsealed)
    lone_instructor(tmp_path / "keys")
    with pytest.raises(UsageError, match="only its seal is missing"):
        call("sign-off", path, *SIGNER, "--decision", "not-passed", "--reason", "x", "--close")
    assert path.read_bytes() == unsealed
    assert here(capsys, "resume", str(path), "--typed").code == 0
    assert call("verify", path)[0] == 0
    with pytest.raises(UsageError, match="nobody to pass"):
        call("sign-off", path, *SIGNER, "--decision", "passed")


def test_attempt_that_cannot_be_lived_again_is_closed_without_a_result(call, tmp_path):
    """Where the papers are not what they were, the instructor can still close and sign."""
    path = written(tmp_path / "open.jsonl", 3, sealed=False)
    lone_instructor(tmp_path / "keys")
    assert call("sign-off", path, *SIGNER, "--decision", "not-passed", "--reason", "x", "--close")[0] == 0
    assert "results" not in read_entries(path)[-2]
    assert call("verify", path)[0] == 0


def test_what_cannot_be_signed_is_said(call, record, tmp_path):
    """No key, no signer, an open record: one sentence each, and the record stays as it is."""
    before = record.read_bytes()
    with pytest.raises(RecordError, match="cannot be read"):
        call("sign-off", record, "--key", "nobody", *SIGNER, "--decision", "passed", *STOOD_BY)
    lone_instructor(tmp_path / "keys")
    with pytest.raises(UsageError, match="belongs to M"):
        call("sign-off", record, "--signer", "A. Okafor", "--decision", "passed", *STOOD_BY)
    assert record.read_bytes() == before
    unsealed = written(tmp_path / "open.jsonl", 3, sealed=False)
    with pytest.raises(RecordError, match="not sealed"):
        call("sign-off", unsealed, "--key", "lindqvist", *SIGNER, "--decision", "passed")


def test_a_pass_that_nothing_confirms_needs_a_reason(call, record, tmp_path):
    """What cannot be lived again is passed only by somebody who says why; anything else is taken, and it is told."""
    lone_instructor(tmp_path / "keys")
    with pytest.raises(UsageError, match="not confirmed by living the attempt again"):
        call("sign-off", record, *SIGNER, "--decision", "passed")
    assert call("sign-off", record, *SIGNER, "--decision", "passed", *STOOD_BY)[0] == 0


# What is signed is shown, and the reason asked for.


@pytest.fixture
def attempt(capsys, tmp_path):
    """A check-off that did not pass, as a simulated learner did it; the record says nothing of that."""
    slip = ["--slip", "wrong-rate", "--mode", "check-off", "--learner", "A18"]
    ended = here(capsys, "demo", "primary-line", *slip, "--json", "--records", str(tmp_path))
    path = forged(Path(ended.last["record"]), as_a_person)
    shutil.rmtree(HEADS)
    return path


def test_what_is_signed_is_shown(call, capsys, attempt, tmp_path):
    """Learner, checklist, order, result and result worked out anew, what is proven, the short head."""
    lone_instructor(tmp_path / "keys")
    call_and_keep = ["sign-off", str(attempt), "--decision", "not-passed", "--reason", "Rate wrong at first."]
    ended = here(capsys, *call_and_keep, "--keys", str(tmp_path / "keys"))
    shown = ended.console.splitlines()
    assert shown[0].startswith("You are about to sign: learner A18, check-off, primary-line ")
    assert shown[0].endswith(", order oh-101.")
    assert shown[2] == "Result: not passed. Worked out anew: same."
    assert f"Short head: {short_head(verify_record(attempt, upto=1).head)}" in shown
    assert any("this machine has never seen it" in line for line in shown)
    (signed,) = [entry for entry in read_entries(attempt) if "signature" in entry]
    assert signed["signer"] == "M. Lindqvist, RN", "as it belongs to the key"


def verify_record(path, upto):
    """The verdict on the record without its last entries."""
    lines = path.read_bytes().splitlines(keepends=True)
    before = path.with_name("before.jsonl")
    before.write_bytes(b"".join(lines[:-upto]))
    return record_verdict(before)


def test_the_reason_is_asked_for_at_a_terminal(call, capsys, attempt, tmp_path, monkeypatch):
    """Against the result: it says why, and asks; an empty answer signs nothing."""
    lone_instructor(tmp_path / "keys")
    given = ["sign-off", str(attempt), "--decision", "passed", "--seen", "all", "--keys", str(tmp_path / "keys")]
    ended = here(capsys, *given)
    assert (ended.code, "The result of the record is: not passed. That needs a reason." in ended.console) == (2, True)
    answers = ["\n", "The pump's display was dark.\n"]
    terminal = SimpleNamespace(isatty=lambda: True, readline=lambda: answers.pop(0))
    monkeypatch.setattr("sys.stdin", terminal)
    assert here(capsys, *given).code == 2
    ended = here(capsys, *given)
    assert (ended.code, "Reason: " in ended.console) == (0, True)
    assert read_entries(attempt)[-1]["reason"] == "The pump's display was dark."


def test_an_expired_key_does_not_sign(call, capsys, record, tmp_path):
    """Nor one that was revoked, or is not on the roster yet: an entry that decides nothing helps nobody."""
    keys = tmp_path / "keys"
    for name in ("school", "lindqvist", "okafor"):
        new_key(keys, name)
    options = ["--keys", str(keys)]
    assert here(capsys, "key", "begin", "school", "--school", "Harbour College", *options).code == 0
    assert here(capsys, "key", "trust", "school", "--school", *options).code == 0
    person = ["--name", "M. Lindqvist", "--role", "RN"]
    term = ["--from", "2020-01-01", "--until", "2020-12-31"]
    assert here(capsys, "key", "enrol", "lindqvist", *person, *term, *options).code == 0
    signed = ["sign-off", str(record), "--decision", "passed", *STOOD_BY, *options, "--key"]
    assert "is not valid now" in here(capsys, *signed, "lindqvist").console
    assert "is not an instructor's" in here(capsys, *signed, "okafor").console
    assert here(capsys, "key", "renew", "M. Lindqvist", *options).code == 0
    assert here(capsys, *signed, "lindqvist").code == 0
    code, lines = call("verify", record)
    assert (code, "by the roster of Harbour College" in lines[1]) == (0, True)
    ended = here(capsys, "key", "revoke", "M. Lindqvist", "--reason", "Key lost.", *options)
    assert (ended.code, any("revoked at" in line for line in ended.lines)) == (0, True)
    assert "is not valid now" in here(capsys, *signed, "lindqvist").console
    assert call("verify", record)[0] == 0, "this machine's book saw the entry before"
    shutil.rmtree(HEADS)
    code, lines = call("verify", record)
    assert (code, "signed by a key that was not valid" in lines[0], "Key lost." in lines[0]) == (1, True, True)
