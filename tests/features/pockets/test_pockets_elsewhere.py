"""Pockets on the front of trousers, in knits and on tiers (transformations §9): places,
pieces, order of making, real bodies."""

import pytest
from shapely.geometry import LineString, Polygon

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.blocks.trousers import FRONT
from clothwright.body import Body, RuleSet
from clothwright.curves import degrees_between, direction, distance
from clothwright.features import Feature
from clothwright.features.knits.knit_bodice import KnitBodice, Reach
from clothwright.features.knits.knit_pocket import KnitPocket
from clothwright.features.knits.knit_side_pockets import KnitSidePockets
from clothwright.features.knits.knit_skirt import KnitSkirt, Top
from clothwright.features.knits.knit_sleeve import KnitSleeve
from clothwright.features.knits.neck_band import NeckBand
from clothwright.features.operations import Stitch
from clothwright.features.pockets.back_pocket import BackPocket
from clothwright.features.pockets.front_pocket import THIGH, FrontPocket
from clothwright.features.pockets.set_on import Shape
from clothwright.features.pockets.tier_pocket import Tier, TierPocket
from clothwright.features.skirts.elastic_waist import ElasticWaist
from clothwright.features.skirts.gathered_skirt import GatheredSkirt, Tiers, depths
from clothwright.features.skirts.pocket_drawing import BAG
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.trousers.fly import Fly
from clothwright.features.trousers.pleats import Pleats
from clothwright.features.trousers.shorts import Shorts
from clothwright.features.trousers.trouser_pockets import Pockets
from clothwright.features.trousers.trousers import Trousers
from clothwright.features.trousers.turn_ups import TurnUps
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import Piece
from clothwright.units import Unit
from orders import order
from verdict import verdict

MM = 0.1
TROUSERS: tuple[Feature, ...] = (Trousers(), Fly(), Waistband())
DRESS: tuple[Feature, ...] = (KnitBodice(reach=Reach.KNEE), NeckBand(), KnitSleeve())
TOP: tuple[Feature, ...] = (KnitBodice(), NeckBand(), KnitSleeve())
SKIRT: tuple[Feature, ...] = (KnitSkirt(),)
TIERED: tuple[Feature, ...] = (
    GatheredSkirt(tiers=Tiers.THREE, length=85.0),
    ElasticWaist(),
)

KINDS: dict[str, tuple[tuple[Feature, ...], Feature]] = {
    **{f"front, {k.value}": (TROUSERS, FrontPocket(shape=k)) for k in Shape},
    "front, under pleats": ((*TROUSERS, Pleats()), FrontPocket()),
    "front, of shorts": (
        (*TROUSERS, Shorts(), BackPocket(shape=Shape.PATCH)),
        FrontPocket(),
    ),
    "thigh": ((*TROUSERS, Pockets()), FrontPocket(below=32.0)),
    "knit dress": (DRESS, KnitPocket()),
    "knit top": (TOP, KnitPocket()),
    "knit skirt": (SKIRT, KnitPocket()),
    "banded knit skirt": ((KnitSkirt(top=Top.RIB),), KnitPocket()),
    "knit dress, sides": (DRESS, KnitSidePockets()),
    "knit skirt, sides": (SKIRT, KnitSidePockets()),
    "first tier": (TIERED, TierPocket(below=4.0)),
    "second tier": (TIERED, TierPocket(tier=Tier.SECOND)),
    "one piece": ((GatheredSkirt(), ElasticWaist()), TierPocket()),
}


def made(kind: str, body: Body = THEA) -> Draft:
    features, pocket = KINDS[kind]
    unit = Unit.IN if body is BRIDA else Unit.CM
    return draft(order(body, (*features, pocket), unit=unit))


def own(*features: Feature, body: Body = THEA) -> Draft:
    return draft(order(body, features))


