"""A cut-out in a closed back (transformations 2, deep back c)."""

import math
from dataclasses import replace

import pytest
from shapely.geometry import LineString, Polygon

from bodies import P80, P92, P116, THEA, YSOLDE, ansur_whole, ansur_women
from clothwright.body import Body, MeasureValue, RuleSet
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.armhole import SleevelessArmhole
from clothwright.features.bodice.back_princess import BackArmholePrincess
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.bodice.yokes import BackYoke
from clothwright.features.collars.stand_collar import StandCollar
from clothwright.features.linings.facing import Facing
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.necks.back_strap import BackStrap
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.necks.wrap_front import WrapFront
from clothwright.features.notions import Article
from clothwright.features.openings.button_stand import ButtonStand, Where
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.openings.cut_out_back import CutOutBack
from clothwright.features.openings.cut_out_shapes import CutOutShape
from clothwright.features.openings.underarm_zip import UnderarmZip
from clothwright.features.roles import Role
from clothwright.features.skirts.dress_skirt import DressSkirt, Front
from clothwright.finishing.allowances import Allowances
from clothwright.finishing.cutline import cut_line
from clothwright.finishing.roles import role_of
from clothwright.finishing.wording import edge_words
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, draft, pattern
from clothwright.paper import EdgeKind
from clothwright.truing import walk
from clothwright.units import Unit
from orders import closed_back, cut_faults, order, refused, sleeved_features, swapped
from referee import faults

MM = 0.1
SHAPES = list(CutOutShape)
BODIES = (P80, P92, P116, THEA, YSOLDE, *ansur_women()[::240])


def on_fold(cut: CutOutBack, *swaps: Feature, lines: str = "darts") -> list[Feature]:
    """A sleeveless top that opens at the side; its back is on the fold."""
    top = swapped(closed_back(lines=lines), UnderarmZip(), place_of="concealed zip")
    for one in swaps:
        top = swapped(top, one)
    return [*top, cut]


def zipped(cut: CutOutBack, *swaps: Feature, lines: str = "darts") -> list[Feature]:
    """The same with a zip in the centre back, below the cut-out."""
    top = closed_back(lines=lines)
    for one in swaps:
        top = swapped(top, one)
    return [*top, cut]


def made(features: list[Feature], body: Body = P92) -> Draft:
    d = draft(order(body, tuple(features)))
    assert not d.failed, d.failures()
    return d


def back_of(d: Draft) -> str:
    return "BC" if "BC" in d.sheet.pieces else "B"


# -- what it is ------------------------------------------------------------------------
@pytest.mark.parametrize("shape", SHAPES)
def test_it_lies_where_her_numbers_say(shape: CutOutShape) -> None:
    """Top below the nape, foot above the waist, half width: measured on the paper."""
    cut = CutOutBack(shape=shape, top=5.0, foot=19.0, half=4.0)
    d = made(on_fold(cut))
    edge = d.sheet.edge("B", "cut-out").path
    left, top, right, foot = edge.bounds()
    assert left == pytest.approx(0.0, abs=0.01 * MM)
    assert top == pytest.approx(5.0, abs=0.01 * MM)
    assert d.numbers.yW - foot == pytest.approx(19.0, abs=0.01 * MM)
    if shape is CutOutShape.DIAMOND:  # its corner is rounded by 1 cm
        turn = 2 * math.atan((foot - top) / 2 / 4.0)  # of the corner left
        kept = 1.0 / math.sin(turn / 2) - 1.0
        assert right == pytest.approx(4.0 - kept, abs=0.1 * MM)
    else:
        assert right == pytest.approx(4.0, abs=0.1 * MM)


