"""Skirts as orders: what is drawn, what is sewn, what is refused (blocks C and G,
transformations §7 and §8, truing 1 and 4)."""

import math

import pytest
from shapely.geometry import Polygon

from bodies import BRIDA, P92, P116, THEA, YSOLDE
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.body import Body, body_from_tables
from clothwright.features import Feature
from clothwright.features.skirts.about import GORE
from clothwright.features.skirts.circle_skirt import CircleSkirt
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.skirts.flounce import Flounce
from clothwright.features.skirts.gathered_skirt import GatheredSkirt, Tiers
from clothwright.features.skirts.godets import Godets
from clothwright.features.skirts.gored_skirt import GoredSkirt, Gores
from clothwright.features.skirts.peplum import Peplum
from clothwright.features.skirts.skirt_lining import SkirtLining
from clothwright.features.skirts.skirt_zip import SkirtZip, Where
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.vent import Shape, Vent
from clothwright.features.skirts.waist_facing import WaistFacing
from clothwright.features.skirts.waistband import BAND, Waistband
from clothwright.findings import Severity
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.truing import walk
from clothwright.units import Unit
from orders import main_features, order, straight_skirt

MM = 0.1
BODIES = (P92, P116, BRIDA, YSOLDE, THEA)
AT_SIDE = SkirtZip(where=Where.SIDE)

BARE = (StraightSkirt(), SkirtZip(), Waistband())

KINDS: dict[str, tuple[Feature, ...]] = {
    "straight": straight_skirt(),
    "tapered": straight_skirt(StraightSkirt(flare=-2.0)),
    "flared": (StraightSkirt(flare=6.0), AT_SIDE, Waistband()),
    "slit": straight_skirt(Vent(shape=Shape.SLIT)),
    "half circle": (CircleSkirt(), SkirtZip(), Waistband()),
    "full circle": (CircleSkirt(fullness=1.0), AT_SIDE, Waistband()),
    "by the hem": (CircleSkirt(hem=250.0), SkirtZip(), Waistband()),
    "six gores": (GoredSkirt(), SkirtZip(), Waistband()),
    "trumpet": (
        GoredSkirt(gores=Gores.EIGHT, hem=280.0, flare_from=45.0),
        SkirtZip(),
        Waistband(),
    ),
    "gathered": (GatheredSkirt(), SkirtZip(), Waistband()),
    "tiers": (GatheredSkirt(tiers=Tiers.FOUR), AT_SIDE, Waistband()),
    "lined": straight_skirt(SkirtLining()),
    "lined gores": (GoredSkirt(), SkirtZip(), Waistband(), SkirtLining()),
    "godets": (*BARE, Godets()),
    "godets between gores": (GoredSkirt(), SkirtZip(), Waistband(), Godets(angle=90)),
    "flounce": (*BARE, Flounce()),
    "full flounce": (*BARE, Flounce(depth=30.0, fullness=3.0)),
    "flounced gores": (GoredSkirt(), SkirtZip(), Waistband(), Flounce()),
    "flounced circle": (CircleSkirt(), SkirtZip(), Waistband(), Flounce(depth=40.0)),
    "flounced tiers": (
        GatheredSkirt(tiers=Tiers.TWO, gathers=1.5),
        AT_SIDE,
        Waistband(),
        Flounce(depth=40.0, fullness=1.5),
    ),
    "contour band": (StraightSkirt(), SkirtZip(), Vent(), ContourBand()),
    "contour band, lined": (
        StraightSkirt(flare=4.0),
        AT_SIDE,
        ContourBand(depth=4.0),
        SkirtLining(),
    ),
    "faced": (StraightSkirt(), SkirtZip(), Vent(), WaistFacing()),
    "faced at the side": (StraightSkirt(flare=5.0), AT_SIDE, WaistFacing()),
    "faced circle": (CircleSkirt(), SkirtZip(), WaistFacing()),
    "faced gores": (GoredSkirt(), SkirtZip(), WaistFacing()),
}

BANDED = [k for k, features in KINDS.items() if Waistband() in features]


