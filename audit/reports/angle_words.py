"""How the grid-magnetic angle was got, as a worked sum."""

from __future__ import annotations

from audit.leg_card import LegCard
from audit.reports import digits


def angle_sentences(card: LegCard) -> tuple[str, ...]:
    """Say where the angle comes from, what the model makes of it, and how it is used."""
    return (_source(card), *_model(card), *_use(card))


def east_or_west(angle_deg: float) -> str:
    """Write an angle between norths with its side: "7.0° west"."""
    size = f"{abs(angle_deg):.1f}"
    return f"{size}°" if size == "0.0" else f"{size}° {'east' if angle_deg > 0 else 'west'}"


def _source(card: LegCard) -> str:
    angle = east_or_west(card.angles.grid_magnetic_angle_deg)
    if card.angle_source == "plan":
        return f"The plan gives the grid-magnetic angle as {angle}; the card uses that."
    return f"The plan gives no grid-magnetic angle; the card uses the computed one, {angle}."


def _model(card: LegCard) -> tuple[str, ...]:
    day = "the day of the walk, which is not known"
    if card.date is not None:
        day = f"{card.date.isoformat()} (by the {card.date_source})"
    declination_deg, angle_deg = card.declination_deg, card.model_grid_magnetic_angle_deg
    if declination_deg is None or angle_deg is None:
        return (f"No magnetic model covers {day}; the angle is not checked.",)
    error = ""
    if card.declination_sd_deg is not None:
        error = f" (standard error {card.declination_sd_deg:.1f}°)"
    convergence_deg = card.angles.convergence_deg
    norths = (
        f"{card.model} for {day}: declination {signed(declination_deg)}{error}, "
        f"grid convergence {signed(convergence_deg)}; east is positive."
    )
    total = (
        f"Grid-magnetic angle = declination − convergence = {signed(declination_deg)} − "
        f"{_bracketed(convergence_deg)} = {signed(angle_deg)}."
    )
    return norths, total


def _use(card: LegCard) -> tuple[str, ...]:
    if not card.legs:
        return ()
    leg = card.legs[0]
    angle = _bracketed(card.angles.grid_magnetic_angle_deg)
    grid, magnetic = (
        digits.azimuth_to_place(azimuth.degrees, -2) for azimuth in (leg.azimuth, leg.magnetic)
    )
    rule = "Magnetic azimuth = grid azimuth − angle."
    return (f"{rule} Leg {leg.name}: {grid} − {angle} = {magnetic}.",)


def signed(angle_deg: float) -> str:
    """Write an angle to a hundredth with a true minus sign, as sums need it."""
    return f"{angle_deg:.2f}°".replace("-", "−")


def _bracketed(angle_deg: float) -> str:
    text = signed(angle_deg)
    return f"({text})" if text.startswith("−") else text
