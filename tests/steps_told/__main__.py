"""Run the table of steps: ``python -m steps_told``."""

import sys

from steps_told.table import main

if __name__ == "__main__":
    sys.exit(main())
