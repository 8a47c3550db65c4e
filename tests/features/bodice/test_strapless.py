"""Strapless bodices (transformations 1.8, blocks A1.5, cutting and costing 3)."""

import math
from itertools import pairwise, product

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_whole, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.block import Block, Depth
from clothwright.features.bodice.armhole import SleevelessArmhole
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.strapless import Strapless, TopShape
from clothwright.features.bodice.strapless_rules import half_top
from clothwright.features.collars.stand_collar import StandCollar
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.linings.underlining import Underlining
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.necks.straps import Straps
from clothwright.features.skirts.dress_skirt import DressSkirt
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import Draft, OrderError, draft
from orders import closed_back, cut_faults, order

MM = 0.1
LINES = ("armhole", "shoulder", "darts", "mixed")


def held(
    strapless: Strapless | None = None,
    lines: str = "armhole",
    lining: Mode | None = None,
    way: BackShoulder = BackShoulder.BY_STYLE,
    dart: float | None = None,
) -> tuple[Feature, ...]:
    gone = ("neckline", "back neckline", "sleeveless armhole")
    features = closed_back(way, dart=dart, lines=lines, lining=lining)
    block, *rest = (f for f in features if f.kind not in gone)
    return (block, strapless or Strapless(), *rest)


def made(
    body: Body,
    strapless: Strapless | None = None,
    lines: str = "armhole",
    lining: Mode | None = None,
) -> Draft:
    return draft(order(body, held(strapless, lines, lining)))


@pytest.mark.parametrize(("shape", "lines"), list(product(TopShape, LINES)))
@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, YSOLDE, THEA])
def test_it_is_cut_along_its_top_edge(body: Body, shape: TopShape, lines: str) -> None:
    """Over the bust, at the centre front, at the side and at the centre back the top
    edge lies where its numbers say; neck, shoulder and armhole are gone."""
    d = made(body, Strapless(shape=shape), lines)
    assert not d.failed, d.failures()
    assert not cut_faults(d)
    n, sheet = d.numbers, d.sheet
    bp = sheet.points["BP"]
    for piece in sheet.pieces.values():
        assert not any(piece.has(e) for e in ("neck", "shoulder", "armhole"))
    front = sheet.piece("FC" if "FC" in sheet.pieces else "F")
    centre = front.edge("top edge").path.end
    assert centre.y == pytest.approx(bp.y - n.ht + n.dip)
    assert sheet.points["Kt"].y == pytest.approx(bp.y - n.ht)
    back = sheet.piece("BC" if "BC" in sheet.pieces else "B")
    assert back.edge("top edge").path.start.y == pytest.approx(n.yB + n.bt)
    # blocks A1.5: up to 1 cm above the armpit, measured along the lean of the side
    side = sheet.length("BS" if "BS" in sheet.pieces else "B", "side")
    plain = draft(order(body, closed_back(lines=lines))).sheet
    was = plain.length("BS" if "BS" in plain.pieces else "B", "side")
    assert side - was == pytest.approx(n.ur, abs=2 * MM)
    assert n.ur == pytest.approx(n.yB - n.AS + 0.5, abs=MM)


@pytest.mark.parametrize("lines", LINES)
@pytest.mark.parametrize("body", [P92, BRIDA, THEA])
def test_the_top_edge_holds_to_the_body(body: Body, lines: str) -> None:
    """Laid level it is HB less a hundredth (1.8: body less 0 to 2 in 100), where the
    seams can take that; no seam takes more than 1.2 (1.8)."""
    d = made(body, lines=lines)
    n = d.numbers
    assert n.top_half == pytest.approx(n.HB / 2 * 0.99)
    taken = next(s for s in d.steps if s.says.startswith("front cut away"))
    by = taken.amounts[0].value if taken.amounts else 0.0
    assert by <= 0.6 + 1e-9
    if 0.0 < by < 0.6 - 1e-3:
        assert half_top(d.sheet) == pytest.approx(n.top_half, abs=MM / 2)
    loose = any(f.code == "TE3" for f in d.findings)
    assert loose == (2 * (half_top(d.sheet) - n.HB / 2) > 1.0)


