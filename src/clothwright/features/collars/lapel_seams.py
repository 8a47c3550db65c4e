"""Seams of a collar that is cut on: its lapel and, in one with the facing, its outer
edge (transformations 5)."""

import math
from collections.abc import Iterable

from clothwright.curves import Path, degrees_between
from clothwright.features.chains import Chains
from clothwright.features.collars.collar_pieces import COLLAR, UNDER
from clothwright.paper import JOINT, Ease, NotchPair, Seam, SeamKind
from clothwright.rules import Numbers

COLLAR_NECK, COLLAR_END = "collar neck", "collar end"
"""Edges of a facing that has the collar in one with it: to the back facing, and at the
centre back."""

TAPERS_FROM = "Vw"
"""Mark of a shawl's widest point: from there down its facing's edge tapers."""

_EXACT = Ease.about(0.0, 0.1)
FACING = Ease(-0.1, -0.3, 0.05)
"""A back facing may be so much shorter than the neck, cm (6)."""

_STEPS = 40
"""Parts in which the bend of a shawl is told."""


def lapel_seams(t: Chains, n: Numbers) -> list[Seam]:
    """The seams of a collar with a lapel, as far as its pieces are on the table."""
    shell = next((c for c in ("FC", "F") if t.has(c, "lapel")), "")
    if not shell:
        return []
    notched = COLLAR in t.sheet.pieces
    if notched:
        edges = (("lapel top", False), ("lapel", False))
        left, right = (t.chain(*((code, *e) for e in edges)) for code in (shell, "FF"))
        start, name = "end of the collar", "edge of the lapel"
    else:
        left = t.chain((UNDER, "lapel", False), (shell, "lapel", False))
        right = t.chain(("FF", "lapel", False))
        start, name = "centre back", "outer edge of collar and lapel"
    whole = t.sheet.run_path(left[0]) + t.sheet.run_path(left[1])
    if notched:
        share = _larger_lapel(whole, t.length(left[:1]))
    else:
        share = _larger_shawl(whole, whole.length_to_point(t.sheet.points[TAPERS_FROM]))
    ease = Ease.about(n.c_turn * share, 0.1)
    at = (NotchPair(t.length(left[:1]), t.length(left[:1])),) if not notched else ()
    out = [
        Seam(
            "S100",
            name,
            left,
            right,
            start,
            "break point",
            ease,
            notches=tuple(k._replace(note=JOINT) for k in at),
            kind=SeamKind.FACED,
        )
    ]
    return out if notched else [*out, *_shawl(t)]


def _shawl(t: Chains) -> Iterable[Seam]:
    back = t.chain(("BF", "neck", True))
    collar = t.chain(("FF", COLLAR_NECK, False))
    if back:
        yield Seam(
            "S101",
            "facing's collar to the back facing",
            collar,
            back,
            "shoulder",
            "centre back",
            FACING,
        )
    for code, name, edge in (
        ("S102", "centre back of the facing's collar", ("FF", COLLAR_END, False)),
        ("S103", "centre back of the undercollar", (UNDER, "cb", False)),
    ):
        chain = t.chain(edge)
        twin = SeamKind.TWIN
        yield Seam(code, name, chain, chain, "neck", "outer edge", _EXACT, kind=twin)


def _larger_lapel(edge: Path, top: float) -> float:
    """What a notched lapel's edge is longer, for each cm that it is set out: at the
    corner of its point 2·tan(α/2), and half of what the edge is bowed."""
    upper, lower = edge.between(0.0, top), edge.between(top, edge.length)
    u, v = upper.end_direction, lower.start_direction
    right, left = lower.turning()
    corner = math.radians(degrees_between(u, v))
    return 2 * math.tan(corner / 2) + math.radians(right - left) / 2


def _larger_shawl(edge: Path, level: float) -> float:
    """What a shawl's edge is longer, for each cm that it is set out: its bend, which
    counts less and less below `level`, down to nothing at the break point."""
    out, step = 0.0, edge.length / _STEPS
    for i in range(_STEPS):
        part = edge.between(i * step, (i + 1) * step)
        right, left = part.turning()
        beyond = max(0.0, (i + 0.5) * step - level)
        out += math.radians(right - left) * (1 - beyond / (edge.length - level))
    return out
