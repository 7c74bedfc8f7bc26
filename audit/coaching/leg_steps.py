"""At which step each leg's error entered, from card, log and recording together."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from audit.coaching.direction_steps import direction_hops
from audit.coaching.distance_steps import distance_hops
from audit.coaching.point_steps import given_hop, plotted_hop, recognised_hop
from audit.coaching.repeated_digits import without_repeated_digits
from audit.coaching.step_sentences import step_sentences
from audit.coaching.steps import Hop, LegSteps, Step
from audit.coaching.walkers_card import OwnLeg
from audit.leg_card import CardLeg, LegCard
from audit.measurement.leg_measures import LegAudit, LegMeasures
from audit.settings import Settings
from audit.walkers_log import LogEntry, WalkersLog
from audit.words import sentence

_READ: set[Step] = {"plotted", "measured", "distance measured"}
"""Steps at which the map is read."""


def walk_steps(
    legs: Sequence[LegAudit],
    card: LegCard,
    own: Mapping[str, OwnLeg],
    log: WalkersLog | None,
    settings: Settings,
    ended_by_log: Collection[str] = (),
) -> dict[str, LegSteps]:
    """Give the steps of every walked leg that a card of the walker's own or a log speaks of.

    ``ended_by_log`` names legs that by the log ended elsewhere than they are taken to: what was
    walked of them is not laid beside what was counted.
    """
    entries = {entry.leg: entry for entry in log.entries} if log else {}
    found = {
        leg.card.name: _steps(leg.card, leg.measures, card, own.get(leg.card.name),
                              entries.get(leg.card.name), settings,
                              ended=leg.card.name not in ended_by_log)
        for leg in legs
        if leg.measures is not None and (leg.card.name in own or leg.card.name in entries)
    }  # fmt: skip
    return without_repeated_digits(found, settings.coaching)


def _steps(
    leg: CardLeg,
    measures: LegMeasures,
    card: LegCard,
    own: OwnLeg | None,
    entry: LogEntry | None,
    settings: Settings,
    *,
    ended: bool,
) -> LegSteps:
    coaching = settings.coaching
    others = tuple(other for other in card.legs if other is not leg)
    points: list[Hop | None] = []
    if own is not None:
        start = given_hop(own.start, leg.start, card.grid, coaching)
        points = [start, given_hop(own.end, leg.end, card.grid, coaching)]
        if start is None or not start.entered:
            points.append(plotted_hop(own, card.grid, coaching))
    points.append(recognised_hop(leg, measures, card.points, card.arrival_radius_m))
    directions = direction_hops(
        leg,
        own,
        None if entry is None else entry.magnetic_azimuth,
        measures,
        card.angles,
        coaching,
        others,
    )
    distances = distance_hops(
        leg,
        own,
        None if entry is None else entry.paces,
        card.paces_per_100m,
        measures,
        settings,
        ended=ended,
    )
    known = [hop for hop in points if hop is not None]
    hops = tuple(_settled(known, [*directions, *distances]))
    said = step_sentences(hops)
    if not ended:
        over = any(hop.over for hop in hops)
        said = (*(said if over else ()), sentence("step-ended-by-log"))
    return LegSteps(leg=leg.name, hops=hops, sentences=said)


def _settled(points: Sequence[Hop], hops: Sequence[Hop]) -> list[Hop]:
    """Tell each error once: as the point's, or as that of measuring, whichever explains more.

    A wrong reference turns and stretches a leg, so what lies between two references is
    not told again. A slip of plotting that accounts for azimuth and distance together
    comes before slips of measuring; where only one of them is off, a slip of measuring
    that fits comes before.
    """
    referred = any(hop.steps == ("given",) and hop.entered for hop in points)
    plotted = [hop for hop in points if hop.steps == ("plotted",)]
    read = [
        hop
        for hop in hops
        if hop.entered and _READ & set(hop.steps) and set(hop.steps) <= _READ | {"given"}
    ]
    if plotted and len(read) == 1 and read[0].slips:
        points, plotted = [hop for hop in points if hop not in plotted], []
    dropped = read if plotted else []
    kept = [hop for hop in hops if hop not in dropped]
    return [*points, *(hop for hop in kept if not (referred and hop.steps == ("given",)))]
