"""Sound beside a record: kept only after a yes, proven by the chain, erased for good and on the record."""

import hashlib
import json
import queue
import subprocess
import sys
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
import soundfile

from assistant.adapters.sound_keeper import SoundKeeper
from assistant.adapters.stepping_clock import SteppingClock
from assistant.attempts.papers import take_papers
from assistant.attempts.pins import pins
from assistant.attempts.record_place import RecordPlace
from assistant.checklist.load import load
from assistant.cli.screen import JsonScreen
from assistant.guide.events import Heard, NotUnderstood
from assistant.guide.guide import KEEP_SOUND
from assistant.guide.progress import Mode
from assistant.record.chain import Problem
from assistant.record.entry import link, read_line
from assistant.record.file import RecordFile
from assistant.record.paths import sound_folder
from assistant.record.verify import read_entries, verify
from assistant.station import Station
from tests import spoken_words, virtual_sound
from tests.attempt.program import here
from tests.record.examples import at, body, opening

START = datetime(2026, 11, 25, 8, 0, tzinfo=UTC)


def tone(hz):
    """A third of a second of a tone, as a recogniser gets it."""
    time_s = np.arange(5_333) / 16_000
    return (8_000 * np.sin(2 * np.pi * hz * time_s)).astype("<i2").tobytes()


class Speaker:
    """Utterances with their sound, in turn; then silence for good."""

    def __init__(self, clock, utterances):
        self._clock = clock
        self._left = list(utterances)

    def next_event(self, due):
        words = self._left.pop(0)
        sound = tone(300 + 20 * len(self._left))
        if words is None:
            return NotUnderstood(self._clock.now(), "tiny.en", sound=sound)
        return Heard(self._clock.now(), words, ear="tiny.en", sound=sound)


def lived(folder, utterances):
    """The record of a spoken attempt by the real station, guide, keeper and record."""
    papers = take_papers("primary-line", None)
    pinned = pins(papers, Mode.PRACTICE, "A17", "primary-line", None) | {"sound": KEEP_SOUND}
    place = RecordPlace(folder, "primary-line", "A17", START)
    clock = SteppingClock(START)
    station = Station(
        papers.guide(Mode.PRACTICE, pinned),
        place.create,
        clock,
        JsonScreen(),
        queue.SimpleQueue(),
        source=Speaker(clock, utterances),
        sounds=SoundKeeper(lambda: place.path),
    )
    station.run()
    return place.path


@pytest.fixture
def record(tmp_path):
    """An attempt with consent, stopped; four utterances are kept."""
    return lived(tmp_path, ["yes", "yes", None, "stop", "yes"])


def test_sound_is_kept_after_a_yes_and_not_before(record):
    """The answer that agrees is not kept; what follows is, sample for sample, and each entry names its file."""
    entries = read_entries(record)
    heard = [entry for entry in entries if entry["source"] == "voice"]
    assert heard[0]["consent"] == "given"
    assert [entry.get("sound", {}).get("file") for entry in heard] == [
        None, "0001.flac", "0002.flac", "0003.flac", "0004.flac",
    ]  # fmt: skip
    for number, entry in enumerate(heard[1:], 1):
        samples, rate_hz = soundfile.read(sound_folder(record) / entry["sound"]["file"], dtype="int16")
        assert (samples.tobytes(), rate_hz) == (tone(300 + 20 * (4 - number)), 16_000)
        assert entry["sound"]["seconds"] == "0.33"
    assert verify(record).problem is Problem.NOT_SEALED
    assert {path.stat().st_mode & 0o777 for path in sound_folder(record).iterdir()} == {0o600}


@pytest.mark.parametrize("answers", [["no", "yes", "stop", "yes"], ["stop", "yes"]])
def test_without_a_yes_nothing_is_kept(tmp_path, answers):
    """A no, or no answer at all: no file, no folder, no entry that names one."""
    path = lived(tmp_path, answers)
    assert not sound_folder(path).exists()
    assert not any("sound" in entry for entry in read_entries(path)[1:])


def test_full_disk_costs_the_sound_and_not_the_answer(tmp_path, monkeypatch):
    """Where a sound cannot be written, its entry says why, and the attempt goes on."""
    monkeypatch.setattr(SoundKeeper, "_write", lambda *_: (_ for _ in ()).throw(OSError(28, "No space left on device")))
    path = lived(tmp_path, ["yes", "yes", "stop", "yes"])
    kept = [entry["sound"] for entry in read_entries(path)[2:]]
    assert kept == [{"not_kept": "No space left on device"}] * 3
    assert verify(path).intact


def test_erased_sound_is_erased_and_said_to_be(record, capsys):
    """The files go, the words stay, and the verdict says erased instead of missing."""
    words = [entry.get("words") for entry in read_entries(record)]
    ended = here(capsys, "erase-sound", str(record))
    assert (ended.code, ended.lines) == (0, [f"{record}: 4 sound files erased."])
    assert not sound_folder(record).exists()
    verdict = verify(record)
    assert verdict.problem is Problem.NOT_SEALED
    assert verdict.notes[0].startswith("Its sound (4 in all) was erased on purpose at ")
    entries = read_entries(record)
    assert [entry.get("words") for entry in entries[:-1]] == words
    assert (entries[-1]["kind"], entries[-1]["files"], entries[-1]["reason"]) == ("sound erased", 4, "asked for")
    assert here(capsys, "erase-sound", str(record)).lines == [f"{record}: no sound is kept."]
    assert here(capsys, "resume", str(record), "--typed").code == 4, "the attempt can still be taken up"


