"""Walking slits in the side seams (transformations §7): facings, mitre, linings."""

import pytest
from shapely.geometry import Polygon

from bodies import BRIDA, P80, P92, P116, THEA, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import distance, mirror_in
from clothwright.features import Feature
from clothwright.features.bodice.torso import Torso
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.linings.lining import Mode
from clothwright.features.openings.underarm_zip import UnderarmZip
from clothwright.features.roles import Role
from clothwright.features.skirts.fitted_dress_skirt import FittedDressSkirt
from clothwright.features.skirts.flounce import Flounce
from clothwright.features.skirts.gored_skirt import GoredSkirt
from clothwright.features.skirts.hip_yoke import HipYoke
from clothwright.features.skirts.side_slit import SideSlit
from clothwright.features.skirts.skirt_lining import SkirtLining
from clothwright.features.skirts.skirt_pockets import SkirtPockets
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.skirt_zip import Where as Zip
from clothwright.features.skirts.slit_edges import SLIT, TOP, at_hem
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.vent import Vent
from clothwright.features.skirts.waistband import Waistband
from clothwright.finishing.allowances import Allowances
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.sheets.steps import steps_text
from clothwright.units import Unit
from orders import closed_back, order
from verdict import verdict

MM = 0.1
SKIRT = (StraightSkirt(), SkirtZip(), Waistband())
FLARED = (StraightSkirt(flare=6.0), SkirtZip(where=Zip.SIDE), Waistband())


def dress(
    *below: Feature, lines: str, lining: Mode | None = None
) -> tuple[Feature, ...]:
    usual = closed_back(lines=lines, lining=lining)
    return (*(f for f in usual if f.kind not in ("waist seam", "peplum")), *below)


KINDS: dict[str, tuple[Feature, ...]] = {
    "skirt": SKIRT,
    "tapered, lined, with a vent": (
        StraightSkirt(flare=-2.0, length=70.0),
        *SKIRT[1:],
        SkirtLining(),
        Vent(),
    ),
    "flared, yoked": (*FLARED, HipYoke()),
    "pockets, lined": (*SKIRT, SkirtPockets(), SkirtLining()),
    "dress": dress(
        WaistSeam(), FittedDressSkirt(), lines="darts", lining=Mode.BELOW_FACING
    ),
    "torso": dress(Torso(), lines="darts"),
    "panels below a torso's seam": dress(Torso(seam=12.0), lines="armhole"),
    "torso in panels": dress(Torso(), lines="armhole", lining=Mode.BELOW_FACING),
    "torso lined to the edge": dress(
        Torso(), Vent(), lines="mixed", lining=Mode.TO_EDGE
    ),
    "top": dress(Torso(length=28.0), lines="darts"),
}
LOW = {"top": 8.0}


def made(kind: str, body: Body = THEA, unit: Unit = Unit.CM) -> Draft:
    slit = SideSlit(height=LOW.get(kind))
    return draft(order(body, (*KINDS[kind], slit), unit=unit))


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", [P92, P116, BRIDA, THEA], ids=lambda b: b.client)
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
    titles = [op.title for op in making_order(d).operations]
    hem = next(i for i, t in enumerate(titles) if t.startswith("Hem "))
    assert titles.index("Turn the side slits in") < hem


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", [P80, P116, THEA], ids=lambda b: b.client)
def test_the_facing_folds_in_on_its_piece(kind: str, body: Body) -> None:
    """The seam loses the slit's height; the facing is 4 cm wide (§7: 4 to 6), and,
    mirrored in the side, lies on its piece: its hem on the hem, its top square."""
    d, plain = made(kind, body), draft(order(body, KINDS[kind]))
    n = d.numbers
    assert not plain.failed
    for code in at_hem(d.sheet):
        piece, before = d.sheet.piece(code), plain.sheet.piece(code)
        fold = next(k.path for k in piece.lines if k.name == "slit fold, side")
        side = next(
            e.name
            for e in (before.before("hem"), before.after("hem"))
            if e.name.startswith("side")
        )
        shorter = before.edge(side).length - piece.edge(side).length
        assert shorter == pytest.approx(n.v_side, abs=0.1 * MM)
        assert piece.edge(TOP).length == pytest.approx(n.v_faced, abs=0.1 * MM)
        over = mirror_in(fold.start, fold.end)
        hem = piece.edge("hem").path
        slit = piece.edge(SLIT).path.moved(over)
        corner = min((slit.start, slit.end), key=lambda p: -p.y)
        assert hem.nearest(corner)[1] < 0.1 * MM
        for s in (0.1, 0.5, 0.9):
            at = slit.at_length(s * slit.length)
            assert piece.contains(at)
            assert distance(at, piece.edge(SLIT).path.at_length(s * slit.length)) > 7.0
        area = piece.area - before.area
        assert area == pytest.approx(n.v_faced * n.v_side, rel=0.05)


