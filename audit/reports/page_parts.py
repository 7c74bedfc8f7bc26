"""The rest of the page in words: heading, recording, plan."""

from __future__ import annotations

from audit.debriefing.finished_debrief import Debrief
from audit.moments import EARLIEST_MOMENT_S, utc_text
from audit.reports import digits
from audit.reports.leg_facts import clock, clock_name
from audit.statistics.spread import TWO_SIDED_95
from audit.words import in_force, say, told
from audit.words.figures import Number, Paces
from audit.words.spoken_words import has_message

_LEAST_SHOWN = 1.0
"""Of a pace count: it is written in whole paces."""


def heading_facts(debrief: Debrief) -> list[tuple[str, str]]:
    """Give what stands under the title, as (name, words)."""
    card, quality = debrief.card, debrief.quality
    date = say("fact-date-unknown") if card.date is None else card.date.isoformat()
    facts = {"date": date, "recording": quality.source or say("fact-not-named")}
    facts["grid"] = f"{told(card.grid.name)} ({card.grid.code})"
    facts["radius"] = digits.stated_metres(card.arrival_radius_m)
    counts = _pace_counts(debrief)
    if counts:
        facts["pace-count"] = "; ".join(counts)
    return [(say(f"fact-{name}"), words) for name, words in facts.items()]


def _pace_counts(debrief: Debrief) -> list[str]:
    """Give the pace count of the plan, and beside it the walker's own by the counts of his log."""
    planned, paces = debrief.card.paces_per_100m, debrief.paces
    said = []
    if planned is not None:
        said.append(say("fact-pace-count-said", paces=Paces(counted=planned)))
    if paces is not None and paces.counted is not None:
        own, half = paces.counted.per_100m, TWO_SIDED_95 * paces.counted.sd
        said.append(
            say(
                "fact-pace-count-by-log",
                paces=Paces(counted=own),
                error=Paces(counted=max(half, _LEAST_SHOWN)),
            )
        )
    return said


def noise(debrief: Debrief) -> str:
    """Write the receiver's noise to a tenth, in metres in any tradition."""
    return f"{Number(value=debrief.quality.noise_m, decimals=1).shown(in_force())} m"


def legs_reckoned(debrief: Debrief) -> int:
    """Count the legs that begin or end at a place that was reckoned and not seen."""
    walked = (leg.audit.measures for leg in debrief.legs)
    return sum(any(measures.ends_reckoned) for measures in walked if measures is not None)


def recording_facts(debrief: Debrief) -> list[tuple[str, str]]:
    """Give what the recording is worth, as (name, words)."""
    quality, clean = debrief.quality, debrief.clean
    recorded = say("fact-fixes-said", recorded=str(quality.fixes), kept=str(len(clean)))
    facts = [("fixes", recorded)]
    if quality.start_s is None or quality.end_s is None:
        facts.append(("times", say("fact-times-none")))
    else:
        begin, end = (
            f"{clock(at)} {clock_name(at)}" if at < EARLIEST_MOMENT_S else utc_text(round(at))
            for at in (quality.start_s, quality.end_s)
        )
        facts.append(("from", say("fact-from-said", begin=begin, end=end)))
    if quality.median_interval_s is not None:
        interval = in_force().decimal(f"{quality.median_interval_s:g}")
        facts.append(("interval", say("fact-interval-said", interval=interval)))
    facts.append(
        ("noise", say("fact-noise-said", noise=noise(debrief), source=told(quality.noise_from)))
    )
    facts += [
        ("cleaned", say("fact-cleaned-said", what=cleaning_name(one.what), count=str(one.count),
                        detail=told(one.detail)))
        for one in clean.cleaning
    ]  # fmt: skip
    if not clean.cleaning:
        facts.append(("cleaned", say("fact-cleaned-nothing")))
    facts.append(("gaps", _gaps(debrief)))
    return [(say(f"fact-{name}"), words) for name, words in facts]


def cleaning_name(what: str) -> str:
    """Name a kind of cleaning; one without words is read out as it stands."""
    return say(f"recording-{what}") if has_message(f"recording-{what}") else what


def _gaps(debrief: Debrief) -> str:
    gaps = debrief.clean.gaps
    if not gaps:
        return say("fact-no-gaps")
    if not debrief.clean.timed:
        return str(len(gaps))
    ranges = (say("figure-range", low=clock(gap.start_s), high=clock(gap.end_s)) for gap in gaps)
    told = {"gaps": ", ".join(ranges), "clock": clock_name(gaps[0].start_s)}
    return say("fact-gaps-listed", count=len(gaps), **told)
