"""What the page and the terminal say of a rehearsed leg."""

from __future__ import annotations

import math
from dataclasses import dataclass

from audit.rehearsal.finished_rehearsal import (
    LegRehearsal,
    LookAlike,
    NearPoint,
    Proposal,
    Rehearsal,
    WayEnd,
)
from audit.rehearsal.look_alikes import mistakes_alike
from audit.rehearsal.ways_on_ground import OUT_OF_BOUNDS
from audit.reports import digits
from audit.reports.cause_words import cause_words
from audit.words import say, told
from audit.words.figures import Listed, Turn

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


def planned_sentences(rehearsal: Rehearsal) -> list[str]:
    """Say what the course comes to without a mistake: its legs, then its points and walks."""
    itself = [_itself(leg.leg.name, name) for leg in rehearsal.legs for name in leg.planned_through]
    return [*itself, *(told(one.message) for one in rehearsal.near_areas)]


def danger_sentences(leg: LegRehearsal) -> list[str]:
    """Say which mistakes lead into areas or out of bounds, one sentence for each such thing.

    What the planned leg goes through is told of the course, and not again of its mistakes.
    """
    met: dict[str, dict[str, None]] = {}
    for end in leg.ends:
        for words in _danger_words(end, leg.planned_through):
            met.setdefault(words, {}).setdefault(_cause_and_way(end))
    return [
        say("rehearse-danger", leg=leg.leg.name, what=what, causes=_some(list(causes)))
        for what, causes in met.items()
    ]


def _itself(leg: str, area: str) -> str:
    if area == OUT_OF_BOUNDS:
        return say("rehearse-itself-out", leg=leg)
    return say("rehearse-itself-into", leg=leg, area=area)


def _cause_and_way(end: WayEnd) -> str:
    return say("rehearse-cause-way", cause=cause_words(end.way.cause), way=end.way.words)


def near_sentences(leg: LegRehearsal) -> list[str]:
    """Say which mistakes come to another point."""
    met: dict[str, dict[str, None]] = {}
    for end in leg.ends:
        if end.way.cause in {"wrong-point", "point-skipped"}:
            continue  # they make for another point
        for one in end.near:
            where = _point_of(one)
            met.setdefault(where, {}).setdefault(_cause_and_way(end))
    return [
        say("rehearse-near", leg=leg.leg.name, point=where, causes=_some(list(causes)))
        for where, causes in met.items()
    ]


def alike_sentences(leg: LegRehearsal, most: int) -> list[str]:
    """Say the likeliest pairs that this leg cannot tell apart, each pair of causes once."""
    told: dict[tuple[str, str], str] = {}
    for pair in leg.look_alikes:
        first, second = leg.ends[pair.first], leg.ends[pair.second]
        causes = (first.way.cause, second.way.cause)
        if not pair.by_line and causes not in told:
            told[causes] = _pair_words(first, second, pair)
    return list(told.values())[:most]


def alike_count(leg: LegRehearsal) -> int:
    """Count the pairs of causes that this leg cannot tell apart."""
    return len(mistakes_alike([end.way for end in leg.ends], leg.look_alikes))


def hidden_words(leg: LegRehearsal, share: float) -> str:
    """Say which mistakes end where such a share of ordinary walks do, whatever their size."""
    smallest: dict[str, float] = {}
    largest: dict[str, float] = {}
    for end in leg.ends:
        cause = end.way.cause
        smallest[cause] = min(smallest.get(cause, 1.0), end.quantile)
        largest[cause] = max(largest.get(cause, 0.0), end.quantile)
    hidden = [cause_words(cause) for cause, most in largest.items() if most < share]
    return say("rehearse-hidden", causes=", ".join(hidden)) if hidden else ""


def proposal_sentences(leg: LegRehearsal) -> list[str]:
    """Say what would tell pairs of causes apart, what no area allows, and where nothing would."""
    told = [_found_words(one) for one in leg.proposals if one.end is not None]
    none = [one for one in leg.proposals if one.end is None]
    for areas in dict.fromkeys(one.kept_off for one in none if one.kept_off):
        pairs = "; ".join(_both(one) for one in none if one.kept_off == areas)
        told.append(say("rehearse-kept-off", areas=Listed(things=areas), pairs=pairs))
    left = [_both(one) for one in none if not one.kept_off]
    if left:
        told.append(say("rehearse-nothing-tells", pairs="; ".join(left)))
    return told


