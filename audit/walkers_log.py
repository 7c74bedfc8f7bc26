"""What the walker wrote down on the way: the azimuth set, the paces counted, the time."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth


@dataclass(frozen=True, slots=True, kw_only=True)
class LogEntry:
    """The walker's own record of one leg; None where nothing was written.

    Attributes
    ----------
    magnetic_azimuth : MagneticAzimuth or None
        What was set on the compass.
    grid_azimuth, true_azimuth : GridAzimuth or None, and TrueAzimuth or None
        The same on a compass that shows another north: a debrief makes it magnetic first.
    paces : float or None
        What was counted, in whichever pace the walker counts.
    arrived : time, datetime or None
        When the walker believed to have arrived. Without a time zone it is what the
        walker's watch showed.
    """

    leg: str
    magnetic_azimuth: MagneticAzimuth | None = None
    grid_azimuth: GridAzimuth | None = None
    true_azimuth: TrueAzimuth | None = None
    paces: float | None = None
    arrived: dt.time | dt.datetime | None = None
    note: str = ""

    @property
    def says_something(self) -> bool:
        """Whether an azimuth, a count or a time was written."""
        azimuths = (self.magnetic_azimuth, self.grid_azimuth, self.true_azimuth)
        return any(one is not None for one in (*azimuths, self.paces, self.arrived))


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkersLog:
    """A walker's log: one entry a leg, in the order of the file.

    Attributes
    ----------
    notes : tuple of str
        What reading assumed, one sentence each.
    source : str
        Name of the file, without its folder.
    """

    entries: tuple[LogEntry, ...]
    notes: tuple[str, ...] = ()
    source: str = field(default="", compare=False)

    def entry(self, leg: str) -> LogEntry | None:
        """Give the entry of a leg by name, or None where the walker wrote none."""
        return next((entry for entry in self.entries if entry.leg == leg), None)

    def counted_paces(self) -> dict[str, float]:
        """Give, by name of leg, the paces that were counted."""
        return {entry.leg: entry.paces for entry in self.entries if entry.paces}

    def azimuths_set(self) -> dict[str, MagneticAzimuth]:
        """Give, by name of leg, what was set on the compass."""
        return {
            entry.leg: entry.magnetic_azimuth
            for entry in self.entries
            if entry.magnetic_azimuth is not None
        }
