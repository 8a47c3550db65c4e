"""A button stand down a torso in one: the plain shirt blouse (transformations 6 and 7,
blocks D)."""

import pytest

from bodies import P92, P116, THEA, YSOLDE, ansur_women
from clothwright.blocks.torso_rules import shares
from clothwright.blocks.torso_width import width_at
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.bodice.sleeved_armhole import SleevedArmhole
from clothwright.features.bodice.torso import Torso
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.linings.facing import Facing
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.features.openings.button_stand import (
    AtWaist,
    ButtonStand,
    Rows,
    Where,
)
from clothwright.features.openings.stand_edging import Edging
from clothwright.features.skirts.vent import Vent
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import EdgeKind, MarkKind
from orders import closed_back, cut_faults, order

MM = 0.1
CUT_ON, BAND = (ButtonStand(edge=e) for e in (Edging.CUT_ON, Edging.BAND))
SHIRT = (ShirtCollar(), SetInSleeve(reach=Reach.WRIST), Cuff())


def shirt(
    *more: Feature, lines: str = "darts", sleeves: bool = True
) -> tuple[Feature, ...]:
    """A torso to the hip, 25 cm from the waist, that buttons in front; `more` take the
    place of their kind."""
    gone = ("waist seam", "peplum", "concealed zip", "facing", "sleeveless armhole")
    usual = closed_back(lines=lines, front=FrontShape.ROUND)
    if sleeves:
        usual = tuple(f for f in usual if f.kind not in gone)
        usual += (SleevedArmhole(), SetInSleeve(), NeckFacing())
    else:
        usual = (*(f for f in usual if f.kind not in gone[:3]), Facing())
    made = (*usual, Neckline(shape=FrontShape.ROUND), ButtonStand(), Torso(length=25.0))
    kept = {f.kind: f for f in made} | {f.kind: f for f in more}
    return tuple(kept.values())


def sewn(features: tuple[Feature, ...], body: Body = P92) -> Draft:
    d = draft(order(body, features))
    assert not d.failed, d.failures()
    return d


def test_the_front_buttons_from_neck_to_hem_in_one() -> None:
    """Stand and facing run from the neck to the hem; nothing is sewn at a waist."""
    d = sewn(shirt(*SHIRT))
    sheet, n = d.sheet, d.numbers
    front, facing = sheet.piece("F"), sheet.piece("FF")
    assert front.edge("stand").path.end.y == pytest.approx(n.yW + 25.0, abs=0.1 * MM)
    for code in ("F", "FF"):
        x = sheet.edge(code, "stand").path.start.x
        assert x - n.X == pytest.approx(n.b_stand, abs=0.1 * MM)
    assert facing.edge("stand").length == pytest.approx(
        front.edge("stand").length, abs=0.1 * MM
    )
    foot = sheet.length("FF", "lower") + sheet.length("FF", "lower stand")
    assert foot == pytest.approx(2 * n.b_stand + 3.5, abs=0.5 * MM)
    assert facing.edge("lower").kind is EdgeKind.FINISHED
    seams = {s.code for s in sheet.seams}
    assert "S70" in seams
    assert not {"S71", "S72", "S5", "S21"} & seams
    edge = sheet.seam("S70")
    waist = n.yW - front.edge("stand").path.start.y
    assert edge.notches[0].left == pytest.approx(waist, abs=0.1 * MM)
    assert not cut_faults(d)


@pytest.mark.parametrize("stand", [ButtonStand(), CUT_ON, BAND])
def test_one_button_lies_on_the_line_of_the_waist(stand: ButtonStand) -> None:
    """Evenly from the neck, none further apart than 10, the last 10 above the hem (7);
    no seam is in the way of the one at the waist."""
    d = sewn(shirt(stand, *SHIRT))
    n = d.numbers
    piece = d.sheet.piece("BD" if "BD" in d.sheet.pieces else "F")
    at = [m.at.y for m in piece.marks if m.kind is MarkKind.BUTTON]
    assert min(abs(y - n.yW) for y in at) < 0.1 * MM
    gaps = [b - a for a, b in zip(at, at[1:], strict=False)]
    assert all(4.0 <= g <= 10.0 for g in gaps), gaps
    assert 10.0 - 1e-6 <= n.yW + 25.0 - at[-1] < 20.0


def test_a_belt_has_no_button_under_it() -> None:
    """The waist lies midway between two buttons, and a hook holds it (7)."""
    d = sewn(shirt(ButtonStand(at_waist=AtWaist.HOOK)))
    piece = d.sheet.piece("F")
    at = [m.at.y for m in piece.marks if m.kind is MarkKind.BUTTON]
    assert min(abs(y - d.numbers.yW) for y in at) > 2.0
    titles = [op.title for op in making_order(d).operations]
    assert "Sew a hook and eye at the waist, under the belt" in titles


def test_the_centre_back_is_on_the_fold_and_takes_nothing_in() -> None:
    """D3: what a centre back seam would take in goes to the sides; the girths are body
    and ease whatever edge the front has (D1)."""
    assert shares(12.5, folded=True) == pytest.approx((2.625, 4.0, 3.25, 0.0))
    for stand in (ButtonStand(), CUT_ON, BAND, ButtonStand(where=Where.BACK)):
        d = sewn(shirt(stand))
        n = d.numbers
        assert n.cb_T == 0.0
        assert n.x_back == 0.0
        assert "z" not in n
        if stand.where is Where.FRONT:
            assert d.sheet.piece("B").fold is not None
        for y, aim in ((n.yW, n.W + n.Ew), (n.yW + n.WH, n.H + n.Eh)):
            girth = 2 * width_at(d.sheet, y)
            assert girth == pytest.approx(aim, abs=0.1 * MM)


