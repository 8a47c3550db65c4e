"""The hip yoke of a wrap skirt: cut off the half of its front, and led on over what
crosses the centre (transformations §1.5; the crossing common practice, no source)."""

from collections.abc import Iterable

from clothwright.curves import Path, Point, Vector, mirror_in
from clothwright.features.skirts.wrap_skirt_drawing import CENTRE, EDGE
from clothwright.paper import Edge, EdgeKind, InnerLine, Piece, Run, meetings, straight

OVER = " over"
"""Ends the names of edges beyond the centre."""

FOOT, YOKE = "foot of yoke", "yoke"
"""Lower edge of a yoke, and the edge that it is sewn to."""

_REACH = 100.0


def half_of(front: Piece) -> Piece:
    """The half of a front that crosses, from its centre, as a fold, to its side."""
    fold = next(k.path for k in front.lines if k.name == CENTRE)
    hem = front.edge("hem")
    beyond = hem.path.length_to_point(fold.end)
    rest = hem.along(
        hem.path.between(beyond, hem.length).pinned(fold.end, hem.path.end)
    )
    loop = front.rolled_to("hem")[1:]
    kept = [e for e in loop if not _crosses(e.name)]
    return Piece(
        front.code,
        front.name,
        (Edge("cf", fold, EdgeKind.FOLD), rest, *kept),
        front.marks,
        front.lines,
    )


def _crosses(name: str) -> bool:
    return name == EDGE or OVER in name or name.endswith(" mirrored")


def led_over(
    front: Piece, yoke: Piece, lower: Piece, crossing: float
) -> tuple[Piece, Piece]:
    """Yoke and lower front, which end at their fold, unfolded there to the edge of
    `front`: `crossing` cm along the waist, and below it as far along the yoke's seam as
    the edge lies plumb. Raises PaperError."""
    fold = lower.edge("cf").path
    m = mirror_in(fold.start, fold.start + Vector(0.0, 1.0))
    edge = front.edge(EDGE)
    x = edge.path.start.x
    plumb = Path.line(Point(x, -_REACH), Point(x, _REACH))
    seam = lower.edge(YOKE).path.moved(m).reversed()
    fault = (
        "the edge of the wrap does not cross the seam of the hip yoke: make the "
        "crossing (wx S) less"
    )
    far = meetings(seam, plumb, fault)[0][0]
    top = seam.between(0.0, far)
    opened = _edges(
        lower,
        (
            Edge(YOKE + OVER, top),
            straight(EDGE, top.end, edge.path.end, edge.kind),
            front.edge("hem"),
        ),
    )
    waist = yoke.edge("waist").path.moved(m).reversed().between(0.0, crossing)
    foot = yoke.edge(FOOT).path.moved(m)
    foot = foot.between(0.0, min(far, foot.length)).reversed()
    above = _edges(
        yoke,
        (
            Edge("waist" + OVER, waist),
            straight(EDGE, waist.end, foot.start, edge.kind),
            Edge(FOOT + OVER, foot),
        ),
        keep=(FOOT,),
    )
    centre = InnerLine(CENTRE, yoke.edge("cf").path)
    return yoke.with_edges(above).with_lines(centre), lower.with_edges(opened)


def _edges(
    half: Piece, beyond: tuple[Edge, ...], keep: tuple[str, ...] = ()
) -> tuple[Edge, ...]:
    """The loop of a half with these edges in place of its fold, and of its hem unless
    that is kept."""
    rest = half.rolled_to("cf")[1:]
    return (*beyond, *(e for e in rest if e.name != "hem" or e.name in keep))


def beside(runs: Iterable[Run]) -> tuple[Run, ...]:
    """The yoke's seam from the front edge: what crosses, and on to the side."""
    return tuple(r for run in runs for r in (run._replace(edge=run.edge + OVER), run))
