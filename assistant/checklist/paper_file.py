"""One authored TOML file: its bytes, its table, and at which line things stand."""

import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property, lru_cache
from pathlib import Path
from typing import Any, get_args
from unicodedata import category

from pydantic import BaseModel, ValidationError

from assistant.checklist.library import nearest
from assistant.checklist.toml_remedy import toml_remedy
from assistant.errors import AssistantError
from assistant.text import quoted

ENCODING = "utf-8-sig"
"""UTF-8; some editors put a mark before it, which TOML does not know and this takes off."""
LARGEST_BYTES = 1_000_000
"""An authored file above this size is refused unread: the longest procedure needs a tenth of it."""

MOST_FAULTS = 100
"""Faults of one file that are told at once; the rest is told when these are mended."""
MOST_DOTS = 100
"""Points in one line; a key of ten thousand points would keep the TOML reader busy for seconds."""

SET_BY_LOADER = ("name", "digest", "lab_has")
"""Fields of a checklist and of an order that no author writes."""

KINDS = ("done", "question", "number", "name", "wait", "choice", "note", "observation", "double-check")
"""What a step can expect."""

_HEADER = re.compile(r"\s*(\[\[?)\s*([A-Za-z0-9_.\"'\- ]+?)\s*\]\]?\s*(#.*)?$")
_FIELD = re.compile(r"\s*[A-Za-z0-9_\"'.-]+\s*=")
_KEY = "[key]"
"""What ends the way to a name that an author chose and that is none."""
_AT_LINE = re.compile(r"\(at line (\d+), column \d+\)")


