"""Two mistakes that a leg does not tell apart, where it was most likely one of them."""

from __future__ import annotations

from dataclasses import dataclass

from audit.diagnosis.finding import Finding
from audit.guide.cause_names import CANNOT_TELL, WITHIN_SKILL
from audit.settings import DiagnosisSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class OneOfTwo:
    """Two mistakes, the likelier first, and the probability that it was one of the two.

    ``settles`` says for each what would tell it from the other.
    """

    causes: tuple[str, str]
    probability: float
    settles: tuple[str, str]


def one_of_two(findings: tuple[Finding, ...], settings: DiagnosisSettings) -> OneOfTwo | None:
    """Give the two likeliest findings of a leg where neither can be named, but both together.

    Together they must be surer than one alone, for two names accuse of more than one. A turn
    and a distance are measured apart: where both mistakes were made, they are no choice.
    """
    first, second = (*findings[:2], None, None)[:2]
    if first is None or second is None or {first.cause, second.cause} & {WITHIN_SKILL, CANNOT_TELL}:
        return None
    either = first.probability + second.probability
    if first.probability >= settings.named or either < settings.either_named:
        return None
    if _made(first) + _made(second) - 1.0 > settings.both_made:
        return None
    settles = (first.settles, second.settles)
    return OneOfTwo(causes=(first.cause, second.cause), probability=either, settles=settles)


def _made(finding: Finding) -> float:
    return finding.probability if finding.made is None else finding.made
