"""Where a leg may have ended or begun while the recorder was silent.

Nobody saw it. But who came straight along a way went on along it for some metres, and who goes
straight on afterwards had been on that way for some. On both there are places at which a leg may
have ended, or the next one begun; where the two ways meet, there is one more on each.
"""

from __future__ import annotations

from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import NDArray

from audit.matching.halts import Movement
from audit.matching.walk_samples import WalkSamples
from audit.settings import MatchingSettings
from audit.statistics.runs import runs_of_true
from audit.units import FloatArray, direction_degrees

_HIDES_ALL = 180.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class UnseenCuts:
    """Places reckoned into silences; arrays of shape (k,), position (k, 2).

    Attributes
    ----------
    sample : int array
        The last sample before the silence for an end, the first after it for a beginning.
    ends : bool array
        True where a leg may have ended, False where one may have begun.
    gone_m : float array
        Metres since that sample; negative for those that were still to come up to it.
    time_s : float array
        When the walker was there, at his usual speed.
    direction_deg : float array
        Direction of the way along which it was reckoned.
    turn_deg : float array
        The turn that the silence hides; 180 where the walker had time to stand in it, or where
        one side shows no straight way.
    """

    sample: NDArray[np.int64]
    ends: NDArray[np.bool_]
    gone_m: FloatArray
    position: FloatArray
    time_s: FloatArray
    direction_deg: FloatArray
    turn_deg: FloatArray

    def __len__(self) -> int:
        return len(self.sample)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Way:
    """A straight way into a silence: on from its last sample, or back from the first after it."""

    place: FloatArray
    inward: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Silence:
    """A silence between two samples, and the ways into it from both sides, where there are."""

    samples: tuple[int, int]
    times_s: tuple[float, float]
    places: FloatArray
    ways: tuple[_Way | None, _Way | None]
    walking_m_s: float

    @property
    def reach_m(self) -> float:
        """How far the walker came in it at his usual speed."""
        return self.walking_m_s * (self.times_s[1] - self.times_s[0])


def find_unseen_cuts(
    samples: WalkSamples, movement: Movement, settings: MatchingSettings
) -> UnseenCuts:
    """Reckon places into every silence, along the ways that lead into it from both sides."""
    parts = [_NONE]
    for about in _silences(samples, settings):
        silence = _Silence(
            samples=about,
            times_s=(float(samples.time_s[about[0]]), float(samples.time_s[about[1]])),
            places=samples.smooth[list(about)],
            ways=(
                _way(about[0], -1, samples, movement, settings),
                _way(about[1], 1, samples, movement, settings),
            ),
            walking_m_s=movement.walking_m_s,
        )
        parts += [_reckoned(silence, side, settings) for side in (0, 1) if silence.ways[side]]
    names = [of.name for of in fields(UnseenCuts)]
    return UnseenCuts(
        **{name: np.concatenate([getattr(one, name) for one in parts]) for name in names}
    )


def silence_of(
    at: NDArray[np.int64], samples: WalkSamples, settings: MatchingSettings
) -> dict[int, tuple[int, int]]:
    """Give, by the samples ``at`` that stand in a silence, those before and after it.

    They lie straight between the two, and nobody knows whether the walker did.
    """
    found = {}
    for last, first in _silences(samples, settings):
        for sample in at[(at > last) & (at < first)].tolist():
            found[sample] = last, first
    return found


def _silences(samples: WalkSamples, settings: MatchingSettings) -> list[tuple[int, int]]:
    """Give the samples about each silence that is long enough to turn in, and no mere rest."""
    within = runs_of_true(samples.in_gap) + np.array([-1, 0])
    breaks = np.flatnonzero(np.diff(samples.stretch))
    about = np.concatenate([within, np.column_stack([breaks, breaks + 1])])
    about = about[(about[:, 0] >= 0) & (about[:, 1] < len(samples))]
    lasted_s = samples.time_s[about[:, 1]] - samples.time_s[about[:, 0]]
    # Nor did a receiver miss a turn that is often as silent: some write a fix where one turns.
    often_s = settings.unseen_intervals * samples.long_interval_s
    shortest_s = max(settings.unseen_shortest_s, often_s)
    fits = (lasted_s >= shortest_s) & (lasted_s <= settings.unseen_longest_s)
    # A receiver that writes a fix after so many metres is silent while its bearer rests.
    apart_m = np.hypot(*(samples.smooth[about[:, 1]] - samples.smooth[about[:, 0]]).T)
    at_rest_m = settings.unseen_rest_moves * samples.usual_move_m
    fits &= apart_m > min(at_rest_m, settings.unseen_rest_most_m)
    return [(int(last), int(first)) for last, first in sorted(about[fits].tolist())]


