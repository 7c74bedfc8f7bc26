"""Attempts made by hand, and writers in processes of their own."""

from __future__ import annotations

import datetime as dt

import numpy as np

from audit.school_records.attempt import Attempt, LegOfAttempt
from audit.school_records.keep_attempts import keep
from audit.school_records.open_records import open_to_write

DAY_S = 86400.0
BEGIN_S = dt.datetime(2026, 3, 7, 9, 0, tzinfo=dt.UTC).timestamp()


def attempt(walker="walker-00000000000000000000", number=0, **other):
    """Give an attempt over three legs, walked on day ``number``."""
    begun = BEGIN_S + number * DAY_S
    told = {
        "walker": walker,
        "walked_on": dt.datetime.fromtimestamp(begun, dt.UTC).date(),
        "begun_s": begun,
        "ended_s": begun + 5400.0,
        "light": "day",
        "course": "Fernbank Plateau",
        "lane": "plan",
        "course_print": "c" * 64,
        "standard_print": "s" * 64,
        "version": "0.1.0",
        "verdict": "pass",
        "noise_m": 3.0,
        "paces_per_100m": 65.0,
        "paces_sd": 0.8,
        "pace_unit": "double",
        "simulated": True,
        "legs": tuple(
            leg(str(place + 1), heading) for place, heading in enumerate((2.0, -1.0, 3.0))
        ),
    }
    return Attempt(**(told | other))


def leg(name, heading, **other):
    told = {
        "name": name,
        "status": "walked",
        "light": "day",
        "confidence": 0.99,
        "point": "found",
        "heading_error_deg": heading,
        "heading_sd_deg": 0.6,
        "distance_ratio": 1.02,
        "ratio_sd": 0.008,
        "miss_along_m": 12.0,
        "miss_across_m": -7.5,
        "miss_sd_m": 4.0,
        "causes": (("within-skill", 0.9), ("steady-bias", 0.1)),
    }
    return LegOfAttempt(**(told | other))


def walks(rng, attempts, legs, *, bias=0.0, drift=0.0, scatter=3.0, between=1.0, light="day"):
    """Give attempts of a walker whose bias moves by ``drift`` degrees an attempt."""
    made = []
    for number in range(attempts):
        of_day = bias + drift * number + rng.normal(0.0, between)
        errors = rng.normal(of_day, np.hypot(scatter, 0.6), legs)
        ratios = np.exp(rng.normal(0.0, 0.04, legs))
        made.append(
            attempt(
                number=number,
                light=light,
                paces_per_100m=float(rng.normal(65.0, 0.8)),
                legs=tuple(
                    leg(str(k), float(errors[k]), light=light, distance_ratio=float(ratios[k]))
                    for k in range(legs)
                ),
            )
        )
    return made


def write(address, numbers, walker="walker-00000000000000000000"):
    """Keep attempts of these numbers; for a process of its own."""
    records = open_to_write(address)
    return [keep(records, [attempt(walker, number)]) for number in numbers]
