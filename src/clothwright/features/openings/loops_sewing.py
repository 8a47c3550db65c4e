"""Loops and buttons in the cloth (first garment 10)."""

from collections.abc import Callable, Iterable

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


def loop_operations(
    n: Numbers, fmt: Callable[[float], str], *, laced: bool, eyelets: bool, hooked: bool
) -> Iterable[Operation]:
    """Interline the edge, sew the loops in, then what they close over."""
    edges = "both slanted edges" if n.rows > 1 else "the right slanted edge"
    yield Operation(
        Work.FUSE,
        "Interline the edge under the loops",
        (f"A strip {fmt(STRIP)} wide along {edges}, on the wrong side.",),
        hazards=(Hazard.IRON,),
    )
    if eyelets:
        yield _eyelets(n, fmt, edges)
    else:
        yield _loops(n, fmt, edges, laced=laced)
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


def _loops(
    n: Numbers, fmt: Callable[[float], str], edges: str, *, laced: bool
) -> Operation:
    """The loops, before the edge is faced."""
    return Operation(
        Work.ON_EDGE,
        f"Make {n.loops_all:.0f} loops and sew them to {edges}",
        (
            f"Stitch and turn the bias cord; cut it in pieces of {fmt(n.cord_cut)}.",
            "Lay each loop towards the garment, its middle on the chalk mark and its "
            f"ends {fmt(n.e_loop)} apart, and stitch just beside the net line.",
            "Try a button through the first loop before you sew the rest."
            if not laced
            else "Try the cord through the first loop before you sew the rest.",
        ),
        stitch=Stitch.LOCK,
        seam_type=SeamType.LOOP,
        length=n.cord_all + n.rows * n.edge_net,
        task=Task.LOOP,
        count=n.loops_all,
        hazards=(Hazard.CORD,),
    )


def _eyelets(n: Numbers, fmt: Callable[[float], str], edges: str) -> Operation:
    """Eyelets, through the edge and its facing."""
    return Operation(
        Work.FASTEN,
        f"Set {n.loops_all:.0f} eyelets in {edges}",
        (
            f"Level with the chalk marks, {fmt(EYELET_IN)} inside the edge, through "
            "cloth, interlining and facing.",
            "Try one on a scrap of all three; lace the back and try it on.",
        ),
        stitch=Stitch.HAND,
        task=Task.BUTTON,
        count=n.loops_all,
        hazards=(Hazard.CORD,),
    )
