"""A laced front or back over a panel (transformations §7, first garment 10.6)."""

import math
from itertools import pairwise

import pytest

from bodies import P92, P116, THEA, ansur_whole
from clothwright.body import Body
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.bodice.strapless import Strapless
from clothwright.features.bodice.torso import Torso
from clothwright.features.bodice.yokes import BackYoke, FrontYoke
from clothwright.features.collars.flat_collar import FlatCollar
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.collars.stand_collar import StandCollar
from clothwright.features.linings.lining import Lining
from clothwright.features.necks.funnel import FunnelNeck
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.button_stand import Where
from clothwright.features.openings.centre_loops import CentreLoops
from clothwright.features.openings.lacing import PANEL, Lacing, Through
from clothwright.features.skirts.peplum import Cut, Peplum
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import EdgeKind, MarkKind
from orders import closed_features, cut_faults, order, sleeved_features, swapped

MM = 0.1
WOMEN = (P92, P116, THEA, *ansur_whole()[::300])


def laced(new: Lacing, *more: Feature) -> tuple[Feature, ...]:
    """A sleeved top with a peplum, laced."""
    return (*swapped(sleeved_features(), new, place_of="concealed zip"), *more)


def in_one(new: Lacing, length: float = 30.0) -> tuple[Feature, ...]:
    """The same in one through the waist."""
    top = swapped(laced(new), Torso(length=length), place_of="waist seam")
    return tuple(f for f in top if f.kind != "peplum")


def bought(d: Draft) -> dict[Article, Notion]:
    return {
        k.article: k for f in d.order.features for k in f.notions(d.numbers, d.sheet)
    }


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("body", WOMEN, ids=lambda b: b.client)
def test_the_bodice_is_smaller_by_the_gap(body: Body, where: Where) -> None:
    """§7: the bodice is cut smaller by the gap: 3 of 6 cm off either half, from the
    neck to the hem; laced, its girths count the gap."""
    closed = draft(order(body, sleeved_features()))
    front = where is Where.FRONT
    code, hung = ("FC", "PF") if front else ("BC", "PB")
    for features in (laced(Lacing(where=where)), in_one(Lacing(where=where))):
        d = draft(order(body, features))
        assert not d.failed, d.failures()
        assert not cut_faults(d)
        edge = d.sheet.edge(code, "stand").path
        centre = d.sheet.points["CFw"].x if front else 0.0
        for p in (edge.start, edge.end):
            assert abs(p.x - centre) == pytest.approx(3.0, abs=0.1 * MM)
    d = draft(order(body, laced(Lacing(where=where))))
    if front:  # a centre back seam of the closed one is shaped
        less = closed.sheet.length(code, "waist") - d.sheet.length(code, "waist")
        assert less == pytest.approx(3.0, abs=0.05)
    assert d.sheet.edge(hung, "stand").kind is EdgeKind.SEAM
    for w in d.report.walks:
        if w.seam.code in ("S5", "S6", "S70", "S71", "S73", "S74"):
            assert w.holds and abs(w.ease) < 0.15, w.seam.code


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize(("gap", "under"), [(5.0, 4.0), (6.0, 4.5), (8.0, 5.0)])
def test_the_panel_behind(where: Where, gap: float, under: float) -> None:
    """§7: as wide as the gap and twice what lies under, from 0.5 below the top edge to
    1 above the lower edge; half of it, on the fold."""
    new = Lacing(where=where, gap=gap, under=under)
    d = draft(order(P116, laced(new)))
    assert not d.failed, d.failures()
    p = d.sheet.piece(PANEL)
    edge = d.sheet.edge("FC" if where is Where.FRONT else "BC", "stand").path
    assert p.edge("top").length == pytest.approx(gap / 2 + under)
    assert p.edge("outer").length == pytest.approx(edge.length - 1.5, abs=0.1 * MM)
    top, foot = sorted((edge.start.y, edge.end.y))
    levels = sorted(q.y for e in p.edges for q in (e.path.start, e.path.end))
    assert levels[0] == pytest.approx(top + 0.5) and levels[-1] == pytest.approx(
        foot - 1.0
    )
    assert p.fold is not None and p.fold.length == p.edge("outer").length