def test_areas_are_those_of_the_shapes() -> None:
    """A half oval is a quarter of π·width·length; the paper that is gone is that."""
    seam = ConcealedZip(shaped=False)
    plain = [f for f in zipped(CutOutBack(), seam) if f.kind != "cut-out back"]
    whole = made(plain)
    for shape in SHAPES:
        cut = CutOutBack(shape=shape, top=5.0, foot=19.0, half=4.0)
        d = made(zipped(cut, seam))
        long = d.numbers.co_long
        gone = whole.sheet.piece("B").area - d.sheet.piece("B").area
        if shape is CutOutShape.OVAL:
            assert gone == pytest.approx(math.pi * 4.0 * long / 4, rel=0.001)
        elif shape is CutOutShape.DIAMOND:
            assert gone == pytest.approx(4.0 * long / 2, abs=0.3)
        else:  # a triangle to the tangents, and the rest of the half circle
            u = math.asin(4.0 / (long - 4.0))
            leg = math.sqrt((long - 4.0) ** 2 - 16.0)
            drop = leg * 4.0 / 2 + (math.pi / 2 + u) * 16.0 / 2
            assert gone == pytest.approx(drop, rel=0.002)


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("body", BODIES)
def test_it_is_faced_and_closes_on_real_bodies(body: Body, shape: CutOutShape) -> None:
    """At its usual amounts: the facing's edge is the back's, its loose edge runs 3.5
    beside that; every seam walks, and the pattern is cut."""
    for features in (
        on_fold(CutOutBack(shape=shape)),
        zipped(CutOutBack(shape=shape), lines="armhole"),
    ):
        d = draft(order(body, tuple(features), estimates=RuleSet.SURVEY))
        assert not d.failed, d.failures()
        assert not cut_faults(d)
        sheet, code = d.sheet, back_of(d)
        seam = sheet.seam("S66")
        assert walk(sheet, seam).severity is None
        shell = Polygon(sheet.piece(code).outline.flatten(0.01))
        facing = Polygon(sheet.piece("BF").outline.flatten(0.01))
        hole = LineString(sheet.edge(code, "cut-out").path.flatten(0.01))
        assert facing.is_valid
        # all round the opening the facing is there, and nowhere wider than ordered
        beside = hole.buffer(3.5 - MM).intersection(shell)
        right = beside.intersection(facing).area
        assert right == pytest.approx(beside.area, rel=0.04)
        nape = sheet.edge(code, "cb nape").path
        assert nape.end.y == pytest.approx(sheet.points["Cb"].y, abs=0.5 * MM)


def test_the_facing_turns_no_tighter_than_its_allowance() -> None:
    """Where its loose edge comes up from a diamond and turns down to the side, by some
    120°, the hollow has room for the allowance of 1.2 (truing 8)."""
    top = (
        Block(depth_added=2.71, back_shoulder=BackShoulder.NONE, full_cup_pinched=True),
        SleevelessArmhole(narrowed=3.03),
        WrapFront(crossing=13.49),
        BackNeckline(shape=BackShape.STANDARD),
        CutOutBack(shape=CutOutShape.DIAMOND),
        BackArmholePrincess(beside=-1.35),
        SideDart(set_back=3.41),
        WaistSeam(ease=0.39),
        DressSkirt(fullness=0.8, front=Front.WRAPS),
        Facing(),
        Lining(),
    )
    d = draft(order(ansur_whole()[854], top, estimates=RuleSet.SURVEY))
    assert not d.failed, d.failures()
    facing = d.sheet.piece("BF")
    line = cut_line(facing, Allowances(Unit.CM, d.order.said))
    assert not line.narrow
    assert not list(faults(facing, line))


def test_a_zip_begins_below_it() -> None:
    """The seam of the centre back and the zip run from the foot of the cut-out."""
    plain = made([f for f in zipped(CutOutBack()) if f.kind != "cut-out back"])
    d = made(zipped(CutOutBack()))
    seam = d.sheet.seam("S21")
    assert seam.start == "cut-out"
    gone = plain.sheet.chain_length(plain.sheet.seam("S21").left)
    gone -= d.sheet.chain_length(seam.left)
    foot = d.numbers.yW - d.numbers.co_foot - d.sheet.points["Cb"].y
    assert gone == pytest.approx(foot, abs=0.3 * MM)
    zips = [
        next(
            k.length
            for k in cutting_sheet(making_order(one)).notions
            if k.article is Article.ZIP
        )
        for one in (plain, d)
    ]
    assert (zips[0] or 0.0) > (zips[1] or 0.0) + 10.0
    assert d.sheet.edge("BF", "cb").kind is EdgeKind.FINISHED
    told = [text for op in making_order(d).operations for text in op.says]
    assert any("below the cut-out to the notch" in t for t in told)


