"""Makes the JSON Schema of debrief.json from the TypedDicts of the code.

Run it after a change of the document's shape:

    python tests/schema/make_schema.py
"""

from __future__ import annotations

import ast
import inspect
import json
import sys
from pathlib import Path
from typing import Annotated, Any, get_args, get_origin, get_type_hints

from audit.debriefing import document_shape

SHIPPED = Path(inspect.getfile(document_shape)).parents[1] / "reports" / "debrief.schema.json"


def debrief_schema() -> dict[str, Any]:
    """Give the schema: pydantic's, with the words of the code and the length of pairs."""
    from pydantic import TypeAdapter

    made = TypeAdapter(document_shape.DebriefDocument).json_schema()
    schema = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **_described(made, document_shape.DebriefDocument),
    }
    schema["title"] = "debrief.json"
    for name, definition in schema["$defs"].items():
        _described(definition, getattr(document_shape, name))
    return schema


def schema_text() -> str:
    return json.dumps(debrief_schema(), indent=1, ensure_ascii=False) + "\n"


def _described(definition: dict[str, Any], shape: type) -> dict[str, Any]:
    """Put the docstrings of fields, and of pairs of numbers, into a definition."""
    words = _field_words(shape)
    hints = get_type_hints(shape, include_extras=True)
    definition["description"] = inspect.cleandoc(shape.__doc__ or "")
    for name, field in definition["properties"].items():
        field.pop("title", None)
        if get_origin(hints[name]) is Annotated:
            field |= {"description": get_args(hints[name])[1], "minItems": 2, "maxItems": 2}
        if name in words:
            field["description"] = words[name]
    return definition


def _field_words(shape: type) -> dict[str, str]:
    """Read the string under each field of a class, which Python itself throws away."""
    body = ast.parse(inspect.getsource(shape)).body[0]
    assert isinstance(body, ast.ClassDef)
    return {
        field.target.id: words.value.value
        for field, words in zip(body.body, body.body[1:], strict=False)
        if isinstance(field, ast.AnnAssign)
        and isinstance(field.target, ast.Name)
        and isinstance(words, ast.Expr)
        and isinstance(words.value, ast.Constant)
    }


if __name__ == "__main__":
    SHIPPED.write_text(schema_text(), encoding="utf-8")
    sys.stdout.write(f"{SHIPPED.name} written\n")
