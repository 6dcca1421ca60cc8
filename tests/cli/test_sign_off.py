"""The verbs `key` and `sign-off`, and what `verify` says of signatures."""

import argparse
import getpass
import io
import json

import pytest

from assistant.cli import key, sign_off, verify
from assistant.errors import RecordError, UsageError
from assistant.record.decisions import Rating, standing
from assistant.record.file import RecordFile
from assistant.record.verify import read_entries
from tests.attempt.program import here
from tests.record.crash import crashed
from tests.record.examples import at, written

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
    code, lines = call("key", "new", "lindqvist")
    assert code == 0
    fingerprint = lines[1].removeprefix("Fingerprint: ")
    assert call("key", "list") == (0, [f"lindqvist  {fingerprint}"])
    code, lines = call("sign-off", record, "--key", "lindqvist", *SIGNER, "--decision", "passed", *STOOD_BY)
    assert code == 0
    assert lines[0] == f"{record}: entry 5 is signed: passed."
    code, lines = call("verify", record)
    assert code == 0
    assert lines[1] == f"  signed: entry 5: passed, by M. Lindqvist, RN, key lindqvist ({fingerprint[:16]})"
    answer = json.loads(call("verify", "--json", record)[1][0])
    assert answer["signatures"][0]["fingerprint"] == fingerprint
    assert answer["signatures"][0]["fields"]["decision"] == "passed"


def test_withdrawal_needs_a_reason_and_is_a_further_entry(call, record):
    """What is not a plain pass says why; the earlier sign-off stays where it is."""
    call("key", "new", "lindqvist")
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
    """A stranger's signature: exit code 1 until the key is added."""
    call("key", "new", "stranger")
    call("sign-off", record, "--key", "stranger", *SIGNER, "--decision", "passed", *STOOD_BY)
    (tmp_path / "keys").rename(tmp_path / "elsewhere")
    code, lines = call("verify", record)
    assert code == 1
    assert "signed by an unknown key" in lines[0]
    assert "key unknown" in lines[1]
    assert call("key", "add", "visitor", tmp_path / "elsewhere" / "stranger.public.pem")[0] == 0
    assert call("verify", record)[0] == 0


def test_passphrase_is_asked_for(call, record, monkeypatch):
    """A guarded key asks when it is made, twice, and when it signs; a wrong answer signs nothing."""
    answers = ["horse", "horse"]
    monkeypatch.setattr(getpass, "getpass", lambda _: answers.pop(0))
    assert call("key", "new", "lindqvist", "--passphrase")[0] == 0
    answers += ["mule", "horse"]
    arguments = ("sign-off", record, "--key", "lindqvist", *SIGNER, "--decision", "passed", *STOOD_BY)
    with pytest.raises(RecordError, match="cannot be read"):
        call(*arguments)
    assert len(read_entries(record)) == 4
    assert call(*arguments)[0] == 0
    answers += ["one", "two"]
    with pytest.raises(UsageError, match="differ"):
        call("key", "new", "other", "--passphrase")
    answers += [""]
    with pytest.raises(UsageError, match="empty"):
        call("key", "new", "other", "--passphrase")


def test_rating_of_the_performance(call, record):
    """The published five levels are taken by their names, told by verify, and no other word is."""
    # Bondy 1983: five levels from independent to dependent.
    assert [rating.value for rating in Rating] == ["independent", "supervised", "assisted", "marginal", "dependent"]
    call("key", "new", "lindqvist")
    signed = ["sign-off", record, *SIGNER, "--decision", "passed", *STOOD_BY, "--rating"]
    code, lines = call(*signed, "supervised")
    assert (code, lines[0]) == (0, f"{record}: entry 5 is signed: passed, supervised.")
    with pytest.raises(SystemExit):
        call(*signed, "excellent")
    with pytest.raises(UsageError, match="takes no rating"):
        call("sign-off", record, *SIGNER, "--decision", "withdrawn", "--reason", "Mine.", "--rating", "marginal")
    assert "signed: entry 5: passed, supervised, by M. Lindqvist, RN" in call("verify", record)[1][1]
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


def test_corrections_and_overruled_verdicts_are_further_entries(call, sealed):
    """The last sign-off counts, a withdrawn one does not; corrections add up; nothing before is changed."""
    before = sealed.read_bytes()
    call("key", "new", "lindqvist")
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
    assert "signed: entry 4: overruled, prime, done unaided, by" in lines[1]
    assert "signed: entry 5: corrected, The learner was A18., by" in lines[2]


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
def test_what_does_not_go_together(call, sealed, arguments, told):
    """Refused in one sentence before anything is signed."""
    call("key", "new", "lindqvist")
    before = sealed.read_bytes()
    with pytest.raises(UsageError, match=told):
        call("sign-off", sealed, *SIGNER, *arguments)
    assert sealed.read_bytes() == before


def test_which_key_signs(call, record):
    """One's only key needs no name; with none or with several, one sentence says so."""
    signed = ["sign-off", record, *SIGNER, "--decision", "passed", *STOOD_BY]
    with pytest.raises(UsageError, match="no key to sign with"):
        call(*signed)
    call("key", "new", "lindqvist")
    call("key", "new", "second")
    with pytest.raises(UsageError, match="several keys: lindqvist, second"):
        call(*signed)
    assert call(*signed, "--key", "second")[0] == 0


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
    call("key", "new", "lindqvist")
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
    call("key", "new", "lindqvist")
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
    call("key", "new", "lindqvist")
    assert call("sign-off", path, *SIGNER, "--decision", "not-passed", "--reason", "x", "--close")[0] == 0
    assert "results" not in read_entries(path)[-2]
    assert call("verify", path)[0] == 0


def test_what_cannot_be_signed_is_said(call, record, tmp_path):
    """No key, no signer, an open record: one sentence each, and the record stays as it is."""
    before = record.read_bytes()
    with pytest.raises(RecordError, match="cannot be read"):
        call("sign-off", record, "--key", "nobody", *SIGNER, "--decision", "passed", *STOOD_BY)
    call("key", "new", "lindqvist")
    with pytest.raises(UsageError, match="signer's name"):
        call("sign-off", record, "--key", "lindqvist", "--signer", " ", "--decision", "passed", *STOOD_BY)
    assert record.read_bytes() == before
    unsealed = written(tmp_path / "open.jsonl", 3, sealed=False)
    with pytest.raises(RecordError, match="not sealed"):
        call("sign-off", unsealed, "--key", "lindqvist", *SIGNER, "--decision", "passed")


def test_a_pass_that_nothing_confirms_needs_a_reason(call, record):
    """What cannot be lived again is passed only by somebody who says why; anything else is taken, and it is told."""
    call("key", "new", "lindqvist")
    with pytest.raises(UsageError, match="not confirmed by living the attempt again"):
        call("sign-off", record, *SIGNER, "--decision", "passed")
    assert call("sign-off", record, *SIGNER, "--decision", "passed", *STOOD_BY)[0] == 0
