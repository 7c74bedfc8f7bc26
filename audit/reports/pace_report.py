"""The pace count for people, with the line to put into a plan; and for programs, a document."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable

from audit.measurement.pace_counts import PaceRate
from audit.pacing.pace_count import PaceCount, Strip
from audit.reports import digits
from audit.reports.printable import printable

PACE_FORMAT = 1
"""Number of the shape of the document of a pace count."""

_TWO_SIDED_95 = 1.96
_BY = {
    "given": "as given",
    "ends": "straight, from end to end",
    "path": "along the smoothed path",
}


def render_pace(count: PaceCount) -> str:
    """Give plain text that ends with a line feed; the line for the plan comes last."""
    lines = [_strip(count, strip) for strip in count.strips]
    lines += ["", *_rates(count)]
    best = count.best
    if best is None:
        lines += ["", "No pace count: nothing was counted, and no recording has a cadence."]
    else:
        lines += ["", *_advice(count, best), "", "For the plan, under [course]:", _line(best)]
    return "\n".join(printable(line).rstrip() for line in lines) + "\n"


def render_pace_json(count: PaceCount) -> str:
    """Give the document of a pace count."""
    document = {
        "format": PACE_FORMAT,
        "pace": count.pace,
        "paces_per_100m": None if count.best is None else _rounded(count.best),
        "counted": _entry(count.counted),
        "counted_on": {name: _entry(rate) for name, rate in count.counted_on.items()},
        "by_cadence": _entry(count.by_cadence),
        "by_cadence_on": {name: _entry(rate) for name, rate in count.by_cadence_on.items()},
        "strips": [_strip_entry(strip) for strip in count.strips],
    }
    return json.dumps(document, indent=1, ensure_ascii=False, allow_nan=False) + "\n"


def _strip(count: PaceCount, strip: Strip) -> str:
    length = strip.length
    counted = ""
    if strip.counted is not None:
        counted = f", {strip.counted:g} {count.pace} paces counted"
    within = digits.whole(_TWO_SIDED_95 * length.sd_m)
    noise = f"receiver {strip.noise_m:.1f} m, by its {strip.noise_from}"
    if strip.noise_from != "halts":
        noise = f"receiver taken as {strip.noise_m:.1f} m"
    return (
        f"{strip.source}: {digits.whole(length.metres)} m ±{within}, {_BY[length.by]}"
        f" ({noise}){counted}"
    )


def _rates(count: PaceCount) -> Iterable[str]:
    for name, rate, grounds in (
        ("Counted", count.counted, count.counted_on),
        ("By cadence", count.by_cadence, count.by_cadence_on),
    ):
        if rate is None:
            continue
        paces = f"{_rate(rate)} {count.pace} paces to 100 m"
        yield f"{name}: {paces}, over {_km(rate.metres)} (±: 95 %)"
        for ground, one in grounds.items():
            yield f"  {ground:<9} {_rate(one)}, over {_km(one.metres)}"
    yield from _why(count)


def _why(count: PaceCount) -> Iterable[str]:
    """Say what is missing, and what was left out."""
    for strip in count.strips:
        cadence = strip.cadence
        if cadence is not None and cadence.why_no_ground:
            yield f"{strip.source}: no grounds told apart: {cadence.why_no_ground}."
        if cadence is not None and cadence.left_out_m >= 1.0:
            metres = digits.whole(cadence.left_out_m)
            yield f"{strip.source}: {metres} m walked without a cadence were left out of it."
        if strip.silent_m >= 1.0:
            metres = digits.whole(strip.silent_m)
            yield f"{strip.source}: {metres} m in silences of the recording."
        if strip.ridden_m >= 1.0:
            metres = digits.whole(strip.ridden_m)
            yield f"{strip.source}: {metres} m were faster than anybody walks."
    if count.counted is not None and not count.counted_on:
        yield "The counts do not tell uphill, level and downhill apart: walk a strip of each."


def _advice(count: PaceCount, best: PaceRate) -> Iterable[str]:
    share = _TWO_SIDED_95 * best.sd / best.per_100m
    yield (
        f"On a leg of 1000 m the count itself may be {digits.whole(1000.0 * share)} m off (95 %), "
        "and more on other ground, by night or with a load."
    )
    if count.counted is not None and any(_is_mostly_length(one, best) for one in count.strips):
        yield "Most of that is the receiver: walk a longer strip, or give its length with --strip."


def _is_mostly_length(strip: Strip, rate: PaceRate) -> bool:
    """Tell whether the error of a strip's length makes more than half of the whole error."""
    length = strip.length
    share, whole = length.sd_m / max(length.metres, 1e-9), rate.sd / rate.per_100m
    return length.by != "given" and 2.0 * share**2 > whole**2


def _line(rate: PaceRate) -> str:
    return f"paces_per_100m = {_rounded(rate):g}"


def _rounded(rate: PaceRate) -> float:
    """Give the rate to whole paces, or to tenths where it is known that well."""
    return round(rate.per_100m, 1 if rate.sd < 0.5 else 0)


def _rate(rate: PaceRate) -> str:
    within = _TWO_SIDED_95 * rate.sd
    places = 1 if rate.sd < 1.0 else 0
    return f"{rate.per_100m:.{places}f} ±{max(within, 0.1):.{places}f}"


def _km(metres: float) -> str:
    return f"{metres / 1000.0:.1f} km" if metres >= 2000.0 else f"{digits.whole(metres)} m"


def _entry(rate: PaceRate | None) -> dict[str, float] | None:
    if rate is None or not math.isfinite(rate.per_100m):
        return None
    return {"per_100m": rate.per_100m, "sd": rate.sd, "metres": rate.metres}


def _strip_entry(strip: Strip) -> dict[str, object]:
    return {
        "track": strip.source,
        "length_m": strip.length.metres,
        "length_sd_m": strip.length.sd_m,
        "length_by": strip.length.by,
        "duration_s": strip.length.duration_s,
        "noise_m": strip.noise_m,
        "counted": strip.counted,
        "silent_m": strip.silent_m,
        "ridden_m": strip.ridden_m,
    }
