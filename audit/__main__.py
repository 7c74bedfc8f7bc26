"""The command line as ``python -m audit``."""

from __future__ import annotations

from audit.cli import main

if __name__ == "__main__":
    main()
