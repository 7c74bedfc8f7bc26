"""The words that the page's script fills in while the cursor moves, and the units it shows."""

from __future__ import annotations

from typing import Any

from audit.words import in_force, say
from audit.words.in_other_units import CIRCLE, LENGTH_SIGN, METRES

_PLACES = {"since_start": "time", "no_time": "", "leg": "name", "going": "azimuth", "standing": "",
           "left": "size", "right": "size", "on_line": "", "speed": "speed",
           "height": "metres"}  # fmt: skip


def script_words() -> dict[str, Any]:
    """Give the words, with {names} to be filled in, and what turns figures into the units."""
    words = in_force()
    units = words.units
    told = {
        name: say(
            f"picture-cursor-{name.replace('_', '-')}", **({key: f"{{{key}}}"} if key else {})
        )
        for name, key in _PLACES.items()
    }
    return {
        **told,
        "circle": CIRCLE[units.angle],
        "angle_sign": words.angle_sign(),
        "azimuth_digits": 4 if "mil" in units.angle else 3,
        "length_m": METRES[units.length],
        "length_sign": LENGTH_SIGN[units.length],
        "decimal": words.decimal("."),
    }
