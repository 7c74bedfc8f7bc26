"""The batch's clock by the first crossing, and as it is asked for."""

from __future__ import annotations

import pytest

from audit.classroom.batch_clock import by_first_crossing
from audit.cli.clock_shift import clock_shift


def test_the_middle_difference_is_taken_so_that_a_dawdler_moves_nothing():
    pairs = [
        (1000.0 * n, 1000.0 * n - 3600.0 + off) for n, off in enumerate((5.0, 9.0, 7.0, 900.0))
    ]
    clock = by_first_crossing(pairs)
    assert clock is not None
    assert clock.shift_s == pytest.approx(3592.0)  # 3600 less the middle of 5, 7, 9 and 900
    assert "middle of 4" in clock.ground
    assert by_first_crossing([]) is None


@pytest.mark.parametrize(
    ("written", "seconds"),
    [("0", 0.0), ("+1:00", 3600.0), ("-1:00:30", -3630.0), ("\u22120:30", -1800.0),
     ("90s", 90.0), ("-3600", -3600.0), ("start", None), ("Start", None)],
)  # fmt: skip
def test_shifts_as_people_write_them(written, seconds):
    assert clock_shift(written) == seconds


@pytest.mark.parametrize("written", ["", "soon", "1h", "1:75", "nan", "1e9"])
def test_what_is_no_shift_is_refused(written):
    with pytest.raises(ValueError, match="no shift of a clock"):
        clock_shift(written)
