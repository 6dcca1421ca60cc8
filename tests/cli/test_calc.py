"""The verbs `calc` and `course`: what they print, in text and in JSON, and their exit codes."""

import io
import json
import shlex
import subprocess
import sys
import xml.etree.ElementTree as ElementTree
from collections.abc import Callable
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from assistant.cli.main import main
from assistant.cli.tapping import tapped
from assistant.dosing.formula_groups import CALLED, GROUPS
from assistant.dosing.formulas import FORMULAS
from tests.dosing.worked import Example, examples

Call = Callable[..., tuple[int, str, str]]
_ROOT = Path(__file__).parents[2]


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


def test_prints_the_result_with_its_working(call: Call) -> None:
    """The value comes first, then each step."""
    assert call("calc", "rate", "--volume", "100 mL", "--duration", "30 min") == (
        0,
        "200 mL/h\n  30 min = 0.5 h\n  100 mL \u00f7 0.5 h = 200 mL/h\n",
        "",
    )


def test_prints_one_json_object(call: Call) -> None:
    """With --json, before or after the formula, one object a line with numbers as decimal text."""
    wanted = {
        "formula": "rate",
        "value": "83.3",
        "unit": "mL/h",
        "exact": "83.33333333333333333333333333",
        "rounding": "nearest tenth, half up",
        "working": ["1,000 mL \u00f7 12 h = about 83.3333 mL/h", "rounded (nearest tenth, half up): 83.3 mL/h"],
        "ucum": "mL/h",
    }
    inputs = ("--volume", "1,000 ml", "--duration=12 hr")
    for arguments in (("calc", "--json", "rate", *inputs), ("calc", "rate", *inputs, "--json")):
        code, out, err = call(*arguments)
        assert (code, err) == (0, "")
        assert json.loads(out) == wanted
        assert out.count("\n") == 1


def test_the_working_can_be_spoken(call: Call) -> None:
    """With --spoken the same comes in words, with no sign and no abbreviation left."""
    inputs = ("rate", "--volume", "100 mL", "--duration", "30 min", "--spoken")
    words = [
        "thirty minutes equals zero point five hours",
        "one hundred millilitres divided by zero point five hours equals two hundred millilitres per hour",
    ]
    assert call("calc", *inputs)[1].splitlines() == ["two hundred millilitres per hour", *(f"  {w}" for w in words)]
    assert json.loads(call("calc", "--spoken", *inputs[:-1], "--json")[1])["spoken"] == words


def test_cautions_are_printed(call: Call) -> None:
    """What the reader must know stands below the working, and in the object."""
    inputs = ("percent-off", "--found", "120 mL/h", "--ordered", "100 mL/h")
    assert "Caution: The rate is too fast" in call("calc", *inputs)[1]
    assert "too fast" in json.loads(call("calc", *inputs, "--json")[1])["cautions"][0]


def test_a_time_on_the_clock(call: Call) -> None:
    """A clock time is a text without a unit; with a date and a zone the exact time comes too."""
    inputs = ("completion-time", "--start", "2026-10-24 22:00", "--zone", "Europe/London", "--duration", "8 h")
    found = json.loads(call("calc", *inputs, "--json")[1])
    assert (found["value"], found["unit"]) == ("05:00 GMT next day", "")
    assert found["exact"] == "2026-10-25T05:00:00+00:00"
    bare = json.loads(call("calc", "completion-time", "--start", "22:00", "--duration", "8 h", "--json")[1])
    assert (bare["value"], bare["exact"]) == ("06:00 next day", "")


