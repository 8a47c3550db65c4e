"""Full-scale pages as PDF: tiles for a home printer, A0 sheets, a roll.

The lines are told once, as a form, and each page shows its own window of them at
exactly true size; the file asks viewers not to fit it to the paper. On large papers
and at small scales pieces lie whole, with nothing to join. Lengths cm.
"""

import io
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import replace
from functools import lru_cache
from pathlib import Path as FilePath
from typing import TYPE_CHECKING

from clothwright.finishing.boxes import text_box
from clothwright.finishing.drawn import DrawnPattern, DrawnPiece, DrawnText, Meaning
from clothwright.sheets import title
from clothwright.sheets.arrange import Arrangement, all_fit, arrange
from clothwright.sheets.formats import (
    BLEED,
    HEADER,
    MARGIN,
    ROLL_WIDTH,
    Frame,
    PageFormat,
    Scale,
    frame_of,
)
from clothwright.sheets.ink import CM, Ink
from clothwright.sheets.joints import clear_of_joints, draw_joints, draw_trim
from clothwright.sheets.letters import box_told
from clothwright.sheets.letters import width as width_of
from clothwright.sheets.looks import scaled, strokes
from clothwright.sheets.tiles import Tile
from clothwright.sheets.write import SheetError, write_file

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

LAYERS: dict[str, tuple[Meaning, ...]] = {
    "cut lines": (Meaning.CUT, Meaning.FOLD, Meaning.BRACKET),
    "stitch lines": (Meaning.SEW, Meaning.DART),
    "marks": (
        Meaning.GRAIN,
        Meaning.NOTCH,
        Meaning.DRILL,
        Meaning.LOOP,
        Meaning.INNER,
        Meaning.PLACEMENT,
        Meaning.ARROW,
        Meaning.TAPE,
        Meaning.EASE,
    ),
    "words": (Meaning.LABEL,),
    "dimensions": (Meaning.DIMENSION,),
}
"""What can be switched off together in a viewer."""

WORDS = {Meaning.LABEL, Meaning.DIMENSION}
"""What is written, not drawn."""

FOOT = 1.29
"""Foot of the header's lines, cm from the upper edge: clear of the bleed below, and
its top 0.8 cm from the edge."""


def write_pdf(
    pattern: DrawnPattern,
    target: FilePath,
    *,
    page: PageFormat = PageFormat.A4,
    scale: Scale = Scale.FULL,
    layers: bool = False,
    dimensions: bool = True,
    roll_width: float = ROLL_WIDTH,
) -> int:
    """Write the pattern on pages of a format and return how many there are.

    `layers` makes cut lines, stitch lines, marks, words and dimensions separate
    layers; `dimensions` prints the figures along the edges; `roll_width` (cm, 30 to
    250) counts for a roll. Raises SheetError when the roll is impossible or the file
    cannot be written.
    """
    data, pages = pdf_of(
        pattern,
        page=page,
        scale=scale,
        layers=layers,
        dimensions=dimensions,
        roll_width=roll_width,
    )
    write_file(target, data)
    return pages


def pdf_of(
    pattern: DrawnPattern,
    *,
    page: PageFormat = PageFormat.A4,
    scale: Scale = Scale.FULL,
    layers: bool = False,
    dimensions: bool = True,
    roll_width: float = ROLL_WIDTH,
) -> tuple[bytes, int]:
    """The PDF itself and its number of pages; as `write_pdf`."""
    frame = checked_frame(page, roll_width)
    pieces = [scaled(p, scale.value) for p in pattern.pieces]
    whole = lies_whole(pieces, frame, page, scale)
    boxes = box_told((pattern.title, pattern.whose, *_texts(pieces)))
    about = replace(pattern, notes=(*pattern.notes, *boxes, *_unsaid(pieces)))
    block = title.TitleBlock(about, frame, scale, tiled=not whole)
    laid = arrange(
        pieces,
        frame,
        whole=whole,
        keep_clear=(block.width, block.height),
    )
    if laid.joined:
        laid = clear_of_joints(laid, pattern.pieces, scale.value)
    out = io.BytesIO()
    canvas = canvas_for(pattern, out)
    shown = {m for k in LAYERS.values() for m in k}
    shown -= set() if dimensions else {Meaning.DIMENSION}
    if layers:
        forms = {n.replace(" ", "_"): shown & set(kept) for n, kept in LAYERS.items()}
    else:
        forms = {"pattern": shown - WORDS}
    world = world_of(laid)
    for name, kept in forms.items():
        _form(canvas, name, laid.pieces, kept, world, scale)
    told = [t for p in laid.pieces for t in p.texts if t.meaning in shown]
    pages = Pages(canvas, pattern, laid, block, page, scale)
    for tile in laid.tiles:
        pages.tile(tile, list(forms), world, [] if layers else told)
    pages.rest(block.rest)
    canvas.save()
    data = out.getvalue()
    if layers:
        data = _with_layers(data)
    return data, pages.number


