"""The tables of the records as they stand after all migrations."""

from __future__ import annotations

import sqlalchemy as sql

LAYOUT_TABLE = "leg_audit_layout"
"""Where the number of the last migration stands."""

NAMES = sql.MetaData()

SALT = sql.Table(
    "leg_audit_salt",
    NAMES,
    sql.Column("number", sql.Integer, primary_key=True),
    sql.Column("salt", sql.LargeBinary, nullable=True),
    sql.Column("salt_check", sql.String(64), nullable=False),
)
"""One row. ``salt`` is null where names are hashed with a secret that is kept elsewhere."""

ATTEMPT = sql.Table(
    "leg_audit_attempt",
    NAMES,
    sql.Column("number", sql.Integer, primary_key=True),
    sql.Column("content_key", sql.String(64), nullable=False, unique=True),
    sql.Column("keep_until", sql.Date, nullable=True, index=True),
    sql.Column("walker", sql.String(40), nullable=False, index=True),
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

_OF_ATTEMPT = "leg_audit_attempt.number"

LEG = sql.Table(
    "leg_audit_leg",
    NAMES,
    sql.Column("attempt", sql.ForeignKey(_OF_ATTEMPT, ondelete="CASCADE"), primary_key=True),
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

CAUSE = sql.Table(
    "leg_audit_cause",
    NAMES,
    sql.Column("attempt", sql.ForeignKey(_OF_ATTEMPT, ondelete="CASCADE"), primary_key=True),
    sql.Column("leg", sql.Integer, primary_key=True),
    sql.Column("place", sql.Integer, primary_key=True),
    sql.Column("cause", sql.String(60), nullable=False),
    sql.Column("probability", sql.Double, nullable=False),
)
"""``leg`` is the place of the leg in its attempt."""
