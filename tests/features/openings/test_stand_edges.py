"""How the edge of a button stand is finished: a facing cut on, or a band sewn on
(transformations 1.10, 6 and 7)."""

import pytest
from shapely.geometry import LineString, Polygon

from bodies import BRIDA, P92, P116, THEA, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.back_waist_dart_rules import BackPlace
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.collars.convertible_collar import ConvertibleCollar
from clothwright.features.collars.flat_collar import FlatCollar
from clothwright.features.collars.shawl_collar import ShawlCollar
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.collars.stand_collar import StandCollar
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.openings.button_stand import (
    ButtonStand,
    Lie,
    Rows,
    Where,
)
from clothwright.features.openings.stand_button import HOLE
from clothwright.features.openings.stand_edging import Edging
from clothwright.features.skirts.dress_skirt import DressSkirt
from clothwright.features.skirts.peplum import Cut, Peplum
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, draft, pattern
from clothwright.order.together import disagreements
from clothwright.paper import EdgeKind, MarkKind
from clothwright.truing import walk
from orders import closed_back, order, refused, sleeved_features, swapped

MM = 0.1
CUT_ON, BAND = (ButtonStand(edge=e) for e in (Edging.CUT_ON, Edging.BAND))


def buttoned(stand: ButtonStand, *swaps: Feature) -> tuple[Feature, ...]:
    return swapped(sleeved_features(*swaps), stand, place_of="concealed zip")


def made(stand: ButtonStand, *swaps: Feature, body: Body = P92) -> Draft:
    d = draft(order(body, buttoned(stand, *swaps)))
    assert not d.failed, d.failures()
    return d


def test_a_facing_cut_on_is_the_mirror_of_one_sewn_on() -> None:
    """Paper never stretches: the front with its facing has the area of both, each edge
    keeps its length, and nothing is left to sew along the fold (1.10)."""
    apart, d = made(ButtonStand()).sheet, made(CUT_ON)
    one = d.sheet
    for shell, facing, inside in (("FC", "FF", "IF"), ("PF", "FFP", "IFP")):
        both = apart.piece(shell).area + apart.piece(facing).area
        assert one.piece(shell).area == pytest.approx(both, abs=0.5 * MM**2)
        mine = sorted(round(e.length, 4) for e in one.piece(shell).edges)
        parts = (*apart.piece(shell).edges, *apart.piece(facing).edges)
        theirs = sorted(round(e.length, 4) for e in parts if e.name != "stand")
        assert mine == pytest.approx(theirs, abs=0.01 * MM)
        assert one.piece(inside).area == pytest.approx(apart.piece(facing).area)
        fold = next(k.path for k in one.piece(shell).lines if "fold" in k.name)
        assert fold.length == pytest.approx(apart.length(shell, "stand"), abs=1e-6)
    assert not {"FF", "FFP"} & set(one.pieces)
    assert not [s for s in one.seams if s.code in ("S70", "S71")]
    neck = one.seam("S8")
    assert {r.piece for r in neck.runs()} == {"FC"}
    wide = one.length("FC", "foot") + one.length("FC", "foot stand")
    assert wide == pytest.approx(2 * d.numbers.b_stand + 3.5, abs=0.5 * MM)


def test_the_interlining_of_a_cut_on_facing_ends_at_its_fold() -> None:
    d = made(CUT_ON)
    sheet = cutting_sheet(making_order(d))
    cut = {c: [p.code for p in of] for c, of in sheet.cloths.items()}
    assert cut["interlining"] == ["BF", "IF", "IFP"]
    assert not {"IF", "IFP"} & set(cut["shell"])
    told = [op.title for op in making_order(d).operations]
    assert "Turn the front facings back" in told
    assert not [t for t in told if "oose edges of" in t]


