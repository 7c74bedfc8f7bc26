"""debrief.json: the document of the debrief, every figure in full."""

from __future__ import annotations

import json

from audit.debriefing.finished_debrief import Debrief


def render_json(debrief: Debrief) -> str:
    """Give the text of debrief.json; its shape is in debrief.schema.json beside this file."""
    return json.dumps(debrief.to_dict(), allow_nan=False, ensure_ascii=False, indent=1) + "\n"
