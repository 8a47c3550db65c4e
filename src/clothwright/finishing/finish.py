"""Finishing: from trued net pieces to pieces as they are printed and cut."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date

from clothwright.curves import Path, distance, dot, left_normal, meet_lines
from clothwright.findings import Finding, Severity
from clothwright.finishing import marks
from clothwright.finishing.allowances import Allowances, check_partners
from clothwright.finishing.cutline import CutLine, cut_line
from clothwright.finishing.drawn import (
    CutCount,
    DrawnLine,
    DrawnPattern,
    DrawnPiece,
    Meaning,
    as_printed,
)
from clothwright.finishing.lettering import lettered
from clothwright.finishing.notching import notches_of
from clothwright.finishing.wording import EACH, Words, wording
from clothwright.paper import (
    LEFT_HALF,
    MIRRORED,
    Edge,
    LineKind,
    Piece,
    Sheet,
    own_name,
)
from clothwright.truing import Towards, dart_cap
from clothwright.units import Unit, pretty_length

_DARTS = (
    ("leg cf", "leg side", "cap waist", Towards.FIRST),
    ("leg side", "leg cb", "cap waist", Towards.SECOND),
    ("dart low", "dart high", "cap side", Towards.FIRST),
    ("dart low 2", "dart high 2", "cap side 2", Towards.FIRST),
    ("dart centre", "dart side", "cap waist", Towards.FIRST),
    ("dart centre 2", "dart side 2", "cap waist 2", Towards.FIRST),
    ("dart side", "dart centre", "cap waist", Towards.SECOND),
    ("dart side 2", "dart centre 2", "cap waist 2", Towards.SECOND),
    ("pleat side", "pleat centre", "cap pleat", Towards.SECOND),
    ("pleat side 2", "pleat centre 2", "cap pleat 2", Towards.SECOND),
    ("dart elbow low", "dart elbow high", "cap elbow", Towards.FIRST),
    ("dart neck cb", "dart neck side", "cap neck", Towards.FIRST),
    ("dart neck tip", "dart neck cf", "cap neck", Towards.SECOND),
    ("dart shoulder tip", "dart shoulder cf", "cap shoulder", Towards.SECOND),
    ("dart yoke side", "dart yoke cf", "cap yoke", Towards.SECOND),
    ("dart armhole low", "dart armhole high", "cap armhole", Towards.FIRST),
    ("dart cf high", "dart cf low", "cap cf", Towards.SECOND),
    ("dart top side", "dart top cf", "cap neck", Towards.FIRST),
    ("dart foot cf", "dart foot side", "cap waist", Towards.SECOND),
    ("dart shoulder cb", "dart shoulder tip", "cap shoulder", Towards.FIRST),
    ("dart yoke cb", "dart yoke side", "cap yoke", Towards.FIRST),
    ("dart armhole high", "dart armhole low", "cap armhole", Towards.SECOND),
    ("dart side upper", "dart side lower", "cap side", Towards.SECOND),
    ("dart panel low", "dart panel high", "cap panel", Towards.FIRST),
    ("dart gusset side", "dart gusset arm", "cap gusset", Towards.FIRST),
)
"""Darts that may be left in a piece: their legs in the direction of the loop, the name
of their cap, and the leg that they are folded on (truing 3.2: vertical darts towards
the centre, but those that open at it away from it, darts of side, armhole and elbow
downwards)."""


_HOLLOW = ("dart armhole low", "dart armhole high", "dart neck tip")
"""First legs of the darts that open in a hollow edge."""

_OF_BACK = "dart neck cb"
"""First leg of a dart that opens at the back neck."""

NARROW_MOUTH = 2.5
"""A dart on an armhole or a front neck whose mouth is narrower than this is cut
straight across, cm: its cap would be a notch in the hollow, and its fold lies in the
allowance anyway. So is one on a back neck that is hollow there, as a U is."""

_NOTCHED = 0.25
"""A cap of a narrow mouth is a notch where it goes so deep into the paper, a share of
the mouth (our own)."""

PLEAT_LINE = 7.0
"""The lines of a pleat are drawn so far down from the waist, cm (our own)."""


_INSIDE = {
    LineKind.EYE: Meaning.INNER,
    LineKind.PLACEMENT: Meaning.PLACEMENT,
    LineKind.ARROW: Meaning.ARROW,
}


@dataclass(frozen=True)
class Finishing:
    """What finishing needs to know besides the table."""

    title: str
    client: str
    taken: date | None
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


def finish(
    sheet: Sheet, f: Finishing, *, words: bool = True
) -> tuple[DrawnPattern, tuple[Finding, ...]]:
    """Allowances, notches, grain, labels and counts on every piece that is cut.

    Without `words` no places are found for labels and figures: a nest of sizes has its
    own.
    """
    found = list(check_partners(sheet, f.allowances))
    pieces = []
    for code in f.order:
        bare = unlettered(sheet, code, f)
        found += bare.found
        if words:
            pieces.append(lettered(bare.drawn))
            found += label_findings(pieces[-1])
        else:
            pieces.append(bare.drawn)
    pattern = DrawnPattern(
        title=f.title,
        client=f.client,
        taken=f.taken,
        unit=f.allowances.unit.value,
        pieces=tuple(pieces),
        allowance_note=f.allowances.note(sheet.piece(c) for c in f.order),
        failures=f.failures,
        cautions=f.cautions,
        notes=f.notes,
    )
    return pattern, tuple(found)


def label_findings(piece: DrawnPiece) -> Iterable[Finding]:
    """A warning on a piece that is too narrow for its label."""
    if piece.nameless:
        yield Finding(
            "label",
            Severity.WARN,
            f"{piece.name} is too narrow for its label and has none.",
            piece.code,
            f"Write on it by hand: {'; '.join(piece.unsaid)}.",
        )


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
    """A finished piece before places are found for its words."""

    drawn: DrawnPiece
    found: tuple[Finding, ...]


def unlettered(sheet: Sheet, code: str, f: Finishing) -> Unlettered:
    """One piece with allowances, notches, grain and marks, and no words yet: all that
    a screen needs, which writes words its own way."""
    net = sheet.piece(code)
    piece, legs = with_darts_capped(net)
    line = cut_line(piece, f.allowances)
    number = f.order.index(code) + 1
    lines = marks.edge_lines(piece, f.taped)
    lines += [DrawnLine(Meaning.DART, p, "dart") for p in legs]
    lines += [
        DrawnLine(Meaning.DART if k.path.closed else _INSIDE[k.kind], k.path, k.name)
        for k in piece.lines
    ]
    lines += marks.crosses(piece)
    if piece.grain:
        lines.append(DrawnLine(Meaning.GRAIN, Path.line(*piece.grain), "grain"))
    widths = {e.name: line.widths.get(e.name, 0.0) for e in net.edges}
    notches = notches_of(sheet, sheet.seams, net.code, widths)
    rings, first = marks.loops(net, line)
    lines += rings
    notches += first
    for leg, other in zip(legs[::2], legs[1::2], strict=True):
        notches += marks.dart_notches(leg, other, line, notches)
        if distance(leg.end, other.start) < 0.05:  # a pleat's lines have no point
            lines += marks.cross_at(marks.punch(leg, other), "dart point")
    zones = marks.zones_of(sheet, net, sheet.seams)
    lines += marks.ease_zones(zones)
    gathers = marks.gathers(sheet, net)
    lines += [DrawnLine(Meaning.EASE, net.edge(e).path, "gather") for e in gathers]
    cuts = f.cuts.get(net.code, ())
    carries = f.allowances.parts([piece])
    if any(c.cloth == "interlining" for c in cuts):
        carries += (("interlining only", f.allowances.interlining),)
    said = Words(
        title=f.title,
        client=f.client,
        measured=as_printed(f.taken),
        number=number,
        total=len(f.order),
        cuts=_counts(cuts, f.cloths),
        allowances=carries,
        centres=f.allowances.said.centres(net.code),
        fmt=f.fmt,
    )
    drawn = DrawnPiece(
        code=net.code,
        name=net.name,
        number=number,
        total=len(f.order),
        cuts=cuts,
        cut_line=line.outline,
        lines=tuple(lines),
        notches=tuple(marks.reaching(k, line.outline) for k in notches),
        wording=wording(net, piece, legs, gathers, zones, said),
        on_fold=piece.fold is not None,
        area=net.area,
        nap=f.nap,
    )
    found = tuple(_cut_findings(net, line, f.allowances.unit))
    return Unlettered(drawn, found)


def with_darts_capped(piece: Piece) -> tuple[Piece, list[Path]]:
    """The piece with the mouth of every dart filled by its cap, and the darts' legs."""
    legs: list[Path] = []
    for first, second, name, towards in _every_dart():
        if not (piece.has(first) and piece.has(second)):
            continue
        if piece.after(first).name != second:
            continue
        a, b = piece.edge(first), piece.edge(second)
        if "gusset" in name:
            legs += [a.path, b.path]
            piece = _run_together(piece, first, second)
            continue
        if distance(a.path.start, b.path.end) < 0.05:
            cap = (
                Path.line(a.path.start, b.path.end)
                if distance(a.path.start, b.path.end) > 1e-6
                else None
            )
        else:
            cap = _filled(piece, first, second, towards)
            legs += (
                [a.path, b.path]
                if "pleat" not in name
                else [
                    a.path.between(0.0, PLEAT_LINE),
                    b.path.between(b.length - PLEAT_LINE, b.length),
                ]
            )
        before, after = piece.before(first), piece.after(second)
        loop = [e for e in piece.edges if e.name not in (first, second)]
        if cap is not None:
            at = next(i for i, e in enumerate(loop) if e.name == before.name) + 1
            loop.insert(at, Edge(name, cap.pinned(before.path.end, after.path.start)))
        piece = replace(piece, edges=tuple(loop))
    return piece, legs


