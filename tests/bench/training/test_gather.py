"""The tables of public collections: who says what, by the names of their files and their own lists."""

import csv
from types import SimpleNamespace

import numpy as np
import pytest
import soundfile

from tests.bench.training import gather
from tests.bench.training.people import listed
from tests.bench.training.store import RATE_HZ


def _tone(path, seconds=0.3):
    path.parent.mkdir(parents=True, exist_ok=True)
    soundfile.write(path, 0.3 * np.sin(np.arange(round(seconds * RATE_HZ)) / 9).astype(np.float32), RATE_HZ)


def test_students_are_who_their_files_are_of(tmp_path):
    """Both lists of the collection are read; a silent mark at the ends is no word."""
    (tmp_path / "etc").mkdir()
    (tmp_path / "etc" / "an4_train.transcription").write_text("<s> YES </s> (an251-fash-b)\n")
    (tmp_path / "etc" / "an4_test.transcription").write_text("THREE NINE (an406-fcaw-b)\n")
    assert list(gather.an4(tmp_path)) == [
        ("wav/an4_clstk/fash/an251-fash-b.wav", "yes", "an4:fash", ""),
        ("wav/an4test_clstk/fcaw/an406-fcaw-b.wav", "three nine", "an4:fcaw", ""),
    ]


@pytest.mark.parametrize(
    ("path", "words"),
    [
        ("a/7.wav", "seven"),
        ("a/EN_FM_m42.wav", "forty two"),
        ("a/seven_ref.wav", "seven"),
        ("a/six2.wav", "six"),
        ("nine/3.wav", "nine"),
        ("a/2101_E_0_12.wav", "zero"),
        ("a/oh.au", "oh"),
        ("a/EN_FM_m7.wav", None),
        ("a/pm.wav", None),
        ("a/noon.wav", None),
    ],
)
def test_announcers_say_what_their_files_are_named_by(tmp_path, path, words):
    """A file whose name says no number is left out."""
    (tmp_path / path).parent.mkdir()
    (tmp_path / path).touch()
    assert [row[1] for row in gather.by_name(tmp_path)] == ([] if words is None else [words])


def test_one_voice_says_the_same_five_times_at_most(tmp_path):
    """Or it would be heard more often than all others."""
    (tmp_path / "two").mkdir()
    for take in range(9):
        (tmp_path / "two" / f"{take}.wav").touch()
    assert len(list(gather.by_name(tmp_path))) == 5


def test_pieces_are_kept_where_their_digits_follow_in_the_number():
    """What is misheard, or comes twice, is left out: nobody knows what it says."""
    texts = ["zero", "nine one", "nine", "six", "eight five", "six", "oh", "one nine", "nine"]
    assert gather.in_order(texts, "9196856019") == [1, 2, 3, 4, 5, 6, 7]


def test_a_long_recording_is_cut_at_pauses():
    """Three tones with half a second between them, over a hum that is never quiet."""
    tone = 0.3 * np.sin(np.arange(2 * RATE_HZ) / 9)
    pause = 0.012 * np.sin(np.arange(RATE_HZ // 2) / 5)
    parts = gather.at_pauses(np.concatenate([tone, pause, tone, pause, tone]).astype(np.float32))
    assert [round(len(part) / RATE_HZ) for part in parts] == [2, 2, 2]


def test_the_table_is_read_again_and_says_where_chance_is_not_to_decide(tmp_path, monkeypatch):
    """A file that is missing, or is no sound, is not in it."""
    _tone(tmp_path / "7.wav")
    (tmp_path / "8.wav").write_text("no sound")
    monkeypatch.setattr("sys.argv", ["gather", "by-name", str(tmp_path)])
    gather.main()
    table = (tmp_path / "clips.tsv").read_text().splitlines()
    assert [row["path"] for row in csv.DictReader(table, delimiter="\t")] == ["7.wav"]
    ((clip, sound),) = listed(tmp_path)
    assert (clip.words, clip.kind, clip.part) == ("seven", "person, digit", "training")
    assert len(sound) == round(0.3 * RATE_HZ)


def test_what_is_dictated_is_what_the_script_says(tmp_path, monkeypatch):
    """Of "four four four" one is easily lost in what is written; what says something else is left out."""
    (tmp_path / "RECORDING_SCRIPT.md").write_text(
        '**Sample 1:**\n"two one (pause) four four four"\n\n**Sample 2:** (fast)\n"nine eight seven six five"\n'
    )
    for number in (1, 2):
        _tone(tmp_path / f"datasets/numbers_training/processed/sample_{number:03}.wav")
    texts = iter(["two one four four", "one two three"])
    monkeypatch.setattr(gather, "open_trained", lambda: SimpleNamespace(model=None))
    monkeypatch.setattr(gather, "written", lambda ear, sound: next(texts))
    ((path, words, speaker, part),) = gather.dictated(tmp_path)
    assert (path[-7:-4], words, part) == ("001", "two one four four four", "training")
    assert speaker.startswith("caller:")
