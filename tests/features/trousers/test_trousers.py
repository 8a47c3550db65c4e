"""Trousers: fly, side zip, pockets, pleats, turn-ups and hems, against exact paper."""

import re
from dataclasses import replace

import pytest
from shapely.geometry import LineString, Polygon
from shapely.geometry import Point as Dot

from bodies import P80, P92, P116, THEA, ansur_whole
from clothwright.blocks.trousers import BACK, FRONT
from clothwright.body import Body
from clothwright.curves import Path, Point, degrees_between, distance
from clothwright.features import Feature
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.skirts.pocket_drawing import BAG, HIP_PIECE
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.trousers.fly import FACING, SHIELD, Fly
from clothwright.features.trousers.pleats import Pleats
from clothwright.features.trousers.trouser_findings import across
from clothwright.features.trousers.trouser_pockets import Pockets, Shape
from clothwright.features.trousers.trouser_zip import SideZip
from clothwright.features.trousers.trousers import Trousers
from clothwright.features.trousers.turn_ups import TurnUps
from clothwright.findings import Severity
from clothwright.order import Draft, OrderError, Pattern, draft, pattern
from clothwright.paper import Piece, SeamKind
from clothwright.sheets.telling import tell
from clothwright.truing import walk
from orders import order, trouser_features
from women import woman

MM = 0.1


def made(*swaps: Feature, body: Body = P92) -> Draft:
    return draft(order(body, trouser_features(*swaps)))


def finished(*swaps: Feature) -> Pattern:
    it = pattern(made(*swaps), words=False)
    assert not it.failed, it.findings
    return it


def refused(*features: Feature, body: Body = P92) -> str:
    with pytest.raises(OrderError) as e:
        draft(order(body, features))
    return str(e.value)


def polygon(piece: Piece) -> Polygon:
    return Polygon(piece.outline.flatten(0.001))


# -- the order -------------------------------------------------------------------------
def test_what_trousers_need() -> None:
    assert 'kind = "fly" or kind = "side zip"' in refused(Trousers(), Waistband())
    assert 'kind = "waistband"' in refused(Trousers(), Fly())
    assert "trousers open once" in refused(Trousers(), Fly(), SideZip(), Waistband())
    assert "one block" in refused(Trousers(), StraightSkirt(), Fly(), Waistband())
    assert "a fly is for trousers" in refused(StraightSkirt(), Fly(), Waistband())


@pytest.mark.parametrize(
    "swaps",
    [
        (),
        (SideZip(),),
        (TurnUps(),),
        (Pockets(),),
        (Pockets(shape=Shape.SEAM),),
        (Pleats(),),
        (Pleats(second=2.0), Pockets(shape=Shape.SEAM), TurnUps()),
        (Pleats(first=4.0), Pockets()),
        (Trousers(hem=60.0, knee=46.0),),
        (Trousers(inside_leg=50.0),),
    ],
    ids=str,
)
def test_all_is_sewn_and_finished(swaps: tuple[Feature, ...]) -> None:
    """Every seam walks, no outline and no cut line crosses itself (shapely)."""
    it = finished(*swaps)
    for seam in it.draft.sheet.seams:
        assert walk(it.draft.sheet, seam).holds, seam.name
    for drawn in it.drawn.pieces:
        net = polygon(it.draft.sheet.piece(drawn.code))
        cut = Polygon(drawn.cut_line.flatten(0.002))
        assert net.is_valid
        assert cut.is_valid
        assert cut.buffer(0.1 * MM).contains(net)


def test_steps_say_which_way_the_side_lies() -> None:
    d = made()
    said = {
        s.makes: tell(s, d.order.unit, d.numbers, d.sheet)
        for s in d.steps
        if s.makes in ("Hfs", "Hbs", "Ff", "Fb")
    }
    assert "towards the side" in said["Hfs"]
    assert "towards the side" in said["Hbs"]
    assert "towards the centre front" in said["Ff"]
    assert "towards the centre back" in said["Fb"]


