"""Every word of the card to carry, for paper, page and terminal alike, in the words in force."""

from __future__ import annotations

from collections.abc import Container
from dataclasses import dataclass, replace

from audit.leg_card.bezel import Clicks
from audit.leg_card.carried_card import CarriedCard, CarriedLeg, CarriedPiece, LegTime
from audit.leg_card.doubted import Doubted
from audit.leg_card.finished_card import LegCard, SafetyBearing
from audit.leg_card.leg_pieces import walked_m
from audit.reports import digits
from audit.reports.angle_words import angle_sentences, bracketed, east_or_west, summed_angle_deg
from audit.reports.card_marks import in_doubt, marked_as_turned, what_is_marked, with_mark
from audit.reports.cautions import cautions
from audit.reports.shown_paces import hundred, in_paces_shown, pace_shown
from audit.reports.time_words import rules_told, times_by_rules
from audit.reports.wording import leg_names
from audit.units import turn_degrees
from audit.words import in_force, say, told
from audit.words.figures import Azimuth, Number, Turn
from audit.words.in_other_units import METRES, to_place


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """A figure with its label; ``value`` "" leaves room to write."""

    label: str
    value: str
    main: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceWords:
    """What the card says of a straight piece of a leg; a leg that is one needs no ``title``."""

    title: str
    cells: tuple[Cell, ...]
    bezel: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LegWords:
    """What the card says of one leg; ``cells`` hold what is of the whole leg."""

    title: str
    references: str
    pieces: tuple[PieceWords, ...]
    cells: tuple[Cell, ...]
    time: str
    note: str
    blanks: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """Sentences under a heading."""

    heading: str
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardWords:
    """What the card says, from top to bottom."""

    title: str
    facts: tuple[str, ...]
    warnings: tuple[str, ...]
    safety: Part
    legs: tuple[LegWords, ...]
    parts: tuple[Part, ...]


def card_words(carried: CarriedCard) -> CardWords:
    """Give the words of a card."""
    return CardWords(
        title=carried.card.name,
        facts=_facts(carried),
        warnings=tuple(_warnings(carried)),
        safety=Part(heading=say("card-safety"), sentences=_safety(carried)),
        legs=tuple(_leg(carried, leg) for leg in carried.legs),
        parts=(
            Part(heading=say("card-all-legs"), sentences=_whole(carried)),
            Part(heading=say("card-angle-heading"), sentences=angle_sentences(carried.card)),
            Part(heading=say("card-bezel"), sentences=_bezel(carried)),
            Part(heading=say("card-rules"), sentences=rules_told()),
            Part(heading=say("page-cautions"), sentences=cautions()[:4]),
        ),
    )


def azimuth(degrees: float, *, decimals: int = 1) -> str:
    """Write an azimuth with all digits before the point, so that none can get lost."""
    text = Azimuth(degrees=degrees, degrees_decimals=decimals, of_card=True).shown(in_force())
    return f"{text}°" if in_force().units.angle == "degrees" else text


def _facts(carried: CarriedCard) -> tuple[str, ...]:
    card = carried.card
    angle = east_or_west(card.angles.grid_magnetic_angle_deg)
    return (
        say(
            "card-day",
            day=card.date.isoformat() if card.date else say("card-day-unknown"),
            legs=len(card.legs),
            distance=_whole_distance(carried),
        ),
        say("card-grid", grid=card.grid.name),
        say("card-angle", angle=angle, **{"from": _angle_from(carried)}),
        _pace_count(carried),
    )


def _whole_distance(carried: CarriedCard) -> str:
    """Write the distance of all legs as those that are shown come to it: people add them up."""
    units = in_force().units
    shown = sum(float(to_place(units.length_from(walked_m(leg.card)), 0)) for leg in carried.legs)
    return digits.stated_metres(shown * METRES[units.length])


