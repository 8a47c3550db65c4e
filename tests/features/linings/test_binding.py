"""Edges bound by bias strips (transformations 3: 3 to 4 % shorter): lengths, mitres,
net-cut edges and their seams. Shapely judges lengths and distances."""

import math

import pytest
from shapely.geometry import LineString
from shapely.geometry import Point as Spot

from bodies import BODIES, P92, THEA, ansur_women, bdims_women
from clothwright.body import Body, RuleSet
from clothwright.curves import Path
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.armhole import SleevelessArmhole
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.extended_shoulder import ExtendedShoulder
from clothwright.features.bodice.yokes import BackYoke, FrontYoke
from clothwright.features.collars.collar_inside import Inside
from clothwright.features.collars.jabot import Jabot
from clothwright.features.collars.stand_collar import StandCollar
from clothwright.features.linings.armhole_binding import ArmholeBinding
from clothwright.features.linings.facing import Facing
from clothwright.features.linings.lining import Lining
from clothwright.features.linings.neck_binding import NeckBinding
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.openings.back_slit import BackNeckSlit
from clothwright.features.openings.button_stand import ButtonStand, Where
from clothwright.features.openings.centre_loops import CentreLoops
from clothwright.features.openings.lacing import Lacing
from clothwright.features.openings.neck_placket import NeckPlacket
from clothwright.features.openings.open_zip import OpenZip
from clothwright.features.openings.stand_edging import Edging
from clothwright.features.openings.underarm_zip import UnderarmZip
from clothwright.features.operations import SeamType, Stitch
from clothwright.features.sleeves.cap_sleeve import CapSleeve
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.order.figures import figures
from clothwright.paper import EdgeKind
from order.test_sides import TWO, lopsided
from orders import closed_back, cut_faults, order, sleeved_features
from verdict import unsound, verdict

MM = 0.1


def bound(
    *swaps: Feature,
    front: FrontShape = FrontShape.ROUND,
    back: BackShape = BackShape.ROUND,
    lines: str = "darts",
    without: tuple[str, ...] = (),
) -> tuple[Feature, ...]:
    """A closed top whose neck and armholes are bound."""
    usual = closed_back(front=front, back=back, lines=lines)
    by_kind = {f.kind: f for f in (*usual, NeckBinding(), ArmholeBinding(), *swaps)}
    for kind in ("facing", *without):
        del by_kind[kind]
    return tuple(by_kind.values())


PULLED = bound(
    UnderarmZip(),
    front=FrontShape.SCOOP,
    back=BackShape.SCOOP,
    without=("concealed zip",),
)
"""A wide neck without an opening: the strip is a ring."""

STYLES = {
    "zip": bound(),
    "panels": bound(front=FrontShape.BOAT, back=BackShape.BOAT, lines="armhole"),
    "pointed": bound(front=FrontShape.V, back=BackShape.V),
    "ring": PULLED,
    "yokes": bound(FrontYoke(), BackYoke()),
    "yoke with a dart": bound(Block(back_shoulder=BackShoulder.YOKE), BackYoke()),
    "dart at the neck": bound(Block(back_shoulder=BackShoulder.NECK)),
    "run on over the arm": bound(ExtendedShoulder(), without=("sleeveless armhole",)),
    "armholes alone": bound(NeckFacing(), without=("neck binding",)),
    "under a stand": bound(
        StandCollar(inside=Inside.IN_STAND),
        ButtonStand(),
        front=FrontShape.STANDARD,
        back=BackShape.STANDARD,
        without=("neck binding", "concealed zip"),
    ),
    "neck alone": tuple(
        f for f in sleeved_features(NeckBinding()) if f.kind != "neck facing"
    ),
    "cap sleeves": tuple(
        f
        for f in sleeved_features(NeckBinding(), CapSleeve())
        if f.kind != "neck facing"
    ),
}


def made(features: tuple[Feature, ...], body: Body = P92) -> Draft:
    return draft(order(body, features))


def line(path: Path) -> LineString:
    return LineString(path.flatten(0.001))


