"""Nested sizes on pages: each size a layer, so that one can be printed alone.

Layers: every size; "stitch lines", which is off until wanted (a size's stitch lines
show when both are on); and what all sizes have in common, which is no layer. Lengths
cm.
"""

import io
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path as FilePath

from clothwright.finishing.drawn import DrawnPiece, Meaning
from clothwright.sheets import title
from clothwright.sheets.arrange import arrange
from clothwright.sheets.formats import ROLL_WIDTH, PageFormat, Scale
from clothwright.sheets.ink import Ink
from clothwright.sheets.joints import clear_of_joints
from clothwright.sheets.letters import box_told
from clothwright.sheets.looks import moved, scaled, strokes
from clothwright.sheets.nest import SHARED, Nest
from clothwright.sheets.nest_looks import (
    Part,
    laid_on,
    samples,
    size_strokes,
    with_names,
)
from clothwright.sheets.nest_words import words_apart
from clothwright.sheets.pdf import (
    Pages,
    begin_form,
    canvas_for,
    checked_frame,
    lies_whole,
    world_of,
)
from clothwright.sheets.write import write_file

COMMON = "common"

LAYERS_TOLD = (
    "Each size is a layer of this file: switch the others off in the viewer to see or "
    "print one size alone. The layer “stitch lines” adds the stitch lines of the "
    "sizes that are on."
)
FOLLOW = (
    "Follow one line: its dashes are those of the key, and its size stands in it. "
    "Where lines lie on each other, one line is cut for all of them. Short ticks "
    "inside a line are its notches: one in front, two behind."
)

MANY = 8
"""More sizes lie too close to be told apart in every place."""

CLOSE_LINES = (
    "So many lines run into each other where sizes differ little: print a few sizes at "
    "a time, or one, by the layers of this file."
)


def write_nest_pdf(
    nested: Nest,
    target: FilePath,
    *,
    page: PageFormat = PageFormat.A4,
    scale: Scale = Scale.FULL,
    roll_width: float = ROLL_WIDTH,
) -> int:
    """Write a nest on pages of a format and return how many there are.

    Raises SheetError as `write_pdf` does.
    """
    data, pages = nest_pdf_of(nested, page=page, scale=scale, roll_width=roll_width)
    write_file(target, data)
    return pages


@dataclass(frozen=True)
class _Form:
    """One form of the file: a part of a size."""

    name: str
    size: str
    part: Part


def nest_pdf_of(
    nested: Nest,
    *,
    page: PageFormat = PageFormat.A4,
    scale: Scale = Scale.FULL,
    roll_width: float = ROLL_WIDTH,
) -> tuple[bytes, int]:
    """The PDF itself and its number of pages; as `write_nest_pdf`."""
    frame = checked_frame(page, roll_width)
    drafted = [n.common for n in nested.pieces]
    common = [scaled(p, scale.value) for p in drafted]
    whole = lies_whole(common, frame, page, scale)
    boxes = box_told((nested.about.title, nested.about.whose))
    notes = (FOLLOW, LAYERS_TOLD, *nested.about.notes, *boxes)
    if len(nested.sizes) > MANY:
        notes = (CLOSE_LINES, *notes)
    about = replace(nested.about, notes=notes)
    looks = samples(nested.sizes)
    block = title.TitleBlock(about, frame, scale, tiled=not whole, sizes=looks)
    clear = block.width, block.height
    laid = arrange(common, frame, whole=whole, keep_clear=clear)
    if laid.joined:
        laid = clear_of_joints(laid, drafted, scale.value)
    out = io.BytesIO()
    canvas = canvas_for(about, out)
    world = world_of(laid)
    ink = begin_form(canvas, COMMON, world)
    for piece in laid.pieces:
        for stroke in strokes(piece, figure=scale.value):
            if stroke.meaning in SHARED:
                ink.stroke(stroke)
    canvas.endForm()
    each = [
        {s: moved(p, laid_on(m, scale)) for s, p in with_names(n).each.items()}
        for n, m in zip(nested.pieces, laid.motions, strict=True)
    ]
    words, own = words_apart(t for p in laid.pieces for t in p.texts)
    forms = []
    for i, size in enumerate(nested.sizes):
        mine = [pieces[size] for pieces in each if size in pieces]
        told = [
            (part, stroke)
            for p in mine
            for part, stroke in size_strokes(p, looks[size], figure=scale.value)
        ]
        for part in Part:
            form = _Form(f"size_{i}_{part.name}", size, part)
            ink = begin_form(canvas, form.name, world)
            for of, stroke in told:
                if of is part:
                    ink.stroke(stroke)
            if part is Part.LINES:
                _names(ink, mine)
                for text in own.get(size, ()):
                    ink.words(text)
            canvas.endForm()
            forms.append(form)
    pages = Pages(canvas, about, laid, block, page, scale)
    names = [COMMON, *(f.name for f in forms)]
    for tile in laid.tiles:
        pages.tile(tile, names, world, words)
    pages.rest([*block.rest, *_lists(nested, block.width)])
    canvas.save()
    return _with_layers(out.getvalue(), nested.sizes, forms), pages.number


def _names(ink: Ink, pieces: Iterable[DrawnPiece]) -> None:
    """The size's name in its own line, on paper of its own."""
    for piece in pieces:
        for text in piece.texts:
            if text.meaning is Meaning.LABEL:
                ink.blank(text)
                ink.words(text)


def _lists(nested: Nest, across: float) -> list[title.Words]:
    """What is cut of every size and what holds for it alone, for the page of notes."""
    out = []
    for whose, lines in nested.cut_lists:
        out.append(title.Words(f"To cut: {whose}", 0.3, bold=True))
        out += [title.Words(line, 0.24) for line in lines]
    for size, (whose, *notes) in nested.notes.items():
        told = f"Size {size}"
        if whose != told:
            told += f": {whose}"
        out.append(title.Words(told, 0.26, bold=True))
        out += [title.Words(f"– {note}", 0.22) for note in notes]
    return list(title.broken_lines(out, across))


def _with_layers(data: bytes, sizes: Sequence[str], forms: Iterable[_Form]) -> bytes:
    """The same file with every form on the layers that switch it."""
    import pikepdf
    from pikepdf import Array, Dictionary, Name, Object

    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(data)) as pdf:

        def layer(name: str) -> Object:
            return pdf.make_indirect(Dictionary(Type=Name.OCG, Name=name))

        of_size: Mapping[str, Object] = {s: layer(f"size {s}") for s in sizes}
        stitch = layer(Part.STITCH.value)
        told = pdf.pages[0].Resources.XObject  # the same forms on every page
        for form in forms:
            group = of_size[form.size]
            if form.part is Part.STITCH:
                both = Array([group, stitch])
                group = pdf.make_indirect(
                    Dictionary(Type=Name.OCMD, OCGs=both, P=Name.AllOn)
                )
            told["/FormXob." + form.name].OC = group
        on = list(of_size.values())
        every = Array([*on, stitch])
        shown = Dictionary(Order=every, ON=Array(on), OFF=Array([stitch]))
        pdf.Root.OCProperties = Dictionary(OCGs=every, D=shown)
        pdf.save(out, deterministic_id=True)
    return out.getvalue()
