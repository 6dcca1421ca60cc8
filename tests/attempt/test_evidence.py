"""Records against a clever hand: what somebody who may write the folder can do, and what is said of it.

Whoever can write a file can make one, so an unsigned record proves nothing by itself; what is tested is that a result
follows from its entries, and that this machine remembers where each record ended.
"""

import shutil
import time
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from assistant.attempts import pins, relived
from assistant.record.entry import read_line
from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from assistant.record.verify import read_entries, verify
from tests import HEADS
from tests.attempt.program import here, process
from tests.record.crash import crashed
from tests.record.forge import as_a_person, forged, passed
from tests.record.instructors import lone_instructor

SIGNED = ["--signer", "M. Lindqvist, RN", "--reason", "Seen by me."]
BOOK = HEADS / "heads.jsonl"


@pytest.fixture(scope="module")
def failed_once(tmp_path_factory):
    """A check-off with a wrong rate, which does not pass, and the book that has seen it; made once.

    A simulated learner stands in for a person, so the record is linked without the pin that says so.
    """
    folder = tmp_path_factory.mktemp("failed")
    slip = ["--slip", "wrong-rate", "--mode", "check-off"]
    process("demo", "primary-line", *slip, "--learner", "A18", "--records", str(folder))
    path = forged(next(folder.glob("*.jsonl")), as_a_person)
    BOOK.unlink()
    first, *_, last = read_entries(path)
    for kind, entry in (("opened", first), ("sealed", last)):
        HeadBook(HEADS, None, print).note(kind, path, first["digest"], entry["sequence"], entry["digest"])
    return path, BOOK.read_bytes()


@pytest.fixture
def failed(failed_once, tmp_path):
    """A record of an attempt that was not passed, as this machine has last seen it."""
    path, book = failed_once
    HEADS.mkdir()
    BOOK.write_bytes(book)
    return Path(shutil.copy(path, tmp_path / path.name))


@pytest.fixture
def key(tmp_path):
    """Keys of this test's own, as options; the only one is an instructor's."""
    option = ["--keys", str(tmp_path / "keys")]
    lone_instructor(tmp_path / "keys")
    return option


def verified(capsys, path, *options):
    """Exit code, and what `verify` tells as JSON."""
    ended = here(capsys, "verify", "--json", *options, str(path))
    return ended.code, ended.last


def cut(path: Path, lines: int) -> Path:
    """Only its first lines, or all but the last where the number is negative."""
    path.write_bytes(b"".join(path.read_bytes().splitlines(keepends=True)[:lines]))
    return path


def other_machine():
    """Nothing was ever seen here."""
    shutil.rmtree(HEADS)


# Cut, rolled back, replaced.


def test_a_fail_is_not_turned_into_a_pass_by_cutting_it(capsys, failed, tmp_path):
    """``head -n 20 record > copy; checkoff resume copy``: refused, with what is missing and what to do."""
    copy = cut(Path(shutil.copy(failed, tmp_path / "copy.jsonl")), 20)
    content, count = copy.read_bytes(), verify(failed).count
    ended = process("resume", str(copy), "--typed", typed=b"yes\n")
    assert ended.code == 1
    assert f"{count - 20} entries are missing: it had {count} when it was last seen here, sealed at" in ended.console
    assert f"find the one of {count} entries (it was {failed.name})" in ended.console
    assert copy.read_bytes() == content
    for options in ([], ["--open"]):
        code, told = verified(capsys, copy, *options)
        assert (code, told["problem"]) == (1, "older than last seen here")
    assert verified(capsys, failed)[0] == 0


def test_the_seal_alone_cut_off(capsys, failed):
    """The last line is enough to be missed, and no instructor can close what is left."""
    ended = here(capsys, "resume", str(cut(failed, -1)), "--typed")
    assert (ended.code, "1 entry is missing" in ended.console) == (1, True)