def refused(features: tuple[Feature, ...], body: Body = P92) -> str:
    with pytest.raises(OrderError) as e:
        made(features, body)
    return str(e.value)


CORNERS = {
    "square": bound(front=FrontShape.SQUARE),
    "square, buttoned behind": bound(
        ButtonStand(where=Where.BACK),
        front=FrontShape.SQUARE,
        lines="armhole",
        without=("concealed zip",),
    ),
    "sweetheart": bound(front=FrontShape.SWEETHEART),
    "keyhole": bound(front=FrontShape.KEYHOLE),
}
"""Necks with corners beside those at the centre."""

OPENED = {
    **{
        f"{where.value}, {edge.value}": bound(
            ButtonStand(where=where, edge=edge),
            front=shape,
            back=BackShape.V if where is Where.BACK else BackShape.ROUND,
            without=("concealed zip",),
        )
        for where, shape in ((Where.FRONT, FrontShape.V), (Where.BACK, FrontShape.BOAT))
        for edge in Edging
    },
    "separating zip": bound(OpenZip(), without=("concealed zip",)),
    "loops behind": bound(CentreLoops(), without=("concealed zip",)),
    "laced": bound(Lacing(), without=("concealed zip",)),
    "slit": bound(
        UnderarmZip(),
        BackNeckSlit(),
        front=FrontShape.ROUND,
        back=BackShape.ROUND,
        without=("concealed zip",),
    ),
}
"""Necks that end at an opening."""

STYLES |= CORNERS | OPENED


# -- the strips ------------------------------------------------------------------------
@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
@pytest.mark.parametrize("style", STYLES)
def test_every_strip_goes_onto_its_edge(style: str, body: Body) -> None:
    """3.5 % shorter than the net edge, stretch by stretch (shapely); every seam walks
    and the pattern is finished."""
    d = made(STYLES[style], body)
    assert not d.failed, d.failures()
    assert not cut_faults(d)
    strips = [s for s in d.sheet.seams if s.code.startswith(("S140.", "S141."))]
    assert strips
    for seam in strips:
        edge = sum(line(d.sheet.run_path(r)).length for r in seam.left)
        strip = sum(line(d.sheet.run_path(r)).length for r in seam.right)
        assert strip == pytest.approx(0.965 * edge, abs=0.1 * MM), seam.name
    for code in {"VN", "VA"} & set(d.sheet.pieces):
        piece = d.sheet.piece(code)
        _, top, _, foot = piece.outline.bounds()
        assert foot - top == pytest.approx(4 * 0.7, abs=1e-6)
        assert piece.grain is not None
        (ax, ay), (bx, by) = piece.grain
        assert abs(bx - ax) == pytest.approx(abs(by - ay), abs=1e-9)  # 45°


@pytest.mark.parametrize("style", STYLES)
def test_women_of_the_survey(style: str) -> None:
    """10 of the 993: each passes, or is refused by a number with what to do."""
    passed = 0
    for woman in ansur_women()[::100]:
        asked = order(woman, STYLES[style], estimates=RuleSet.SURVEY)
        it = verdict(asked)
        assert list(unsound(asked, it)) == []
        passed += not it.refusals
    assert passed >= 5


def test_a_ring_is_closed_along_the_thread() -> None:
    """Its ends lie at 45° and are joined; at an opening they are square and loose."""
    ring, flat = made(PULLED).sheet, made(STYLES["zip"]).sheet
    for sheet, code, angle in (
        (ring, "VN", 45.0),
        (flat, "VA", 45.0),
        (flat, "VN", 90),
    ):
        piece = sheet.piece(code)
        way = piece.edge("end back").path.start_direction
        assert math.degrees(math.atan2(way.y, -way.x)) == pytest.approx(angle)
        kind = piece.edge("end back").kind
        assert (kind is EdgeKind.SEAM) == (angle == 45.0)
    assert {"S140a", "S141a"} <= {s.code for s in ring.seams}
    assert "S140a" not in {s.code for s in flat.seams}


