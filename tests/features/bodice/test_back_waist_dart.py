"""The back waist dart led elsewhere: angle, intakes, lengths (transformations 1.1)."""

import math
import re
from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body, RuleSet
from clothwright.curves import degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.back_waist_dart_rules import OPENED_BACK, BackPlace
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.bust_dart_rules import MOST_EASE, TakenUp
from clothwright.features.bodice.empire import EmpireSeam
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.opened_dart import mouth
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.strapless import Strapless
from clothwright.features.bodice.yokes import BackYoke
from clothwright.features.linings.lining import Mode
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.necks.neck_shapes import BackShape
from clothwright.features.necks.necklines import BackNeckline
from clothwright.features.sleeves.kimono import Kimono
from clothwright.findings import Severity
from clothwright.finishing.drawn import Meaning
from clothwright.finishing.finish import NARROW_MOUTH, with_darts_capped
from clothwright.making import making_order
from clothwright.making.telling import seam_line
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import Sheet
from clothwright.units import Unit, pretty_length
from making.test_order import complete
from orders import closed_back, cut_faults, order, sleeved_features, swapped
from verdict import verdict

LED = [p for p in BackPlace if p is not BackPlace.WAIST]
FULL = (TakenUp.TUCK, TakenUp.TUCKS, TakenUp.GATHERS)


def led(
    dart: BackWaistDart,
    way: BackShoulder = BackShoulder.BY_STYLE,
    lining: Mode | None = None,
) -> tuple[Feature, ...]:
    features = swapped(closed_back(way, lines="darts", lining=lining), dart)
    yoke = (BackYoke(),) if dart.to is BackPlace.YOKE else ()
    return (*features, *yoke)


def parts(made: Draft, name: str) -> float:
    """Length of an edge of the back, of all its parts."""
    names = {name} | {
        e for o in OPENED_BACK.values() if o.edge == name for e in (o.first, o.last)
    }
    return sum(e.length for e in made.sheet.piece("B").edges if e.name in names)


@pytest.mark.parametrize("place", LED)
@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA])
def test_the_angle_goes_with_the_dart(place: BackPlace, body: Body) -> None:
    """Intake 2·|Pd Q|·sin(ωb/2) where it opens, legs of one length, the waist as long
    as it was with the dart closed, every other edge as it was (exact)."""
    plain = draft(order(body, closed_back(lines="darts")))
    made = draft(order(body, led(BackWaistDart(to=place))))
    assert not made.failed, made.failures()
    back, o, at = made.sheet.piece("B"), OPENED_BACK[place], made.sheet.points
    was = plain.sheet.piece("B")
    point, (a, b) = at["Pd"], (was.edge(e).path for e in ("leg side", "leg cb"))
    angle = degrees_between(a.start - point, b.end - point)
    wanted = 2 * distance(point, at[o.mark]) * math.sin(math.radians(angle) / 2)
    assert distance(*mouth(back, o)) == pytest.approx(wanted, abs=1e-6)
    legs = [back.edge(e).length for e in o.legs]
    assert legs[0] == pytest.approx(legs[1], abs=0.02)
    for name in ("neck", "shoulder", "armhole", "side"):
        if place is BackPlace.YOKE and name != "side":
            continue
        assert parts(made, name) == pytest.approx(was.edge(name).length, abs=0.02)
    closed = sum(was.edge(e).length for e in ("waist", "waist side"))
    assert back.edge("waist").length == pytest.approx(closed, abs=0.01)
    assert not back.has("leg cb")
    assert not cut_faults(made)
    complete(making_order(made))


def test_a_part_is_led_and_the_rest_stays() -> None:
    """The angles of both make up the dart's (1.1): 40 and 60 of 100."""
    plain = draft(order(P92, closed_back(lines="darts"))).sheet
    dart = BackWaistDart(to=BackPlace.SHOULDER, share=0.6)
    made = draft(order(P92, led(dart)))
    assert not made.failed, made.failures()
    pd = made.sheet.points["Pd"]

    def angle(sheet: Sheet) -> float:
        b = sheet.piece("B")
        a, c = b.edge("leg side").path.start, b.edge("leg cb").path.end
        return degrees_between(a - pd, c - pd)

    assert angle(made.sheet) == pytest.approx(0.4 * angle(plain), abs=1e-6)
    o = OPENED_BACK[BackPlace.SHOULDER]
    a, b = mouth(made.sheet.piece("B"), o)
    assert degrees_between(a - pd, b - pd) == pytest.approx(0.6 * angle(plain))
    assert made.numbers.theta_back == pytest.approx(0.6 * made.numbers.omega_b)


