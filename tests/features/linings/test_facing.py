"""Facings: rolled by the notes' figures, inside the shell, and found out when wrong.

Figures of first garment 14, 21 and check values of 24 (P92; trial drafts, 0.05 cm,
curves 0.1 cm); shapely judges what lies inside the shell.
"""

from dataclasses import replace
from functools import cache

import pytest
from shapely.geometry import LineString, Polygon
from shapely.ops import unary_union

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, bdims_women
from clothwright.body import Body, RuleSet
from clothwright.curves import Path, inset, polyline, shift
from clothwright.features import Feature
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.garment import seams_of
from clothwright.features.linings import facing_edges, roll
from clothwright.features.linings.facing import Facing
from clothwright.features.linings.facing_checks import facing_findings
from clothwright.features.linings.sewn_halves import (
    SewnHalf,
    back_under,
    sewn_back,
    sewn_front,
)
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.openings.open_back import LowOpenBack
from clothwright.findings import Severity
from clothwright.finishing.label import GLUE
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import Drafting, Edge, Mark, Sheet
from clothwright.truing import walk
from clothwright.units import Unit
from order.test_random_bodies import demo_features
from orders import closed_back, closed_features, main_features, order, swapped
from women import woman
from wrong import longer, severity_of, unnoticed

MM = 0.1
WOMEN = (P80, P92, P116, BRIDA, YSOLDE, THEA, *bdims_women()[::4])
FACED = ("S8", "S9", "S10", "S11")


@cache
def made(sw: float = 4.0) -> Draft:
    return draft(order(P92, swapped(main_features(), Facing(strip=sw))))


GARMENTS: dict[str, tuple[Feature, ...]] = {
    "open": main_features(),
    "open, rounded": main_features(pointed=False),
    "open, side dart": swapped(
        main_features(), SideDart(), place_of="front armhole princess"
    ),
    "closed": closed_features(),
    "closed, V": closed_features(FrontShape.V, BackShape.V),
    "closed, darts": closed_features(FrontShape.ROUND, BackShape.ROUND, "darts"),
    "dart to the panel": closed_back(BackShoulder.TO_PANEL),
    "shoulder lines": closed_features(FrontShape.V, BackShape.SCOOP, "shoulder"),
}


def _polygon(path: Path) -> Polygon:
    return Polygon(path.flatten(0.002))


def _halves(sheet: Sheet) -> tuple[tuple[SewnHalf, str], ...]:
    return (sewn_front(sheet), "FF"), (back_under(sheet, sheet.piece("BF")), "BF")


# -- the notes' figures --------------------------------------------------------------
def test_what_the_roll_adds() -> None:
    """14.5: +0.32 front neck, +0.19 U."""
    sheet = made().sheet
    for path, start, end, more in (
        (sewn_front(sheet).neck, 0.3, 0.0, 0.32),
        (sewn_back(sheet).neck, 0.3, 0.3, 0.19),
    ):
        assert inset(path, start, end).length - path.length == pytest.approx(
            more, abs=0.02
        )


def test_lengths_of_the_main_example() -> None:
    """21: S12 5.09, S13 5.00; S18 4.0 from E2, of which the roll is 0.3."""
    sheet, n = made().sheet, made().numbers
    for code in ("FF", "BF"):
        assert sheet.length(code, "shoulder") == pytest.approx(5.09, abs=0.5 * MM)
        assert sheet.length(code, "side") == pytest.approx(5.0, abs=0.1 * MM)
    assert sheet.length("BF", "foot") + n.rho == pytest.approx(4.0, abs=0.1 * MM)