def test_a_strip_begins_at_the_left_shoulder_or_at_the_zip() -> None:
    names = [s.name for s in made(PULLED).sheet.seams if s.code.startswith("S140.")]
    assert [n.partition(", ")[2] for n in names] == [
        *("left front", "right front", "right back", "left back"),
    ]
    names = [s.name for s in made(STYLES["zip"]).sheet.seams if "S140." in s.code]
    assert names[0].endswith("left back")
    assert names[-1].endswith("right back")


@pytest.mark.parametrize("width", [0.5, 0.7, 1.2])
def test_the_mitre_is_what_the_line_of_stitches_is_longer(width: float) -> None:
    """A band of even width laid along both sides of the V (shapely): its inner line is
    longer than the edge by the mitre, half on either side."""
    d = made(bound(NeckBinding(width=width), front=FrontShape.V))
    neck = d.sheet.edge("F", "neck").path
    assert neck.end.x == pytest.approx(d.numbers.X)
    way = neck.end_direction
    far = neck.end - way * 20.0
    edge = LineString([far, neck.end])
    whole = LineString([far, neck.end, (2 * d.numbers.X - far.x, far.y)])
    inner = whole.parallel_offset(width, "left", join_style="mitre", mitre_limit=50)
    more = inner.length / 2 - edge.length
    mitre = d.sheet.length("VN", "mitre 3")
    assert mitre == pytest.approx(2 * more, abs=0.1 * MM)
    assert "mitre" in [k.name for k in d.sheet.piece("VN").lines]


@pytest.mark.parametrize("width", [0.5, 0.7, 1.2])
@pytest.mark.parametrize("front", [FrontShape.SQUARE, FrontShape.SWEETHEART])
def test_a_mitre_is_by_what_the_line_of_stitches_differs(
    front: FrontShape, width: float
) -> None:
    """Two straight arms as the neck has them at its corner, and a line a width beside
    them, mitred by shapely: it differs from them by the mitre, which makes the strip
    longer in the hollow of a square neck, and not over the point of a sweetheart."""
    d = made(bound(NeckBinding(width=width), front=front))
    first, last = d.sheet.edge("F", "neck").path.segments
    (ax, ay), (bx, by) = first.end_direction, last.start_direction
    if front is FrontShape.SWEETHEART:
        ax, ay = last.end_direction
        bx, by = ax, -ay
    arms = LineString([(-20 * ax, -20 * ay), (0, 0), (20 * bx, 20 * by)])
    beside = arms.parallel_offset(width, "left", join_style="mitre", mitre_limit=50)
    strip = d.sheet.piece("VN")
    marks = [k for k in strip.lines if k.name == "mitre"]
    left, _, right, _ = marks[0].path.bounds()
    assert right - left == pytest.approx(abs(beside.length - 40), abs=0.1 * MM)
    longer = [e.length for e in strip.edges if e.name.startswith("mitre")]
    both = [right - left] * 2 if front is FrontShape.SQUARE else []
    assert longer == pytest.approx(both, abs=0.1 * MM)


@pytest.mark.parametrize("style", CORNERS)
def test_every_corner_is_marked_on_the_strip(style: str) -> None:
    """As many mitres as the neck has corners (counted by shapely's flattened line);
    those of a point make the strip no longer."""
    d = made(CORNERS[style])
    strip = d.sheet.piece("VN")
    drawn = [k for k in strip.lines if k.name == "mitre"]
    wanted = {"sweetheart": 1, "keyhole": 2}.get(style, 2)
    assert len(drawn) == wanted
    longer = sum(e.length for e in strip.edges if e.name.startswith("mitre"))
    assert (longer > 0) is style.startswith("square")
    top = next(op for op in making_order(d).operations if op.title == "Bind the neck")
    says = " ".join(top.says)
    assert ("hollow corner" in says) is style.startswith("square")
    assert ("stands out" in says) is not style.startswith("square")


