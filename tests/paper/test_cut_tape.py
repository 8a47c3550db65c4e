"""Cut and tape: paper never stretches, and one undoes the other. Exact maths."""

import math
from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from clothwright.curves import Line, Path, Point, distance, mix, turn
from clothwright.paper import (
    CornerAfter,
    Edge,
    InnerLine,
    Mark,
    On,
    PaperError,
    Piece,
    Run,
    Seam,
    Sheet,
    Spot,
    cut,
    move,
    spot_on,
    straight,
    tape,
)
from shapes import folded, pieces, sewn, shares, walked, worst_gap

AREA = 1e-6
LENGTH = 1e-6

INTO = (("A", "first part"), ("B", "second part"))


def square(side: float) -> tuple[Edge, ...]:
    c = [Point(0, 0), Point(side, 0), Point(side, side), Point(0, side)]
    return tuple(straight("abcd"[i], c[i], c[(i + 1) % 4]) for i in range(4))


@st.composite
def spots(draw: st.DrawFn, piece: Piece) -> tuple[Spot, Spot]:
    """Two places on different edges that are no ends of one edge."""
    n = len(piece.edges)
    i = draw(st.integers(0, n - 1))
    j = (i + draw(st.integers(2, n - 2))) % n
    out: list[Spot] = []
    for k in (i, j):
        e = piece.edges[k]
        if draw(st.booleans()):
            out.append(On(e.name, e.length * draw(shares)))
        else:
            out.append(CornerAfter(e.name))
    return out[0], out[1]


def place(piece: Piece, spot: Spot) -> Point:
    path = piece.edge(spot.edge).path
    return path.end if isinstance(spot, CornerAfter) else path.at_length(spot.length)


@st.composite
def cuts(draw: st.DrawFn) -> tuple[Piece, Path, Spot, Spot]:
    """A piece, and a straight or bowed line to cut it along."""
    piece = draw(pieces())
    start, end = draw(spots(piece))
    a, b = place(piece, start), place(piece, end)
    assume(distance(a, b) > 1)
    line = Path((Line(a, b),))
    if draw(st.booleans()):
        out = Point(b[1] - a[1], a[0] - b[0])
        h = draw(st.floats(-0.2, 0.2))
        line = Path.cubic(a, mix(a, b, 1 / 3) + out * h, mix(a, b, 2 / 3) + out * h, b)
    return piece, line, start, end


def divide(sheet: Sheet, line: Path, start: Spot, end: Spot) -> Sheet:
    return cut(
        sheet,
        "P",
        line,
        start,
        end,
        edge="cut",
        seam="C",
        seam_name="the cut",
        into=INTO,
    )


@given(cuts())
def test_a_cut_keeps_area_lengths_and_seams(
    how: tuple[Piece, Path, Spot, Spot],
) -> None:
    piece, line, start, end = how
    before = sewn(piece)
    after = divide(before, line, start, end)
    assert "P" not in after.pieces
    a, b = after.piece("A"), after.piece("B")
    assert a.area + b.area == pytest.approx(piece.area, abs=AREA)
    for e in piece.edges:
        parts = [p.edge(e.name).length for p in (a, b) if p.has(e.name)]
        assert sum(parts) == pytest.approx(e.length, abs=LENGTH)
        undivided = e.name not in {s.edge for s in (start, end) if isinstance(s, On)}
        assert len(parts) == (1 if undivided else 2)
    for code in ("S1", "S2"):
        for side in ("left", "right"):
            old, new = (getattr(s.seam(code), side) for s in (before, after))
            assert after.chain_length(new) == pytest.approx(
                before.chain_length(old), abs=LENGTH
            )
        assert worst_gap(walked(before, code), walked(after, code)) < 1e-5


@given(cuts())
def test_both_sides_of_a_cut_are_one_line(how: tuple[Piece, Path, Spot, Spot]) -> None:
    piece, line, start, end = how
    after = divide(sewn(piece), line, start, end)
    seam = after.seam("C")
    left, right = (after.run_path(r[0]) for r in (seam.left, seam.right))
    assert left == right
    assert left.length == pytest.approx(line.length, abs=LENGTH)
    assert distance(left.start, line.start) < 1e-6
    # the first part's loop runs from the line's start clockwise to its end
    first = after.piece("A")
    assert distance(first.edges[0].path.start, line.start) < 1e-6
    assert distance(first.edge("cut").path.start, line.end) < 1e-6


