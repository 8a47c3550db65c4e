"""Panels below the waist, and the seam between them, for pockets set over it or hung in
it."""

from collections.abc import Mapping
from enum import Enum
from typing import NamedTuple

from clothwright.curves import Motion, Path, Point, from_pair
from clothwright.features.skirts.about import GORE
from clothwright.paper import PaperError, Sheet, meetings
from clothwright.rules import Numbers


class On(Enum):
    """What is in panels."""

    TORSO = "torso"
    """Bodice and skirt in one, with a princess or a panel line in front."""

    GORES = "gored skirt"
    """Of a dress, six gores; or a skirt on its own, one of its gores at the centre
    front."""

    @property
    def panels(self) -> "Panels":
        """Its two panels at the front, of a torso or a dress."""
        if self is On.TORSO:
            return Panels("FC", "FS", "S1")
        return Panels("PFC", "PFS", "S19")

    def panels_in(self, sheet: Sheet) -> "Panels":
        """The same; of a skirt on its own the gore is both."""
        if self is On.GORES and GORE in sheet.pieces:
            return Panels(GORE, GORE, "S37", "other seam", "seam", "other seam")
        return self.panels


class Panels(NamedTuple):
    """Codes of the centre and the side panel, and of the seam between them; what its
    edges on both are called, and the far edge of the side panel."""

    centre: str
    side: str
    seam: str
    centre_edge: str = "panel"
    side_edge: str = "panel"
    beyond: str = "side"


GORES_ON_BODICE = "gores on a bodice"
"""Given by the gored skirt of a dress."""

ANY_GORES = "gores"
"""Given by every gored skirt."""


def panel_words(on: On, *, alone: bool = False) -> Mapping[str, str]:
    """Words that pockets at a panel seam need, and why; `alone` where a skirt on its
    own may have them."""
    if on is On.GORES and alone:
        return {
            ANY_GORES: 'these pockets lie in the seams of a "gored skirt" or a "gored '
            'dress skirt"; add one, or set on = "torso"'
        }
    if on is On.GORES:
        return {
            GORES_ON_BODICE: 'these pockets lie at the seams of a "gored dress skirt"; '
            'add one, or set on = "torso"'
        }
    return {
        "torso": "these pockets lie at the panel seams of a torso in one; add one, or "
        'set on = "gored skirt"',
        "front panel seam": "these pockets lie at a front panel seam; lead the bust "
        "dart into one",
    }


def panel_clashes(on: On) -> Mapping[str, str]:
    """Words that they do not allow, and why."""
    if on is On.GORES:
        return {}
    return {
        "torso seam": "a seam crosses the torso where the pocket is; leave that seam "
        "out"
    }


def seam_below(sheet: Sheet, n: Numbers, on: On) -> tuple[Path, Path]:
    """The panel seam from the level of the waist down, of the centre and of the side
    panel: as long, since they are sewn from the hem up alike. Raises PaperError."""
    pair = on.panels_in(sheet)
    ends = (pair.centre, pair.centre_edge), (pair.side, pair.side_edge)
    whole = [sheet.edge(*end).path for end in ends]
    a, c = (p if p.start.y < p.end.y else p.reversed() for p in whole)
    rest = min(a.length, c.length)
    if on is On.TORSO:
        level = n.yW
        across = Path.line(Point(-60.0, level), Point(200.0, level))
        fault = "the panel seam of the front does not reach the waist"
        rest = a.length - meetings(a, across, fault)[0][0]
    return a.between(a.length - rest, a.length), c.between(c.length - rest, c.length)


def centre_front(sheet: Sheet, n: Numbers, on: On) -> float:
    """Place of the centre front in the frame of the centre panel, cm."""
    if on.panels_in(sheet).centre == GORE:
        return sheet.points["Og"].x
    return n.X if on is On.TORSO else sheet.points["Ofc"].x


def laid_beside(centre: Path, side: Path, top: float, deep: float) -> Motion:
    """Lays the side panel on the seam of the centre panel, at a pocket's mouth `top` cm
    below the waist and at its foot. Raises PaperError."""
    low = top + deep
    if low > centre.length:
        raise PaperError(
            f"the pocket ends {low:.1f} cm below the waist and the panel seam "
            f"{centre.length:.1f} cm below it: set it higher, or make it less deep"
        )
    q, p = ([k.at_length(s) for s in (top, low)] for k in (side, centre))
    return from_pair(q[0], q[1], p[0], p[1])
