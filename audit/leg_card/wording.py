"""How the leg card's findings and notes write their numbers."""

from __future__ import annotations

from collections.abc import Sequence

from audit.words import Sentence, sentence
from audit.words.figures import Azimuth, Listed, Turn


def east_or_west(angle_deg: float, decimals: int = 1) -> str:
    """Write a signed angle as "7.0 degrees west"."""
    size = f"{abs(angle_deg):.{decimals}f}"
    if float(size) == 0.0:
        return f"{size} degrees"
    return f"{size} degrees {'east' if angle_deg > 0.0 else 'west'}"


def azimuth_text(azimuth_deg: float) -> str:
    """Write an azimuth as "068.3", so that no digit can get lost."""
    text = f"{azimuth_deg:05.1f}"
    return "000.0" if text == "360.0" else text


def leg_names(names: Sequence[str]) -> str:
    """List legs: "leg 2", "legs 2, 3 and 5"."""
    if len(names) == 1:
        return f"leg {names[0]}"
    return f"legs {', '.join(names[:-1])} and {names[-1]}"


def told_legs(names: Sequence[str], *, begin: bool = False) -> Sentence:
    """List legs as part of a sentence, or at its beginning."""
    if len(names) == 1:
        return sentence("figure-leg-begin" if begin else "figure-leg", name=names[0])
    return sentence("figure-legs-begin" if begin else "figure-legs", names=Listed(things=names))


def told_angle(angle_deg: float, decimals: int = 1) -> Sentence:
    """Give a signed angle as "7.0° west"."""
    size = Turn(degrees=angle_deg, degrees_decimals=decimals)
    if round(abs(angle_deg), decimals) == 0.0:
        return sentence("figure-length", size=size)
    return sentence("angle-east" if angle_deg > 0.0 else "angle-west", size=size)


def told_azimuth(azimuth_deg: float) -> Azimuth:
    """Give an azimuth as it is written on a card."""
    return Azimuth(degrees=azimuth_deg, of_card=True)