@pytest.mark.parametrize("place", list(BackPlace))
@pytest.mark.parametrize("how", FULL)
def test_it_may_be_taken_up_otherwise(place: BackPlace, how: TakenUp) -> None:
    """Nothing is left of the dart in the paper but for a tuck; the making order has an
    operation for each."""
    made = draft(order(P92, led(BackWaistDart(to=place, taken_up=how))))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    o = OPENED_BACK[place]
    assert made.sheet.piece("B").has(o.leg_first) is (how is TakenUp.TUCK)
    making = making_order(made)
    complete(making)
    if how is TakenUp.TUCKS:
        titles = [step.title for step in making.operations]
        assert f"Lay the tucks at the {o.where}" in titles


def test_gathers_lie_between_their_notches() -> None:
    """The zone is 8 cm of the finished edge (transformations 1.6), and the paper and
    the making order say so; a gathered seam is not pressed open (common practice)."""
    dart = BackWaistDart(to=BackPlace.YOKE, taken_up=TakenUp.GATHERS)
    made = draft(order(P92, led(dart)))
    (seam,) = (s for s in made.sheet.seams if s.name == "back yoke")
    assert seam.gathered
    assert seam.zone is not None
    low, high = seam.zone
    assert high - low == pytest.approx(8.0)
    a, b = (k for k in seam.notches if k.left in seam.zone)
    back = next(p for p in pattern(made, words=False).drawn.pieces if p.code == "B")
    (line,) = (k for k in back.lines if k.meaning is Meaning.EASE)
    assert line.note == "gather"
    assert line.path.length == pytest.approx(b.right - a.right, abs=0.01)
    (yoke,) = (s for s in making_order(made).operations if seam.code in s.seams)
    assert yoke.press == "towards the smooth side, the iron not on the gathers"
    assert yoke.neatened == 1
    told = seam_line(making_order(made), seam)
    ends = " and ".join(pretty_length(at, Unit.CM) for at in seam.zone)
    assert told.ease.endswith(f"between the notches at {ends}")


def test_tucks_are_not_told_as_gathers() -> None:
    dart = BackWaistDart(to=BackPlace.YOKE, taken_up=TakenUp.TUCKS)
    made = draft(order(P92, led(dart)))
    (yoke,) = (s for s in making_order(made).operations if "back yoke" in s.seams)
    assert yoke.press == "open, over a cushion"
    assert not any("gathers" in words for words in yoke.says)


def test_so_much_is_eased_in_and_no_more() -> None:
    """Up to 0.6 cm (1.4): a fifth of the dart at the waist goes, the whole does not."""
    little = BackWaistDart(to=BackPlace.SHOULDER, share=0.8, rest=TakenUp.EASE)
    made = draft(order(P92, led(little)))
    assert not made.failed, made.failures()
    o = OPENED_BACK[BackPlace.WAIST]
    a, b = (made.sheet.lines[o.kept(e)] for e in o.legs)
    assert 0.1 < distance(a.start, b.end) <= MOST_EASE
    made = draft(order(P92, led(BackWaistDart(taken_up=TakenUp.EASE))))
    assert any(f.code == "P11" for f in made.findings)


@pytest.mark.parametrize("place", LED)
def test_real_women_get_it(place: BackPlace) -> None:
    rng = Random(7)
    for body in rng.sample(ansur_whole(), 6):
        dart = BackWaistDart(to=place, share=rng.choice((None, 0.5)))
        made = draft(order(body, led(dart, BackShoulder.EASE, Mode.BELOW_FACING)))
        assert not made.failed, made.failures()
        assert not cut_faults(made)


