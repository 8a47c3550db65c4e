"""Cut lines: corners by exact reflection, and outlines of every shape and width.

Widths and corners of first garment 18 and truing 8 (common practice, no source);
shapely is the referee.
"""

import math
import random
from dataclasses import replace

import pytest
from hypothesis import assume, event, given
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import LineString, Polygon
from shapely.geometry import Point as Place

from bodies import BODIES
from clothwright.curves import (
    Cubic,
    Line,
    Point,
    Vector,
    bearing,
    distance,
    meet_lines,
    mix,
    polyline,
    unit,
)
from clothwright.curves import Path as PaperPath
from clothwright.features.roles import Role
from clothwright.features.said import Said
from clothwright.finishing.allowances import Allowances
from clothwright.finishing.corners import Side
from clothwright.finishing.cutline import WITHIN, CutLine, cut_line
from clothwright.finishing.finish import with_darts_capped
from clothwright.order import OrderError, draft
from clothwright.paper import Edge, EdgeKind, Piece, straight
from clothwright.units import Unit
from combinations import combination
from orders import order
from referee import FINE, MM, faults

WIDTHS = dict.fromkeys(Role, 1.5) | {Role.FOLD: 0.0, Role.DART: 0.0}


def _cut(piece: Piece, **own: float) -> CutLine:
    widths = WIDTHS | {Role[name.upper()]: w for name, w in own.items()}
    return cut_line(piece, Allowances(Unit.CM, Said(), widths))


def _wedge(angle: float, first: str, second: str, bow: float = 0.0) -> Piece:
    """A piece with a corner of `angle` degrees at the origin: `first` runs up to it
    along the left of it, `second` leaves it to the right and down, bowed or straight.
    """
    o, a = Point(0, 0), Point(-20, 0)
    b = bearing(180 - angle) * 20.0
    side = Vector(b[1], -b[0]) * bow
    leaves = PaperPath.cubic(o, mix(o, b, 1 / 3) + side, mix(o, b, 2 / 3) + side, b)
    c = (b + a) * 0.9
    return Piece(
        "F",
        "Wedge",
        (
            straight(first, a, o),
            Edge(second, leaves if bow else PaperPath.line(o, b)),
            straight("free", b, c),
            straight("open", c, a),
        ),
    )


def _area(line: CutLine) -> Polygon:
    return Polygon(line.outline.flatten(FINE))


def _folded_back(line: CutLine, width: float) -> float:
    """cm² by which the allowance above the line y = 0, folded back along it, does not
    lie on the paper beside the corner at the origin."""
    near = Polygon([(-6, 0), (8, 0), (8, width), (-6, width)])
    above = affinity.scale(_area(line), 1, -1, origin=(0, 0)).intersection(near)
    return above.symmetric_difference(_area(line).intersection(near)).area


angles = st.floats(61, 119)
widths = st.floats(0.6, 2.5)


@given(angles, widths, widths, st.floats(-0.12, 0.12))
def test_pressed_open_an_allowance_lies_under_the_crossing_edge(
    angle: float, seam: float, crossing: float, bow: float
) -> None:
    """Exact: the side's allowance, mirrored in its stitch line, is the paper of the
    armhole's side of the corner, its cut line straight or curved."""
    piece = _wedge(angle, "side", "armhole", bow)
    assume(60 < piece.interior_angle("side") < 120)
    line = _cut(piece, side=seam, edge=crossing)
    assert _folded_back(line, seam) < 0.005


@given(st.floats(65, 119), widths, widths, st.floats(-0.12, 0.12))
def test_turned_up_a_hem_lies_on_the_seams_beside_it(
    angle: float, hem: float, seam: float, bow: float
) -> None:
    """Exact: the hem's allowance, mirrored in the hem's line, is the piece with its
    side's allowance; a tapered piece gets a hem that flares."""
    piece = _wedge(angle, "hem", "side", bow)
    assume(60 < piece.interior_angle("hem") < 120)
    line = _cut(piece, hem=hem, side=seam)
    assert _folded_back(line, hem) < 0.005


@given(st.one_of(st.floats(35, 59), st.floats(121, 150)), widths)
def test_an_oblique_panel_end_is_square(angle: float, width: float) -> None:
    """Exact: the allowance ends at 90° to its stitch line, through the point where the
    other cut line meets that line produced."""
    line = _cut(_wedge(angle, "panel", "armhole"), panel=width, edge=1.0)
    foot = Point(1.0 / math.sin(math.radians(angle)), 0.0)
    ends = [p for s in line.outline.segments for p in (s.start, s.end)]
    assert min(distance(p, foot) for p in ends) < 0.01 * MM
    assert min(distance(p, foot + Vector(0, -width)) for p in ends) < 0.01 * MM


