"""A front that flares from the bust: its bust dart led into the hem (transformations
1.7)."""

import math
from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body, RuleSet
from clothwright.curves import Path, Point, Vector, degrees_between, distance
from clothwright.features import Feature
from clothwright.features.block import Block, Depth
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.strapless import Strapless
from clothwright.features.bodice.tent import Hangs, Tent
from clothwright.features.bodice.torso import Below, Torso
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.skirts.dress_skirt import DressSkirt
from clothwright.findings import Severity
from clothwright.making import making_order
from clothwright.order import OrderError, draft
from clothwright.sheets.steps import steps_text
from making.test_order import complete
from orders import closed_back, cut_faults, order

MM = 0.1
_LEFT = ("side dart", "waist seam", "peplum")


def tent(
    *more: Feature,
    share: float | None = None,
    hangs: Hangs = Hangs.ALL,
    length: float | None = None,
    flare: float | None = None,
) -> tuple[Feature, ...]:
    """A sleeveless top with a zip behind, cut in one, that flares from the bust."""
    left = (*_LEFT, *(("back waist dart",) if hangs is Hangs.ALL else ()))
    kept = (f for f in closed_back(lines="darts") if f.kind not in left)
    return (
        *kept,
        Tent(share=share, hangs=hangs),
        Torso(length=length, flare=flare),
        *more,
    )


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA], ids=lambda b: b.client)
@pytest.mark.parametrize("length", [28.0, 60.0])
def test_the_hem_gains_what_the_dart_opens(body: Body, length: float) -> None:
    """2·L·sin(θ/2), the point of the dart as hinge (1.7, exact), in an arc about it:
    R·θ along the paper, against the same torso with its dart at the side."""
    made = draft(order(body, tent(length=length, flare=0.0)))
    assert not made.failed, made.failures()
    kept = (f for f in tent(length=length, flare=0.0) if f.kind != "tent")
    plain = draft(order(body, (*kept, SideDart(), BackWaistDart())))
    n, bp = made.numbers, made.sheet.points["BP"]
    radius = n.yW + n.L - bp.y
    theta = math.radians(n.theta + n.phi_n)
    assert n.hem_h == pytest.approx(2 * radius * math.sin(theta / 2), abs=1e-6)
    gained = made.sheet.length("F", "hem") - plain.sheet.length("F", "hem")
    assert gained == pytest.approx(radius * theta, abs=1.0 * MM)
    hem = made.sheet.edge("F", "hem").path
    bends = [
        degrees_between(a.end_direction, b.start_direction)
        for a, b in zip(hem.segments, hem.segments[1:], strict=False)
    ]
    assert max(bends) < 1.0
    assert degrees_between(hem.start_direction, Vector(-1.0, 0.0)) < 0.5
    assert not made.sheet.piece("F").has("dart low")
    assert not cut_faults(made)
    complete(making_order(made))
    (told,) = (s for s in steps_text(made) if "turned up about BP" in s)
    assert f"by {n.theta_h:.1f}°" in told


@pytest.mark.parametrize("body", [P92, THEA], ids=lambda b: b.client)
def test_neck_armhole_and_side_keep_their_lengths(body: Body) -> None:
    """A pivot keeps every edge (1.1); the side runs on straight over the dart."""
    made = draft(order(body, tent(flare=0.0)))
    kept = (f for f in tent(flare=0.0) if f.kind != "tent")
    plain = draft(order(body, (*kept, SideDart(), BackWaistDart())))
    for edge in ("neck", "armhole", "shoulder", "cf"):
        assert made.sheet.length("F", edge) == pytest.approx(
            plain.sheet.length("F", edge), abs=0.01 * MM
        )
    whole = sum(plain.sheet.length("F", e) for e in ("side low", "side high"))
    assert made.sheet.length("F", "side") == pytest.approx(whole, abs=0.5 * MM)
    side = made.sheet.edge("F", "side").path
    bends = [
        degrees_between(a.end_direction, b.start_direction)
        for a, b in zip(side.segments, side.segments[1:], strict=False)
    ]
    assert max(bends) < 1.0


@pytest.mark.parametrize("hangs", list(Hangs))
def test_the_waist_hangs_free(hangs: Hangs) -> None:
    """What the darts would take in stays in the waist; sides and centre are as those of
    a fitted torso."""
    made = draft(order(P92, tent(hangs=hangs, flare=0.0)))
    assert not made.failed, made.failures()
    n = made.numbers
    back = next(k.path for k in made.sheet.piece("B").lines if k.name == "waist line")
    level = Path.line(Point(-60.0, n.yW), Point(200.0, n.yW))
    ends = [s for s, _ in level.meets(made.sheet.piece("B").outline)]
    wide = max(ends) - min(ends)
    assert back.start.y == n.yW
    assert wide == pytest.approx(n.xs - n.a - n.x_back + n.side_shift, abs=MM)
    darted = any(k.name == "waist dart" for k in made.sheet.piece("B").lines)
    assert darted is (hangs is Hangs.FRONT)


