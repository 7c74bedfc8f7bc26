"""The sums on the guide's pages are right: each is made again here."""

from __future__ import annotations

import math
import re

from audit.azimuths import GridAzimuth, NorthAngles
from audit.guide.pages_on_file import cause_pages, topic_pages
from audit.units import degrees_from_mils, mils_from_degrees, turn_degrees


def chord(length: float, turn_deg: float) -> float:
    """Give how far the ends of two equal lines lie apart: plain trigonometry."""
    return 2.0 * length * math.sin(math.radians(abs(turn_deg)) / 2.0)


def test_the_worked_sums_of_the_angles_page():
    text = topic_pages()["angles"].text
    for angle, magnetic in ((-7.5, "049.0"), (12.0, "029.5")):
        angles = NorthAngles(grid_magnetic_angle_deg=angle, convergence_deg=1.0)
        assert f"{angles.magnetic(GridAzimuth(41.5)).degrees:05.1f}" == magnetic
        assert magnetic in text
    wrong = re.search(r"the wrong way\s+([\d.]+)", text), re.search(r"twice\s+([\d.]+)", text)
    assert [float(found[1]) for found in wrong if found] == [41.5 + -7.5, 41.5 + 2 * 7.5]
    assert round(mils_from_degrees(1.0), 1) == 17.8


def test_how_far_off_an_angle_leads():
    assert f"{chord(800, 7):.0f} m" in cause_pages()["gm-angle-omitted"].text
    assert f"{chord(800, 14):.0f} m" in cause_pages()["gm-angle-reversed"].text


def test_mils_read_on_the_other_scale():
    text = " ".join(cause_pages()["mils-as-degrees"].text.split())
    assert turn_degrees(degrees_from_mils(1600), 160) == 70.0
    assert turn_degrees(degrees_from_mils(800), 80) == 35.0
    assert "70° too far" in text
    assert "35° out" in text


def test_other_mil_circles():
    text = " ".join(cause_pages()["wrong-mil-circle"].text.split())
    for azimuth, words in ((90, "5.6° short at 90°"), (180, "11° at 180°"), (270, "17° at 270°")):
        short = azimuth - azimuth / 360 * 6000 * 360 / 6400
        assert f"{short:.1f}" == words[:3] or f"{short:.0f}" == words[:2]
        assert words in text


def test_slopes():
    # Cosine of the slope, and what it takes to make up for it.
    text = " ".join(cause_pages()["slope-paced"].text.split())
    shorter = [100 * (1 - math.cos(math.radians(slope))) for slope in (10, 20, 30)]
    assert [round(shorter[0], 1), round(shorter[1]), round(shorter[2])] == [1.5, 6, 13]
    assert "1.5 in 100 at 10°, 6 at 20°, 13 at 30°" in text
    more = [100 * (1 / math.cos(math.radians(slope)) - 1) for slope in (20, 30)]
    assert [round(value) for value in more] == [6, 15]
    assert "6 in 100 at 20°, 15 in 100 at 30°" in text