def made(body: Body, *features: Feature) -> Draft:
    return draft(order(body, features))


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
def test_every_skirt_passes_and_its_cut_lines_hold(kind: str, body: Body) -> None:
    d = draft(order(body, KINDS[kind]))
    assert not d.failed, d.failures()
    done = pattern(d, words=False)
    assert not done.failed
    for piece in done.drawn.pieces:
        cut = Polygon(piece.cut_line.flatten(0.002))
        net = Polygon(d.sheet.piece(piece.code).outline.flatten(0.002))
        assert cut.is_valid
        assert net.is_valid
        assert cut.buffer(0.1 * MM).contains(net)
        assert piece.cuts


@pytest.mark.parametrize("kind", KINDS)
def test_inches(kind: str) -> None:
    d = draft(order(BRIDA, KINDS[kind], unit=Unit.IN))
    assert not d.failed, d.failures()


@pytest.mark.parametrize("kind", BANDED)
def test_the_band_is_the_waist_less_what_is_eased_on(kind: str) -> None:
    """Every stretch of the band takes its share of waist; in all W + Ew − 1 and the
    underlap (transformations §8, truing 2)."""
    d = draft(order(THEA, KINDS[kind]))
    n, band = d.numbers, d.sheet.piece(BAND)
    parts = [e for e in band.edges if e.name.startswith("band ")]
    assert sum(e.length for e in parts) == pytest.approx(66 + 2 - 1, abs=0.1 * MM)
    whole = sum(e.length for e in parts) + band.edge("underlap").length
    assert whole == pytest.approx(67 + n.lap_band, abs=0.1 * MM)
    sewn = {r.edge for s in d.sheet.seams for r in s.runs() if r.piece == BAND}
    assert sewn == {e.name for e in parts}
    for seam in d.sheet.seams:
        if seam.code.startswith("S30"):
            assert walk(d.sheet, seam).holds


def test_a_band_that_is_wrong_by_8_mm_is_refused() -> None:
    """R-k: the waist net differs from the band by 0.8 cm more than the ease."""
    d = made(THEA, *straight_skirt())
    seam = next(s for s in d.sheet.seams if s.code == "S30.1")
    piece = d.sheet.piece(BACK)
    edge = piece.edge("waist")
    moved = edge.path.end + (0.8, 0.0)
    wrong = d.sheet.put(
        piece.with_edges(
            e.along(e.path.pinned(e.path.start, moved))
            if e.name == "waist"
            else e.along(e.path.pinned(moved, e.path.end))
            if e.name == "dart centre"
            else e
            for e in piece.edges
        )
    )
    assert walk(wrong, seam).severity is Severity.REFUSE


@pytest.mark.parametrize("share", [0.25, 0.5, 0.75, 1.0])
def test_circles_as_drawn(share: float) -> None:
    """C1 to C4 of blocks G, on the paper: waist arc, hem arc, right angles, angle."""
    d = made(P92, CircleSkirt(fullness=share, length=60.0), AT_SIDE, Waistband())
    cut = 74.0 - 0.6 * share
    waist = 2 * sum(d.sheet.length(c, "waist") for c in (FRONT, BACK))
    hem = 2 * sum(d.sheet.length(c, "hem") for c in (FRONT, BACK))
    assert waist == pytest.approx(cut, abs=0.1 * MM)
    assert hem == pytest.approx(cut + 2 * math.pi * share * 60, abs=0.1 * MM)
    for code in (FRONT, BACK):
        piece = d.sheet.piece(code)
        assert all(piece.interior_angle(e.name) for e in piece.edges)
        for e in piece.edges:
            assert piece.interior_angle(e.name) == pytest.approx(90.0, abs=0.01)


def test_a_wanted_hem_decides_the_circle() -> None:
    d = made(P92, CircleSkirt(hem=240.0, length=60.0), SkirtZip(), Waistband())
    # the bias yield is taken off all round, waist and hem alike
    assert d.numbers.hem_S + d.numbers.by_S == pytest.approx(240.0, abs=0.01)


