"""Photos of older books lose what a camera wrote beside the picture."""

import sqlalchemy as sa
from alembic import op

from clothwright.book.errors import BookError

revision = "0005"
down_revision = "0004"

PHOTOS = sa.table(
    "photos",
    sa.column("id", sa.Integer),
    sa.column("kind", sa.Text),
    sa.column("size", sa.Integer),
    sa.column("data", sa.LargeBinary),
)
ABOUT = sa.table("about", sa.column("untidy", sa.Boolean))


def upgrade() -> None:
    """Keep the picture alone, one photo at a time. What is no picture stays as it is;
    old bytes are overwritten the next time that the book is tidied."""
    book = op.get_bind()
    found = book.scalars(sa.select(PHOTOS.c.id).order_by(PHOTOS.c.id)).all()
    if not found:
        return
    from clothwright.book.pictures import bare  # its library takes long to load

    for n in found:
        there = PHOTOS.c.id == n
        old = book.execute(sa.select(PHOTOS.c.data).where(there)).scalar_one()
        try:
            data, kind = bare(old)
        except BookError:
            continue
        if data != old:
            new = {"data": data, "size": len(data), "kind": kind.value}
            book.execute(sa.update(PHOTOS).where(there).values(new))
            book.execute(sa.update(ABOUT).values(untidy=True))