# -- fly and zip -----------------------------------------------------------------------
def test_the_fly_s_facing_is_the_front_s_edge_turned_over() -> None:
    d = made()
    front, facing = d.sheet.piece(FRONT), d.sheet.piece(FACING)
    assert facing.edge("fly").length == pytest.approx(d.numbers.z_fly, abs=1e-6)
    top = facing.edge("top").path
    waist = front.edge("waist").path
    assert top.length == pytest.approx(d.numbers.w_fly, abs=1e-6)
    # as far from the end of the fly, on the other side of it
    fly = front.edge("fly").path
    there = distance(waist.at_length(waist.length - top.length), fly.end)
    edge = facing.edge("fly").path
    end = max((edge.start, edge.end), key=lambda p: p.y)
    far = max((top.start, top.end), key=lambda p: abs(p.x))
    assert distance(far, end) == pytest.approx(there, abs=1e-6)
    assert far.x > 0  # the front's corner lies at its left
    shield = d.sheet.piece(SHIELD)
    assert shield.edge("fly").length == pytest.approx(d.numbers.z_fly, abs=1e-9)
    assert shield.edge("top").length == pytest.approx(3.75, abs=1e-9)
    band = d.sheet.piece("WB")
    assert band.edge("underlap").length == pytest.approx(3.75, abs=1e-9)


def test_the_crotch_is_sewn_from_the_end_of_the_fly() -> None:
    d = made()
    (seam,) = (s for s in d.sheet.seams if s.kind is SeamKind.TWIN)
    assert [str(r) for r in seam.left] == ["TF.crotch", "TB.crotch", "TB.seat"]
    assert seam.notches[0].left == 0.0
    start = d.sheet.edge(FRONT, "crotch").path.start
    assert distance(start, d.sheet.points["Ef"]) < 0.1 * MM


def test_the_fly_passes_the_hip_or_says_so() -> None:
    """17 cm, or half of what the hip is wider than the waist and 0.5."""
    assert made().numbers.z_fly == 17.0
    slim = Body.of({"HT": 172, "W": 61.5, "H": 98}, client="slim")
    assert made(body=slim).numbers.z_fly == pytest.approx((98 - 63.5) / 2 + 0.5)
    d = made(Fly(length=10.0))
    (told,) = (f for f in d.findings if f.code == "Y2")
    assert told.severity is Severity.REFUSE
    assert "hip" in str(told)
    assert '(length of "fly")' in str(told)
    assert [f.code for f in made(Fly(length=19.0)).findings if f.code == "Y1"]


@pytest.mark.parametrize("body", [P80, P92, P116, *ansur_whole()[3::250]])
def test_a_fly_that_bends_with_the_crotch_is_refused(body: Body) -> None:
    """One that turns by more than 12° (our own) is no fly: refused by its length. What
    is left has a facing that does not cross itself (shapely)."""
    told = []
    for length in (18.0, 20.0, 22.0, 24.0, 26.0):
        d = made(Fly(length=length), body=body)
        fly = d.sheet.edge("TF", "fly").path
        bent = degrees_between(fly.start_direction, fly.end_direction) > 12.0
        hard = [f for f in d.findings if f.severity is Severity.REFUSE]
        told.append(
            any(f.code == "Y1" and '(length of "fly")' in f.to_do for f in hard)
        )
        assert told[-1] is bent
        facing = Polygon(d.sheet.piece("FL").outline.flatten(0.002))
        assert bent or facing.is_valid
    assert told[-1]
    assert not told[0]


