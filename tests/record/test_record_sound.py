"""Sound kept beside a record: what entries say of it, whether it is still there and the same, its erasure."""

import hashlib
from datetime import UTC, datetime

import pytest

from assistant.errors import RecordError
from assistant.record.chain import Problem
from assistant.record.entry import ERASED
from assistant.record.file import RecordFile
from assistant.record.paths import sound_folder
from assistant.record.sound import KeptSound, SoundTrail, erase_files, has_sound, kept_sound
from assistant.record.verify import read_entries, verify
from tests.record.examples import opening, written

CONTENT = b"fLaC" * 300_000
"""More than is read in one go."""


@pytest.fixture
def record(tmp_path):
    """The path of a record with three sounds beside it."""
    path = tmp_path / "attempt.jsonl"
    sound_folder(path).mkdir()
    for number in (1, 2, 3):
        (sound_folder(path) / f"000{number}.flac").write_bytes(CONTENT + bytes([number]))
    return path


def entry(number: int, **more: object) -> dict[str, object]:
    """An entry that names the sound of this number."""
    digest = hashlib.sha256(CONTENT + bytes([number])).hexdigest()
    return {"kind": "heard", "sound": {"file": f"000{number}.flac", "digest": digest, **more}}


def trail(record, *entries):
    """What following these entries from line 1 on finds: missing, differs, there, erased."""
    found = SoundTrail(record)
    for line, taken in enumerate(entries, 1):
        found.take(line, taken)
    return found.missing, found.differs, found.there, found.erased


@pytest.mark.parametrize(
    "sound", [None, "0001.flac", {}, {"file": "0001.flac"}, {"digest": "d"}, {"file": 1, "digest": "d"}]
)
def test_an_entry_that_names_no_sound(sound):
    """Both the file and its digest are needed, as texts."""
    assert kept_sound({"sound": sound}) is None


def test_an_entry_that_names_a_sound():
    """File and digest are what the entry says."""
    assert kept_sound({"sound": {"file": "0001.flac", "digest": "d"}}) == KeptSound("0001.flac", "d")


def test_sound_that_is_there_is_counted(record):
    """Each file is read to its end and held against its digest; entries without sound are passed over."""
    assert trail(record, {"kind": "typed"}, entry(1), entry(2), entry(3)) == (None, None, 3, 0)


def test_the_first_sound_that_is_gone_or_differs_is_named(record):
    """The first of each kind, by the line of its entry."""
    for number in (2, 3):
        (sound_folder(record) / f"000{number}.flac").unlink()
    assert trail(record, entry(1), entry(2), entry(3)) == (2, None, 1, 0)
    (sound_folder(record) / "0001.flac").write_bytes(CONTENT)
    assert trail(record, entry(1), entry(1), entry(3)) == (3, 1, 0, 0)


@pytest.mark.parametrize("name", ["0001.wav", "1.flac", "../0001.flac", "0001.flac/", "0000000001.flac", ""])
def test_no_name_leads_out_of_the_folder(record, name):
    """A name of another form is sound that differs, whatever lies there."""
    assert trail(record, entry(1, file=name)) == (None, 1, 0, 0)


def test_what_is_no_ordinary_file_differs(record):
    """A link, a folder or a pipe in the place of a sound is not what was kept, and nobody waits for it."""
    folder = sound_folder(record)
    (folder / "0001.flac").rename(folder / "0009.flac")
    for make in (lambda at: at.symlink_to("0009.flac"), lambda at: at.mkdir()):
        make(folder / "0001.flac")
        assert trail(record, entry(1)) == (None, 1, 0, 0)
        (folder / "0001.flac").unlink() if (folder / "0001.flac").is_symlink() else (folder / "0001.flac").rmdir()


def test_an_erasure_answers_for_what_is_gone(record):
    """What is gone before it was erased on purpose; what is gone behind it is missing again."""
    erasure = {"kind": ERASED, "at": "2026-11-25T08:00:00+00:00"}
    assert erase_files(record) == 3
    assert trail(record, entry(1), entry(2)) == (1, None, 0, 0)
    assert trail(record, entry(1), entry(2), erasure) == (None, None, 0, 2)
    assert trail(record, entry(1), erasure, entry(2), erasure, entry(3)) == (5, None, 0, 2)
    found = SoundTrail(record)
    assert found.erased_at == ""
    found.take(1, erasure)
    assert found.erased_at == "2026-11-25T08:00:00+00:00"
    found.take(2, {"kind": ERASED})
    assert found.erased_at == ""


def test_only_sound_is_erased(record):
    """Other files in the folder stay, and the folder with them; an empty folder goes, and a second time nothing."""
    folder = sound_folder(record)
    (folder / "notes.txt").write_text("mine", encoding="utf-8")
    assert erase_files(record) == 3
    assert [path.name for path in folder.iterdir()] == ["notes.txt"]
    (folder / "notes.txt").unlink()
    assert erase_files(record) == 0
    assert not folder.exists()
    assert erase_files(record) == 0


