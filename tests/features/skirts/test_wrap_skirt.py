"""A wrap skirt: fronts that cross, their band and ties (common practice, no source; the
crossing after transformations 2)."""

import pytest
from shapely.geometry import Polygon

from bodies import P80, P92, P116, THEA, ansur_whole
from clothwright.blocks.skirt import waist_names
from clothwright.body import Body
from clothwright.curves import Point, mirror_in
from clothwright.features import Feature
from clothwright.features.pockets.set_pocket import On, SetPocket, Sides
from clothwright.features.skirts.godets import Godets
from clothwright.features.skirts.hip_yoke import HipYoke
from clothwright.features.skirts.skirt_lining import SkirtLining
from clothwright.features.skirts.skirt_pockets import SkirtPockets
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.vent import Vent
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.skirts.wrap_skirt import Closing, Edging, WrapSkirt
from clothwright.features.trousers.trouser_pockets import Shape
from clothwright.findings import Severity
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import EdgeKind
from clothwright.units import Unit
from making.test_order import complete
from orders import order

MM = 0.1


def wrapped(body: Body, wrap: WrapSkirt, *more: Feature, flare: float = 0.0) -> Draft:
    return draft(order(body, (StraightSkirt(flare=flare), wrap, *more)))


def sound(body: Body, wrap: WrapSkirt, flare: float = 0.0) -> Draft:
    d = wrapped(body, wrap, flare=flare)
    assert not d.failed, d.failures()
    return d


def over(d: Draft) -> float:
    """The waist beyond the centre, its darts shut, cm."""
    piece = d.sheet.piece("SF")
    return sum(e.length for e in piece.edges if e.name.startswith("waist over"))


@pytest.mark.parametrize(
    ("body", "crossing"),
    [(P92, 6.0), (P92, 11.0), (P92, 17.5), (P92, None), (P116, 14.0), (P116, None)],
)
def test_each_front_reaches_beyond_the_centre(
    body: Body, crossing: float | None
) -> None:
    """By the crossing, measured along the waist with the darts shut (exact); what is
    beyond is the other half mirrored, its edge plumb."""
    d = sound(body, WrapSkirt(crossing=crossing))
    n, piece = d.numbers, d.sheet.piece("SF")
    assert over(d) == pytest.approx(n.wx_S)
    edge, fold = piece.edge("front edge").path, d.sheet.points["Fs"].x
    assert edge.start.x == pytest.approx(edge.end.x)
    assert piece.fold is None and piece.edge("front edge").kind is EdgeKind.FINISHED
    m = mirror_in(Point(fold, 0.0), Point(fold, 1.0))
    back = m(piece.edge("waist over").path.at_length(3.0))
    half = piece.edge("waist").path
    assert half.nearest(back)[1] < 0.001
    assert piece.edge("hem").length == pytest.approx(
        n.xf_S + edge.start.x - fold, abs=0.1 * MM
    )


def test_the_waist_of_the_half_stays_that_of_the_body() -> None:
    """K2, K1: what crosses is beside it."""
    d = sound(THEA, WrapSkirt())
    n = d.numbers
    waist = sum(
        e.length
        for c in ("SF", "SB")
        for e in d.sheet.piece(c).edges
        if e.name in waist_names(2)
    )
    assert 2 * waist == pytest.approx(n.W + n.Ew, abs=0.5 * MM)


def test_the_darts_that_it_passes_are_sewn_in_it() -> None:
    d = sound(P92, WrapSkirt(crossing=11.0))
    assert d.numbers.nf_S == 2
    codes = {s.code for s in d.sheet.seams}
    assert "overlap dart" in codes and "overlap dart 2" not in codes
    for k in ("centre", "side"):
        mine, its = (d.sheet.length("SF", f"dart {k}{m}") for m in ("", " mirrored"))
        assert mine == pytest.approx(its)
    short = sound(P92, WrapSkirt(crossing=6.0))
    assert "overlap dart" not in {s.code for s in short.sheet.seams}


@pytest.mark.parametrize("body", [P92, THEA], ids=lambda b: b.client)
def test_the_band_is_as_long_as_waist_and_crossings(body: Body) -> None:
    """Round the waist and over both fronts, less what is eased on; from the end over by
    the right front to the end under."""
    d = sound(body, WrapSkirt())
    n, band = d.numbers, d.sheet.piece("WB")
    long = band.edge("inside").length
    assert long == pytest.approx(2 * (n.w_SF + n.w_SB + n.wx_S) - n.e_band)
    seams = [s for s in d.sheet.seams if s.code.startswith("S30.")]
    assert [s.name.split(", ")[1] for s in seams] == [
        "front over",
        "front right",
        "back right",
        "back left",
        "front left",
        "front under",
    ]
    sewn = sum(d.sheet.chain_length(s.left) for s in seams)
    assert sewn == pytest.approx(long + n.e_band, abs=0.2 * MM)


