"""The finding of an angle of the plan that is not the model's, with the slips it looks like."""

from __future__ import annotations

from audit.leg_card.azimuth_slips import angle_slips
from audit.leg_card.finished_card import CardFinding
from audit.leg_card.slips import fitting_slips, slip_names, slip_sentence
from audit.leg_card.told_numbers import told_angle
from audit.units import turn_degrees
from audit.words import sentence


def angle_finding(
    message: str,
    given_deg: float,
    model_deg: float,
    convergence_deg: float,
    room_deg: float,
    **told: object,
) -> CardFinding:
    """Find an angle off the model's, both in degrees from grid north, east positive.

    ``message`` is told with the angle ``given``, its ``slips`` that come to the model's within
    ``room_deg``, and what else is ``told``.
    """
    off_deg = turn_degrees(model_deg, given_deg)
    fitting = fitting_slips(off_deg, angle_slips(given_deg, model_deg, convergence_deg), room_deg)
    return CardFinding(
        leg=None,
        what="grid_magnetic_angle_deg",
        given=given_deg,
        computed=model_deg,
        message=sentence(
            message, given=told_angle(given_deg), slips=slip_sentence(fitting), **told
        ),
        slips=slip_names(fitting),
    )
