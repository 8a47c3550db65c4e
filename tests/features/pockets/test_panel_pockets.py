"""Pockets over and in the front panel seams of a torso and of a dress's gores
(transformations §9): their places on both panels, order of making, real bodies."""

import pytest
from shapely.geometry import LineString, Polygon
from shapely.geometry import Point as Spot
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.bodice.torso import Torso
from clothwright.features.pockets.panel_pocket import PanelPocket
from clothwright.features.pockets.panel_seam_pockets import PanelSeamPockets, Towards
from clothwright.features.pockets.panels import On, laid_beside, seam_below
from clothwright.features.pockets.set_on import Shape
from clothwright.features.pockets.top_pocket import TopPocket
from clothwright.features.skirts.gored_dress_skirt import GoredDressSkirt
from clothwright.features.skirts.pocket_drawing import PANEL_BAG
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import Piece
from clothwright.units import Unit
from orders import closed_back, order
from verdict import unsound, verdict

MM = 0.1


def without(features: tuple[Feature, ...], *kinds: str) -> tuple[Feature, ...]:
    return tuple(f for f in features if f.kind not in kinds)


TORSO = without(closed_back(lines="armhole"), "waist seam", "peplum") + (Torso(),)
SHOULDER = without(closed_back(lines="shoulder"), "waist seam", "peplum") + (Torso(),)
GORES = without(closed_back(lines="armhole"), "peplum") + (GoredDressSkirt(),)

KINDS: dict[str, tuple[tuple[Feature, ...], Feature]] = {
    **{f"torso, {k.value}": (TORSO, PanelPocket(shape=k)) for k in Shape},
    **{f"gores, {k.value}": (GORES, PanelPocket(shape=k, on=On.GORES)) for k in Shape},
    "shoulder princess": (SHOULDER, PanelPocket()),
    "seam of the torso": (TORSO, PanelSeamPockets()),
    "seam of the gores": (GORES, PanelSeamPockets(on=On.GORES)),
}
SET_OVER = [k for k in KINDS if not k.startswith("seam")]
IN_SEAM = [k for k in KINDS if k.startswith("seam")]


def made(kind: str, body: Body = P92) -> Draft:
    features, pocket = KINDS[kind]
    unit = Unit.IN if body is BRIDA else Unit.CM
    return draft(order(body, (*features, pocket), unit=unit))


def on_of(kind: str) -> On:
    return On.GORES if "gores" in kind else On.TORSO


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA], ids=lambda b: b.client)
def test_they_pass_and_their_cut_lines_hold(kind: str, body: Body) -> None:
    d = made(kind, body)
    assert not d.failed, d.failures()
    done = pattern(d)
    assert not done.drawn.failures
    for piece in done.drawn.pieces:
        cut = Polygon(piece.cut_line.flatten(0.002))
        net = Polygon(d.sheet.piece(piece.code).outline.flatten(0.002))
        assert cut.is_valid
        assert cut.buffer(0.1 * MM).contains(net)


def seen(piece: Piece, name: str) -> BaseGeometry:
    """What of a pocket's line lies inside a piece, as printed."""
    (line,) = (k for k in piece.lines if k.name == name)
    inside = Polygon(piece.outline.flatten(0.002))
    return LineString(line.path.flatten(0.002)).intersection(inside)


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA], ids=lambda b: b.client)
@pytest.mark.parametrize("on", On)
def test_both_panels_together_show_the_whole_pocket(on: On, body: Body) -> None:
    """Its line, as long on both panels together as round the patch but its mouth: 15 +
    13 + 15 cm less what two corners of 2 cm save, (8 − 2π)/2 each."""
    kind = f"{'torso' if on is On.TORSO else 'gores'}, patch"
    features, _ = KINDS[kind]
    d = draft(order(body, (*features, PanelPocket(on=on)), unit=Unit.CM))
    n, pair = d.numbers, on.panels
    both = [seen(d.sheet.piece(c), "patch pocket") for c in (pair.centre, pair.side)]
    whole = 2 * 15.0 + 13.0 - 2 * (4.0 - 3.14159)
    assert sum(k.length for k in both) == pytest.approx(whole, abs=0.6)
    assert n.k_over == pytest.approx(0.3 * 13.0)
    centre, side = both
    fold = d.sheet.piece(pair.centre).fold
    assert fold is not None
    assert centre.distance(LineString(fold.path.flatten(0.002))) > 2.0 - MM
    edge = d.sheet.piece(pair.side).edge("side").path
    assert side.distance(LineString(edge.flatten(0.002))) > 3.0 - MM