def test_a_band_is_twice_the_stand_wide_with_the_centre_down_its_middle() -> None:
    """Finished 2·b, cut double; the front is cut back by b; band and front together
    have the neck that the front had (7: buttonholes of shirts along the line)."""
    plain, d = made(ButtonStand()).sheet, made(BAND)
    sheet, b = d.sheet, d.numbers.b_stand
    band = sheet.piece("BD")
    fold, centre = (
        next(k.path for k in band.lines if k.name == name)
        for name in ("fold", "centre front")
    )
    side, inside = band.edge("side").path, band.edge("inside").path
    assert fold.start.x - side.start.x == pytest.approx(2 * b, abs=0.1 * MM)
    assert inside.start.x - fold.start.x == pytest.approx(2 * b, abs=0.1 * MM)
    assert centre.start.x - side.start.x == pytest.approx(b, abs=0.1 * MM)
    neck = sheet.length("FC", "neck") + sheet.length("BD", "neck")
    assert neck == pytest.approx(plain.length("FC", "neck"), abs=0.1 * MM)
    on = plain.length("FC", "neck stand")
    assert sheet.length("BD", "neck stand") == pytest.approx(on, abs=0.01 * MM)
    sewn = sheet.length("FC", "band") + sheet.length("PF", "band")
    assert side.length == pytest.approx(sewn, abs=0.1 * MM)
    less = plain.length("FC", "waist") - sheet.length("FC", "waist")
    assert less == pytest.approx(b, abs=0.5 * MM)
    holes = [k.path for k in band.lines if k.name.startswith("buttonhole")]
    marks = [m for m in band.marks if m.kind is MarkKind.BUTTON]
    assert len(holes) == len(marks) >= 4
    for hole in holes:
        assert hole.start.x == hole.end.x == pytest.approx(centre.start.x)
    assert sheet.edge("FF", "end").kind is EdgeKind.FINISHED


def test_buttons_lie_in_a_band_where_they_lie_on_a_stand() -> None:
    """On a long skirt, too: the centre line of bodice and skirt is one."""
    stand, band = (
        draft(order(THEA, swapped(top, DressSkirt(), place_of="peplum"))).sheet
        for e in (Edging.FACED, Edging.BAND)
        for top in (buttoned(ButtonStand(edge=e)),)
    )
    mine = sorted(m.at.y for m in band.piece("BD").marks)
    low = stand.piece("PF")
    line = next(k.path for k in low.lines if k.name == "centre front")
    waist = stand.piece("FC").edge("stand").path
    down = waist.end.y - min(line.start.y, line.end.y)
    theirs = [m.at.y for m in stand.piece("FC").marks if m.kind is MarkKind.BUTTON]
    theirs += [m.at.y + down for m in low.marks if m.kind is MarkKind.BUTTON]
    assert mine == pytest.approx(sorted(theirs), abs=0.5 * MM)


@pytest.mark.parametrize("edge", [Edging.CUT_ON, Edging.BAND])
@pytest.mark.parametrize("collar", [ShirtCollar(), StandCollar(), ConvertibleCollar()])
def test_collars_go_round_the_same_neck(edge: Edging, collar: Feature) -> None:
    """The collar of a faced edge fits a cut-on one and a banded one: its neck edge has
    one length, and its seam walks to the same end."""
    seams = [
        (d.sheet, d.sheet.seam("S80"))
        for e in (Edging.FACED, edge)
        for d in (made(ButtonStand(edge=e), collar),)
    ]
    (a, faced), (b, other) = seams
    for side in ("left", "right"):
        mine, theirs = (
            sheet.chain_length(getattr(seam, side))
            for sheet, seam in ((a, faced), (b, other))
        )
        assert theirs == pytest.approx(mine, abs=0.2 * MM)
    assert faced.end == other.end


def test_a_band_is_sewn_on_before_the_collar() -> None:
    order_ = [op.seams for op in making_order(made(BAND, ShirtCollar())).operations]
    at = {code: i for i, seams in enumerate(order_) for code in seams}
    assert at["S5"] < at["S118"] < at["S80"] == at["S8"]
    said = [op.title for op in making_order(made(BAND, ShirtCollar())).operations]
    order_of = ("Set the collar", "Fell the facing's ends", "Tack the facing down")
    places = [next(i for i, t in enumerate(said) if w in t) for w in order_of]
    assert places == sorted(places), "a facing is felled when it is sewn to the neck"
    plain = [op.seams for op in making_order(made(BAND)).operations]
    at = {code: i for i, seams in enumerate(plain) for code in seams}
    assert at["S8"] < at["S5"] < at["S118"] == at["S119"] == at["S120"]


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("collar", [ShirtCollar(), StandCollar()])
def test_a_stand_that_laps_over_has_its_button(where: Where, collar: Feature) -> None:
    """On the centre line half way up, its buttonhole from 0.3 beyond that (7), whole
    within the stand; one button more is bought, and worked."""
    plain, d = made(ButtonStand(where=where)), made(ButtonStand(where=where), collar)
    stand = d.sheet.piece("CS")
    (mark,) = (m for m in stand.marks if m.kind is MarkKind.BUTTON)
    (hole,) = (k.path for k in stand.lines if k.name == HOLE)
    shape = Polygon(stand.outline.flatten(0.01))
    line = LineString([hole.start, hole.end])
    assert shape.contains(line)
    assert hole.length == pytest.approx(d.numbers.d_button + 0.3)
    assert distance(hole.start, mark.at) == pytest.approx(0.3)
    feet = [e.path for e in stand.edges if e.name.startswith("neck")]
    corner = min(distance(p.start, mark.at) for p in feet)
    high = d.numbers.c_high if where is Where.BACK else front_of(d, collar)
    assert corner == pytest.approx(high / 2, abs=0.2 * MM)
    counts = [cutting_sheet(making_order(k)).notions[0].count for k in (plain, d)]
    assert counts[1] == counts[0] + 1


