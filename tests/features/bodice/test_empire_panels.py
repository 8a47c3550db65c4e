"""The empire seam over princess lines (transformations 1.5, 1.8)."""

from functools import cache

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_whole
from clothwright.body import Body
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.bodice.empire import EmpireSeam
from clothwright.features.bodice.empire_panels import Midriff
from clothwright.features.linings.lining import Mode
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import Run
from order.test_combinations import finished
from orders import closed_back, order, sound

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA, *ansur_whole()[100::400])
LINES = ("armhole", "shoulder", "mixed")
PLAIN = EmpireSeam(front=0.0, back=0.0)


def divided(
    lines: str, *more: Feature, lining: Mode | None = None
) -> tuple[Feature, ...]:
    return (*closed_back(lines=lines, lining=lining), *more)


@cache
def not_drawn_in(lines: str, i: int) -> Draft:
    """The same body's panels cut under the bust, and no more."""
    return sound(BODIES[i], divided(lines, PLAIN))


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("lines", ("armhole", "shoulder"))
def test_cut_without_drawing_in_keeps_all_paper(lines: str, body: Body) -> None:
    """A cut keeps area, and so does taping: what lies above the seam and the midriff in
    one piece are together the panels as they were (exact); each edge keeps its length.
    """
    made = sound(body, divided(lines, PLAIN)).sheet
    was = sound(body, divided(lines)).sheet
    for half in "FB":
        parts = [made.piece(f"{half}{c}").area for c in ("C", "S", "M")]
        whole = [was.piece(f"{half}{c}").area for c in ("C", "S")]
        assert sum(parts) == pytest.approx(sum(whole), abs=0.02)
        assert f"{half}MS" not in made.pieces
        waist = [made.length(f"{half}M", e) for e in ("waist", "waist side")]
        assert waist == pytest.approx([was.length(f"{half}{c}", "waist") for c in "CS"])
    for code in ("S4", "S5", "S6", "S8", "S10", "S11", "S21"):
        a, b = was.seam(code), made.seam(code)
        for then, now in ((a.left, b.left), (a.right, b.right)):
            gap = made.chain_length(now) - was.chain_length(then)
            assert abs(gap) < 0.01 * MM


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("midriff", Midriff)
@pytest.mark.parametrize("lines", LINES)
@pytest.mark.parametrize("mode", [None, Mode.TO_EDGE, Mode.BELOW_FACING])
def test_the_panels_are_drawn_in_under_the_bust(
    mode: Mode | None, lines: str, midriff: Midriff, body: Body
) -> None:
    """The seam is shorter by what it is drawn in, 0.6 in front and 0.3 behind (1.8), to
    the mm, since it stays square to what it meets; the side panel keeps its ease over
    the bust; both sides of each seam are of one length; all of it is cut and sewn."""
    seam = EmpireSeam(midriff=midriff)
    made = sound(body, divided(lines, seam, lining=mode))
    plain = not_drawn_in(lines, BODIES.index(body))
    n, sheet = made.numbers, made.sheet
    for half, by in (("front", n.ce_f), ("back", n.ce_b)):
        s = sheet.seam(f"{half} empire")
        a, b = sheet.chain_length(s.left), sheet.chain_length(s.right)
        assert a == pytest.approx(b, abs=0.1 * MM)
        before = plain.sheet.seam(f"{half} empire").left
        if half == "back" or lines != "mixed":
            less = plain.sheet.chain_length(before) - a
            assert less == pytest.approx(by, abs=MM)
    for code, planned in (("S1", n.ep if "ep" in n else 0.0), ("S2", 0.0)):
        if code in {s.code for s in sheet.seams}:
            s = sheet.seam(code)
            eased = sheet.chain_length(s.right) - sheet.chain_length(s.left)
            assert eased == pytest.approx(planned, abs=0.3 * MM)
            assert s.notches[-1].left < sheet.chain_length(s.left) - 1.0
    codes = {s.code for s in sheet.seams}
    assert ("S133" in codes) is (midriff is Midriff.SEAMED)
    if midriff is Midriff.SEAMED:
        s = sheet.seam("S133")
        assert s.left == (Run("BM", "panel"),)
        a, b = sheet.chain_length(s.left), sheet.chain_length(s.right)
        assert a == pytest.approx(b, abs=0.1 * MM)
    assert not finished(made)


@pytest.mark.parametrize("body", BODIES)
def test_the_edge_above_runs_smooth(body: Body) -> None:
    """Drawn in by its most, 1.5, a panel edge has no corner above the seam: nowhere
    does it turn by more than 2° at a joint of its curves."""
    seam = EmpireSeam(front=1.5, back=1.5)
    sheet = draft(order(body, divided("armhole", seam))).sheet
    for code in ("FC", "FS", "BC", "BS"):
        segments = sheet.edge(code, "panel").path.segments
        for s, t in zip(segments, segments[1:], strict=False):
            assert distance(s.end_direction, t.start_direction) < 0.035


@pytest.mark.parametrize("depth", [4.0, 5.0])
def test_a_seam_near_the_bust_notches_above_it(depth: float) -> None:
    """The lower notch of the ease over the bust, 5 below BP, moves up with the seam."""
    made = sound(P92, divided("armhole", EmpireSeam(depth=depth)))
    s = made.sheet.seam("S1")
    end = made.sheet.chain_length(s.left)
    assert end - s.notches[-1].left > 1.5
    assert s.zone is not None
    assert s.zone[1] == s.notches[-1].left


def test_what_it_does_not_go_with() -> None:
    with pytest.raises(OrderError, match=r"make it less deep \(depth of"):
        draft(order(P92, divided("armhole", EmpireSeam(depth=14.0))))
    with pytest.raises(OrderError, match=r"make it deeper \(depth of"):
        draft(order(P92, divided("mixed", EmpireSeam(depth=4.0))))


def test_a_midriff_without_panels_is_said() -> None:
    seam = EmpireSeam(midriff=Midriff.SEAMED)
    assert "E2" in [f.code for f in sound(P92, divided("darts", seam)).findings]
    assert "E2" not in [f.code for f in sound(P92, divided("mixed", seam)).findings]
