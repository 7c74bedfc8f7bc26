"""Whether the talk after a walk is right: made walks, what was planted, what was said."""