def test_the_panels_are_laid_seam_on_seam_under_a_pocket() -> None:
    """At the mouth and at the foot the seams meet; elsewhere under the pocket no more
    than 0.5 cm is between them."""
    for kind in ("torso, patch", "gores, patch"):
        for body in (P80, P92, P116, BRIDA, THEA):
            d = made(kind, body)
            n, on = d.numbers, on_of(kind)
            centre, side = seam_below(d.sheet, n, on)
            onto = laid_beside(centre, side, n.k_down, n.k_deep)
            for s in (n.k_down, n.k_down + n.k_deep):
                a, b = centre.at_length(s), onto(side.at_length(s))
                assert ((a.x - b.x) ** 2 + (a.y - b.y) ** 2) ** 0.5 < 0.5 * MM
            panels = [
                Polygon(d.sheet.piece(on.panels.centre).outline.flatten(0.002)),
                Polygon(
                    d.sheet.piece(on.panels.side).moved(onto).outline.flatten(0.002)
                ),
            ]
            a, b = (d.sheet.points[k] for k in ("Pka", "Pkb"))
            pocket = Polygon(
                [
                    (a.x, a.y),
                    (b.x, b.y),
                    (b.x, b.y + n.k_deep),
                    (a.x, a.y + n.k_deep),
                ]
            )
            bare = pocket.difference(unary_union(panels)).area
            assert bare < 0.5 * n.k_deep, (kind, body.client, bare)


@pytest.mark.parametrize("kind", SET_OVER)
def test_they_are_set_when_the_panel_seam_is_sewn(kind: str) -> None:
    titles = [op.title for op in making_order(made(kind)).operations]
    what = "skirt panel" if on_of(kind) is On.GORES else "front panel"
    seam = next(i for i, t in enumerate(titles) if t.startswith("Sew") and what in t)
    own = [i for i, t in enumerate(titles) if "pocket" in t and "Cut" not in t]
    assert own
    assert min(own) > seam
    assert max(own) < next(i for i, t in enumerate(titles) if "Sew the sides" in t)


@pytest.mark.parametrize("kind", IN_SEAM)
def test_bags_in_a_seam_come_before_it_and_its_mouth_is_notched(kind: str) -> None:
    for body in (P80, P92, P116, BRIDA, THEA):
        d = made(kind, body)
        n, on = d.numbers, on_of(kind)
        seam = d.sheet.seam(on.panels.seam)
        below, _ = seam_below(d.sheet, n, on)
        waist = d.sheet.chain_length(seam.left) - below.length
        for at in (n.pk_begin, n.pk_begin + n.pk_mouth):
            places = [k.left - waist for k in seam.notches]
            assert any(abs(s - at) < MM for s in places), (places, at)
        bag = Polygon(d.sheet.piece(PANEL_BAG).outline.flatten(0.002))
        panel = Polygon(d.sheet.piece(on.panels.side).outline.flatten(0.002))
        assert bag.intersection(panel).area > 0.9 * bag.area
    titles = [op.title for op in making_order(d).operations]
    what = "skirt panel" if on is On.GORES else "front panel"
    sewn = next(i for i, t in enumerate(titles) if t.startswith("Sew") and what in t)
    hung = titles.index("Sew the bags of the pockets to the panels")
    assert hung < sewn < titles.index("Sew the bags of the pockets round")
    cut = next(p for p in pattern(d).drawn.pieces if p.code == PANEL_BAG)
    assert cut.cuts[0].how == "4 (2 pairs)"


