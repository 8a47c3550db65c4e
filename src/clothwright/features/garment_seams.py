"""What is sewn to what on the finished table, with notches (first garment 19, 21).

Stated once, after all shapes are final; walk, notches, making order and checks are
read from it. Only seams whose pieces are on the table are stated.
"""

from dataclasses import replace

from clothwright.curves import Point, Vector, direction, dot, turned
from clothwright.features.base import Rank, Stage
from clothwright.paper import (
    Drafting,
    Ease,
    EdgeKind,
    InnerLine,
    NotchPair,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    once,
)
from clothwright.rules import Numbers

_CORNER = 1.2
"""No notch lies nearer to a corner than this, cm (first garment 19)."""


def state(d: Drafting) -> None:
    """State every seam of the garment and give side panels their grain."""
    d.part = "seams"
    sheet = _with_grain(d.sheet)
    kept = {s.code for s in sheet.seams if s.kind is SeamKind.DART and _open(s)}
    sheet = sheet.unsew(*(s.code for s in sheet.seams if s.code not in kept))
    seams = [s for s in _seams(sheet, d.n) if s is not None]
    d.lay(
        Verb.SEW,
        sheet.sew(*seams),
        "seams",
        "every seam walked and notched",
        detail="both partners together, from the end named first",
    )


STAGE = Stage(Rank.SEAMS, "the seams", state)


def _open(dart: Seam) -> bool:
    """True for a dart that no panel line has taken up."""
    return all("leg" in r.edge or "dart" in r.edge for r in dart.runs())


class _Table:
    """The table while seams are stated: chains of the edges that exist."""

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet

    def chain(self, *runs: tuple[str, str, bool]) -> tuple[Run, ...]:
        """The runs of this chain whose edges are on the table."""
        return tuple(
            Run(p, e, back)
            for p, e, back in runs
            if p in self.sheet.pieces and self.sheet.piece(p).has(e)
        )

    def length(self, chain: tuple[Run, ...]) -> float:
        return self.sheet.chain_length(chain)

    def upto(self, chain: tuple[Run, ...], p: Point) -> float:
        """Length along a chain of one piece to the place nearest to a point."""
        done, best = 0.0, (float("inf"), 0.0)
        for run in chain:
            path = self.sheet.run_path(run)
            place, gap = path.nearest(p)
            if gap < best[0] - 1e-9:
                best = gap, done + path.length_to(place)
            done += path.length
        return best[1]


def _seams(sheet: Sheet, n: Numbers) -> list[Seam | None]:
    t = _Table(sheet)
    return [
        _front_panel(t, n),
        _back_panel(t, n),
        *_shoulders(t, n),
        _side(t),
        _waist_front(t, n),
        _waist_back(t, n),
        _waist_on(t, n),
        _peplum_side(t),
        *_peplum_panels(t),
        _centre_back(t),
        _panel_behind(t),
        *_facings(t, n),
    ]


def _front_panel(t: _Table, n: Numbers) -> Seam | None:
    left = t.chain(("FC", "panel", True))
    right = t.chain(("FS", "panel", False))
    if not (left and right):
        return None
    bp = t.sheet.points["BP"]
    at = t.upto(left, bp)
    total_l, total_r = t.length(left), t.length(right)
    a, b = at - 5.0, at + 5.0
    return Seam(
        "S1",
        "front panel",
        left,
        right,
        "Qf",
        "waist",
        Ease.about(n.ep, 0.1),
        (a, b),
        (NotchPair(a, a, 1), NotchPair(b, total_r - (total_l - b), 1)),
    )


def _back_panel(t: _Table, n: Numbers) -> Seam | None:
    left = t.chain(("BC", "panel", False))
    right = t.chain(("BS", "panel", True))
    if not (left and right):
        return None
    at = t.upto(left, t.sheet.points["Pd"])
    first, second = min(6.0, at - 2.0), at + 4.0
    rest = t.length(left) - second
    return Seam(
        "S2",
        "back panel",
        left,
        right,
        "Qb",
        "waist",
        Ease.about(0.0, 0.1),
        None,
        (
            NotchPair(first, first, 2),
            NotchPair(second, t.length(right) - rest, 2),
        ),
    )


