"""Pockets of skirts and dresses (transformations §9): places, bags, patches, welts."""

import math

import pytest
from shapely.geometry import Polygon

from bodies import BRIDA, P80, P92, P116, THEA, ansur_women
from clothwright.blocks.skirt import FRONT
from clothwright.body import Body, RuleSet
from clothwright.curves import degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.pockets.set_on import Shape as Made
from clothwright.features.pockets.set_on_drawing import HIP
from clothwright.features.pockets.set_pocket import On, SetPocket
from clothwright.features.skirts.centre_pleat import CentrePleat
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.skirts.fitted_dress_skirt import FittedDressSkirt
from clothwright.features.skirts.pocket_drawing import BAG, HIP_PIECE
from clothwright.features.skirts.skirt_lining import SkirtLining
from clothwright.features.skirts.skirt_pockets import SkirtPockets
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.skirt_zip import Where as Zip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.waist_facing import WaistFacing
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.trousers.trouser_pockets import Shape
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.units import Unit
from orders import closed_back, order
from verdict import verdict

MM = 0.1
SKIRT = (StraightSkirt(), SkirtZip(), Waistband())
SLANT = SkirtPockets(shape=Shape.SLANT)
DRESS = (
    *(f for f in closed_back(lines="darts") if f.kind not in ("waist seam", "peplum")),
    WaistSeam(),
    FittedDressSkirt(),
)

KINDS: dict[str, tuple[Feature, ...]] = {
    "in the seam": (*SKIRT, SkirtPockets()),
    "in the seam, lined": (*SKIRT, SkirtPockets(), SkirtLining()),
    "slanting, lined": (*SKIRT, SLANT, SkirtLining()),
    "slanting, faced": (StraightSkirt(flare=4.0), SkirtZip(), WaistFacing(), SLANT),
    "slanting beside a pleat": (*SKIRT, SLANT, CentrePleat()),
    "patch": (*SKIRT, SetPocket()),
    "mitred patch behind": (*SKIRT, SetPocket(on=On.BACK, corner=0.0)),
    "welt": (*SKIRT, SetPocket(shape=Made.WELT)),
    "in the seam of a dress": (*DRESS, SkirtPockets()),
    "patch on a dress": (*DRESS, SetPocket()),
}


def made(*features: Feature, body: Body = THEA) -> Draft:
    return draft(order(body, features))


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", [P92, P116, BRIDA, THEA], ids=lambda b: b.client)
def test_they_pass_and_their_cut_lines_hold(kind: str, body: Body) -> None:
    d = made(*KINDS[kind], body=body)
    assert not d.failed, d.failures()
    done = pattern(d, words=False)
    assert not done.drawn.failures
    for piece in done.drawn.pieces:
        cut = Polygon(piece.cut_line.flatten(0.002))
        net = Polygon(d.sheet.piece(piece.code).outline.flatten(0.002))
        assert cut.is_valid
        assert cut.buffer(0.1 * MM).contains(net)
        assert piece.cuts
    assert making_order(d).operations


@pytest.mark.parametrize("kind", ["slanting, lined", "welt", "patch"])
def test_inches(kind: str) -> None:
    d = draft(order(BRIDA, KINDS[kind], unit=Unit.IN))
    assert not d.failed, d.failures()


def test_a_mouth_in_the_side_seam_is_notched() -> None:
    """16 cm from 5 cm below the waist (§9); the front's side keeps its length."""
    d, plain = made(*KINDS["in the seam"]), made(*SKIRT)
    at = [k.left for k in d.sheet.seam("S34").notches]
    assert 5.0 in at
    assert 21.0 in at
    assert d.sheet.length(FRONT, "side") == plain.sheet.length(FRONT, "side")
    bag = d.sheet.piece(BAG).outline.bounds()
    side = d.sheet.edge(FRONT, "side").path
    foot = side.at_length(side.length - 28.0)
    assert bag[2] - foot.x == pytest.approx(15.5, abs=0.1 * MM)
    dress = made(*KINDS["in the seam of a dress"])
    assert {5.0, 21.0} <= {k.left for k in dress.sheet.seam("S7").notches}


def test_a_slanting_pocket_is_the_front_cut_in_two() -> None:
    plain, d = made(*SKIRT), made(*KINDS["slanting, lined"])
    n = d.numbers
    piece = d.sheet.piece(FRONT)
    mouth = piece.edge("pocket").path
    across = distance(mouth.start, mouth.end)
    assert across == pytest.approx(mouth.length)
    assert n.pk_end == 17.0
    for edge in ("side", "waist side"):
        whole = plain.sheet.length(FRONT, edge)
        parts = piece.edge(edge).length + d.sheet.length(HIP_PIECE, edge)
        assert parts == pytest.approx(whole, abs=0.1 * MM)
    assert d.sheet.length(HIP_PIECE, "side") == pytest.approx(17.0, abs=0.1 * MM)
    # it stays beside the dart, and the lining hangs whole behind it
    assert piece.edge("waist side").length > 0.5
    assert d.sheet.length(f"L.{FRONT}", "side") > d.sheet.length(FRONT, "side") + 10


