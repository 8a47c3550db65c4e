"""Clients: whom she sews for."""

from sqlalchemy import Connection, select, update

from clothwright.book import texts
from clothwright.book.errors import BookError
from clothwright.book.store import Store, claim, stale
from clothwright.book.tables import CLIENTS
from clothwright.book.values import Client, Stale


class Clients:
    """The cards of a book. Every method raises BookError."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def add(self, name: str) -> Client:
        """A new client. Two may have the same name."""
        name, now = texts.line(name, "The client's name"), self._store.now()
        with self._store.writing() as c:
            new = CLIENTS.insert().values(name=name, made=now, changed=now, revision=1)
            return client_by_id(c, c.scalar(new.returning(CLIENTS.c.id)) or 0)

    def all(self) -> tuple[Client, ...]:
        """Every client, by name."""
        with self._store.reading() as c:
            found = every_client(c)
        return tuple(sorted(found, key=lambda k: (k.name.casefold(), k.id)))

    def get(self, client_id: int) -> Client:
        """A client by id."""
        with self._store.reading() as c:
            return client_by_id(c, client_id)

    def change(self, client: Client) -> Client | Stale:
        """Keep another name: `change(replace(client, name="…"))`."""
        name, now = texts.line(client.name, "The client's name"), self._store.now()
        with self._store.writing() as c:
            if not claim(c, CLIENTS, {"id": client.id}, client.revision):
                there = client_by_id(c, client.id)
                return stale(f"The card of {there.name}", there.revision, there.changed)
            c.execute(
                update(CLIENTS)
                .where(CLIENTS.c.id == client.id)
                .values(name=name, changed=now)
            )
            return client_by_id(c, client.id)


_CLIENTS = select(
    CLIENTS.c.id, CLIENTS.c.name, CLIENTS.c.made, CLIENTS.c.changed, CLIENTS.c.revision
)


def every_client(connection: Connection) -> tuple[Client, ...]:
    """All clients inside a transaction, as they were written down."""
    rows = connection.execute(_CLIENTS.order_by(CLIENTS.c.id))
    return tuple(Client(*row) for row in rows)


def client_by_id(connection: Connection, client_id: int) -> Client:
    """A client inside a transaction. Raises BookError when there is none."""
    row = connection.execute(_CLIENTS.where(CLIENTS.c.id == client_id)).one_or_none()
    if row is None:
        raise BookError("This client is no longer in the book.")
    return Client(*row)
