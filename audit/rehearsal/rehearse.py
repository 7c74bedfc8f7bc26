"""The whole rehearsal: every mistake down every leg, what it meets, and what looks alike."""

from __future__ import annotations

from collections.abc import Sequence

from audit.forecast.leg_forecast import forecast_leg
from audit.forecast.near_areas import areas_near
from audit.forecast.walker_scatter import WalkerScatter, ordinary_scatter
from audit.leg_card import LegCard
from audit.rehearsal.finished_rehearsal import LegRehearsal, Rehearsal
from audit.rehearsal.leg_ways import leg_ways
from audit.rehearsal.look_alikes import look_alikes, resolution_m
from audit.rehearsal.paper_evidence import Heights
from audit.rehearsal.proposals import proposals, why_no_change
from audit.rehearsal.ways_on_ground import Surroundings, planned_through, way_end
from audit.settings import Settings
from audit.words import sentence


def rehearse(
    card: LegCard,
    around: Surroundings | None = None,
    *,
    heights: Heights | None = None,
    scatter: WalkerScatter | None = None,
    settings: Settings | None = None,
) -> Rehearsal:
    """Walk every mistake of the catalogue down every leg of a course.

    Parameters
    ----------
    card
        The course worked out.
    around
        Areas, and the points of courses beside it, on the grid of the card.
    heights
        Of the ground, where a raster of it is at hand: slopes make mistakes of their own.
    scatter
        Of the walker; an ordinary one where left out.
    """
    settings = settings or Settings()
    around = around or Surroundings()
    scatter = scatter or ordinary_scatter(settings.forecast)
    legs = tuple(
        _leg(card, number, around, heights, (scatter, settings)) for number in range(len(card.legs))
    )
    return Rehearsal(
        card=card,
        resolution_m=resolution_m(settings),
        legs=legs,
        beside=tuple(dict.fromkeys(course for course, _ in around.beside)),
        notes=tuple(_notes(around, heights)),
        near_areas=areas_near(
            card, [leg.forecast for leg in legs], around.areas, settings.forecast
        ),
        settings=settings.rehearsal,
    )


def _leg(
    card: LegCard,
    number: int,
    around: Surroundings,
    heights: Heights | None,
    walker: tuple[WalkerScatter, Settings],
) -> LegRehearsal:
    scatter, settings = walker
    leg = card.legs[number]
    forecast = forecast_leg(
        leg, scatter, card.arrival_radius_m, angles=card.angles, settings=settings.forecast
    )
    ways, not_here = leg_ways(card, number, heights, settings)
    alike = look_alikes(ways, forecast, settings)
    return LegRehearsal(
        leg=leg,
        forecast=forecast,
        ends=tuple(way_end(way, forecast, leg, card, around) for way in ways),
        look_alikes=alike,
        proposals=proposals(card, number, (ways, alike), around, heights, walker),
        not_here=not_here,
        planned_through=planned_through(leg, around),
        no_change=why_no_change(card, number),
    )


def _notes(around: Surroundings, heights: Heights | None) -> Sequence[str]:
    """Say what could not be looked at."""
    notes: list[str] = []
    areas = around.areas
    if areas.bounds is None:
        notes.append(sentence("rehearse-note-bounds"))
    if not areas.no_go and not areas.hazards:
        notes.append(sentence("rehearse-note-areas"))
    if heights is None:
        notes.append(sentence("rehearse-note-heights"))
    notes.append(sentence("rehearse-note-datum"))
    return notes
