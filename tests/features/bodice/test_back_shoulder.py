"""The back shoulder: ease, or a dart led to panel, neck or seam.

First garment 6.1 and 7.3. Figures are the notes' own ([NUM]: their trial drafts); the
rest is exact geometry.
"""

import math
from itertools import product

import pytest
from shapely.geometry import LineString, Polygon
from shapely.geometry import Point as ShapelyPoint

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_whole, bdims_women
from clothwright.body import Body, RuleSet
from clothwright.curves import cross, direction, distance, dot
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.armhole import SleevelessArmhole
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.shoulder_princess import ShoulderPrincess
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import Verb
from clothwright.units import Unit
from orders import closed_back, main_features, order, swapped

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA)
WOMEN = bdims_women()[::4]
"""65 of the 260 women of bdims."""


def to_panel(body: Body, dart: float, share: float | None = None) -> Draft:
    way = BackShoulder.TO_PANEL
    return draft(order(body, closed_back(way, dart=dart, share=share)))


# -- what the style decides -----------------------------------------------------------
@pytest.mark.parametrize(
    ("features", "unit", "dart", "ease"),
    [
        (main_features(), Unit.CM, 0.0, 0.5),  # 2.3: an open back
        (main_features(), Unit.IN, 0.0, 0.635),  # 1/4 in
        (closed_back(), Unit.CM, 0.0, 0.6),  # 6.1: a closed back is eased
        (closed_back(), Unit.IN, 0.0, 0.635),
        (closed_back(front=FrontShape.BOAT), Unit.CM, 0.0, 0.5),  # 2.3: boat necks
        (closed_back(BackShoulder.NONE), Unit.CM, 0.0, 0.5),
        (closed_back(BackShoulder.EASE), Unit.CM, 0.0, 0.6),
        (closed_back(BackShoulder.TO_PANEL), Unit.CM, 0.8, 0.5),
        (closed_back(lines="shoulder"), Unit.CM, 1.2, 0.5),  # 7.3, A2.3
        (closed_back(lines="shoulder", front=FrontShape.BOAT), Unit.CM, 0.0, 0.5),
        (closed_back(BackShoulder.EASE, lines="shoulder"), Unit.CM, 0.0, 0.6),
    ],
)
def test_dart_and_ease_by_style(
    features: tuple[Feature, ...], unit: Unit, dart: float, ease: float
) -> None:
    made = draft(order(P92, features, unit=unit))
    assert (made.numbers.sd, made.numbers.se) == pytest.approx((dart, ease))
    assert not made.failed, made.failures()


def test_an_open_back_has_no_dart_in_the_seam() -> None:
    """Section 9 needs the mode none, with a shoulder princess and a narrow neck too."""
    swap: dict[str, Feature] = {"neckline": Neckline(shape=FrontShape.V)}
    features = [swap.get(f.kind, f) for f in main_features() if f.kind != "tightening"]
    features = [f for f in features if "princess" not in f.kind]
    made = draft(order(P92, (*features, ShoulderPrincess())))
    assert made.numbers.sd == 0.0
    assert not made.failed, made.failures()


# -- to the panel ---------------------------------------------------------------------
def test_the_opening_at_the_armhole_as_in_the_notes() -> None:
    """6.1: about 0.3 with a dart of 1.2, and exactly 2·|Z Qb|·sin(θz/2)."""
    for body in (P92, BRIDA, YSOLDE, P116):
        made = to_panel(body, 1.2)
        p = made.sheet.points
        gap = distance(p["Qb"], p["Qb′"])
        assert gap == pytest.approx(0.3, abs=0.02)
        half = math.radians(made.numbers.theta_s) / 2
        assert gap == pytest.approx(2 * distance(p["Z"], p["Qb"]) * math.sin(half))


