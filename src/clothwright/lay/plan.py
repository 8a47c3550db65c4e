"""The lay of an order: which way the cloth is folded, where each piece lies, how much
cloth to buy, and what would save some."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from clothwright.lay.buy import ToBuy, to_buy
from clothwright.lay.check import check_lay
from clothwright.lay.match import loose
from clothwright.lay.nofit import NoFits
from clothwright.lay.patterns import (
    TRUE,
    cloths_of,
    matched_seams,
    seam_names,
    shapes_of,
)
from clothwright.lay.pieces import Placed, Shape, area_of, opened
from clothwright.lay.solve import AT_BOUND, Budget, Progress, Solved, solve
from clothwright.lay.spread import LayError, Spread, spread
from clothwright.order import Cloth, Fold, Order, Pattern
from clothwright.units import Unit, format_length

GAP = 0.3
"""Between two pieces, for shears, cm (cutting and costing §2.4)."""

PROBE = 40
"""Layouts that are tried for each way of folding the cloth, and to see what opening a
piece would save."""

FEW = 8
"""The same where the budget is a number of layouts."""

WORTH = 0.05
"""Another way than folding lengthwise is taken when it saves this share of the cloth,
for it takes longer to spread or to cut."""

BINDS = 0.04
"""The fold sets the length of a lay that is within this share of its row bound."""

SAVES = 5.0
"""What is worth opening a piece for, cm."""

MOST_OPENED = 4
"""No more pieces than this are opened at a time."""

WAYS = (Fold.LENGTHWISE, Fold.TWO, Fold.SINGLE, Fold.ACROSS)
"""In the order in which they are tried."""

Told = Callable[[Progress], None]


@dataclass(frozen=True)
class Lay:
    """A lay that may be cut: it has passed the checker. Lengths cm."""

    of: str
    """Plain name of the cloth: "shell", "underlining", "lining", "interlining"."""

    cloth: Cloth
    spread: Spread
    shapes: tuple[Shape, ...]
    solved: Solved
    buy: ToBuy
    unit: Unit
    gap: float
    others: tuple[tuple[Fold, float], ...] = ()
    """Other ways of folding, and about how long a cloth each would take."""

    saving: str = ""
    """What opening pieces on the fold would save, as a sentence."""

    seams: Mapping[str, str] = field(default_factory=dict)
    """Names of the seams at which stripes are to meet, by code."""

    @property
    def placed(self) -> tuple[Placed, ...]:
        """Where each piece lies."""
        return self.solved.placed

    @property
    def length(self) -> float:
        """Of the spread cloth that is covered."""
        return self.solved.length

    @property
    def name(self) -> str:
        """What the cloth is called."""
        return self.cloth.name or self.of

    @property
    def efficiency(self) -> float:
        """Area of all pieces over the area of usable cloth, 0 to 1 (cutting and costing
        §2.8). A spare copy is no piece."""
        pieces = sum(
            area_of(s.outline) * s.count * (2 if s.on_fold else 1) for s in self.shapes
        )
        return pieces / (self.length * self.spread.usable * self.spread.layers)

    @property
    def spare(self) -> tuple[str, ...]:
        """Names of pieces of which two layers give one too many."""
        if self.spread.layers == 1:
            return ()
        return tuple(
            s.label
            for s in self.shapes
            if s.count % 2 and not (s.on_fold and self.spread.folds)
        )

    @property
    def bound_told(self) -> str:
        """How much shorter a lay of these pieces could get, as a sentence."""
        s, show = self.solved, self._show
        if s.length <= s.row_bound + AT_BOUND:
            return "No shorter lay exists: the pieces on the fold fill it."
        which = "the pieces on the fold" if s.row_bound > s.area_bound else "the pieces"
        return f"No lay can be shorter than {show(s.bound)}: {which} alone fill that."

    @property
    def grown_told(self) -> str:
        """What the pieces were grown by, as a sentence; empty when they were not."""
        along, across = ((k - 1) * 100 for k in self.spread.growth)
        if along == across == 0.0:
            return ""
        return (
            f"The cloth will shrink: each piece is laid {along:.1f} % longer and "
            f"{across:.1f} % wider than its paper. Shrink the cloth first if you can."
        )

    @property
    def loose_told(self) -> str:
        """The seams at which stripes do not meet, as a sentence; empty when all do."""
        s = self.solved
        missed = loose(s.copies, tuple(self.seams), self.spread, s.placed)
        names = list(dict.fromkeys(self.seams[code] for code in missed))
        if not names:
            return ""
        return (
            f"The stripes do not meet at: {', '.join(names)}. A piece follows one "
            "neighbour; these seams fall as they may."
        )

    def _show(self, cm: float) -> str:
        return format_length(cm, self.unit)


def lay(
    pattern: Pattern,
    cloth: str = "shell",
    *,
    fold: Fold | None = None,
    gap: float = GAP,
    tilt: float = 0.0,
    budget: Budget = Budget(),  # noqa: B008 (it cannot change)
    seed: int = 1,
    told: Told | None = None,
    stop: Callable[[], bool] | None = None,
) -> Lay:
    """Lay all pieces that are cut from a cloth.

    `fold` outranks the order's; without either the shortest way is taken, lengthwise
    when no other saves much. `gap` cm between two pieces; `tilt` degrees off the grain.
    Raises LayError where a piece does not go on the cloth, with what would do, and for
    a pattern whose checks failed.
    """
    order = pattern.draft.order
    if pattern.failed:
        raise LayError("\n".join(pattern.drawn.failures))
    known = cloths_of(pattern)
    if cloth not in known:
        raise LayError(
            f"{order.place}: nothing is cut from {cloth}; the cloths of this order are "
            f"{', '.join(known)}"
        )
    bought = order.cloths.get(cloth)
    if bought is None or bought.width is None:
        raise width_missing(order, cloth)
    # the same for every number of layouts: the way to fold must not hang on it, or a
    # longer search could end with a longer lay
    probe = Budget(layouts=PROBE if budget.layouts is None else FEW)
    table = _Cutting(pattern, order, cloth, bought, gap, tilt, seed, probe)
    fold, others, stopped = table.way(fold or bought.fold)
    spread_out = table.spread(fold)
    if stopped:  # by hand, before the search itself
        budget = Budget(layouts=1)
    solved = table.solve(spread_out, budget, told, stop)
    solved = replace(solved, stopped=solved.stopped or stopped)
    table.check(spread_out, solved)
    saving = "" if solved.stopped else table.saving(spread_out, solved)
    return Lay(
        of=cloth,
        cloth=bought,
        spread=spread_out,
        shapes=table.shapes(spread_out),
        solved=solved,
        buy=bought_for(order, cloth, solved.length, spread_out),
        unit=order.unit,
        gap=gap,
        others=tuple((f, n) for f, n in others if f is not fold),
        saving=saving,
        seams=seam_names(pattern, spread_out),
    )


def bought_for(order: Order, cloth: str, length: float, on: Spread) -> ToBuy:
    """What to buy of a cloth of an order for a lay of this length, cm."""
    toile = order.toile or cloth != "shell"
    return to_buy(length, order.cloths[cloth], on, order.unit, toile=toile)


def width_missing(order: Order, cloth: str) -> LayError:
    """What is said where the width of a cloth is not known."""
    wide = "54 in" if order.unit is Unit.IN else "140 cm"
    return LayError(
        f"{order.place}: the width of the {cloth} is missing; write "
        f'[cloths.{cloth}] with width = "{wide}", measured between its outer edges'
    )


@dataclass(frozen=True)
class _Cutting:
    """One cloth of an order, and all that is cut from it."""

    pattern: Pattern
    order: Order
    key: str
    cloth: Cloth
    gap: float
    tilt: float
    seed: int
    probe: Budget
    known: NoFits = field(default_factory=NoFits)

    def spread(self, fold: Fold) -> Spread:
        return spread(self.cloth, fold, unit=self.order.unit, tilt=self.tilt)

    def shapes(self, on: Spread, flat: float | None = None) -> tuple[Shape, ...]:
        if flat is None:
            return shapes_of(self.pattern, self.key, growth=on.growth)
        return shapes_of(self.pattern, self.key, growth=on.growth, flat=flat)

    def solve(
        self,
        on: Spread,
        budget: Budget,
        told: Told | None = None,
        stop: Callable[[], bool] | None = None,
        shapes: Sequence[Shape] = (),
    ) -> Solved:
        return solve(
            shapes or self.shapes(on),
            on,
            seams=matched_seams(self.pattern, on),
            gap=self.gap,
            budget=budget,
            seed=self.seed,
            unit=self.order.unit,
            known=self.known,
            told=told,
            stop=stop,
        )

    def way(self, asked: Fold | None) -> tuple[Fold, list[tuple[Fold, float]], bool]:
        """The way to fold; about what each possible way takes, the shortest first; and
        whether it was stopped by hand meanwhile.

        Raises LayError when the pieces do not go on the cloth as asked, or in any way.
        """
        lengths: list[tuple[Fold, float]] = []
        refused: dict[Fold, LayError] = {}
        stopped = False
        for fold in WAYS:
            if fold is Fold.ACROSS and asked is not fold and lengths:
                continue  # the last resort: it leaves spare copies
            try:
                on = self.spread(fold)
                tried = self.solve(on, self.probe)
            except LayError as e:
                refused[fold] = e
                continue
            lengths.append((fold, tried.length * on.lengths))
            stopped = stopped or tried.stopped
        lengths.sort(key=lambda found: found[1])
        if asked is not None and asked in refused:
            raise LayError(self._refused(refused[asked], [f for f, _ in lengths]))
        if not lengths:
            raise LayError(self._refused(refused[Fold.SINGLE], []))
        if asked is not None:
            return asked, lengths, stopped
        usual = dict(lengths).get(Fold.LENGTHWISE, float("inf"))
        best, length = lengths[0]
        way = best if length < (1 - WORTH) * usual else Fold.LENGTHWISE
        return way, lengths, stopped

    def _refused(self, why: LayError, others: Sequence[Fold]) -> str:
        """Why pieces do not go on the cloth, and what would do."""
        place = f"{self.order.place}, cloths.{self.key}"
        lines = [f"{place}: {line}" for line in str(why).splitlines()]
        if others:
            words = " or ".join(f'"{f.value}"' for f in others)
            lines.append(f"{place}: it goes with fold = {words}")
        else:
            wide = max(_wide(s) for s in self.shapes(self.spread(Fold.SINGLE)))
            wide += 2 * self.cloth.selvedge
            lines.append(
                f"{place}: in a single layer it takes a width of "
                f"{format_length(wide + 0.1, self.order.unit)}; or divide the piece"
            )
        return "\n".join(lines)

    def check(self, on: Spread, solved: Solved) -> None:
        """Hold the lay against the true outlines once more, as fine as they are drawn.

        Raises LayError with every fault.
        """
        fine = self.shapes(on, TRUE)
        faults = check_lay(fine, on, solved.placed, solved.length, gap=self.gap)
        if faults:
            raise LayError("\n".join(str(f) for f in faults))

    def saving(self, on: Spread, solved: Solved) -> str:
        """What opening pieces on the fold would save, as a sentence (or none)."""
        shapes = self.shapes(on)
        row = [s for s in shapes if s.on_fold]
        if not row or not on.folds or len(shapes) == 1:
            return ""
        if solved.length > (1 + BINDS) * solved.row_bound:
            return ""
        row.sort(key=lambda s: area_of(s.outline))
        best, which = solved.length, 0
        for n in range(1, min(len(row), MOST_OPENED) + 1):
            codes = {s.code for s in row[:n]}
            tried = [opened(s) if s.code in codes else s for s in shapes]
            try:
                length = self.solve(on, self.probe, shapes=tried).length
            except LayError:
                continue
            if length < best - (1.0 if which else SAVES):
                best, which = length, n
        if not which:
            return "The fold sets this length, and opening a piece out saves nothing."
        names = [f"the {s.label.lower()}" for s in row[:which]]
        few = names[0] if which == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
        spare = "one spare copy of it is" if which == 1 else "one spare copy of each is"
        saved = format_length(solved.length - best, self.order.unit)
        return (
            "The fold sets this length, not the cloth. Opened out and cut whole, "
            f"{few} would save about {saved} ({spare} cut)."
        )


def _wide(shape: Shape) -> float:
    ys = [y for _, y in shape.outline]
    return (max(ys) - min(ys)) * (2 if shape.on_fold else 1)
