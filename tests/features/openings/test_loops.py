"""Loops, buttons, lacing against the notes' formulas and exact maths (10)."""

import math
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bodies import BRIDA, P92, P116, THEA, YSOLDE, bdims_women
from clothwright.body import Body
from clothwright.curves import Path, Point, distance
from clothwright.features import Feature
from clothwright.features.linings.facing import Facing
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.notions import Article
from clothwright.features.openings.loops import Loops, Rows, Spread
from clothwright.features.openings.loops_rules import EVEN, EXACT
from clothwright.features.openings.loops_rules import u as usable
from clothwright.features.openings.open_back import LowOpenBack
from clothwright.features.openings.under_panel import UnderPanel
from clothwright.features.skirts.peplum import Ends, Peplum
from clothwright.findings import Finding, Severity
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import MarkKind
from clothwright.rules import RuleError
from clothwright.units import Unit
from orders import main_features, order

MM = 0.1


def with_loops(*new: Feature) -> tuple[Feature, ...]:
    """The main garment with these features in place of its own of the same kind."""
    swap = {f.kind: f for f in new}
    return tuple(swap.get(f.kind, f) for f in main_features())


def found(made: Draft, code: str) -> list[Finding]:
    return [f for f in made.findings if f.code == code]


def random_back(seed: int) -> tuple[LowOpenBack, Loops]:
    rng = random.Random(seed)
    return (
        LowOpenBack(
            depth=rng.uniform(11, 19),
            top=rng.uniform(3.5, 6),
            waist=rng.uniform(0.5, 3),
            corner_radius=rng.choice((0.0, 1.5, 2.5)),
            tightened=rng.choice((0.0, 0.4)),
        ),
        Loops(
            spacing=rng.uniform(1.6, 4.5),
            first=rng.uniform(0.5, 2),
            last=rng.uniform(0.5, 2),
            rows=rng.choice(list(Rows)),
            spread=rng.choice(list(Spread)),
        ),
    )


def worn_edge(made: Draft) -> Path:
    """The edge as it is worn: the lap line of the panel, from the rounding down, drawn
    here anew from the notes (11.1)."""
    n = made.numbers
    run = n.slant - n.te
    top = Point(n.e1, n.yW - math.sqrt(run**2 - (n.e1 - n.e2) ** 2))
    whole = Path.line(top, Point(n.e2, n.yW))
    return whole.between(n.rc * math.tan(math.radians(n.corner_turn) / 2), run)


# -- spacing (10.2, 10.3) --------------------------------------------------------------
@given(st.floats(1.5, 60), st.floats(0.8, 5))
def test_even_spacing_is_within_half_a_loop(u: float, sp: float) -> None:
    """|spacing − sp| ≤ sp/(2(n − 1)) (exact); halves are rounded up."""
    count, spacing = EVEN.rules["n_loops"].compute, EVEN.rules["spacing"].compute
    if u < sp / 2 - 1e-6:
        with pytest.raises(ValueError, match=r"set them \(sp\) closer together"):
            count(u, sp)
        return
    n = count(u, sp)
    assert n == 1 + math.floor(u / sp + 0.5 + 1e-9)
    assert (n - 1) * spacing(u, n) == pytest.approx(u, abs=1e-9)
    assert abs(spacing(u, n) - sp) <= sp / (2 * (n - 1)) + 1e-6


@given(st.floats(1.5, 60), st.floats(0.8, 5))
def test_exact_spacing_leaves_less_than_a_space(u: float, sp: float) -> None:
    count = EXACT.rules["n_loops"].compute
    if u < sp - 1e-6:
        with pytest.raises(ValueError, match=r"set them \(sp\) closer together"):
            count(u, sp)
        return
    n = count(u, sp)
    assert -1e-6 <= u - (n - 1) * sp < sp


@pytest.mark.parametrize("half", [2.5 * 3.5, 1.0 * 7.5])
def test_halves_go_up(half: float) -> None:
    assert EVEN.rules["n_loops"].compute(half, half / 3.5) == 5.0


