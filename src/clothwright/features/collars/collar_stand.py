"""The stand of a collar: a band bowed up towards the front (transformations 5)."""

from collections.abc import Iterable
from dataclasses import replace

from clothwright.blocks.collar import bow_radius, bowed, rounded_corner
from clothwright.curves import Path, Point, Vector, inset, turned
from clothwright.features.base import Number
from clothwright.features.collars.collar import SRC
from clothwright.features.collars.collar_neck import beyond, closed_neck, opens_behind
from clothwright.features.collars.collar_pieces import STAND
from clothwright.features.grain import longest_line
from clothwright.features.openings.stand_button import laps_for_button, with_button
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    PaperError,
    Piece,
    Sheet,
    Verb,
    meetings,
)
from clothwright.rules import Numbers

HEIGHT = Number(
    "c_high",
    "collar height",
    "height of the stand behind",
    SRC,
    3.0,
    1.25,
    1.5,
    7,
    (2.5, 4),
)
RISE = Number(
    "c_rise",
    "collar rise",
    "rise of the stand to the front",
    SRC,
    1.5,
    0.625,
    0,
    6,
    (1, 2.5),
)
CORNER = Number(
    "c_corner",
    "collar corner",
    "rounding of the stand's open corners",
    SRC,
    1.5,
    0.625,
    0.0,
    3.0,
)

_ON_LINE = 0.05
"""What runs on beyond a centre line by less ends on it, cm."""

_NO_UPPER = (
    "the stand bends so far up that its front has no upper edge: make its rise (collar "
    "rise) less"
)

ROOM = 0.8
"""The upper edge is at least so much longer than half the neck (NK), cm."""


def draft_stand(d: Drafting, front: float, *, fall: bool = False) -> None:
    """The stand CS, `front` high at the centre front: as long as the trued neck from
    the centre back to the front, ending higher by its rise; beyond the centre line
    that opens as long as what laps over there. Under a fall only what laps over is
    rounded."""
    n = d.n
    d.part = "collar"
    neck = closed_neck(d.sheet, n.Lr)
    behind = opens_behind(d.sheet)
    more = beyond(d.sheet, "B" if behind else "F")
    whole = neck.length + (0.0 if behind else more)
    start = d.start("Xb", Point(0.0, 0.0), "centre back of the stand, at its foot")
    foot = bowed(start, whole, n.c_rise)
    d.found(
        "Xs",
        foot.at_length(neck.back.length),
        "shoulder on the stand",
        frm=("Xb",),
        amounts=(("along by the back neck, {}", neck.back.length),),
    )
    bow = (("an arc of radius {}", bow_radius(whole, n.c_rise)),) if n.c_rise else ()
    lap = (("of it beyond the centre, to lap over, {}", more),) if more else ()
    d.found(
        "Xf",
        foot.end,
        "front end of the stand",
        frm=("Xb",),
        amounts=(
            ("along by the half neck, {}", whole),
            *(() if behind else lap),
            ("higher by {}", "c_rise"),
            *bow,
        ),
    )
    if behind and more:
        foot = Path.line(start - Vector(more, 0.0), start) + foot
    d.draw("collar neck", foot, "neck edge of the stand", frm=("Xb", "Xs", "Xf"))
    centre = more if behind else neck.length
    corner = 0.0 if fall and not more else n.c_corner
    heights = n.c_high, front
    high = n.c_high if behind else front
    if corner > high - _ON_LINE:
        raise PaperError(
            f"the end of the stand is {high:.1f} cm high and its corner is rounded by "
            f"{corner:.1f} cm: make that (collar corner) {high - 0.1:.1f} cm or less"
        )
    piece = Piece(
        STAND, "Stand", stand_edges(foot, heights, centre, corner, behind=behind)
    )
    fold = piece.fold
    assert fold is not None
    round_neck = longest_line(piece, turned(fold.path.start_direction, 90))
    piece = replace(piece, grain=round_neck)
    says = "its ends square to the neck edge"
    if laps_for_button(n, more):
        at, way = foot.at_length(centre), foot.direction_at_length(centre)
        high = n.c_high if behind else front
        piece = with_button(n, piece, at, way * (-1 if behind else 1), high)
        says += ", its button on the centre line, half way up"
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        STAND,
        "stand of the collar",
        amounts=(("high behind", "c_high"), ("high in front", front)),
        frm=("Xb", "Xf"),
        detail=says,
    )


def stand_edges(
    foot: Path,
    heights: tuple[float, float],
    centre: float,
    corner: float,
    *,
    behind: bool,
) -> tuple[Edge, ...]:
    """Edges of the stand above its foot, so high behind and in front; the foot crosses
    the centre line that opens at a length `centre`."""
    upper = inset(foot.reversed(), *heights[::-1]).reversed()
    down, up = Path.line(upper.end, foot.end), Path.line(foot.start, upper.start)
    seam, fold = EdgeKind.SEAM, EdgeKind.FOLD
    at, way = foot.at_length(centre), foot.direction_at_length(centre)
    plumb = Path.line(at, at + Vector(way.y, -way.x) * 20.0)
    lap = centre if behind else foot.length - centre
    if lap >= _ON_LINE:  # a corner rounded off past the centre would leave no lap
        met = meetings(upper, plumb, _NO_UPPER)[0][0]
        past = met if behind else upper.length - met
        corner = min(corner, max(0.0, past - _ON_LINE))
    if behind:  # it opens at the centre back, and lies on the fold in front
        up, upper = rounded_corner(up, upper, corner)
        left, right = Edge("end", up, seam), Edge("cf", down, fold)
    else:
        upper, down = rounded_corner(upper, down, corner)
        left, right = Edge("cb", up, fold), Edge("end", down, seam)
    if lap < _ON_LINE:
        return (Edge("upper", upper), right, Edge("neck", foot.reversed()), left)
    above = upper.split_at_length(meetings(upper, plumb, _NO_UPPER)[0][0])
    below = foot.split_at_length(centre)
    names = ("{} stand", "{}") if behind else ("{}", "{} stand")
    tops = [Edge(k.format("upper"), p) for k, p in zip(names, above, strict=True)]
    feet = [
        Edge(k.format("neck"), p.reversed()) for k, p in zip(names, below, strict=True)
    ]
    return (*tops, right, *reversed(feet), left)


def stand_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """The upper edge goes round the neck with room (transformations 5)."""
    upper = sheet.length(STAND, "upper")
    least = n.NK / 2 + ROOM
    if "lace_gap" in n:
        least -= n.lace_gap / 2
    if upper < least - 1e-6:
        yield Finding(
            "KS1",
            Severity.WARN,
            f"The stand is {2 * upper:.1f} cm round at the top; the neck (NK) is "
            f"{n.NK:.1f} cm, and wants {2 * ROOM:.1f} cm of room.",
            "collar rise",
            "Make the neckline deeper or wider, the stand lower, or its rise less.",
            {"upper": 2 * upper, "NK": n.NK},
        )
