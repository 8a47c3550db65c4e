"""The slit above a cuff: bound with one continuous strip, or with a tailored placket
(transformations 7)."""

from collections.abc import Callable, Iterable
from enum import Enum

from clothwright.curves import Path, Point
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.paper import (
    Drafting,
    EdgeKind,
    InnerLine,
    Piece,
    Run,
    Verb,
    straight,
)
from clothwright.rules import Numbers

PIECE = "PL"
"""Code of the tailored placket's upper part."""

_STRIP = 3.0
"""Width that the strip of a slit is cut, cm (7)."""

_ENDS = 1.0
"""What a strip is longer than the slit at each end, cm (7: 2 SA)."""

_ABOVE, _STITCHED = 2.5, 1.0
"""The upper part reaches so far above the slit, up to its point; the half that is sewn
to the slit so far, cm (common practice, no source)."""


class SleevePlacket(Enum):
    """How the slit is finished."""

    STRIP = "a continuous strip"
    """One strip round both edges."""

    TAILORED = "a tailored placket"
    """A pointed upper part over a narrow strip."""


def placket_notions(placket: SleevePlacket, n: Numbers) -> Iterable[Notion]:
    """The strip of both sleeves: round the whole slit, or along its back edge."""
    if placket is SleevePlacket.STRIP:
        long, where = 2 * n.slit, "for the slits of the sleeves"
    else:
        long, where = n.slit, "for the back edges of the slits of the sleeves"
    yield Notion(Article.PLACKET, 2, where, length=long + 2 * _ENDS, size=_STRIP)


def placket_operations(
    placket: SleevePlacket, n: Numbers, fmt: Callable[[float], str]
) -> Iterable[Operation]:
    """Before the sleeve's own seam, while it lies flat."""
    if placket is SleevePlacket.STRIP:
        yield Operation(
            Work.SLIT,
            "Bind the slits of the sleeves",
            (
                f"Cut {fmt(n.slit)} up from the end of the sleeve on the line, to a "
                "thread; open it straight and bind it with one strip.",
                "Fold the strip under on the front side; on the back side it stands "
                "out. Stitch it slanting across at the top.",
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLACED,
            length=2 * (2 * n.slit + 2 * _ENDS),
            task=Task.PLACKETS,
            hazards=(Hazard.BLADE,),
        )
        return
    yield Operation(
        Work.SLIT,
        "Set the tailored plackets into the sleeves",
        (
            f"Cut {fmt(n.slit)} up from the end of the sleeve on the line, slantwise "
            "into two corners at the top.",
            "Bind the back edge with the strip. Sew the upper part to the front edge, "
            "fold it over the strip, its edges turned in, and topstitch it.",
            "Stitch a box across above the slit and up round the point, through all "
            "layers.",
        ),
        edges=tuple(Run(PIECE, e) for e in _EDGES),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLACED,
        task=Task.PLACKETS,
        hazards=(Hazard.BLADE, Hazard.IRON),
    )


_EDGES = ("foot", "slit edge", "top", "step", "point front", "point back", "outer")


def draw_tailored(d: Drafting, at: Point) -> None:
    """The upper part, double: its left half is sewn to the slit, its right half, with
    the point, lies over that. `at` is the foot of the left edge."""
    n = d.n
    w = n.placket_w
    low, high, point = n.slit + _STITCHED, n.slit + _ABOVE, n.slit + _ABOVE + w / 2
    corners = [
        at + Point(2 * w, 0.0),
        at,
        at + Point(0.0, -low),
        at + Point(w, -low),
        at + Point(w, -high),
        at + Point(1.5 * w, -point),
        at + Point(2 * w, -high),
    ]
    loop = tuple(
        straight(name, a, b, EdgeKind.FINISHED)
        for name, a, b in zip(_EDGES, corners, (*corners[1:], corners[0]), strict=True)
    )
    fold = InnerLine("fold", Path.line(at + Point(w, 0.0), corners[3]))
    end = InnerLine(
        "end of the slit",
        Path.line(corners[1] + Point(0.0, -n.slit), corners[0] + Point(0.0, -n.slit)),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(Piece(PIECE, "Sleeve placket", loop, lines=(fold, end))),
        PIECE,
        "upper part of the tailored placket, a pair",
        amounts=(
            ("wide on either side of its fold", "placket_w"),
            ("as long as the slit, {}, and what is above it", "slit"),
            ("above the slit to the foot of its point", _ABOVE),
        ),
        detail="the point half as high as it is wide",
    )
