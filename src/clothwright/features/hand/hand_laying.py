"""Her own steps that lay paper: trace, move, unfold."""

from collections.abc import Iterator
from typing import Literal

from clothwright.curves import Point, shift, turn
from clothwright.features.hand.hand_places import (
    Measured,
    New,
    OwnStep,
    Place,
    Size,
    told,
)
from clothwright.paper import (
    MIRRORED,
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    PaperError,
    Run,
    Seam,
    SeamKind,
    Verb,
    move,
    own_name,
    trace,
    unfold,
)
from clothwright.paper.drafting import Size as Number
from clothwright.units.fields import Angle


class Trace(OwnStep):
    """Copy a piece."""

    do: Literal["trace"]
    new: New
    sewn: tuple[str, ...] = ()
    """Edges that are sewn to those they were traced from; the others are finished."""

    def apply(self, d: Drafting, key: str) -> None:
        """Trace. Raises PaperError."""
        p, (code, name) = d.sheet.piece(self.piece), self.new
        if code in d.sheet.pieces:
            raise PaperError(
                f"there is a piece {code} already; give the new one another code"
            )
        for edge in self.sewn:
            p.edge(edge)  # says what edges there are
        copy = trace(d.sheet, p.code, code, name).piece(code)
        finished = {e.name for e in copy.edges if e.kind is not EdgeKind.FOLD}
        finished -= set(self.sewn)
        copy = copy.with_edges(
            Edge(e.name, e.path, EdgeKind.FINISHED) if e.name in finished else e
            for e in copy.edges
        )
        seams = (
            Seam(
                f"{key}{i}",
                f"{edge}, {name.lower()}",
                (Run(p.code, edge),),
                (Run(code, edge),),
                ease=Ease.about(0.0, 0.1),
                kind=SeamKind.FACED,
            )
            for i, edge in enumerate(self.sewn, 1)
        )
        d.lay(
            Verb.TRACE,
            d.sheet.put(copy).sew(*seams),
            code,
            f"the {name.lower()} from the {told(p)}",
        )


class Move(OwnStep):
    """Lay a piece elsewhere on the table."""

    do: Literal["move"]
    right: Size = None
    down: Size = None
    turn: Angle = 0.0
    """Degrees, clockwise as seen."""

    about: Place | None = None

    def apply(self, d: Drafting, key: str) -> None:
        """Move; every length and angle is kept. Raises PaperError."""
        p = d.sheet.piece(self.piece)
        left, top, right, bottom = p.outline.bounds()
        at = Point((left + right) / 2, (top + bottom) / 2)
        if self.about is not None:
            at = self.about.point(d, p, f"{key}.about")
        across = d.n[f"{key}.right"] if self.right is not None else 0.0
        down = d.n[f"{key}.down"] if self.down is not None else 0.0
        motion = shift(Point(across, down)) @ turn(at, self.turn)
        amounts: tuple[tuple[str, Number], ...] = self.amounts(key)
        detail = f"turned by {self.turn:g}°" if self.turn else ""
        d.lay(
            Verb.MOVE,
            move(d.sheet, p.code, motion),
            p.code,
            told(p),
            amounts=amounts,
            detail=detail,
        )

    def measured(self) -> Iterator[Measured]:
        """Its lengths, those of the point it turns about too."""
        yield from super().measured()
        if self.about is not None:
            yield from self.about.measured("about")


class Unfold(OwnStep):
    """Open a piece at its fold."""

    do: Literal["unfold"]

    def apply(self, d: Drafting, key: str) -> None:
        """Open the fold; seams go on along the half that they were stated for, the
        other half is sewn to their twins. Raises PaperError."""
        p = d.sheet.piece(self.piece)
        whole = unfold(p)
        mirrored = [e.name for e in whole.edges if e.name.endswith(MIRRORED)]
        twins = [
            n
            for n in mirrored
            if p.edge(n.removesuffix(" mirrored")).kind is EdgeKind.SEAM
        ]
        seams = (
            Seam(
                f"{key}{i}",
                f"{own_name(n)}, other half",
                (Run(p.code, n),),
                (Run(p.code, n),),
                ease=Ease.about(0.0, 0.1),
                kind=SeamKind.TWIN,
            )
            for i, n in enumerate(twins, 1)
        )
        d.lay(
            Verb.UNFOLD,
            d.sheet.put(whole).sew(*seams),
            p.code,
            f"the {told(p)}, to a whole piece",
        )
