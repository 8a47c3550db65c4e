"""A row of loops down the whole front or back (transformations §7, first garment
10.5)."""

import math
from itertools import pairwise

import pytest

from bodies import P92, P116, THEA, ansur_whole
from clothwright.body import Body
from clothwright.curves import Path, distance
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.armhole import SleevelessArmhole
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.torso import Torso
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.collars.collar_inside import Inside
from clothwright.features.collars.notched_collar import NotchedCollar
from clothwright.features.collars.stand_collar import StandCollar
from clothwright.features.linings.armhole_binding import ArmholeBinding
from clothwright.features.linings.lining import Lining
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.notions import Article
from clothwright.features.openings.button_stand import Where
from clothwright.features.openings.centre_loops import UNDERLAP, CentreLoops
from clothwright.features.skirts.gored_dress_skirt import GoredDressSkirt
from clothwright.features.skirts.peplum import Peplum
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import MarkKind
from orders import cut_faults, order, sleeved_features, swapped

MM = 0.1
WOMEN = (P92, P116, THEA, *ansur_whole()[::300])


def looped(new: CentreLoops, *more: Feature) -> tuple[Feature, ...]:
    """A sleeved top with a peplum, closed so."""
    return (*swapped(sleeved_features(), new, place_of="concealed zip"), *more)


def in_one(new: CentreLoops, length: float = 60.0) -> tuple[Feature, ...]:
    """A dress in one through the waist, closed so."""
    top = swapped(looped(new), Torso(length=length), place_of="waist seam")
    return tuple(f for f in top if f.kind != "peplum")


def marks(d: Draft, code: str, kind: MarkKind) -> list[tuple[float, float]]:
    return [k.at for k in d.sheet.piece(code).marks if k.kind is kind]


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("body", WOMEN, ids=lambda b: b.client)
def test_the_edges_meet_and_the_rows_agree(body: Body, where: Where) -> None:
    """§7: no extension on the loop side: the loops sit on the centre line, and go on
    evenly over the seam; the underlap is as long as both edges."""
    d = draft(order(body, looped(CentreLoops(where=where))))
    assert not d.failed, d.failures()
    assert not cut_faults(d)
    front = where is Where.FRONT
    upper, lower, facing = ("FC", "PF", "FF") if front else ("BC", "PB", "BF")
    edges = [d.sheet.edge(c, "stand").path for c in (upper, lower)]
    for code, edge in zip((upper, lower), edges, strict=True):
        row = [k.at for k in d.sheet.piece(code).marks if k.kind is MarkKind.LOOP]
        assert all(edge.nearest(p)[1] < 0.1 * MM for p in row)
        apart = [distance(a, b) for a, b in pairwise(row)]
        assert all(1.5 * 0.9 < a < 1.5 * 1.1 for a in apart)  # 1 to 2 are usual (7)
        ends = sorted(edge.length_to_point(p) for p in (row[0], row[-1]))
        assert ends == pytest.approx([0.75, edge.length - 0.75])
    shell, inner = (
        [k.at for k in d.sheet.piece(c).marks if k.kind is MarkKind.LOOP]
        for c in (upper, facing)
    )
    assert all(distance(a, b) < 0.1 * MM for a, b in zip(shell, inner, strict=True))
    lap = d.sheet.piece(UNDERLAP)
    assert lap.edge("side").length == pytest.approx(sum(e.length for e in edges))
    assert lap.edge("top").length == pytest.approx(2.75)  # 2.5 to 3 (7)
    for w in d.report.walks:
        if w.seam.code in ("S70", "S71", "S73", "S74", "S155"):
            assert w.holds


@pytest.mark.parametrize("where", Where)
def test_a_button_beside_every_loop(where: Where) -> None:
    """Cord that shows is the ball's girth less what lies between its ends; the middle
    of the button lies that loop's reach less half the button inside (10.5)."""
    d = draft(order(THEA, looped(CentreLoops(where=where, button=1.2))))
    v = math.pi * 1.2 - 0.6
    inside = math.sqrt((v / 2) ** 2 - 0.3**2) - 0.6
    for code in ("FC", "PF") if where is Where.FRONT else ("BC", "PB"):
        rows = [marks(d, code, k) for k in (MarkKind.LOOP, MarkKind.BUTTON)]
        assert len(rows[0]) == len(rows[1]) > 0
        piece = d.sheet.piece(code)
        for (x, y), (bx, by) in zip(*rows, strict=True):
            assert by == pytest.approx(y) and abs(bx - x) == pytest.approx(inside)
        assert all(piece.contains(k.at) for k in piece.marks if "button" in k.name)
    shop = {
        k.article: k for f in d.order.features for k in f.notions(d.numbers, d.sheet)
    }
    count = shop[Article.BIAS].count
    assert shop[Article.BIAS].length == pytest.approx(v + 2.4)
    assert shop[Article.BALL_BUTTON].count == count + 1


