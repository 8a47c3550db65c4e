"""A button stand at the centre front or the centre back (transformations 6 and 7)."""

import math
from dataclasses import replace

import pytest

from bodies import P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body, MeasureValue
from clothwright.features import Feature
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.features.notions import Article
from clothwright.features.openings.button_places import places
from clothwright.features.openings.button_stand import (
    AtWaist,
    ButtonStand,
    Lie,
    Rows,
    Where,
)
from clothwright.features.openings.stand_pieces import BACK, FRONT
from clothwright.features.skirts.dress_skirt import DressSkirt
from clothwright.features.skirts.peplum import Cut, Peplum
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import EdgeKind, MarkKind
from clothwright.units import Unit
from orders import closed_back, main_features, order, sleeved_features, swapped

MM = 0.1
BUTTONED = ("FC", "PF", "FF", "FFP")


def buttoned(stand: ButtonStand, *swaps: Feature) -> tuple[Feature, ...]:
    return swapped(sleeved_features(*swaps), stand, place_of="concealed zip")


def made(
    stand: ButtonStand, *swaps: Feature, body: Body = P92, unit: Unit = Unit.CM
) -> Draft:
    d = draft(order(body, buttoned(stand, *swaps), unit=unit))
    assert not d.failed, d.failures()
    return d


def test_the_stand_is_as_wide_as_its_button() -> None:
    """Stand = button diameter; facing = 2·stand + 3.5 in all; a buttonhole begins 0.3
    beyond the centre and is d + 0.3 long; the first button lies half a button and 0.6
    to 1 below the neck (7)."""
    d = made(ButtonStand(button=1.8))
    n, sheet = d.numbers, d.sheet
    assert n.b_stand == pytest.approx(1.8)
    for code in BUTTONED:
        piece = sheet.piece(code)
        line = next(k for k in piece.lines if k.name == "centre front").path
        edge = piece.edge("stand").path
        for t in (0.1, 0.9):
            p = edge.at_length(t * edge.length)
            assert line.nearest(p)[1] == pytest.approx(1.8, abs=0.1 * MM), code
        assert piece.fold is None
    foot = sheet.length("FF", "foot") + sheet.length("FF", "foot stand")
    assert foot == pytest.approx(2 * 1.8 + 3.5, abs=0.5 * MM)
    fc = sheet.piece("FC")
    x = n.X
    hole = next(k for k in fc.lines if k.name == "buttonhole 1").path
    assert hole.start.x - x == pytest.approx(0.3, abs=0.1 * MM)
    assert hole.length == pytest.approx(2.1, abs=0.1 * MM)
    top = fc.edge("neck").path.end
    first = next(m for m in fc.marks if m.name == "button 1").at
    assert 1.5 <= first.y - top.y <= 1.9
    assert first.x == pytest.approx(x, abs=0.1 * MM)


def test_a_small_button_has_a_stand_of_half_of_it_and_more() -> None:
    """At least half the diameter and 0.6 (7): 0.5 + 0.6."""
    assert made(ButtonStand(button=1.0)).numbers.b_stand == pytest.approx(1.1)


@pytest.mark.parametrize("body", [P92, P116, THEA, *ansur_women()[::200]])
def test_buttons_on_real_bodies(body: Body) -> None:
    """One at bust level, one just above the waist seam, none further apart than 10, the
    last at least 10 above the hem (7); and everything sews."""
    d = draft(order(body, buttoned(ButtonStand())))
    assert not d.failed, d.failures()
    n, sheet = d.numbers, d.sheet
    fc, pf = sheet.piece("FC"), sheet.piece("PF")
    at = [m.at.y for m in fc.marks if m.kind is MarkKind.BUTTON]
    assert min(abs(y - n.y_BP) for y in at) < 1.0
    seam = fc.edge("waist").path.start.y
    assert seam - at[-1] == pytest.approx(n.b_first, abs=0.1 * MM)
    top = pf.edge("waist").path.end.y
    below = [seam + m.at.y - top for m in pf.marks if m.kind is MarkKind.BUTTON]
    every = at + below
    gaps = [b - a for a, b in zip(every, every[1:], strict=False)]
    assert all(4.0 <= g <= 10.0 + 1e-6 for g in gaps), gaps
    assert all(seam + n.L - y >= 10.0 - 1e-6 for y in below)


