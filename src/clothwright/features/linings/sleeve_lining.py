"""The lining of a top with set-in sleeves: its armholes and its sleeve (transformations
6)."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import NamedTuple

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.trial import by_trial
from clothwright.curves import Line, Path, Point, Vector, dot, inset
from clothwright.paper import Edge, Piece, Run, Seam, Sheet, redraw
from clothwright.truing.tolerances import DOUBLED

RISE, LOW_RISE, MOST_RISE = 1.0, 0.6, 1.2
"""At the underarm the bodice's lining is so much higher; at the least and at the most,
where the sleeve would not go in so, cm (6)."""

OUT = 0.3
"""It is so much wider there, cm (6)."""

SLEEVE_RISE = 2.0
RISES = 1.5, 2.5
"""The sleeve lining's underarm is raised by the first, or within the second where its
cap would not go into the armhole so, to pass over that one's allowances, cm (6)."""

CAPS = ("S23", "S24")
"""Seams of the sleeve's cap, front and back."""

LESS, NEAR = 0.5, 0.5
"""Half a sleeve's lining is eased on by about so much less than the sleeve, within the
second, cm: its underarm is raised more than the armhole's (6)."""

SHORTER = 1.5
"""The sleeve lining is so much shorter than the finished hem, 1.5 to 2, cm (6)."""

_LED = 14.0
"""A raglan seam is led aside on its last so many cm before the underarm (our own
choice): above, the lining's lies on the shell's. So is the seam over a kimono's arm
below the facing."""

_ARMHOLES = ("armhole low", "armhole", "raglan")

_NONE = Vector(0.0, 0.0)


class Arms(NamedTuple):
    """Lined arms: the table, and by how much the underarms of the bodice's lining and
    of the sleeve's are raised, cm."""

    sheet: Sheet
    rise: float
    sleeve_rise: float


def lined_arms(sheet: Sheet, codes: Iterable[str], sleeve: Piece) -> Arms:
    """The underarms of a lining's pieces raised, and that of its sleeve, a copy of the
    shell's: by what is usual, or within what is good where its cap then fits better."""
    tried = []
    for rise in (RISE, LOW_RISE):
        made = sheet
        for code in codes:
            made = with_raised_underarm(made, code, rise)
        tried.append(_sleeve_lining(made.put(sleeve), sleeve.code, rise))
        if _off(tried[-1].sheet) <= NEAR:
            break
    fits = _off(tried[-1].sheet) <= NEAR
    best = tried[-1] if fits else min(tried, key=lambda t: _off(t.sheet))
    return best._replace(sheet=shorter(best.sheet, sleeve.code, "hem"))


def with_raised_underarm(sheet: Sheet, code: str, rise: float) -> Sheet:
    """A lining's piece with its underarm higher and wider, when it has one."""
    p = sheet.piece(code)
    arm = next((e for e in _ARMHOLES if p.has(e)), "")
    if not arm:
        return sheet
    before, after = p.before(arm), p.after(arm)
    front = before.name.startswith("side")
    side = before if front else after
    if not side.name.startswith("side"):
        return sheet
    path = side.path if front else side.path.reversed()  # up to the underarm
    by = path.end_direction * rise + Point(-OUT if front else OUT, 0.0)
    corner = path.end + by
    hole = _ended(p.edge(arm), by, first=front)
    if front:
        new = [side.along(side.path.pinned(side.path.start, corner)), hole]
    else:
        new = [hole, side.along(side.path.pinned(corner, side.path.end))]
    return redraw(sheet, code, [e.name for e in new], new)


def _sleeve_lining(sheet: Sheet, code: str, rise: float) -> Arms:
    """The sleeve with its underarm raised along its own seam."""
    usual = raised(sheet, code, SLEEVE_RISE)
    if _off(usual) <= NEAR:
        return Arms(usual, rise, SLEEVE_RISE)

    def over(by: float) -> float:
        return sum(_over(raised(sheet, code, by)))

    by = nearest(over, RISES)
    better = raised(sheet, code, by)
    made = better if _off(better) <= NEAR else _evened(better, code)
    return Arms(made, rise, by)


def nearest(off: Callable[[float], float], bounds: tuple[float, float]) -> float:
    """The number within bounds at which `off` is nothing, or the least."""
    found = by_trial(off, *bounds)
    return min(bounds, key=lambda x: abs(off(x))) if found is None else found


