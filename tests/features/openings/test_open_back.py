"""The low open back measured again on the paper (9): corner, set-ins, tightening."""

import math
import random

import pytest

from bodies import BRIDA, P80, P92, P116, YSOLDE, bdims_women
from clothwright.blocks.bodice_curves import inward_back
from clothwright.body import Body
from clothwright.curves import Path, Point, degrees_between, distance, unit
from clothwright.features import Feature
from clothwright.features.bodice.back_princess import BackArmholePrincess
from clothwright.features.bodice.bust_findings import bust_girth
from clothwright.features.bodice.shoulder import Tightening
from clothwright.features.necks.necklines import BackNeckline
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.openings.loops import Loops, Rows
from clothwright.features.openings.open_back import DepthFrom, LowOpenBack
from clothwright.features.openings.under_panel import UnderPanel
from clothwright.findings import Finding, Severity
from clothwright.order import Draft, OrderError, draft
from orders import main_features, order

MM = 0.1


def with_back(*new: Feature) -> tuple[Feature, ...]:
    """The main garment with these features in place of its own of the same kind."""
    swap = {f.kind: f for f in new}
    return tuple(swap.get(f.kind, f) for f in main_features())


def found(made: Draft, code: str) -> list[Finding]:
    return [f for f in made.findings if f.code == code]


@pytest.mark.parametrize("seed", range(60))
def test_the_edge_as_ordered(seed: int) -> None:
    """Set-ins from the centre back, length, corner and rounding (9.2 to 9.4, exact)."""
    rng = random.Random(seed)
    body = rng.choice((P92, BRIDA, P116, *bdims_women()[::7]))
    e1, e2 = rng.uniform(2, 6), rng.uniform(0, 3)
    rc, depth = rng.choice((0.0, 1.0, 2.5)), rng.uniform(10, 20)
    back = LowOpenBack(depth=depth, top=e1, waist=e2, corner_radius=rc)
    try:
        made = draft(order(body, with_back(back)))
    except OrderError as e:
        assert "make " in str(e), str(e)
        return
    n, sheet = made.numbers, made.sheet
    edge = sheet.edge("BC", "slant").path
    assert edge.start.x == pytest.approx(e2, abs=MM / 10)
    y = (n.yW + edge.end.y) / 2
    level = Path.line(Point(-5, y), Point(50, y))
    share = (y - n.y1) / (n.yW - n.y1)
    (hit,) = edge.meets(level)
    assert edge.at_length(hit[0]).x == pytest.approx(e1 + (e2 - e1) * share, abs=1e-6)
    rounding = rc * math.tan(math.radians(n.corner_turn) / 2)
    assert edge.length == pytest.approx(n.slant - rounding, abs=MM / 10)
    # the corner from the neck's own arrival: the start mirrored in the chord (0)
    p, corner = sheet.points["Nb′"], sheet.points["E1"]
    start, chord = inward_back(n.sigma_b_new), unit(corner - p)
    along = start[0] * chord[0] + start[1] * chord[1]
    arrive = (2 * along * chord[0] - start[0], 2 * along * chord[1] - start[1])
    down = unit(Point(e2 - e1, n.yW - n.y1))
    assert n.corner_E1 == pytest.approx(180 - degrees_between(arrive, down), abs=1e-6)
    assert bool(found(made, "O4")) == (not 100 <= n.corner_E1 <= 175)
    assert not [f for f in found(made, "O5") if f.severity is Severity.REFUSE]


@pytest.mark.parametrize("body", [P80, P92, BRIDA, YSOLDE])
def test_measured_below_the_nape(body: Body) -> None:
    """E1 lies Do below the nape, which is nr below hb (9.1, exact): the same back as
    one measured so much deeper from hb."""
    back = LowOpenBack(depth=13.0, depth_from=DepthFrom.NAPE)
    made = draft(order(body, with_back(back)))
    n = made.numbers
    assert made.sheet.points["E1"].y == pytest.approx(13.0, abs=1e-9)
    assert n.Db == pytest.approx(13.0 + n.nr, abs=1e-9)
    deeper = draft(order(body, with_back(LowOpenBack(depth=13.0 + n.nr))))
    for code in ("BC", "BS", "UP", "BF"):
        for edge in made.sheet.piece(code).edges:
            other = deeper.sheet.length(code, edge.name)
            assert edge.length == pytest.approx(other, abs=1e-6)


def test_what_a_rounded_corner_takes() -> None:
    """At E1 the fillet leaves R·(sec(turn/2) − 1) along the bisector (exact); level,
    that is told when it is more than a hand would see."""
    made = draft(order(P92, with_back(LowOpenBack(corner_radius=4.0))))
    (said,) = found(made, "O5")
    n = made.numbers
    half = math.radians(n.corner_turn) / 2
    shaved = 4.0 * (1 / math.cos(half) - 1)
    took = said.data["drawn"] - said.data["ordered"]
    assert said.severity is Severity.NOTE
    assert shaved < took < 1.3 * shaved
    assert not found(draft(order(P92, with_back(LowOpenBack(corner_radius=0.5)))), "O5")


def test_a_sharp_corner_is_doubted() -> None:
    made = draft(order(P92, with_back(LowOpenBack(depth=8.5, top=2.5))))
    (said,) = found(made, "O4")
    assert said.data["corner"] < 100


