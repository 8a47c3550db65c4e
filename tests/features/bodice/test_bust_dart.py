"""The bust dart led elsewhere: angles, intakes, lengths (transformations 1)."""

import math
from itertools import product

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE
from clothwright.blocks import bodice
from clothwright.body import Body
from clothwright.curves import Point, degrees_between, distance, mix
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.bust_dart_rules import MOST_EASE, TakenUp
from clothwright.features.bodice.front_dart import (
    OPENED,
    DartPlace,
    as_drafted,
    close_side,
)
from clothwright.features.bodice.led_last import LATE
from clothwright.features.bodice.opened_dart import dart_angle_of, slashed
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.side_level import SideLevel
from clothwright.features.collars.tie_collar import TieCollar
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.neck_shapes import WINDING, FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.making import making_order
from clothwright.making.telling import seam_line
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import pivot
from clothwright.sheets.steps import steps_text
from orders import closed_back, cut_faults, drafted, order, swapped

MM = 0.1
PLACES = [p for p in DartPlace if p not in LATE]
"""A yoke's dart is tested with the yoke, one at the centre front by itself."""

NAMED = ("neck", "shoulder", "armhole")


def led(dart: BustDart, lining: Mode | None = None) -> tuple[Feature, ...]:
    features = closed_back(lines="darts", lining=lining)
    return swapped(features, dart, place_of="side dart")


def opening(made: Draft, place: DartPlace) -> float:
    f, o = made.sheet.piece("F"), OPENED[place]
    return distance(f.edge(o.leg_first).path.start, f.edge(o.leg_last).path.end)


def test_the_check_values_of_a_transfer() -> None:
    """P92: θ 11.27° moved whole to mid shoulder, 24.20 from BP, takes in 4.75; moved to
    the waist, 17.22 from BP, it adds 3.38 (check values 5, tolerance 0.02)."""
    d = drafted(P92)
    f, bp = d.sheet.piece("F"), d["BP"]
    theta = dart_angle_of(f, "dart low", "dart high")
    assert theta == pytest.approx(11.27, abs=0.02)
    o = OPENED[DartPlace.SHOULDER]
    at = mix(d["hf"], d["tf"], 0.5)
    assert distance(bp, at) == pytest.approx(24.20, abs=0.02)
    d.sheet = pivot(slashed(d.sheet, o, at, bp), "F", "dart high", o.leg_first, -theta)
    f = d.sheet.piece("F")
    mouth = distance(f.edge(o.leg_first).path.start, f.edge(o.leg_last).path.end)
    assert mouth == pytest.approx(4.75, abs=0.02)
    close_side(d)
    assert d.sheet.length("F", "side") == pytest.approx(18.76, abs=0.05)  # §5
    d = drafted(P92)
    before = d["D2"]
    sheet = pivot(d.sheet, "F", "leg side", "dart low", theta)
    after = sheet.edge("F", "leg side").path.end
    assert before.y - bp.y == pytest.approx(17.22, abs=0.02)
    added = distance(before, after) * (before.y - bp.y) / distance(bp, before)
    assert added == pytest.approx(3.38, abs=0.02)
    assert bodice.FRONT == "front"


def test_the_exact_values_of_a_transfer() -> None:
    """3.0 at 15 is 11.478°; 24 from the apex 4.800, 12 from it 2.400 (G1, G2)."""
    theta = 2 * math.asin(3.0 / (2 * 15.0))
    assert math.degrees(theta) == pytest.approx(11.478, abs=0.001)
    for far, wide in ((24.0, 4.8), (12.0, 2.4)):
        assert 2 * far * math.sin(theta / 2) == pytest.approx(wide, abs=1e-3)


@pytest.mark.parametrize(
    ("place", "body"),
    list(product(PLACES, (P80, P92, P116, BRIDA, YSOLDE, THEA))),
)
def test_the_angle_goes_with_the_dart(place: DartPlace, body: Body) -> None:
    """Intake 2·|BP Q|·sin(θ/2) where it opens, the other edges as they were; the legs
    of one length; the side in one line that meets the back's (exact, given θ)."""
    made = draft(order(body, led(BustDart(to=place))))
    assert not made.failed, made.failures()
    plain = draft(order(body, closed_back(lines="darts")))
    n, f, was = made.numbers, made.sheet.piece("F"), as_drafted(plain.sheet)
    if place is not DartPlace.WAIST:
        o = OPENED[place]
        reach = distance(made.sheet.points["BP"], made.sheet.points[o.mark])
        wanted = 2 * reach * math.sin(math.radians(n.theta) / 2)
        assert opening(made, place) == pytest.approx(wanted, abs=1e-6)
    for name in NAMED:
        parts = [e for e in f.edges if e.name in (name, *_parts(name))]
        total = sum(e.length for e in parts)
        assert total == pytest.approx(was.edge(name).length, abs=0.02)
    assert not f.has("dart low")
    legs = OPENED[place]
    a, b = f.edge(legs.leg_first).length, f.edge(legs.leg_last).length
    assert a == pytest.approx(b, abs=0.02)
    assert not cut_faults(made)


