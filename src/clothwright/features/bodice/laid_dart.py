"""A dart laid open where it was led: gathers, ease, or several parallel tucks
(transformations 1.6)."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from typing import NamedTuple

from clothwright.curves import Path, Point, direction, distance, midpoint
from clothwright.features.base import Number
from clothwright.features.bodice.bust_dart_rules import TakenUp
from clothwright.features.bodice.opened_dart import Opened, bridged, keep_open, mouth
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
    Size,
    Verb,
    redraw,
)
from clothwright.rules import Kind, Numbers

_SRC = "transformations 1.6"

LAID = (TakenUp.GATHERS, TakenUp.EASE, TakenUp.TUCKS)
"""What leaves no dart in the paper."""

LEAST_TUCK = 0.3
"""A tuck takes in at least so much, cm (1.6)."""

_BESIDE = 1.0
"""The edge is drawn anew so far beyond the outermost tuck, cm (our own)."""

_LINE = 3.0
"""The lines of a tuck are drawn at least so far, cm (our own)."""


class Laid(NamedTuple):
    """The numbers of a dart of front or back that is laid open."""

    zone: Number
    tucks: Number
    apart: Number
    stitched: Number


def _laid(key: str, symbol: str, of: str) -> Laid:
    """`key` and `symbol` end those of the numbers; `of` says whose they are."""

    def number(own: str, called: str, name: str, *amounts: float | None) -> Number:
        cm, inch, low, high = amounts
        return Number(own + key, called + symbol, name, _SRC, cm, inch, low, high)

    zone = f"stretch of the finished edge{of} that takes the gathers"
    tucks = f"parallel tucks{of} that share the dart"
    apart = f"between parallel tucks{of}"
    stitched = f"length for which a tuck{of} is stitched down"
    return Laid(
        replace(
            number("gather_zone", "gathers", zone, 8.0, 3.0, 4.0, 14.0),
            usual=(6.0, 12.0),
        ),
        replace(number("tucks", "tucks", tucks, 3.0, None, 2.0, 9.0), kind=Kind.COUNT),
        number("tuck_apart", "apart", apart, 1.2, 0.5, 0.4, 5.0),
        number("tuck_sewn", "tuck", stitched, 3.0, 1.25, 0.0, 12.0),
    )


FRONT_LAID, BACK_LAID = _laid("", "", ""), _laid("_back", " b", " of the back")


def lay(d: Drafting, o: Opened, how: TakenUp) -> None:
    """Draw the edge that takes a dart up in one line over it."""
    p = d.sheet.piece(o.piece)
    mouths = mouth(p, o)
    wide = distance(*mouths)
    reach = d.n[f"gather_zone{o.own}"] / (1 if o.corner else 2)
    if how is TakenUp.TUCKS:
        reach = _tucks_reach(d.n, o, wide)
    before = keep_open(d.sheet, o).unsew(o.dart)
    room = min(p.edge(e).length for e in (o.first, o.last) if e)
    if how is TakenUp.TUCKS and reach + 0.5 > room:
        names = "tucks b, apart b" if o.own else "tucks, apart"
        raise PaperError(
            f"{_count(d.n, o)} tucks ({names}) want {reach + 0.5:.1f} cm of the "
            f"{o.where} on both sides of the dart, {reach + 0.55 - room:.1f} cm "
            "more than there is: make them fewer, or nearer to each other"
        )
    new = Edge(o.edge, bridged(p, o, reach))
    sheet = redraw(before, o.piece, o.run, [new])
    word = "ease" if how is TakenUp.EASE else "gather"
    taken = "ease" if how is TakenUp.EASE else "gathers"
    sheet = taken_in(before, sheet, o.piece, mouths, taken, reach)
    amounts: list[tuple[str, Size]] = [("it takes in {}", wide)]
    if how is TakenUp.TUCKS:
        sheet = _tucked(before, sheet)
        lines = tuple(_lines(d.n, o, new.path, midpoint(*mouths), wide, d[o.about]))
        sheet = sheet.put(sheet.piece(o.piece).with_lines(*lines))
        says = f"shared by {_count(d.n, o)} tucks, parallel to the dart's middle"
        amounts.append(("each tuck takes in {}", wide / _count(d.n, o)))
        amounts.append(("with {} between two", f"tuck_apart{o.own}"))
    else:
        says = "from the fold on" if o.corner else "half to either side of the dart"
        finished = reach if o.corner else 2 * reach
        amounts.append((f"{word} {{}} of it", wide + finished))
        amounts.append(("to {}", finished))
    d.lay(
        Verb.REDRAW,
        sheet,
        f"{o.piece}.{o.edge}",
        f"{o.where} of the {o.half} in one line over the open dart",
        amounts=amounts,
        detail=says,
        lines=(new.path,),
    )


def _count(n: Numbers, o: Opened) -> int:
    return round(n[f"tucks{o.own}"])


def _tucks_reach(n: Numbers, o: Opened, wide: float) -> float:
    """How far from the middle of the dart's mouth its tucks reach on the finished edge,
    and beyond."""
    count = _count(n, o)
    apart = n[f"tuck_apart{o.own}"]
    return (count - 1) * apart / 2 + _BESIDE + wide / 2 / count


def _tucked(before: Sheet, sheet: Sheet) -> Sheet:
    """The seams that take tucks in: laid, not gathered."""
    known = {s.code: s for s in before.seams}
    grown = [s for s in sheet.seams if s != known.get(s.code) and s.gathered]
    return sheet.sew(*(replace(s, tucked=True) for s in grown))


def _lines(
    n: Numbers, o: Opened, edge: Path, middle: Point, wide: float, point: Point
) -> Iterator[InnerLine]:
    """Fold, placement line and arrow of each tuck; they are folded towards the centre,
    so that the fold is the line nearer to the side."""
    count, long = _count(n, o), max(n[f"tuck_sewn{o.own}"], _LINE)
    each, apart = wide / count, n[f"tuck_apart{o.own}"]
    way = direction(middle, point) * long
    start = edge.length_to_point(edge.at(edge.nearest(middle)[0]))
    start -= (count * each + (count - 1) * apart) / 2
    for i in range(count):
        at = start + i * (each + apart)
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
    places: Iterable[tuple[Opened, TakenUp]],
) -> Iterator[Operation]:
    """A dart folded as one tuck, or shared by several."""
    for o, how in places:
        one = how is TakenUp.TUCK and sheet.piece(o.piece).has(o.leg_last)
        if not one and how is not TakenUp.TUCKS:
            continue
        long, count = n[f"tuck_sewn{o.own}"], _count(n, o)
        sewn = (
            f"Stitch {'it' if one else 'each'} down for {fmt(long)}"
            + (" along its legs" if one else "")
            + ", then leave it open."
            if long > 0
            else "Baste in the seam allowance only."
        )
        folded = "Leg on leg" if one else "Fold on line"
        yield Operation(
            Work.DART,
            f"Lay the tucks at the {o.where}",
            (f"{folded}, folded towards the centre {o.half}.", sewn),
            seams=(o.dart,) if one else (),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            length=2 * long * (1 if one else count),
            task=Task.DART if one else Task.PLEAT,
            count=2.0 * (1 if one else count),
            press="the fold only, as far as it is stitched",
        )


def gather_operations(
    sheet: Sheet,
    fmt: Callable[[float], str],
    places: Iterable[tuple[Opened, TakenUp]],
) -> Iterator[Operation]:
    """A waist that is gathered, drawn up before it is taped and sewn on; what is
    gathered elsewhere is told by its seam."""
    for o, how in places:
        if how is not TakenUp.GATHERS or o.edge != "waist":
            continue
        for s in sheet.seams:
            if s.zone is None or not s.drawn_up or (o.piece, o.edge) not in s:
                continue
            a, b = s.zone
            yield Operation(
                Work.READY,
                f"Gather the waist of the {o.half}",
                (
                    "Two rows of long stitches between the notches; draw them up to "
                    f"{fmt(b - a)} a half.",
                ),
                task=Task.GATHER,
            )


def tuck_findings(n: Numbers, sheet: Sheet, o: Opened) -> Iterator[Finding]:
    """Each tuck takes in enough to be folded (1.6)."""
    a, b = (sheet.lines[o.kept(e)] for e in (o.leg_first, o.leg_last))
    each = distance(a.start, b.end) / _count(n, o)
    symbol = "tucks b" if o.own else "tucks"
    if each < LEAST_TUCK - 1e-6:
        yield Finding(
            "P12",
            Severity.REFUSE,
            f"Each of the tucks at the {o.where} would take in {each:.2f} cm; "
            f"{LEAST_TUCK:g} cm is the least.",
            symbol,
            f"Make them ({symbol}) fewer, or lead a greater share of the dart there.",
            {"each": each},
        )