@given(cuts())
def test_taping_undoes_cutting(how: tuple[Piece, Path, Spot, Spot]) -> None:
    piece, line, start, end = how
    before = sewn(piece)
    parted = divide(before, line, start, end)
    # lay the second part elsewhere: tape must bring it back to the first
    parted = move(parted, "A", turn(Point(40, 7), 33))
    again = tape(parted, "C", code="P", name="P")
    whole = again.piece("P")
    assert set(again.pieces) == {"P", "M"}
    assert whole.area == pytest.approx(piece.area, abs=1e-5)
    for e in piece.edges:
        found = [x for x in whole.edges if x.name in (e.name, f"{e.name} 2")]
        assert sum(x.length for x in found) == pytest.approx(e.length, abs=1e-5)
    for code in ("S1", "S2"):
        assert again.chain_length(again.seam(code).left) == pytest.approx(
            before.chain_length(before.seam(code).left), abs=1e-5
        )
        assert worst_gap(walked(before, code), walked(again, code)) < 1e-4
    middle = [e.path.at_length(e.length / 2) for e in piece.edges]
    assert all(whole.outline.nearest(p)[1] < 1e-4 for p in middle)
    assert all(s.code != "C" for s in again.seams)


@given(pieces())
def test_marks_lines_and_grain_go_with_their_part(piece: Piece) -> None:
    e = piece.edges[0]
    p = mix(e.path.at_length(e.length / 2), Point(0, 0), 0.5)
    marked = piece.with_marks(Mark("m", p)).with_lines(
        InnerLine("k", Path.line(p, p + Point(0.01, 0)))
    )
    far = piece.edges[2].name
    start, end = CornerAfter(piece.edges[-1].name), CornerAfter(far)
    line = Path.line(place(piece, start), place(piece, end))
    assume(line.nearest(Point(0, 0))[1] > 1e-6)  # the middle of the grain line
    after = divide(Sheet().put(marked), line, start, end)
    holders = [q.code for q in after.pieces.values() if q.marks]
    assert holders == [q.code for q in after.pieces.values() if q.contains(p)]
    kept = [k.path.length for q in after.pieces.values() for k in q.lines]
    assert sum(kept) == pytest.approx(0.01, abs=1e-4)
    assert sum(q.grain is not None for q in after.pieces.values()) <= 1


class TestCutRefusals:
    PIECE = Piece("P", "P", square(9.0))

    def test_along_one_edge(self) -> None:
        line = Path.line(Point(2, 0), Point(7, 0))
        with pytest.raises(PaperError, match="from one edge to another"):
            divide(Sheet().put(self.PIECE), line, On("a", 2), On("a", 7))

    def test_an_unknown_edge(self) -> None:
        line = Path.line(Point(2, 0), Point(7, 9))
        with pytest.raises(PaperError, match="no edge x"):
            divide(Sheet().put(self.PIECE), line, On("x", 2), On("c", 2))

    def test_off_the_outline(self) -> None:
        line = Path.line(Point(2, 1), Point(7, 9))
        with pytest.raises(PaperError, match="begin and end on the outline"):
            divide(Sheet().put(self.PIECE), line, On("a", 2), On("c", 2))

    def test_nowhere(self) -> None:
        line = Path.line(Point(9, 0), Point(9, 0.001))
        with pytest.raises(PaperError):
            divide(Sheet().put(self.PIECE), line, CornerAfter("a"), CornerAfter("a"))

    @pytest.mark.parametrize("length", [0.0, 9.0])
    def test_a_place_at_an_edge_s_end_is_its_corner(self, length: float) -> None:
        at = Point(length, 0)
        line = Path.line(at, Point(4, 9))
        after = divide(Sheet().put(self.PIECE), line, On("a", length), On("c", 5))
        assert sum(p.area for p in after.pieces.values()) == pytest.approx(81)
        assert sum(p.has("a") for p in after.pieces.values()) == 1

    def test_from_a_place_on_an_edge_to_its_own_corner(self) -> None:
        """A crescent: a bowed line cut off one edge's end."""
        line = Path.cubic(Point(3, 0), Point(5, 2), Point(7, 2), Point(9, 0))
        after = divide(Sheet().put(self.PIECE), line, On("a", 3), CornerAfter("a"))
        assert sum(p.area for p in after.pieces.values()) == pytest.approx(81)
        assert after.piece("A").edge("a").length == pytest.approx(6)
        assert after.piece("B").edge("a").length == pytest.approx(3)

    def test_the_spot_on_an_edge(self) -> None:
        p = self.PIECE
        assert spot_on(p, "a", Point(9, 0)) == CornerAfter("a")
        assert spot_on(p, "a", Point(0, 0)) == CornerAfter("d")
        spot = spot_on(p, "a", Point(4, 0.005))
        assert isinstance(spot, On)
        assert spot.length == pytest.approx(4)
        with pytest.raises(PaperError, match=r"0\.50 cm off"):
            spot_on(p, "a", Point(4, 0.5))


