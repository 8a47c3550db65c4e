"""Measures over time: never overwritten, asked about, read back as a body."""

from datetime import date
from pathlib import Path

import pytest
import tomli_w

from bodies import BRIDA
from books import ORDER
from clothwright.body import read_body
from clothwright.book import Book, BookError, Client, Side
from clothwright.order.file import order_from_table, toml_table
from clothwright.units import Unit

MARCH, MAY = date(2027, 3, 9), date(2027, 5, 2)


@pytest.fixture
def wenna(book: Book) -> Client:
    """A client with measures of March."""
    client = book.clients.add("Wenna Årsdotter")
    done = book.measures.record(
        client,
        {"waist": "28", "B": 36.5, "SS": "drop 1 7/8 on 5", "NWB": "41 cm"},
        unit=Unit.IN,
        taken=MARCH,
        how="over a  slip",
        by="M. T.",
    )
    assert [m.code for m in done.saved] == ["W", "B", "SS", "NWB"]
    assert not done.questions
    return client


def test_a_figure_keeps_how_it_was_taken(book: Book, wenna: Client) -> None:
    waist = next(m for m in book.measures.history(wenna) if m.code == "W")
    assert waist.typed == "28"
    assert waist.value == pytest.approx(28 * 2.54)  # the inch is exact
    assert (waist.unit, waist.taken, waist.how, waist.by) == (
        Unit.IN,
        MARCH,
        "over a slip",
        "M. T.",
    )


def test_nothing_is_overwritten(book: Book, wenna: Client) -> None:
    before = book.measures.history(wenna)
    book.measures.record(wenna, {"W": "28 3/4"}, unit=Unit.IN, taken=MAY)
    book.measures.record(wenna, {"W": "29"}, unit=Unit.IN, taken=MAY)
    after = book.measures.history(wenna)
    assert after[: len(before)] == before
    assert [m.typed for m in after if m.code == "W"] == ["28", "28 3/4", "29"]
    assert not hasattr(book.measures, "change")


def test_the_body_of_a_day(book: Book, wenna: Client) -> None:
    book.measures.record(
        wenna, {"W": "28 3/4"}, unit=Unit.IN, taken=MAY, by="Odile", how="dress"
    )
    late = book.measures.record(
        wenna, {"W": "27 1/2"}, unit=Unit.IN, taken=date(2027, 1, 4)
    )
    assert late.saved, "a figure found on an old slip goes in too"
    for day, waist in (
        (date(2027, 1, 4), 27.5),
        (date(2027, 3, 8), 27.5),
        (MARCH, 28.0),
        (date(2027, 5, 1), 28.0),
        (MAY, 28.75),
        (None, 28.75),
    ):
        assert book.measures.body(wenna, day)["W"] == pytest.approx(waist * 2.54)
    now = book.measures.body(wenna)
    assert (now.client, now.unit, now.taken) == ("Wenna Årsdotter", Unit.IN, MAY)
    assert (now.values["W"].taken, now.values["W"].by) == (MAY, "Odile")
    assert (now.values["B"].taken, now.values["B"].by) == (MARCH, "M. T.")
    with pytest.raises(BookError, match="has no measures up to 3 January 2027"):
        book.measures.body(wenna, date(2027, 1, 3))


def test_the_body_is_what_its_measures_file_says(book: Book, wenna: Client) -> None:
    for unit in (None, Unit.CM, Unit.IN):
        body = book.measures.body(wenna, unit=unit)
        table = book.measures.table(wenna, unit=unit)
        read = read_body(tomli_w.dumps(table), "wenna.toml")
        assert body == read
        assert body.unit is (unit or Unit.IN)
        assert body["NWB"] == pytest.approx(41)
        assert body["W"] == pytest.approx(71.12)


def test_an_order_drafts_from_the_card(book: Book) -> None:
    brida = book.clients.add(BRIDA.client)
    typed = {code: v.typed for code, v in BRIDA.values.items()}
    book.measures.record(brida, typed, unit=BRIDA.unit, taken=MARCH)
    table = toml_table(ORDER, "order.toml")
    laid = {**table, **book.measures.table(brida, unit=Unit(table["unit"]))}
    order = order_from_table(laid, "order.toml", Path())
    assert {k: v.value for k, v in order.body.values.items()} == {
        k: v.value for k, v in BRIDA.values.items()
    }
    assert order.body.taken == MARCH