def test_tape_button_and_loop_are_counted_and_told() -> None:
    """Both edges are taped, a hundredth shorter (first garment 9.6); one button and a
    loop close the nape."""
    d = made(on_fold(CutOutBack()))
    m = making_order(d)
    notions = cutting_sheet(m).notions
    own = list(d.order.features[-1].notions(d.numbers, d.sheet))
    tape = next(k for k in own if k.article is Article.TAPE)
    assert tape.total == pytest.approx(2 * 0.99 * d.sheet.length("B", "cut-out"))
    sold = next(k for k in notions if k.article is Article.TAPE)
    assert (sold.total or 0.0) >= (tape.total or 0.0)
    assert any(k.article is Article.BALL_BUTTON for k in notions)
    assert any(k.article is Article.BIAS for k in own)
    titles = [op.title for op in m.operations]
    taped = titles.index("Tape the cut-out of the back")
    loop = titles.index(
        "Make a loop and sew it to the right edge of the cut-out at the nape"
    )
    faced = titles.index("Face the neck and the cut-out")
    button = titles.index("Sew the button to the left edge of the cut-out at the nape")
    assert taped < loop < faced < button


def test_its_place_beside_the_brassiere_is_told() -> None:
    """The line lies at yB + 4 (first garment 3.3); 2 cm above it by default."""
    d = made(on_fold(CutOutBack()))
    n = d.numbers
    assert n.yW - n.co_foot == pytest.approx(n.yB + 2.0)
    notes = pattern(d, words=False).drawn.notes
    assert any("2.0 cm above the line of the brassiere" in t for t in notes)
    low = draft(order(P92, tuple(on_fold(CutOutBack(foot=12.0)))))
    assert any(f.code == "CO1" for f in low.findings)
    assert not any(f.code == "CO1" for f in d.findings)


def test_a_neck_that_opens_behind_goes_over_the_head() -> None:
    """Edge and twice the opening come over the head and 2 (2, rule 3)."""
    cut = on_fold(CutOutBack(), Neckline(shape=FrontShape.STANDARD))
    closed = [f for f in cut if f.kind != "cut-out back"]
    assert not any(f.code == "R-j" for f in draft(order(P92, tuple(cut))).findings)
    assert any(f.code == "R-j" for f in draft(order(P92, tuple(closed))).findings)


def test_on_the_fold_the_nape_is_slashed() -> None:
    """There is no cloth beyond the fold: its edges stand off the centre by what they
    turn in, and are cut along it; beside a zip they meet."""
    d = made(on_fold(CutOutBack()))
    nape = d.sheet.edge("B", "cb nape").path
    assert nape.start.x == nape.end.x == pytest.approx(0.5)
    for code in ("B", "BF"):
        piece = d.sheet.piece(code)
        for edge in ("cb nape", "cut-out"):
            assert role_of(piece, edge, d.order.said) is Role.SLASH
    assert max(Role.SLASH.width(unit) for unit in Unit) < nape.start.x
    other = made(zipped(CutOutBack()))
    nape = other.sheet.edge("B", "cb nape").path
    assert nape.start.x == nape.end.x == pytest.approx(0.0)
    back = other.sheet.piece("B")
    assert role_of(back, "cb nape", other.order.said) is Role.EDGE


# -- what it goes with -----------------------------------------------------------------
@pytest.mark.parametrize("lines", ["armhole", "shoulder", "darts", "mixed"])
@pytest.mark.parametrize("shape", SHAPES)
def test_every_bodice_and_lining_takes_it(lines: str, shape: CutOutShape) -> None:
    cut = CutOutBack(shape=shape)
    for features in (
        on_fold(cut, lines=lines),
        zipped(cut, Lining(mode=Mode.BELOW_FACING), lines=lines),
    ):
        assert not cut_faults(made(features, YSOLDE))


def test_with_sleeves_the_neck_facing_is_led_round_it() -> None:
    for swaps in ((), (Lining(mode=Mode.BELOW_FACING),)):
        d = made([*sleeved_features(*swaps), CutOutBack(shape=CutOutShape.OVAL)])
        assert not cut_faults(d)
        assert d.sheet.piece("BF").has("cut-out")


