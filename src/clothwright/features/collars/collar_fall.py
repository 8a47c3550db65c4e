"""A collar that turns over, from its foot or neck edge up to its point (transformations
5)."""

from collections.abc import Iterable

from clothwright.blocks.collar import fall
from clothwright.curves import Path, Point, inset
from clothwright.features.base import Number
from clothwright.features.collars.collar import SRC
from clothwright.features.collars.collar_neck import opens_behind
from clothwright.features.collars.collar_pieces import (
    COLLAR,
    UNDER,
    grained,
    undercollar,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Verb,
    straight,
)
from clothwright.rules import Kind, Numbers

POINT = Number(
    "c_point", "collar point", "length of the collar's end", SRC, 7, 2.75, 3, 14, (6, 8)
)
LEAN = Number(
    "c_lean",
    "collar lean",
    "lean of the collar's end to the front",
    "common practice",
    15.0,
    None,
    -20.0,
    45.0,
    kind=Kind.ANGLE,
)

HIDES = 0.5
"""A fall is so much wider than its stand at the least, cm: below that the seam of the
neck is seen."""


def draft_fall(
    d: Drafting, start: Point, length: float, rise: float, depth: str, edge: str
) -> Path:
    """Draw the collar CO and its undercollar CN: from the centre back at `start` so
    long along the edge that is sewn on, named `edge`; gives that edge, from the centre
    back."""
    n = d.n
    sewn, outer = fall(start, length, rise, n[depth], n.c_point, n.c_lean)
    d.found(
        "Xe",
        sewn.end,
        "front end of the collar, where it is sewn on",
        amounts=(
            ("along from the centre back by {}", length),
            ("higher by {}" if rise > 0 else "lower by {}", abs(rise)),
        ),
    )
    d.found(
        "Xp",
        outer.end,
        "point of the collar",
        frm=("Xe",),
        amounts=(("up by {}", "c_point"), ("leaning to the front by {}", "c_lean")),
    )
    behind = opens_behind(d.sheet)
    back = ("end back", EdgeKind.SEAM) if behind else ("cb", EdgeKind.FOLD)
    roll: tuple[InnerLine, ...] = ()
    if edge == "neck":
        roll = (InnerLine("roll line", inset(sewn.reversed(), 0.0, n.c_roll)),)
    upper = Piece(
        COLLAR,
        "Collar",
        (
            Edge(edge, sewn.reversed()),
            straight(back[0], sewn.start, outer.start, back[1]),
            Edge("outer", outer),
            straight("end", outer.end, sewn.end),
        ),
        lines=roll,
    )
    upper = grained(upper)
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(upper),
        COLLAR,
        "collar",
        amounts=(("wide behind", depth),),
        frm=("Xe", "Xp"),
        detail="its outer edge square to the centre back, in one line to the point",
    )
    lay_under(d, upper)
    return sewn


def lay_under(d: Drafting, upper: Piece) -> None:
    """Trace the undercollar CN."""
    d.lay(
        Verb.TRACE,
        d.sheet.put(undercollar(upper, d.n.c_turn)),
        UNDER,
        "undercollar, on the bias",
        amounts=(("inside the collar's outer edges by {}", "c_turn"),),
        detail="beginning at nothing where it is sewn on",
        over=(upper.outline,),
    )


def fall_findings(n: Numbers, fell: str, stand: str) -> Iterable[Finding]:
    """The collar hides the seam that it turns over."""
    least = n[stand] + HIDES
    if n[fell] < least - 1e-6:
        yield Finding(
            "KF1",
            Severity.WARN,
            f"The collar falls {n[fell]:.1f} cm over a stand of {n[stand]:.1f} cm: the "
            "seam of the neck is seen behind.",
            n.called(fell),
            f"Make the fall {least:.1f} cm or more, or the stand lower.",
            {"fall": n[fell], "stand": n[stand]},
        )
