"""The first layout: the salt, attempts, their legs, and the causes of each leg."""

from __future__ import annotations

import sqlalchemy as sql
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Make the tables."""
    _make_salt()
    _make_attempt()
    _make_leg()
    _make_cause()
    op.create_index("ix_leg_audit_attempt_walker", "leg_audit_attempt", ["walker"])
    op.create_index("ix_leg_audit_attempt_keep_until", "leg_audit_attempt", ["keep_until"])


def _make_salt() -> None:
    op.create_table(
        "leg_audit_salt",
        sql.Column("number", sql.Integer, primary_key=True),
        sql.Column("salt", sql.LargeBinary, nullable=True),
        sql.Column("salt_check", sql.String(64), nullable=False),
    )


def _make_attempt() -> None:
    op.create_table(
        "leg_audit_attempt",
        sql.Column("number", sql.Integer, primary_key=True),
        sql.Column("content_key", sql.String(64), nullable=False, unique=True),
        sql.Column("keep_until", sql.Date, nullable=True),
        sql.Column("walker", sql.String(40), nullable=False),
        sql.Column("walked_on", sql.Date, nullable=True),
        sql.Column("begun_s", sql.Double, nullable=True),
        sql.Column("ended_s", sql.Double, nullable=True),
        sql.Column("light", sql.String(10), nullable=False),
        sql.Column("course", sql.Text, nullable=False),
        sql.Column("lane", sql.Text, nullable=False),
        sql.Column("course_print", sql.String(64), nullable=False),
        sql.Column("standard_print", sql.String(64), nullable=True),
        sql.Column("version", sql.String(40), nullable=False),
        sql.Column("verdict", sql.String(20), nullable=True),
        sql.Column("noise_m", sql.Double, nullable=True),
        sql.Column("paces_per_100m", sql.Double, nullable=True),
        sql.Column("paces_sd", sql.Double, nullable=True),
        sql.Column("pace_unit", sql.String(10), nullable=False),
        sql.Column("simulated", sql.Boolean, nullable=False),
    )


def _make_leg() -> None:
    op.create_table(
        "leg_audit_leg",
        _of_attempt(),
        sql.Column("place", sql.Integer, primary_key=True),
        sql.Column("name", sql.Text, nullable=False),
        sql.Column("status", sql.String(20), nullable=False),
        sql.Column("light", sql.String(10), nullable=False),
        sql.Column("confidence", sql.Double, nullable=False),
        sql.Column("point", sql.String(20), nullable=True),
        sql.Column("heading_error_deg", sql.Double, nullable=True),
        sql.Column("heading_sd_deg", sql.Double, nullable=True),
        sql.Column("distance_ratio", sql.Double, nullable=True),
        sql.Column("ratio_sd", sql.Double, nullable=True),
        sql.Column("miss_along_m", sql.Double, nullable=True),
        sql.Column("miss_across_m", sql.Double, nullable=True),
        sql.Column("miss_sd_m", sql.Double, nullable=True),
    )


def _make_cause() -> None:
    op.create_table(
        "leg_audit_cause",
        _of_attempt(),
        sql.Column("leg", sql.Integer, primary_key=True),
        sql.Column("place", sql.Integer, primary_key=True),
        sql.Column("cause", sql.String(60), nullable=False),
        sql.Column("probability", sql.Double, nullable=False),
    )


def _of_attempt() -> sql.Column[int]:
    return sql.Column(
        "attempt",
        sql.Integer,
        sql.ForeignKey("leg_audit_attempt.number", ondelete="CASCADE"),
        primary_key=True,
    )