def _texts(pieces: Iterable[DrawnPiece]) -> Iterator[str]:
    for p in pieces:
        yield from (t.text for t in p.texts)


def _unsaid(pieces: Iterable[DrawnPiece]) -> Iterator[str]:
    """What labels leave off for want of room."""
    for p in pieces:
        if p.unsaid:
            bare = ", too narrow here for its label" if p.nameless else ""
            yield f"{p.name}{bare}: {'; '.join(p.unsaid)}."


def canvas_for(pattern: DrawnPattern, out: io.BytesIO) -> "Canvas":
    """A canvas that asks viewers to print it at its true size."""
    from reportlab import rl_config
    from reportlab.pdfgen.canvas import Canvas

    rl_config.useA85 = 0  # streams as they are: written as text they take longer
    canvas = Canvas(out, invariant=1, pageCompression=1)
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setTitle(pattern.title)
    canvas.setAuthor("Clothwright")
    canvas.setCreator("Clothwright")
    canvas.setSubject(pattern.whose)
    return canvas


def checked_frame(page: PageFormat, roll_width: float) -> Frame:
    """The page. Raises SheetError for an impossible roll."""
    try:
        return frame_of(page, roll_width)
    except ValueError as e:
        raise SheetError(str(e)) from e


def lies_whole(
    pieces: Sequence[DrawnPiece], frame: Frame, page: PageFormat, scale: Scale
) -> bool:
    """True when every piece is to lie whole on one page."""
    large = page in (PageFormat.A0, PageFormat.ROLL)
    return (large or scale is not Scale.FULL) and all_fit(pieces, frame)


def world_of(laid: Arrangement) -> tuple[float, float]:
    """Width and height of all tiles joined."""
    f = laid.frame
    columns = 1 + max(c for _, c in laid.tiles)
    rows = 1 + max(r for r, _ in laid.tiles)
    return columns * f.live_width, rows * f.live_height


def begin_form(canvas: "Canvas", name: str, world: tuple[float, float]) -> Ink:
    """Begin a form as large as all tiles, and the ink to draw it with."""
    right, head = (world[0] + MARGIN) * CM, (world[1] + MARGIN) * CM
    canvas.beginForm(name, -round(CM), -round(CM), right, head)
    return Ink(canvas, world[1])


def _form(
    canvas: "Canvas",
    name: str,
    pieces: Iterable[DrawnPiece],
    kept: Collection[Meaning],
    world: tuple[float, float],
    scale: Scale,
) -> None:
    ink = begin_form(canvas, name, world)
    for piece in pieces:
        for stroke in strokes(piece, figure=scale.value):
            if stroke.meaning in kept:
                ink.stroke(stroke)
        for text in piece.texts:
            if text.meaning in kept:
                ink.words(text)
    canvas.endForm()


def _seen(text: DrawnText, left: float, top: float, wide: float, tall: float) -> bool:
    """True when the box of words reaches into a window."""
    x0, y0, x1, y1 = _reach(text)
    return x0 - left < wide and x1 > left and y0 - top < tall and y1 > top


@lru_cache(1024)  # each page asks of each word
def _reach(text: DrawnText) -> tuple[float, float, float, float]:
    """Left, top, right and foot of the box of words."""
    corners = text_box(text).corners()
    xs, ys = [p.x for p in corners], [p.y for p in corners]
    return min(xs), min(ys), max(xs), max(ys)


