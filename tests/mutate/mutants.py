"""The small faults that can be put into a module, by mutmut's operators."""

import difflib
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import libcst
from libcst.metadata import MetadataWrapper, PositionProvider
from mutmut.mutation.file_mutation import Mutation, MutationVisitor, deep_replace
from mutmut.mutation.mutators import mutation_operators
from mutmut.mutation.pragma_handling import IgnoredCode


@dataclass(frozen=True)
class Mutant:
    """One fault, not yet put in.

    Attributes:
        name: function and number of the fault in it, ``assistant.guide.gates.first_allowed#3``; of a constant or a
            table, the module and the number.
        path: the module's file, from the project's root.
        first, last: the lines that it changes.
    """

    name: str
    path: str
    first: int
    last: int
    _module: libcst.Module
    _mutation: Mutation

    @property
    def room(self) -> str:
        """The room of the module."""
        return self.name.split(".")[1]

    def text(self) -> str:
        """The whole module with the fault."""
        changed = deep_replace(self._module, self._mutation.original_node, self._mutation.mutated_node)
        assert isinstance(changed, libcst.Module)
        return changed.code

    def diff(self) -> str:
        """What the fault changes, line by line."""
        before, after = self._module.code.splitlines(), self.text().splitlines()
        lines = difflib.unified_diff(before, after, lineterm="", n=0)
        return "\n".join(line for line in lines if not line.startswith(("---", "+++")))


def mutants(root: Path, rooms: list[str], *, tables: bool) -> Iterator[Mutant]:
    """Every mutant of these rooms, in the order of the files.

    Args:
        root: the folder in which ``assistant/`` lies.
        rooms: folders of it.
        tables: those outside of functions, too: constants, tables, phrases.
    """
    for room in rooms:
        for file in sorted((root / "assistant" / room).rglob("*.py")):
            yield from _of_module(file, file.relative_to(root), tables=tables)


def _of_module(file: Path, path: Path, *, tables: bool) -> Iterator[Mutant]:
    module = libcst.parse_module(file.read_text(encoding="utf-8"))
    wrapper = MetadataWrapper(module, unsafe_skip_copy=True)
    # No line of this project asks to be left alone.
    visitor = MutationVisitor(mutation_operators, IgnoredCode(set(), set(), set()))
    wrapper.visit(visitor)
    places = wrapper.resolve(PositionProvider)
    names = _functions(module)
    dotted = ".".join(path.with_suffix("").parts)
    count: Counter[str] = Counter()
    for mutation in visitor.mutations:
        function = mutation.contained_by_top_level_function
        name = f"{dotted}.{names[function]}" if function in names else dotted
        if function not in names and not tables:
            continue
        count[name] += 1
        at = places[mutation.original_node]
        yield Mutant(f"{name}#{count[name]}", str(path), at.start.line, at.end.line, module, mutation)


def _functions(module: libcst.Module) -> dict[libcst.CSTNode, str]:
    """Functions and methods of a module with their names."""
    found: dict[libcst.CSTNode, str] = {}
    for node in module.body:
        if isinstance(node, libcst.FunctionDef):
            found[node] = node.name.value
        elif isinstance(node, libcst.ClassDef):
            inner = (child for child in node.body.body if isinstance(child, libcst.FunctionDef))
            found |= {child: f"{node.name.value}.{child.name.value}" for child in inner}
    return found
