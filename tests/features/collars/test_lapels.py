"""Shawl and notched collars, cut on to the front (transformations 5). Shapely judges
distances, plain mathematics the sector of the collar behind."""

import math

import pytest
from shapely.geometry import LineString, Polygon
from shapely.geometry import Point as Spot

from bodies import P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.blocks.lapel import back_collar
from clothwright.body import Body
from clothwright.curves import Path, Point, Vector, degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.collars.collar_neck import closed_neck
from clothwright.features.collars.lapel import lies_along
from clothwright.features.collars.notched_collar import NotchedCollar
from clothwright.features.collars.shawl_collar import ShawlCollar
from clothwright.features.linings.facing import Facing
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.features.openings.button_stand import ButtonStand, Rows, Where
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import MarkKind
from orders import closed_back, order, sleeved_features, swapped

MM = 0.1
BOTH = (NotchedCollar, ShawlCollar)


def features(collar: Feature, *swaps: Feature) -> tuple[Feature, ...]:
    stand = ButtonStand()
    top = swapped(sleeved_features(), stand, place_of="concealed zip")
    by_kind = {f.kind: f for f in (*top, collar)} | {f.kind: f for f in swaps}
    return tuple(by_kind.values())


def made(body: Body, collar: Feature, *swaps: Feature) -> Draft:
    d = draft(order(body, features(collar, *swaps)))
    assert not d.failed, d.failures()
    return d


def line(path: Path) -> LineString:
    return LineString(path.flatten(0.002))


def test_the_collar_behind_is_a_sector_of_a_ring() -> None:
    """Back neck 8.5, outer edge 2.2 longer, 7.5 wide: 2.2/7.5 radians, 16.8°; the
    centre back square to both (5)."""
    c = back_collar(Point(0.0, 0.0), Vector(0.0, -1.0), 8.5, 10.7, 7.5)
    assert c.degrees == pytest.approx(math.degrees(2.2 / 7.5))
    assert c.neck.length == pytest.approx(8.5, abs=1e-4)
    assert c.outer.length == pytest.approx(10.7, abs=1e-4)
    assert distance(c.neck.end, c.outer.start) == pytest.approx(7.5, abs=1e-4)
    across = c.outer.start - c.neck.end
    assert degrees_between(across, c.neck.end_direction) == pytest.approx(90.0)
    assert c.neck.end.x < 0.0  # away from the front, whose centre lies to the right
    with pytest.raises(ValueError, match="longer"):
        back_collar(Point(0.0, 0.0), Vector(0.0, -1.0), 8.5, 8.5, 7.5)


@pytest.mark.parametrize("collar", BOTH)
@pytest.mark.parametrize("body", [P80, P92, P116, THEA, YSOLDE, *ansur_women()[::48]])
def test_lapels_on_real_bodies(
    collar: type[NotchedCollar | ShawlCollar], body: Body
) -> None:
    """Everything sews; the collar is as long as the trued neck; its outer edge behind
    is as long as where it lies, about 15° to 25° of lean (5)."""
    d = made(body, collar())
    n, sheet = d.numbers, d.sheet
    assert "KL1" not in {f.code for f in d.findings}
    assert "KL2" not in {f.code for f in d.findings}
    neck = closed_neck(sheet, n.Lr)
    assert sheet.length("CN", "neck") == pytest.approx(neck.length, abs=0.2 * MM)
    longer = lies_along(neck, n).length - neck.back.length
    assert 1.5 <= longer <= 3.0
    lean = math.degrees(longer / 7.5)
    under = sheet.piece("CN")
    back = under.edge("cb").path
    up = Point(0.0, 0.0) + (sheet.points["Vr"] - sheet.points["Vk"])
    square = degrees_between(up, back.end - back.start)
    assert square == pytest.approx(90.0 - lean, abs=0.5)
    assert back.length == pytest.approx(7.5, abs=0.1 * MM)
    pattern(d, words=False)


def test_the_roll_line_passes_the_shoulder() -> None:
    """It passes the neck end by 0.75 of the stand on the shoulder's line, and ends at
    the break point, on the edge of the stand, above the first button."""
    d = made(P92, NotchedCollar(stand=2.8))
    fc, at = d.sheet.piece("FC"), d.sheet.points
    hps = fc.edge("neck").path.start
    assert distance(at["Vr"], hps) == pytest.approx(0.75 * 2.8, abs=0.1 * MM)
    shoulder = fc.edge("shoulder").path
    on = Path.line(shoulder.end, at["Vr"])
    assert degrees_between(shoulder.end_direction, on.start_direction) < 0.1
    assert at["Vk"].x - d.numbers.X == pytest.approx(d.numbers.b_stand, abs=0.1 * MM)
    first = next(m for m in fc.marks if m.kind is MarkKind.BUTTON)
    below = first.at.y - at["Vk"].y
    assert below == pytest.approx(d.numbers.b_first, abs=0.1 * MM)
    assert first.at.y == pytest.approx(d.numbers.y_BP, abs=0.1 * MM)


