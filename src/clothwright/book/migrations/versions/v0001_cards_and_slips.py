"""The first book: clients, measures, slips with their states and moves."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision: str | None = None


def upgrade() -> None:
    """Make the tables of an empty book."""
    about = op.create_table(
        "about",
        sa.Column("id", sa.Integer, autoincrement=False, nullable=False),
        sa.Column("last_number", sa.Integer, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_about"),
    )
    op.create_table(
        "clients",
        sa.Column("id", sa.Integer, autoincrement=True, nullable=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("made", sa.DateTime, nullable=False),
        sa.Column("changed", sa.DateTime, nullable=False),
        sa.Column("revision", sa.Integer, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_clients"),
        sqlite_autoincrement=True,
    )
    op.create_table(
        "measures",
        sa.Column("id", sa.Integer, autoincrement=True, nullable=False),
        sa.Column("client_id", sa.Integer, nullable=False),
        sa.Column("code", sa.Text, nullable=False),
        sa.Column("side", sa.Text, nullable=False),
        sa.Column("typed", sa.Text, nullable=False),
        sa.Column("unit", sa.Text, nullable=False),
        sa.Column("value", sa.Double, nullable=False),
        sa.Column("taken", sa.Date, nullable=False),
        sa.Column("how", sa.Text, nullable=False),
        sa.Column("by", sa.Text, nullable=False),
        sa.Column("note", sa.Text, nullable=False),
        sa.Column("recorded", sa.DateTime, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_measures"),
        sa.ForeignKeyConstraint(
            ["client_id"],
            ["clients.id"],
            name="fk_measures_client_id",
            ondelete="CASCADE",
        ),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_measures_client_id", "measures", ["client_id"])
    op.create_table(
        "slips",
        sa.Column("id", sa.Integer, autoincrement=True, nullable=False),
        sa.Column("number", sa.Integer, nullable=False),
        sa.Column("client_id", sa.Integer, nullable=False),
        sa.Column("title", sa.Text, nullable=False),
        sa.Column("wanted", sa.Date, nullable=True),
        sa.Column("made", sa.DateTime, nullable=False),
        sa.Column("changed", sa.DateTime, nullable=False),
        sa.Column("revision", sa.Integer, nullable=False),
        sa.Column("state", sa.Integer, nullable=False),
        sa.Column("tip", sa.Integer, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_slips"),
        sa.UniqueConstraint("number", name="uq_slips_number"),
        sa.ForeignKeyConstraint(
            ["client_id"], ["clients.id"], name="fk_slips_client_id", ondelete="CASCADE"
        ),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_slips_client_id", "slips", ["client_id"])
    op.create_table(
        "states",
        sa.Column("slip_id", sa.Integer, nullable=False),
        sa.Column("number", sa.Integer, autoincrement=False, nullable=False),
        sa.Column("parent", sa.Integer, nullable=True),
        sa.Column("at", sa.DateTime, nullable=False),
        sa.Column("said", sa.Text, nullable=False),
        sa.Column("text", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("slip_id", "number", name="pk_states"),
        sa.ForeignKeyConstraint(
            ["slip_id"], ["slips.id"], name="fk_states_slip_id", ondelete="CASCADE"
        ),
    )
    op.create_table(
        "moves",
        sa.Column("slip_id", sa.Integer, nullable=False),
        sa.Column("revision", sa.Integer, autoincrement=False, nullable=False),
        sa.Column("state", sa.Integer, nullable=False),
        sa.Column("at", sa.DateTime, nullable=False),
        sa.PrimaryKeyConstraint("slip_id", "revision", name="pk_moves"),
        sa.ForeignKeyConstraint(
            ["slip_id"], ["slips.id"], name="fk_moves_slip_id", ondelete="CASCADE"
        ),
    )
    op.bulk_insert(about, [{"id": 1, "last_number": 0}])
