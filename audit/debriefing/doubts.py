"""Where it is not sure which part of the recording a leg has, and how to settle it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, LegMatch, LegStatus, Match
from audit.matching.outings import MatchedOuting
from audit.settings import QualitySettings
from audit.track import utc_text

Say = Callable[[float], str]


def doubts(
    card: LegCard, match: Match, clean: CleanTrack, settings: QualitySettings
) -> dict[int, str]:
    """Give, by number of leg, a few sentences on each leg whose portion is not sure."""
    say = _clock(clean)
    told = {}
    for leg in match.legs:
        if leg.confidence < settings.unsure:
            name = card.legs[leg.leg].name
            told[leg.leg] = f"Leg {name}: {_doubt(leg, name, say, settings)}"
    return told


def pinned_note(name: str, leg: LegMatch, clean: CleanTrack) -> str | None:
    """Say which ends of a leg were settled by hand; None where none was."""
    say = _clock(clean)
    words = {"from": ("start", leg.start_s), "claim": ("claim", leg.claim_s)}
    told = [f"its {words[end][0]} at {say(words[end][1] or 0.0)}" for end in leg.pinned if say]
    return f"Leg {name}: {' and '.join(told)} settled by hand." if told else None


def other_walks(names: Sequence[str], outing: MatchedOuting, clean: CleanTrack) -> list[str]:
    """Say which other walks of the course the recording holds, and how to choose one."""
    say = _clock(clean)
    if say is None or not outing.others:
        return []
    taken = _set_out(outing.match)
    begun = "" if taken is None else f" (it set out at {say(taken[1])})"
    told = f"The recording holds {len(outing.others) + 1} walks of this course; the one that "
    told += f"fits it best is taken{begun}."
    choices = [_set_out(match) for match in outing.others]
    pins = [_pin("from", names[first[0]], say(first[1])) for first in choices if first]
    return [f"{told} To take another, say when it set out: {' or '.join(pins)}."]


def _set_out(match: Match) -> tuple[int, float] | None:
    """Give the first leg that was walked, and when the walker left for it."""
    begun = [(leg.start_s, leg.leg) for leg in match.legs if leg.start_s is not None]
    return (min(begun)[1], min(begun)[0]) if begun else None


def _pin(option: str, name: str, moment: str) -> str:
    value = f"{name}={moment}"
    return f"--{option} " + (f'"{value}"' if " " in value else value)


def _clock(clean: CleanTrack) -> Say | None:
    """Give how a moment is told: without the day where the recording has only one."""
    if not clean.timed:
        return None
    first, last = (utc_text(float(clean.time_s[end]))[:10] for end in (0, -1))
    skip = 11 if first == last else 0
    return lambda time_s: utc_text(float(round(time_s)))[skip:]


def _doubt(leg: LegMatch, name: str, say: Say | None, settings: QualitySettings) -> str:
    taken = f"it is taken as {_reading(leg.status, leg.start_s, leg.claim_s, say)}"
    told = f"{taken}, which is only {_percent(leg.confidence)} sure."
    other = leg.runner_up
    if other is None:
        return told
    reading = _reading(other.status, other.start_s, other.claim_s, say)
    told += f" Likeliest otherwise ({_percent(other.probability)}): {reading}."
    if say is None:
        return told
    if other.status == "walked" and other.start_s is not None and other.claim_s is not None:
        now = (leg.start_s, leg.claim_s) if leg.status == "walked" else (None, None)
        ends = (other.start_s, other.claim_s)
        return f"{told} If so, settle it: {_pins(name, now, ends, say, settings.same_moment_s)}."
    if leg.status == "walked" and leg.start_s is not None and leg.claim_s is not None:
        ends = (leg.start_s, leg.claim_s)
        pins = _pins(name, (None, None), ends, say, settings.same_moment_s)
        return f"{told} If it was walked as taken, settle it: {pins}."
    return told


def _percent(share: float) -> str:
    return f"{100.0 * share:.0f} %"


def _reading(
    status: LegStatus, start_s: float | None, claim_s: float | None, say: Say | None
) -> str:
    """Put one reading of a leg in words."""
    if start_s is None or claim_s is None:
        return "not walked"
    what = "begun and given up" if status == "unfinished" else "walked"
    if say is None:
        return f"{what} in another part of the recording"
    return f"{what} from {say(start_s)} to {say(claim_s)}"


def _pins(
    name: str,
    now_s: tuple[float | None, float | None],
    ends_s: tuple[float, float],
    say: Say,
    same_s: float,
) -> str:
    """Give the options that settle a reading: those ends only that are not as taken now."""
    pins = []
    for option, end_s, so_far_s in zip(("from", "claim"), ends_s, now_s, strict=True):
        if so_far_s is None or abs(end_s - so_far_s) > same_s:
            pins.append(_pin(option, name, say(end_s)))
    return " ".join(pins)
