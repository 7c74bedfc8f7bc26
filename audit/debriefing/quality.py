"""What the recording is worth, in figures and in sentences."""

from __future__ import annotations

from collections.abc import Mapping

from audit.debriefing.another_course import nothing_walked, of_another_course
from audit.debriefing.doubts import chosen_by, other_walks, pinned_note, reckoned_notes
from audit.debriefing.finished_debrief import TrackQuality
from audit.matching.leg_match import CleanTrack
from audit.matching.outings import MatchedOuting
from audit.measurement.leg_measures import LegAudit
from audit.measurement.measure_walk import WalkMeasures
from audit.measurement.receiver_noise import ReceiverNoise
from audit.settings import QualitySettings
from audit.track import Track
from audit.walkers_log import WalkersLog
from audit.words import sentence
from audit.words.figures import Listed, Moment, Number, Percent


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
    cards = [leg.card for leg in legs]
    elsewhere = of_another_course(clean, cards, settings)
    if not any(leg.measures is not None for leg in legs):
        notes.append(nothing_walked(clean, cards))
    elif elsewhere:
        notes.append(elsewhere)
    for leg, portion in zip(legs, match.legs, strict=True):
        if leg.before_recording:
            notes.append(sentence("recording-before", leg=leg.card.name))
        if portion.under_way:
            notes.append(sentence("recording-under-way", leg=leg.card.name))
        notes += reckoned_notes(leg.card.name, portion)
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
        elsewhere=elsewhere,
    )


def _noise_from(noise: ReceiverNoise) -> str:
    usual = Number(value=noise.prior_m, decimals=1)
    minutes = Number(value=max(noise.halted_s / 60.0, 1.0))
    walked = Number(value=max(noise.walked_s / 60.0, 1.0))
    match noise.source:
        case "usual value":
            return sentence("recording-noise-usual", usual=usual)
        case "halts":
            return sentence("recording-noise-halts", minutes=minutes, usual=usual)
        case "straight walking":
            return sentence("recording-noise-walking", walked=walked, usual=usual)
        case "halts and straight walking":
            return sentence("recording-noise-both", minutes=minutes, walked=walked, usual=usual)


def _rounds_note(outing: MatchedOuting, settings: QualitySettings) -> str:
    """Say which other rounds a long recording holds."""
    most = settings.rounds_told
    later = len(outing.rounds) - most
    moments = Listed(
        things=[Moment(time_s=time_s, day=True) for time_s in outing.rounds[:most]], link="comma"
    )
    return sentence(
        "recording-rounds",
        chosen=chosen_by(outing),
        begun=Moment(time_s=float(outing.sampled.clean.time_s[0]), day=True),
        times=moments,
        later=max(0, later),
    )


def _recording_notes(
    clean: CleanTrack, outing: MatchedOuting, noise: ReceiverNoise, settings: QualitySettings
) -> list[str]:
    """Say what the recording as a whole cannot show."""
    notes = [done.detail for done in clean.cleaning if done.weighs]
    if outing.outings > 1:
        begun = Moment(time_s=float(outing.sampled.clean.time_s[0]), day=True)
        chosen = chosen_by(outing)
        notes.append(
            sentence("recording-outings", count=outing.outings, chosen=chosen, begun=begun)
        )
    if outing.rounds:
        notes.append(_rounds_note(outing, settings))
    if not clean.timed:
        notes.append(sentence("recording-untimed"))
    if clean.median_interval_s is not None and clean.median_interval_s > settings.sparse_s:
        notes.append(sentence("recording-sparse", interval=Number(value=clean.median_interval_s)))
    if noise.noise_m > settings.noisy_m:
        notes.append(sentence("recording-wandered", noise=Number(value=noise.noise_m)))
    return notes


def _log_notes(log: WalkersLog, legs: tuple[LegAudit, ...]) -> list[str]:
    """Say what reading the walker's log assumed, and which of its entries no leg takes."""
    known = {leg.card.name for leg in legs}
    astray = [f'"{entry.leg}"' for entry in log.entries if entry.leg not in known]
    notes: list[str] = [sentence("recording-log-note", note=note) for note in log.notes]
    if astray:
        notes.append(sentence("recording-log-astray", names=", ".join(astray)))
    unseen = [
        leg.card.name
        for leg in legs
        if leg.measures is None and (entry := log.entry(leg.card.name)) and entry.says_something
    ]
    if unseen:
        notes.append(
            sentence("recording-log-unseen", count=len(unseen), legs=Listed(things=unseen))
        )
    return notes


def _gap_notes(leg: LegAudit, settings: QualitySettings) -> list[str]:
    notes: list[str] = []
    name = leg.card.name
    if leg.measures is not None and leg.measures.gap_share > settings.gap_share:
        share = Percent(share=leg.measures.gap_share)
        notes.append(sentence("recording-in-gaps", leg=name, share=share))
    elif (silent := _silent_share(leg)) > settings.gap_share:
        # Where little was walked in them, gaps are many minutes of it all the same.
        notes.append(sentence("recording-silent", leg=name, share=Percent(share=silent)))
    return notes


def _silent_share(leg: LegAudit) -> float:
    """Give the share of a leg's time that lies in gaps of the recording."""
    measures = leg.measures
    if measures is None or not measures.duration_s or measures.unseen_s is None:
        return 0.0
    return min(measures.unseen_s / measures.duration_s, 1.0)
