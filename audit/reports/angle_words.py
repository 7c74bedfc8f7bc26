"""How the grid-magnetic angle was got, as a worked sum."""

from __future__ import annotations

from audit.leg_card import LegCard
from audit.leg_card.leg_pieces import leg_pieces
from audit.reports import digits
from audit.words import in_force, say
from audit.words.figures import Turn


def angle_sentences(card: LegCard) -> tuple[str, ...]:
    """Say where the angle comes from, what the model makes of it, and how it is used."""
    return (_source(card), *_model(card), *_use(card))


def east_or_west(angle_deg: float) -> str:
    """Write an angle between norths with its side: "7.0° west"."""
    size = Turn(degrees=angle_deg)
    if round(abs(angle_deg), 1) == 0.0:
        return size.shown(in_force())
    return say("angle-east" if angle_deg > 0 else "angle-west", size=size)


def _source(card: LegCard) -> str:
    angle = east_or_west(card.angles.grid_magnetic_angle_deg)
    return say("angle-by-plan" if card.angle_source == "plan" else "angle-computed", angle=angle)


def _model(card: LegCard) -> tuple[str, ...]:
    day = say("angle-day-unknown")
    if card.date is not None:
        day = say("angle-day", date=card.date.isoformat(), source=card.date_source)
    declination_deg, angle_deg = card.declination_deg, card.model_grid_magnetic_angle_deg
    if declination_deg is None or angle_deg is None:
        return (say("angle-no-model", day=day),)
    error = ""
    if card.declination_sd_deg is not None:
        error = say("angle-error", error=Turn(degrees=card.declination_sd_deg))
    convergence_deg = card.angles.convergence_deg
    norths = say(
        "angle-norths",
        model=card.model,
        day=day,
        declination=signed(declination_deg),
        error=error,
        convergence=signed(convergence_deg),
    )
    total = say(
        "angle-sum",
        declination=signed(declination_deg),
        convergence=_bracketed(convergence_deg),
        angle=signed(angle_deg),
    )
    return norths, total


def _use(card: LegCard) -> tuple[str, ...]:
    if not card.legs:
        return ()
    leg = card.legs[0]
    # The rule's own sum: what the plan says of the magnetic azimuth may be its slip.
    # Of a leg along via positions that of its first piece, which somebody sets.
    grid_azimuth = leg_pieces(leg, card.angles, None)[0].azimuth
    by_rule = card.angles.magnetic(grid_azimuth)
    grid, magnetic = (
        digits.azimuth_to_place(azimuth.degrees, -2) for azimuth in (grid_azimuth, by_rule)
    )
    angle = _bracketed(card.angles.grid_magnetic_angle_deg)
    return (say("angle-rule", leg=leg.name, grid=grid, angle=angle, magnetic=magnetic),)


def signed(angle_deg: float) -> str:
    """Write an angle to a hundredth with a true minus sign, as sums need it."""
    return Turn(degrees=angle_deg, degrees_decimals=2, signed=True).shown(in_force())


def _bracketed(angle_deg: float) -> str:
    text = signed(angle_deg)
    return f"({text})" if text.startswith("−") else text
