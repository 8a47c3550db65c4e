"""Pockets in the seams of a gored skirt on its own (transformations §9)."""

from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.pockets.panel_pocket import PanelPocket
from clothwright.features.pockets.panel_seam_pockets import PanelSeamPockets, Towards
from clothwright.features.pockets.panels import On
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.skirts.flounce import Flounce
from clothwright.features.skirts.godets import Godets
from clothwright.features.skirts.gored_skirt import GoredSkirt, Gores
from clothwright.features.skirts.skirt_lining import SkirtLining
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.waist_facing import WaistFacing
from clothwright.features.skirts.waistband import Waistband
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from making.test_order import complete
from orders import cut_faults, order

MM = 0.1
IN_SEAMS = PanelSeamPockets(on=On.GORES)


def gored(*more: Feature, gores: Gores = Gores.SIX) -> tuple[Feature, ...]:
    own = {f.kind for f in more}
    finish = () if own & {"waist facing", "contour waistband"} else (Waistband(),)
    return (GoredSkirt(gores=gores), SkirtZip(), *finish, *more)


def sound(body: Body, *features: Feature) -> Draft:
    made = draft(order(body, features))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    complete(making_order(made))
    return made


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA])
def test_the_bag_hangs_along_the_seam_of_a_gore(body: Body) -> None:
    """Its own edge lies on the gore's, from 3 cm above the mouth to its depth; the gore
    is what it was, but for the notches of the mouth on both its edges."""
    plain, made = sound(body, *gored()), sound(body, *gored(IN_SEAMS))
    assert made.sheet.piece("SG").outline == plain.sheet.piece("SG").outline
    seam = made.sheet.edge("SG", "seam").path
    held = made.sheet.edge("TR", "panel under").path
    for k in range(11):
        assert seam.nearest(held.at_length(held.length * k / 10))[1] < 0.01 * MM
    n = made.numbers
    ends = sorted(seam.length_to_point(p) for p in (held.start, held.end))
    assert ends[1] == pytest.approx(n.pk_deep, abs=MM)
    notches = {round(k.left, 3) for k in made.sheet.seam("S37").notches}
    assert {round(n.pk_begin, 3), round(n.pk_begin + n.pk_mouth, 3)} <= notches
    assert round(n.z_S, 3) in notches
    assert not [f for f in made.findings if "notches" in f.sentence]


def test_the_bag_lies_behind_the_next_gore() -> None:
    made = sound(P92, *gored(IN_SEAMS))
    box, gore = (made.sheet.piece(c).outline.bounds() for c in ("TR", "SG"))
    at = made.sheet.edge("SG", "seam").path.at_length(made.numbers.pk_begin).x
    assert box[2] < at + 2.0 and box[0] > gore[0]


@pytest.mark.parametrize("gores", list(Gores))
def test_of_so_many_gores(gores: Gores) -> None:
    """A gore that is narrower than the bag is told; the bag needs a hand's room."""
    made = sound(THEA, *gored(IN_SEAMS, gores=gores))
    narrow = any(f.code == "PB1" for f in made.findings)
    assert narrow is (gores in (Gores.EIGHT, Gores.TEN, Gores.TWELVE))


@pytest.mark.parametrize(
    "more", [(SkirtLining(),), (WaistFacing(),), (Flounce(),), (Godets(),)]
)
def test_beside_what_else_a_gored_skirt_has(more: tuple[Feature, ...]) -> None:
    sound(THEA, *gored(IN_SEAMS, *more))


def test_two_are_sewn_on_before_and_round_after_the_gore_seams() -> None:
    made = sound(P92, *gored(IN_SEAMS))
    making = making_order(made)
    titles = [o.title for o in making.operations]
    on = titles.index("Sew the bags of the pockets to the gores")
    round_ = titles.index("Sew the bags of the pockets round")
    assert on < titles.index("Sew the gore seams") < round_
    assert making.operations[round_].count == 2.0
    said = [
        t for f in made.order.features for t in f.notes(made.numbers, made.sheet, str)
    ]
    assert any("One gore lies at the centre front" in t for t in said)


def test_real_women_get_them() -> None:
    for body in Random(37).sample(ansur_whole(), 5):
        sound(body, *gored(IN_SEAMS))


@pytest.mark.parametrize(
    ("features", "says"),
    [
        (gored(ContourBand(), IN_SEAMS), "takes the top of the gores"),
        (gored(PanelPocket(on=On.GORES)), "gored dress skirt"),
        (
            gored(PanelSeamPockets(on=On.GORES, begin=4.0, mouth=16.0)),
            "where the notch of the zip is",
        ),
        (gored(PanelSeamPockets(on=On.TORSO)), "torso"),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, features))


def test_towards_the_centre_it_needs_room() -> None:
    """Two bags in one gore keep 2 cm off the centre front each, or are refused."""
    centre = PanelSeamPockets(on=On.GORES, towards=Towards.CENTRE)
    made = draft(order(P92, gored(centre)))
    assert any("centre front; 2 cm must stay" in f for f in made.failures())
