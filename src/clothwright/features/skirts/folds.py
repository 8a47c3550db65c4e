"""Pleats in the paper: what lies under a fold, and its edges as the folded paper cuts
them (transformations §10)."""

from dataclasses import dataclass

from clothwright.blocks.waist_line import Meets, waist_curve
from clothwright.curves import Path, Point, Vector, direction, mirror_in, mix
from clothwright.paper import Ease, InnerLine, LineKind, Run, Seam, SeamKind, meetings

_REACH = 60.0
"""Lines are run on so far to be met, cm."""

ARROW_BELOW = 4.0
"""The arrow of a pleat stands so far below the hip, cm (our own)."""


_TOO_SHORT = (
    "a pleat ends above the place where its arrow stands, below the hip: make the "
    "skirt (L) longer, or stitch the pleat down less far"
)


def under(visible: Path, fold: Path, inner: Path) -> tuple[Path, Path]:
    """The edge of what is folded under: from the fold to the inner fold, and from
    there to where the fold is laid. `visible` begins at the fold and runs away from
    it; `fold` and `inner` are the creases, which end at it. Folded, both lie on it."""
    way = visible.moved(mirror_in(fold.end, fold.end + fold.end_direction))
    way = way + Path.line(way.end, way.end + way.end_direction * _REACH)
    u = direction(inner.start, inner.end) * _REACH
    crease = Path.line(inner.start - u, inner.end + u)
    fault = (
        "a pleat is folded under by more than the edge beside it is long: make it (cu, "
        "pu) less deep"
    )
    first = way.between(0.0, meetings(way, crease, fault)[0][0])
    return first, first.moved(mirror_in(inner.start, inner.end)).reversed()


def pleat_seam(code: str, name: str, left: Run, right: Run) -> Seam:
    """The two edges of a pleat that lie on each other at the waist, walked from outside
    to its inner fold."""
    ease = Ease.about(0.0, 0.1)
    ends = "waist", "inner fold"
    return Seam(code, name, (left,), (right,), *ends, ease, kind=SeamKind.DART)


def fold_lines(
    name: str, fold: Path, placement: Path | None, level: float
) -> tuple[InnerLine, ...]:
    """The lines of a pleat: its fold solid, where it is laid dashed, an arrow from one
    to the other at a level."""
    out = [InnerLine(f"{name}, fold", fold)]
    if placement is None:
        return tuple(out)
    out.append(placement_line(name, placement))
    a, b = (_at(p, level) for p in (fold, placement))
    out.append(
        InnerLine(f"{name}, arrow", Path.line(mix(a, b, 0.08), b), LineKind.ARROW)
    )
    return tuple(out)


def placement_line(name: str, line: Path) -> InnerLine:
    """Where a fold is laid to."""
    return InnerLine(f"{name}, to here", line, LineKind.PLACEMENT)


def _at(line: Path, y: float) -> Point:
    """Where a line crosses a level."""
    level = Path.line(Point(-500.0, y), Point(1000.0, y))
    return line.at_length(meetings(line, level, _TOO_SHORT)[0][0])


@dataclass(frozen=True)
class Strip:
    """What shows between two pleats: its sides at the hip, and how far each is taken in
    at the waist, cm; whether its left and its right side are folds."""

    left: float
    right: float
    taken: float
    folds: tuple[bool, bool]

    def moved(self, x: float) -> "Strip":
        """The same further to the right."""
        return Strip(self.left + x, self.right + x, self.taken, self.folds)


