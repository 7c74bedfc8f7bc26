"""The latitude bands of UTM and MGRS: eight degrees each, C to X without I and O."""

from __future__ import annotations

BANDS = "CDEFGHJKLMNPQRSTUVWX"


def band_limits(letter: str) -> tuple[float, float]:
    """Give the southern and northern edge of a band in degrees; X alone is twelve high."""
    low = -80.0 + 8.0 * BANDS.index(letter)
    return low, 84.0 if letter == "X" else low + 8.0


def band_at(latitude_deg: float) -> str:
    """Give the letter of the band at a latitude; beyond the ends the last one."""
    index = int((latitude_deg + 80.0) // 8.0)
    return BANDS[min(max(index, 0), len(BANDS) - 1)]


def in_band(letter: str, latitude_deg: float, slack_deg: float) -> bool:
    """Tell whether a latitude lies in a band, or no more than ``slack_deg`` outside."""
    low, high = band_limits(letter)
    return low - slack_deg <= latitude_deg <= high + slack_deg


def latitude_text(latitude_deg: float) -> str:
    """Give a latitude as people say it: "37.43 N"."""
    return f"{abs(latitude_deg):.4g} {'N' if latitude_deg >= 0.0 else 'S'}"
