"""Files in, records out: plans, walkers' logs and tracks, with every problem of a file at once."""
