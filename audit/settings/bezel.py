"""The bezel and dial of a lensatic compass, for whoever sets it, was out by them, or notes it."""

from __future__ import annotations

CLICK_DEG = 3.0
"""One click: 120 to the circle (FM 3-25.26, 9-2b; FM 21-26, 1993, ch. 9)."""
MOST_CLICKS_OFF = 4
"""So many clicks are lost or counted twice in the dark at the most; what is further out is a wrong
number, not a wrong count; chosen."""
GRADUATIONS_DEG = (5.0, 10.0)
"""Numbered and plain graduations of its dial (common practice, no source)."""