@dataclass(frozen=True)
class PaperFile:
    """One authored file that could be read and parsed.

    Attributes:
        path: where it lies.
        content: its bytes.
        table: what they say; numbers with a point are Decimal.
        error: what is raised about it.
    """

    path: Path
    content: bytes
    table: Mapping[str, Any]
    error: type[AssistantError]

    def line_of(self, where: Sequence[str | int]) -> int:
        """The line, from 1, of the deepest part of `where` that can be found; 1 where nothing can.

        Args:
            where: the way into the table, such as ``("steps", 3, "expect", "unit")``.
        """
        lines = self._lines
        names = list(where)
        line, block = 1, lines
        match where:
            case [("steps" | "troubles") as table, int(place), *_]:
                headers = self._headers
                starts = [number for number, header in headers if header == table]
                if place >= len(starts):  # written in one line
                    return next((number for number, code in lines if _names(code, table)), 1)
                line = starts[place]
                end = next((number for number, _ in headers if number > line), len(lines) + 1)
                block, names = lines[line - 1 : end - 1], names[2:]
        path = ""
        for name in names:
            if isinstance(name, str):
                path = f"{path}.{name}" if path else name
            line = _below(block, line, path, name) or line
        return line

    def line_with(self, line: int, text: str) -> int:
        """The line of a field that holds a piece of its text; the field's first line where none does.

        Args:
            line: the field's first line.
            text: what is looked for, as it is written.
        """
        lines = self.content.decode(ENCODING).split("\n")
        for number, code in enumerate(lines[line - 1 :], line):
            if number > line and (_FIELD.match(code) or _header(code)):
                break
            if text in code:
                return number
        return line

    @cached_property
    def _lines(self) -> list[tuple[int, str]]:
        return list(_outside_texts(self.content.decode(ENCODING)))

    @cached_property
    def _headers(self) -> list[tuple[int, str]]:
        """The lines at which an entry of a list begins, such as a step, with the name of its list."""
        headers = ((number, _header(code)) for number, code in self._lines)
        return [(number, header[2:]) for number, header in headers if header.startswith("[[") and "." not in header]

    def complain(self, where: Sequence[str | int], what: str, remedy: str) -> AssistantError:
        """The error that names this file, the line and the step."""
        return self.error(f"{self.path}, line {self.line_of(where)}{self._step(where)}: {what}", remedy)

    def complain_about(
        self, invalid: ValidationError, before: Sequence[str | int], model: type[BaseModel]
    ) -> AssistantError:
        """The error for the first thing that a model refused; arguments as in `complaints_about`."""
        return self.complaints_about(invalid, before, model)[0]

    def complaints_about(
        self, invalid: ValidationError, before: Sequence[str | int], model: type[BaseModel]
    ) -> list[AssistantError]:
        """One error for each thing that a model refused.

        Args:
            invalid: what pydantic says.
            before: the way into the table to what was validated.
            model: what it should have been.
        """
        misspelt: list[AssistantError] = []
        others: list[AssistantError] = []
        meant: set[str] = set()
        # A misspelt field leaves another one missing: only the misspelling is told.
        errors = sorted(invalid.errors(include_url=False), key=lambda e: e["type"] != "extra_forbidden")
        for error in errors[:MOST_FAULTS]:
            inside, holder = _walk(model, error["loc"])
            if inside[-1:] == [_KEY]:  # not a value, but the name that it stands under
                field, inside = "name", inside[:-1]
            else:
                field = next((part for part in reversed(inside) if isinstance(part, str)), "")
            if error["type"] == "extra_forbidden":
                known = [name for name in holder.model_fields if name not in SET_BY_LOADER or holder is not model]
                near = nearest(field, known)
                meant.update(name for name in known if quoted(name) in near)
                remedy = near or f"Known are: {', '.join(known)}."
                misspelt.append(self.complain([*before, *inside], f"{quoted(field)} is not a field here.", remedy))
                continue
            what, remedy = _sentence(error["type"], field, error.get("ctx", {}), error.get("input"))
            missing = error["type"] == "missing"
            if not (missing and field in meant):
                others.append(self.complain([*before, *(inside[:-1] if missing else inside)], what, remedy))
        return misspelt + others

    def _step(self, where: Sequence[str | int]) -> str:
        match where:
            case ["steps", int(place), *_]:
                steps = self.table.get("steps")
                step = steps[place] if isinstance(steps, list) and place < len(steps) else None
                named = step.get("id") if isinstance(step, dict) else None
                return f", step {quoted(named)}" if isinstance(named, str) else f", step number {place + 1}"
            case ["troubles", int(place), *_]:
                return f", trouble number {place + 1}"
        return ""


def read_paper(path: Path, error: type[AssistantError]) -> PaperFile:
    """Read and parse one file.

    Raises:
        AssistantError: `error`, where the file cannot be read, is too large, or is no TOML.
    """
    try:
        if not path.is_file():
            if path.exists():
                raise error(f"{path} is no file.", "Name a file that ends with .toml.")
            raise error(f"There is no file {quoted(str(path))}.", "Check the path, or give a name without .toml.")
        with path.open("rb") as stream:
            content = stream.read(LARGEST_BYTES + 1)
    except (OSError, ValueError) as cause:  # ValueError: a zero byte in the path
        reason = cause.strerror if isinstance(cause, OSError) and cause.strerror else "its name makes no path"
        raise error(f"{quoted(str(path))} cannot be read: {reason}.", "Check the path and its permissions.") from cause
    if len(content) > LARGEST_BYTES:
        raise error(f"{path} is larger than {LARGEST_BYTES:,} bytes.", "Split it, and join the parts with include.")
    try:
        text = content.decode(ENCODING)
    except UnicodeDecodeError as cause:
        line = content[: cause.start].count(b"\n") + 1
        raise error(f"{path}, line {line}: this is not UTF-8 text.", "Save the file as UTF-8.") from cause
    dotted = next((n for n, line in enumerate(text.split("\n"), 1) if line.count(".") > MOST_DOTS), None)
    if dotted is not None:
        raise error(f"{path}, line {dotted}: this line has more than {MOST_DOTS} points.", "Break it up.")
    try:
        table = _table_of(text)
    except tomllib.TOMLDecodeError as cause:
        at = _AT_LINE.search(str(cause))
        line = int(at[1]) if at else len(text.splitlines()) or 1
        reason = re.sub(r" \(at .*\)$", "", str(cause))
        line, remedy = toml_remedy(text.split("\n"), line, reason)
        raise error(f"{path}, line {line}: this is not TOML: {reason}.", remedy) from cause
    except (ValueError, RecursionError, ArithmeticError) as cause:
        # A number of 5,000 digits, 10,000 brackets.
        raise error(f"{path}, line 1: this is more than a TOML reader takes.", "Write it plainly.") from cause
    paper = PaperFile(path, content, table, error)
    _refuse_controls(paper, table)
    return paper