def marked(piece: Piece) -> LineString:
    (line,) = (k for k in piece.lines if "pocket" in k.name)
    return LineString(line.path.flatten(0.002))


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", [P92, P116, BRIDA, THEA], ids=lambda b: b.client)
def test_they_pass_and_their_cut_lines_hold(kind: str, body: Body) -> None:
    d = made(kind, body)
    assert not d.failed, d.failures()
    done = pattern(d, words=False)
    assert not done.drawn.failures
    for piece in done.drawn.pieces:
        cut = Polygon(piece.cut_line.flatten(0.002))
        net = Polygon(d.sheet.piece(piece.code).outline.flatten(0.002))
        assert cut.is_valid
        assert cut.buffer(0.1 * MM).contains(net)


@pytest.mark.parametrize("kind", KINDS)
def test_they_are_sewn_while_the_cloth_lies_flat(kind: str) -> None:
    """Flat before round (cutting and costing 5): before side, tier and waist."""
    titles = [op.title for op in making_order(made(kind)).operations]
    (at,) = (
        i
        for i, t in enumerate(titles)
        if ("pocket" in t and t.startswith(("Stitch", "Make", "Sew")))
        and "side" not in t.split("pocket")[0]
        and (kind != "thigh" or "front" in t)
        and (kind != "front, of shorts" or "front" in t)
    )
    round_ = [
        i
        for i, t in enumerate(titles)
        if "side" in t and t.startswith("Sew") and "pocket" not in t
    ]
    assert round_
    assert at < min(round_)


def test_a_front_pocket_lies_below_darts_clear_of_fly_and_side() -> None:
    """Parallel to the waist, 4 cm off the centre (2 for the bag's end, §9, and 2 that
    it is longer), its upper stitching below the darts."""
    for body in (P80, P92, P116, BRIDA):
        d = made("front, jetted", body)
        front, n = d.sheet.piece(FRONT), d.numbers
        a, b = (d.sheet.points[k] for k in THIGH.ends())
        assert distance(a, b) == pytest.approx(n.m_wide, abs=MM)
        waist = direction(front.edge("side").path.end, front.edge("waist").path.end)
        assert degrees_between(direction(a, b), waist) < 0.01
        side = front.edge("side").path
        assert side.nearest(a)[1] > 3.0
        assert front.edge("fly").path.nearest(b)[1] > 4.0 - MM
        points = [e.path.end for e in front.edges if e.name.startswith("dart centre")]
        assert all(p.y < min(a.y, b.y) - 1.0 for p in points)


def test_a_front_pocket_is_not_stitched_through_a_bag() -> None:
    d = own(*TROUSERS, Pockets(), FrontPocket())
    assert any("through the bag of the pocket at the side" in f for f in d.failures())
    bag = made("thigh").sheet.piece(BAG)
    clear = made("thigh").sheet.piece(FRONT)
    assert not Polygon(bag.outline.flatten(0.002)).intersects(marked_of(clear))


def marked_of(piece: Piece) -> LineString:
    (line,) = (k for k in piece.lines if k.name == "patch front pocket")
    return LineString(line.path.flatten(0.002))


def test_pockets_go_with_turn_ups() -> None:
    """A leg with turn-ups has no plain hem: the pocket is asked against their upper
    edge."""
    legs = (Trousers(knee=45.0, hem=44.0), Fly(), Waistband(), TurnUps())
    d = own(*legs, FrontPocket(), BackPocket())
    assert not d.failed, d.failures()
    short = Trousers(knee=45.0, hem=44.0, inside_leg=60.0)
    low = own(short, *legs[1:], FrontPocket(below=60.0, depth=30.0))
    assert any("above the hem" in f for f in low.failures())


def test_knit_patches_leave_the_centre_free_and_are_sewn_with_a_zigzag() -> None:
    for kind in ("knit top", "knit dress", "knit skirt"):
        for body in (P80, P92, P116, BRIDA):
            d = made(kind, body)
            code = "KQ" if "KQ" in d.sheet.pieces else "KF"
            piece = d.sheet.piece(code)
            assert piece.fold is not None
            fold = LineString(piece.fold.path.flatten(0.002))
            assert marked(piece).distance(fold) > 4.0 - MM
            assert Polygon(piece.outline.flatten(0.002)).contains(marked(piece))
        ops = making_order(d).operations
        (op,) = (op for op in ops if op.title == "Stitch the patch pockets on")
        assert op.stitch is Stitch.ZIGZAG


