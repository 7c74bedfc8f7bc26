"""Run the coverage table: ``python -m honesty``."""

import sys

from honesty.table import main

if __name__ == "__main__":
    sys.exit(main())
