"""Finishing: from trued net pieces to pieces as they are printed and cut."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace

from clothwright.curves import Path, Point, direction, distance, mix
from clothwright.findings import Finding, Severity
from clothwright.finishing.allowances import Allowances, check_partners
from clothwright.finishing.cutline import CutLine, cut_line
from clothwright.finishing.drawn import (
    CutCount,
    DrawnLine,
    DrawnNotch,
    DrawnPattern,
    DrawnPiece,
    DrawnText,
    Meaning,
)
from clothwright.finishing.lettering import Obstacles, dimensions, label, line_names
from clothwright.finishing.notching import notches_of
from clothwright.paper import (
    Edge,
    EdgeKind,
    MarkKind,
    Piece,
    Seam,
    Sheet,
)
from clothwright.truing import Towards, dart_cap
from clothwright.units import Unit, pretty_length

_CROSS = 0.4
"""Half length of a drill cross or button cross, cm."""

FOLD_BRACKET = 1.1
"""Room kept free for the bracket along a fold, cm inside the edge."""

PUNCH_SHORT = 1.2
"""A dart is punched this far short of its point, cm, so that the hole is sewn in
(common practice, no source)."""

_DARTS = (
    ("leg cf", "leg side", "cap waist", Towards.FIRST),
    ("leg side", "leg cb", "cap waist", Towards.SECOND),
    ("dart low", "dart high", "cap side", Towards.FIRST),
    ("dart low 2", "dart high 2", "cap side 2", Towards.FIRST),
    ("dart neck cb", "dart neck side", "cap neck", Towards.FIRST),
)
"""Darts that may be left in a piece: their legs in the direction of the loop, the name
of their cap, and the leg that they are folded on (truing 3.2: vertical darts towards
the centre, side darts downwards)."""


@dataclass(frozen=True)
class Finishing:
    """What finishing needs to know besides the table."""

    title: str
    client: str
    measured: str
    order: tuple[str, ...]
    """Codes of the pieces in the order in which they are numbered."""

    cuts: Mapping[str, tuple[CutCount, ...]]
    allowances: Allowances
    fmt: Callable[[float], str]
    nap: bool = False
    taped: frozenset[tuple[str, str]] = frozenset()
    """Edges that are stayed with tape."""

    failures: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    cloths: Mapping[str, str] = field(default_factory=dict)
    """What the order calls a cloth: {"shell": "ink crêpe"}."""


def finish(sheet: Sheet, f: Finishing) -> tuple[DrawnPattern, tuple[Finding, ...]]:
    """Allowances, notches, grain, labels and counts on every piece that is cut."""
    found = list(check_partners(sheet, f.allowances))
    pieces = []
    for code in f.order:
        bare = unlettered(sheet, code, f)
        found += bare.found
        pieces.append(replace(bare.drawn, texts=tuple(_texts(bare, f))))
    pattern = DrawnPattern(
        title=f.title,
        client=f.client,
        measured=f.measured,
        unit=f.allowances.unit.value,
        pieces=tuple(pieces),
        allowance_note=f.allowances.note(sheet.piece(c) for c in f.order),
        failures=f.failures,
        cautions=f.cautions,
        notes=f.notes,
    )
    return pattern, tuple(found)


def _cut_findings(piece: Piece, line: CutLine, unit: Unit) -> Iterable[Finding]:
    for edge in line.narrow:
        yield Finding(
            "hollow",
            Severity.REFUSE,
            f"{piece.name}, {edge} lies in a hollow too tight for its allowance of "
            f"{pretty_length(line.widths[edge], unit)}: the cut line runs across it.",
            piece.code,
            "Make the curve flatter, the piece wider there, or the allowance narrower.",
        )
    for edge in line.wide:
        yield Finding(
            "hollow",
            Severity.WARN,
            f"{piece.name}, {edge} is hollowed tighter than its allowance of "
            f"{pretty_length(line.widths[edge], unit)}, which comes out wider there.",
            piece.code,
            "Mark the stitch line there, and trim after sewing.",
        )
    if line.crossing is not None:
        yield Finding(
            "cut line",
            Severity.REFUSE,
            f"The cut line of {piece.name} crosses itself: the allowances of two edges "
            "overlap.",
            piece.code,
            "Make the piece wider between them, or the allowances narrower.",
        )


@dataclass(frozen=True)
class Unlettered:
    """A finished piece before its words are placed."""

    drawn: DrawnPiece
    piece: Piece
    """The net piece, its darts capped."""

    line: CutLine
    gathers: Mapping[str, float]
    found: tuple[Finding, ...]


def unlettered(sheet: Sheet, code: str, f: Finishing) -> Unlettered:
    """One piece with allowances, notches, grain and marks, and no words yet: all that
    a screen needs, which writes words its own way."""
    net = sheet.piece(code)
    piece, legs = with_darts_capped(net)
    line = cut_line(piece, f.allowances)
    lines = _edge_lines(piece, f) + [DrawnLine(Meaning.DART, p, "dart") for p in legs]
    lines += [DrawnLine(Meaning.INNER, k.path, k.name) for k in piece.lines]
    lines += _marks(piece)
    if piece.grain:
        lines.append(DrawnLine(Meaning.GRAIN, Path.line(*piece.grain), "grain"))
    widths = {e.name: line.widths.get(e.name, 0.0) for e in net.edges}
    notches = notches_of(sheet, sheet.seams, net.code, widths)
    notches += _loop_notch(net, line)
    for first, second in zip(legs[::2], legs[1::2], strict=True):
        notches += _dart_notches(first, second, line, notches)
        lines += _cross(_punch(first, second), "dart point")
    lines += _ease_zones(sheet, net, sheet.seams)
    gathers = _gathers(sheet, net)
    lines += [DrawnLine(Meaning.EASE, net.edge(e).path, "gather") for e in gathers]
    drawn = DrawnPiece(
        code=net.code,
        name=net.name,
        number=f.order.index(code) + 1,
        total=len(f.order),
        cuts=f.cuts.get(net.code, ()),
        cut_line=line.outline,
        lines=tuple(lines),
        notches=tuple(notches),
        on_fold=piece.fold is not None,
        area=net.area,
        nap=f.nap,
    )
    found = tuple(_cut_findings(net, line, f.allowances.unit))
    return Unlettered(drawn, piece, line, gathers, found)


def with_darts_capped(piece: Piece) -> tuple[Piece, list[Path]]:
    """The piece with the mouth of every dart filled by its cap, and the darts' legs."""
    legs: list[Path] = []
    for first, second, name, towards in _DARTS:
        if not (piece.has(first) and piece.has(second)):
            continue
        if piece.after(first).name != second:
            continue
        a, b = piece.edge(first), piece.edge(second)
        if distance(a.path.start, b.path.end) < 0.05:
            cap = (
                Path.line(a.path.start, b.path.end)
                if distance(a.path.start, b.path.end) > 1e-6
                else None
            )
        else:
            cap = dart_cap(piece, first, second, towards).path
            legs += [a.path, b.path]
        before, after = piece.before(first), piece.after(second)
        loop = [e for e in piece.edges if e.name not in (first, second)]
        if cap is not None:
            at = next(i for i, e in enumerate(loop) if e.name == before.name) + 1
            loop.insert(at, Edge(name, cap.pinned(before.path.end, after.path.start)))
        piece = replace(piece, edges=tuple(loop))
    return piece, legs