@pytest.mark.parametrize("through", Through)
@pytest.mark.parametrize("where", Where)
def test_loops_on_both_edges(where: Where, through: Through) -> None:
    """§7: 2 to 2.5 apart; first and last 1 cm from the ends (10.2); the cord goes once
    across at the first pair and twice at the others (10.6), 35 cm left to tie."""
    d = draft(order(THEA, laced(Lacing(where=where, through=through))))
    code, facing = ("FC", "FF") if where is Where.FRONT else ("BC", "BF")
    edge = d.sheet.edge(code, "stand").path
    row, other = (
        [k.at for k in d.sheet.piece(c).marks if k.kind is MarkKind.LOOP]
        for c in (code, facing)
    )
    apart = [distance(a, b) for a, b in pairwise(row)]
    assert all(a == pytest.approx(apart[0]) for a in apart)
    assert 2.0 <= apart[0] <= 2.6
    ends = sorted(edge.length_to_point(p) for p in (row[0], row[-1]))
    assert ends == pytest.approx([1.0, edge.length - 1.0])
    assert all(distance(a, b) < 0.1 * MM for a, b in zip(row, other, strict=True))
    shop = bought(d)
    n = len(row)
    cord = 6.0 + 2 * (n - 1) * math.hypot(6.0, apart[0]) + 70.0
    assert shop[Article.LACING].length == pytest.approx(cord)
    eyelets = through is Through.EYELETS
    assert shop[Article.EYELET if eyelets else Article.BIAS].count == 2 * n
    titles = [o.title for o in making_order(d).operations]
    assert any(f"{2 * n} {through.value}" in t for t in titles)
    assert f"Interline the edge under the {through.value}" in titles


def test_how_it_is_made() -> None:
    """Loops lie between cloth and facing; the panel, bagged out, is sewn to one side
    when all else is done."""
    for features in (laced(Lacing()), laced(Lacing(), Lining()), in_one(Lacing())):
        d = draft(order(THEA, features))
        assert not d.failed, d.failures()
        ops = making_order(d).operations
        told = [s for o in ops for s in o.seams]
        assert {s.code for s in d.sheet.seams} == set(told)
        titles = [o.title for o in ops]
        loops = next(i for i, t in enumerate(titles) if t.startswith("Make "))
        bag = titles.index("Bag out the panel behind the lacing")
        faced = titles.index("Face the back edges")
        assert loops < faced
        assert bag < titles.index("Sew the panel behind to the left edge")


@pytest.mark.parametrize("cut", Cut)
def test_over_every_peplum(cut: Cut) -> None:
    d = draft(order(P92, swapped(laced(Lacing()), Peplum(cut=cut))))
    assert not d.failed, d.failures()
    for lines in ("armhole", "darts", "shoulder"):
        top = swapped(closed_features(lines=lines), Lacing(), place_of="concealed zip")
        made = draft(order(P92, top))
        assert not made.failed, made.failures()


@pytest.mark.parametrize("body", WOMEN, ids=lambda b: b.client)
@pytest.mark.parametrize("lines", ["armhole", "darts"])
def test_a_strapless_bodice_is_laced(body: Body, lines: str) -> None:
    """The tape of its waist is shorter by the gap; a bone lies beside either edge."""
    gone = ("neckline", "back neckline", "sleeveless armhole", "concealed zip")
    top = (f for f in closed_features(lines=lines) if f.kind not in gone)
    block, *rest = top
    d = draft(order(body, (block, Strapless(), Lacing(), *rest)))
    assert not d.failed, d.failures()
    assert not cut_faults(d)
    tape = next(
        k.length
        for f in d.order.features
        for k in f.notions(d.numbers, d.sheet)
        if k.article is Article.TAPE and k.where == "for the waist"
    )
    assert tape is not None
    whole = 2 * sum(
        d.sheet.length(p.code, e.name)
        for p in d.sheet.pieces.values()
        if p.code in ("FC", "FS", "BC", "BS", "F", "B")
        for e in p.edges
        if e.name in ("waist", "waist side")
    )
    assert tape == pytest.approx(whole, abs=0.3)
    told = [
        k.where
        for f in d.order.features
        for k in f.notions(d.numbers, d.sheet)
        if k.article is Article.BONE
    ]
    assert "for the edge that opens" in told


