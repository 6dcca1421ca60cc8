"""The JSON Schema of a checklist file, for editors that complete and check while one types.

Made of the same models that read the files; what no schema can tell (whether an id or a key exists, whether a
gate can open) is left to the linter.
"""

import ast
import inspect
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue, models_json_schema
from pydantic_core.core_schema import ModelSchema

from assistant.checklist.model import Checklist, Inclusion
from assistant.checklist.paper_file import SET_BY_LOADER

FILE_NAME = "checklist.schema.json"
"""What the schema is called beside the checklists; ``#:schema checklist.schema.json`` as the first line of a
file tells editors with TOML support where it is."""
DIALECT = "https://json-schema.org/draft/2020-12/schema"


class _Described(GenerateJsonSchema):
    """Tells of each field what the line below it in the source tells.

    pydantic can do so by itself (`use_attribute_docstrings`), but reads the source whenever a model is defined: a
    quarter of the time that the whole program took to start.
    """

    def model_schema(self, schema: ModelSchema) -> JsonSchemaValue:
        """The schema of one model, each field with its description."""
        made = super().model_schema(schema)
        for name, text in _field_docstrings(schema["cls"]):
            made["properties"][name]["description"] = text
        return made


def _field_docstrings(model: type[BaseModel]) -> Iterator[tuple[str, str]]:
    """Every field that has a line below it, with that line."""
    (written,) = ast.parse(inspect.getsource(model)).body
    for field, below in pairwise(ast.iter_child_nodes(written)):
        match field, below:
            case ast.AnnAssign(target=ast.Name(id=name)), ast.Expr(value=ast.Constant(value=str(text))):
                yield name, inspect.cleandoc(text)


def checklist_schema() -> dict[str, Any]:
    """The schema (JSON Schema, draft 2020-12) of what an author writes: a checklist or a part."""
    _, whole = models_json_schema([(Checklist, "validation"), (Inclusion, "validation")], schema_generator=_Described)
    kinds = whole["$defs"]
    head = kinds.pop("Checklist")
    fields = {name: field for name, field in head["properties"].items() if name not in SET_BY_LOADER}
    fields["include"] = {
        "type": "array",
        "items": {"type": "string"},
        "description": "Names of whole checklists beside this one; their steps come before its own.",
    }
    fields["steps"] = {
        "type": "array",
        "minItems": 1,
        "description": "The steps, in order; an entry with include stands for the steps of a part.",
        "items": {
            "if": {"required": ["include"]},
            "then": {"$ref": "#/$defs/Inclusion"},
            "else": {"$ref": "#/$defs/Step"},
        },
    }
    return {
        "$schema": DIALECT,
        "title": "Checklist",
        "description": "A checklist for a skills lab, or a part of one (a part needs no head).",
        "type": "object",
        "additionalProperties": False,
        "properties": fields,
        "anyOf": [{"required": ["steps"]}, {"required": ["include"]}],
        "$defs": kinds,
    }
