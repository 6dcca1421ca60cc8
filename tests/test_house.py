"""The house as a whole: imports run downwards, documents say what is true, the wheel carries its papers."""

import doctest
import re
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from assistant import guide as guide_room
from assistant.cli.verbs import VERBS
from assistant.guide.table import TABLE
from assistant.spoken.meaning import Command
from tests.cli.terminals import Terminal
from tests.guide.diagram import diagram
from tests.guide.touched import answers

TOP = Path(__file__).parents[1]
ALLOWED_TOP = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "assistant", "checklists", "models", "tests"}


def tracked() -> list[str]:
    if shutil.which("git") is None or not (TOP / ".git").exists():
        pytest.skip("not a git checkout")
    listing = subprocess.run(["git", "ls-files"], cwd=TOP, capture_output=True, text=True, check=True)
    return listing.stdout.splitlines()


def test_imports_run_downwards_only():
    """The contracts in pyproject.toml hold; adding an upward import breaks this."""
    linter = Path(sys.executable).with_name("lint-imports")
    done = subprocess.run([str(linter)], cwd=TOP, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout


def test_every_room_is_in_the_contract():
    """A new room has its place in the layers before it is used."""
    contract = (TOP / "pyproject.toml").read_text(encoding="utf-8")
    rooms = {
        path.stem
        for path in (TOP / "assistant").iterdir()
        if (path.is_dir() and (path / "__init__.py").exists()) or path.suffix == ".py"
    }
    named = set(re.findall(r'"assistant\.(\w+)"', contract))
    assert rooms - {"__init__"} <= named


def test_the_top_level_holds_only_what_it_should():
    """Files at the top are the agreed ones; hidden files aside."""
    top = {name.split("/")[0] for name in tracked()}
    assert {name for name in top if not name.startswith(".")} <= ALLOWED_TOP


@pytest.mark.parametrize("verb", VERBS)
def test_every_verb_is_documented(verb):
    """README names each verb."""
    assert f"checkoff {verb}" in (TOP / "README.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("command", list(Command))
def test_every_command_is_in_the_readme(command):
    """What can always be said is told to the newcomer."""
    assert command.value.casefold() in (TOP / "README.md").read_text(encoding="utf-8").casefold()


def test_the_state_diagram_is_the_table():
    """The page beside the guide shows the transition table as it is."""
    assert diagram() in (TOP / "assistant" / "guide" / "diagram.md").read_text(encoding="utf-8")
    assert TABLE


def test_the_guide_stays_easy_to_hold():
    """Few modules, none of them long; one answer goes through few files."""
    modules = list((TOP / "assistant" / "guide").glob("*.py"))
    assert len(modules) <= 20
    assert [path.name for path in modules if len(path.read_text(encoding="utf-8").splitlines()) > 400] == []
    counted = {name: len(files) for name, files in answers().items()}
    assert counted.pop("both together") <= 20
    assert counted.pop('a typed "done"') <= 10
    assert max(counted.values()) <= 14, counted


def test_the_guide_s_example_runs():
    """The ten lines that embed a guide do what they say."""
    tried = doctest.testmod(guide_room)
    assert tried.attempted > 8
    assert tried.failed == 0


def test_every_dependency_is_explained():
    """DEVELOPERS.md says why each library is there."""
    project = (TOP / "pyproject.toml").read_text(encoding="utf-8")
    (block,) = re.findall(r"^dependencies = \[(.*?)^\]", project, re.S | re.M)
    text = (TOP / "DEVELOPERS.md").read_text(encoding="utf-8")
    names = re.findall(r'"([A-Za-z0-9_-]+)[>=]', block)
    assert names
    assert [name for name in names if f"`{name}`" not in text] == []


def test_the_readme_opens_with_the_job():
    """The first paragraph says what it is for, then come the cautions and the two commands."""
    text = (TOP / "README.md").read_text(encoding="utf-8")
    parts = ("skills-lab instructor", "For training only", "sh assistant/start", "sh tests/run")
    places = [text.index(part) for part in parts]
    assert places == sorted(places)


def test_the_session_in_the_readme_is_a_real_one(tmp_path):
    """The example is what the named command shows on a terminal."""
    call = ("demo", "primary-line", "--slip", "tenfold", "--seed", "2", "--records", str(tmp_path))
    with Terminal(*call) as terminal:
        shown = terminal.ended()
    (example,) = re.findall(r"```text\n(.*?)```", (TOP / "README.md").read_text(encoding="utf-8"), re.S)
    assert example in shown


@pytest.mark.slow
def test_the_wheel_carries_checklists_and_orders(tmp_path):
    """An installed program finds its papers from any folder, without the checkout."""
    subprocess.run(
        [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(tmp_path), str(TOP)],
        check=True,
        capture_output=True,
    )
    (wheel,) = tmp_path.glob("*.whl")
    installed = tmp_path / "installed"
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(installed)
    environment = {"PYTHONPATH": str(installed), "HOME": str(tmp_path), "PATH": ""}
    where = subprocess.run(
        [sys.executable, "-P", "-c", "import assistant; print(assistant.__file__)"],
        cwd=tmp_path, env=environment, capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert where.stdout.startswith(str(installed))
    done = subprocess.run(
        [sys.executable, "-P", "-m", "assistant", "demo", "--records", str(tmp_path / "records")],
        cwd=tmp_path, env=environment, capture_output=True, text=True,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert "Result: practice completed." in done.stdout