def test_the_long_tie_reaches_round_the_back() -> None:
    """From the end under, wx right of the centre, to the right side, round the back,
    and to wx left of it: the waist less two crossings; then the bow."""
    d = sound(P92, WrapSkirt(bow=50.0))
    n = d.numbers
    round_ = 2 * (n.w_SF + n.w_SB) - n.e_band - 2 * n.wx_S
    assert d.sheet.length("WU", "long edge") == pytest.approx(round_ + 50.0)
    assert d.sheet.length("WT", "long edge") == 50.0
    (slit,) = (k for k in d.sheet.piece("WB").lines if k.name == "slit for the tie")
    assert n.tie_w < slit.path.length < n.h_band
    assert slit.path.start.y == pytest.approx(n.wx_S + n.w_SF + 1.0)


def test_the_buttons_lie_where_the_ends_come_to() -> None:
    """Closed, centre on centre, each hole lies on its button: as far from the centre
    of the other front as its own end is."""
    d = sound(THEA, WrapSkirt(closes=Closing.BUTTONS))
    n, band = d.numbers, d.sheet.piece("WB")
    at = {k.name: k.at.y for k in band.marks}
    holes = {k.name: k.path for k in band.lines}
    cf_right, cf_left = n.wx_S, n.w_band - n.wx_S
    hole = holes["buttonhole, over end"].start.y
    assert at["button outside"] - cf_left == pytest.approx(hole - cf_right)
    hole = holes["buttonhole, under end"].end.y
    assert at["button inside"] - cf_right == pytest.approx(hole - cf_left)


@pytest.mark.parametrize("flare", [0.0, 5.0])
def test_a_facing_is_a_strip_of_the_front(flare: float) -> None:
    d = sound(P92, WrapSkirt(edges=Edging.FACED), flare)
    strip, front = d.sheet.piece("SWF"), d.sheet.piece("SF")
    assert strip.edge("front edge").path == front.edge("front edge").path
    assert strip.edge("waist over").length == pytest.approx(d.numbers.wf_S)
    for e in strip.edges:
        middle = e.path.at_length(e.length / 2)
        assert front.contains(middle) or front.outline.nearest(middle)[1] < 0.001
    assert d.sheet.seam("S123").notches  # no stretch over 40 cm (truing 6)
    # on the grain and interlined: it is not taped, in the cloth or on the paper
    assert not any("tape" in op.title.lower() for op in making_order(d).operations)
    lines = pattern(d, words=False).drawn.pieces
    notes = {k.note for p in lines if p.code == "SF" for k in p.lines}
    assert notes and "stay tape" not in notes


@pytest.mark.parametrize("unit", list(Unit))
@pytest.mark.parametrize("k", [0, 150, 450, 640, 770, 940])
def test_real_bodies(k: int, unit: Unit) -> None:
    """Fronts are a pair, so is their facing; band and ties are cut once."""
    wraps = [WrapSkirt(edges=e, closes=c) for e in Edging for c in Closing]
    d = draft(order(ansur_whole()[k], (StraightSkirt(), wraps[k % 4]), unit=unit))
    assert not d.failed, d.failures()
    making = making_order(d)
    complete(making)
    raw = [op.title for op in making.operations if "loose edges" in op.title]
    assert not any("tie" in title for title in raw)
    cut = {p.code: p for p in cutting_sheet(making).cloths["shell"]}
    assert (cut["SF"].count, cut["SF"].how) == (2, "2 (1 pair)")
    assert cut["SB"].count == cut["WB"].count == 1
    if "SWF" in cut:
        assert cut["SWF"].how == "2 (1 pair)"
    if "WT" in cut:
        assert cut["WT"].count == cut["WU"].count == 1
    found = pattern(d, words=False).findings
    assert not [f for f in found if f.severity is Severity.REFUSE]


@pytest.mark.parametrize(
    ("wrap", "more", "said"),
    [
        (
            WrapSkirt(crossing=29.0),
            (),
            'make the crossing (crossing of "wrap skirt") less',
        ),
        (
            WrapSkirt(crossing=7.3),
            (),
            'make the crossing (crossing of "wrap skirt") less, or so much more',
        ),
        (WrapSkirt(crossing=10.0, edges=Edging.FACED), (), "too little for a facing"),
        (WrapSkirt(), (SkirtZip(),), "a skirt opens once"),
        (WrapSkirt(), (Waistband(),), "finished one way only"),
        (WrapSkirt(), (Godets(),), "fronts that cross"),
        (WrapSkirt(), (SkirtLining(),), "where hemmed fronts part"),
    ],
)
def test_refusals(wrap: WrapSkirt, more: tuple[Feature, ...], said: str) -> None:
    with pytest.raises(OrderError) as e:
        wrapped(P92, wrap, *more)
    assert said in str(e.value)