def slit(theta: float, phi: float = 150.0) -> Piece:
    """A ring of paper about the origin with a dart of `theta` degrees at the right and
    a slit from the origin to the rim, `phi` degrees further round."""
    r = 12.0
    o = Point(0, 0)

    def rim(degrees: float) -> Point:
        a = math.radians(degrees)
        return Point(r * math.cos(a), r * math.sin(a))

    d1, d2, s = rim(-theta / 2), rim(theta / 2), rim(phi)
    mid, low = rim(phi / 2), rim(phi + (360 - phi) / 2)
    return Piece(
        "P",
        "P",
        (
            straight("leg 1", d1, o),
            straight("leg 2", o, d2),
            straight("near", d2, mid),
            straight("near far", mid, s),
            straight("slit 1", s, o),
            straight("slit 2", o, s),
            straight("rest", s, low),
            straight("rest far", low, d1),
        ),
        marks=(Mark("in near", mix(o, mid, 0.6)), Mark("in rest", mix(o, low, 0.6))),
        grain=(mix(o, low, 0.2), mix(o, low, 0.5)),
    )


DART = Seam("D", "dart", (Run("P", "leg 1"),), (Run("P", "leg 2", True),))


@pytest.mark.parametrize("moving", ["near", "rest"])
@given(st.floats(2, 40), st.floats(60, 250), st.booleans())
def test_closing_a_dart_opens_the_slit_by_its_angle(
    moving: str, theta: float, phi: float, turned: bool
) -> None:
    piece = slit(theta, phi)
    if turned:
        piece = piece.moved(turn(Point(3, 9), 77))
    closed = tape(Sheet().put(piece).sew(DART), "D", moving=moving).piece("P")
    assert closed.area == pytest.approx(piece.area, abs=1e-6)
    assert not closed.has("leg 1")
    assert not closed.has("leg 2")
    for e in closed.edges:
        assert e.length == pytest.approx(piece.edge(e.name).length, abs=1e-6)
    # what the dart took, the slit gives: opening = 2·r·sin(theta/2)
    a, b = closed.edge("slit 1").path.start, closed.edge("slit 2").path.end
    assert distance(a, b) == pytest.approx(
        24 * math.sin(math.radians(theta) / 2), abs=1e-6
    )
    other = "rest" if moving == "near" else "near"
    assert closed.edge(other).path.start == pytest.approx(piece.edge(other).path.start)
    moved = {m.name for m in closed.marks if m not in piece.marks}
    assert moved == {f"in {moving}"}
    assert (closed.grain != piece.grain) == (moving == "rest")


class TestTapeRefusals:
    def test_sides_of_two_lengths(self) -> None:
        a = Piece("A", "A", square(9.0))
        b = Piece("B", "B", square(9.1))
        seam = Seam("X", "side", (Run("A", "b"),), (Run("B", "d", True),))
        with pytest.raises(PaperError, match="of one length"):
            tape(Sheet().put(a, b).sew(seam), "X")

    def test_sides_of_two_shapes(self) -> None:
        a, b = Piece("A", "A", square(9.0)), Piece("B", "B", square(9.0))
        d = b.edge("d").path
        bowed = Path.cubic(d.start, Point(-2, 6), Point(-2, 3), d.end)
        b = b.with_edge(replace(b.edge("d"), path=bowed))
        seam = Seam("X", "side", (Run("A", "b"),), (Run("B", "d", True),))
        with pytest.raises(PaperError, match="not the same line"):
            tape(Sheet().put(a, b).sew(seam), "X", tolerance=1.0)

    def test_a_chain_of_edges(self) -> None:
        a, b = Piece("A", "A", square(9.0)), Piece("B", "B", square(9.0))
        seam = Seam("X", "s", (Run("A", "b"), Run("A", "c")), (Run("B", "d"),))
        with pytest.raises(PaperError, match="one edge to one edge"):
            tape(Sheet().put(a, b).sew(seam), "X")

    def test_a_dart_with_paper_all_round_its_point(self) -> None:
        piece = slit(10)
        whole = piece.with_edges(
            e for e in piece.edges if not e.name.startswith("slit")
        )
        with pytest.raises(PaperError, match="through to the apex"):
            tape(Sheet().put(whole).sew(DART), "D", moving="near")

    def test_an_edge_that_is_not_there(self) -> None:
        with pytest.raises(PaperError, match="no edge sleeve to turn"):
            tape(Sheet().put(slit(10)).sew(DART), "D", moving="sleeve")

    def test_legs_of_two_shapes(self) -> None:
        piece = slit(10)
        leg = piece.edge("leg 2")
        a, b = leg.path.start, leg.path.end
        bent = Path.cubic(a, mix(a, b, 0.3) + Point(0, 2), mix(a, b, 0.7), b)
        piece = piece.with_edge(replace(leg, path=bent))
        with pytest.raises(PaperError, match="not the same line"):
            tape(Sheet().put(piece).sew(DART), "D", moving="near", tolerance=0.5)


def test_a_fold_stays_a_fold_when_its_piece_is_cut() -> None:
    piece = folded(Piece("P", "P", square(9.0)))
    after = divide(
        Sheet().put(piece),
        Path.line(Point(5, 0), Point(5, 9)),
        On("a", 5),
        On("c", 4),
    )
    assert [q.fold is not None for q in after.pieces.values()] == [False, True]
