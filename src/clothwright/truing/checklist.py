"""The checklist: what every finished pattern is asked before anything is cut.

Each check is a pure function that gives findings; none stops at the first. Codes are
plain words ("grain", "partner", "outline" ...); a seam's walk has the seam's code.
Source: our trade notes, truing 5 and 11 (items 1, 2, 3, 5, 10, 11 and 15), and C16.
Lengths are cm, angles degrees; sentences are in the user's unit.
"""

import math
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import cache, cached_property, lru_cache, partial

from clothwright.curves import (
    Cubic,
    Path,
    Point,
    Segment,
    degrees_between,
    direction,
    distance,
    dot,
    left_normal,
    mix,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import Edge, EdgeKind, Piece, Run, Seam, SeamKind, Sheet, once
from clothwright.truing.joints import Angles, Joint, measure
from clothwright.truing.outline import (
    box,
    chords,
    crosses_itself,
    stretch,
    tightest,
    wrong_way,
)
from clothwright.truing.tolerances import (
    DOUBLED,
    FOLD_STRAIGHT,
    GRAIN,
    GRAIN_INSIDE,
    GRAIN_LENGTH,
    GRAIN_SHARE,
    HOLLOW_RADIUS,
    NECK_HOLLOW,
    NOTCH_ROOM,
    NOTCH_SET,
    OUTWARD_RADIUS,
    SHARP_CORNER,
    SMALL_PIECE,
    WRONG_WAY,
)
from clothwright.truing.walk import Walk, walk_all
from clothwright.truing.words import Fmt, opening

ROUNDED = ("neck", "armhole", "cap")
"""Words in the name of an edge whose curves must not wobble (C16)."""

_HOLLOWS = {"neck": NECK_HOLLOW, "armhole": HOLLOW_RADIUS}
"""Least radius of the edges that must not be hollowed too tightly."""

_TIGHT = max(OUTWARD_RADIUS, *_HOLLOWS.values())
"""Wider radii than this (cm) are no matter to any edge."""

_HAIR = 1e-6
"""Rounding of doubles, cm."""


@dataclass(frozen=True)
class Report:
    """Everything that the checks found, with the walks and angles behind it."""

    walks: tuple[Walk, ...]
    angles: tuple[Angles, ...]
    findings: tuple[Finding, ...]

    @cached_property
    def failed(self) -> bool:
        """True when a fault was found: nothing may be cut so."""
        return any(f.severity is Severity.REFUSE for f in self.findings)

    def by_severity(self, severity: Severity) -> tuple[Finding, ...]:
        """The findings of one severity, in the order found."""
        return tuple(f for f in self.findings if f.severity is severity)

    def sentences(self) -> tuple[str, ...]:
        """Every finding with what to do about it, faults first."""
        order = (Severity.REFUSE, Severity.WARN, Severity.NOTE)
        return tuple(str(f) for s in order for f in self.by_severity(s))


def check_all(sheet: Sheet, joints: Iterable[Joint], fmt: Fmt) -> Report:
    """Walk every seam, measure every joint and ask every piece the checklist.

    Raises PaperError when a seam or joint names an edge that is not on the sheet.
    """
    walks = walk_all(sheet)
    angles = tuple(measure(sheet, j) for j in joints)
    found: list[Finding] = []
    for w in walks:
        found += w.findings(fmt)
    for a in angles:
        found += a.findings
    found += check_partners(sheet)
    found += check_notches(sheet, fmt)
    ask = _asking(fmt)
    for piece in sheet.pieces.values():
        found += ask(piece)
    return Report(walks, angles, tuple(found))


@lru_cache(maxsize=8)
def _asking(fmt: Fmt) -> Callable[[Piece], tuple[Finding, ...]]:
    """The piece's checks in one unit, asked once for each piece."""
    return once(lambda piece: tuple(check_piece(piece, fmt)))


def check_piece(piece: Piece, fmt: Fmt) -> Iterator[Finding]:
    """Every check that asks one piece alone."""
    yield from check_name(piece)
    yield from check_grain(piece, fmt)
    yield from check_outline(piece)
    yield from check_folds(piece, fmt)
    yield from check_curves(piece)
    yield from check_shape(piece, fmt)


# -- one piece -----------------------------------------------------------------------
def check_name(piece: Piece) -> Iterator[Finding]:
    """Every piece has a name to be printed on it."""
    if not piece.name.strip():
        yield _fault("name", piece, "has no name", "Give it one to print on it.")


def check_grain(piece: Piece, fmt: Fmt) -> Iterator[Finding]:
    """A grain line, inside, as long as it should be or the piece lets it; along,
    across or at 45° to a fold."""
    if piece.grain is None:
        yield _fault("grain", piece, "has no grain line", "Draw it before cutting.")
        return
    foot, head = piece.grain
    length = distance(foot, head)
    if length < DOUBLED:
        yield _fault("grain", piece, "has a grain line of no length", "Draw it anew.")
        return
    if not (piece.contains(foot) and piece.contains(head)):
        yield _doubt("grain", piece, "has a grain line that leaves it", "Move it in.")
    along = direction(foot, head)
    if length < 0.8 * GRAIN_LENGTH:  # else it is long enough for any piece
        points = chords(piece.outline)
        reach = [x * along.x + y * along.y for x, y in points]
        free = stretch(points, mix(foot, head, 0.5), along) - 2 * GRAIN_INSIDE
        wanted = min(GRAIN_SHARE * (max(reach) - min(reach)), GRAIN_LENGTH, free)
        if length < 0.8 * wanted - _HAIR:
            says = f"has a grain line of {fmt(length)}"
            says += f"; {fmt(wanted)} lies truer on cloth"
            yield _finding(Severity.NOTE, "grain", piece, says, "Draw it longer.")
    fold = piece.fold
    if fold is not None and fold.length > DOUBLED:
        angle = degrees_between(along, direction(fold.path.start, fold.path.end)) % 45
        off = min(angle, 45 - angle)
        severity = GRAIN.severity(off)
        if severity is not None:
            says = f"has its grain {off:.1f}° off the fold"
            to_do = "Draw it along the fold, square to it or at 45°."
            yield _finding(severity, "grain", piece, says, to_do)


def check_outline(piece: Piece) -> Iterator[Finding]:
    """A clockwise loop of edges with length, no point twice, no crossing. That the
    loop is closed, each piece sees to itself."""
    for edge in piece.edges if _has_small(piece.outline) else ():
        if not _has_small(edge.path):
            continue
        if edge.length < DOUBLED:
            yield _fault("outline", edge, "has no length", "Leave it out.", piece)
        elif any(s.length < DOUBLED for s in edge.path.segments):
            yield _doubt("outline", edge, "has a point drawn twice", "Join it.", piece)
    area = piece.area
    if area < -_HAIR:
        says = "runs anticlockwise"
        yield _fault("outline", piece, says, "Give its edges clockwise.")
    elif area <= _HAIR:
        yield _fault("outline", piece, "has no area", "Draw its outline anew.")
    if crosses_itself(piece.outline) is not None:
        says = "has an outline that crosses itself"
        yield _fault("outline", piece, says, "Redraw the edges that meet there.")


def _has_small(path: Path) -> bool:
    """True when a segment may be shorter than what counts as drawn twice: a curve
    reaches over nearly half of the box that holds its points."""
    for s in path.segments:
        left, top, right, bottom = s.box
        if right - left < 3 * DOUBLED and bottom - top < 3 * DOUBLED:
            return True
    return False


def check_folds(piece: Piece, fmt: Fmt) -> Iterator[Finding]:
    """An edge on the fold of the cloth is straight."""
    for edge in piece.edges:
        if edge.kind is not EdgeKind.FOLD or edge.length < DOUBLED:
            continue
        a, b = edge.path.start, edge.path.end
        if distance(a, b) < DOUBLED:
            yield _fault("fold", edge, "ends where it begins", "Rule it.", piece)
            continue
        if edge.path.straight:
            continue
        n = left_normal(b - a)
        off = max(
            abs(dot(p - a, n)) for s in edge.path.segments for p in _outer_points(s)
        )
        if off > FOLD_STRAIGHT:
            says = f"is up to {fmt(off)} off the straight; cloth folds straight"
            yield _fault("fold", edge, says, "Rule it, or cut it as a seam.", piece)


def check_curves(piece: Piece) -> Iterator[Finding]:
    """Neck and armhole curves bend one way; no hollow is too tight to sew (C16)."""
    for edge in piece.edges:
        if not _is_rounded(edge.name):
            continue
        worst = 0.0
        for s in edge.path.segments:
            if isinstance(s, Cubic):
                worst = max(worst, wrong_way(s))
        severity = WRONG_WAY.severity(worst)
        if severity is not None:
            says = f"turns the wrong way by {worst:.1f}°; up to 3° goes unseen"
            to_do = (
                "Look at the length and slope of the shoulder (SH, SS) and the widths "
                "across (XB, XC), or narrow the shoulder at the tip."
                if "armhole" in edge.name
                else "Look at the shoulder slope (SS), or make the neck less deep."
            )
            yield _finding(severity, "curve", edge, says, to_do, piece)


@cache
def _is_rounded(edge: str) -> bool:
    return any(word in edge for word in ROUNDED)


def check_shape(piece: Piece, fmt: Fmt) -> Iterator[Finding]:
    """Nothing too small, too sharp or too tightly curved for hands and iron."""
    if not _reaches(piece.outline, SMALL_PIECE) and (
        max(box(chords(piece.outline))) < SMALL_PIECE
    ):
        says = f"is less than {fmt(SMALL_PIECE)} each way"
        yield _doubt("shape", piece, says, "Cut it in one with its neighbour.")
    for edge, angle in zip(piece.edges, piece.angles, strict=True):
        if angle < SHARP_CORNER:
            says = f"ends in a corner of {angle:.0f}°"
            to_do = f"Blunt it: {SHARP_CORNER:.0f}° is the least that turns out well."
            yield _doubt("shape", edge, says, to_do, piece)
        if edge.path.straight:
            continue
        least = _HOLLOWS.get(edge.name, 0.0)
        outward, hollow = tightest(edge.path, within=_TIGHT)
        if outward < OUTWARD_RADIUS:
            says = f"bends outwards to a radius of {fmt(outward)}"
            to_do = f"Round it to {fmt(OUTWARD_RADIUS)} or make it a corner."
            yield _doubt("shape", edge, says, to_do, piece)
        if hollow < least:
            under = "just under " if fmt(hollow) == fmt(least) else ""
            says = f"is hollowed to a radius of {under}{fmt(hollow)}"
            to_do = f"Ease the curve to {fmt(least)} or more."
            yield _doubt("shape", edge, says, to_do, piece)


def _reaches(path: Path, far: float) -> bool:
    """True when a segment ends so far from the start, across or down, cm."""
    x0, y0 = path.start
    for s in path.segments:
        x, y = s.end
        if abs(x - x0) >= far or abs(y - y0) >= far:
            return True
    return False


def _outer_points(segment: Segment) -> tuple[Point, ...]:
    """Points that a segment's greatest distance from a line is judged by: on it, so
    that a handle beyond the curve accuses nothing."""
    steps = 8 if isinstance(segment, Cubic) else 1
    return tuple(segment.at(i / steps) for i in range(steps + 1))


# -- the whole sheet -----------------------------------------------------------------
def check_partners(sheet: Sheet) -> Iterator[Finding]:
    """Every edge that is sewn stands in a seam, and in none twice."""
    sewn: set[tuple[str, str]] = set()
    for seam in sheet.seams:
        runs = [r[:2] for r in seam.runs()]
        sewn.update(runs)
        if seam.kind is SeamKind.TWIN or len(set(runs)) == len(runs):
            continue
        for run in (f"{p}.{e}" for (p, e), n in Counter(runs).items() if n > 1):
            yield Finding(
                seam.code,
                Severity.REFUSE,
                f"{opening(seam.name)} walks over {run} twice.",
                seam.name,
                "Name each edge once.",
            )
    for piece in sheet.pieces.values():
        for edge in piece.edges:
            if edge.kind is EdgeKind.SEAM and (piece.code, edge.name) not in sewn:
                says = "is to be sewn but has no partner"
                to_do = "Say which edge it meets, or that it is a fold or finished."
                yield _fault("partner", edge, says, to_do, piece)


def check_notches(sheet: Sheet, fmt: Fmt) -> Iterator[Finding]:
    """Notches lie on both sides, in one order, clear of corners and each other."""
    for seam in sheet.seams:
        if seam.notches:
            notches = sorted(seam.notches)
            left, right = [n.left for n in notches], [n.right for n in notches]
            yield from _notches_of(sheet, seam, seam.left, left, fmt)
            yield from _notches_of(sheet, seam, seam.right, right, fmt)


def _notches_of(
    sheet: Sheet, seam: Seam, chain: tuple[Run, ...], at: list[float], fmt: Fmt
) -> Iterator[Finding]:
    whole, corners = 0.0, [0.0]
    for piece, edge, _ in chain:
        whole += sheet.length(piece, edge)
        corners.append(whole)
    whose = sheet.piece(chain[0].piece).name.lower()

    def say(severity: Severity, text: str, to_do: str) -> Finding:
        says = f"{opening(seam.name)}: {text}."
        return Finding("notch", severity, says, seam.name, to_do)

    for s in at:
        if not -_HAIR <= s <= whole + _HAIR:
            text = f"a notch at {fmt(s)} lies off the {whose}, {fmt(whole)} long there"
            yield say(Severity.REFUSE, text, "Put it between the seam's two ends.")
            continue
        room = min([abs(s - c) for c in corners])
        if DOUBLED < room < NOTCH_ROOM - _HAIR:
            text = f"a notch is {fmt(room)} from a corner of the {whose}"
            yield say(Severity.WARN, text, f"Leave {fmt(NOTCH_ROOM)} free.")
    for a, b in zip(at, at[1:], strict=False):
        if b - a < -_HAIR:
            text = f"two notches come in another order on the {whose}"
            yield say(Severity.REFUSE, text, "Walk both sides from the same end.")
        elif b - a < NOTCH_ROOM - _HAIR and not math.isclose(
            b - a, NOTCH_SET, abs_tol=0.05
        ):
            text = f"two notches of the {whose} are {fmt(b - a)} apart"
            yield say(Severity.WARN, text, f"Leave {fmt(NOTCH_ROOM)} between them.")


# -- saying it -----------------------------------------------------------------------
def _finding(
    severity: Severity,
    code: str,
    of: Piece | Edge,
    says: str,
    to_do: str = "",
    piece: Piece | None = None,
) -> Finding:
    owner = piece or (of if isinstance(of, Piece) else None)
    name = (owner.name.strip() or owner.code) if owner else ""
    place = name if isinstance(of, Piece) else f"{name}, {of.name}".lstrip(", ")
    return Finding(code, severity, f"{opening(place)} {says}.", place, to_do)


_fault = partial(_finding, Severity.REFUSE)
_doubt = partial(_finding, Severity.WARN)