FACED = StraightSkirt(), WrapSkirt(edges=Edging.FACED)


@pytest.mark.parametrize("vent", [(), (Vent(),)], ids=["", "vent"])
@pytest.mark.parametrize("body", [P80, P92, P116, THEA], ids=lambda b: b.client)
def test_faced_fronts_are_lined(body: Body, vent: tuple[Feature, ...]) -> None:
    """The lining goes as far as the facing's loose edge, so that both together are the
    front (exact), and hangs 2.5 cm shorter; beyond the centre too it is sewn to the
    shell's waist."""
    d = draft(order(body, (*FACED, *vent, SkirtLining())))
    assert not d.failed, d.failures()
    sheet = d.sheet
    join = sheet.seam("S145")
    lining, facing = (sheet.chain_length(c) for c in (join.left, join.right))
    assert facing - lining == pytest.approx(2.5, abs=MM)
    at = sheet.seam("L.SF.waist over")
    shell, inside = (sheet.chain_length(c) for c in (at.left, at.right))
    assert inside == pytest.approx(shell, abs=0.1 * MM)
    assert at.right[-1].piece == "SWF"
    areas = {c: abs(sheet.piece(c).area) for c in ("SF", "SWF", "L.SF")}
    hem = sheet.length("L.SF", "hem")
    left = areas["SF"] - areas["SWF"] - areas["L.SF"]
    assert left == pytest.approx(2.5 * hem, rel=0.02)
    making = making_order(d)
    complete(making)
    titles = [op.title for op in making.operations]
    done = ["Face the front edges", "Join the lining to the facing", "Hem the lining"]
    assert [t for t in titles if t in done] == done
    cut = {p.code: p.how for p in cutting_sheet(making).cloths["lining"]}
    assert cut["L.SF"] == "2 (1 pair)"


@pytest.mark.parametrize("edges", Edging)
@pytest.mark.parametrize("body", [P80, P92, P116, THEA], ids=lambda b: b.client)
def test_pockets_lie_in_its_sides(body: Body, edges: Edging) -> None:
    """As in those of a straight skirt: the fronts cross beside them."""
    more = StraightSkirt(), SkirtPockets()
    d = draft(order(body, (*more, WrapSkirt(edges=edges))))
    assert not d.failed, d.failures()
    plain = draft(order(body, (*more, SkirtZip(), Waistband())))
    bags = [k.sheet.piece("TP").outline for k in (d, plain)]
    assert bags[0].length == pytest.approx(bags[1].length)
    mouth = [n.left for n in plain.sheet.seam("S34").notches][:2]
    assert [n.left for n in d.sheet.seam("S34").notches][:2] == pytest.approx(mouth)
    complete(making_order(d))


def test_lined_and_pocketed_on_real_women() -> None:
    women = ansur_whole()[::150]
    assert len(women) >= 5
    for k, body in enumerate(women):
        more: tuple[Feature, ...] = (SkirtLining(), SkirtPockets())
        d = draft(order(body, (*FACED, *more), unit=list(Unit)[k % 2]))
        assert not d.failed, d.failures()
        assert not [
            f for f in pattern(d, words=False).findings if f.severity is Severity.REFUSE
        ]


def test_findings() -> None:
    def codes(d: Draft) -> set[str]:
        return {f.code for f in d.findings}

    assert "WX1" in codes(wrapped(P92, WrapSkirt(crossing=6.0)))
    assert "WX1" not in codes(wrapped(P92, WrapSkirt(crossing=11.0)))
    wide = wrapped(P80, WrapSkirt(tie=2.8))
    assert wide.failed and "WX2" in codes(wide)
    assert "Q5" in codes(wrapped(P80, WrapSkirt(button=2.0)))


SLANT = SkirtPockets(shape=Shape.SLANT)


@pytest.mark.parametrize("edges", Edging)
@pytest.mark.parametrize("body", [P80, P92, P116, THEA], ids=lambda b: b.client)
def test_both_slanting_pockets_can_be_reached(body: Body, edges: Edging) -> None:
    """The right front ends 1 cm before the pocket of the left one, or a little further,
    clear of a dart by 1 cm; hip piece and bag are those of a skirt with a zip."""
    more = StraightSkirt(), SLANT
    for features in ((*more, WrapSkirt(edges=edges)), (WrapSkirt(edges=edges), *more)):
        d = draft(order(body, features))
        assert not d.failed, d.failures()
        n = d.numbers
        assert 0.95 <= n.w_SF - n.pk_top - n.wx_S <= 3.5
        edge, centre = d.sheet.piece("SF").edge("front edge"), d.sheet.points["Fs"].x
        over = 2 * centre - edge.path.start.x  # where it lies on the left front
        assert over > d.sheet.points["Pa"].x
    plain = draft(order(body, (*more, SkirtZip(), Waistband())))
    for code in ("TK", "TP"):
        mine, its = (k.sheet.piece(code).outline.length for k in (d, plain))
        assert mine == pytest.approx(its)
    complete(making_order(d))


