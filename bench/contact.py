"""Contact sheets: the finished pieces of many orders small on pages, to be looked at.

python bench/contact.py FOLDER [--combinations 300] [--alone]

Writes contact.pdf and its pages as PNG. Each order has a cell with its pieces, the
large ones at a smaller scale: the net line black, the cut line grey, darts, notches and
grain; its number as in bench/combos.py, and on which body. An order that nobody gets
has its sentence instead.
"""

import argparse
import sys
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from textwrap import wrap

sys.path.insert(0, str(Path(__file__).parent.parent / "tests"))

import pypdfium2
from reportlab.pdfgen.canvas import Canvas

from clothwright.curves import Motion
from clothwright.finishing.drawn import DrawnPiece, Meaning
from clothwright.order import OrderError, draft, pattern
from clothwright.sheets.ink import CM, Ink
from clothwright.sheets.looks import Look, moved
from combinations import ALONE, COMBINED, FEATURES, features_of, on_body, told

PAGE = (42.0, 29.7)
"""A3 across, cm."""

ACROSS, DOWN = 4, 3
LARGE = 44.0
"""A larger piece is shown as if it were so large, cm."""

LOOKS = {
    Meaning.CUT: Look(0.15, grey=0.65),
    Meaning.SEW: Look(0.25),
    Meaning.FOLD: Look(0.25, (3, 1)),
    Meaning.DART: Look(0.25),
    Meaning.INNER: Look(0.15, (1, 1)),
    Meaning.EASE: Look(0.15, (0.5, 0.5)),
    Meaning.GRAIN: Look(0.12, grey=0.4),
}
NOTCH = Look(0.35)


@dataclass(frozen=True)
class Cell:
    """One order: its pieces, or why there are none."""

    title: str
    words: str
    pieces: tuple[DrawnPiece, ...]
    refused: str = ""


def cell(job: tuple[str, int]) -> Cell:
    """The order on the first of a few women who gets it."""
    who, features = features_of(job)
    said = ""
    for k in WOMEN[job[1] % len(WOMEN) :] + WOMEN[: job[1] % len(WOMEN)]:
        try:
            made = draft(on_body(features, job[1], k))
        except OrderError as e:
            said = str(e)
            continue
        if made.failed:
            said = " ".join(made.failures())
            continue
        drawn = pattern(made, words=False).drawn.pieces
        shown = tuple(p for p in drawn if not p.code.startswith("L.P"))
        return Cell(f"{who} on body {k}", told(features), shown)
    return Cell(who, told(features), (), said)


WOMEN = [0, 130, 331, 512, 770, 940]


def _rows(sizes: Sequence[tuple[float, float]], width: float) -> list[list[int]]:
    """Pieces in rows no wider than so much, the tallest first."""
    rows: list[list[int]] = []
    room = 0.0
    for i in sorted(range(len(sizes)), key=lambda i: -sizes[i][1]):
        if not rows or sizes[i][0] > room:
            rows.append([])
            room = width
        rows[-1].append(i)
        room -= sizes[i][0]
    return rows


def _placed(
    pieces: Sequence[DrawnPiece], width: float, height: float
) -> Iterator[DrawnPiece]:
    """The pieces in rows at the largest scale at which all fit; a large one smaller."""
    pieces = [_shrunk(p) for p in pieces]
    boxes = [p.cut_line.bounds() for p in pieces]
    scale = 1 / 5
    while True:
        sizes = [
            ((b[2] - b[0]) * scale + 0.25, (b[3] - b[1]) * scale + 0.25) for b in boxes
        ]
        rows = _rows(sizes, width)
        tall = sum(sizes[r[0]][1] for r in rows)
        if tall <= height and max(s[0] for s in sizes) <= width:
            break
        scale *= 0.97
    y = 0.0
    for row in rows:
        x = 0.0
        for i in row:
            box = boxes[i]
            by = x - box[0] * scale, y - box[1] * scale
            m = Motion(scale, 0.0, 0.0, scale, *by)
            yield moved(pieces[i], m)
            x += sizes[i][0]
        y += sizes[row[0]][1]


def _shrunk(piece: DrawnPiece) -> DrawnPiece:
    left, top, right, bottom = piece.cut_line.bounds()
    k = min(1.0, LARGE / max(right - left, bottom - top))
    return moved(piece, Motion(k, 0.0, 0.0, k))


def _draw(ink: Ink, it: Cell, x: float, y: float, wide: float, high: float) -> None:
    ink.box(x, y, wide, high, Look(0.1, grey=0.8))
    c = ink.canvas
    c.setFillGray(0.0)
    lines = [it.title, *wrap(it.words, 100)[:6]]
    for i, line in enumerate(lines):
        c.setFont("Helvetica-Bold" if i == 0 else "Helvetica", 7 if i == 0 else 4.5)
        c.drawString((x + 0.1) * CM, (ink.height - y - 0.25 - 0.19 * i) * CM, line)
    if not it.pieces:
        for i, line in enumerate(wrap(it.refused, 80)):
            c.drawString((x + 0.3) * CM, (ink.height - y - 2 - 0.3 * i) * CM, line)
        return
    top = 1.5
    for piece in _placed(it.pieces, wide - 0.2, high - top - 0.1):
        at = moved(piece, Motion(e=x + 0.1, f=y + top))
        ink.draw(at.cut_line, LOOKS[Meaning.CUT])
        for drawn in at.lines:
            if drawn.meaning in LOOKS:
                ink.draw(drawn.path, LOOKS[drawn.meaning])
        for notch in at.notches:
            ink.line(notch.net, notch.outer, NOTCH)
        left, upper, right, lower = at.cut_line.bounds()
        c.setFont("Helvetica", 5)
        c.drawCentredString(
            (left + right) / 2 * CM, (ink.height - (upper + lower) / 2) * CM, at.code
        )


def main() -> None:
    """Draw them, write the pages."""
    wish = argparse.ArgumentParser(description=__doc__)
    wish.add_argument("folder", type=Path)
    wish.add_argument("--combinations", type=int, default=300)
    wish.add_argument("--first", type=int, default=0)
    wish.add_argument("--alone", action=argparse.BooleanOptionalAction, default=True)
    wish.add_argument("--dpi", type=int, default=95)
    asked = wish.parse_args()
    asked.folder.mkdir(parents=True, exist_ok=True)
    jobs = [(ALONE, i) for i in range(len(FEATURES) if asked.alone else 0)]
    jobs += [
        (COMBINED, i) for i in range(asked.first, asked.first + asked.combinations)
    ]
    with ProcessPoolExecutor(2) as pool:
        cells = list(pool.map(cell, jobs))
    target = asked.folder / "contact.pdf"
    canvas = Canvas(str(target), pagesize=(PAGE[0] * CM, PAGE[1] * CM))
    wide, high = PAGE[0] / ACROSS, PAGE[1] / DOWN
    ink = Ink(canvas, PAGE[1])
    for i, it in enumerate(cells):
        on = i % (ACROSS * DOWN)
        if i and not on:
            canvas.showPage()
        _draw(ink, it, on % ACROSS * wide, on // ACROSS * high, wide, high)
    canvas.save()
    for k, page in enumerate(pypdfium2.PdfDocument(target), 1):
        picture = page.render(scale=asked.dpi / 72).to_pil()
        picture.save(asked.folder / f"contact-{k:02}.png")


if __name__ == "__main__":
    main()