@pytest.mark.parametrize("seed", range(60))
def test_loops_lie_on_the_edge_where_the_notes_put_them(seed: int) -> None:
    """The first g1 below the rounding, then every spacing, measured on the piece; the
    rest and g2 below the last. The facing's marks are the same from the waist."""
    body = random.Random(seed).choice((P92, BRIDA, THEA, *bdims_women()[::9]))
    try:
        made = draft(order(body, with_loops(*random_back(seed))))
    except OrderError as e:
        assert "make " in str(e), str(e)
        return
    n, sheet = made.numbers, made.sheet
    bc = sheet.piece("BC")
    edge = bc.edge("slant").path.reversed()  # from the rounding down
    marks = [m.at for m in bc.marks if m.kind is MarkKind.LOOP]
    assert len(marks) == int(n.n_loops)
    places = [edge.length_to_point(p) for p in marks]
    assert places[0] == pytest.approx(n.g1, abs=MM / 2)
    for a, b in zip(places, places[1:], strict=False):
        assert b - a == pytest.approx(n.spacing, abs=MM / 10)
    assert edge.length - places[-1] == pytest.approx(n.rest + n.g2, abs=MM / 2)
    facing = sheet.piece("BF")
    turned = facing.edge("slant").path  # from the waist up
    ours = [m.at for m in facing.marks if m.kind is MarkKind.LOOP]
    for p, s in zip(ours, places, strict=True):
        assert turned.length_to_point(p) == pytest.approx(edge.length - s, abs=MM / 2)


@pytest.mark.parametrize(
    ("last", "spread", "spacing", "severity"),
    [
        (1.0, Spread.EVEN, 2.5, None),
        (2.5, Spread.EVEN, 2.5, Severity.NOTE),
        (1.0, Spread.EXACT, 3.0, Severity.WARN),  # u 26.196: 2.196 left
        (1.0, Spread.EXACT, 2.5, Severity.NOTE),  # 1.196 and g2
        (0.5, Spread.EXACT, 2.6, None),  # u 26.696: 0.696 and g2
    ],
)
def test_what_is_left_at_the_waist_wants_a_hook(
    last: float, spread: Spread, spacing: float, severity: Severity | None
) -> None:
    """Rest + g2 over 2: a hook (note); the rest alone over 2: doubted (10.3, 25)."""
    loops = Loops(last=last, spread=spread, spacing=spacing)
    made = draft(order(P92, with_loops(LowOpenBack(corner_radius=0.0), loops)))
    assert [f.severity for f in found(made, "L1")] == ([severity] if severity else [])
    said = " ".join(pattern(made, words=False).drawn.notes)
    assert ("below the last loop" in said) == (severity is not None)


# -- one loop (10.5) -------------------------------------------------------------------
@settings(max_examples=15)
@given(st.floats(0.8, 2.5), st.floats(0.2, 1.0), st.floats(0.0, 0.05))
def test_a_loop_goes_round_its_ball(dia: float, e: float, snug: float) -> None:
    """v + e is the ball's girth (exact); the loop drawn out straight is an isosceles
    triangle of sides v/2 on the base e: its height is the reach."""
    loops = Loops(button=dia, ends_apart=e, tighter=snug, spacing=4.0)
    made = draft(order(P92, with_loops(loops)))
    n = made.numbers
    assert n.v_cord == pytest.approx((math.pi * dia - e) * (1 - snug), abs=1e-9)
    assert n.cord_cut == pytest.approx(n.v_cord + 2 * 1.2, abs=1e-9)
    apex = Point(n.reach, 0.0)
    sides = [distance(apex, Point(0.0, y)) for y in (-e / 2, e / 2)]
    assert sum(sides) == pytest.approx(n.v_cord, abs=1e-9)
    assert n.button_in == pytest.approx(n.reach - dia / 2, abs=1e-9)
    assert n.cord_all == pytest.approx(n.loops_all * n.cord_cut * 1.1, abs=1e-9)


def test_a_flat_button() -> None:
    """Its girth is 2·(diameter + thickness)."""
    n = draft(order(P92, with_loops(Loops(button=1.5, thickness=0.3)))).numbers
    assert n.C_button == pytest.approx(3.6)
    assert n.v_cord == pytest.approx(3.0)


