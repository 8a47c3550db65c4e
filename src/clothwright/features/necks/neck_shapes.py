"""Shapes of necks: their widths, depths and curves (first garment 3.3)."""

import math
from collections.abc import Callable
from enum import Enum

from clothwright.blocks.bodice_rules import clip
from clothwright.curves import (
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    bearing,
    direction,
    distance,
    unit,
)
from clothwright.rules import RuleTable

_SRC = "first garment 3.3"


class FrontShape(Enum):
    """Shape of the front neck."""

    STANDARD = "standard"
    """The block's own neck."""

    ROUND = "round"
    SCOOP = "scoop"
    BOAT = "boat"
    V = "V"
    SQUARE = "square"
    SWEETHEART = "sweetheart"
    """Two arcs over the bust that meet in a point at the centre."""

    KEYHOLE = "keyhole"
    """A closed round neck with a drop-shaped slit below a button and loop."""


class BackShape(Enum):
    """Shape of the back neck."""

    STANDARD = "standard"
    """The block's own neck."""

    ROUND = "round"
    SCOOP = "scoop"
    BOAT = "boat"
    V = "V"
    U = "U"
    """Low, its sides steep and its foot round."""


_WIDTH: dict[FrontShape, float | None] = {
    FrontShape.STANDARD: 0.0,
    FrontShape.ROUND: 1.5,
    FrontShape.SCOOP: 3.0,
    FrontShape.BOAT: None,  # half of the shoulder
    FrontShape.V: 1.0,
    FrontShape.SQUARE: 3.0,
    FrontShape.SWEETHEART: 3.0,
    FrontShape.KEYHOLE: 0.0,
}
BELOW_DEP: dict[FrontShape, float] = {
    FrontShape.STANDARD: 0.0,
    FrontShape.ROUND: 1.5,
    FrontShape.SCOOP: 9.0,
    FrontShape.V: 10.0,
    FrontShape.SQUARE: 7.0,
    FrontShape.SWEETHEART: 7.0,
    FrontShape.KEYHOLE: 0.5,
}
"""Depth below that of the block's neck, cm; a boat's depth is its own."""

TILTED = {FrontShape.SCOOP, FrontShape.SQUARE, FrontShape.SWEETHEART}

V_FRONT, V_BACK = "pointed front neck", "pointed back neck"
"""Words of a neckline that comes to a point at its centre."""

POINTED = {FrontShape.V, FrontShape.SWEETHEART, FrontShape.KEYHOLE}
"""Shapes that do not arrive square at the centre front."""

WINDING = {FrontShape.SWEETHEART, FrontShape.KEYHOLE}
"""Shapes that rise again or have a slit: no line runs beside them at an even width."""

MORE: dict[FrontShape, tuple[str, ...]] = {
    FrontShape.SQUARE: ("lean",),
    FrontShape.SWEETHEART: ("rise",),
    FrontShape.KEYHOLE: ("slit",),
}
"""Keys of the numbers that a shape has besides width and depth."""

USUAL_DEPTH: dict[FrontShape, tuple[float, float]] = {
    FrontShape.BOAT: (7.6, 8.3),
    FrontShape.SCOOP: (6.0, 14.0),
    FrontShape.V: (8.0, 18.0),
    FrontShape.SWEETHEART: (5.0, 12.0),
}
"""Usual depths, cm: of a boat from the level of hf, of the others below the pit of the
neck (3.3)."""


def _front_table(shape: FrontShape) -> RuleTable:
    table = RuleTable(f"{shape.value} neck, front")
    width = _WIDTH[shape]
    if width is None:

        @table.rule(
            "dw",
            "width of the neck beyond the standard, along the shoulder",
            key="dw",
            source=_SRC,
            formula="half of the finished shoulder",
        )
        def _half(S: float) -> float:
            return S / 2

    else:

        @table.rule(
            "dw",
            "width of the neck beyond the standard, along the shoulder",
            key="dw",
            source=_SRC,
            formula=f"{width:g} cm",
        )
        def _fixed() -> float:
            return width

    below = BELOW_DEP.get(shape, 0.0)
    usual = "df boat" if shape is FrontShape.BOAT else f"dep + {below:g} cm"

    @table.rule(
        "Df",
        "depth of the front neck",
        key="Df",
        source=_SRC,
        formula=f"{usual}; deeper by Df + where nothing opens it",
        needs=("df_boat" if shape is FrontShape.BOAT else "dep", "neck_more"),
    )
    def _depth(usual: float, neck_more: float) -> float:
        return usual + below + neck_more

    return table


