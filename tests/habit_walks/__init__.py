"""Made walks by walkers with lasting habits, recorded by devices with lasting ways.

``make(7, "ordinary")`` gives a course, what a recorder kept of the walk on it, and what was
true. Each walker has habits that hold for the whole outing: how he holds his azimuth, where he
stands and for how long, what he does at hundreds of his count, how he searches, and what he
does when he is lost. Each device smooths, coasts, sleeps and chooses its fixes in a way of its
own. Written by another hand than ``walks``, and sharing no constant with it.

Unreal: the ground is flat and open but for obstacles dropped on the way, nobody tires, what the
receiver errs hardly depends on the place, and every point lies exactly where the plan has it.
All numbers are chosen, none is measured.
"""

from walks.made_walk import LEVELS, LegTruth, MadeWalk

from habit_walks.maker import make

__all__ = ["LEVELS", "LegTruth", "MadeWalk", "make"]
