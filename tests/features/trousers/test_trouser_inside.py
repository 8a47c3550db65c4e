"""Inside trousers: a faced waist, a lining to the knee (transformations §6)."""

import pytest
from shapely.geometry import Polygon

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_legs
from clothwright.blocks.trousers import BACK, FRONT
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.skirts.waist_facing import WaistFacing
from clothwright.features.trousers.fly import Fly
from clothwright.features.trousers.pleats import Pleats
from clothwright.features.trousers.shorts import Shorts
from clothwright.features.trousers.trouser_lining import LINED, TrouserLining
from clothwright.features.trousers.trouser_pockets import Pockets
from clothwright.features.trousers.trouser_zip import SideZip
from clothwright.features.trousers.trousers import Trousers
from clothwright.features.trousers.turn_ups import TurnUps
from clothwright.making import making_order
from clothwright.order import OrderError, draft, pattern
from clothwright.truing import walk
from clothwright.units import Unit
from orders import order, trouser_features
from verdict import unsound, verdict

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, THEA, YSOLDE)
FACED = (Trousers(), SideZip(), WaistFacing())
KINDS: dict[str, tuple[Feature, ...]] = {
    "faced": FACED,
    "faced, pleated": (*FACED, Pleats()),
    "faced shorts": (*FACED, Shorts()),
    "lined": trouser_features(TrouserLining()),
    "lined, pockets": trouser_features(Pockets(), TrouserLining()),
    "lined, side zip": trouser_features(SideZip(), TrouserLining()),
    "lined, turned up": trouser_features(TurnUps(), TrouserLining()),
    "lined shorts": trouser_features(Shorts(), Pleats(), TrouserLining()),
}


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
def test_they_pass_and_their_cut_lines_hold(kind: str, body: Body) -> None:
    d = draft(order(body, KINDS[kind]))
    assert not d.failed, d.failures()
    done = pattern(d, words=False)
    assert not done.drawn.failures
    for piece in done.drawn.pieces:
        cut = Polygon(piece.cut_line.flatten(0.002))
        net = Polygon(d.sheet.piece(piece.code).outline.flatten(0.002))
        assert cut.is_valid
        assert cut.buffer(0.1 * MM).contains(net)
        assert piece.cuts
    titles = [op.title for op in making_order(d).operations]
    assert ("Face the waist" in titles) == kind.startswith("faced")
    assert ("Hem the lining" in titles) == kind.startswith("lined")


@pytest.mark.parametrize("kind", ["faced", "lined"])
def test_inches(kind: str) -> None:
    d = draft(order(BRIDA, KINDS[kind], unit=Unit.IN))
    assert not d.failed, d.failures()


def test_a_facing_is_the_waist_with_its_darts_closed() -> None:
    """6 cm deep; as long as the waist; its centres are seams."""
    d = draft(order(THEA, FACED))
    n, sheet = d.numbers, d.sheet
    waist = sum(sheet.length(c, "waist") for c in ("WFF", "WFB"))
    assert waist == pytest.approx((n.W + n.Ew) / 2, abs=0.1 * MM)
    for code, edge in (("WFF", "crotch"), ("WFB", "seat")):
        assert sheet.length(code, edge) == pytest.approx(6.0, abs=MM)
        assert not any("dart" in e.name for e in sheet.piece(code).edges)
        assert sheet.seam(f"S38 {edge}")


@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
def test_a_lining_ends_below_the_knee_and_is_sewn_as_the_shell(body: Body) -> None:
    d = draft(order(body, KINDS["lined, pockets"]))
    n, sheet = d.numbers, d.sheet
    knee = sheet.seam("S41").notches[0].left
    inseam = sheet.length(LINED[FRONT], "inseam")
    assert inseam == pytest.approx(knee + 8.0, abs=0.1 * MM)
    assert walk(sheet, sheet.seam("L.S41")).ease == pytest.approx(-n.st, abs=0.1 * MM)
    assert walk(sheet, sheet.seam("L.S40")).ease == pytest.approx(0.0, abs=0.1 * MM)
    for code, lining in LINED.items():
        p = sheet.piece(lining)
        for edge in (p.before("hem").name, "hem"):
            assert p.interior_angle(edge) == pytest.approx(90.0, abs=1.0)
        plain = draft(order(body, trouser_features())).sheet.piece(code)
        assert p.edge("crotch").length == plain.edge("crotch").length
        for e in p.edges:  # whole at the waist, though a pocket cuts the shell
            if e.name.startswith("waist"):
                assert e.length == pytest.approx(plain.edge(e.name).length)


@pytest.mark.parametrize(
    ("features", "says"),
    [
        ((Trousers(), Fly(), WaistFacing()), "side zip"),
        ((Trousers(), SideZip(), WaistFacing(), TrouserLining()), "waistband"),
        (
            (Trousers(), SideZip(), ContourBand(), TrouserLining()),
            "straight waistband",
        ),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(THEA, features))


@pytest.mark.parametrize("kind", ["faced", "lined, pockets"])
def test_real_women(kind: str) -> None:
    """Every 45th woman of the survey: as her plain trousers, or refused in words."""
    women = ansur_legs()[::45]
    assert len(women) >= 20
    passed = 0
    for body in women:
        asked = order(body, KINDS[kind], estimates=RuleSet.SURVEY)
        it = verdict(asked)
        passed += not it.refusals
        assert not list(unsound(asked, it)), it.refusals
    assert passed >= len(women) - 3
    assert BACK in LINED
