"""The facing of the neck alone (first garment 14.4 to 14.7): widths, lengths, place.
Shapely judges distances."""

from itertools import product

import pytest
from shapely.geometry import LineString, Polygon
from shapely.geometry import Point as Spot
from shapely.ops import unary_union

from bodies import BRIDA, P92, P116, THEA, YSOLDE, ansur_whole
from clothwright.body import Body
from clothwright.curves import Path
from clothwright.features.block import Block
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.shoulder_princess import ShoulderPrincess
from clothwright.features.bodice.sleeved_armhole import SleevedArmhole
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.linings.sewn_halves import sewn_front
from clothwright.features.necks.neck_shapes import WINDING, BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.skirts.peplum import Peplum
from clothwright.features.sleeves.flutter_sleeve import FlutterSleeve
from clothwright.findings import Severity
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import EdgeKind
from orders import order, sleeved_features

MM = 0.1


def made(body: Body, front: FrontShape, back: BackShape, *more: NeckFacing) -> Draft:
    features = sleeved_features(Neckline(shape=front), BackNeckline(shape=back), *more)
    return draft(order(body, features))


def line(path: Path) -> LineString:
    return LineString(path.flatten(0.002))


NECKS = [
    (f, b)
    for f, b in product(FrontShape, (BackShape.BOAT, BackShape.SCOOP, BackShape.V))
    if f not in WINDING
]


@pytest.mark.parametrize(("front", "back"), NECKS)
def test_every_neck_has_its_facing(front: FrontShape, back: BackShape) -> None:
    """S8, S9, S12: the neck edges within 0.15 of the shell's, the shoulders of one
    length, 4 less the roll; all inside the shell but for its zip."""
    for body in (P92, BRIDA, THEA):
        d = made(body, front, back)
        assert not d.failed, d.failures()
        walks = {w.seam.code: w for w in d.report.walks}
        assert -0.15 <= walks["S8"].ease <= 0.05
        assert -0.90 <= walks["S9"].ease <= -0.45  # 0.5 beside the zip (16.4)
        for code, shell, neck in (("FF", "FC", "neck"), ("BF", "BC", "neck")):
            assert d.sheet.length(code, "shoulder") == pytest.approx(3.7, abs=0.1 * MM)
            facing = Polygon(d.sheet.piece(code).outline.flatten(0.002))
            assert facing.is_valid
            cloth = Polygon(d.sheet.piece(shell).outline.flatten(0.002))
            assert cloth.union(facing).area - cloth.area < 4.0  # over the panel seam
            roll = line(d.sheet.edge(code, neck).path)
            edge = line(d.sheet.edge(shell, neck).path)
            far = max(edge.distance(Spot(p)) for p in roll.coords)
            assert far == pytest.approx(0.3, abs=0.5 * MM)


@pytest.mark.parametrize("body", [P92, P116, THEA])
def test_the_band_is_as_wide_as_ordered(body: Body) -> None:
    """4 at the shoulder to 5 at the centre, from the shell's neck."""
    d = made(body, FrontShape.ROUND, BackShape.ROUND)
    for code, shell in (("FF", "FC"), ("BF", "BC")):
        free = line(d.sheet.edge(code, "free").path)
        neck = line(d.sheet.edge(shell, "neck").path)
        gaps = [neck.distance(Spot(p)) for p in free.coords]
        assert max(gaps) == pytest.approx(5.0, abs=1.0 * MM)  # 0.5 from the zip
        assert min(gaps) >= 4.0 - 0.5 * MM


def test_the_free_edge_leaves_the_shoulder_smoothly() -> None:
    """What is drawn beside the neck meets the shoulder a little beside the end of the
    facing's: it is led there without a kink."""
    d = made(YSOLDE, FrontShape.ROUND, BackShape.ROUND)
    assert not [str(f) for f in d.findings if f.code == "shape"]


