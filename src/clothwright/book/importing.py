"""Plain files into the book: all of them or none, and each looked at as if typed.

Clients are added; what is in the book stays. A slip whose number is taken gets the
next one, and a text on the shelf gives way to the book's own; both are told.
"""

from pathlib import Path, PurePosixPath

from sqlalchemy import Connection, Table, select, update

from clothwright.body import measures
from clothwright.book import plain, texts
from clothwright.book.errors import BookError
from clothwright.book.export import state_file
from clothwright.book.fittings import checked_fitting
from clothwright.book.folders import Source, source
from clothwright.book.line import path_back
from clothwright.book.slips import next_number
from clothwright.book.store import Store
from clothwright.book.tables import (
    ABOUT,
    BASTED,
    CLIENTS,
    FITTINGS,
    LEAVES,
    MEASURES,
    MOVES,
    NOTES,
    PHOTOS,
    SHELF,
    SLIPS,
    STATES,
)
from clothwright.book.taken import read_figures
from clothwright.book.values import Imported


def import_from(store: Store, place: Path) -> Imported:
    """Add what an export holds, from its folder or zip. Raises BookError."""
    with source(place) as files, store.writing() as c:
        return _Import(c, files, place.name).all()


class _Import:
    """One import, inside one transaction."""

    def __init__(self, connection: Connection, files: Source, place: str) -> None:
        self._c, self._files = connection, files
        self._top = _top(files.names, place)
        self._said: list[str] = []
        self._pages: dict[tuple[str, str], list[str]] = {}
        """Folders by the folder that they lie in and the page that they hold."""
        for name in sorted(files.names):
            path = PurePosixPath(name.removeprefix(self._top))
            if name.startswith(self._top) and path.name in (plain.CLIENT, plain.SLIP):
                key = (str(path.parent.parent), path.name)
                self._pages.setdefault(key, []).append(str(path.parent))

    def all(self) -> Imported:
        book = self._page(plain.BookPage, plain.BOOK)
        if book.format > plain.FORMAT:
            raise BookError(
                "This export was written by a newer Clothwright; install that one to "
                "import it."
            )
        if self._top + plain.SHELF in self._files.names:
            self._shelf(self._page(plain.ShelfPage, plain.SHELF))
        later: list[tuple[int, str, plain.SlipPage]] = []
        names = []
        for folder in self._pages.get(("clients", plain.CLIENT), ()):
            client_id, name = self._client(folder)
            names.append(name)
            for slip in self._pages.get((f"{folder}/slips", plain.SLIP), ()):
                page = self._page(plain.SlipPage, f"{slip}/{plain.SLIP}")
                if self._taken(page.number):
                    later.append((client_id, slip, page))
                else:
                    self._slip(client_id, slip, page, page.number)
        last = self._c.scalar(select(ABOUT.c.last_number)) or 0
        self._c.execute(update(ABOUT).values(last_number=max(last, book.last_number)))
        for client_id, slip, page in later:
            number = self._slip(client_id, slip, page, None)
            self._said.append(f"Slip {page.number} is slip {number} in this book.")
        return Imported(tuple(names), tuple(self._said))

    def _client(self, folder: str) -> tuple[int, str]:
        place = f"{folder}/{plain.CLIENT}"
        page = self._page(plain.ClientPage, place)
        name = texts.line(page.name, f"{place}: the client's name")
        twin = select(CLIENTS.c.id).where(
            CLIENTS.c.name == name, CLIENTS.c.made == page.made
        )
        if self._c.scalar(twin) is not None:
            raise BookError(f"{name} is in this book already; nothing was imported.")
        new = CLIENTS.insert().values(
            name=name, made=page.made, changed=page.changed, revision=1
        )
        client_id = self._c.scalar(new.returning(CLIENTS.c.id)) or 0
        self._insert(
            MEASURES, [self._measure(client_id, row, place) for row in page.measure]
        )
        self._owned(page, folder, {"client_id": client_id})
        return client_id, name

    def _measure(
        self, client_id: int, row: plain.MeasureRow, place: str
    ) -> dict[str, object]:
        if row.code not in measures():
            raise BookError(f"{place}: {row.code} is no measure that is known here.")
        typed = {row.code: row.typed}
        read = read_figures(
            place, {row.side.value: typed} if row.side else typed, row.unit
        )
        return {
            "client_id": client_id,
            "code": row.code,
            "side": row.side.value,
            "typed": row.typed,
            "unit": row.unit.value,
            "value": read[row.code, row.side].value,
            "taken": row.taken,
            "how": texts.remark(row.how, f"{place}: how"),
            "by": texts.remark(row.by, f"{place}: by"),
            "note": texts.remark(row.note, f"{place}: note"),
            "recorded": row.recorded,
        }

    def _slip(
        self, client_id: int, folder: str, page: plain.SlipPage, number: int | None
    ) -> int:
        place = f"{folder}/{plain.SLIP}"
        _hangs_together(page, place)
        number = next_number(self._c, number)
        new = SLIPS.insert().values(
            number=number,
            client_id=client_id,
            title=texts.line(page.title, f"{place}: the title"),
            wanted=page.wanted,
            handed_over=page.handed_over,
            made=page.made,
            changed=page.changed,
            revision=len(page.moves),
            state=page.state,
            tip=page.tip,
        )
        slip_id = self._c.scalar(new.returning(SLIPS.c.id)) or 0
        states = [
            {
                "slip_id": slip_id,
                "number": state.number,
                "parent": state.parent,
                "at": state.at,
                "said": texts.line(state.said, f"{place}: a state's sentence"),
                "text": self._order(f"{folder}/{state_file(state.number)}"),
            }
            for state in page.states
        ]
        self._insert(STATES, states)
        moves = [
            {"slip_id": slip_id, "revision": i, "state": move.state, "at": move.at}
            for i, move in enumerate(page.moves, 1)
        ]
        self._insert(MOVES, moves)
        if page.basted is not None:
            self._c.execute(
                BASTED.insert().values(
                    slip_id=slip_id,
                    on_state=page.basted.on_state,
                    at=page.basted.at,
                    said=texts.line(
                        page.basted.said, f"{place}: the basting's sentence"
                    ),
                    text=self._order(f"{folder}/{plain.BASTED}"),
                )
            )
        rows = [
            checked_fitting(place, f.seen, f.said, f.kind, f.what, f.amount)
            | {"slip_id": slip_id, "at": f.at}
            for f in page.fitting
        ]
        self._insert(FITTINGS, rows)
        leaves = [
            {
                "slip_id": slip_id,
                "name": texts.line(leaf.name, f"{place}: a leaf's name"),
                "state": leaf.state,
                "at": leaf.at,
                "text": texts.body(
                    self._text(f"{folder}/{leaf.file}"), f"{folder}/{leaf.file}"
                ),
            }
            for leaf in page.leaf
        ]
        self._insert(LEAVES, leaves)
        self._owned(page, folder, {"slip_id": slip_id})
        return number

    def _owned(
        self,
        page: plain.ClientPage | plain.SlipPage,
        folder: str,
        owner: dict[str, int],
    ) -> None:
        """Notes and photos of a card or a slip."""
        from clothwright.book.pictures import LARGEST_PHOTO, bare  # loads its library

        for note in page.note:
            text = texts.body(note.text, f"{folder}: a note")
            self._c.execute(NOTES.insert().values(**owner, at=note.at, text=text))
        for photo in page.photo:
            data, kind = bare(self._read(f"{folder}/{photo.file}", LARGEST_PHOTO))
            self._c.execute(
                PHOTOS.insert().values(
                    **owner,
                    at=photo.at,
                    kind=kind.value,
                    caption=texts.remark(photo.caption, f"{folder}: a caption"),
                    size=len(data),
                    data=data,
                )
            )

    def _shelf(self, page: plain.ShelfPage) -> None:
        for row in page.item:
            name = texts.line(row.name, f"{plain.SHELF}: a name")
            text = texts.body(self._text(row.file), row.file)
            own = self._c.scalar(select(SHELF.c.text).where(SHELF.c.name == name))
            if own is None:
                self._c.execute(
                    SHELF.insert().values(
                        name=name, text=text, changed=row.changed, revision=1
                    )
                )
            elif own != text:
                self._said.append(f"The {name} of this book were kept.")

    def _insert(self, table: Table, rows: list[dict[str, object]]) -> None:
        if rows:
            self._c.execute(table.insert(), rows)

    def _taken(self, number: int) -> bool:
        found = select(SLIPS.c.id).where(SLIPS.c.number == number)
        return self._c.scalar(found) is not None

    def _read(self, name: str, limit: int) -> bytes:
        if self._top + name not in self._files.names:
            raise BookError(f"{name} is missing; nothing was imported.")
        return self._files.read(self._top + name, limit)

    def _text(self, name: str) -> str:
        try:
            return self._read(name, plain.TEXT_LIMIT).decode()
        except UnicodeDecodeError:
            raise BookError(f"{name} is not plain text (UTF-8).") from None

    def _order(self, name: str) -> str:
        try:
            return texts.order_text(self._text(name))
        except BookError as e:
            raise BookError(f"{name}: {e}") from None

    def _page(self, kind: type[plain.P], name: str) -> plain.P:
        return plain.from_toml(kind, self._read(name, plain.TEXT_LIMIT), name)


