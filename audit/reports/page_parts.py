"""The rest of the page in words: heading, map key, recording, plan."""

from __future__ import annotations

from audit.debriefing.records import Debrief
from audit.reports import digits
from audit.reports.leg_facts import clock
from audit.track import utc_text


def heading_facts(debrief: Debrief) -> list[tuple[str, str]]:
    """Give what stands under the title, as (name, words)."""
    card, quality = debrief.card, debrief.quality
    date = "not known" if card.date is None else card.date.isoformat()
    facts = [("Date", date), ("Recording", quality.source or "not named")]
    facts.append(("Grid", f"{card.grid.name} ({card.grid.code})"))
    facts.append(("Arrival radius", f"{digits.whole(card.arrival_radius_m)} m"))
    if card.paces_per_100m is not None:
        facts.append(("Pace count", f"{digits.whole(card.paces_per_100m)} paces to 100 m"))
    return facts


def map_key(debrief: Debrief) -> list[tuple[str, str]]:
    """Give (sign, meaning) of what the map of this walk shows, in the order of the key."""
    kinds = {span.kind for span in debrief.spans}
    has_claim = any(leg.audit.measures is not None for leg in debrief.legs)
    radius = digits.whole(debrief.card.arrival_radius_m)
    entries = [
        ("planned", "planned leg", True),
        ("walked", "walked on a leg, from leaving to the claim", has_claim),
        ("bypass", "bypass: round an obstacle and back to the line", "bypass" in kinds),
        ("search", "search for the point", "search" in kinds),
        ("other", "walked between or outside the legs", bool(kinds - {"walking"})),
        ("gap", "not recorded", "gap" in kinds),
        ("point", f"point of the course, arrival circle {radius} m", True),
        ("claim", "claim: where the count said “here”, or the point came into sight", has_claim),
        ("miss", "miss, from the point to the claim", has_claim),
        ("halt", "halt", "halt" in kinds),
    ]
    return [(sign, words) for sign, words, shown in entries if shown]


def recording_facts(debrief: Debrief) -> list[tuple[str, str]]:
    """Give what the recording is worth, as (name, words)."""
    quality, clean = debrief.quality, debrief.clean
    facts = [("Fixes", f"{quality.fixes} recorded, {len(clean)} kept")]
    if quality.start_s is None or quality.end_s is None:
        facts.append(("Times", "none; no figure of time is given"))
    else:
        begin, end = utc_text(round(quality.start_s)), utc_text(round(quality.end_s))
        facts.append(("From", f"{begin} to {end}"))
    if quality.median_interval_s is not None:
        facts.append(("Interval", f"{quality.median_interval_s:g} s (median)"))
    noise = f"{quality.noise_m:.1f} m (standard deviation each way; from {quality.noise_from})"
    facts.append(("Receiver noise", noise))
    facts += [("Cleaned", f"{one.what}: {one.count} ({one.detail})") for one in clean.cleaning]
    if not clean.cleaning:
        facts.append(("Cleaned", "nothing to clean"))
    facts.append(("Gaps", _gaps(debrief)))
    return facts


def _gaps(debrief: Debrief) -> str:
    gaps = debrief.clean.gaps
    if not gaps:
        return "none"
    if not debrief.clean.timed:
        return str(len(gaps))
    listed = ", ".join(f"{clock(gap.start_s)} to {clock(gap.end_s)}" for gap in gaps)
    return f"{len(gaps)}: {listed} UTC"
