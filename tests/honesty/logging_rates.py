"""The same made walks logged every second, and less often: how much their distances change."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
from relations.audited import SETTINGS, audit_on_grid, thinned
from walks import Walk

from audit.debriefing.walk_day import track_date
from audit.leg_card import work_out_card
from audit.matching.clean_track import clean_track
from audit.measurement.leg_measures import LegMeasures

EVERY_S = (5, 10, 15, 30)
DISTANCES = {
    "over the ground": ("path_m", "path_sd_m"),
    "along the planned azimuth": ("along_planned_m", "straight_sd_m"),
    "along the walked heading": ("along_heading_m", "straight_sd_m"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class RateRow:
    """One leg, logged every second and every so many.

    Attributes
    ----------
    length_m : float
        From start to claim, as measured at one second.
    ratio, sds : dict
        By distance: sparse over dense, and the change in standard errors that the sparse
        one states of itself.
    whole_m : (float, float)
        Over the ground, sparse and dense.
    at_halts : bool
        Both ends of the leg are halts, at either rate.
    two_percent_shows : bool
        Two hundredths of the leg are more than 1.96 times its error at one second.
    """

    every_s: int
    length_m: float
    ratio: dict[str, float]
    sds: dict[str, float]
    whole_m: tuple[float, float]
    at_halts: bool
    two_percent_shows: bool


def rate_rows(walks: Iterable[Walk]) -> list[RateRow]:
    """Measure walks that were logged every second, and thinned."""
    rows = []
    for walk in walks:
        card = work_out_card(walk.plan, track_date=track_date(walk.track))
        clean = clean_track(walk.track, card.grid, SETTINGS.cleaning)
        if clean.median_interval_s != 1.0:
            continue
        dense = audit_on_grid(clean, card).measures
        for every_s in EVERY_S:
            sparse = audit_on_grid(thinned(clean, every_s), card).measures
            for one, other in zip(dense.legs, sparse.legs, strict=True):
                if one.measures is not None and other.measures is not None:
                    rows.append(_row(every_s, one.measures, other.measures))
    return rows


def _row(every_s: int, dense: LegMeasures, sparse: LegMeasures) -> RateRow:
    lengths = {name: [getattr(one, figure) for one in (sparse, dense)]
               for name, (figure, _) in DISTANCES.items()}  # fmt: skip
    return RateRow(
        every_s=every_s,
        length_m=dense.straight_m,
        ratio={name: both[0] / both[1] for name, both in lengths.items()},
        sds={
            name: (both[0] - both[1]) / getattr(sparse, DISTANCES[name][1])
            for name, both in lengths.items()
        },
        whole_m=(sparse.path_m, dense.path_m),
        at_halts=all(
            error.marked_by == "halt"
            for one in (dense, sparse)
            for error in (one.details.start_error, one.details.claim_error)
        ),
        two_percent_shows=0.02 * dense.straight_m >= 1.96 * dense.straight_sd_m,
    )


def rate_figures(
    rows: Sequence[RateRow], lengths_m: Sequence[tuple[int, int]]
) -> dict[str, dict[str, dict[str, float]]]:
    """Give, by seconds between fixes and by distance, how the legs agree with one second.

    ``whole`` is the sum over all legs against that at one second, ``middle`` the middle
    leg; shares of legs: within 2 %, and within 2 % or what the sparse figure states as
    its error; for all legs, by length, and for legs that begin and end in halts.
    """
    figures = {}
    for every_s in EVERY_S:
        chosen = [row for row in rows if row.every_s == every_s]
        groups = {
            "all legs": chosen,
            **{
                f"{low} to {high} m": [row for row in chosen if low <= row.length_m < high]
                for low, high in lengths_m
            },
            "from halt to halt": [row for row in chosen if row.at_halts],
            "2 % is more than the error": [row for row in chosen if row.two_percent_shows],
        }
        figures[f"{every_s} s"] = {
            name: _agreement(of) for name, of in groups.items() if len(of) > 0
        }
    return figures


def _agreement(rows: Sequence[RateRow]) -> dict[str, float]:
    found = {
        "legs": float(len(rows)),
        "whole": sum(row.whole_m[0] for row in rows) / sum(row.whole_m[1] for row in rows),
        "middle": float(np.median([row.ratio["over the ground"] for row in rows])),
    }
    for name in DISTANCES:
        near = np.array([abs(row.ratio[name] - 1.0) <= 0.02 for row in rows])
        stated = np.array([abs(row.sds[name]) <= 1.96 for row in rows])
        found[f"{name}: within 2 %"] = float(near.mean())
        found[f"{name}: within 2 % or its error"] = float((near | stated).mean())
    return found