def test_cord_and_buttons_of_the_worked_example() -> None:
    """Row 34: 22 loops, 51.41 in of cord; 23 buttons."""
    made = draft(order(BRIDA, with_loops(LowOpenBack(corner_radius=0)), unit=Unit.IN))
    assert made.numbers.cord_all == pytest.approx(51.41 * 2.54, abs=0.005 * 2.54)
    said = " ".join(pattern(made, words=False).drawn.notes)
    assert "Bias cord: 22 of 2⅛ in, for the loops; in all 51⁷⁄₁₆ in" in said
    assert "23 ball buttons of ⁷⁄₁₆ in" in said


def test_a_button_too_small_for_its_loop_is_refused() -> None:
    for dia, e in ((0.5, 0.8), (0.6, 0.9)):  # v ≤ e, or a loop that ends on its middle
        with pytest.raises(OrderError, match='take a larger button .button of "loops"'):
            draft(order(P92, with_loops(Loops(button=dia, ends_apart=e))))


@pytest.mark.parametrize("seed", range(30))
def test_a_button_sits_square_off_its_loop(seed: int) -> None:
    """S16: along the lap line each button stands at its loop (0), reach − dia/2 from
    it, towards the centre back (10.5)."""
    try:
        made = draft(order(P116, with_loops(*random_back(seed))))
    except OrderError:
        return
    n = made.numbers
    up = made.sheet.piece("UP")
    buttons = [m.at for m in up.marks if m.kind is MarkKind.BUTTON]
    if n.buttons == 0:
        assert not buttons
        return
    lap = worn_edge(made)
    hidden = int(n.n_loops) - len(buttons)
    assert hidden == 0 or found(made, "L4")
    for i, p in enumerate(buttons):
        foot = lap.at_length(n.g1 + i * n.spacing)
        assert distance(foot, p) == pytest.approx(n.button_in, abs=MM / 10)
        assert lap.nearest(p)[1] == pytest.approx(n.button_in, abs=MM / 10)
        assert p.x < foot.x


# -- rows and lacing (10.6, 10.8) ------------------------------------------------------
@pytest.mark.parametrize("waist", [0.0, 0.8, 1.2, 1.6, 2.0, 2.5])
@pytest.mark.parametrize("last", [0.5, 1.0, 3.0])
@pytest.mark.parametrize("button", [0.9, 1.1, 1.6])
def test_two_rows_keep_clear_of_each_other(
    waist: float, last: float, button: float
) -> None:
    """10.8: the gap at the waist loop, not at the waist, holds two reaches and 0.5."""
    back = LowOpenBack(waist=waist, corner_radius=0.0)
    made = draft(order(P92, with_loops(back, Loops(last=last, button=button))))
    n = made.numbers
    edge = worn_edge(made)
    gap = 2 * edge.at_length(edge.length - last).x
    assert n.gap_last == pytest.approx(gap, abs=1e-6)
    assert bool(found(made, "L2")) == (gap < 2 * n.reach + 0.5)
    single = Loops(last=last, button=button, rows=Rows.RIGHT)
    assert not found(draft(order(P92, with_loops(back, single))), "L2")


def test_buttons_do_not_touch_in_their_row() -> None:
    """10.3: touching is the button and 0.2; nearer is doubted, overlapping refused."""
    for spacing, severity in (
        (2.5, None),
        (1.6, Severity.WARN),
        (1.2, Severity.REFUSE),
    ):
        made = draft(order(P92, with_loops(Loops(spacing=spacing, button=1.5))))
        got = [f.severity for f in found(made, "L3")]
        assert got == ([severity] if severity else []), spacing
    assert '(spacing of "loops") wider' in str(found(made, "L3")[0])


def test_a_row_without_room_names_its_numbers() -> None:
    """2 of edge less 1 above and 1.5 below leaves nothing."""
    with pytest.raises(RuleError, match=r"\(g1, g2\)"):
        usable(2.0, 1.0, 1.5)


