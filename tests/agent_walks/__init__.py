"""Made walks in which the walker is an agent who finds his way through a landscape.

``make(7, "ordinary")`` gives a course, what a recorder kept of the outing on it, and what was
true. Every second the walker decides what to do next on ground with slopes, thickets, streams
and tracks: he sights marks or follows the needle, counts paces that shorten uphill, goes round
what is in his way, is tempted by tracks, looks for posts and takes wrong ones for right. The
truth of a leg is what he did, not what was laid down beforehand. Written by another hand than
``walks``, and sharing no constant with it.

Unreal: the ground is random fields in a tile that repeats, he cannot read it as a map but for
hunches, and never tires. All numbers are chosen, none is measured.
"""

from walks.made_walk import LEVELS, LegTruth, MadeWalk

from agent_walks.maker import make

__all__ = ["LEVELS", "LegTruth", "MadeWalk", "make"]