def test_a_side_zip_opens_the_band_at_the_left_side() -> None:
    d = made(SideZip())
    bands = [s for s in d.sheet.seams if s.code.startswith("S30")]
    assert [s.name.split(", ")[1] for s in bands] == [
        "front left",
        "front right",
        "back right",
        "back left",
    ]
    assert FACING not in d.sheet.pieces
    side = next(s for s in d.sheet.seams if s.code == "S40")
    assert any(abs(k.left - d.numbers.z_S) < 1e-9 for k in side.notches)
    assert "close with a fly" in refused(*trouser_features(SideZip(), Pockets()))


# -- allowances ------------------------------------------------------------------------
def test_the_seat_has_an_inlay() -> None:
    """1 cm on the lower curve, from the hip growing evenly to 2.5 at the waist
    (truing 8)."""
    it = finished()
    drawn = next(p for p in it.drawn.pieces if p.code == BACK)
    ring = LineString(drawn.cut_line.flatten(0.001))
    piece = it.draft.sheet.piece(BACK)
    seat, curve = piece.edge("seat").path, piece.edge("crotch").path
    for share in (0.1, 0.5, 0.9):
        p = seat.at_length(share * seat.length)
        assert ring.distance(Dot(p)) == pytest.approx(1 + 1.5 * share, abs=0.3 * MM)
    p = curve.at_length(0.5 * curve.length)
    assert ring.distance(Dot(p)) == pytest.approx(1.0, abs=0.3 * MM)


def test_legs_of_two_lengths() -> None:
    """Drafted apart; both sides of the crotch keep their allowances, wider at the
    seat."""
    body = replace(THEA, left={"IL": Body.of({"IL": 81.0}).values["IL"]})
    it = pattern(draft(order(body, trouser_features())), words=False)
    assert not it.failed, it.findings
    drawn = {p.code: p for p in it.drawn.pieces}
    assert {"TF", "TF-L", "TB", "TB-L"} <= set(drawn)
    left = it.draft.sheet.piece("TB-L")
    seat = left.edge("seat").path
    ring = LineString(drawn["TB-L"].cut_line.flatten(0.001))
    waist = min(seat.start, seat.end, key=lambda p: p.y)
    near = seat.at_length(3.0 if waist == seat.start else seat.length - 3.0)
    assert ring.distance(Dot(near)) > 2.2


# -- pockets ---------------------------------------------------------------------------
def test_a_slanting_pocket_is_the_front_cut_in_two() -> None:
    plain, d = made(), made(Pockets())
    whole = polygon(plain.sheet.piece(FRONT))
    front, back = (polygon(d.sheet.piece(c)) for c in (FRONT, HIP_PIECE))
    both = front.union(back)
    assert both.symmetric_difference(whole).area < 0.01
    mouth = d.sheet.edge(FRONT, "pocket").path
    assert mouth.straight
    assert d.sheet.length(BAG, "pocket") == pytest.approx(mouth.length, abs=1e-9)
    assert d.sheet.length(HIP_PIECE, "waist side") == pytest.approx(6.0, abs=1e-6)
    assert d.sheet.length(HIP_PIECE, "side") == pytest.approx(17.0, abs=1e-6)
    bag = polygon(d.sheet.piece(BAG))
    assert bag.difference(whole.buffer(0.01)).area < 0.01
    assert back.covers(bag.buffer(-0.01))
    # the waist is as long as ever, over front and pocket
    chain = next(s for s in d.sheet.seams if s.name == "waistband, front right").left
    assert [str(r) for r in chain] == ["TF.waist", "TF.waist side", "TK.waist side"]
    assert d.sheet.chain_length(chain) == pytest.approx(d.numbers.w_SF, abs=0.01)


def test_a_pocket_in_the_seam_is_notched_at_its_mouth() -> None:
    d = made(Pockets(shape=Shape.SEAM))
    side = next(s for s in d.sheet.seams if s.code == "S40")
    assert {7.0, 23.0} <= {round(k.left, 6) for k in side.notches}
    it = pattern(d, words=False)
    cut = next(p.cuts for p in it.drawn.pieces if p.code == BAG)
    assert [(c.cloth, c.count) for c in cut] == [("lining", 4)]