def test_how_it_is_made() -> None:
    for features in (
        looped(CentreLoops()),
        looped(CentreLoops(where=Where.FRONT), Lining()),
        looped(CentreLoops(), StandCollar()),
        in_one(CentreLoops()),
    ):
        d = draft(order(P92, features))
        assert not d.failed, d.failures()
        ops = making_order(d).operations
        told = [s for o in ops for s in o.seams]
        assert {s.code for s in d.sheet.seams} == set(told)
        assert len(told) == len(set(told))
        titles = [o.title for o in ops]
        made = titles.index("Make the underlap")
        lapped = next(i for i, o in enumerate(ops) if "S155" in o.seams)
        faced = next(i for i, o in enumerate(ops) if {"S70", "S73"} & set(o.seams))
        loops = next(i for i, t in enumerate(titles) if "loops and sew them" in t)
        assert made < lapped < faced and loops < faced


def test_what_is_doubted_and_refused() -> None:
    wide = draft(order(P92, looped(CentreLoops(button=1.4))))
    assert {f.severity.name for f in wide.findings if f.code == "CL1"} == {"WARN"}
    wider = draft(order(P92, looped(CentreLoops(button=2.0))))
    assert any("overlap" in s for s in wider.failures())
    with pytest.raises(OrderError, match="take a button stand"):
        loops = CentreLoops(where=Where.FRONT)
        draft(order(P92, looped(loops, NotchedCollar())))


@pytest.mark.parametrize("where", Where)
def test_a_gore_has_its_grain_beside_the_row(where: Where) -> None:
    """Truing 7: a grain line of 15 cm at least where there is room. Along the centre,
    where a gore is longest, the loops would leave none of it."""
    features = swapped(
        looped(CentreLoops(where=where, facing=4.0)),
        GoredDressSkirt(),
        place_of="peplum",
    )
    d = draft(order(THEA, features))
    assert not d.failed, d.failures()
    gore = "PFC" if where is Where.FRONT else "PBC"
    facing = "FFP" if where is Where.FRONT else "BFP"
    for code in (gore, facing):
        piece = d.sheet.piece(code)
        assert piece.grain is not None
        assert distance(*piece.grain) > 15.0
        line = Path.line(*piece.grain)
        assert all(line.nearest(k.at)[1] > 0.8 - 0.01 * MM for k in piece.marks)


@pytest.mark.parametrize("body", [P92, THEA])
def test_the_neck_above_the_facing_is_as_it_was_before_its_dart(body: Body) -> None:
    """A facing beside the centre begins down the neck, above which the collar encloses
    it; a dart led into the neck later does not move that (truing 2)."""
    features = (
        Block(),
        SleevelessArmhole(),
        Neckline(shape=FrontShape.SQUARE),
        BackNeckline(),
        BustDart(to=DartPlace.NECK),
        BackWaistDart(),
        CentreLoops(where=Where.FRONT),
        WaistSeam(),
        Peplum(),
        ArmholeBinding(),
        StandCollar(inside=Inside.IN_STAND),
    )
    d = draft(order(body, features))
    assert d.sheet.piece("F").has("dart neck cf")
    assert not d.failed, d.failures()
    (seam,) = (s for s in d.sheet.seams if s.code == "S8")
    shell, facing = map(d.sheet.chain_length, (seam.left, seam.right))
    plain = (f for f in features if f.kind != "bust dart")
    without = draft(order(body, (*plain, SideDart()))).sheet
    seam = next(s for s in without.seams if s.code == "S8")
    was = without.chain_length(seam.left) - without.chain_length(seam.right)
    assert shell - facing == pytest.approx(was, abs=0.2 * MM)
