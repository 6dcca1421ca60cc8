"""The place where a mutant is tried: a copy of the project, and a process forked for each mutant.

The process that forks has everything loaded that the tests import from elsewhere, and nothing of the project: so a
child starts in no time, and reads the project with the fault from disk, constants and tables included. The programs
that a test starts read it there, too.
"""

import importlib
import os
import resource
import select
import shutil
import signal
import sys
import time
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest

HOUSE = Path(__file__).parents[2]
PARTS = ("assistant", "checklists", "models", "tests", "pyproject.toml", "README.md", "DEVELOPERS.md")
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


def load_beforehand(modules: list[str]) -> None:
    """Load what every child would load, nothing of the project."""
    for name in modules:
        with suppress(Exception):
            importlib.import_module(name)


class Chosen:
    """A plug-in that runs these tests alone, in this order; the first failure is what is reported."""

    def __init__(self, tests: list[str]) -> None:
        self._place = {test: place for place, test in enumerate(tests)}
        self.failed = ""

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        items[:] = sorted(
            (item for item in items if item.nodeid in self._place), key=lambda item: self._place[item.nodeid]
        )

    def pytest_sessionstart(self) -> None:
        # A failure is enough: nobody reads the smallest example.
        from hypothesis import Phase, settings

        settings.register_profile("brief", settings(), phases=(Phase.explicit, Phase.generate))
        settings.load_profile("brief")

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed and not self.failed:
            self.failed = report.nodeid


def run_tests(tests: list[str]) -> str:
    """Run these tests up to the first failure; return its name, what else went wrong, or "" where all pass."""
    chosen = Chosen(tests)
    files = list(dict.fromkeys(test.partition("::")[0] for test in tests))
    code = pytest.main([*files, "-q", "-x", "--tb=no", "-p", "no:cacheprovider"], plugins=[chosen])
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
        finally:
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
    nowhere = os.open(os.devnull, os.O_RDWR)
    for stream in (0, 1, 2):
        os.dup2(nowhere, stream)
    resource.setrlimit(resource.RLIMIT_AS, (MOST_BYTES, MOST_BYTES))
    os.chdir(tree)
    sys.dont_write_bytecode = not writes_bytecode
    os.environ["PYTHONPATH"] = str(tree)
    if not writes_bytecode:
        os.environ["PYTHONDONTWRITEBYTECODE"] = "1"
    sys.path[:] = [str(tree), *(place for place in sys.path if Path(place or ".").resolve() != HOUSE)]
    for name in [name for name in sys.modules if name.split(".")[0] in ("assistant", "tests")]:
        del sys.modules[name]