def test_a_withdrawn_pass_does_not_come_back(capsys, failed, key):
    """Signed, withdrawn, the withdrawal cut: older than last seen, in the report first, and nothing is signed on it."""
    for decision in ("passed", "withdrawn"):
        assert here(capsys, "sign-off", str(failed), *SIGNED, "--decision", decision, *key).code == 0
    assert verified(capsys, failed, *key)[0] == 0
    cut(failed, -1)
    code, told = verified(capsys, failed, *key)
    assert (code, told["problem"]) == (1, "older than last seen here")
    report = here(capsys, "report", str(failed), "--json", *key).last
    assert report["trust"]["warnings"][0].startswith("This record is older than last seen here. 1 entry is missing")
    assert report["trust"]["whole"] is False
    assert here(capsys, "report", str(failed), *key).lines[0].startswith("CAUTION: This record is older than last seen")
    ended = here(capsys, "sign-off", str(failed), *SIGNED, "--decision", "passed", *key)
    assert (ended.code, "older than last seen here" in ended.console) == (1, True)


def test_an_older_copy_in_the_place_of_the_newer(capsys, tmp_path):
    """Stopped, copied, gone on with, and the copy put back: it can be neither resumed nor verified."""
    path = stopped(tmp_path)
    before = path.read_bytes()
    assert process("resume", str(path), "--typed", typed=b"yes\n").code == 4
    path.write_bytes(before)
    ended = process("resume", str(path), "--typed")
    assert (ended.code, "entries are missing" in ended.console) == (1, True)
    assert verified(capsys, path, "--open")[0] == 1


def test_the_end_written_anew_elsewhere(capsys, failed):
    """As many entries as were seen, but not those."""
    forged(failed, passed)
    code, told = verified(capsys, failed)
    assert (code, told["problem"]) == (1, "other than last seen here")
    assert told["lived_again"]["finding"] == "differs"


def test_the_book_changed_or_shortened(capsys, failed):
    """A line of the book edited: it does not hold, and no record does until that is seen to."""
    BOOK.write_bytes(BOOK.read_bytes().replace(b'"kind":"sealed"', b'"kind":"stopped"'))
    ended = here(capsys, "verify", str(failed))
    assert (ended.code, ended.lines[0].startswith("holds: ")) == (1, True)
    assert ended.lines[-1].startswith("BROKEN: the book of heads does not hold: ")
    assert "line 3: edited" in ended.lines[-1]
    assert "line 3: edited" in verified(capsys, failed)[1]["book"]["problems"][0]
    assert "book of heads does not hold" in here(capsys, "report", str(failed)).console
    ended = process("resume", str(cut(failed, 20)), "--typed")
    assert "Caution: the book of heads does not hold. " in ended.console


def test_lines_taken_out_of_book_and_record_are_known_to_the_copy(capsys, tmp_path, monkeypatch):
    """Whoever cuts both is told of by the copy at another place."""
    (tmp_path / "stick").mkdir()
    monkeypatch.setenv("CHECKOFF_SETTINGS", str(tmp_path / "settings.toml"))
    here(capsys, "settings", "set", "records.heads_copy", str(tmp_path / "stick"))
    path = stopped(tmp_path)
    crashed(path, b"".join(path.read_bytes().splitlines(keepends=True)[:2]))  # and the book with it
    ended = process("resume", str(path), "--typed")
    assert (ended.code, "older than last seen here" in ended.console) == (1, True)
    code, told = verified(capsys, path, "--open")
    assert (code, len(told["book"]["problems"])) == (1, 1)


def test_the_book_is_where_the_settings_say(capsys, tmp_path, monkeypatch):
    """By default in the platform's folder for user data, beside the folder of the records and not in it."""
    monkeypatch.delenv("CHECKOFF_HEADS")
    monkeypatch.setenv("CHECKOFF_SETTINGS", str(tmp_path / "settings.toml"))
    monkeypatch.setattr("platformdirs.user_data_path", lambda *_, **__: tmp_path / "data")
    demo = ["demo", "bag-change", "--records"]
    here(capsys, *demo, str(tmp_path / "records"))
    assert len((tmp_path / "data" / "heads" / "heads.jsonl").read_bytes().splitlines()) == 3
    here(capsys, "settings", "set", "records.heads", str(tmp_path / "elsewhere"))
    here(capsys, *demo, str(tmp_path / "records"))
    assert len((tmp_path / "elsewhere" / "heads.jsonl").read_bytes().splitlines()) == 3
    assert not BOOK.exists()
    assert {path.suffix or path.name for path in (tmp_path / "records").iterdir()} == {".jsonl", ".lock", "papers"}


