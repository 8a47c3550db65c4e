"""The torso block: front and back of a bodice run on below the waist (blocks D).

Drawn when panels and centre back are final: each piece keeps its lines above the waist
and loses its waist edge. A waist dart of a half in one piece becomes a fish-eye dart
inside it, a panel seam runs on to the hem. cm, y down, nape at the origin.
"""

from dataclasses import dataclass

from clothwright.blocks.flare import square_hem
from clothwright.blocks.skirt_curves import Half
from clothwright.curves import (
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    direction,
    distance,
    midpoint,
    mirror_in,
    shift,
    unit,
)
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    Mark,
    MarkKind,
    Piece,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Numbers

SIDE_TAIL, PANEL_TAIL = 8.0, 6.0
"""A side and a panel seam are rounded into the waist over so much above it, cm (D4: a
radius of at least 8)."""

FISH_EYE = "waist dart"
"""Name of the inner line of a fish-eye dart."""

HIP_LINE, WAIST_LINE = "hip line", "waist line"


@dataclass(frozen=True)
class _Half:
    """What tells the drafting of one half from that of the other."""

    name: str
    whole: str
    centre: str
    flank: str
    """Codes of the half in one piece, and of its two panels."""

    mark: str
    """Ends the names of its marks."""

    front: bool
    width: str
    """Key of the half width at the hip."""

    below: str
    """Key of the dart's length below the waist."""

    lower: str
    """Mark of the dart's lower end."""


HALVES = (
    _Half("back", "B", "BC", "BS", "b", False, "xh", "lb_T", "Pd2"),
    _Half("front", "F", "FC", "FS", "f", True, "xh_f", "lf_T", "Pf2"),
)


def _below_hip(n: Numbers, h: "_Half", more: float) -> tuple[Path, Path]:
    """Side and hem of a half below its hip, on the page, both from the side's point;
    the side `more` longer than the centre."""
    whole = n.below_hip + n.WH + more
    side = Half(n[h.width], 0.0, 0.0, 0.0, n.WH, n.fl_T, whole).side()
    side = side.between(n.WH, side.length)
    hem = square_hem(side, n.below_hip + n.WH)
    onto = shift((0.0, n.yW))
    if h.front:
        onto = onto @ mirror_in(Point(n.X / 2, 0.0), Point(n.X / 2, 1.0))
    return side.moved(onto), hem.moved(onto)


def side_line(upper: Path, waist: Point, hip: Point, below: Path) -> Path:
    """The side from the underarm, or from a dart, down to the hem: straight as drafted,
    then in one curve through the waist into the plumb at the hip."""
    tail = min(SIDE_TAIL, 0.6 * upper.length)
    kept = upper.between(0.0, upper.length - tail)
    p, u = kept.end, kept.end_direction
    above, under = distance(p, waist), distance(waist, hip)
    t = unit(direction(p, waist) * under + direction(waist, hip) * above)
    curve = (
        Cubic(p, p + u * (above / 3), waist - t * (above / 3), waist),
        Cubic(waist, waist + t * (0.33 * under), hip - Vector(0.0, 0.42 * under), hip),
    )
    return Path((*kept.segments, *curve)) + below


def panel_line(upper: Path, x: float, y: float, foot: Point) -> Path:
    """A panel edge from its start down to the hem: plumb at the waist, where it ends so
    far, and again from (x, y), where the dart ends."""
    tail = min(PANEL_TAIL, 0.4 * upper.length)
    kept = upper.between(0.0, upper.length - tail)
    p, u, waist, end = kept.end, kept.end_direction, upper.end, Point(x, y)
    reach, down = tail / 3, Vector(0.0, 1.0)
    l2 = (end.y - waist.y) * 0.4
    return Path(
        (
            *kept.segments,
            Cubic(p, p + u * reach, waist - down * reach, waist),
            Cubic(waist, waist + down * l2, end - down * l2, end),
            Line(end, foot),
        )
    )


def extend(d: Drafting, long: str = "L", foot: str = "hem") -> None:
    """Run both halves on below the waist; `long` is the key of how far, `foot` what
    they end in there."""
    for h in HALVES:
        d.part = h.name
        _extend(d, h, long, foot)


