"""Lays of the demo's orders: they pass the checker, and say what a cutter asks."""

import json
from dataclasses import replace
from functools import cache

import pytest

from bodies import P92
from clothwright.features.necks.cowl import Cowl
from clothwright.findings import Finding, Severity
from clothwright.finishing.drawn import DrawnPattern
from clothwright.lay import Budget, Lay, LayError, check_lay, cloths_of, lay
from clothwright.lay.figures import figures
from clothwright.lay.match import Link, links_of
from clothwright.lay.patterns import TRUE, matched_seams, shapes_of
from clothwright.lay.pieces import area_of
from clothwright.lay.spread import spread
from clothwright.order import Cloth, Flaw, Fold, Pattern, draft
from clothwright.order import pattern as pattern_of
from finished import ORDERS, made
from orders import closed_back, order, swapped

FEW = Budget(layouts=12)


def with_cloth(name: str, key: str = "shell", **settings: object) -> Pattern:
    """A demo order on another cloth."""
    pattern = made(name)
    order = pattern.draft.order
    cloth = order.cloths[key].model_copy(update=settings)
    draft = replace(
        pattern.draft, order=replace(order, cloths={**order.cloths, key: cloth})
    )
    return replace(pattern, draft=draft)


def test_what_is_on_the_bias_may_lie_along_or_across() -> None:
    """A cowl's grain is drawn at 45° to its fold (transformations 2): without a nap the
    weft then does as the warp, and the piece may be turned by a quarter. What is not on
    the bias may not."""
    features = swapped(closed_back(lines="darts"), Cowl(), place_of="neckline")
    kept = tuple(f for f in features if f.kind != "side dart")
    drawn = pattern_of(draft(order(P92, kept)))
    turns = {s.code: s.turns for s in shapes_of(drawn, "shell")}
    assert turns["F"] == (0.0, 90.0, 180.0, 270.0)
    assert turns["B"] == (0.0, 180.0)
    (how,) = (c for p in drawn.drawn.pieces if p.code == "F" for c in p.cuts)
    assert how.bias
    assert "bias" in how.how


@cache
def top(fold: Fold | None = Fold.LENGTHWISE) -> Lay:
    return lay(made("peplum-top"), fold=fold, budget=FEW)


@pytest.mark.parametrize("name", ORDERS)
def test_every_cloth_of_every_demo_order(name: str) -> None:
    pattern = made(name)
    for key in cloths_of(pattern):
        done = lay(pattern, key, fold=Fold.LENGTHWISE, budget=FEW)
        fine = shapes_of(pattern, key, growth=done.spread.growth, flat=TRUE)
        assert not check_lay(fine, done.spread, done.placed, done.length, gap=0.3)
        assert 0.05 < done.efficiency < 0.95
        assert done.length >= done.solved.bound - 1e-6
        assert done.buy.cm > done.length


def test_shapes_are_the_pieces() -> None:
    """Counts, areas and folds of the drawn pieces; the grain along the cloth."""
    pattern = made("peplum-top")
    shapes = {s.code: s for s in shapes_of(pattern, "shell", flat=TRUE)}
    for piece in pattern.drawn.pieces:
        shape = shapes[piece.code]
        assert shape.on_fold == piece.on_fold
        assert shape.count == piece.cuts[0].count
        assert area_of(shape.outline) == pytest.approx(
            abs(piece.cut_line.area), abs=0.3
        )
        if shape.on_fold:
            assert min(y for _, y in shape.outline) == 0.0
    # the centre front is longer than wide: its grain runs along x
    xs, ys = zip(*shapes["FC"].outline, strict=True)
    assert max(xs) - min(xs) > max(ys)
    assert max(xs) - min(xs) == pytest.approx(44.8, abs=0.1)  # hem to neck, cut


def test_interlining_is_cut_a_little_beyond_the_stitching() -> None:
    """First garment §15: 1/8 in; never beyond the paper."""
    pattern = made("peplum-top")
    whole = {s.code: s for s in shapes_of(pattern, "shell", flat=TRUE)}
    for shape in shapes_of(pattern, "interlining", flat=TRUE):
        net = pattern.draft.sheet.piece(shape.code).area
        assert net < area_of(shape.outline) < area_of(whole[shape.code].outline)


def test_pieces_grow_where_the_cloth_shrinks() -> None:
    pattern = made("peplum-top")
    plain = {s.code: s for s in shapes_of(pattern, "shell")}
    for shape in shapes_of(pattern, "shell", growth=(1 / 0.96, 1 / 0.98)):
        assert area_of(shape.outline) == pytest.approx(
            area_of(plain[shape.code].outline) / 0.96 / 0.98, rel=1e-6
        )
    said = lay(
        with_cloth("peplum-top", steamed=False), budget=FEW, fold=Fold.LENGTHWISE
    )
    assert "3.1 % longer and 2.0 % wider" in said.grown_told


def test_the_fold_sets_the_length_and_opening_a_piece_is_said() -> None:
    done = lay(made("peplum-top"), fold=Fold.LENGTHWISE, budget=Budget(layouts=80))
    assert done.solved.at_bound
    assert "No shorter lay exists" in done.bound_told
    assert "Opened out and cut whole, the panel behind" in done.saving
    assert not done.spare