def test_several_answers_are_several_lines(call: Call) -> None:
    """A titration prints one object a step."""
    code, out, _ = call(
        "calc", "titration", "--start", "5 mg/h", "--step", "5 mg/h", "--highest", "15 mg/h",
        "--concentration", "1 mg/mL", "--json",
    )  # fmt: skip
    assert code == 0
    assert [json.loads(line)["value"] for line in out.splitlines()] == ["5", "10", "15"]


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("rate", "--volume", "100 mL"), "rate needs duration"),
        (("rate", "--volume", "100 mL", "--duration", "0 min"), "duration must be above zero, but 0 min came."),
        (("rate", "--volume", "-5 mL", "--duration", "5 min"), "volume must be above zero, but -5 mL came."),
        (("rate", "--volume", "NaN mL", "--duration", "5 min"), "volume: Expected a number with its unit"),
        (("rate", "--volume", "1e400 mL", "--duration", "5 min"), 'volume: "e400 mL" is not a unit'),
        (("rate", "--volume", "100 M", "--duration", "5 min"), 'volume: "M" is not a unit known here. Nearest known'),
        (("rate", "--volume", "5 Mg", "--duration", "5 min"), "easily misread"),
        (("rate", "--volume", "100 mg", "--duration", "5 min"), "volume must come in a unit such as mL, but 100 mg"),
        (("body-weight", "--weight", "70 lb", "--adult", "yes"), "If 70 kg is meant, give the unit kg"),
        (("rates",), "Did you mean rate"),
        (("limits", "--name", "x", "--rate", "5"), "without a unit"),
        (("limits", "--name", "x", "--rate", "5 mL/h", "--table", "/nowhere.toml"), "There is no file"),
        (("--from", "/nowhere/lines.jsonl"), "cannot be read"),
        (("--from", "a\x00b"), "cannot be read"),
    ],
)
def test_refuses_in_one_line_with_exit_code_1(call: Call, arguments: tuple[str, ...], words: str) -> None:
    """What cannot be worked out gives nothing on stdout, one line on stderr, and exit code 1."""
    code, out, err = call("calc", *arguments)
    assert (code, out) == (1, "")
    assert words in err
    assert err.count("\n") == 1 and "Traceback" not in err


@pytest.mark.parametrize(
    "arguments",
    [
        ("calc",),
        ("calc", "rate", "--speed", "5"),
        ("calc", "limits"),
        ("calc", "--lst"),
        ("calc", "limits", "--name", "x"),
        ("course",),
    ],
)
def test_wrong_usage_has_exit_code_2(call: Call, arguments: tuple[str, ...]) -> None:
    """An option that does not exist, or nothing to do, is wrong usage."""
    code, out, err = call(*arguments)
    assert (code, out) == (2, "")
    assert err


def test_lists_every_formula(call: Call) -> None:
    """--list shows every formula with its inputs; as JSON one object each, with the source."""
    code, out, _ = call("calc", "--list")
    assert code == 0
    assert all(f"\n  {name}: " in f"\n{out}" for name in FORMULAS)
    rows = [json.loads(line) for line in call("calc", "--list", "--json")[1].splitlines()]
    assert [row["formula"] for row in rows if "formula" in row] == list(FORMULAS)
    assert all(row["inputs"] and ("check" in row or row["source"]) for row in rows)


@pytest.mark.parametrize(
    "verb", [("calc",), ("calc", "rate"), ("calc", "surface-area"), ("calc", "limits"), ("course",)]
)
def test_help_has_examples(call: Call, verb: tuple[str, ...]) -> None:
    """Every help text holds an example."""
    code, out, _ = call(*verb, "--help")
    assert code == 0
    assert "example" in out and f"checkoff {verb[0]}" in out


@pytest.mark.parametrize("name", FORMULAS)
def test_every_formula_has_help(call: Call, name: str) -> None:
    """The help of each formula names its inputs and its source."""
    code, out, _ = call("calc", name, "--help")
    assert code == 0
    assert all(f"--{one.name}" in out for one in FORMULAS[name].inputs)
    assert "Source: " in out


SAMPLE = examples()[::6]


