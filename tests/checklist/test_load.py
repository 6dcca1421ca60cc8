"""Checklists from files: what loads, and what each broken file is told."""

import hashlib
import os
import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.checklist.library import library_folder
from assistant.checklist.load import available, load, load_sheet, read_sheet
from assistant.checklist.model import Expiry, NumberAsked
from assistant.checklist.paper_file import LARGEST_BYTES
from assistant.errors import ChecklistError
from assistant.spoken.meaning import Trouble
from tests.checklist.papers import GOOD, changed, written


def test_a_good_file_gives_the_whole_checklist(tmp_path: Path) -> None:
    """Name, steps, expectations and digest come from the file and nothing is lost."""
    checklist = load(written(tmp_path))
    assert checklist.name == "flow"
    assert [step.id for step in checklist.steps] == ["look", "rate", "start"]
    assert checklist.step("rate").expect == NumberAsked(kind="number", unit="mL/h", key="primary.rate")
    assert checklist.step("start").expires == Expiry(after_s=60, reopen=("rate",), say="Enter it again.")
    assert checklist.digest == hashlib.sha256(GOOD.encode()).hexdigest()
    with pytest.raises(KeyError):
        checklist.step("nothing")


def test_what_editors_do_to_a_file(tmp_path: Path) -> None:
    """Line ends of other systems, a mark before the text and no-break spaces change nothing but the digest."""
    text = changed("Start the pump.", "Give 5\u00a0mL, then 5\u202fmL.")
    path = tmp_path / "flow.toml"
    path.write_bytes(b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode())
    assert [step.id for step in load(str(path)).steps] == ["look", "rate", "start"]
    assert load_sheet(str(path)).places["start"].line_of("say") == 30
    path.write_bytes(b"\xef\xbb\xbf" + text.replace("\n", "\r\n").replace("say = ", "sya = ").encode())
    with pytest.raises(ChecklistError, match="line 11, step"):
        load(str(path))


BROKEN = [
    # what is changed, with what, line, what the sentence says, what the remedy says
    ('title = "Flow check"', 'title = "Flow check', 1, "this is not TOML", "Close the text"),
    ('title = "Flow check"\n', "", 1, '"title" is missing.', "Add title"),
    ('title = "Flow check"', "title = 4", 1, '"title" must be a text.', "quotation marks"),
    ('title = "Flow check"', 'titel = "Flow check"', 1, '"titel" is not a field here.', 'Did you mean "title"?'),
    ('title = "Flow check"', 'name = "flow"', 1, '"name" is not written in the file.', "Take the line out"),
    ('cautions = ["Training only."]', "cautions = []", 5, '"cautions" is an empty list.', "at least one"),
    ('cautions = ["Training only."]', 'cautions = "Training"', 5, '"cautions" must be a list.', "square brackets"),
    ('say = "Start the pump."', 'say = ""', 30, '"say" is empty.', "Write what it should say"),
    ('say = "Start the pump."', f'say = "{"a" * 301}"', 30, "longer than 300 characters", "more"),
    ('say = "Start the pump."', "say = true", 30, '"say" must be a text.', "quotation marks"),
    ('say = "Start the pump."', 'sya = "Start the pump."', 30, '"sya" is not a field here.', 'Did you mean "say"?'),
    ('id = "start"', 'id = "look"', 28, "this id is taken already", "an id of its own"),
    ('id = "start"', 'id = "Start now"', 28, '"Start now" makes no id.', "small letters"),
    ('id = "start"\n', "", 27, '"id" is missing.', "Add id"),
    (
        'after = ["look"]',
        'after = ["lok"]',
        24,
        '"after" names "lok", and no step has that id.',
        'Did you mean "look"?',
    ),
    ('after = ["look"]', 'after = ["rate"]', 24, 'the step names itself in "after".', "own id"),
    ('after = ["look"]', 'after = "look"', 24, '"after" must be a list.', "square brackets"),
    ('reopen = ["rate"]', 'reopen = ["speed"]', 33, '"expires" names "speed"', "Name the id"),
    ('after = ["look"]', f"after = {['x'] * 101}", 24, '"after" names more than 100.', "fewer"),
    ('say = "Start the pump."', f'say = "Go."\nmore = "{"a" * 1001}"', 31, "longer than 1000 characters", "shorter"),
    ('reopen = ["rate"]', "reopen = []", 35, '"reopen" is an empty list.', "at least one"),
    ("after_s = 60", "after_s = 0", 34, '"after_s" must be more than 0.', "Change the number"),
    ("after_s = 60", "after_s = 9999", 34, '"after_s" must be at most 3600.', "Change the number"),
    ("after_s = 60", 'after_s = "a minute"', 34, '"after_s" must be a number.', "without quotation marks"),
    ("after_s = 60", "after_s = 60.5", 34, '"after_s" must be a number.', "without quotation marks"),
    ("after_s = 60", "after_m = 1\nafter_s = 60", 34, '"after_m" is not a field here.', 'Did you mean "after_s"?'),
    ('kind = "number"', 'kind = "guess"', 23, '"guess" is nothing that a step can expect.', "It can be"),
    ('kind = "number", ', "", 23, "does not say its kind", "Add kind"),
    ('unit = "mL/h", ', "", 23, '"unit" is missing.', "Add unit"),
    ('unit = "mL/h"', 'units = "mL/h"', 23, '"units" is not a field here.', 'Did you mean "unit"?'),
    ('right = "yes"', 'right = "maybe"', 16, '"maybe" is no right.', "yes"),
    ("critical = true", 'critical = "very"', 12, '"critical" must be true or false.', "true or false"),
    ('say = "Start the pump."', 'say = "Start\\u202ethe pump."', 30, "holds a control character", "Take it out"),
    ('say = "Start the pump."', 'say = "Start\\u001b[2Jthe pump."', 30, "holds a control character", "Take it out"),
]


