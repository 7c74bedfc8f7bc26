"""The words that the page's script fills in while the cursor moves."""

from __future__ import annotations

SCRIPT_WORDS = {
    "since_start": "{time} since the start",
    "no_time": "no times in this recording",
    "leg": "leg {name}",
    "going": "going {azimuth}° grid",
    "standing": "standing",
    "left": "{metres} m left of the planned line",
    "right": "{metres} m right of the planned line",
    "on_line": "on the planned line",
    "speed": "{speed} km/h",
    "height": "height {metres} m",
}
