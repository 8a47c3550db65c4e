"""Pleats of skirts (transformations §10): exact cloth, folded paper, real bodies."""

import pytest
from shapely.geometry import LineString, Polygon

from bodies import BRIDA, P92, P116, THEA, ansur_women
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.body import Body, RuleSet
from clothwright.curves import Point, degrees_between, distance, mirror_in
from clothwright.features import Feature
from clothwright.features.notions import Article
from clothwright.features.skirts.about import GORE
from clothwright.features.skirts.centre_pleat import (
    BACKING,
    CENTRE,
    Backing,
    CentrePleat,
    Where,
)
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.skirts.flounce import Flounce
from clothwright.features.skirts.folds import Pleats
from clothwright.features.skirts.gore_seams import gore_joints
from clothwright.features.skirts.pleated_skirt import PleatedSkirt, Shape
from clothwright.features.skirts.pleated_skirt_rules import Panels
from clothwright.features.skirts.skirt_lining import SkirtLining
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.skirt_zip import Where as Zip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.vent import Vent
from clothwright.features.skirts.waist_facing import WaistFacing
from clothwright.features.skirts.waistband import Waistband
from clothwright.finishing.drawn import Meaning
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import OrderError, draft, pattern
from clothwright.paper import UNDER
from clothwright.sheets.looks import LOOKS, strokes
from clothwright.sheets.steps import steps_text
from clothwright.units import Unit
from orders import order
from verdict import verdict

MM = 0.1
AT_SIDE = SkirtZip(where=Zip.SIDE)
WIDE_BOX = PleatedSkirt(shape=Shape.BOX, face=8.0, gap=4.0, depth=3.0)

ROUND: dict[str, tuple[Feature, ...]] = {
    "knife": (PleatedSkirt(), SkirtZip(), Waistband()),
    "knife, lined": (PleatedSkirt(), SkirtZip(), Waistband(), SkirtLining()),
    "shallow": (PleatedSkirt(depth=2.5), SkirtZip(), Waistband()),
    "box": (PleatedSkirt(shape=Shape.BOX), SkirtZip(), Waistband()),
    "box apart, faced": (WIDE_BOX, SkirtZip(), WaistFacing()),
}
CENTRES: dict[str, tuple[Feature, ...]] = {
    f"{where.value}, {backing.value}, {band.kind}": (
        StraightSkirt(flare=flare),
        CentrePleat(where=where, backing=backing),
        AT_SIDE,
        band,
        *more,
    )
    for where in Where
    for backing in Backing
    for band, flare, more in (
        (Waistband(), 0.0, (SkirtLining(),)),
        (ContourBand(), 3.0, ()),
        (WaistFacing(), -1.5, ()),
    )
}


@pytest.mark.parametrize("kind", [*ROUND, *CENTRES])
@pytest.mark.parametrize("body", [P92, P116, BRIDA, THEA], ids=lambda b: b.client)
def test_it_passes_and_its_cut_lines_hold(kind: str, body: Body) -> None:
    made = draft(order(body, (ROUND | CENTRES)[kind]))
    assert not made.failed, made.failures()
    done = pattern(made, words=False)
    assert not done.drawn.failures
    for piece in done.drawn.pieces:
        cut = Polygon(piece.cut_line.flatten(0.002))
        net = Polygon(made.sheet.piece(piece.code).outline.flatten(0.002))
        assert cut.is_valid
        assert cut.buffer(0.1 * MM).contains(net)
        assert piece.cuts


@pytest.mark.parametrize("kind", ["knife", "box apart, faced"])
def test_inches(kind: str) -> None:
    made = draft(order(BRIDA, ROUND[kind], unit=Unit.IN))
    assert not made.failed, made.failures()


@pytest.mark.parametrize(
    "of",
    [
        PleatedSkirt(),
        PleatedSkirt(depth=2.0, panels=Panels.TWO),
        PleatedSkirt(shape=Shape.BOX),
        WIDE_BOX,
    ],
)
def test_cloth_by_exact_arithmetic(of: PleatedSkirt) -> None:
    """A knife pleat takes v + 2u, a box pleat v + g + 4u; what shows is body and ease;
    touching pleats use three times the length (transformations §10, exact)."""
    made = draft(order(THEA, (of, SkirtZip(), Waistband())))
    n, panel = made.numbers, made.sheet.piece(GORE)
    unit = n.pv + n.pg + 4 * n.pu if of.shape is Shape.BOX else n.pv + 2 * n.pu
    level = LineString([(-5, n.WH + 1), (500, n.WH + 1)])
    cloth = Polygon(panel.outline.flatten(0.002)).intersection(level).length
    assert cloth == pytest.approx(n.pn * unit, abs=0.1 * MM)
    assert cloth == pytest.approx(panel.edge("hem").length, abs=0.1 * MM)
    assert n.gores * n.pn * (n.pv + n.pg) == pytest.approx(n.H + n.Eh)
    waist = sum(e.length for e in panel.edges if e.name.startswith("waist"))
    assert n.gores * waist == pytest.approx(n.W + n.Ew, abs=0.1 * MM)
    # (hip − waist)/n extra overlap for each pleat
    shown = n.gores * n.pn
    assert n.pt == pytest.approx((n.H + n.Eh - n.W - n.Ew) / shown)
    if of.depth is None:
        assert cloth * n.gores == pytest.approx(3 * (n.H + n.Eh), abs=MM)