@pytest.mark.parametrize(("old", "new", "line", "says", "remedy"), BROKEN)
def test_a_broken_file_is_told_where_and_what_to_do(
    tmp_path: Path, old: str, new: str, line: int, says: str, remedy: str
) -> None:
    """Every fault is named with the file and its line, in one sentence, with a remedy."""
    text = changed(old, new)
    if new.startswith("units"):
        text = text.replace('units = "mL/h"', 'unit = "mL/h", units = "mL/h"')
    path = written(tmp_path, text)
    with pytest.raises(ChecklistError) as caught:
        load(path)
    assert re.match(rf"{re.escape(path)}, line {line}\b", caught.value.what), caught.value.what
    assert says in caught.value.what
    assert remedy in caught.value.remedy
    assert "\n" not in str(caught.value)
    assert "\x1b" not in str(caught.value)


def test_a_step_is_named_beside_its_line(tmp_path: Path) -> None:
    """The sentence names the step, so that it is found after the lines have moved."""
    with pytest.raises(ChecklistError, match=r'line 30, step "start": "sya"'):
        load(written(tmp_path, changed('say = "Start the pump."', 'sya = "x"')))


def test_lines_inside_a_long_text_are_not_taken_for_steps(tmp_path: Path) -> None:
    """What looks like a header inside a text of several lines does not move the line that is named."""
    text = changed('id = "rate"', 'more = """\n[[steps]]\nid = "x"\n"""\nid = "rate"')
    with pytest.raises(ChecklistError, match=r"line 34, step"):
        load(written(tmp_path, text.replace('say = "Start the pump."', "say = 1")))


UNREADABLE = [
    (b"title = \xff\xfe", "line 1: this is not UTF-8 text", "UTF-8"),
    (b"#" * (LARGEST_BYTES + 1), "larger than 1,000,000 bytes", "Split it"),
    (b"a = " + b"[" * 5000, "more than a TOML reader takes", "plainly"),
    (b"a = " + b"9" * 5000, "more than a TOML reader takes", "plainly"),
    (b".".join([b"a"] * 20000) + b" = 1", "line 1: this line has more than 100 points", "Break it up"),
    (b".".join([b"a"] * 90) + b" = 1", "is not a field here", "Known are"),
    (b"", "line 1", "Add"),
    (b'steps = ["look"]', "line 1, step number 1: this is no step", "[[steps]]"),
    (b"steps = 4", '"steps" must be a list', "[[steps]]"),
    (b"[[steps]]", "line 1, step number 1:", "Add"),
    (b"[[step]]\nid = 'a'", '"step" is not a field here', 'Did you mean "steps"?'),
    (b"\x00", "this is not TOML", "Compare"),
]


@pytest.mark.parametrize(("content", "says", "remedy"), UNREADABLE)
def test_bytes_that_are_no_checklist(tmp_path: Path, content: bytes, says: str, remedy: str) -> None:
    """Wrong encodings, giant files and nestings end in one sentence."""
    path = tmp_path / "odd.toml"
    path.write_bytes(content)
    with pytest.raises(ChecklistError) as caught:
        load(str(path))
    assert says in caught.value.what
    assert remedy in caught.value.remedy


