"""Every mistake of the catalogue walked down every leg, before anyone else does it."""
