"""The pipelines: one walk set against its plan, and the finished debrief of it."""
