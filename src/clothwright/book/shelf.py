"""The shelf: texts that are kept for all orders, like the house rules."""

from sqlalchemy import Connection, delete, select, update

from clothwright.book import texts
from clothwright.book.errors import BookError
from clothwright.book.store import Store, claim, stale
from clothwright.book.tables import SHELF
from clothwright.book.values import ShelfItem, Stale


class Shelf:
    """Texts by name. Every method raises BookError."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def put(self, item: ShelfItem) -> ShelfItem | Stale:
        """Keep a text: a new one, or another text under an old name."""
        name, text = (
            texts.line(item.name, "The name"),
            texts.body(item.text, "The text"),
        )
        now = self._store.now()
        with self._store.writing() as c:
            there = _find(c, name)
            if there is None:
                if item.revision:
                    raise BookError(f"{name} is no longer on the shelf.")
                c.execute(
                    SHELF.insert().values(name=name, text=text, changed=now, revision=1)
                )
                return ShelfItem(name, text, 1, now)
            if not claim(c, SHELF, {"name": name}, item.revision):
                return stale(name, there.revision, there.changed or now)
            c.execute(
                update(SHELF).where(SHELF.c.name == name).values(text=text, changed=now)
            )
            return ShelfItem(name, text, item.revision + 1, now)

    def get(self, name: str) -> ShelfItem | None:
        """A text by name, if it lies there."""
        with self._store.reading() as c:
            return _find(c, name)

    def all(self) -> tuple[ShelfItem, ...]:
        """All that lies on the shelf, by name."""
        with self._store.reading() as c:
            return shelf_items(c)

    def remove(self, item: ShelfItem) -> Stale | None:
        """Take a text from the shelf; None when it is done."""
        with self._store.writing() as c:
            if not claim(c, SHELF, {"name": item.name}, item.revision):
                there = _find(c, item.name)
                if there is None or there.changed is None:
                    return None
                return stale(item.name, there.revision, there.changed)
            c.execute(delete(SHELF).where(SHELF.c.name == item.name))
            return None


_SHELF = select(SHELF.c.name, SHELF.c.text, SHELF.c.revision, SHELF.c.changed)


def shelf_items(connection: Connection) -> tuple[ShelfItem, ...]:
    """All that lies on the shelf, inside a transaction, by name."""
    found = (ShelfItem(*row) for row in connection.execute(_SHELF))
    return tuple(sorted(found, key=lambda item: item.name))


def _find(connection: Connection, name: str) -> ShelfItem | None:
    row = connection.execute(_SHELF.where(SHELF.c.name == name)).one_or_none()
    return None if row is None else ShelfItem(*row)