FRONT_TABLES = {shape: _front_table(shape) for shape in FrontShape}


_LOW_BACK = {BackShape.V: 8.0, BackShape.U: 12.0}
"""Depths of the low shapes below the nape's rise, cm (3.3; U our own choice)."""


SHALLOWEST_BACK = 1.5
"""A back neck is at least so deep below the neck end of the shoulder, cm (3.3)."""


def _neck_drop(Sb: float, Lrb: float, sigma_bs: float, phi_b: float) -> float:
    """How far the neck end of the back shoulder lies below that of the block, cm."""
    g, h = math.radians(sigma_bs), math.radians(sigma_bs - phi_b)
    return Sb * math.sin(g) - Lrb * math.sin(h)


def _back_table(shape: BackShape) -> RuleTable:
    table = RuleTable(f"{shape.value} neck, back")
    if shape is BackShape.STANDARD:

        @table.rule(
            "Db",
            "depth of the back neck",
            key="Db",
            source=_SRC,
            formula="nr; of a wider neck at least 1.5 cm below the end of the shoulder",
        )
        def _standard(
            nr: float, Sb: float, Lrb: float, sigma_bs: float, phi_b: float
        ) -> float:
            drop = _neck_drop(Sb, Lrb, sigma_bs, phi_b)
            return max(nr, drop + SHALLOWEST_BACK) if drop > 1e-6 else nr

    elif shape in _LOW_BACK:
        low = _LOW_BACK[shape]

        @table.rule(
            "Db",
            "depth of the back neck",
            key="Db",
            source=_SRC,
            formula=f"nr + {low:g} cm",
        )
        def _low(nr: float) -> float:
            return nr + low

    else:
        more = 1.5 if shape is BackShape.SCOOP else 0.0

        @table.rule(
            "Db",
            "depth of the back neck",
            key="Db",
            source=f"{_SRC}, corrections 3.3",
            formula="at least 2 cm below the neck end of the shoulder",
        )
        def _below(
            nr: float,
            Sb: float,
            Lrb: float,
            sigma_bs: float,
            phi_b: float,
        ) -> float:
            drop = _neck_drop(Sb, Lrb, sigma_bs, phi_b)
            return max(nr + more, drop + 2.0)

    return table


BACK_TABLES = {shape: _back_table(shape) for shape in BackShape}


# -- the curves; p at the shoulder, c at the centre, start leaves p --------------------
Curve = Callable[[Point, Point, Vector, float, float], Path]


def _round(p: Point, c: Point, start: Vector, sigma: float, lean: float) -> Path:
    h, w = c.y - p.y, abs(c.x - p.x)
    return Path.cubic(p, p + start * (0.50 * h), Point(c.x - 0.50 * w, c.y), c)


def _boat(p: Point, c: Point, start: Vector, sigma: float, lean: float) -> Path:
    h, w = c.y - p.y, abs(c.x - p.x)
    return Path.cubic(p, p + start * (0.55 * h), Point(c.x - 0.60 * w, c.y), c)


SCOOP_FLAT = 0.20, 0.55
"""Least and most of a scoop's half width that its handle at the centre takes."""


def scoop_flat(p: Point, c: Point, sigma: float) -> float:
    """Share of the half width that runs flat into the centre of a scoop; below the
    least a deep scoop begins to bend the other way (3.3)."""
    h, w = c.y - p.y, abs(c.x - p.x)
    return 0.95 * (1 - (h / w) * math.tan(math.radians(sigma)))


def _scoop(p: Point, c: Point, start: Vector, sigma: float, lean: float) -> Path:
    h, w = c.y - p.y, abs(c.x - p.x)
    k = clip(scoop_flat(p, c, sigma), *SCOOP_FLAT)
    return Path.cubic(p, p + start * (0.55 * h), Point(c.x - k * w, c.y), c)


def _v(p: Point, c: Point, start: Vector, sigma: float, lean: float) -> Path:
    m = p + start * (0.33 * distance(p, c))
    return Path.cubic(p, m, c - unit(c - m) * (0.40 * distance(p, c)), c)


def _square(p: Point, c: Point, start: Vector, sigma: float, lean: float) -> Path:
    h = c.y - p.y
    k = Point(p.x + lean, c.y)
    m = p + start * (0.3 * h)
    side = Cubic(p, m, k - unit(k - m) * (0.45 * h), k)
    return Path((side, Line(k, c)))


