"""Spread, redraw, unfold, trace on random pieces (the kernel's promises)."""

import math
from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from clothwright.curves import (
    Line,
    Path,
    Point,
    degrees_between,
    distance,
    from_pair,
    mirror_in,
    mix,
)
from clothwright.paper import (
    Edge,
    EdgeKind,
    On,
    PaperError,
    Piece,
    Run,
    Sheet,
    redraw,
    spread,
    straight,
    trace,
    traced,
    unfold,
)
from shapes import pieces

TINY = 1e-6


@given(pieces(), st.floats(0.05, 1.5), st.floats(0.25, 0.75), st.floats(0.25, 0.75))
def test_spread_opens_by_the_amount_and_keeps_the_rest(
    piece: Piece, amount: float, a: float, b: float
) -> None:
    assume(len(piece.edges) >= 4)
    first, second = piece.edges[0], piece.edges[2]
    moving = piece.edges[1].name
    before = Sheet().put(piece)
    hinge = On(first.name, first.length * a)
    mouth = On(second.name, second.length * b)
    length = distance(
        first.path.at_length(first.length * a), second.path.at_length(second.length * b)
    )
    assume(length > 2 * amount)
    try:
        after = spread(
            before, piece.code, hinge, mouth, at_start=0.0, at_end=amount, moving=moving
        ).piece(piece.code)
    except PaperError:
        assume(False)
        return
    for e in piece.edges:
        more = amount if e.name == second.name else 0.0
        assert after.edge(e.name).length == pytest.approx(e.length + more, abs=1e-5)
    # the wedge is a triangle of two sides `length` and the mouth (isosceles, exact)
    wedge = 0.5 * amount * (length**2 - (amount / 2) ** 2) ** 0.5
    assert after.area == pytest.approx(piece.area + wedge, abs=1e-4)


@given(
    pieces(),
    st.floats(-1.5, 3.0),
    st.floats(-1.5, 3.0),
    st.floats(0.25, 0.75),
    st.floats(0.25, 0.75),
)
def test_spread_opens_both_ends_by_what_was_asked(
    piece: Piece, at_start: float, at_end: float, a: float, b: float
) -> None:
    """The cut's two edges are chords of one turn: 2·asin((d − c)/(2·length)), exact."""
    first, second = piece.edges[0], piece.edges[2]
    foot = first.path.at_length(first.length * a)
    mouth = second.path.at_length(second.length * b)
    length = distance(foot, mouth)
    assume(length > 8)
    try:
        after = spread(
            Sheet().put(piece),
            piece.code,
            On(first.name, first.length * a),
            On(second.name, second.length * b),
            at_start=at_start,
            at_end=at_end,
            moving=piece.edges[1].name,
        ).piece(piece.code)
    except PaperError:
        assume(False)
        return
    # the mark that rode on the moving part tells where both ends of the cut went
    turned, still = after.edge(piece.edges[1].name).path, piece.edges[1].path
    m = from_pair(still.start, still.end, turned.start, turned.end)
    for was, amount in ((foot, at_start), (mouth, at_end)):
        assert distance(was, m(was)) == pytest.approx(abs(amount), abs=TINY)
    swung = degrees_between(still.start_direction, turned.start_direction)
    aim = 2 * math.asin(abs(at_end - at_start) / (2 * length))
    assert swung == pytest.approx(math.degrees(aim), abs=1e-5)


@given(pieces(), st.floats(0.1, 0.4))
def test_redraw_slides_along_its_neighbours(piece: Piece, share: float) -> None:
    edge = piece.edges[1]
    before, after = piece.before(edge.name), piece.after(edge.name)
    a = before.path.at_length(before.length * (1 - share))
    b = after.path.at_length(after.length * share)
    new = Edge(edge.name, Path((Line(a, b),)))
    drawn = redraw(Sheet().put(piece), piece.code, [edge.name], [new]).piece(piece.code)
    assert drawn.edge(before.name).length == pytest.approx(
        before.length * (1 - share), abs=1e-4
    )
    assert drawn.edge(after.name).length == pytest.approx(
        after.length * (1 - share), abs=1e-4
    )
    for name, old in ((before.name, before.path), (after.name, after.path)):
        path = drawn.edge(name).path
        for k in range(9):
            assert old.nearest(path.at_length(path.length * k / 8))[1] < 1e-4
    for e in piece.edges:
        if e.name not in (edge.name, before.name, after.name):
            assert drawn.edge(e.name) == e


def test_redraw_refuses_a_line_that_leaves_its_neighbour() -> None:
    a, b, c, d = Point(0, 0), Point(9, 0), Point(9, 9), Point(0, 9)
    piece = Piece(
        "P",
        "P",
        (
            straight("top", a, b),
            straight("right", b, c),
            straight("low", c, d),
            straight("left", d, a),
        ),
    )
    astray = straight("top", Point(0.5, 1), Point(9, 1))
    with pytest.raises(PaperError, match="neighbour's line"):
        redraw(Sheet().put(piece), "P", ["top"], [astray])
    with pytest.raises(PaperError, match="do not follow"):
        redraw(Sheet().put(piece), "P", ["top", "low"], [astray])


@pytest.mark.parametrize("across", [0.005, -0.005])
def test_an_end_beside_its_corner_is_laid_on(across: float) -> None:
    """A new end 0.05 mm square off its neighbour's end is within OFF_LINE."""
    a, b, c = Point(0, 0), Point(9, 0), Point(0, 9)
    piece = Piece(
        "P", "P", (straight("top", a, b), straight("long", b, c), straight("cf", c, a))
    )
    new = straight("top", Point(across, 0), b)
    drawn = redraw(Sheet().put(piece), "P", ["top"], [new]).piece("P")
    assert distance(drawn.edge("top").path.start, new.path.start) < TINY
    assert drawn.edge("cf").length == pytest.approx(9, abs=1e-4)


@given(pieces())
def test_unfold_is_symmetric(piece: Piece) -> None:
    edge = piece.edges[0]
    flat = replace(edge, path=Path((Line(edge.path.start, edge.path.end),)))
    folded = piece.with_edge(replace(flat, kind=EdgeKind.FOLD))
    assume(folded.area > 1.0)
    whole = unfold(folded)
    assert whole.area == pytest.approx(2 * folded.area, abs=1e-5)
    m = mirror_in(flat.path.start, flat.path.end)
    for e in folded.edges[1:]:
        twin = whole.edge(f"{e.name} mirrored")
        assert twin.length == pytest.approx(e.length, abs=TINY)
        mid = m(e.path.at_length(e.length / 2))
        assert distance(twin.path.at_length(e.length / 2), mid) < 1e-5


@given(pieces())
def test_a_trace_equals_what_it_copies(piece: Piece) -> None:
    sheet = trace(Sheet().put(piece), piece.code, "L", "Lining")
    assert sheet.piece("L").edges == piece.edges
    names = [e.name for e in piece.edges[:2]]
    edge = traced(sheet, [Run(piece.code, n) for n in names], "both")
    assert edge.length == pytest.approx(sum(e.length for e in piece.edges[:2]))
    assert mix(edge.path.start, piece.edges[0].path.start, 0.5) == pytest.approx(
        edge.path.start
    )