@pytest.mark.parametrize("example", SAMPLE, ids=lambda example: example.id)
def test_published_examples_through_the_command_line(call: Call, example: Example) -> None:
    """A sample of the published worked examples comes out of the program as its source has it."""
    options = [part for name, text in example.texts.items() for part in (f"--{name}", text)]
    code, out, err = call("calc", example.formula, *options, "--json")
    assert (code, err) == (0, ""), example.why
    found = json.loads(out)
    if found["unit"]:
        assert Decimal(found["value"]) == Decimal(example.expected), example.why
    else:
        assert found["value"] == example.expected, example.why


def bulk(call: Call, path: Path, *lines: object) -> tuple[int, list[dict[str, Any]]]:
    """Ask many questions in one file."""
    text = "\n".join(line if isinstance(line, str) else json.dumps(line) for line in lines)
    path.write_text(text, encoding="utf-8")
    code, out, err = call("calc", "--from", str(path))
    assert err == ""
    return code, [json.loads(line) for line in out.splitlines()]


def test_bulk_answers_one_object_a_line(call: Call, tmp_path: Path) -> None:
    """Every published example in one file comes back in order, with its id."""
    questions = [{"id": e.id, "formula": e.formula, "inputs": e.texts} for e in examples()]
    code, found = bulk(call, tmp_path / "lines.jsonl", *questions)
    assert code == 0
    assert [row["id"] for row in found] == [e.id for e in examples()]
    for row, example in zip(found, examples(), strict=True):
        expected = example.expected if not row["unit"] else Decimal(example.expected)
        assert (row["value"] if not row["unit"] else Decimal(row["value"])) == expected, example.why


def test_bulk_goes_on_after_a_wrong_line(call: Call, tmp_path: Path) -> None:
    """A line that cannot be answered has its error in its own object; the rest is answered; exit code 1."""
    good = {"formula": "rate", "inputs": {"volume": "100 mL", "duration": "30 min"}}
    code, found = bulk(
        call,
        tmp_path / "lines.jsonl",
        {"id": 1} | good,
        "no json",
        "",
        "[1]",
        {"id": 2, "formula": "rate", "inputs": {"volume": 100, "duration": "30 min"}},
        {"id": 3, "formula": "rate"},
        {"id": 4, "formula": ["rate"], "inputs": {}},
        {"id": 5, "formula": "nothing", "inputs": {}},
        {"id": 6, "formula": "rate", "inputs": {"volume": "100 mL", "duration": "0 h"}},
        "[" * 5_000,
        '{"id": 7, "formula": "rate", "inputs": {"volume": "' + "1" * 200_000 + '"}}',
        {"id": 8} | good,
    )
    assert code == 1
    assert [row["id"] for row in found] == [1, None, None, 2, 3, 4, 5, 6, None, None, 8]
    assert [row["line"] for row in found] == [1, 2, 4, 5, 6, 7, 8, 9, 10, 11, 12]
    assert [("error" in row) for row in found] == [False] + [True] * 9 + [False]
    assert all(row["error"]["what"] and row["error"]["remedy"] for row in found[1:-1])
    assert found[-1]["value"] == "200"


def test_bulk_takes_several_texts(call: Call, tmp_path: Path) -> None:
    """Inputs that take several values take a list; further answers come under "more"."""
    code, found = bulk(
        call,
        tmp_path / "lines.jsonl",
        {"id": "a", "formula": "sum-of-doses", "inputs": {"doses": ["150 mg", "1,000 mg"]}},
        {"id": "b", "formula": "live_count", "inputs": {"times": ["0", "1", "2"], "drop_factor": "20 gtt/mL"}},
    )
    assert code == 0
    assert found[0]["value"] == "1150"
    assert (found[1]["value"], found[1]["more"][0]["value"]) == ("180", "0")


