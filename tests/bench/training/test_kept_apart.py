"""People from whom nothing is learnt: each is for the report or for tuning, and what was cut into is left out."""

import csv
from pathlib import Path

import numpy as np
import soundfile

from tests.bench.training import kept_apart
from tests.bench.training.store import RATE_HZ

TONE = 0.3 * np.sin(np.arange(RATE_HZ // 2) / 9)
RISING = TONE * np.minimum(1, np.arange(len(TONE)) / 3_000)
FILES = (
    "Digit-Speech-Recognition/Processed_Data/7/{}.wav",
    "ntua-patrec/Lab1/prelab/some/digits/seven{}.wav",
    "Isolated-vowel-digit-recognition-using-DTW/train/1601_7_{}.wav",
    "Isolated-vowel-digit-recognition-using-DTW/train/1602_a_{}.wav",
    "Spoken-Digit-Recognition/self_recorded/Somebody/7_Somebody_{}_.wav",
    "KeywordSpottingService/recordings/seven/7_anh_{}.wav",
    "KeywordSpottingService/recordings/seven/7_jackson_{}.wav",
)


def _table(tmp_path, monkeypatch, *options):
    monkeypatch.setattr("sys.argv", ["kept_apart", str(tmp_path / "clones"), str(tmp_path / "out"), *options])
    kept_apart.main()
    return list(csv.DictReader((tmp_path / "out" / "clips.tsv").read_text().splitlines(), delimiter="\t"))


def test_every_second_person_is_for_the_report(tmp_path, monkeypatch):
    """Five takes of a word in each collection: at most four of a person are kept, none of the kept-back dataset."""
    for pattern in FILES:
        for take in range(1, 6):
            path = tmp_path / "clones" / pattern.format(take)
            path.parent.mkdir(parents=True, exist_ok=True)
            soundfile.write(path, TONE if take == 2 else RISING, RATE_HZ)
    rows = _table(tmp_path, monkeypatch, "--all")
    assert {row["words"] for row in rows} == {"seven"}
    parts = {row["speaker"]: row["part"] for row in rows}
    assert len(parts) == len({(row["speaker"], row["part"]) for row in rows})
    assert parts == {
        "bombay 0": "report",
        "bombay 1": "tuning",
        **{f"athens {number}": "tuning" if number % 2 else "report" for number in range(1, 6)},
        "guwahati 0": "report",
        "four 0": "report",
        "two 1": "tuning",
    }
    assert sum(row["speaker"] == "two 1" for row in rows) == 4
    kept = {Path(row["path"]).stem.rstrip("_")[-1] for row in _table(tmp_path, monkeypatch)}
    assert kept == {"1", "3", "4", "5"}


def test_what_begins_at_its_loudest_was_cut_into():
    """A word rises before it is loud."""
    assert kept_apart.is_cut_into(TONE)
    assert not kept_apart.is_cut_into(RISING)
    assert not kept_apart.is_cut_into(np.zeros(10))