def test_ends_at_an_opening() -> None:
    """Turned in at faced edges, when these are faced; in the seams of bands, before
    they are sewn; facings beside an opening are caught in the strip."""
    for style, features in OPENED.items():
        d = made(features)
        making = making_order(d)
        titles = [op.title for op in making.operations]
        bind = titles.index("Bind the neck")
        (says,) = (" ".join(op.says) for op in making.operations[bind : bind + 1])
        names = {e.name for e in d.sheet.piece("VN").edges}
        seams = [s.name for s in d.sheet.seams if s.code.startswith("S140.")]
        in_front = "in front" in style or style == "separating zip"
        first = "right front" if in_front else "left back"
        assert seams[0].endswith(first), style
        if "band" in style:
            band = next(i for i, w in enumerate(titles) if "bands on" in w)
            assert bind < band
            assert "end in the band back" in names
            assert "the bands, which catch them" in says
            continue
        assert "turned end back" in names
        assert "level with the finished edges" in says
        assert titles.index("Baste the upper end of the facing to the neck") < bind
        faced = [
            i
            for i, w in enumerate(titles)
            if w.startswith(("Face the", "Put the separating", "Turn the"))
        ]
        assert faced and max(faced) < bind


@pytest.mark.parametrize("style", [k for k in OPENED if "facing of its own" in k])
def test_a_facing_beside_an_opening_is_cut_net_where_it_is_bound(style: str) -> None:
    it = pattern(made(OPENED[style]), words=False)
    code = "FF" if "in front" in style else "BF"
    drawn = next(p for p in it.drawn.pieces if p.code == code)
    cut = LineString(drawn.cut_line.flatten(0.002))
    for name, wide in (("neck", 0.0), ("neck stand", 0.0), ("stand", 1.0)):
        net = it.draft.sheet.edge(code, name).path
        middle = Spot(net.at_length(net.length / 2))
        assert cut.distance(middle) == pytest.approx(wide, abs=0.2 * MM), name


def test_a_round_neck_has_no_mitre() -> None:
    names = [e.name for e in made(STYLES["zip"]).sheet.piece("VN").edges]
    assert not [n for n in names if n.startswith("mitre")]


def test_width_and_share_as_ordered() -> None:
    own = NeckBinding(width=1.0, short=4.0), ArmholeBinding(width=0.5, short=3.0)
    d = made(bound(*own))
    for code, share, wide in (("S140.2", 0.96, 4.0), ("S141.1", 0.97, 2.0)):
        seam = next(s for s in d.sheet.seams if s.code == code)
        edge, strip = map(d.sheet.chain_length, (seam.left, seam.right))
        assert strip / edge == pytest.approx(share)
        box = d.sheet.piece(seam.right[0].piece).outline.bounds()
        assert box[3] - box[1] == pytest.approx(wide)


# -- the cloth -------------------------------------------------------------------------
def test_a_bound_edge_is_cut_net() -> None:
    """The cut line lies on the net line of neck and armhole, 1.5 outside the shoulder;
    a neck that is faced beside bound armholes keeps its allowance."""
    both = pattern(made(STYLES["zip"]), words=False)
    arms = pattern(made(STYLES["armholes alone"]), words=False)
    for it, neck in ((both, 0.0), (arms, 1.0)):
        for code in ("F", "B"):
            drawn = next(p for p in it.drawn.pieces if p.code == code)
            cut = LineString(drawn.cut_line.flatten(0.002))
            for edge, wide in (("neck", neck), ("armhole", 0.0), ("shoulder", 1.5)):
                net = it.draft.sheet.edge(code, edge).path
                middle = Spot(net.at_length(net.length / 2))
                assert cut.distance(middle) == pytest.approx(wide, abs=0.2 * MM)


def test_a_notch_of_a_net_edge_is_marked_inwards() -> None:
    """Its outer end is on the edge, its inner one 0.4 within the strip."""
    it = pattern(made(STYLES["zip"]), words=False)
    strip = next(p for p in it.drawn.pieces if p.code == "VN")
    onto = [n for n in strip.notches if n.note.startswith("S140.")]
    assert len(onto) == 3
    for notch in onto:
        assert notch.outer.y == pytest.approx(0.0)
        assert notch.net.y == pytest.approx(0.4)


def test_what_is_cut() -> None:
    sheet = cutting_sheet(making_order(made(STYLES["zip"])))
    told = {p.code: (p.count, p.how) for p in sheet.cloths["shell"]}
    assert told["VN"] == (1, "1, on the bias")
    assert told["VA"] == (2, "2 (1 pair), on the bias")


