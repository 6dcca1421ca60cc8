"""The verbs `key` and `sign-off`, and what `verify` says of signatures."""

import argparse
import getpass
import json

import pytest

from assistant.cli import key, sign_off, verify
from assistant.errors import RecordError, UsageError
from assistant.record.verify import read_entries
from tests.record.examples import written

SIGNER = ["--signer", "M. Lindqvist, RN"]


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
    code, lines = call("sign-off", record, "--key", "lindqvist", *SIGNER, "--decision", "passed")
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
    call(*signed, "passed")
    for decision in ("withdrawn", "not-passed"):
        with pytest.raises(UsageError, match="needs a reason"):
            call(*signed, decision)
    assert call(*signed, "withdrawn", "--reason", "Wrong learner chosen.")[0] == 0
    kinds = [entry["kind"] for entry in read_entries(record)]
    assert kinds[-2:] == ["signed off", "sign-off withdrawn"]
    code, lines = call("verify", record)
    assert code == 0
    assert [line.split(",")[0] for line in lines[1:]] == [
        "  signed: entry 5: passed",
        "  signed: entry 6: withdrawn",
    ]


def test_record_signed_by_an_unknown_key_does_not_hold(call, record, tmp_path):
    """A stranger's signature: exit code 1 until the key is added."""
    call("key", "new", "stranger")
    call("sign-off", record, "--key", "stranger", *SIGNER, "--decision", "passed")
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
    arguments = ("sign-off", record, "--key", "lindqvist", *SIGNER, "--decision", "passed")
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


def test_what_cannot_be_signed_is_said(call, record, tmp_path):
    """No key, no signer, an open record: one sentence each, and the record stays as it is."""
    before = record.read_bytes()
    with pytest.raises(RecordError, match="cannot be read"):
        call("sign-off", record, "--key", "nobody", *SIGNER, "--decision", "passed")
    call("key", "new", "lindqvist")
    with pytest.raises(UsageError, match="signer's name"):
        call("sign-off", record, "--key", "lindqvist", "--signer", " ", "--decision", "passed")
    assert record.read_bytes() == before
    unsealed = written(tmp_path / "open.jsonl", 3, sealed=False)
    with pytest.raises(RecordError, match="not sealed"):
        call("sign-off", unsealed, "--key", "lindqvist", *SIGNER, "--decision", "passed")
