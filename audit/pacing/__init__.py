"""A walker's pace count, from strips that were walked and from the cadence of a recording."""