def _shoulders(t: _Table, n: Numbers) -> list[Seam]:
    out = []
    split = bool(t.chain(("FS", "shoulder", True)))
    if split:
        for code, name, f, b, start, end in (
            ("S3", "shoulder, neck side", "FC", "BC", "neck", "panel"),
            ("S3a", "shoulder, tip side", "FS", "BS", "panel", "tip"),
        ):
            left = t.chain((f, "shoulder", True))
            right = t.chain((b, "shoulder", False))
            if left and right:
                out.append(
                    Seam(
                        code,
                        name,
                        left,
                        right,
                        start,
                        end,
                        Ease.about(n.se_left * t.length(left) / n.Lr, 0.05),
                    )
                )
        return out
    left = t.chain(("FC", "shoulder", True), ("F", "shoulder", True))
    right = t.chain(("BC", "shoulder", False), ("B", "shoulder", False))
    a, c = t.length(left), t.length(right)
    notch = (NotchPair(a / 2, c / 2, 1),) if a >= 8 else ()
    return [
        Seam(
            "S3",
            "shoulder",
            left,
            right,
            "neck",
            "tip",
            Ease.about(n.se_left, 0.05),
            None,
            notch,
        )
    ]


def _side(t: _Table) -> Seam | None:
    left = t.chain(
        ("FS", "side", True), ("F", "side high", True), ("F", "side low", True)
    )
    right = t.chain(("BS", "side", False), ("B", "side", False))
    if not (left and right):
        return None
    at = 0.4 * t.length(left)
    if len(left) == 2:  # the notch keeps clear of the side dart
        at = t.length(left) - 0.4 * t.length(left[1:])
    other = t.length(right) - (t.length(left) - at)
    return Seam(
        "S4",
        "side",
        left,
        right,
        "underarm",
        "waist",
        Ease.about(0.0, 0.1),
        None,
        (NotchPair(at, other, 1),),
    )


def _waist_front(t: _Table, n: Numbers) -> Seam | None:
    left = t.chain(
        ("FC", "waist", False),
        ("F", "waist", False),
        ("F", "waist side", False),
        ("FS", "waist", False),
    )
    right = t.chain(
        ("PFC", "waist", True), ("PF", "waist", True), ("PFS", "waist", True)
    )
    return _waist(
        t,
        n,
        "S5",
        "waist, front",
        left,
        right,
        n.w_F if right else 0.0,
        1,
        "centre front",
        "side",
    )


def _waist_back(t: _Table, n: Numbers) -> Seam | None:
    left = t.chain(
        ("BS", "waist", False),
        ("B", "waist side", False),
        ("BC", "waist", False),
        ("B", "waist", False),
    )
    right = t.chain(
        ("PBS", "waist", True), ("PB", "waist", True), ("PBC", "waist", True)
    )
    return _waist(
        t,
        n,
        "S6",
        "waist, back",
        left,
        right,
        n.w_B if right else 0.0,
        2,
        "side",
        "centre back",
    )


def _gathered(t: _Table) -> bool:
    """True when the peplum is a straight piece: its hem is as long as its waist."""
    if "PF" not in t.sheet.pieces:
        return False
    front = t.sheet.piece("PF")
    return abs(front.edge("hem").length - front.edge("waist").length) < 0.01


def _waist_on(t: _Table, n: Numbers) -> Seam | None:
    """A back peplum that runs on behind the opening is sewn to the panel there."""
    left = t.chain(("PB", "waist on", False), ("PBC", "waist on", False))
    right = t.chain(("UP", "tail", True))
    if not (left and right):
        return None
    full = n.g if _gathered(t) else n.wc / (2 * (n.w_F + n.w_PB))
    plan = n.up_waist - n.x_back * full  # the overlap is caught in the waist seam
    return Seam(
        "S22",
        "waist, panel behind",
        left,
        right,
        "centre back",
        "E2",
        Ease.about(plan, 0.1),
        kind=SeamKind.LAPPED,
    )


def _waist(
    t: _Table,
    n: Numbers,
    code: str,
    name: str,
    left: tuple[Run, ...],
    right: tuple[Run, ...],
    share: float,
    ticks: int,
    start: str,
    end: str,
) -> Seam | None:
    if not (left and right):
        return None
    a, c = t.length(left), t.length(right)
    whole = n.w_F + n.w_PB
    plan = -(n.ew + n.by / 2) * share / whole
    low, high = plan - 0.05, plan + 0.05
    if _gathered(t):  # the ratio is the plan
        plan = share * (n.g - 1)
        low, high = plan - 0.15, plan + 0.15
    notches = []
    done = 0.0
    for run in left[:-1]:
        done += t.length((run,))
        notches.append(NotchPair(done, c * done / a, ticks, "panel"))
    return Seam(
        code,
        name,
        left,
        right,
        start,
        end,
        Ease(plan, low, high),
        None,
        tuple(p for p in notches if _CORNER < p.right < c - _CORNER)
        if len(right) == 1
        else (),
    )


