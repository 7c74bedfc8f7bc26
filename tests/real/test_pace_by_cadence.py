"""A real walk of 60 km with cadence gives the pace count that its raw sums give, and better."""

from __future__ import annotations

import audit
from audit.pacing.pace_count import pace_count


def test_the_hike_with_a_watch_has_about_59_double_paces_to_100_m(shared_tracks):
    # All its cadence over its raw way, halts and wander and all: 59 over 60.4 km (worked out
    # when the recording was collected). Only what was walked with a cadence counts here.
    count = pace_count([audit.read_track(shared_tracks / "hike-watch-60km.gpx")])
    rate = count.by_cadence
    assert abs(rate.per_100m - 59.0) < 2.5 * rate.sd
    assert rate.sd < 1.5
    assert rate.metres > 50_000.0
    on = {name: one.per_100m for name, one in count.by_cadence_on.items()}
    assert on["uphill"] > on["downhill"] > 55.0
    assert on["uphill"] > on["level"]
