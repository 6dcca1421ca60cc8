"""The verb `report`: what it prints and writes, its exit codes, what it refuses."""

import json
import stat

import pytest

from tests.record.instructors import lone_instructor
from tests.report.attempts import attempt, changed, copied, run, unsealed, written

TENFOLD = ("primary-line", "--mode", "check-off", "--slip", "tenfold", "--seed", "2")


@pytest.fixture
def record(tmp_path):
    return attempt(tmp_path, *TENFOLD)


def test_text_tells_it_all(record):
    """On the screen: verdict on the record, result, what to practise, numbers with their working, steps."""
    code, out, _ = run("report", record)
    assert code == 0
    lines = out.splitlines()
    assert any(line.startswith("The record is whole: ") for line in lines)
    assert (
        "Result: not passed: a wrong answer (tenfold) at step 24. Completed, and not passed by the checklist's rule."
    ) in lines
    for words in (
        "833 mL/h",
        "749.7 mL/h too high",
        "slip: tenfold",
        "1,000 mL ÷ 12 h",
        "To practise:",
        "Critical steps:",
    ):
        assert words in out, words
    assert lines[-1].startswith("A licensed practitioner decides")


def test_a_warning_is_the_first_line(record):
    """A record that is not whole says so before anything else, on the screen and on the console with a file."""
    code, out, _ = run("report", unsealed(record))
    assert code == 0
    assert out.startswith("CAUTION: This record is not sealed")
    _, _, console = run("report", record, "-o", record.with_suffix(".html"))
    assert console.startswith("Caution: This record is not sealed")


@pytest.mark.parametrize("kind", ["html", "pdf", "csv", "json"])
def test_a_file_of_each_kind(record, kind):
    """The file is written, readable by its owner only, and replaces an older one whole."""
    target = record.with_name(f"report.{kind}")
    target.write_text("old", encoding="utf-8")
    code, out, console = run("report", record, "-o", target)
    assert (code, out) == (0, "")
    assert f"Report: {target}" in console
    assert target.stat().st_size > 5_000
    assert stat.S_IMODE(target.stat().st_mode) == 0o600
    assert not list(record.parent.glob(".checkoff-*"))


def test_brief_leaves_the_entries_out(record):
    """The list of entries is the only difference."""
    whole = json.loads(run("report", record, "--json")[1])
    brief = json.loads(run("report", record, "--json", "--brief")[1])
    assert whole["happenings"]
    assert brief == whole | {"happenings": []}


def test_the_schema_is_published():
    """`--schema` needs no record."""
    code, out, _ = run("report", "--schema")
    assert code == 0
    assert json.loads(out)["$schema"].endswith("2020-12/schema")


REFUSED = [
    # arguments after the record's name, exit code, words of the sentence
    (["-o", "report.docx"], 2, 'cannot be a ".docx" file'),
    (["-o", "report"], 2, "End the name with .html, .pdf, .csv, .json."),
    (["--xapi", "-o", "report.html"], 2, "written as JSON"),
    (["--xapi", "--xapi-home", "here"], 2, "must be an address"),
    (["-o", "no-such-folder/report.html"], 1, "cannot be written: No such file or directory"),
]


@pytest.mark.parametrize(("arguments", "code", "words"), REFUSED)
def test_what_is_refused(record, monkeypatch, arguments, code, words):
    """One sentence with a remedy, the right exit code, nothing written."""
    monkeypatch.chdir(record.parent)
    before = sorted(record.parent.iterdir())
    found, out, console = run("report", record, *arguments)
    assert (found, out) == (code, "")
    assert words in console
    assert "Traceback" not in console
    assert sorted(record.parent.iterdir()) == before


def test_a_report_never_replaces_its_record(tmp_path):
    """Not even where the record has an ending that a report could have."""
    record = attempt(tmp_path, *TENFOLD, name="attempt.json")
    before = record.read_bytes()
    code, _, console = run("report", record, "-o", record)
    assert code == 2
    assert "would replace its own record" in console
    assert record.read_bytes() == before


def test_no_record_is_wrong_usage():
    """The verb alone asks which record."""
    code, _, console = run("report")
    assert code == 2
    assert "Which record?" in console


