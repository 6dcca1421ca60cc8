"""The verb `orders draw`: sheets, files that run, JSON, refusals."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.cli.main import main
from assistant.orders.load import load_order
from assistant.orders.planting import FAULTS
from assistant.orders.plausible import table
from assistant.orders.truth import truth_of
from tests.orders.looking import written_for

Call = Callable[..., tuple[int, str, str]]
PRIMARY = ("orders", "draw", "primary-line", "--seed", "7", "--day", "2026-11-25")


@pytest.fixture
def call(capsys: pytest.CaptureFixture[str]) -> Call:
    """Run the program in this process; exit code, what it printed, what it complained of."""

    def run(*arguments: str) -> tuple[int, str, str]:
        try:
            code = main(arguments)
        except SystemExit as stopped:  # argparse: wrong usage or --help
            code = int(stopped.code or 0)
        out, err = capsys.readouterr()
        return code, out, err

    return run


def test_both_sheets_by_default(call: Call) -> None:
    """The learner's sheet comes without the key, the instructor's with its working."""
    code, out, _ = call(*PRIMARY, "--level", "2")
    learner, mark, instructor = out.partition("instructor's sheet")
    assert code == 0 and mark
    assert "Primary, rate" not in learner and "On the stand" in learner and "use by" in learner
    assert "Primary, rate: " in instructor and "Nothing is planted" in instructor and "Sources" in instructor
    assert "Laid out as ordered, without a fault" in instructor
    assert call(*PRIMARY, "--level", "2", "--print")[1] == out


def drawing(folder: Path, fault: str) -> tuple[str, ...]:
    """The arguments that draw an order with a fault, for a checklist that looks at all of the primary."""
    checklist = written_for(folder, ("primary",))
    return ("orders", "draw", checklist, "--seed", "7", "--day", "2026-11-25", "--fault", fault)


@pytest.mark.parametrize("fault", ["expired-bag", "over-limit", "finding"])
def test_the_learners_sheets_alone(call: Call, tmp_path: Path, fault: str) -> None:
    """No key, no fault, no teaching."""
    code, out, _ = call(*drawing(tmp_path, fault), "--count", "3", "--learner")
    assert code == 0
    assert out.count("On the stand") == 3
    for word in ("Answer key", "lanted", "notice", "expired", "aid out", "limit of", "site", "purpose"):
        assert word not in out


def test_one_object_an_order(call: Call, tmp_path: Path) -> None:
    """JSON holds the key with its working, the labels, the fault and the file itself."""
    code, out, _ = call(*drawing(tmp_path, "wrong-bag"), "--count", "3", "--level", "3", "--json")
    rows = [json.loads(line) for line in out.splitlines()]
    assert code == 0
    assert [row["name"] for row in rows] == ["d7-01", "d7-02", "d7-03"]
    for row in rows:
        (fault,) = row["faults"]
        assert fault["fact"] == "primary.fluid" and row["teaching"]
        assert fault["what"] == f"On the primary's bag: {fault['state']} in place of {_ordered(row)}."
        assert fault["reaches"] and not any(f"Primary: {fault['state']}," in line for line in row["sentences"])
        assert f"Bag of the primary: fluid {fault['state']}," in row["labels"][0]
        assert {"name": "primary.rate"}.items() <= row["key"][2].items() and row["key"][2]["unit"] == "mL/h"
        assert row["toml"].startswith('title = "Drawn order')
        assert f'[laid_out.primary]\nfluid = "{fault["state"]}"\n' in row["toml"]


def _ordered(row: dict[str, list[dict[str, str]]]) -> str:
    return next(entry["value"] for entry in row["key"] if entry["name"] == "primary.fluid")


def test_an_amount_in_json_is_text(call: Call, tmp_path: Path) -> None:
    """The state of a label that says an amount is written as people write it."""
    checklist = written_for(tmp_path, ("secondary",))
    code, out, _ = call("orders", "draw", checklist, "--seed", "7", "--fault", "wrong-concentration", "--json")
    (fault,) = json.loads(out)["faults"]
    assert code == 0
    assert fault["fact"] == "secondary.dose" and fault["what"].startswith(
        f"On the bag with the drug: {fault['state']} "
    )


def test_a_plain_order_has_no_fault_in_json(call: Call) -> None:
    """An empty list, not a missing one."""
    assert json.loads(call(*PRIMARY, "--json")[1])["faults"] == []


@pytest.mark.parametrize("fault", FAULTS)
def test_what_is_written_with_a_fault_lints(call: Call, tmp_path: Path, fault: str) -> None:
    """Each fault that can be drawn is a file without a finding; the learners' pages do not tell of it."""
    parts = ("primary", "secondary")
    checklist = written_for(tmp_path, parts)
    folder = tmp_path / "class"
    arguments = ("--seed", "3", "--day", "2026-11-25", "--fault", fault, "--out", str(folder))
    assert call("orders", "draw", checklist, *arguments)[0] == 0
    path = str(folder / "d3-01.toml")
    assert call("lint", "--strict", path)[0] == 0
    (planted,) = truth_of(load_order(path), table()).faults
    assert planted.what in (folder / "instructor.txt").read_text("utf-8")
    assert planted.what not in (folder / "learners.txt").read_text("utf-8")


