"""Run the table of coaching: ``python -m coached``."""

import sys

from coached.table import main

if __name__ == "__main__":
    sys.exit(main())