@given(st.floats(48, 175), widths)
def test_edges_of_one_rank_run_on_until_they_meet(angle: float, width: float) -> None:
    """Exact: the corner lies width/sin(angle/2) from the net corner."""
    line = _cut(_wedge(angle, "neck", "slant"), edge=width)
    reach = width / math.sin(math.radians(angle / 2))
    axis = unit(bearing(0) * 1.0 - bearing(180 - angle))
    far = max(
        (p[0] * axis[0] + p[1] * axis[1], p)
        for p in (s.end for s in line.outline.segments)
    )[1]
    assert far == pytest.approx(axis * reach, abs=0.01 * MM)


@given(st.floats(15, 46), widths)
def test_a_sharp_corner_is_cut_blunt(angle: float, width: float) -> None:
    """Exact: beyond 2.5 allowances, square to its middle, one allowance away."""
    line = _cut(_wedge(angle, "neck", "slant"), edge=width)
    axis = unit(bearing(0) * 1.0 - bearing(180 - angle))
    reach = max(p[0] * axis[0] + p[1] * axis[1] for p in line.outline.flatten(FINE))
    assert reach == pytest.approx(width, abs=0.01 * MM)
    assert LineString(line.outline.flatten(FINE)).distance(Place(0, 0)) == (
        pytest.approx(width, abs=0.01 * MM)
    )


@given(st.floats(185, 300), widths, widths)
def test_lines_of_an_inner_corner_are_cut_where_they_cross(
    angle: float, first: float, second: float
) -> None:
    """Exact for straight lines of other widths: truing 8, the last rule."""
    o, turn = Point(0, 0), 180 - angle
    b = bearing(turn) * 30.0
    far = Point(0, 40)
    piece = Piece(
        "F",
        "Hollow",
        (
            straight("waist", Point(-30, 0), o),
            straight("slant", o, b),
            straight("free", b, b + far),
            straight("open", b + far, Point(-30, 40)),
            straight("cb", Point(-30, 40), Point(-30, 0)),
        ),
    )
    assume(Polygon(piece.outline.flatten(FINE)).is_valid)
    line = _cut(piece, waist=first, edge=second)
    p, q = Point(0, -first), Vector(b[1], -b[0]) * (second / 30)
    met = meet_lines(p, bearing(0), q, bearing(turn))
    if met.x < 0 and distance(met, b) < distance(q, b):
        assert min(distance(s.end, met) for s in line.outline.segments) < 0.01 * MM
    assert not list(faults(piece, line))


SEWN: tuple[Role, ...] = tuple(r for r in Role if r not in (Role.FOLD, Role.DART))
NAMES = ("neck", "armhole", "side", "shoulder", "waist", "panel", "hem", "free", "cb")


@st.composite
def shapes(draw: st.DrawFn) -> Piece:
    """Pieces of every shape: sharp corners, inner corners, tight hollows, bent edges,
    on the fold or not."""
    n = draw(st.integers(3, 8))
    size = draw(st.floats(6, 30))
    corners = [
        bearing((i + draw(st.floats(-0.35, 0.35))) * 360 / n)
        * (size * draw(st.sampled_from((1.0, 1.0, 0.7, 0.4))))
        for i in range(n)
    ]
    fold = draw(st.booleans())
    edges = []
    for i, name in enumerate(draw(st.permutations(NAMES))[:n]):
        p, q = corners[i], corners[(i + 1) % n]
        assume(distance(p, q) > 0.8)
        if fold and i == n - 1:
            edges.append(straight("cf", p, q, EdgeKind.FOLD))
        else:
            edges.append(Edge(name, draw(ways(p, q))))
    piece = Piece("F", "Any shape", tuple(edges))
    assume(Polygon(piece.outline.flatten(FINE)).is_valid and piece.area > 10)
    assume(min(piece.interior_angle(e.name) for e in edges) > 12)
    if fold:
        _, last = edges[-2:]
        assume(piece.interior_angle(edges[-2].name) < 150)
        assume(piece.interior_angle(last.name) < 150)
        u, o = last.path.start_direction, last.path.start
        beside = (u[0] * (y - o.y) - u[1] * (x - o.x) for x, y in _rough(piece))
        assume(min(beside) > -0.01)
    return piece


def _rough(piece: Piece) -> list[Point]:
    return piece.outline.flatten(0.01)


