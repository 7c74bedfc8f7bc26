"""The pipeline of one walk: set against its plan, and the finished debrief of it."""
