"""The pipeline of a class for those who have plans and tracks in hand already."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from importlib import import_module

from audit.areas import Area
from audit.classroom.assemble import assemble
from audit.classroom.class_draft import ClassDraft, ClassInputs, draft_class
from audit.classroom.class_result import ClassResult
from audit.classroom.lane import Lane, lane_of
from audit.classroom.lane_names import lane_names
from audit.classroom.walker_task import grade_walker
from audit.classroom.walks_in_file import look_through
from audit.debriefing.walk_day import track_date
from audit.plan import Plan
from audit.roster import PunchList, Roster
from audit.settings import Settings
from audit.standard import Standard
from audit.track import Track


def grade(  # noqa: PLR0913 (one keyword a thing that may be asked for)
    plans: Sequence[Plan] | Mapping[str, Plan],
    tracks: Sequence[Track],
    standard: Standard,
    *,
    roster: Roster | None = None,
    punches: PunchList | None = None,
    roads: Sequence[Area] = (),
    shift_s: float | None = 0.0,
    name: str = "",
    private: bool = False,
    settings: Settings | None = None,
) -> ClassResult:
    """Grade a class: the tracks of many walkers on one lane or several.

    Parameters
    ----------
    plans
        The lanes, named after their files, or by name.
    tracks
        As `read_track` gives them, each with a ``source`` of its own.
    standard, roster, punches
        As `read_standard`, `read_roster` and `read_punches` give them. Without a roster
        each track is a walker, on the lane that it fits.
    roads
        As `read_areas` gives them: the lines that the standard's rule for roads is about.
    shift_s
        Added to the clocks of all tracks; None: by the first crossing of the start.
    private
        Leave names out.

    Raises
    ------
    InputRefusedError
        For a roster or list of codes that does not fit the class. A track that cannot
        be used is a finding, and the class goes on.
    """
    settings = settings or Settings()
    day = next((day for track in tracks if (day := track_date(track)) is not None), None)
    if not isinstance(plans, Mapping):
        plans = dict(zip(lane_names(plans), plans, strict=True))
    lanes = tuple(lane_of(one, plan, day, settings) for one, plan in plans.items())
    inputs = ClassInputs(
        lanes=lanes,
        recordings=tuple(look_through(one.source, one, lanes, settings) for one in tracks),
        standard=standard,
        # The front door knows the version; it stands above this room and opens all others.
        version=import_module("audit").__version__,
        name=name,
        roster=roster,
        punches=punches,
        roads=tuple(one for one in roads if one.kind == "road"),
        shift_s=shift_s,
        private=private,
        settings=settings,
    )
    draft = draft_class(inputs)
    return assemble(draft, [grade_walker(task, _lane(draft, task.lane))[0] for task in draft.tasks])


def _lane(draft: ClassDraft, name: str) -> Lane:
    return next(lane for lane in draft.inputs.lanes if lane.name == name)