@pytest.mark.parametrize("te", [0.2, 0.4, 0.6, 0.9])
@pytest.mark.parametrize("body", [P92, BRIDA, P116, YSOLDE])
def test_a_tightened_edge(body: Body, te: float) -> None:
    """9.5: the edge loses te, the panel keeps its length (a hinge; exact but for the
    rounding, R·(2·tan(κ/2) − κ)), and bends by 2·asin(te/(2·|M J|)), blended."""
    bare = draft(order(body, with_back(LowOpenBack(corner_radius=0.0))))
    tight = draft(order(body, with_back(LowOpenBack(corner_radius=0.0, tightened=te))))
    n = tight.numbers
    was, now = bare.sheet.piece("BC"), tight.sheet.piece("BC")
    assert was.edge("slant").length - now.edge("slant").length == pytest.approx(
        te, abs=MM / 5
    )
    assert now.edge("panel").length == pytest.approx(was.edge("panel").length, abs=0.01)
    m, hinge, up = (tight.sheet.points[name] for name in ("M", "Jt", "M′"))
    # ruled straight again the edge loses a little more than the wedge
    assert te - distance(m, up) == pytest.approx(0.0, abs=0.12 * te + 1e-6)
    bend = math.degrees(2 * math.asin(distance(m, up) / (2 * distance(m, hinge))))
    swung = degrees_between(
        was.edge("shoulder").path.start_direction,
        now.edge("shoulder").path.start_direction,
    )
    assert swung == pytest.approx(bend, abs=1e-6)
    assert bool(found(tight, "O6")) == (bend > 6.0)
    panel = now.edge("panel").path
    joints = zip(panel.segments, panel.segments[1:], strict=False)
    breaks = [degrees_between(a.end_direction, b.start_direction) for a, b in joints]
    assert max(breaks) < 1.0
    for code in ("S2", "S9"):
        (walk,) = [w for w in tight.report.walks if w.seam.code == code]
        assert walk.holds, code
    assert not found(tight, "S15")
    assert n.tape == pytest.approx(0.99 * (n.slant - te), abs=1e-9)


@pytest.mark.parametrize("te", [0.0, 0.3, 0.6])
@pytest.mark.parametrize("depth", [12.0, 15.0, 19.0])
@pytest.mark.parametrize("body", [P92, BRIDA, P116, YSOLDE])
def test_the_bust_is_front_and_back_and_the_set_in(
    body: Body, depth: float, te: float
) -> None:
    """9.6: half = FC + FS + BS + BC + set-in, each piece measured across at the level
    of the bust point, the set-in on the panel's lap line."""
    back = LowOpenBack(corner_radius=0.0, depth=depth, tightened=te)
    made = draft(order(body, with_back(back)))
    n, sheet = made.numbers, made.sheet
    bp = sheet.points["BP"]

    def at(piece: str, edge: str) -> Point:
        level = Path.line(Point(-50, bp.y), Point(150, bp.y))
        path = sheet.edge(piece, edge).path
        return path.at_length(path.meets(level)[0][0])

    fs = sheet.edge("FS", "panel").path
    front = n.X - bp.x - fs.nearest(bp)[1] + distance(sheet.points["J"], bp)
    bs = at("BS", "side").x - at("BS", "panel").x
    bc = at("BC", "panel").x - at("BC", "slant").x
    # what lies on the lap line of the panel is the same distance from the waist
    lap = sheet.piece("UP").lines[0].path.reversed()
    edge = sheet.edge("BC", "slant").path
    set_in = lap.at_length(edge.length_to_point(at("BC", "slant"))).x
    half = bust_girth(n, sheet)
    assert half == pytest.approx(front + bs + bc + set_in, abs=1e-3)
    # the wedge takes nothing from the girth; the edge ruled straight adds a little
    plain = draft(order(body, with_back(LowOpenBack(corner_radius=0.0, depth=depth))))
    before = bust_girth(plain.numbers, plain.sheet)
    assert half is not None and before is not None
    assert before - 0.02 <= half <= before + 1.3 * te
    assert bool(found(made, "B1")) <= bool(found(plain, "B1"))


def test_the_bust_of_a_low_back_below_the_bust_point() -> None:
    """The level of the bust point meets the neck, above the slanted edge."""
    for te in (0.0, 0.3):
        made = draft(order(P80, with_back(LowOpenBack(depth=24, tightened=te))))
        assert made.sheet.points["BP"].y < made.numbers.y1
        half = bust_girth(made.numbers, made.sheet)
        assert half == pytest.approx((80 + 5) / 2, abs=0.9)


@pytest.mark.parametrize("shaped", [False, True])
def test_the_bust_beside_a_centre_back_seam(shaped: bool) -> None:
    """A shaped seam takes in what is drawn there (16.1), and that is no doubt."""
    left_out = (LowOpenBack, Loops, UnderPanel, Tightening)
    features = [f for f in main_features() if not isinstance(f, left_out)]
    made = draft(order(P92, (*features, BackNeckline(), ConcealedZip(shaped=shaped))))
    seam = made.sheet.edge("BC", "cb").path
    level = Path.line(Point(-50, made.sheet.points["BP"].y), Point(150, 23.85))
    level = Path.line(level.start, Point(150, level.start.y))
    taken = seam.at_length(seam.meets(level)[0][0]).x
    assert (taken > 0.2) == shaped
    plain = draft(order(P92, with_back(BackArmholePrincess())))
    ours, other = (bust_girth(d.numbers, d.sheet) for d in (made, plain))
    assert ours is not None and other is not None
    bd = plain.numbers.bd_cut - made.numbers.bd_cut  # the dart is smaller by cbs
    assert other - ours == pytest.approx(taken, abs=0.2 * bd + 0.02)
    assert not found(made, "B1")


def test_the_panel_behind_takes_the_laced_back_too() -> None:
    made = draft(
        order(P92, with_back(Loops(rows=Rows.LACING), UnderPanel(overlap=2.6)))
    )
    assert found(made, "usual")  # 1.2 to 2.5, or 1/2 to 1 in (11.1)
    assert not found(draft(order(P92, with_back(UnderPanel(overlap=2.54)))), "usual")