class Pages:
    """Turns over the pages of one file."""

    def __init__(
        self,
        canvas: "Canvas",
        pattern: DrawnPattern,
        laid: Arrangement,
        block: title.TitleBlock,
        page: PageFormat,
        scale: Scale,
    ) -> None:
        self.canvas, self.pattern, self.laid = canvas, pattern, laid
        self.block, self.page, self.scale = block, page, scale
        self.number = 0

    def tile(
        self,
        tile: Tile,
        forms: list[str],
        world: tuple[float, float],
        words: Iterable[DrawnText],
    ) -> None:
        """One page with its window of the pattern; of the words only those that are
        seen, so that a page that is searched holds no other page's."""
        c, laid, f = self.canvas, self.laid, self.laid.frame
        live = self._live_height(tile)
        height = HEADER + live + MARGIN
        ink = self._page(height, title.tile_name(tile))
        origin = laid.origin(tile)
        c.saveState()
        window = c.beginPath()
        bleed = BLEED if laid.joined else 0.0  # else that is another page's paper
        window.rect(
            (f.left - bleed) * CM,
            (MARGIN - bleed) * CM,
            (f.live_width + 2 * bleed) * CM,
            (live + 2 * bleed) * CM,
        )
        c.clipPath(window, stroke=0)
        left = f.left - origin.x
        foot = height - f.top + origin.y - world[1]
        c.translate(left * CM, foot * CM)
        for form in forms:
            c.doForm(form)
        told = Ink(c, world[1])
        for text in words:
            if _seen(text, origin.x, origin.y, f.live_width, live):
                told.words(text)
        c.translate(-left * CM, -foot * CM)
        if laid.joined:
            draw_trim(ink, laid, tile)
            draw_joints(ink, laid, tile)
        c.restoreState()
        if tile == laid.tiles[0]:
            self.block.draw(ink, f.left, f.top, laid)
        c.showPage()

    def rest(self, rest: list[title.Words]) -> None:
        """Pages for the notes that found no room on the first."""
        while rest:
            f = self.laid.frame
            height = min(f.height, 60.0)
            ink = self._page(height, "notes")
            rest = title.draw_rest(ink, rest, f, height - HEADER - MARGIN)
            self.canvas.showPage()

    def _live_height(self, tile: Tile) -> float:
        """All of a sheet; of a roll only what is needed."""
        laid, f = self.laid, self.laid.frame
        if self.page is not PageFormat.ROLL:
            return f.live_height
        if (tile[0] + 1, tile[1]) in laid.tiles and laid.joined:
            return f.live_height
        top = laid.origin(tile).y
        feet = [p.cut_line.bounds()[3] - top for p in laid.pieces]
        inside = [y for y in feet if 0 < y <= f.live_height + 1e-6]
        if tile == laid.tiles[0]:
            inside.append(self.block.height)
        return max(inside) + BLEED

    def _page(self, height: float, name: str) -> Ink:
        c, f, p = self.canvas, self.laid.frame, self.pattern
        self.number += 1
        c.setPageSize((f.width * CM, height * CM))
        ink = Ink(c, height)
        ink.write(name, f.left, FOOT, 0.38, bold=True)
        x = f.left + max(1.6, width_of(name, 0.38, bold=True) + 0.4)
        room = f.width - MARGIN - x
        total = len(self.laid.tiles)
        alarm = "CHECKS FAILED, see page A1 · " if p.failures else ""
        first = f"{alarm}{p.title} · {p.whose.replace(', measured', ' · measured')}"
        count = f" · page {self.number} of {total}" if self.number <= total else ""
        second = f"{title.scale_words(self.scale, p.unit)} · {title.PRINT_RIGHT}{count}"
        for text, y in ((first, FOOT - 0.31), (second, FOOT)):
            ink.write(_fitted(text, room), x, y, 0.17)
        return ink


def _fitted(text: str, room: float) -> str:
    """The text, cut short with an ellipsis when it is too long for its line."""
    if width_of(text, 0.17) <= room:
        return text
    while text and width_of(text + "…", 0.17) > room:
        text = text[:-1]
    return text + "…"


def _with_layers(data: bytes) -> bytes:
    """The same file with each form of the pattern as a layer of its own."""
    import pikepdf
    from pikepdf import Array, Dictionary, Name

    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(data)) as pdf:
        groups = {
            name: pdf.make_indirect(Dictionary(Type=Name.OCG, Name=name))
            for name in LAYERS
        }
        told = pdf.pages[0].Resources.XObject  # the same forms on every page
        for name, group in groups.items():
            told["/FormXob." + name.replace(" ", "_")].OC = group
        every = Array(list(groups.values()))
        shown = Dictionary(Order=every, ON=every, OFF=Array([]))
        pdf.Root.OCProperties = Dictionary(OCGs=every, D=shown)
        pdf.save(out, deterministic_id=True)
    return out.getvalue()