def test_the_top_of_a_bag_is_the_waist_with_its_darts_sewn() -> None:
    """Over both darts the bag is straight on; its first stretch is the side's own."""
    d = made(*KINDS["in the seam"])
    under = d.sheet.edge(BAG, "waist under").path
    own = d.sheet.edge(FRONT, "waist side").path
    assert under.length > own.length + 1.0
    for i in range(5):
        s = own.length * i / 5
        assert distance(under.at_length(s), own.at_length(s)) < 0.1 * MM
    for a, b in zip(under.segments, under.segments[1:], strict=False):
        assert degrees_between(a.end_direction, b.start_direction) < 3.0


def test_a_patch_is_its_rectangle_less_its_corners() -> None:
    """13 by 15 cm (§9), each corner of radius 2 takes r²(1 − π/4) off."""
    d = made(*KINDS["patch"])
    area = 13.0 * 15.0 - 2 * 4.0 * (1 - math.pi / 4)
    assert d.sheet.piece(HIP.patch).area == pytest.approx(area, abs=0.02)
    square = made(*KINDS["mitred patch behind"])
    assert square.sheet.piece(HIP.patch).area == pytest.approx(195.0)
    line = next(k for k in d.sheet.piece(FRONT).lines if k.name == "patch pocket")
    side = d.sheet.edge(FRONT, "side").path
    assert min(side.nearest(p)[1] for p in line.path.flatten(0.05)) > 3.0
    cut = next(p for p in pattern(d, words=False).drawn.pieces if p.code == HIP.patch)
    assert cut.cuts[0].how == "2 (1 pair)"
    _, top, _, low = cut.cut_line.bounds()
    assert low - top == pytest.approx(15.0 + 2.5 + 1.0, abs=0.1 * MM)


def test_a_welt_folds_to_its_height_and_its_bag_hangs_from_the_mouth() -> None:
    d = made(*KINDS["welt"])
    welt, bag = d.sheet.piece(HIP.welt), d.sheet.piece(HIP.bag)
    assert welt.area == pytest.approx(13.0 * 5.0)
    fold = next(k.path for k in welt.lines if k.name == "fold")
    assert fold.start.y == pytest.approx(2.5)
    lines = {k.name: k.path for k in d.sheet.piece(FRONT).lines}
    a, b = lines["welt pocket"], lines["upper stitching"]
    assert a.start.y - b.start.y == pytest.approx(1.0)
    left, top, right, _ = bag.outline.bounds()
    assert top == pytest.approx(b.start.y)
    assert (a.start.x - left, right - a.end.x) == pytest.approx((2.0, 2.0))


def test_no_bag_comes_within_two_centimetres_of_the_centre() -> None:
    d = made(*SKIRT, SkirtPockets(bag_width=22.0), body=P80)
    centre = d.sheet.edge(FRONT, "waist").path.end.x
    clear = centre - d.sheet.piece(BAG).outline.bounds()[2]
    assert clear < 2.0
    assert any("from the centre front; 2 cm must stay" in f for f in d.failures())


@pytest.mark.parametrize(
    ("features", "says"),
    [
        ((*SKIRT[:1], SkirtZip(where=Zip.SIDE), Waistband(), SkirtPockets()), "centre"),
        ((*DRESS, SLANT), 'choose shape = "in the side seam"'),
        ((*SKIRT, SkirtPockets(shape=Shape.SLANT, across=11.0)), "make pt"),
        ((*SKIRT, SetPocket(width=20.0)), "set it"),
        ((*SKIRT, SetPocket(), SkirtPockets()), "one pair of pockets"),
        ((*SKIRT[:2], ContourBand(), SkirtPockets()), "straight waistband"),
        (
            (StraightSkirt(length=30.0), *SKIRT[1:], SkirtPockets()),
            "make it less deep",
        ),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        made(*features)


def test_a_pocket_too_near_to_the_hem_is_refused() -> None:
    d = made(StraightSkirt(length=40.0), *SKIRT[1:], SetPocket(below=25.0))
    assert any("above the hem" in f for f in d.failures())


WOMEN = ansur_women()[::45]


@pytest.mark.parametrize(
    "kind", ["in the seam", "slanting, lined", "patch", "in the seam of a dress"]
)
def test_real_women(kind: str) -> None:
    """Every 45th woman of the survey: passed, or refused as the plain skirt is."""
    assert len(WOMEN) >= 20
    plain = DRESS if "dress" in kind else SKIRT
    for body in WOMEN:
        it = verdict(order(body, KINDS[kind], estimates=RuleSet.SURVEY))
        bare = verdict(order(body, plain, estimates=RuleSet.SURVEY))
        assert it.refusals == bare.refusals, (body.client, it.refusals)
