"""Nested sizes for other cutting-room programs: DXF that follows ASTM D6673-10.

A block for each piece and size, named by both ("FC-12"), each with its own "Size:"; the
sizes of a piece lie on each other where the nest lays them, so that no grade rules are
needed: the standard's grade rule table is left empty. The sample size is the middle
one. Everything else as `dxf`.
"""

from datetime import date

from clothwright.curves import shift
from clothwright.sheets.dxf import APART, file_of
from clothwright.sheets.looks import moved
from clothwright.sheets.nest import Nest
from clothwright.sheets.whole import opened


def nest_dxf_of(nested: Nest, created: date | None = None) -> str:
    """The file's text; halves on the fold are opened out; `created` is the date in
    it, as `dxf_of`."""
    blocks = []
    x = 0.0
    for n in nested.pieces:
        pieces = {s: opened(p) for s, p in n.each.items()}
        boxes = [p.cut_line.bounds() for p in pieces.values()]
        left, top = min(b[0] for b in boxes), min(b[1] for b in boxes)
        m = shift((x - left, -top))
        blocks += [(s, moved(p, m)) for s, p in pieces.items()]
        x += max(b[2] for b in boxes) - left + APART
    sample = nested.sizes[len(nested.sizes) // 2]
    return file_of(nested.about, blocks, sample, created)
