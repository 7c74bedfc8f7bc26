"""What the recording is worth, in figures and in sentences."""

from __future__ import annotations

from collections.abc import Mapping

from audit.debriefing.doubts import other_walks, pinned_note
from audit.debriefing.records import TrackQuality
from audit.matching.leg_match import CleanTrack
from audit.matching.outings import MatchedOuting
from audit.measurement.leg_measures import LegAudit
from audit.measurement.measure_walk import WalkMeasures
from audit.measurement.receiver_noise import ReceiverNoise
from audit.settings import QualitySettings
from audit.track import Track, utc_text
from audit.walkers_log import WalkersLog

_FEWEST_FIXES = 10
"""Fewer show no leg with a start, a way and an end."""


def judge_quality(
    track: Track,
    clean: CleanTrack,
    outing: MatchedOuting,
    measured: WalkMeasures,
    doubtful: Mapping[int, str],
    settings: QualitySettings,
    log: WalkersLog | None = None,
) -> TrackQuality:
    """Gather what a reader must know before trusting the figures.

    ``doubtful`` holds, by number of leg, what is said of a portion that is not sure.
    """
    match, legs, noise = outing.match, measured.legs, measured.noise
    notes = [*track.notes, *(_log_notes(log, legs) if log else ())]
    notes += _recording_notes(clean, outing, noise, settings)
    notes += other_walks([leg.card.name for leg in legs], outing, clean)
    if not any(leg.measures is not None for leg in legs):
        notes.append(_nothing_walked(clean))
    for leg, portion in zip(legs, match.legs, strict=True):
        if portion.under_way:
            notes.append(
                f"Leg {leg.card.name} was under way when the recording began: its distance and "
                "where it started are those of the recording, not of the walk."
            )
        settled = pinned_note(leg.card.name, portion, clean)
        notes += [note for note in (settled, doubtful.get(portion.leg)) if note]
        notes += _gap_notes(leg, settings)
    return TrackQuality(
        source=track.source,
        fixes=len(track),
        start_s=float(clean.time_s[0]) if clean.timed else None,
        end_s=float(clean.time_s[-1]) if clean.timed else None,
        median_interval_s=clean.median_interval_s,
        noise_m=noise.noise_m,
        noise_from=_noise_from(noise),
        noise=noise,
        notes=tuple(notes),
    )


def _noise_from(noise: ReceiverNoise) -> str:
    usual = f"a usual value of {noise.prior_m:.1f} m"
    if noise.source != "halts":
        return f"{usual}, for want of halts"
    return f"halts of {max(noise.halted_s / 60.0, 1.0):.0f} min in all, and {usual}"


def _nothing_walked(clean: CleanTrack) -> str:
    """Say why there is nothing to measure, as far as the recording shows it."""
    if len(clean) < _FEWEST_FIXES:
        return (
            f"Only {len(clean)} fixes of the recording can be used: no leg can be recognised in "
            "so few. Look for the whole recording."
        )
    return (
        "No leg of the plan was recognised in this recording. Check that plan and recording are "
        "of the same walk, and that its points are where they should be."
    )


def _rounds_note(outing: MatchedOuting, settings: QualitySettings) -> str:
    """Say which other rounds a long recording holds."""
    most = settings.rounds_told
    later = len(outing.rounds) - most
    told = ", ".join(utc_text(time_s) for time_s in outing.rounds[:most])
    more = f" and {later} later" if later > 0 else ""
    begun = utc_text(float(outing.laid_out.clean.time_s[0]))
    return (
        "The recording is many times as long as the course. Only the rounds that pass its points "
        f"best were weighed, and one after {begun} is taken. Others passed their first point at "
        f"{told}{more}. To take another, pin its start with --from."
    )


def _recording_notes(
    clean: CleanTrack, outing: MatchedOuting, noise: ReceiverNoise, settings: QualitySettings
) -> list[str]:
    """Say what the recording as a whole cannot show."""
    notes = []
    if outing.outings > 1:
        begun = utc_text(float(outing.laid_out.clean.time_s[0]))
        notes.append(
            f"The recording holds {outing.outings} outings near the course; the one that fits it "
            f"best, begun {begun}, is taken for the walk."
        )
    if outing.rounds:
        notes.append(_rounds_note(outing, settings))
    if not clean.timed:
        notes.append(
            "The recording carries no usable times: legs are matched by the order of fixes, "
            "halts cannot be seen, and there are no time figures."
        )
    if clean.median_interval_s is not None and clean.median_interval_s > settings.sparse_s:
        notes.append(
            f"A fix only every {clean.median_interval_s:.0f} s: corners are cut and short "
            "bypasses vanish."
        )
    if noise.noise_m > settings.noisy_m:
        notes.append(
            f"The receiver wandered by about {noise.noise_m:.0f} m: short legs cannot be "
            "judged on heading."
        )
    return notes


def _log_notes(log: WalkersLog, legs: tuple[LegAudit, ...]) -> list[str]:
    """Say what reading the walker's log assumed, and which of its entries no leg takes."""
    known = {leg.card.name for leg in legs}
    astray = [f'"{entry.leg}"' for entry in log.entries if entry.leg not in known]
    notes = [f"The walker's log: {note}" for note in log.notes]
    if astray:
        notes.append(
            f"The walker's log has entries for {', '.join(astray)}, which the plan has no leg "
            "for; they were left out."
        )
    return notes


def _gap_notes(leg: LegAudit, settings: QualitySettings) -> list[str]:
    notes = []
    name = leg.card.name
    if leg.measures is not None and leg.measures.gap_share > settings.gap_share:
        notes.append(
            f"Leg {name}: {leg.measures.gap_share:.0%} of it lies in gaps of the recording, "
            "where the line drawn is not what was walked."
        )
    return notes