def test_what_is_no_file(tmp_path: Path) -> None:
    """A folder, a missing file, an impossible path: each has its sentence."""
    (tmp_path / "folder.toml").mkdir()
    for path, says in (
        (f"{tmp_path}/folder.toml", "is no file"),
        (f"{tmp_path}/none.toml", "There is no file"),
        ("~nobody-by-that-name/x.toml", "There is no file"),
        ("a\0b.toml", "There is no file"),
        (f"{tmp_path}/{'x' * 300}.toml", "cannot be read"),
        ("/dev/zero/x.toml", "There is no file"),
    ):
        with pytest.raises(ChecklistError, match=says):
            load(path)


@pytest.mark.skipif(os.geteuid() == 0, reason="the superuser may read every file")
def test_a_file_that_may_not_be_read(tmp_path: Path) -> None:
    """A file without permission is told as one."""
    path = Path(written(tmp_path))
    path.chmod(0)
    with pytest.raises(ChecklistError, match="cannot be read"):
        load(str(path))


def test_an_unknown_name_gets_the_nearest_ones() -> None:
    """A misspelt name is answered with the names that are near, or with all."""
    with pytest.raises(ChecklistError, match=r'no checklist called "primery-line".* Did you mean "primary-line'):
        load("primery-line")
    with pytest.raises(ChecklistError, match=r"Known are: .*primary-line"):
        load("xyz")
    with pytest.raises(ChecklistError, match="no checklist called"):
        load("limits")
    with pytest.raises(ChecklistError, match=r"No checklist is named\. Name one of: .*primary-line"):
        load("")


