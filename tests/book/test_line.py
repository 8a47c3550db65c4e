"""The undo line and the basting: nothing is lost by touching."""

from datetime import timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from books import START, order, slip
from clothwright.book import Book, BookError, Slip, open_book


@pytest.fixture
def top(book: Book) -> Slip:
    """A slip with four states, 1 to 4."""
    made = book.slips.add(book.clients.add("Thea Vane"), "Top", order(1))
    for n in (2, 3, 4):
        made = slip(book.line.save(made, order(n), f"Change {n}."))
    return made


def test_a_state_keeps_text_sentence_and_time(book: Book, top: Slip) -> None:
    stitches = book.line.stitches(top)
    assert [(s.number, s.parent) for s in stitches] == [
        (1, None),
        (2, 1),
        (3, 2),
        (4, 3),
    ]
    assert [s.said for s in stitches][1:] == ["Change 2.", "Change 3.", "Change 4."]
    assert sorted(s.at for s in stitches) == [s.at for s in stitches]
    assert [book.line.text(top, n) for n in (1, 2, 3, 4)] == [
        order(n) for n in (1, 2, 3, 4)
    ]
    assert book.line.text(top) == order(4)


def test_undo_and_redo_have_no_limit(book: Book, top: Slip) -> None:
    for n in (3, 2, 1):
        assert top.can_undo
        top = slip(book.line.undo(top))
        assert book.line.text(top) == order(n)
    assert not top.can_undo
    with pytest.raises(BookError, match="nothing to unpick"):
        book.line.undo(top)
    for n in (2, 3, 4):
        assert top.can_redo
        top = slip(book.line.redo(top))
        assert book.line.text(top) == order(n)
    assert not top.can_redo
    with pytest.raises(BookError, match="nothing was unpicked"):
        book.line.redo(top)


def test_a_change_after_undo_keeps_the_old_branch(book: Book, top: Slip) -> None:
    top = slip(book.line.undo(slip(book.line.undo(top))))
    top = slip(book.line.save(top, order(5), "Another way."))
    assert book.line.stitches(top)[-1].parent == 2
    assert not top.can_redo
    assert book.line.text(top, 4) == order(4)
    top = slip(book.line.go_to(top, 3))
    assert top.can_redo
    assert book.line.text(slip(book.line.redo(top))) == order(4)
    top = slip(book.line.go_to(book.slips.get(top.id), 5))
    top = slip(book.line.undo(top))
    assert book.line.text(slip(book.line.redo(top))) == order(5)


def test_the_branch_in_use_stays_in_use_below_the_fork(book: Book, top: Slip) -> None:
    top = slip(book.line.go_to(top, 2))
    top = slip(book.line.save(top, order(5), "Another way."))
    top = slip(book.line.go_to(top, 4))
    top = slip(book.line.go_to(top, 1))
    for n in (2, 3, 4):
        top = slip(book.line.redo(top))
        assert top.state == n


def test_the_state_of_an_hour_is_what_lay_on_the_table(book: Book, top: Slip) -> None:
    hours = [s.at for s in book.line.stitches(top)]
    top = slip(book.line.undo(top))
    undone = top.changed
    top = slip(book.line.save(top, order(5), "Another way."))
    assert [book.line.at(top, h) for h in hours] == [1, 2, 3, 4]
    assert book.line.at(top, undone - timedelta(seconds=1)) == 4
    assert book.line.at(top, undone) == 3
    assert book.line.at(top, top.changed + timedelta(days=1)) == 5
    with pytest.raises(BookError, match="not yet written down then"):
        book.line.at(top, START)


def test_a_state_that_is_none_is_told(book: Book, top: Slip) -> None:
    with pytest.raises(BookError, match="Slip 1 has no state 9"):
        book.line.go_to(top, 9)
    with pytest.raises(BookError, match="Slip 1 has no state 9"):
        book.line.text(top, 9)
    with pytest.raises(BookError, match="The sentence is blank"):
        book.line.save(top, order(9), " ")
    assert book.slips.get(top.id) == top, "a refusal leaves the revision"


def test_a_basting_is_kept_apart(book: Book, top: Slip) -> None:
    before = book.line.stitches(top)
    top = slip(book.bastings.baste(top, order(8), "The back is lower."))
    top = slip(book.bastings.baste(top, order(9), "Lower still."))
    assert top.basted
    assert book.line.stitches(top) == before
    assert book.line.text(top) == order(4)
    basting = book.bastings.get(top)
    assert basting is not None
    assert (basting.text, basting.said, basting.on_state) == (
        order(9),
        "Lower still.",
        4,
    )


def test_a_basting_outlives_the_program(place: str) -> None:
    with open_book(place) as book:
        made = book.slips.add(book.clients.add("Thea Vane"), "Top", order(1))
        slip(book.bastings.baste(made, order(2), "Tried."))
    with open_book(place) as book:
        made = book.slips.numbered(1)
        assert made.basted
        stitched = slip(book.bastings.stitch(made))
        assert not stitched.basted
        assert book.bastings.get(made) is None
        assert book.line.text(stitched) == order(2)
        assert [s.said for s in book.line.stitches(made)] == ["Written down.", "Tried."]


def test_a_basting_is_unpicked(book: Book, top: Slip) -> None:
    top = slip(book.bastings.baste(top, order(8), "Tried."))
    top = slip(book.bastings.unpick(top))
    assert not top.basted
    assert book.bastings.get(top) is None
    with pytest.raises(BookError, match="Nothing is basted on slip 1"):
        book.bastings.stitch(top)


def test_a_basting_of_another_state_is_not_stitched(book: Book, top: Slip) -> None:
    top = slip(book.bastings.baste(top, order(8), "Tried."))
    top = slip(book.line.save(top, order(5), "Meanwhile."))
    with pytest.raises(BookError, match="basted on another state of slip 1"):
        book.bastings.stitch(top)
    assert book.bastings.get(top) is not None, "it is not lost"
    top = slip(book.line.go_to(top, 4))
    assert book.line.text(slip(book.bastings.stitch(top))) == order(8)


@settings(
    max_examples=30,
    # each example has a slip of its own in the one book
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(st.lists(st.integers(0, 9), max_size=25))
def test_any_hands_leave_a_line_that_holds(book: Book, moves: list[int]) -> None:
    """Against a model: a list of parents, a place on it, and a list to redo."""
    top = book.slips.add(book.clients.add("Thea Vane"), "Top", order(1))
    parents: dict[int, int | None] = {1: None}
    at, ahead, trail = 1, list[int](), {top.changed: 1}
    for move in moves:
        before = parents[at]
        if move < 5:
            new = len(parents) + 1
            parents[new], at, ahead = at, new, []
            top = slip(book.line.save(top, order(new), f"Change {new}."))
        elif move < 8 and before is not None:
            ahead.append(at)
            at = before
            top = slip(book.line.undo(top))
        elif move >= 8 and ahead:
            at = ahead.pop()
            top = slip(book.line.redo(top))
        else:
            continue
        trail[top.changed] = at
        assert (top.state, top.parent) == (at, parents[at])
        assert top.can_redo is bool(ahead)
    stitches = book.line.stitches(top)
    assert {s.number: s.parent for s in stitches} == parents
    assert book.line.text(top) == order(at)
    assert {h: book.line.at(top, h) for h in trail} == trail