def test_a_lining_over_slanting_pockets_is_of_the_whole_front() -> None:
    """It takes the corner that was cut off and the facing's place beyond the centre."""
    d = draft(order(P92, (*FACED, SLANT, SkirtLining())))
    assert not d.failed, d.failures()
    areas = {c: abs(d.sheet.piece(c).area) for c in ("SF", "SWF", "L.SF")}
    n = d.numbers
    corner = Polygon(
        [(p.x, p.y) for p in (d.sheet.points[k] for k in ("Wfs", "Pa", "Pz"))]
    ).area
    left = areas["SF"] + corner - areas["SWF"] - areas["L.SF"]
    assert left == pytest.approx(2.5 * d.sheet.length("L.SF", "hem"), rel=0.15)
    assert n.short_S == pytest.approx(2.5)


def test_set_pockets_go_where_the_left_front_is_free() -> None:
    for body in (P80, P92, P116, THEA):
        both = wrapped(body, WrapSkirt(), SetPocket())
        assert any('sides = "right side"' in f for f in both.failures())
        one = wrapped(body, WrapSkirt(), SetPocket(sides=Sides.RIGHT))
        assert not one.failed, one.failures()
        (cut,) = (p for p in pattern(one).drawn.pieces if p.code == "KP")
        assert cut.cuts[0].how == "1"
        names = [k.name for k in one.sheet.piece("SF").lines]
        assert "patch pocket, on the right" in names
        assert not wrapped(body, WrapSkirt(), SetPocket(on=On.BACK)).failed


YOKED = StraightSkirt(flare=2.0), HipYoke()


@pytest.mark.parametrize("edges", Edging)
@pytest.mark.parametrize(
    "body",
    [P80, P92, P116, THEA, *ansur_whole()[::300]],
    ids=lambda b: b.client,
)
def test_a_yoke_is_led_on_over_the_crossing(body: Body, edges: Edging) -> None:
    """Its waist is waist and crossing with all darts closed; its seam and its edge as
    long as what they are sewn to; below it the front is the crossed half of a yoked
    skirt with a zip."""
    d = draft(order(body, (*YOKED, WrapSkirt(edges=edges))))
    assert not d.failed, d.failures()
    n, sheet = d.numbers, d.sheet
    assert sheet.length("SYF", "waist over") == pytest.approx(n.wx_S, abs=0.1 * MM)
    plain = draft(order(body, (*YOKED, SkirtZip(), Waistband()))).sheet
    for code, edge in (
        ("SYF", "waist"),
        ("SYF", "foot of yoke"),
        ("SF", "yoke"),
        ("SF", "side"),
    ):
        assert sheet.length(code, edge) == pytest.approx(plain.length(code, edge))
    seam = sheet.seam("S56.1")
    above, below = (sheet.chain_length(c) for c in (seam.left, seam.right))
    assert above == pytest.approx(below, abs=0.3)
    upper, lower = (sheet.piece(c).edge("front edge") for c in ("SYF", "SF"))
    at_seam = sheet.piece("SYF").interior_angle("front edge") + sheet.piece(
        "SF"
    ).interior_angle("yoke over")
    assert at_seam == pytest.approx(180.0, abs=6.0)  # sewn, it hangs in one line
    if edges is Edging.FACED:
        whole = upper.length + lower.length
        assert whole == pytest.approx(sheet.length("SWF", "front edge"), abs=0.1)
    assert not any("dart" in e.name for e in sheet.piece("SF").edges)
    done = pattern(d)
    assert not done.drawn.failures
    cut = {p.code: p.cuts[0].how for p in done.drawn.pieces}
    assert cut["SYF"] == cut["SF"] == "2 (1 pair)"
    for p in done.drawn.pieces:
        told = " ".join(line for group in p.wording.label for line in group)
        assert " over" not in told, told
    making = making_order(d)
    complete(making)
    titles = [op.title for op in making.operations]
    edge = "Face the front edges" if edges is Edging.FACED else "Hem the front edges"
    assert titles.index("Sew the front hip yoke seams") < titles.index(edge)


def test_a_yoked_wrap_is_lined_and_pocketed() -> None:
    for body in (P92, THEA):
        d = draft(order(body, (*FACED, HipYoke(), SkirtLining())))
        assert not d.failed, d.failures()
        complete(making_order(d))
        d = draft(
            order(body, (*YOKED, WrapSkirt(), SetPocket(sides=Sides.RIGHT, below=14.0)))
        )
        assert not d.failed, d.failures()