def _pace_count(carried: CarriedCard) -> str:
    """Say the pace count to a hundred of the lengths that are shown."""
    unit_m = METRES[in_force().units.length]
    length = hundred()
    if carried.card.paces_per_100m is None:
        return say("card-count-blank", length=length)
    rate = in_paces_shown(carried.card.paces_per_100m, carried.pace) * unit_m
    decimals = 0 if abs(rate - round(rate)) < 0.05 else 1
    paces = Number(value=rate, decimals=decimals)
    return say("card-count", paces=paces, pace=pace_shown(carried.pace), length=length)


def _angle_from(carried: CarriedCard) -> str:
    of = carried.angle_dated
    if carried.card.angle_source == "model":
        return say("card-angle-computed", day=of)
    return say("card-angle-of", day=of) if of else say("card-angle-no-year")


def _warnings(carried: CarriedCard) -> list[str]:
    said = []
    if carried.findings:
        said.append(say("card-not-yet", count=len(carried.findings)))
        said += [told(finding.message) for finding in carried.findings]
    if carried.card.order == "free":
        said.append(say("card-free"))
    return [*said, *_angle_age(carried), *what_is_marked(carried)]


def _angle_age(carried: CarriedCard) -> list[str]:
    """Warn of an old angle, and of one of which nobody says how old it is."""
    if carried.card.angle_source == "model":
        return []
    years = carried.angle_age_years
    said = [say("card-no-year")] if years is None else []
    if years is not None and carried.angle_too_old:
        said.append(say("card-old", years=f"{years:.0f}"))
    return said


def _safety(carried: CarriedCard) -> tuple[str, ...]:
    safety = carried.card.safety
    if safety is None:
        return (say("card-safety-none"),)
    by_magnetic = safety.given == "magnetic"
    grid = marked_as_turned(carried, _safety_grid(carried.card, safety), turned=by_magnetic)
    magnetic = azimuth(safety.magnetic.degrees)
    if safety.given == "magnetic":
        total = say("card-safety-magnetic", grid=grid)
    else:
        turned = bracketed(summed_angle_deg(carried.card))
        total = say("card-safety-grid", grid=grid, angle=turned, magnetic=magnetic)
        if safety.given == "true":
            total = say("card-safety-true", total=total)
    magnetic = marked_as_turned(carried, magnetic, turned=not by_magnetic)
    lines = [say("card-safety-said", magnetic=magnetic, total=total)]
    for one in carried.safety_clicks:
        setting = marked_as_turned(carried, _setting(one), turned=not by_magnetic)
        lines.append(say("card-safety-bezel", setting=setting))
    return (*lines, *([safety.note] if safety.note else []))


def _safety_grid(card: LegCard, safety: SafetyBearing) -> str:
    """Write the grid azimuth to the tenth, or finer where its sum needs that to come out."""
    degrees = safety.grid.degrees
    if safety.given == "magnetic":
        return azimuth(degrees)
    units = in_force().units
    sum_deg = units.as_stated(degrees) - units.as_stated(summed_angle_deg(card), -2)
    off_deg = turn_degrees(units.as_stated(sum_deg), units.as_stated(safety.magnetic.degrees))
    return azimuth(degrees, decimals=1 if abs(off_deg) < 1e-6 else 2)


def _leg(carried: CarriedCard, leg: CarriedLeg) -> LegWords:
    card = leg.card
    reckoned = "card-ends-reckoned" if card.end.dead_reckoned else "card-ends"
    straight = len(leg.pieces) == 1
    return LegWords(
        title=say("card-leg-title", leg=card.name, start=card.start.name, end=card.end.name),
        references=say(reckoned, start=leg.start_reference, end=leg.end_reference),
        pieces=tuple(_piece(carried, one, straight=straight) for one in leg.pieces),
        cells=(*(() if straight else _sums(carried, leg)), _climb(leg)),
        time=say("card-time", times=_times(leg.times)),
        note=card.note,
        blanks=(
            say("card-paces-walked", pace=pace_shown(carried.pace)),
            say("card-left-at"),
            say("card-reached-at"),
        ),
    )