def test_limits_say_what_is_known(call: Call) -> None:
    """A hard limit gives exit code 1, with its source; within and unknown give 0."""
    code, out, _ = call("calc", "limits", "--name", "vancomycin", "--dose", "1 g", "--duration", "60 min")
    assert code == 1
    assert out.startswith("hard limit: The dose rate of about 16.6667 mg/min for vancomycin is above the limit")
    assert "Source: FDA label text" in out
    code, out, _ = call("calc", "limits", "--name", "moonlight", "--rate", "5 mL/h", "--json")
    assert code == 0
    assert json.loads(out)["level"] == "unknown"


def test_limits_of_ones_own(call: Call, tmp_path: Path) -> None:
    """A table of one's own takes the place of the project's."""
    table = tmp_path / "limits.toml"
    table.write_text('[drug.x]\nhighest_rate = { value = "5 mL/h", level = "soft", source = "us" }\n', encoding="utf-8")
    given = ("calc", "limits", "--table", str(table), "--name", "x", "--rate")
    assert call(*given, "6 mL/h")[1].startswith("soft limit:")
    assert call(*given, "5 mL/h")[1].startswith("within:")


COURSE = """
start = "2026-11-25 08:00"
zone = "Europe/London"
length = "4 h"
[primary]
name = "saline"
rate = "75 mL/h"
bag_volume = "1,000 mL"
[[secondary]]
name = "drug"
volume = "50 mL"
duration = "30 min"
due = "09:00"
"""


def test_course_in_words_and_picture(call: Call, tmp_path: Path) -> None:
    """A course prints who flows when, and draws it."""
    file, picture = tmp_path / "day.toml", tmp_path / "day.svg"
    file.write_text(COURSE, encoding="utf-8")
    code, out, _ = call("course", str(file), "--svg", str(picture))
    assert code == 0
    assert "09:00 to 09:30: drug at 100 mL/h, 50 mL" in out
    assert "All lines: 312.5 mL" in out
    assert ElementTree.parse(picture).getroot().tag.endswith("svg")  # noqa: S314 - our own text


def test_course_as_json(call: Call, tmp_path: Path) -> None:
    """As JSON: segments, sums and clock hours, numbers as decimal text."""
    file = tmp_path / "day.toml"
    file.write_text(COURSE, encoding="utf-8")
    found = json.loads(call("course", str(file), "--json")[1])
    assert found["segments"][1] == {
        "line": "drug",
        "from": "2026-11-25T09:00:00+00:00",
        "to": "2026-11-25T09:30:00+00:00",
        "rate": "100",
        "volume": "50",
    }
    assert found["total"] == "312.5"
    assert sum(Decimal(row["volume"]) for row in found["hourly"]) == Decimal("312.5")
    assert found["unfinished"] == {}


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (None, "There is no file"),
        ("start = [", "this is not TOML"),
        ("", "The course lacks start"),
        (COURSE.replace("75 mL/h", "75"), "The primary, rate: 75 came without a unit."),
        (COURSE + 'colour = "red"', "has no field"),
    ],
)
def test_course_refuses_a_wrong_file(call: Call, tmp_path: Path, text: str | None, words: str) -> None:
    """A file that is none, or holds what it should not, is refused in one line."""
    file = tmp_path / "day.toml"
    if text is not None:
        file.write_text(text, encoding="utf-8")
    code, out, err = call("course", str(file))
    assert (code, out) == (1, "")
    assert words in err and err.count("\n") == 1


def test_a_picture_that_cannot_be_written(call: Call, tmp_path: Path) -> None:
    """Where the picture cannot be written, one line says so."""
    file = tmp_path / "day.toml"
    file.write_text(COURSE, encoding="utf-8")
    code, _, err = call("course", str(file), "--svg", str(tmp_path / "no" / "day.svg"))
    assert code == 1
    assert "cannot be written" in err


