"""Figures of many scored walks, with standard errors that know that legs come in walks."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from accuracy.scoring import LegScores


def share_with_error(right: Sequence[float], out_of: Sequence[float]) -> tuple[float, float]:
    """Give a share over all walks and its standard error, the walks being the clusters.

    The ratio estimator of cluster sampling: the spread of each walk's count about what
    the overall share predicts (Cochran, Sampling Techniques, 3rd ed., section 9.9, from
    memory). (nan, nan) where there is nothing to share.
    """
    counts, sizes = np.asarray(right, float), np.asarray(out_of, float)
    total = sizes.sum()
    if total == 0:
        return float("nan"), float("nan")
    share = counts.sum() / total
    walks = len(sizes)
    if walks < 2:
        return float(share), float("nan")
    spread = np.sqrt(((counts - share * sizes) ** 2).sum() * walks / (walks - 1))
    return float(share), float(spread / total)


def quantile(values: Sequence[float], share: float) -> float:
    """Give the smallest value that at least this share of the values do not exceed.

    Infinite values (a leg that was not found) are values like others; nan for none.
    """
    if not len(values):
        return float("nan")
    ordered = np.sort(np.asarray(values, float))
    return float(ordered[max(int(np.ceil(share * len(ordered))) - 1, 0)])


def cut_errors_s(scores: Sequence[LegScores]) -> list[float]:
    """Give the size of every cut error of the walked legs; infinite where not reported."""
    walked = [leg for walk in scores for leg in walk.legs if leg.walked]
    errors = [error for leg in walked for error in (leg.start_error_s, leg.claim_error_s)]
    return [float("inf") if error is None else abs(error) for error in errors]


def figures(scores: Sequence[LegScores], processor_s: Sequence[float]) -> dict[str, float]:
    """Give the figures of one method on one difficulty, by name with unit."""
    legs, legs_se = share_with_error(
        [walk.legs_right for walk in scores], [len(walk.legs) for walk in scores]
    )
    whole, whole_se = share_with_error([walk.all_right for walk in scores], [1] * len(scores))
    seconds, seconds_se = share_with_error(
        [walk.seconds_right for walk in scores], [walk.seconds for walk in scores]
    )
    called, called_se = share_with_error(
        [sum(leg.reported and not leg.walked for leg in walk.legs) for walk in scores],
        [sum(not leg.walked for leg in walk.legs) for walk in scores],
    )
    errors = cut_errors_s(scores)
    turns = [
        abs(leg.heading_change_deg)
        for walk in scores
        for leg in walk.legs
        if leg.heading_change_deg is not None
    ]
    return {
        "walks": len(scores),
        "legs": sum(len(walk.legs) for walk in scores),
        "legs_not_walked": sum(not leg.walked for walk in scores for leg in walk.legs),
        "legs_right": legs,
        "legs_right_se": legs_se,
        "walks_right": whole,
        "walks_right_se": whole_se,
        "seconds_right": seconds,
        "seconds_right_se": seconds_se,
        "called_walked": called,
        "called_walked_se": called_se,
        "cut_median_s": quantile(errors, 0.5),
        "cut_p90_s": quantile(errors, 0.9),
        "heading_change_p95_deg": quantile(turns, 0.95),
        "processor_s": float(np.mean(processor_s)) if len(processor_s) else float("nan"),
    }
