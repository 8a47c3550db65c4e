"""Necklines, widths and tightening: limits and lengths of the notes (3)."""

import math
import random
from itertools import product

import pytest

from bodies import BRIDA, P92, THEA, YSOLDE, bdims_women
from clothwright.body import Body
from clothwright.curves import Cubic, Point, degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.shoulder import Tightening
from clothwright.features.necks.neck_shapes import BackShape, FrontShape, scoop_flat
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.openings.open_back import LowOpenBack
from clothwright.findings import Finding, Severity
from clothwright.order import Draft, OrderError, draft
from clothwright.truing.outline import wrong_way
from clothwright.units import Unit
from orders import closed_back, main_features, order, swapped

MM = 0.1


def opened(*new: Feature) -> tuple[Feature, ...]:
    """The main garment with these features in place of its own of the same kind."""
    swap = {f.kind: f for f in new}
    return tuple(swap.get(f.kind, f) for f in main_features())


def closed(*new: Feature) -> tuple[Feature, ...]:
    """The main garment, its back closed by a zip, with these features."""
    left_out = {"low open back", "loops", "panel behind", "tightening"}
    swap = {f.kind: f for f in new}
    kept = [swap.pop(f.kind, f) for f in main_features() if f.kind not in left_out]
    swap.setdefault("back neckline", BackNeckline())
    return (*kept, *swap.values(), ConcealedZip())


def tightened(side: str, nip: float) -> Tightening:
    """One side alone."""
    front = side == "front"
    return Tightening(front=nip if front else 0.0, back=0.0 if front else nip)


def found(made: Draft, code: str) -> list[Finding]:
    return [f for f in made.findings if f.code == code]


# -- what is left of the shoulder (3.1.4) ----------------------------------------------
@pytest.mark.parametrize(
    ("left", "deep", "doubted"),
    [
        (4.1, None, False),
        (3.9, None, True),
        (3.9, 3.0, False),
        (3.1, 3.0, False),
        (2.9, 3.0, True),
        (3.9, 9.0, True),  # a low back of its own
    ],
)
def test_a_narrow_shoulder_is_doubted_sooner_above_a_low_back(
    left: float, deep: float | None, doubted: bool
) -> None:
    """Lr < 3, with a low back (open, or 6 below the block's own) < 4."""
    width = P92_S - left
    if deep is None:
        features = opened(Neckline(width=width), Tightening(front=0.0, back=0.0))
    else:
        features = closed(Neckline(width=width), BackNeckline(depth=2.0 + deep))
    made = draft(order(P92, features))
    assert made.numbers.Lr == pytest.approx(left, abs=1e-6)
    assert bool(found(made, "N2")) == doubted


P92_S = draft(order(P92, main_features())).numbers.S


def test_less_than_two_is_refused() -> None:
    with pytest.raises(OrderError, match="make the neck narrower"):
        draft(order(P92, opened(Neckline(width=P92_S - 1.9))))


def test_low_in_front_and_behind_and_wide() -> None:
    """Transformations 2, rule 5, for an open back too: df, db over 6 and dw over 5."""
    for df, depth, dw, doubted in (
        (6.5, 15.0, 5.5, True),
        (5.5, 15.0, 5.5, False),
        (6.5, 15.0, 4.5, False),
        (6.5, 7.5, 5.5, False),
    ):
        dep = draft(order(P92, main_features())).numbers.dep
        front = Neckline(shape=FrontShape.ROUND, depth=dep + df, width=dw)
        back = LowOpenBack(depth=depth, top=3.0)
        features = opened(front, back, Tightening(front=0.3, back=0.3))
        made = draft(order(P92, features))
        assert bool(found(made, "N7")) == doubted, (df, depth, dw)


# -- tightening (3.2, 25) --------------------------------------------------------------
@pytest.mark.parametrize("side", ["front", "back"])
@pytest.mark.parametrize(("share", "refused"), [(0.259, False), (0.261, True)])
def test_either_side_is_tightened_by_a_quarter_at_most(
    side: str, share: float, refused: bool
) -> None:
    """nip > 0.26·Lr is refused, in front and behind."""
    nip = share * P92_S / 2
    made = draft(order(P92, opened(tightened(side, nip))))
    faults = [f for f in found(made, "N4") if f.severity is Severity.REFUSE]
    assert bool(faults) == refused
    assert made.numbers["nipF" if side == "front" else "nipB"] == pytest.approx(nip)


def test_the_chosen_amount_is_taken_as_it_is() -> None:
    """The workroom's amounts grow with the width; her own is laid off as she says."""
    rule = draft(order(P92, opened(Neckline(width=3.0), Tightening()))).numbers
    assert rule.nipF == pytest.approx(1.3 * 3.0 / (P92_S / 2))
    assert rule.nipB == pytest.approx(0.6 * 3.0 / (P92_S / 2))
    own = draft(order(P92, opened(Neckline(width=3.0), Tightening(front=1.1))))
    assert own.numbers.nipF == pytest.approx(1.1)
    assert own.numbers.nipB == pytest.approx(rule.nipB)
    inch = draft(order(BRIDA, main_features(), unit=Unit.IN)).numbers
    assert inch.nipF == pytest.approx(1.27)
    assert inch.nipB == pytest.approx(0.635)


