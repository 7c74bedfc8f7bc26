"""The result of a walker as text that can be kept, and back without a loss."""

from __future__ import annotations

import json
from dataclasses import asdict, fields, is_dataclass
from types import UnionType
from typing import Any, Literal, TypeVar, Union, get_args, get_origin, get_type_hints

from audit.classroom.walker_result import WalkerResult
from audit.words.kept_sentence import from_plain_data, plain_data

Record = TypeVar("Record")


def result_text(result: WalkerResult) -> str:
    """Give the text of a result."""
    return json.dumps(plain_data(asdict(result)), ensure_ascii=False, sort_keys=True)


def result_from(text: str) -> WalkerResult:
    """Give the result of a text.

    Raises
    ------
    ValueError
        For a text that is none, or of another version of the program.
    """
    try:
        made: WalkerResult = _record(WalkerResult, from_plain_data(json.loads(text)))
    except (TypeError, KeyError, AttributeError) as error:
        message = f"no result of a walker: {error}"
        raise ValueError(message) from error
    return made


def _record(kind: type[Record], told: dict[str, Any]) -> Record:
    hints = _hints(kind)
    if told.keys() != hints.keys():
        message = f"other fields than {kind.__name__} has"
        raise ValueError(message)
    return kind(**{name: _value(hint, told[name]) for name, hint in hints.items()})


def _hints(kind: Any) -> dict[str, Any]:  # noqa: ANN401 (any record)
    if not is_dataclass(kind):
        message = f"{kind} is no record"
        raise TypeError(message)
    hints = get_type_hints(kind)
    return {one.name: hints[one.name] for one in fields(kind)}


def _value(hint: Any, told: Any) -> Any:  # noqa: ANN401 (any field of a record)
    origin = get_origin(hint)
    if origin in (Union, UnionType):
        if told is None:
            return None
        return _value(next(one for one in get_args(hint) if one is not type(None)), told)
    if origin is tuple:
        inner = get_args(hint)
        kinds = [inner[0]] * len(told) if inner[1:] == (Ellipsis,) else inner
        return tuple(_value(kind, part) for kind, part in zip(kinds, told, strict=True))
    if origin is Literal and told not in get_args(hint):
        message = f"{told!r} is not known"
        raise ValueError(message)
    if isinstance(hint, type) and is_dataclass(hint):
        return _record(hint, told)
    return float(told) if hint is float else told