def test_places_by_hand() -> None:
    """24 of centre front, the bust at 10, first at 1.5: two spaces of 4.25? no, one of
    8.5; then to 22.5 two of 6.25; below from 5.25 on, 10 above a hem at 20."""
    p = places(1.5, 10.0, 24.0, 20.0, 8.0, above=1.5, seam=1.5, clear=10.0)
    assert p.upper == pytest.approx((1.5, 10.0, 16.25, 22.5))
    assert p.lower == pytest.approx((4.75,))
    deep = places(12.0, 12.5, 24.0, 0.0, 8.0, above=1.5, seam=1.5, clear=10.0)
    assert deep.upper == pytest.approx((12.0, 17.25, 22.5))
    assert deep.lower == ()
    with pytest.raises(ValueError, match="below the waist's"):
        places(23.0, None, 24.0, 20.0, 8.0, above=1.5, seam=1.5, clear=10.0)


def test_the_edges_run_on_in_their_own_direction() -> None:
    """So two V necks cross on the centre line; a round neck goes on level."""
    v = made(ButtonStand(), Neckline(shape=FrontShape.V, depth=18.0)).sheet
    neck, on = (v.edge("FC", e).path for e in ("neck", "neck stand"))
    assert on.start_direction.x == pytest.approx(neck.end_direction.x, abs=1e-6)
    assert on.end.y > neck.end.y + 1.0
    round_ = made(ButtonStand()).sheet.edge("FC", "neck stand").path
    assert round_.start.y == pytest.approx(round_.end.y, abs=0.5 * MM)


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("rows", Rows)
@pytest.mark.parametrize("lines", ["armhole", "shoulder", "darts", "mixed"])
def test_every_bodice_buttons(where: Where, rows: Rows, lines: str) -> None:
    stand = ButtonStand(where=where, rows=rows, lie=Lie.ALONG)
    features = swapped(closed_back(lines=lines), stand, place_of="concealed zip")
    d = draft(order(YSOLDE, features))
    assert not d.failed, d.failures()
    pattern(d, words=False)
    side = "front" if where is Where.FRONT else "back"
    code = next(
        c for c in (side[0].upper() + "C", side[0].upper()) if c in d.sheet.pieces
    )
    assert d.sheet.piece(code).has("stand")
    other = "BF" if where is Where.FRONT else "FF"
    assert d.sheet.piece(other).fold is not None
    peplum = "PB" if where is Where.FRONT else "PF"
    assert d.sheet.piece(peplum).fold is not None


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("cut", Cut)
def test_every_peplum_and_a_dress(where: Where, cut: Cut) -> None:
    stand = ButtonStand(where=where, at_waist=AtWaist.HOOK)
    d = made(stand, Peplum(cut=cut, gathers=2.0), body=THEA, unit=Unit.IN)
    bought = cutting_sheet(making_order(d)).notions
    assert any(k.article is Article.HOOK for k in bought)
    dress = swapped(buttoned(stand), DressSkirt(), place_of="peplum")
    e = draft(order(YSOLDE, dress))
    assert not e.failed, e.failures()


def test_what_is_bought_and_sewn() -> None:
    d = made(ButtonStand())
    m = making_order(d)
    sheet = cutting_sheet(m)
    marks = sum(
        k.kind is MarkKind.BUTTON for c in ("FC", "PF") for k in d.sheet.piece(c).marks
    )
    (buttons,) = (k for k in sheet.notions if k.article is Article.FLAT_BUTTON)
    assert (buttons.count, buttons.spare) == (marks + 1, 1)
    titles = [op.title for op in m.operations]
    assert titles.index("Sew the waist") < titles.index("Face the front edges")
    assert f"Work {marks} buttonholes in the right front" in titles
    cut = {p.code: p.how for p in sheet.cloths["shell"]}
    assert all("pair" in cut[c] for c in BUTTONED)
    assert {"FF", "FFP", "BF"} <= {p.code for p in sheet.cloths["interlining"]}
    sewn = {s.code: d.sheet.chain_length(s.left) for s in d.sheet.seams}
    whole = d.sheet.length("FC", "stand") + d.sheet.length("PF", "stand")
    assert sewn["S70"] + sewn["S71"] == pytest.approx(whole)


