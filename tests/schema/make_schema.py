"""Makes the JSON Schemas of debrief.json and class.json from the TypedDicts of the code.

Run it after a change of a document's shape:

    python tests/schema/make_schema.py
"""

from __future__ import annotations

import ast
import inspect
import json
import sys
from pathlib import Path
from types import ModuleType
from typing import Annotated, Any, get_args, get_origin, get_type_hints

from audit.classroom import class_shape
from audit.debriefing import (
    coaching_shape,
    detail_shape,
    document_shape,
    forecast_shape,
    leg_shape,
)

REPORTS = Path(inspect.getfile(document_shape)).parents[1] / "reports"
SHIPPED = REPORTS / "debrief.schema.json"
SHIPPED_OF_CLASS = REPORTS / "class.schema.json"


def schema_text() -> str:
    """Give the schema of debrief.json."""
    shapes = (document_shape, leg_shape, detail_shape, coaching_shape, forecast_shape)
    return _schema_text(shapes, document_shape.DebriefDocument, "debrief.json")


def class_schema_text() -> str:
    """Give the schema of class.json."""
    return _schema_text((class_shape,), class_shape.ClassDocument, "class.json")


def _schema_text(shapes: tuple[ModuleType, ...], document: type, title: str) -> str:
    """Give pydantic's schema, with the words of the code and the length of pairs."""
    from pydantic import TypeAdapter

    made = TypeAdapter(document).json_schema()
    schema = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **_described(made, document),
    }
    schema["title"] = title
    known = {name: shape for module in shapes for name, shape in vars(module).items()}
    for name, definition in schema["$defs"].items():
        _described(definition, known[name])
    return json.dumps(schema, indent=1, ensure_ascii=False) + "\n"


def _described(definition: dict[str, Any], shape: type) -> dict[str, Any]:
    """Put the docstrings of fields, and of pairs of numbers, into a definition."""
    words = _field_words(shape)
    hints = get_type_hints(shape, include_extras=True)
    definition["description"] = inspect.cleandoc(shape.__doc__ or "")
    for name, field in definition["properties"].items():
        field.pop("title", None)
        # A pair or a name, or one that may be missing, or a list of them.
        hinted = (hints[name], *(() if _kind(hints[name]) else get_args(hints[name])))
        made = (field, *field.get("anyOf", [field.get("items", {})]))
        for hint, part in zip(hinted, made, strict=False):
            part.update(_kind(hint))
        if name in words:
            field["description"] = words[name]
    return definition


def _kind(hint: Any) -> dict[str, Any]:
    """Give what pydantic leaves out of a hint: the length of a pair, the names that there are."""
    if get_origin(hint) is not Annotated:
        return {}
    said = get_args(hint)[1]
    if isinstance(said, tuple):
        return {"enum": list(said)}
    return {"description": said, "minItems": 2, "maxItems": 2}


def _field_words(shape: type) -> dict[str, str]:
    """Read the string under each field of a class, which Python itself throws away."""
    body = ast.parse(inspect.getsource(shape)).body[0]
    assert isinstance(body, ast.ClassDef)
    return {
        field.target.id: inspect.cleandoc(words.value.value)
        for field, words in zip(body.body, body.body[1:], strict=False)
        if isinstance(field, ast.AnnAssign)
        and isinstance(field.target, ast.Name)
        and isinstance(words, ast.Expr)
        and isinstance(words.value, ast.Constant)
    }


if __name__ == "__main__":
    SHIPPED.write_text(schema_text(), encoding="utf-8")
    SHIPPED_OF_CLASS.write_text(class_schema_text(), encoding="utf-8")
    sys.stdout.write(f"{SHIPPED.name} and {SHIPPED_OF_CLASS.name} written\n")
