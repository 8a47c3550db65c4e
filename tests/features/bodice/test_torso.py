"""Bodice and skirt in one through the waist (blocks D; its check values G21, G33)."""

import random

import pytest

from bodies import P92, P116, THEA, YSOLDE, ansur_women
from clothwright.blocks import torso
from clothwright.blocks.torso_rules import on_line, shares
from clothwright.blocks.torso_width import width_at
from clothwright.body import Body, RuleSet
from clothwright.curves import Path, distance
from clothwright.features import Feature
from clothwright.features.block import Block, Depth
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.empire import EmpireSeam
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.torso import Torso
from clothwright.features.bodice.torso_findings import stretch
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.fitting import Fitting
from clothwright.features.fittings.sway_back import SwayBack
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.neck_shapes import BackShape
from clothwright.features.necks.necklines import BackNeckline
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.skirts.vent import Vent
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import Sheet
from clothwright.units import Unit
from orders import closed_back, main_features, order, sleeved_features, sound

MM = 0.1
LINES = ("darts", "armhole", "shoulder", "mixed")


def in_one(
    *more: Feature, lines: str = "darts", lining: Mode | None = None
) -> tuple[Feature, ...]:
    """A closed back with a zip, cut in one; `more` take the place of their kind."""
    usual = closed_back(lines=lines, lining=lining)
    kept = {f.kind: f for f in usual if f.kind not in ("waist seam", "peplum")}
    kept["torso"] = Torso()
    return tuple((kept | {f.kind: f for f in more}).values())


def side(sheet: Sheet, half: str) -> float:
    """A side from the underarm to the hem, its darts closed."""
    return sum(
        e.length
        for code in (half, f"{half}S")
        if code in sheet.pieces
        for e in sheet.piece(code).edges
        if e.name.startswith("side")
    )


# -- check values ----------------------------------------------------------------------
def test_the_straight_side_line() -> None:
    """G33: xs 24.35, xh 25.25, SDl 18.675, WH 20.625 give x = 24.778."""
    assert on_line(24.35, 25.25, 18.675, 20.625) == pytest.approx(24.778, abs=0.0005)


def test_the_stretch_of_a_fish_eye_dart() -> None:
    """G21: half length 14, width 4: 0.284 for both halves together."""
    assert stretch(4.0, 14.0, 14.0) == pytest.approx(0.284, abs=0.001)


def test_p92_as_the_notes_have_it() -> None:
    """D3, C21: undarted line 50.5, net 38, sup 12.5: sides 2.25, back 4.0, front 3.25,
    centre back 0.75 (Eb 8, Ew 4, AS + 1)."""
    block = Block(bust_ease=8.0, waist_ease=4.0, depth=Depth.MEASURED, below_armpit=1.0)
    n = sound(P92, in_one(block)).numbers
    assert n.x_l == pytest.approx(24.778, abs=0.005)
    assert n.xh == pytest.approx(25.25)
    assert n.x_l + n.x_l_f == pytest.approx(50.5, abs=0.05)
    assert n.sup_T == pytest.approx(12.5, abs=0.05)
    for value, noted in (
        (n.a_T, 2.25),
        (n.bd_net, 4.0),
        (n.fd, 3.25),
        (n.cbs, 0.75),
    ):
        assert value == pytest.approx(noted, abs=0.02)


@pytest.mark.parametrize("sup", [-6.0, 0.0, 2.0, 5.0, 12.5, 16.0, 24.0])
def test_the_shares_close_the_waist(sup: float) -> None:
    """2a' + bd + fd + cb is what is taken in (exact); no dart under 1.2."""
    a, bd, fd, cb = shares(sup)
    assert 2 * a + bd + fd + cb == pytest.approx(sup)
    assert all(dart == 0 or dart >= 1.2 for dart in (bd, fd))


