"""Loops and buttons in the cloth (first garment 10)."""

from collections.abc import Callable, Iterable
from typing import NamedTuple

from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.rules import Numbers

STRIP = 2.5
"""Width of the strip of interlining under a row of loops, cm (15)."""

EYELET_IN = 1.0
"""The middle of an eyelet lies so far inside the edge, cm (common practice)."""


class LoopRow(NamedTuple):
    """Loops to be made, cm: how many, the cord cut for each and for all, how far apart
    its ends lie, and the edges that they are sewn to."""

    many: int
    cut: float
    cord: float
    apart: float
    edges: float


def loop_operations(
    n: Numbers, fmt: Callable[[float], str], *, laced: bool, eyelets: bool, hooked: bool
) -> Iterable[Operation]:
    """Interline the edge, sew the loops in, then what they close over."""
    edges = "both slanted edges" if n.rows > 1 else "the right slanted edge"
    yield edge_strips(fmt, edges, "eyelets" if eyelets else "loops")
    if eyelets:
        yield eyelets_set(int(n.loops_all), fmt, edges)
    else:
        row = LoopRow(
            int(n.loops_all), n.cord_cut, n.cord_all, n.e_loop, n.rows * n.edge_net
        )
        yield loops_sewn(row, fmt, edges, laced=laced)
    if not laced:
        yield Operation(
            Work.FASTEN,
            f"Sew on {n.loops_all:.0f} buttons",
            (
                "On the crosses of the panel behind, through its interlining, each "
                "with a shank of thread. Close every loop to try it.",
            ),
            stitch=Stitch.HAND,
            task=Task.BUTTON,
            count=n.loops_all,
            hazards=(Hazard.SMALL_PART,),
        )
    if hooked:
        yield Operation(
            Work.FASTEN,
            "Sew a hook and eye below the last loop",
            ("At the waist end of the slanted edges, on the facing.",),
            stitch=Stitch.HAND,
            task=Task.HOOK,
            hazards=(Hazard.SMALL_PART,),
        )


def edge_strips(
    fmt: Callable[[float], str], edges: str, row: str = "loops"
) -> Operation:
    """Interlining under the loops or eyelets of these edges."""
    return Operation(
        Work.FUSE,
        f"Interline the edge under the {row}",
        (f"A strip {fmt(STRIP)} wide along {edges}, on the wrong side.",),
        hazards=(Hazard.IRON,),
    )


def loops_sewn(
    row: LoopRow, fmt: Callable[[float], str], edges: str, *, laced: bool
) -> Operation:
    """The loops, before the edge is faced."""
    return Operation(
        Work.ON_EDGE,
        f"Make {row.many} loops and sew them to {edges}",
        (
            f"Stitch and turn the bias cord; cut it in pieces of {fmt(row.cut)}.",
            "Lay each loop towards the garment, its middle on the chalk mark and its "
            f"ends {fmt(row.apart)} apart, and stitch just beside the net line.",
            "Try a button through the first loop before you sew the rest."
            if not laced
            else "Try the cord through the first loop before you sew the rest.",
        ),
        stitch=Stitch.LOCK,
        seam_type=SeamType.LOOP,
        length=row.cord + row.edges,
        task=Task.LOOP,
        count=float(row.many),
        hazards=(Hazard.CORD,),
    )


def eyelets_set(count: int, fmt: Callable[[float], str], edges: str) -> Operation:
    """Eyelets, through the edge and its facing."""
    return Operation(
        Work.FASTEN,
        f"Set {count} eyelets in {edges}",
        (
            f"Level with the chalk marks, {fmt(EYELET_IN)} inside the edge, through "
            "cloth, interlining and facing.",
            "Try one on a scrap of all three; lace it and try it on.",
        ),
        stitch=Stitch.HAND,
        task=Task.BUTTON,
        count=float(count),
        hazards=(Hazard.CORD,),
    )