def _extend(d: Drafting, h: _Half, long: str, foot: str) -> None:
    n = d.n
    lower = _marks(d, h, long, foot)
    sheet = d.sheet
    if h.whole in sheet.pieces:
        sheet = _one_piece(d, sheet, h, lower)
    else:
        sheet = _panels(sheet, h, lower, n.yW + n[h.below])
    codes = [c for c in (h.whole, h.centre, h.flank) if c in sheet.pieces]
    sheet = sheet.put(*(_lined(sheet.piece(c), n) for c in codes))
    amounts = [("below the waist", long)]
    detail = "the side in one curve through the waist, plumb at the hip"
    if len(codes) > 1:
        amounts.append(("each panel edge plumb again from {} below the waist", h.below))
        detail += "; each panel edge plumb at the waist"
    elif h.lower in sheet.points:
        detail += f"; the waist dart ruled on from its ends at the waist to {h.lower}"
    drawn = (e for c in codes for e in sheet.piece(c).edges)
    d.lay(
        Verb.REDRAW,
        sheet,
        ", ".join(codes),
        f"{h.name} run on below the waist to the {foot}",
        amounts=amounts,
        frm=(f"w{h.mark}", f"H{h.mark}s", f"M{h.mark}s"),
        detail=detail,
        lines=tuple(
            e.path for e in drawn if e.name.startswith(("side", "panel", "hem"))
        ),
    )


@dataclass(frozen=True)
class _Lower:
    """The lines below the waist, on the page; `hem` runs clockwise round the loop."""

    waist: Point
    hip: Point
    below: Path
    hem: Path
    centre: Path
    """From the waist down to the hem."""


def _marks(d: Drafting, h: _Half, long: str, end: str) -> _Lower:
    """The marks of the half, and the lines drawn from them."""
    n, m = d.n, h.mark
    level = "CFw" if h.front else "CBw"
    out = "left" if h.front else "right"
    hip = d.point(
        f"H{m}s",
        level,
        f"side of the {h.name} at the hip",
        down="WH",
        **{out: h.width},
    )
    foot = d.point(f"M{m}", level, f"centre {h.name} at the {end}", down=long)
    waist = d.point(
        f"w{m}",
        f"w{m}",
        f"side waist of the {h.name}, moved",
        right="side_shift",
    )
    below, hem = _below_hip(n, h, 0.0)
    if h.front:  # as long as the back's, which is levelled at the hem (truing 2)
        below, hem = _below_hip(n, h, _short(d.sheet, waist, hip, below))
    below = below.pinned(hip, below.end)
    d.found(
        f"M{m}s",
        below.end,
        f"side of the {h.name} at the {end}",
        amounts=(
            ("down from the hip along the side", below.length),
            ("outside the plumb of the hip", "fl_T"),
        ),
    )
    if h.front:
        hem = hem.reversed().pinned(foot, below.end)
        centre = Path.line(d["CFw"], foot)
    else:
        hem = hem.pinned(below.end, foot)
        centre = _centre_back(d, foot)
    return _Lower(waist, hip, below, hem, centre)


def _short(sheet: Sheet, waist: Point, hip: Point, below: Path) -> float:
    """What the front's side lacks to the back's length, its side darts closed, cm."""
    back = sheet.length("BS" if "BS" in sheet.pieces else "B", "side")
    front = sheet.piece("FS" if "FS" in sheet.pieces else "F")
    first = "neck" if front.has("neck") else "waist"
    low, *above = [e.path for e in front.rolled_to(first) if e.name.startswith("side")]
    line = side_line(low.reversed(), waist, hip, below)
    return back - line.length - sum(p.length for p in above)


def _centre_back(d: Drafting, foot: Point) -> Path:
    """Plumb at the waist, where the seam takes in, and from the hip down."""
    top = d["CBz"] if "CBz" in d.sheet.points else d["CBw"]
    hip = d.point("CBh", "CBw", "centre back at the hip", down="WH")
    reach = Vector(0.0, 0.4 * (hip.y - top.y))
    curve = Cubic(top, top + reach, hip - reach, hip)
    first = Path((curve,)) if top.x > 1e-9 else Path.line(top, hip)
    return first + Path.line(hip, foot)


def _one_piece(d: Drafting, sheet: Sheet, h: _Half, lower: _Lower) -> Sheet:
    """A half with a fish-eye dart, where it has a dart."""
    p = sheet.piece(h.whole)
    upper = "neck" if p.has("neck") else "top edge"  # of a strapless bodice
    run = [e for e in p.rolled_to(upper) if e.name.startswith(_WAIST)]
    legs = [e.path for e in run if e.name.startswith("leg")]
    before, after = p.before(run[0].name), p.after(run[-1].name)
    new = _grown(before, after, h, lower)
    sheet = redraw(
        sheet, h.whole, [before.name, *(e.name for e in run), after.name], new
    )
    if not legs:
        return sheet
    a, top, b = legs[0].start, legs[0].end, legs[1].end
    d.sheet = sheet
    end = d.found(
        h.lower,
        midpoint(a, b) + Vector(0.0, d.n[h.below]),
        f"lower end of the {h.name} waist dart",
        amounts=(("below the waist", h.below),),
        detail="on the dart's own centre line",
    )
    loop = Path((Line(top, a), Line(a, end), Line(end, b), Line(b, top)))
    marks = (
        Mark(f"{FISH_EYE}, {name}", at, MarkKind.DRILL)
        for name, at in zip(_ENDS, (top, a, end, b), strict=True)
    )
    piece = sheet.piece(h.whole).with_lines(InnerLine(FISH_EYE, loop))
    return d.sheet.put(piece.with_marks(*marks))