def _piece(carried: CarriedCard, one: CarriedPiece, *, straight: bool) -> PieceWords:
    """Say what is set and counted; the whole of a straight leg is told with the leg."""
    piece, (first, *_) = one.piece, one.clicks
    set_in_doubt = in_doubt(carried, one, "magnetic")
    # Lengths of pieces are the positions' own, whatever the plan says of their sum.
    doubted = one.doubted if straight or "magnetic" in one.doubted else frozenset()
    clicks = say("card-clicks-said", count=str(first.count), hand=first.hand or "none")

    def azimuth_cell(label: str, degrees: float, north: Doubted, *, main: bool = False) -> Cell:
        cell = _azimuth_cell(label, degrees, main=main)
        marked = in_doubt(carried, one, north)
        return replace(cell, value=with_mark(cell.value, marked=marked))

    title = "" if straight else say(
        "card-piece",
        start=told(one.start),
        end=told(one.end),
        from_reference=one.start_reference,
        to_reference=one.end_reference,
    )  # fmt: skip
    return PieceWords(
        title=title,
        cells=(
            azimuth_cell("card-magnetic", piece.magnetic.degrees, "magnetic", main=True),
            azimuth_cell("card-grid-azimuth", piece.azimuth.degrees, "grid"),
            *(
                [azimuth_cell("card-true", carried.card.angles.true(piece.azimuth).degrees, "grid")]
                if carried.in_true
                else []
            ),
            azimuth_cell("card-back", one.back.degrees, "magnetic"),
            *_lengths(carried, piece.distance_m, piece.paces, doubted),
            Cell(label=say("card-clicks"), value=with_mark(clicks, marked=set_in_doubt)),
        ),
        bezel=tuple(
            _rounding(carried, one, setting, marked=set_in_doubt) for setting in one.clicks
        ),
    )


def _lengths(
    carried: CarriedCard, distance_m: float, count: float | None, doubted: Container[str] = ()
) -> tuple[Cell, Cell]:
    paces = "" if count is None else digits.whole(in_paces_shown(count, carried.pace))
    metres = digits.stated_metres(distance_m)
    return (
        Cell(
            label=say("card-distance"),
            value=with_mark(metres, marked="distance" in doubted),
            main=True,
        ),
        Cell(
            label=say("card-paces", pace=pace_shown(carried.pace)),
            value=with_mark(paces, marked="paces" in doubted),
            main=True,
        ),
    )


def _sums(carried: CarriedCard, leg: CarriedLeg) -> tuple[Cell, ...]:
    """Say what the pieces of a leg come to, and what the plan gives where that is another."""
    counts = [one.piece.paces for one in leg.pieces if one.piece.paces is not None]
    rows = _lengths(carried, walked_m(leg.card), sum(counts) if counts else None)
    plan = _lengths(carried, leg.card.distance_m, leg.card.paces)
    cells, doubted = [], leg.pieces[0].doubted
    for row, given, number in zip(rows, plan, ("distance", "paces"), strict=True):
        value = row.value
        if given.value != value:
            value = say("card-plan-gives", value=value, given=given.value)
        value = with_mark(value, marked=number in doubted)
        cells.append(Cell(label=say("card-all-pieces", what=row.label), value=value))
    return tuple(cells)


def _climb(leg: CarriedLeg) -> Cell:
    climb = ""
    if leg.ground is not None:
        up, down = digits.whole(leg.ground.climb_m), digits.whole(leg.ground.descent_m)
        climb = say("card-climb-said", up=up, down=down)
    return Cell(label=say("card-climb"), value=climb)


def _azimuth_cell(label: str, degrees: float, *, main: bool = False) -> Cell:
    """Give an azimuth; its unit, where it is a word, stands with the label: cells are narrow."""
    value, _, unit = azimuth(degrees).partition(" ")
    return Cell(label=f"{say(label)}, {unit}" if unit else say(label), value=value, main=main)


