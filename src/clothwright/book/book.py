"""The book: one object for all that a workroom keeps about its clients and orders."""

from pathlib import Path
from types import TracebackType

from clothwright.book.backup import backup, restore
from clothwright.book.basting import Bastings
from clothwright.book.clients import Clients
from clothwright.book.export import export
from clothwright.book.fittings import Fittings
from clothwright.book.forgetting import Forgettable, forget, tidy_if_marked
from clothwright.book.importing import import_from
from clothwright.book.leaves import Leaves
from clothwright.book.line import Line
from clothwright.book.notes import Notes, Photos
from clothwright.book.opening import WAIT, open_store
from clothwright.book.shelf import Shelf
from clothwright.book.slips import Slips
from clothwright.book.store import Clock, Store, utc_now
from clothwright.book.taken import Measures
from clothwright.book.values import Client, Forgotten, Imported


class Book:
    """An open book; `open_book` makes one. Threads may share it.

    What a method returned is in the book and survives a kill. Every method, of the
    parts too, raises BookError with one plain sentence.
    """

    def __init__(self, store: Store) -> None:
        self._store = store
        self.clients = Clients(store)
        self.measures = Measures(store)
        self.slips = Slips(store)
        self.line = Line(store)
        self.bastings = Bastings(store)
        self.fittings = Fittings(store)
        self.leaves = Leaves(store)
        self.notes = Notes(store)
        self.photos = Photos(store)
        self.shelf = Shelf(store)

    def __enter__(self) -> "Book":
        return self

    def __exit__(
        self,
        _kind: type[BaseException] | None,
        _fault: BaseException | None,
        _trace: TracebackType | None,
    ) -> None:
        self.close()

    @property
    def place(self) -> str:
        """Where the book lies: a path, or an address without its password."""
        url = self._store.engine.url
        if self._store.on_server:
            return url.render_as_string(hide_password=True)
        return url.database or ""

    def close(self) -> None:
        """Let go of the file; the last to do so folds its log into it."""
        self._store.engine.dispose()

    def forget(self, *things: Forgettable) -> Forgotten:
        """Delete clients, slips, figures, notes or photos for good, and their bytes.

        With a client or a slip goes all that lies on it. All go, or none.
        """
        return forget(self._store, *things)

    def tidy(self) -> bool:
        """Do what a deletion had to leave in the file; False when it must wait still.

        Opening does it too; a program that stays open may ask after a while.
        """
        return tidy_if_marked(self._store)

    def backup(self, target: Path) -> None:
        """Write the whole book, as it is now, to one file."""
        backup(self._store, target)

    def restore(self, source: Path) -> None:
        """Replace all that is in the book by a backup."""
        restore(self._store, source)

    def export(self, target: Path, client: Client | None = None) -> None:
        """Write the book or one client as plain files, to a new folder or a .zip."""
        export(self._store, target, client)

    def import_from(self, place: Path) -> Imported:
        """Add what an export holds, all of it or nothing."""
        return import_from(self._store, place)


def open_book(
    place: Path | str | None = None, *, wait: float = WAIT, clock: Clock = utc_now
) -> Book:
    """Open the book at a path or an address, and make it where there is none.

    Without a place: the file under the user's data folder. `wait`: seconds until a book
    in use by another program is given up. An older book is brought up to date. Raises
    BookError.
    """
    store = open_store(place, wait=wait, clock=clock)
    try:
        tidy_if_marked(store)
    except BaseException:
        store.engine.dispose()
        raise
    return Book(store)
