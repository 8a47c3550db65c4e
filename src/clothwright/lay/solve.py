"""A lay of given shapes on a spread cloth, as short as its budget allows.

The first lay stands at once; then the search goes on until the budget is spent, the lay
has reached its bound, or it is told to stop, and gives the best so far. With a budget
of seconds the free packer works beside it; with a budget of layouts it does not, and
the same seed and number always give the same lay.
"""

import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from clothwright.lay.bounds import area_bound, row_bound
from clothwright.lay.check import check_lay
from clothwright.lay.match import links_of
from clothwright.lay.nofit import NoFits
from clothwright.lay.packer import Packing, can_pack
from clothwright.lay.pieces import Copy, Placed, Shape, copies
from clothwright.lay.place import Layout, Table
from clothwright.lay.press import pressed
from clothwright.lay.refusals import must_be_simple, must_fit
from clothwright.lay.search import greedy, search
from clothwright.lay.shortener import Shortener, Task, can_shorten
from clothwright.lay.spread import LayError, Spread
from clothwright.order import Fold
from clothwright.units import Unit

AT_BOUND = 0.05
"""A lay within this of its bound is not sought shorter, cm."""

MANY = 15
"""More free pieces than this are laid by the programs beside us alone: laying one after
another cannot squeeze."""

COMB_SECONDS = 2.0
"""The packer's time with pieces on the fold, where there is as much: it only has to
find a start."""

COMB_SHARE = 0.2
"""Share of the seconds that it gets where they are many."""

TWO_FROM = 8.0
"""With so many seconds two searches of our own go on in turns, from other seeds."""

BESIDE_SHARE = 0.97
"""Share of the seconds for the programs beside us where pieces are many."""

LONG = 8.0
"""From so many seconds on, many pieces are our own search's: it needs two or three to
begin."""

BEGUN = 0.05
"""Until this share of them the packer goes on beside it: first lays to look at."""

LATE = 0.3
"""Where it has not begun at this share of them, the packer goes on to the end: the
search cannot run here, or its loops are being compiled, once for an installation."""

LISTEN = 0.2
"""Between two looks at the packer, s."""

HEARD = 2.0
"""What it has found is checked and shown so often, s: the checker's time is its own."""

PRESSED_WITHIN = 0.015
"""What is longer than the best by more than this share is not pressed: pressing gains
less."""

PRESSED_FROM = 0.5
"""From this share of the time on, what the packer gives up is pressed too."""

PACKER_START = 0.3
"""The packer is not started for less than this, s."""


@dataclass(frozen=True)
class Budget:
    """How long to look for a shorter lay: layouts tried, or seconds."""

    layouts: int | None = None
    seconds: float = 2.0


@dataclass(frozen=True)
class Progress:
    """How far a search is."""

    length: float
    """Of the best lay so far, cm."""

    bound: float
    share: float
    """Of the budget that is spent, 0 to 1."""

    fold: Fold
    """How the cloth lies."""

    placed: tuple[Placed, ...]
    """Where each piece lies in that lay."""


@dataclass(frozen=True)
class Solved:
    """The best lay found."""

    copies: tuple[Copy, ...]
    placed: tuple[Placed, ...]
    length: float
    area_bound: float
    row_bound: float
    tried: int
    stopped: bool = False
    """It was told to stop before its budget was spent."""

    @property
    def bound(self) -> float:
        """No lay of these pieces on this cloth is shorter, cm."""
        return max(self.area_bound, self.row_bound)

    @property
    def at_bound(self) -> bool:
        """Nothing shorter exists."""
        return self.length <= self.bound + AT_BOUND