def _parts(name: str) -> list[str]:
    return [e for o in OPENED.values() if o.edge == name for e in (o.first, o.last)]


@pytest.mark.parametrize(
    ("first", "second"),
    [
        (DartPlace.SHOULDER, DartPlace.WAIST),
        (DartPlace.NECK, DartPlace.ARMHOLE),
        (DartPlace.WAIST, DartPlace.SHOULDER),
        (DartPlace.ARMHOLE, None),
    ],
)
@pytest.mark.parametrize("share", [0.3, 0.7])
def test_a_split_dart_keeps_its_angle_in_all(
    first: DartPlace, second: DartPlace | None, share: float
) -> None:
    """The sum of the angles is kept (1.1), each measured from BP to its mouth."""
    made = draft(order(P92, led(BustDart(to=first, second=second, share=share))))
    assert not made.failed, made.failures()
    n, bp = made.numbers, made.sheet.points["BP"]
    assert n.theta_1 + n.theta_2 == pytest.approx(n.theta, abs=1e-9)
    for place, angle in ((first, n.theta_1), (second, n.theta_2)):
        if place is None or place is DartPlace.WAIST:
            continue
        reach = distance(bp, made.sheet.edge("F", OPENED[place].leg_last).path.end)
        wanted = 2 * reach * math.sin(math.radians(angle) / 2)
        assert opening(made, place) == pytest.approx(wanted, abs=1e-6)
    f = made.sheet.piece("F")
    assert f.has("dart low") == (second is None)
    assert not cut_faults(made)


@pytest.mark.parametrize("place", PLACES)
def test_led_back_it_is_the_front_that_was(place: DartPlace) -> None:
    """Facings are traced with the dart where it was: neck, shoulder and armhole lie
    again where they were drawn (exact), gathered or not."""
    plain = as_drafted(draft(order(P92, closed_back(lines="darts"))).sheet)
    for how in (TakenUp.DART, TakenUp.GATHERS):
        made = draft(order(P92, led(BustDart(to=place, taken_up=how))))
        again = as_drafted(made.sheet)
        for name in NAMED:
            for s in (0.0, 0.3, 0.8, 1.0):
                a, b = (p.edge(name).path for p in (plain, again))
                gap = distance(a.at_length(a.length * s), b.at_length(b.length * s))
                assert gap < 0.1 * MM, name


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("mode", [None, *Mode])
def test_gathers_are_planned_in_the_seam(place: DartPlace, mode: Mode | None) -> None:
    """No dart is left; the seam takes the fullness in, between notches half a zone to
    either side; the edge rises over the straight (1.6)."""
    dart = BustDart(to=place, taken_up=TakenUp.GATHERS)
    made = draft(order(P92, led(dart, mode)))
    assert not made.failed, made.failures()
    o, f = OPENED[place], made.sheet.piece("F")
    assert not f.has(o.leg_last)
    seam = next(
        s
        for s in made.sheet.seams
        if s.gathered
        and any(r == ("F", o.edge, False) or r[:2] == ("F", o.edge) for r in s.runs())
    )
    assert seam.right[-1].piece == "F"
    gained = made.sheet.chain_length(seam.right) - made.sheet.chain_length(seam.left)
    assert gained > 1.5
    at = sorted(k.left for k in seam.notches)
    zones = [b - a for a, b in zip(at, at[1:], strict=False)]
    assert any(z == pytest.approx(8.0, abs=0.01) for z in zones) or place in (
        DartPlace.NECK,
        DartPlace.SHOULDER,
    )
    if place is DartPlace.SHOULDER:
        edge = f.edge("shoulder").path
        middle = edge.at_length(edge.length / 2)
        gap = _off_line(edge.start, edge.end, middle)
        assert 0.3 < gap < 1.6


def _off_line(a: Point, b: Point, p: Point) -> float:
    return abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / distance(a, b)


def test_only_a_little_is_eased_in() -> None:
    """Over the bust up to 0.6 (1.4): a whole dart is refused, a small part is not."""
    made = draft(order(P92, led(BustDart(taken_up=TakenUp.EASE))))
    assert made.failed
    assert "as ease" in made.failures()[0]
    small = BustDart(
        to=DartPlace.ARMHOLE, taken_up=TakenUp.EASE, share=0.18, second=DartPlace.WAIST
    )
    made = draft(order(P92, led(small)))
    assert not made.failed, made.failures()
    a, b = (made.sheet.lines[f"gathered dart armhole {e}"] for e in ("low", "high"))
    assert 0.1 < distance(a.start, b.end) <= MOST_EASE