def test_a_linked_folder_is_left_alone(record, tmp_path):
    """What a link leads to is somebody else's."""
    other = tmp_path / "other.jsonl"
    sound_folder(other).symlink_to(sound_folder(record))
    with pytest.raises(RecordError, match="is a link"):
        erase_files(other)
    assert len(list(sound_folder(record).iterdir())) == 3


def test_sound_that_cannot_be_erased(record):
    """The refusal names the folder and what to do."""
    folder = sound_folder(record)
    (folder / "0002.flac").unlink()
    (folder / "0002.flac").mkdir()
    with pytest.raises(RecordError) as caught:
        erase_files(record)
    assert caught.value.what.startswith(f"{folder / '0002.flac'} is a link, has a second name or is not a file")
    assert caught.value.remedy == "Erase it where it lies, by its own path."


@pytest.mark.parametrize("way", ["a linked file", "a second name", "a linked record"])
def test_sound_that_lies_elsewhere_is_not_called_erased(record, tmp_path, way):
    """Unlinking a name erases nothing where the sound has another: it says so, and nothing is erased."""
    kept = sound_folder(record) / "0001.flac"
    content = kept.read_bytes()
    named = record
    if way == "a linked file":
        kept.rename(tmp_path / "elsewhere.flac")
        kept.symlink_to(tmp_path / "elsewhere.flac")
    elif way == "a second name":
        (tmp_path / "elsewhere.flac").hardlink_to(kept)
    else:
        named = tmp_path / "linked.jsonl"
        named.symlink_to(record)
    with pytest.raises(RecordError, match="nothing was erased"):
        erase_files(named)
    assert kept.read_bytes() == content


def test_whether_a_record_has_sound(record, tmp_path):
    """There is sound where a file is there, or where an entry names one that nobody erased."""
    none = tmp_path / "none.jsonl"
    erasure = {"kind": ERASED}
    assert has_sound(record, [])
    assert not has_sound(none, [])
    assert not has_sound(none, [{"kind": "typed"}])
    assert has_sound(none, [entry(1)])
    assert has_sound(none, [entry(1), {"kind": "typed"}])
    assert not has_sound(none, [entry(1), erasure, {"kind": "typed"}])
    assert has_sound(none, [entry(1), erasure, entry(2)])
    erase_files(record)
    sound_folder(record).mkdir()
    (sound_folder(record) / "notes.txt").touch()
    assert not has_sound(record, [])


@pytest.mark.parametrize("sealed", [True, False])
@pytest.mark.parametrize("torn", [b"", b'{"at":"2026'])
def test_an_erasure_is_on_record(tmp_path, sealed, torn):
    """Sealed or not, the entry says how many files went and why, when, and what was torn before it."""
    path = written(tmp_path / "attempt.jsonl", 3, sealed=sealed)
    path.write_bytes(path.read_bytes() + torn)
    sound_folder(path).mkdir()
    for number in (1, 2):
        (sound_folder(path) / f"000{number}.flac").write_bytes(b"x")
    before = datetime.now(UTC)
    assert RecordFile.erase_sound(path, "asked for") == 2
    assert not sound_folder(path).exists()
    erasure = dict(read_entries(path)[-1])
    assert before <= datetime.fromisoformat(erasure.pop("at")) <= datetime.now(UTC)
    assert float(erasure.pop("ticks")) > 0
    for name in ("digest", "previous"):
        del erasure[name]
    aside = {"bytes": 11, "aside": "attempt.jsonl.torn"} if torn else {}
    assert erasure == {"kind": ERASED, "files": 2, "reason": "asked for", "sequence": 4, **aside}
    assert verify(path).ok is sealed
    assert RecordFile.erase_sound(path, "past its time") == 0
    assert [entry["kind"] for entry in read_entries(path)[3:]] == [ERASED, ERASED]


def test_a_verdict_tells_of_sound(tmp_path):
    """Sound that was erased is noted; sound that differs, or is gone without a word, is a problem at its line."""
    path = tmp_path / "attempt.jsonl"
    sound_folder(path).mkdir()
    with RecordFile.create(path, opening()) as record:
        for number in (1, 2):
            (sound_folder(path) / f"000{number}.flac").write_bytes(CONTENT + bytes([number]))
            record.append({**entry(number), "at": "2026-11-25T08:00:00+00:00"})
        record.seal({"at": "2026-11-25T08:00:01+00:00"})
    assert verify(path).ok
    second = sound_folder(path) / "0002.flac"
    second.write_bytes(CONTENT)
    differs = verify(path)
    assert (differs.problem, differs.line, differs.intact) == (Problem.SOUND_DIFFERS, 3, True)
    assert differs.why == "The sound beside it is not what was kept."
    second.unlink()
    gone = verify(path)
    assert (gone.problem, gone.line, gone.intact) == (Problem.SOUND_MISSING, 3, True)
    assert gone.why == "The sound that it names is gone, and no entry says that it was erased."
    RecordFile.erase_sound(path, "asked for")
    at = read_entries(path)[-1]["at"]
    assert verify(path).ok
    assert verify(path).notes == (f"Its sound (2 in all) was erased on purpose at {at}.",)
