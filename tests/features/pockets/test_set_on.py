"""Patch, welt and jetted pockets of trousers, tops and the breast (transformations §9):
places, pieces, darts beside them, real bodies."""

import pytest
from shapely.geometry import Polygon

from bodies import BRIDA, P80, P92, P116, THEA, ansur_women
from clothwright.blocks.trousers import BACK
from clothwright.body import Body, RuleSet
from clothwright.curves import cross, degrees_between, direction, distance
from clothwright.features import Feature
from clothwright.features.bodice.torso import Torso
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.operations import Task
from clothwright.features.pockets.back_pocket import BackPocket
from clothwright.features.pockets.breast_pocket import BREAST, BreastPocket, Sides
from clothwright.features.pockets.set_on import Shape
from clothwright.features.pockets.set_on_drawing import HIP
from clothwright.features.pockets.set_pocket import On, SetPocket
from clothwright.features.pockets.top_pocket import TopPocket
from clothwright.features.skirts.skirt_pockets import SkirtPockets
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.waist_facing import WaistFacing
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.trousers.fly import Fly
from clothwright.features.trousers.trouser_pockets import Pockets
from clothwright.features.trousers.trouser_zip import SideZip
from clothwright.features.trousers.trousers import Trousers
from clothwright.making import making_order
from clothwright.making.times import RANGES
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import Piece
from clothwright.sheets.steps import steps_text
from clothwright.units import Unit
from orders import closed_back, order
from verdict import verdict

MM = 0.1
TROUSERS = (Trousers(), Fly(), Pockets(), Waistband())
TOP = tuple(
    f
    for f in (*closed_back(lines="darts"), Torso())
    if f.kind not in ("waist seam", "peplum")
)
SHORT_TOP = tuple(Torso(length=25.0) if f.kind == "torso" else f for f in TOP)
PANELS = tuple(
    f
    for f in (*closed_back(lines="armhole"), Torso())
    if f.kind not in ("waist seam", "peplum")
)
SKIRT = (StraightSkirt(), SkirtZip(), Waistband())

KINDS: dict[str, tuple[Feature, ...]] = {
    **{f"back, {k.value}": (*TROUSERS, BackPocket(shape=k)) for k in Shape},
    **{
        f"top and breast, {k.value}": (
            *TOP,
            TopPocket(shape=k),
            BreastPocket(shape=k, sides=Sides.BOTH),
        )
        for k in Shape
    },
    "short top": (*SHORT_TOP, TopPocket(), BreastPocket()),
    "jetted skirt": (*SKIRT, SetPocket(shape=Shape.JETTED)),
    "patch behind, pockets at the sides": (
        *SKIRT,
        SkirtPockets(),
        SetPocket(on=On.BACK),
    ),
}


def made(*features: Feature, body: Body = THEA) -> Draft:
    return draft(order(body, features))


def line(piece: Piece, name: str) -> tuple[float, float, float, float]:
    return next(k.path.bounds() for k in piece.lines if k.name == name)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", [P92, P116, BRIDA, THEA], ids=lambda b: b.client)
def test_they_pass_and_their_cut_lines_hold(kind: str, body: Body) -> None:
    unit = Unit.IN if body is BRIDA else Unit.CM
    d = draft(order(body, KINDS[kind], unit=unit))
    assert not d.failed, d.failures()
    done = pattern(d, words=False)
    assert not done.drawn.failures
    for piece in done.drawn.pieces:
        cut = Polygon(piece.cut_line.flatten(0.002))
        net = Polygon(d.sheet.piece(piece.code).outline.flatten(0.002))
        assert cut.is_valid
        assert cut.buffer(0.1 * MM).contains(net)
        assert piece.cuts
    titles = "\n".join(op.title for op in making_order(d).operations)
    assert "pocket" in titles


def test_jets_meet_in_the_mouth() -> None:
    """Two jets of 0.5 (§9) fill the opening between both rows of stitching; each is cut
    twice as high, to be folded, and 2 cm longer than the mouth at each end."""
    d = made(*KINDS["back, jetted"])
    jet, bag, facing = (d.sheet.piece(c) for c in (HIP.jet, HIP.bag, HIP.facing))
    assert jet.area == pytest.approx(2 * 0.5 * (13.0 + 4.0))
    assert bag.area == pytest.approx(17.0 * (15.0 + 1.0))
    assert facing.outline.bounds()[2] - facing.outline.bounds()[0] == pytest.approx(17)
    back = d.sheet.piece(BACK)
    low, high = (
        next(k.path for k in back.lines if k.name == name)
        for name in ("jetted pocket", "upper stitching")
    )
    assert low.length == pytest.approx(13.0)
    assert low.nearest(high.start)[1] == pytest.approx(1.0)
    cuts = {p.code: p.cuts for p in pattern(d, words=False).drawn.pieces}
    assert cuts[HIP.jet][0].how == "4"
    assert cuts[HIP.bag][0].how == "4 (2 pairs)"