def _edge_lines(piece: Piece, f: Finishing) -> list[DrawnLine]:
    out = []
    for e in piece.edges:
        meaning = Meaning.FOLD if e.kind is EdgeKind.FOLD else Meaning.SEW
        out.append(DrawnLine(meaning, e.path, f"{piece.code}.{e.name}"))
        if (piece.code, e.name) in f.taped:
            out.append(DrawnLine(Meaning.TAPE, e.path, "stay tape"))
    return out


def _marks(piece: Piece) -> list[DrawnLine]:
    return [
        line
        for k in piece.marks
        if k.kind is not MarkKind.LOOP
        for line in _cross(k.at, k.name)
    ]


def _cross(p: Point, name: str) -> list[DrawnLine]:
    c = _CROSS
    return [
        DrawnLine(
            Meaning.DRILL,
            Path.line(Point(p.x - c, p.y - d * c), Point(p.x + c, p.y + d * c)),
            name,
        )
        for d in (1, -1)
    ]


def _punch(first: Path, second: Path) -> Point:
    """Where the point of a dart is punched: inside the dart, short of its point."""
    mouth = mix(first.start, second.end, 0.5)
    return first.end + direction(first.end, mouth) * PUNCH_SHORT


def _dart_notches(
    first: Path, second: Path, line: CutLine, have: list[DrawnNotch]
) -> list[DrawnNotch]:
    """A notch where each leg of a dart, run on, meets the cut line."""
    out = []
    for mouth in (first.start, second.end):
        if any(distance(mouth, k.net) < 0.3 for k in have):
            continue
        way = direction(first.end, mouth)
        hits = Path.line(mouth, mouth + way * 6.0).meets(line.outline)
        if hits:
            outer = mouth + way * min(s for s, _ in hits)
            out.append(DrawnNotch(mouth, outer, 1, "dart leg"))
    return out


