"""Every word of the card to carry, for paper, page and terminal alike."""

from __future__ import annotations

from dataclasses import dataclass

from audit.leg_card.bezel import Clicks
from audit.leg_card.carried_card import CarriedCard, CarriedLeg, LegTime
from audit.reports import digits, wording
from audit.reports.angle_words import angle_sentences, east_or_west, signed
from audit.reports.cautions import CAUTIONS
from audit.walking_times import WALKING_RULES

_TOO_OLD_YEARS = 5.0
"""A plain no from here on (common practice); that it is older than one is a finding."""

_TURNING = (
    "Line of the bezel over the index line is 0. Left (anticlockwise, seen from above) adds, right "
    "takes off. Then turn until the north arrow lies under the line."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """A figure with its label; ``value`` "" leaves room to write."""

    label: str
    value: str
    main: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class LegWords:
    """What the card says of one leg."""

    title: str
    references: str
    cells: tuple[Cell, ...]
    bezel: tuple[str, ...]
    times: str
    note: str
    blanks: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardWords:
    """What the card says, from top to bottom."""

    title: str
    facts: tuple[str, ...]
    warnings: tuple[str, ...]
    safety: tuple[str, ...]
    legs: tuple[LegWords, ...]
    whole: tuple[str, ...]
    angle: tuple[str, ...]
    bezel: tuple[str, ...]
    rules: tuple[str, ...]
    cautions: tuple[str, ...]


def card_words(carried: CarriedCard) -> CardWords:
    """Give the words of a card."""
    return CardWords(
        title=carried.card.name,
        facts=_facts(carried),
        warnings=tuple(_warnings(carried)),
        safety=_safety(carried),
        legs=tuple(_leg(carried, leg) for leg in carried.legs),
        whole=_whole(carried),
        angle=angle_sentences(carried.card),
        bezel=_bezel(carried),
        rules=tuple(f"{rule.name}: {rule.says} ({rule.source})." for rule in WALKING_RULES),
        cautions=CAUTIONS[:4],
    )


def azimuth(degrees: float) -> str:
    """Write an azimuth with three digits before the point, so that none can get lost."""
    return f"{digits.card_azimuth(degrees).removesuffix('°'):0>5}°"


def _facts(carried: CarriedCard) -> tuple[str, ...]:
    card = carried.card
    day = card.date.isoformat() if card.date else "day not given"
    count = "pace count: ______ to 100 m"
    if card.paces_per_100m is not None:
        count = f"{card.paces_per_100m:g} {carried.pace} paces to 100 m"
    angle = east_or_west(card.angles.grid_magnetic_angle_deg)
    return (
        f"{day}, {len(card.legs)} legs, {digits.whole(carried.distance_m)} m",
        f"grid {card.grid.name}",
        f"grid-magnetic angle {angle} ({_angle_from(carried)})",
        count,
    )


def _angle_from(carried: CarriedCard) -> str:
    if carried.card.angle_source == "model":
        return f"computed for {carried.angle_date}"
    of = carried.angle_date
    return f"of {of.isoformat()}" if of else "its year is not given"


def _warnings(carried: CarriedCard) -> list[str]:
    said = []
    count = len(carried.findings)
    if count:
        things = "thing" if count == 1 else "things"
        said.append(f"Not to be carried yet: {count} {things} to put right; see leg-audit check.")
        said += [finding.message for finding in carried.findings]
    if carried.card.order == "free":
        said.append("The points may be visited in any order; these legs are in that of the file.")
    said += _angle_age(carried)
    return said


def _angle_age(carried: CarriedCard) -> list[str]:
    """Warn of an old angle, and of one of which nobody says how old it is."""
    if carried.card.angle_source == "model":
        return []
    years = carried.angle_age_years
    if years is None:
        return ["The plan does not say of what year the angle is: look at the map's margin."]
    if years > _TOO_OLD_YEARS:
        return [
            (
                f"The angle is {years:.0f} years old: do not go by it. Take it from a new map, or "
                "leave it out of the plan to have it computed."
            )
        ]
    return []


def _safety(carried: CarriedCard) -> tuple[str, ...]:
    safety = carried.card.safety
    if safety is None:
        blank = "______"
        return (f"none in the plan. Ask for it: {blank} magnetic, leads to {blank * 3}",)
    angle = carried.card.angles.grid_magnetic_angle_deg
    turned = _bracketed(angle)
    if safety.given == "magnetic":
        total = f"given as magnetic; grid {azimuth(safety.grid.degrees)}"
    else:
        total = (
            f"grid {azimuth(safety.grid.degrees)} − {turned} = {azimuth(safety.magnetic.degrees)}"
        )
        if safety.given == "true":
            total = f"given as true; {total}"
    lines = [f"{azimuth(safety.magnetic.degrees)} magnetic ({total})"]
    lines += [f"bezel: {_setting(one)}" for one in carried.safety_clicks]
    return (*lines, *([safety.note] if safety.note else []))


def _leg(carried: CarriedCard, leg: CarriedLeg) -> LegWords:
    card = leg.card
    climb = ""
    if leg.ground is not None:
        climb = f"+{digits.whole(leg.ground.climb_m)} −{digits.whole(leg.ground.descent_m)} m"
    paces = "" if card.paces is None else digits.whole(card.paces)
    first, *_ = leg.clicks
    hand = f" {first.hand}" if first.hand else ""
    reckoned = " (where azimuth and distance lead)" if card.end.dead_reckoned else ""
    return LegWords(
        title=f"{card.name}: {card.start.name} to {card.end.name}",
        references=f"{leg.start_reference} to {leg.end_reference}{reckoned}",
        cells=(
            Cell(label="magnetic", value=azimuth(card.magnetic.degrees), main=True),
            Cell(label="grid", value=azimuth(card.azimuth.degrees)),
            Cell(label="back magnetic", value=azimuth(leg.back.degrees)),
            Cell(label="distance", value=f"{digits.whole(card.distance_m)} m", main=True),
            Cell(label=f"{carried.pace} paces", value=paces, main=True),
            Cell(label="bezel clicks", value=f"{first.count}{hand}"),
            Cell(label="climb", value=climb),
        ),
        bezel=tuple(_rounding(one, card.distance_m, card.end.name) for one in leg.clicks),
        times=_times(leg.times),
        note=card.note,
        blanks=("paces walked", "left at", "reached at"),
    )


def _setting(clicks: Clicks) -> str:
    """Say a setting of the bezel: "16 clicks left set 048.0°, 1.2° left"."""
    off = ""
    if abs(clicks.error_deg) >= 0.05:
        side = "right" if clicks.error_deg > 0.0 else "left"
        off = f", {abs(clicks.error_deg):.1f}° {side}"
    count = f"{clicks.count} clicks {clicks.hand}" if clicks.hand else "no click"
    if clicks.count == 1:
        count = f"1 click {clicks.hand}"
    verb = "sets" if clicks.count <= 1 else "set"
    return f"{count} {verb} {azimuth(clicks.azimuth.degrees)}{off}"


def _rounding(clicks: Clicks, distance_m: float, point: str) -> str:
    """Say a setting, and on which side of the point it ends."""
    off_m = clicks.off_line_m(distance_m)
    if abs(off_m) < 0.5:
        return f"{_setting(clicks)}: ends on the line"
    side, other = ("right", "left") if off_m > 0.0 else ("left", "right")
    off = f"{digits.whole(abs(off_m))} m {side} of {point}"
    return f"{_setting(clicks)}: ends {off}; look {other}"


def _times(times: tuple[LegTime, ...]) -> str:
    each = (f"{one.rule} {wording.reckoned_time(one.seconds)}" for one in times)
    return "; ".join(one.replace(" ", "\N{NO-BREAK SPACE}") for one in each)


def _whole(carried: CarriedCard) -> tuple[str, ...]:
    climb = "climb: not known, no heights given"
    if carried.climb_m is not None and carried.descent_m is not None:
        climb = (
            f"climb {digits.whole(carried.climb_m)} m, descent {digits.whole(carried.descent_m)} m "
            f"({carried.heights_from})"
        )
    level = ""
    unknown = [leg.card.name for leg in carried.legs if leg.ground is None]
    if carried.climb_m is None:
        level = "The ground is taken for level in the times"
        some = len(unknown) < len(carried.legs)
        level += (
            f" of {'leg' if len(unknown) == 1 else 'legs'} {', '.join(unknown)}." if some else "."
        )
    said = (
        f"{digits.whole(carried.distance_m)} m; {climb}",
        f"Times without rests: {_times(carried.times)}.",
    )
    return (*said, level) if level else said


def _bezel(carried: CarriedCard) -> tuple[str, ...]:
    leg = carried.card.legs[0]
    angle = carried.card.angles.grid_magnetic_angle_deg
    exact = abs(angle) / carried.click_deg
    ways = ". Or ".join(
        _rounding(one, leg.distance_m, leg.end.name) for one in carried.angle_clicks
    )
    hand = next((one.hand for one in carried.angle_clicks if one.hand), "")
    turn = f", to the {hand}" if hand else ""
    round_it = digits.whole(360.0 / carried.click_deg)
    return (
        f"Clicks of {carried.click_deg:g}°, {round_it} round the bezel. {_TURNING}",
        f"So 10 right is {_left_for_ten(carried)} left.",
        f"The angle alone, {east_or_west(angle)}: {exact:.1f} clicks{turn}.",
        f"On leg {leg.name}, from grid {azimuth(leg.azimuth.degrees)} as set: {ways}.",
        "Who can read the dial sets the azimuth itself: clicks are for the dark.",
    )


def _left_for_ten(carried: CarriedCard) -> str:
    return digits.whole(360.0 / carried.click_deg - 10.0)


def _bracketed(angle_deg: float) -> str:
    text = signed(angle_deg)
    return f"({text})" if text.startswith("−") else text
