"""Paper: pieces, edges, seams, and the seven things that hands do to them.

Terminology
    piece    a closed loop of named edges, with marks, inner lines and a grain line.
    edge     one named stretch of an outline; it runs clockwise as seen.
    chain    edges walked one after the other, as a tape would.
    seam     two chains that are sewn together, and with how much ease where.
    dart     a seam of a piece with itself: two neighbouring edges meeting at the apex.
    sheet    all pieces and seams of a draft: an immutable value.

cut, move, tape, spread, redraw, trace, unfold each take a sheet and give a new one;
pivot is the move of a part about a dart's point.
Paper never stretches: cut, move and tape change no length and no area.
"""

from clothwright.paper.change import Change, Look
from clothwright.paper.cut import CornerAfter, On, Spot, cut, spot_on
from clothwright.paper.drafting import Drafting, Size, Taped
from clothwright.paper.meeting import meetings
from clothwright.paper.move import move
from clothwright.paper.once import once
from clothwright.paper.piece import (
    LEFT_HALF,
    LEFT_PIECE,
    MIRRORED,
    ON_STAND,
    UNDER,
    Edge,
    EdgeKind,
    InnerLine,
    LineKind,
    Mark,
    MarkKind,
    PaperError,
    Piece,
    own_name,
    own_piece,
    straight,
)
from clothwright.paper.pivot import pivot
from clothwright.paper.record import Amount, Step, Verb
from clothwright.paper.redraw import redraw
from clothwright.paper.seam import (
    JOINT,
    JOINT_RIGHT,
    Ease,
    NotchPair,
    Run,
    Seam,
    SeamKind,
)
from clothwright.paper.sheet import Sheet
from clothwright.paper.spread import spread
from clothwright.paper.tape import tape
from clothwright.paper.trace import outline, trace, traced
from clothwright.paper.unfold import unfold

__all__ = [
    "UNDER",
    "JOINT",
    "JOINT_RIGHT",
    "LEFT_HALF",
    "LEFT_PIECE",
    "MIRRORED",
    "ON_STAND",
    "Amount",
    "Change",
    "CornerAfter",
    "Drafting",
    "Ease",
    "Edge",
    "EdgeKind",
    "InnerLine",
    "LineKind",
    "Look",
    "Mark",
    "MarkKind",
    "NotchPair",
    "On",
    "PaperError",
    "Piece",
    "Run",
    "Seam",
    "SeamKind",
    "Sheet",
    "Spot",
    "Step",
    "Size",
    "Taped",
    "Verb",
    "cut",
    "meetings",
    "move",
    "once",
    "outline",
    "own_name",
    "own_piece",
    "pivot",
    "redraw",
    "spot_on",
    "spread",
    "straight",
    "tape",
    "trace",
    "traced",
    "unfold",
]