@pytest.mark.parametrize("kind", IN_SEAM)
def test_a_bag_says_where_its_mouth_lies_and_goes_on_the_panel_s_allowance(
    kind: str,
) -> None:
    """Two marks from its edge inwards, as far apart along it as the mouth is long; bag
    and panel have one allowance there, so that their raw edges meet."""
    d = made(kind)
    n, bag = d.numbers, d.sheet.piece(PANEL_BAG)
    edge = bag.edge("panel under").path
    at = sorted(edge.length_to_point(k.path.start) for k in bag.lines)
    assert all(edge.nearest(k.path.start)[1] < 0.1 * MM for k in bag.lines)
    assert at[1] - at[0] == pytest.approx(n.pk_mouth, abs=0.1 * MM)
    assert all(bag.contains(k.path.end) for k in bag.lines)
    drawn = {p.code: p for p in pattern(d, words=False).drawn.pieces}
    off = []
    for code, name in ((PANEL_BAG, "panel under"), (on_of(kind).panels.side, "panel")):
        line = LineString(drawn[code].cut_line.flatten(0.002))
        path = d.sheet.edge(code, name).path
        p = path.at_length(path.length / 2)
        off.append(line.distance(Spot(p)))
    assert off[0] == pytest.approx(off[1], abs=0.2 * MM)


def test_a_bag_towards_the_centre_keeps_off_it() -> None:
    """2 cm (§9): the centre panel of a torso is 9.3 cm wide at the hip of P92."""
    bag = PanelSeamPockets(towards=Towards.CENTRE)
    d = draft(order(P92, (*TORSO, bag)))
    assert any('set towards = "side"' in f for f in d.failures())


@pytest.mark.parametrize(
    ("features", "says"),
    [
        (
            (*TORSO, PanelPocket(over=9.0)),
            r"make what lies of it on the centre panel \(.*\) .* smaller",
        ),
        ((*TORSO, PanelPocket(on=On.GORES)), 'set on = "torso"'),
        ((*GORES, PanelPocket()), 'set on = "gored skirt"'),
        ((*TORSO, PanelPocket(), PanelSeamPockets()), "leave one pair off"),
        ((*TORSO, TopPocket()), '"panel pocket" over it'),
        (
            (*without(TORSO, "torso"), Torso(length=26.0), PanelPocket()),
            "set it higher, or make it less deep",
        ),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, features))


def test_a_seam_across_the_torso_is_refused() -> None:
    crossed = (*without(TORSO, "torso"), Torso(seam=18.0), PanelPocket())
    with pytest.raises(OrderError, match="a seam crosses the torso"):
        draft(order(P92, crossed))


def test_a_small_woman_is_told_what_to_do() -> None:
    """A part of 4.5 cm comes too near her centre; she is told which number is less."""
    jetted = PanelPocket(shape=Shape.JETTED, over=4.5)
    asked = order(ansur_whole()[817], (*TORSO, jetted))
    it = verdict(asked)
    assert any("cm must stay" in r for r in it.refusals)
    assert not [*unsound(asked, it)]


WOMEN = ansur_whole()[::90]


@pytest.mark.parametrize("kind", ["torso, jetted", "gores, patch", *IN_SEAM])
def test_real_women(kind: str) -> None:
    """Every 90th woman of the survey: passed, or refused as without pockets."""
    assert len(WOMEN) >= 10
    features, pocket = KINDS[kind]
    for body in WOMEN:
        it = verdict(order(body, (*features, pocket), estimates=RuleSet.SURVEY))
        bare = verdict(order(body, features, estimates=RuleSet.SURVEY))
        assert it.refusals == bare.refusals, (body.client, it.refusals)
