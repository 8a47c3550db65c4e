"""Pieces of a peplum: panels, ends, notches, and the slashed strip that equals the
circle (first garment 13.2, 13.4)."""

import math
import random
from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from bodies import BRIDA, P92, YSOLDE, bdims_women
from clothwright.blocks.circle import arc
from clothwright.body import Body
from clothwright.curves import Point, degrees_between, distance
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.openings.loops import Loops, Rows
from clothwright.features.openings.open_back import LowOpenBack
from clothwright.features.openings.under_panel import UnderPanel
from clothwright.features.skirts.peplum import Cut, Ends, Peplum
from clothwright.order import OrderError, draft, pattern
from clothwright.paper import Edge, EdgeKind, On, Piece, Sheet, redraw, spread, straight
from clothwright.truing import walk
from features.skirts.test_peplum import MM, found, with_peplum, zipped
from orders import order


# -- pieces ----------------------------------------------------------------------------
@pytest.mark.parametrize("seed", range(65))
def test_panels_meet_the_panel_seams_of_the_bodice(seed: int) -> None:
    """13.5: each waist arc is its bodice edge − ew − by/2 by its share (0.05)."""
    rng, body = random.Random(seed), bdims_women()[4 * seed]
    ends, ease = rng.choice(list(Ends)), rng.choice((0.0, 0.5))
    f = rng.choice((0.25, 0.33, 0.5, 0.75, 1.0))
    peplum = Peplum(cut=Cut.PANELLED, ends=ends, fullness=f)
    seam = WaistSeam(ease=ease, excess_given_back=rng.random() < 0.7)
    features = with_peplum(peplum, seam)
    try:
        made = draft(order(body, features))
    except OrderError:
        return
    n, sheet = made.numbers, made.sheet
    for arc_, edge in (("PFC", "FC"), ("PFS", "FS"), ("PBS", "BS"), ("PBC", "BC")):
        bodice = sheet.length(edge, "waist")
        aim = bodice - (ease + n.by / 2) * bodice / (n.w_F + n.w_PB)
        assert sheet.length(arc_, "waist") == pytest.approx(aim, abs=0.05)
    for code in ("S5", "S6"):
        (walk,) = [w for w in made.report.walks if w.seam.code == code]
        assert walk.holds
        assert walk.seam.notches[0].ticks == 0  # seams meet, nothing is cut there
    joints = [a for a in made.report.angles if "peplum" in a.joint.name]
    assert len(joints) == (10 if ends is Ends.AT_EDGE else 8)
    assert all(abs(a.off) < 0.01 for a in joints)


def test_a_ray_astray_is_found_at_its_joint() -> None:
    """The walk goes edge by edge: a panel seam 2 mm off its mate is seen."""
    sheet = draft(order(P92, with_peplum(Peplum(cut=Cut.PANELLED)))).sheet
    seam = sheet.seam("S5")
    (joint,) = seam.notches
    assert joint.left == pytest.approx(sheet.length("FC", "waist"), abs=1e-9)
    assert joint.right == pytest.approx(sheet.length("PFC", "waist"), abs=1e-9)
    for off in (-0.2, 0.2):
        wrong = replace(seam, notches=(joint._replace(right=joint.right + off),))
        assert not walk(sheet, wrong).holds


@pytest.mark.parametrize("cut", list(Cut))
@pytest.mark.parametrize("length", [12.0, 24.9, 25.1, 39.0, 41.0, 60.0])
def test_long_seams_of_a_peplum_are_notched(length: float, cut: Cut) -> None:
    """Truing 6: one notch for 25 to 40 cm, not at the middle; panels always have one,
    behind a double one."""
    made = draft(order(P92, zipped(Peplum(cut=cut, length=length))))
    panels = {"S19": 1, "S20": 2} if cut is Cut.PANELLED else {}
    for code, ticks in {"S7": 1, **panels}.items():
        notches = made.sheet.seam(code).notches
        stops = [0.0, *(p.left for p in notches), length]
        longest = max(b - a for a, b in zip(stops, stops[1:], strict=False))
        assert longest <= 40.0
        assert bool(notches) == (length >= 25 or code != "S7")
        for p in notches:
            assert p.left == pytest.approx(p.right, abs=MM / 10)
            assert p.ticks == ticks
        mirrored = [length - s for s in stops]
        assert (
            not notches
            or max(min(abs(a - b) for b in mirrored[1:-1]) for a in stops[1:-1]) > 1.2
        )
    assert not found(made, "notch")