def test_lost_and_changed_sound_is_named(record, capsys):
    """A file that is gone, or another one in its place, breaks the evidence at its line."""
    file = sound_folder(record) / "0002.flac"
    content = file.read_bytes()
    heard = [entry for entry in read_entries(record) if entry["source"] == "voice" and "sound" in entry]
    line = next(entry["sequence"] for entry in heard if entry["sound"]["file"] == file.name)
    for change, problem in (
        (lambda: file.write_bytes(content[:-1]), Problem.SOUND_DIFFERS),
        (lambda: (file.unlink(), file.symlink_to(file.with_name("0001.flac"))), Problem.SOUND_DIFFERS),
        (lambda: (file.unlink(), file.mkdir()), Problem.SOUND_DIFFERS),
        (file.rmdir, Problem.SOUND_MISSING),
    ):
        change()
        verdict = verify(record)
        assert (verdict.problem, verdict.line, verdict.intact) == (problem, line, True)
        assert here(capsys, "verify", "--open", str(record)).code == 1
        assert f"is not intact (line {line}: {problem})" in "\n".join(here(capsys, "report", str(record)).lines)
    file.write_bytes(content)
    assert verify(record).problem is Problem.NOT_SEALED


def sealed_with_sound(path, file="0001.flac", content=b"fLaC", days_old=0):
    """A sealed record that names one file, which is there."""
    begun = (datetime.now(UTC) - timedelta(days=days_old)).isoformat(timespec="microseconds")
    sound = {"file": file, "digest": hashlib.sha256(content).hexdigest(), "seconds": "1.00"}
    with RecordFile.create(path, {**opening(), "at": begun}) as record:
        record.append({**body(2), "sound": sound})
        record.seal({"kind": "finished", "at": at(9), "outcome": "passed"})
    sound_folder(path).mkdir()
    (sound_folder(path) / "0001.flac").write_bytes(content)
    return path


def test_erasure_behind_a_seal_needs_no_key(tmp_path, capsys):
    """A learner's wish does not wait for an instructor's key; the sealed record still holds."""
    path = sealed_with_sound(tmp_path / "a.jsonl")
    (sound_folder(path) / "notes.txt").write_text("Not ours.", encoding="utf-8")
    assert verify(path).ok
    assert here(capsys, "erase-sound", str(path), "--json").last == {"file": str(path), "erased": 1}
    assert verify(path).ok
    assert here(capsys, "verify", str(path)).code == 0
    assert [left.name for left in sound_folder(path).iterdir()] == ["notes.txt"], "only sound is erased"


@pytest.mark.parametrize(
    "change",
    [
        {"kind": "noted"},
        {"decision": "passed"},
        {"reason": "The learner passed."},
        {"files": "many"},
        {"files": True},
        {"seal": {"count": 4, "head": "0" * 64}},
    ],
)
def test_nothing_but_an_erasure_stands_unsigned_behind_a_seal(tmp_path, change):
    """What nobody signed can say nothing else behind a seal, whoever writes it."""
    path = sealed_with_sound(tmp_path / "a.jsonl")
    erasure = {"kind": "sound erased", "at": at(10), "files": 1, "reason": "asked for"}
    head = read_line(path.read_bytes().splitlines(keepends=True)[-1])
    whole = path.read_bytes()
    path.write_bytes(whole + link(erasure, head.digest, 4).line)
    assert verify(path).ok
    path.write_bytes(whole + link(erasure | change, head.digest, 4).line)
    assert verify(path).problem is Problem.AFTER_SEAL


@pytest.mark.parametrize("name", ["../a.jsonl", "/etc/passwd", "0001.flac/../0001.flac", "1.flac", "0001.wav", ""])
def test_a_hostile_record_leads_to_no_other_file(tmp_path, name):
    """Only plain names inside the record's own folder are looked at."""
    path = sealed_with_sound(tmp_path / "a.jsonl", file=name)
    verdict = verify(path)
    assert (verdict.problem, verdict.line) == (Problem.SOUND_DIFFERS, 2)


