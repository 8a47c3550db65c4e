"""A neck whose seam lies between the layers of a collar's stand, without a facing
(transformations 6: a front facing to the hem; that the stand does the rest is common
practice, no source)."""

import pytest

from bodies import P92, P116, THEA, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.collars.collar_inside import Inside
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.collars.stand_collar import StandCollar
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.features.openings.button_stand import ButtonStand, Where
from clothwright.features.openings.stand_edging import Edging
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, draft
from clothwright.truing import walk
from features.openings.test_stand_on_torso import shirt
from orders import cut_faults, order, refused, sleeved_features, swapped

MM = 0.1
SHIRT = ShirtCollar(inside=Inside.IN_STAND)
STAND = StandCollar(inside=Inside.IN_STAND)
SINGLE = ButtonStand()


def unfaced(*more: Feature, torso: bool = False) -> tuple[Feature, ...]:
    """A sleeved top that buttons in front, without a facing of its neck."""
    stand = next((f for f in more if f.kind == "button stand"), SINGLE)
    if torso:
        top = shirt(*more)
    else:
        top = swapped(sleeved_features(*more), stand, place_of="concealed zip")
    found = {f.kind: f for f in top if f.kind != "neck facing"}
    return tuple(found.values())


def made(features: tuple[Feature, ...], body: Body = P92) -> Draft:
    d = draft(order(body, features, estimates=RuleSet.SURVEY))
    assert not d.failed, d.failures()
    return d


@pytest.mark.parametrize("body", [P92, P116, THEA, *ansur_women()[::300]])
@pytest.mark.parametrize("edge", Edging)
@pytest.mark.parametrize("torso", [False, True], ids=["waist seam", "torso"])
def test_no_neck_is_faced_on_real_bodies(body: Body, edge: Edging, torso: bool) -> None:
    for collar in (SHIRT, STAND):
        d = made(unfaced(ButtonStand(edge=edge), collar, torso=torso), body)
        assert not cut_faults(d)
        assert "BF" not in d.sheet.pieces
        assert ("FF" in d.sheet.pieces) is (edge is Edging.FACED)
        for code in ("S80", "S8"):
            for seam in (s for s in d.sheet.seams if s.code == code):
                assert walk(d.sheet, seam).severity is None


@pytest.mark.parametrize("torso", [False, True])
def test_the_facing_is_a_strip_beside_the_centre(torso: bool) -> None:
    """As wide inside the centre as the facing at the waist, all the way: 2·stand and
    3.5 in all (7); its neck lies on the front's, and ends there in the collar."""
    d = made(unfaced(SHIRT, torso=torso))
    n, sheet = d.numbers, d.sheet
    front = sheet.piece("F" if torso else "FC")
    facing = sheet.piece("FF")
    left, _, right, _ = facing.outline.bounds()
    assert right - left == pytest.approx(2 * n.b_stand + 3.5, abs=0.1 * MM)
    free = facing.edge("free").path
    assert free.start.x == pytest.approx(free.end.x, abs=0.1 * MM)
    neck = facing.edge("neck").path
    for share in (0.0, 0.3, 0.7, 1.0):
        at = neck.at_length(share * neck.length)
        assert front.edge("neck").path.nearest(at)[1] < 0.1 * MM
    assert neck.end.y == pytest.approx(front.edge("neck").path.end.y, abs=0.1 * MM)


def test_the_collar_is_as_with_a_facing() -> None:
    """What covers the seam changes nothing of the collar."""
    stand = swapped(sleeved_features(ShirtCollar()), SINGLE, place_of="concealed zip")
    one, other = made(stand).sheet, made(unfaced(SHIRT)).sheet
    for code in ("CS", "CO", "CN"):
        for e in one.piece(code).edges:
            assert other.length(code, e.name) == pytest.approx(e.length)


@pytest.mark.parametrize("torso", [False, True])
@pytest.mark.parametrize("edge", Edging)
def test_the_collar_is_set_when_the_edges_are_done(edge: Edging, torso: bool) -> None:
    m = making_order(made(unfaced(ButtonStand(edge=edge), SHIRT, torso=torso)))
    titles = [op.title for op in m.operations]
    done = {
        Edging.FACED: "Face the front edges",
        Edging.CUT_ON: "Turn the front facings back",
        Edging.BAND: "Sew the front bands on",
    }[edge]
    (collar,) = (op for op in m.operations if op.title == "Set the collar on the neck")
    assert titles.index(done) < titles.index(collar.title)
    assert titles.index("Sew the shoulders") < titles.index(collar.title)
    assert any("fell it to the seam" in t for t in collar.says)
    caught = any("caught in" in t for t in collar.says)
    assert caught is (edge is not Edging.BAND)
    assert ("S8" in collar.seams) is caught
    assert not [t for t in titles if "Face the neck" in t]
    assert ("Tack the facing down" in titles) is (edge is not Edging.BAND)


def test_a_banded_shirt_has_no_facing_to_cut() -> None:
    d = made(unfaced(ButtonStand(edge=Edging.BAND), SHIRT, torso=True))
    codes = {
        p.code for of in cutting_sheet(making_order(d)).cloths.values() for p in of
    }
    assert not codes & {"FF", "BF"}
    assert {"BD", "CS", "CO"} <= codes


def test_what_such_a_collar_refuses_is_said() -> None:
    faced = swapped(sleeved_features(SHIRT), SINGLE, place_of="concealed zip")
    assert "needs no facing" in refused(*faced)
    zipped = tuple(f for f in sleeved_features(SHIRT) if f.kind != "neck facing")
    assert "where the front buttons" in refused(*zipped)
    behind = ButtonStand(where=Where.BACK)
    assert "where the front buttons" in refused(*unfaced(behind, SHIRT))
    assert "leaves the armholes open" in refused(
        *(f for f in unfaced(SHIRT) if f.kind != "set-in sleeve")
    )
    assert "not lined yet" in refused(*unfaced(SHIRT, Lining(mode=Mode.BELOW_FACING)))


def test_a_facing_wider_than_the_neck_is_refused() -> None:
    """Half of a standard neck is about 7 wide, and its facing reaches no further."""
    neck, wide = Neckline(shape=FrontShape.STANDARD), ButtonStand(facing=8.0)
    assert "wider than the neck" in refused(*unfaced(wide, neck, SHIRT, torso=True))