@pytest.mark.parametrize(
    ("body", "dart", "share"), list(product(BODIES, (0.4, 0.8, 1.0), (None, 0.38, 0.6)))
)
def test_dart_to_panel(body: Body, dart: float, share: float | None) -> None:
    made = to_panel(body, dart, share)
    assert not made.failed, made.failures()
    n, p, sheet = made.numbers, made.sheet.points, made.sheet
    # Z: the place of the panel line nearest to the dart's point
    line = LineString(sheet.lines["back panel, upper"].flatten(0.001))
    ps = ShapelyPoint(*p["Ps"])
    assert distance(p["Z"], p["Ps"]) == pytest.approx(ps.distance(line), abs=0.1 * MM)
    assert ShapelyPoint(*p["Z"]).distance(line) < 0.1 * MM
    # the dart's angle is taken at Z; the shoulder is ruled from hb, SH + se long
    legs = direction(p["Z"], p["D1s"]), direction(p["Z"], p["D2s"])
    angle = math.degrees(math.acos(dot(*legs)))
    assert n.theta_s == pytest.approx(angle, abs=0.001)
    assert distance(p["hb"], p["Tb"]) == pytest.approx(n.SH - n.ti + n.se)
    assert abs(distance(p["hb"], p["tb′"]) - (n.SH + n.se)) <= 0.25
    ruled = direction(p["hb"], p["tb′"])
    assert abs(cross(ruled, p["D1s"] - p["hb"])) <= 0.5
    assert abs(cross(ruled, p["Tb"] - p["hb"])) < 0.1 * MM
    assert sheet.length("BC", "shoulder") == pytest.approx(n.Lrb, abs=0.1 * MM)
    # seams and joints: 6.2.3, 22
    panels = sheet.length("BC", "panel"), sheet.length("BS", "panel")
    assert panels[0] == pytest.approx(panels[1], abs=0.02)
    joints = {a.joint.name: a for a in made.report.angles}
    assert abs(joints["armhole over the back panel"].off) <= 1.0
    assert abs(joints["armhole over the shoulder"].off) <= 1.0
    assert abs(joints["neck over the shoulder"].off) <= 1.0


@pytest.mark.parametrize("way", [BackShoulder.TO_PANEL, BackShoulder.NECK])
def test_slash_and_tape_keep_the_paper(way: BackShoulder) -> None:
    """Paper never stretches: the back has one area before the slash and after the
    tape, and its shoulder, ruled through, is as long as its two parts."""
    made = draft(order(P92, closed_back(way)))
    after = [s.after for s in made.steps if s.after and s.part == "back"]
    verbs = [s.verb for s in made.steps if s.after and s.part == "back"]
    tape = verbs.index(Verb.TAPE)
    before, taped = after[tape - 2], after[tape]
    assert before is not None
    assert taped is not None
    old, new = before.piece("B"), taped.piece("B")
    assert new.area == pytest.approx(old.area, abs=1e-6)
    parts = old.edge("shoulder neck").length + old.edge("shoulder").length
    assert new.edge("shoulder").length == pytest.approx(parts, abs=0.1 * MM)


# -- in the seam ----------------------------------------------------------------------
@pytest.mark.parametrize(
    ("body", "front"),
    list(product(BODIES, (FrontShape.STANDARD, FrontShape.ROUND, FrontShape.V))),
)
def test_dart_in_the_panel_seam(body: Body, front: FrontShape) -> None:
    """7.3: legs of one length, the point 7 deep and within 1 of the line to Pd, the
    shoulder straight across the sewn seam, sewn half to half."""
    own = front is FrontShape.STANDARD
    back = BackShape.STANDARD if own else BackShape.ROUND
    made = draft(order(body, closed_back(lines="shoulder", front=front, back=back)))
    assert not made.failed, made.failures()
    n, p, sheet = made.numbers, made.sheet.points, made.sheet
    legs = distance(p["D1s′"], p["Ps"]), distance(p["D2s′"], p["Ps"])
    assert legs[0] == pytest.approx(legs[1], abs=0.1 * MM)
    shoulder = direction(p["D1s"], p["D2s"])
    assert cross(shoulder, p["Ps"] - p["D1s"]) == pytest.approx(7.0, abs=0.2)
    middle = p["D1s"] + (p["D2s"] - p["D1s"]) * 0.5
    down = direction(middle, p["Pd"])
    assert abs(cross(down, p["Ps"] - middle)) <= 1.0 + 0.1 * MM
    joints = {a.joint.name: a for a in made.report.angles}
    for half in ("front", "back"):
        assert abs(joints[f"shoulder over the {half} panel"].off) <= 1.0
    for name in ("neck over the shoulder", "armhole over the shoulder"):
        assert abs(joints[name].off) <= 1.0
    total = sheet.length("BC", "shoulder") + sheet.length("BS", "shoulder")
    assert total == pytest.approx(n.Lrb, abs=0.1 * MM)
    assert sheet.length("BC", "shoulder") == pytest.approx(n.Lrb / 2, abs=0.05)
    panels = sheet.length("BC", "panel"), sheet.length("BS", "panel")
    assert panels[0] == pytest.approx(panels[1], abs=0.05)