def _both(one: Proposal) -> str:
    first, second = (cause_words(cause) for cause in one.causes)
    return say("figure-and", before=first, last=second)


def _found_words(one: Proposal) -> str:
    moves = []
    if one.longer_m:
        length = digits.stated_metres(abs(one.longer_m))
        way = "longer" if one.longer_m > 0 else "shorter"
        moves.append(say(f"rehearse-make-{way}", size=length))
    if one.turned_deg:
        side = "right" if one.turned_deg > 0 else "left"
        moves.append(say(f"rehearse-make-{side}", size=Turn(degrees=one.turned_deg)))
    then = say("rehearse-then-nowhere")
    if math.isfinite(one.apart_m):
        then = say("rehearse-then-apart", apart=digits.stated_metres(one.apart_m))
    first, second = (cause_words(cause) for cause in one.causes)
    return say(
        "rehearse-proposal",
        first=f"{first[:1].upper()}{first[1:]}",
        second=second,
        moves=Listed(things=moves),
        reference=one.reference,
        then=then,
        before=str(one.pairs_before),
        after=str(one.pairs_after),
    )


def _row(sign: str, ends: list[WayEnd]) -> WayRow:
    likeliest = max(ends, key=lambda end: end.way.share)
    return WayRow(
        sign=sign,
        cause=cause_words(likeliest.way.cause),
        words=told(likeliest.way.words),
        reference=likeliest.reference,
        place=_place(likeliest),
        meets=_meets(likeliest),
        others=_others([end for end in ends if end is not likeliest]),
        flag=any(end.dangerous for end in ends),
        end=likeliest,
    )


def _meets(end: WayEnd) -> str:
    meets = [say("rehearse-ends-in", area=name) for name in end.ends_in]
    meets += [say("rehearse-through", area=name) for name in end.through]
    meets += [say("rehearse-ends-out")] if end.ends_outside else []
    if end.leaves_bounds and not end.ends_outside:
        meets.append(say("rehearse-leaves-short"))
    return ", ".join([*meets, *(say("rehearse-at", point=_point_of(one)) for one in end.near)])


def _point_of(one: NearPoint) -> str:
    return say("rehearse-of", point=one.point, course=one.course) if one.course else one.point


def _others(ends: list[WayEnd]) -> str:
    """Say how many other ways there are, the likeliest of them, and what they come to."""
    if not ends:
        return ""
    ends = sorted(ends, key=lambda end: -end.way.share)
    first = ", ".join(told(end.way.words) for end in ends[:_FEW])
    if len(ends) > _FEW:
        first = say("rehearse-more", words=first, count=str(len(ends) - _FEW))
    met: dict[str, int] = {}
    for end in ends:
        for words in filter(None, [_meets(end)]):
            met[words] = met.get(words, 0) + 1
    come = [
        say("rehearse-so-many", words=words, count=count)
        for words, count in list(met.items())[:_FEW]
    ]
    left = len(met) - len(come)
    return first + (f": {'; '.join(come)}" if come else "") + ("; …" if left > 0 else "")


def _place(end: WayEnd) -> str:
    parts = [
        say(f"rehearse-{before if metres > 0 else after}", size=digits.stated_metres(abs(metres)))
        for metres, before, after in (
            (end.along_m, "beyond", "short"),
            (end.across_m, "place-right", "place-left"),
        )
        if round(metres)
    ]
    return ", ".join(parts) or say("rehearse-on-point")


def _danger_words(end: WayEnd, planned: tuple[str, ...]) -> list[str]:
    words = [say("rehearse-ends-in", area=name) for name in end.ends_in]
    words += [
        say("rehearse-leads-through", area=name) for name in end.through if name not in planned
    ]
    if end.ends_outside:
        words.append(say("rehearse-ends-out"))
    elif end.leaves_bounds and OUT_OF_BOUNDS not in planned:
        words.append(say("rehearse-leaves"))
    return words


def _some(words: list[str], most: int = 4) -> str:
    more, some = len(words) - most, "; ".join(words[:most])
    return say("rehearse-some-more", words=some, count=str(more)) if more > 0 else some


def _pair_words(first: WayEnd, second: WayEnd, pair: LookAlike) -> str:
    return say(
        "rehearse-pair",
        first=_cause_and_way(first),
        second=_cause_and_way(second),
        apart=digits.stated_metres(pair.apart_m),
    )
