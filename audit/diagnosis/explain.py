"""Causes weighed against each other and against ordinary error, over all legs of a walk."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from audit.diagnosis.accounts import Account
from audit.diagnosis.carried_over import CarriedOver, carried_over, weigh_with_plots
from audit.diagnosis.causes import CAUSES
from audit.diagnosis.displaced import Displaced
from audit.diagnosis.finding import Finding, WalkFinding
from audit.diagnosis.finding_words import carried_sentence, evidence_sentence
from audit.diagnosis.joint_stories import joint_stories
from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.one_of_two import OneOfTwo, one_of_two
from audit.diagnosis.predicted import predicted_beside, predicted_for
from audit.diagnosis.steady_sizes import STEADY, steady_sizes
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.diagnosis.weigh_walk import Weighed
from audit.diagnosis.what_settles import what_settles
from audit.guide.cause_names import CANNOT_TELL, WITHIN_SKILL
from audit.settings import DiagnosisSettings
from audit.units import turned_aside_m
from audit.words import sentence
from audit.words.figures import Length

_BY_NAME = {cause.name: cause for cause in CAUSES}


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """What a walk comes to: findings by leg, most probable first, and what legs share.

    ``one_of`` has the legs on which one of two mistakes was made, and neither is named;
    ``carried`` those measured from where the leg before was plotted, which made no mistake of
    their own; ``displaced`` what the starts of legs share, where the whole walk lies off;
    ``scatter`` by what the walker's ordinary legs scatter.
    """

    findings: dict[int, tuple[Finding, ...]]
    one_of: dict[int, OneOfTwo] = field(default_factory=dict)
    stories: tuple[WalkFinding, ...] = ()
    carried: dict[int, CarriedOver] = field(default_factory=dict)
    displaced: Displaced | None = None
    scatter: WalkersScatter = field(default_factory=WalkersScatter)


def explain_walk(evidence: tuple[LegEvidence, ...], settings: DiagnosisSettings) -> Explanation:
    """Weigh the legs of a walk together, and say what each of them and all of them show.

    One leg proves little: whether the angle was left out on this walk at all, how
    much this walker turns off anyway and how much he scatters are weighed over all
    legs together. What the match itself may have got wrong goes to "cannot-tell".
    """
    # What was walked another way than planned says nothing of angle, pace or count.
    aside = {
        leg.leg: _line_left(leg.another_way_m, leg.length_m)
        for leg in evidence
        if leg.another_way_m is not None
    }
    evidence = tuple(leg for leg in evidence if leg.another_way_m is None)
    if not evidence:
        return Explanation(findings=aside)
    evidence, weighed = weigh_with_plots(evidence, settings)
    carried = {
        leg.leg: carried_over(states, accounts)
        for leg, states, accounts in zip(evidence, weighed.states, weighed.accounts, strict=True)
    }
    inherited = {leg: one for leg, one in carried.items() if one is not None}
    steady = steady_sizes(evidence, weighed, settings)
    findings = {
        leg.leg: _findings(leg, number, weighed, steady, settings)
        for number, leg in enumerate(evidence)
    }
    for leg in evidence:
        if leg.leg in inherited:
            findings[leg.leg] = _as_carried(findings[leg.leg], leg, inherited[leg.leg])
    pairs = {leg: one_of_two(found, settings) for leg, found in findings.items()}
    one_of = {leg: pair for leg, pair in pairs.items() if pair is not None}
    return Explanation(
        findings=findings | aside,
        one_of=one_of,
        carried=inherited,
        stories=joint_stories(evidence, weighed, steady, settings),
        scatter=weighed.scatter,
    )


def _line_left(path_m: float, length_m: float) -> tuple[Finding, ...]:
    words = sentence(
        "evidence-line-left",
        path=Length(metres=path_m),
        line=Length(metres=length_m),
    )
    return (Finding(cause=CANNOT_TELL, probability=1.0, evidence=words, made=1.0),)


def _as_carried(
    found: tuple[Finding, ...], leg: LegEvidence, carried: CarriedOver
) -> tuple[Finding, ...]:
    """Say of a leg that nothing is told of its own, since it inherits the plot before it."""
    words = carried_sentence(leg, carried.turn_deg, carried.log_ratio)
    settles = sentence("settle-carried")
    return tuple(
        replace(one, evidence=words, settles=settles) if one.cause == CANNOT_TELL else one
        for one in found
    )


def _findings(
    leg: LegEvidence,
    number: int,
    weighed: Weighed,
    steady: Mapping[str, float],
    settings: DiagnosisSettings,
) -> tuple[Finding, ...]:
    accounts = weighed.accounts[number]
    chief: dict[str, float] = defaultdict(float)
    made: dict[str, float] = defaultdict(float)
    pairs: dict[tuple[str, str], float] = defaultdict(float)
    sure = _sureness(weighed.sure[number], settings)
    for (place, turn, length), share in weighed.states[number].items():
        account = accounts[place]
        idle = _idle(leg, account, turn[0], length[0], settings)
        # What the whole walk shows was made here as well, though this leg hides it.
        hidden = {name for name in idle if weighed.walk_causes.get(str(name), 0.0) < 0.5}
        present = {account.cause, *turn, *length} - hidden - {None, WITHIN_SKILL}
        chief[_chief(leg, account, turn[0], length[0], idle, settings)] += sure * share
        for name in present - {CANNOT_TELL}:
            made[str(name)] += sure * share
        for slip, *shared in (turn, length):
            for other in shared:
                pairs[slip, other] += sure * share
    told = {
        name: chief[name]
        for name in {**chief, **made}
        if name != CANNOT_TELL
        and (chief[name] >= settings.least_share or made[name] >= settings.least_made)
    }
    told[WITHIN_SKILL] = chief[WITHIN_SKILL]
    told[CANNOT_TELL] = max(0.0, 1.0 - sum(told.values()))
    beside = {slip: shared for (slip, shared), share in pairs.items() if share > 0.5 * chief[slip]}
    return _sorted_findings(told, made, beside, leg, weighed, steady, settings)


def _sureness(own: float, settings: DiagnosisSettings) -> float:
    """Say how sure the match allows to be, from the probability that the portion is the leg's.

    A small doubt is mostly about an end out by some tens of metres, which seldom makes a
    mistake; a large one is about the whole portion.
    """
    doubt = 1.0 - own
    return 1.0 - doubt * (settings.match_doubt + (1.0 - settings.match_doubt) * doubt)


def _chief(
    leg: LegEvidence,
    account: Account,
    turn: str,
    length: str,
    idle: set[str | None],
    settings: DiagnosisSettings,
) -> str:
    """Name what moved the end of the leg most; a small rest that nothing names is left aside.

    A pace that is steadily off, or a steady turn, explains no miss where this leg shows none.
    Nor has who began off, on his line, and arrived at his point, made for any other place.
    """
    off_m = turned_aside_m(leg.length_m, min(abs(account.turn_deg), 180.0))
    sizes = [
        # What was carried over from the plot before is no mistake of this leg.
        (account.effect_m, CANNOT_TELL if account.carried else account.cause),
        (off_m, turn),
        (leg.length_m * abs(math.expm1(min(account.log_ratio, 3.0))), length),
    ]
    least_m = settings.least_effect * leg.length_m
    named = [
        (size, name)
        for size, name in sizes
        if name not in (None, WITHIN_SKILL, *idle) and not (name in STEADY and size < least_m)
    ]
    if not named:
        far = account.carried  # nothing of the leg's own, though its end lies off
        far |= abs(account.aimed_turn_deg) > settings.aims_far_deg
        far |= abs(account.aimed_log_ratio) > settings.aims_far_ratio and not leg.arrived
        return CANNOT_TELL if far else WITHIN_SKILL
    return str(max(named, key=lambda pair: pair[0])[1])


def _idle(
    leg: LegEvidence, account: Account, turn: str, length: str, settings: DiagnosisSettings
) -> set[str | None]:
    """Name what moved the end of the leg nowhere, as two mistakes undo each other.

    So do the bends of a path: held to be a curve and an azimuth set to undo it, they would
    accuse the walker of two things of which his end shows none.
    """
    if account.cause is None:
        return set()
    pairs = (
        (leg.turn_deg, account.turn_deg, turn),
        (leg.log_ratio, account.log_ratio, length),
    )
    return {
        name
        for whole, left, made in pairs
        if made != WITHIN_SKILL and abs(whole) <= settings.undone_share * abs(left)
        for name in (account.cause, made)
    }


def _sorted_findings(
    chief: dict[str, float],
    made: dict[str, float],
    beside: dict[str, str],
    leg: LegEvidence,
    weighed: Weighed,
    steady: Mapping[str, float],
    settings: DiagnosisSettings,
) -> tuple[Finding, ...]:
    """Word what was found; ``beside`` has what all legs share, by the slip made beside it."""
    order = sorted(chief, key=lambda name: (-chief[name], name))
    found = []
    for name in order:
        cause = _BY_NAME.get(name)
        predicted = None if cause is None else predicted_for(cause, leg, settings, steady)
        both = None
        if cause is not None and name in beside:
            two = predicted_beside(cause, _BY_NAME[beside[name]], leg, settings, steady)
            predicted, both = two or (predicted, None)
        rival = next((other for other in order if other not in (name, CANNOT_TELL)), None)
        finding = Finding(
            cause=name,
            probability=chief[name],
            evidence=evidence_sentence(
                name,
                leg,
                weighed.bias_deg,
                predicted,
                both=both,
                scatter=weighed.scatter,
                settings=settings,
            ),
            made=max(chief[name], made.get(name, 0.0)),
            runner_up=rival,
            settles=what_settles(_BY_NAME, (name, rival), leg, settings),
        )
        if predicted is not None:
            finding = replace(
                finding, predicted=predicted.number, seen=predicted.seen, unit=predicted.unit
            )
        found.append(finding)
    return tuple(found)