def _filled(piece: Piece, first: str, second: str, towards: Towards) -> Path:
    """What fills the mouth of a dart: its cap, or the straight across a narrow one in a
    hollow edge."""
    across = Path.line(piece.edge(first).path.start, piece.edge(second).path.end)
    narrow = across.length < NARROW_MOUTH
    if narrow and own_name(first) in _HOLLOW:
        return across
    cap = dart_cap(piece, first, second, towards)
    deep = dot(across.start - cap.peak, left_normal(across.start_direction))
    if narrow and own_name(first) == _OF_BACK and deep > _NOTCHED * across.length:
        return across
    return cap.path


def _run_together(piece: Piece, first: str, second: str) -> Piece:
    """The piece without a slash: the edges beside it run on until they meet."""
    before, after = piece.before(first), piece.after(second)
    at = meet_lines(
        before.path.end,
        before.path.end_direction,
        after.path.start,
        after.path.start_direction,
    )
    longer = {
        before.name: before.along(before.path + Path.line(before.path.end, at)),
        after.name: after.along(Path.line(at, after.path.start) + after.path),
    }
    loop = (e for e in piece.edges if e.name not in (first, second))
    return piece.with_edges(longer.get(e.name, e) for e in loop)


def _every_dart() -> Iterator[tuple[str, str, str, Towards]]:
    """The darts of a half, and those of the other half of a whole piece, which the
    loop meets the other way round."""
    yield from _DARTS
    for half in ("", LEFT_HALF, MIRRORED):  # a left piece is turned over, too
        for first, second, name, towards in _DARTS:
            yield second + half, first + half, name + half, towards.other


def _counts(cuts: tuple[CutCount, ...], names: Mapping[str, str]) -> tuple[str, ...]:
    """A line for each count: "ink crêpe, interlining: cut 2 (1 pair) of each"."""
    cloths: dict[str, list[str]] = {}
    for c in cuts:
        cloths.setdefault(c.how, []).append(names.get(c.cloth, c.cloth))
    return tuple(
        f"{', '.join(of)}: cut {_of_each(how) if len(of) > 1 else how}"
        for how, of in cloths.items()
    )


def _of_each(how: str) -> str:
    """A count that holds for several cloths: "2 (1 pair) of each", "1 of each, right
    side up"."""
    count, comma, rest = how.partition(", ")
    return count + EACH + comma + rest
