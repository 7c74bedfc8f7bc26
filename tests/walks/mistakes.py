"""Mistakes planted on one leg: what the walker sets, counts and makes for."""

from __future__ import annotations

import numpy as np

from audit.units import FloatArray, direction_degrees, turn_degrees, wrap_degrees
from walks.courses import Course
from walks.difficulties import Difficulty
from walks.leg_intents import LegIntent
from walks.plotting_errors import PLOTTING_CAUSES, plot_wrongly
from walks.wrong_settings import SETTING_CAUSES, sign, wrong_setting_deg

COUNT_CAUSES = ("hundred-miscounted", "single-double-pace", "early-stop", "overshoot")
BYPASS_CAUSES = ("bypass-paced", "bypass-unequal", "obstacle-one-side")


def draw_leg_intent(
    rng: np.random.Generator,
    difficulty: Difficulty,
    course: Course,
    leg: int,
    shift_before_m: FloatArray,
) -> LegIntent:
    """Draw what the walker does on a leg, before walk-wide errors and scatter.

    ``shift_before_m`` is how far off the plotted place of the leg's start was: a walker
    who believes to stand there sets the leg from there.
    """
    intent = LegIntent(azimuth_deg=course.card_azimuth_deg[leg], count_m=course.card_m[leg])
    drawn = [c for c, chance in difficulty.leg_mistakes.items() if rng.random() < chance]
    for cause in (c for c in drawn if c in PLOTTING_CAUSES):
        plot_wrongly(rng, intent, cause, course, leg, true_digits=difficulty.true_digits)
    if np.any(intent.plotted_shift_m) or np.any(shift_before_m):
        vector = course.points_m[leg + 1] - course.points_m[leg]
        vector = vector + intent.plotted_shift_m - shift_before_m
        intent.azimuth_deg = direction_degrees(float(vector[0]), float(vector[1]))
        intent.count_m = float(np.hypot(*vector))
    for cause in (c for c in drawn if c not in PLOTTING_CAUSES):
        _plant_on_leg(rng, intent, cause, course, leg)
    return intent


def _plant_on_leg(
    rng: np.random.Generator, intent: LegIntent, cause: str, course: Course, leg: int
) -> None:
    causes = {planted.cause for planted in intent.planted}
    if cause in SETTING_CAUSES:
        if causes & set(SETTING_CAUSES):
            return
        turn = wrong_setting_deg(rng, cause, course, leg, intent.azimuth_deg)
        if turn is None or abs(turn) < 0.3:
            return
        intent.azimuth_deg = wrap_degrees(intent.azimuth_deg + turn)
        intent.wrong_way = abs(turn) > 30.0
        intent.plant(cause, turn, "deg")
    elif cause in COUNT_CAUSES:
        if not causes & set(COUNT_CAUSES):
            _miscount(rng, intent, cause)
    elif cause in BYPASS_CAUSES:
        if not intent.bypass:
            intent.bypass = cause
    elif cause == "veer":
        intent.veer_deg = sign(rng) * float(rng.uniform(12.0, 40.0))
        intent.plant(cause, intent.veer_deg, "deg")
    elif cause == "handrail":
        intent.handrail_deg = sign(rng) * float(rng.uniform(15.0, 55.0))
        intent.plant(cause, intent.handrail_deg, "deg")
    elif cause == "magnetic-disturbance":
        intent.disturbance_deg = sign(rng) * float(rng.uniform(15.0, 60.0))
        intent.plant(cause, intent.disturbance_deg, "deg")
    elif cause == "passed-unseen":
        intent.unseen = True
        intent.plant(cause, 0.0, "m")
    elif cause == "wrong-point":
        _make_for_another_point(intent, course, leg)
    else:
        message = f"{cause} is no mistake of one leg"
        raise ValueError(message)


def _miscount(rng: np.random.Generator, intent: LegIntent, cause: str) -> None:
    length = intent.count_m
    if cause == "hundred-miscounted":
        hundreds = float(rng.choice([-1.0, 1.0, 1.0, -1.0, 2.0, -2.0]))
        if length + 100.0 * hundreds < 70.0:
            hundreds = abs(hundreds)
        intent.count_m = length + 100.0 * hundreds
        intent.plant(cause, 100.0 * hundreds, "m")
    elif cause == "single-double-pace":
        ratio = 0.5 if length > 600.0 else float(rng.choice([0.5, 2.0]))
        intent.count_m = ratio * length
        intent.plant(cause, ratio, "ratio")
    elif cause == "early-stop":
        short = float(rng.uniform(0.12, 0.3)) * length
        intent.count_m = length - short
        intent.plant(cause, -short, "m")
    else:
        intent.overshoot_m = float(rng.uniform(30.0, 150.0))
        intent.plant(cause, intent.overshoot_m, "m")


def _make_for_another_point(intent: LegIntent, course: Course, leg: int) -> None:
    """Send the walker to the known point that is most easily taken for the right one."""
    here = course.points_m[leg]
    planned = course.points_m[leg + 1] - here
    best: tuple[float, int] | None = None
    for other in range(len(course.points_m)):
        vector = course.points_m[other] - here
        length = float(np.hypot(*vector))
        if course.site[other] in (course.site[leg], course.site[leg + 1]) or length < 60.0:
            continue
        turn = abs(
            turn_degrees(
                direction_degrees(float(planned[0]), float(planned[1])),
                direction_degrees(float(vector[0]), float(vector[1])),
            )
        )
        ratio = length / float(np.hypot(*planned))
        if turn < 50.0 and 0.5 < ratio < 1.8 and (best is None or turn < best[0]):
            best = (turn, other)
    if best is None:
        return
    vector = course.points_m[best[1]] - here
    intent.other_point = best[1]
    intent.azimuth_deg = direction_degrees(float(vector[0]), float(vector[1]))
    intent.count_m = float(np.hypot(*vector))
    miss = course.points_m[best[1]] - course.points_m[leg + 1]
    intent.plant("wrong-point", float(np.hypot(*miss)), "m")
