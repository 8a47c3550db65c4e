"""Collars that stand, and falls on them (transformations 5, truing 1 and 2): plain
mathematics judges the arcs, the trued neck their lengths."""

import math
from itertools import pairwise, product

import pytest

from bodies import P92
from clothwright.blocks.collar import (
    bow_radius,
    bowed,
    overlap_angle,
    shorter_by,
    smaller,
)
from clothwright.body import Body
from clothwright.curves import Path, Point, distance, inset
from clothwright.features.collars.collar_neck import closed_neck
from clothwright.features.collars.collar_stand import stand_edges
from clothwright.features.collars.convertible_collar import ConvertibleCollar
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.collars.stand_collar import StandCollar
from clothwright.findings import Severity
from clothwright.order import OrderError, Workroom, pattern
from clothwright.paper import EdgeKind
from features.collars.test_collars import BODIES, MM, made
from orders import order, sleeved_features


def test_the_round_of_a_stand_leaves_its_lap() -> None:
    """However short the lap and large the round, the upper edge goes past the centre
    line, and the outline is one loop."""
    for rise, lap, behind in product((0.0, 1.5, 6.0), (0.2, 1.2, 4.0), (False, True)):
        foot = bowed(Point(0.0, 0.0), 19.0 if behind else 19.0 + lap, rise)
        if behind:
            foot = Path.line(Point(-lap, 0.0), Point(0.0, 0.0)) + foot
        centre = lap if behind else 19.0
        edges = stand_edges(foot, (3.0, 3.5), centre, 2.5, behind=behind)
        assert {"upper", "upper stand", "neck", "neck stand"} <= {e.name for e in edges}
        assert all(e.path.length > 0.02 for e in edges)
        for a, b in pairwise((*edges, edges[0])):
            assert distance(a.path.end, b.path.start) < 1e-6


def test_a_corner_rounder_than_the_stand_is_high_is_refused() -> None:
    with pytest.raises(
        OrderError, match=r'\(corner of "stand collar"\) 1\.4 cm or less'
    ):
        made(P92, StandCollar(height=1.5, corner=3.0))


# -- the mathematics -----------------------------------------------------------------
def test_the_arc_of_a_stand() -> None:
    """G19: half 19, rise 1.5, height 3: radius 120.08, the top 0.475 shorter."""
    assert bow_radius(19.0, 1.5) == pytest.approx(120.08, abs=0.01)
    foot = bowed(Point(0.0, 0.0), 19.0, 1.5)
    assert foot.length == pytest.approx(19.0, abs=1e-4)
    assert foot.end.y == pytest.approx(-1.5, abs=1e-4)
    top = inset(foot.reversed(), 3.0, 3.0)
    assert foot.length - top.length == pytest.approx(0.475, abs=0.01)


def test_an_edge_that_dips_is_the_mirror_image() -> None:
    up, down = (bowed(Point(0.0, 0.0), 19.0, r) for r in (2.0, -2.0))
    for s in (5.0, 12.0, 19.0):
        a, b = up.at_length(s), down.at_length(s)
        assert (a.x, a.y) == pytest.approx((b.x, -b.y), abs=1e-6)
    with pytest.raises(ValueError, match="rise"):
        bow_radius(10.0, 9.0)


def test_the_overlap_at_the_tip() -> None:
    """A chord: 2.5 at 12 from the turning point."""
    degrees = overlap_angle(2.5, 12.0)
    assert 24.0 * math.sin(math.radians(degrees) / 2) == pytest.approx(2.5)


def test_an_edge_set_in_loses_its_bend_times_the_turn() -> None:
    """A half circle of radius 6 set in by 0.3 all along is 0.3·π shorter."""
    half = bowed(Point(0.0, 0.0), 12.0, 4.0)
    bend = 12.0 / bow_radius(12.0, 4.0)
    outer = half.reversed()  # the paper lies to the right: set in, it bends tighter
    less = outer.length - smaller([outer], 0.3, (False, False))[0].length
    assert less == pytest.approx(0.3 * bend, abs=0.01 * MM)
    assert less == pytest.approx(
        shorter_by([outer], 0.3, (False, False)), abs=0.01 * MM
    )