@st.composite
def ways(draw: st.DrawFn, p: Point, q: Point) -> PaperPath:
    """From p to q: straight, gently curved, hollowed tightly, or bent."""
    out = Vector(q[1] - p[1], -(q[0] - p[0]))
    kind = draw(st.sampled_from(("straight", "gentle", "hollow", "bent")))
    if kind == "straight":
        return PaperPath((Line(p, q),))
    if kind == "bent":
        at = mix(p, q, draw(st.floats(0.3, 0.7)))
        return polyline((p, at + out * draw(st.floats(-0.2, 0.15)), q))
    if kind == "gentle":
        h, k = draw(st.floats(-0.2, 0.2)), draw(st.floats(-0.2, 0.2))
        a, b = mix(p, q, 1 / 3) + out * h, mix(p, q, 2 / 3) + out * k
    else:
        d = draw(st.floats(0.2, 0.9))
        a = mix(p, q, draw(st.floats(-0.1, 0.6))) - out * d
        b = mix(p, q, draw(st.floats(0.4, 1.1))) - out * d
    return PaperPath((Cubic(p, a, b, q),))


@given(
    shapes(),
    st.dictionaries(
        st.sampled_from(SEWN),
        st.sampled_from((0.0, 0.3, 0.6, 1.0, 1.5, 2.0, 2.5)),
    ),
    st.sampled_from((1.5, 3.0, 5.0)),
)
def test_any_shape_with_any_allowance(
    piece: Piece, own: dict[Role, float], hem: float
) -> None:
    """No cut line crosses itself or leaves an edge less than its allowance, unless a
    finding says so; with allowances of up to 2.5 cm and hems of up to 5."""
    line = cut_line(piece, Allowances(Unit.CM, Said(), {**own, Role.HEM: hem}))
    told = "crosses" if line.crossing else "narrow" if line.narrow else "cut"
    event(told)
    assert not list(faults(piece, line))


TOILE = {r: 5.0 if r is Role.HEM else 2.5 for r in SEWN}
"""2.5 cm all round and 5 at the hem: truing 8, toile."""


@pytest.mark.parametrize("seed", range(24))
def test_random_orders_are_cut_cleanly(seed: int) -> None:
    """Every piece of random orders, with the workroom's allowances and a toile's."""
    rng = random.Random(seed)
    try:
        made = draft(order(rng.choice(BODIES), combination(rng)))
    except OrderError:
        return
    for net in made.sheet.pieces.values():
        piece, _ = with_darts_capped(net)
        for own in ({}, TOILE):
            line = cut_line(piece, Allowances(Unit.CM, made.order.said, own))
            assert line.crossing is None, piece.code
            # a toile's allowances may be too wide for the cap of a dart, which is told
            assert own or not line.narrow, (piece.code, line.narrow)
            assert not list(faults(piece, line)), (piece.code, bool(own))


def test_a_hollow_at_the_joint_of_two_curves_is_no_loop() -> None:
    """The foot of a sweetheart's arc, which bends tighter than its allowance of 1 cm:
    the parallel of the first ends 0.1 mm beyond the beginning of the second's."""
    p, foot, c = Point(40.0767, -0.2044), Point(43.0399, 18.6743), Point(46.25, 15.2443)
    side = Cubic(p, Point(38.3792, 9.4647), Point(40.6941, 18.6743), foot)
    arc = Cubic(foot, Point(44.3881, 18.6743), Point(45.5277, 16.7878), c)
    low, far = Point(46.25, 60.0), Point(20.0, 60.0)
    tip = Point(20.0, -0.204)
    edges = (
        straight("shoulder", tip, p),
        Edge("neck", PaperPath((side, arc))),
        straight("cf", c, low),
        straight("hem", low, far),
        straight("side", far, tip),
    )
    line = _cut(Piece("F", "Front", edges), edge=1.0)
    assert line.crossing is None
    assert line.narrow == ()
    gap = min(line.outline.nearest(arc.at(t))[1] for t in (0.0, 0.25, 0.5))
    assert gap == pytest.approx(line.widths["neck"], abs=WITHIN)


def test_a_jog_in_a_hollow_may_have_more() -> None:
    """The mouth of a dart 0.57 cm wide at 45 degrees to an armhole: the allowance above
    it runs on to the one below, which leaves it 1.5 cm and less than its length more.
    """
    loop = [Point(0, 0), Point(10, 0), Point(10, 4), Point(9.6, 4.4), Point(9.6, 10)]
    loop.append(Point(0, 10))
    names = ("neck", "armhole", "cap armhole", "armhole low", "hem", "cf")
    ends = zip(names, loop, [*loop[1:], loop[0]], strict=True)
    line = _cut(Piece("F", "Front", tuple(straight(n, a, b) for n, a, b in ends)))
    assert line.narrow == ()
    middle = Point(9.8, 4.2)
    gap = line.outline.nearest(middle)[1]
    assert 1.5 - MM / 10 <= gap <= 1.5 + 0.57