@pytest.mark.parametrize("kind", KINDS)
def test_its_facing_has_the_allowance_of_a_slit(kind: str) -> None:
    """Neatened, as a vent's edge (§7), whatever piece it is cut in one with."""
    d = made(kind)
    widths = Allowances(d.order.unit, d.order.said)
    for code in at_hem(d.sheet):
        piece = d.sheet.piece(code)
        assert {widths.role(piece, e) for e in (SLIT, TOP)} == {Role.VENT}


def test_a_high_slit_leaves_a_skirt_its_deep_hem() -> None:
    """A side of 60 with a slit of 30 is no peplum's; nor is the straight rest of a
    torso below its seam, each panel of which has the same hem."""
    high = dress(WaistSeam(), FittedDressSkirt(), SideSlit(height=30.0), lines="darts")
    low = dress(Torso(seam=12.0), SideSlit(), lines="armhole")
    for features in (high, low, low[:-1]):
        d = draft(order(P92, features))
        widths = Allowances(d.order.unit, d.order.said)
        hems = [p for p in d.sheet.pieces.values() if p.has("hem")]
        assert {widths.role(p, "hem") for p in hems} == {Role.DEEP_HEM}


def test_the_hem_stays_as_deep_as_it_was() -> None:
    """A flared hem turns more with its facings, and is as easily eased away."""
    d = made("flared, yoked", P92)
    plain = draft(order(P92, KINDS["flared, yoked"]))
    low = [
        next(
            p for p in pattern(x, words=False).drawn.pieces if p.code == "SF"
        ).cut_line.bounds()[3]
        for x in (d, plain)
    ]
    assert low[0] == pytest.approx(low[1], abs=1.0 * MM)


@pytest.mark.parametrize("kind", ["tapered, lined, with a vent", "torso in panels"])
def test_the_lining_hangs_open_beside_it(kind: str) -> None:
    """No facing is cut on it; it is open along the side from the slit's top down."""
    d = made(kind)
    for code in at_hem(d.sheet):
        lining = d.sheet.piece(f"L.{code}")
        assert not lining.has(SLIT)
        open_ = lining.edge("open")
        short = d.numbers.v_side - open_.length
        assert 1.0 < short < 4.0  # shorter at the hem
    assert not any(s.code == "L.S160" for s in d.sheet.seams)


def test_the_tops_are_sewn_on_from_the_side() -> None:
    d = made("skirt")
    seam = d.sheet.seam("S160")
    assert [r.piece for r in (*seam.left, *seam.right)] == ["SF", "SB"]
    assert d.sheet.seam("S34").end == "slit"
    told = "\n".join(steps_text(d))
    assert "top of the slit on the side of the front: 18.0 cm up from the hem" in told
    assert not any(f.code == "stride" for f in d.findings)


@pytest.mark.parametrize(
    ("features", "says"),
    [
        ((*SKIRT, SideSlit(), Flounce()), "leave the slits off"),
        ((GoredSkirt(), *SKIRT[1:], SideSlit()), "a flared skirt needs none"),
        (
            (StraightSkirt(length=40.0), *SKIRT[1:], SideSlit(height=30.0)),
            "where they will pull open|folds in flat",
        ),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(THEA, features))


def test_a_slit_up_to_the_zip_is_refused_and_one_up_to_the_hip_doubted() -> None:
    beside = (StraightSkirt(), *FLARED[1:])
    d = draft(order(THEA, (*beside, SideSlit(height=37.0))))
    assert any("below the zip in the side" in f for f in d.failures())
    assert any("reach up to the hip" in f.sentence for f in d.findings)
    side = tuple(
        UnderarmZip() if f.kind == "concealed zip" else f for f in KINDS["torso"]
    )
    d, bare = (draft(order(THEA, f)) for f in ((*side, SideSlit()), side))
    assert d.failures() == bare.failures()  # her neck does not pass the head


WOMEN = ansur_women()[::90]


@pytest.mark.parametrize("kind", ["tapered, lined, with a vent", "torso in panels"])
def test_real_women(kind: str) -> None:
    """Every 90th woman of the survey: passed, or refused as without slits."""
    assert len(WOMEN) >= 10
    for body in WOMEN:
        with_slits = (*KINDS[kind], SideSlit())
        it = verdict(order(body, with_slits, estimates=RuleSet.SURVEY))
        bare = verdict(order(body, KINDS[kind], estimates=RuleSet.SURVEY))
        assert it.refusals == bare.refusals, (body.client, it.refusals)
