"""Where it is not sure which part of the recording a leg has, and how to settle it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from audit.debriefing.ended_by_log import EndedByLog
from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, LegMatch, LegStatus, Match
from audit.matching.outings import MatchedOuting
from audit.moments import utc_text
from audit.settings import QualitySettings
from audit.words import Sentence, sentence
from audit.words.figures import Length, Listed, Moment, Paces, Percent


@dataclass(frozen=True, slots=True, kw_only=True)
class _Clock:
    """How a moment is told: without the day where the recording has only one."""

    day: bool

    def __call__(self, time_s: float) -> Moment:
        return Moment(time_s=float(round(time_s)), day=self.day)

    def text(self, time_s: float) -> str:
        return utc_text(float(round(time_s)))[0 if self.day else 11 :]


def doubts(
    card: LegCard,
    match: Match,
    clean: CleanTrack,
    settings: QualitySettings,
    ended: Mapping[int, EndedByLog] = MappingProxyType({}),
) -> dict[int, str]:
    """Give, by number of leg, a few sentences on each leg whose portion is not sure.

    ``ended`` has the legs that by the walker's log ended before their claim.
    """
    say = _clock(clean)
    told: dict[int, str] = {}
    for leg in match.legs:
        if leg.confidence < settings.unsure:
            name = card.legs[leg.leg].name
            told[leg.leg] = _doubt(leg, name, say, settings)
            if leg.leg in ended:
                told[leg.leg] = _by_the_log(told[leg.leg], ended[leg.leg])
    return told


def _by_the_log(doubt: str, by_log: EndedByLog) -> Sentence:
    return sentence(
        "doubt-by-log",
        doubt=doubt,
        paces=Paces(counted=by_log.paces),
        counted=Length(metres=by_log.counted_m),
        away=Length(metres=by_log.away_m),
    )


def pinned_note(name: str, leg: LegMatch, clean: CleanTrack) -> str | None:
    """Say which ends of a leg were settled by hand; None where none was."""
    say = _clock(clean)
    ends = {"from": leg.start_s, "claim": leg.claim_s}
    settled = [(end, time_s) for end in leg.pinned if (time_s := ends[end]) is not None]
    told = [sentence(f"doubt-pinned-{end}", time=say(time_s)) for end, time_s in settled if say]
    return sentence("doubt-pinned", leg=name, ends=Listed(things=told)) if told else None


def reckoned_notes(name: str, leg: LegMatch) -> list[str]:
    """Say which ends of a leg lie in a silence of the recorder, and how they were found."""
    ends = {"start": leg.start_unseen, "claim": leg.claim_unseen}
    return [
        sentence(f"recording-straight-{end}", leg=name)
        if unseen.straight
        else sentence(f"recording-reckoned-{end}", leg=name, gone=Length(metres=unseen.gone_m))
        for end, unseen in ends.items()
        if unseen is not None
    ]


def other_walks(names: Sequence[str], outing: MatchedOuting, clean: CleanTrack) -> list[str]:
    """Say which other walks of the course the recording holds, and how to choose one."""
    say = _clock(clean)
    if say is None or not outing.others:
        return []
    taken = _set_out(outing.match)
    begun: str = "" if taken is None else sentence("doubt-set-out", time=say(taken[1]))
    choices = [_set_out(match) for match in outing.others]
    pins = [pin_of("from", names[first[0]], say.text(first[1])) for first in choices if first]
    settle = sentence("doubt-another", pins=Listed(things=pins, link="or"))
    count = len(outing.others) + 1
    chosen = chosen_by(outing)
    return [sentence("doubt-other-walks", count=count, chosen=chosen, begun=begun, settle=settle)]


def chosen_by(outing: MatchedOuting) -> str:
    """Tell what chose among the walks of a recording: the "day" of the plan first, or the "fit"."""
    return "day" if outing.by_day else "fit"


def _set_out(match: Match) -> tuple[int, float] | None:
    """Give the first leg that was walked, and when the walker left for it."""
    begun = [(leg.start_s, leg.leg) for leg in match.legs if leg.start_s is not None]
    return (min(begun)[1], min(begun)[0]) if begun else None


def pin_of(option: str, name: str, moment: str) -> str:
    """Give the option that settles an end of a leg."""
    value = f"{name}={moment}"
    return f"--{option} " + (f'"{value}"' if " " in value else value)


def end_to_settle(option: str, name: str, time_s: float, clean: CleanTrack) -> str:
    """Give the option that settles an end of a leg at a moment of a recording with times."""
    say = _clock(clean)
    return pin_of(option, name, utc_text(time_s) if say is None else say.text(time_s))


def _clock(clean: CleanTrack) -> _Clock | None:
    """Give how moments of a recording are told; None where it has no times."""
    if not clean.timed:
        return None
    first, last = (utc_text(float(clean.time_s[end]))[:10] for end in (0, -1))
    return _Clock(day=first != last)


def _doubt(leg: LegMatch, name: str, say: _Clock | None, settings: QualitySettings) -> Sentence:
    taken = sentence(
        "doubt-taken",
        leg=name,
        reading=_reading(leg.status, leg.start_s, leg.claim_s, say),
        sure=Percent(share=leg.confidence),
    )
    other = leg.runner_up
    if other is None:
        return taken
    if leg.status == "not-started" and other.status == "skipped":
        return sentence(
            "doubt-gave-up",
            leg=name,
            sure=Percent(share=leg.confidence),
            left_out=Percent(share=other.probability),
        )
    # A leg that was likelier walked than not is still not told as walked where that is unsure.
    likelier = other.probability > leg.confidence
    return sentence(
        "doubt-likelier" if likelier else "doubt-otherwise",
        taken=taken,
        sure=Percent(share=other.probability),
        reading=_reading(other.status, other.start_s, other.claim_s, say),
        settle="" if say is None else _settle(leg, name, say, settings),
    )


def _settle(leg: LegMatch, name: str, say: _Clock, settings: QualitySettings) -> str:
    """Say how to settle which reading is right; "" where no time can."""
    other = leg.runner_up
    if other is None:
        return ""
    if other.status == "walked" and other.start_s is not None and other.claim_s is not None:
        now = (leg.start_s, leg.claim_s) if leg.status == "walked" else (None, None)
        ends = (other.start_s, other.claim_s)
        pins = _pins(name, now, ends, say, settings.same_moment_s)
        return sentence("doubt-settle-other", pins=pins) if pins else ""
    if leg.status == "walked" and leg.start_s is not None and leg.claim_s is not None:
        ends = (leg.start_s, leg.claim_s)
        pins = _pins(name, (None, None), ends, say, settings.same_moment_s)
        return sentence("doubt-settle-taken", pins=pins)
    return ""


def _reading(
    status: LegStatus, start_s: float | None, claim_s: float | None, say: _Clock | None
) -> Sentence:
    """Put one reading of a leg in words."""
    if start_s is None or claim_s is None:
        return sentence("doubt-not-walked")
    what = "given-up" if status == "unfinished" else "walked"
    if say is None:
        return sentence(f"doubt-{what}-elsewhere")
    return sentence(f"doubt-{what}", start=say(start_s), end=say(claim_s))


def _pins(
    name: str,
    now_s: tuple[float | None, float | None],
    ends_s: tuple[float, float],
    say: _Clock,
    same_s: float,
) -> str:
    """Give the options that settle a reading: those ends only that are not as taken now."""
    pins = []
    for option, end_s, so_far_s in zip(("from", "claim"), ends_s, now_s, strict=True):
        if so_far_s is None or abs(end_s - so_far_s) > same_s:
            pins.append(pin_of(option, name, say.text(end_s)))
    return " ".join(pins)