def test_the_real_program_reads_stdin() -> None:
    """The program itself answers a pipe; no file is needed."""
    question = '{"id": "a", "formula": "rate", "inputs": {"volume": "100 mL", "duration": "30 min"}}\n'
    done = subprocess.run(
        [sys.executable, "-m", "assistant", "calc", "--from", "-"],
        input=question,
        capture_output=True,
        text=True,
        cwd=_ROOT,
        timeout=60,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads(done.stdout)["value"] == "200"


def test_a_due_time_by_policy(call: Call, tmp_path: Path) -> None:
    """A policy of the table of limits stands in for the interval; its source is told; the table can be one's own."""
    code, out, err = call("calc", "due-time", "--start", "08:00", "--policy", "set change, intermittent")
    assert (code, out.splitlines()[0]) == (0, "08:00 next day")
    assert "24 h. Source: Infusion Nurses Society" in err
    own = tmp_path / "own.toml"
    own.write_text('[policy.tea]\nvalue = "90 min"\nsource = "the lab"\n', encoding="utf-8")
    words = ("calc", "due-time", "--start", "08:00", "--table", str(own))
    assert call(*words, "--policy", "tea")[1].startswith("09:30")
    for more, says in (
        (("--policy", "coffee"), "Known are: tea."),
        (("--policy", "tea", "--interval", "1 h"), "Give one of the two."),
        ((), "due-time needs interval"),
    ):
        code, out, err = call(*words, *more)
        assert code in (1, 2) and out == "" and says in err


def test_taps_are_times() -> None:
    """Each line is a drop; a word ends the count; the first drop is at nought."""
    moments = iter([5_000_000_000, 6_000_000_000, 7_250_500_000])
    assert tapped(["\n", "\n", "\n", "q\n", "\n"], lambda: next(moments)) == "0, 1, 2.25"
    assert tapped([], lambda: 0) == ""


def test_a_count_that_is_tapped(call: Call, monkeypatch: pytest.MonkeyPatch) -> None:
    """Too few taps are told so, in one sentence."""
    monkeypatch.setattr("sys.stdin", io.StringIO("\n\nq\n"))
    code, out, err = call("calc", "live-count", "--drop-factor", "20 gtt/mL", "--tap")
    assert (code, out) == (1, "")
    assert "Three drops at least are needed, but 2 came" in err


COMPARED = [
    (("--stated", "75 mL/h", "--right", "75 mL/h"), 0, "agrees", None),
    (("--stated", "0.075 L/h", "--right", "75 mL/h"), 0, "agrees", None),
    (("--stated", "750 mL/h", "--right", "75 mL/h"), 1, "disagrees", "tenfold"),
    (("--stated", "5 mg", "--right", "5 mcg"), 1, "disagrees", "thousandfold"),
    (("--stated", "2 mL/min", "--right", "2 mL/h"), 1, "disagrees", "time unit"),
    (("--stated", "15 mL/h", "--right", "50 mL/h"), 1, "disagrees", "teen-ty"),
    (
        ("--stated", "1,000 mL/h", "--right", "83.3 mL/h", "--other", "primary.bag_volume=1,000 mL"),
        1,
        "disagrees",
        "swapped",
    ),
    (("--stated", "5 mL", "--right", "5 mL/h"), 1, "cannot check", None),
]


@pytest.mark.parametrize(("words", "code", "verdict", "slip"), COMPARED)
def test_a_slip_is_named(call: Call, words: tuple[str, ...], code: int, verdict: str, slip: str | None) -> None:
    """What a wrong number looks like is told, in text and in JSON."""
    found, out, _ = call("calc", "compare", *words, "--json")
    row = json.loads(out)
    assert (found, row["verdict"], row["slip"]) == (code, verdict, slip)
    assert call("calc", "compare", *words)[1].strip() == f"{verdict}: {row['sentence']}"


def test_another_number_needs_its_name(call: Call) -> None:
    """A number without a name is wrong usage."""
    code, out, err = call("calc", "compare", "--stated", "5 mL", "--right", "5 mL", "--other", "1 L")
    assert (code, out) == (2, "")
    assert "primary.vtbi=950 mL" in err


def test_a_question_in_a_line(call: Call) -> None:
    """What was taken for what, the formula, the working, and the answer last; in one argument or in many."""
    wanted = (
        "volume: 200 mL\nduration: 60 min\nnot needed: 1 g\nby: rate (rate in ml/h that gives a volume in a time)\n"
        "  60 min = 1 h\n  200 mL \u00f7 1 h = 200 mL/h\n200 mL/h\n"
    )
    assert call("calc", "1 g in 200 mL over 60 min in mL/h") == (0, wanted.replace("ml/h", "mL/h"), "")
    assert call("calc", *["1", "g", "in", "200", "mL", "over", "60", "min", "in", "mL/h"])[0] == 0
    found = json.loads(call("calc", "1 g in 200 mL over 60 min in mL/h", "--json")[1])
    assert (found["value"], found["unit"], found["formulas"]) == ("200", "mL/h", ["rate"])


def test_a_question_that_lacks_something_is_asked_back(call: Call) -> None:
    """Nothing on stdout, one line that names it, exit code 2."""
    assert call("calc", "drip rate 1000 mL over 8 h") == (
        2,
        "",
        'This lacks a drop factor such as "20 gtt/mL". Ask again with it.\n',
    )


@pytest.mark.parametrize(
    ("word", "formula"),
    [
        ("ivpb", "piggyback-rate"),
        ("drip", "drop-rate"),
        ("bsa", "surface-area"),
        ("infusion-rate", "rate"),
        ("drop factor", "drop-rate"),
        ("mcg/kg/min", "pump-rate"),
        ("draw up", "volume-for-dose"),
    ],
)
def test_the_list_is_searched_by_words_of_the_trade(call: Call, word: str, formula: str) -> None:
    """A word of the trade leads to its formula, with an example."""
    code, out, _ = call("calc", "--list", word)
    assert code == 0
    assert f"  {formula}: " in out
    assert f"example: checkoff calc {formula} " in out


def test_a_word_that_leads_nowhere(call: Call) -> None:
    """It is said, with the way to the whole list, and the exit code is 1."""
    assert call("calc", "--list", "qwertz") == (
        1,
        "",
        "No formula goes by qwertz. checkoff calc --list shows all of them.\n",
    )


@pytest.mark.parametrize("name", FORMULAS)
def test_every_example_of_the_list_runs(call: Call, name: str) -> None:
    """The example that stands with a formula is one that can be asked."""
    code, _, err = call("calc", name, *shlex.split(FORMULAS[name].example))
    assert (code, err) == (0, "")


def test_every_formula_stands_in_one_group() -> None:
    """The groups hold every formula once, and each has its words."""
    grouped = [name for names in GROUPS.values() for name in names]
    assert sorted(grouped) == sorted(FORMULAS) == sorted(CALLED)


def test_bulk_takes_checks_and_questions(call: Call, tmp_path: Path) -> None:
    """Comparisons, limits and questions stand in a file like formulas, each row labelled by what answered it."""
    code, found = bulk(
        call,
        tmp_path / "lines.jsonl",
        {"id": 1, "formula": "compare", "inputs": {"stated": "750 mL/h", "right": "75 mL/h"}},
        {"id": 2, "formula": "limits", "inputs": {"name": "vancomycin", "dose": "1 g", "duration": "60 min"}},
        {"id": 3, "question": "100 mL over 30 min in mL/h"},
        {"id": 4, "formula": "compare", "inputs": {"stated": "750 mL/h"}},
        {"id": 5, "formula": "limits", "inputs": {"name": "vancomycin", "speed": "5 mL/h"}},
    )
    assert code == 1
    assert (found[0]["formula"], found[0]["slip"]) == ("compare", "tenfold")
    assert (found[1]["formula"], "level" in found[1]) == ("limits", True)
    assert (found[2]["value"], found[2]["unit"]) == ("200", "mL/h")
    assert found[3]["error"]["what"].startswith("compare needs right")
    assert found[4]["error"]["what"].startswith('limits takes no input "speed"')


def test_several_answers_are_labelled(call: Call) -> None:
    """A formula that gives more than one number says which is which."""
    out = call("calc", "dilution", *shlex.split(FORMULAS["dilution"].example))[1]
    assert "stock: 20 mL" in out and "diluent: 80 mL" in out
    out = call("calc", "bolus", *shlex.split(FORMULAS["bolus"].example))[1]
    assert "rate: 160 mL/h" in out and "volume: 80 mL" in out
    out = call("calc", "titration", *shlex.split(FORMULAS["titration"].example))[1]
    assert "at 7.5 mg/h: 4.7 mL/h" in out


def test_checks_are_in_the_list_and_found_by_words(call: Call) -> None:
    """limits and compare stand in the list with an example that works, and are found by what they are for."""
    for word, name in (("compare", "compare"), ("tenfold", "compare"), ("same line", "limits")):
        code, out, _ = call("calc", "--list", word)
        assert code == 0 and f"  {name}: " in out
        example = next(line.partition("checkoff ")[2] for line in out.splitlines() if f"checkoff calc {name} " in line)
        assert call(*shlex.split(example))[1]
    rows = [json.loads(line) for line in call("calc", "--list", "compare", "--json")[1].splitlines()]
    assert [row["check"] for row in rows] == ["compare"]


def test_each_of_several_answers_is_labelled(call: Call) -> None:
    """Where a formula gives several numbers, each says what it is: in text, in JSON and in a file of questions."""
    plain = ("--start", "5 mg/h", "--step", "5 mg/h", "--highest", "10 mg/h", "--concentration", "1 mg/mL")
    out = call("calc", "titration", *plain)[1]
    assert "at 5 mg/h: 5 mL/h" in out and "at 10 mg/h: 10 mL/h" in out
    rows = [json.loads(line) for line in call("calc", "titration", *plain, "--json")[1].splitlines()]
    assert [row["label"] for row in rows] == ["at 5 mg/h", "at 10 mg/h"]
    mixed = ("--stronger", "3 %", "--weaker", "1 %", "--concentration", "1.5 %", "--volume", "500 mL")
    rows = [json.loads(line) for line in call("calc", "alligation", *mixed, "--json")[1].splitlines()]
    assert [(row["label"], row["value"]) for row in rows] == [("stronger stock", "125"), ("weaker stock", "375")]


def test_a_question_turns_pounds_as_the_school_does(
    call: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """By the exact factor without a school's file; by that file's factor where it names one, shown in the working."""
    question = "18 units/kg/h, 154 lb, 25,000 units in 500 mL"
    settings, school = tmp_path / "settings.toml", tmp_path / "school.toml"
    monkeypatch.setenv("CHECKOFF_SETTINGS", str(settings))
    assert call("calc", question)[1].endswith("\n25.1 mL/h\n")
    assert call("calc", "154 lb in kg")[1].endswith("\n69.9 kg\n")
    school.write_text('title = "A school"\npounds_per_kg = "2.2"\n', encoding="utf-8")
    settings.write_text(f'[lab]\nschool = "{school}"\n', encoding="utf-8")
    out = call("calc", question)[1]
    assert "  154 lb \u00f7 2.2 lb/kg = 70 kg\n" in out and out.endswith("\n25.2 mL/h\n")
    assert call("calc", "154 lb in kg")[1].endswith("\n70 kg\n")
    assert call("calc", "70 kg, 18 units/kg/h, 25,000 units in 500 mL")[1].endswith("\n25.2 mL/h\n")
    file = tmp_path / "questions.jsonl"
    file.write_text(json.dumps({"id": "a", "question": question}), encoding="utf-8")
    assert json.loads(call("calc", "--from", str(file))[1])["value"] == "25.2"