# -- the whole dress -------------------------------------------------------------------
@pytest.mark.parametrize("lines", LINES)
@pytest.mark.parametrize("body", [P92, P116, THEA, YSOLDE], ids=lambda b: b.client)
def test_girths_sides_and_hem(body: Body, lines: str) -> None:
    """D1: waist and hip are body and ease. D2: the sides are of one length. K6: the hem
    is level and the pieces reach it. D3: the centre back is plumb at the hem."""
    d = sound(body, in_one(Torso(flare=0.0), lines=lines))
    n, sheet = d.numbers, d.sheet
    assert n.Ew == 4.0
    waist, hip = (2 * width_at(sheet, n.yW + y) for y in (0.0, n.WH))
    assert waist == pytest.approx(n.W + 4.0, abs=0.1 * MM)
    assert hip == pytest.approx(n.H + n.Eh, abs=0.1 * MM)
    assert side(sheet, "F") == pytest.approx(side(sheet, "B"), abs=0.1 * MM)
    hem = 2 * sum(sheet.length(c, "hem") for c in torso.PIECES if c in sheet.pieces)
    assert hem == pytest.approx(hip, abs=MM)
    back = sheet.piece("B" if "B" in sheet.pieces else "BC")
    assert back.edge("cb").path.start == pytest.approx((0.0, n.yW + 60.0))
    assert not any(e.name.startswith("waist") for e in back.edges)
    seams = {s.code for s in sheet.seams}
    assert {"S3", "S4", "S21"} <= seams
    assert not seams & {"S5", "S6"}


@pytest.mark.parametrize("lines", ["armhole", "shoulder"])
def test_princess_lines_run_to_the_hem(lines: str) -> None:
    """Panels are of one length but for the ease over the bust, and lie edge to edge
    below their dart."""
    d = sound(YSOLDE, in_one(lines=lines))
    for code, ease in (("S1", d.numbers.ep), ("S2", 0.0)):
        seam = d.sheet.seam(code)
        left, right = (d.sheet.chain_length(c) for c in (seam.left, seam.right))
        assert right - left == pytest.approx(ease, abs=MM)
        assert seam.end == "hem"
    fc, fs = (d.sheet.edge(c, "panel").path for c in ("FC", "FS"))
    assert distance(fc.start, fs.end) < 0.01


def test_a_fish_eye_dart_has_equal_legs() -> None:
    """D5: legs equal above and below; it ends as bodice and skirt darts do."""
    d = sound(P92, in_one())
    n = d.numbers
    for code, width, top, below in (
        ("B", n.bd_net, n.y_Pd, 13.5),
        ("F", n.fd, n.y_BP + 2.5, 9.5),
    ):
        dart = torso.fish_eye(d.sheet, code)
        assert dart is not None
        up_a, down_a, down_b, up_b = (s.length for s in dart.segments)
        assert up_a == pytest.approx(up_b)
        assert down_a == pytest.approx(down_b)
        a, b = dart.segments[0].end, dart.segments[2].end
        assert distance(a, b) == pytest.approx(width)
        assert dart.start.y == pytest.approx(top)
        assert dart.segments[1].end.y == pytest.approx(n.yW + below)


@pytest.mark.parametrize("body", [P92, P116, THEA, YSOLDE])
def test_no_grain_is_drawn_through_a_dart(body: Body) -> None:
    """The cloth is folded there; truing 7 wants the grain where it can be laid."""
    sheet = sound(body, in_one()).sheet
    for code in ("F", "B"):
        p, dart = sheet.piece(code), torso.fish_eye(sheet, code)
        assert p.grain is not None
        assert dart is not None
        assert not Path.line(*p.grain).meets(dart)
        assert p.contains(p.grain[0])


def test_a_flared_side_is_square_to_its_hem() -> None:
    d = sound(THEA, in_one(Torso(flare=5.0)))
    f, b = d.sheet.piece("F"), d.sheet.piece("B")
    assert f.interior_angle("hem") == pytest.approx(90.0, abs=0.5)
    assert b.interior_angle("side") == pytest.approx(90.0, abs=0.5)
    assert side(d.sheet, "F") == pytest.approx(side(d.sheet, "B"), abs=0.1 * MM)


