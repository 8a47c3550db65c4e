"""The book: clients, their measures over time, orders with every state, photos, notes.

It lies in one SQLite file, or on a PostgreSQL server. Plain values go in and come out;
`values` has the terms.
"""

from clothwright.book.book import Book, open_book
from clothwright.book.errors import BookError
from clothwright.book.forgetting import Forgettable
from clothwright.book.opening import default_place
from clothwright.book.values import (
    HOUSE_RULES,
    RATES,
    Basting,
    Client,
    Decided,
    Forgotten,
    Imported,
    Leaf,
    Note,
    Photo,
    PhotoKind,
    Recorded,
    ShelfItem,
    Side,
    Slip,
    Stale,
    Stitch,
    TakenMeasure,
)

__all__ = [
    "HOUSE_RULES",
    "RATES",
    "Basting",
    "Book",
    "BookError",
    "Client",
    "Decided",
    "Forgettable",
    "Forgotten",
    "Imported",
    "Leaf",
    "Note",
    "Photo",
    "PhotoKind",
    "Recorded",
    "ShelfItem",
    "Side",
    "Slip",
    "Stale",
    "Stitch",
    "TakenMeasure",
    "default_place",
    "open_book",
]
