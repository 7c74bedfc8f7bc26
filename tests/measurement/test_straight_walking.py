"""Receiver noise from straight walking, where nobody stood: made receivers of known size."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import HandWalk, receiver

from audit.measurement.receiver_noise import measure_noise
from audit.measurement.straight_walking import straight_stretches, wander_of
from audit.settings import Settings

S = Settings()
NO_HALTS = np.empty((0, 2))
LEG_S = 320.0


def six_legs(seed: int, wander_deg: float) -> HandWalk:
    """Six legs of 400 m in a ring; the heading wanders by so much, remembered for 25 s."""
    walk = HandWalk()
    for leg in range(6):
        walk.walk(60 * leg, 400)
    place = np.array(walk.places)
    rng = np.random.default_rng(seed)
    kept, off = np.exp(-1.0 / 25.0), np.zeros(len(place) - 1)
    for second in range(1, len(off)):
        off[second] = kept * off[second - 1] + np.sqrt(1.0 - kept**2) * rng.normal()
    step, turn = np.diff(place, axis=0), np.radians(wander_deg) * off
    east = step[:, 0] * np.cos(turn) + step[:, 1] * np.sin(turn)
    north = step[:, 1] * np.cos(turn) - step[:, 0] * np.sin(turn)
    walk.places = [*place[:1], *(place[0] + np.cumsum(np.column_stack([east, north]), axis=0))]
    return walk


def noise_of(clean):
    begin = float(clean.time_s[0])
    legs = [(begin + LEG_S * leg, begin + LEG_S * (leg + 1)) for leg in range(6)]
    found = straight_stretches(clean, legs, NO_HALTS, S.noise)
    return measure_noise(
        clean, NO_HALTS, S.noise, [(one, wander_of(one, S.heading)) for one in found]
    )


@pytest.mark.parametrize("wander_deg", [0.0, 6.0])
@pytest.mark.parametrize("every_s", [1, 10])
@pytest.mark.parametrize(("sd_m", "memory_s"), [(1.5, 30.0), (1.5, 90.0), (9.0, 30.0), (9.0, 90.0)])
def test_straight_walking_shows_much_of_the_noise(sd_m, memory_s, every_s, wander_deg) -> None:
    """The usual 4.5 m is a factor of 3, or of 2, off; walking brings it clearly nearer."""
    off, inside = [], []
    for seed in range(3):
        walk = six_legs(seed, wander_deg)
        noise = noise_of(walk.clean(every_s, receiver(seed + 50, sd_m, memory_s)))
        assert noise.source == "straight walking"
        assert noise.walked_s > 1000.0
        off.append(abs(np.log(noise.noise_m / sd_m)))
        inside.append(noise.interval_m[0] <= sd_m <= noise.interval_m[1])
    usual = abs(np.log(S.noise.usual_noise_m / sd_m))
    assert np.mean(off) < 0.8 * usual
    assert sum(inside) >= 2


def test_memory_of_the_noise_shows_too() -> None:
    """The usual value is 60 s: twenty seconds come out shorter, and three minutes longer."""
    short, long = (
        noise_of(six_legs(1, 3.0).clean(1, receiver(7, 6.0, memory_s))).correlation_s
        for memory_s in (15.0, 180.0)
    )
    assert short < 40.0 < long


def test_a_way_round_an_obstacle_is_not_straight_walking() -> None:
    walk = HandWalk().walk(0, 150).walk(90, 50).walk(0, 50).walk(270, 50).walk(0, 150)
    clean = walk.clean(1, receiver(3, 2.0))
    whole = (float(clean.time_s[0]), float(clean.time_s[-1]))
    assert straight_stretches(clean, [whole], NO_HALTS, S.noise) == []
    # Divided where he went aside, what is before and after is straight.
    aside = np.array([[clean.time_s[118], clean.time_s[242]]])
    found = straight_stretches(clean, [whole], aside, S.noise)
    assert len(found) == 2
    assert all(one.speed_m_s == pytest.approx(1.25, rel=0.1) for one in found)


def test_walking_and_halts_are_heard_together() -> None:
    """What both show lies between what each shows alone, and is surer than one that may be out."""
    walk = HandWalk().halt(300).walk(90, 500)
    clean = walk.clean(1, receiver(1, 3.0))
    begin = float(clean.time_s[0])
    found = straight_stretches(clean, [(begin + 300.0, begin + 700.0)], NO_HALTS, S.noise)
    straight = [(one, wander_of(one, S.heading)) for one in found]
    assert straight
    halts = np.array(walk.halts)
    both = measure_noise(clean, halts, S.noise, straight)
    assert both.source == "halts and straight walking"
    alone = sorted(
        measure_noise(clean, *of).noise_m
        for of in ((halts, S.noise), (NO_HALTS, S.noise, straight))
    )
    assert 0.9 * alone[0] < both.noise_m < 1.1 * alone[1]