# Results that do not follow.


def test_only_the_result_edited(capsys, failed, key):
    """One line changed and linked anew, where nobody has seen the record: named by step and field, three times over."""
    other_machine()
    forged(failed, passed)
    assert verify(failed).ok  # the chain cannot know
    code, told = verified(capsys, failed)
    assert (code, told["ok"], told["problem"], told["line"]) == (1, False, "entries and result disagree", told["count"])
    assert told["book"]["seen"] == "never seen here"
    lived = told["lived_again"]
    assert lived["finding"] == "differs"
    outcome, *others = lived["differences"]
    assert (outcome["field"], outcome["recorded"], outcome["lived"]) == ("outcome", "passed", "not passed")
    wrong = {(one["step"], one["field"]) for one in others if one["step"]}
    assert ("p-rate", "ending") in wrong
    lines = here(capsys, "verify", str(failed)).lines
    assert lines[0].startswith(f"BROKEN: {failed}, line {told['count']}: entries and result disagree. ")
    assert any("step p-rate, ending: recorded done unaided, lived again corrected by" in line for line in lines)
    report = here(capsys, "report", str(failed), "--json").last
    assert report["trust"]["warnings"][0].startswith("The result of this record does not follow from its entries")
    assert (report["outcome"], report["trust"]["whole"]) == ("not known", False)
    before = failed.read_bytes()
    for decision in ("passed", "not-passed"):
        ended = here(capsys, "sign-off", str(failed), *SIGNED, "--decision", decision, *key)
        assert (ended.code, "its entries and its result disagree" in ended.console) == (1, True)
    assert failed.read_bytes() == before


def set_in(number, **changes):
    return lambda bodies: bodies[number].update(changes)


FORGERIES = {
    "the outcome alone": (set_in(-1, outcome="passed"), "", "outcome"),
    "the points": (lambda bodies: bodies[-1]["results"].update(score_percent="100"), "", "results, score_percent"),
    "a number for a truth": (lambda bodies: bodies[-1]["results"].update(passed=1), "", "results, passed"),
    "a step left out": (lambda bodies: bodies[-1]["results"]["steps"].pop(), "", "results, steps"),
    "a step that is none": (lambda bodies: bodies[-1]["results"]["steps"].insert(0, "x"), "", "results, steps"),
    "no results": (lambda bodies: bodies[-1].pop("results"), "", "results"),
    "more than a seal says": (set_in(-1, decision="passed"), "", "decision"),
    "the time of the end": (set_in(-1, at="2026-11-25T08:00:00.000000+00:00"), "", "at"),
    "a verdict": (lambda bodies: _wrong(bodies).update(verdict="agrees"), "p-rate", "verdict"),
    "words": (lambda bodies: _wrong(bodies).update(words="83.3 mL/h"), "p-rate", ""),
    "what words mean": (lambda bodies: _wrong(bodies)["meaning"].update(value="83.3"), "p-rate", "meaning"),
    "who spoke": (set_in(3, source="instructor"), None, "source"),
    "a field more": (set_in(3, overruled="yes"), None, "overruled"),
    "code named where nobody names it": (set_in(3, program_digest="ab" * 32), None, "program_digest"),
    "a kind that nobody writes": (set_in(3, kind="noted"), None, "kind"),
    "an answer taken out": (lambda bodies: bodies.remove(_wrong(bodies)), None, ""),
    "an answer said twice": (lambda bodies: bodies.insert(3, dict(bodies[3])), None, ""),
    "an end before the end": (lambda bodies: bodies.__delitem__(slice(20, -1)), "", "seal"),
    "another mode": (set_in(0, mode="practice"), None, ""),
    "no mode": (set_in(0, mode="guessing"), "", "mode"),
    "a kind that is no text": (set_in(3, kind=[]), None, "kind"),
    "a time without zone": (set_in(3, at="2026-11-25T08:00:00"), None, "at"),
    "the calendar's end": (set_in(3, at="9999-12-31T23:59:59.999999+00:00"), None, ""),
    "no steady clock": (lambda bodies: bodies[5].pop("ticks"), None, "ticks"),
    "a steady clock that runs backwards": (set_in(6, ticks="1.0"), None, "ticks"),
    "a steady clock that is none": (set_in(6, ticks="NaN"), None, "ticks"),
    "an hour put in": (lambda bodies: _later(bodies, 10, 3600), None, ""),
    "an hour taken out": (lambda bodies: _later(bodies, 10, -3600), None, ""),
    "a simulated learner made a person": (lambda bodies: _as_it_ran(bodies), None, "at"),
    "something deeply nested": (lambda bodies: bodies[3].update(words=_nested(300)), None, ""),
    "closed as passed": (set_in(-1, kind="closed", outcome="passed"), "", "outcome"),
}


