"""How often a cause is named, and rightly: made walks with one kind of mistake each."""