@pytest.mark.parametrize("box", [False, True])
def test_the_folded_paper_ends_in_one_line(box: bool) -> None:
    """Folded on its creases, what lies under ends where the face above it ends."""
    k = Pleats(6, 4.0, 2.0 if box else 4.0, 1.5 if box else 0.0, 0.6, box, 20.0, 60.0)
    strips = k.strips()
    for s, t in zip(strips, strips[1:], strict=False):
        left, right = k.pair(s, t)
        assert left.length == pytest.approx(right.length, abs=0.2 * MM)
        if not s.folds[1]:
            continue
        fold = k.sides(s)[1]
        over = left.moved(mirror_in(fold.end, fold.end + fold.end_direction))
        face = k.top(s)
        for i in range(9):  # as far as the face reaches
            p = over.at_length(over.length * i / 12)
            if p.x > face.start.x:
                assert face.nearest(p)[1] < 0.02 * MM
        for way in (left.start_direction, face.end_direction):  # square to the fold
            assert degrees_between(way, fold.end_direction) == pytest.approx(90.0)


def test_a_centre_pleat_is_folded_paper() -> None:
    """4u of cloth; its waist and hem lie on the front's when it is folded, exactly."""
    plain = draft(order(THEA, (StraightSkirt(flare=4.0), AT_SIDE, Waistband())))
    skirt = StraightSkirt(flare=4.0), CentrePleat(), AT_SIDE, Waistband()
    made = draft(order(THEA, skirt))
    n, before, after = made.numbers, plain.sheet.piece(FRONT), made.sheet.piece(FRONT)
    more = after.edge("hem").length - before.edge("hem").length
    assert 2 * more == pytest.approx(4 * n.cu, abs=0.5 * MM)
    assert n.cp_cloth == 4 * n.cu
    fold = before.edge("cf").path
    over = mirror_in(fold.start, fold.end)
    for name, on in ((f"{UNDER} 1", "waist"), ("hem", "hem")):
        path = after.edge(name).path
        for i in range(11):
            p = path.at_length(min(n.cu, path.length) * i / 10)
            if p.x > fold.start.x + n.cu:
                continue
            assert before.edge(on).path.nearest(over(p))[1] < 0.1 * MM
    inner = fold.start.x + n.cu
    mirror = mirror_in(Point(inner, 0.0), Point(inner, 50.0))
    a, b = (after.edge(e).path for e in (f"{UNDER} 1", f"{UNDER} 1 over"))
    assert distance(mirror(a.start), b.end) < 0.01 * MM
    assert after.edge(CENTRE).path.start.x == pytest.approx(fold.start.x + 2 * n.cu)


def test_a_backing_of_its_own_is_as_wide_as_what_it_replaces() -> None:
    made = draft(order(THEA, CENTRES["centre front, a piece of its own, waistband"]))
    backing = made.sheet.piece(BACKING)
    n = made.numbers
    assert backing.edge("hem").length == pytest.approx(n.cu, abs=0.1 * MM)
    assert backing.fold is not None
    assert made.sheet.piece(FRONT).fold is None
    assert made.sheet.seam("S55")
    titles = [op.title for op in making_order(made).operations]
    assert titles.index("Lay the pleats") > titles.index(
        "Sew the backing of the pleat seams"
    )


def test_lines_of_a_pleat_are_the_trades() -> None:
    """Fold solid, placement dashed, an arrow from the fold to it (§10)."""
    made = draft(order(THEA, ROUND["knife"]))
    piece = next(p for p in pattern(made, words=False).drawn.pieces if p.code == GORE)
    folds = [k for k in piece.lines if k.note.endswith(", fold")]
    placed = [k for k in piece.lines if k.meaning is Meaning.PLACEMENT]
    arrows = [k for k in piece.lines if k.meaning is Meaning.ARROW]
    n = round(made.numbers.pn)
    assert (len(folds), len(placed), len(arrows)) == (n, n, n - 1)
    assert LOOKS[Meaning.INNER].dashes == ()
    assert LOOKS[Meaning.PLACEMENT].dashes
    heads = [s for s in strokes(piece) if s.solid and s.meaning is Meaning.ARROW]
    assert len(heads) == len(arrows)
    for arrow in arrows:
        name = arrow.note.removesuffix(", arrow")
        to = next(k for k in placed if k.note == f"{name}, to here")
        assert to.path.nearest(arrow.path.end)[1] < 0.1 * MM