@pytest.mark.parametrize("cut", list(Cut))
@pytest.mark.parametrize("body", [P92, YSOLDE, BRIDA])
def test_to_the_centre_back_with_an_underlap(body: Body, cut: Cut) -> None:
    """13.4: w½ + e2 in place of w½; an underlap 2.5 beyond the centre back; 2 hooks."""
    made = draft(order(body, with_peplum(Peplum(cut=cut, ends=Ends.TO_CENTRE))))
    n, sheet = made.numbers, made.sheet
    assert not made.failed, made.failures()
    p = sheet.piece("PBC" if cut is Cut.PANELLED else "PB")
    assert p.edge("open").kind is EdgeKind.FINISHED
    assert p.edge("waist lap").kind is EdgeKind.FINISHED
    centre = p.edge("waist on").path.start
    edge = p.edge("open").path
    assert abs(edge.start.x - edge.end.x) < 1e-9  # plumb, as the centre back
    assert centre.x - edge.start.x == pytest.approx(2.5, abs=1e-9)
    (line,) = p.lines
    assert distance(line.path.start, centre) < 1e-9
    if cut is Cut.GATHERED:
        assert p.edge("waist on").length == pytest.approx(n.e2 * n.g, abs=1e-9)
    else:
        assert n.wc == pytest.approx(2 * (n.w_half + n.e2) - n.by, abs=1e-9)
        assert p.edge("waist on").length == pytest.approx(
            n.e2 * n.wc / (2 * (n.w_half + n.e2)), abs=1e-4
        )
        # folded under on the centre back, the underlap lies on the arc itself
        for i in range(9):
            q = p.edge("waist lap").path
            at = q.at_length(q.length * i / 8)
            assert distance(Point(-at.x, at.y), Point(0, 0)) == pytest.approx(
                n.r, abs=1e-4
            )
    hooks = [m.at for m in p.marks if m.name.startswith("hook")]
    assert len(hooks) == 2
    assert all(p.contains(h) for h in hooks)
    assert n.tl == 0.0
    notes = " ".join(pattern(made, words=False).drawn.notes)
    assert "Two hooks and eyes" in notes


@pytest.mark.parametrize("cut", list(Cut))
@pytest.mark.parametrize("set_in", [0.0, 2.5])
def test_an_open_peplum_is_hooked_at_the_waist(set_in: float, cut: Cut) -> None:
    """10.7; with no set-in at the waist the edges meet, each finished by itself."""
    features = with_peplum(LowOpenBack(waist=set_in), Peplum(cut=cut))
    made = draft(order(P92, features))
    assert not made.failed, made.failures()
    p = made.sheet.piece("PBC" if cut is Cut.PANELLED else "PB")
    assert p.edge("open").kind is EdgeKind.FINISHED
    assert [m.name for m in p.marks] == ["hook 1"]
    assert not any(s.code == "S21" for s in made.sheet.seams)
    assert any("hook and eye" in t for t in pattern(made, words=False).drawn.notes)


def test_a_peplum_to_the_centre_back_needs_the_panel() -> None:
    features = tuple(
        f
        for f in with_peplum(Peplum(ends=Ends.TO_CENTRE), Loops(rows=Rows.LACING))
        if not isinstance(f, UnderPanel)
    )
    with pytest.raises(OrderError, match="panel behind"):
        draft(order(P92, features))


# -- slash and spread (13.2) -----------------------------------------------------------
def slashed(width: float, length: float, m: int, phi: float) -> Piece:
    """A strip with m slashes hinged at the waist, opened to an angle (degrees), by the
    kernel's own words: spread, then redraw for the waist and the hem."""
    t = 2 * length * math.sin(math.radians(phi) / (2 * m))
    a, b = Point(0, 0), Point(width, 0)
    c, d = Point(width, length), Point(0, length)
    sheet = Sheet().put(
        Piece(
            "S",
            "Strip",
            (
                straight("waist", a, b),
                straight("right", b, c),
                straight("hem", c, d),
                straight("left", d, a),
            ),
        )
    )
    for i in range(m):
        at = width * (i + 0.5) / m
        hem = sheet.length("S", "hem")
        sheet = spread(
            sheet,
            "S",
            On("waist", at),
            On("hem", hem - at - i * t),
            at_start=0.0,
            at_end=t,
            moving="right",
        )
    return sheet.piece("S")