def _loop_notch(piece: Piece, line: CutLine) -> list[DrawnNotch]:
    """Loops on the edge: the first is notched, the others are chalk ticks."""
    out = []
    for k in piece.marks:
        if k.kind is not MarkKind.LOOP:
            continue
        for e in piece.edges:
            place, gap = e.path.nearest(k.at)
            if gap > 0.02:
                continue
            s = e.path.length_to(place)
            way = e.path.direction_at_length(s)
            width = line.widths[e.name] * (1.0 if k.name == "loop 1" else 0.35)
            outer = k.at + Point(way[1], -way[0]) * width
            out.append(DrawnNotch(k.at, outer, 1, k.name))
            break
    return out


def _ease_zones(sheet: Sheet, piece: Piece, seams: tuple[Seam, ...]) -> list[DrawnLine]:
    out = []
    for s in seams:
        if s.zone is None or s.ease.plan < 0.05 or len(s.right) != 1:
            continue
        run = s.right[0]
        if run.piece != piece.code:
            continue
        path = sheet.run_path(run)
        # a zone runs from notch to notch, or to an end: places known on both sides
        whole = sheet.chain_length(s.left), path.length
        known = [(0.0, 0.0), whole, *((k.left, k.right) for k in s.notches)]
        zone = [right for left, right in known if _at_end(left, s.zone)]
        if zone and max(zone) > min(zone):
            eased = path.between(min(zone), max(zone))
            out.append(DrawnLine(Meaning.EASE, eased, "ease"))
    return out


def _at_end(length: float, zone: tuple[float, float]) -> bool:
    return min(abs(length - end) for end in zone) < 1e-6


def _gathers(sheet: Sheet, piece: Piece) -> dict[str, float]:
    """Edges of a piece that are gathered, and the length that they are gathered to."""
    return {
        s.right[0].edge: sheet.chain_length(s.left)
        for s in sheet.seams
        if s.gathered and len(s.right) == 1 and s.right[0].piece == piece.code
    }


def _texts(bare: Unlettered, f: Finishing) -> list[DrawnText]:
    drawn, piece, line = bare.drawn, bare.piece, bare.line
    obstacles = Obstacles()
    for d in drawn.lines:
        if d.meaning not in (Meaning.EASE, Meaning.TAPE):
            obstacles.add_path(d.path)
    obstacles.add_path(line.outline)
    if piece.fold is not None:
        obstacles.add(_bracket(piece.fold.path))
    for k in drawn.notches:
        inward = k.net - (k.outer - k.net) * 0.4
        obstacles.add([k.outer, inward])
    texts = dimensions(piece, obstacles, f.fmt, bare.gathers)
    counts = _counts(drawn.cuts, f.cloths)
    name = piece.name.upper()
    whose = [f"{f.title}, {f.client}"]
    which = [f"piece {drawn.number} of {drawn.total}"]
    measured = [f"measured {f.measured}"] if f.measured else []
    note = [f.allowances.note([piece])]
    blocks = [
        _wrapped([name, *counts, *whose, *which, *measured, *note], 30),
        _wrapped([name, *counts, *whose, *which, *measured], 30),
        _wrapped([name, *counts, *whose, *which, *measured], 20),
        _wrapped([name, *counts, *which], 18),
        [name, *counts],
        _wrapped([name, *counts], 14),
    ]
    texts += label(piece, obstacles, blocks)
    return texts + line_names(piece, obstacles)


def _counts(cuts: tuple[CutCount, ...], names: Mapping[str, str]) -> list[str]:
    """A line for each cloth: "ink crêpe: cut 1 on fold"."""
    return [f"{names.get(c.cloth, c.cloth)}: cut {c.how}" for c in cuts]


def _bracket(fold: Path) -> list[Point]:
    """The run of the fold's bracket, which the outputs draw inside the edge."""
    a, b = fold.start, fold.end
    u = fold.start_direction
    inside = Point(-u[1], u[0])
    inset = [inside * (k * FOLD_BRACKET / 3) for k in range(4)]
    return [p for d in inset for p in (a + d, b + d, a + d)]


def _wrapped(words: list[str], width: int) -> list[str]:
    """Long lines broken at blanks."""
    out = []
    for w in words:
        line = ""
        for part in w.split(" "):
            if line and len(line) + 1 + len(part) > width:
                out.append(line)
                line = part
            else:
                line = f"{line} {part}" if line else part
        out.append(line)
    return out
