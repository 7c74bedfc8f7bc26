"""README.md taken apart: its code blocks, and the parts that a program writes."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from coached.table import readme_lines as coached_lines
from confusion.table import readme_lines
from plan_slips.limits import limit_lines
from plan_slips.table import lines, read_limits, read_record
from steps_told.table import readme_lines as step_lines
from typer.testing import CliRunner

from audit.cli.app import app

ROOT = Path(__file__).resolve().parents[2]
README = ROOT / "README.md"
_BLOCK = re.compile(r"^```(\w+)(?: ([\w.-]+))?\n(.*?)^```$", re.MULTILINE | re.DOTALL)
_PART = r"(<!-- {name}: .*? -->\n)(.*?)(<!-- end -->)"


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A fenced block: its language, the file that it shows ("" where it shows none), its text."""

    language: str
    file: str
    text: str


def blocks(language: str | None = None) -> list[Block]:
    """Give the code blocks of the README, in order."""
    found = _BLOCK.findall(README.read_text(encoding="utf-8"))
    made = [Block(language=kind, file=file, text=text) for kind, file, text in found]
    return [block for block in made if language in (None, block.language)]


def demo_output() -> str:
    """Give the block that shows what the demo prints."""
    with TemporaryDirectory() as folder:
        done = CliRunner().invoke(app, ["demo", "--out", str(Path(folder) / "demo")])
    assert done.exit_code == 0, done.stderr
    return f"```text\n{done.stdout}```\n"


def accuracy_table() -> str:
    """Give the table of the share of legs matched rightly, from the figures on record."""
    record, beside = (
        json.loads((ROOT / "tests" / "accuracy" / name).read_text())
        for name in ("recorded.json", "rivals.json")
    )
    rivals = {"nearest points": "nearest points in order", "time warping": "dynamic time warping"}
    lines = [
        f"| walker and sky | legs right | {' | '.join(rivals.values())} | legs |",
        "|---" * 5 + "|",
    ]
    words = {
        "trained": "trained walker, open sky",
        "ordinary": "ordinary walker",
        "novice": "novice, under trees",
    }
    for family, said in words.items():
        of = record["figures"][family]
        cells = [
            f"{100.0 * one['legs_right']:.1f} % ± {100.0 * one['legs_right_se']:.1f}"
            for one in (of, *(beside["figures"][family][name] for name in rivals))
        ]
        lines.append(f"| {said} | {' | '.join(cells)} | {of['legs']} |")
    return "\n".join(lines) + "\n"


def planted_slips_table() -> str:
    """Give the table of what a check finds, from the figures on record."""
    return "\n".join([*lines(*read_record()), "", *limit_lines(read_limits())]) + "\n"


def coached_table() -> str:
    """Give how much of what coaching says is right, from the figures on record."""
    return "\n".join(coached_lines()) + "\n"


def confusion_table() -> str:
    """Give the figures of naming causes, from those on record."""
    return "\n".join(readme_lines()) + "\n"


def steps_table() -> str:
    """Give how often coaching tells the right step, from the figures on record."""
    return "\n".join(step_lines()) + "\n"


def coverage_table() -> str:
    """Give the table of how often 95 % intervals hold the truth, from the figures on record."""
    record = json.loads((ROOT / "tests" / "honesty" / "recorded.json").read_text())["figures"]
    columns = {
        "heading": "walked azimuth",
        "straight distance": "straight distance",
        "claim": "place of the claim",
        "ledger: heading": "heading in the ledger",
    }
    lines = [f"| walker and sky | {' | '.join(columns.values())} | legs |", "|---" * 6 + "|"]
    words = {
        "all legs": "all, rightly matched or not",
        "legs matched rightly": "matched rightly",
        "trained": "trained walker, open sky",
        "ordinary": "ordinary walker",
        "novice": "novice, under trees",
    }
    for group, said in words.items():
        of = record[group]
        cells = [
            f"{100.0 * of[name]['held']:.1f} % ± {100.0 * of[name]['held_se']:.1f}"
            for name in columns
        ]
        lines.append(f"| {said} | {' | '.join(cells)} | {of['legs']} |")
    return "\n".join(lines) + "\n"


def intervals_table() -> str:
    """Give how often three ways to a heading's interval hold, and how wide they are."""
    record = json.loads((ROOT / "tests" / "honesty" / "recorded.json").read_text())["figures"]
    ways = {
        "heading": "leg-audit",
        "by end points": "from end to end, with the receiver's noise at both",
        "by independent noise": "a line through all fixes, taken as independent",
    }
    legs = {
        "legs matched rightly": "all lengths",
        "80 to 200 m": "80 to 200 m",
        "200 to 400 m": "200 to 400 m",
        "400 to 800 m": "400 to 800 m",
        "800 to 2000 m": "800 to 2000 m",
    }
    lines = [f"| interval by | {' | '.join(legs.values())} |", "|---" * (1 + len(legs)) + "|"]
    for way, said in ways.items():
        cells = [
            f"{100.0 * record[group][way]['held']:.0f} %, ±{record[group][way]['half_deg']:.1f}°"
            for group in legs
        ]
        lines.append(f"| {said} | {' | '.join(cells)} |")
    return "\n".join(lines) + "\n"


def points_table() -> str:
    """Give the table of what is said of points against what is true, from the record."""
    points = json.loads((ROOT / "tests" / "honesty" / "recorded.json").read_text())["points"]
    said = ("found", "missed", "too close to call")
    lines = [f"| walker and sky | {' | '.join(said)} |", "|---" * 4 + "|"]
    words = {
        "trained": "trained walker, open sky",
        "ordinary": "ordinary walker",
        "novice": "novice, under trees",
    }
    for family, who in words.items():
        cells = [
            f"{points[family][verdict]['reached']} / {points[family][verdict]['not reached']}"
            for verdict in said
        ]
        lines.append(f"| {who} | {' | '.join(cells)} |")
    return "\n".join(lines) + "\n"


PARTS = {
    "points": points_table,
    "coverage": coverage_table,
    "intervals": intervals_table,
    "demo-output": demo_output,
    "accuracy": accuracy_table,
    "planted-slips": planted_slips_table,
    "confusion": confusion_table,
    "steps-told": steps_table,
    "coached": coached_table,
}


def part(name: str) -> str:
    """Give what stands in a part that a program writes."""
    found = re.search(_PART.format(name=name), README.read_text(encoding="utf-8"), re.DOTALL)
    assert found, f"README.md has no part {name}"
    return found[2]


def refreshed() -> str:
    """Give the README with all its made parts made anew."""
    text = README.read_text(encoding="utf-8")
    for name, make in PARTS.items():
        body = make().replace("\\", r"\\")
        text = re.sub(_PART.format(name=name), rf"\g<1>{body}\g<3>", text, flags=re.DOTALL)
    return text