def test_how_it_is_sewn() -> None:
    """After the shoulders, the armholes in the round after the sides; the strips of
    both armholes are counted; bound seams are of ISO 4916's class 3."""
    d = made(STYLES["zip"])
    making = making_order(d)
    titles = [op.title for op in making.operations]
    neck, arms = titles.index("Bind the neck"), titles.index("Bind the armholes")
    assert titles.index("Sew the shoulders") < neck < titles.index("Sew the sides")
    assert titles.index("Sew the sides") < arms
    assert neck < titles.index("Put in the concealed zip")
    for at, codes, times in ((neck, "S140.", 1), (arms, "S141", 2)):
        op = making.operations[at]
        assert op.seam_type is SeamType.BOUND
        assert op.seam_type.number.startswith("3.")
        edges = [s for s in d.sheet.seams if s.code.startswith(codes)]
        sewn = times * sum(d.sheet.chain_length(s.left) for s in edges)
        assert making.stitched(op)[Stitch.LOCK] == pytest.approx(sewn)
    felled = titles.index("Fell the binding of the armholes inside")
    by_hand = making.stitched(making.operations[felled])[Stitch.HAND]
    assert by_hand == pytest.approx(2 * d.sheet.length("VA", "inside"))


def test_symbols_are_told_apart() -> None:
    d = made(STYLES["zip"])
    symbols = [d.numbers.why(k).symbol for k in d.used]
    assert len(symbols) == len(set(symbols))
    assert {"nb", "nb short", "ab", "ab short"} <= set(figures(d)["numbers"])


def test_two_sides_have_one_strip_round_the_neck() -> None:
    """Sides that differ: a strip for each armhole, one for the neck."""
    d = made(STYLES["zip"], lopsided(bdims_women()[5], TWO))
    codes = list(d.sheet.pieces)
    assert {"VN", "VA", "VA-L"} <= set(codes)
    assert "VN-L" not in codes
    assert not d.failed, d.failures()
    assert "S140.1-L" in {s.code for s in d.sheet.seams}


# -- what does not go ------------------------------------------------------------------
def test_a_bound_neck_is_not_told_to_take_a_slit() -> None:
    """One that does not pass the head may have a zip behind; a keyhole and a slit are
    faced."""
    shallow = Neckline(shape=FrontShape.ROUND, depth=7.5)
    small = bound(UnderarmZip(), shallow, without=("concealed zip",))
    (told,) = (f for f in draft(order(P92, small)).findings if f.code == "R-j")
    assert "with a zip" in told.to_do
    assert "slit" not in told.to_do and "keyhole" not in told.to_do


def test_what_is_refused_in_words() -> None:
    both = bound()
    for features, says in (
        ((*both, Facing()), "an all-in-one facing finishes the armholes too"),
        ((*both, NeckFacing()), "the edges are finished one way only"),
        ((*both, Lining()), 'set its mode = "to the bound edges"'),
        (bound(without=("armhole binding",)), "leaves the armholes open"),
        ((*both, NeckPlacket()), "beside a half placket the neck is faced"),
        ((*both, Jabot()), "a jabot is sewn between the cloth and its facing"),
        ((*both, StandCollar()), "leave the binding of the neck off"),
        (sleeved_features(ArmholeBinding()), "an armhole is finished one way only"),
    ):
        assert says in refused(features), says


def test_no_shoulder_is_left_between_two_bindings() -> None:
    """4.2 wide both, of a strap of 2 or so."""
    wide = NeckBinding(width=2.0), ArmholeBinding(width=2.0)
    features = bound(
        *wide,
        SleevelessArmhole(narrowed=4.0),
        Neckline(shape=FrontShape.SCOOP, width=4.0),
        BackNeckline(shape=BackShape.SCOOP),
    )
    d = made(features, THEA)
    assert d.numbers.Lr < 4.5
    found = [str(f) for f in d.findings if f.code == "BN3"]
    assert found
    assert (
        'Make the bindings (width of "armhole binding", width of "neck binding")'
        in found[0]
    )
