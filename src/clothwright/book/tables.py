"""The book's tables, for SQLite and PostgreSQL alike.

Times are UTC to the microsecond; dates are the workroom's days. `revision` counts the
changes of a row that two windows may change at once. A state, a move and a basting go
by their slip and a number, so that they mean the same in any copy of the book.
"""

from datetime import UTC, date, datetime

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Date,
    DateTime,
    Dialect,
    Double,
    ForeignKey,
    Integer,
    LargeBinary,
    MetaData,
    Named,
    Table,
    Text,
    TypedColumns,
    TypeDecorator,
    false,
)

VERSIONS = ("0001", "0002", "0003", "0004", "0005")
"""The migrations, oldest first; a file of the last one needs none."""

VERSION_TABLE = "book_version"

META = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_name)s",
        "uq": "uq_%(table_name)s_%(column_0_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s",
        "pk": "pk_%(table_name)s",
    }
)


class Utc(TypeDecorator[datetime]):
    """A moment, kept as UTC without a zone, which both databases have."""

    impl = DateTime
    cache_ok = True

    def process_bind_param(
        self, value: datetime | None, dialect: Dialect
    ) -> datetime | None:
        return value and value.astimezone(UTC).replace(tzinfo=None)

    def process_result_value(
        self, value: datetime | None, dialect: Dialect
    ) -> datetime | None:
        return value and value.replace(tzinfo=UTC)


def _id() -> Column[int]:
    return Column(Integer, primary_key=True, autoincrement=True)


def _of(target: str) -> ForeignKey:
    return ForeignKey(target, ondelete="CASCADE")


class _About(TypedColumns):
    """One row about the book itself."""

    id = Column(Integer, primary_key=True, autoincrement=False)
    last_number = Column(Integer, nullable=False)
    """The last number given to a slip; never given again."""

    untidy = Column(Boolean, nullable=False, server_default=false())
    """Something was deleted whose bytes may still lie in the file."""


class _Clients(TypedColumns):
    id = _id()
    name = Column(Text, nullable=False)
    made = Column(Utc, nullable=False)
    changed = Column(Utc, nullable=False)
    revision = Column(Integer, nullable=False)


class _Measures(TypedColumns):
    id = _id()
    client_id = Column(Integer, _of("clients.id"), nullable=False, index=True)
    code = Column(Text, nullable=False)
    side = Column(Text, nullable=False)
    """"left", "right", or "" for both."""

    typed = Column(Text, nullable=False)
    unit = Column(Text, nullable=False)
    value = Column(Double, nullable=False)
    """cm, or degrees for SS."""

    taken = Column(Date, nullable=False)
    how = Column(Text, nullable=False)
    by = Column(Text, nullable=False)
    note = Column(Text, nullable=False)
    recorded = Column(Utc, nullable=False)


class _Slips(TypedColumns):
    id = _id()
    number = Column(Integer, nullable=False, unique=True)
    client_id = Column(Integer, _of("clients.id"), nullable=False, index=True)
    title = Column(Text, nullable=False)
    wanted: Named[date | None] = Column(Date, nullable=True)
    handed_over: Named[date | None] = Column(Date, nullable=True)
    made = Column(Utc, nullable=False)
    changed = Column(Utc, nullable=False)
    revision = Column(Integer, nullable=False)
    state = Column(Integer, nullable=False)
    """Number of the state that lies on the table."""

    tip = Column(Integer, nullable=False)
    """Number of the state that redo leads to."""


class _States(TypedColumns):
    slip_id = Column(Integer, _of("slips.id"), primary_key=True)
    number = Column(Integer, primary_key=True, autoincrement=False)
    parent: Named[int | None] = Column(Integer, nullable=True)
    at = Column(Utc, nullable=False)
    said = Column(Text, nullable=False)
    text = Column(Text, nullable=False)


class _Moves(TypedColumns):
    """Which state lay on the table since when."""

    slip_id = Column(Integer, _of("slips.id"), primary_key=True)
    revision = Column(Integer, primary_key=True, autoincrement=False)
    state = Column(Integer, nullable=False)
    at = Column(Utc, nullable=False)


class _Basted(TypedColumns):
    slip_id = Column(Integer, _of("slips.id"), primary_key=True, autoincrement=False)
    on_state = Column(Integer, nullable=False)
    at = Column(Utc, nullable=False)
    said = Column(Text, nullable=False)
    text = Column(Text, nullable=False)


class _Leaves(TypedColumns):
    """Texts that lie with a slip."""

    slip_id = Column(Integer, _of("slips.id"), primary_key=True)
    name = Column(Text, primary_key=True)
    state = Column(Integer, primary_key=True, autoincrement=False)
    """The state that it lies with; 0: with the slip as a whole."""

    at = Column(Utc, nullable=False)
    text = Column(Text, nullable=False)


class _Notes(TypedColumns):
    id = _id()
    client_id: Named[int | None] = Column(
        Integer, _of("clients.id"), nullable=True, index=True
    )
    slip_id: Named[int | None] = Column(
        Integer, _of("slips.id"), nullable=True, index=True
    )
    at = Column(Utc, nullable=False)
    text = Column(Text, nullable=False)


class _Photos(TypedColumns):
    id = _id()
    client_id: Named[int | None] = Column(
        Integer, _of("clients.id"), nullable=True, index=True
    )
    slip_id: Named[int | None] = Column(
        Integer, _of("slips.id"), nullable=True, index=True
    )
    at = Column(Utc, nullable=False)
    kind = Column(Text, nullable=False)
    caption = Column(Text, nullable=False)
    size = Column(Integer, nullable=False)
    """Bytes."""

    data = Column(LargeBinary, nullable=False)


class _Fittings(TypedColumns):
    """What was seen at a fitting of a slip, and what was decided."""

    id = _id()
    slip_id = Column(Integer, _of("slips.id"), nullable=False, index=True)
    at = Column(Utc, nullable=False)
    seen = Column(Text, nullable=False)
    said = Column(Text, nullable=False)
    """What was decided, in a sentence without a full stop; "" where all was kept."""

    kind = Column(Text, nullable=False)
    """The feature that was altered, "fitting" for an alteration of the block."""

    what = Column(Text, nullable=False)
    """Its field, or the alteration's word."""

    amount = Column(Double, nullable=False)
    """cm, each half; below 0 where a number was made smaller."""


class _Shelf(TypedColumns):
    name = Column(Text, primary_key=True)
    text = Column(Text, nullable=False)
    changed = Column(Utc, nullable=False)
    revision = Column(Integer, nullable=False)


def _one_owner() -> CheckConstraint:
    return CheckConstraint("(client_id IS NULL) <> (slip_id IS NULL)", name="one_owner")


ABOUT = Table("about", META, _About)
CLIENTS = Table("clients", META, _Clients, sqlite_autoincrement=True)
MEASURES = Table("measures", META, _Measures, sqlite_autoincrement=True)
SLIPS = Table("slips", META, _Slips, sqlite_autoincrement=True)
STATES = Table("states", META, _States)
MOVES = Table("moves", META, _Moves)
BASTED = Table("basted", META, _Basted)
LEAVES = Table("leaves", META, _Leaves)
NOTES = Table("notes", META, _Notes, _one_owner(), sqlite_autoincrement=True)
PHOTOS = Table("photos", META, _Photos, _one_owner(), sqlite_autoincrement=True)
FITTINGS = Table("fittings", META, _Fittings, sqlite_autoincrement=True)
SHELF = Table("shelf", META, _Shelf)
"""`sqlite_autoincrement`: the id of what was deleted is never given again, so that an
old window cannot write on another client's card."""