def test_the_wedge_is_a_turn_about_the_bust_point() -> None:
    """0.9·(0.6 + 0.1·c) at the top edge (1.8), so wide at its reach: the bust dart
    opens by 2·asin(cn/(2·ht)); between the busts by another, of a sweetheart alone."""
    plain = made(BRIDA, lines="mixed").numbers
    assert plain.cn == pytest.approx(
        min(1.2, max(0.6, 0.9 * (0.6 + 0.1 * plain.c))), abs=1e-9
    )
    opened = math.degrees(2 * math.asin(plain.cn / (2 * plain.ht)))
    assert plain.phi_n == pytest.approx(opened)
    assert plain.ht == pytest.approx(plain.BUB + 1.5)
    heart = made(BRIDA, Strapless(shape=TopShape.SWEETHEART), "mixed").numbers
    assert heart.cm == 1.0
    assert heart.phi_n > opened + 3.0


def test_panels_meet_above_the_bust() -> None:
    """Both edges of the panel seam are one line above the bust, laid together."""
    sheet = made(P92).sheet
    a = sheet.edge("FC", "panel").path.reversed()
    b = sheet.edge("FS", "panel").path
    for s, t in pairwise((0.0, 1.5, 3.0, 4.5)):
        gap = distance(a.at_length(s), a.at_length(t))
        assert distance(b.at_length(s), b.at_length(t)) == pytest.approx(gap, abs=1e-4)


def test_there_is_no_ease_unless_it_is_ordered() -> None:
    """Ease level 0 (measurements 8); a choice of hers stands."""
    assert made(P92).numbers.Eb == 0.0
    block, *rest = held()
    eased = (block.model_copy(update={"bust_ease": 4.0}), *rest)
    d = draft(order(P92, eased))
    assert d.numbers.Eb == 4.0
    assert any(f.code == "TE7" for f in d.findings)


@pytest.mark.parametrize("lines", ["armhole", "darts"])
def test_real_women(lines: str) -> None:
    """Every 60th woman of the survey passes every check, faced and lined."""
    for body in ansur_women()[::60]:
        for lining in (None, Mode.TO_EDGE):
            heart = Strapless(shape=TopShape.SWEETHEART)
            features = held(heart, lines, lining)
            d = draft(order(body, features, estimates=RuleSet.SURVEY))
            assert not d.failed, d.failures()
            assert not cut_faults(d)


def test_it_hangs_with_a_skirt() -> None:
    features = tuple(
        DressSkirt() if f.kind == "peplum" else f for f in held(lining=Mode.TO_EDGE)
    )
    d = draft(order(BRIDA, features))
    assert not d.failed, d.failures()


def test_bones_and_stay_are_bought_and_sewn() -> None:
    """Bones end 1.2 short of both ends of each seam; the stay is W − 0.5 and 4 to lap
    (cutting and costing 3)."""
    d = made(BRIDA)
    n, making = d.numbers, making_order(d)
    bones = [b for b in cutting_sheet(making).notions if b.article.value == "bone"]
    assert [b.count for b in bones] == [2, 2, 2, 2]
    assert bones[0].length == pytest.approx(d.sheet.length("FC", "panel") - 2.4)
    stay = next(
        b for b in cutting_sheet(making).notions if "petersham" in b.article.value
    )
    assert stay.length == pytest.approx(n.W + 3.5)
    titles = [op.title for op in making.operations]
    bone = titles.index("Sew the channels on and put in the bones")
    assert titles.index("Sew the sides") < bone < titles.index("Sew the waist")
    assert "Face the top edge" in titles
    assert "Mount the bodice on its net layer" in titles
    told = [b.where for b in cutting_sheet(making).notions]
    assert not any(" cm" in where for where in told)  # in either unit
    taped = {r.piece for f in d.order.features for r in f.taped(d.sheet)}
    assert {"FC", "FS", "BC", "BS"} <= taped
    cut = {c.code for c in cutting_sheet(making).cloths["underlining"]}
    assert cut == {"FC", "FS", "BC", "BS"}