@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("collar", [StandCollar(), ShirtCollar(), FlatCollar()])
@pytest.mark.parametrize("body", WOMEN, ids=lambda b: b.client)
def test_a_collar_ends_at_both_edges(body: Body, collar: Feature, where: Where) -> None:
    """It is as long as what the gap leaves of the neck, on the fold where the top is
    closed and in two halves where it is laced."""
    d = draft(order(body, laced(Lacing(where=where), collar)))
    assert not d.failed, d.failures()
    assert not cut_faults(d)
    seam = d.sheet.seam("S80")
    neck, own = (d.sheet.chain_length(c) for c in (seam.left, seam.right))
    if collar.kind != "flat collar":  # which ends short of the centre
        assert own == pytest.approx(neck, abs=0.1 * MM)
    closed = draft(order(body, sleeved_features(collar))).sheet
    whole = closed.chain_length(closed.seam("S80").left)
    along = whole - neck  # the neck curves where it is cut off
    assert d.numbers.lace_gap / 2 <= along < d.numbers.lace_gap / 2 + 0.6
    opened = "cf" if where is Where.FRONT else "cb"
    for code in ("CO", "CS"):
        if code in d.sheet.pieces:
            fold = d.sheet.piece(code).fold
            assert fold is None or fold.name != opened
    told = [s for o in making_order(d).operations for s in o.seams]
    assert {s.code for s in d.sheet.seams} == set(told)


@pytest.mark.parametrize("new", [Lacing, CentreLoops])
@pytest.mark.parametrize("where", Where)
@pytest.mark.parametrize("body", WOMEN[::2], ids=lambda b: b.client)
def test_a_yoke_divides_the_row(
    body: Body, where: Where, new: type[Lacing] | type[CentreLoops]
) -> None:
    """Loops lie on yoke and half as they lay on the whole, none twice and none lost;
    what is bought is the same."""
    yoke = FrontYoke() if where is Where.FRONT else BackYoke()
    plain = swapped(closed_features(lines="darts"), new(where=where), place_of=_ZIP)
    divided = draft(order(body, (*plain, yoke)))
    assert not divided.failed, divided.failures()
    assert not cut_faults(divided)
    whole = draft(order(body, plain))
    codes = ("FY", "F") if where is Where.FRONT else ("BY", "B")
    parts = [divided.sheet.piece(c) for c in codes]
    got = [k.name for p in parts for k in p.marks if k.kind is MarkKind.LOOP]
    marks = whole.sheet.piece(codes[1]).marks
    assert sorted(got) == sorted(k.name for k in marks if k.kind is MarkKind.LOOP)
    assert parts[0].has("stand") and parts[1].has("stand")
    assert bought(divided) == bought(whole)


def test_a_loop_beside_the_seam_of_a_yoke_is_doubted() -> None:
    plain = swapped(closed_features(lines="darts"), Lacing(), place_of=_ZIP)
    near = []
    for depth in (8.0, 8.5, 9.0, 9.5, 10.0):
        d = draft(order(P92, (*plain, BackYoke(depth=depth))))
        by, told = d.sheet.piece("BY"), [f for f in d.findings if f.code == "LC2"]
        seam = by.edge("yoke").path
        rows = (*by.marks, *d.sheet.piece("B").marks)
        off = [seam.nearest(k.at)[1] for k in rows if k.kind is MarkKind.LOOP]
        assert bool(told) == (min(off) < 0.6)
        near += told
    assert near and near[0].severity.name == "WARN"


_ZIP = "concealed zip"


def test_what_is_refused() -> None:
    long = draft(order(P92, in_one(Lacing(), length=60.0)))
    assert any("Lace a top" in s for s in long.failures())
    round_ = (Neckline(shape=FrontShape.ROUND), BackNeckline(shape=BackShape.ROUND))
    funnel = laced(Lacing(), FunnelNeck())
    for neck in round_:
        funnel = swapped(funnel, neck)
    with pytest.raises(OrderError, match="does not run over the gap"):
        draft(order(P92, funnel))
    with pytest.raises(OrderError, match=r"the gap \(.*\) narrower"):
        draft(order(P92, laced(Lacing(gap=10.0))))