def test_no_room_for_a_slanting_pocket() -> None:
    slim = Body.of({"HT": 168, "W": 58, "H": 104}, client="slim")
    says = refused(*trouser_features(Pockets()), body=slim)
    assert "make pt" in says
    assert "in the side seam" in says
    shallow = made(Pockets(bag=20.0))
    assert [f.code for f in shallow.findings if f.code == "P1"] == ["P1"]


# -- pleats ----------------------------------------------------------------------------
@pytest.mark.parametrize("second", [0.0, 2.0])
def test_pleats_add_fullness_and_keep_the_waist(second: float) -> None:
    """Both pleats, less what the dart would take, are set out at the side."""
    plain, d = made(), made(Pleats(second=second))
    n = d.numbers
    assert n.pl == pytest.approx(3.5 + second - plain.numbers.fd_T, abs=1e-9)
    more = across(d.sheet, FRONT, -n.yh_T) - across(plain.sheet, FRONT, -n.yh_T)
    assert more == pytest.approx(n.pl, abs=0.1 * MM)
    front = d.sheet.piece(FRONT)
    waist = [e for e in front.edges if e.name.startswith("waist")]
    assert sum(e.length for e in waist) == pytest.approx(n.w_SF, abs=0.1 * MM)
    a, b = front.edge("pleat centre").path, front.edge("pleat side").path
    wide = distance(a.end, b.start)
    assert wide == pytest.approx(3.5, abs=0.2)  # as cut, after truing
    assert front.has("pleat side 2") == (second > 0)
    knee = Path.line(Point(-99.0, n.yk + 0.01), Point(99.0, n.yk + 0.01))
    xs = [knee.at_length(s).x for _, s in front.outline.meets(knee)]
    assert max(xs) + min(xs) == pytest.approx(0.0, abs=0.1 * MM)


def test_shallow_pleats_are_told() -> None:
    assert [f.code for f in made(Pleats(first=1.5)).findings if f.code == "L1"]


# -- waist -----------------------------------------------------------------------------
def contoured(*more: Feature) -> tuple[Feature, ...]:
    return (Trousers(), *more, ContourBand())


@pytest.mark.parametrize("way", [Fly(), SideZip()], ids=lambda f: f.kind)
def test_a_shaped_band_is_the_top_with_the_darts_closed(way: Feature) -> None:
    """Its upper edge is the waist, its foot the trousers' new edge; the hip curve turns
    below the waist, and the seam runs on over the side all the same."""
    d = draft(order(P92, contoured(way)))
    n, sheet = d.numbers, d.sheet
    for band, code, key in (("WCF", FRONT, "w_SF"), ("WCB", BACK, "w_SB")):
        assert sheet.length(band, "waist") == pytest.approx(n[key], abs=0.01)
        below = sum(
            e.length for e in sheet.piece(code).edges if e.name.startswith("waist")
        )
        assert sheet.length(band, "foot of band") == pytest.approx(below, abs=0.02)
    sums = {a.joint.name: a.sum for a in d.report.angles}
    assert sums["trouser waist over the side"] == pytest.approx(180.0, abs=0.5)
    it = pattern(d, words=False)
    assert not it.failed, it.findings
    assert sheet.piece("WCF").has("underlap") == (way.kind == "fly")
    if way.kind == "fly":
        left = n.z_fly - n.h_contour
        assert sheet.length(FRONT, "fly") == pytest.approx(left, abs=0.1)
        assert sheet.length(FACING, "fly") == pytest.approx(left, abs=0.1)


def test_a_band_too_deep_for_its_hollow() -> None:
    """Two darts closed hollow the waist tighter than the band is deep: refused in
    words, never a line that turns back on itself."""
    slim = Body.of({"HT": 160, "W": 58, "H": 96}, client="slim")
    own = (Trousers(hip_ease=10.0, rise_ease=2.5), SideZip(), ContourBand(depth=10.0))
    says = refused(*own, body=slim)
    assert "make it less deep" in says