@pytest.mark.parametrize("name", GARMENTS)
@pytest.mark.parametrize("unit", [Unit.CM, Unit.IN])
def test_facings_of_many_women(name: str, unit: Unit) -> None:
    """14.5: facing − shell −0.15 to +0.05 on every edge (of a zipped back less what
    lies beside the zip, 16.4: 0.5, aslant 0.5 to 0.75); 14.8: nothing else is said."""
    for body in WOMEN if unit is Unit.CM else WOMEN[:12]:
        d = draft(order(body, GARMENTS[name], unit=unit))
        for w in d.report.walks:
            if w.seam.code in FACED:
                zipped = w.seam.code == "S9" and not name.startswith("open")
                least, most = (-0.9, -0.45) if zipped else (-0.15, 0.05)
                assert least - 1e-6 <= w.ease <= most + 1e-6, (body.client, w.seam.code)
                assert w.holds
        said = [f for f in d.findings if f.code.startswith("F")]
        assert {f.code for f in said} <= {"F5"}, (body.client, said)


@pytest.mark.parametrize("name", GARMENTS)
def test_facings_lie_inside_the_shell(name: str) -> None:
    """14.8; 0.05 cm² is a strip of 0.1 mm along a whole edge."""
    for body in (P92, BRIDA, YSOLDE, THEA, *bdims_women()[::30]):
        sheet = draft(order(body, GARMENTS[name])).sheet
        for half, code in _halves(sheet):
            shell = unary_union([_polygon(p.outline) for p in half.laid()]).buffer(1e-3)
            facing = _polygon(sheet.piece(code).outline)
            assert facing.is_valid
            assert facing.difference(shell).area < 0.05, (body.client, code)


def test_a_deep_neck_keeps_its_facing_off_the_bust() -> None:
    """14.2: the free edge crosses the panel seam 2.5 above BP or higher."""
    for body in WOMEN[::5]:
        d = draft(order(body, GARMENTS["closed, V"]))
        half = sewn_front(d.sheet)
        assert half.panel is not None
        [(s, _)] = half.panel.meets(d.sheet.edge("FF", "free").path)
        assert d.numbers.y_BP - half.panel.at_length(s).y >= 2.5 - 0.1 * MM


# -- the strip of the open back ------------------------------------------------------
def test_the_strip_or_the_whole_back() -> None:
    """14.3: a strip; within 1.0 of the panel seam the whole back, S18 then its whole
    waist less the roll."""
    strip = made(sw=4.0)
    whole = made(sw=4.2)  # BC is 5.06 wide at the waist
    assert not strip.sheet.piece("BF").has("panel")
    assert whole.sheet.piece("BF").has("panel")
    assert any(f.code == "F5" for f in whole.findings)
    assert whole.sheet.length("BF", "foot") + 0.3 == pytest.approx(
        whole.sheet.length("BC", "waist"), abs=0.1 * MM
    )
    assert not strip.failed
    assert not whole.failed


@pytest.mark.parametrize("radius", [0.1, 0.3, 0.5, 1.0, 1.5, 2.0, 4.0])
def test_a_rounded_corner(radius: float) -> None:
    """No point is drawn twice; under 1 cm (truing 5) it is doubted, from 1 cm not."""
    for body in (P92, BRIDA, THEA):
        features = swapped(main_features(), LowOpenBack(corner_radius=radius))
        said = draft(order(body, features)).findings
        assert not [f for f in said if f.code == "outline"]
        shape = [f for f in said if f.code in ("shape", "F6") and "corner" in str(f)]
        bends = [f for f in said if "bends outwards" in f.sentence]
        assert bool(shape) == (radius < 1.0)
        assert radius < 1.0 or not bends


@pytest.mark.parametrize("rho", [0.0, 0.1, 0.6])
def test_every_roll_that_is_allowed(rho: float) -> None:
    for features in (GARMENTS["open"], GARMENTS["closed"], GARMENTS["shoulder lines"]):
        for body in (P92, BRIDA, THEA):
            d = draft(order(body, swapped(features, Facing(roll=rho))))
            assert not d.failed, d.failures()