def front_of(d: Draft, collar: Feature) -> float:
    shirt = isinstance(collar, ShirtCollar)
    return d.numbers.c_front if shirt else d.numbers.c_high


def test_a_stand_that_meets_edge_to_edge_has_none() -> None:
    d = draft(order(P92, sleeved_features(ShirtCollar())))
    assert not d.sheet.piece("CS").marks


@pytest.mark.parametrize("body", [P92, P116, THEA, *ansur_women()[::160]])
@pytest.mark.parametrize("edge", [Edging.CUT_ON, Edging.BAND])
@pytest.mark.parametrize("cut", [Cut.PANELLED, Cut.GATHERED])
def test_edges_on_real_bodies(body: Body, edge: Edging, cut: Cut) -> None:
    features = buttoned(ButtonStand(edge=edge), Peplum(cut=cut), ShirtCollar())
    d = draft(order(body, features, estimates=RuleSet.SURVEY))
    assert not pattern(d, words=False).failed, pattern(d, words=False).findings


@pytest.mark.parametrize("lines", ["armhole", "shoulder", "darts", "mixed"])
def test_every_bodice_takes_a_band(lines: str) -> None:
    features = swapped(closed_back(lines=lines), BAND, place_of="concealed zip")
    assert not pattern(draft(order(THEA, features)), words=False).failed


def test_a_back_is_cut_on_too() -> None:
    d = made(ButtonStand(edge=Edging.CUT_ON, where=Where.BACK, rows=Rows.DOUBLE))
    assert {"IB", "IBP"} <= set(d.sheet.pieces)
    assert not {"BF", "BFP"} & set(d.sheet.pieces)
    assert not pattern(d, words=False).failed


def test_a_lining_hangs_from_a_cut_on_facing() -> None:
    d = made(CUT_ON, Lining(mode=Mode.BELOW_FACING))
    join = d.sheet.seam("LF")
    assert {(r.piece, r.edge) for r in join.right} == {("FC", "free")}
    assert not pattern(d, words=False).failed


@pytest.mark.parametrize("body", [P92, P116, THEA, *ansur_women()[::240]])
@pytest.mark.parametrize("sleeves", [True, False])
def test_a_lining_lies_on_the_seam_of_a_band(body: Body, sleeves: bool) -> None:
    """From the end of the facing to its own hem, shorter than the shell's by 1.5 (15);
    the half that the band leaves is as wide as the shell's."""
    lining = Lining(mode=Mode.BELOW_FACING)
    features = (
        buttoned(BAND, lining)
        if sleeves
        else swapped(closed_back(lining=lining.mode), BAND, place_of="concealed zip")
    )
    d = draft(order(body, features, estimates=RuleSet.SURVEY))
    assert not d.failed, d.failures()
    assert not pattern(d, words=False).failed
    sheet, seam = d.sheet, d.sheet.seam("LS118")
    assert walk(sheet, seam).severity is None
    whole = sheet.chain_length(sheet.seam("S118").left)
    less = sheet.length("FF", "end") + 1.5
    assert sheet.chain_length(seam.left) == pytest.approx(whole - less, abs=1.5 * MM)
    for piece in ("FC", "PF"):
        x = sheet.edge(piece, "band").path.end.x
        assert sheet.edge(f"L.{piece}", "band").path.end.x == pytest.approx(x)
    told = [op.title for op in making_order(d).operations]
    places = [
        told.index(t)
        for t in (
            "Sew the front bands on",
            "Join the lining to the facing",
            "Fell the lining to the front bands",
        )
    ]
    assert places == sorted(places)


