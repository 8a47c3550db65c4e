"""Lines and cubic curves on the cutter's page, in centimetres.

Terminology
    point     a place on the page, (x, y); x to the right, y *down*.
    segment   a straight line or one cubic Bézier; it runs from a start to an end.
    path      segments joined end to end, open (an edge) or closed (an outline).
    motion    a rigid movement of the paper: turn, shift, mirror.
    pen       a listener to which a path narrates itself (fontTools' protocol).

Only this package knows the curve library. Values are small, frozen and compare by
what they hold; every float is a length in cm unless its name says otherwise.
"""

from clothwright.curves.cubic import Cubic, Segment
from clothwright.curves.held import held, lately
from clothwright.curves.inset import inset
from clothwright.curves.line import Line
from clothwright.curves.loops import without_loops
from clothwright.curves.meet import crossings, meet_lines
from clothwright.curves.motion import (
    IDENTITY,
    Motion,
    from_pair,
    mirror_in,
    shift,
    turn,
)
from clothwright.curves.path import Path, Place, polyline
from clothwright.curves.pens import Pen
from clothwright.curves.point import (
    Pair,
    Point,
    Vector,
    ahead,
    bearing,
    cross,
    degrees_between,
    direction,
    distance,
    dot,
    heading,
    left_normal,
    midpoint,
    mix,
    rotate,
    turned,
    unit,
    wedge_angle,
)
from clothwright.curves.tolerances import ARC, CLOSE, FIT, SOLVE

__all__ = [
    "wedge_angle",
    "ahead",
    "ARC",
    "CLOSE",
    "FIT",
    "IDENTITY",
    "SOLVE",
    "Cubic",
    "Line",
    "Motion",
    "Pair",
    "Path",
    "Pen",
    "Place",
    "Point",
    "Segment",
    "Vector",
    "bearing",
    "cross",
    "crossings",
    "degrees_between",
    "direction",
    "distance",
    "dot",
    "from_pair",
    "heading",
    "held",
    "inset",
    "lately",
    "left_normal",
    "meet_lines",
    "midpoint",
    "mirror_in",
    "mix",
    "polyline",
    "rotate",
    "shift",
    "turn",
    "turned",
    "unit",
    "without_loops",
]
