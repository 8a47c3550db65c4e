"""A lay under the hand: a piece is moved, turned, swapped, and the checker answers.

Whatever a hand does stands, so that nothing is lost; what must not be cut so is said by
the checker, and only a lay without a fault may be kept. Coordinates cm, as in `pieces`.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from clothwright.findings import Finding
from clothwright.lay.bounds import area_bound, row_bound
from clothwright.lay.check import check_lay
from clothwright.lay.match import Link, links_of
from clothwright.lay.patterns import TRUE, matched_seams, seam_names, shapes_of
from clothwright.lay.pieces import Copy, Placed, Shape, copies, laid_outline
from clothwright.lay.plan import GAP, Lay, bought_for, width_missing
from clothwright.lay.solve import Solved
from clothwright.lay.spread import LayError, Spread, spread
from clothwright.order import Fold, Pattern

Places = tuple[Placed, ...]


@dataclass(frozen=True)
class Laid:
    """Pieces as they lie, and all for which they must not be cut so."""

    lay: Lay
    faults: tuple[Finding, ...]
    """`data` names the pieces, `piece` and `other`, by their place in the lay."""


@dataclass(frozen=True)
class Board:
    """A cloth of an order as it is spread, and all that is laid on it."""

    pattern: Pattern
    cloth: str
    fold: Fold
    gap: float = GAP

    @cached_property
    def spread(self) -> Spread:
        """The cloth as it lies. Raises LayError when it cannot lie so."""
        order = self.pattern.draft.order
        bought = order.cloths.get(self.cloth)
        if bought is None or bought.width is None:
            raise width_missing(order, self.cloth)
        return spread(bought, self.fold, unit=order.unit)

    @cached_property
    def shapes(self) -> tuple[Shape, ...]:
        """What is cut, as it is laid."""
        return shapes_of(self.pattern, self.cloth, growth=self.spread.growth)

    @cached_property
    def true(self) -> tuple[Shape, ...]:
        """The same, as fine as it is drawn, for the checker."""
        return shapes_of(self.pattern, self.cloth, growth=self.spread.growth, flat=TRUE)

    @cached_property
    def copies(self) -> tuple[Copy, ...]:
        """Everything to lay, in the order in which places are given."""
        return copies(self.shapes, self.spread, gap=self.gap)

    @cached_property
    def links(self) -> tuple[Link, ...]:
        """Points at which stripes meet."""
        seams = matched_seams(self.pattern, self.spread)
        return links_of(self.copies, seams, self.spread)

    @cached_property
    def bounds(self) -> tuple[float, float]:
        """Lengths that no lay of these pieces can go below, cm."""
        return area_bound(self.copies, self.spread), row_bound(self.copies, self.spread)

    def laid(
        self,
        placed: Sequence[Placed],
        *,
        saving: str = "",
        others: tuple[tuple[Fold, float], ...] = (),
    ) -> Laid:
        """The lay of pieces that lie so. Raises LayError when they are not the pieces
        of this order, or the cloth cannot lie so."""
        if [p.code for p in placed] != [c.shape.code for c in self.copies]:
            raise LayError(
                "the pieces are not the same as when this was laid; lay them anew"
            )
        order = self.pattern.draft.order
        length = max(
            x
            for c, p in zip(self.copies, placed, strict=True)
            for x, _ in laid_outline(c.shape, p)
        )
        length = max(length, 0.1)
        faults = check_lay(
            self.true, self.spread, placed, length + 0.01, gap=self.gap, meet=self.links
        )
        return Laid(
            Lay(
                of=self.cloth,
                cloth=order.cloths[self.cloth],
                spread=self.spread,
                shapes=self.shapes,
                solved=Solved(self.copies, tuple(placed), length, *self.bounds, 0),
                buy=bought_for(order, self.cloth, length, self.spread),
                unit=order.unit,
                gap=self.gap,
                others=others,
                saving=saving,
                seams=seam_names(self.pattern, self.spread),
            ),
            faults,
        )

    # -- what a hand does ------------------------------------------------------------
    def moved(self, placed: Sequence[Placed], i: int, x: float, y: float) -> Places:
        """Piece `i` put so that the middle of what it covers is at x, y. A piece on
        the fold stays on a fold, the nearer one."""
        p = placed[i]
        if self.on_fold(i):
            far = self.spread.far_fold and (
                not self.spread.near_fold or y > self.spread.width / 2
            )
            p = replace(p, mirrored=(p.turn == 180.0) != far)
        a, b = self._middle(i, replace(p, x=0.0, y=0.0))
        p = replace(p, x=x - a, y=y - b)
        if self.on_fold(i):
            p = replace(p, y=self.spread.width if far else 0.0)
        return _with(placed, i, p)

    def turned(self, placed: Sequence[Placed], i: int) -> Places:
        """Piece `i` turned end for end where it lies."""
        p = placed[i]
        turn = (p.turn + 180.0) % 360.0
        mirrored = p.mirrored != self.on_fold(i)  # it stays on the fold
        return self._back(placed, i, replace(p, turn=turn, mirrored=mirrored))

    def swapped(self, placed: Sequence[Placed], i: int) -> Places:
        """Piece `i` laid as its other hand; the same piece where it has none."""
        if not self.has_hands(i):
            return tuple(placed)
        p = placed[i]
        return self._back(placed, i, replace(p, mirrored=not p.mirrored))

    def on_fold(self, i: int) -> bool:
        """True for a half piece that lies on a fold of the cloth."""
        return self.copies[i].shape.on_fold and self.spread.folds

    def has_hands(self, i: int) -> bool:
        """True where either hand may lie upwards: in two layers both are cut."""
        shape = self.copies[i].shape
        return self.spread.layers == 2 and not shape.even and not self.on_fold(i)

    def middle(self, placed: Sequence[Placed], i: int) -> tuple[float, float]:
        """The middle of what piece `i` covers."""
        return self._middle(i, placed[i])

    def _back(self, placed: Sequence[Placed], i: int, p: Placed) -> Places:
        """Piece `i` laid another way, where it was."""
        return self.moved(_with(placed, i, p), i, *self._middle(i, placed[i]))

    def _middle(self, i: int, p: Placed) -> tuple[float, float]:
        xs, ys = zip(*laid_outline(self.copies[i].shape, p), strict=True)
        return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def _with(placed: Sequence[Placed], i: int, p: Placed) -> Places:
    return (*placed[:i], p, *placed[i + 1 :])