# -- loops, interlining, tape --------------------------------------------------------
def test_loops_are_marked_on_the_facing_too() -> None:
    """10.4, S17: the same marks, a roll inside the others."""
    sheet = made().sheet
    shell = {m.name: m.at for m in sheet.piece("BC").marks}
    facing = {m.name: m.at for m in sheet.piece("BF").marks}
    loops = [name for name in shell if name.startswith("loop")]
    assert len(loops) == int(made().numbers.n_loops)
    slant = sheet.edge("BF", "slant").path
    for name in loops:
        p, q = shell[name], facing[name]
        assert ((p.x - q.x) ** 2 + (p.y - q.y) ** 2) ** 0.5 == pytest.approx(
            0.3, abs=0.5 * MM
        )
        assert slant.nearest(q)[1] < 1e-6


def test_interlining_and_tape_are_told() -> None:
    """15: FF, BF and UP whole, net + 0.3 (1/8 in); a strip of 2.5 under the loops;
    slanted edge and waist taped."""
    for unit, width in ((Unit.CM, "0.3 cm"), (Unit.IN, "⅛ in")):
        drawn = pattern(draft(order(P92, main_features(), unit=unit))).drawn
        assert any(f"is cut {width} outside" in note for note in drawn.notes)
        for piece in drawn.pieces:
            inter = [c for c in piece.cuts if c.cloth == "interlining"]
            assert bool(inter) == (piece.code in ("FF", "BF", "UP"))
            label = " ".join(t.text for t in piece.texts).replace(GLUE, " ")
            assert ("interlining" in label) == bool(inter)
            if piece.code in ("FF", "BF"):
                assert f"interlining only {width}" in label
            taped = {k.note for k in piece.lines if k.note == "stay tape"}
            assert bool(taped) == (piece.code in ("FC", "FS", "BC", "BS"))
    assert any("2.5 cm wide" in note for note in pattern(made()).drawn.notes)


# -- found out when wrong ------------------------------------------------------------
@pytest.mark.parametrize("body", [P92, BRIDA, THEA])
def test_an_edge_of_the_wrong_length_is_noticed(body: Body) -> None:
    facing = (*FACED, "S12", "S13", "S18")
    d = draft(order(body, main_features()))
    assert not unnoticed(d, lambda code: code in facing)


def _asked(d: Draft, sheet: Sheet) -> set[str]:
    return {
        f.code
        for f in facing_findings(d.numbers, sheet)
        if f.severity is Severity.REFUSE
    }


def _shifted(sheet: Sheet, code: str, edge: str, by: float) -> Sheet:
    """The sheet with an edge of a piece `by` further in, its ends kept."""
    p = sheet.piece(code)
    e = p.edge(edge)
    off = inset(e.path, by, by)
    between = [off.at_length(off.length * i / 20) for i in range(1, 20)]
    path = polyline([e.path.start, *between, e.path.end])
    return sheet.put(p.with_edge(Edge(e.name, path, e.kind)))


@pytest.mark.parametrize("by", [0.3, -0.3])
@pytest.mark.parametrize(
    ("code", "edge"),
    [(c, e) for c in ("FF", "BF") for e in ("neck", "armhole")] + [("BF", "slant")],
)
def test_an_edge_off_its_roll_is_refused(code: str, edge: str, by: float) -> None:
    d = made()
    assert not _asked(d, d.sheet)
    assert "F3" in _asked(d, _shifted(d.sheet, code, edge, by))


def test_a_free_edge_outside_the_shell_is_refused() -> None:
    """Led over the panel seam 6 cm below the dart's point, where the panels gape."""
    d = made()
    bf = d.sheet.piece("BF")
    free = bf.edge("free")
    low = polyline([free.path.start, free.path.start + (-9.5, 4.0), free.path.end])
    wrong = d.sheet.put(bf.with_edge(Edge("free", low, free.kind)))
    assert "F4" in _asked(d, wrong)


