"""A button stand over a yoke: down a torso, or over a waist seam (transformations 1.5
and 7)."""

import re
from dataclasses import replace

import pytest

from bodies import P92, P116, THEA, ansur_women
from clothwright.body import Body, MeasureValue, RuleSet
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.back_waist_dart import BackWaistDart
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
from orders import cut_faults, order, sleeved_features, swapped

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
def test_a_facing_cut_on_is_not_divided(where: Where) -> None:
    with pytest.raises(OrderError, match="divided by the yoke"):
        draft(order(P92, yoked(where, Edging.CUT_ON, 9.0)))
    other = FrontYoke() if where is Where.BACK else BackYoke()
    made(shirt(ButtonStand(where=where, edge=Edging.CUT_ON), other))


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("edge", EDGES)
def test_two_sides_that_differ_meet_at_the_centre(where: Where, edge: Edging) -> None:
    """Shoulders that slope by 25 and 20 degrees: the necks end at one place."""
    values = {**P92.values, "SS": MeasureValue("SS", 25.0, "")}
    body = replace(P92, values=values, left={"SS": MeasureValue("SS", 20.0, "")})
    d = made(yoked(where, edge, deep(where)), body)
    top = "FY" if where is Where.FRONT else "BY"
    assert {top, f"{top}-L"} <= set(d.sheet.pieces)
