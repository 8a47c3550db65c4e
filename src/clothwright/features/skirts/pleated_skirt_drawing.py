"""The panel of a pleated skirt, as its pleats lie and open (transformations 10)."""

from collections.abc import Iterable
from dataclasses import replace

from clothwright.curves import Path, Point, shift
from clothwright.features.grain import grained
from clothwright.features.skirts.about import GORE
from clothwright.features.skirts.folds import (
    ARROW_BELOW,
    Pleats,
    Strip,
    fold_lines,
    placement_line,
    pleat_seam,
)
from clothwright.features.skirts.gored_skirt import draft_gore
from clothwright.paper import (
    UNDER,
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Piece,
    Run,
    Verb,
)
from clothwright.rules import Numbers

LEAST_AT_WAIST = 0.8
"""A pleat shows at least so much at the waist, cm; less is no pleat (our own)."""

SEAM = "S54."
"""Begins the codes of the seams of pleats."""


def draw_closed(d: Drafting, *, box: bool) -> None:
    """The panel as its pleats lie, which facing and lining are traced from."""
    if d.n.pg > 0 and not box:
        raise PaperError(
            "knife pleats lie edge to edge: leave the gap (pg) out, or choose box "
            "pleats"
        )
    seen_at_waist(d.n.pv, d.n.pt)
    draft_gore(d, "panel")


def seen_at_waist(face: float, taken: float) -> None:
    """Raises PaperError where too little of a pleat is seen at the waist."""
    left = face - taken
    if left < LEAST_AT_WAIST:
        raise PaperError(
            f"at the waist {max(0.0, left):.1f} cm of each pleat is seen, of "
            f"{face:.1f} cm at the hip, and {LEAST_AT_WAIST:g} cm can be stitched: "
            "choose wider pleats (pv wanted), or measure W and H again"
        )


def lay_open(d: Drafting, *, box: bool) -> None:
    """Draw the panel with its pleats open, its upper edge as the folded paper gives
    it."""
    n = d.n
    d.part = "panel"
    k = pleats_of(n, box=box)
    piece, names = opened(d.sheet.piece(GORE), k, n.p_down)
    sheet = d.sheet.put(piece)

    def where(run: Run) -> tuple[Run, ...]:
        if run.edge != "waist":
            return (run,)
        runs = [Run(GORE, name, run.backward) for name in names]
        return tuple(reversed(runs) if run.backward else runs)

    sheet = sheet.with_runs(where, GORE)
    seams = [
        pleat_seam(
            f"{SEAM}{j}",
            f"pleat {j}",
            Run(GORE, f"{UNDER} {j}"),
            Run(GORE, f"{UNDER} {j} over", backward=True),
        )
        for j in range(1, len(k.strips()) + 1)
    ]
    d.lay(
        Verb.REDRAW,
        sheet.sew(*seams),
        GORE,
        f"panel with its {round(n.pn)} pleats laid open",
        amounts=(
            ("each wide at the hip", "pv"),
            ("folded under", "pu"),
            ("taken in at the waist by each", "pt"),
            ("wide in all", "p_cloth"),
        ),
        detail="ruled plumb below the hip and slanting to the waist; fold the paper, "
        "draw the waist across, cut, and open it: so every edge is trued",
        lines=(piece.outline,),
    )


def pleats_of(n: Numbers, *, box: bool) -> Pleats:
    """The pleats of a panel as the numbers have them, taken in until the curved tops
    are as long as the waist."""
    folds = 2 if box else 1
    k = Pleats(round(n.pn), n.pv, n.pu, n.pg, n.pt / folds, box, n.WH, n.L)
    for _ in range(3):
        k = replace(k, taken=k.taken + (k.waist - n.w_gore) / (folds * k.count))
    return k


def opened(closed: Piece, k: Pleats, down: float) -> tuple[Piece, list[str]]:
    """The panel laid open, and the names of what shows of its waist."""
    strips = k.strips()
    strips.append(strips[0].moved(k.width))  # the next panel's first
    pairs = [k.pair(s, t) for s, t in zip(strips, strips[1:], strict=False)]
    last = len(pairs)
    first = pairs[-1][1].moved(shift(Point(-k.width, 0.0)))
    top = [Edge(f"{UNDER} {last} over", first)]
    names: list[str] = []
    for j, s in enumerate(strips[:-1], 1):
        if s.right - s.left > 0.01:
            names.append(f"waist {len(names) + 1}")
            top.append(Edge(names[-1], k.top(s)))
        top.append(Edge(f"{UNDER} {j}", pairs[j - 1][0]))
        if j < last:
            top.append(Edge(f"{UNDER} {j} over", pairs[j - 1][1]))
    top = joined(top)
    end = top[-1].path.end
    hip, foot = Point(k.width, k.hip), Point(k.width, k.length)
    seam = Path.line(end, hip) + Path.line(hip, foot)
    zero = Point(0.0, k.hip), Point(0.0, k.length)
    other = Path.line(zero[1], zero[0]) + Path.line(zero[0], top[0].path.start)
    edges = (
        *top,
        Edge("seam", seam),
        Edge("hem", Path.line(foot, zero[1]), EdgeKind.FINISHED),
        Edge("other seam", other),
    )
    lines = [
        InnerLine("hip", Path.line(zero[0], hip)),
        *_lines(k, strips),
    ]
    if abs(down - k.hip) > 0.1:
        level = Path.line(Point(0.0, down), Point(k.width, down))
        lines.append(InnerLine("stitched down to here", level))
    return grained(Piece(GORE, closed.name, edges, lines=tuple(lines))), names


def joined(edges: list[Edge]) -> list[Edge]:
    """Edges of which each ends exactly where the next begins."""
    out = list(edges)
    for i, e in enumerate(out[:-1]):
        out[i] = e.along(e.path.pinned(e.path.start, out[i + 1].path.start))
    return out


def _lines(k: Pleats, strips: list[Strip]) -> Iterable[InnerLine]:
    """Fold, placement line and arrow of every pleat; the last one's other half lies at
    the panel's left."""
    level = k.hip + ARROW_BELOW
    last = len(strips) - 1
    for j, (s, t) in enumerate(zip(strips, strips[1:], strict=False), 1):
        a, b = k.crease(s, right=True), k.crease(t, right=False)
        fold, placed = (a, b) if s.folds[1] else (b, a)
        if j < last:
            yield from fold_lines(f"pleat {j}", fold, placed, level)
            continue
        back = shift(Point(-k.width, 0.0))
        fold, placed = (p.moved(back) if p is b else p for p in (fold, placed))
        yield from fold_lines(f"pleat {j}", fold, None, level)
        yield placement_line(f"pleat {j}", placed)