@pytest.mark.parametrize("side", ["front", "back"])
def test_a_narrow_neck_is_not_tightened_on_either_side(side: str) -> None:
    """dw < 2.5 with any tightening is refused; 2.5 and 1 in are wide enough."""
    for width, refused in ((2.4, True), (2.5, False), (2.54, False)):
        features = opened(
            Neckline(shape=FrontShape.ROUND, width=width),
            LowOpenBack(top=3.0),
            tightened(side, 0.4),
        )
        made = draft(order(P92, features))
        assert bool(found(made, "N5")) == refused, width


@pytest.mark.parametrize("side", ["front", "back"])
def test_a_shoulder_turned_by_more_than_thirteen_degrees(side: str) -> None:
    half = P92_S / 2
    rest = half if side == "front" else half * (P92_S + 0.5) / P92_S
    for degrees, doubted in ((12.9, False), (13.1, True)):
        nip = 2 * rest * math.sin(math.radians(degrees) / 2)
        made = draft(order(P92, opened(tightened(side, nip))))
        assert bool(found(made, "N8")) == doubted, degrees


def test_much_tightening_in_all_is_doubted() -> None:
    for front, doubted in ((1.2, False), (1.3, True)):
        made = draft(order(YSOLDE, opened(Tightening(front=front, back=1.25))))
        assert bool(found(made, "N3")) == doubted


def test_a_tightening_that_the_shoulder_does_not_allow_is_told() -> None:
    """By rule it is cut back, with a note of both amounts; nothing goes in silence."""
    body = Body.of({"HT": 165, "HB": 87, "B": 92, "W": 72, "H": 98, "SH": 9.5})
    made = draft(order(body, main_features()))
    n = made.numbers
    assert n.nipF == pytest.approx(0.26 * n.Lr)
    (said,) = found(made, "N4")
    assert said.severity is Severity.NOTE
    assert "1.3 cm" in str(said)
    assert f"{n.nipF:.1f} cm" in str(said)


@pytest.mark.parametrize(
    ("body", "unit", "before", "after"),
    [(P92, Unit.CM, 14.16, 13.30), (BRIDA, Unit.IN, 14.19, 13.35)],
)
def test_the_neck_edge_before_and_after(
    body: Body, unit: Unit, before: float, after: float
) -> None:
    """Check values 24 (curves 0.1): both lengths are told (3.2.5)."""
    (said,) = found(draft(order(body, main_features(), unit=unit)), "N11")
    assert said.data["before"] == pytest.approx(before, abs=MM)
    assert said.data["after"] == pytest.approx(after, abs=MM)


@pytest.mark.parametrize("seed", range(60))
def test_tightening_is_a_turn_about_the_tip(seed: int) -> None:
    """3.2.2, 3.2.3: chords are the nips, shoulders keep their lengths (exact)."""
    rng = random.Random(seed)
    body = rng.choice((P92, BRIDA, THEA, YSOLDE, *bdims_women()[::5]))
    nips = Tightening(front=rng.uniform(0, 1.2), back=rng.uniform(0, 0.9))
    made = draft(order(body, opened(nips, LowOpenBack(top=4.0))))
    n, p, sheet = made.numbers, made.sheet.points, made.sheet
    assert distance(p["Nf"], p["Nf′"]) == pytest.approx(n.nipF, abs=1e-9)
    assert distance(p["Nb"], p["Nb′"]) == pytest.approx(n.nipB, abs=1e-9)
    assert sheet.length("FC", "shoulder") == pytest.approx(n.Lr, abs=1e-9)
    ease = sheet.length("BC", "shoulder") - sheet.length("FC", "shoulder")
    assert ease == pytest.approx(n.se * n.Lr / n.S, abs=1e-9)
    assert p["Nf′"].y >= p["Nf"].y
    assert p["Nb′"].y >= p["Nb"].y


# -- shapes (3.3) ----------------------------------------------------------------------
@pytest.mark.parametrize(
    ("shape", "below", "usual"),
    [
        (FrontShape.BOAT, 8.0, True),
        (FrontShape.BOAT, 7.5, False),
        (FrontShape.BOAT, 8.4, False),
        (FrontShape.SCOOP, 6.1, True),
        (FrontShape.SCOOP, 5.9, False),
        (FrontShape.V, 8.1, True),
        (FrontShape.V, 7.9, False),
    ],
)
def test_usual_depths(shape: FrontShape, below: float, usual: bool) -> None:
    """A boat's from the level of hf, a scoop's and a V's below the block's own."""
    dep = draft(order(YSOLDE, main_features())).numbers.dep
    depth = below if shape is FrontShape.BOAT else dep + below
    made = draft(order(YSOLDE, closed(Neckline(shape=shape, depth=depth))))
    doubts = [f for f in found(made, "usual") if f.place == "Df"]
    assert bool(doubts) != usual