# -- to the neck ----------------------------------------------------------------------
@pytest.mark.parametrize(
    ("lines", "lining"),
    [("armhole", None), ("darts", None), ("mixed", None), ("darts", Mode.TO_EDGE)],
)
def test_dart_to_the_neck(lines: str, lining: Mode | None) -> None:
    for body in BODIES:
        way = BackShoulder.NECK
        made = draft(order(body, closed_back(way, lines=lines, lining=lining)))
        assert not made.failed, made.failures()
        sheet = made.sheet
        code = "B" if "B" in sheet.pieces else "BC"
        legs = [sheet.length(code, f"dart neck {e}") for e in ("cb", "side")]
        assert legs[0] == pytest.approx(legs[1], abs=0.1 * MM)
        neck = sheet.length(code, "neck") + sheet.length(code, "neck side")
        drawn = sheet.lines["neck back"].length
        assert neck == pytest.approx(drawn, abs=0.1 * MM)
        joints = {a.joint.name: a for a in made.report.angles}
        assert abs(joints["back neck over its dart"].off) <= 1.0
        assert abs(joints["neck over the shoulder"].off) <= 1.0
        capped = next(
            q for q in pattern(made, words=False).drawn.pieces if q.code == code
        )
        assert Polygon(capped.cut_line.flatten(0.01)).is_valid


# -- what does not go together ----------------------------------------------------
@pytest.mark.parametrize(
    ("features", "says"),
    [
        (closed_back(dart=0.8), "has no place"),
        (closed_back(BackShoulder.EASE, dart=0.8), "has no place"),
        (closed_back(BackShoulder.TO_PANEL, lines="darts"), "back armhole princess"),
        (closed_back(BackShoulder.SEAM), "only a shoulder princess"),
        (closed_back(BackShoulder.NECK, lines="shoulder"), "in its seam"),
        (closed_back(BackShoulder.TO_PANEL, front=FrontShape.BOAT), "within 1.2 cm"),
        (closed_back(BackShoulder.NECK, front=FrontShape.SQUARE), "at most 2 cm wider"),
        (
            closed_back(dart=1.0, lines="shoulder", front=FrontShape.BOAT),
            "leaves no room",
        ),
        (closed_back(BackShoulder.NECK, lining=Mode.BELOW_FACING), "line to the edge"),
        *(
            ((Block(back_shoulder=way), *main_features()[1:]), "blade away")
            for way in BackShoulder
            if way not in (BackShoulder.NONE, BackShoulder.BY_STYLE)
        ),
        ((Block(back_shoulder_dart=0.8), *main_features()[1:]), "has no place"),
    ],
)
def test_refused_in_a_sentence(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, features))


def test_a_dart_too_wide_to_be_trued_is_a_finding() -> None:
    """6.1: the tip moves by 0.25 at most."""
    made = draft(order(P116, closed_back(BackShoulder.TO_PANEL, dart=1.8)))
    assert any(f.code == "D1" for f in made.findings)
    assert made.failed


def test_a_dart_beside_the_armhole_meets_the_line_below_its_start() -> None:
    """On this woman of the army survey the start of the line, on the armhole, would be
    the place nearest to Ps, from which nothing can be slashed: Z lies 1.5 cm down it
    (our own)."""
    way = closed_back(BackShoulder.TO_PANEL)
    deep = Block(back_shoulder=BackShoulder.TO_PANEL, depth_added=2.91)
    features = swapped(swapped(way, deep), SleevelessArmhole(narrowed=2.37))
    asked = order(ansur_whole()[304], features, estimates=RuleSet.SURVEY)
    made = draft(asked)
    assert not made.failed, made.failures()
    p = made.sheet.points
    line = made.sheet.lines["back panel, upper"]
    assert distance(p["Ps"], p["Qb"]) < distance(p["Ps"], p["Z"])
    assert line.length_to_point(p["Z"]) == pytest.approx(1.5, abs=0.1 * MM)


# -- real bodies ------------------------------------------------------------------
@pytest.mark.parametrize(
    ("way", "lines"),
    [
        (BackShoulder.EASE, "armhole"),
        (BackShoulder.TO_PANEL, "armhole"),
        (BackShoulder.NECK, "darts"),
        (BackShoulder.SEAM, "shoulder"),
    ],
)
def test_on_real_women(way: BackShoulder, lines: str) -> None:
    """Every seam meets, every outline is simple (shapely judges)."""
    for body in WOMEN:
        made = draft(order(body, closed_back(way, lines=lines)))
        assert not made.failed, (body.client, made.failures())
        for piece in made.sheet.pieces.values():
            assert Polygon(piece.outline.flatten(0.02)).is_valid, piece.code
