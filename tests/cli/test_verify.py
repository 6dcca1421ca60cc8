"""The verb `verify`: what it prints and its exit codes."""

import argparse
import json

import pytest

from assistant.attempts.papers import take_papers
from assistant.attempts.pins import pins
from assistant.cli.verify import add_parser
from assistant.errors import UsageError
from assistant.guide.progress import Mode
from assistant.record.entry import OWN_FIELDS, link, read_line
from assistant.record.file import RecordFile
from assistant.record.short_head import short_head
from assistant.record.signing import load_key
from assistant.record.verify import verify
from tests.record.examples import at, written
from tests.record.instructors import lone_instructor


@pytest.fixture
def call(capsys):
    """Run the verb as the program does; exit code and lines printed."""

    def run(*arguments):
        parser = argparse.ArgumentParser()
        add_parser(parser.add_subparsers())
        args = parser.parse_args(["verify", *map(str, arguments)])
        code = args.run(args)
        return code, capsys.readouterr().out.splitlines()

    return run


@pytest.fixture
def whole(tmp_path):
    return written(tmp_path / "whole.jsonl", 4)


@pytest.fixture
def unsealed(tmp_path):
    return written(tmp_path / "open.jsonl", 3, sealed=False)


@pytest.fixture
def edited(tmp_path):
    path = written(tmp_path / "edited.jsonl", 4)
    path.write_bytes(path.read_bytes().replace(b"agrees", b"Agrees", 1))
    return path


def test_record_that_holds(call, whole):
    """A whole record that nobody signed and nobody has seen: its count and head, and that nothing is proven."""
    code, lines = call(whole)
    assert code == 5
    head = verify(whole).head
    assert lines == [
        f"holds: {whole}: 4 entries, sealed. Head {head}.",
        "  Proven: nothing. Nobody signed it, and this machine has never seen it: "
        "whoever could write this file could have made it.",
        "  could not be lived again: Its first entry does not name the papers of an attempt.",
        "  book of heads: never seen here.",
        f"  short head: {short_head(head)}",
    ]


def test_broken_record_names_the_line(call, edited):
    """A broken record: exit code 1, with the line and what is wrong."""
    code, lines = call(edited)
    assert code == 1
    assert lines == [
        f"BROKEN: {edited}, line 2: edited. Its content does not fit its digest. 1 entry before that holds.",
        "  Proven: nothing. The record is not whole; it holds up to entry 1.",
    ]


def test_one_broken_record_among_several(call, whole, edited, tmp_path):
    """Each file gets its verdict; one that does not hold makes the exit code 1."""
    code, lines = call(whole, edited, tmp_path / "missing.jsonl", tmp_path)
    assert code == 1
    first = [line for line in lines if not line.startswith(" ")]
    assert [line.split(":")[0] for line in first] == ["holds", "BROKEN", "BROKEN", "BROKEN"]
    assert "No such file or directory" in first[2]
    assert "entries before" not in first[2]
    assert call(whole, whole)[0] == 5


def test_open_record_fails_unless_it_is_allowed(call, unsealed):
    """Nothing shows that an unsealed record's end is there: exit code 1, or 0 with --open."""
    code, lines = call(unsealed)
    assert code == 1
    assert lines[0].startswith(f"open: {unsealed}: not sealed.")
    assert lines[0].endswith(f"Its 3 entries hold. Head {verify(unsealed).head}.")
    assert call("--open", unsealed)[0] == 5


def test_open_allows_nothing_else(call, edited):
    """--open forgives a missing seal alone."""
    assert call("--open", edited)[0] == 1


def test_head_shows_a_missing_tail(call, whole, unsealed):
    """The printed head must be the last one; several records cannot share one."""
    head = verify(whole).head
    assert call("--head", head, whole)[0] == 5
    code, lines = call("--open", "--head", head, unsealed)
    assert code == 1
    assert "tail missing" in lines[0]
    with pytest.raises(UsageError):
        call("--head", head, whole, unsealed)


def test_json(call, whole, edited, unsealed):
    """One JSON object a record with every field of the verdict."""
    code, lines = call("--json", whole, edited, unsealed)
    first, second, third = map(json.loads, lines)
    assert code == 1
    assert first == {
        "file": str(whole),
        "ok": True,
        "sealed": True,
        "count": 4,
        "head": verify(whole).head,
        "problem": None,
        "line": None,
        "why": "",
        "notes": [],
        "signatures": [],
        "proven": "nothing",
        "claim": "Proven: nothing. Nobody signed it, and this machine has never seen it: "
        "whoever could write this file could have made it.",
        "short_head": short_head(verify(whole).head),
        "lived_again": {
            "finding": "could not be lived again",
            "why": "Its first entry does not name the papers of an attempt.",
            "differences": [],
            "papers": "",
        },
        "book": {"seen": "never seen here", "why": "", "last_seen": None, "first_had": 0, "problems": []},
    }
    assert (second["problem"], second["line"], second["count"]) == ("edited", 2, 1)
    assert (third["ok"], third["problem"]) == (False, "not sealed")