def test_a_scoop_too_deep_for_its_width_is_doubted_until_it_is_tilted() -> None:
    """k = 0.95·(1 − (h/w)·tan σ*) under 0.20; a steeper start raises it."""
    narrow = Neckline(shape=FrontShape.SCOOP, width=6.0, depth=25.0, tilt=0.0)
    made = draft(order(THEA, closed(narrow)))
    n, p = made.numbers, made.sheet.points
    h, w = p["C"].y - p["Nf′"].y, p["C"].x - p["Nf′"].x
    k = 0.95 * (1 - h / w * math.tan(math.radians(n.sigma_f_new)))
    assert scoop_flat(p["Nf′"], p["C"], n.sigma_f_new) == pytest.approx(k)
    assert k < 0.20
    assert found(made, "N9")
    tilted = narrow.model_copy(update={"tilt": 15.0})
    assert not found(draft(order(THEA, closed(tilted))), "N9")


@pytest.mark.parametrize("tilt", [0.0, 8.0, 15.0])
@pytest.mark.parametrize(
    ("shape", "body"), list(product(FrontShape, (P92, YSOLDE, THEA)))
)
def test_front_and_back_start_with_one_tilt(
    shape: FrontShape, body: Body, tilt: float
) -> None:
    """Shoulder angles 90° − τ and 90° + τ, sum 180° (exact)."""
    if shape is FrontShape.STANDARD:
        return
    made = draft(order(body, closed(Neckline(shape=shape, tilt=tilt))))
    fc, bc = made.sheet.piece("FC"), made.sheet.piece("BC")
    assert fc.interior_angle("shoulder") == pytest.approx(90 - tilt, abs=0.2)
    assert bc.interior_angle("neck") == pytest.approx(90 + tilt, abs=0.2)


@pytest.mark.parametrize("lean", [0.0, 0.7, 1.2, 2.0])
def test_the_corner_of_a_square_neck(lean: float) -> None:
    """270° reflex on the piece, within 8°; else doubted."""
    made = draft(order(P92, closed(Neckline(shape=FrontShape.SQUARE, lean=lean))))
    side, foot = made.sheet.lines["neck front"].segments
    corner = degrees_between(side.end_direction, foot.start_direction)
    assert bool(found(made, "N10")) == (abs(corner - 90) > 8)
    k = made.sheet.points["Nf′"] + Point(lean, 0.0)
    assert side.end.x == pytest.approx(k.x, abs=1e-9)


@pytest.mark.parametrize("shape", list(BackShape))
def test_depth_of_the_back_neck_by_rule(shape: BackShape) -> None:
    """max(v, 2 below the neck end), v = nr, scoop nr + 1.5; a V nr + 8 (3.3)."""
    if shape is BackShape.STANDARD:
        return
    made = draft(order(P92, closed(BackNeckline(shape=shape))))
    n, p = made.numbers, made.sheet.points
    low = p["Nb′"].y - p["hb"].y + 2.0
    v = n.nr + (1.5 if shape is BackShape.SCOOP else 0.0)
    aim = max(v, low)
    if shape in (BackShape.V, BackShape.U):
        aim = n.nr + (8.0 if shape is BackShape.V else 12.0)
    assert n.Db == pytest.approx(aim, abs=1e-9)
    assert p["Cb"].y == pytest.approx(p["hb"].y + aim, abs=1e-9)


@pytest.mark.parametrize(("depth", "told"), [(16.0, False), (24.0, True)])
def test_a_back_neck_that_wobbles_is_told_by_its_depth(
    depth: float, told: bool
) -> None:
    """Over 8 degrees the wrong way are a fault (C16): told by Db, beside what the
    curve itself tells."""
    neck = BackNeckline(depth=depth)
    d = draft(order(P92, swapped(closed_back(lines="darts"), neck)))
    curves = d.sheet.lines["neck back"].segments
    worst = max(wrong_way(c) for c in curves if isinstance(c, Cubic))
    assert (worst > 8.0) is told
    assert bool(found(d, "N14")) is told


@pytest.mark.parametrize(("depth", "told"), [(10.0, False), (20.0, True)])
def test_a_front_neck_that_wobbles_is_told_by_its_depth(
    depth: float, told: bool
) -> None:
    """The block's own neck drawn far down, by the same measure (C16)."""
    neck = Neckline(depth=depth, width=1.0)
    d = draft(order(P92, swapped(closed_back(lines="darts"), neck)))
    assert [f for f in d.failures() if '(depth of "neckline")' in f] == [
        str(f) for f in found(d, "N14")
    ]
    assert bool(found(d, "N14")) is told


def test_too_much_tightening_is_told_without_a_symbol() -> None:
    """Its place tells where; a fitting's cure tells the sentence alone."""
    told = found(draft(order(P92, opened(tightened("front", 2.5)))), "N4")
    assert told and all("nip" not in f.sentence for f in told)