@pytest.mark.parametrize("length", [26.0, 40.0, 60.0, 100.0])
def test_lengths_from_a_top_to_a_gown(length: float) -> None:
    """The zip ends 2 cm above the hip, or the hem (transformations 7)."""
    vent = (Vent(),) if length > 50 else ()
    d = sound(THEA, in_one(Torso(length=length), *vent))
    assert d.numbers.z == pytest.approx(min(d.numbers.WH, length) - 2.0)
    stop = d.sheet.seam("S21").notches[0].left
    cb = d.sheet.edge("B", "cb").path.reversed()
    at = cb.length_to_point(d.sheet.points["CBz"])
    assert stop - at == pytest.approx(d.numbers.z, abs=0.1 * MM)


def test_its_zip_vent_and_making_order() -> None:
    made = making_order(sound(THEA, in_one(Vent())))
    told = [op.title for op in made.operations]
    for title in (
        "Sew the front waist darts",
        "Sew the back waist darts",
        "Put in the concealed zip",
        "Hem the lower edge",
    ):
        assert told.count(title) == 1
    assert not any("waist seam" in t or t == "Sew the waist" for t in told)


def test_the_lining_s_darts_come_before_its_seams() -> None:
    """And its centre is sewn only below the zip (common practice)."""
    made = making_order(sound(THEA, in_one(lining=Mode.TO_EDGE)))
    told = [op.title for op in made.operations]
    for half in ("front", "back"):
        darts = told.index(f"Sew the waist darts of the {half} lining")
        assert darts < told.index("Make the lining")
    (close,) = (op for op in made.operations if op.title == "Close the lining")
    assert any("only below the opening" in words for words in close.says)


@pytest.mark.parametrize(
    ("lines", "mode"),
    [
        ("darts", Mode.TO_EDGE),
        ("armhole", Mode.TO_EDGE),
        ("armhole", Mode.BELOW_FACING),
    ],
)
def test_its_lining_hangs_free(lines: str, mode: Mode) -> None:
    """1.5 shorter than the shell (transformations §6), open beside a vent."""
    d = sound(THEA, in_one(Vent(), lines=lines, lining=mode))
    sheet, back = d.sheet, "B" if lines == "darts" else "BC"
    lining = sheet.piece(f"L.{back}")
    assert lining.has("open")
    assert not lining.has("vent")
    foot = lining.edge("open").path.start
    assert sheet.points["Mb"].y - foot.y == pytest.approx(1.5)
    if lines == "darts":
        assert torso.fish_eye(sheet, "L.F") == torso.fish_eye(sheet, "F")


@pytest.mark.parametrize("to", [DartPlace.SHOULDER, DartPlace.NECK, DartPlace.ARMHOLE])
def test_the_bust_dart_may_be_led_upwards(to: DartPlace) -> None:
    features = [f for f in in_one(BustDart(to=to)) if f.kind != "side dart"]
    d = sound(YSOLDE, tuple(features))
    assert torso.fish_eye(d.sheet, "F") is not None


@pytest.mark.parametrize("body", [P92, YSOLDE], ids=lambda b: b.client)
def test_with_sleeves(body: Body) -> None:
    kept = [f for f in sleeved_features() if f.kind not in ("waist seam", "peplum")]
    d = sound(body, (*kept, Torso(flare=3.0)))
    assert "SL" in d.sheet.pieces


def test_an_order_in_inches_has_its_own_defaults() -> None:
    d = draft(order(THEA, in_one(), unit=Unit.IN))
    assert not d.failed
    assert d.numbers.Ew == pytest.approx(1.5 * 2.54)
    assert d.numbers["L"] == pytest.approx(24 * 2.54)


def test_a_straight_centre_back_leaves_its_share_to_the_dart() -> None:
    """D3: without a shaped centre back its share goes to the back dart."""
    n = sound(P92, in_one(ConcealedZip(shaped=False))).numbers
    assert n.cbs == 0.0
    assert n.bd_net == pytest.approx(n.bd)


