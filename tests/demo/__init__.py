"""The demo that ships with the package: an invented course, a simulated walk of it."""
