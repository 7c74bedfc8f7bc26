"""What is told of a leg beyond its main figures, on walks drawn by hand and worked out here."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from measurement.hand_made import BEGIN, HandWalk, card_of, measure, receiver

from audit.azimuths import MagneticAzimuth
from audit.walkers_log import LogEntry, WalkersLog


def details(walk, card, *, every_s=1, clean=None, **known):
    clean = clean if clean is not None else walk.clean(every_s)
    found = measure(card, clean, [walk.portion()], walk.halts, **known).legs[0].measures
    assert found is not None
    assert found.details is not None
    return found, found.details


@pytest.fixture(scope="module")
def bent_leg():
    """300 m on 085, then 300 m on 100: a drift of 15 degrees to the right."""
    walk = HandWalk().halt(60).mark("start").walk(85, 300).walk(100, 300).mark("claim").halt(60)
    return walk, card_of((0, 0), (600, 0))


def test_thirds_show_the_drift(bent_leg) -> None:
    _, of = details(*bent_leg)
    assert of.thirds is not None
    assert of.thirds.first.azimuth.degrees == pytest.approx(85.0, abs=0.3)
    assert of.thirds.last.azimuth.degrees == pytest.approx(100.0, abs=0.3)
    assert of.thirds.drift_deg == pytest.approx(15.0, abs=0.5)
    assert of.thirds.drift_sd_deg < 1.0


def test_line_is_left_where_the_walk_leaves_its_band_for_good() -> None:
    # On 095 where 090 was planned the walk leaves a band of b metres after b / sin 5 metres.
    walk = HandWalk().halt(60).mark("start").walk(95, 500).mark("claim").halt(60)
    found, of = details(walk, card_of((0, 0), (500, 0)))
    line = of.planned_line
    assert line.left is not None
    assert line.left_side == "right"
    along = line.band_m / np.tan(np.radians(5.0))
    assert line.left_along_m == pytest.approx(along, abs=6.0)  # the samples are 2 s apart
    assert line.in_band_share == pytest.approx(along / 500.0, abs=0.02)
    # 25 m of corridor are left after 25 / sin 5 = 286.8 m.
    assert line.corridor_share == pytest.approx(286.8 / 500.0, abs=0.01)
    assert found.cross_track.end_m > line.band_m
    # Across the planned start: 95 % of receiver noise.
    assert line.band_m == pytest.approx(1.96 * (found.noise_m or 0.0), rel=1e-6)


def test_line_that_was_kept_is_not_left() -> None:
    walk = HandWalk().halt(60).mark("start").walk(90, 500).mark("claim").halt(60)
    _, of = details(walk, card_of((0, 0), (500, 0)))
    assert (of.planned_line.left, of.planned_line.in_band_share) == (None, pytest.approx(1.0))


def with_heights(clean, height_of_path):
    """Elevations as a function of metres walked."""
    step = np.hypot(np.diff(clean.east_m), np.diff(clean.north_m))
    path = np.concatenate([[0.0], np.cumsum(step)])
    return replace(clean, elevation_m=height_of_path(path))


def test_ground_of_a_hill() -> None:
    # 300 m up at 10 in 100, 300 m level, 300 m down at 20 in 100.
    walk = HandWalk().halt(60).mark("start").walk(90, 900).mark("claim").halt(60)
    clean = with_heights(
        walk.clean(), lambda path: np.interp(path, [0, 300, 600, 900], [100.0, 130.0, 130.0, 70.0])
    )
    _, of = details(walk, card_of((0, 0), (900, 0)), clean=clean)
    ground = of.ground
    assert ground.trusted
    assert ground.climb_m == pytest.approx(30.0, abs=2.5)  # smoothed at both ends
    assert ground.descent_m == pytest.approx(60.0, abs=5.0)
    slope = np.hypot(300, 30) + 300 + np.hypot(300, 60)
    assert ground.slope_m == pytest.approx(slope, abs=2.5)  # 900 m on the map
    assert ground.uphill_m == pytest.approx(300.0, abs=61.0)  # stretches of 60 m
    assert ground.level_m == pytest.approx(300.0, abs=61.0)
    assert ground.downhill_m == pytest.approx(300.0, abs=61.0)
    total = ground.uphill_m + ground.level_m + ground.downhill_m
    assert total == pytest.approx(900.0, abs=1.0)


def test_elevations_that_swing_are_not_trusted() -> None:
    walk = HandWalk().halt(60).mark("start").walk(90, 900).mark("claim").halt(60)
    rng = np.random.default_rng(2)
    clean = walk.clean()
    swinging = replace(clean, elevation_m=rng.normal(100.0, 30.0, len(clean)))
    _, of = details(walk, card_of((0, 0), (900, 0)), clean=swinging)
    assert not of.ground.trusted
    assert "scatter" in of.ground.why_not
    assert of.ground.climb_m is None
    _, of = details(walk, card_of((0, 0), (900, 0)))
    assert of.ground.why_not == "too few elevations"


def test_paces_counted_and_by_cadence() -> None:
    walk = HandWalk().halt(60).mark("start").walk(90, 500).mark("claim").halt(60)
    card = card_of((0, 0), (500, 0), paces_per_100m=62.0)
    clean = walk.clean()
    # 400 s at 48.75 double paces a minute are 325: 65 to 100 m.
    cadence = np.where(np.arange(len(clean)) < 60, 0.0, 48.75)
    _, of = details(walk, card, paces={"1": 330.0}, cadence_per_min=cadence, clean=clean)
    assert of.paces.predicted == pytest.approx(310.0)
    assert of.paces.counted == 330.0
    assert of.paces.per_100m == pytest.approx(66.0, abs=0.01)
    assert of.paces.per_100m_sd == pytest.approx(66.0 * 0.03, rel=0.3)
    assert of.paces.by_cadence == pytest.approx(325.0, abs=1.0)
    # A device that writes both feet: the same walk, and the same paces.
    _, of = details(walk, card, cadence_per_min=2.0 * cadence, clean=clean)
    assert of.paces.by_cadence == pytest.approx(325.0, abs=1.0)
    # A walker who counts every step.
    single = card_of((0, 0), (500, 0), paces_per_100m=125.0)
    _, of = details(walk, single, cadence_per_min=cadence, clean=clean)
    assert of.paces.by_cadence == pytest.approx(650.0, abs=2.0)


@pytest.mark.parametrize("every_s", [1, 5])
@pytest.mark.parametrize(("side", "back", "equal"), [("right", 40, True), ("left", 25, False)])
def test_sides_of_a_bypass(every_s, side, back, equal) -> None:
    out = 180 if side == "right" else 0
    walk = HandWalk().halt(60).mark("start").walk(90, 150).walk(out, 40).walk(90, 60)
    walk.walk(180 - out, back).walk(90, 190).mark("claim").halt(60)
    found, of = details(walk, card_of((0, 0), (400, 0)), every_s=every_s)
    (bypass,) = of.bypasses
    assert bypass.side == side
    assert bypass.out_m == pytest.approx(40.0, abs=2.0)
    assert bypass.back_m == pytest.approx(back, abs=3.0)
    assert bypass.equal is equal
    # The straight walking is due east, whatever the bypass left over.
    turned = (found.heading.azimuth.degrees - 90.0) % 360.0
    assert min(turned, 360.0 - turned) < 0.4
    left_over = (40.0 - back) * (-1.0 if side == "right" else 1.0)
    assert found.ledger.detour[1] == pytest.approx(left_over, abs=3.0)


def test_stops_on_the_way_and_their_turns() -> None:
    walk = HandWalk().halt(60).mark("start").walk(90, 300).halt(20).walk(97, 300).mark("claim")
    walk.halt(60)
    _, of = details(walk, card_of((0, 0), (600, 0)))
    (stop,) = of.sighting_stops
    assert stop.start_s == BEGIN + 60 + 240
    assert stop.end_s - stop.start_s == 20.0
    assert stop.turn_deg == pytest.approx(7.0, abs=0.2)


def test_setting_and_holding_add_up_to_the_heading_part() -> None:
    # Planned 090 grid, 097 magnetic (G = -7); set 092 magnetic, 085 grid; walked 088.
    walk = HandWalk().halt(60).mark("start").walk(88, 500).mark("claim").halt(60)
    log = WalkersLog(entries=(LogEntry(leg="1", magnetic_azimuth=MagneticAzimuth(92.0)),))
    found, of = details(walk, card_of((0, 0), (500, 0)), log=log)
    assert of.setting is not None
    assert of.setting.set_turn_deg == pytest.approx(-5.0, abs=1e-9)
    assert of.setting.held_turn_deg == pytest.approx(3.0, abs=0.05)
    assert np.add(of.setting.setting, of.setting.holding) == pytest.approx(
        found.ledger.heading, abs=1e-9
    )
    # 500 m turned by 5 degrees: a chord of 2 x 500 x sin 2.5.
    assert np.hypot(*of.setting.setting) == pytest.approx(43.62, abs=0.05)


def test_errors_of_the_ledger_hold_what_noise_does() -> None:
    """Sixty recordings of one walk: the parts scatter by what is told."""
    walk = HandWalk().halt(90).mark("start").walk(84, 400).mark("claim").halt(90)
    card = card_of((0, 0), (400, 0))
    parts, told = [], []
    for seed in range(60):
        found, of = details(walk, card, clean=walk.clean(2, receiver(seed, 3.0, 40.0)))
        parts.append([np.hypot(*found.ledger.heading), found.ledger.inherited[0]])
        told.append([of.ledger_errors.heading_m, of.ledger_errors.inherited_m])
    scatter = np.std(np.array(parts), axis=0)
    ratio = scatter / np.mean(told, axis=0)
    assert np.all(ratio > 0.4)
    assert np.all(ratio < 1.25)  # the error of a standard deviation of 60 is 0.09