@pytest.mark.parametrize("shape", Shape)
def test_the_mouth_on_trousers_is_parallel_to_the_waist_below_its_darts(
    shape: Shape,
) -> None:
    for body in (P80, P92, P116, BRIDA):
        d = made(*TROUSERS, BackPocket(shape=shape), body=body)
        back = d.sheet.piece(BACK)
        a, b = d.sheet.points["Pka"], d.sheet.points["Pkb"]
        side, seat = back.edge("side").path, back.edge("seat").path
        waist = direction(side.start, seat.end)
        assert degrees_between(direction(a, b), waist) < 0.01
        assert distance(a, b) == pytest.approx(d.numbers.k_wide)
        down = side.length_to_point(d.sheet.points["Pks"])
        assert down == pytest.approx(d.numbers.k_down, abs=0.1 * MM)
        for e in back.edges:
            if e.name.startswith("dart centre"):
                clear = abs(cross(direction(a, b), e.path.end - a))
                assert clear > 1.0, (body.client, e.name)  # the upper stitching
        assert not [f for f in d.findings if f.code.startswith("KP")]


def test_darts_are_as_they_were_without_a_pocket() -> None:
    """13 cm (blocks E9), and to 2 cm above the mouth of a pocket."""
    assert made(*TROUSERS).numbers.lb_T == 13.0
    assert made(*TROUSERS, BackPocket(below=10.0)).numbers.lb_T == 8.0
    assert made(*TROUSERS, BackPocket(below=18.0)).numbers.lb_T == 13.0


def test_a_mouth_lies_at_the_level_of_the_hand_on_a_dress() -> None:
    """22 cm below the waist (§9: 22 to 28); on a top of 25 cm above the hem, below the
    dart."""
    d = made(*KINDS["top and breast, welt"])
    n, front = d.numbers, d.sheet.piece("F")
    mouth = line(front, "welt pocket")
    assert mouth[1] - n.yW == pytest.approx(22.0)
    assert mouth[2] - mouth[0] == pytest.approx(13.0)
    short = made(*KINDS["short top"])
    n, front = short.numbers, short.sheet.piece("F")
    patch = line(front, "patch pocket")
    dart = line(front, "waist dart")
    assert patch[1] > dart[3] + 1.0
    assert patch[3] < front.edge("hem").path.bounds()[1] - 3.0 + 0.1 * MM


def test_a_breast_pocket_lies_over_the_bust_point_on_the_left() -> None:
    """10 by 11 cm (§9: 9–11 by 10–12), at least 3 cm from the armhole."""
    d = made(*KINDS["short top"], body=P92)
    n, front = d.numbers, d.sheet.piece("F")
    x0, y0, x1, y1 = line(front, "patch breast pocket, on the left")
    assert (x1 - x0, y1 - y0) == pytest.approx((10.0, 11.0))
    assert n.X - x1 == pytest.approx(4.5)
    assert n.y_BP - y0 == pytest.approx(5.0)
    assert x0 < n.x_BP < x1
    assert front.edge("armhole").path.nearest(d.sheet.points["Pxa"])[1] > 3.0
    cut = next(
        p for p in pattern(d, words=False).drawn.pieces if p.code == BREAST.patch
    )
    assert cut.cuts[0].how == "1"
    assert "breast pocket, one, on the left" in "\n".join(steps_text(d))
    (sewn,) = (
        op
        for op in making_order(d).operations
        if op.title.startswith("Stitch the patch breast")
    )
    assert sewn.says[0] == "Only one, on the left."


def test_a_patch_over_a_dart_is_said_and_a_mouth_over_one_doubted() -> None:
    d = made(*KINDS["short top"])
    assert "The patch breast pocket lies over a dart." in [
        f.sentence for f in d.findings
    ]
    d = made(*TOP, TopPocket(shape=Shape.JETTED, below=4.0, beside=4.0))
    assert any("crosses a dart" in f.sentence for f in d.findings)
    assert not d.failed


def test_a_breast_pocket_over_the_waist_dart_of_a_bodice_is_said() -> None:
    """On a front that ends at the waist the dart lies open below the bust point."""
    d = made(*closed_back(lines="darts"), BreastPocket())
    assert not d.failed, d.failures()
    assert any(f.code == "KP3" for f in d.findings)