HALVES = [(share, f) for f in (0.25, 0.33, 0.5) for share in (0.45, 0.5, 0.55)]


@pytest.mark.parametrize(("share", "f"), HALVES)
@pytest.mark.parametrize("m", [6, 8, 12])
def test_slash_and_spread_equals_the_circle(share: float, f: float, m: int) -> None:
    """Within 0.02 at m ≥ 6: angle, waist and sides exact; the hem, which is a polygon
    until it is drawn as an arc, is short by φ(r + L) − w − 2mL·sin(φ/2m)."""
    width, length = 35.0 * share, 15.0
    phi = 180 * f * share
    piece = slashed(width, length, m, phi)
    right, left = piece.edge("right").path, piece.edge("left").path
    turned = degrees_between(right.start_direction, left.reversed().start_direction)
    assert turned == pytest.approx(phi, abs=1e-6)
    assert piece.edge("waist").length == pytest.approx(width, abs=1e-9)
    assert right.length == pytest.approx(length, abs=1e-9)
    assert left.length == pytest.approx(length, abs=1e-9)
    radius = width / math.radians(phi)
    hem = math.radians(phi) * (radius + length)
    assert piece.edge("hem").length == pytest.approx(hem, abs=0.02)
    short = math.radians(phi) * length - 2 * m * length * math.sin(
        math.radians(phi) / (2 * m)
    )
    assert hem - piece.edge("hem").length == pytest.approx(short, abs=1e-9)


@pytest.mark.parametrize(("share", "f"), HALVES)
def test_the_slashed_strip_redrawn_is_the_sector(share: float, f: float) -> None:
    """13.2: waist and hem redrawn as arcs about the point where the sides meet. The
    hinges lie on a circle of ρ = (w/2m)/tan(φ/2m), short of r = w/φ by
    r·(φ/2m)²/3, under 0.5 mm at m 6; the arc of ρ is that much shorter than w."""
    width, length, m = 35.0 * share, 15.0, 6
    phi = 180 * f * share
    piece = slashed(width, length, m, phi)
    half = math.radians(phi) / (2 * m)
    rho = width / (2 * m) / math.tan(half)
    radius = width / math.radians(phi)
    assert 0 < radius - rho < 0.05
    assert radius - rho == pytest.approx(radius * half**2 / 3, rel=0.01)
    left = piece.edge("left").path  # hem up to the waist
    o = left.end + left.end_direction * rho
    right = piece.edge("right").path
    assert distance(o, right.start) == pytest.approx(rho, abs=1e-6)
    start = math.degrees(math.atan2(*reversed(left.end - o)))
    waist = arc(o, rho, start, start - phi)
    hem = arc(o, rho + length, start - phi, start)
    sheet = redraw(Sheet().put(piece), "S", ["waist"], [Edge("waist", waist)])
    sheet = redraw(sheet, "S", ["hem"], [Edge("hem", hem)])
    done = sheet.piece("S")
    assert done.edge("waist").length == pytest.approx(width, abs=0.05)
    circle = math.radians(phi) * ((rho + length) ** 2 - rho**2) / 2
    assert done.area == pytest.approx(circle, abs=1e-3)


@given(
    st.floats(40, 110),
    st.floats(0.2, 0.5),
    st.floats(8, 25),
    st.floats(0.2, 0.6),
    st.integers(6, 14),
)
def test_slashed_strips_of_any_size(
    waist: float, f: float, length: float, share: float, m: int
) -> None:
    width, phi = waist / 2 * share, 180 * f * share
    assume(width / m > 0.5)
    piece = slashed(width, length, m, phi)
    hem = width + math.radians(phi) * length
    bound = math.radians(phi) * length * (math.radians(phi) / (2 * m)) ** 2 / 6
    assert 0 <= hem - piece.edge("hem").length + 1e-9 <= bound + 2e-9
    assert bound < 0.02 or length > 15
