"""What the reader of answers is trained on; that it learns is shown where its libraries are installed."""

import gzip
import json
import subprocess
import sys
from collections import Counter
from pathlib import Path

import pytest

from assistant.checklist.model import ChoiceAsked, DoneAsked, QuestionAsked, WaitAsked
from assistant.spoken.statement import Want
from assistant.spoken.weighing import MEANINGS as ASKED
from tests.attempt.library import PROCEDURES, papers
from tests.bench.reader.examples import AGAINST, MEANINGS, Lessons, Row, part_of, rows_of

ANSWERS = Path("tests/data/answers")
LEAST_ROWS = 40
"""By so many a line is known to the reader."""
ROLLER = "Close the roller clamp."
ROWS = (
    Row(ROLLER, ("done",), "roller's shut", "done"),
    Row(ROLLER, ("done",), "rolled it all the way down", "done"),
    Row(ROLLER, ("done",), "is it shut", ""),
    Row("Air in the line: none, or some?", ("none", "some"), "not one bubble in it", "none"),
    Row("Air in the line: none, or some?", ("none", "some"), "two bubbles by the port", "some"),
)


def test_the_reader_is_asked_what_it_has_learnt():
    """The same meanings in training and in use."""
    kinds = {"done": Want.DONE, "wait": Want.START, "question": Want.ANSWER}
    assert {kinds[kind]: meanings for kind, meanings in MEANINGS.items()} == ASKED


def test_every_table_can_be_read():
    """Each row has a line, words and meanings; what it means is one of them, or nothing."""
    tables = [path for name in (".", "learnt", "tuning", "held_out") for path in (ANSWERS / name).glob("*.tsv")]
    rows = [row for path in tables for row in rows_of(path)]
    assert len(rows) > 110_000
    assert all(row.line and row.words and row.meanings and row.means in ("", *row.meanings) for row in rows)


def test_nothing_that_is_reported_is_learnt():
    """What was written for the reader's report has nothing that is learnt; older tables share what anybody says."""
    learnt = {
        (row.line, row.words.lower())
        for folder in (ANSWERS, ANSWERS / "learnt")
        for path in folder.glob("*.tsv")
        for row in rows_of(path)
    }
    shares = dict.fromkeys(("first_lab", "ten_manners", "twelve_students", "fifty_five_lines"), 0.0)
    shares |= {"eight_people": 0.08, "ninety_eight_lines": 0.2}
    for name, most in shares.items():
        rows = list(rows_of(ANSWERS / f"held_out/{name}.tsv"))
        both = [row.words for row in rows if (row.line, row.words.lower()) in learnt]
        assert len(both) <= most * len(rows), name


def test_nearly_every_line_of_the_library_is_learnt():
    """Of a line of which it has read nothing the reader asks about more answers, and takes more wrongly."""
    asked = {
        step.say
        for procedure in PROCEDURES
        for step in papers(procedure.name).checklist.steps
        if isinstance(step.expect, DoneAsked | WaitAsked | QuestionAsked | ChoiceAsked)
    }
    rows = Counter(row.line for path in (ANSWERS / "learnt").glob("*.tsv") for row in rows_of(path))
    missing = sorted(line for line in asked if rows[line] < LEAST_ROWS)
    assert len(missing) <= len(asked) / 20, missing


def test_a_line_is_in_one_part():
    """However it is written."""
    assert {part_of(ROLLER, 4), part_of(ROLLER.upper(), 4)} == {part_of(ROLLER, 4)}
    assert {part_of(f"Line {number}.", 4) for number in range(50)} == {0, 1, 2, 3}


def test_what_takes_an_answer_away_is_no_answer():
    """A clear answer in a frame of doubt means nothing; around it, it means what it meant."""
    found = [example for seed in range(40) for example in Lessons(ROWS, seed).epoch()]
    marks = [frame.replace("{}", "").strip(" ,.") for frame in AGAINST if len(frame) > 8]
    framed = [one for one in found if any(one.words.startswith(mark) or one.words.endswith(mark) for mark in marks)]
    assert len(framed) > 20
    assert not any(one.so for one in framed)
    assert {one.words for one in found if one.so} >= {row.words for row in ROWS if row.means}


def test_the_same_in_every_run():
    """A seed decides what is drawn."""
    assert Lessons(ROWS, 3).epoch() == Lessons(ROWS, 3).epoch()
    assert Lessons(ROWS, 3).epoch() != Lessons(ROWS, 4).epoch()


@pytest.mark.slow
def test_it_learns(tmp_path):
    """A few steps of a network of chance weights on two lines bring the loss down."""
    pytest.importorskip("torch")
    transformers = pytest.importorskip("transformers")
    config = transformers.BertConfig(hidden_size=48, num_hidden_layers=2, num_attention_heads=4, intermediate_size=96)
    transformers.BertModel(config, add_pooling_layer=False).save_pretrained(tmp_path / "model")
    packed = Path("models/answer-reader/tokenizer.json.gz")
    (tmp_path / "model/tokenizer.json").write_bytes(gzip.decompress(packed.read_bytes()))
    (tmp_path / "tables").mkdir()
    lines = [f"done\t{row.line}\t{row.words}\t{row.means or 'not taken'}" for row in ROWS[:3]]
    (tmp_path / "tables/few.tsv").write_text("\n".join(["# few", "kind\tline\twords\tmeans", *lines * 40, ""]))
    command = [sys.executable, "-m", "tests.bench.reader.train", str(tmp_path / "model"), str(tmp_path / "out")]
    command += ["--tables", str(tmp_path / "tables"), "--steps", "400", "--batch", "16", "--rate", "1e-3"]
    command += ["--report", str(tmp_path / "tables/few.tsv")]
    done = subprocess.run(command, capture_output=True, text=True, timeout=110, check=True)
    losses = [float(line.rsplit(" ", 1)[1]) for line in done.stdout.splitlines() if "loss" in line]
    assert losses[-1] < 0.7 * losses[0]
    measured = [json.loads(line) for line in (tmp_path / "out/measured.jsonl").read_text().splitlines()]
    assert len(measured) == 120