def _evened(sheet: Sheet, code: str) -> Sheet:
    """The sleeve with its shoulder notch where both halves are off by as much."""
    front, back = _over(sheet)
    p = sheet.piece(code)
    behind, before = p.edge("cap back"), p.edge("cap front")
    whole = behind.path + before.path
    halves = whole.split_at_length(behind.length + (front - back) / 2)
    new = [e.along(h) for e, h in zip((behind, before), halves, strict=True)]
    return redraw(sheet, code, [e.name for e in new], new)


def _off(sheet: Sheet) -> float:
    """By how much a half of the cap is longer or shorter than is wanted, cm."""
    return max(map(abs, _over(sheet)))


def _over(sheet: Sheet) -> tuple[float, float]:
    """What front and back of the lining's cap are longer than is wanted, cm."""
    front, back = (cap_over(sheet, sheet.seam(code)) for code in CAPS)
    return front + LESS, back + LESS


def cap_over(sheet: Sheet, shell: Seam) -> float:
    """What the sleeve's side of the lining is longer than the armhole's, beyond the
    ease of the shell's seam, cm."""
    arm, cap = (
        sheet.chain_length(
            Run(f"L.{r.piece}", r.edge)
            for r in side
            if f"L.{r.piece}" in sheet.pieces
            and sheet.piece(f"L.{r.piece}").has(r.edge)
        )
        for side in (shell.left, shell.right)
    )
    return cap - arm - shell.ease.plan


def raised(sheet: Sheet, code: str, rise: float, wider: float = 0.0) -> Sheet:
    """A sleeve, or a half of one, with its underarm raised, and wider at each of its
    seams there."""
    p, out = sheet.piece(code), Vector(wider, 0.0)
    if p.has("underarm front"):
        cap, under = p.before("underarm front"), p.edge("underarm front")
        path = sunk(under.path, out, _NONE)
        up = path.start_direction * -rise
        new = [
            _ended(cap, out + up, first=False),
            under.along(Path((Line(path.start + up, path.start),)) + path),
        ]
        sheet = redraw(sheet, code, [e.name for e in new], new)
        p = sheet.piece(code)
    if p.has("underarm back"):
        under, cap = p.edge("underarm back"), p.after("underarm back")
        path = sunk(under.path, _NONE, out * -1.0)
        up = path.end_direction * rise
        new = [
            under.along(path + Path((Line(path.end, path.end + up),))),
            _ended(cap, up - out, first=True),
        ]
        sheet = redraw(sheet, code, [e.name for e in new], new)
    return sheet


def shorter(sheet: Sheet, code: str, name: str) -> Sheet:
    """A piece with the hem of this name set higher."""
    p = sheet.piece(code)
    hem = p.edge(name)
    wide = inset(hem.path, SHORTER, SHORTER).run_on(1.0)
    ends = [s for e in (p.before(name), p.after(name)) for s, _ in wide.meets(e.path)]
    cut = wide.between(min(ends), max(ends)).without_crumbs(DOUBLED)
    return redraw(sheet, code, [name], [replace(hem, path=cut)])


def _ended(edge: Edge, by: Vector, *, first: bool) -> Edge:
    """An armhole or a cap whose underarm, its first end or its last, lies elsewhere:
    the shift runs out evenly to the shoulder, on a raglan seam sooner."""
    if edge.name == "raglan":
        return edge.along(led_aside(edge.path, by, first=first))
    ends = (by, _NONE) if first else (_NONE, by)
    return edge.along(sunk(edge.path, *ends))


def led_aside(path: Path, by: Vector, *, first: bool) -> Path:
    """A line whose first end, or its last, lies elsewhere: smoothly led there, what is
    led aside in its old directions at both ends."""
    if first:
        return led_aside(path.reversed(), by, first=False).reversed()
    high, low = path.split_at_length(path.length - min(_LED, 0.6 * path.length))
    start, whole = low.start, low.end - low.start

    def at(p: Point) -> Point:
        t = clip(dot(p - start, whole) / dot(whole, whole), 0.0, 1.0)
        return p + by * (t * t * (3 - 2 * t))

    parts = (half for s in low.segments for half in (s.before(0.5), s.after(0.5)))
    return high + Path(tuple(type(s)(*(at(p) for p in s.points)) for s in parts))


def sunk(path: Path, a: Vector, b: Vector) -> Path:
    """A line shifted by `a` at its start and by `b` at its end, evenly between."""
    start, whole = path.start, path.end - path.start
    span = dot(whole, whole)

    def at(p: Point) -> Point:
        t = dot(p - start, whole) / span
        return p + a * (1 - t) + b * t

    return Path(tuple(type(s)(*(at(p) for p in s.points)) for s in path.segments))
