"""What several legs of a walk have in common: a mistake, on which legs, and how large."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from audit.diagnosis.cause import Cause
from audit.diagnosis.causes import CAUSES
from audit.diagnosis.finding import Unit, WalkFinding
from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.predicted import predicted_for
from audit.diagnosis.steady_sizes import made_by
from audit.diagnosis.weigh_walk import Weighed
from audit.settings import DiagnosisSettings

_UNEQUAL = frozenset(
    {
        "bezel-wrong-way", "mils-as-degrees", "wrong-mil-circle", "sidehill", "slope-paced",
        "azimuth-digits", "neighbour-azimuth", "right-angle", "hundred-miscounted", "early-stop",
        "overshoot", "digits-transposed", "digit-wrong", "easting-northing-swapped",
        "wrong-plotting-scale", "wrong-point",
    }
)  # fmt: skip
"""Each leg shows these by another number."""


def joint_stories(
    evidence: Sequence[LegEvidence],
    weighed: Weighed,
    steady: Mapping[str, float],
    settings: DiagnosisSettings,
) -> tuple[WalkFinding, ...]:
    """Give every mistake that is named over the walk, the most probable first."""
    stories = []
    for cause in CAUSES:
        shares = weighed.on.get(cause.name)
        if shares is None:
            continue
        shown = [
            number
            for number, share in enumerate(shares)
            if share > 0.5 and made_by(weighed.states[number], cause.name) > 0.5
        ]
        if len(shown) < 2 or weighed.walk_causes[cause.name] < settings.named:
            continue
        size, unit = _size(cause, [evidence[number] for number in shown], steady, settings)
        legs = tuple(evidence[number].leg for number in shown)
        stories.append(
            WalkFinding(
                cause=cause.name,
                probability=min(float(weighed.walk_causes[cause.name]), 1.0),
                legs=legs,
                begins_later=shown[0] > 0,
                put_right=shown[-1] < len(evidence) - 1 and shown[-1] - shown[0] < len(shown),
                size=size,
                unit=unit,
            )
        )
    return tuple(sorted(stories, key=lambda story: -story.probability))


def _size(
    cause: Cause,
    legs: Sequence[LegEvidence],
    steady: Mapping[str, float],
    settings: DiagnosisSettings,
) -> tuple[float | None, Unit | None]:
    """Give the size that all the legs share."""
    if cause.name in _UNEQUAL:
        return None, None
    numbers = [predicted_for(cause, leg, settings, steady) for leg in legs]
    known = [number for number in numbers if number is not None]
    if not known:
        return None, None
    sizes = [number.number for number in known]
    return sum(sizes) / len(sizes), known[0].unit
