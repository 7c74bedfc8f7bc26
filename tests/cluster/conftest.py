"""The command line and the demo's files, as the tests of the commands have them."""

from __future__ import annotations

from cli.conftest import course, leg_audit

__all__ = ["course", "leg_audit"]