def _peplum_side(t: _Table) -> Seam | None:
    left = t.chain(("PF", "side", True), ("PFS", "side", True))
    right = t.chain(("PB", "side", False), ("PBS", "side", False))
    if not (left and right):
        return None
    return Seam("S7", "peplum side", left, right, "waist", "hem", Ease.about(0.0, 0.05))


def _peplum_panels(t: _Table) -> list[Seam]:
    out = []
    for code, name, a, b in (
        ("S19", "front peplum panel", ("PFC", "panel"), ("PFS", "panel")),
        ("S20", "back peplum panel", ("PBC", "panel"), ("PBS", "panel")),
    ):
        left = t.chain((*a, code == "S19"))
        right = t.chain((*b, code == "S20"))
        if left and right:
            out.append(
                Seam(code, name, left, right, "waist", "hem", Ease.about(0.0, 0.05))
            )
    return out


def _centre_back(t: _Table) -> Seam | None:
    chain = t.chain(("BC", "cb", True), ("PB", "cb", True), ("PBC", "cb", True))
    chain = tuple(
        r for r in chain if t.sheet.edge(r.piece, r.edge).kind is EdgeKind.SEAM
    )
    if not chain:
        return None
    return Seam(
        "S21",
        "centre back",
        chain,
        chain,
        "neck",
        "hem",
        Ease.about(0.0, 0.05),
        kind=SeamKind.TWIN,
    )


def _panel_behind(t: _Table) -> Seam | None:
    """The panel is bagged out with the same piece cut in lining."""
    chain = t.chain(
        ("UP", "top", False),
        ("UP", "outer", False),
        ("UP", "outer tail", False),
        ("UP", "tail", False),
    )
    if not chain:
        return None
    ease = Ease(0.0, -0.2, 0.0)
    return Seam(
        "S14",
        "panel behind, bagged",
        chain,
        chain,
        "centre back",
        "centre back",
        ease,
        kind=SeamKind.TWIN,
    )


def _facings(t: _Table, n: Numbers) -> list[Seam]:
    faced = Ease(-0.05, -0.15, 0.05)
    out = []
    for code, name, left, right, start, end in (
        (
            "S8",
            "neck, front",
            t.chain(("FC", "neck", False), ("F", "neck", False)),
            t.chain(("FF", "neck", False)),
            "shoulder",
            "centre front",
        ),
        (
            "S9",
            "neck and slanted edge" if _has(t, "BC", "slant") else "neck, back",
            t.chain(("BC", "neck", True), ("BC", "slant", True), ("B", "neck", True)),
            t.chain(("BF", "neck", True), ("BF", "slant", True)),
            "shoulder",
            "waist" if _has(t, "BC", "slant") else "centre back",
        ),
        (
            "S10",
            "armhole, front",
            t.chain(
                ("FC", "armhole", True), ("F", "armhole", True), ("FS", "armhole", True)
            ),
            t.chain(("FF", "armhole", True)),
            "tip",
            "underarm",
        ),
        (
            "S11",
            "armhole, back",
            t.chain(
                ("BC", "armhole", False),
                ("B", "armhole", False),
                ("BS", "armhole", False),
            ),
            t.chain(("BF", "armhole", False)),
            "tip",
            "underarm",
        ),
    ):
        if not (left and right):
            continue
        ease = faced
        if code == "S9" and _zipped(t):
            ease = Ease(-0.55, -0.70, 0.05)  # the facing ends 0.5 short of the zip
        out.append(
            Seam(
                code,
                name,
                left,
                right,
                start,
                end,
                ease,
                None,
                _facing_notches(t, code, left, right),
                SeamKind.FACED,
            )
        )
    for code, name, e, aim, tol, start, end in (
        ("S12", "facing shoulder", "shoulder", 0.0, 0.1, "neck", "tip"),
        ("S13", "facing side", "side", 0.0, 0.05, "underarm", "free edge"),
    ):
        left = t.chain(("FF", e, True))
        right = t.chain(("BF", e, False))
        if left and right:
            out.append(Seam(code, name, left, right, start, end, Ease.about(aim, tol)))
    foot = t.chain(("BF", "foot", False))
    waist = t.chain(("BC", "waist", False))
    if foot and waist:
        # the strip is laid on from E2, less the roll of the slanted edge
        whole = t.length(waist)
        over = min(n.sw, whole) - n.rho - whole
        if n.sw > whole - 1.0:
            over = -n.rho
        out.append(
            Seam(
                "S18",
                "facing foot, caught in the waist",
                waist,
                foot,
                "panel",
                "E2",
                Ease(over, over - 0.1, over + 0.1),
                kind=SeamKind.LAPPED,
            )
        )
    return out


