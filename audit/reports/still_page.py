"""Pages without scripts: they fetch nothing, and look like the page of the debrief."""

from __future__ import annotations

from typing import Any

from audit.reports.cautions import cautions
from audit.reports.html_report import page_templates
from audit.reports.version import program_version
from audit.words import in_force

STILL_POLICY = (
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; "
    "form-action 'none'"
)
"""No network for anything, and no script at all."""


def render_still_page(template: str, **context: Any) -> str:  # noqa: ANN401 (what a template shows)
    """Give a whole page from a template that fills in ``still_page.html.j2``."""
    return (
        page_templates()
        .get_template(template)
        .render(
            policy=STILL_POLICY,
            cautions=cautions(),
            language=in_force().language,
            version=program_version(),
            **context,
        )
    )