def test_a_back_without_a_dart_says_so() -> None:
    """A full waist takes in nothing at a dart (blocks A4): a note, no fault."""
    full = Body.of({"HT": 165, "HB": 92, "B": 96, "W": 97, "H": 102}, client="full")
    made = draft(order(full, led(BackWaistDart(to=BackPlace.NECK))))
    assert not made.failed, made.failures()
    assert any(f.code == "P13" and f.severity is Severity.NOTE for f in made.findings)


@pytest.mark.parametrize(
    ("features", "said"),
    [
        (
            led(BackWaistDart(to=BackPlace.NECK), BackShoulder.NECK),
            "the back shoulder dart goes to the neck already",
        ),
        (
            (*led(BackWaistDart(to=BackPlace.SHOULDER)), BackYoke()),
            'lead the back dart to the "yoke"',
        ),
        (led(BackWaistDart(to=BackPlace.YOKE))[:-1], 'add a "back yoke"'),
        (
            led(BackWaistDart(to=BackPlace.ARMHOLE, along=0.75)),
            r"comes too near to the end of the armhole, by \d\.\d cm",
        ),
        (
            led(
                BackWaistDart(
                    to=BackPlace.SHOULDER, taken_up=TakenUp.TUCKS, tucks=9, apart=3.0
                )
            ),
            r"9 tucks \(tucks of .back waist dart., apart of .+\) want",
        ),
    ],
)
def test_what_does_not_go_together(features: tuple[Feature, ...], said: str) -> None:
    with pytest.raises(OrderError, match=said):
        draft(order(P80, features))


@pytest.mark.parametrize(
    "place", [BackPlace.SHOULDER, BackPlace.NECK, BackPlace.ARMHOLE]
)
def test_a_strapless_back_has_no_edge_there(place: BackPlace) -> None:
    cut_away = ("sleeveless armhole", "neckline", "back neckline")
    kept = (f for f in led(BackWaistDart(to=place)) if f.kind not in cut_away)
    with pytest.raises(OrderError, match="the blade is cut away"):
        draft(order(P92, (*kept, Strapless())))


@pytest.mark.parametrize("how", [TakenUp.DART, TakenUp.TUCKS])
def test_a_lining_to_the_edge_has_the_side_that_is_sewn(how: TakenUp) -> None:
    """A dart, or tucks, at the side take in nothing of the lining's."""
    dart = BackWaistDart(to=BackPlace.SIDE, taken_up=how)
    made = draft(order(P92, led(dart, lining=Mode.TO_EDGE)))
    assert not made.failed, made.failures()


def test_its_side_is_measured_once_below_an_empire_seam() -> None:
    """The back below the seam is a part of the back remembered whole."""
    dart = BackWaistDart(taken_up=TakenUp.TUCK)
    parts = (*led(dart, lining=Mode.TO_EDGE), EmpireSeam())
    made = draft(order(P92, parts))
    assert not made.failed, made.failures()


@pytest.mark.parametrize("how", [TakenUp.DART, TakenUp.TUCK])
def test_the_sleeve_is_eased_in_down_to_its_notch(how: TakenUp) -> None:
    """Where the dart opens beside the notch of a set-in sleeve, both notches move, and
    the ease ends at them still (blocks B7: between shoulder and notch)."""
    plain = sleeved_features(SideDart(), BackWaistDart())
    panels = ("front armhole princess", "back armhole princess")
    plain = tuple(f for f in plain if f.kind not in panels)
    seam = draft(order(P92, plain)).sheet.seam("S24")
    (notch,) = seam.notches
    whole = draft(order(P92, plain)).sheet.chain_length(seam.left)
    at = (notch.left + 0.6) / whole
    dart = BackWaistDart(to=BackPlace.ARMHOLE, taken_up=how, along=at)
    made = draft(order(P92, swapped(plain, dart)))
    assert not made.failed, made.failures()
    seam = made.sheet.seam("S24")
    (moved,) = seam.notches
    assert abs(moved.left - notch.left) > 1.0
    assert seam.zone is not None
    assert seam.zone[1] == pytest.approx(moved.left, abs=1e-6)
    assert not cut_faults(made)