def _top(names: frozenset[str], place: str) -> str:
    """The folder that an export was packed in, if it was: "" or "name/"."""
    tops = {
        "" if n == plain.BOOK else n[: -len(plain.BOOK)] for n in names if _is_book(n)
    }
    if len(tops) != 1:
        raise BookError(
            f"{place} is no export of a book; name a folder or zip that has "
            f"{plain.BOOK} in it."
        )
    return tops.pop()


def _is_book(name: str) -> bool:
    path = PurePosixPath(name)
    return path.name == plain.BOOK and len(path.parts) <= 2


def _hangs_together(page: plain.SlipPage, place: str) -> None:
    """Refuse states and moves that no line could have."""
    parents = {s.number: s.parent for s in page.states}
    named = {page.state, page.tip, *(m.state for m in page.moves)}
    if page.basted is not None:
        named.add(page.basted.on_state)
    named |= {leaf.state for leaf in page.leaf if leaf.state}
    if (
        len(parents) < len(page.states)
        or list(parents.values()).count(None) != 1
        or any(
            p is not None and (p >= n or p not in parents) for n, p in parents.items()
        )
        or not named <= set(parents)
        or page.state not in path_back(parents, page.tip)
        or not page.moves
        or page.moves[-1].state != page.state
        or len({(x.name, x.state) for x in page.leaf}) < len(page.leaf)
    ):
        raise BookError(f"{place}: its states do not follow each other.")