def test_a_lapel_is_as_wide_as_ordered_and_its_facing_larger() -> None:
    """8 square to the roll line; the facing 0.3 outside above the break point, nothing
    at it."""
    d = made(P92, NotchedCollar(width=8.5))
    roll = line(d.sheet.lines["roll line"])
    tip = d.sheet.points["Vp"]
    assert roll.distance(Spot(tip)) == pytest.approx(8.5, abs=0.1 * MM)
    shell, facing = (line(d.sheet.edge(c, "lapel").path) for c in ("FC", "FF"))
    gaps = [shell.distance(Spot(p)) for p in facing.coords]
    assert gaps[-1] == pytest.approx(0.0, abs=0.1 * MM)
    assert gaps[1] == pytest.approx(0.3, abs=0.5 * MM)
    assert gaps == sorted(gaps, reverse=True)
    top = d.sheet.edge("FC", "lapel top").path
    assert top.length == pytest.approx(3.5, abs=0.1 * MM)
    end = d.sheet.edge("CN", "end").path
    angle = degrees_between(end.end - end.start, top.start_direction)
    assert 180.0 - angle == pytest.approx(75.0, abs=6.0)


def test_a_shawl_is_parted_from_its_undercollar_along_the_gorge() -> None:
    """Front and undercollar cover what was drawn in one: their edges meet there, and
    the facing lies 0.3 outside down to the widest point."""
    d = made(P92, ShawlCollar())
    sheet = d.sheet
    fc, cn, ff = (sheet.piece(c) for c in ("FC", "CN", "FF"))
    a, b = fc.edge("neck stand").path, cn.edge("neck stand").path
    assert distance(a.end, b.start) < 1e-6
    assert fc.edge("lapel").path.start == cn.edge("lapel").path.end
    over = Polygon(fc.outline.flatten(0.01)).intersection(
        Polygon(cn.outline.flatten(0.01))
    )
    assert over.area < 0.5  # what blending takes at the shoulder
    shell = line(cn.edge("lapel").path + fc.edge("lapel").path)
    level = sheet.points["Vw"]
    for p in ff.edge("lapel").path.flatten(0.05):
        gap = shell.distance(Spot(p))
        assert gap <= 0.3 + 0.1 * MM
        if p.y < level.y - 1.0:
            assert gap == pytest.approx(0.3, abs=0.2 * MM)


@pytest.mark.parametrize("collar", BOTH)
@pytest.mark.parametrize("rows", Rows)
@pytest.mark.parametrize("lines", ["armhole", "shoulder", "darts", "mixed"])
def test_every_bodice_takes_a_lapel(
    collar: type[NotchedCollar | ShawlCollar], rows: Rows, lines: str
) -> None:
    stand = ButtonStand(rows=rows)
    top = swapped(closed_back(lines=lines), stand, place_of="concealed zip")
    assert any(isinstance(f, Facing) for f in top)
    d = draft(order(YSOLDE, (*top, collar())))
    assert not d.failed, d.failures()
    pattern(d, words=False)


@pytest.mark.parametrize("collar", BOTH)
def test_how_it_is_cut_and_sewn(collar: type[NotchedCollar | ShawlCollar]) -> None:
    """The undercollar is a pair on the bias; the front edges and the lapels are faced
    after the collar is set."""
    d = made(P92, collar())
    m = making_order(d)
    titles = [op.title for op in m.operations]
    notched = collar is NotchedCollar
    faced = "Face the lapels" if notched else "Face the collar and the lapels"
    set_on = (
        "Set the collar on the neck" if notched else "Sew the undercollar to the neck"
    )
    assert titles.index(set_on) < titles.index(faced)
    cut = {p.code: p.how for p in cutting_sheet(m).cloths["shell"]}
    assert cut["CN"] == "2 (1 pair), on the bias"
    assert cut.get("CO") == ("1 on fold" if notched else None)
    foot, head = d.sheet.piece("CN").grain or (Point(0, 0), Point(0, 0))
    assert abs(head.x - foot.x) == pytest.approx(abs(head.y - foot.y), abs=1e-6)
    sewn = [s.code for s in d.sheet.seams]
    told = {code for op in m.operations for code in op.seams}
    assert set(sewn) <= told


def test_what_it_refuses() -> None:
    with pytest.raises(OrderError, match="less deep"):  # and does not hang
        draft(order(P92, features(ShawlCollar(break_point=58.0))))
    with pytest.raises(OrderError, match="it must break between"):
        draft(order(P92, features(ShawlCollar(break_point=13.0))))
    with pytest.raises(OrderError, match="make it less deep"):
        deep = Neckline(shape=FrontShape.ROUND, depth=14.0)
        wide = ButtonStand(rows=Rows.DOUBLE)
        draft(order(P92, features(NotchedCollar(break_point=20.5), deep, wide)))
    with pytest.raises(OrderError, match="step of .notched collar"):
        draft(order(P92, features(NotchedCollar(step=7.5))))
    with pytest.raises(OrderError, match="on a round neck"):
        v = Neckline(shape=FrontShape.V)
        draft(order(P92, features(ShawlCollar(), v)))
    with pytest.raises(OrderError, match='add a "button stand"'):
        draft(order(P92, (*sleeved_features(), ShawlCollar())))
    with pytest.raises(OrderError, match='add a "button stand"'):
        behind = ButtonStand(where=Where.BACK)
        draft(order(P92, features(ShawlCollar(), behind)))
    flat = draft(order(P92, features(NotchedCollar(fall=8.0))))
    assert "KL1" in {f.code for f in flat.findings}


def test_darts_take_a_lapel_with_sleeves() -> None:
    top = sleeved_features(SideDart(), BackWaistDart())
    drop = ("front armhole princess", "back armhole princess")
    top = tuple(f for f in top if f.kind not in drop)
    top = swapped(top, ButtonStand(), place_of="concealed zip")
    d = draft(order(P116, (*top, NotchedCollar())))
    assert not d.failed, d.failures()