@pytest.mark.parametrize("shape", BackShape)
@pytest.mark.parametrize("body", [P92, THEA, *ansur_whole()[77::200]])
def test_the_neck_runs_on_over_its_dart(body: Body, shape: BackShape) -> None:
    """Folded to its stitched end the neck has no corner there (truing 3), however wide
    the dart; it is as long as it was."""
    plain = swapped(closed_back(lines="darts"), BackNeckline(shape=shape))
    dart = BackWaistDart(to=BackPlace.NECK)
    features = swapped(plain, dart)
    try:
        made = draft(order(body, features))
    except OrderError as e:
        assert re.search("comes too near|would run along", str(e))
        return
    back = made.sheet.piece("B")
    if not back.has("neck side"):
        return
    both = back.interior_angle("neck") + back.interior_angle("dart neck side")
    assert both == pytest.approx(180.0, abs=0.5)
    was = draft(order(body, plain)).sheet.length("B", "neck")
    assert parts(made, "neck") == pytest.approx(was, abs=0.02)


def test_a_led_dart_has_length() -> None:
    deep = swapped(
        closed_back(lines="darts"), BackNeckline(shape=BackShape.ROUND, depth=24.0)
    )
    dart = BackWaistDart(to=BackPlace.NECK, set_back=8.0)
    with pytest.raises(OrderError, match=r"cm long at the neck; 4 cm is the least"):
        draft(order(P92, swapped(deep, dart)))


@pytest.mark.parametrize("body", [P92, THEA])
def test_a_kimono_neck_is_asked_beside_the_shoulder(body: Body) -> None:
    """The neck over the overarm seam is the part of it that ends there, not the part
    from the centre back to the dart."""
    bust = BustDart(to=DartPlace.WAIST)
    kimono = (*closed_back(lines="darts"), Kimono(), bust, NeckFacing())
    left_out = ("side dart", "facing", "sleeveless armhole", "back waist dart")
    kept = (f for f in kimono if f.kind not in left_out)
    made = draft(order(body, (*kept, BackWaistDart(to=BackPlace.NECK))))
    assert made.sheet.piece("B").has("neck side")
    assert not made.failed, made.failures()


@pytest.mark.parametrize("k", [380, 494, 760])
def test_on_a_steep_neck_its_mouth_is_cut_straight_across(k: int) -> None:
    """A U runs up steeply: the cap of a dart there would be a notch, tighter than the
    allowance round it, which lies under the fold anyway."""
    back = BackNeckline(shape=BackShape.U)
    dart = BackWaistDart(to=BackPlace.NECK)
    steep = swapped(swapped(closed_back(lines="darts"), back), dart)
    asked = order(ansur_whole()[k], steep, estimates=RuleSet.SURVEY)
    it = verdict(asked)
    assert it.made is not None
    assert not it.refusals
    piece, line = next((p, line) for p, line in it.cut if p.code == "B")
    assert piece.edge("cap neck").path.straight
    assert not line.narrow


def test_on_a_flat_neck_it_has_its_cap() -> None:
    made = draft(order(P92, led(BackWaistDart(to=BackPlace.NECK))))
    piece, _ = with_darts_capped(made.sheet.piece("B"))
    assert not piece.edge("cap neck").path.straight


@pytest.mark.parametrize("k", [817, 532, 152])
@pytest.mark.parametrize("shape", [BackShape.U, BackShape.ROUND])
def test_a_narrow_dart_in_a_hollow_neck_is_cut_straight_across(
    shape: BackShape, k: int
) -> None:
    """Its cap would be a notch in the side of a U; on a round neck it is a peak, and
    stays (our own)."""
    dart = BackWaistDart(to=BackPlace.NECK)
    features = swapped(led(dart), BackNeckline(shape=shape))
    made = draft(order(ansur_whole()[k], features))
    assert not cut_faults(made)
    back = made.sheet.piece("B")
    cap = with_darts_capped(back)[0].edge("cap neck").path
    wide = distance(cap.start, cap.end)
    hollow = shape is BackShape.U and wide < NARROW_MOUTH
    assert (cap.length < wide + 1e-6) is hollow
