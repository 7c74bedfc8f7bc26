"""The knots of each curve, and the habit of the walk that bends it."""

from __future__ import annotations

from typing import Literal, NamedTuple

Habit = Literal["halting", "winding"]


class Knots(NamedTuple):
    """Where a curve may bend; ``by`` names the habit between whose two ends it is mixed."""

    at: tuple[float, ...]
    by: Habit | None = None


_TURN = (0.0, 12.0, 25.0, 45.0, 90.0, 180.0)
_BEND = (0.0, 12.0, 24.0, 40.0, 70.0, 120.0, 180.0)
_REST = (0.0, 8.0, 15.0, 25.0, 40.0, 80.0, 160.0)
_SHARE = (0.2, 0.5, 0.7, 0.85, 0.95, 1.0)
_PACE = (0.2, 0.5, 0.75, 0.9, 1.05, 1.3)
_NEAR = (0.0, 10.0, 20.0, 35.0, 60.0, 100.0, 200.0, 400.0)

PORTIONS = {
    "halted_s": Knots((0.0, 15.0, 40.0, 90.0, 200.0, 400.0), "halting"),
    "pace_on_way": Knots((0.4, 0.6, 0.8, 0.95, 1.1, 1.3, 1.6)),
    "rest_at_claim_s": Knots(_REST, "halting"),
    "rest_before_start_s": Knots(_REST, "halting"),
    "bend_at_claim_walking_deg": Knots(_BEND, "halting"),
    "bend_at_claim_resting_deg": Knots(_BEND),
    "bend_at_start_walking_deg": Knots(_BEND, "halting"),
    "bend_at_start_resting_deg": Knots(_BEND),
    "pace_after_claim": Knots(_PACE),
    "pace_before_start": Knots(_PACE),
    "straight_after_claim": Knots(_SHARE, "winding"),
    "straight_before_claim": Knots(_SHARE, "winding"),
    "straight_from_start": Knots(_SHARE, "winding"),
    "claim_off_point_m": Knots(_NEAR, "halting"),
    "start_off_point_m": Knots(_NEAR, "halting"),
    "kind": Knots((0.0, 1.0, 2.0, 3.0, 4.0, 5.0)),
    "path_over_chord": Knots((1.0, 1.04, 1.08, 1.15, 1.3, 1.6, 2.2), "winding"),
    "wavering_share": Knots((0.0, 0.02, 0.04, 0.08, 0.15, 0.3), "winding"),
    "longest_rest_on_way_s": Knots((0.0, 8.0, 15.0, 30.0, 60.0, 120.0, 300.0), "halting"),
    "sharpest_bend_on_way_deg": Knots((0.0, 30.0, 60.0, 90.0, 135.0, 180.0), "winding"),
    "arriving_turned_deg": Knots(_TURN, "winding"),
    "leaving_turned_deg": Knots(_TURN, "winding"),
    "coming_turned_deg": Knots(_TURN),
    "setting_off_walking_deg": Knots(_TURN, "halting"),
    "going_on_walking_deg": Knots(_TURN, "winding"),
    "going_on_resting_deg": Knots(_TURN),
    "log_distance_ratio": Knots(
        (-0.8, -0.4, -0.2, -0.1, -0.04, 0.04, 0.1, 0.2, 0.4, 0.8), "winding"
    ),
    "length_nats": Knots((-3.0, -2.0, -1.0, 0.0, 1.0, 3.0), "winding"),
    "directions_nats": Knots((-20.0, -12.0, -7.0, -4.0, -2.0, 0.0, 2.0, 5.0, 10.0), "winding"),
}

STAYS = {
    "moved_m": Knots((0.0, 8.0, 16.0, 30.0, 60.0, 120.0, 300.0), "halting"),
    "path_m": Knots((0.0, 10.0, 30.0, 60.0, 120.0, 250.0, 600.0, 900.0), "halting"),
    "straightness": Knots((0.0, 0.2, 0.4, 0.6, 0.8, 1.0)),
    "moved_on_m": Knots((-200.0, -90.0, -40.0, -15.0, 0.0, 15.0, 40.0, 90.0, 200.0)),
    "moved_aside_m": Knots((0.0, 10.0, 25.0, 50.0, 100.0, 200.0)),
    "halted_s": Knots((0.0, 10.0, 25.0, 50.0, 100.0, 200.0, 400.0), "halting"),
    "left_off_point_m": Knots((0.0, 8.0, 16.0, 30.0, 60.0, 120.0, 250.0), "halting"),
    "claim_off_point_m": Knots((0.0, 10.0, 20.0, 40.0, 80.0, 150.0, 300.0)),
    "came_nearer_m": Knots((-60.0, -25.0, 0.0, 25.0, 60.0, 120.0, 250.0)),
    "path_over_miss": Knots((0.0, 0.5, 1.0, 2.0, 4.0, 8.0)),
    "pace": Knots(_PACE),
    "rest_before_leaving_s": Knots(_REST, "halting"),
}

ENDS = {
    "start_off_point_m": Knots((0.0, 10.0, 25.0, 60.0, 150.0)),
    "legs_left_out": Knots((0.0, 1.0, 2.0, 4.0)),
    "path_still_walked_m": Knots((0.0, 60.0, 200.0, 500.0, 1500.0, 4000.0)),
}

KINDS = {"portions": PORTIONS, "stays": STAYS, "ends": ENDS}

CATEGORIES = ("kind",)
"""Signs whose values are names in disguise: their curves need not be smooth."""