@dataclass(frozen=True)
class Pleats:
    """The pleats of a panel, cm: `count` units of a face, `gap` between box pleats,
    under-folds `depth` deep, each fold taken in by `taken` at the waist."""

    count: int
    face: float
    depth: float
    gap: float
    taken: float
    box: bool
    hip: float
    length: float

    @property
    def unit(self) -> float:
        """Cloth of one pleat: v + 2u, of a box pleat v + g + 4u."""
        return self.face + self.gap + (4 if self.box else 2) * self.depth

    @property
    def width(self) -> float:
        """Cloth of the panel at the hip."""
        return self.count * self.unit

    @property
    def waist(self) -> float:
        """What shows of the panel at the waist."""
        return sum(self.top(s).length for s in self.strips() if s.right > s.left)

    def strips(self) -> list[Strip]:
        """What shows, from the left; the panel begins and ends in an inner fold."""
        out = []
        for i in range(self.count):
            x = self.depth + i * self.unit
            if self.box:
                y = x + self.face + 2 * self.depth
                out.append(Strip(x, x + self.face, self.taken, (True, True)))
                out.append(Strip(y, y + self.gap, 0.0, (False, False)))
            else:
                out.append(Strip(x, x + self.face, self.taken / 2, (False, True)))
        return out

    def _corners(self, s: Strip) -> tuple[Point, Point]:
        """Ends of a strip's upper edge: its sides are as long as its neighbours'."""
        faces = self.taken if self.box else self.taken / 2
        slope = 0.40 * faces / (0.33 * self.hip)
        rise = (self.face - 2 * faces) * slope / 4
        if not s.taken and faces:  # between box pleats
            rise = self.crease_up(0.0, faces, -rise).length - self.hip
        return Point(s.left + s.taken, -rise), Point(s.right - s.taken, -rise)

    def crease_up(self, x: float, taken: float, top: float) -> Path:
        """A crease from the hip up to a level, taken in at the waist: curved over the
        hip as the side of a skirt is (blocks C5)."""
        q, p = Point(x, self.hip), Point(x + taken, top)
        if not taken:
            return Path.line(q, p)
        over, on = Vector(0.0, 0.42 * self.hip), Vector(-0.4 * taken, 0.33 * self.hip)
        return Path.cubic(q, q - over, p + on, p)

    def sides(self, s: Strip) -> tuple[Path, Path]:
        """Both creases of a strip above the hip, from the hip up."""
        y = self._corners(s)[0].y
        return (
            self.crease_up(s.left, s.taken, y),
            self.crease_up(s.right, -s.taken, y),
        )

    def top(self, s: Strip) -> Path:
        """Upper edge of a strip, square to both creases; of no length where box pleats
        meet."""
        left, right = self.sides(s)
        a, b = (Meets(p.end, p.end_direction * -1.0) for p in (left, right))
        return waist_curve(a, b)

    def pair(self, s: Strip, t: Strip) -> tuple[Path, Path]:
        """Upper edges of the pleat between two strips, from the left to its inner fold
        and on to the right."""
        a, b = self.sides(s)[1], self.sides(t)[0]
        # where box pleats meet, a fold is taken in and the line it is laid to is not
        inner = Path.line(mix(a.start, b.start, 0.5), mix(a.end, b.end, 0.5))
        if s.folds[1]:
            first, second = under(self.top(s).reversed(), a, inner)
            return first, second.pinned(second.start, b.end)
        first, second = under(self.top(t), b, inner)
        return second.reversed().pinned(a.end, first.end), first.reversed()

    def crease(self, s: Strip, *, right: bool) -> Path:
        """A crease of a strip from the waist to the hem."""
        up = self.sides(s)[right].reversed()
        return up + Path.line(up.end, Point(up.end.x, self.length))

    def width_at(self, y: float) -> float:
        """What the panel measures at a level above the hip, its pleats laid, cm."""
        return sum(self.across(s, y) for s in self.strips())

    def across(self, s: Strip, y: float) -> float:
        """Width of a strip at a level above the hip, cm."""
        level = Path.line(Point(-20.0, y), Point(1000.0, y))
        fault = "the skirt ends above the high hip (WHH): make it (L) longer"
        left, right = (
            p.at_length(meetings(p, level, fault)[0][0]).x for p in self.sides(s)
        )
        return right - left
