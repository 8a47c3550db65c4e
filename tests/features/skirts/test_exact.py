"""Exact geometry of the trade notes (check values §2 and §3)."""

import math

import pytest
from shapely.geometry import LineString, Polygon

from bodies import P92
from clothwright.blocks.bust_line_rules import SCALE_DEPTH
from clothwright.blocks.circle import arc
from clothwright.body import RuleSet
from clothwright.curves import Point, distance
from clothwright.features.bodice.bust_findings import bust_girth
from clothwright.features.skirts.peplum import Cut, Peplum
from clothwright.features.skirts.peplum_rules import FLARED
from clothwright.findings import Severity
from clothwright.order import draft
from clothwright.units import Unit
from order.test_random_bodies import demo_features
from orders import main_features, order
from women import woman

INCH = 2.54


@pytest.mark.parametrize(
    ("waist", "f", "radius"),
    [
        (72, 1.0, 11.459),  # G3
        (72, 0.75, 15.279),  # G4
        (72, 0.5, 22.918),
        (72, 0.25, 45.837),
        (62, 1.0, 9.868),  # G5
        (98, 1.0, 15.597),
        (75, 0.5, 23.873),  # G8
    ],
)
def test_circle_radius(waist: float, f: float, radius: float) -> None:
    assert FLARED.rules["r"].compute(waist, f) == pytest.approx(radius, abs=0.001)


def test_circle_hem() -> None:
    """G6: waist 72, L 60, full circle, hem 448.99; G8: 131.55."""
    hem = FLARED.rules["hem"].compute
    assert hem(72, 1.0, 60) == pytest.approx(448.99, abs=0.01)
    assert hem(75, 0.5, 18) == pytest.approx(131.55, abs=0.01)


def test_arcs_are_circles() -> None:
    path = arc(Point(3, 4), 22.5, 90, 138)
    assert path.length == pytest.approx(math.radians(48) * 22.5, abs=1e-5)
    for i in range(40):
        p = path.at_length(path.length * i / 39)
        assert distance(p, Point(3, 4)) == pytest.approx(22.5, abs=1e-5)


@pytest.mark.parametrize("bust", [30, 32, 34, 36, 38, 40, 42])
@pytest.mark.parametrize("constant", [1.0, 1.5])
def test_scale_rule(bust: int, constant: float) -> None:
    """A30 to A42 (exact arithmetic); above 100 cm the corrected slope holds."""
    b, k = bust * INCH, constant * INCH
    depth = SCALE_DEPTH.rules["Dm"].compute(b, b, 5.0, k)
    plain = b / 6 + k
    if b <= 100:
        assert depth == pytest.approx(plain, abs=1e-9)
    else:
        assert depth == pytest.approx(100 / 6 + (b - 100) / 12 + k, abs=1e-9)


def test_full_cup_takes_the_frame_bust() -> None:
    """Corrections C22: B 116, c 9: Bf 112, then the slope above 100 gives 21.48."""
    depth = SCALE_DEPTH.rules["Dm"].compute(116.0, 112.0, 9.0, 3.81)
    assert depth == pytest.approx(21.48, abs=0.01)


def test_panelled_peplum_is_the_circle_divided() -> None:
    """13.3: areas and arcs of the panels add up to those of the circle (exact)."""
    plain = draft(order(P92, main_features())).sheet
    panels = draft(
        order(
            P92,
            tuple(
                Peplum(cut=Cut.PANELLED) if isinstance(f, Peplum) else f
                for f in main_features()
            ),
        )
    ).sheet
    for whole, parts in (("PF", ("PFC", "PFS")), ("PB", ("PBC", "PBS"))):
        assert sum(panels.piece(p).area for p in parts) == pytest.approx(
            plain.piece(whole).area, abs=1e-5
        )
        for edge in ("waist", "hem"):
            assert sum(panels.length(p, edge) for p in parts) == pytest.approx(
                plain.length(whole, edge), abs=1e-5
            )


def test_finished_bust_is_body_and_ease() -> None:
    """5.5: half girth at the bust point is (B + Eb)/2, less what the lean of the side
    and the rounding take. It is what the panels measure there (shapely); the paper
    shaved off the side front is not counted."""
    made = draft(order(P92, main_features()))
    half = bust_girth(made.numbers, made.sheet)
    assert half is not None
    aim = (made.numbers.B + made.numbers.Eb) / 2
    assert aim - 1.1 <= half <= aim
    y = made.sheet.points["BP"].y + 0.02
    level, sliced = LineString([(-60, y), (120, y)]), 0.0
    for code in ("FC", "FS", "BC", "BS"):
        paper = Polygon(made.sheet.piece(code).outline.flatten(0.005))
        part = paper.intersection(level)
        sliced += part.length + (part.bounds[0] if code == "BC" else 0.0)
    assert half == pytest.approx(sliced, abs=0.06)


@pytest.mark.parametrize("seed", [246, 322])
def test_a_bust_smaller_than_the_body_is_refused(seed: int) -> None:
    """On these random women the peplum top comes out up to 8 mm smaller than the body
    over the bust points."""
    rules = RuleSet.SURVEY if seed == 246 else RuleSet.HANDBOOK
    unit = Unit.CM if seed == 246 else Unit.IN
    features = demo_features("peplum-top")
    made = draft(order(woman(seed), features, unit=unit, estimates=rules))
    half = bust_girth(made.numbers, made.sheet)
    assert half is not None
    told = {f.code: f.severity for f in made.findings}
    assert half < made.numbers.B / 2 - 0.3
    assert told["B1"] is Severity.REFUSE
