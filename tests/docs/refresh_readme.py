"""Make the parts of README.md anew that show what the program does.

PYTHONPATH=.:tests python tests/docs/refresh_readme.py
"""

from __future__ import annotations

from docs.readme_parts import README, refreshed

if __name__ == "__main__":
    README.write_text(refreshed(), encoding="utf-8", newline="\n")
