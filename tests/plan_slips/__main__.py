"""Run the table of planted slips: ``python -m plan_slips``."""

import sys

from plan_slips.table import main

if __name__ == "__main__":
    sys.exit(main())
