"""What a skirt ends in: facing, shaped band, lining, flounce, godets (transformations 6
to 8, blocks G12 and G13)."""

import math

import pytest
from shapely.geometry import Polygon

from bodies import P92, THEA, ansur_whole
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.curves import degrees_between
from clothwright.features.skirts.about import GORE
from clothwright.features.skirts.flounce import FLOUNCES
from clothwright.features.skirts.gored_skirt import GoredSkirt
from clothwright.features.skirts.pleated_skirt import PleatedSkirt
from clothwright.features.skirts.pleated_skirt_rules import Panels
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.waist_facing import FACINGS, WaistFacing
from clothwright.order import draft, pattern
from clothwright.truing import walk
from features.skirts.test_skirts import KINDS, MM
from orders import order


@pytest.mark.parametrize("kind", ["faced", "faced at the side", "faced gores"])
def test_a_facing_is_the_waist_with_its_darts_closed(kind: str) -> None:
    """Its waist is as long as the skirt, less 0.5 beside a zip; smooth where the darts
    were; everywhere as deep as ordered (transformations §6)."""
    d = draft(order(P92, KINDS[kind]))
    for code, facing in FACINGS.items():
        if not {code, facing} <= set(d.sheet.pieces):
            continue
        waist = sum(
            e.length for e in d.sheet.piece(code).edges if e.name.startswith("waist")
        )
        piece = d.sheet.piece(facing)
        edge = piece.edge("waist").path
        beside = 0.5 if piece.has("cb") and not piece.fold else 0.0
        assert edge.length == pytest.approx(waist - beside, abs=0.1 * MM)
        for a, b in zip(edge.segments, edge.segments[1:], strict=False):
            assert degrees_between(a.end_direction, b.start_direction) < 0.5
        low = piece.edge("free").path
        for k in range(1, 10):
            gap = edge.nearest(low.at_length(low.length * k / 10))[1]
            assert gap == pytest.approx(d.numbers.wf, abs=0.5 * MM)


def test_a_shaped_band_and_the_skirt_below_it_meet() -> None:
    """transformations §8: on the closed-dart block; its upper edge is the waist, its
    foot as long as the skirt below with its darts closed, everywhere as deep."""
    d = draft(order(THEA, KINDS["contour band"]))
    n, sheet = d.numbers, d.sheet
    top = sum(sheet.length(c, "waist") for c in ("WCF", "WCB"))
    assert top == pytest.approx((66 + 2) / 2, abs=0.1 * MM)
    for code, band in (("SF", "WCF"), ("SB", "WCB")):
        foot = sheet.length(band, "foot of band")
        rest = [e for e in sheet.piece(code).edges if e.name.startswith("waist")]
        assert sum(e.length for e in rest) == pytest.approx(foot, abs=0.2 * MM)
        assert foot > sheet.length(band, "waist") + 1.0
        side = sheet.length(band, "side") + sheet.length(code, "side")
        assert side == pytest.approx(
            sheet.length("WCF", "side") + sheet.length("SF", "side"), abs=0.2 * MM
        )
    (cb,) = (s for s in sheet.seams if s.code == "S35")
    assert [r.piece for r in cb.left] == ["WCB", "SB"]
    assert cb.notches[0].left == pytest.approx(n.z_S)


def test_a_lining_is_the_shell_shorter_and_cut_for_the_vent() -> None:
    """2.5 shorter; the left back's edges mirror the right's (transformations §6)."""
    d = draft(order(THEA, KINDS["lined"]))
    sheet = d.sheet
    for lining, shell in (("L.SF", FRONT), ("L.SB", BACK)):
        less = sheet.length(shell, "side") - sheet.length(lining, "side")
        assert less == pytest.approx(2.5, abs=0.1 * MM)
    right, left = sheet.piece("L.SB"), sheet.piece("L.SBL")
    for name in ("vent", "vent top"):
        a, b = right.edge(name).path, left.edge(name).path
        assert a.start == pytest.approx((-b.start.x, b.start.y), abs=0.1 * MM)
        assert a.end == pytest.approx((-b.end.x, b.end.y), abs=0.1 * MM)
    cuts = {p.code: p.cuts[0] for p in pattern(d, words=False).drawn.pieces}
    assert cuts["L.SB"].how == "1, right side down"
    assert cuts["L.SBL"].how == "1, right side up"
    lined = {s.code for s in sheet.seams if s.code.startswith("L.")}
    assert {"L.S34", "L.S34 left", "L.S35", "L.SB.vent", "L.SBL.vent"} <= lined


@pytest.mark.parametrize("kind", ["flounce", "full flounce", "flounced gores"])
def test_a_flounce_is_as_long_as_its_hem_and_as_full_as_ordered(kind: str) -> None:
    """G13: hem to inner edge is 1 + D/r, which is the fullness."""
    d = draft(order(THEA, KINDS[kind]))
    n, sheet = d.numbers, d.sheet
    for code in (FRONT, BACK, GORE):
        if code not in sheet.pieces:
            continue
        name = FLOUNCES[code]
        top, hem = sheet.length(name, "top"), sheet.length(name, "hem")
        assert top == pytest.approx(sheet.length(code, "hem"), abs=0.1 * MM)
        assert hem / top == pytest.approx(n.q_flounce, abs=1e-4)
        assert hem / top == pytest.approx(1 + n.D_flounce / n.r_flounce, abs=1e-4)


@pytest.mark.parametrize("kind", ["godets", "godets between gores"])
def test_a_godet_fits_its_slit_and_adds_its_arc(kind: str) -> None:
    """G12, its slits equal to its edges."""
    d = draft(order(THEA, KINDS[kind]))
    n, godet = d.numbers, d.sheet.piece("GO")
    slits = [s for s in d.sheet.seams if s.code.startswith("S53")]
    assert len(slits) == 2
    for seam in slits:
        w = walk(d.sheet, seam)
        assert w.left == pytest.approx(n.d_godet, abs=0.1 * MM)
        assert w.right == pytest.approx(n.d_godet, abs=0.1 * MM)
    assert godet.edge("hem").length == pytest.approx(n.godet_hem, abs=0.1 * MM)
    assert n.godet_hem == pytest.approx(math.radians(n.b_godet) * 25.0)


def test_a_waist_that_bends_too_sharply_for_its_facing_is_told() -> None:
    """A waist of 60 on hips of 94, in two panels: the facing's lower edge, 6 below,
    would cross itself where the waist is hollow."""
    slim = ansur_whole()[936]
    sharp = PleatedSkirt(hip_ease=13.45, waist_ease=5.38, panels=Panels.TWO)
    for skirt, depth, tells in ((sharp, None, True), (GoredSkirt(), 4.0, False)):
        made = draft(order(slim, (skirt, SkirtZip(), WaistFacing(depth=depth))))
        facing = Polygon(made.sheet.piece("WFG").outline.flatten(0.01))
        assert facing.is_valid is not tells
        assert any(f.code == "F8" for f in made.findings) is tells
