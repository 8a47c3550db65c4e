"""Single features among the main garment's others, against exact values."""

import math
from itertools import product

import pytest

from bodies import BODIES, BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_whole
from clothwright.body import Body
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.armhole import SleevelessArmhole
from clothwright.features.bodice.back_princess import BackArmholePrincess
from clothwright.features.bodice.front_princess import FrontArmholePrincess
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.linings.facing import Facing
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.openings.open_back import LowOpenBack
from clothwright.features.openings.under_panel import UnderPanel
from clothwright.features.skirts.peplum import Peplum
from clothwright.order import draft, pattern
from clothwright.order.figures import figures
from orders import closed_features, main_features, order, swapped


@pytest.mark.parametrize(
    ("shape", "body"), list(product(FrontShape, (P92, YSOLDE, THEA)))
)
def test_every_front_neck(shape: FrontShape, body: Body) -> None:
    """Front necks meet the back square over the shoulder (sum 180°, exact)."""
    features = (
        Block(),
        SleevelessArmhole(),
        Neckline(shape=shape),
        BackNeckline(shape=BackShape.BOAT),
        FrontArmholePrincess(),
        BackArmholePrincess(),
        ConcealedZip(),
        WaistSeam(),
        Peplum(),
        Facing(),
    )
    made = draft(order(body, features))
    fc, bc = made.sheet.piece("FC"), made.sheet.piece("BC")
    if shape is not FrontShape.STANDARD:
        total = fc.interior_angle("shoulder") + bc.interior_angle("neck")
        assert total == pytest.approx(180.0, abs=0.5)
    assert not made.failed, made.failures()


def test_armhole_tightening_shortens_the_side_front() -> None:
    """ta 0.6: FS.armhole 11.70 on P92 and 11.65 at 1/4 in on the demo's client."""
    features = [
        f if not isinstance(f, SleevelessArmhole) else SleevelessArmhole(tightened=0.6)
        for f in main_features(ease=0.0)
    ]
    made = draft(order(P92, tuple(features)))
    assert made.sheet.length("FS", "armhole") == pytest.approx(11.70, abs=0.1)


def test_a_small_rounding_at_the_back_corner() -> None:
    """Smaller than the facing's roll to the inside: the facing turns a corner."""
    features = [
        f if not isinstance(f, LowOpenBack) else LowOpenBack(corner_radius=0.1)
        for f in main_features()
    ]
    for body in (P80, P92, P116):
        assert not draft(order(body, tuple(features))).failed


def test_the_estimates_named_do_not_depend_on_what_was_asked() -> None:
    made = draft(order(P92, tuple(main_features())))
    before = pattern(made, words=False).drawn.notes
    figures(made)
    assert pattern(made, words=False).drawn.notes == before


@pytest.mark.parametrize(
    ("share", "body"), list(product((None, 0.36, 0.45, 0.58, 0.6, 0.65), BODIES))
)
def test_a_tightened_armhole_from_any_start(share: float | None, body: Body) -> None:
    """The turn about BP takes ta at the line's start: FS.armhole loses 0.40 to 0.60
    of ta 0.6, runs smooth, and the start lies where the numbers say."""
    made = []
    for ta in (0.0, 0.6):
        swap: dict[str, Feature] = {
            "sleeveless armhole": SleevelessArmhole(tightened=ta),
            "front armhole princess": FrontArmholePrincess(share=share),
        }
        features = (swap.get(f.kind, f) for f in main_features(ease=0.0))
        made.append(draft(order(body, tuple(features))))
    plain, tight = made
    assert not tight.failed, tight.failures()
    points, n = tight.sheet.points, tight.numbers
    assert distance(points["BP"], points["Qf"]) == pytest.approx(n.reach_Qf, abs=1e-3)
    assert distance(points["Qf"], points["Q2"]) == pytest.approx(
        2 * n.reach_Qf * math.sin(math.radians(n.theta + n.phi_a) / 2), abs=1e-6
    )
    lost = [d.sheet.length("FS", "armhole") for d in made]
    assert 0.40 < lost[0] - lost[1] < 0.60
    assert not plain.failed


@pytest.mark.parametrize("dip", [0.0, 0.3, 3.0])
@pytest.mark.parametrize("tightened", [0.0, 0.6, 1.2])
def test_panel_behind_a_tightened_edge(tightened: float, dip: float) -> None:
    """The edge loses what was asked (11.1: 0.1 between lap line and edge)."""
    swap: dict[str, Feature] = {
        "low open back": LowOpenBack(tightened=tightened, corner_radius=0.0),
        "panel behind": UnderPanel(dip=dip),
    }
    features = tuple(swap.get(f.kind, f) for f in main_features())
    for body in (P92, P116, BRIDA):
        made = draft(order(body, features))
        assert not made.failed, made.failures()
        wanted = made.numbers.slant - tightened
        assert made.sheet.length("BC", "slant") == pytest.approx(wanted, abs=0.02)


@pytest.mark.parametrize("tilt", [0.0, 8.5])
def test_a_standard_neck_follows_its_tilt(tilt: float) -> None:
    """Both necks leave the shoulder by the tilt, and meet (sum 180°, exact)."""
    features = closed_features(FrontShape.STANDARD, BackShape.STANDARD)
    neck = Neckline(shape=FrontShape.STANDARD, tilt=tilt)
    made = draft(order(P92, swapped(features, neck)))
    assert not made.failed, made.failures()
    corner = made.sheet.piece("FC").interior_angle("shoulder")
    assert corner == pytest.approx(90.0 - tilt, abs=1.0 if tilt else 3.0)


def test_a_facing_is_not_crossed_by_a_deep_neck() -> None:
    """A neck of 24 on a square shape reaches the facing's loose edge: told so."""
    features = closed_features(FrontShape.SQUARE)
    deep = Neckline(shape=FrontShape.SQUARE, depth=24.0)
    made = draft(order(ansur_whole()[0], swapped(features, deep)))
    told = [f for f in made.findings if f.code == "F6"]
    assert made.failed == bool(told)
    assert all('depth of "neckline"' in str(f) for f in told)
    assert told