BEHIND = ButtonStand(edge=Edging.BAND, where=Where.BACK)


def test_a_band_behind_is_as_one_in_front() -> None:
    """The back is cut back by b; the band, twice that wide, has its middle on the
    centre back; back, skirt and band have what they had of neck and waist (7)."""
    plain, d = made(ButtonStand(where=Where.BACK)).sheet, made(BEHIND)
    sheet, b = d.sheet, d.numbers.b_stand
    band = sheet.piece("BD")
    centre = next(k.path for k in band.lines if k.name == "centre back")
    fold = next(k.path for k in band.lines if k.name == "fold")
    side, inside = band.edge("side").path, band.edge("inside").path
    assert centre.start.x == pytest.approx(0.0, abs=0.01 * MM)
    assert side.start.x == pytest.approx(b, abs=0.1 * MM)
    assert fold.start.x == pytest.approx(-b, abs=0.1 * MM)
    assert inside.start.x == pytest.approx(-3 * b, abs=0.1 * MM)
    for code in ("BC", "PB"):
        edge = sheet.edge(code, "band").path
        assert edge.start.x == pytest.approx(b, abs=0.1 * MM)
        assert edge.end.x == pytest.approx(b, abs=0.1 * MM)
    neck = sheet.length("BC", "neck") + sheet.length("BD", "neck")
    assert neck == pytest.approx(plain.length("BC", "neck"), abs=0.1 * MM)
    less = plain.length("BC", "waist") - sheet.length("BC", "waist")
    assert less == pytest.approx(b, abs=0.5 * MM)
    assert sheet.edge("BF", "end").kind is EdgeKind.FINISHED
    assert band.area > 0, "a loop turned over runs clockwise again"
    marks = [m for m in band.marks if m.kind is MarkKind.BUTTON]
    assert len(marks) >= 4
    assert all(m.at.x == pytest.approx(0.0, abs=0.01 * MM) for m in marks)


@pytest.mark.parametrize("body", [P92, P116, THEA, *ansur_women()[::240]])
@pytest.mark.parametrize("cut", [Cut.PANELLED, Cut.GATHERED])
def test_bands_behind_on_real_bodies(body: Body, cut: Cut) -> None:
    lining = Lining(mode=Mode.BELOW_FACING)
    for more in ((ShirtCollar(),), (lining,)):
        features = buttoned(BEHIND, Peplum(cut=cut), *more)
        d = draft(order(body, features, estimates=RuleSet.SURVEY))
        assert not pattern(d, words=False).failed, pattern(d, words=False).findings
        for s in d.sheet.seams:
            if s.code in ("S69", "S79", "S99", "S80", "S9", "S6", "LS69"):
                assert walk(d.sheet, s).severity is None, s.code
        told = [op.title for op in making_order(d).operations]
        assert "Sew the back bands on" in told


@pytest.mark.parametrize(
    "collar", [ShirtCollar(), StandCollar(), ConvertibleCollar(), FlatCollar()]
)
def test_a_collar_over_a_band_behind_is_as_over_a_stand(collar: Feature) -> None:
    """The neck that it is drafted from is the same, its neck edge of one length."""
    one, other = (
        made(stand, collar).sheet for stand in (ButtonStand(where=Where.BACK), BEHIND)
    )
    for side in ("left", "right"):
        mine, its = (s.chain_length(getattr(s.seam("S80"), side)) for s in (one, other))
        assert its == pytest.approx(mine, abs=0.2 * MM)
    assert one.seam("S80").start == other.seam("S80").start


@pytest.mark.parametrize("lines", ["armhole", "shoulder", "darts", "mixed"])
def test_every_back_takes_a_band(lines: str) -> None:
    for mode in (None, Mode.BELOW_FACING):
        top = closed_back(lines=lines, lining=mode)
        features = swapped(top, BEHIND, place_of="concealed zip")
        assert not pattern(draft(order(THEA, features)), words=False).failed


def test_buttonholes_across_a_narrow_band_are_refused() -> None:
    """In a band of 3.0 one for a button of 1.5 would end on the seam: 1.5 inside."""
    stand = ButtonStand(edge=Edging.BAND, lie=Lie.ACROSS)
    d = draft(order(P92, buttoned(stand)))
    assert [f.code for f in d.findings if f.code == "BT5"]
    wide = ButtonStand(edge=Edging.BAND, lie=Lie.ACROSS, stand=2.5)
    assert not draft(order(P92, buttoned(wide))).failed


