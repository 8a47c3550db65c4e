"""What becomes of an order on a body: it passes every check, or it is refused in words.

A refusal is right when its sentence names a measure or a number of the order and says
what to do. Whatever passes is asked again from outside: outlines by shapely, girths by
slicing the finished pieces.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from shapely.geometry import LineString, MultiLineString, Polygon

from clothwright.blocks.torso_width import LAID_IN_TUCKS
from clothwright.body.measures import measures
from clothwright.features import Feature
from clothwright.features.fitting import Fitting
from clothwright.findings import Severity
from clothwright.finishing.allowances import Allowances
from clothwright.finishing.cutline import CutLine, cut_line
from clothwright.finishing.finish import with_darts_capped
from clothwright.order import Draft, Order, OrderError, draft, pattern
from clothwright.order.draft import resolve
from clothwright.paper import Piece
from referee import faults

MM = 0.1
ACTS = (
    *(
        "measure",
        "make ",
        "give ",
        "choose",
        "narrow",
        "add ",
        "tighten",
        "set ",
        "put ",
    ),
    *(
        "smaller",
        "larger",
        "leave",
        "draft",
        "take ",
        "use ",
        "look ",
        "move ",
        "ease ",
        "alter ",
        "begin ",
        "have ",
    ),
)
"""Words with which a sentence says what to do."""


@dataclass(frozen=True)
class Verdict:
    """What an order came to."""

    made: Draft | None
    refusals: tuple[str, ...]
    """Sentences of faults; none when every check is passed."""

    paper: frozenset[str] = frozenset()
    """Those of them that the paper itself tells: a seam that does not meet, an outline
    or a cut line that crosses itself."""

    cut: tuple[tuple[Piece, CutLine], ...] = ()
    """Every net piece as it is cut, its darts capped, and its cut line."""


def verdict(order: Order) -> Verdict:
    """Draft and finish an order. Raises what a user must never see."""
    try:
        made = draft(order)
    except OrderError as e:
        return Verdict(None, tuple(str(e).splitlines()))
    found = list(made.failures())
    paper = {str(f) for f in made.report.findings}
    allowances = Allowances(order.unit, order.said)
    pieces = (with_darts_capped(p)[0] for p in made.sheet.pieces.values())
    lines = tuple((p, cut_line(p, allowances)) for p in pieces)
    if any(line.narrow or line.crossing for _, line in lines):
        drawn = pattern(made, words=False).findings[len(made.findings) :]
        cut = [str(f) for f in drawn if f.severity is Severity.REFUSE]
        found, paper = found + cut, paper | {*cut}
    return Verdict(made, tuple(dict.fromkeys(found)), frozenset(paper), lines)


def unsound(order: Order, it: Verdict) -> Iterator[str]:
    """What is wrong with the answer to an order; nothing when it is right, or when its
    features do not go together, whatever the body."""
    try:
        resolve(order)
    except OrderError:
        return
    if it.refusals:
        names = set(_names(order.features))
        for sentence in told(it):
            if not any(re.search(rf"(?<!\w){n}(?!\w)", sentence) for n in names):
                yield f"names nothing: {sentence}"
            if not any(word in sentence.lower() for word in ACTS):
                yield f"says not what to do: {sentence}"
        return
    assert it.made is not None
    yield from _crossed(it.made, it.cut)
    yield from _girths(it.made)


def told(it: Verdict) -> list[str]:
    """What she is told: the checks of measures and features, where they say why the
    paper does not fit together, else what the paper tells."""
    return [r for r in it.refusals if r not in it.paper] or list(it.refusals)


def unexplained(it: Verdict) -> Iterator[str]:
    """Faults of the paper itself, where no check of a measure or a feature says why."""
    if it.refusals and it.paper.issuperset(it.refusals):
        yield from (f"told by the paper alone: {r}" for r in it.refusals)


def _names(features: Iterable[Feature]) -> Iterator[str]:
    for m in measures().values():
        yield from (re.escape(n) for n in (m.code, m.name))
    for f in features:
        yield from ("fd", "bd")  # the waist's darts, told by their symbols
        if isinstance(f, Fitting):
            yield from (p.title for p in (a.page for a in f.alteration))
        for number in f.numbers().values():
            yield from (re.escape(n) for n in (number.symbol, number.name))
        for w in type(f).model_fields:
            yield rf'{w} of "{f.kind}"'
            yield re.escape(w) if "_" in w else rf'(its |set ){w}|{w} =|"{w}"'


def _crossed(made: Draft, lines: Iterable[tuple[Piece, CutLine]]) -> Iterator[str]:
    for piece in made.sheet.pieces.values():
        if not Polygon(piece.outline.flatten(0.002)).is_valid:
            yield f"{piece.code} crosses itself"
    for piece, line in lines:
        for fault in faults(piece, line):
            yield f"the cut line of {piece.code}: {fault}"


# -- girths, against the body and the ease that was asked ------------------------------
def _girths(made: Draft) -> Iterator[str]:
    """Stitched waist, bust over the bust points, peplum at its waist; waist and hip of
    trousers."""
    n, sheet = made.numbers, made.sheet
    if "SB" in sheet.pieces and "Eh" in n:
        yield from _skirt(made)
        return
    if "TF" in sheet.pieces:
        yield from _trousers(made)
        return
    if any(f.kind == "torso" for f in made.order.features):
        yield from _torso(made)
        return
    if "KF" in sheet.pieces:
        yield from _knit(made)
        return
    edges = [
        (p.code, e)
        for p in sheet.pieces.values()
        if p.code in ("FC", "FS", "F", "FM", "FMS", "BC", "BS", "B", "BM", "BMS")
        for e in ("waist", "waist side")
        if p.has(e)
    ]
    if not edges:
        return  # gores, circles and gathers: tests/features/skirts/test_skirts.py
    waist = sum(sheet.length(*run) for run in edges)
    if "BD" in sheet.pieces:  # up to the centre down the middle of a front band
        band = sheet.piece("BD").outline.flatten(0.005)
        waist += (max(p.x for p in band) - min(p.x for p in band)) / 4
    taken_up = [
        s.ease.plan
        for s in sheet.seams
        if s.gathered
        and s.left[0].piece in ("PF", "PB")
        and any((r.piece, r.edge) in edges for r in s.right)
    ]
    waist -= sum(taken_up)
    # above an empire seam they end there
    if LAID_IN_TUCKS in sheet.lines and "FM" not in sheet.pieces:
        waist -= sheet.lines[LAID_IN_TUCKS].length
    gap = n.e2 if "slant" in _edges(made) else _laced(made)
    off = waist + gap - (n.W + n.Ew) / 2
    # the plan of gathers has the skirt's own ease and the give of its bias as well; an
    # excess that is not given back stays in the waist
    kept = any(not getattr(f, "excess_given_back", True) for f in made.order.features)
    words = {"laid waist dart", "laid back dart"}
    laid = any(words & f.provides() for f in made.order.features)
    if not laid and abs(off) > (0.6 if kept else 0.3 if taken_up else 0.1):
        yield f"the half waist is {off:+.2f} off body and ease"
    half = _bust(made)
    contoured = any(getattr(f, "contour", None) for f in made.order.features)
    if half is None or contoured or ("te" in n and gap and n.te > 0):
        return  # a wedge closed tilts what lies above it
    half += _laced(made)
    lost = (n.B + n.Eb) / 2 - half
    told = [f for f in made.findings if f.code in ("B1", "B16")]
    held = any("strapless" in f.provides() for f in made.order.features)
    # of bones, 2 less (measurements 8), and the slice lies lower than the bust point
    if half < n.B / 2 - (1.2 if held else 0.3):
        yield f"the bust is {2 * half:.1f} on a body of {n.B:.1f}, and passes"
    if lost > 1.6 and not told:
        yield f"the bust loses {2 * lost:.1f} of its ease at the bust points, untold"


def _laced(made: Draft) -> float:
    """What laced edges leave open of a half, by the order."""
    kinds = {f.kind for f in made.order.features}
    return made.numbers.lace_gap / 2 if "lacing" in kinds else 0.0


def _torso(made: Draft) -> Iterator[str]:
    """Waist and hip by slices from the centre back to the centre front, beyond which a
    stand lies, darts cut out; a band takes its half width of the front. Below a seam
    across it the hip lies in its skirt, or in one of another cut that is sewn on."""
    n, sheet = made.numbers, made.sheet
    banded = n.b_stand if "BD" in sheet.pieces else _laced(made)
    loose = 0.0  # a tent has no waist dart in front, or none at all
    if "theta_h" in n:
        marked = {k.name for p in sheet.pieces.values() for k in p.lines}
        panelled = "BC" in sheet.pieces
        loose = n.fd + (0.0 if "waist dart" in marked or panelled else n.bd_net)
    for name, y, aim in (("waist", 0.0, n.W + n.Ew), ("hip", n.WH, n.H + n.Eh)):
        below = "dd" in n and y > n.dd
        if below and "L_T" in n:
            continue
        level, half = LineString([(0, n.yW + y), (n.X, n.yW + y)]), banded
        for part in ("F", "FC", "FS", "B", "BC", "BS"):
            code = f"P{part}" if below else part
            if code not in sheet.pieces:
                continue
            p = sheet.piece(code)
            eyes = [k.path.flatten(0.005) for k in p.lines if k.name == "waist dart"]
            paper = Polygon(p.outline.flatten(0.005), eyes)
            across = _of_tent(made, y) if code == "F" else None
            half += paper.intersection(across or level).length
            if part in ("F", "FC") and not below and LAID_IN_TUCKS in sheet.lines:
                half -= sheet.lines[LAID_IN_TUCKS].length
        fitted = any(f.kind == "fitting" for f in made.order.features)
        if loose and fitted and not y:
            continue  # an alteration opens the dart that a tent leaves unsewn
        if abs(half - aim / 2 - (loose if not y else 0.0)) > 0.1:
            yield f"the half {name} is {half - aim / 2:+.2f} off body and ease"


def _of_tent(made: Draft, y: float) -> MultiLineString | None:
    """Of a tent the level through the front as it was before its side was turned about
    the bust point: level as far as that, and on along the turned line."""
    n, sheet = made.numbers, made.sheet
    if "theta_h" not in n:
        return None
    turned = next(
        k.path for k in sheet.piece("F").lines if k.name == "hip line, turned"
    )
    way = turned.end_direction
    bp, down = sheet.points["BP"], n.yW + y - sheet.points["BP"].y
    foot = bp.x - way.y * down, bp.y + way.x * down
    far = foot[0] - 200 * way.x, foot[1] - 200 * way.y
    parts = [(n.X, n.yW + y), (bp.x, n.yW + y)], [foot, far]
    return MultiLineString(parts)


def _knit(made: Draft) -> Iterator[str]:
    """Bust at the underarms and sliced waist of a knit bodice, by per cent of the
    body; half of its girths, and what a full cup adds to the front."""
    n, sheet = made.numbers, made.sheet
    bust = waist = 0.0
    for code, centre, down in (("KB", 0.0, 0.0), ("KF", n.X, n.front_down)):
        piece = sheet.piece(code)
        under = min(piece.edge("side").path.flatten(0.01), key=lambda p: p.y)
        bust += abs(under.x - centre)
        level = LineString([(-50.0, n.yW + down - 2e-3), (250.0, n.yW + down - 2e-3)])
        waist += Polygon(piece.outline.flatten(0.002)).intersection(level).length
    off = bust - n.B * (1 + n.p_bust / 100) / 2 - max(0.0, 0.25 * (n.c - 7.0))
    if abs(off) > 0.1:
        yield f"the half bust is {off:+.2f} off body and ease"
    off = waist - n.W * (1 + n.p_waist / 100) / 2
    if off < -0.1 or (off > 0.1 and n.q_waist > n.q_bust - 3.99):
        yield f"the half waist is {off:+.2f} off body and ease"


def _skirt(made: Draft) -> Iterator[str]:
    """Stitched waist and sliced hip of a skirt."""
    n, sheet = made.numbers, made.sheet
    pieces = [sheet.piece(c) for c in ("SB", "SF")]
    band = [sheet.piece(c) for c in ("WCF", "WCB") if c in sheet.pieces]
    # a hip yoke, and what lies behind a slanting pocket
    parts = [sheet.pieces[c] for c in ("SYF", "SYB", "TK") if c in sheet.pieces]
    names = ("waist", "waist mid", "waist side")
    top = [e for p in band or (*pieces, *parts) for e in p.edges if e.name in names]
    waist = sum(e.length for e in top)
    if abs(waist - (n.W + n.Ew) / 2) > 0.1:
        yield f"the half waist is {waist - (n.W + n.Ew) / 2:+.2f} off body and ease"
    level = LineString([(-60, n.WH), (120, n.WH)])
    hip = sum(
        Polygon(p.outline.flatten(0.005)).intersection(level).length for p in pieces
    )
    altered = n.half_S - n.unfitted.half_S  # at a fitting
    if hip < (n.H + n.Eh) / 2 + altered - 0.1:
        yield f"the hip is {2 * hip:.1f} round on a body of {n.H:.1f}, and passes"


def _trousers(made: Draft) -> Iterator[str]:
    """Half the waist by its edges, half the hip by slices, with what pleats add."""
    n, pieces = made.numbers, made.sheet.pieces
    top = ("WCF", "WCB") if "WCF" in pieces else ("TF", "TB", "TK")
    folds = [
        k.path.length
        for code in ("TF", "TB")
        for k in pieces[code].lines
        if k.name == "waist line, folded"
    ]
    if folds:  # pulled on: no narrower than the hip with its ease
        off = sum(folds) - (n.H + n.Eh) / 2
    else:
        off = -(n.W + n.Ew) / 2 + sum(
            e.length
            for code in top
            if code in pieces
            for e in pieces[code].edges
            if e.name in ("waist", "waist mid", "waist side")
        )
    if abs(off) > 0.1:
        yield f"the half waist is {off:+.2f} off body and ease"
    level = LineString([(-400, -n.BRe / 3), (400, -n.BRe / 3)])
    hip = sum(
        Polygon(pieces[c].outline.flatten(0.005)).intersection(level).length
        for c in ("TF", "TB")
    )
    off = hip - (n.H + n.Eh) / 2 - n.pl
    if abs(off) > 0.1:
        yield f"the half hip is {off:+.2f} off body and ease"


def _edges(made: Draft) -> set[str]:
    return {e.name for p in made.sheet.pieces.values() for e in p.edges}


def _bust(made: Draft) -> float | None:
    """Half girth through the bust points, or level with the underarm where they lie
    higher: each panel sliced, and what lies between its edge and the centre back (the
    set-in of an open back, the seam of a zip) added."""
    sheet = made.sheet
    if not {"FC", "FS", "BC", "BS"} <= set(sheet.pieces):
        return None
    if sheet.piece("FS").has("dart low"):  # open there, as in a front in one piece
        return None
    # just below, where the side front was not turned; a line beside the bust point
    # leaves the dart there, which is closed when it is worn
    marks = (sheet.points[k].y for k in ("BP", "ub", "P2") if k in sheet.points)
    y = max(marks) + 0.02
    if "neck front" in sheet.lines and sheet.lines["neck front"].bounds()[3] > y:
        return None  # the neck is cut out there
    level = LineString([(-60, y), (120, y)])
    total = 0.0
    for code in ("FC", "FS", "BC", "BS"):
        part = Polygon(sheet.piece(code).outline.flatten(0.005)).intersection(level)
        # a facing cut on at the back lies beyond the centre
        total += part.bounds[2] if code == "BC" else part.length
        if code == "FC" and {"NP", "BD"} & set(sheet.pieces):  # a band lies there
            total += max(0.0, made.numbers.X - part.bounds[2])
    return total
