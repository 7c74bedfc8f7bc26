"""Run all benchmarks and set them beside the last that were kept: ``python -m benchmarks``.

    PYTHONPATH=.:tests python -m benchmarks [--quick] [--record] [--against COMMIT]

``--record`` keeps the figures under the commit that is checked out, in recorded.json. The
column "now/then" is what matters: figures are in yardsticks, so machines compare.
"""

from __future__ import annotations

import argparse
import json
import subprocess
import sys
from pathlib import Path

from benchmarks.suite import AIMS, LEAST, measure
from benchmarks.whole_command import ROOT

RECORDED = Path(__file__).parent / "recorded.json"


def commit() -> str:
    """The commit that is checked out."""
    command = ["git", "-C", str(ROOT), "rev-parse", "--short=9", "HEAD"]
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout.strip()


def kept() -> list[dict]:
    """All runs that were kept, the oldest first."""
    return json.loads(RECORDED.read_text(encoding="utf-8")) if RECORDED.is_file() else []


def kept_of(runs: list[dict], wanted: str | None) -> dict:
    """The last run, or that of a commit."""
    fitting = [run for run in runs if wanted is None or run["commit"].startswith(wanted)]
    return fitting[-1] if fitting else {"commit": "none", "figures": {}}


def table(figures: dict[str, float], then: dict) -> str:
    lines = [f"{'':>36} {'now':>12} {then['commit']:>12} {'now/then':>9} {'aim':>12}"]
    for name, value in figures.items():
        before = then["figures"].get(name)
        was = f"{before:12,.3f} {value / before:9.2f}" if before else f"{'':>12} {'':>9}"
        aim = ""
        if name in AIMS:
            aim = f"{'<=' if value <= AIMS[name] else 'OVER'} {AIMS[name]:,g}"
        elif name in LEAST:
            aim = f"{'>=' if value >= LEAST[name] else 'UNDER'} {LEAST[name]:,g}"
        lines.append(f"{name:>36} {value:12,.3f} {was} {aim:>12}")
    return "\n".join(lines)


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--quick", action="store_true", help="some minutes less")
    options.add_argument("--record", action="store_true", help="keep the figures")
    options.add_argument("--against", help="a commit whose figures were kept")
    chosen = options.parse_args()
    runs = kept()
    figures = measure(quick=chosen.quick)
    print(table(figures, kept_of(runs, chosen.against)))
    if chosen.record:
        run = {"commit": commit(), "python": sys.version.split()[0], "figures": figures}
        rounded = {name: float(f"{value:.4g}") for name, value in figures.items()}
        others = [one for one in runs if one["commit"] != run["commit"]]
        text = json.dumps([*others, {**run, "figures": rounded}], indent=1)
        RECORDED.write_text(text + "\n", encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