def _way(
    at: int, side: int, samples: WalkSamples, movement: Movement, settings: MatchingSettings
) -> _Way | None:
    """Give the straight way that leads into a silence at a sample, if there is one.

    ``side`` is -1 for the last sample before the silence, 1 for the first after it.
    """
    path = movement.path_m
    end = int(np.searchsorted(path, path[at] + side * settings.unseen_arm_m))
    end = min(max(end, 0), len(path) - 1)
    part = np.arange(min(at, end), max(at, end) + 1)
    part = part[(samples.stretch[part] == samples.stretch[at]) & ~samples.in_gap[part]]
    if len(part) < 3 or abs(path[part[-1]] - path[part[0]]) < settings.unseen_arm_m / 3.0:
        return None
    gone = np.column_stack([np.ones(len(part)), path[part] - path[at]])
    (place, way), *_ = np.linalg.lstsq(gone, samples.raw[part], rcond=None)
    straight = float(np.hypot(*way))
    if straight < settings.unseen_straight:
        return None
    return _Way(place=place, inward=-side * way / straight)


def _reckoned(silence: _Silence, side: int, settings: MatchingSettings) -> UnseenCuts:
    """Reckon places along the way into a silence from one side: 0 before it, 1 after it."""
    way, other = silence.ways[side], silence.ways[1 - side]
    if way is None:
        return _NONE
    gone_m = settings.unseen_every_m * np.arange(1.0, settings.unseen_most + 1.0)
    there = silence.places[1 - side] if other is None else other.place
    if other is not None:
        gone_m = np.sort(np.append(gone_m, _meeting(way, other, settings)))
    places = way.place + gone_m[:, None] * way.inward
    still_m = np.hypot(*(there - places).T)
    reached = gone_m + still_m <= settings.unseen_hurry * silence.reach_m
    gone_m, places = gone_m[reached], places[reached]
    ahead = 1.0 - 2.0 * side
    east, north = (ahead * way.inward).tolist()
    return UnseenCuts(
        sample=np.full(len(gone_m), silence.samples[side]),
        ends=np.full(len(gone_m), side == 0),
        gone_m=ahead * gone_m,
        position=places,
        time_s=np.clip(
            silence.times_s[side] + ahead * gone_m / silence.walking_m_s, *silence.times_s
        ),
        direction_deg=np.full(len(gone_m), direction_degrees(east, north)),
        turn_deg=np.full(len(gone_m), _hidden_turn(silence, settings)),
    )


def _meeting(way: _Way, other: _Way, settings: MatchingSettings) -> list[float]:
    """Give how far along one way the other meets it, if both lead there at an angle."""
    across = _cross(way.inward, other.inward)
    if abs(across) <= np.sin(np.radians(settings.unseen_bend_deg)):
        return []
    apart = other.place - way.place
    ours, theirs = (_cross(apart, one.inward) / across for one in (other, way))
    return [ours] if ours > 0.0 and theirs > 0.0 else []


def _cross(one: FloatArray, other: FloatArray) -> float:
    return float(one[0] * other[1] - one[1] * other[0])


def _hidden_turn(silence: _Silence, settings: MatchingSettings) -> float:
    """Give the turn that a silence hides."""
    before, after = silence.ways
    spare_m = silence.reach_m - float(np.hypot(*(silence.places[1] - silence.places[0])))
    if spare_m > settings.unseen_spare_s * silence.walking_m_s or before is None or after is None:
        return _HIDES_ALL
    return float(np.degrees(np.arccos(np.clip(-before.inward @ after.inward, -1.0, 1.0))))


_NONE = UnseenCuts(
    sample=np.empty(0, dtype=np.int64),
    ends=np.empty(0, dtype=bool),
    gone_m=np.empty(0),
    position=np.empty((0, 2)),
    time_s=np.empty(0),
    direction_deg=np.empty(0),
    turn_deg=np.empty(0),
)
