"""Move: a hand neither stretches paper nor loses where a seam begins. Exact maths."""

import pytest
from hypothesis import given

from clothwright.curves import Motion, Point, mirror_in, turn
from clothwright.paper import Piece, move
from shapes import motions, pieces, sewn, walked, worst_gap


@given(pieces(), motions)
def test_moving_keeps_lengths_angles_and_area(piece: Piece, m: Motion) -> None:
    moved = move(sewn(piece), "P", m).piece("P")
    assert moved.area == pytest.approx(piece.area, abs=1e-6)
    for e in piece.edges:
        assert moved.edge(e.name).length == pytest.approx(e.length, abs=1e-6)
    angles = sorted(piece.interior_angle(e.name) for e in piece.edges)
    after = sorted(moved.interior_angle(e.name) for e in moved.edges)
    assert after == pytest.approx(angles, abs=1e-4)


@given(pieces(), motions)
def test_seams_are_walked_from_the_same_end(piece: Piece, m: Motion) -> None:
    before = sewn(piece)
    after = move(before, "P", m)
    for code in ("S1", "S2"):
        expected = [m(p) for p in walked(before, code)]
        assert worst_gap(walked(after, code), expected) < 1e-5
        assert after.seam(code).right == before.seam(code).right


@given(pieces())
def test_back_where_it_lay(piece: Piece) -> None:
    sheet = sewn(piece)
    for m in (turn(Point(3, 4), 201), mirror_in(Point(0, 1), Point(5, 2))):
        again = move(move(sheet, "P", m), "P", m.inverse())
        assert again.seams == sheet.seams
        assert [e.name for e in again.piece("P").edges] == [e.name for e in piece.edges]
        assert again.piece("P").area == pytest.approx(piece.area, abs=1e-6)