@pytest.mark.parametrize("body", [P92, BRIDA, YSOLDE])
@pytest.mark.parametrize("seed", range(12))
def test_lacing_is_the_length_of_the_laced_cord(seed: int, body: Body) -> None:
    """10.6 against the cord itself: across at the top, then from edge to edge down
    both rows, and 35 at each end. The two edges mirror each other, so that a cross
    spans the mean gap and the drop (within 1 mm a cross: the notes' spacing runs
    along the edge)."""
    back, loops = random_back(seed)
    lacing = loops.model_copy(update={"rows": Rows.LACING})
    try:
        made = draft(order(body, with_loops(back, lacing)))
    except OrderError:
        return
    n = made.numbers
    edge = worn_edge(made)
    right = [edge.at_length(n.g1 + i * n.spacing) for i in range(int(n.n_loops))]
    left = [Point(-p.x, p.y) for p in right]
    cord = distance(right[0], left[0]) + 70.0
    for i in range(len(right) - 1):
        cord += distance(right[i], left[i + 1]) + distance(left[i], right[i + 1])
    assert n.lacing == pytest.approx(cord, abs=MM * len(right))
    gaps = [2 * p.x for p in right]
    exact = gaps[0] + 70.0
    for a, b in zip(gaps, gaps[1:], strict=False):
        exact += 2 * math.sqrt(((a + b) / 2) ** 2 + n.spacing**2)
    assert n.lacing == pytest.approx(exact, abs=1e-9)
    assert n.buttons == 0


def test_lacing_reads_well_and_buys_no_buttons() -> None:
    loops = Loops(rows=Rows.LACING)
    assert "button" not in loops.said()
    assert "{spacing}" in loops.said()
    made = draft(order(P92, with_loops(loops)))
    said = " ".join(pattern(made, words=False).drawn.notes)
    assert "button" not in said.replace("buttons are a hazard", "")
    assert "to lace with and tie" in said
    assert f"{made.numbers.lacing:.1f} cm" in said
    laced = tuple(f for f in with_loops(loops) if not isinstance(f, UnderPanel))
    assert not draft(order(P92, laced)).failed


def test_buttons_need_a_panel_to_sit_on() -> None:
    bare = tuple(f for f in with_loops() if not isinstance(f, UnderPanel))
    with pytest.raises(OrderError, match="buttons sit on a panel"):
        draft(order(P92, bare))


def test_one_row_says_where_its_buttons_go() -> None:
    made = draft(order(P92, with_loops(Loops(rows=Rows.RIGHT))))
    n = made.numbers
    assert n.buttons == n.n_loops + 1
    assert any("right half" in t for t in pattern(made, words=False).drawn.notes)


def test_what_is_bought_stands_on_the_first_page() -> None:
    made = draft(order(P92, with_loops()))
    n, said = made.numbers, " ".join(pattern(made, words=False).drawn.notes)
    assert n.tape == pytest.approx(0.99 * n.slant)  # 9.6
    for text in (
        f"two of {n.tape:.1f} cm",
        f"in all {n.cord_all:.1f} cm",
        "23 ball buttons of 1.1 cm",
        "hook and eye",
    ):
        assert text in said, text


def test_loops_without_a_facing_to_mark() -> None:
    features = [f for f in with_loops(Peplum(ends=Ends.AT_EDGE)) if f.kind != "facing"]
    made = draft(order(P92, (*features, Lining(mode=Mode.TO_EDGE))))
    assert not made.failed, made.failures()
    assert "BF" not in made.sheet.pieces
    assert Facing().kind not in {f.kind for f in made.order.features}


def test_a_back_laced_through_eyelets() -> None:
    """Spaced 2 to 2.5 over a gap of 5 to 10; the panel behind is as wide as the gap and
    4 to 5 on either side (transformations 7)."""
    features = with_loops(
        Loops(rows=Rows.EYELETS, spacing=2.25),
        LowOpenBack(top=2.5, waist=2.5, corner_radius=0.0),
        UnderPanel(overlap=4.5),
    )
    d = draft(order(YSOLDE, features))
    assert not d.failed, d.failures()
    n = d.numbers
    assert 2.0 <= n.spacing <= 2.5
    assert n.gap_first == pytest.approx(5.0)
    assert 2 * n.up_waist == pytest.approx(5.0 + 2 * 4.5)
    m = making_order(d)
    sheet = cutting_sheet(m)
    (eyelets,) = (k for k in sheet.notions if k.article is Article.EYELET)
    assert eyelets.count == n.loops_all
    assert not any(k.article is Article.BIAS for k in sheet.strips)
    titles = [op.title for op in m.operations]
    assert any(t.startswith("Set ") and "eyelets" in t for t in titles)
    assert not any("loops and sew" in t for t in titles)