@lru_cache(maxsize=64)
def _table_of(text: str) -> Mapping[str, Any]:
    """What a text says. Parts are read for many checklists, a checklist many times over: nobody may change it."""
    return tomllib.loads(text, parse_float=Decimal)


def _refuse_controls(paper: PaperFile, table: Mapping[str, Any]) -> None:
    """Control characters could draw on a terminal or vanish in speech: no text may hold them."""
    # A list of what is still to be looked at, not recursion: a key of ten thousand dots nests as deep.
    left: list[tuple[tuple[str | int, ...], object]] = [((), table)]
    while left:
        where, value = left.pop()
        match value:
            # What can all be printed holds none, and that is known of a whole text at once.
            case str() if not value.isprintable() and any(map(_is_control, value)):
                raise paper.complain(where, "this text holds a control character.", "Take it out.")
            case dict():
                left += [((*where, key)[:4], inner) for key, inner in value.items()]
            case list():
                left += [((*where, place)[:4], inner) for place, inner in enumerate(value)]


def _is_control(letter: str) -> bool:
    """Controls, direction marks, unassigned letters and line separators; every kind of space is allowed."""
    return letter not in "\n\t" and (category(letter)[0] == "C" or category(letter) in ("Zl", "Zp"))


def _sentence(kind: str, field: str, limits: dict[str, Any], given: object) -> tuple[str, str]:
    """What is wrong with one field, and what to do."""
    name = quoted(field)
    match kind:
        case "authored":
            return limits["what"] if not field else f"{name}: {limits['what']}", limits["remedy"]
        case "date_type" | "date_parsing" | "date_from_datetime_parsing" | "date_from_datetime_inexact":
            return f"{name} must be a date.", f"Write it like {field} = 1961-03-14."
        case "missing":
            return f"{name} is missing.", f"Add {field} = ..."
        case "string_type":
            return f"{name} must be a text.", "Put it in quotation marks."
        case "bool_type" | "bool_parsing":
            return f"{name} must be true or false.", "Write true or false without quotation marks."
        case "int_type" | "int_parsing" | "int_from_float" | "decimal_type" | "decimal_parsing":
            return f"{name} must be a number.", "Write a number without quotation marks or unit."
        case "tuple_type" | "list_type":
            return f"{name} must be a list.", "Write it in square brackets."
        case "model_type" | "model_attributes_type" | "dict_type":
            return f"{name} must be a table.", f'Write it in braces, such as {field} = {{ kind = "done" }}.'
        case "string_pattern_mismatch":
            return (
                f"{quoted(str(given))} makes no {field}.",
                "Use small letters, digits and hyphens, a letter first.",
            )
        case "string_too_short":
            return f"{name} is empty.", "Write what it should say."
        case "string_too_long":
            return (
                f"{name} is longer than {limits['max_length']} characters.",
                "Say it shorter; the detail goes into more.",
            )
        case "too_short":
            return f"{name} is an empty list.", "Name at least one."
        case "too_long":
            return f"{name} names more than {limits['max_length']}.", "Name fewer."
        case "literal_error":
            return f"{quoted(str(given))} is no {field}.", f"It can be {limits['expected']}."
        case "union_tag_invalid":
            return (
                f"{quoted(str(limits['tag']))} is nothing that a step can expect.",
                f"It can be {limits['expected_tags']}.",
            )
        case "union_tag_not_found":
            return (
                f"{name} does not say its kind.",
                f"Add kind = {', '.join(quoted(kind) for kind in KINDS)}.",
            )
        case "greater_than":
            return f"{name} must be more than {limits['gt']}.", "Change the number."
        case "greater_than_equal":
            return f"{name} must be at least {limits['ge']}.", "Change the number."
        case "less_than_equal":
            return f"{name} must be at most {limits['le']}.", "Change the number."
    return f"{name} cannot be used as it stands.", "Compare it with a file of the library."