def _setting(clicks: Clicks) -> str:
    """Say a setting of the bezel: "16 clicks left set 048.0°, 1.2° left"."""
    off = ""
    if abs(clicks.error_deg) >= 0.05:
        side = "right" if clicks.error_deg > 0.0 else "left"
        off = say("card-setting-off", size=Turn(degrees=clicks.error_deg), side=side)
    return say(
        "card-setting",
        count=clicks.count,
        hand=clicks.hand,
        azimuth=azimuth(clicks.azimuth.degrees),
        off=off,
    )


def _rounding(carried: CarriedCard, one: CarriedPiece, clicks: Clicks, *, marked: bool) -> str:
    """Say a setting, and on which side of the point it ends.

    Where a number of the leg or the angle is to be put right nobody knows where it ends, and
    there is no side to look to.
    """
    if one.doubted or in_doubt(carried, one, "magnetic") or in_doubt(carried, one, "grid"):
        return with_mark(_setting(clicks), marked=marked)
    point = told(one.end)
    off_m = clicks.ends_off_m(one.between, carried.card.angles, one.piece.distance_m)
    if abs(off_m) < 0.5:
        return say("card-ends-on-line", setting=_setting(clicks))
    if abs(off_m) < carried.no_side_m:
        size = digits.stated_metres(abs(off_m))
        return say("card-ends-near", setting=_setting(clicks), size=size, point=point)
    return say(
        "card-ends-off",
        setting=_setting(clicks),
        size=digits.stated_metres(abs(off_m)),
        side="right" if off_m > 0.0 else "left",
        point=point,
    )


def _times(times: tuple[LegTime, ...]) -> str:
    return times_by_rules((one.rule, one.seconds) for one in times)


def _whole(carried: CarriedCard) -> tuple[str, ...]:
    climb = say("card-climb-unknown")
    if carried.climb_m is not None and carried.descent_m is not None:
        up, down = digits.whole(carried.climb_m), digits.whole(carried.descent_m)
        climb = say("card-climb-whole", up=up, down=down, **{"from": carried.heights_from})
    return (
        say("card-whole", distance=_whole_distance(carried), climb=climb),
        say("card-times", times=_times(carried.times)),
        *_taken_for_level(carried),
    )


def _taken_for_level(carried: CarriedCard) -> tuple[str, ...]:
    if carried.climb_m is not None:
        return ()
    unknown = [leg.card.name for leg in carried.legs if leg.ground is None]
    if len(unknown) == len(carried.legs):
        return (say("card-level"),)
    return (say("card-level-legs", legs=leg_names(unknown)),)


def _bezel(carried: CarriedCard) -> tuple[str, ...]:
    leg, first = carried.card.legs[0], carried.legs[0].pieces[0]
    angle = carried.card.angles.grid_magnetic_angle_deg
    exact = abs(angle) / carried.click_deg
    # The angle alone is right beside a magnetic azimuth that is not.
    marked = carried.angle_in_doubt or "grid" in first.doubted
    ways = [_rounding(carried, first, one, marked=marked) for one in carried.angle_clicks]
    said = ways[0] if len(ways) == 1 else say("card-bezel-or", before=ways[0], last=ways[1])
    grid = with_mark(azimuth(first.piece.azimuth.degrees), marked=in_doubt(carried, first, "grid"))
    hand = next((one.hand for one in carried.angle_clicks if one.hand), "none")
    round_it = 360.0 / carried.click_deg
    click = in_force().decimal(f"{carried.click_deg:g}")
    clicks = Number(value=exact, decimals=1)
    return (
        say("card-bezel-turning", click=click, round=digits.whole(round_it)),
        say("card-bezel-ten", left=digits.whole(round_it - 10.0)),
        say("card-bezel-angle", angle=east_or_west(angle), clicks=clicks, hand=hand),
        say("card-bezel-leg", leg=leg.name, grid=grid, ways=said),
        say("card-bezel-dark"),
    )