def test_a_cap_that_steps_may_have_more() -> None:
    """The cap of a dart 8 mm wide on a neck that slants: a step across the seam and one
    along it. Square to the step lies no seam; the seam above runs on to the one below,
    and leaves the cap its allowance and less than its length more."""
    up, step = bearing(-75.0), bearing(40.7) * 0.3946
    a = Point(0.0, 0.0)
    b = a + step + bearing(-69.6) * 0.3946
    below, above = a - up * 10.0, b + bearing(-69.6) * 10.0
    corner = Point(above.x + 20.0, above.y)
    cap = polyline([a, a + step, b])
    piece = Piece(
        "B",
        "Back",
        (
            straight("neck", below, a),
            Edge("cap neck", cap),
            straight("neck side", b, above),
            straight("shoulder", above, corner),
            straight("side", corner, Point(corner.x, below.y)),
            straight("waist", Point(corner.x, below.y), below),
        ),
    )
    line = _cut(piece)
    assert line.narrow == ()
    for p in (cap.at_length(s) for s in (0.1, 0.4, 0.7)):
        assert 1.5 - MM <= line.outline.nearest(p)[1] <= 1.5 + cap.length


def test_a_short_tight_arc_is_found_between_half_centimetres() -> None:
    """Two lines that turn by 45.66 degrees over an arc of radius 1, as a rounded
    point. Its parallels of 1.27 meet in a corner: square to the middle of the arc the
    allowance is 0.27/cos(turn/2) − 0.27 wider than it says, 0.2 mm, but at its quarters
    0.27/cos(turn·3/4) − 0.27, 0.6 mm (exact)."""
    half = math.radians(45.66) / 2
    centre, tip = Point(0.0, 5.0), Point(0.0, 5.0 + 1.0 / math.cos(half))
    a, b = (
        Point(centre.x + s * math.sin(half), centre.y + math.cos(half))
        for s in (-1.0, 1.0)
    )
    k = 4 / 3 * math.tan(half / 2)
    way = [Vector(math.cos(half), s * math.sin(half)) for s in (1.0, -1.0)]
    arc = Cubic(a, a + way[0] * k, b - way[1] * k, b)
    left, right = a - way[0] * 12.46, b + way[1] * 12.46
    hollow = PaperPath((Line(left, a), arc, Line(b, right)))
    assert distance(meet_lines(a, way[0], b, way[1]), tip) < MM
    below = [Point(right.x, 30.0), Point(left.x, 30.0)]
    piece = Piece(
        "F",
        "Hollow",
        (
            Edge("neck", hollow),
            straight("cf", right, below[0]),
            straight("hem", below[0], below[1]),
            straight("side", below[1], left),
        ),
    )
    line = cut_line(piece, Allowances(Unit.CM, Said(), dict.fromkeys(Role, 1.27)))
    assert "neck" in line.wide and not line.narrow
    assert not list(faults(piece, line))


def test_an_edge_that_doubles_back_is_not_mitred() -> None:
    """The parallels of a spike's two sides never meet, and are joined straight; the cut
    line stays one outline."""
    a, b, tip, c = Point(0, 0), Point(10, 0), Point(10, -6), Point(0, 12)
    spike = polyline([a, b, tip, b, Point(10, 12)])
    piece = Piece(
        "F",
        "Spike",
        (
            Edge("neck", spike),
            straight("hem", Point(10, 12), c),
            straight("side", c, a),
        ),
    )
    line = _cut(piece)
    assert _area(line).is_valid
    assert line.crossing is None


def test_an_edge_cut_off_to_next_to_nothing_ends_as_what_is_left_of_it() -> None:
    """A ray through the start of a curve leaves a part of no length, which has no
    direction: the cut line ends as the part before it, or as the stitch line."""
    a, b = Point(0.0, 0.0), Point(4.0, 0.0)
    line, nothing = Line(a, b), Cubic(b, b, b, b)
    side = Side((line, nothing), Vector(0.0, 1.0), 1.0, Role.PANEL)
    assert side.way == line.end_direction
    assert replace(side, line=(nothing,)).way == Vector(0.0, 1.0)