def test_double_breasted_rows() -> None:
    """Rows of buttons at equal distances to both sides of the centre, the outer one
    half a button and 0.6 inside the edge (7)."""
    d = made(ButtonStand(rows=Rows.DOUBLE, stand=5.8))
    n, fc = d.numbers, d.sheet.piece("FC")
    assert n.b_row == pytest.approx(5.8 - 0.75 - 0.6)
    at = next(m for m in fc.marks if m.name == "button 2").at
    hole = next(k for k in fc.lines if k.name == "buttonhole 2").path
    assert n.X - at.x == pytest.approx(n.b_row, abs=0.1 * MM)
    assert hole.start.x - n.X == pytest.approx(n.b_row + 0.3, abs=0.1 * MM)


def test_what_it_refuses() -> None:
    narrow = draft(order(P92, buttoned(ButtonStand(stand=1.0, button=2.0))))
    assert any(f.code == "BT1" for f in narrow.findings) and narrow.failed
    tight = draft(order(P92, buttoned(ButtonStand(facing=2.5, button=2.0))))
    assert any(f.code == "BT2" for f in tight.findings) and tight.failed
    with pytest.raises(OrderError, match="wider at the waist than the piece"):
        draft(order(P92, buttoned(ButtonStand(facing=12.0))))
    with pytest.raises(OrderError, match="one place"):
        draft(order(P92, (*sleeved_features(), ButtonStand())))
    open_ = (*(f for f in main_features() if f.kind != "loops"), ButtonStand())
    with pytest.raises(OrderError, match="stands open needs no buttons"):
        draft(order(P92, open_))
    with pytest.raises(OrderError, match="line below the facing"):
        edge = closed_back(lining=Mode.TO_EDGE)
        draft(order(P92, swapped(edge, ButtonStand(), place_of="concealed zip")))
    with pytest.raises(OrderError, match="does not run on over a button stand"):
        sweet = Neckline(shape=FrontShape.SWEETHEART)
        features = swapped(closed_back(), ButtonStand(), place_of="concealed zip")
        draft(order(P92, swapped(features, sweet, place_of="neckline")))


def test_two_sides_that_differ_button_alike() -> None:
    values = {**P92.values, "SS": MeasureValue("SS", 25.0, "")}
    body = replace(P92, values=values, left={"SS": MeasureValue("SS", 20.0, "")})
    d = draft(order(body, buttoned(ButtonStand())))
    assert not d.failed, d.failures()
    assert d.sheet.piece("FC").edge("stand").kind is EdgeKind.SEAM
    assert math.isclose(
        d.sheet.length("FC", "stand"), d.sheet.length("FC-L", "stand"), abs_tol=0.1
    )


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("lines", ["armhole", "shoulder", "darts", "mixed"])
def test_a_lining_hangs_beside_the_facing(where: Where, lines: str) -> None:
    """Lining and facing together are the shell, above the waist and below it; the
    lining hangs 1.5 shorter (first garment 15)."""
    stand = ButtonStand(where=where)
    top = closed_back(lines=lines, lining=Mode.BELOW_FACING)
    features = swapped(top, stand, place_of="concealed zip")
    d = draft(order(YSOLDE, features))
    assert not d.failed, d.failures()
    pattern(d, words=False)
    c = FRONT if where is Where.FRONT else BACK
    sheet, low = d.sheet, c.on(d.sheet, c.lower)
    strip, lining, shell = (sheet.piece(p) for p in (c.low_facing, f"L.{low}", low))
    hangs = lining.edge("hem").length * 1.5
    assert strip.area + lining.area + hangs == pytest.approx(shell.area, rel=0.01)
    walks = {w.seam.code: w for w in d.report.walks}
    code = "LSF" if where is Where.FRONT else "LSB"
    assert walks[code].ease == pytest.approx(1.5, abs=0.2)
    # the facing runs on below the lining's hem: nothing is gathered into it
    assert not walks[code].seam.gathered
    for code in ("LW1", "LW2"):
        assert walks[code].ease == pytest.approx(0.0, abs=0.5 * MM)
    told = {s for op in making_order(d).operations for s in op.seams}
    assert {s.code for s in sheet.seams} <= told


@pytest.mark.parametrize("body", ansur_women()[::48])
@pytest.mark.parametrize("rows", Rows)
def test_linings_of_buttoned_tops_on_real_bodies(body: Body, rows: Rows) -> None:
    stand = 4.0 if rows is Rows.DOUBLE else None
    d = draft(order(body, (*buttoned(ButtonStand(rows=rows, stand=stand)), Lining())))
    assert not d.failed, d.failures()
    assert not [f for f in d.findings if f.code == "notch"]
