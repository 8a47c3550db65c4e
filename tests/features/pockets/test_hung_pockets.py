"""Pockets in the sides of what is gathered, or drawn in in a casing (transformations
§8, §9): their bags hang from the side alone."""

import pytest
from shapely.geometry import Polygon

from bodies import BRIDA, P80, P92, P116, THEA, ansur_legs
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.pockets.back_pocket import BackPocket
from clothwright.features.pockets.set_on import Shape as Made
from clothwright.features.skirts.elastic_waist import ElasticWaist
from clothwright.features.skirts.gathered_skirt import GatheredSkirt, Tiers
from clothwright.features.skirts.pocket_drawing import BAG
from clothwright.features.skirts.skirt_pockets import SkirtPockets
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.trousers.fly import Fly
from clothwright.features.trousers.shorts import Shorts
from clothwright.features.trousers.trouser_elastic import TrouserElastic
from clothwright.features.trousers.trouser_pockets import Pockets, Shape
from clothwright.features.trousers.trousers import Trousers
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.sheets.steps import steps_text
from clothwright.units import Unit
from orders import order
from verdict import verdict

MM = 0.1
IN_SIDE = Pockets(shape=Shape.SEAM)
KINDS: dict[str, tuple[Feature, ...]] = {
    "gathered, elastic": (GatheredSkirt(), ElasticWaist(), SkirtPockets()),
    "gathered, banded": (GatheredSkirt(), SkirtZip(), Waistband(), SkirtPockets()),
    "trousers": (Trousers(), TrouserElastic(), IN_SIDE),
    "shorts": (
        Trousers(),
        Shorts(),
        TrouserElastic(),
        IN_SIDE,
        BackPocket(shape=Made.PATCH),
    ),
}
SIDES = {"g": ("S34", "SF"), "t": ("S40", "TF"), "s": ("S40", "TF")}


def made(kind: str, body: Body = THEA, unit: Unit = Unit.CM) -> Draft:
    return draft(order(body, KINDS[kind], unit=unit))


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA], ids=lambda b: b.client)
def test_it_passes_and_its_cut_lines_hold(kind: str, body: Body) -> None:
    d = made(kind, body, Unit.IN if body is BRIDA else Unit.CM)
    assert not d.failed, d.failures()
    done = pattern(d, words=False)
    assert not done.drawn.failures
    for piece in done.drawn.pieces:
        cut = Polygon(piece.cut_line.flatten(0.002))
        net = Polygon(d.sheet.piece(piece.code).outline.flatten(0.002))
        assert cut.is_valid
        assert cut.buffer(0.1 * MM).contains(net)
    making = next(
        op for op in making_order(d).operations if op.title == "Make the pockets"
    )
    assert "let it hang in front" in " ".join(making.says)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", [P80, P116, THEA], ids=lambda b: b.client)
def test_the_mouth_is_notched_below_the_casing_and_the_bag_hangs_from_the_side(
    kind: str, body: Body
) -> None:
    """Mouth of 16 cm (§9: 15 to 17) from its place below the waist; a casing lies above
    that; the bag begins above the mouth and clear of the casing, and ends at its
    depth."""
    d = made(kind, body)
    n, sheet = d.numbers, d.sheet
    code, front = SIDES[kind[0]]
    casing = n.casing if "casing" in n else 0.0
    notched = [k.left for k in sheet.seam(code).notches]
    for place in (n.pk_begin, n.pk_begin + n.pk_mouth):
        assert any(k == pytest.approx(place + casing) for k in notched), notched
    bag = sheet.piece(BAG)
    assert not bag.has("waist under")
    side = sheet.edge(front, "side").path
    up = side.length - side.length_to_point(bag.edge("side under").path.end)
    down = side.length - side.length_to_point(bag.edge("side under").path.start)
    assert up - casing >= (casing + 0.5 if casing else 0.0) - 1e-6
    assert up - casing <= n.pk_begin - 1.0 + 1e-6
    assert down - casing == pytest.approx(n.pk_deep, abs=0.2 * MM)
    left, _, right, _ = bag.outline.bounds()
    assert right - left >= n.pk_wide
    assert sheet.seam("S47").left == sheet.seam("S47").right
    assert "it hangs from the side alone" in "\n".join(steps_text(d))


@pytest.mark.parametrize(
    ("features", "says"),
    [
        ((Trousers(), TrouserElastic(), Pockets()), "in the side seam"),
        (
            (GatheredSkirt(tiers=Tiers.TWO), ElasticWaist(), SkirtPockets()),
            "gathered skirt in one piece",
        ),
        (
            (GatheredSkirt(), ElasticWaist(), SkirtPockets(shape=Shape.SLANT)),
            "on another choose shape",
        ),
        (
            (GatheredSkirt(), ElasticWaist(width=6.0), SkirtPockets(begin=5.0)),
            r"begin it \(begin of .skirt pockets.\) lower",
        ),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(THEA, features))


def test_a_shaped_waist_holds_its_bags_as_before() -> None:
    """Of banded trousers the bag still reaches up to the waist."""

    d = draft(order(THEA, (Trousers(), Fly(), Waistband(), IN_SIDE)))
    assert d.sheet.piece(BAG).has("waist under")


def test_real_legs() -> None:
    """Every 80th of the survey: passed, or refused as without pockets."""
    women = ansur_legs()[::80]
    assert len(women) >= 8
    plain = KINDS["trousers"][:2]
    for body in women:
        it = verdict(order(body, KINDS["trousers"], estimates=RuleSet.SURVEY))
        bare = verdict(order(body, plain, estimates=RuleSet.SURVEY))
        assert it.refusals == bare.refusals, (body.client, it.refusals)
