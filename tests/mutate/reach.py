"""Which tests reach a line, and how long they take: learned by running them once."""

import json
import sys
import time
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import coverage
import pytest

WITHOUT = "not sound and not slow"
"""No devices, and no test that takes minutes: a mutant is tried by what is quick."""


class Learner:
    """A plug-in that notes, test by test, which lines run.

    What a fixture does that several tests share counts for each of them, not only for the first.
    """

    def __init__(self, cover: coverage.Coverage) -> None:
        self.cover = cover
        self.seconds: dict[str, float] = {}
        self.shared: dict[str, list[str]] = {}
        self.failed: set[str] = set()

    def pytest_collection_finish(self, session: pytest.Session) -> None:
        for item in session.items:
            known = getattr(item, "_fixtureinfo").name2fixturedefs  # noqa: B009 - pytest offers no other way
            fixtures = [fixture for fixtures in known.values() for fixture in fixtures if fixture.scope != "function"]
            self.shared[item.nodeid] = sorted({_name(fixture) for fixture in fixtures})

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        self.cover.switch_context(item.nodeid)
        began = time.perf_counter()
        done = yield
        self.seconds[item.nodeid] = round(time.perf_counter() - began, 4)
        return done

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(self, fixturedef: pytest.FixtureDef, request: pytest.FixtureRequest) -> Iterator[None]:
        if fixturedef.scope == "function":
            return (yield)
        self.cover.switch_context(_name(fixturedef))
        try:
            return (yield)
        finally:
            self.cover.switch_context(getattr(request, "_pyfuncitem").nodeid)  # noqa: B009 - as above

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed or report.skipped:
            self.failed.add(report.nodeid)


def _name(fixture: pytest.FixtureDef) -> str:
    return f"fixture {fixture.baseid}::{fixture.argname}"


def learn(tree: Path, folder: Path, rooms: list[str], tests: list[str], files: dict[str, str]) -> None:
    """Run these tests in this process and write down what they reach; those that fail without a fault are left out.

    Args:
        tree: the copy.
        folder: where it is written.
        rooms: whose lines count.
        tests: folders of tests.
        files: the digests of all files of tests, to be kept with it.
    """
    cover = coverage.Coverage(
        data_file=str(folder / "reach.sqlite"),
        config_file=False,
        messages=False,
        include=[str(tree / "assistant" / room / "*") for room in rooms],
    )
    learner = Learner(cover)
    cover.start()
    pytest.main([*tests, "-q", "-m", WITHOUT, "-p", "no:cacheprovider"], plugins=[learner])
    cover.stop()
    cover.save()
    modules = sorted(name for name in sys.modules if not name.startswith(("_", "assistant", "tests", "conftest")))
    known = {
        "tests": {name: took for name, took in learner.seconds.items() if name not in learner.failed},
        "shared": learner.shared,
        "failed": sorted(learner.failed),
        "modules": modules,
        "files": files,
    }
    (folder / "tests.json").write_text(json.dumps(known), encoding="utf-8")


class Reach:
    """What was learned.

    Attributes:
        seconds: how long each test takes.
        modules: what the tests import from elsewhere.
        files: digests of the files of tests.
    """

    def __init__(self, tree: Path, folder: Path) -> None:
        known = json.loads((folder / "tests.json").read_text(encoding="utf-8"))
        self.seconds: dict[str, float] = known["tests"]
        self.modules: list[str] = known["modules"]
        self.failed: list[str] = known["failed"]
        self.files: dict[str, str] = known["files"]
        self._users: dict[str, list[str]] = {}
        for test, fixtures in known["shared"].items():
            for fixture in fixtures:
                self._users.setdefault(fixture, []).append(test)
        self._tree = tree
        self._data = coverage.CoverageData(basename=str(folder / "reach.sqlite"))
        self._data.read()
        self._lines = cache(lambda path: self._data.contexts_by_lineno(str(tree / path)))

    def tests(self, path: str, first: int, last: int) -> list[str]:
        """The tests that reach one of these lines; where it runs while modules are loaded, all others after them.

        Where no line of the fault is known (it lies inside a longer expression), the nearest line before it counts.
        """
        lines: dict[int, list[str]] = self._lines(path)
        found = {context for line in range(first, last + 1) for context in lines.get(line, ())}
        if not found:
            before = max((line for line in lines if line < first), default=None)
            found = set(lines[before]) if before is not None else set()
        found |= {user for context in list(found) for user in self._users.get(context, ())}
        others = set(self.seconds) - found if "" in found else set()
        return [*self._quickest_first(found), *self._quickest_first(others)]

    def _quickest_first(self, tests: set[str]) -> list[str]:
        """Those of a file stay together, for what they share; the quickest files come first."""
        known = [test for test in self.seconds if test in tests]
        files: dict[str, float] = {}
        for test in known:
            files[_file(test)] = files.get(_file(test), 0) + self.seconds[test]
        return sorted(known, key=lambda test: (files[_file(test)], _file(test), self.seconds[test]))


def _file(test: str) -> str:
    return test.partition("::")[0]
