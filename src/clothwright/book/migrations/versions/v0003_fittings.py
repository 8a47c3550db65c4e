"""What was seen and decided at fittings."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    """Add a table; what is in the book stays as it is."""
    op.create_table(
        "fittings",
        sa.Column("id", sa.Integer, autoincrement=True, nullable=False),
        sa.Column("slip_id", sa.Integer, nullable=False),
        sa.Column("at", sa.DateTime, nullable=False),
        *(
            sa.Column(name, sa.Text, nullable=False)
            for name in ("seen", "said", "kind", "what")
        ),
        sa.Column("amount", sa.Double, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_fittings"),
        sa.ForeignKeyConstraint(
            ["slip_id"], ["slips.id"], name="fk_fittings_slip_id", ondelete="CASCADE"
        ),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_fittings_slip_id", "fittings", ["slip_id"])
