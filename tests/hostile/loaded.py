"""All modules of the program, and what it loads late: what a killed run need not load again."""

from __future__ import annotations

import importlib
import pkgutil

import audit

for module in pkgutil.walk_packages(audit.__path__, "audit."):
    # The migrations are run by alembic alone.
    if not module.name.startswith(("audit.__main__", "audit.school_records.migrations")):
        importlib.import_module(module.name)
for library in ("alembic.command", "jinja2", "pandas", "pygeomag", "scipy.stats", "vl_convert"):
    importlib.import_module(library)
