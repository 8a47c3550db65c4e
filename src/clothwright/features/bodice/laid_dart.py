"""A bust dart laid open where it was led: gathers, ease, or several parallel tucks
(transformations 1.6)."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

from clothwright.curves import Path, Point, direction, distance, midpoint
from clothwright.features.bodice.bust_dart_rules import TakenUp
from clothwright.features.bodice.front_dart import OPENED, DartPlace, bridged, keep_open
from clothwright.features.hand.hand_seams import taken_in
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    InnerLine,
    LineKind,
    PaperError,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Numbers

LAID = (TakenUp.GATHERS, TakenUp.EASE, TakenUp.TUCKS)
"""What leaves no dart in the paper."""

LEAST_TUCK = 0.3
"""A tuck takes in at least so much, cm (1.6)."""

_BESIDE = 1.0
"""The edge is drawn anew so far beyond the outermost tuck, cm (our own)."""

_LINE = 3.0
"""The lines of a tuck are drawn at least so far, cm (our own)."""


def lay(d: Drafting, place: DartPlace, how: TakenUp) -> None:
    """Draw the edge that takes a dart up in one line over it."""
    o = OPENED[place]
    f = d.sheet.piece("F")
    mouths = f.edge(o.leg_outer).path.start, f.edge(o.leg_cf).path.end
    wide = distance(*mouths)
    reach = d.n.gather_zone / 2
    if how is TakenUp.TUCKS:
        reach = _tucks_reach(d.n, wide)
    before = keep_open(d.sheet, o).unsew(o.dart)
    f = before.piece("F")
    room = min(f.edge(o.outer).length, f.edge(o.inner).length)
    if how is TakenUp.TUCKS and reach + 0.5 > room:
        raise PaperError(
            f"{_count(d.n)} tucks (tucks, apart) want {reach + 0.5:.1f} cm of the "
            f"{place.value} on both sides of the dart, {reach + 0.55 - room:.1f} cm "
            "more than there is: make them fewer, or nearer to each other"
        )
    new = Edge(o.edge, bridged(f, o, reach))
    sheet = redraw(before, "F", o.run, [new])
    word = "ease" if how is TakenUp.EASE else "gathers"
    sheet = taken_in(before, sheet, "F", mouths, word, reach)
    says = f"taken up as {how.value}, half to either side of the dart"
    if how is TakenUp.TUCKS:
        sheet = _tucked(before, sheet)
        front = sheet.piece("F")
        lines = tuple(_lines(d.n, new.path, midpoint(*mouths), wide, d["BP"]))
        sheet = sheet.put(front.with_lines(*lines))
        says = f"shared by {_count(d.n)} tucks alike, parallel to the dart's middle"
    d.lay(
        Verb.REDRAW,
        sheet,
        f"F.{o.edge}",
        f"{place.value} of the front in one line over the open dart",
        amounts=(("it takes in {}", wide),),
        detail=says,
        lines=(new.path,),
    )


def _count(n: Numbers) -> int:
    return round(n.tucks)


def _tucks_reach(n: Numbers, wide: float) -> float:
    """How far from the middle of the dart's mouth its tucks reach on the finished edge,
    and beyond."""
    return (_count(n) - 1) * n.tuck_apart / 2 + _BESIDE + wide / 2 / _count(n)


def _tucked(before: Sheet, sheet: Sheet) -> Sheet:
    """The seams that take tucks in: laid, not gathered."""
    known = {s.code: s for s in before.seams}
    grown = [s for s in sheet.seams if s != known.get(s.code) and s.gathered]
    return sheet.sew(*(replace(s, tucked=True) for s in grown))


def _lines(
    n: Numbers, edge: Path, middle: Point, wide: float, bp: Point
) -> Iterator[InnerLine]:
    """Fold, placement line and arrow of each tuck; they are folded towards the centre
    front, so that the fold is the line nearer to the side."""
    count, long = _count(n), max(n.tuck_sewn, _LINE)
    each = wide / count
    way = direction(middle, bp) * long
    start = edge.length_to_point(edge.at(edge.nearest(middle)[0]))
    start -= (count * each + (count - 1) * n.tuck_apart) / 2
    for i in range(count):
        at = start + i * (each + n.tuck_apart)
        a, b = sorted((edge.at_length(at), edge.at_length(at + each)))
        name = f"tuck {i + 1}"
        yield InnerLine(f"{name}, fold", Path.line(a, a + way))
        yield InnerLine(f"{name}, to here", Path.line(b, b + way), LineKind.PLACEMENT)
        p, q = a + way * 0.6, b + way * 0.6
        yield InnerLine(f"{name}, arrow", Path.line(p, q), LineKind.ARROW)


def tuck_operations(
    n: Numbers,
    sheet: Sheet,
    fmt: Callable[[float], str],
    places: Iterable[tuple[DartPlace, TakenUp]],
) -> Iterator[Operation]:
    """A dart folded as one tuck, or shared by several."""
    for place, how in places:
        o = OPENED[place]
        one = how is TakenUp.TUCK and sheet.piece("F").has(o.leg_cf)
        if not one and how is not TakenUp.TUCKS:
            continue
        sewn = (
            f"Stitch {'it' if one else 'each'} down for {fmt(n.tuck_sewn)}"
            + (" along its legs" if one else "")
            + ", then leave it open."
            if n.tuck_sewn > 0
            else "Baste in the seam allowance only."
        )
        says = "Leg on leg, folded towards the centre front."
        if not one:
            says = "Fold on line, folded towards the centre front."
        yield Operation(
            Work.DART,
            f"Lay the tucks at the {place.value}",
            (says, sewn),
            seams=(o.dart,) if one else (),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            length=2 * n.tuck_sewn * (1 if one else _count(n)),
            task=Task.DART if one else Task.PLEAT,
            count=2.0 * (1 if one else _count(n)),
            press="the fold only, as far as it is stitched",
        )


def tuck_findings(n: Numbers, sheet: Sheet, place: DartPlace) -> Iterator[Finding]:
    """Each tuck takes in enough to be folded (1.6)."""
    o = OPENED[place]
    a, b = (sheet.lines[f"gathered {e}"] for e in (o.leg_outer, o.leg_cf))
    each = distance(a.start, b.end) / _count(n)
    if each < LEAST_TUCK - 1e-6:
        yield Finding(
            "P12",
            Severity.REFUSE,
            f"Each of the tucks at the {place.value} would take in {each:.2f} cm; "
            f"{LEAST_TUCK:g} cm is the least.",
            "tucks",
            "Make them (tucks) fewer, or lead a greater share of the dart there.",
            {"each": each},
        )
