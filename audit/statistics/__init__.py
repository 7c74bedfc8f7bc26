"""Statistics of noise that is correlated in time."""