def test_what_an_edge_is_not_for_is_said() -> None:
    double = ButtonStand(edge=Edging.BAND, rows=Rows.DOUBLE)
    assert "one row of buttons" in refused(*buttoned(double))
    assert "facing of its own" in refused(*buttoned(CUT_ON, ShawlCollar()))
    assert "have one of its own" in refused(*buttoned(BAND, ShawlCollar()))


def test_a_band_is_cut_twice_and_interlined() -> None:
    d = made(BAND, SetInSleeve())
    sheet = cutting_sheet(making_order(d))
    for cloth in ("shell", "interlining"):
        piece = next(p for p in sheet.cloths[cloth] if p.code == "BD")
        assert piece.count == 2


def test_a_banded_top_is_told_where_to_line_it() -> None:
    """Not to the edge, but below the facing: the lining need not be left off."""
    stand, lining = ButtonStand(edge=Edging.BAND), Lining(mode=Mode.TO_EDGE)
    (told,) = [d.why for d in disagreements((stand, lining)) if d.leave and not d.add]
    assert "line below the facing" in told


@pytest.mark.parametrize("body", [P92, P116, THEA], ids=lambda b: b.client)
@pytest.mark.parametrize("where", list(Where))
@pytest.mark.parametrize("lined", [False, True])
def test_an_all_in_one_facing_is_cut_on(where: Where, lined: bool, body: Body) -> None:
    """Neck, armhole and edge in one, turned over along the edge: paper never stretches,
    so that area and every length are kept (1.10), and the sides of both facings are
    sewn with the sides."""
    more = (Lining(mode=Mode.BELOW_FACING),) if lined else ()

    def top(edge: Edging) -> tuple[Feature, ...]:
        stand = ButtonStand(edge=edge, where=where)
        return (*swapped(closed_back(), stand, place_of="concealed zip"), *more)

    apart, d = (draft(order(body, top(e))) for e in (Edging.FACED, Edging.CUT_ON))
    assert not d.failed, d.failures()
    it = pattern(d, words=False)
    assert not it.failed, it.findings
    shell, facing, inside = (
        ("FC", "FF", "IF")
        if where is Where.FRONT
        else (
            "BC",
            "BF",
            "IB",
        )
    )
    both = apart.sheet.piece(shell).area + apart.sheet.piece(facing).area
    assert d.sheet.piece(shell).area == pytest.approx(both, abs=0.5 * MM**2)
    assert facing not in d.sheet.pieces
    assert d.sheet.piece(inside).area == pytest.approx(apart.sheet.piece(facing).area)
    for code in ("S8", "S9", "S10", "S11", "S12", "S13"):
        mine, theirs = (k.sheet.seam(code) for k in (d, apart))
        for side in ("left", "right"):
            assert d.sheet.chain_length(getattr(mine, side)) == pytest.approx(
                apart.sheet.chain_length(getattr(theirs, side)), abs=0.01 * MM
            )
    titles = [op.title for op in making_order(d).operations]
    assert "Join the pieces of the facing" in titles


def test_a_stand_s_notches_stay_on_shoulder_and_centre() -> None:
    """A back dart led up to the shoulder opens there, not in the neck: the notches of
    the collar's stand still meet the shoulder seam and the centre front (exact)."""
    dart = BackWaistDart(to=BackPlace.SHOULDER)
    swaps = (dart, SideDart(), StandCollar(), SetInSleeve())
    gone = ("front armhole princess", "back armhole princess")
    features = tuple(f for f in buttoned(BAND, *swaps) if f.kind not in gone)
    d = draft(order(BRIDA, features))
    seam = next(s for s in d.sheet.seams if s.name == "stand to the neck")
    back, front, band, _ = (d.sheet.length(r.piece, r.edge) for r in seam.left)
    shoulder, centre = (k.left for k in seam.notches)
    assert shoulder == pytest.approx(back, abs=0.01 * MM)
    assert centre == pytest.approx(back + front + band, abs=0.01 * MM)
    assert not [str(f) for f in d.findings if f.code == "notch"]


def test_where_a_band_is_sewn_on_is_said() -> None:
    drawn = {p.code: p for p in pattern(made(BAND)).drawn.pieces}
    for code in ("FC", "PF"):
        assert "seam of the band" in [t.text for t in drawn[code].texts]
