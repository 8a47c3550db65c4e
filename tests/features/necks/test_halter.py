"""Halters (transformations 1.8 and 2)."""

import dataclasses
import math
from itertools import product

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.front_princess import FrontArmholePrincess
from clothwright.features.necks.halter import Halter, HalterNeck
from clothwright.features.necks.necklines import BackNeckline
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import OrderError, draft
from orders import closed_back, cut_faults, order, swapped

MM = 0.1
DEGREE = 1.0


def held(halter: Halter) -> tuple[Feature, ...]:
    gone = ("neckline", "back neckline", "sleeveless armhole")
    block, *rest = (f for f in closed_back(lines="darts") if f.kind not in gone)
    return (block, halter, *rest)


@pytest.mark.parametrize(
    ("body", "shape"),
    list(product((P80, P92, P116, BRIDA, YSOLDE, THEA), HalterNeck)),
)
def test_front_and_back_are_cut_away(body: Body, shape: HalterNeck) -> None:
    """Strap at the neck point, underarm raised by as much on both sides, back at the
    level ordered, its edge running on from the armhole over the side."""
    made = draft(order(body, held(Halter(shape=shape, contour=0.0))))
    plain = draft(order(body, closed_back(lines="darts")))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    n, sheet = made.numbers, made.sheet
    f, b = sheet.piece("F"), sheet.piece("B")
    assert f.edge("shoulder").length == pytest.approx(n.strap)
    inner = f.edge("shoulder").path.end
    assert distance(inner, sheet.points["hf"]) == pytest.approx(n.dw, abs=1e-6)
    assert not b.has("shoulder")
    assert b.edge("neck").path.start.y == pytest.approx(n.yB + n.bt)
    for code, side in (("F", "side high"), ("B", "side")):
        was = plain.sheet.piece(code).edge(side).length
        longer = sheet.length(code, side) - was
        assert longer == pytest.approx(n.ur, abs=MM / 2)
    assert b.interior_angle("neck") == pytest.approx(90.0, abs=DEGREE)
    # the dart ends below the facing
    point = b.edge("leg side").path.end
    assert point.y == pytest.approx(n.y_top + 4.0)


@pytest.mark.parametrize("body", [P80, P92, BRIDA, THEA])  # one side dart each
def test_the_armhole_is_drawn_in(body: Body) -> None:
    """1.2·(0.6 + 0.1·c), within 1.0 to 2.0 for usual cups (1.8), folded out towards BP:
    the dart opens by 2·asin(cn/(2·reach))."""
    made = draft(order(body, held(Halter())))
    plain = draft(order(body, held(Halter(contour=0.0))))
    n = made.numbers
    assert n.cn == pytest.approx(min(2.0, 1.2 * min(1.8, max(0.6, 0.6 + 0.1 * n.c))))
    turn = math.degrees(2 * math.asin(n.cn / (2 * n.reach_n)))
    opened = []
    for d in (plain, made):
        front, bp = d.sheet.piece("F"), d.sheet.points["BP"]
        low, high = front.edge("dart low").path.start, front.edge("dart high").path.end
        opened.append(degrees_between(low - bp, high - bp))
    assert opened[1] - opened[0] == pytest.approx(turn, abs=1e-3)
    # measured on the paper, the wedge starts where the rule has it
    assert distance(plain.sheet.points["BP"], made.sheet.points["Mn"]) == pytest.approx(
        n.reach_n, abs=MM / 10
    )
    shorter = plain.sheet.length("F", "armhole") - made.sheet.length("F", "armhole")
    assert 0.2 < shorter < 2 * n.cn


def test_the_band_goes_round_the_neck() -> None:
    """Half of it from the nape to the strap's middle; or NN less what the front takes
    from the bust point to there (exact)."""
    made = draft(order(BRIDA, held(Halter())))
    n, hb = made.numbers, made.sheet.points["hb"]
    straight = math.hypot(hb.x, hb.y)
    assert straight < n.nh < straight + n.dw + n.strap / 2 + MM
    band = made.sheet.piece("HN")
    assert band.edge("band upper").length == pytest.approx(n.nh + 1.25)
    value = dataclasses.replace(BRIDA.values["NBP"], code="NN", value=36.0)
    body = dataclasses.replace(BRIDA, values={**BRIDA.values, "NN": value})
    taped = draft(order(body, held(Halter(strap_taken=True))))
    p = taped.sheet.points
    middle = (p["Nf"] + p["Tf"]) * 0.5
    bp = p["BP"]
    assert taped.numbers.nh == pytest.approx(
        36.0 - math.dist((middle[0], middle[1]), (bp.x, bp.y)), abs=1e-6
    )


@pytest.mark.parametrize("halter", [Halter(), Halter(shape=HalterNeck.ROUND, strap=6)])
def test_real_women(halter: Halter) -> None:
    """Every 40th woman of the survey passes every check."""
    for body in ansur_women()[::40]:
        made = draft(order(body, held(halter), estimates=RuleSet.SURVEY))
        assert not made.failed, made.failures()
        assert not cut_faults(made)


def test_it_is_made_and_cut() -> None:
    making = making_order(draft(order(BRIDA, held(Halter()))))
    titles = [op.title for op in making.operations]
    band = titles.index("Make the band and sew it to the straps")
    assert band < titles.index("Face the neck")
    cut = {c.code: c for c in cutting_sheet(making).cloths["shell"]}
    assert cut["HN"].count == 4
    hooks = [n for n in cutting_sheet(making).notions if n.article.value[:4] == "hook"]
    assert sum(n.count for n in hooks) == 3  # two at the nape, one at the zip


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (BackNeckline(), "one neckline"),
        (FrontArmholePrincess(), "in one piece"),
    ],
)
def test_what_does_not_go_together(more: Feature, says: str) -> None:
    features = held(Halter())
    if more.kind == "front armhole princess":
        features = swapped(features, more, place_of="side dart")
    else:
        features = (*features, more)
    with pytest.raises(OrderError, match=says):
        draft(order(BRIDA, features))


def test_doubts_and_faults() -> None:
    """A neck below the bust is refused, a low back and a bare cup are doubted."""
    deep = draft(order(BRIDA, held(Halter(depth=30.0))))
    assert any("below the bust points" in f for f in deep.failures())
    low = draft(order(BRIDA, held(Halter(back=6.0))))
    assert any("line of the brassiere" in str(f) for f in low.findings)
    with pytest.raises(OrderError, match="NN"):
        draft(order(BRIDA, held(Halter(strap_taken=True))))


def test_sides_that_differ_end_at_one_level() -> None:
    """Shoulders of two slopes: both halves' centres are of one length (truing 1)."""
    slope = BRIDA.values["SS"]
    left = {"SS": dataclasses.replace(slope, value=slope.value + 4.0)}
    made = draft(order(dataclasses.replace(BRIDA, left=left), held(Halter())))
    assert {"F", "B"} <= made.apart
    assert not made.failed, made.failures()
    right, other = (made.sheet.edge(c, "cb").length for c in ("B", "B-L"))
    assert right == pytest.approx(other, abs=MM)