# -- stand collar --------------------------------------------------------------------
@pytest.mark.parametrize("body", BODIES)
def test_a_stand_is_as_long_as_the_neck(body: Body) -> None:
    """Its foot is the trued half neck; ends square; the top shorter by n·h/ρ."""
    d = made(body, StandCollar(corner=0.0))
    assert not d.failed, d.failures()
    walk = next(w for w in d.report.walks if w.seam.code == "S80")
    assert walk.ease == pytest.approx(0.0, abs=0.1 * MM)
    neck = closed_neck(d.sheet, d.numbers.Lr).length
    assert d.sheet.length("CS", "neck") == pytest.approx(neck, abs=0.1 * MM)
    less = neck * 3.0 / bow_radius(neck, 1.5)
    assert neck - d.sheet.length("CS", "upper") == pytest.approx(less, abs=0.1 * MM)
    stand = d.sheet.piece("CS")
    for edge in stand.edges:
        assert stand.interior_angle(edge.name) == pytest.approx(90.0, abs=0.1)
    assert stand.edge("cf").kind is EdgeKind.FOLD


def test_the_shoulder_is_notched_on_the_stand() -> None:
    d = made(P92, StandCollar())
    (notch,) = d.sheet.seam("S80").notches
    back = closed_neck(d.sheet, d.numbers.Lr).back.length
    assert notch.left == pytest.approx(back, abs=0.1 * MM)
    assert notch.right == pytest.approx(back, abs=0.1 * MM)
    drawn = {p.code: p for p in pattern(d, words=False).drawn.pieces}
    assert any("S80" in k.note for k in drawn["CS"].notches)


def test_a_stand_that_leans_on_the_neck_is_doubted() -> None:
    """The upper edge has NK/2 and 0.8, or is doubted."""
    d = made(P92, StandCollar(rise=6.0, height=7.0))
    found = [f for f in d.findings if f.code == "KS1"]
    upper = d.sheet.length("CS", "upper")
    assert (upper < d.numbers.NK / 2 + 0.8) == bool(found)


# -- shirt and convertible collar ----------------------------------------------------
@pytest.mark.parametrize("body", BODIES)
def test_a_fall_is_sewn_to_its_stand(body: Body) -> None:
    """Its foot is 0 to 0.2 longer than the stand's upper edge, dips by 2, and the fall
    hides the seam of the neck: 1 to 1.5 wider than the stand."""
    d = made(body, ShirtCollar())
    assert not d.failed, d.failures()
    walk = next(w for w in d.report.walks if w.seam.code == "S86")
    assert 0.0 <= walk.ease <= 0.2
    foot = d.sheet.edge("CO", "foot").path
    assert foot.start.y - foot.end.y == pytest.approx(2.0, abs=0.1 * MM)
    behind = d.sheet.length("CO", "end back")
    assert 1.0 <= behind - 3.0 <= 1.5
    assert d.sheet.length("CO", "end") == pytest.approx(7.0, abs=0.1 * MM)
    stand = d.sheet.piece("CS")
    assert stand.edge("cf").length == pytest.approx(2.3, abs=0.1 * MM)


def test_the_more_the_fall_dips_the_longer_its_outer_edge() -> None:
    """The book: it then lies lower."""
    outer = [
        made(P92, ShirtCollar(dip=dip)).sheet.length("CO", "outer")
        for dip in (0.0, 1.5, 3.0, 4.5)
    ]
    assert outer == sorted(outer)
    assert outer[-1] - outer[0] > 1.0


def test_a_fall_that_hides_nothing_is_doubted() -> None:
    d = made(P92, ShirtCollar(fall=3.2))
    assert "KF1" in [f.code for f in d.findings if f.severity is Severity.WARN]
    wide = made(P92, ShirtCollar(fall=3.6))
    assert "KF1" not in [f.code for f in wide.findings]


def test_a_convertible_collar_is_a_bowed_strip() -> None:
    """n by 8, its end 0.75 higher, its roll line marked."""
    d = made(P92, ConvertibleCollar(width=8.0))
    neck = d.sheet.edge("CO", "neck").path
    long = closed_neck(d.sheet, d.numbers.Lr).length
    assert neck.length == pytest.approx(long, abs=0.1 * MM)
    assert neck.end.y - neck.start.y == pytest.approx(0.75, abs=0.1 * MM)
    assert d.sheet.length("CO", "end back") == pytest.approx(8.0, abs=0.1 * MM)
    (roll,) = d.sheet.piece("CO").lines
    assert neck.end.y - roll.path.end.y == pytest.approx(3.2, abs=0.1 * MM)


def test_a_longer_stand_is_drawn_anew() -> None:
    """The workroom sees every number that a stage reads."""
    room = Workroom()
    for high in (3.0, 4.0):
        d = room.draft(order(P92, sleeved_features(StandCollar(height=high))))
        assert d.sheet.length("CS", "cf") == pytest.approx(high, abs=0.1 * MM)