def test_real_women() -> None:
    """Every 40th woman of the survey of 2012, all four ways of dividing it."""
    rng = random.Random(4)
    women = ansur_women()[::40]
    passed = 0
    for body in women:
        asked = order(body, in_one(lines=rng.choice(LINES)), estimates=RuleSet.SURVEY)
        d = draft(asked)
        passed += not pattern(d, words=False).failed
    assert passed >= len(women) - 1


# -- what does not go ------------------------------------------------------------------
@pytest.mark.parametrize(
    ("features", "says"),
    [
        (in_one(WaistSeam()), "has no waist seam"),
        (in_one(EmpireSeam()), "tapes the waist dart shut"),
        (
            tuple(
                f for f in in_one(BustDart(to=DartPlace.WAIST)) if f.kind != "side dart"
            ),
            "cannot hold the bust dart too",
        ),
        (
            (*main_features()[:-3], main_features()[-1], Torso()),
            "through its back, side or front",
        ),
        (in_one(Torso(length=20.0)), "make it at least 23.5 cm long"),
        (in_one(Torso(length=25.0, flare=6.0)), "flared .* too far"),
        (
            in_one(Fitting(alteration=(SwayBack(do="sway back", by=1.0),))),
            "a hollow back is shortened in a waist seam",
        ),
        (
            in_one(lining=Mode.BELOW_FACING),
            'mode = "to the edge", or use a front princess',
        ),
    ],
)
def test_what_is_refused_is_said(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(THEA, features))


def test_a_wide_fish_eye_is_doubted() -> None:
    """Over 4.5 cm it does not lie flat (D4, D5): a body with a very slim waist."""
    slim = Body.of({"HT": 168, "HB": 90, "B": 96, "W": 62, "H": 104})
    d = draft(order(slim, in_one()))
    assert any(f.code == "D5" and "princess" in str(f) for f in d.findings)
    lined = draft(order(slim, in_one(lines="armhole")))
    assert not any(f.code == "D5" for f in lined.findings)


@pytest.mark.parametrize("lines", ["darts", "armhole"])
@pytest.mark.parametrize("body", [P92, THEA, *ansur_women()[::250]])
def test_a_back_neck_drawn_in_leaves_side_and_hem(body: Body, lines: str) -> None:
    """A fish-eye dart cannot open down to the hem: the wedge is folded out to nothing
    at the armhole's pitch. Shoulder, side, hem and girths are as they were (exact), the
    neck is shorter by what is folded out, within a fifth for the turn of its end, and
    the armhole runs on smooth over the pitch, of its length within 2 mm."""
    plain, *folded = (
        sound(body, in_one(neck_of(amount), lines=lines)) for amount in (0.0, 0.8, 1.5)
    )
    codes = [c for c in torso.PIECES if c in plain.sheet.pieces]
    for made, amount in zip(folded, (0.8, 1.5), strict=True):
        for code in codes:
            for e in plain.sheet.piece(code).edges:
                if e.name not in ("neck", "armhole"):
                    now = made.sheet.length(code, e.name)
                    assert now == pytest.approx(e.length, abs=0.1 * MM), e.name
        long = [necks(d) for d in (plain, made)]
        assert long[0] - long[1] == pytest.approx(amount, rel=0.2)
        round_ = [d.sheet.lines["armhole back"].length for d in (plain, made)]
        assert round_[0] - round_[1] == pytest.approx(0.0, abs=2 * MM)
        upper, lower = made.sheet.lines["armhole back"].segments
        assert distance(upper.end_direction, lower.start_direction) < 1e-6
        assert distance(upper.end, plain.sheet.points["pb"]) < 1e-6


def neck_of(contour: float) -> BackNeckline:
    return BackNeckline(shape=BackShape.V, depth=20.0, contour=contour)


def necks(d: Draft) -> float:
    return d.sheet.lines["neck back"].length
