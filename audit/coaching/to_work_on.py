"""What to practise after a walk: what cost most beyond the walker's ordinary error, first."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from audit.coaching.brought_along import led_to
from audit.coaching.lean_over_legs import lean_over_legs
from audit.coaching.made_beside import beside_tasks
from audit.coaching.mistake_tasks import mistake_tasks
from audit.coaching.part_tasks import Part, part_tasks
from audit.coaching.shown import Shown
from audit.coaching.step_tasks import StepsSeen, step_tasks
from audit.coaching.steps import Kind
from audit.coaching.stretch_over_legs import stretch_over_legs, stretch_task
from audit.coaching.sure_legs import sure_legs
from audit.coaching.talk import Coaching, Keep, Skill, WorkOn
from audit.coaching.task import Task, in_order
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings, Settings


def with_work(keep: tuple[Keep, ...], shown: Shown, settings: Settings) -> Coaching:
    """Add to what is to be kept the things that would have brought the walk nearest its points.

    Fewer than two where nothing else stands out, and nothing ordinary beside what does.
    """
    coaching, sight_m = settings.coaching, settings.claim.most_bend_m
    sure = sure_legs(shown.legs, coaching)
    mistakes = _mistakes(shown, sure, coaching)
    told = {*shown.aside, *shown.carried, *(name for task in mistakes for name in task.work.legs)}
    rest = {name: one for name, one in sure.items() if name not in told}
    stretched = _stretched(shown, mistakes, coaching)
    tasks = [
        *mistakes,
        *stretched,
        *step_tasks(_steps_seen(shown, sure, mistakes), coaching),
        *part_tasks(
            rest,
            _spared(shown, keep, {name for task in stretched for name in task.work.legs}, coaching),
            shown.radius_m,
            sight_m,
            coaching,
            lean=lean_over_legs(shown, coaching),
            causes=shown.causes,
            scatter=shown.scatter,
        ),
    ]
    chosen: dict[tuple[str, ...], WorkOn] = {}
    for task in in_order(tasks, shown.radius_m):
        chosen.setdefault(task.work.one_of or (task.work.cause,), task.work)
    work = tuple(chosen.values())[: coaching.things]
    return Coaching(
        keep=keep,
        work_on=work,
        left_aside=tuple(
            name
            for name in shown.walked
            if name not in {*sure, *told, *(leg for one in work for leg in one.legs)}
        ),
    )


def _mistakes(
    shown: Shown, sure: Mapping[str, LegMeasures], settings: CoachingSettings
) -> list[Task]:
    """Give the mistakes named, and those made beside them."""
    named = list(mistake_tasks(shown, settings))
    told = {cause for task in named for cause in task.work.one_of or (task.work.cause,)}
    of_sure = {
        name: of for name, of in shown.causes.items() if name in sure and name not in shown.aside
    }
    return [*named, *beside_tasks(of_sure, told, shown.walked, settings)]


def _steps_seen(
    shown: Shown, sure: Mapping[str, LegMeasures], mistakes: Sequence[Task]
) -> StepsSeen:
    told: dict[str, set[str]] = {}
    for task in mistakes:
        for leg in task.work.legs:
            told.setdefault(leg, set()).update(task.work.one_of or (task.work.cause,))
    return StepsSeen(
        steps=shown.steps,
        walked=shown.walked,
        sure=sure,
        causes=shown.causes,
        told=told,
        radius_m=shown.radius_m,
        scatter=shown.scatter,
    )


def _stretched(shown: Shown, mistakes: Sequence[Task], settings: CoachingSettings) -> list[Task]:
    """Give what all distances are out by, where no mistake tells it already; one or none."""
    told = {cause for task in mistakes for cause in task.work.one_of or (task.work.cause,)}
    stretch = stretch_over_legs(shown, settings)
    tasks = [] if stretch is None else stretch_task(stretch, shown.radius_m)
    return [task for task in tasks if task.work.cause not in told]


def _spared(
    shown: Shown,
    keep: tuple[Keep, ...],
    stretched: Collection[str],
    settings: CoachingSettings,
) -> dict[Part, set[str]]:
    """Give the legs of which a part is not put before the walker as what remains.

    He was just praised for it, a step has told it already, or nobody saw it. Where he began
    because the leg before ended there, or never came to its point, that leg is to be worked on.
    """
    unseen, for_elsewhere = set(shown.under_way), _for_elsewhere(shown)
    off = set(shown.walked) if shown.displaced else set()
    return {
        "heading": {
            *_praised(keep, "azimuth"),
            *_told_step(shown, "direction"),
            *shown.bent,
            *unseen,
            *for_elsewhere,
        },
        "distance": {
            *_praised(keep, "distance"),
            *stretched,
            *_told_step(shown, "distance"),
            *unseen,
            *for_elsewhere,
        },
        "start": {*unseen, *off, *_brought_along(shown, settings)},
        "passed": off,
    }


def _told_step(shown: Shown, kind: Kind) -> set[str]:
    """Give the legs of which a step tells an error of this kind; what is ordinary none tells."""
    return {
        name
        for name, of in shown.steps.items()
        if any(hop.kind == kind and hop.entered and len(hop.steps) == 1 for hop in of.hops)
    }


def _for_elsewhere(shown: Shown) -> set[str]:
    """Give the legs whose point the walker's card has elsewhere: to there he turned and paced."""
    return {
        name
        for name, of in shown.steps.items()
        if any(hop.kind == "point" and hop.entered and hop.steps != ("recognised",)
               for hop in of.hops)
    }  # fmt: skip


def _brought_along(shown: Shown, settings: CoachingSettings) -> set[str]:
    """Give the legs that began off because of the leg before."""
    legs = shown.legs
    missed = [leg.measures is not None and leg.measures.point_verdict == "missed" for leg in legs]
    return {
        leg.card.name
        for number, leg in enumerate(legs)
        if led_to(legs, number, settings) is not None or (number > 0 and missed[number - 1])
    }


def _praised(keep: tuple[Keep, ...], skill: Skill) -> set[str]:
    return {name for one in keep if one.skill == skill for name in one.legs}
