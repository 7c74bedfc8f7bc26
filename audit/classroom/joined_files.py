"""One walk in two files: found where nobody says so, and always told."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from audit.classroom.class_result import ClassFinding
from audit.classroom.each_its_own import HandedIn
from audit.classroom.lane import Lane
from audit.classroom.walks_in_file import FoundWalk
from audit.settings import GradingSettings
from audit.words import sentence


def join_parts(
    handed: Sequence[HandedIn], lanes: Sequence[Lane], settings: GradingSettings
) -> tuple[list[HandedIn], list[ClassFinding]]:
    """Join walks of which one goes on where another breaks off, out on a course.

    The second begins within reach of where the first ends, soon after it, and neither
    end lies near a start or finish, where one walker comes in as another sets out.
    """
    left = list(handed)
    findings: list[ClassFinding] = []
    for first in list(left):
        if first not in left or len(first.parts) != 1:
            continue
        followers = [one for one in left if one is not first and len(one.parts) == 1
                     and _goes_on(first.parts[0][1], one.parts[0][1], lanes, settings)]  # fmt: skip
        if len(followers) != 1:
            continue
        second = followers[0]
        left[left.index(first)] = replace(
            first, parts=(*first.parts, *second.parts), files=(*first.files, *second.files)
        )
        left.remove(second)
        findings.append(_told(first, second))
    return left, findings


def _goes_on(
    one: FoundWalk, other: FoundWalk, lanes: Sequence[Lane], settings: GradingSettings
) -> bool:
    if one.span_s is None or other.span_s is None:
        return False
    gap_s = other.span_s[0] - one.span_s[1]
    if not 0.0 <= gap_s <= settings.part_gap_s:
        return False
    apart_m = math.dist(one.ends, other.begins)
    if apart_m > settings.part_slack_m + settings.part_speed_m_s * gap_s:
        return False
    ends = np.concatenate([lane.points[[0, -1]] for lane in lanes])
    near_m = [float(np.hypot(*(ends - place).T).min()) for place in (one.ends, other.begins)]
    return min(near_m) > settings.course_ends_m


def _told(first: HandedIn, second: HandedIn) -> ClassFinding:
    message = sentence(
        "shows-joined", first=first.files[0], second=second.files[0], walker=first.entry.name
    )
    return ClassFinding(what="files-joined", message=message, question=True)
