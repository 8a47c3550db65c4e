"""Notes and photos on cards and slips; nothing is measured from a photo."""

from sqlalchemy import Column, ColumnElement, Connection, Table, select

from clothwright.book import texts
from clothwright.book.clients import client_by_id
from clothwright.book.errors import BookError
from clothwright.book.slips import slip_by_id
from clothwright.book.store import Store
from clothwright.book.tables import NOTES, PHOTOS
from clothwright.book.values import Client, Note, Photo, PhotoKind, Slip


class Notes:
    """Words on cards and slips. Every method raises BookError."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def add(self, on: Client | Slip, text: str) -> Note:
        """A new note, kept to the letter."""
        if not texts.body(text, "The note").strip():
            raise BookError("The note is blank; write something.")
        with self._store.writing() as c:
            new = NOTES.insert().values(**owner(c, on), at=self._store.now(), text=text)
            new_id = c.scalar(new.returning(NOTES.c.id))
            return _notes(c, NOTES.c.id == new_id)[0]

    def of(self, on: Client | Slip) -> tuple[Note, ...]:
        """Every note on a card or a slip, oldest first."""
        with self._store.reading() as c:
            owner(c, on)
            return notes_of(c, on)

    def get(self, note_id: int) -> Note:
        """A note by id."""
        with self._store.reading() as c:
            found = _notes(c, NOTES.c.id == note_id)
        if not found:
            raise BookError("This note is no longer in the book.")
        return found[0]


class Photos:
    """Pictures on cards and slips. Every method raises BookError."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def add(self, on: Client | Slip, data: bytes, caption: str = "") -> Photo:
        """A new photo from the bytes of a JPEG, PNG or WebP file, without what the
        camera wrote into it."""
        from clothwright.book.pictures import bare  # its library takes long to load

        caption = texts.remark(caption, "The caption")
        data, kind = bare(data)
        with self._store.writing() as c:
            new = PHOTOS.insert().values(
                **owner(c, on),
                at=self._store.now(),
                kind=kind.value,
                caption=caption,
                size=len(data),
                data=data,
            )
            new_id = c.scalar(new.returning(PHOTOS.c.id))
            return _photos(c, PHOTOS.c.id == new_id)[0]

    def of(self, on: Client | Slip) -> tuple[Photo, ...]:
        """Every photo on a card or a slip, oldest first, without its bytes."""
        with self._store.reading() as c:
            owner(c, on)
            return photos_of(c, on)

    def get(self, photo_id: int) -> Photo:
        """A photo by id."""
        with self._store.reading() as c:
            found = _photos(c, PHOTOS.c.id == photo_id)
        if not found:
            raise BookError("This photo is no longer in the book.")
        return found[0]

    def data(self, photo: Photo) -> bytes:
        """The bytes of a photo."""
        with self._store.reading() as c:
            return photo_data(c, photo)


def owner(connection: Connection, on: Client | Slip) -> dict[str, int]:
    """The column and id of what a note lies on, which must be there still."""
    if isinstance(on, Client):
        return {"client_id": client_by_id(connection, on.id).id}
    return {"slip_id": slip_by_id(connection, on.id).id}


def notes_of(connection: Connection, on: Client | Slip) -> tuple[Note, ...]:
    """Notes inside a transaction, oldest first."""
    return _notes(connection, _on(NOTES, on))


def photos_of(connection: Connection, on: Client | Slip) -> tuple[Photo, ...]:
    """Photos inside a transaction, oldest first."""
    return _photos(connection, _on(PHOTOS, on))


def photo_data(connection: Connection, photo: Photo) -> bytes:
    """A photo's bytes inside a transaction. Raises BookError."""
    data = connection.scalar(select(PHOTOS.c.data).where(PHOTOS.c.id == photo.id))
    if data is None:
        raise BookError("This photo is no longer in the book.")
    return data


def _on(table: Table, on: Client | Slip) -> ColumnElement[bool]:
    column: Column[int] = (
        table.c.client_id if isinstance(on, Client) else table.c.slip_id
    )
    return column == on.id


def _notes(connection: Connection, where: ColumnElement[bool]) -> tuple[Note, ...]:
    found = select(NOTES.c.id, NOTES.c.at, NOTES.c.text).where(where)
    return tuple(Note(*row) for row in connection.execute(found.order_by(NOTES.c.id)))


def _photos(connection: Connection, where: ColumnElement[bool]) -> tuple[Photo, ...]:
    found = select(
        PHOTOS.c.id, PHOTOS.c.at, PHOTOS.c.kind, PHOTOS.c.caption, PHOTOS.c.size
    ).where(where)
    rows = connection.execute(found.order_by(PHOTOS.c.id))
    return tuple(Photo(i, at, PhotoKind(k), words, n) for i, at, k, words, n in rows)
