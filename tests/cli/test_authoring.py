"""The verbs of an author: new, schema, diff, rehearse to a file."""

import io
import json
import tomllib
from pathlib import Path

import jsonschema
import pytest
import soundfile

from assistant.checklist.draft import step_id
from assistant.checklist.library import NO_CHECKLISTS, library_folder
from assistant.checklist.load import load
from assistant.checklist.schema import checklist_schema
from assistant.cli.main import main
from tests.checklist.papers import GOOD, changed, written

HERE = Path(__file__).parent
ODD = HERE.parent / "checklist" / "odd"
ANSWERS = HERE / "new_bag_change.txt"
LOOKS = """
[[steps]]
id = "right"
part = "Before"
say = "Are patient, bag and ordered rate as they should be?"
expect = { kind = "question" }
looks_at = ["wristband", "primary.bag", "primary.limits"]
if_wrong = "Stop, and ask."
"""
"""What the linter asks for where a bag is hung."""
OWN = [path for path in sorted(library_folder().glob("*.toml")) if path.stem not in NO_CHECKLISTS]
VALIDATOR = jsonschema.Draft202012Validator(checklist_schema())


@pytest.fixture(autouse=True)
def own_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The author's folder of checklists, where nothing is yet."""
    folder = tmp_path / "mine"
    monkeypatch.setenv("CHECKOFF_CHECKLISTS", str(folder))
    return folder


# The schema, with jsonschema as the witness.


@pytest.mark.parametrize(
    "path", [*OWN, *library_folder().glob("parts/*.toml"), *sorted(ODD.glob("*.toml"))], ids=lambda path: path.stem
)
def test_what_loads_fits_the_schema(path: Path) -> None:
    """The project's own files and the odd ones are right by the published schema, read by another library."""
    table = tomllib.loads(path.read_text(encoding="utf-8-sig"))
    assert [error.message for error in VALIDATOR.iter_errors(table)] == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("title =", "titel ="),
        ('say = "Start', 'sya = "Start'),
        ('kind = "number"', 'kind = "nummer"'),
        ("gate = true", 'gate = "maybe"'),
        ("after_s = 60", "after_s = 0"),
        ('right = "yes"', 'right = "perhaps"'),
        ('id = "start"', 'id = "Start Here"'),
        ('cautions = ["Training only."]', "cautions = []"),
        ("gate = true", 'include = "parts/x"'),
    ],
)
def test_what_the_models_refuse_does_not_fit_the_schema(old: str, new: str) -> None:
    """An editor marks misspelt fields, wrong kinds and numbers out of range."""
    VALIDATOR.validate(tomllib.loads(GOOD))
    assert not VALIDATOR.is_valid(tomllib.loads(changed(old, new)))