def test_tiers_gather_evenly() -> None:
    """C5: one ratio all round; lengths as C20 of the corrections."""
    d = made(THEA, GatheredSkirt(tiers=Tiers.THREE), AT_SIDE, Waistband())
    n, sheet = d.numbers, d.sheet
    assert sheet.length(FRONT, "waist") == pytest.approx(2.0 * n.w_SF)
    assert sheet.length("T2", "top") == pytest.approx(
        1.5 * sheet.length(FRONT, "waist")
    )
    assert sheet.length("T3", "top") == pytest.approx(1.5 * sheet.length("T2", "top"))
    assert n.hem_S == pytest.approx(4 * sheet.length("T3", "hem"))
    deep = [sheet.length(c, "side") for c in (FRONT, "T2", "T3")]
    assert sum(deep) == pytest.approx(n.L)
    cuts = {p.code: p.cuts[0] for p in pattern(d, words=False).drawn.pieces}
    assert cuts["T2"].how == "2 on fold"
    assert cuts[BAND].how == "1, right side up"


def test_gores_are_cut_as_often_as_there_are() -> None:
    d = made(THEA, GoredSkirt(gores=Gores.TEN), SkirtZip(), Waistband())
    (gore,) = (p for p in pattern(d, words=False).drawn.pieces if p.code == GORE)
    assert [(c.count, c.how) for c in gore.cuts] == [(10, "10")]
    assert sum(s.code.startswith("S30") for s in d.sheet.seams) == 10


def test_a_zip_opens_where_it_is_put() -> None:
    back = made(THEA, *straight_skirt())
    side = made(THEA, StraightSkirt(flare=4.0), AT_SIDE, Waistband())
    assert back.sheet.piece(BACK).fold is None
    assert side.sheet.piece(BACK).fold is not None
    (seam,) = (s for s in side.sheet.seams if s.code == "S34")
    assert any(k.left == pytest.approx(side.numbers.z_S) for k in seam.notches)
    assert side.sheet.seam("S30.1").name == "waistband, front left"
    assert back.sheet.seam("S30.1").name == "waistband, back left"


def test_a_vent_is_as_high_and_as_wide_as_ordered() -> None:
    """transformations §7: 4 wide at the top and 5 at the hem, its top slanted 45°."""
    d = made(THEA, *straight_skirt(Vent(height=20.0)))
    sheet, points = d.sheet, d.sheet.points
    assert points["Vb"].y == pytest.approx(60.0 - 20.0)
    assert points["Vo"].x == pytest.approx(-4.0)
    assert points["Vm"] == pytest.approx((-5.0, 60.0))
    slant = sheet.edge(BACK, "vent top").path.start_direction
    assert abs(slant.x) == pytest.approx(abs(slant.y))
    assert sheet.length(BACK, "cb") == pytest.approx(60 - 20 - 1.0)


@pytest.mark.parametrize(
    ("features", "says"),
    [
        ((*straight_skirt(), *main_features()[:1]), "one block"),
        ((*main_features(), SkirtZip()), "a skirt zip needs a skirt"),
        (straight_skirt()[:1], "must open"),
        ((CircleSkirt(), SkirtZip()), "waist of the skirt is not finished"),
        ((CircleSkirt(), SkirtZip(), Waistband(), Vent()), "a vent is for a straight"),
        ((SkirtZip(), Waistband()), "a skirt zip needs a skirt"),
        ((*straight_skirt(), Peplum()), "waist seam"),
        ((GatheredSkirt(), SkirtZip(), WaistFacing()), "set into a band"),
        ((*straight_skirt(), WaistFacing()), "one way only"),
        ((*straight_skirt(), Flounce()), "leave the vent off"),
        ((*BARE, Flounce(), Godets()), "ends one way only"),
        ((*BARE, Godets(height=40.0)), "make it less high"),
        ((*BARE, Flounce(fullness=4.0, depth=4.0)), "less full"),
        ((*KINDS["half circle"], Godets()), "straight or a gored"),
        ((*KINDS["faced"], SkirtLining()), "hangs from the seam of a waistband"),
        ((*KINDS["gathered"], SkirtLining()), "only a straight or a gored"),
        (straight_skirt(StraightSkirt(length=24.0)), "make it longer"),
        ((GoredSkirt(hem=90.0), SkirtZip(), Waistband()), "make the hem wider"),
        (
            (GoredSkirt(flare_from=12.0), SkirtZip(), Waistband()),
            "at the hip or below",
        ),
        ((CircleSkirt(hem=900.0), SkirtZip(), Waistband()), "choose another hem"),
    ],
)
def test_what_cannot_be_drafted_is_refused_in_words(
    features: tuple[Feature, ...], says: str
) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(THEA, features))


