"""A panel line that passes beside the bust point (transformations 1.5, panel lines).

The line runs from the armhole to a place on the side dart, so far beside the bust
point, and plumb on to the waist, where it takes the waist dart in. What of the side
dart lies outwards of it is closed on the side panel. The rest, from the line to the
bust point, is eased in while it is 0.6 cm or less, and is else a small dart in the
seam, which is opened when all else is drafted.
"""

from collections.abc import Iterable
from dataclasses import replace

from clothwright.curves import CLOSE, Path, Point, Vector, distance, rotate
from clothwright.features.bodice.bust_dart_rules import MOST_EASE
from clothwright.features.bodice.front_dart import SIDE, tighten_armhole
from clothwright.features.bodice.front_panels import waist_findings
from clothwright.features.bodice.opened_dart import (
    Opened,
    bridged,
    dart_angle_of,
    dart_seam,
    keep_open,
    mouth,
    set_back,
)
from clothwright.features.bodice.panel_lines import (
    FRONT,
    UpperCurve,
    from_armhole,
    from_shoulder,
    joined,
)
from clothwright.features.hand.hand_seams import off_corners
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Ease,
    Edge,
    NotchPair,
    On,
    PaperError,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Taped,
    Verb,
    cut,
    redraw,
    straight,
    tape,
)
from clothwright.rules import Numbers

_REST = Opened(
    "panel",
    "panel low",
    "dart panel low",
    "dart panel high",
    "panel",
    "rest of the bust dart",
    "Qp",
    "FC",
)
"""The rest of the bust dart, in the edge of the centre front panel."""

_REST_LINED = replace(_REST, dart="lining, rest of the bust dart", piece="L.FC")
"""The same in the lining."""

_LEAST_ABOVE = 2.0
"""A lining that ends less above the rest of the dart, cm, lies below a facing there and
has none (our own choice)."""

_BRIDGE = 4.0
"""So far to both sides of the rest the edge is drawn anew where that is eased, cm."""

_LEAST_DART = 1.5
"""A dart in the seam is at least so long, cm (our own choice: less cannot be sewn)."""


# -- drafting --------------------------------------------------------------------------
def upper_beside(sheet: Sheet, theta: float, edge: str = "armhole") -> UpperCurve:
    """The line from the armhole or the shoulder to the side dart, so that it runs plumb
    from there when the dart is closed."""
    p = sheet.points
    p1 = p["P1"]
    down = rotate(Point(0.0, 1.0), Point(0.0, 0.0), theta)
    base = p1 + Vector(down.x, down.y) * 10.0
    if edge == "armhole":
        return from_armhole(FRONT, p["Qf"], p1, base)
    return from_shoulder(FRONT, p["Qf"], p1, base, p["Tf"] - p["Nf′"])


