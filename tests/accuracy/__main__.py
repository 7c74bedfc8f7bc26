"""Run the accuracy table: ``python -m accuracy``."""

import sys

from accuracy.table import main

if __name__ == "__main__":
    sys.exit(main())
