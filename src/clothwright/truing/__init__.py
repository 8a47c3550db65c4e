"""Truing: seams walked, joints measured, caps and blends drawn, the checklist asked.

Terminology
    to true   to make edges that will be sewn agree, and lines that cross a seam flow.
    walk      both sides of a seam measured along the net line, notch by notch.
    joint     the corners that come together where seams are sewn.
    cap       the outline of a folded dart at the seam.
    blend     a curve drawn anew across a seam or corner.
    checklist what a finished pattern is asked before it is cut.

Pure functions over a sheet of paper. Lengths are cm, angles degrees; sentences are
written in the user's unit by the formatter handed in.
"""

from clothwright.truing.blend import Fillet, arc_like, corner_shift
from clothwright.truing.caps import (
    Cap,
    Towards,
    cap_reach,
    chord_reach,
    dart_angle,
    dart_cap,
    square_cap,
    straight_cap,
)
from clothwright.truing.checklist import Report, check_all, check_piece
from clothwright.truing.joints import (
    Angles,
    Corner,
    End,
    Joint,
    corner_angle,
    measure,
)
from clothwright.truing.tolerances import Band
from clothwright.truing.walk import Segment, Walk, walk, walk_all
from clothwright.truing.words import Fmt

__all__ = [
    "Angles",
    "Band",
    "Cap",
    "Corner",
    "End",
    "Fillet",
    "Fmt",
    "Joint",
    "Report",
    "Segment",
    "Towards",
    "Walk",
    "arc_like",
    "cap_reach",
    "check_all",
    "check_piece",
    "chord_reach",
    "corner_angle",
    "corner_shift",
    "dart_angle",
    "dart_cap",
    "measure",
    "square_cap",
    "straight_cap",
    "walk",
    "walk_all",
]