def test_due_sound_is_erased_by_the_setting(tmp_path, capsys, monkeypatch):
    """Older than the setting allows: erased; younger sound, and records without any, stay as they are."""
    records = tmp_path / "records"
    records.mkdir()
    monkeypatch.setenv("CHECKOFF_SETTINGS", str(tmp_path / "settings.toml"))
    here(capsys, "settings", "set", "records.folder", str(records))
    here(capsys, "settings", "set", "records.sound_days", "14")
    old = sealed_with_sound(records / "old.jsonl", days_old=15)
    young = sealed_with_sound(records / "young.jsonl", days_old=13)
    before = young.read_bytes()
    assert here(capsys, "erase-sound", "--due").lines == [f"{old}: 1 sound file erased."]
    assert read_entries(old)[-1]["reason"] == "past its time"
    assert (verify(old).ok, verify(young).ok, young.read_bytes()) == (True, True, before)
    assert sound_folder(young).is_dir()
    assert here(capsys, "erase-sound", "--due").lines == ["No sound is due to be erased."]
    assert here(capsys, "erase-sound", "--due", "--days", "0").lines == [f"{young}: 1 sound file erased."]


def test_crash_between_erasing_and_telling_is_made_up_for(tmp_path, capsys):
    """The files are gone and the entry is not there yet: erasing again tells it."""
    path = sealed_with_sound(tmp_path / "a.jsonl")
    (sound_folder(path) / "0001.flac").unlink()
    assert verify(path).problem is Problem.SOUND_MISSING
    assert here(capsys, "erase-sound", str(path)).code == 0
    assert verify(path).ok


@pytest.mark.parametrize(
    ("arguments", "code", "told"),
    [
        ([], 2, "Which sound is to be erased?"),
        (["x.jsonl", "--due"], 2, "Which sound is to be erased?"),
        (["x.jsonl", "--days", "3"], 2, "go with --due"),
        (["--due", "--days", "-1"], 2, "--days cannot be negative"),
        (["--due", "--records", "/no/such/folder"], 1, "There is no folder"),
        (["/no/such/record.jsonl"], 1, "cannot be read"),
    ],
)
def test_what_cannot_be_erased_is_said(capsys, arguments, code, told):
    """One sentence, and the exit code of wrong usage or of failure."""
    ended = here(capsys, "erase-sound", *arguments)
    assert ended.code == code
    assert told in ended.console


def test_a_record_in_use_keeps_its_sound(tmp_path, capsys):
    """While the attempt goes on its files are being written: nothing is erased."""
    path = tmp_path / "a.jsonl"
    sealed_with_sound(path)
    open_path = tmp_path / "open.jsonl"
    with RecordFile.create(open_path, opening()):
        sound_folder(open_path).mkdir()
        (sound_folder(open_path) / "0001.flac").write_bytes(b"fLaC")
        ended = here(capsys, "erase-sound", str(open_path), str(path))
        assert ended.code == 1
        assert "in use" in ended.console
        assert (sound_folder(open_path) / "0001.flac").exists()
    assert not sound_folder(path).exists(), "the other one is erased all the same"


def test_keep_sound_needs_a_voice(capsys):
    """Typed lines make no sound."""
    ended = here(capsys, "run", "primary-line", "--typed", "--keep-sound")
    assert ended.code == 2
    assert "makes no sound" in ended.console


_MISSING = virtual_sound.missing_programs() + spoken_words.missing_programs()


@pytest.mark.sound
@pytest.mark.slow
@pytest.mark.skipif(bool(_MISSING), reason=f"not installed: {', '.join(_MISSING)}")
@pytest.mark.timeout(240)
def test_a_spoken_yes_keeps_what_the_microphone_heard(tmp_path):
    """By voice alone: the question, a spoken yes, and from then on each utterance is kept as it was heard."""
    with virtual_sound.virtual_sound() as sound:
        answer = load("primary-line").steps[0].expect.right
        file = sound.folder / "answer.wav"
        command = [
            *(sys.executable, "-m", "assistant", "run", "primary-line", "--voice", "--keep-sound", "--json"),
            *("--ear", "bundled", "--records", str(tmp_path)),
        ]
        pipe = subprocess.PIPE
        with subprocess.Popen(
            command, env=sound.environment, stdin=pipe, stdout=pipe, stderr=subprocess.DEVNULL, text=True
        ) as running:
            for wanted, words in (("May I keep the sound", "yes"), ("The sound is kept", answer), ("Step 2 of", "")):
                wait_for(running.stdout, "say", wanted)
                if words:
                    wait_for(running.stdout, "listening", "True")
                    spoken_words.write_words("en-us", words, file)
                    sound.play(file)
            running.communicate("stop\nyes\n", timeout=60)
    (record,) = tmp_path.glob("*.jsonl")
    answers = [entry for entry in read_entries(record) if "words" in entry]
    assert [(entry["source"], entry["words"]) for entry in answers[:2]] == [("voice", "yes"), ("voice", answer)]
    assert ["sound" in entry for entry in answers] == [False, True, False, False]
    samples, rate_hz = soundfile.read(sound_folder(record) / answers[1]["sound"]["file"])
    assert rate_hz == 16_000
    assert 0.3 < len(samples) / rate_hz < 4
    assert np.abs(samples).max() > 0.05, "it is silent"
    assert verify(record).problem is Problem.NOT_SEALED


def wait_for(lines, name, wanted):
    """Read the program's lines up to the one whose field `name` tells what is wanted."""
    for line in lines:
        if wanted in str(json.loads(line).get(name, "")):
            return
    raise AssertionError(f"nothing told {wanted!r}")