_WAIST = ("waist", "leg")
"""How the edges of a waist and of its dart begin."""


def _grown(before: Edge, after: Edge, h: _Half, lower: _Lower) -> list[Edge]:
    """Centre, hem and side of a half in one piece, clockwise."""
    if h.front:
        side = side_line(
            after.path.reversed(), lower.waist, lower.hip, lower.below
        ).reversed()
        return [
            before.along(before.path + lower.centre),
            Edge("hem", lower.hem, EdgeKind.FINISHED),
            after.along(side),
        ]
    side = side_line(before.path, lower.waist, lower.hip, lower.below)
    return [
        before.along(side),
        Edge("hem", lower.hem, EdgeKind.FINISHED),
        after.along(lower.centre.reversed() + after.path),
    ]


def _panels(sheet: Sheet, h: _Half, lower: _Lower, apex: float) -> Sheet:
    """Both panels, their seam run on to the hem."""
    c, f = sheet.piece(h.centre), sheet.piece(h.flank)
    panel_c, panel_f = c.edge("panel"), f.edge("panel")
    down_c = panel_c.path if not h.front else panel_c.path.reversed()
    down_f = panel_f.path if h.front else panel_f.path.reversed()
    x = (down_c.end.x + down_f.end.x) / 2
    plumb = Path.line(Point(x, apex), Point(x, apex + 300.0))
    at = lower.hem.meets(plumb)[0][0]
    first, second = lower.hem.split_at_length(at)
    foot = first.end
    line_c = panel_line(down_c, x, apex, foot)
    line_f = panel_line(down_f, x, apex, foot)
    finished = EdgeKind.FINISHED
    if h.front:
        cf, side = c.before("waist"), f.after("waist")
        whole = side_line(
            side.path.reversed(), lower.waist, lower.hip, lower.below
        ).reversed()
        new_c = [
            cf.along(cf.path + lower.centre),
            Edge("hem", first, finished),
            panel_c.along(line_c.reversed()),
        ]
        new_f = [
            panel_f.along(line_f),
            Edge("hem", second, finished),
            side.along(whole),
        ]
    else:
        cb, side = c.after("waist"), f.before("waist")
        whole = side_line(side.path, lower.waist, lower.hip, lower.below)
        new_f = [
            side.along(whole),
            Edge("hem", first, finished),
            panel_f.along(line_f.reversed()),
        ]
        new_c = [
            panel_c.along(line_c),
            Edge("hem", second, finished),
            cb.along(lower.centre.reversed() + cb.path),
        ]
    for p, new in ((c, new_c), (f, new_f)):
        sheet = sheet.drawn(**{f"waist of {p.code}": p.edge("waist").path})
        run = [new[0].name, "waist", new[2].name]
        sheet = redraw(sheet, p.code, run, new)
    return sheet


def _lined(p: Piece, n: Numbers) -> Piece:
    """The piece with its waist and its hip ruled across; the grain runs down it all."""
    lines = (
        InnerLine(name, Path.line(Point(-60.0, y), Point(160.0, y)))
        for name, y in ((WAIST_LINE, n.yW), (HIP_LINE, n.yW + n.WH))
    )
    return p.with_lines(*lines)


# -- measuring it ----------------------------------------------------------------------
PIECES = ("F", "FC", "FS", "B", "BC", "BS")
"""Codes of the pieces that a torso may be of."""


def in_one(sheet: Sheet) -> bool:
    """True when the bodice on the table runs on below the waist."""
    return any(c in sheet.pieces and sheet.piece(c).has("hem") for c in ("F", "FC"))


def fish_eye(sheet: Sheet, code: str) -> Path | None:
    """The fish-eye dart of a piece, from its upper end round; None without one."""
    lines = sheet.pieces[code].lines if code in sheet.pieces else ()
    return next((k.path for k in lines if k.name == FISH_EYE), None)


_ENDS = ("upper end", "at the waist", "lower end", "at the waist again")
"""Where a fish-eye dart is drilled, round from its upper end."""


def fish_eye_ends(sheet: Sheet, code: str) -> tuple[Point, Point, Point, Point]:
    """Upper end, one side of the waist, lower end and the other side of a fish-eye
    dart."""
    at = {k.name: k.at for k in sheet.piece(code).marks}
    a, b, c, e = (at[f"{FISH_EYE}, {name}"] for name in _ENDS)
    return a, b, c, e


def stitched(sheet: Sheet, code: str) -> float:
    """One leg of a fish-eye dart from point to point, cm."""
    dart = fish_eye(sheet, code)
    return dart.length / 2 if dart else 0.0
