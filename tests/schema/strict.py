"""A shipped schema as a validator that refuses unknown fields too, as users' programs must not."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema


def strict_validator(shipped: Path) -> jsonschema.Draft202012Validator:
    """Give JSON Schema, draft 2020-12, by the jsonschema library."""
    schema = json.loads(shipped.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    for entry in (schema, *schema["$defs"].values()):
        entry["additionalProperties"] = False
    return jsonschema.Draft202012Validator(schema)