def divide_beside(d: Drafting, edge: str = "armhole") -> None:
    """Cut the front from an edge to the side dart and from there to the waist, and
    close what lies outwards of the line on the side front."""
    n, bp = d.n, d["BP"]
    front = d.sheet.piece("F")
    theta = dart_angle_of(front, "dart low", "dart high")
    low = front.edge("dart low").path
    x = n.x_Pf
    share = (x - low.start.x) / (low.end.x - low.start.x)
    if not 0.3 < share < 1.0:
        raise PaperError(
            'the front panel line (its "beside") would lie at the side: bring it '
            "nearer to the bust point"
        )
    p2 = d.found(
        "P2",
        low.at_length(low.length * share),
        "panel line on the lower leg of the side dart",
        amounts=(("beside BP", "beside_f"),),
    )
    p1 = d.turned("P1", "P2", "BP", theta, "the same place on its upper leg")
    apex = d.point(
        "Pf",
        "BP",
        "point of the waist dart in the panel line",
        left=n.x_BP - x,
        down=n.y_Pf - n.y_BP,
    )
    sheet = waist_dart(d.sheet, d["D1"], apex, d["D2"])
    upper = upper_beside(sheet.named(P1=p1), theta, edge).path
    d.draw(
        "front panel, upper",
        upper,
        "front panel line",
        frm=("Qf", "P1"),
        detail="an even curve, plumb in P2 when the dart is closed",
    )
    sheet = cut(
        sheet.unsew(SIDE),
        "F",
        upper,
        On(edge, sheet.edge("F", edge).path.length_to_point(upper.start)),
        On("dart high", distance(bp, p1)),
        edge="cut",
        seam="upper cut",
        seam_name="upper cut",
        into=(("F", "Front"), ("FS high", "Side front, upper part")),
    )
    fall = Path.line(p2, apex)
    sheet = cut(
        sheet,
        "F",
        fall,
        On("dart low", low.length - distance(bp, p2)),
        CornerAfter("leg cf"),
        edge="fall",
        seam="fall",
        seam_name="fall",
        into=(("FC", "Centre front"), ("FS", "Side front")),
    )
    d.lay(
        Verb.CUT,
        sheet,
        "FC, FS",
        "front divided on the panel line, from Qf to P1 and from P2 down",
        lines=(upper, fall),
    )
    legs = Seam(
        "outer dart",
        "outer dart",
        (Run("FS", "dart low"),),
        (Run("FS high", "dart high", True),),
        kind=SeamKind.PLAIN,
    )
    sheet = tape(
        sheet.unsew("upper cut", "fall").sew(legs), "outer dart", tolerance=0.05
    )
    d.lay(
        Verb.TAPE,
        sheet.named(Q2=rotate(upper.start, bp, -theta)),
        "FS",
        "side dart closed on the side front, as far as the line",
        amounts=(("its upper part turned by {}", Taped("θ", theta, angle=True)),),
        frm=("BP",),
    )
    _edges(d)


def waist_dart(sheet: Sheet, d1: Point, apex: Point, d2: Point) -> Sheet:
    """The front with its waist dart between two ends and a point."""
    legs = [straight("leg cf", d1, apex), straight("leg side", apex, d2)]
    return redraw(sheet, "F", ["leg cf", "leg side"], legs)


def _edges(d: Drafting) -> None:
    """The panel edges, each in one line; that of the centre front over the rest of the
    dart, which is eased in, or opened later."""
    fs = d.sheet.piece("FS")
    wf, gc = fs.edge("side low").path.start, fs.edge("side high").path.end
    sheet = redraw(d.sheet, "FS", ["side low", "side high"], [straight("side", wf, gc)])
    waist = Edge("waist", fs.edge("waist side").path)
    sheet = redraw(sheet, "FS", ["waist side"], [waist])
    upper = fs.edge("cut").path + fs.edge("fall").path
    side = joined(upper, fs.edge("leg side").path)
    sheet = redraw(sheet, "FS", ["cut", "fall", "leg side"], [Edge("panel", side)])
    fc = sheet.piece("FC")
    lower = joined(fc.edge("leg cf").path, fc.edge("fall").path)
    edges = [
        Edge("panel low", lower),
        Edge("dart panel low", fc.edge("dart low").path),
        Edge("dart panel high", fc.edge("dart high").path),
        Edge("panel", fc.edge("cut").path),
    ]
    run = ["leg cf", "fall", "dart low", "dart high", "cut"]
    sheet = keep_open(redraw(sheet, "FC", run, edges), _REST)
    line = bridged(sheet.piece("FC"), _REST, _BRIDGE)
    sheet = redraw(sheet, "FC", _REST.run, [Edge("panel", line)])
    d.found("J", _level(sheet, d["P2"].y), "side front, level with the line's place P2")
    d.lay(
        Verb.REDRAW,
        sheet.named(J=d["J"]),
        "FC.panel",
        "panel edges, each one line; that of the front over the rest of the dart",
        amounts=(("it is open there by {}", "rest_f"),),
        lines=(line, side),
    )


def _level(sheet: Sheet, y: float) -> Point:
    side = sheet.edge("FS", "side").path
    share = (y - side.start.y) / (side.end.y - side.start.y)
    return side.at_length(side.length * min(0.95, max(0.05, share)))


def open_rest(d: Drafting) -> None:
    """Cut the rest of the bust dart into the panel edge again where it is too much to
    be eased, and into its lining's; the seam takes both parts of that edge then."""
    if d.n.rest_f <= MOST_EASE:
        return
    d.part = "front"
    _cut_again(d, _REST, "S1")
    set_back(d, _REST.legs, "Ap", "set_back_p", "FC")
    if _lined(d.sheet):
        d.part = "lining"
        _cut_again(d, _REST_LINED, "LS1")
        _to_point(d)


