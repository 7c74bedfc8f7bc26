"""What is ordinary at each step of a leg, and what is put before a walker."""

from __future__ import annotations

from dataclasses import dataclass

from audit.settings.bezel import CLICK_DEG, GRADUATIONS_DEG, MOST_CLICKS_OFF


@dataclass(frozen=True, slots=True, kw_only=True)
class CoachingSettings:
    """What is ordinary at each step from a point given to a point recognised."""

    written_again_m: float = 2.0
    """A place written again, as with the fifth decimal of a degree, is the same; chosen."""
    measured_azimuth_deg: float = 1.0
    """A protractor azimuth (US Army map-reading standard, STP 21-1-SMCT: 1 degree)."""
    converted_deg: float = 0.5
    """The sum is to be made without error (same standard); the angle may be rounded to the half
    degree that maps print."""
    click_deg: float = CLICK_DEG
    set_azimuth_deg: float = CLICK_DEG / 2.0
    """A click of the bezel, and half of one (``settings/bezel.py``)."""
    graduations_deg: tuple[float, ...] = GRADUATIONS_DEG
    """By which a dial, or a protractor, is read wrong; as in the diagnosis."""
    clicks_off: tuple[int, int] = (2, MOST_CLICKS_OFF)
    """A setting in the log that is so many clicks off, the least and the most, was set so; chosen:
    one click off may be noted to the wrong one of two clicks, and names no mistake. Diagnosis
    weighs one click too: there the walked leg speaks, and the click competes with scatter."""
    held_azimuth_deg: float = 3.0
    """A sighted azimuth (STP 21-1-SMCT, compass to the cheek)."""
    same_digit_most: int = 2
    """A wrong digit is a slip of one leg: an azimuth out to the same side by as much on more legs
    than this has another reason; chosen."""
    measured_distance_share: float = 0.03
    """Of a straight distance; chosen: between a careful ruler (1 in 100) and the 5 in 100 that
    the US Army map-reading standard allows."""
    turned_share: float = 0.02
    """Of a pace count, for a rate rounded to whole paces; chosen."""
    counted_share: float = 0.03
    """Of a count that is kept to; chosen: 15 paces in 500."""
    pace_length_share: float = 0.1
    """Of the distance that a count carries, from day to day and ground to ground; chosen: above
    the ordinary scatter of 6 in 100."""
    unlikely_turn_deg: float = 12.0
    """Nobody wanders back by so much what he set wrong, and comes out on the card's azimuth; a
    number in the log that would need it was noted wrong; chosen: four times the 3 degrees of a
    sighted azimuth."""
    unlikely_pace_ratio: float = 1.4
    """Nobody's pace is longer or shorter than the card's by so much and leads right all the same:
    such a count was noted otherwise than it was paced; chosen: four times the share above."""
    carried_room_m: float = 30.0
    """What is measured from a wrong plot may be out by so much across and along beside the step's
    own tolerance: two points read to 10 m or so each; chosen."""
    other_point_radii: float = 2.0
    """A count that ended within so many arrival radii of another leg's point ended at it, where
    such legs only swap their points; chosen."""
    met_radii: float = 1.0
    """A leg that ended within so many arrival radii of its point has no parts of a miss to work
    on; chosen: who arrived has missed nothing."""
    near_hundred_m: float = 30.0
    """What is walked or counted is out by whole hundreds where it lies within this of them, and
    within the step's own tolerance; chosen: less than a third of a hundred."""
    brought_along_share: float = 0.5
    """A leg began where the one before ended, where that leaves no more than this share of how far
    off it began; chosen: it explains the larger part."""
    hundred_m: float = 60.0
    """A distance out by less is scatter of the pace, and no hundred that was lost or added;
    chosen: nearer to nothing than to a hundred, with a hundred paced ten in a hundred short."""
    began_off_m: float = 25.0
    """Starts away from their points are worth practice from here on; chosen: out of sight."""
    wandered_deg: float = 30.0
    """Who was turned further over a whole leg did not wander off his line but held another;
    chosen: twice what a line that bends by 30 degrees turns a leg."""
    drilled_deg: float = 6.0
    """A straight line turned by no more is practised by walking a heading out and back; chosen:
    twice the 3 degrees of a sighted azimuth. By more, another azimuth was set or held."""
    searched_m: float = 200.0
    """Finding a point after a miss is praised up to here; chosen: further off nobody searches,
    he finds out first where he is."""
    lean_deg: float = 2.0
    """Legs that lean to one side by this on the average are told so; chosen: 35 m in a
    kilometre, more than the usual arrival radius."""
    leaning_share: float = 0.8
    """Nearly all legs lean where so many are out to one side; chosen: of fewer than five, all."""
    leaning_of_walked: float = 2.0 / 3.0
    """And so many of all legs that were walked, be the others put out by a mistake; chosen."""
    good_distance_share: float = 0.05
    """A distance within this of the card's is praised; chosen."""
    praised_azimuth: float = 1.0
    praised_distance: float = 0.95
    praised_arriving: float = 0.9
    praised_through: float = 0.6
    praised_log: float = 0.5
    praised_recording: float = 0.1
    praised_finding: float = 1.2
    praised_finding_share: float = 0.5
    """What is praised before what; to the first three the share of the legs is added on which it
    was well done, to finding points so much of it. Chosen: a point found after a miss is said
    first, skill of the feet before habits, and that the recorder ran comes last."""
    unseen_most: float = 1.0 / 3.0
    """A way of which more than this share was not recorded is not praised; chosen: nobody saw how
    it was walked."""
    path_most: float = 1.2
    """A leg's path over what it made, without the ways about obstacles: beyond, the walk went about
    and shows no count; chosen on made walks: tracks and contours came to 1.19, the legs of 1.2 and
    more all held a search."""
    ordinary_probability: float = 0.5
    """A step on foot is called ordinary where a leg's error is that more likely than not."""
    named_probability: float = 0.5
    """A mistake is put before the walker from here on; chosen: more likely than not."""
    candidate_probability: float = 0.2
    """A mistake that is not named gives the exercise for its part of a miss from here on; chosen:
    one in five."""
    made_probability: float = 0.8
    """A mistake made beside a larger one is told from here on; chosen: surer than one named, for
    the larger one hides it."""
    spoilt_probability: float = 0.35
    """An azimuth or a distance that a mistake has put out so likely is not praised; chosen."""
    sure_portion: float = 0.7
    """A leg whose part of the walk is less sure is neither praised nor blamed, stands at the head
    only with its doubt, and is named as left aside; chosen: below it a note says that the
    portion is not sure."""
    things: int = 2
    """To keep, and to work on: enough for one day (common practice of reviews after action)."""
