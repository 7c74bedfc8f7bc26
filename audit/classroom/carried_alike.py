"""A turn that comes with a compass, whoever carries it.

Who carried what is shuffled among the walkers: a turn counts where hardly any shuffle
gives any compass as large a one. A person with several attempts counts once for each
compass, so that no one's own turn passes for the compass's.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.settings.class_shows import ClassShowsSettings
from audit.statistics.spread import robust_sd
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedTurn:
    """What whoever carried one compass turned more than the others, right positive.

    ``error_deg`` is its standard error, ``chance`` how often a shuffle of who carried
    what gives some compass a turn as far from nothing.
    """

    compass: str
    turn_deg: float
    error_deg: float
    chance: float
    carriers: int
    others: int


def carried_alike(
    people: Sequence[str],
    compasses: Sequence[str],
    turns_deg: FloatArray,
    settings: ClassShowsSettings,
) -> list[CarriedTurn]:
    """Give the compasses that read differently from the rest, the surest first.

    Parameters
    ----------
    people, compasses : sequences of str, n of each
        Who walked, and with which compass; "" where that is not known.
    turns_deg : float array, shape (n,)
        What each turned on the whole walk, right positive: the middle over his legs.
    """
    pairs, turns = _one_a_person(people, compasses, turns_deg)
    held = np.array([compass for _, compass in pairs])
    found: list[CarriedTurn] = []
    while (surest := _surest(held, turns, settings)) is not None:
        found.append(surest)
        # Its carriers would make the others look turned the other way.
        left = held != surest.compass
        held, turns = held[left], turns[left]
    return found


def _surest(
    held: NDArray[np.str_], turns: FloatArray, settings: ClassShowsSettings
) -> CarriedTurn | None:
    """Give the compass that most surely reads differently from the rest, if one does."""
    names, counts = np.unique(held, return_counts=True)
    tested = (names != "") & (counts >= settings.least_carriers)
    tested &= len(turns) - counts >= settings.least_carriers
    if not tested.any():
        return None
    names, counts = names[tested], counts[tested].astype(float)
    carried = (held[None] == names[:, None]).astype(float)
    clipped = _clipped(turns, settings.clip_sds)
    seen, errors = _against_rest(carried, counts, clipped[:, None])
    shuffled = np.random.default_rng(0).permuted(
        np.repeat(clipped[:, None], settings.shuffles, axis=1), axis=0
    )
    by_chance, their_errors = _against_rest(carried, counts, shuffled)
    largest = np.abs(by_chance / their_errors).max(axis=0)
    best = int(np.argmax(np.abs(seen / errors)))
    turn, error = float(seen[best, 0]), float(errors[best, 0])
    as_large = int((largest >= abs(turn / error)).sum())
    chance = (1 + as_large) / (1 + settings.shuffles)
    if chance > settings.chance_of_turn or abs(turn) < settings.least_turn_deg:
        return None
    return CarriedTurn(
        compass=str(names[best]),
        turn_deg=turn,
        error_deg=error,
        chance=chance,
        carriers=int(counts[best]),
        others=len(turns) - int(counts[best]),
    )


def _one_a_person(
    people: Sequence[str], compasses: Sequence[str], turns_deg: FloatArray
) -> tuple[list[tuple[str, str]], FloatArray]:
    """Take the middle of what one person turned with one compass."""
    by_pair: dict[tuple[str, str], list[float]] = {}
    for person, compass, turn in zip(people, compasses, turns_deg.tolist(), strict=True):
        if np.isfinite(turn):
            by_pair.setdefault((person, compass), []).append(turn)
    return list(by_pair), np.array([np.median(turns) for turns in by_pair.values()])


def _clipped(turns: FloatArray, sds: float) -> FloatArray:
    """Bring the far ones, who made some mistake of their own, nearer to the middle."""
    middle = np.median(turns)
    spread = max(robust_sd(turns - middle), 0.1)
    clipped: FloatArray = np.clip(turns, middle - sds * spread, middle + sds * spread)
    return clipped


def _against_rest(
    carried: FloatArray, counts: FloatArray, turns: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Give, a row a compass and a column a shuffle, its mean less the others', and the error."""
    n = len(turns)
    rest = (n - counts)[:, None]
    sums = carried @ turns
    squares = carried @ turns**2
    mean = sums / counts[:, None]
    others = (turns.sum(axis=0) - sums) / rest
    within = squares - counts[:, None] * mean**2
    within += ((turns**2).sum(axis=0) - squares) - rest * others**2
    variance = np.maximum(within, 1e-6) / (n - 2)
    errors: FloatArray = np.sqrt(variance * (1.0 / counts[:, None] + 1.0 / rest))
    difference: FloatArray = mean - others
    return difference, errors
