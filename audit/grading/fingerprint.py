"""A fingerprint of what a grade was made by: plan, standard, version of the program."""

from __future__ import annotations

import datetime as dt
import hashlib
import json
from dataclasses import fields, is_dataclass
from typing import Any

import numpy as np

from audit.plan import Plan
from audit.standard import Standard

_SHORT = 16
"""Hexadecimal digits that are told: 64 bits, far more than two plans could meet in."""


def fingerprint(standard: Standard, plans: tuple[Plan, ...], version: str) -> str:
    """Give the fingerprint, sixteen hexadecimal digits in groups of four.

    Whatever a plan or standard says goes into it, but not the name of the file, nor in
    which order the plans were given: neither changes a grade.
    """
    in_order = sorted(plans, key=digest)
    digits = digest("grade", standard, in_order, version)[:_SHORT]
    return "-".join(digits[place : place + 4] for place in range(0, _SHORT, 4))


def digest(*parts: object) -> str:
    """Give the SHA-256 of records, numbers and texts, in hexadecimal digits."""
    told = json.dumps([_plain(part) for part in parts], sort_keys=True, ensure_ascii=True)
    return hashlib.sha256(told.encode()).hexdigest()


def _plain(part: Any) -> Any:  # noqa: ANN401 (any part of a record)
    if is_dataclass(part) and not isinstance(part, type):
        told = {one.name: _plain(getattr(part, one.name)) for one in fields(part) if one.compare}
        return {"is": type(part).__name__, **told}
    if isinstance(part, tuple | list):
        return [_plain(one) for one in part]
    if isinstance(part, dict):
        return {str(name): _plain(one) for name, one in part.items()}
    if isinstance(part, np.ndarray):
        return hashlib.sha256(np.ascontiguousarray(part).tobytes()).hexdigest()
    if isinstance(part, dt.date | dt.time):
        return part.isoformat()
    return part