def _later(bodies, place, seconds):
    """Every time from this place on, shifted; the attempt itself does not depend on it."""
    for body in bodies[place:]:
        body["at"] = (datetime.fromisoformat(body["at"]) + timedelta(seconds=seconds)).isoformat(
            timespec="microseconds"
        )


def _as_it_ran(bodies):
    """The steady clock as it really was: a simulated attempt of many minutes takes less than a second."""
    for place, body in enumerate(bodies):
        body["ticks"] = f"{500 + place / 100:.6f}"


def _nested(depth):
    value = "x"
    for _ in range(depth):
        value = [value]
    return value


def _wrong(bodies):
    """The entry in which a wrong rate was held."""
    return next(body for body in bodies if body.get("step") == "p-rate" and body.get("verdict") == "does not agree")


@pytest.mark.parametrize(("change", "step", "field"), FORGERIES.values(), ids=list(FORGERIES))
def test_what_does_not_follow_is_named(capsys, failed, change, step, field):
    """Each change, linked anew throughout, is told by step and field, and does not verify."""
    other_machine()
    forged(failed, change)
    assert verify(failed).ok
    code, told = verified(capsys, failed)
    assert (code, told["problem"]) == (1, "entries and result disagree")
    first = told["lived_again"]["differences"][0]
    assert step in (None, first["step"])
    assert field in ("", first["field"])


def test_a_withdrawal_is_taken_even_so(capsys, failed, key, monkeypatch):
    """Whoever was deceived into signing can take it back."""
    other_machine()
    forged(failed, passed)
    with monkeypatch.context() as patched:
        patched.setattr(relived, "_differences", lambda *_: iter(()))  # signed before anybody lived it again
        assert here(capsys, "sign-off", str(failed), *SIGNED, "--decision", "passed", *key).code == 0
    assert here(capsys, "sign-off", str(failed), *SIGNED, "--decision", "withdrawn", *key).code == 0


# What is no failure of the record.


def test_another_version_is_not_called_a_forgery(capsys, failed, monkeypatch, key):
    """An attempt that other code judged, and that comes out otherwise here: said so, exit code 0, and signable."""
    other_machine()
    before = pins.program_pins()
    now = before | {"program_digest": "ab" * 32}
    for module in (pins, relived):
        monkeypatch.setattr(module, "program_pins", lambda: now)
    assert verified(capsys, failed)[1]["lived_again"]["finding"] == "same"
    forged(failed, passed)
    code, told = verified(capsys, failed)
    assert (code, told["ok"], told["lived_again"]["finding"]) == (5, True, "judged by another version")
    assert f"({before['program']}, code {before['program_digest'][:12]})" in told["lived_again"]["why"]
    trust = here(capsys, "report", str(failed), "--json").last["trust"]
    assert trust["warnings"][0].startswith(
        "The result was not confirmed by living the attempt again (judged by another"
    )
    assert (trust["whole"], trust["notes"]) == (True, ["Book of heads: never seen here."])
    ended = here(capsys, "sign-off", str(failed), *SIGNED, "--decision", "not-passed", *key)
    assert (ended.code, "was not confirmed by living the attempt again (judged by another" in ended.console) == (
        0,
        True,
    )


