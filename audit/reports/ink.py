"""Colours and strokes of all pictures: told apart in grey by weight, dash and shape."""

from __future__ import annotations

BLUE = "#164d8c"
"""The walker. Darker in grey than the orange."""
ORANGE = "#bf5407"
"""Where the walker ended, and by how much that missed."""
INK = "#1c1c1c"
"""The plan."""
GREY = "#767676"
"""What belongs to no leg, and what the recording does not show."""
GREY_TEXT = "#595959"
"""Dark enough to be read on white (7 to 1)."""
PALE_BLUE = "#c9dbee"
GRID_LINE = "#d9d9d9"
GRID_LINE_KM = "#a6a6a6"

PLANNED_DASH = (7, 4)
SEARCH_DASH = (1.5, 3.5)
BYPASS_DASH = (9, 3)
GAP_DASH = (3, 5)
OWN_LINE_DASH = (10, 3, 2, 3)

LABEL_PX = 12
FONT = "sans-serif"