def solve(
    shapes: Sequence[Shape],
    spread: Spread,
    *,
    seams: Sequence[str] = (),
    gap: float = 0.0,
    budget: Budget = Budget(),
    seed: int = 1,
    unit: Unit = Unit.CM,
    known: NoFits | None = None,
    told: Callable[[Progress], None] | None = None,
    stop: Callable[[], bool] | None = None,
) -> Solved:
    """Lay shapes on a spread cloth. Raises LayError when a piece does not go on it.

    `seams` are the codes at which stripes meet, the weightiest first. Ctrl-C in the
    main thread, or `stop` saying True, ends the search; the best so far is kept.
    """
    must_be_simple(shapes)
    everything = copies(shapes, spread, gap=gap)
    must_fit(everything, spread, unit)
    table = Table(everything, spread, links_of(everything, seams, spread), known)
    bounds = area_bound(everything, spread), row_bound(everything, spread)
    run = _Run(table, shapes, gap, max(bounds), budget, seed)
    stopped = False
    try:
        for progress in run.go():
            if told is not None:
                told(progress)
            if stop is not None and stop():
                stopped = True
                break
    except KeyboardInterrupt:
        stopped = True
    finally:
        run.end()
    best = run.best
    placed = table.placed(best)
    faults = run.faults(best)
    if faults:  # never print what has not passed
        raise LayError("\n".join(faults))
    return Solved(everything, placed, best.length, *bounds, run.tried, stopped)


