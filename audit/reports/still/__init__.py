"""Still pictures drawn straight from compiled charts, as far as ours go.

The drawing library starts slowly and draws in tens of milliseconds what a page needs
forty times. Here is the small part of it that our own charts use; whatever lies beyond
is left to the library, which is also the judge in the tests.
"""

from __future__ import annotations

from audit.reports.still.beyond import BeyondStillError
from audit.reports.still.drawing import Still, still

__all__ = ["BeyondStillError", "Still", "still"]