def test_a_front_that_buttons_takes_it() -> None:
    top = swapped(sleeved_features(), ButtonStand(), place_of="concealed zip")
    assert not cut_faults(made([*top, CutOutBack()]))


@pytest.mark.parametrize("shape", [BackShape.STANDARD, BackShape.ROUND, BackShape.BOAT])
def test_it_begins_below_its_neck(shape: BackShape) -> None:
    front = Neckline(shape=FrontShape.STANDARD)
    d = made(on_fold(CutOutBack(), BackNeckline(shape=shape), front))
    assert d.sheet.length("B", "cb nape") == pytest.approx(3.0, abs=0.5 * MM)


def test_two_sides_that_differ_have_one_cut_out() -> None:
    """Shoulders that slope by 25 and 20 degrees: the neck ends at one place of the
    centre back, above the same opening."""
    values = {**P92.values, "SS": MeasureValue("SS", 25.0, "")}
    body = replace(P92, values=values, left={"SS": MeasureValue("SS", 20.0, "")})
    for features in (on_fold(CutOutBack()), zipped(CutOutBack())):
        d = made(features, body)
        assert not cut_faults(d)
        back = d.sheet.piece("B")
        other, more = d.sheet.pieces.get("B-L", back), ""
        if other is back:  # cut whole, its left half behind the fold
            more = " left"
        for edge in ("cb nape", "cut-out"):
            its = other.edge(edge + more).length
            assert its == pytest.approx(back.edge(edge).length, abs=0.5 * MM)


# -- what it refuses -------------------------------------------------------------------
def test_what_a_cut_out_refuses_is_said() -> None:
    cut = CutOutBack()
    assert "must stay for the button" in refused(*on_fold(CutOutBack(top=1.6)))
    assert "4 cm is the least" in refused(*on_fold(CutOutBack(top=20.0, foot=20.0)))
    wide = CutOutBack(top=6.0, foot=22.0, half=8.0)
    assert "take an oval" in refused(*on_fold(wide))
    low = BackNeckline(shape=BackShape.U)
    assert "back neck that closes above it" in refused(*on_fold(cut, low))
    behind = swapped(
        sleeved_features(), ButtonStand(where=Where.BACK), place_of="concealed zip"
    )
    assert "buttons down its whole length" in refused(*behind, cut)
    assert "would hang over the cut-out" in refused(
        *sleeved_features(StandCollar()), cut
    )
    assert "run into the cut-out" in refused(*on_fold(cut, BackYoke()))
    assert "needs no strap" in refused(*on_fold(cut, BackStrap()))
    bagged = swapped(tuple(on_fold(cut)), Lining(mode=Mode.TO_EDGE), place_of="facing")
    assert "line the top below the facing" in refused(*bagged)
    neck = closed_back(BackShoulder.NECK, lines="darts")
    assert "no even ground" in refused(*neck, cut)


def test_a_cut_out_too_near_the_dart_is_refused() -> None:
    """What is left is measured by shapely: 2.5 must stay (first garment 9.6), and room
    for the facing."""
    for foot, half in ((None, 9.0), (14.0, 8.5), (None, 4.0)):
        oval = CutOutBack(shape=CutOutShape.OVAL, half=half, foot=foot)
        d = draft(order(P92, tuple(on_fold(oval))))
        back = d.sheet.piece("B")
        rest = [
            LineString(e.path.flatten(0.001))
            for e in back.edges
            if e.name not in ("cb", "cut-out", "cb nape", "neck")
        ]
        hole = LineString(back.edge("cut-out").path.flatten(0.001))
        left = min(hole.distance(line) for line in rest)
        said = {f.code: f.data["left"] for f in d.findings if "left" in f.data}
        assert ("CO2" in said) is (left < 4.0)
        assert ("CO3" in said) is (left < 3.5)
        assert all(v == pytest.approx(left, abs=0.2 * MM) for v in said.values())
        assert d.failed is (left < 3.5)


def test_its_edges_have_words() -> None:
    assert edge_words("cb nape") == "centre back at the nape"
