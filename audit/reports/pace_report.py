"""The pace count for people, with the line to put into a plan; and for programs, a document."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable

from audit.measurement.paces_of_walk import PaceRate
from audit.pacing.pace_count import PaceCount, Strip
from audit.reports import digits
from audit.reports.printable import printable
from audit.reports.shown_paces import hundred, in_paces_shown, pace_shown
from audit.statistics.spread import TWO_SIDED_95
from audit.words import in_force, say
from audit.words.figures import Length, Number
from audit.words.in_other_units import METRES

PACE_FORMAT = 1
"""Number of the shape of the document of a pace count."""


def render_pace(count: PaceCount) -> str:
    """Give plain text that ends with a line feed; the line for the plan comes last."""
    lines = [_strip(count, strip) for strip in count.strips]
    lines += ["", *_rates(count)]
    best = count.best
    if best is None:
        lines += ["", say("pace-nothing")]
    else:
        lines += ["", *_advice(count, best), "", say("pace-for-plan"), _line(best)]
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
    return say(
        "pace-strip",
        file=strip.source,
        length=digits.stated_metres(length.metres),
        within=Length(metres=TWO_SIDED_95 * length.sd_m, bare=True),
        by=length.by,
        noise=Number(value=strip.noise_m, decimals=1),
        noise_from="halts" if strip.noise_from == "halts" else "none",
        counted=_counted(count, strip),
        pace=pace_shown(count.pace),
    )


def _counted(count: PaceCount, strip: Strip) -> str:
    if strip.counted is None:
        return "none"
    return in_force().decimal(f"{in_paces_shown(strip.counted, count.pace):g}")


def _rates(count: PaceCount) -> Iterable[str]:
    for ident, rate, grounds in (
        ("pace-counted", count.counted, count.counted_on),
        ("pace-by-cadence", count.by_cadence, count.by_cadence_on),
    ):
        if rate is None:
            continue
        yield say(
            ident,
            rate=_rate(rate, count),
            pace=pace_shown(count.pace),
            length=hundred(),
            over=_km(rate.metres),
        )
        for ground, one in grounds.items():
            name = f"{say(f'pace-{ground}')}"
            said = say("pace-ground", ground=name, rate=_rate(one, count), over=_km(one.metres))
            yield f"  {said}"
    yield from _why(count)


def _why(count: PaceCount) -> Iterable[str]:
    """Say what is missing, and what was left out."""
    for strip in count.strips:
        cadence, file = strip.cadence, strip.source
        if cadence is not None and cadence.why_no_ground:
            yield say("pace-no-ground", file=file, why=cadence.why_no_ground)
        if cadence is not None and cadence.left_out_m >= 1.0:
            left_out = digits.stated_metres(cadence.left_out_m)
            yield say("pace-left-out", file=file, length=left_out)
        if strip.silent_m >= 1.0:
            yield say("pace-silent", file=file, length=digits.stated_metres(strip.silent_m))
        if strip.ridden_m >= 1.0:
            yield say("pace-ridden", file=file, length=digits.stated_metres(strip.ridden_m))
    if count.counted is not None and not count.counted_on:
        yield say("pace-walk-each")


def _advice(count: PaceCount, best: PaceRate) -> Iterable[str]:
    share = TWO_SIDED_95 * best.sd / best.per_100m
    leg_m = 1000.0 * METRES[in_force().units.length]
    leg, off = digits.stated_metres(leg_m), digits.stated_metres(leg_m * share)
    yield say("pace-on-a-leg", leg=leg, off=off)
    if count.counted is not None and any(_is_mostly_length(one, best) for one in count.strips):
        yield say("pace-receiver")


def _is_mostly_length(strip: Strip, rate: PaceRate) -> bool:
    """Tell whether the error of a strip's length makes more than half of the whole error."""
    length = strip.length
    share, whole = length.sd_m / max(length.metres, 1e-9), rate.sd / rate.per_100m
    return length.by != "given" and 2.0 * share**2 > whole**2


def _line(rate: PaceRate) -> str:
    return f"paces_per_100m = {_rounded(rate):g}"


def _rounded(rate: PaceRate) -> float:
    """Give the rate as a plan takes it, in paces to 100 m whatever is shown."""
    return round(rate.per_100m, _places(rate.sd))


def _places(sd: float) -> int:
    """Give the decimals that a rate bears: tenths where it is known to half a pace."""
    return 1 if sd < 0.5 else 0


def _rate(rate: PaceRate, count: PaceCount) -> str:
    """Write paces to a hundred of the lengths that are shown."""
    unit = in_paces_shown(METRES[in_force().units.length], count.pace)
    within = TWO_SIDED_95 * rate.sd * unit
    places = _places(rate.sd * unit)
    text = f"{rate.per_100m * unit:.{places}f} ±{max(within, 0.1):.{places}f}"
    return in_force().decimal(text)


def _km(metres: float) -> str:
    if metres < 2000.0:
        return digits.stated_metres(metres)
    return f"{Number(value=metres / 1000.0, decimals=1).shown(in_force())} km"


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
