"""The layout of the records, migration by migration, for alembic."""