def test_a_part_of_the_dart_stays_at_the_side() -> None:
    """The angles are shared (1.1: their sum is kept)."""
    made = draft(order(P92, tent(share=0.5)))
    assert not made.failed, made.failures()
    n, front = made.numbers, made.sheet.piece("F")
    legs = front.edge("dart low").path, front.edge("dart high").path
    mouth = distance(legs[0].start, legs[1].end)
    bp = made.sheet.points["BP"]
    reach = distance(bp, legs[1].end)
    half = math.radians(n.theta + n.phi_n) / 2
    assert mouth == pytest.approx(2 * reach * math.sin(half / 2), abs=0.1 * MM)
    assert not cut_faults(made)
    little = draft(order(P92, tent(share=0.8)))
    (told,) = (f for f in little.findings if f.code == "TN1")
    assert "(share = 1)" in told.to_do  # as an order writes it
    assert told.severity is Severity.WARN


@pytest.mark.parametrize("share", [0.865, 0.95, 0.97, 0.99])
def test_a_dart_too_narrow_to_sew_is_refused(share: float) -> None:
    """Of one woman of the survey 3 mm were left, in a cap without room for its
    allowance: up to 0.6 is ease, no dart (1.4)."""
    parts = Block(depth=Depth.MEASURED, below_armpit=0.63), Strapless()
    rest = ConcealedZip(), Torso(length=122.76), Lining(mode=Mode.TO_EDGE)
    features = (*parts, Tent(share=share), *rest)
    made = draft(order(ansur_whole()[760], features))
    (told,) = (f for f in made.findings if f.code == "TN1")
    assert told.severity is Severity.REFUSE
    front = made.sheet.piece("F")
    ends = front.edge("dart low").path.start, front.edge("dart high").path.end
    assert distance(*ends) < 0.6
    # 5.8 mm reads as 0.6 cm
    assert ("a little under 0.6 cm; 0.6" in told.sentence) is (share == 0.865)


def test_front_and_back_are_flared_alike() -> None:
    """Half of what the hem gains, at most 6 (1.7: 5 to 7), and as far as the length
    allows; a flare that is ordered outranks it."""
    n = draft(order(P92, tent(length=70.0))).numbers
    assert n.fl_T == pytest.approx(6.0)
    short = draft(order(P92, tent(length=26.0))).numbers
    assert short.fl_T == pytest.approx(0.15 * (26.0 - short.WH))
    assert draft(order(P92, tent(flare=1.0))).numbers.fl_T == pytest.approx(1.0)


@pytest.mark.parametrize("mode", [Mode.TO_EDGE, Mode.BELOW_FACING])
def test_it_is_lined(mode: Mode) -> None:
    features = tent(Lining(mode=mode), length=60.0)
    if mode is Mode.TO_EDGE:
        features = tuple(f for f in features if f.kind != "facing")
    made = draft(order(P92, features))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    complete(making_order(made))


def test_real_women_get_it() -> None:
    rng = Random(7)
    for body in rng.sample(ansur_whole(), 8):
        length, share = rng.choice((30.0, 60.0, 95.0)), rng.choice((None, 0.5))
        features = tent(length=length, share=share)
        made = draft(order(body, features, estimates=RuleSet.SURVEY))
        assert not made.failed, made.failures()
        assert not cut_faults(made)


@pytest.mark.parametrize("below", Below)
def test_no_seam_crosses_it(below: Below) -> None:
    """It used to be told that a piece has no edge "hem"."""
    kept = [f for f in tent() if f.kind != "torso"]
    hung = (DressSkirt(),) if below is Below.HUNG else ()
    with pytest.raises(OrderError, match="leave the torso's seam out"):
        draft(order(THEA, (*kept, Torso(seam=10.0, below=below), *hung)))


def test_what_does_not_go_together() -> None:
    with pytest.raises(OrderError, match='add a "torso"'):
        draft(order(P92, (*closed_back(lines="darts")[:4], Tent())))
    with pytest.raises(OrderError, match="hangs without a dart"):
        draft(order(P92, (BackWaistDart(), *tent())))
    with pytest.raises(OrderError, match="one line only"):
        draft(order(P92, tent(SideDart())))
    for below in Below:
        cut = (f for f in tent() if f.kind != "torso")
        with pytest.raises(OrderError, match="leave the torso's seam out"):
            draft(order(P92, (*cut, Torso(seam=18.0, below=below))))