def test_pockets_need_a_straight_band() -> None:
    says = refused(*contoured(Fly(), Pockets()))
    assert "straight waistband" in says


# -- hems ------------------------------------------------------------------------------
def test_turn_ups_lie_on_the_leg() -> None:
    """Twice the depth is added; at each level the cloth is as wide as the leg that it
    is folded onto."""
    plain, d = made(Trousers(hem=40.0)), made(TurnUps(), Trousers(hem=40.0))
    n = d.numbers
    for code in (FRONT, BACK):
        more = d.sheet.length(code, "inseam") - plain.sheet.length(code, "inseam")
        assert more == pytest.approx(2 * n.tu, abs=0.1 * MM)
        for down in (1.0, 2.5, 3.9):
            there = across(d.sheet, code, n.leg - down)
            assert across(d.sheet, code, n.leg + down) == pytest.approx(
                there, abs=0.1 * MM
            )
            assert across(d.sheet, code, n.leg + 2 * n.tu - down) == pytest.approx(
                across(d.sheet, code, n.leg + down), abs=0.1 * MM
            )
    flared = trouser_features(TurnUps(), Trousers(hem=64.0))
    says = refused(*flared)
    low, high = re.findall(r"which is 64.0 cm, (\S+) cm to (\S+) cm", says)[0]
    for hem, good in ((low, True), (high, True), (float(high) + 0.2, False)):
        asked = trouser_features(TurnUps(), Trousers(hem=float(hem)))
        if good:
            assert not draft(order(P92, asked)).failed
        else:
            assert "nearly straight" in refused(*asked)


@pytest.mark.parametrize("body", [woman(i) for i in (15, 20, 22, 41)])
def test_turn_ups_lie_on_a_large_woman_s_leg(body: Body) -> None:
    """Her knee (KN + 8) is too wide for a hem of AN + 18 to be turned up on: the hem is
    only so much narrower that each side leans by 0.06."""
    features = (Trousers(), Fly(length=22.0), TurnUps(), Waistband())
    n = draft(order(body, features)).numbers
    assert (n.KW - n.HW) / 4 / (n.leg - n.yk) <= 0.06 + 1e-6
    assert n.HW >= n.AN + 18.0 - 1e-6


@pytest.mark.parametrize("hem", [36.0, 40.0, 52.0, 64.0])
def test_the_hem_meets_the_seams(hem: float) -> None:
    """Ruled while the seams lean under 1.5°, else square to both."""
    d = made(Trousers(knee=44.0, hem=hem))
    for code in (FRONT, BACK):
        piece = d.sheet.piece(code)
        for edge in ("hem", piece.before("hem").name):
            off = abs(piece.interior_angle(edge) - 90.0)
            assert off < (1.6 if hem == 40.0 else 0.1)


@pytest.mark.parametrize(
    ("knee", "hem", "barrel"),
    [(None, None, False), (70.0, 34.0, True), (70.0, 80.0, False), (50.0, 40.0, False)],
)
def test_a_barrel_is_doubted(
    knee: float | None, hem: float | None, barrel: bool
) -> None:
    """A knee 4 cm wider than the straight from the thigh to the hem (our own)."""
    d = made(Trousers(knee=knee, hem=hem))
    assert ("T11" in {f.code for f in d.findings}) is barrel


def test_doubts_about_the_leg() -> None:
    """A knee that binds, a hem that the foot does not pass."""
    d = made(Trousers(knee=36.0, hem=28.0), body=THEA)
    codes = {f.code: f.severity for f in d.findings}
    assert codes["knee"] is Severity.WARN
    assert codes["foot"] is Severity.REFUSE
    assert "make leg longer" in refused(*trouser_features(Trousers(inside_leg=30.0)))
