"""What the card says of the bezel: settings in clicks, and where the rounding leads."""

from __future__ import annotations

from audit.leg_card.bezel import Clicks
from audit.leg_card.carried_card import CarriedCard
from audit.reports import digits
from audit.reports.angle_words import azimuth, east_or_west
from audit.settings import CarriedCardSettings
from audit.words import in_force, say, told
from audit.words.figures import Number, Turn


def bezel_sentences(carried: CarriedCard) -> tuple[str, ...]:
    """Say how the bezel is turned: clicks, the angle in clicks, and the first leg by it."""
    leg, first = carried.card.legs[0], carried.legs[0].pieces[0]
    angle = carried.card.angles.grid_magnetic_angle_deg
    exact = abs(angle) / carried.click_deg
    way_m, end = first.piece.distance_m, told(first.end)
    ways = [rounding_words(one, way_m, end) for one in carried.angle_clicks]
    said = ways[0] if len(ways) == 1 else say("card-bezel-or", before=ways[0], last=ways[1])
    hand = next((one.hand for one in carried.angle_clicks if one.hand), "none")
    round_it = 360.0 / carried.click_deg
    click = in_force().decimal(f"{carried.click_deg:g}")
    clicks = Number(value=exact, decimals=1)
    return (
        say("card-bezel-turning", click=click, round=digits.whole(round_it)),
        say("card-bezel-ten", left=digits.whole(round_it - 10.0)),
        say("card-bezel-angle", angle=east_or_west(angle), clicks=clicks, hand=hand),
        say("card-bezel-leg", leg=leg.name, grid=azimuth(first.piece.azimuth.degrees), ways=said),
        say("card-bezel-dark"),
    )


def rounding_words(clicks: Clicks, distance_m: float, point: str) -> str:
    """Say a setting, and on which side of the point it ends."""
    off_m = clicks.off_line_m(distance_m)
    if abs(off_m) < 0.5:
        return say("card-ends-on-line", setting=setting_words(clicks))
    if abs(off_m) < CarriedCardSettings().no_side_m:
        size = digits.stated_metres(abs(off_m))
        return say("card-ends-near", setting=setting_words(clicks), size=size, point=point)
    return say(
        "card-ends-off",
        setting=setting_words(clicks),
        size=digits.stated_metres(abs(off_m)),
        side="right" if off_m > 0.0 else "left",
        point=point,
    )


def setting_words(clicks: Clicks) -> str:
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
