"""The command line: arguments in, results to standard output, messages to standard error."""

from __future__ import annotations

from audit.cli.app import main

__all__ = ["main"]
