"""The back shoulder dart of the bodice block, and the shoulder trued over it.

A dart is trued as by hand: it is closed about its point, the shoulder is ruled
straight from the neck point to the tip that has come up, its length is set off again,
and the dart is opened. Source: blocks A2.5 with corrections C14, first garment 6.1.
cm, degrees.

Terminology
    open      the shoulder as the block draws it, straight, the dart's width within it.
    closed    what lies outward of the dart is turned about the dart's point until its
              outer leg lies on its inner one.
    pivot     the point about which it is closed: the dart's own, or another to which
              the dart is led.
"""

from dataclasses import dataclass

from clothwright.blocks.bodice_curves import inward_back, outwards_back
from clothwright.curves import (
    Point,
    Vector,
    degrees_between,
    direction,
    heading,
    rotate,
)
from clothwright.rules import Kind, RuleTable

DEPTH = 7.0
"""Depth of the back shoulder dart, cm [6–9] (blocks A2.5)."""

BACK_SHOULDER_DART = RuleTable("back shoulder dart as drawn")
_rule = BACK_SHOULDER_DART.rule

OPEN = ("bw", "nr", "sigma_b", "Ls", "sd", "dart_at")
"""Numbers that the open shoulder is drawn from, in the order of `OpenShoulder.of`."""


@dataclass(frozen=True)
class OpenShoulder:
    """The back shoulder with its dart open."""

    hb: Point
    out: Vector
    """Unit direction from the neck point to the tip."""

    tip: Point
    inner: Point
    """Base of the dart nearer to the neck."""

    outer: Point
    slope: float

    @classmethod
    def of(
        cls, bw: float, nr: float, sigma_b: float, Ls: float, sd: float, dart_at: float
    ) -> "OpenShoulder":
        """From the numbers of the block: `dart_at` is the middle of the dart from hb,
        `sd` its width, `Ls` the shoulder with the dart in it."""
        hb, out = Point(bw, -nr), outwards_back(sigma_b)
        inner, outer = hb + out * (dart_at - sd / 2), hb + out * (dart_at + sd / 2)
        return cls(hb, out, hb + out * Ls, inner, outer, sigma_b)

    @property
    def point(self) -> Point:
        """Point of the dart: square to the shoulder from the middle of its width."""
        middle = self.inner + (self.outer - self.inner) * 0.5
        return middle + inward_back(self.slope) * DEPTH

    def angle(self, pivot: Point) -> float:
        """Degrees that the dart takes up at a pivot."""
        return degrees_between(self.inner - pivot, self.outer - pivot)

    def closed_tip(self, pivot: Point) -> Point:
        """Where the tip comes to when the dart is closed."""
        return rotate(self.tip, pivot, -self.angle(pivot))

    def closed_slope(self, pivot: Point) -> float:
        """Slope of the shoulder ruled straight over the closed dart."""
        return heading(direction(self.hb, self.closed_tip(pivot)))


@_rule(
    "ds",
    "middle of the back shoulder dart from hb, along the shoulder",
    key="dart_at",
    source="blocks A2.5",
    formula="half of Ls",
)
def _middle(Ls: float) -> float:
    return Ls / 2


@_rule(
    "x(Ps)",
    "point of the back shoulder dart, across",
    key="x_Ps",
    source="blocks A2.5, corrections C14",
    formula="7 cm square to the shoulder from the middle of the dart",
    needs=OPEN,
)
def _x_point(*open_: float) -> float:
    return OpenShoulder.of(*open_).point.x


@_rule(
    "y(Ps)",
    "level of the point of the back shoulder dart",
    key="y_Ps",
    source="blocks A2.5, corrections C14",
    formula="7 cm square to the shoulder from the middle of the dart",
    needs=OPEN,
)
def _y_point(*open_: float) -> float:
    return OpenShoulder.of(*open_).point.y


@_rule(
    "θs",
    "angle by which the back shoulder dart is closed",
    kind=Kind.ANGLE,
    key="theta_s",
    source="first garment 6.1",
    formula="none: there is no dart to close",
)
def _not_closed() -> float:
    return 0.0


@_rule(
    "σbs",
    "slope of the back shoulder, its dart closed",
    kind=Kind.ANGLE,
    key="sigma_bs",
    source="first garment 6.1",
    formula="σb",
)
def _as_drawn(sigma_b: float) -> float:
    return sigma_b


@_rule(
    "x(tip)",
    "finished back shoulder tip on the paper, across",
    key="x_tip_b",
    source="first garment 4.1",
    formula="Sb along the shoulder from hb",
)
def _x_tip(bw: float, nr: float, sigma_b: float, Sb: float) -> float:
    return (Point(bw, -nr) + outwards_back(sigma_b) * Sb).x


@_rule(
    "y(tip)",
    "level of the finished back shoulder tip on the paper",
    key="y_tip_b",
    source="first garment 4.1",
    formula="Sb along the shoulder from hb",
)
def _y_tip(bw: float, nr: float, sigma_b: float, Sb: float) -> float:
    return (Point(bw, -nr) + outwards_back(sigma_b) * Sb).y


def closing(title: str, x: str, y: str, pivot: str) -> RuleTable:
    """Rules of a shoulder whose dart is closed about the pivot at numbers `x`, `y`."""
    table = RuleTable(title)

    @table.rule(
        "θs",
        "angle by which the back shoulder dart is closed",
        kind=Kind.ANGLE,
        key="theta_s",
        source="first garment 6.1",
        formula=f"between D1s and D2s at {pivot}",
        needs=(*OPEN, x, y),
    )
    def _angle(*numbers: float) -> float:
        *open_, px, py = numbers
        return OpenShoulder.of(*open_).angle(Point(px, py))

    @table.rule(
        "σbs",
        "slope of the back shoulder, its dart closed",
        kind=Kind.ANGLE,
        key="sigma_bs",
        source="first garment 6.1",
        formula=f"from hb to the tip turned about {pivot} by θs",
        needs=(*OPEN, x, y),
    )
    def _slope(*numbers: float) -> float:
        *open_, px, py = numbers
        return OpenShoulder.of(*open_).closed_slope(Point(px, py))

    def open_tip(numbers: tuple[float, ...]) -> Point:
        bw, nr, slope, Sb, angle, px, py = numbers
        tip = Point(bw, -nr) + outwards_back(slope) * Sb
        return rotate(tip, Point(px, py), angle)

    opened = ("bw", "nr", "sigma_bs", "Sb", "theta_s", x, y)

    @table.rule(
        "x(tip)",
        "finished back shoulder tip on the paper, across",
        key="x_tip_b",
        source="first garment 4.1, 6.1",
        formula=f"Sb along the closed shoulder, turned back about {pivot} by θs",
        needs=opened,
    )
    def _x_open(*numbers: float) -> float:
        return open_tip(numbers).x

    @table.rule(
        "y(tip)",
        "level of the finished back shoulder tip on the paper",
        key="y_tip_b",
        source="first garment 4.1, 6.1",
        formula=f"Sb along the closed shoulder, turned back about {pivot} by θs",
        needs=opened,
    )
    def _y_open(*numbers: float) -> float:
        return open_tip(numbers).y

    return table
