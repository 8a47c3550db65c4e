"""Press studs, and hooks and eyes, in a row on a button stand (transformations §7)."""

from itertools import pairwise

import pytest

from bodies import P92, THEA, ansur_whole
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.bodice.torso import Torso
from clothwright.features.collars.notched_collar import NotchedCollar
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.button_stand import ButtonStand, Rows, Where
from clothwright.features.openings.fastener_row import fasteners
from clothwright.features.openings.fasteners import By, Fasteners
from clothwright.features.openings.stand_edging import Edging
from clothwright.features.operations import Task
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import MarkKind
from orders import cut_faults, order, sleeved_features, swapped

MM = 0.1
WOMEN = (P92, THEA, *ansur_whole()[::300])


def closed(by: By, stand: ButtonStand, *more: Feature) -> tuple[Feature, ...]:
    """A sleeved top with a peplum over a stand with such a row."""
    top = swapped(sleeved_features(), stand, place_of="concealed zip")
    return (*top, Fasteners(by=by), *more)


def blouse(by: By) -> tuple[Feature, ...]:
    """The same in one through the waist."""
    top = closed(by, ButtonStand())
    in_one = swapped(top, Torso(length=60.0), place_of="waist seam")
    return tuple(f for f in in_one if f.kind != "peplum")


def bought(d: Draft) -> dict[Article, Notion]:
    return {
        k.article: k for f in d.order.features for k in f.notions(d.numbers, d.sheet)
    }


def gaps(d: Draft, code: str) -> list[float]:
    levels = sorted(
        k.at.y for k in d.sheet.piece(code).marks if k.kind is MarkKind.BUTTON
    )
    return [b - a for a, b in pairwise(levels)]


@pytest.mark.parametrize("body", WOMEN, ids=lambda b: b.client)
def test_studs_five_to_seven_apart_on_the_centre_line(body: Body) -> None:
    """§7. They are marked once, on the centre line: the paper is cut for both halves,
    and centre is laid on centre. There are no buttonholes."""
    for where, code in ((Where.FRONT, "FC"), (Where.BACK, "BC")):
        d = draft(order(body, closed(By.STUDS, ButtonStand(where=where))))
        assert not d.failed, d.failures()
        assert not cut_faults(d)
        p = d.sheet.piece(code)
        assert not [k for k in p.lines if "buttonhole" in k.name]
        (line,) = [k.path for k in p.lines if k.name.startswith("centre ")]
        studs = [k for k in p.marks if k.name.startswith("press stud ")]
        assert len(studs) >= 4
        assert all(line.nearest(k.at)[1] < 0.1 * MM for k in studs)
        # as wanted, or what comes out even between neck, bust and waist
        assert all(6.0 * 0.6 < g <= 6.0 * 1.25 for g in gaps(d, code))


@pytest.mark.parametrize("body", WOMEN, ids=lambda b: b.client)
def test_hooks_as_the_tape_has_them(body: Body) -> None:
    """§7: 2 to 2.5 from hook to hook, and the same over the seam of the waist."""
    d = draft(order(body, closed(By.HOOKS, ButtonStand())))
    assert not d.failed, d.failures()
    assert all(g == pytest.approx(2.5) for g in gaps(d, "FC"))
    upper = d.sheet.piece("FC")
    (line,) = [k.path for k in upper.lines if k.name == "centre front"]
    last = max(k.at.y for k in upper.marks if k.name.startswith("hook "))
    foot = max(line.start.y, line.end.y)
    below = [k.at.y for k in d.sheet.piece("PF").marks if k.name.startswith("hook ")]
    (line,) = [k.path for k in d.sheet.piece("PF").lines if k.name == "centre front"]
    top = min(line.start.y, line.end.y)
    assert foot - last + (min(below) - top) == pytest.approx(2.5)
    hem = max(line.start.y, line.end.y)
    assert 10.0 <= hem - max(below) < 12.5  # b hem, as buttons
    count = len(fasteners(d.sheet))
    tape = bought(d)[Article.HOOK_TAPE].length
    assert tape == pytest.approx((count - 1) * 2.5 + 2.0)


def test_bought_and_sewn() -> None:
    d = draft(order(THEA, closed(By.STUDS, ButtonStand(), ShirtCollar())))
    count = len(fasteners(d.sheet)) + 1  # one on the collar's stand
    assert bought(d)[Article.STUD].count == count + 1
    assert Article.FLAT_BUTTON not in bought(d)
    ops = making_order(d).operations
    assert f"Sew {count} press studs on" in {o.title for o in ops}
    assert not {o.task for o in ops} & {Task.BUTTON, Task.BUTTONHOLE}
    assert "Face the front edges" in {o.title for o in ops}
    d = draft(order(THEA, closed(By.HOOKS, ButtonStand(), ShirtCollar())))
    titles = {o.title for o in making_order(d).operations}
    assert {
        "Sew the hook-and-eye tape on",
        "Sew a hook and eye to the collar's stand",
    } <= titles
    assert bought(d)[Article.HOOK].count == 1


@pytest.mark.parametrize("by", By)
@pytest.mark.parametrize("edge", Edging)
def test_on_every_stand(by: By, edge: Edging) -> None:
    for features in (
        closed(by, ButtonStand(edge=edge)),
        closed(by, ButtonStand(edge=edge, where=Where.BACK)),
        blouse(by),
    ):
        d = draft(order(P92, features))
        assert not d.failed, d.failures()
        assert not cut_faults(d)
        assert d.numbers.b_stand == 2.0
        assert len(fasteners(d.sheet)) >= 6


def test_below_a_lapel() -> None:
    """The first lies where the lapel turns over."""
    d = draft(order(P92, closed(By.STUDS, ButtonStand(), NotchedCollar())))
    assert not d.failed, d.failures()
    n = d.numbers
    first = min(y for _, y in fasteners(d.sheet))
    (line,) = [
        k.path for k in d.sheet.piece("FC").lines if k.name.startswith("centre ")
    ]
    assert first - min(line.start.y, line.end.y) > n.b_down


def test_what_is_doubted_and_refused() -> None:
    wide = (
        *swapped(sleeved_features(), ButtonStand(), place_of="concealed zip"),
        Fasteners(apart=10.0),
    )
    assert "FS1" in {f.code for f in draft(order(P92, wide)).findings}
    with pytest.raises(OrderError, match="double-breasted stand shows its buttons"):
        draft(order(P92, closed(By.STUDS, ButtonStand(rows=Rows.DOUBLE))))
    with pytest.raises(OrderError, match='lies on a "button stand"'):
        draft(order(P92, (*sleeved_features(), Fasteners())))
    unused = draft(order(P92, closed(By.STUDS, ButtonStand(button=2.0))))
    assert "Q5" in {f.code for f in unused.findings}