def test_a_record_from_before_code_was_pinned(capsys, failed):
    """It names no code, so no code can deny it."""
    other_machine()
    forged(failed, lambda bodies: (bodies[0].pop("program_digest"), passed(bodies)))
    code, told = verified(capsys, failed)
    assert (code, told["lived_again"]["finding"]) == (5, "judged by another version")
    assert "code not pinned" in told["lived_again"]["why"]


@pytest.mark.parametrize("pin", ["checklist_digest", "order_digest"])
def test_papers_that_are_no_longer_at_hand(capsys, failed, pin):
    """Changed since, or gone: it could not be lived again, which is said and is no failure of the record."""
    other_machine()
    forged(failed, set_in(0, **{pin: "0" * 64}))
    code, told = verified(capsys, failed)
    assert (code, told["ok"], told["lived_again"]["finding"]) == (5, True, "could not be lived again")
    assert pin.removesuffix("_digest") in told["lived_again"]["why"]
    assert any("could not be lived again" in line for line in here(capsys, "verify", str(failed)).lines)
    notes = here(capsys, "report", str(failed), "--json").last["trust"]["notes"]
    assert any("could not be lived again" in note for note in notes)


@pytest.mark.parametrize("pin", ["limits_digest", "names_digest", "pairs_digest", "shelf_digest"])
def test_a_table_that_has_changed_since(capsys, failed, pin):
    """Where it changes nothing, the result is confirmed, and it is told; where something differs, it may be why."""
    other_machine()
    forged(failed, set_in(0, **{pin: "0" * 64}))
    code, told = verified(capsys, failed)
    assert (code, told["ok"], told["lived_again"]["finding"]) == (5, True, "same")
    assert pin.removesuffix("_digest") in told["lived_again"]["why"]
    forged(failed, passed)
    code, told = verified(capsys, failed)
    assert (code, told["lived_again"]["finding"]) == (5, "could not be lived again")
    assert pin.removesuffix("_digest") in told["lived_again"]["why"]


def test_a_record_from_another_machine(capsys, failed):
    """Never seen here; whole, and lived again with the same result."""
    other_machine()
    code, told = verified(capsys, failed)
    assert (code, told["book"]["seen"], told["lived_again"]["finding"]) == (5, "never seen here", "same")
    assert told["claim"].endswith("whoever could write this file could have made it.")


# Honest histories.


def stopped(folder: Path) -> Path:
    """A check-off that its learner stopped."""
    ended = process(
        *("run", "primary-line", "--typed", "--json", "--mode", "check-off", "--records", str(folder / "records")),
        typed=b"yes\nwhere am i\nstop\nyes\n",
    )
    assert ended.code == 4
    return Path(ended.last["record"])


def holds(capsys, path, *key):
    """No alarm: whole or open, lived again where it is sealed, and its standing."""
    code, told = verified(capsys, path, "--open", *key)
    proven = told["book"]["seen"] == "as last seen here" or told["proven"] == "signed"
    assert (code, told["book"]["problems"]) == (0 if proven else 5, []), told
    assert told["lived_again"] is None or told["lived_again"]["finding"] == "same", told
    report = here(capsys, "report", str(path), "--json", *key).last
    assert not any("last seen" in warning or "lived again" in warning for warning in report["trust"]["warnings"])
    assert report["short_head"] == told["short_head"]
    return told["book"]["seen"]