def test_hostile_file_name_prints_safely(call, tmp_path):
    """A name with stray bytes or control characters is shown escaped, on one line."""
    path = written(tmp_path / "a\n\x1b[31m\udcff\u202e.jsonl", 2)
    code, lines = call(path)
    assert code == 5
    assert all(line.startswith("  ") for line in lines[1:])
    assert r"a\n\x1b[31m\xff\u202e.jsonl" in lines[0]
    json.loads(call("--json", path)[1][0])


def pinned(path, **changes):
    """A record whose first entry pins the papers as they are on this machine, but for `changes`."""
    papers = take_papers("primary-line", None)
    opening = pins(papers, Mode.CHECK_OFF, "A17", "primary-line", None)
    begun = {"kind": "opened", "at": at(0), "source": "station", "input": "opened"}
    with RecordFile.create(path, {**begun, **opening, **changes}) as record:
        record.seal({"kind": "closed", "at": at(1), "outcome": "not completed"})
    return path


def test_papers_that_are_the_same(call, tmp_path):
    """With --papers, the checklist, order and limits of the attempt are held against those here."""
    assert call("--papers", pinned(tmp_path / "a.jsonl"))[0] == 5


@pytest.mark.parametrize(
    ("changes", "named"),
    [
        ({"checklist_digest": "0" * 64}, "The checklist primary-line has changed"),
        ({"order_digest": "0" * 64}, "The order"),
        ({"limits_digest": "0" * 64}, "The table of limits"),
        ({"names_digest": "0" * 64}, "The table of names"),
        ({"checklist": "no-such-checklist"}, "no-such-checklist"),
    ],
)
def test_papers_that_differ(call, tmp_path, changes, named):
    """A pinned file that differs or is gone is named; without --papers the record itself holds."""
    path = pinned(tmp_path / "a.jsonl", **changes)
    code, lines = call("--papers", path)
    assert code == 1
    assert lines[0].startswith(f"BROKEN: {path}, line 1: pinned file differs. ")
    assert named in lines[0]
    assert call(path)[0] == 5


HEAD = "the head that was printed"


def swap(lines):
    return [*lines[:1], lines[2], lines[1], *lines[3:]]


def unsigned(lines):
    """A further entry that nobody signed."""
    return link({"kind": "noted", "at": at(10)}, read_line(lines[-1]).digest, 6).line


def forged(lines):
    """The sign-off with another decision, linked anew, but with the old signature."""
    fields = dict(read_line(lines[-1]).fields)
    signature = str(fields["signature"])
    content = {name: fields[name] for name in fields if name not in OWN_FIELDS} | {"decision": "not-passed"}
    return [*lines[:-1], link(content, str(fields["previous"]), 5, lambda _: signature).line]


@pytest.mark.parametrize(
    ("damage", "options", "problem", "line"),
    [
        (lambda lines: [lines[0], lines[1].replace(b"agrees", b"Agrees"), *lines[2:]], [], "edited", 2),
        (swap, [], "reordered", 2),
        (lambda lines: [lines[0], *lines[2:]], [], "removed", 2),
        (lambda lines: [*lines[:2], *lines[1:]], [], "inserted", 3),
        (lambda lines: lines[:-1], ["--open", "--head", HEAD], "tail missing", None),
        (lambda lines: lines[:-2], [], "not sealed", None),
        (lambda lines: [*lines[:-1], lines[-1][:-9]], [], "torn tail", 5),
        (lambda lines: [*lines, unsigned(lines)], [], "after the seal", 6),
        (lambda lines: [*lines[:-1], lines[-1].replace(b'"key":"', b'"key":"A')], [], "edited", 5),
        (forged, [], "signature wrong", 5),
        (lambda lines: lines, ["--keys", "no-such-folder"], "signed by an unknown key", 5),
        (lambda lines: lines, ["--papers"], "pinned file differs", 1),
        (lambda lines: [b"hello\n"], [], "not a record", 1),
        (lambda lines: [], [], "not a record", None),
    ],
)
def test_every_reason_has_its_name(call, tmp_path, damage, options, problem, line):
    """Each way in which evidence can fail has its own name and line, for people and for programs alike."""
    path = written(tmp_path / "a.jsonl", 4)
    lone_instructor(tmp_path / "keys")
    decision = {"kind": "signed off", "at": at(9), "signer": "M. Lindqvist, RN", "decision": "passed"}
    head = RecordFile.add_signed(path, decision, load_key(tmp_path / "keys", "lindqvist")).digest
    path.write_bytes(b"".join(damage(path.read_bytes().splitlines(keepends=True))))
    given = [head if option is HEAD else option for option in options]
    given += [] if "--keys" in given else ["--keys", tmp_path / "keys"]
    code, lines = call("--json", *given, path)
    verdict = json.loads(lines[0])
    assert (code, verdict["ok"], verdict["problem"], verdict["line"]) == (1, False, problem, line)
    assert verdict["why"].endswith(".")
    code, lines = call(*given, path)
    assert code == 1
    assert f": {problem}. " in lines[0]
    assert ("line" in lines[0].split(problem)[0]) == (line is not None)