def test_files_that_run(call: Call, tmp_path: Path) -> None:
    """What is written is an order that a whole attempt is done with."""
    folder = tmp_path / "class"
    code, out, err = call(*PRIMARY, "--count", "2", "--level", "3", "--out", str(folder))
    assert (code, out) == (0, "")
    assert "2 orders" in err and "learners get learners.txt or learners.pdf alone" in err
    assert sorted(path.name for path in folder.iterdir()) == [
        "d7-01.toml",
        "d7-02.toml",
        "instructor.pdf",
        "instructor.txt",
        "labels.pdf",
        "learners.pdf",
        "learners.txt",
    ]
    assert load_order(str(folder / "d7-01.toml")).code == "D7-01"
    assert "Answer key" not in (folder / "learners.txt").read_text("utf-8")
    assert (folder / "instructor.txt").read_text("utf-8").count("Answer key") == 2
    order = str(folder / "d7-02.toml")
    code, out, err = call("demo", "primary-line", "--order", order, "--typed", "--records", str(tmp_path / "records"))
    assert code == 0, err
    assert call("lint", "--strict", order)[0] == 0


def test_the_day_is_todays_by_default(call: Call) -> None:
    """Only the dates depend on the day; the infusions follow from the seed."""

    def infusion(day: str) -> str:
        rows = call("orders", "draw", "primary-line", "--seed", "7", "--day", day, "--json")[1]
        sentences: list[str] = json.loads(rows)["sentences"]
        return next(line for line in sentences if line.startswith("Primary"))

    assert infusion("2026-11-25") == infusion("2030-01-01")
    assert call("orders", "draw", "primary-line", "--seed", "7")[0] == 0


@pytest.mark.parametrize(
    ("arguments", "code", "says"),
    [
        (("orders", "draw", "no-such-list"), 1, "no checklist called"),
        ((*PRIMARY, "--count", "0"), 2, "Between 1 and 10,000"),
        ((*PRIMARY, "--count", "10,001"), 2, "invalid int value"),
        (("orders", "draw", "bag-change", "--count", "9999"), 2, "different orders of this kind"),
        ((*PRIMARY, "--level", "4"), 2, "invalid choice"),
        (
            ("orders", "draw", "bag-change", "--fault", "allergy"),
            2,
            "No step of this checklist can find the fault allergy",
        ),
        (("orders", "draw", "bag-change", "--fault", "tea"), 2, "invalid choice"),
        (("orders", "draw", "primary-line", "--day", "tomorrow"), 2, "is not a day"),
        ((*PRIMARY, "--out", "/dev/null/x"), 1, "cannot be written"),
        (("orders",), 2, "VERB"),
    ],
)
def test_what_is_refused(call: Call, arguments: tuple[str, ...], code: int, says: str) -> None:
    """Wrong usage and failures end in one sentence with what to do."""
    found, out, err = call(*arguments)
    assert (found, out) == (code, "")
    assert says in err
    assert "Traceback" not in err