def test_the_users_folder_comes_first(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A checklist of the user is found by name and hides the library's."""
    monkeypatch.setenv("CHECKOFF_CHECKLISTS", str(tmp_path))
    written(tmp_path, name="primary-line")
    written(tmp_path, name="own")
    assert load("primary-line").title == "Flow check"
    assert load("OWN").title == "Flow check"
    assert list(available()) == sorted({"own", "primary-line", "secondary-line", "primary-and-secondary", *available()})
    assert available()["secondary-line"] == library_folder() / "secondary-line.toml"


# Includes.

PART = '[[steps]]\nid = "{id}"\npart = "Before"\nsay = "Clean your hands."\n'


def _including(names: str) -> str:
    return changed('order = "oh-101"', f'order = "oh-101"\ninclude = {names}')


def test_included_steps_come_first_and_count_in_the_digest(tmp_path: Path) -> None:
    """Steps are joined in order; the digest covers every file, in order."""
    part = PART.format(id="hands")
    written(tmp_path, part, "part")
    text = _including('["part"]')
    sheet = load_sheet(written(tmp_path, text))
    assert [step.id for step in sheet.checklist.steps] == ["hands", "look", "rate", "start"]
    assert sheet.checklist.digest == hashlib.sha256((text + part).encode()).hexdigest()
    assert sheet.places["hands"].paper.path.name == "part.toml"
    assert sheet.places["hands"].line == 1
    assert sheet.places["rate"].line == 20


def test_an_include_may_lie_in_a_folder_below(tmp_path: Path) -> None:
    """Parts can be kept in a folder of their own, inside the checklist's folder."""
    (tmp_path / "parts").mkdir()
    written(tmp_path / "parts", PART.format(id="hands"), "hands")
    assert len(load(written(tmp_path, _including('["parts/hands"]'))).steps) == 4


INCLUDES = [
    ('["../outside"]', "lies outside the folder", "Put a copy"),
    ('["/etc/passwd"]', "lies outside the folder", "Put a copy"),
    ('["link"]', "lies outside the folder", "Put a copy"),
    ('["none"]', "there is no checklist", "Check the name"),
    ('["flow"]', "is included already", "once"),
    ('["loop"]', "is included already", "once"),
    ('["part", "part"]', "is included already", "once"),
    ('["twin"]', "this id is taken already", "an id of its own"),
    ('["typo"]', '"stepz" is not a field here.', 'Did you mean "steps"?'),
    ('"part"', "must be a list of names", "include ="),
    ("[4]", "must be a list of names", "include ="),
    ('[""]', "names no file", "Name a checklist"),
    ('["a\\u0000b"]', "control character", "Take it out"),
    (f'["{"x" * 400}"]', "there is no checklist", "Check the name"),
]


@pytest.mark.parametrize(("names", "says", "remedy"), INCLUDES)
def test_an_include_that_cannot_be(tmp_path: Path, names: str, says: str, remedy: str) -> None:
    """Includes cannot climb out, loop, repeat or name what is not there."""
    folder = tmp_path / "inside"
    folder.mkdir()
    written(tmp_path, PART.format(id="outside"), "outside")
    (folder / "link.toml").symlink_to(tmp_path / "outside.toml")
    written(folder, PART.format(id="hands"), "part")
    written(folder, 'include = ["flow"]\n', "loop")
    written(folder, PART.format(id="look"), "twin")
    written(folder, PART.format(id="hands").replace("steps", "stepz"), "typo")
    with pytest.raises(ChecklistError) as caught:
        load(written(folder, _including(names)))
    assert says in caught.value.what
    assert "line " in caught.value.what
    assert remedy in caught.value.remedy


def test_many_files_are_refused(tmp_path: Path) -> None:
    """A chain of files ends at a limit, not with the stack."""
    for number in range(60):
        written(tmp_path, f'include = ["f{number + 1}"]\n', f"f{number}")
    with pytest.raises(ChecklistError, match="more than 50 files"):
        load(written(tmp_path, _including('["f0"]')))


def test_limits_keep_the_loader_quick(tmp_path: Path) -> None:
    """Too many steps are refused at once; of very many faults a hundred are told."""
    many = "".join(PART.format(id=f"s{number}") for number in range(501))
    with pytest.raises(ChecklistError, match="more than 500 steps"):
        load(written(tmp_path, GOOD + many))
    sheet, faults = read_sheet(written(tmp_path, GOOD + PART.format(id="look") * 400))
    assert sheet is None
    assert len(faults) == 100
    sheet, faults = read_sheet(written(tmp_path, "".join(f"k{number} = 1\n" for number in range(500)) + GOOD))
    assert sheet is None
    assert len(faults) == 100


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(at=st.integers(0, len(GOOD)), length=st.integers(0, 30), put=st.text(max_size=12))
def test_no_damage_escapes_the_loader(tmp_path: Path, at: int, length: int, put: str) -> None:
    """Whatever happens to a file, it loads or ends in the project's own error, in one line."""
    path = tmp_path / "damaged.toml"
    path.write_text(GOOD[:at] + put + GOOD[at + length :], encoding="utf-8", errors="surrogatepass")
    try:
        load(str(path))
    except ChecklistError as error:
        assert error.what
        assert "\n" not in str(error)


def test_steps_that_wait_for_each_other_are_refused(tmp_path):
    """A circle of conditions can never be lived through; its file and step are named."""
    text = (library_folder() / "primary-line.toml").read_text(encoding="utf-8")
    circle = text.replace('after = ["p-clamp-closed"]', 'after = ["p-clamp-closed", "p-chamber"]')
    file = tmp_path / "circle.toml"
    file.write_text(circle, encoding="utf-8")
    with pytest.raises(ChecklistError, match="wait for each other"):
        load(str(file))


def test_a_part_brings_its_plans_for_trouble_and_what_is_asked_again(tmp_path):
    """Ids get the prefix, a plan of a part holds at its own steps and comes before that of the checklist."""
    (tmp_path / "parts").mkdir()
    (tmp_path / "parts" / "bag.toml").write_text(
        '[[steps]]\nid = "label"\npart = "Bag"\nsay = "Read the label."\n'
        '[[steps]]\nid = "leaks"\npart = "Bag"\nsay = "Is it free of leaks?"\nexpect = { kind = "question" }\n'
        'reopen = ["label"]\n'
        '[[troubles]]\nkind = "a leak"\nsay = "Take another bag."\nback_to = "label"\nreopen = ["leaks"]\n',
        encoding="utf-8",
    )
    path = tmp_path / "whole.toml"
    path.write_text(
        'title = "T"\nversion = "1.0.0"\npurpose = "P"\ncautions = ["C"]\n'
        '[[steps]]\ninclude = "parts/bag"\nprefix = "new"\n'
        '[[steps]]\nid = "hang"\npart = "Bag"\nsay = "Hang it up."\n'
        '[[troubles]]\nkind = "a leak"\nsay = "Close the clamp."\n',
        encoding="utf-8",
    )
    checklist = load(str(path))
    assert checklist.step("new-leaks").reopen == ("new-label",)
    inside = checklist.plan_for(Trouble.LEAK, "new-leaks")
    assert inside is not None
    assert (inside.back_to, inside.reopen, inside.at) == ("new-label", ("new-leaks",), ("new-label", "new-leaks"))
    outside = checklist.plan_for(Trouble.LEAK, "hang")
    assert outside is not None
    assert (outside.say, outside.at) == ("Close the clamp.", ())
    assert checklist.plan_for(Trouble.PAIN, "hang") is None