def test_the_shortest_way_to_fold_is_taken() -> None:
    done = top(None)
    assert done.spread.fold is Fold.SINGLE
    assert {f for f, _ in done.others} == {Fold.LENGTHWISE, Fold.TWO}
    assert all(length > done.length for _, length in done.others)
    hands = [c.hand for c in done.solved.copies if c.shape.code == "FS"]
    assert sorted(hands) == ["left", "right"]


def test_across_leaves_spare_copies() -> None:
    done = lay(made("peplum-top"), fold=Fold.ACROSS, budget=FEW)
    assert "Centre front" in done.spare
    assert done.spread.lengths == 2
    assert done.buy.parts[0].cm == pytest.approx(2 * done.length)


def test_with_a_nap_all_head_one_way() -> None:
    done = lay(made("zip-top"), budget=FEW)
    assert {p.turn for p in done.placed} == {0.0}
    with pytest.raises(LayError, match="nap"):
        lay(made("zip-top"), fold=Fold.ACROSS, budget=FEW)


@pytest.mark.parametrize("fold", [Fold.SINGLE, Fold.LENGTHWISE])
def test_cross_stripes_meet_at_the_seams(fold: Fold) -> None:
    """Cutting and costing §1.4, by hand at the side seam and the front panel."""
    pattern = with_cloth("peplum-top", repeat_warp=5.0, fold=fold)
    done = lay(pattern, budget=FEW)
    assert done.spread.striped
    laid = list(zip(done.solved.copies, done.placed, strict=True))
    for seam, one, other in (("S1", "FC", "FS"), ("S4", "FS", "BS")):
        ends = {}
        for copy, p in laid:
            for code, x, _ in copy.shape.marks:
                if code == seam and copy.hand in ("", "right"):
                    k = -1 if p.turn == 180.0 else 1
                    ends[copy.shape.code] = k * x + p.x
        off = (ends[one] - ends[other] + 2.5) % 5.0 - 2.5
        assert abs(off) < 0.01, seam
    reasons = [a.reason for a in done.buy.parts]
    assert any("repeat" in r for r in reasons)


def test_checks_meet_both_ways_in_a_single_layer() -> None:
    """§1.4: plaids are cut in a single layer."""
    plaid = with_cloth("peplum-top", repeat_warp=6.0, repeat_weft=4.0)
    done = lay(plaid, budget=FEW)
    assert done.spread.fold is Fold.SINGLE
    links = {k.axis for k in _links(done, made("peplum-top"))}
    assert links == {0, 1}
    with pytest.raises(LayError, match='"single"'):
        lay(plaid, fold=Fold.LENGTHWISE, budget=FEW)


def _links(done: Lay, pattern: Pattern) -> tuple[Link, ...]:
    return links_of(
        done.solved.copies, matched_seams(pattern, done.spread), done.spread
    )


def test_a_piece_too_wide_is_named_with_what_would_do() -> None:
    with pytest.raises(LayError) as e:
        lay(with_cloth("sleeved-top", width=80.0), fold=Fold.LENGTHWISE, budget=FEW)
    said = str(e.value)
    assert "cloths.shell: Sleeve is 43.0 cm wide across the grain" in said
    assert 'it goes with fold = "single"' in said
    with pytest.raises(LayError, match="in a single layer it takes a width of"):
        lay(with_cloth("sleeved-top", width=40.0), budget=FEW)


def test_what_cannot_be_laid_is_said() -> None:
    pattern = made("sleeved-top")
    with pytest.raises(
        LayError, match="the cloths of this order are shell, interlining"
    ):
        lay(pattern, "lining")
    with pytest.raises(LayError, match="width of the shell is missing"):
        lay(with_cloth("sleeved-top", width=None))
    drawn: DrawnPattern = replace(pattern.drawn, failures=("S4: the side gapes.",))
    bad = replace(pattern, drawn=drawn, findings=made_failed(pattern))
    with pytest.raises(LayError, match="the side gapes"):
        lay(bad)


def made_failed(pattern: Pattern) -> tuple[Finding, ...]:
    return (*pattern.findings, Finding("S4", Severity.REFUSE, "The side gapes."))


def test_no_toile_counts_for_the_shell_only() -> None:
    assert any("toile" in a.reason for a in top().buy.parts)
    inner = lay(made("peplum-top"), "interlining", budget=FEW)
    assert not any("toile" in a.reason for a in inner.buy.parts)


def test_the_figures_are_plain_data() -> None:
    told = json.loads(json.dumps(figures(top())))
    assert told["format"] == 1
    assert told["length"] == top().length
    assert len(told["pieces"]) == len(top().placed)
    assert told["buy"]["parts"][0] == ["the lay", top().length]


def test_a_flaw_is_kept_clear() -> None:
    flaw = Flaw(along=22.0, across=95.0, length=4.0, width=6.0)
    pattern = with_cloth("peplum-top", flaws=(flaw,))
    done = lay(pattern, fold=Fold.LENGTHWISE, budget=FEW)
    assert done.spread.flaws
    bare = spread(Cloth(width=140.0, nap=False), Fold.LENGTHWISE)
    assert not bare.flaws
