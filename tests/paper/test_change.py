"""Work told by what it looked at and what it laid, and done again on another sheet."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from clothwright.curves import Path, Point, shift
from clothwright.paper import (
    Change,
    Look,
    PaperError,
    Piece,
    Run,
    Seam,
    Sheet,
    straight,
)

CODES = "ABCD"
Work = Callable[[Sheet], Sheet]


def _piece(code: str, width: float) -> Piece:
    a, b, c = Point(0, 0), Point(width, 0), Point(0, 10)
    edges = (straight("top", a, b), straight("slope", b, c), straight("side", c, a))
    return Piece(code, code, edges)


def _table(width: float) -> Sheet:
    return (
        Sheet()
        .put(_piece("A", width), _piece("B", width + 1))
        .named(P=Point(width, 1), Q=Point(width, 2))
        .drawn(line=Path.line(Point(0, 0), Point(width, 5)))
    )


_works: st.SearchStrategy[Work] = st.one_of(
    st.builds(
        lambda code, width: lambda s: s.put(_piece(code, width)),
        st.sampled_from(CODES),
        st.floats(1, 20),
    ),
    st.builds(
        lambda codes, code: lambda s: s.in_place_of(*codes, put=[_piece(code, 3)]),
        st.sets(st.sampled_from(CODES)),
        st.sampled_from(CODES),
    ),
    st.builds(lambda code: lambda s: s.without(code), st.sampled_from(CODES)),
    st.builds(
        lambda name, x: lambda s: s.named(**{name: Point(x, 0)}),
        st.sampled_from("PQRS"),
        st.floats(1, 20),
    ),
)


def _told(s: Sheet) -> object:
    return [list(m.items()) for m in (s.pieces, s.points, s.lines)], s.seams


@given(st.lists(_works, max_size=8))
def test_a_change_made_to_another_sheet_is_the_work_done_there(
    works: list[Work],
) -> None:
    """Order and all: what was laid, taken off and laid again stands where it would."""
    here, there = _table(5.0), _table(7.0)
    watched = Look().at(here)
    for work in works:
        watched, there = work(watched), work(there)
    assert _told(Change.of(watched).on(_table(7.0))) == _told(there)
    assert _told(watched.unwatched()) == _told(Change.of(watched).on(here))


def test_what_was_looked_at_tells_two_sheets_apart() -> None:
    one, look = _table(5.0), Look()
    sheet = look.at(one)
    assert sheet.points["P"] == Point(5, 1) and sheet.length("A", "top") == 5
    assert "B" in sheet.pieces and list(sheet.pieces) == ["A", "B"]
    assert look.finds_the_same(one, one.named(Q=Point(0, 0)))
    assert look.finds_the_same(one, one.put(_piece("B", 9.0)))
    assert look.finds_the_same(one, one.put(_piece("A", 5.0)))
    assert not look.finds_the_same(one, one.named(P=Point(0, 0)))
    assert not look.finds_the_same(one, one.put(_piece("A", 9.0)))


def test_names_their_order_and_the_seams_always_count() -> None:
    one = _table(5.0)
    swapped = one.in_place_of("A", put=[one.piece("A")])
    seam = Seam("s", "side", (Run("A", "side"),), (Run("B", "side"),))
    look = Look()
    assert look.finds_the_same(one, _table(9.0))
    assert not look.finds_the_same(one, one.named(R=Point(0, 0)))
    assert not look.finds_the_same(one, swapped)
    assert not look.finds_the_same(one, one.sew(seam))


def test_a_look_at_what_was_laid_meanwhile_is_none() -> None:
    one, look = _table(5.0), Look()
    sheet = look.at(one)
    moved = sheet.put(sheet.piece("B").moved(shift(Point(1, 1)))).named(P=Point(3, 3))
    assert moved.piece("B").area == pytest.approx(one.piece("B").area)
    assert moved.points["P"] == Point(3, 3)
    assert look.pieces == {"B"} and not look.points  # B was read before it was laid
    with pytest.raises(PaperError, match="no piece Z"):
        sheet.piece("Z")


def test_things_that_have_not_changed_stay_the_same_ones() -> None:
    """Equal is not enough: what is known of a piece is known by which it is."""
    one = _table(5.0)
    first = Change.of(Look().at(one).put(_piece("C", 4), _piece("D", 4)))
    again = Change.of(Look().at(one).put(_piece("C", 4), _piece("D", 6)))
    assert again.like(first).pieces.laid["C"] is first.pieces.laid["C"]
    assert again.like(first).pieces.laid["D"] is again.pieces.laid["D"]
    assert again.like(first) == again
