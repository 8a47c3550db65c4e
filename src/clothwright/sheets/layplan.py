"""The lay plan: one landscape page for each cloth, to scale, with the cloth to buy.

The cloth lies as the cutter sees it, its beginning at the left and the fold (or the
near selvedge) at the top. Lengths cm, on the page and on the cloth.
"""

import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path as FilePath

from clothwright.curves import Point
from clothwright.finishing.drawn import Meaning
from clothwright.lay import Lay, Placed, Shape, laid_outline, roomiest, told_fold
from clothwright.order import Fold
from clothwright.sheets.ink import CM, Ink
from clothwright.sheets.laypiece import draw_arrow, draw_piece
from clothwright.sheets.letters import box_told, width, wrapped
from clothwright.sheets.looks import LOOKS, Look
from clothwright.sheets.write import write_file
from clothwright.units import CM_PER_INCH, Unit, pretty_length, pretty_text

PAGES = {False: (29.7, 21.0), True: (27.94, 21.59)}
"""Landscape A4, and US Letter: width and height."""

EDGE = 1.2
"""Margin of the page."""

HEAD = 1.7
"""Height of the heading below the margin."""

RULER = 1.0
"""Room for the ruler above the cloth."""

SCALES = (2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200)

MOST_HIGH = 11.2
"""The drawn cloth is at most so high above its words; beside them, to the foot."""

BESIDE = 8.8
"""Width of the words beside the cloth."""

CLOTH = Look(0.5)
BORDER = Look(0.18, (1.5, 1.5), 0.45)
FINE = Look(0.2)
STRIPE = Look(0.12, (), 0.75)
ON_FOLD = LOOKS[Meaning.FOLD]

TEXT = 0.19
LINE = 0.42


def write_lay_plan(
    lays: Sequence[Lay], title: str, target: FilePath, *, letter: bool = False
) -> int:
    """Write a page for each lay and return their number. Raises SheetError when the
    file cannot be written."""
    from reportlab.pdfgen.canvas import Canvas

    out = io.BytesIO()
    wide, high = PAGES[letter]
    canvas = Canvas(
        out, pagesize=(wide * CM, high * CM), invariant=1, pageCompression=1
    )
    canvas.setTitle(f"{title}: lay plan")
    canvas.setAuthor("Clothwright")
    for lay in lays:
        _Page(Ink(canvas, high), lay, title, wide, high).draw()
        canvas.showPage()
    canvas.save()
    write_file(target, out.getvalue())
    return len(lays)


