"""The fitting on a slip: what is seen, candidates, what is taken over."""

from typing import Any

import pytest

from clothwright.app.changes import change
from clothwright.app.keeping import InBook
from clothwright.app.room import Room
from clothwright.app.words import paragraphs
from clothwright.app.workshop import made_up
from clothwright.book import Book
from clothwright.units import Unit

INCH = 2.54


def said(room: Room) -> list[dict[str, Any]]:
    return paragraphs(room.reading(Unit.IN))["Fitting"]


def told(room: Room) -> str:
    return " ".join(
        r if isinstance(r, str) else r["say"] for s in said(room) for r in s["runs"]
    )


def act(room: Room, say: str) -> dict[str, Any]:
    """What the first live word of this wording does."""
    words = [r for s in said(room) for r in s["runs"] if not isinstance(r, str)]
    return next(w["do"] for w in words if w["say"] == say)


def touch(room: Room, say: str) -> None:
    refused = change(room, act(room, say))
    assert refused is None, refused


def test_only_what_the_garment_covers_is_pointed_at(book: Book) -> None:
    def places(style: str) -> set[str]:
        runs = said(Room(InBook(book, made_up(book, style))))[0]["runs"]
        return {r["say"] for r in runs if not isinstance(r, str)}

    top = places("peplum-top")
    assert {"neck", "bust", "waist"} <= top
    assert not top & {"sleeve", "skirt", "trousers"}
    assert places("trousers") >= {"trousers"}
    assert "neck" not in places("trousers")
    assert places("straight-skirt") == {"skirt", "waist"}
    assert {"sleeve", "neck"} <= places("bishop-blouse")
    assert "elbow" not in places("bishop-blouse"), "its sleeve is straight"


def test_she_points_sees_and_takes(room: Room, book: Book) -> None:
    touch(room, "armhole")
    assert "gape at front armhole" in told(room)
    touch(room, "gape at front armhole")
    assert "from 0 in to ¼ in" in told(room)
    moves = next(s["rest"] for s in said(room) if s["id"] == "cure 0")
    assert "Side front, armhole: 4¹³⁄₁₆ in, then 4⁹⁄₁₆ in" in str(moves)
    touch(room, "a little more")
    assert "⅜ in" in told(room)
    touch(room, "A little less")
    touch(room, "Take it")
    assert room.draft is not None
    assert room.draft.numbers["ta"] == pytest.approx(INCH / 4)
    (kept,) = book.fittings.of(book.slips.numbered(1))
    assert (kept.seen, kept.what) == ("gape at front armhole", "tightened")
    assert kept.amount == pytest.approx(INCH / 4)
    assert change(room, {"do": "unpick"}) is None
    assert room.draft.numbers["ta"] == 0


def test_an_alteration_is_taken_and_left_off(room: Room) -> None:
    assert change(room, {"do": "look", "seen": "gape at front neck"}) is None
    assert change(room, {"do": "take", "which": 0}) is None
    assert "Front neck closed by ¼ in" in told(room)
    style = paragraphs(room.reading(Unit.IN))["Style"]
    assert any(s["id"] == "fitting" for s in style)
    touch(room, "Leave it off")
    assert room.order.feature("fitting") is None


def test_what_is_basted_is_kept_in_the_book_when_it_is_stitched(
    room: Room, book: Book
) -> None:
    slip = book.slips.numbered(1)
    assert change(room, {"do": "baste"}) is None
    for words in ("gape at front neck", "peplum a little short"):
        assert change(room, {"do": "look", "seen": words}) is None
        assert change(room, {"do": "take", "which": 0}) is None
    assert room.under, "the paper beneath shows what was"
    assert book.fittings.of(slip) == ()
    assert change(room, {"do": "unpick"}) is None
    assert change(room, {"do": "stitch"}) is None
    assert [d.seen for d in book.fittings.of(slip)] == ["gape at front neck"]


def test_her_last_fitting_is_offered_on_her_next_slip(room: Room, book: Book) -> None:
    seen = "gape at front armhole", "gape at front neck", "peplum a little short"
    for words in seen:
        assert change(room, {"do": "look", "seen": words}) is None
        assert change(room, {"do": "take", "which": 0}) is None
    first = book.slips.numbered(1)
    client = book.clients.get(first.client_id)
    text = book.line.text(first, 1)
    book.slips.add(client, "Second top", text)
    again = Room(InBook(book, book.slips.numbered(2)))
    words = told(again)
    assert "At her last fitting (slip 1): front neck closed by ¼ in" in words
    assert "tightening of the front armhole (ta) ¼ in more" in words
    assert "peplum" not in words, "how she likes it, not how she is built"
    touch(again, "take it over")
    touch(again, "take it over")
    assert "take it over" not in told(again)
    assert again.draft is not None
    assert again.draft.numbers["ta"] == pytest.approx(INCH / 4)
    assert again.order.feature("fitting") is not None
    assert not again.draft.failed


def test_a_skirt_s_alteration_is_taken_and_offered_on_her_next_skirt_alone(
    book: Book,
) -> None:
    first = made_up(book, "straight-skirt")
    room = Room(InBook(book, first))
    touch(room, "skirt")
    touch(room, "skirt hem up at the back")
    touch(room, "Take it")
    assert "Skirt opened over the seat by" in told(room)
    client, text = book.clients.get(first.client_id), book.line.text(first, 1)
    trousers = book.line.text(made_up(book, "trousers"), 1)
    for style, kept in ((text, True), (trousers, False)):
        slip = book.slips.add(client, "Next", style)
        again = Room(InBook(book, slip))
        assert ("skirt opened over the seat by" in told(again)) is kept
        if kept:
            touch(again, "take it over")
            assert again.draft is not None
            assert "fit1" in again.draft.numbers
            assert not again.draft.failed


def test_what_cannot_be_is_refused_with_a_sentence(room: Room) -> None:
    for op in (
        {"do": "look", "seen": "zzz"},
        {"do": "look", "seen": 5},
        {"do": "look", "seen": "gape at front neck", "by": -3},
        {"do": "look", "seen": "gape at front neck", "by": "wide"},
        {"do": "take", "which": 0},
        {"do": "take"},
        {"do": "take over", "which": 7},
        {"do": "take over", "which": "x"},
        {"do": "let out", "which": 0},
    ):
        refused = change(room, op)
        assert refused is not None, op
        assert "Error" not in refused.sentence
        assert refused.sentence.endswith(".")
    assert change(room, {"do": "look", "seen": "gape at front neck"}) is None
    assert change(room, {"do": "set", "of": "peplum.length", "to": "7"}) is None
    late = change(room, {"do": "take", "which": 0})
    assert late is not None
    assert "changed since" in late.sentence


def test_what_a_word_does_has_no_name_that_a_message_needs(room: Room) -> None:
    """A message carries its number as `n`, its lateness as `late` and `on`."""
    for op in (
        {"do": "look", "place": "neck"},
        {"do": "look", "seen": "gape at front neck"},
        {"do": "take", "which": 0},
    ):
        assert change(room, op) is None
        for s in said(room):
            for word in (r for r in s["runs"] if not isinstance(r, str)):
                assert not {"n", "late", "on", "ask"} & set(word.get("do", {}))