def test_the_band_goes_from_neck_to_hem() -> None:
    """The front is cut back to its seam; both have a notch at the waist."""
    d = sewn(shirt(BAND, *SHIRT))
    sheet, n = d.sheet, d.numbers
    seam = sheet.seam("S118")
    assert {r.piece for r in seam.left} == {"F"}
    assert {r.piece for r in seam.right} == {"BD"}
    front = sheet.edge("F", "band").path
    assert n.X - front.start.x == pytest.approx(n.b_stand, abs=0.1 * MM)
    assert seam.notches[0].left == pytest.approx(n.yW - front.start.y, abs=0.1 * MM)
    assert not cut_faults(d)


@pytest.mark.parametrize("body", [P92, P116, THEA, YSOLDE, *ansur_women()[::40]])
def test_shirts_of_real_bodies(body: Body) -> None:
    d = sewn(shirt(*SHIRT), body)
    assert not cut_faults(d)


@pytest.mark.parametrize("body", [P116, THEA, *ansur_women()[::240]])
@pytest.mark.parametrize("lines", ["darts", "armhole", "shoulder", "mixed"])
@pytest.mark.parametrize("stand", [ButtonStand(), CUT_ON, BAND])
def test_every_edge_and_every_line(body: Body, lines: str, stand: ButtonStand) -> None:
    assert not cut_faults(sewn(shirt(stand, ShirtCollar(), lines=lines), body))


@pytest.mark.parametrize("stand", [ButtonStand(), BAND])
def test_sleeveless(stand: ButtonStand) -> None:
    for body in (P92, THEA, *ansur_women()[::240]):
        assert not cut_faults(sewn(shirt(stand, sleeves=False), body))


@pytest.mark.parametrize(
    "stand",
    [ButtonStand(), ButtonStand(rows=Rows.DOUBLE), ButtonStand(where=Where.BACK)],
)
def test_a_lining_hangs_beside_the_facing(stand: ButtonStand) -> None:
    """As much shorter beside it as it hangs shorter at the hem; the facing is cut back
    for its roll at the shoulder (14.5)."""
    d = sewn(shirt(stand, Lining(mode=Mode.BELOW_FACING)))
    front = stand.where is Where.FRONT
    seam = d.sheet.seam("LF" if front else "LB")
    lining, facing = (d.sheet.chain_length(c) for c in (seam.left, seam.right))
    assert facing - lining == pytest.approx(d.numbers.short, abs=d.numbers.rho + MM)
    assert not cut_faults(d)


def test_what_is_cut_and_how_it_is_sewn() -> None:
    """The facing, in one from neck to hem, is sewn to the edge while the body lies flat
    (cutting and costing 5), from the neck down; the hem comes last."""
    d = sewn(shirt(*SHIRT))
    making = making_order(d)
    cut = {c: [p.code for p in of] for c, of in cutting_sheet(making).cloths.items()}
    assert {"F", "B", "SL", "CU", "CO", "CS", "FF", "BF"} <= set(cut["shell"])
    assert "FFP" not in cut["shell"]
    ops = {op.title: op for op in making.operations}
    titles = list(ops)
    faced = titles.index("Face the front edges")
    assert titles.index("Face the neck") < faced < titles.index("Sew the sides")
    assert faced < titles.index("Hem the lower edge")
    across = {(r.piece, r.edge) for r in ops["Face the front edges"].edges}
    assert across == {("F", "hem stand"), ("FF", "lower"), ("FF", "lower stand")}
    said = " ".join(s for op in making.operations for s in op.says)
    assert "waist seam" not in said


def test_what_it_refuses() -> None:
    with pytest.raises(OrderError, match="centre back seam, which a top that buttons"):
        draft(order(P92, shirt(Vent())))
    wide = ButtonStand(rows=Rows.DOUBLE, stand=8.0, facing=13.0)
    with pytest.raises(OrderError, match=r"make (it|the facing).* narrower"):
        draft(order(P92, shirt(wide, NeckFacing(width=12.0))))
    none = tuple(f for f in shirt() if f.kind != "button stand")
    with pytest.raises(OrderError, match='add a "concealed zip", an "underarm zip"'):
        draft(order(P92, none))


def test_a_long_narrow_one_is_left_open_at_the_foot() -> None:
    """No vent is cut in a back without a seam; open below the last button by as much,
    it is walked in."""
    long = Torso(length=110.0, flare=-2.0)
    d = draft(order(P92, shirt(long)))
    (found,) = (f for f in d.findings if f.code == "stride")
    assert "below the last button" in found.to_do
    open_ = draft(order(P92, shirt(long, ButtonStand(above_hem=20.0))))
    assert not [f for f in open_.findings if f.code == "stride"]


@pytest.mark.parametrize("body", [P92, THEA, *ansur_women()[::400]])
def test_a_band_runs_down_a_torso_behind(body: Body) -> None:
    """One band from the neck to the hem, 25 below the waist; a front on the fold."""
    behind = ButtonStand(edge=Edging.BAND, where=Where.BACK)
    d = sewn(shirt(behind, Lining(mode=Mode.BELOW_FACING)), body)
    assert not cut_faults(d)
    band, n = d.sheet.piece("BD"), d.numbers
    assert band.edge("side").path.bounds()[3] == pytest.approx(n.yW + 25.0, abs=MM)
    assert d.sheet.edge("F", "cf").kind is EdgeKind.FOLD
    edge = d.sheet.length("B", "band")
    assert band.edge("side").length == pytest.approx(edge, abs=0.1 * MM)
