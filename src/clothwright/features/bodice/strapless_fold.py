"""The wedges of a strapless bodice, folded out above and between the busts
(transformations 1.8)."""

from clothwright.curves import Path, Point, direction, turn
from clothwright.paper import Drafting, Edge, PaperError, Verb, pivot, redraw, straight


def fold_out(d: Drafting) -> None:
    """Fold a wedge out above the bust, and one between the busts; the side dart opens
    by both."""
    n, bp = d.n, d["BP"]
    d.part = "front"
    if n.phi_between > 0:
        neck = d.sheet.edge("F", "neck").path  # from the shoulder
        to = neck.at_length(_NEAR_CENTRE * neck.length)
        d.found(
            "Mc",
            bp + direction(bp, to) * n.reach_between,
            "where the top edge is drawn in between the busts",
            amounts=(("from BP", "reach_between"),),
            detail="on a line from BP to the neck, close to its centre",
        )
        _fold(d, "Mc", "cm", "phi_between")
    if n.phi_above > 0:
        up = Point(bp.x, bp.y - n.ht)
        says = "where the top edge is drawn in above the bust"
        d.found("Mn", up, says, amounts=(("up from BP", "ht"),))
        _fold(d, "Mn", "cn", "phi_above")


def no_shoulder_dart(d: Drafting) -> None:
    """Raises PaperError where a dart was ordered in the shoulder that is cut away."""
    if d.sheet.piece("B").has("shoulder dart neck"):
        raise PaperError(
            "a strapless bodice has no shoulder for a dart: leave the back "
            "shoulder dart (sd) out"
        )


_NEAR_CENTRE = 0.85
"""The wedge between the busts runs up to this share of the block's neck, from the
shoulder."""

_WEDGE = ("wedge a", "wedge b")
_UPPER = ("armhole", "shoulder", "neck")


def _fold(d: Drafting, mark: str, amount: str, angle: str) -> None:
    bp, f = d["BP"], d.sheet.piece("F")
    ray = Path.line(bp, bp + direction(bp, d[mark]) * 80.0)
    hits = [
        (t, s, name)
        for name in _UPPER
        for s, t in f.edge(name).path.meets(ray)
        if 0.01 < s < f.edge(name).length - 0.01
    ]
    if not hits:
        raise PaperError(
            "the wedge of the top edge does not meet the outline: look at "
            "NBP and BPS again"
        )
    _, s, name = min(hits)
    a, b = f.edge(name).path.split_at_length(s)
    slit = [
        Edge(name, a),
        straight(_WEDGE[0], a.end, bp),
        straight(_WEDGE[1], bp, a.end),
        Edge(f"{name} in", b),
    ]
    sheet = redraw(d.sheet, "F", [name], slit)
    sheet = pivot(sheet, "F", "dart high", _WEDGE[0], d.n[angle])
    m = turn(bp, d.n[angle])
    head = a.moved(m)
    one = Path.line(head.start, b.end)
    if name != "shoulder":
        one = head.pinned(head.start, b.start) + b
    sheet = redraw(sheet, "F", [e.name for e in slit], [Edge(name, one)])
    moved = {k: m(sheet.points[k]) for k in ("G", "U1", "pf", "tf", "Tf")}
    if name == "neck":
        moved |= {k: m(sheet.points[k]) for k in ("hf", "Nf", "Nf′")}
    if name == "armhole":
        moved = {k: p for k, p in moved.items() if k not in ("tf", "Tf", "pf")}
    d.lay(
        Verb.MOVE,
        sheet.named(**moved),
        "F",
        f"wedge folded out at {mark}, to nothing at BP",
        amounts=(
            (f"by {{}} at {mark}", amount),
            ("the side dart opens by {}", angle),
        ),
        frm=("BP",),
        detail="on a line from BP over the mark to the edge of the paper; what lies "
        "above the top edge is cut away later",
    )
