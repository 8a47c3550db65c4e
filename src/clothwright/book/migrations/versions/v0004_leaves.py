"""Leaves: texts that lie with a slip, such as the lay of a cloth."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"


def upgrade() -> None:
    """Add the table; what is in the book stays as it is."""
    op.create_table(
        "leaves",
        sa.Column("slip_id", sa.Integer, nullable=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("state", sa.Integer, autoincrement=False, nullable=False),
        sa.Column("at", sa.DateTime, nullable=False),
        sa.Column("text", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("slip_id", "name", "state", name="pk_leaves"),
        sa.ForeignKeyConstraint(
            ["slip_id"], ["slips.id"], name="fk_leaves_slip_id", ondelete="CASCADE"
        ),
    )