def test_a_pointed_neck_is_faced_deeper_at_its_point() -> None:
    """Beside the V the band stays 5 wide; at the fold it is led level to the centre."""
    d = made(P92, FrontShape.V, BackShape.BOAT)
    fold = d.sheet.edge("FF", "cf")
    assert 5.5 < fold.length < 9.0
    assert fold.kind is EdgeKind.FOLD
    assert d.sheet.piece("FF").interior_angle("cf") == pytest.approx(90.0, abs=0.5)


def test_a_facing_that_reaches_the_armhole_is_refused() -> None:
    wide = made(P92, FrontShape.ROUND, BackShape.ROUND, NeckFacing(shoulder=10.0))
    refused = [f for f in wide.findings if f.severity is Severity.REFUSE]
    assert [f.code for f in refused] == ["F1"]
    most = wide.numbers.Lr - 1.0
    fits = made(P92, FrontShape.ROUND, BackShape.ROUND, NeckFacing(shoulder=most))
    assert not fits.failed


def test_without_sleeves_the_armholes_are_named() -> None:
    features = [f for f in sleeved_features() if "sleeve" not in f.kind]
    with pytest.raises(OrderError, match='all-in-one "facing"'):
        draft(order(P92, tuple(features)))


def test_a_neck_too_steep_beside_the_zip_is_refused() -> None:
    """A V to below the waist's dart runs along the zip; its facing never reaches it."""
    asked = (
        Block(
            waist_ease=3.74, back_shoulder=BackShoulder.EASE, back_shoulder_ease=0.33
        ),
        SleevedArmhole(),
        Neckline(shape=FrontShape.SCOOP),
        BackNeckline(shape=BackShape.V, depth=30.0),
        ShoulderPrincess(),
        ConcealedZip(shaped=False),
        FlutterSleeve(length=12.7),
        WaistSeam(excess_given_back=False),
        Peplum(),
        NeckFacing(),
    )
    with pytest.raises(
        OrderError, match=r"make the neck \(depth of .back neckline.\) less deep"
    ):
        draft(order(P92, asked))


@pytest.mark.parametrize("width", [9.0, 11.06, 12.0])
@pytest.mark.parametrize("body", [P92, THEA, *ansur_whole()[17::200]])
def test_a_wide_facing_below_a_point(body: Body, width: float) -> None:
    """Led to the centre, square to it, below the point of the neck by the width or
    more and by no more than twice that: a simple outline (shapely), inside the shell,
    or refused by the width (our own)."""
    features = sleeved_features(
        Neckline(shape=FrontShape.V),
        BackNeckline(shape=BackShape.U),
        NeckFacing(width=width),
    )
    d = draft(order(body, features))
    ff, neck = d.sheet.piece("FF"), d.sheet.edge("FC", "neck").path
    net = Polygon(ff.outline.flatten(0.002))
    assert net.is_valid
    assert width < ff.edge("cf").length < 2 * width
    assert ff.interior_angle("cf") == pytest.approx(90.0, abs=1.0)
    assert LineString(ff.edge("free").path.flatten(0.01)).distance(
        LineString(neck.flatten(0.01))
    ) > 0.9 * min(width, d.numbers.nf_tip)
    shell = unary_union(
        [Polygon(p.outline.flatten(0.002)) for p in sewn_front(d.sheet).laid()]
    )
    out = max(Spot(p).distance(shell) for p in net.exterior.coords)
    told = {f.code for f in d.findings if f.severity is Severity.REFUSE}
    assert told == ({"F4"} if out > 0.2 else set())


def test_a_facing_wider_than_the_shoulder_is_told() -> None:
    wide = sleeved_features(Neckline(width=8.0), NeckFacing(shoulder=10.0))
    (told,) = (f for f in draft(order(P92, wide)).findings if f.code == "F1")
    assert "run into the armhole" in told.sentence and "10.0 cm wide" in told.sentence
