"""Joints: angles of paper side by side. Exact values by plane geometry; bands from
truing 1 (common practice)."""

import math

import pytest

from clothwright.curves import Path, Point, bearing, mirror_in, turn
from clothwright.findings import Severity
from clothwright.paper import Edge, PaperError, Piece, Sheet, straight
from clothwright.truing import Corner, End, Joint, corner_angle, measure
from clothwright.truing.tolerances import BLENDED, NECK_SUM

DEGREE = 1e-9


def wedge(code: str, degrees: float) -> Piece:
    """A three-cornered piece whose paper at the end of edge `a` has this angle."""
    p, q = Point(0, 0), Point(10, 0)
    r = q + bearing(180 - degrees) * 6
    return Piece(
        code, code, (straight("a", p, q), straight("b", q, r), straight("c", r, p))
    )


@pytest.mark.parametrize("degrees", [20.0, 60.0, 90.0, 137.5, 179.0])
def test_the_paper_at_a_corner(degrees: float) -> None:
    piece = wedge("W", degrees)
    assert corner_angle(piece, "a", "b") == pytest.approx(degrees, abs=DEGREE)
    assert corner_angle(piece, "b", "a") == pytest.approx(degrees, abs=DEGREE)
    sheet = Sheet().put(piece)
    assert Corner("W", "a").angle(sheet) == pytest.approx(degrees)
    assert Corner("W", "b", End.START).angle(sheet) == pytest.approx(degrees)
    angles = [piece.interior_angle(e.name) for e in piece.edges]
    assert sum(angles) == pytest.approx(180)


def test_a_hollow_corner_is_above_180() -> None:
    pts = [Point(0, 0), Point(10, 0), Point(5, 3), Point(10, 10), Point(0, 10)]
    names = "abcde"
    piece = Piece(
        "H",
        "H",
        tuple(straight(n, pts[i], pts[(i + 1) % 5]) for i, n in enumerate(names)),
    )
    whole = sum(piece.interior_angle(n) for n in names)
    assert corner_angle(piece, "b", "c") > 180
    assert whole == pytest.approx(3 * 180)


def test_angles_stay_when_paper_is_moved_or_turned_over() -> None:
    piece = wedge("W", 73.0)
    for m in (turn(Point(3, 4), 201), mirror_in(Point(0, 1), Point(5, 2))):
        assert corner_angle(piece.moved(m), "a", "b") == pytest.approx(73.0)


def test_curves_meet_at_the_angle_of_their_ends() -> None:
    """A quarter circle leaves its radius square."""
    k = 10 * 0.5522847498
    arc = Path.cubic(Point(0, -10), Point(k, -10), Point(10, -k), Point(10, 0))
    o = Point(0, 0)
    piece = Piece(
        "Q",
        "Q",
        (Edge("arc", arc), straight("r", arc.end, o), straight("s", o, arc.start)),
    )
    assert corner_angle(piece, "arc", "r") == pytest.approx(90)
    assert corner_angle(piece, "s", "arc") == pytest.approx(90)


def test_edges_that_do_not_touch() -> None:
    pts = [Point(0, 0), Point(9, 0), Point(9, 9), Point(0, 9)]
    piece = Piece(
        "S", "S", tuple(straight("abcd"[i], pts[i], pts[(i + 1) % 4]) for i in range(4))
    )
    with pytest.raises(PaperError, match="a and c do not meet"):
        corner_angle(piece, "a", "c")


@pytest.mark.parametrize(
    ("a", "b", "severity"),
    [
        (88.0, 92.0, None),
        (90.0, 93.0, None),
        (90.0, 94.0, Severity.WARN),
        (90.0, 98.5, Severity.REFUSE),
        (80.0, 91.0, Severity.REFUSE),
    ],
)
def test_the_sum_across_a_seam(a: float, b: float, severity: Severity | None) -> None:
    sheet = Sheet().put(wedge("A", a), wedge("B", b))
    joint = Joint("waist at the side", (Corner("A", "a"), Corner("B", "a")))
    m = measure(sheet, joint)
    assert m.sum == pytest.approx(a + b)
    assert m.off == pytest.approx(a + b - 180)
    assert [f.severity for f in m.findings] == ([severity] if severity else [])


def test_each_half_has_its_own_target() -> None:
    sheet = Sheet().put(wedge("A", 84), wedge("B", 96))
    corners = (Corner("A", "a"), Corner("B", "a"))
    joint = Joint("neck at the shoulder", corners, band=NECK_SUM, each=(90, 90))
    found = measure(sheet, joint).findings
    assert [f.severity for f in found] == [Severity.WARN, Severity.WARN]
    tilted = Joint("neck at the shoulder", corners, band=NECK_SUM, each=(84, 96))
    assert measure(sheet, tilted).findings == ()


def test_a_fold_is_square() -> None:
    sheet = Sheet().put(wedge("A", 91.5))
    (f,) = measure(sheet, Joint.fold("centre front", Corner("A", "a"))).findings
    assert f.severity is Severity.WARN
    assert f.sentence == (
        "Centre front: the corner is 91.5°; 90°, give or take 1°, is right."
    )


def test_a_break_left_after_blending() -> None:
    sheet = Sheet().put(wedge("A", 90), wedge("B", 91.5))
    joint = Joint("armhole", (Corner("A", "a"), Corner("B", "a")), band=BLENDED)
    (f,) = measure(sheet, joint).findings
    assert f.severity is Severity.WARN
    assert "add paper" in f.to_do


def test_a_joint_needs_corners_and_matching_targets() -> None:
    with pytest.raises(ValueError, match="at least one corner"):
        Joint("nothing", ())
    with pytest.raises(ValueError, match="one target for each"):
        Joint("odd", (Corner("A", "a"),), each=(90.0, 90.0))


def test_angles_do_not_depend_on_size() -> None:
    assert math.isclose(corner_angle(wedge("A", 33.3), "a", "b"), 33.3)
