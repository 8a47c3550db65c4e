"""Clients and the shelf: plain values in and out, nothing overwritten unseen."""

from dataclasses import replace

import pytest

from books import stale
from clothwright.book import HOUSE_RULES, Book, BookError, Client, ShelfItem


def test_clients_are_added_renamed_and_listed_by_name(book: Book) -> None:
    thea = book.clients.add("  Thea \n Vane ")
    book.clients.add("brida hollin")
    assert thea.name == "Thea Vane"
    assert [k.name for k in book.clients.all()] == ["brida hollin", "Thea Vane"]
    renamed = book.clients.change(replace(thea, name="Thea Marsh"))
    assert isinstance(renamed, Client)
    assert (renamed.name, renamed.revision) == ("Thea Marsh", thea.revision + 1)
    assert book.clients.get(thea.id) == renamed
    assert renamed.changed > renamed.made == thea.made


def test_two_clients_may_have_one_name(book: Book) -> None:
    a, b = book.clients.add("Thea Vane"), book.clients.add("Thea Vane")
    assert a.id != b.id


def test_a_name_changed_through_an_old_card_is_refused(book: Book) -> None:
    thea = book.clients.add("Thea Vane")
    book.clients.change(replace(thea, name="Thea Marsh"))
    refused = stale(book.clients.change(replace(thea, name="Thea Moor")))
    assert refused.revision == 2
    assert refused.sentence.startswith("The card of Thea Marsh was changed on 3 May at")
    assert book.clients.get(thea.id).name == "Thea Marsh"


@pytest.mark.parametrize(
    ("name", "says"),
    [
        (" \n", "The client's name is blank"),
        ("x" * 301, "too long; write at most 300 letters"),
        ("Thea\x00", "has a character that is none"),
        ("Thea\ud800", "has a character that is none"),
    ],
)
def test_a_name_that_is_none_is_refused(book: Book, name: str, says: str) -> None:
    with pytest.raises(BookError, match=says):
        book.clients.add(name)
    assert book.clients.all() == ()


@pytest.mark.parametrize("number", [7, 2**31, 2**63, 2**70])
def test_a_client_who_is_not_there_is_told(book: Book, number: int) -> None:
    with pytest.raises(BookError, match="no longer in the book|number is too large"):
        book.clients.get(number)


def test_an_id_is_never_given_again(book: Book) -> None:
    first = book.clients.add("Thea Vane")
    book.forget(first)
    assert book.clients.add("Odile Marchbank").id > first.id
    with pytest.raises(BookError, match="no longer in the book"):
        book.notes.add(first, "meant for Thea")


def test_the_shelf_keeps_texts_to_the_letter(book: Book) -> None:
    text = 'unit = "in"\r\n\n[rules]\ndep = "3 in"  # by three\n'
    put = book.shelf.put(ShelfItem(HOUSE_RULES, text))
    assert book.shelf.get(HOUSE_RULES) == put
    assert isinstance(put, ShelfItem)
    assert (put.text, put.revision) == (text, 1)
    again = book.shelf.put(replace(put, text="# none\n"))
    assert isinstance(again, ShelfItem)
    assert book.shelf.all() == (again,)
    refused = stale(book.shelf.put(replace(put, text="# old\n")))
    assert refused.revision == 2
    assert stale(book.shelf.put(ShelfItem(HOUSE_RULES, "# new"))).revision == 2
    assert stale(book.shelf.remove(put)).revision == 2
    assert book.shelf.get(HOUSE_RULES) == again
    assert book.shelf.remove(again) is None
    assert book.shelf.get(HOUSE_RULES) is None
    with pytest.raises(BookError, match="no longer on the shelf"):
        book.shelf.put(again)
