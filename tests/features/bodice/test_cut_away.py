"""Cut-away armholes, extended shoulders, low backs and the strap across them
(transformations 2, 3)."""

import math
from itertools import product

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.blocks.bodice_curves import inward_back
from clothwright.body import Body, RuleSet
from clothwright.curves import Cubic, Point, Vector, degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.armhole import SleevelessArmhole
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.extended_shoulder import ExtendedShoulder
from clothwright.features.bodice.front_princess import FrontArmholePrincess
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.back_strap import BackStrap
from clothwright.features.necks.neck_shapes import BackShape, FrontShape, back_curve
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.making import making_order
from clothwright.order import OrderError, draft
from clothwright.truing.outline import wrong_way
from orders import closed_back, cut_faults, order, swapped

MM = 0.1
DEGREE = 1.0
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA)


def low(
    strap: BackStrap, depth: float | None = None, shape: BackShape = BackShape.U
) -> tuple[Feature, ...]:
    neck = BackNeckline(shape=shape, depth=depth)
    features = closed_back(lines="darts", front=FrontShape.SCOOP)
    return (*swapped(features, neck), strap)


def capped(
    more: ExtendedShoulder,
    lining: Mode | None = None,
    way: BackShoulder = BackShoulder.BY_STYLE,
) -> tuple[Feature, ...]:
    features = closed_back(way, lines="darts", lining=lining)
    return swapped(features, more, place_of="sleeveless armhole")


# -- the strap across the back ---------------------------------------------------------
@pytest.mark.parametrize(("body", "depth"), list(product(BODIES, (None, 16.0, 20.0))))
def test_the_strap_reaches_from_edge_to_edge(body: Body, depth: float | None) -> None:
    """As long as the back is open there, and 2.5 under the edge (7: an underlap);
    at the blades, but not below the neck."""
    made = draft(order(body, low(BackStrap(), depth)))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    n, sheet, at = made.numbers, made.sheet, made.sheet.points["Ks"]
    assert n.y_strap == pytest.approx(min(n.yB / 2, 0.55 * (n.Db - n.nr)))
    assert at.y == pytest.approx(n.y_strap)
    assert sheet.edge("B", "neck").path.nearest(at)[1] < 1e-6
    assert sheet.length("BK", "band upper") == pytest.approx(2 * at.x + 2.5)
    titles = [op.title for op in making_order(made).operations]
    strap = next(i for i, t in enumerate(titles) if t.startswith("Make the back strap"))
    assert strap < titles.index("Face the neck")


def test_the_strap_keeps_a_wide_low_neck_on() -> None:
    """A neck that is wide and low on both sides is doubted, unless it is held (2, rule
    5)."""
    neck = Neckline(shape=FrontShape.SCOOP, width=5.5)
    held = swapped(low(BackStrap()), neck)
    loose = tuple(f for f in held if f.kind != "back strap")
    says = "slides off the shoulder"
    for features, doubted in ((held, False), (loose, True)):
        made = draft(order(BRIDA, features))
        assert any(says in str(f) for f in made.findings) is doubted


def test_a_strap_needs_edges() -> None:
    with pytest.raises(OrderError, match="finds no edges"):
        draft(order(BRIDA, (*closed_back(back=BackShape.BOAT), BackStrap(level=20.0))))


@pytest.mark.parametrize(("h", "w"), [(20.0, 7.0), (24.0, 8.0), (28.0, 6.5)])
def test_a_deep_u_bends_one_way_at_a_time(h: float, w: float) -> None:
    """Square to the shoulder, upright at its side, square to the centre; no part turns
    back (C16)."""
    start = inward_back(22.0)
    path = back_curve(BackShape.U, Point(w, -1.0), Point(0.0, h), start)
    assert all(wrong_way(s) < 0.5 for s in path.segments if isinstance(s, Cubic))
    assert degrees_between(path.start_direction, Vector(1.0, 0.0)) < 1e-6
    assert degrees_between(path.end_direction, start * -1.0) < 1e-6
    a, b = path.segments
    assert degrees_between(a.end_direction, Vector(0.0, -1.0)) < 1e-6
    assert degrees_between(b.start_direction, Vector(0.0, -1.0)) < 1e-6