class _Run:
    """One search, with programs beside it where they help."""

    def __init__(
        self,
        table: Table,
        shapes: Sequence[Shape],
        gap: float,
        bound: float,
        budget: Budget,
        seed: int,
    ) -> None:
        self.table, self.shapes, self.gap = table, shapes, gap
        self.bound, self.budget, self.seed = bound, budget, seed
        self.best = greedy(table)
        self.shown: tuple[Layout, tuple[Placed, ...]] | None = None
        self.tried = 1
        self.begun = time.monotonic()
        self.beside: list[Packing | Shortener] = []

    def go(self) -> Iterator[Progress]:
        """Search until the budget is spent or the bound reached."""
        if self.budget.layouts is not None:
            for layout in search(self.table, seed=self.seed, start=self.best):
                self.tried += 1
                self._keep(layout)
                yield self._progress(self.tried / self.budget.layouts)
                if self._at_bound() or self.tried >= self.budget.layouts:
                    return
        packs = can_pack(self.table) and self.budget.seconds >= PACKER_START
        if packs and len(self.table.copies) > MANY and not self._folded():
            yield from self._many()
        else:
            yield from self._few(packs)

    def _few(self, packs: bool) -> Iterator[Progress]:
        """Our own search, from the greedy lay and from what the packer finds."""
        seconds = self.budget.seconds
        folded = self._folded()
        if packs:
            time_each = 0.7 * seconds
            if folded:
                time_each = min(max(COMB_SECONDS, COMB_SHARE * seconds), seconds / 2)
            for row_turned in (False, True) if folded else (False,):
                packing = Packing(
                    self.table,
                    self.best,
                    seconds=time_each,
                    seed=self.seed,
                    row_turned=row_turned,
                )
                self.beside.append(packing)
        seeds = (self.seed, self.seed + 1) if seconds >= TWO_FROM else (self.seed,)
        searches = [search(self.table, seed=k, start=self.best) for k in seeds]
        while True:
            spent = self.spent
            yield self._progress(spent)
            if self._at_bound() or spent >= 1.0:
                self._closer()
                return
            for s in searches:
                self.tried += 1
                self._keep(next(s))
            if self.beside and all(p.program.done for p in self.beside):
                found = [self.table.squeezed(k) for k in self._heard()]
                self.beside = []
                for start in found:
                    self._keep(start)
                    searches.append(search(self.table, seed=self.seed, start=start))

    def _many(self) -> Iterator[Progress]:
        """Many free pieces: our own search in two programs beside us, the packer until
        they have begun; the packer alone where time is short or they are too many."""
        seconds = self.budget.seconds
        if self._at_bound():
            pass
        elif seconds < LONG or not can_shorten(self.table):
            yield from self._packed(BESIDE_SHARE)
        else:
            task = Task(
                tuple(self.shapes),
                self.table.spread,
                self.gap,
                self.best,
                self.seed,
                seconds * BESIDE_SHARE,
            )
            both = [
                Shortener(self.table, replace(task, seed=k))
                for k in (2 * self.seed, 2 * self.seed + 1)
            ]
            self.beside.extend(both)
            yield from self._packed(BEGUN)

            def until() -> float:
                return BESIDE_SHARE if any(s.begun for s in both) else LATE

            while not self._over(until()) and not all(s.program.done for s in both):
                yield from self._waited(both, until())
            if until() == LATE:  # they have not begun
                yield from self._packed(BESIDE_SHARE)
        self._heard()
        self._closer()
        yield self._progress(1.0)

    def _packed(self, until: float) -> Iterator[Progress]:
        """The packer alone, until so much of the time is spent."""
        packing = Packing(
            self.table,
            self.best,
            seconds=max(until - self.spent, 0.0) * self.budget.seconds,
            seed=self.seed,
            workers=2,
        )
        self.beside.append(packing)
        while not packing.program.done and not self._over(until):
            yield from self._waited([packing], until)
            if self.spent > PRESSED_FROM * until:
                self._press(packing.near())
        self._taken(packing)
        self._press(packing.near())
        self._press(packing.layout())
        packing.program.stop()

    def _waited(
        self, beside: Sequence[Packing | Shortener], until: float
    ) -> Iterator[Progress]:
        """Wait for what goes on beside us, and take what it has found."""
        due = time.monotonic() + HEARD
        while time.monotonic() < due and not self._over(until):
            yield self._progress(self.spent)
            time.sleep(LISTEN)
            if all(b.program.done for b in beside):
                break
        for b in beside:
            if b.program.length < self.best.length:
                self._taken(b)

    def _over(self, until: float) -> bool:
        """That share of the time is spent, or nothing shorter exists."""
        return self.spent >= until or self._at_bound()

    @property
    def spent(self) -> float:
        """Share of the seconds that are gone."""
        return (time.monotonic() - self.begun) / self.budget.seconds

    def _folded(self) -> bool:
        return self.table.spread.folds and any(
            c.shape.on_fold for c in self.table.copies
        )

    def _heard(self) -> list[Layout]:
        """What those beside us have found so far and may be cut; the best is kept."""
        return [found for b in self.beside if (found := self._taken(b)) is not None]

    def _taken(self, beside: Packing | Shortener) -> Layout | None:
        layout = beside.layout()
        if layout is None or self.faults(layout):
            return None
        self._keep(layout)
        return layout

    def _press(self, start: Layout | None) -> None:
        """A packing pressed together, or what the packer gave up because a few pieces
        overlap, with these parted: often shorter than all that it has found."""
        if start is not None and start.length < (1 + PRESSED_WITHIN) * self.best.length:
            layout = pressed(self.table, start)
            if layout.length < self.best.length and not self.faults(layout):
                self._keep(layout)

    def _keep(self, layout: Layout) -> None:
        if layout.length < self.best.length - 1e-9:
            self.best = layout

    def _closer(self) -> None:
        """The best pressed together, and each piece pushed once more."""
        for closer in (pressed, Table.squeezed, pressed):
            layout = closer(self.table, self.best)
            if not self.faults(layout):
                self._keep(layout)

    def _at_bound(self) -> bool:
        return self.best.length <= self.bound + AT_BOUND

    def _progress(self, share: float) -> Progress:
        if self.shown is None or self.shown[0] is not self.best:
            self.shown = self.best, self.table.placed(self.best)
        return Progress(
            self.best.length,
            self.bound,
            min(share, 1.0),
            self.table.spread.fold,
            self.shown[1],
        )

    def faults(self, layout: Layout) -> list[str]:
        """What the checker has against a layout."""
        table = self.table
        placed = table.placed(layout)
        found = check_lay(
            self.shapes,
            table.spread,
            placed,
            layout.length,
            gap=self.gap,
            meet=table.links,
        )
        return [str(f) for f in found]

    def end(self) -> None:
        """Stop what still runs beside us, and take what it has found."""
        self._heard()
        for p in self.beside:
            p.program.stop()
        self.beside = []
