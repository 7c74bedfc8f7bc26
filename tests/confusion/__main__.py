"""Run the confusion table: ``python -m confusion``."""

import sys

from confusion.table import main

if __name__ == "__main__":
    sys.exit(main())
