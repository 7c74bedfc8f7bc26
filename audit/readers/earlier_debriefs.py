"""Earlier debriefs of a walker, debrief.json, read for how the walker scatters."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any

from audit.errors import InputRefusedError, Problem
from audit.guide.cause_names import JUDGEMENTS
from audit.readers.file_bytes import decoded_text, file_bytes
from audit.readers.problem_list import ProblemList
from audit.settings import Settings
from audit.walked_before import WalkedBefore

_REMEDY = "Give a debrief.json that this program has written."


def read_earlier_debriefs(
    paths: Iterable[str | Path], *, settings: Settings | None = None
) -> tuple[WalkedBefore, ...]:
    """Give every leg of earlier debriefs that was walked, surely matched, without a mistake.

    Raises
    ------
    InputRefusedError
        With every file that is no debrief.json.
    """
    settings = settings or Settings()
    legs: list[WalkedBefore] = []
    problems: list[Problem] = []
    for path in paths:
        try:
            legs += _legs(Path(path), settings)
        except InputRefusedError as refused:
            problems += refused.problems
    if problems:
        raise InputRefusedError(problems)
    return tuple(legs)


def _legs(path: Path, settings: Settings) -> list[WalkedBefore]:
    problems = ProblemList(file=path.name, limits=settings.reading)
    data = file_bytes(path, "a debrief", settings.reading)
    text = decoded_text(data, problems, most_bytes=len(data))  # with every fix of a long walk
    try:
        document = json.loads(text)
    except (ValueError, RecursionError):
        problems.stop("", None, "is not JSON", _REMEDY)
    entries = document.get("legs") if isinstance(document, dict) else None
    if not isinstance(entries, list) or document.get("format") != 1:
        problems.stop("", None, "is no debrief.json", _REMEDY)
    found = []
    for number, entry in enumerate(entries, start=1):
        try:
            found += (
                [] if not _is_ordinary(entry, settings.quality.unsure) else [_walked_before(entry)]
            )
        except (KeyError, TypeError, ValueError):
            problems.add(f"leg {number}", None, "has not the fields of a leg", _REMEDY)
    problems.stop_if_any()
    return found


def _is_ordinary(entry: Mapping[str, Any], unsure: float) -> bool:
    """Say whether a leg was walked, is surely matched, and has no mistake named."""
    if entry["status"] != "walked" or entry["confidence"] < unsure:
        return False
    if entry["distance_ratio"] is None:  # the line that was planned was not followed
        return False
    causes: Sequence[Mapping[str, Any]] = entry["causes"]
    return not causes or causes[0]["cause"] in JUDGEMENTS


def _walked_before(entry: Mapping[str, Any]) -> WalkedBefore:
    walked = entry["walked"]
    ratio = float(entry["distance_ratio"])
    return WalkedBefore(
        turn_deg=float(entry["azimuth_error_deg"]),
        turn_sd_deg=float(walked["grid_azimuth_sd_deg"]),
        log_ratio=math.log(ratio),
        log_ratio_sd=float(walked["straight_sd_m"]) / max(float(walked["straight_m"]), 1.0),
    )