def _lined(sheet: Sheet) -> bool:
    """True when the lining of the centre front reaches above the rest of the dart."""
    code = _REST_LINED.piece
    if code not in sheet.pieces or not sheet.piece(code).has("panel"):
        return False
    line, mouth_at = sheet.edge(code, "panel").path, sheet.lines[_REST.kept(_REST.last)]
    at = line.length_to_point(mouth_at.start)
    return line.length - at > _LEAST_ABOVE


def _to_point(d: Drafting) -> None:
    """The legs of the lining's dart to the stitched end of the shell's."""
    code, (low, high) = _REST_LINED.piece, _REST_LINED.legs
    p = d.sheet.piece(code)
    a, b = p.edge(low).path.start, p.edge(high).path.end
    new = [straight(low, a, d["Ap"]), straight(high, d["Ap"], b)]
    d.sheet = redraw(d.sheet, code, list(_REST_LINED.legs), new)


def _cut_again(d: Drafting, o: Opened, code: str) -> None:
    """The panel edge of a piece as it was about the rest of the dart, and as it is now
    further up and down."""
    now = d.sheet.edge(o.piece, "panel").path
    before = now.length
    kept = {e: d.sheet.lines[_REST.kept(e)] for e in _REST.run}
    low, high = kept[o.first], kept[o.last]
    a, b = (min(_BRIDGE, 0.8 * k.length) for k in (low, high))
    tail, head = low.between(low.length - a, low.length), high.between(0.0, b)
    below = now.between(0.0, now.length_to_point(tail.start))
    kept[o.first] = below + tail.pinned(below.end, tail.end)
    at = now.length_to_point(head.end)
    if at < now.length - CLOSE:
        above = now.between(at, now.length)
        kept[o.last] = head.pinned(head.start, above.start) + above
    else:  # a lining that ends at the facing's edge before that
        short = head.between(0.0, head.length_to_point(now.end))
        kept[o.last] = short.pinned(short.start, now.end)
    edges = [Edge(e, path) for e, path in kept.items()]
    sheet = redraw(d.sheet, o.piece, ["panel"], edges)
    old = sheet.seam(code)
    seam = replace(
        old,
        left=(Run(o.piece, "panel", True), Run(o.piece, "panel low", True)),
        ease=Ease.about(0.0, old.ease.high - old.ease.plan),
        zone=None,
    )
    less = before - sheet.chain_length(seam.left)
    joint = sheet.length(o.piece, "panel")
    notches = tuple(
        NotchPair(k.left - less if k.left > joint else k.left, k.right, k.ticks, k.note)
        for k in old.notches
    )
    sheet = sheet.sew(replace(seam, notches=notches), dart_seam(o))
    d.lay(
        Verb.REDRAW,
        off_corners(sheet, o.piece),
        f"{o.piece}.panel",
        "rest of the bust dart cut into the panel edge, for more would be eased there "
        f"than {MOST_EASE:g} cm",
        amounts=(
            ("it is open there by {}", distance(*mouth(sheet.piece(o.piece), o))),
        ),
    )


def findings_beside(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Checks of a panel line beside the bust point."""
    legs = sheet.piece("FC")
    if legs.has(_REST.leg_first):
        long = legs.edge(_REST.leg_first).length
        if long < _LEAST_DART:
            yield Finding(
                "P14",
                Severity.WARN,
                f"The rest of the bust dart, {n.rest_f:.1f} cm, would be sewn in a "
                f"dart only {long:.1f} cm long.",
                "beside f",
                "Bring the panel line nearer to the bust point, where the rest is "
                "eased in, or further from it.",
                {"long": long},
            )
    closer = "Take the panel line (beside f) nearer to the bust point."
    yield from waist_findings(n, sheet, closer)


def tightened(d: Drafting) -> None:
    """The armhole drawn in, where that is ordered, before the line is drawn."""
    if d.n.ta > 0:
        tighten_armhole(d)