def test_a_waist_facing_closes_the_shortened_darts() -> None:
    """Both darts end above the pocket: 8.5 cm beside a facing of 6."""
    faced = (Trousers(), SideZip(), WaistFacing(), BackPocket())
    d = made(*faced)
    assert not d.failed, d.failures()
    back = d.sheet.piece(BACK)
    long = [e.length for e in back.edges if e.name.startswith("dart centre")]
    assert all(k == pytest.approx(8.5, abs=0.4) for k in long), long


def test_what_a_shape_has_no_use_for_is_noted() -> None:
    d = made(*TROUSERS, BackPocket(shape=Shape.JETTED, welt=3.0, corner=1.0))
    noted = [f.sentence for f in d.findings if f.code == "Q5"]
    assert len(noted) == 2
    assert all(s.startswith("A jetted pocket has no use for") for s in noted)
    d = made(*TROUSERS, BackPocket(shape=Shape.PATCH, corner=1.0))
    assert not [f for f in d.findings if f.code == "Q5"]


def test_each_pocket_takes_its_time() -> None:
    """Each: patch 15 to 25 minutes, welt 45 to 90 (cutting and costing 4)."""
    for shape, task, low, high in (
        (Shape.PATCH, Task.PATCH_POCKET, 15, 25),
        (Shape.WELT, Task.WELT_POCKET, 45, 90),
        (Shape.JETTED, Task.WELT_POCKET, 45, 90),
    ):
        ops = making_order(made(*TROUSERS, BackPocket(shape=shape))).operations
        (op,) = (op for op in ops if op.task is task)
        assert op.count == 2.0
        assert RANGES[task] == (low, high)
        titles = [o.title for o in ops]
        assert titles.index(op.title) < titles.index("Sew the sides")


def test_a_bag_is_wide_enough_for_a_hand() -> None:
    """HD/2 and 4 cm (§9): with HD 20 a mouth of 9 cm has a bag of 13, 1 cm short."""
    d = made(*TROUSERS, BackPocket(width=9.0))
    least = d.numbers.HD / 2 + 4.0
    assert least > 13.0
    assert any(f.code == "KP4" for f in d.findings)
    d = made(*TROUSERS, BackPocket(width=12.0))
    assert not any(f.code == "KP4" for f in d.findings)


@pytest.mark.parametrize(
    ("features", "says"),
    [
        ((*TROUSERS, BackPocket(width=20.0)), "where 4 cm must stay"),
        ((*TROUSERS, SetPocket()), "straight skirt"),
        ((*SKIRT, BackPocket()), "back of trousers"),
        ((*SKIRT, SetPocket(), SkirtPockets()), "one pair of pockets"),
        ((*PANELS, TopPocket()), "a panel seam runs"),
        ((*PANELS, BreastPocket()), "a panel seam runs"),
        ((*closed_back(lines="darts"), TopPocket()), '"set pocket"'),
        ((*TOP, TopPocket(), TopPocket(width=12.0)), "one pair|twice|two"),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        made(*features)


def test_a_breast_pocket_beyond_the_front_is_refused() -> None:
    d = made(*TOP, BreastPocket(inside=12.0, width=14.0), body=P80)
    assert any("lies over a seam or an edge of the front" in f for f in d.failures())


def test_a_top_pocket_too_near_to_the_hem_is_refused() -> None:
    d = made(*SHORT_TOP, TopPocket(below=20.0))
    assert any("above the hem" in f for f in d.failures())


def test_it_clears_a_button_stand() -> None:
    """The inner end is measured from the centre front, not from the edge."""
    plain = made(*KINDS["short top"], body=P92)
    stand = tuple(f for f in KINDS["short top"] if f.kind != "concealed zip")
    d = made(*stand, ButtonStand(), body=P92)
    assert not d.failed, d.failures()
    at = d.numbers.X - d.sheet.points["Pxb"].x
    assert at == pytest.approx(plain.numbers.X - plain.sheet.points["Pxb"].x)


WOMEN = ansur_women()[::90]


@pytest.mark.parametrize(
    ("kind", "plain"),
    [
        ("back, jetted", TROUSERS),
        ("top and breast, patch", TOP),
        ("short top", SHORT_TOP),
    ],
)
def test_real_women(kind: str, plain: tuple[Feature, ...]) -> None:
    """Every 90th woman of the survey: passed, or refused as without pockets."""
    assert len(WOMEN) >= 10
    for body in WOMEN:
        it = verdict(order(body, KINDS[kind], estimates=RuleSet.SURVEY))
        bare = verdict(order(body, plain, estimates=RuleSet.SURVEY))
        assert it.refusals == bare.refusals, (body.client, it.refusals)