@pytest.mark.parametrize(
    ("features", "code", "severity"),
    [
        # R-n: straight, knee length, no vent, hem 88
        (
            (StraightSkirt(flare=-2.0), SkirtZip(), Waistband()),
            "stride",
            Severity.WARN,
        ),
        ((StraightSkirt(), AT_SIDE, WaistFacing(depth=9.0)), "F4", Severity.REFUSE),
        (straight_skirt(Vent(height=35.0)), "V1", Severity.REFUSE),
        (straight_skirt(SkirtZip(length=30.0), Vent(height=28.0)), "V1", None),
        ((CircleSkirt(fullness=0.1), SkirtZip(), Waistband()), "Q2", None),
        (
            (GatheredSkirt(tiers=Tiers.THREE), SkirtZip(), Waistband()),
            "Z4",
            Severity.REFUSE,
        ),
        (
            (GatheredSkirt(tier_gathers=2.0), SkirtZip(), Waistband()),
            "Q5",
            Severity.NOTE,
        ),
        (
            (CircleSkirt(fullness=1.0, hem=250.0), SkirtZip(), Waistband()),
            "Q5",
            Severity.NOTE,
        ),
    ],
)
def test_what_is_doubtful_is_said(
    features: tuple[Feature, ...], code: str, severity: Severity | None
) -> None:
    found = [f for f in made(THEA, *features).findings if f.code == code]
    assert found
    if severity is not None:
        assert found[0].severity is severity


@pytest.mark.parametrize("kind", ["straight", "lined", "contour band", "six gores"])
def test_hips_at_two_levels_are_drafted_apart(kind: str) -> None:
    """The front is then cut whole, of the backs each its own; one band serves both."""
    measures: dict[str, object] = {k: v.value for k, v in THEA.values.items()}
    measures["left"] = {"WH": 23.0}
    table = {"client": "two hips", "unit": "cm", "measures": measures}
    d = draft(order(body_from_tables(table, "test"), KINDS[kind]))
    assert not d.failed, d.failures()
    assert d.apart
    assert BAND not in d.apart
    done = pattern(d, words=False)
    assert not done.failed
    assert len({p.code for p in done.drawn.pieces} & {"WB", "WB-L"}) <= 1


def test_a_step_needs_room_at_the_hem() -> None:
    """measures §9: at knee length 95, with a vent none is asked."""
    bare = made(THEA, StraightSkirt(hip_ease=1.0), SkirtZip(), Waistband())
    assert any(f.code == "stride" for f in bare.findings)
    short = StraightSkirt(hip_ease=1.0, length=45.0)
    assert not any(
        f.code == "stride" for f in made(THEA, short, SkirtZip(), Waistband()).findings
    )
    vented = made(THEA, *straight_skirt(StraightSkirt(hip_ease=1.0)))
    assert not any(f.code == "stride" for f in vented.findings)


def test_a_prominent_abdomen_takes_its_share_in_front() -> None:
    """C2: AB over H − 3 widens the skirt to it; half of the darts lie in front."""
    values = {**{k: v.value for k, v in THEA.values.items()}, "AB": 95.0}
    n = made(Body.of(values), *straight_skirt()).numbers
    assert n.half_S == pytest.approx((95 + 4) / 2)
    assert n.fd_S == pytest.approx(n.bd_S)


def test_a_waist_as_full_as_the_hip_has_no_darts() -> None:
    """Corrections C13: the side takes all, and the waist is still exact."""
    d = made(Body.of({"HT": 165, "B": 108, "W": 104, "H": 106}), *straight_skirt())
    n, sheet = d.numbers, d.sheet
    assert n.nb_S == n.nf_S == 0
    net = sum(sheet.length(c, "waist") for c in (BACK, FRONT))
    assert net == pytest.approx((104 + 2) / 2, abs=0.1 * MM)
    assert not d.failed