@pytest.mark.parametrize("level", list(SideLevel))
def test_a_side_dart_at_every_level_is_the_same_dart(level: SideLevel) -> None:
    """Its angle is θ; its intake is 2·|BP U|·sin(θ/2); French: 3 to 8 above the waist
    (1.1)."""
    features = swapped(closed_back(lines="darts"), SideDart(level=level))
    made = draft(order(P92, features))
    assert not made.failed, made.failures()
    n, p = made.numbers, made.sheet.points
    wide = distance(p["U1"], p["U2"])
    reach = distance(p["BP"], p["U2"])
    turn = math.radians(n.theta)
    assert wide == pytest.approx(2 * reach * math.sin(turn / 2), abs=1e-6)
    if level is SideLevel.FRENCH:
        assert 3.0 <= n.yW - p["U2"].y <= 8.0
    if level is SideLevel.HIGH:
        assert 2.5 <= p["U2"].y - n.yB < 3.0


def test_gathers_say_on_the_edge_what_they_come_to() -> None:
    """A stretch of 8 cm takes them by default (transformations 1.6); the paper and the
    hand step say how much is drawn up into that."""
    dart = BustDart(to=DartPlace.NECK, taken_up=TakenUp.GATHERS)
    features = swapped(led(dart), Neckline(shape=FrontShape.ROUND))
    made = draft(order(P92, features))
    assert not made.failed, made.failures()
    front = next(p for p in pattern(made).drawn.pieces if p.code == "F")
    (said,) = (b for b in front.wording.beside if "gather" in b.text)
    assert said.text == "gather to 8.0 between the notches"
    assert any(t.text in (said.text, said.short) for t in front.texts)
    wide = made.sheet.lines
    opened = distance(
        wide["gathered dart neck tip"].start, wide["gathered dart neck cf"].end
    )
    step = next(t for t in steps_text(made) if "in one line over the open dart" in t)
    assert f"gather {8.0 + opened:.1f} cm of it, to 8.0 cm" in step


@pytest.mark.parametrize("body", [P92, THEA, BRIDA])
def test_gathers_end_before_the_knot_of_a_tie(body: Body) -> None:
    """Its neck edge stops 3 short of the centre front (transformations 5): that is no
    part of the gathers, which begin and end on both sides as far from the shoulder."""
    dart = BustDart(to=DartPlace.NECK, taken_up=TakenUp.GATHERS)
    features = swapped(led(dart), Neckline(shape=FrontShape.ROUND))
    made = draft(order(body, (*features, TieCollar(away=3.0))))
    assert not made.failed, made.failures()
    assert not [f for f in made.report.findings if f.code == "S80"]
    lines = made.sheet.lines
    o = OPENED[DartPlace.NECK]
    was = lines[o.kept(o.first)].length + lines[o.kept(o.last)].length
    grown = made.sheet.length("F", "neck") - was
    (seam,) = (s for s in made.sheet.seams if s.code == "S80")
    first, last = sorted(seam.notches)[-2:]
    assert first.left == pytest.approx(first.right, abs=0.1 * MM)
    assert last.right - last.left == pytest.approx(grown, abs=0.1 * MM)
    told = seam_line(making_order(made), seam)
    assert f"gather in {grown:.1f} cm" in told.ease
    (faced,) = (s for s in made.sheet.seams if s.code == "S8")
    shoulder = made.sheet.length("B", "neck")
    for mine, its in zip(sorted(faced.notches), (first, last), strict=True):
        assert mine.left == pytest.approx(its.left - shoulder, abs=0.1 * MM)
        # the facing is shorter by its roll, half a mm
        assert mine.right == pytest.approx(its.right - shoulder, abs=0.6 * MM)


def test_a_dart_has_room_on_its_edge() -> None:
    wide = swapped(led(BustDart()), closed_back()[2].model_copy(update={"width": 8.5}))
    with pytest.raises(
        OrderError, match=r"too near to the end of the shoulder, by \d\.\d cm"
    ):
        draft(order(P92, wide))


def test_one_place_is_named_once() -> None:
    with pytest.raises(OrderError, match="set second to another"):
        draft(order(P92, led(BustDart(second=DartPlace.SHOULDER))))


def to_neck(shape: FrontShape, along: float | None = None) -> tuple[Feature, ...]:
    """A bust dart led to a front neck of a shape."""
    dart = BustDart(to=DartPlace.NECK, along=along)
    return swapped(led(dart), Neckline(shape=shape))


@pytest.mark.parametrize("shape", [s for s in FrontShape if s not in WINDING])
@pytest.mark.parametrize("body", [P80, P92, P116], ids=lambda b: b.client)
def test_a_dart_crosses_the_neck_and_is_cut_with_its_allowance(
    shape: FrontShape, body: Body
) -> None:
    """On a square neck it opens in the level part, clear of the corner; a narrow mouth
    in the hollow is cut straight across (our own)."""
    made = draft(order(body, to_neck(shape)))
    assert not cut_faults(made)
    f = made.sheet.piece("F")
    leg = f.edge("dart neck tip").path
    lean = degrees_between(
        f.before("dart neck tip").path.end_direction, leg.start_direction
    )
    assert 20.0 < lean < 160.0


def test_a_dart_does_not_run_along_the_neck() -> None:
    for along in (0.25, 0.45):
        with pytest.raises(OrderError, match=r'place \(along of "bust dart"\) another'):
            draft(order(P92, to_neck(FrontShape.SQUARE, along)))