def test_it_is_told() -> None:
    made = draft(order(THEA, ROUND["knife"]))
    text = "\n".join(steps_text(made))
    assert "fold the paper" in text
    titles = [op.title for op in making_order(made).operations]
    assert titles.index("Lay the pleats") < titles.index("Close the waistband")
    assert titles.index("Hem the panels") < titles.index("Lay the pleats")  # pressed in
    assert sum("Hem" in t for t in titles) == 1


@pytest.mark.parametrize("kind", ROUND)
def test_its_panels_are_no_gores(kind: str) -> None:
    """Every sentence speaks of its panels; what holds the pleat over the zip is among
    the notions."""
    made = draft(order(THEA, ROUND[kind]))
    making = making_order(made)
    told = [*steps_text(made), *pattern(made, words=False).drawn.notes]
    told += [line for op in making.operations for line in (op.title, *op.says)]
    told += [j.name for j in gore_joints(made.sheet)]
    told += [one.where for one in cutting_sheet(making).notions]
    assert not [line for line in told if "gore" in line]
    studs = [k for k in cutting_sheet(making).notions if k.article is Article.STUD]
    assert [k.count for k in studs] == [1]


@pytest.mark.parametrize(
    ("features", "says"),
    [
        ((PleatedSkirt(gap=2.0), SkirtZip(), Waistband()), "knife pleats lie edge"),
        ((PleatedSkirt(), SkirtZip(), Waistband(), Flounce()), "hem of a pleated"),
        (
            (StraightSkirt(), CentrePleat(where=Where.BACK), SkirtZip(), Waistband()),
            "open the skirt in the left side",
        ),
        (
            (
                StraightSkirt(),
                CentrePleat(where=Where.BACK),
                AT_SIDE,
                Vent(),
                Waistband(),
            ),
            "takes the place of the vent",
        ),
        (
            (StraightSkirt(), CentrePleat(stitched=55.0), AT_SIDE, Waistband()),
            "end the stitching higher",
        ),
        (
            (PleatedSkirt(), CentrePleat(), SkirtZip(), Waistband()),
            "laid in a straight skirt",
        ),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(THEA, features))


def test_pleats_too_narrow_for_the_waist_are_refused() -> None:
    slim = Body.of({"HT": 165, "HB": 76, "B": 80, "W": 56, "H": 100}, client="slim")
    of = PleatedSkirt(face=1.5, waist_ease=0.0, hip_ease=14.0)
    with pytest.raises(OrderError, match="of each pleat is seen"):
        draft(order(slim, (of, SkirtZip(), Waistband())))


def test_a_skirt_that_ends_at_the_hip_is_told_its_length() -> None:
    """It has no flare (y0) to be begun higher."""
    with pytest.raises(OrderError, match="below the hip.*make it longer") as e:
        draft(order(THEA, (PleatedSkirt(length=30.0), SkirtZip(), Waistband())))
    assert "y0" not in str(e.value) and 'length of "pleated skirt"' in str(e.value)


WOMEN = ansur_women()[::40]


@pytest.mark.parametrize("kind", ["knife", "box apart, faced", *list(CENTRES)[:2]])
def test_real_women(kind: str) -> None:
    """Every fortieth woman of the survey: passed, or refused in words about the body
    (waist seams of four panels over a hip that is far wider)."""
    assert len(WOMEN) >= 20
    passed = 0
    for body in WOMEN:
        it = verdict(order(body, (ROUND | CENTRES)[kind], estimates=RuleSet.SURVEY))
        passed += not it.refusals
        for words in it.refusals:
            assert "easure" in words or "choose" in words.lower(), words
    assert passed >= len(WOMEN) - 2


def test_the_lining_hangs_plain() -> None:
    made = draft(order(THEA, CENTRES["centre front, cut in one, waistband"]))
    lining, shell = made.sheet.piece(f"L.{FRONT}"), made.sheet.piece(FRONT)
    assert not lining.has(f"{UNDER} 1")
    more = shell.edge("hem").length - lining.edge("hem").length
    assert more == pytest.approx(2 * made.numbers.cu, abs=0.5 * MM)
    assert made.sheet.piece(BACK).has("cb")