def test_it_has_neither_neck_nor_armholes_to_stay() -> None:
    d = draft(order(BRIDA, (*held(), Straps())))
    told = {op.title: op.says for op in making_order(d).operations}
    assert not any("Stay-stitch" in title for title in told)
    assert "below the top edge" in told["Put in the concealed zip"][0]
    plain = making_order(draft(order(BRIDA, closed_back()))).operations
    zipped = next(op for op in plain if op.title == "Put in the concealed zip")
    assert "below the neck" in zipped.says[0]


def test_heights_at_an_armhole_that_is_gone_are_not_told() -> None:
    """Lines that leave the armhole at different heights are said to; not where the top
    edge has cut it away."""
    lines = closed_back(share=0.6)
    panels = tuple(f for f in lines if f.kind == "back armhole princess")
    cut_away = tuple(panels[0] if f.kind == panels[0].kind else f for f in held())
    for features, told in ((lines, 1), (cut_away, 0)):
        found = draft(order(BRIDA, features)).findings
        assert len([f for f in found if f.code == "P5"]) == told


def test_a_lining_is_bagged_to_the_top_edge() -> None:
    d = made(BRIDA, lining=Mode.TO_EDGE)
    assert {"LE7", "LE8"} <= {s.code for s in d.sheet.seams}
    assert "Bag out the top edge" in [o.title for o in making_order(d).operations]


@pytest.mark.parametrize(
    ("strapless", "code"),
    [
        (Strapless(dip=8.0), "TE1"),
        (Strapless(back=8.0), "TE6"),
        (Strapless(above=5.0), "TE2"),
        (Strapless(contour=2.0, between=2.0), "TE4"),
    ],
)
def test_what_is_doubted(strapless: Strapless, code: str) -> None:
    d = made(P92, strapless)
    assert code in {f.code for f in d.findings}


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (Neckline(), "one front neckline"),
        (BackNeckline(), "one neckline"),
        (SleevelessArmhole(), "one kind of armhole"),
        (StandCollar(), "no neck for a collar"),
        (Underlining(), "net of its own"),
        (Lining(), "to the edge"),
    ],
)
def test_what_does_not_go_together(more: Feature, says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(BRIDA, (*held(), more)))


def test_the_shoulder_is_left_out() -> None:
    with pytest.raises(OrderError, match="leave back_shoulder out"):
        draft(order(BRIDA, held(way=BackShoulder.TO_PANEL)))


def test_a_shoulder_dart_is_left_out() -> None:
    """Of an order, and of a house's rules."""
    asked = order(BRIDA, held(way=BackShoulder.NONE, dart=1.3))
    ruled = order(BRIDA, held(), house='unit = "cm"\n[rules]\nsd = 1.3')
    for each in (asked, ruled):
        with pytest.raises(OrderError, match="leave the back shoulder dart"):
            draft(each)


def test_a_pitch_that_is_off_the_armhole_is_told_by_the_share() -> None:
    """Where the armhole of a woman turns so sharply that it is drawn in beside its
    pitch, the line over the bust cannot start there; from a share of it, it does."""
    block = Block(bust_ease=5.02, depth=Depth.MEASURED)
    top = Strapless(shape=TopShape.SWEETHEART, back=1.54, between=2.0)
    features = held(top)
    features = tuple(block if f.kind == "bodice block" else f for f in features)
    asked = order(ansur_whole()[304], features, estimates=RuleSet.HANDBOOK)
    with pytest.raises(OrderError, match="set share"):
        draft(asked)


def test_its_panels_are_told_from_its_top_edge() -> None:
    """A strapless bodice has no armhole for a princess line to begin at."""
    with_top = held(lines="armhole")
    without = [f for f in with_top if f.kind != "strapless"]
    for f in with_top:
        if "armhole princess" in f.kind:
            assert "from the top edge" in f.said_beside(with_top)
            assert "from the armhole" in f.said_beside(without)
