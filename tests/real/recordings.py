"""Names of the real recordings in ``shared/tracks``, without their ending."""

from __future__ import annotations

REAL = [
    "hike-handheld-gaps",
    "hike-handheld-long",
    "hike-karst",
    "hike-watch-60km",
    "logger-years",
    "odd-1901-times",
    "odd-all-fields-10",
    "odd-artificial",
    "odd-empty-seg",
    "odd-no-ns-speed",
    "odd-no-root-attr",
    "pair-ilona-2013",
    "pair-ilona-2014",
    "pair-ilona-2015",
    "pair-south-2013",
    "pair-south-2015",
    "phone-hdop",
    "phone-sparse-elevation",
    "rte-trk-loop",
    "run-phone",
    "run-two-tracks",
    "run-watch-hr",
    "static-receiver",
    "trek-hr-temp",
    "walk-1hz-woods",
    "walk-car-mix",
    "walk-logger-speed",
]
"""Those that hold to the standard, and read as they are."""

MENDED = ["bad-fix-value", "bad-unclosed-ext"]
"""Those that do not, and read all the same."""