# -- the shoulder run on ---------------------------------------------------------------
@pytest.mark.parametrize(
    ("body", "out", "drop"), list(product(BODIES, (4.0, 5.0, 8.0), (1.0, 2.0)))
)
def test_the_shoulder_runs_on_over_the_arm(body: Body, out: float, drop: float) -> None:
    """Its end lies `out` along the shoulder line and `drop` square to it (exact);
    front and back shoulder are of one length but for the ease; both corners are square.
    """
    made = draft(order(body, capped(ExtendedShoulder(out=out, drop=drop))))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    n, sheet, p = made.numbers, made.sheet, made.sheet.points
    assert distance(p["Te"], p["Tf"]) == pytest.approx(math.hypot(out, drop))
    f, b = sheet.piece("F"), sheet.piece("B")
    more = f.edge("shoulder").length - n.Lr
    assert math.hypot(out, drop) <= more < math.hypot(out, drop) + drop
    eased = b.edge("shoulder").length - f.edge("shoulder").length
    assert eased == pytest.approx(n.se_left, abs=MM / 2)
    assert f.interior_angle("armhole") == pytest.approx(90.0, abs=DEGREE)
    assert b.interior_angle("shoulder") == pytest.approx(90.0, abs=DEGREE)
    assert distance(p["ubl"], p["ub"]) == pytest.approx(n.ul)


@pytest.mark.parametrize("lining", [None, Mode.TO_EDGE, Mode.BELOW_FACING])
def test_facing_and_lining_follow_it(lining: Mode | None) -> None:
    """The facing's shoulder bends as the shell's does, at every 40th woman's."""
    features = capped(ExtendedShoulder(), lining)
    for body in ansur_women()[::40]:
        made = draft(order(body, features, estimates=RuleSet.SURVEY))
        assert not made.failed, made.failures()
        assert not cut_faults(made)
        if "FF" in made.sheet.pieces:
            mine = made.sheet.edge("FF", "shoulder").path
            shell = made.sheet.edge("F", "shoulder").path
            middle = mine.at_length(mine.length / 2)
            assert shell.nearest(middle)[1] < MM


def test_what_an_extended_shoulder_refuses() -> None:
    features = swapped(
        capped(ExtendedShoulder()), FrontArmholePrincess(), place_of="side dart"
    )
    with pytest.raises(OrderError, match="free edge over the arm"):
        draft(order(BRIDA, features))


def test_a_narrow_opening_for_the_arm_is_doubted() -> None:
    made = draft(order(P92, capped(ExtendedShoulder(out=10.0, drop=3.5))))
    assert any("over the arm (UA)" in str(f) for f in made.findings)


# -- the armhole cut away --------------------------------------------------------------
def test_a_cut_away_armhole_covers_the_brassiere() -> None:
    """BUB and 1.5 from the bust point to the edge (3); within that it is doubted."""
    said = []
    for narrowed in (1.0, 5.0, 8.0):
        armhole = SleevelessArmhole(narrowed=narrowed)
        features = swapped(
            closed_back(lines="darts", front=FrontShape.STANDARD), armhole
        )
        made = draft(order(P116, features))
        n = made.numbers
        edge = made.sheet.edge("F", "armhole").path
        beside = edge.nearest(made.sheet.points["BP"])[1]
        doubted = any("cover the brassiere" in str(f) for f in made.findings)
        assert doubted is (narrowed > 1.5 and beside < n.BUB + 1.5 - 0.05)
        said.append(beside)
    assert said == sorted(said, reverse=True)


@pytest.mark.parametrize("narrowed", [3.0, 4.0])
def test_a_racer_on_real_women(narrowed: float) -> None:
    armhole = SleevelessArmhole(narrowed=narrowed, tightened=1.0)
    features = swapped(closed_back(lines="darts"), armhole)
    for body in ansur_women()[::40]:
        made = draft(order(body, features, estimates=RuleSet.SURVEY))
        assert not made.failed, made.failures()
        assert not cut_faults(made)