def test_an_honest_history_raises_no_alarm(capsys, tmp_path, key):
    """Stopped, moved, renamed, resumed, stopped again, closed, signed, withdrawn, its sound erased, copied."""
    path = stopped(tmp_path)
    assert holds(capsys, path) == "as last seen here"
    (tmp_path / "moved").mkdir()
    path = path.rename(tmp_path / "moved" / "another name.jsonl")
    assert holds(capsys, path) == "as last seen here"
    ended = process("resume", str(path), "--typed", "--json", typed=b"yes\n")
    assert ended.code == 4
    assert holds(capsys, path) == "as last seen here"
    assert ended.last["head"] == verify(path).head
    assert here(capsys, "verify", "--open", "--head", ended.last["short_head"], str(path)).code == 0
    assert f"Short head: {ended.last['short_head']}" in ended.console
    signed = ["sign-off", str(path), *SIGNED, *key, "--decision"]
    assert here(capsys, *signed, "not-passed", "--close").code == 0
    assert here(capsys, *signed, "withdrawn").code == 0
    assert holds(capsys, path, *key) == "as last seen here"
    RecordFile.erase_sound(path, "asked for", HeadBook(HEADS, None, print))
    assert holds(capsys, path, *key) == "as last seen here"
    copy = Path(shutil.copy(path, tmp_path / "copy.jsonl"))
    assert holds(capsys, copy, *key) == "as last seen here"
    lines = here(capsys, *signed, "not-passed").lines
    assert lines[-1] == f"Short head {verified(capsys, path, *key)[1]['short_head']}."
    kinds = [read_line(line).fields["kind"] for line in BOOK.read_bytes().splitlines(keepends=True)]
    assert kinds == [
        *("book opened", "opened", "stopped", "resumed", "stopped", "sealed", "signed", "signed"),
        *("sound erased", "signed"),
    ]


def test_a_whole_attempt_by_a_real_run(capsys, tmp_path):
    """Typed to its end, and lived again the same."""
    model = here(capsys, "demo", "bag-change", "--json", "--records", str(tmp_path / "model")).last["record"]
    typed = "\n".join(str(entry["words"]) for entry in read_entries(model) if entry["kind"] == "typed").encode()
    ended = process(
        *("run", "bag-change", "--typed", "--json", "--short-waits", "--records", str(tmp_path)), typed=typed
    )
    assert ended.last["outcome"] == "passed"
    assert holds(capsys, Path(ended.last["record"])) == "as last seen here"


@pytest.mark.parametrize("torn", [b"", b'{"at":"2026-11-25', b"\0" * 100])
def test_what_a_crash_leaves_raises_no_alarm(capsys, failed, torn):
    """Killed after entries that the book has not seen, its last line torn: resumed, and the tail is set aside."""
    lines = failed.read_bytes().splitlines(keepends=True)
    crashed(failed, b"".join(lines[:12]) + torn)
    code, told = verified(capsys, failed, "--open")
    assert told["book"]["seen"] == "longer than last seen here"
    assert (code, told["problem"]) == ((1, "torn tail") if torn else (5, "not sealed"))
    ended = process("resume", str(failed), "--typed", typed=b"")
    assert ended.code == 4, ended.console
    assert holds(capsys, failed) == "as last seen here"


def test_a_torn_book_raises_no_alarm(capsys, failed):
    """Power failed while the book was written: the record is longer than the book knows, and that is all."""
    BOOK.write_bytes(BOOK.read_bytes()[:-30])
    assert holds(capsys, failed) == "longer than last seen here"


def test_going_on_with_other_code_is_told(capsys, tmp_path, monkeypatch):
    """An attempt that began with other code says in its entry `resumed` which code judged from there on."""
    path = stopped(tmp_path)
    other = pins.program_pins() | {"program_digest": "ab" * 32}
    forged(path, lambda bodies: bodies[0].update(other))
    assert process("resume", str(path), "--typed", typed=b"yes\n").code == 4
    (resumed,) = [entry for entry in read_entries(path) if entry["kind"] == "resumed"]
    assert resumed["program_digest"] == pins.program_pins()["program_digest"]
    assert process("resume", str(path), "--typed", typed=b"yes\n").code == 4
    assert [entry.get("program_digest", "") for entry in read_entries(path) if entry["kind"] == "resumed"][1] == ""


# Cost.


def test_five_hundred_entries_are_lived_again_in_little_time(tmp_path, capsys):
    """From start to verdict in a process of its own; measured 0.8 s, the bar is 1.5 s, the limit here is looser."""
    repeats = b"where am i\n" * 500
    ended = process(
        *("run", "primary-line", "--typed", "--json", "--records", str(tmp_path)),
        typed=b"yes\n" + repeats + b"stop\nclose the attempt\n",
    )
    path = ended.last["record"]
    assert verify(path).count > 500
    began = time.perf_counter()
    done = process("verify", "--json", path)
    took_s = time.perf_counter() - began
    assert done.last["lived_again"]["finding"] == "same"
    assert took_s < 6
