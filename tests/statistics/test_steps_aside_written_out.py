"""Which ways across are tried, and how far each stands out: written out one by one."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from audit.settings import SlantSettings
from audit.statistics import steps_aside
from audit.statistics.correlated_noise import covariance
from audit.statistics.integrated_noise import integrated_covariance
from audit.statistics.steps_aside import WalkAcross, find_steps

S = SlantSettings()
EVEN_S = np.arange(0.0, 161.0, 4.0)
UNEVEN_S = np.cumsum([0.0, 3, 5, 4, 9, 2, 6, 4, 7, 3, 11, 4, 5, 6, 3, 8, 4, 6, 5, 7, 2, 9, 4, 6, 5])


def walk(clock_s, across_m=None, noise_m=2.0) -> WalkAcross:
    """Forty seconds of standing before the 60th second of walking."""
    return WalkAcross(
        time_s=5000.0 + clock_s + 40.0 * (clock_s > 60.0), walking_s=clock_s,
        across_m=np.zeros_like(clock_s) if across_m is None else across_m,
        speed_m_s=1.2, noise_m=noise_m, correlation_s=60.0,
    )  # fmt: skip


@pytest.mark.parametrize("begun_s", [0.0, 300.0])
@pytest.mark.parametrize("clock_s", [EVEN_S, UNEVEN_S], ids=["even", "uneven"])
def test_a_way_is_tried_from_each_fix_well_inside_the_walk(clock_s, begun_s) -> None:
    """Eight seconds off either end; for good only where more than the longest step is left."""
    clock_s = clock_s + begun_s
    edge, end = S.edge_s, clock_s[-1]
    expected = set()
    for begin in clock_s[clock_s >= clock_s[0] + edge].tolist():
        expected |= {
            (begin, last) for last in (*S.lasts_s, *S.longer_s) if begin + last <= end - edge
        }
        if end - begin > S.lasts_s[-1] + edge:
            expected.add((begin, end - begin))
    begin_s, last_s = steps_aside._tried(walk(clock_s), S)
    assert set(zip(begin_s.tolist(), last_s.tolist(), strict=True)) == expected
    assert (clock_s[0] + edge in begin_s) is (edge in (clock_s - clock_s[0]))


def way(clock_s, begin_s, last_s):
    return np.clip((clock_s - begin_s) / last_s, 0.0, 1.0)


@pytest.mark.parametrize("begun_s", [0.0, 300.0])
@pytest.mark.parametrize("clock_s", [EVEN_S, UNEVEN_S], ids=["even", "uneven"])
def test_three_hinges_make_an_even_way_from_one_moment_to_another(clock_s, begun_s) -> None:
    made = walk(clock_s + begun_s)
    begin_s, last_s = steps_aside._tried(made, S)
    laid_out = steps_aside._LaidOut.of(made, S, begin_s, last_s)
    hinges = laid_out.columns[:, 3:]
    for number, (begin, last) in enumerate(zip(begin_s, last_s, strict=True)):
        got = hinges[:, laid_out.of_hinges[number]] @ laid_out.parts[number]
        # The fix before its end and the one after it are joined by a straight line.
        exact = way(clock_s + begun_s, begin, last)
        assert got == pytest.approx(exact, abs=1e-9)
    assert laid_out.columns[:, :3] == pytest.approx(
        np.column_stack([np.ones_like(clock_s), clock_s, made.across_m])
    )
    white = S.white_share * np.eye(len(clock_s))
    assert laid_out.noise == pytest.approx(covariance(made.time_s, 60.0) + white)
    assert laid_out.wander == pytest.approx(integrated_covariance(clock_s, clock_s, S.wander_s))


@pytest.mark.parametrize(
    ("right_m", "last_s"),
    [(14.0, 14.0), (60.0, 80.0), (90.0, 8.0), (2.0, 8.0), (0.0, 8.0)],
    ids=["a step", "another bearing", "too steep a step", "too small a step", "none"],
)
def test_the_way_that_stands_out_most_is_that_of_least_squares(right_m, last_s) -> None:
    """Each way beside a level and a run, weighed by the whole covariance, one by one."""
    rng = np.random.default_rng(4)
    across = 0.3 * rng.standard_normal(len(UNEVEN_S)) + right_m * way(UNEVEN_S, 39.0, last_s)
    made = walk(UNEVEN_S, across, noise_m=3.0)
    begin_s, last_s = steps_aside._tried(made, S)
    laid_out = steps_aside._LaidOut.of(made, S, begin_s, last_s)
    drift = 1.2 * np.radians(5.0)
    whole = 9.0 * laid_out.noise + drift**2 * laid_out.wander
    root = np.linalg.cholesky(whole)
    white = np.linalg.solve(root, laid_out.columns)
    free = np.ones(len(begin_s), dtype=bool)
    best, most = None, 0.0
    weight = np.linalg.inv(whole)
    for number, (begin, last) in enumerate(zip(begin_s, last_s, strict=True)):
        columns = [np.ones_like(UNEVEN_S), UNEVEN_S, way(UNEVEN_S, begin, last)]
        design = np.column_stack(columns)
        error = np.linalg.inv(design.T @ weight @ design)
        size = (error @ design.T @ weight @ across)[2]
        turn = np.degrees(np.arctan2(abs(size), 1.2 * last))
        is_step = abs(size) >= S.least_m and S.turns_deg[0] < turn < S.turns_deg[1]
        sds = round(abs(size) / np.sqrt(error[2, 2]), 6)
        if (is_step or last > S.lasts_s[-1]) and sds > most:
            best, most = number, sds
    parts = (white[:, :2], white[:, 2])
    for least, told in ((most - 0.01, best), (most + 0.01, None)):
        settings = replace(S, least_sds=least)
        assert steps_aside._outstanding(made, settings, laid_out, white[:, 3:], parts, free) == told
    free[best] = False
    settings = replace(S, least_sds=0.0)
    assert steps_aside._outstanding(made, settings, laid_out, white[:, 3:], parts, free) != best


@pytest.mark.parametrize("begun_s", [0.0, 300.0])
def test_what_is_found_is_as_likely_as_what_is_left_over(begun_s) -> None:
    """A normal law of the walk less its line and its ways, and a price for each way."""
    clock_s = np.arange(0.0, 401.0, 4.0)
    across = (
        7.0 + 0.05 * clock_s + 14.0 * way(clock_s, 100.0, 12.0) - 18.0 * way(clock_s, 240.0, 14.0)
    )
    made = walk(clock_s + begun_s, across, noise_m=3.0)
    begin_s, last_s = steps_aside._tried(made, S)
    laid_out = steps_aside._LaidOut.of(made, S, begin_s, last_s)
    value, found = steps_aside._found(made, S, 4.0, laid_out)
    assert sorted(right_m for _, right_m in found) == pytest.approx([-18.0, 14.0], abs=2.0)
    whole = 9.0 * laid_out.noise + (1.2 * np.radians(4.0)) ** 2 * laid_out.wander
    ways = [way(clock_s + begun_s, begin_s[pick], last_s[pick]) for pick, _ in found]
    design = np.column_stack([np.ones_like(clock_s), clock_s, *ways])
    weight = np.linalg.inv(whole)
    size = np.linalg.solve(design.T @ weight @ design, design.T @ weight @ across)
    left = across - design @ size
    law = -0.5 * np.linalg.slogdet(whole)[1] - 0.5 * left @ weight @ left
    assert value == pytest.approx(law - 1.5 * np.log(len(clock_s)) * 2, rel=1e-6)
    for pick, right_m in found:
        held = across - size[0] - size[1] * clock_s
        aside = steps_aside._aside_m(made, held, begin_s[pick], last_s[pick], S)
        assert right_m == pytest.approx(aside, abs=1e-6)
    # Ways do not touch each other, and no more are told than may be.
    few = replace(S, most=1)
    assert len(steps_aside._found(made, few, 4.0, laid_out)[1]) == 1
    alone = made.walking_s
    first, second = sorted(begin_s[pick] for pick, _ in found)
    assert second - first > S.edge_s
    assert alone[0] <= first


def test_a_walk_too_short_for_any_way_has_none() -> None:
    for seconds, tried in ((20.0, 0), (24.0, 1)):
        clock_s = np.arange(0.0, seconds + 1.0, 4.0)
        begin_s, _ = steps_aside._tried(walk(clock_s), S)
        assert len(begin_s) == tried
        assert find_steps(walk(clock_s), S) == []
    eager = replace(S, least_sds=0.1, least_m=0.01, turns_deg=(0.0, 90.0))
    clock_s = np.arange(0.0, 25.0, 4.0)
    assert len(find_steps(walk(clock_s, 9.0 * way(clock_s, 8.0, 8.0)), eager)) == 1


def test_what_is_aside_is_what_lies_behind_less_what_lies_before() -> None:
    """The means of sixteen seconds on either side, both ends counted."""
    held = np.arange(41.0) ** 2
    got = steps_aside._aside_m(walk(EVEN_S), held, 60.0, 16.0, S)
    before = held[(EVEN_S >= 44.0) & (EVEN_S <= 60.0)]
    after = held[(EVEN_S >= 76.0) & (EVEN_S <= 92.0)]
    assert got == pytest.approx(after.mean() - before.mean())
    sparse = np.arange(0.0, 400.0, 30.0)
    held = np.arange(14.0) ** 2
    got = steps_aside._aside_m(walk(sparse), held, 120.0, 23.0, S)
    assert got == pytest.approx(25.0 - (9.0 + 16.0) / 2.0)


@pytest.mark.parametrize("begun_s", [300.0, -70.0])
def test_when_the_clock_begins_changes_no_step(begun_s) -> None:
    clock_s = np.arange(0.0, 401.0, 4.0)
    across = 0.05 * clock_s + 12.0 * way(clock_s, 180.0, 12.0)
    plain = walk(clock_s, across)
    (one,), (other,) = (
        find_steps(made, S) for made in (plain, replace(plain, walking_s=clock_s + begun_s))
    )
    assert (one.begin_s, one.end_s) == pytest.approx((other.begin_s, other.end_s))
    assert one.right_m == pytest.approx(other.right_m)
    # Moments are those of the receiver: forty seconds of standing lie before them.
    assert one.begin_s == pytest.approx(5220.0, abs=4.0)


def test_the_strength_of_wandering_that_fits_best_tells_the_steps(monkeypatch) -> None:
    clock_s = np.arange(0.0, 201.0, 4.0)
    values = dict(
        zip(
            S.wanders_deg, ((1.0, [(0, 9.0)]), (5.0, [(7, -8.0), (2, 6.5)]), (3.0, [])), strict=True
        )
    )
    monkeypatch.setattr(steps_aside, "_found", lambda _, __, wander_deg, ___: values[wander_deg])
    begin_s, last_s = steps_aside._tried(walk(clock_s), S)
    found = find_steps(walk(clock_s), S)
    assert [step.right_m for step in found] == [6.5, -8.0]  # in order of time
    assert found[0].end_s - found[0].begin_s >= last_s[2]
    assert begin_s[2] < begin_s[7]


def test_beside_a_way_that_is_taken_no_other_is_tried(monkeypatch) -> None:
    """From eight seconds before it to eight after it."""
    clock_s = np.arange(0.0, 201.0, 4.0)
    made = walk(clock_s)
    begin_s, last_s = steps_aside._tried(made, S)
    taken = int(np.flatnonzero((begin_s == 100.0) & (last_s == 14.0))[0])
    seen, picks = [], iter([taken, None])

    def outstanding(*asked):
        seen.append(asked[-1].copy())
        return next(picks)

    monkeypatch.setattr(steps_aside, "_outstanding", outstanding)
    steps_aside._found(made, S, 4.0, steps_aside._LaidOut.of(made, S, begin_s, last_s))
    first, second = seen
    assert first.all()
    apart = (begin_s > 114.0 + S.edge_s) | (begin_s + last_s < 100.0 - S.edge_s)
    assert second.tolist() == apart.tolist()
    assert 0 < apart.sum() < len(apart)
