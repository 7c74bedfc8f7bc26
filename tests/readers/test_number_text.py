"""Written numbers and everything that they can mean."""

from __future__ import annotations

import pytest

from audit.readers.number_text import number_readings


@pytest.mark.parametrize(
    ("written", "values"),
    [
        ("1250", [1250]),
        ("1,250", [1.25, 1250]),
        ("1.250", [1.25, 1250]),
        ("1,25", [1.25]),
        ("1.25", [1.25]),
        (".5", [0.5]),
        ("5.", [5]),
        ("0,125", [0.125]),
        ("0.125", [0.125]),
        ("12,500", [12.5, 12500]),
        ("1250,5", [1250.5]),
        ("1,250.5", [1250.5]),
        ("1.250,5", [1250.5]),
        ("1 250", [1250]),
        ("1'250", [1250]),
        ("1 250,5", [1250.5]),
        ("1,250,000", [1250000]),
        ("1.250.000", [1250000]),
        ("-1,5", [-1.5]),
        ("+7", [7]),
        ("1234,567", [1234.567]),
        ("12,50,0", []),
        ("1 25", []),
        ("1e3", []),
        ("0x10", []),
        ("nan", []),
        ("inf", []),
        ("", []),
        ("--5", []),
        ("5 m", []),
        ("9" * 400, []),
    ],
)
def test_readings(written, values):
    assert sorted(reading.value for reading in number_readings(written)) == values


def test_one_hand_writes_two_numbers_alike():
    def agree(one, other):
        return any(a.agrees_with(b) for a in number_readings(one) for b in number_readings(other))

    assert agree("441,820", "342,790")
    assert agree("441,820", "820")
    assert not agree("1,250.5", "1.250,5")
    assert not agree("441,820.5", "342790")
    assert not agree("4,5", "4.5")