@pytest.mark.parametrize("content", [b"", b"hello\n", b"{}\n", b"\x00" * 100])
def test_a_file_that_is_no_record(tmp_path, content):
    """Nothing in it can be reported: exit code 1 and one sentence."""
    path = tmp_path / "x.jsonl"
    path.write_bytes(content)
    code, out, console = run("report", path)
    assert (code, out) == (1, "")
    assert "Nothing in it can be reported" in console


def test_a_record_is_only_read(record):
    """Reporting changes neither the record nor its folder."""
    before = (record.read_bytes(), record.stat().st_mtime_ns, sorted(record.parent.iterdir()))
    assert run("report", record)[0] == 0
    assert run("report", changed(copied(record, record.with_name("c.jsonl"))))[0] == 1
    record.with_name("c.jsonl").unlink()
    assert (record.read_bytes(), record.stat().st_mtime_ns, sorted(record.parent.iterdir())) == before


def test_the_instructors_decision_counts(record, tmp_path):
    """Signed, withdrawn, by a known key or a stranger's: the report tells who decided what and whether we know them."""
    keys = ["--keys", tmp_path / "keys"]
    lone_instructor(tmp_path / "keys")
    sign = ("sign-off", record, "--key", "lindqvist", "--signer", "M. Lindqvist, RN", *keys)
    assert run(*sign, "--decision", "not-passed", "--reason", "Rate wrong at first.", "--rating", "assisted")[0] == 0
    signed = json.loads(run("report", record, "--json", *keys)[1])
    assert signed["decision"].startswith("Signed off as not passed by M. Lindqvist, RN on ")
    assert "signed with the key of M. Lindqvist, RN" in signed["decision"]
    assert "Rated assisted (Bondy 1983)" in signed["decision"]
    assert signed["decisions"][0]["key_name"] == "M. Lindqvist, RN"
    assert signed["trust"]["whole"]
    stranger = json.loads(run("report", record, "--json", "--keys", tmp_path / "nobody")[1])
    assert "not an instructor's" in stranger["trust"]["warnings"][0]
    assert not stranger["trust"]["whole"]
    assert stranger["decision"] == "No instructor has signed this attempt off yet."
    assert (stranger["decisions"][0]["counts"], signed["decisions"][0]["counts"]) == (False, True)
    assert run(*sign, "--decision", "withdrawn", "--reason", "Wrong learner.")[0] == 0
    assert json.loads(run("report", record, "--json", *keys)[1])["decision"].startswith("The sign-off was withdrawn")


def test_an_overruled_step_says_so(record, tmp_path):
    """What the record found stays; what the instructor decided stands beside it."""
    keys = ["--keys", tmp_path / "keys"]
    lone_instructor(tmp_path / "keys")
    over = ("--decision", "overruled", "--step", "p-rate", "--verdict", "done unaided", "--reason", "Noise in the lab.")
    assert run("sign-off", record, "--key", "lindqvist", "--signer", "M. Lindqvist", *keys, *over)[0] == 0
    steps = {line["id"]: line for line in json.loads(run("report", record, "--json", *keys)[1])["steps"]}
    assert steps["p-rate"]["ending"] == "corrected by the learner"
    assert "overruled by M. Lindqvist: done unaided. Reason: Noise in the lab." in steps["p-rate"]["details"]


def test_an_unknown_kind_of_entry_is_listed_plainly(tmp_path):
    """An entry that this program knows nothing of is shown with its fields."""
    from assistant.record.file import RecordFile
    from tests.report.attempts import at

    path = tmp_path / "attempt.jsonl"
    with RecordFile.create(path, {"kind": "opened", "at": at(0), "learner": "A17"}) as record:
        record.append({"kind": "weather", "at": at(1), "sky": "grey", "wind": {"from": "west"}})
    happening = json.loads(run("report", path, "--json")[1])["happenings"][1]
    assert happening["kind"] == "weather"
    assert happening["details"] == ["sky: grey", "wind: from: west"]


def test_odd_entries_break_nothing(tmp_path):
    """A record by another hand may hold anything in any field: a report comes, no traceback."""
    for number, words in enumerate(("", "NaN", "-1", "∞")):
        code, out, _ = run("report", written(tmp_path / f"{number}.jsonl", words), "--json")
        assert code == 0
        assert json.loads(out)["form"] == "1"
