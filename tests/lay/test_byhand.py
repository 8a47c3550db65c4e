"""A lay under the hand: moves, and the checker's answer, against plain polygons."""

from dataclasses import replace
from functools import cache
from importlib import resources
from pathlib import Path

import pytest
from shapely import Polygon

from clothwright.lay import Budget, LayError, laid_outline, solve
from clothwright.lay.byhand import Board, Places
from clothwright.lay.kept import read_kept, write_kept
from clothwright.lay.remarks import area, remark
from clothwright.order import Fold, Pattern, draft, pattern, read_order
from clothwright.units import Unit


@cache
def top(nap: bool = False) -> Pattern:
    demo = Path(str(resources.files("clothwright.demo")))
    order = read_order(demo / "peplum-top.toml")
    if nap:
        shell = order.cloths["shell"].model_copy(update={"nap": True})
        order = replace(order, cloths={**order.cloths, "shell": shell})
    return pattern(draft(order))


@cache
def board(fold: Fold = Fold.LENGTHWISE, nap: bool = False) -> tuple[Board, Places]:
    """A board, and the first lay on it."""
    made = Board(top(nap), "shell", fold)
    first = solve(made.shapes, made.spread, gap=made.gap, budget=Budget(layouts=1))
    return made, first.placed


def find(made: Board, code: str) -> int:
    return next(i for i, c in enumerate(made.copies) if c.shape.code == code)


def said(made: Board, placed: Places, i: int) -> list[str]:
    """What is said at a piece, cm."""
    return [
        remark(f, made.copies, made.spread, made.gap, Unit.CM, of=i)
        for f in made.laid(placed).faults
        if i in (f.data.get("piece"), f.data.get("other"))
    ]


def test_the_first_lay_has_nothing_against_it() -> None:
    made, placed = board()
    laid = made.laid(placed)
    assert laid.faults == ()
    far = max(
        x
        for c, p in zip(made.copies, placed, strict=True)
        for x, _ in laid_outline(c.shape, p)
    )
    assert laid.lay.length == pytest.approx(far)


def test_an_overlap_is_told_with_its_area() -> None:
    made, placed = board()
    i, j = find(made, "BS"), find(made, "FS")
    there = made.middle(placed, j)
    moved = made.moved(placed, i, *there)
    a, b = (Polygon(laid_outline(made.copies[k].shape, moved[k])) for k in (i, j))
    shared = a.intersection(b).area
    assert shared > 100
    (told,) = (
        s for s in said(made, moved, i) if s.startswith("overlaps the side front by ")
    )
    assert float(told.split()[-2]) == pytest.approx(shared, abs=0.5)  # finer curves
    assert any(s.startswith("overlaps the side back") for s in said(made, moved, j))


def test_off_the_cloth_and_on_the_selvedge() -> None:
    made, placed = board()
    i = find(made, "FS")
    x, y = made.middle(placed, i)
    ys = [v for _, v in laid_outline(made.copies[i].shape, placed[i])]
    gone = made.moved(placed, i, x + 300, y + made.spread.width + 3 - max(ys))
    assert said(made, gone, i) == ["lies off the cloth by 3.0 cm"]
    edge = made.moved(placed, i, x + 300, y + made.spread.width - 0.5 - max(ys))
    assert said(made, edge, i) == ["lies on the selvedge"]


def test_the_cloth_to_buy_follows_a_move() -> None:
    made, placed = board()
    i = find(made, "FS")
    x, y = made.middle(placed, i)
    before, after = made.laid(placed), made.laid(made.moved(placed, i, x + 150, y))
    assert after.faults == ()
    assert after.lay.buy.cm > before.lay.buy.cm + 10


def test_a_nap_forbids_turning_end_for_end() -> None:
    made, placed = board(nap=True)
    i = find(made, "FS")
    turned = made.turned(placed, i)
    assert "lies the wrong way of the nap" in said(made, turned, i)
    plain, places = board()
    assert not any("nap" in s for s in said(plain, plain.turned(places, i), i))


def test_a_piece_on_the_fold_stays_on_it() -> None:
    made, placed = board()
    i = find(made, "FC")
    x, y = made.middle(placed, i)
    for moved in (made.moved(placed, i, x + 200, y + 20), made.turned(placed, i)):
        on = [v for _, v in laid_outline(made.copies[i].shape, moved[i])]
        assert min(on) == pytest.approx(0.0, abs=0.01)
        assert not any("fold" in s for s in said(made, moved, i))
    with_two, places = board(Fold.TWO)
    i = find(with_two, "FC")
    far = with_two.moved(places, i, 300.0, with_two.spread.width)
    on = [v for _, v in laid_outline(with_two.copies[i].shape, far[i])]
    assert max(on) == pytest.approx(with_two.spread.width, abs=0.01)
    assert said(with_two, far, i) == []


def test_either_hand_in_two_layers_but_not_in_one() -> None:
    made, placed = board()
    i = find(made, "FS")
    assert made.has_hands(i)
    assert made.swapped(placed, i)[i].mirrored is not placed[i].mirrored
    single, places = board(Fold.SINGLE)
    i = find(single, "FS")
    assert not single.has_hands(i)
    assert single.swapped(places, i) == places


def test_a_kept_lay_is_read_again() -> None:
    made, placed = board()
    kept = read_kept(write_kept(made.laid(placed, saving="None.").lay))
    assert (kept.fold, kept.gap, kept.saving) == (Fold.LENGTHWISE, made.gap, "None.")
    again = made.laid(kept.placed)
    assert again.faults == ()
    assert again.lay.length == pytest.approx(made.laid(placed).lay.length, abs=1e-4)


@pytest.mark.parametrize("text", ["", "fold = 3", "piece = [", 'fold = "single"'])
def test_a_kept_lay_that_is_none_is_refused(text: str) -> None:
    with pytest.raises(LayError, match="lay the pieces anew"):
        read_kept(text)


def test_other_pieces_are_refused() -> None:
    made, placed = board()
    with pytest.raises(LayError, match="not the same as when this was laid"):
        made.laid(placed[1:])


def test_an_area_in_her_unit() -> None:
    """1 in² is 6.4516 cm²."""
    assert area(6.4516, Unit.IN) == "1.0 square inches"
    assert area(2.13, Unit.CM) == "2.1 cm²"
    assert area(0.01, Unit.CM) == "less than 0.1 cm²"
