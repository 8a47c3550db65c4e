"""A button stand over a yoke: down a torso, or over a waist seam (transformations 1.5
and 7)."""

import re
from dataclasses import replace

import pytest

from bodies import P92, P116, THEA, ansur_women
from clothwright.body import Body, MeasureValue, RuleSet
from clothwright.curves import mirror_in
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.yokes import BackYoke, FrontYoke
from clothwright.features.collars.collar_inside import Inside
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.openings.button_stand import ButtonStand, Where
from clothwright.features.openings.stand_edging import Edging
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import MarkKind
from clothwright.truing import walk
from features.openings.test_stand_on_torso import shirt
from orders import closed_back, cut_faults, order, sleeved_features, swapped

MM = 0.1
WHERES = {Where.FRONT: FrontYoke, Where.BACK: BackYoke}
EDGES = (Edging.FACED, Edging.BAND)
CODES = ("S70", "S73", "S118", "S69", "S3", "S8", "S9", "S80")


def yoked(
    where: Where, edge: Edging, depth: float, *more: Feature
) -> tuple[Feature, ...]:
    return shirt(ButtonStand(where=where, edge=edge), WHERES[where](depth=depth), *more)


def deep(where: Where) -> float:
    """A depth whose seam lies clear of the buttons of P92."""
    return 15.0 if where is Where.FRONT else 9.0


def made(features: tuple[Feature, ...], body: Body = P92) -> Draft:
    d = draft(order(body, features, estimates=RuleSet.SURVEY))
    assert not d.failed, d.failures()
    assert not cut_faults(d)
    for s in d.sheet.seams:
        if s.code in CODES or s.code.endswith("yoke"):
            assert walk(d.sheet, s).severity is None, s.code
    return d


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("edge", EDGES)
def test_paper_is_divided_and_nothing_lost(where: Where, edge: Edging) -> None:
    """Both parts have the area of the whole half with its stand (1.5), every button is
    on one of them, and the edge of the stand is as long as before."""
    whole = made(shirt(ButtonStand(where=where, edge=edge))).sheet
    d = made(yoked(where, edge, deep(where)))
    low, top = ("F", "FY") if where is Where.FRONT else ("B", "BY")
    sheet = d.sheet
    area = sheet.piece(low).area + sheet.piece(top).area
    assert area == pytest.approx(whole.piece(low).area, abs=0.5 * MM**2)
    name = "stand" if edge is Edging.FACED else "band"
    length = sheet.length(low, name) + sheet.length(top, name)
    assert length == pytest.approx(whole.length(low, name), abs=0.1 * MM)
    counted = [
        sum(m.kind is MarkKind.BUTTON for p in s.pieces.values() for m in p.marks)
        for s in (whole, sheet)
    ]
    assert counted[0] == counted[1] >= 5
    bought = [
        cutting_sheet(making_order(one)).notions[0].count
        for one in (made(shirt(ButtonStand(where=where, edge=edge))), d)
    ]
    assert bought[0] == bought[1]


@pytest.mark.parametrize("body", [P92, P116, THEA, *ansur_women()[::240]])
@pytest.mark.parametrize("where", Where)
def test_yokes_under_bands_on_real_bodies(body: Body, where: Where) -> None:
    kind = WHERES[where]
    band = ButtonStand(where=where, edge=Edging.BAND)
    made(shirt(band, kind(), Lining(mode=Mode.BELOW_FACING)), body)
    made(shirt(band, kind(slope=2.0), ShirtCollar()), body)
    top = swapped(sleeved_features(), band, place_of="concealed zip")
    plain = tuple(f for f in top if "princess" not in f.kind)
    made((*plain, SideDart(), BackWaistDart(), kind()), body)


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("slope", [-1.0, 0.0, 3.0])
def test_the_seam_runs_on_over_the_stand(where: Where, slope: float) -> None:
    """Straight on from the centre line, whose place the depth gives."""
    yoke = WHERES[where](depth=deep(where), slope=slope)
    d = made(shirt(ButtonStand(where=where), yoke))
    front = where is Where.FRONT
    seam = d.sheet.edge("FY" if front else "BY", "yoke").path
    at = d.sheet.points["Yc" if front else "Ycb"]
    assert seam.nearest(at)[1] < 0.01 * MM
    out = d.numbers.X + d.numbers.b_stand if front else -d.numbers.b_stand
    assert min(abs(seam.start.x - out), abs(seam.end.x - out)) < 0.1 * MM


@pytest.mark.parametrize("edge", EDGES)
def test_a_yoke_that_takes_the_shoulder_dart_buttons_too(edge: Edging) -> None:
    behind = ButtonStand(where=Where.BACK, edge=edge)
    block = Block(back_shoulder=BackShoulder.YOKE, back_shoulder_dart=1.2)
    d = made(shirt(block, behind, BackYoke()))
    assert d.sheet.piece("BY").has("stand" if edge is Edging.FACED else "band")


def test_a_button_on_the_seam_is_refused_with_a_depth_that_goes() -> None:
    d = draft(order(P92, shirt(ButtonStand(), FrontYoke(depth=15.0))))
    marks = sorted(
        m.at.y
        for c in ("F", "FY")
        for m in d.sheet.piece(c).marks
        if m.kind is MarkKind.BUTTON
    )
    on = d.numbers.Yf + marks[1] - d.sheet.points["Yc"].y
    for off in (-0.2, 0.1, 0.3):
        near = draft(order(P92, shirt(ButtonStand(), FrontYoke(depth=on + off))))
        (told,) = (f for f in near.findings if f.code == "BT6")
        assert near.failed
        assert told.data["near"] == pytest.approx(abs(off), abs=0.1 * MM)
        wanted = re.search(r'\(depth of "front yoke"\) ([\d.]+) cm deep', told.to_do)
        assert wanted
        yoke = FrontYoke(depth=float(wanted[1]))
        moved = draft(order(P92, shirt(ButtonStand(), yoke)))
        assert not any(f.code == "BT6" for f in moved.findings)