def test_a_loop_out_of_place_is_refused() -> None:
    d = made()
    for code in ("BC", "BF"):
        p = d.sheet.piece(code)
        k = next(m for m in p.marks if m.name == "loop 4")
        moved = Mark(k.name, shift((0.0, 0.3))(k.at), k.kind)
        assert "S17" in _asked(d, d.sheet.put(p.with_marks(moved)))
    bf = d.sheet.piece("BF")
    assert "S17" in _asked(d, d.sheet.put(replace(bf, marks=())))


def test_facings_that_are_not_shortened_are_noticed(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """14.5 left out: neck and armhole stay about 0.3 and 0.2 too long."""
    monkeypatch.setattr(roll, "_moved_in", lambda path, by: path)
    for body in (P92, BRIDA):
        d = draft(order(body, main_features()))
        for code in ("S8", "S10", "S11"):
            assert severity_of(d.sheet, code) is not None


def test_a_facing_too_near_the_bust_point_is_refused(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(facing_edges, "CLEAR_OF_BP", -5.0)
    d = draft(order(P92, GARMENTS["closed, V"]))
    assert any(f.code == "F2" for f in d.findings if f.severity is Severity.REFUSE)


@pytest.mark.parametrize(
    ("code", "first", "second"),
    [
        ("S5", ("FC", "waist"), ("FS", "waist")),
        ("S6", ("BS", "waist"), ("BC", "waist")),
    ],
)
def test_a_joint_off_the_peplums_notch_is_refused(
    code: str, first: tuple[str, str], second: tuple[str, str]
) -> None:
    """21: the panel seam stands 0.3 too far along the waist, the waist as long as
    before; the notch of the peplum stands where the numbers have it."""
    d = made()
    assert severity_of(d.sheet, code) is None
    wrong = longer(d.sheet, *first, 0.3)
    p = wrong.piece(second[0])
    waist = p.edge(second[1])
    rest = waist.path.between(0.3, waist.length)
    loop = []
    for e in p.edges:
        path = rest if e.name == waist.name else e.path
        if p.after(e.name).name == waist.name:
            path = path.pinned(path.start, rest.start)
        loop.append(replace(e, path=path))
    hand = Drafting(d.numbers, wrong.put(p.with_edges(loop)))
    seams_of(d.order.features).apply(hand)
    total = walk(hand.sheet, hand.sheet.seam(code))
    assert total.severity is None
    assert severity_of(hand.sheet, code) is Severity.REFUSE


def test_a_facing_that_crosses_its_armhole_is_told_by_its_depth() -> None:
    """A random woman of 150 cm of bust on 144 cm of height: between side and centre the
    loose edge would run through the hollow of the armhole."""
    features = demo_features("panelled-top")
    d = draft(order(woman(520), features, estimates=RuleSet.SURVEY))
    told = {f.code: str(f) for f in d.findings if f.severity is Severity.REFUSE}
    assert 'deeper at the side (side of "facing")' in told["F7"]
    free, arm = (d.sheet.edge("BF", e).path for e in ("free", "armhole"))
    assert free.meets(arm)


def test_a_facing_deeper_than_the_side_is_refused() -> None:
    """Her side, from an armhole of 29 on a back of 33, is shorter than the facing."""
    with pytest.raises(OrderError, match=r"side of .facing.\) less deep, or measure"):
        draft(order(woman(813), demo_features("panelled-top"), unit=Unit.IN))


@pytest.mark.parametrize("seed", [15, 22, 714])
def test_the_loose_edge_keeps_clear_of_a_sharp_armhole(seed: int) -> None:
    """Over a very full bust the armhole runs far in front: the edge follows it lower
    for longer, and the facing is nowhere narrower than 0.9 cm (our own: 1)."""
    d = draft(order(woman(seed), main_features(), estimates=RuleSet.SURVEY))
    facing = d.sheet.piece("FF")
    assert Polygon(facing.outline.flatten(0.01)).is_valid
    free, armhole = (
        LineString(facing.edge(e).path.flatten(0.01)) for e in ("free", "armhole")
    )
    assert free.distance(armhole) > 0.9
    assert not [f for f in d.findings if f.code == "F7"]
