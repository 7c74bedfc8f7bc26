"""Steps of a leg measured from a wrong plot are not put before the walker a second time."""

from __future__ import annotations

import math
from types import SimpleNamespace

from audit.coaching.carried_steps import with_carried
from audit.coaching.steps import Hop, LegSteps
from audit.diagnosis.carried_over import CarriedOver
from audit.settings import CoachingSettings


def hop(step, kind, error, tolerance, said):
    return Hop(steps=(step,), kind=kind, error=error, tolerance=tolerance, off_m=100.0,
               slips=("azimuth-digits",), sentence=said)  # fmt: skip


GIVEN = hop("given", "point", 300.0, 9.0, "the card's reference for P2 lies 300 m off")
TURNED = hop("measured", "direction", -20.7, 1.5, "It fits one digit wrong (314 for 334).")
PACED = hop("paced", "distance", 90.0, 20.0, "90 m more than were counted")
LEGS = [SimpleNamespace(card=SimpleNamespace(name=name, distance_m=608.0)) for name in ("2", "3")]


def test_a_step_that_the_plot_before_makes_is_no_digit_of_this_leg():
    """Bug: "314 for 334" was told of a leg measured from a point plotted wrongly the leg before."""
    steps = {
        "2": LegSteps(leg="2", hops=(GIVEN,), sentences=()),
        "3": LegSteps(leg="3", hops=(GIVEN, TURNED, PACED), sentences=()),
    }
    plot = CarriedOver(probability=0.98, turn_deg=-20.0, log_ratio=math.log(1.29))
    told = with_carried(steps, LEGS, {"3": plot}, CoachingSettings())
    assert told["2"] == steps["2"]
    assert [one.carried for one in told["3"].hops] == [True, True, False]
    assert told["3"].entered == ("paced",)
    said = " ".join(told["3"].sentences)
    assert "314" not in said
    assert said.count("Carried over from the leg before") == 2
