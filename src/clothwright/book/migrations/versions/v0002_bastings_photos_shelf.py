"""Bastings, notes, photos, the shelf; slips may be handed over; deleting for good."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    """Add tables and columns; what is in the book stays as it is."""
    op.add_column(
        "about",
        sa.Column("untidy", sa.Boolean, nullable=False, server_default=sa.false()),
    )
    op.add_column("slips", sa.Column("handed_over", sa.Date, nullable=True))
    op.create_table(
        "basted",
        sa.Column("slip_id", sa.Integer, autoincrement=False, nullable=False),
        sa.Column("on_state", sa.Integer, nullable=False),
        sa.Column("at", sa.DateTime, nullable=False),
        sa.Column("said", sa.Text, nullable=False),
        sa.Column("text", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("slip_id", name="pk_basted"),
        sa.ForeignKeyConstraint(
            ["slip_id"], ["slips.id"], name="fk_basted_slip_id", ondelete="CASCADE"
        ),
    )
    _owned("notes", sa.Column("text", sa.Text, nullable=False))
    _owned(
        "photos",
        sa.Column("kind", sa.Text, nullable=False),
        sa.Column("caption", sa.Text, nullable=False),
        sa.Column("size", sa.Integer, nullable=False),
        sa.Column("data", sa.LargeBinary, nullable=False),
    )
    op.create_table(
        "shelf",
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("text", sa.Text, nullable=False),
        sa.Column("changed", sa.DateTime, nullable=False),
        sa.Column("revision", sa.Integer, nullable=False),
        sa.PrimaryKeyConstraint("name", name="pk_shelf"),
    )


def _owned(table: str, *columns: sa.Column[object]) -> None:
    """A table whose rows belong to a client or to a slip."""
    op.create_table(
        table,
        sa.Column("id", sa.Integer, autoincrement=True, nullable=False),
        sa.Column("client_id", sa.Integer, nullable=True),
        sa.Column("slip_id", sa.Integer, nullable=True),
        sa.Column("at", sa.DateTime, nullable=False),
        *columns,
        sa.PrimaryKeyConstraint("id", name=f"pk_{table}"),
        sa.ForeignKeyConstraint(
            ["client_id"],
            ["clients.id"],
            name=f"fk_{table}_client_id",
            ondelete="CASCADE",
        ),
        sa.ForeignKeyConstraint(
            ["slip_id"], ["slips.id"], name=f"fk_{table}_slip_id", ondelete="CASCADE"
        ),
        sa.CheckConstraint(
            "(client_id IS NULL) <> (slip_id IS NULL)", name=f"ck_{table}_one_owner"
        ),
        sqlite_autoincrement=True,
    )
    for column in ("client_id", "slip_id"):
        op.create_index(f"ix_{table}_{column}", table, [column])
