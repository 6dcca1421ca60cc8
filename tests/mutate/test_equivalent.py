"""The list of equivalent mutants: well formed, and about functions that are there."""

import ast
import re
from pathlib import Path

import pytest

from tests.mutate.equivalent import LIST, digest_of, listed

TOP = Path(__file__).parents[2]
NAME = re.compile(r"(?P<module>assistant(?:\.[a-z_]+)+)\.(?P<function>(?:[A-Z]\w*\.)?[a-z_]\w*)#[1-9]\d*")


def functions(module: str) -> set[str]:
    """Functions and methods of a module."""
    file = TOP.joinpath(*module.split(".")).with_suffix(".py")
    body = ast.parse(file.read_text(encoding="utf-8")).body
    found = {node.name for node in body if isinstance(node, ast.FunctionDef)}
    for node in body:
        if isinstance(node, ast.ClassDef):
            found |= {f"{node.name}.{inner.name}" for inner in node.body if isinstance(inner, ast.FunctionDef)}
    return found


@pytest.mark.parametrize("name", listed())
def test_what_is_listed_is_there(name: str) -> None:
    """Each name is that of a fault in a function of this program; the command tells whether it is still the same."""
    parts = NAME.fullmatch(name)
    assert parts is not None
    assert parts["function"] in functions(parts["module"])
    assert re.fullmatch("[0-9a-f]{12}", listed()[name])


def test_a_list_without_a_reason_or_with_a_name_twice_is_refused(tmp_path: Path) -> None:
    """Nothing is called equivalent without saying why."""
    bad = tmp_path / "bad.toml"
    group = '[[equivalent]]\nbecause = "{}"\nmutants = {{ "a.b.c#1" = "0" }}\n'
    bad.write_text(group.format("It is the same."), encoding="utf-8")
    assert listed(bad) == {"a.b.c#1": "0"}
    for text in (group.format(" "), group.format("So.") * 2):
        bad.write_text(text, encoding="utf-8")
        with pytest.raises(ValueError, match="needs one place in the list, and a reason"):
            listed(bad)
    assert LIST.is_file()


def test_a_fault_is_named_by_what_it_changes_and_not_by_its_line() -> None:
    """The same lines elsewhere are the same fault; other lines are another one."""
    assert digest_of("@@ -1 +1 @@\n-a\n+b") == digest_of("@@ -9 +9 @@\n-a\n+b")
    assert digest_of("@@ -1 +1 @@\n-a\n+b") != digest_of("@@ -1 +1 @@\n-a\n+c")
