"""The halt at a point, the way up to it and the turn in it: each worked out beside the check."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from measurement.hand_made import card_of, clean_of, match_of
from scipy.stats import norm

from audit.matching.leg_match import LegMatch
from audit.measurement import claims
from audit.measurement.claims import SightBend, claims_at_bends
from audit.settings import ClaimSettings
from audit.statistics.late_bend import Bends

S = ClaimSettings()
NOISE = SimpleNamespace(noise_m=3.0, correlation_s=60.0)
LAST_S = 500


def east_at(time_s, halts=()):
    """A metre a second due east, standing in the halts."""
    still = sum(np.clip(time_s - begun, 0.0, ended - begun) for begun, ended in halts)
    return time_s - still


def arrival(halts=((400, 460),), *, claim_s=400.0, start_s=0.0, off_m=0.0, half_square_m=0.0,
            usual_m_s=1.0, status="walked", timed=True, fixes=None, turned=False):  # fmt: skip
    """The arrival at a point so far beyond the halt, of fixes every second unless they are told."""
    time_s = np.arange(0.0, LAST_S + 1.0)
    path_m = east_at(time_s, halts)
    place = np.column_stack([path_m, np.zeros(len(path_m))])
    clean = clean_of(time_s, place, timed=timed)
    if fixes is not None:
        clean = clean_of(*fixes, timed=timed)
    laid_out = SimpleNamespace(
        samples=SimpleNamespace(time_s=time_s),
        movement=SimpleNamespace(path_m=path_m, walking_m_s=usual_m_s),
    )
    leg = LegMatch(leg=0, status=status, start_s=start_s, claim_s=claim_s)
    east_m, north_m = float(east_at(400.0, halts)) + off_m, 0.0
    if turned:  # all of it mirrored in the line to the north-east
        clean = replace(clean, east_m=clean.north_m, north_m=clean.east_m)
        east_m, north_m = north_m, east_m
    end = SimpleNamespace(east_m=east_m, north_m=north_m, half_square_m=half_square_m)
    match = SimpleNamespace(halts=np.array(halts, dtype=np.float64))
    return claims._arrival(clean, laid_out, match, leg, SimpleNamespace(end=end), S)


def test_the_way_up_to_a_point_begins_where_no_bend_is_looked_for_any_more() -> None:
    """A bend is looked for over 42 m, and 60 m before show the direction held: 102 m."""
    here = arrival()
    assert (here.arrived_s, here.left_s, here.since_s) == (400.0, 460.0, 298.0)
    assert here.speed_m_s == 1.0
    assert arrival(usual_m_s=2.0).since_s == 400.0 - 51.0
    assert arrival(start_s=350.0).since_s == 350.0


def test_a_halt_on_the_way_up_does_not_make_the_walker_slow() -> None:
    here = arrival(((320, 340), (400, 460)))
    assert (here.since_s, here.speed_m_s) == (340.0, 1.0)
    # One that ends within 8 s of the arrival is part of it.
    last = arrival(((385, 395), (400, 460)))
    assert (last.since_s, last.speed_m_s) == (298.0, pytest.approx(92.0 / 102.0))


def test_a_way_under_thirty_metres_shows_nothing() -> None:
    assert arrival(start_s=370.0) is not None
    assert arrival(start_s=371.0) is None


@pytest.mark.parametrize(
    ("claim_s", "arrived_s"), [(391.0, None), (392.0, 400.0), (430.0, 430.0), (460.0, 460.0),
                               (461.0, None)]
)  # fmt: skip
def test_the_halt_is_at_the_claim_or_begins_within_eight_seconds(claim_s, arrived_s) -> None:
    here = arrival(claim_s=claim_s)
    assert (None if here is None else here.arrived_s) == arrived_s


def test_a_halt_is_at_its_point_within_25_m_and_the_square() -> None:
    assert arrival(off_m=25.0) is not None
    assert arrival(off_m=26.0) is None
    assert arrival(off_m=29.0, half_square_m=5.0) is not None
    assert arrival(off_m=31.0, half_square_m=5.0) is None


def test_where_he_stood_is_the_mean_of_all_fixes_of_the_halt() -> None:
    """Fixes at 400 and 410 m: the mean is 405, and 25 m to either side is near enough."""
    fixes = (np.array([0.0, 400.0, 460.0]), np.array([[0.0, 0.0], [400.0, 0.0], [410.0, 0.0]]))
    for off_m, near in ((30.0, True), (31.0, False), (-20.0, True), (-21.0, False)):
        for turned in (False, True):
            assert (arrival(off_m=off_m, fixes=fixes, turned=turned) is not None) is near


def test_only_a_walked_leg_with_times_has_an_arrival() -> None:
    assert arrival(status="unfinished") is None
    assert arrival(timed=False) is None


def come(since_s=298.0, arrived_s=400.0, left_s=460.0, speed_m_s=1.0, start_s=0.0):
    leg = LegMatch(leg=0, status="walked", start_s=start_s, claim_s=arrived_s)
    return claims._Arrival(
        leg=leg, arrived_s=arrived_s, left_s=left_s, since_s=since_s, speed_m_s=speed_m_s
    )


def straight(every_s=1.0, timed=True):
    time_s = np.arange(0.0, LAST_S + 1.0, every_s)
    place = np.column_stack([east_at(time_s, [(400, 460)]), np.zeros(len(time_s))])
    return clean_of(time_s, place, timed=timed)


def test_fixes_of_the_way_are_three_seconds_apart_back_from_the_halt_and_five_of_it() -> None:
    chosen = claims._fixes(straight(), come(), S)
    assert chosen.tolist() == [*range(298, 401, 3), 401, 416, 431, 445, 460]
    assert claims._fixes(straight(), come(left_s=403.0), S)[-4:].tolist() == [400, 401, 402, 403]
    sparse = claims._fixes(straight(10.0), come(), S)
    assert (10 * sparse).tolist() == [*range(300, 401, 10), 410, 420, 430, 450, 460]
    assert claims._fixes(straight(timed=False), come(), S)[:3].tolist() == [298, 299, 300]


def test_the_direction_held_is_that_from_leaving_to_where_bends_begin() -> None:
    """A hundred metres east, then north."""
    time_s = np.arange(0.0, 201.0)
    clean = clean_of(
        time_s, np.column_stack([np.minimum(time_s, 100.0), np.maximum(time_s - 100.0, 0.0)])
    )
    for start_s, until_s, held_deg in (
        (0.0, 100.0, 90.0), (0.0, 200.0, 45.0),
        (150.0, 100.0, 0.0), (99.5, 0.0, 45.0),  # at least over a second
    ):  # fmt: skip
        assert claims._held_direction(clean, start_s, until_s) == pytest.approx(held_deg)


def bend(monkeypatch, log_odds, turn_deg=90.0, sd_deg=1e-3, clean=None, **known):
    """The bend that follows from what the fixes say of each candidate, and what was asked."""
    asked = {}

    def weigh(time_s, place, candidates_s, **others):
        asked.update(others, time_s=time_s, place=place, candidates_s=candidates_s)
        every = np.ones(len(candidates_s))
        return Bends(
            log_odds=log_odds * every, turn_deg=turn_deg * every, turn_sd_deg=sd_deg * every
        )

    monkeypatch.setattr(claims, "weigh_bends", weigh)
    return claims._bend(clean or straight(), come(**known), NOISE, S), asked


def test_where_the_fixes_say_nothing_a_turn_is_as_probable_as_turns_are(monkeypatch) -> None:
    """Odds of one at each of twenty candidates: four in ten, any of them, a uniform law."""
    found, asked = bend(monkeypatch, 0.0)
    assert found.probability == pytest.approx(S.share)
    assert (400.0 - asked["candidates_s"]).tolist() == list(range(4, 43, 2))
    assert found.turned_s == pytest.approx(400.0 - 23.0)
    assert found.turned_sd_s == pytest.approx(2.0 * np.sqrt((20**2 - 1) / 12.0))
    assert (found.arrived_s, asked["end_s"], asked["motion"].speed_m_s) == (400.0, 400.0, 1.0)


def test_bayes_with_the_fixes_and_with_how_sharp_the_turn_is(monkeypatch) -> None:
    for odds in (3.0, 0.2):
        found, _ = bend(monkeypatch, np.log(odds))
        assert found.probability == pytest.approx(0.4 * odds / (0.4 * odds + 0.6))
    for turn_deg in (28.0, -28.0):  # one standard error beyond 18 degrees
        found, _ = bend(monkeypatch, 0.0, turn_deg, 10.0)
        sharp = 0.4 * norm.cdf(1.0)
        assert found.probability == pytest.approx(sharp / (sharp + 0.6))
    gentle, _ = bend(monkeypatch, 0.0, 8.0, 1e-3)
    assert gentle.probability == pytest.approx(0.0, abs=1e-9)


def test_no_turn_at_all_is_anywhere(monkeypatch) -> None:
    found, asked = bend(monkeypatch, -np.inf)
    assert (found.probability, found.turned_s) == (0.0, pytest.approx(asked["candidates_s"].mean()))


def test_back_in_metres_is_back_in_seconds_by_the_speed(monkeypatch) -> None:
    _, asked = bend(monkeypatch, 0.0, since_s=350.0, speed_m_s=0.5)
    # 25 m of way: bends over four fifths of it.
    assert (400.0 - asked["candidates_s"]).tolist() == [8.0, 12.0, 16.0, 20.0, 24.0, 28.0, 32.0,
                                                       36.0, 40.0]  # fmt: skip


def test_fixes_are_seen_along_and_to_the_right_of_the_direction_held(monkeypatch) -> None:
    """370 m east, then 30 m south: the bends that are tried begin at 358 m."""
    time_s = np.arange(0.0, 401.0)
    place = np.column_stack([np.minimum(time_s, 370.0), np.minimum(370.0 - time_s, 0.0)])
    for speed_m_s in (1.0, 0.5):
        _, asked = bend(
            monkeypatch, 0.0, clean=clean_of(time_s, place), left_s=400.0, speed_m_s=speed_m_s
        )
        along, across = asked["place"].T
        seen_s = asked["time_s"]
        assert along - along[0] == pytest.approx(np.minimum(seen_s, 370.0) - seen_s[0])
        assert across - across[0] == pytest.approx(np.maximum(seen_s - 370.0, 0.0))


def test_four_fixes_are_enough(monkeypatch) -> None:
    sparse = straight(40.0)  # 320, 360 and 400 s on the way up, and 440 s standing
    assert bend(monkeypatch, 0.0, clean=sparse)[0] is not None
    assert bend(monkeypatch, 0.0, clean=sparse, left_s=430.0)[0] is None


@pytest.mark.parametrize(("probability", "moved"), [(0.5, False), (0.6, True)])
def test_the_claim_is_put_where_a_turn_is_more_probable_than_none(probability, moved) -> None:
    leg = LegMatch(leg=0, status="walked", start_s=0.0, claim_s=400.0, search_end_s=400.0)
    one = SightBend(
        leg=0, probability=probability, turned_s=380.0, turned_sd_s=3.0, arrived_s=400.0
    )

    match = match_of(card_of((0, 0), (400, 0)), [leg])
    (found,) = claims_at_bends(match, {0: one}).legs
    assert (found.claim_s, found.search_end_s) == ((380.0 if moved else 400.0), 400.0)
