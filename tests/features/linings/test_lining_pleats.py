"""The ease pleat and the jump pleat of a lining (transformations §6)."""

import pytest

from bodies import P92, THEA, ansur_whole
from clothwright.body import Body
from clothwright.curves import mirror_in
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.sleeved_armhole import SleevedArmhole
from clothwright.features.bodice.torso import Torso
from clothwright.features.linings.ease_pleat import EasePleat
from clothwright.features.linings.jump_pleat import JumpPleat
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.openings.underarm_zip import UnderarmZip
from clothwright.features.skirts.hem_facing import HemFacing
from clothwright.features.skirts.side_slit import SideSlit
from clothwright.features.skirts.vent import Vent
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from orders import cut_faults, order, sleeved_features, swapped

MM = 0.1
WOMEN = (P92, THEA, *ansur_whole()[::300])


def sheath(*more: Feature, flare: float = 0.0) -> tuple[Feature, ...]:
    """A lined dress in one that opens under the arm."""
    return (
        Block(),
        SleevedArmhole(),
        Neckline(shape=FrontShape.SCOOP, depth=19.0),
        BackNeckline(shape=BackShape.ROUND),
        SideDart(),
        BackWaistDart(),
        UnderarmZip(),
        SetInSleeve(),
        Torso(length=60.0, flare=flare),
        NeckFacing(),
        Lining(),
        *more,
    )


def zipped(*more: Feature) -> tuple[Feature, ...]:
    return swapped(sheath(*more), ConcealedZip(), place_of="underarm zip")


def buttoned(*more: Feature) -> tuple[Feature, ...]:
    """A lined top with a peplum that buttons in front."""
    return (
        *swapped(sleeved_features(), ButtonStand(), place_of="concealed zip"),
        Lining(),
        *more,
    )


def made(body: Body, features: tuple[Feature, ...]) -> Draft:
    return draft(order(body, features))


def walk(d: Draft, code: str) -> float:
    (found,) = [w for w in d.report.walks if w.seam.code == code]
    assert found.holds
    return found.ease


# -- ease pleat ------------------------------------------------------------------------
@pytest.mark.parametrize("depth", [1.0, 2.0, 2.5])
def test_the_pleat_folds_into_the_lining_s_edges(depth: float) -> None:
    """§6: 1 to 2.5 wide. Folded on the centre back, its upper edge and its foot lie on
    the other half's: the mirror image of each is the edge beside it."""
    for body in WOMEN:
        for features, code in (
            (sheath(EasePleat(depth=depth)), "L.B"),
            (buttoned(EasePleat(depth=depth)), "L.BC"),
        ):
            p = made(body, features).sheet.piece(code)
            (line,) = [k.path for k in p.lines if k.name == "centre back of the lining"]
            over = mirror_in(line.start, line.end)
            foot = "hem" if p.has("hem") else "waist"
            for edge, beside in (
                ("under pleat top", "join"),
                ("under pleat foot", foot),
            ):
                folded, there = p.edge(edge).path.moved(over), p.edge(beside).path
                for i in range(11):
                    at = folded.at_length(folded.length * i / 10)
                    assert there.nearest(at)[1] < 0.1 * MM, (body.client, edge)
            fold = p.fold
            assert fold is not None and fold.name == "cb"
            assert line.start.x - fold.path.start.x == pytest.approx(depth)


@pytest.mark.parametrize("body", WOMEN, ids=lambda b: b.client)
def test_the_lining_walks_as_without_the_pleat(body: Body) -> None:
    """The pleat folded, the lining is as long as before wherever it is sewn."""
    for plain, pleated in (
        (sheath(), sheath(EasePleat())),
        (buttoned(), buttoned(EasePleat())),
    ):
        before, after = made(body, plain), made(body, pleated)
        codes = [w.seam.code for w in before.report.walks if w.seam.code[0] == "L"]
        assert "LB" in codes
        for code in codes:
            assert walk(after, code) == pytest.approx(walk(before, code), abs=0.1 * MM)
        assert cut_faults(after) == cut_faults(before)


