"""What a debrief that leaves out names and homes keeps."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class PrivacySettings:
    """What a private debrief keeps."""

    margin_m: float = 150.0
    """The recording is kept this far round the planned legs, before the first leg and after the
    last; chosen: wide enough to see how the start was found, too narrow to show a way home."""
