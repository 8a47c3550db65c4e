"""What the checks say, with the place on the paper where each sentence stands.

A finding names a seam, an edge, a piece, a feature or a number. A number stands where
its pin stands, else at the edge at which its feature shows it, else at the one that the
hand draws with it; what is about the body alone has no place on the paper.
"""

from collections.abc import Iterable, Iterator, Mapping

from clothwright.app.table import Data, stands
from clothwright.curves import Point, distance
from clothwright.features import Feature
from clothwright.findings import Finding, Severity
from clothwright.order import Draft
from clothwright.order.telling import key_of
from clothwright.paper import Sheet, Step
from clothwright.sheets.svg import MM

NEAR = 0.6
"""A point belongs to an edge whose end is nearer than this, cm: truing moves the end of
a line less (truing 4)."""

ALONG = 0.36
"""Share of an edge where its mark stands: beside the figure in its middle."""


def whereabouts(draft: Draft, found: Iterable[Finding]) -> list[Data]:
    """Each fault and doubt as a sentence with its place: `edges` to be stitched along,
    and where on a piece the mark stands, mm; the piece is empty where it has none."""
    of = {
        n.symbol: (f, field, n.key)
        for f in draft.order.features
        for field, n in f.numbers().items()
    }
    return [_placed(draft, f, of) for f in found if f.severity is not Severity.NOTE]


def _placed(
    draft: Draft, finding: Finding, of: Mapping[str, tuple[Feature, str, str]]
) -> Data:
    sheet, place = draft.sheet, finding.place
    out: Data = {
        "say": str(finding),
        "grave": finding.severity is Severity.REFUSE,
        "piece": "",
        "edges": [],
        "word": "",
    }
    if place in of:
        feature, field, key = of[place]
        out["word"] = f"{feature.kind}.{field}"
        pinned = _pinned(sheet, feature, field)
        if pinned is not None:
            return out | pinned
        return out | _at(sheet, _shown(draft, place, key, feature))
    seam = next((s for s in sheet.seams if s.code == finding.code), None)
    seam = seam or next((s for s in sheet.seams if s.name == place), None)
    if seam is not None:
        runs = (*seam.left, *seam.right)
        return out | _at(sheet, tuple((r.piece, r.edge) for r in runs))
    piece, _, edge = place.rpartition(".")
    if piece in sheet.pieces and sheet.piece(piece).has(edge):
        return out | _at(sheet, ((piece, edge),))
    if place in sheet.pieces:
        return out | _inside(sheet, place)
    for p in sheet.pieces.values():
        if place == p.name:
            return out | _inside(sheet, p.code)
        name = place.removeprefix(f"{p.name}, ")
        if name != place and p.has(name):
            return out | _at(sheet, ((p.code, name),))
    if any(f.kind == place for f in draft.order.features):
        out["word"] = place
    return out | _at(sheet, _shown(draft, place, key_of(draft, place)))


# -- places --------------------------------------------------------------------------
def _at(sheet: Sheet, edges: tuple[tuple[str, str], ...]) -> Data:
    """A stitch along every one of some edges, and the mark on the first."""
    if not edges:
        return {}
    code, name = edges[0]
    path = sheet.edge(code, name).path
    at = path.at_length(ALONG * path.length)
    return {
        "piece": code,
        "at": _mm(at),
        "edges": [f"{p}.{e}" for p, e in dict.fromkeys(edges)],
    }


def _inside(sheet: Sheet, code: str) -> Data:
    """The middle of a piece's longest edge, for what is said of the whole piece."""
    longest = max(sheet.piece(code).edges, key=lambda e: e.length)
    return _at(sheet, ((code, longest.name),)) | {"edges": []}


def _pinned(sheet: Sheet, feature: Feature, field: str) -> Data | None:
    for pin in feature.pins:
        if pin.field == field and (found := stands(sheet, pin)):
            code, at, _ = found
            return {"piece": code, "at": _mm(at)}
    return None


def _shown(
    draft: Draft, place: str, key: str | None, its: Feature | None = None
) -> tuple[tuple[str, str], ...]:
    """The edge that shows a number or a word, by its own feature before others, or that
    the hand draws with it; none when no line of the paper does."""
    for feature in ((its,) if its else ()) + draft.order.features:
        for name in feature.shows.get(place, ()):
            piece, _, edge = name.rpartition(".")
            if piece in draft.sheet.pieces and draft.sheet.piece(piece).has(edge):
                return ((piece, edge),)
    steps = [s for s in draft.steps if key and any(a.key == key for a in s.amounts)]
    return tuple(_edges_of(draft.sheet, steps))[:1]


def _edges_of(sheet: Sheet, steps: Iterable[Step]) -> Iterator[tuple[str, str]]:
    """Edges that steps made, drew a line of, or set an end of."""
    for step in steps:
        piece, _, edge = step.makes.rpartition(".")
        if piece in sheet.pieces:
            if sheet.piece(piece).has(edge):
                yield piece, edge
            continue
        ends = [(line.start, line.end) for line in step.lines]
        mark = sheet.points.get(step.makes)
        for p in sheet.pieces.values():
            for e in p.edges:
                a, b = e.path.start, e.path.end
                drew = any(_same(a, b, x, y) or _same(a, b, y, x) for x, y in ends)
                if drew or (mark and min(distance(mark, a), distance(mark, b)) < NEAR):
                    yield p.code, e.name


def _same(a: Point, b: Point, x: Point, y: Point) -> bool:
    return max(distance(a, x), distance(b, y)) < NEAR


def _mm(p: Point) -> list[float]:
    return [round(p.x * MM, 3), round(p.y * MM, 3)]