def test_cloth_that_the_pleat_takes() -> None:
    """Twice its depth over the whole back; the rest of the lining is the same."""
    plain, pleated = (made(THEA, f).sheet for f in (buttoned(), buttoned(EasePleat())))
    long = plain.length("L.BC", "cb")
    more = pleated.piece("L.BC").area - plain.piece("L.BC").area
    # the upper edge rises from the centre by at most 3 mm over the 2 cm of the pleat
    assert more == pytest.approx(2.0 * long, abs=0.3 * 2.0)
    others = set(plain.pieces) - {"L.BC"}
    assert all(plain.piece(c).area == pleated.piece(c).area for c in others)


@pytest.mark.parametrize(
    ("features", "says"),
    [
        (zipped(EasePleat()), "felled to its tape"),
        (swapped(sheath(EasePleat()), Lining(mode=Mode.TO_EDGE)), "below the facing"),
    ],
)
def test_where_no_pleat_can_lie(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, features))


def test_it_is_caught_before_the_lining_is_joined() -> None:
    titles = [o.title for o in making_order(made(THEA, sheath(EasePleat()))).operations]
    laid = titles.index("Lay the ease pleat of the lining")
    assert laid < titles.index("Join the lining to the facing")


# -- jump pleat ------------------------------------------------------------------------
@pytest.mark.parametrize("flare", [0.0, 2.0])
@pytest.mark.parametrize("body", WOMEN, ids=lambda b: b.client)
def test_the_lining_is_longer_by_the_jump_pleat(body: Body, flare: float) -> None:
    """§6: the fold hangs 1.5 above the finished hem, and what goes up again from there
    is the pleat: the net edge lies 1.5 − 1.2 above the shell's hem."""
    for make in (sheath, zipped):
        free = made(body, make())
        d = made(body, make(JumpPleat()))
        for piece in ("L.F", "L.B"):
            edge = "cf" if piece == "L.F" else "cb"
            more = d.sheet.length(piece, edge) - free.sheet.length(piece, edge)
            assert more == pytest.approx(1.2, abs=0.1 * MM)
        assert abs(walk(d, "S152")) < 0.2 and abs(walk(d, "S153")) < 0.2
        assert not [f for f in cut_faults(d) if "over a head" not in f]


def test_it_is_felled_and_not_hemmed() -> None:
    d = made(THEA, zipped(JumpPleat()))
    told = {o.title: o for o in making_order(d).operations}
    felled = told["Fell the lining to the hem"]
    assert set(felled.seams) == {"S152", "S153"}
    assert "2.7 cm above the finished edge" in felled.says[0]  # 1.5 and 1.2
    hemmed = told["Hem the sleeves of the lining"]
    assert {r.piece for r in hemmed.edges} == {"L.SL"}
    assert "Hem the lining" not in told
    titles = list(told)
    assert titles.index("Hem the lower edge") < titles.index(felled.title)


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ((JumpPleat(), Vent()), "beside a vent the lining hangs free"),
        ((JumpPleat(), SideSlit()), "beside a slit the lining hangs free"),
        ((JumpPleat(depth=2.0),), "deeper than the lining hangs"),
    ],
)
def test_where_no_jump_pleat_can_be(more: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, zipped(*more)))


def test_a_narrow_hem_holds_no_lining() -> None:
    """A hem of 1.5 cm, as a peplum has, is nothing to fell a lining to; nor is one of
    3.8 cm for a lining felled 4.5 cm above the edge."""
    top = (*sleeved_features(), Lining(), JumpPleat())
    assert any("turned up narrow" in s for s in made(P92, top).failures())
    high = swapped(zipped(JumpPleat(depth=1.5)), Lining(hem_shorter=3.0))
    assert any("no longer holds it" in s for s in made(P92, high).failures())
    assert not made(P92, zipped(JumpPleat(depth=1.5))).failures()


def test_the_lining_is_felled_to_the_facing_of_a_hem() -> None:
    """A faced hem, however narrow it would be turned up, has its facing's depth."""
    d = made(P92, zipped(JumpPleat(), HemFacing()))
    assert not d.failures()
    told = {op.title: op for op in making_order(d).operations}
    assert "on the facing of the hem" in told["Fell the lining to the hem"].says[0]
    shallow = made(P92, zipped(JumpPleat(), HemFacing(depth=2.5)))
    assert any("facing of the hem, 2.5 cm deep" in s for s in shallow.failures())
