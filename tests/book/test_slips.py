"""Slips: numbered by themselves, sorted by what is due, safe in two windows."""

import threading
from dataclasses import replace
from datetime import date

import pytest

from books import order, slip, stale
from clothwright.book import Book, BookError, Slip, Stale, open_book


def test_a_slip_gets_the_number_after_the_last(book: Book) -> None:
    thea = book.clients.add("Thea Vane")
    made = [book.slips.add(thea, f"Top {n}", order(n)).number for n in range(3)]
    assert made == [1, 2, 3]
    assert book.slips.add(thea, "Her own number", order(3), number=214).number == 214
    assert book.slips.add(thea, "After it", order(4)).number == 215
    assert book.slips.add(thea, "An old one", order(5), number=40).number == 40
    assert book.slips.add(thea, "After all", order(6)).number == 216
    assert book.slips.numbered(214).title == "Her own number"
    with pytest.raises(BookError, match="There is a slip 214 already"):
        book.slips.add(thea, "Twice", order(7), number=214)
    for number in (0, -1, 2**31, 2**70):
        with pytest.raises(BookError, match="is no number for a slip"):
            book.slips.add(thea, "Odd", order(7), number=number)
    with pytest.raises(BookError, match="There is no slip 99 in the book"):
        book.slips.numbered(99)


def test_a_number_is_never_given_twice(book: Book) -> None:
    thea, odile = book.clients.add("Thea Vane"), book.clients.add("Odile Marchbank")
    book.slips.add(thea, "Top", order(1))
    book.forget(thea)
    assert book.slips.add(odile, "Top", order(2)).number == 2


def test_slips_come_by_what_is_due_with_their_client(book: Book) -> None:
    thea, odile = book.clients.add("Thea Vane"), book.clients.add("Odile Marchbank")
    for client, title, wanted in (
        (thea, "some day", None),
        (odile, "in June", date(2027, 6, 1)),
        (thea, "in May", date(2027, 5, 9)),
        (odile, "some day too", None),
        (thea, "in June too", date(2027, 6, 1)),
    ):
        book.slips.add(client, title, order(1), wanted=wanted)
    assert [(s.title, s.client) for s in book.slips.due()] == [
        ("in May", "Thea Vane"),
        ("in June", "Odile Marchbank"),
        ("in June too", "Thea Vane"),
        ("some day", "Thea Vane"),
        ("some day too", "Odile Marchbank"),
    ]
    assert [s.title for s in book.slips.of(odile)] == ["in June", "some day too"]
    june = book.slips.numbered(2)
    done = slip(book.slips.change(replace(june, handed_over=date(2027, 5, 30))))
    assert done.handed_over == date(2027, 5, 30)
    assert "in June" not in [s.title for s in book.slips.due()]
    assert len(book.slips.all()) == 5


def test_title_and_day_change_and_the_text_stays(book: Book) -> None:
    made = book.slips.add(book.clients.add("Thea Vane"), "Top", order(1))
    changed = slip(
        book.slips.change(replace(made, title=" Blue  top", wanted=date(2027, 7, 1)))
    )
    assert (changed.title, changed.wanted) == ("Blue top", date(2027, 7, 1))
    assert book.line.text(changed) == order(1)
    assert book.slips.get(made.id) == changed


def test_the_second_window_is_refused_with_a_value(book: Book) -> None:
    made = book.slips.add(book.clients.add("Thea Vane"), "Top", order(1))
    first = slip(book.line.save(made, order(2), "At the first table."))
    for refused in (
        book.line.save(made, order(3), "At the other table."),
        book.line.undo(made),
        book.line.redo(made),
        book.line.go_to(made, 1),
        book.bastings.baste(made, order(3), "Tried at the other table."),
        book.bastings.stitch(made),
        book.bastings.unpick(made),
        book.slips.change(replace(made, title="Other")),
    ):
        assert stale(refused).revision == first.revision
        assert stale(refused).changed == first.changed
        assert stale(refused).sentence.startswith("Slip 1 was changed on 3 May at ")
    assert book.slips.get(made.id) == first
    assert len(book.line.stitches(made)) == 2


def test_of_many_windows_at_once_one_wins(place: str) -> None:
    with open_book(place) as book:
        made = book.slips.add(book.clients.add("Thea Vane"), "Top", order(0))
        for round_ in range(5):
            now, got = book.slips.get(made.id), list[Slip | Stale]()

            def save(n: int, now: Slip = now, got: list[Slip | Stale] = got) -> None:
                got.append(book.line.save(now, order(n), f"By window {n}."))

            threads = [threading.Thread(target=save, args=(n,)) for n in range(6)]
            for t in threads:
                t.start()
            for t in threads:
                t.join()
            assert sorted(type(g).__name__ for g in got) == ["Slip"] + ["Stale"] * 5
            assert len(book.line.stitches(made)) == 2 + round_


def test_many_windows_get_different_numbers(place: str) -> None:
    with open_book(place) as book:
        thea, got = book.clients.add("Thea Vane"), list[int]()

        def add(n: int) -> None:
            got.append(book.slips.add(thea, f"Top {n}", order(n)).number)

        threads = [threading.Thread(target=add, args=(n,)) for n in range(12)]
        for t in threads:
            t.start()
        for t in threads:
            t.join()
        assert sorted(got) == list(range(1, 13))


@pytest.mark.parametrize(
    ("title", "text", "says"),
    [
        ("", 'garment = "Top"', "The title is blank"),
        ("Top", "garment = ", "The order's text is miswritten"),
        ("Top", "a = " + "[" * 5000, "The order's text is miswritten"),
        ("Top", 'a = "' + "x" * 1_000_000 + '"', "too long"),
        ("Top", "# \x00", "a character that is none"),
    ],
)
def test_a_slip_that_is_none_is_refused(
    book: Book, title: str, text: str, says: str
) -> None:
    thea = book.clients.add("Thea Vane")
    with pytest.raises(BookError, match=says):
        book.slips.add(thea, title, text)
    assert book.slips.all() == ()
    assert book.slips.add(thea, "Top", order(1)).number == 1


def test_a_slip_whose_client_was_forgotten_is_told(book: Book) -> None:
    thea = book.clients.add("Thea Vane")
    made = book.slips.add(thea, "Top", order(1))
    book.forget(thea)
    for change in (
        lambda: book.line.save(made, order(2), "More."),
        lambda: book.slips.change(replace(made, title="Other")),
        lambda: book.line.text(made),
    ):
        with pytest.raises(BookError, match="This slip is no longer in the book"):
            change()