def test_a_figure_for_both_sides_does_away_with_older_ones_of_one(
    book: Book, wenna: Client
) -> None:
    sides = {"left": {"SH": "5"}, "right": {"SH": "4 3/4"}}
    saved = book.measures.record(wenna, sides, unit=Unit.IN, taken=MARCH).saved
    assert [(m.code, m.side) for m in saved] == [("SH", Side.LEFT), ("SH", Side.RIGHT)]
    body = book.measures.body(wenna)
    assert body.left["SH"].value == pytest.approx(12.7)
    assert body["SH"] == pytest.approx((5 + 4.75) / 2 * 2.54)
    book.measures.record(wenna, {"SH": "4 7/8"}, unit=Unit.IN, taken=MAY)
    body = book.measures.body(wenna)
    assert not body.left
    assert not body.right
    assert len(book.measures.history(wenna)) == 7


def test_an_odd_figure_is_asked_about_and_not_saved(book: Book, wenna: Client) -> None:
    typed = {"W": "48", "B": "36 3/4"}
    done = book.measures.record(wenna, typed, unit=Unit.IN, taken=MAY)
    (asked,) = done.questions
    assert str(asked) == (
        "Waist 48 in is 20 more than in March. Keep it, or measure again."
    )
    assert asked.place == "W"
    assert not done.saved
    assert len(book.measures.history(wenna)) == 4, "not one without the other"
    kept = book.measures.record(wenna, typed, unit=Unit.IN, taken=MAY, keep=["W"])
    assert [m.typed for m in kept.saved] == ["48", "36 3/4"]


@pytest.mark.parametrize(
    ("typed", "unit", "taken", "says"),
    [
        (
            {"W": "24"},
            Unit.IN,
            MARCH,
            "Waist 24 in is 4 less than earlier that day",
        ),
        (
            {"W": "82 cm"},
            Unit.CM,
            date(2027, 3, 20),
            "82 cm is 10.9 more than on 9 M",
        ),
        ({"W": "32"}, Unit.IN, date(2027, 3, 10), "32 in is 4 more than on 9 March."),
        ({"SS": "27"}, Unit.IN, MAY, "Shoulder slope 27.0° is 5.0° more than in March"),
        ({"W": "71"}, Unit.IN, MAY, "Inches and centimetres are perhaps exchanged"),
        ({"left": {"SS": "17"}}, Unit.IN, MAY, "on the left 17.0° is 5.0° less than"),
        ({"W": "29 1/2"}, Unit.IN, MAY, ""),
        ({"NWB": "16 1/4"}, Unit.IN, MAY, ""),
        ({"NWB": "17 1/4"}, Unit.IN, MAY, "more than in March"),
        ({"W": "40"}, Unit.IN, date(2026, 3, 9), ""),
    ],
)
def test_what_is_odd(
    book: Book,
    wenna: Client,
    typed: dict[str, str],
    unit: Unit,
    taken: date,
    says: str,
) -> None:
    done = book.measures.record(wenna, typed, unit=unit, taken=taken)
    assert says in " ".join(map(str, done.questions))
    assert bool(done.questions) is bool(says)


def test_the_year_is_said_when_it_is_another(book: Book, wenna: Client) -> None:
    book.measures.record(wenna, {"H": "38"}, unit=Unit.IN, taken=date(2026, 3, 9))
    done = book.measures.record(wenna, {"H": "44"}, unit=Unit.IN, taken=MARCH)
    assert "44 in is 6 more than in March 2026." in str(done.questions[0])


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ({"Q": "3"}, "Q is no measure that is known here"),
        ({"W": "about 28"}, "cannot be read"),
        ({"W": "0"}, "cannot be a measure"),
        ({"left": "5"}, "as a table"),
        ({}, "there are no measures"),
        ({"W": "28", "B": "x"}, "B: "),
    ],
)
def test_a_figure_that_is_none_is_refused(
    book: Book, wenna: Client, typed: dict[str, str], says: str
) -> None:
    with pytest.raises(BookError, match=says):
        book.measures.record(wenna, typed, unit=Unit.IN, taken=MAY)
    assert len(book.measures.history(wenna)) == 4


def test_a_day_to_come_is_refused(book: Book, wenna: Client) -> None:
    with pytest.raises(BookError, match="5 May 2028 is still to come"):
        book.measures.record(wenna, {"W": "28"}, unit=Unit.IN, taken=date(2028, 5, 5))


def test_a_card_without_measures_says_so(book: Book) -> None:
    thea = book.clients.add("Thea Vane")
    with pytest.raises(BookError, match="Thea Vane has no measures; take them first"):
        book.measures.body(thea)
