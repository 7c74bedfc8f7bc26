"""What the page and the terminal say of a rehearsed leg."""

from __future__ import annotations

import math
from dataclasses import dataclass

from audit.rehearsal.records import LegRehearsal, LookAlike, Proposal, WayEnd
from audit.rehearsal.ways_on_ground import OUT_OF_BOUNDS
from audit.reports import digits
from audit.reports.cause_words import cause_words
from audit.settings import RehearsalSettings

_FEW = 3
"""So many of what a mistake has more of are told in its row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WayRow:
    """A row of the page: a mistake by its likeliest way, with its sign on the picture.

    ``others`` says what else there is of the mistake, and ``flag`` that one of its ways may
    do harm.
    """

    sign: str
    cause: str
    words: str
    reference: str
    place: str
    meets: str
    others: str
    flag: bool
    end: WayEnd


def way_rows(leg: LegRehearsal) -> list[WayRow]:
    """Give one row for each mistake of a leg, in the order of the catalogue."""
    of_cause: dict[str, list[WayEnd]] = {}
    for end in leg.ends:
        of_cause.setdefault(end.way.cause, []).append(end)
    return [_row(str(sign), ends) for sign, ends in enumerate(of_cause.values(), start=1)]


def danger_sentences(leg: LegRehearsal) -> list[str]:
    """Say which mistakes lead into areas or out of bounds, one sentence for each such thing.

    What the planned leg goes through is told of the leg, and not again of its mistakes.
    """
    met: dict[str, dict[str, None]] = {}
    for end in leg.ends:
        for words in _danger_words(end, leg.planned_through):
            met.setdefault(words, {}).setdefault(f"{cause_words(end.way.cause)} ({end.way.words})")
    own = [
        f"Leg {leg.leg.name} itself, walked as planned, leads "
        f"{'' if name == OUT_OF_BOUNDS else 'into '}{name}: move it."
        for name in leg.planned_through
    ]
    return [
        *own,
        *(f"Leg {leg.leg.name} {words}: {_some(list(causes))}." for words, causes in met.items()),
    ]


def near_sentences(leg: LegRehearsal) -> list[str]:
    """Say which mistakes come to another point."""
    met: dict[str, dict[str, None]] = {}
    for end in leg.ends:
        if end.way.cause in {"wrong-point", "point-skipped"}:
            continue  # they make for another point
        for one in end.near:
            where = f"{one.point} of {one.course}" if one.course else one.point
            met.setdefault(where, {}).setdefault(f"{cause_words(end.way.cause)} ({end.way.words})")
    return [
        f"Leg {leg.leg.name} ends at {where}: {_some(list(causes))}."
        for where, causes in met.items()
    ]


def alike_sentences(leg: LegRehearsal) -> list[str]:
    """Say the likeliest pairs that this leg cannot tell apart, each pair of causes once."""
    told: dict[tuple[str, str], str] = {}
    for pair in leg.look_alikes:
        first, second = leg.ends[pair.first], leg.ends[pair.second]
        causes = (first.way.cause, second.way.cause)
        if not pair.by_line and causes not in told:
            told[causes] = _pair_words(first, second, pair)
    return list(told.values())[: RehearsalSettings().most_told_pairs]


def alike_count(leg: LegRehearsal) -> int:
    """Count the pairs of causes that this leg cannot tell apart."""
    return len(
        {
            frozenset((leg.ends[pair.first].way.cause, leg.ends[pair.second].way.cause))
            for pair in leg.look_alikes
            if not pair.by_line
        }
    )


def hidden_words(leg: LegRehearsal) -> str:
    """Say which mistakes end where 95 of 100 ordinary walks do, whatever their size."""
    smallest: dict[str, float] = {}
    largest: dict[str, float] = {}
    for end in leg.ends:
        cause = end.way.cause
        smallest[cause] = min(smallest.get(cause, 1.0), end.quantile)
        largest[cause] = max(largest.get(cause, 0.0), end.quantile)
    hidden = [cause_words(cause) for cause, most in largest.items() if most < 0.95]
    return "" if not hidden else f"Hidden in ordinary error at any size: {', '.join(hidden)}."


def proposal_sentences(leg: LegRehearsal) -> list[str]:
    """Say what would tell pairs of causes apart, and in one sentence for which nothing would."""
    told = [_found_words(one) for one in leg.proposals if one.end is not None]
    left = [_both(one) for one in leg.proposals if one.end is None]
    if left:
        told.append(
            f"No change tried tells apart: {'; '.join(left)}. The walker's own card or log does, "
            "or another leg: leg-audit guide has a page for each."
        )
    return told


def _both(one: Proposal) -> str:
    first, second = (cause_words(cause) for cause in one.causes)
    return f"{first} and {second}"


def _found_words(one: Proposal) -> str:
    moves = []
    if one.longer_m:
        length = digits.whole(abs(one.longer_m))
        moves.append(f"{length} m {'longer' if one.longer_m > 0 else 'shorter'}")
    if one.turned_deg:
        side = "right" if one.turned_deg > 0 else "left"
        moves.append(f"turned {abs(one.turned_deg):g}° {side}")
    apart = (
        f"they then end {digits.whole(one.apart_m)} m apart or more"
        if math.isfinite(one.apart_m)
        else "one of the two then leads nowhere else"
    )
    both = _both(one)
    return (
        f"{both[:1].upper()}{both[1:]}: make the leg {' and '.join(moves)}, its point at "
        f"{one.reference}; {apart}. Look-alikes on the leg: {one.pairs_before} now, "
        f"{one.pairs_after} then. The next leg changes with it."
    )


def _row(sign: str, ends: list[WayEnd]) -> WayRow:
    likeliest = max(ends, key=lambda end: end.way.share)
    return WayRow(
        sign=sign,
        cause=cause_words(likeliest.way.cause),
        words=likeliest.way.words,
        reference=likeliest.reference,
        place=_place(likeliest),
        meets=_meets(likeliest),
        others=_others([end for end in ends if end is not likeliest]),
        flag=any(end.dangerous for end in ends),
        end=likeliest,
    )


def _meets(end: WayEnd) -> str:
    meets = [f"ends in {name}" for name in end.ends_in]
    meets += [f"through {name}" for name in end.through]
    meets += ["ends out of bounds"] if end.ends_outside else []
    meets += ["leaves the bounds"] if end.leaves_bounds and not end.ends_outside else []
    meets += [f"at {n.point}{f' of {n.course}' if n.course else ''}" for n in end.near]
    return ", ".join(meets)


def _others(ends: list[WayEnd]) -> str:
    """Say how many other ways there are, the likeliest of them, and what they come to."""
    if not ends:
        return ""
    ends = sorted(ends, key=lambda end: -end.way.share)
    first = ", ".join(end.way.words for end in ends[:_FEW])
    more = f" and {len(ends) - _FEW} more" if len(ends) > _FEW else ""
    met: dict[str, int] = {}
    for end in ends:
        for words in filter(None, [_meets(end)]):
            met[words] = met.get(words, 0) + 1
    told = [f"{count} {words}" for words, count in list(met.items())[:_FEW]]
    left = len(met) - len(told)
    return f"{first}{more}" + (f": {'; '.join(told)}" if told else "") + ("; …" if left > 0 else "")


def _place(end: WayEnd) -> str:
    along, across = round(end.along_m), round(end.across_m)
    parts = []
    if along:
        parts.append(f"{abs(along)} m {'beyond' if along > 0 else 'short'}")
    if across:
        parts.append(f"{abs(across)} m {'right' if across > 0 else 'left'}")
    return ", ".join(parts) or "at the point"


def _danger_words(end: WayEnd, planned: tuple[str, ...]) -> list[str]:
    words = [f"ends in {name}" for name in end.ends_in]
    words += [f"leads through {name}" for name in end.through if name not in planned]
    if end.ends_outside:
        words.append("ends out of bounds")
    elif end.leaves_bounds and OUT_OF_BOUNDS not in planned:
        words.append("leaves the bounds on the way")
    return words


def _some(words: list[str], most: int = 4) -> str:
    more = len(words) - most
    return "; ".join(words[:most]) + (f"; and {more} more" if more > 0 else "")


def _pair_words(first: WayEnd, second: WayEnd, pair: LookAlike) -> str:
    one, other = (f"{cause_words(end.way.cause)} ({end.way.words})" for end in (first, second))
    return f"{one} and {other}: {digits.whole(pair.apart_m)} m apart"
