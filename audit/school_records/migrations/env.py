"""Runs migrations on the connection, and within the transaction, of whoever opens the records."""

from __future__ import annotations

from alembic import context

from audit.school_records.tables import LAYOUT_TABLE, NAMES

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=NAMES,
    version_table=LAYOUT_TABLE,
)
context.run_migrations()
