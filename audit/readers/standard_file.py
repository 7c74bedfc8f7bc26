"""A standard from a TOML file, or one of those that come with the program."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path
from typing import Any, Literal, get_args

from audit.readers.file_bytes import decoded_text, file_bytes
from audit.readers.plain_text import writable
from audit.readers.problem_list import ProblemList
from audit.readers.toml_text import toml_document
from audit.readers.value_limits import Limits, checked_number
from audit.settings import Settings
from audit.standard import RoadRule, Standard, Weights
from audit.words import sentence
from audit.words.figures import Listed

SHIPPED_STANDARDS = ("day-course", "night-course", "practice-circuit")


def _limits(high: float, unit: str, low: float = 0.0, *, above_low: bool = False) -> Limits:
    remedy = f"Write a number of {unit}."
    return Limits(low=low, high=high, unit=unit, remedy=remedy, above_low=above_low)


_NUMBERS = {
    "points_to_find": _limits(1000.0, "points", above_low=True),
    "radius_m": _limits(1000.0, "metres", above_low=True),
    "survey_sd_m": _limits(500.0, "metres"),
    "time_limit_min": _limits(10_000.0, "minutes", above_low=True),
    "late_grace_min": _limits(10_000.0, "minutes"),
    "late_penalty_per_min": _limits(100.0, "points"),
    "azimuth_tolerance_deg": _limits(90.0, "degrees", above_low=True),
    "distance_tolerance_percent": _limits(100.0, "per cent", above_low=True),
    "road_distance_m": _limits(1000.0, "metres"),
}
_WEIGHT = _limits(1000.0, "parts")
_WEIGHTS = ("points", "time", "azimuth", "distance")
_TEXTS = ("name", "edition")
_ORDERS = ("planned", "free")
_KEYS = (*_TEXTS, *_NUMBERS, "order", "road_rule", "weights", "sources")


def read_standard(named: str | Path, *, settings: Settings | None = None) -> Standard:
    """Give the standard of a TOML file, or a shipped one by its name.

    Raises
    ------
    InputRefusedError
        With every problem of the file.
    """
    limits = (settings or Settings()).reading
    if str(named) in SHIPPED_STANDARDS:
        text = files("audit.grading").joinpath(f"standards/{named}.toml").read_text("utf-8")
        return _standard(text, ProblemList(file=f"{named}.toml", limits=limits))
    path = Path(named)
    problems = ProblemList(file=path.name, limits=limits)
    if not path.exists() and not path.suffix:
        known = ", ".join(SHIPPED_STANDARDS)
        problems.stop("", None, "is no standard and no file", f"Name a file, or one of {known}.")
    return _standard(decoded_text(file_bytes(path, "a standard", limits), problems), problems)


def _standard(text: str, problems: ProblemList) -> Standard:
    document = toml_document(text, problems)
    for key in document:
        if key not in _KEYS:
            problems.unknown("", "setting of a standard", key, _KEYS)
    numbers = {
        key: checked_number(document[key], key, key, problems, limits)
        for key, limits in _NUMBERS.items()
        if key in document
    }
    points = numbers.get("points_to_find")
    if points is not None and points != int(points):
        problems.add("points_to_find", points, "is no whole number", "Write a whole number.")
    name = _text(document, "name", problems)
    if not name:
        problems.add("name", None, "is missing", 'Write name = "..." as it stands on the sheets.')
    weights = _weights(document.get("weights", {}), problems)
    sources = _sources(document.get("sources", {}), problems)
    order = _one_of(document, "order", _ORDERS, problems)
    road = _one_of(document, "road_rule", get_args(RoadRule), problems)
    problems.stop_if_any()
    asked_order: Literal["planned", "free"] = "free" if order == "free" else "planned"
    road_rule: RoadRule = next(one for one in get_args(RoadRule) if one == road)
    return Standard(
        name=name,
        edition=_text(document, "edition", problems),
        points_to_find=None if points is None else int(points),
        radius_m=numbers.get("radius_m"),
        survey_sd_m=numbers.get("survey_sd_m") or 0.0,
        time_limit_s=_times(numbers.get("time_limit_min"), 60.0),
        late_grace_s=60.0 * (numbers.get("late_grace_min") or 0.0),
        late_penalty_per_min=numbers.get("late_penalty_per_min") or 0.0,
        azimuth_tolerance_deg=numbers.get("azimuth_tolerance_deg"),
        distance_tolerance=_times(numbers.get("distance_tolerance_percent"), 0.01),
        order=asked_order,
        road_rule=road_rule,
        road_distance_m=numbers.get("road_distance_m"),
        weights=weights,
        sources=sources,
        notes=(*problems.notes, *_without_source(document, sources)),
        source=writable(problems.file),
    )


def _times(value: float | None, factor: float) -> float | None:
    return None if value is None else value * factor


def _text(document: dict[str, Any], key: str, problems: ProblemList) -> str:
    value = document.get(key, "")
    if not isinstance(value, str):
        problems.add(key, value, "is no text", "Write it in quotation marks.")
        return ""
    return problems.writable(" ".join(value.split()), key)


def _one_of(
    document: dict[str, Any], key: str, known: tuple[str, ...], problems: ProblemList
) -> str:
    value = document.get(key, known[0])
    if value not in known:
        choice = ", ".join(f'"{one}"' for one in known)
        problems.add(key, value, "is none of those that are known", f"Write one of {choice}.")
        return known[0]
    return str(value)


def _weights(table: Any, problems: ProblemList) -> Weights:  # noqa: ANN401 (whatever TOML holds)
    if not isinstance(table, dict):
        problems.add("weights", table, "is not a table", "Write [weights] on a line of its own.")
        return Weights()
    given: dict[str, float] = {}
    for key, value in table.items():
        if key not in _WEIGHTS:
            problems.unknown("weights", "weight", key, _WEIGHTS)
            continue
        number = checked_number(value, key, f"weights, {key}", problems, _WEIGHT)
        given[key] = 0.0 if number is None else number
    if given and not any({**dict.fromkeys(_WEIGHTS, 0.0), **given}.values()):
        problems.add("weights", None, "are all nothing", "Give at least one of them a weight.")
    return Weights(**given)


def _sources(table: Any, problems: ProblemList) -> tuple[tuple[str, str], ...]:  # noqa: ANN401
    if not isinstance(table, dict):
        problems.add("sources", table, "is not a table", "Write [sources] on a line of its own.")
        return ()
    told = []
    for key, value in table.items():
        if key not in (*_NUMBERS, "order", "road_rule", "weights"):
            problems.unknown("sources", "figure of a standard", key, tuple(_NUMBERS))
        elif not isinstance(value, str):
            problems.add(f"sources, {key}", value, "is no text", "Write it in quotation marks.")
        else:
            told.append((key, problems.writable(" ".join(value.split()), f"sources, {key}")))
    return tuple(told)


def _without_source(document: dict[str, Any], sources: tuple[tuple[str, str], ...]) -> list[str]:
    """Say which figures come without a source."""
    told = {figure for figure, _ in sources}
    bare = [key for key in _NUMBERS if key in document and key not in told]
    if not bare:
        return []
    called = [sentence(f"class-figure-{key.replace('_', '-')}") for key in bare]
    return [sentence("class-no-source", figures=Listed(things=called))]