def test_the_schema_is_one_and_explains_the_fields(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It is a schema of its dialect, tells what fields mean, and is written where one wants it."""
    jsonschema.Draft202012Validator.check_schema(checklist_schema())
    assert "critical step is open" in checklist_schema()["$defs"]["Step"]["properties"]["gate"]["description"]
    assert main(["schema"]) == 0
    assert json.loads(capsys.readouterr().out) == checklist_schema()
    assert main(["schema", "-o", str(tmp_path / "s.json")]) == 0
    assert json.loads((tmp_path / "s.json").read_text(encoding="utf-8")) == checklist_schema()


# New.


def answered(monkeypatch: pytest.MonkeyPatch, text: str) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO(text))


def test_a_new_checklist_is_clean_and_can_be_heard(
    own_folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Six steps from answers in a file: nothing to mend but what is not looked at yet; fits the schema, is found."""
    answered(monkeypatch, ANSWERS.read_text(encoding="utf-8"))
    assert main(["new", "my-bag-change"]) == 0
    assert capsys.readouterr().out == f"{own_folder / 'my-bag-change.toml'}\n"
    assert main(["lint", "--strict", "my-bag-change"]) == 1
    (warned,) = [line for line in capsys.readouterr().out.splitlines() if ": warning " in line or ": error " in line]
    assert "looked-at" in warned
    path = own_folder / "my-bag-change.toml"
    written = path.read_text(encoding="utf-8")
    path.write_text(written + LOOKS, encoding="utf-8")
    assert main(["lint", "--strict", "my-bag-change"]) == 0
    path.write_text(written, encoding="utf-8")
    capsys.readouterr()
    assert main(["rehearse", "my-bag-change"]) == 0
    assert "6 steps, about" in capsys.readouterr().out
    VALIDATOR.validate(tomllib.loads((own_folder / "my-bag-change.toml").read_text(encoding="utf-8")))
    kinds = [step.expect.kind for step in load("my-bag-change").steps]
    assert kinds == ["wait", "name", "choice", "done", "number", "note"]
    assert json.loads((own_folder / "checklist.schema.json").read_text(encoding="utf-8")) == checklist_schema()


def test_where_answers_end_the_rest_is_as_in_brackets(own_folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One line is enough; what it asks is guessed from it."""
    answered(monkeypatch, "\n" * 5 + "Hang the bag.\n")
    assert main(["new", "hang-it"]) == 0
    checklist = load("hang-it")
    assert (checklist.title, checklist.order, len(checklist.steps)) == ("Hang it", "oh-101", 1)


def test_a_part_can_stand_for_steps(own_folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Who names a part in place of a line gets its steps, twice too."""
    (own_folder / "parts").mkdir(parents=True)
    (own_folder / "parts" / "rub.toml").write_text('[[steps]]\nid = "rub"\npart = "A"\nsay = "Rub."\n')
    answered(monkeypatch, "\n" * 5 + "parts/rub\nHang the bag.\n\n\n\nparts/rub\n")
    assert main(["new", "with-part"]) == 0
    assert [step.id for step in load("with-part").steps] == ["rub-rub", "hang-bag", "rub-2-rub"]


@pytest.mark.parametrize(
    ("name", "answers", "code", "says"),
    [
        ("Bag Change", "", 2, "is not a valid checklist name"),
        ("../out", "", 2, "is not a valid checklist name"),
        ("limits", "", 2, "is not a valid checklist name"),
        ("primary-line", "", 1, "would hide it"),
        ("empty", "", 1, "no steps"),
        ("wrong", "\n" * 5 + "Hang it.\n\nmaybe\n", 2, '"maybe" does not answer'),
        ("ended", "\n" * 5 + "Is it clear?\n", 2, "The answers end before the question: What to do"),
    ],
)
def test_new_refuses(
    own_folder: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    name: str,
    answers: str,
    code: int,
    says: str,
) -> None:
    """Names that are none, nothing to write, and answers from a file that are none; nothing is left behind."""
    answered(monkeypatch, answers)
    assert main(["new", name]) == code
    assert says in capsys.readouterr().err
    assert not own_folder.exists()


def test_new_overwrites_nothing(own_folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A checklist that is there stays as it is."""
    own_folder.mkdir()
    path = written(own_folder, GOOD, "mine")
    assert main(["new", "mine"]) == 1
    assert "already exists" in capsys.readouterr().err
    assert Path(path).read_text(encoding="utf-8") == GOOD


def test_ids_are_made_of_the_first_words() -> None:
    """Short, lower case, and never the same twice."""
    taken: set[str] = set()
    assert [step_id(line, taken) for line in ("Hang the bag.", "Hang a bag!", "15 \u00b5g?")] == [
        "hang-bag",
        "hang-bag-2",
        "g",
    ]


# Diff.

DIFFERENCES = [
    ('title = "Flow check"', 'title = "Flow"', 'head: title: was "Flow check", is "Flow"'),
    ("critical = true\n", "", "look: is no longer critical"),
    ("gate = true\n", "", "start: is no longer a gate"),
    ("gate = true", "gate = true\ncritical = true", "start: is critical now"),
    (
        'hint = "Hold it',
        'hint = "Put it',
        'look: cue: was "Hold it against the light.", is "Put it against the light."',
    ),
    ('if_wrong = "Stop the pump."\n', "", 'look: advice when not right: "Stop the pump." was taken out'),
    ('right = "yes"', 'right = "no"', "look: expected was yes, is no"),
    ('unit = "mL/h"', 'unit = "mL/min"', "rate: expected was a number in millilitres per hour, is a number in"),
    ('key = "primary.rate"', 'key = "secondary.rate"', "rate: what is expected has other details"),
    ('after = ["look"]\n', "", 'rate: what must come first: without "look"'),
    ("gate = true", "gate = true\ntries = 2", 'start: allowed tries: was "no limit", is "2"'),
    ('id = "start"', 'id = "begin"', "begin: called start before"),
    ('id = "look"', 'id = "see"', "see: called look before"),
    ("after_s = 60", "after_s = 90", 'when settings are lost: was "after 60 s, back to rate", is "after 90 s'),
    ("gate = true", 'gate = true\napplies = [{ key = "secondary.drug" }]', "start: when it applies: was"),
]


@pytest.mark.parametrize(("old", "new", "says"), DIFFERENCES)
def test_each_difference_is_told_in_words(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], old: str, new: str, says: str
) -> None:
    """One change, one line; an unchanged version is told."""
    text = changed(old, new).replace('after = ["look"]', 'after = ["see"]' if "see" in new else 'after = ["look"]')
    before, after = written(tmp_path, GOOD, "a"), written(tmp_path, text, "b")
    assert main(["diff", before, after]) == 0
    told = capsys.readouterr()
    assert says in told.out
    assert len(told.out.splitlines()) == 1
    assert "Both are version 1.0.0" in told.err


def test_steps_come_go_and_move(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A step that moved is told once, not as the others having moved; added and taken out are told with their line."""
    steps = [f'[[steps]]\nid = "s{n}"\npart = "A"\nsay = "Do number {n}."\n' for n in range(5)]
    head = GOOD[: GOOD.index("[[steps]]")]
    before = written(tmp_path, head + "".join(steps), "a")
    order = [steps[4], steps[0], steps[1], steps[3], steps[3].replace("3", "9")]
    after = written(tmp_path, head.replace("1.0.0", "1.1.0") + "".join(order), "b")
    assert main(["diff", "--json", before, after]) == 0
    told = capsys.readouterr()
    rows = [json.loads(line) for line in told.out.splitlines()]
    assert [(row["step"], row["kind"]) for row in rows] == [
        ("", "head"),
        ("s4", "moved"),
        ("s9", "added"),
        ("s2", "taken out"),
    ]
    assert rows[1]["words"] == "moved from place 5 to place 1"
    assert told.err == ""


def test_what_does_not_differ_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Comments and layout are no difference."""
    before, after = written(tmp_path, GOOD, "a"), written(tmp_path, f"# new\n{GOOD}", "b")
    assert main(["diff", before, after]) == 0
    assert capsys.readouterr() == ("", "They do not differ.\n")


@pytest.mark.sound
def test_a_rehearsal_is_written_as_sound(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Every line with quiet between: as long as it says, and longer with all that can be said."""
    path = written(tmp_path)
    lengths = []
    for further in ([], ["--all"]):
        assert main(["rehearse", path, "-o", str(tmp_path / "r.wav"), *further]) == 0
        told = capsys.readouterr().out
        sound = soundfile.info(tmp_path / "r.wav")
        assert f"3 steps, {round(sound.duration, 2):.0f} s of speech" in told
        lengths.append(sound.duration)
    assert 4 < lengths[0] < lengths[1]
    assert main(["rehearse", path, "-o", str(tmp_path / "r.txt")]) == 2
