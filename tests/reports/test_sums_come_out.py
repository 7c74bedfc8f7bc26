"""Sums that are shown come out with the digits that are shown."""

from __future__ import annotations

import re

import pytest
from leg_card.plans import DAY, grid_point, leg, plan

from audit.azimuths import GridAzimuth
from audit.leg_card.carried_card import carried_card
from audit.leg_card.check_plan import check_plan
from audit.reports.card_text import render_card_text
from audit.reports.check_report import render_check
from audit.words import Words, spoken
from audit.words.in_other_units import CIRCLE, Units

NUMBER = r"\(?([−-]?\d+(?:[.,]\d+)?)(?:°| mil| Strich| gon)?\)?"
SUM = re.compile(rf"{NUMBER} (−|-|\+) {NUMBER}\s+=\s+{NUMBER}")


def plans():
    """Give courses whose angle is computed, round the compass and on either side of a meridian."""
    for east_m in (310_000.0, 700_000.0):
        for number in range(12):
            start = grid_point("A", east_m + 611.0 * number, 3_580_000.0 + 4_177.0 * number)
            end = grid_point("B", east_m + 1_337.0 + 300.0 * number, 3_581_000.0 + 4_000.0 * number)
            bearing = GridAzimuth(15.0 * number + 7.0)
            yield plan((start, end), (leg(),), date=DAY, safety_azimuth=bearing)


@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize("angle", ["degrees", "mil6400", "gon"])
def test_every_sum_of_check_and_card_comes_out(language, angle):
    """Bug: "-6.03 - 1.66 = -7.68"."""
    spoken_so = Words(language=language, units=Units(angle=angle))
    seen = 0
    for one in plans():
        with spoken(spoken_so):
            text = render_check(check_plan(one)) + render_card_text(carried_card(one))
        for first, sign, second, result in SUM.findall(text):
            terms = [float(part.replace("−", "-").replace(",", ".")) for part in (first, second)]
            shown = float(result.replace("−", "-").replace(",", "."))
            total = terms[0] + terms[1] if sign == "+" else terms[0] - terms[1]
            # A result with fewer digits than its terms is theirs rounded.
            places = len(result.replace(",", ".").partition(".")[2])
            off = (total - shown) % CIRCLE[angle]
            off = min(off, CIRCLE[angle] - off)
            fine = max(len(part.replace(",", ".").partition(".")[2]) for part in (first, second))
            least = 0.0 if fine <= places else 0.5 * 10.0**-places
            assert off <= least + 1e-6, (first, sign, second, result)
            seen += 1
    assert seen > 100