def test_a_skirt_that_is_cut_twice_has_them_on_the_front_alone() -> None:
    names = [k.name for k in made("knit skirt").sheet.piece("KQ").lines]
    assert "patch pocket, on the front" in names


@pytest.mark.parametrize("kind", ["knit dress, sides", "knit skirt, sides"])
def test_a_mouth_in_the_side_of_a_knit_is_notched_on_both_halves(kind: str) -> None:
    """16 cm long (§9: 15 to 17), from 5 cm below the waist (4 to 6)."""
    for body in (P80, P92, P116, BRIDA):
        d = made(kind, body)
        n = d.numbers
        seam = d.sheet.seam("S91" if "dress" in kind else "S121")
        sides = [k.left for k in seam.notches]
        if "dress" in kind:
            side = d.sheet.edge("KB", "side").path
            waist = side.length_to_point(d.sheet.points["Wb"])
        else:
            waist = n.casing
        for at in (n.pk_begin, n.pk_begin + n.pk_mouth):
            assert any(abs(s - waist - at) < MM for s in sides), (sides, waist, at)
        bag = d.sheet.piece(BAG)
        code = "KF" if "dress" in kind else "KQ"
        front = Polygon(d.sheet.piece(code).outline.flatten(0.002))
        own_ = Polygon(bag.outline.flatten(0.002))
        assert own_.difference(front).area < 0.1 * own_.area
        cut = next(p for p in pattern(d, words=False).drawn.pieces if p.code == BAG)
        assert [(c.how, c.cloth) for c in cut.cuts] == [("4 (2 pairs)", "shell")]


def test_a_patch_keeps_to_its_tier() -> None:
    """Tiers of 85 cm are 22.3, 27.9 and 34.8 cm deep (1 : 1.25 : 1.5625, G11)."""
    assert depths(85.0, 3)[1] == pytest.approx(85 * 1.25 / (1 + 1.25 + 1.5625))
    d = made("second tier")
    x0, y0, x1, y1 = marked(d.sheet.piece("T2")).bounds
    assert (x0, x1 - x0) == pytest.approx((10.0, 13.0))
    assert (y0, y1 - y0) == pytest.approx((6.0, 15.0))
    first = made("first tier")
    assert first.numbers.k_deep == pytest.approx(15.0)
    low = own(*TIERED, TierPocket(below=8.0))
    assert low.numbers.k_deep == pytest.approx(85 / 3.8125 - 8.0 - 3.0)


@pytest.mark.parametrize(
    ("features", "says"),
    [
        ((*SKIRT, FrontPocket()), "front of trousers"),
        ((*TROUSERS, FrontPocket(width=20.0)), "where 4 cm must stay"),
        ((*TROUSERS, KnitPocket()), "knit bodice or skirt"),
        ((*DRESS, KnitPocket(), KnitSidePockets()), "leave one pair off"),
        ((*TIERED, TierPocket(tier=Tier.FOURTH)), "no fourth tier"),
        ((*SKIRT, TierPocket()), "gathered skirt"),
        ((*TOP, KnitSidePockets(bag=40.0)), "less deep"),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        own(*features)


WOMEN = ansur_whole()[::90]


@pytest.mark.parametrize(
    "kind", ["front, jetted", "thigh", "knit top", "knit dress, sides", "second tier"]
)
def test_real_women(kind: str) -> None:
    """Every 90th woman of the survey: passed, or refused as without pockets."""
    assert len(WOMEN) >= 10
    features, pocket = KINDS[kind]
    for body in WOMEN:
        it = verdict(order(body, (*features, pocket), estimates=RuleSet.SURVEY))
        bare = verdict(order(body, features, estimates=RuleSet.SURVEY))
        assert it.refusals == bare.refusals, (body.client, it.refusals)