@dataclass
class _Page:
    """One cloth."""

    ink: Ink
    lay: Lay
    title: str
    wide: float
    high: float
    by_code: set[str] = field(default_factory=set)
    """Pieces too small for their name, which show their code."""

    def __post_init__(self) -> None:
        spread = self.lay.spread
        self.whole = self.lay.length + 2 * spread.end_loss
        self.top = EDGE + HEAD + RULER
        room = self.wide - 2 * EDGE - 0.8
        below = self._scale(room, MOST_HIGH)
        beside = self._scale(room - BESIDE - 0.6, self.high - self.top - EDGE - 0.6)
        rows = 2 * len(self.lay.shapes) + 2 * len(self.lay.buy.parts) + 24
        tall = rows * LINE * 0.6 > self.high - 2 * EDGE - HEAD
        self.beside = beside < below and not tall
        self.scale = beside if self.beside else below
        self.left = EDGE + 0.8 + spread.end_loss / self.scale

    def _scale(self, across: float, down: float) -> int:
        """The largest scale at which the cloth goes into a room."""
        return next(
            n
            for n in (*SCALES, SCALES[-1] * 10)
            if self.whole / n <= across and self.lay.spread.width / n <= down
        )

    def at(self, x: float, y: float) -> Point:
        """A place of the spread cloth on the page."""
        return Point(self.left + x / self.scale, self.top + y / self.scale)

    def draw(self) -> None:
        """All of the page."""
        self._heading()
        self._cloth()
        self._ruler()
        for shape, placed, how in self._pieces():
            self._piece(shape, placed, how)
        self._words()

    def _show(self, cm: float) -> str:
        return pretty_length(cm, self.lay.unit)

    # -- the heading -------------------------------------------------------------------
    def _heading(self) -> None:
        lay, ink = self.lay, self.ink
        name = f"Lay plan: {lay.name}"
        ink.write(name, EDGE, EDGE + 0.5, 0.4, bold=True)
        about = [self.title]
        if lay.name != lay.of:
            about.append(lay.of)
        if lay.cloth.stuff:
            about.append(lay.cloth.stuff)
        about += [told_fold(lay.spread.fold), f"scale 1:{self.scale}"]
        for i, line in enumerate(
            wrapped(" · ".join(about), TEXT, self.wide - 2 * EDGE)[:2]
        ):
            ink.write(line, EDGE, EDGE + 1.05 + i * LINE, TEXT)

    # -- the cloth ---------------------------------------------------------------------
    def _cloth(self) -> None:
        lay, spread, ink = self.lay, self.lay.spread, self.ink
        n, loss, length = self.scale, spread.end_loss, lay.length
        corner = self.at(-loss, 0.0)
        high = spread.width / n
        for axis in (0, 1):
            self._stripes(axis)
        ink.box(corner.x, corner.y, self.whole / n, high, CLOTH)
        for x in (0.0, length):
            ink.line(self.at(x, 0.0), self.at(x, spread.width), BORDER)
        for y in sorted({y for band in spread.bands for y in band}):
            if 0.0 < y < spread.width:
                ink.line(self.at(-loss, y), self.at(length + loss, y), BORDER)
        for y, there in ((0.0, spread.near_fold), (spread.width, spread.far_fold)):
            if there:
                a, b = self.at(-loss, y), self.at(length + loss, y)
                ink.line(a, b, Look(0.9, ON_FOLD.dashes))
        for flaw in spread.flaws:
            a, b = self.at(flaw.left, flaw.top), self.at(flaw.right, flaw.bottom)
            ink.box(a.x, a.y, b.x - a.x, b.y - a.y, FINE)
            ink.line(a, b, FINE)
            ink.line(Point(a.x, b.y), Point(b.x, a.y), FINE)
        x = self.left
        for y, words in self._edges():
            drop = 0.3 if y else -0.1
            ink.write(words, x, self.top + y / n + drop, 0.15)
        if spread.fold is Fold.ACROSS:
            self._upright("fold", -loss)
        if spread.one_way:
            self._heads()

    def _upright(self, words: str, x: float) -> None:
        """Words along an end of the cloth."""
        c, at = self.ink.canvas, self.at(x, self.lay.spread.width / 2)
        c.saveState()
        c.translate((at.x - 0.15) * CM, (self.ink.height - at.y) * CM)
        c.rotate(90)
        self.ink.height, kept = 0.0, self.ink.height
        self.ink.write(words, 0.0, 0.0, 0.15, middle=True)
        self.ink.height = kept
        c.restoreState()

    def _edges(self) -> Iterator[tuple[float, str]]:
        """What stands along the near and the far edge of the spread cloth."""
        spread = self.lay.spread
        if spread.fold is Fold.LENGTHWISE:
            yield 0.0, "fold"
            yield spread.width, "selvedges"
        elif spread.fold is Fold.TWO:
            yield 0.0, "fold"
            yield spread.width, "fold; the selvedges meet in the middle"
        else:
            yield 0.0, "selvedge"
            yield spread.width, "selvedge"

    def _heads(self) -> None:
        """The way that every piece heads, for a nap."""
        x, y = self.at(self.lay.length, 0.0)
        words = "all pieces head this way (nap)"
        start = x - width(words, 0.15) - 1.4
        self.ink.write(words, start, y - 0.1, 0.15)
        draw_arrow(
            self.ink, Point(x - 1.2, y - 0.17), Point(x - 0.2, y - 0.17), both=False
        )

    def _stripes(self, axis: int) -> None:
        """Where each repeat begins, as far as it is known: from the first piece."""
        spread, repeat = self.lay.spread, self.lay.spread.repeat[axis]
        if repeat is None:
            return
        low, high = (0.0, self.lay.length) if axis == 0 else (0.0, spread.width)
        n = 0
        while low + n * repeat <= high:
            at = low + n * repeat
            ends = (
                (self.at(at, 0.0), self.at(at, spread.width))
                if axis == 0
                else (self.at(0.0, at), self.at(self.lay.length, at))
            )
            self.ink.line(*ends, STRIPE)
            n += 1

    def _ruler(self) -> None:
        """The length from the beginning of the lay, and where it ends."""
        inch = self.lay.unit is Unit.IN
        step, each = (CM_PER_INCH, 6) if inch else (5.0, 2)
        y = self.top - 0.42
        end = self.at(self.lay.length, 0.0).x
        self.ink.line((self.left, y), (end, y), FINE)
        n = 0
        while n * step <= self.lay.length + 1e-9:
            x = self.left + n * step / self.scale
            major = n % each == 0
            self.ink.line((x, y), (x, y - (0.2 if major else 0.1)), FINE)
            if major and end - x > 1.3:
                said = f"{n:d}" if inch else f"{n * step:g}"
                self.ink.write(said, x, y - 0.27, 0.14, middle=True)
            n += 1
        self.ink.line((end, y), (end, y - 0.2), FINE)
        said = self._show(self.lay.length)
        self.ink.write(said, end, y - 0.27, 0.15, bold=True, middle=True)

    # -- the pieces --------------------------------------------------------------------
    def _pieces(self) -> Iterator[tuple[Shape, Placed, str]]:
        lay = self.lay
        copies = lay.solved.copies
        for copy, placed in zip(copies, lay.placed, strict=True):
            s = copy.shape
            if s.on_fold:
                how = "on the fold"
            elif lay.spread.layers == 2:
                odd = "one spare" if s.count % 2 else ""
                how = "pair" if s.paired else odd
            else:
                how = copy.hand
            yield s, placed, how

    def _piece(self, shape: Shape, placed: Placed, how: str) -> None:
        """A piece where it lies, with its name and its grain."""
        outline = laid_outline(shape, placed)
        x, y, _ = roomiest(outline)
        named = draw_piece(
            self.ink,
            [self.at(*p) for p in outline],
            self.at(x, y),
            shape.label,
            shape.code,
            how,
            turned=round(placed.turn) % 360 == 180,
            one_way=self.lay.spread.one_way,
        )
        if not named:
            self.by_code.add(shape.code)

    # -- the words ---------------------------------------------------------------------
    def _words(self) -> None:
        """The lay, what is cut and the cloth to buy: in columns below the cloth, or in
        one beside it."""
        if self.beside:
            x, y = self.wide - EDGE - BESIDE, EDGE + HEAD
            for part in (self._about, self._cut, self._bought):
                y = part(x, y, BESIDE) + LINE
            return
        across = (self.wide - 2 * EDGE - 2 * 0.8) / 3
        y = self.top + self.lay.spread.width / self.scale + 1.0
        for i, part in enumerate((self._about, self._cut, self._bought)):
            part(EDGE + i * (across + 0.8), y, across)

    def _about(self, x: float, y: float, across: float) -> float:
        return self._column("The lay", list(self._facts()), x, y, across)

    def _cut(self, x: float, y: float, across: float) -> float:
        return self._table("To cut", list(self._counts()), x, y, across)

    def _bought(self, x: float, y: float, across: float) -> float:
        buy = self.lay.buy
        rows = [(a.reason, self._show(a.cm)) for a in buy.parts]
        if buy.price is not None:
            each = f"{self.lay.cloth.price} for 1 {buy.sold_by.unit}"
            rows.append((f"price, at {each}", f"{buy.price}"))
        return self._table(f"To buy: {buy.told}", rows, x, y, across)

    def _facts(self) -> Iterator[str]:
        lay, spread = self.lay, self.lay.spread
        assert lay.cloth.width is not None
        yield (
            f"Cloth {self._show(lay.cloth.width)} wide, selvedges "
            f"{self._show(lay.cloth.selvedge)}; "
            f"{told_fold(spread.fold)}."
        )
        yield (
            f"Length {self._show(lay.length)}; {lay.efficiency * 100:.0f} % of the "
            "cloth is used."
        )
        yield lay.bound_told
        if lay.saving:
            yield lay.saving
        if lay.others:
            ways = "; ".join(f"{f.value} {self._show(n)}" for f, n in lay.others)
            yield f"Spread another way it takes about: {ways}."
        if lay.spare:
            yield f"One spare copy is cut of: {', '.join(lay.spare)}."
        if lay.grown_told:
            yield lay.grown_told
        if spread.striped:
            yield (
                "Pin the stripes of both layers on each other, or lay single pieces by "
                "the stripes of their neighbours; the thin lines are a repeat apart."
            )
        if lay.loose_told:
            yield lay.loose_told
        if lay.gap:
            yield f"{self._show(lay.gap)} between two pieces, for the shears."
        yield from box_told((self.title, lay.name))

    def _counts(self) -> Iterator[tuple[str, str]]:
        for s in self.lay.shapes:
            how = "on the fold" if s.on_fold else "in pairs" if s.paired else ""
            if s.on_fold and not self.lay.spread.folds:
                how = "opened out"
            code = f" ({s.code})" if s.code in self.by_code else ""
            yield s.label + code, f"{s.count} {how}".strip()

    def _column(
        self, heading: str, texts: Sequence[str], x: float, y: float, across: float
    ) -> float:
        self.ink.write(heading, x, y, 0.24, bold=True)
        y += LINE * 1.25
        for text in map(pretty_text, texts):
            for line in wrapped(text, TEXT, across):
                self.ink.write(line, x, y, TEXT)
                y += LINE * 0.9
            y += LINE * 0.25
        return y

    def _table(
        self,
        heading: str,
        rows: Sequence[tuple[str, str]],
        x: float,
        y: float,
        across: float,
    ) -> float:
        self.ink.write(pretty_text(heading), x, y, 0.24, bold=True)
        y += LINE * 1.25
        for row in rows:
            y = self._row(row, x, y, across)
        return y

    def _row(self, row: tuple[str, str], x: float, y: float, across: float) -> float:
        """Words at the left and a figure at the right; where the next row stands."""
        words, figure = map(pretty_text, row)
        room = across - width(figure, TEXT) - 0.4
        for line in wrapped(words, TEXT, room):
            self.ink.write(line, x, y, TEXT)
            y += LINE * 0.9
        self.ink.write(figure, x + across - width(figure, TEXT), y - LINE * 0.9, TEXT)
        return y