def _has(t: _Table, piece: str, edge: str) -> bool:
    return piece in t.sheet.pieces and t.sheet.piece(piece).has(edge)


def _zipped(t: _Table) -> bool:
    """True when the centre back is a seam."""
    return any(
        _has(t, c, "cb") and t.sheet.edge(c, "cb").kind is EdgeKind.SEAM
        for c in ("BC", "B")
    )


def _facing_notches(
    t: _Table, code: str, left: tuple[Run, ...], right: tuple[Run, ...]
) -> tuple[NotchPair, ...]:
    a, c = t.length(left), t.length(right)
    if code == "S10":  # 7.5 from the underarm, single
        return (NotchPair(a - 7.5, c - 7.5, 1),)
    if code == "S11":  # 9 and 10 from the underarm: one double notch
        return (NotchPair(a - 9.5, c - 9.5, 2),)
    if (
        code == "S9"
        and len(left) == 2
        and "loop 1" in {m.name for m in t.sheet.piece("BC").marks}
    ):
        marks = {m.name: m.at for m in t.sheet.piece("BC").marks}
        first = t.upto(left, marks["loop 1"])
        mid = t.length(left[:1]) + t.length(left[1:]) / 2
        back = c - a  # measured from the waist end, where both begin
        pairs = [NotchPair(s, s + back, 2, "loop") for s in (first, mid)]
        corner = t.length(left[:1])
        return tuple(p for p in pairs if p.left > corner + _CORNER)
    return ()


def _with_grain(sheet: Sheet) -> Sheet:
    """Straight grain on every piece, inner lines cut to its outline."""
    return sheet.put(*(_grained(p) for p in sheet.pieces.values()))


@once
def _grained(p: Piece) -> Piece:
    """The piece with its grain: plumb as drafted, but square to the waist chord on
    side panels; the longest line of that direction that lies inside."""
    up = Vector(0.0, -1.0)
    if p.code in ("FS", "BS", "PFS", "PBS"):
        waist = p.edge("waist").path
        up = turned(direction(waist.start, waist.end), 90)
        if p.code.startswith("P"):
            up = up * -1.0
    return replace(p, grain=longest_line(p, up), lines=_clipped(p))


def _clipped(p: Piece) -> tuple[InnerLine, ...]:
    """Inner lines cut to what of them lies inside the piece."""
    out = []
    for line in p.lines:
        stops = [0.0, *(s for s, _ in line.path.meets(p.outline)), line.path.length]
        for a, b in zip(stops, stops[1:], strict=False):
            if b - a > 0.1 and p.contains(line.path.at_length((a + b) / 2)):
                out.append(replace(line, path=line.path.between(a, b)))
    return tuple(out)


def longest_line(p: Piece, up: Vector) -> tuple[Point, Point] | None:
    """The longest line along `up` that keeps 1 cm from the ends of the piece where
    it crosses it, tried at eleven places across the piece. None for a sliver."""
    points = p.outline.flatten(0.1)
    across = Vector(-up[1], up[0])
    reach = [dot(q, across) for q in points]
    left, right = min(reach), max(reach)
    # beside a fold the middle is left to the words
    liked = 6
    if p.fold is not None:
        liked = 3 if dot(p.fold.path.start, across) - left < (right - left) / 2 else 9
    best: tuple[float, float, float] | None = None
    for i in range(1, 12):
        at = left + (right - left) * i / 12
        stops = []
        for (a, b), (ra, rb) in zip(
            zip(points, points[1:], strict=False),
            zip(reach, reach[1:], strict=False),
            strict=False,
        ):
            if (ra > at) != (rb > at):
                t = (at - ra) / (rb - ra)
                stops.append(dot(a, up) + t * (dot(b, up) - dot(a, up)))
        stops.sort()
        for low, high in zip(stops[::2], stops[1::2], strict=False):
            length = high - low - abs(i - liked) * 0.02
            if best is None or length > best[0] + 1e-9:
                best = length, (low + high) / 2, at
    if best is None or best[0] < 1.0:
        return None
    half = max(0.3 * best[0], min(best[0] / 2 - 1.0, 0.4 * best[0]))
    middle = across * best[2] + up * best[1]
    return middle - up * half, middle + up * half
