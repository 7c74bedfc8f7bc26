"""The same made walks logged every second, and less often: how much their distances change."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from accuracy.seeds import first_seeds
from relations.audited import audit_on_grid, made, thinned

EVERY_S = (5, 10, 30)


@dataclass(frozen=True, slots=True, kw_only=True)
class RateRow:
    """One leg, logged every second and every so many: path and its change in standard errors."""

    every_s: int
    dense_m: float
    sparse_m: float
    sds: float


def rate_rows(purpose: str, walks: int, families: Sequence[str]) -> list[RateRow]:
    """Measure the first walks of a purpose that were logged every second, and thinned."""
    rows = []
    for family in families:
        for seed in first_seeds(purpose, walks):
            clean, card = made(seed, family)
            if clean.median_interval_s != 1.0:
                continue
            dense = audit_on_grid(clean, card).measures
            for every_s in EVERY_S:
                sparse = audit_on_grid(thinned(clean, every_s), card).measures
                for one, other in zip(dense.legs, sparse.legs, strict=True):
                    if one.measures is None or other.measures is None:
                        continue
                    change_m = other.measures.path_m - one.measures.path_m
                    rows.append(
                        RateRow(
                            every_s=every_s,
                            dense_m=one.measures.path_m,
                            sparse_m=other.measures.path_m,
                            sds=change_m / other.measures.path_sd_m,
                        )
                    )
    return rows


def rate_figures(rows: Sequence[RateRow]) -> dict[str, dict[str, float]]:
    """Give, by seconds between fixes, the whole path over that at one second, and shares of legs."""
    figures = {}
    for every_s in EVERY_S:
        chosen = [row for row in rows if row.every_s == every_s]
        if not chosen:
            continue
        ratio = np.array([row.sparse_m / row.dense_m for row in chosen])
        figures[f"{every_s} s"] = {
            "legs": float(len(chosen)),
            "whole": sum(r.sparse_m for r in chosen) / sum(r.dense_m for r in chosen),
            "middle": float(np.median(ratio)),
            "legs_within_2_percent": float(np.mean(np.abs(ratio - 1.0) < 0.02)),
            "legs_within_error": float(np.mean([abs(row.sds) <= 1.96 for row in chosen])),
        }
    return figures