def _sweetheart(p: Point, c: Point, start: Vector, sigma: float, rise: float) -> Path:
    """Down the side, round under the strap to the foot of the arc, up to the point."""
    w = abs(c.x - p.x)
    foot = Point(c.x - 0.52 * w, c.y + rise)
    h = foot.y - p.y
    side = Cubic(p, p + start * (0.52 * h), Point(foot.x - 0.38 * w, foot.y), foot)
    rest = c.x - foot.x
    up = Vector(0.5 * rest, -rise)
    arc = Cubic(foot, Point(foot.x + 0.42 * rest, foot.y), c - up * 0.45, c)
    return Path((side, arc))


DROP = 0.17
"""Half the width of a keyhole's drop, share of its length."""


def drop(c: Point, long: float, half: float) -> Path:
    """Half of a drop that hangs from a point, on the side of the smaller x: straight to
    the circle, `half` its radius, that ends it below the point."""
    middle = Point(c.x, c.y + long - half)
    beside = math.degrees(math.asin(half / (long - half)))
    touch = middle + bearing(180.0 + beside) * half
    turn = 90.0 + beside
    reach = 4 / 3 * math.tan(math.radians(turn / 4)) * half
    end = Point(c.x, c.y + long)
    way = direction(c, touch)
    round_foot = Cubic(touch, touch + way * reach, Point(end.x - reach, end.y), end)
    return Path((Line(c, touch), round_foot))


def _keyhole(p: Point, c: Point, start: Vector, sigma: float, slit: float) -> Path:
    """A round neck, then down from the centre in a drop, which a button closes."""
    return _round(p, c, start, sigma, 0.0) + drop(c, slit, DROP * slit)


FRONT_CURVES: dict[FrontShape, Curve] = {
    FrontShape.STANDARD: _round,
    FrontShape.ROUND: _round,
    FrontShape.SCOOP: _scoop,
    FrontShape.BOAT: _boat,
    FrontShape.V: _v,
    FrontShape.SQUARE: _square,
    FrontShape.SWEETHEART: _sweetheart,
    FrontShape.KEYHOLE: _keyhole,
}
HOW_FRONT = {
    FrontShape.STANDARD: "square to the shoulder and to the centre front",
    FrontShape.ROUND: "square to the shoulder and to the centre front",
    FrontShape.SCOOP: "full at the side, square to the centre front",
    FrontShape.BOAT: "square to the shoulder, flat at the centre front",
    FrontShape.V: "a little hollow below the shoulder, then straight to the point",
    FrontShape.SQUARE: "down to the corner, then square to the centre front",
    FrontShape.SWEETHEART: "down and round under the strap, then up in an arc to the "
    "point at the centre front",
    FrontShape.KEYHOLE: "square to the shoulder and to the centre front, then down in "
    "a drop that comes back to it",
}


UPRIGHT = 0.35
"""A deep U's sides are upright at this share of its depth below the shoulder."""


def _deep_u(p: Point, c: Point, start: Vector) -> Path:
    """From the shoulder, square to it, to upright, and round to the centre."""
    h = c.y - p.y
    m = Point(p.x + start.x * 0.3 * UPRIGHT * h, p.y + UPRIGHT * h)
    foot = 0.58 * (c.y - m.y)
    side = Cubic(
        m, Point(m.x, m.y - 0.4 * UPRIGHT * h), p + start * (0.3 * UPRIGHT * h), p
    )
    reach = 0.55 * abs(c.x - m.x)
    bow = Cubic(c, Point(c.x + reach, c.y), Point(m.x, m.y + foot), m)
    return Path((bow, side))


def back_curve(shape: BackShape, p: Point, c: Point, start: Vector) -> Path:
    """Back neck, centre to shoulder."""
    h, w = c.y - p.y, abs(c.x - p.x)
    if shape is BackShape.V:
        return _v(p, c, start, 0.0, 0.0).reversed()
    if shape is BackShape.U:
        slope = math.degrees(math.atan2(abs(start.x), start.y))
        flat = scoop_flat(p, c, slope)
        k = clip(flat, 0.20, 0.70)
        if flat < 0.0:  # so deep that its sides come down upright from the shoulder
            return _deep_u(p, c, start)
        return Path.cubic(c, Point(c.x + k * w, c.y), p + start * (0.61 * h), p)
    return Path.cubic(c, Point(c.x + 0.62 * w, c.y), p + start * (0.61 * h), p)