def test_a_shirt_with_a_yoke_and_no_facing_of_its_neck() -> None:
    collar = ShirtCollar(inside=Inside.IN_STAND)
    for edge in EDGES:
        features = yoked(Where.FRONT, edge, 15.0, collar, BackYoke())
        d = made(tuple(f for f in features if f.kind != "neck facing"))
        assert {"F", "FY", "B", "BY"} <= set(d.sheet.pieces)
        assert "BF" not in d.sheet.pieces


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("body", [P92, P116, THEA], ids=lambda b: b.client)
def test_a_facing_cut_on_is_divided_as_its_shell(where: Where, body: Body) -> None:
    """Turned back along the fold (transformations 1.10) its seam lies on the yoke's:
    mirrored points of one are on the other, and both parts have the facing's area."""
    d = made(yoked(where, Edging.CUT_ON, deep(where)), body)
    front = where is Where.FRONT
    own, yoke = ("F", "FY") if front else ("B", "BY")
    plain = made(yoked(where, Edging.FACED, deep(where)), body)
    facing = plain.sheet.piece("FF" if front else "BF")
    for code in (own, yoke):
        piece = d.sheet.piece(code)
        fold = next(k.path for k in piece.lines if k.name == "fold of the facing")
        over = mirror_in(fold.start, fold.end)
        seam, its = (piece.edge(e).path for e in ("yoke", "facing yoke"))
        for k in range(5):
            p = over(its.at_length(its.length * k / 4))
            assert seam.nearest(p)[1] < 0.01 * MM
    parts = sum(d.sheet.piece(c).area for c in (own, yoke))
    shells = sum(plain.sheet.piece(c).area for c in (own, yoke))
    assert parts - shells == pytest.approx(facing.area, abs=0.01)
    inside = d.sheet.piece("IF" if front else "IB")
    assert inside.area == pytest.approx(facing.area, abs=0.01)
    assert [k.name for k in inside.lines] == ["cut apart"]


@pytest.mark.parametrize("where", Where)
def test_the_yokes_seam_runs_on_over_a_facing_cut_on(where: Where) -> None:
    """In one seam, sewn once before the fold is turned, longer by the facing's part."""
    d = made(yoked(where, Edging.CUT_ON, deep(where)))
    name = "front yoke" if where is Where.FRONT else "back yoke"
    seam = d.sheet.seam(name)
    assert {r.edge for r in seam.runs()} == {"yoke", "facing yoke"}
    it = walk(d.sheet, seam)
    assert it.holds
    assert it.left == pytest.approx(it.right, abs=1e-6)
    ends = [d.sheet.run_path(r) for r in seam.left]
    assert ends[0].end.x == pytest.approx(ends[1].start.x, abs=1e-6)
    titles = [op.title for op in making_order(d).operations]
    assert titles.count(f"Sew the {name} seam") == 1


def test_a_facing_cut_on_goes_with_what_lies_beside_a_yoke() -> None:
    """Both yokes, a dart in the yoke's seam, a facing of neck and armholes in one, a
    lining; over a princess line that facing would leave the yoke: told in words."""
    cut_on = Edging.CUT_ON
    front, back = (ButtonStand(where=w, edge=cut_on) for w in Where)
    block = Block(back_shoulder=BackShoulder.YOKE, back_shoulder_dart=1.2)
    for features in (
        (*yoked(Where.FRONT, cut_on, 15.0), BackYoke()),
        (*yoked(Where.FRONT, cut_on, 15.0), Lining(mode=Mode.BELOW_FACING)),
        shirt(block, back, BackYoke()),
        sleeveless(front, FrontYoke(), lines="darts"),
        sleeveless(front, FrontYoke(), BustDart(to=DartPlace.YOKE), lines="darts"),
        sleeveless(back, BackYoke(), lines="armhole"),
    ):
        made(features)
    with pytest.raises(OrderError, match="reaches beyond the seam of the yoke"):
        draft(order(P92, sleeveless(front, FrontYoke(), lines="armhole")))


def sleeveless(*more: Feature, lines: str) -> tuple[Feature, ...]:
    """A top without sleeves, its neck and armholes faced in one."""
    led = any(f.kind == "bust dart" for f in more)
    gone = {"concealed zip", "side dart" if led else ""}
    kept = (f for f in closed_back(lines=lines) if f.kind not in gone)
    return (*kept, *more)


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("edge", EDGES)
def test_two_sides_that_differ_meet_at_the_centre(where: Where, edge: Edging) -> None:
    """Shoulders that slope by 25 and 20 degrees: the necks end at one place."""
    values = {**P92.values, "SS": MeasureValue("SS", 25.0, "")}
    body = replace(P92, values=values, left={"SS": MeasureValue("SS", 20.0, "")})
    d = made(yoked(where, edge, deep(where)), body)
    top = "FY" if where is Where.FRONT else "BY"
    assert {top, f"{top}-L"} <= set(d.sheet.pieces)