def _walk(model: type[BaseModel], loc: Sequence[str | int]) -> tuple[list[str | int], type[BaseModel]]:
    """The way into the table that an error tells, and the model that holds its last field.

    The tags of a union stand in the error's way, but not in the table: they are left out.
    """
    way: list[str | int] = []
    holder, inner = model, [model]
    for part in loc:
        tagged = [kind for kind in inner if part in _tags(kind)] if len(inner) > 1 else []
        if tagged:
            inner = tagged
            continue
        way.append(part)
        if isinstance(part, int):
            continue
        holder = inner[0] if inner else holder
        field = holder.model_fields.get(part)
        inner = _models_in(field.annotation) if field is not None else []
    return way, holder


def _tags(model: type[BaseModel]) -> tuple[object, ...]:
    """The values of `kind` by which a union tells this model."""
    kind = model.model_fields.get("kind")
    return get_args(kind.annotation) if kind is not None else ()


def _models_in(annotation: object) -> list[type[BaseModel]]:
    """Every model that a field's annotation allows."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return [annotation]
    return [model for part in get_args(annotation) for model in _models_in(part)]


def _header(code: str) -> str:
    """The opening bracket and the name of a table's header, "" where the line is none."""
    header = _HEADER.match(code)
    return header[1] + re.sub(r"[\s\"']", "", header[2]) if header else ""


def _below(block: Sequence[tuple[int, str]], line: int, path: str, name: str | int) -> int:
    """The line of a field or a table, or of an entry of a list of tables; 0 where there is none.

    Args:
        block: the lines in which it is looked for.
        line: of the table that holds it.
        path: the way to it from the top, with dots: a header such as ``[laid_out.primary]`` names all of it.
        name: its own name, or the place of the entry.
    """
    headers = [(number, _header(code).lstrip("[")) for number, code in block]
    tables = [number for number, header in headers if header == path]
    if isinstance(name, int):
        return tables[name] if name < len(tables) else 0
    within = [number for number, header in headers if header.startswith(f"{path}.")]
    if "." in path and tables:
        return tables[0]
    named = [number for number, code in block if number >= line and _names(code, name)]
    return next(iter((*named, *within)), 0)


def _names(code: str, name: str) -> bool:
    """Whether the line begins a field or a table of this name."""
    header = _header(code).lstrip("[")
    if header:
        return header.rpartition(".")[2] == name
    return re.search(rf"(^|[\s{{,\"'.]){re.escape(name)}[\"']?\s*=", code) is not None


def _outside_texts(text: str) -> Iterator[tuple[int, str]]:
    """Each line with its number; what stands inside a text of several lines is left out."""
    closing = ""
    for number, line in enumerate(text.split("\n"), 1):
        code, rest = "", line
        while rest:
            if closing:
                _, found, rest = rest.partition(closing)
                closing = "" if found else closing
                continue
            opening = re.search(r"\"{3}|'{3}", rest)
            if opening is None:
                code += rest
                break
            code += rest[: opening.start()]
            closing, rest = opening[0], rest[opening.end() :]
        yield number, code
