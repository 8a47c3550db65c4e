"""Lining of a dress whose fronts cross from shoulder to hem: in the skirt it is felled
to the hems of the front edges, at the waist to the facing's foot (common practice, no
source)."""

import math
from collections.abc import Iterator
from dataclasses import replace

from clothwright.curves import Path, inset
from clothwright.features.linings.sewn_halves import OVER
from clothwright.features.skirts.wrap_skirt_drawing import EDGE
from clothwright.paper import Ease, Edge, Piece, Run, Seam, Sheet, meetings

BEYOND = "S124"
"""Code of the shell's seam at the waist beyond the centre."""

BESIDE = 0.5
"""The lining ends so far inside the front edge, on its narrow hem, cm."""

_ON = 3.0
"""A line is run on so far to be met, cm."""

_NEAR = 0.15
"""What the seam may differ by, cm."""


def beside_hem(front: Piece) -> Piece:
    """The lining of a skirt's front that crosses, set inside its front edge."""
    edge = front.edge(EDGE)
    line = inset(edge.path, BESIDE, BESIDE)
    a, b = line.start_direction * _ON, line.end_direction * _ON
    line = Path.line(line.start - a, line.start) + line
    line = line + Path.line(line.end, line.end + b)
    over, hem = front.edge(OVER), front.edge("hem")
    fault = "the lining of the skirt does not reach its front edge: let it cross more"
    top, at_top = meetings(line, over.path, fault)[0]
    foot, at_hem = meetings(line, hem.path, fault)[-1]
    line = line.between(top, foot)
    changed = {
        OVER: over.along(
            over.path.between(0.0, at_top).pinned(over.path.start, line.start)
        ),
        EDGE: edge.along(line),
        "hem": hem.along(
            hem.path.between(at_hem, hem.path.length).pinned(line.end, hem.path.end)
        ),
    }
    edges: list[Edge] = [changed.get(e.name, e) for e in front.edges]
    return front.with_edges(edges)


def lined_beyond(sheet: Sheet, rho: float) -> Iterator[Seam]:
    """The lining's waist beyond the centre: the bodice's and the facing's foot, or the
    bodice's as far as the roll of its edge, to the skirt's."""
    shell = next((s for s in sheet.seams if s.code == BEYOND), None)
    if shell is None or "L.PF" not in sheet.pieces:
        return
    front = sheet.piece("F")
    left: tuple[Run, ...] = (Run("L.F", OVER, True),)
    less = rho / math.sin(math.radians(front.interior_angle("neck")))
    if "FF" in sheet.pieces:
        left = (*left, Run("FF", "foot", True))
    yield replace(
        shell,
        code=f"L{BEYOND}",
        name=f"lining, {shell.name}",
        left=left,
        right=(Run("L.PF", OVER),),
        ease=Ease.about(shell.ease.plan + less - BESIDE, _NEAR),
    )
