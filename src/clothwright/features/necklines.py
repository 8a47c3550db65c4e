"""Necklines, front and back apart, with one width for both (first garment 3).

A neckline leaves the shoulder square (or tilted by the same angle on both sides of
the seam) and arrives square at the centre, so that both halves flow into each other
when the shoulder is sewn.
One file, for front and back share one width and one table of shapes.
"""

import math
from collections.abc import Callable, Iterable
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice import inward_back, inward_front
from clothwright.blocks.bodice_rules import clip
from clothwright.curves import Cubic, Line, Path, Point, Vector, distance, unit
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.garment_joints import V_BACK, V_FRONT
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, PaperError, Sheet
from clothwright.rules import Given, Hand, Kind, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length

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


class BackShape(Enum):
    """Shape of the back neck."""

    STANDARD = "standard"
    """The block's own neck."""

    ROUND = "round"
    SCOOP = "scoop"
    BOAT = "boat"
    V = "V"


_WIDTH: dict[FrontShape, float | None] = {
    FrontShape.STANDARD: 0.0,
    FrontShape.ROUND: 1.5,
    FrontShape.SCOOP: 3.0,
    FrontShape.BOAT: None,  # half of the shoulder
    FrontShape.V: 1.0,
    FrontShape.SQUARE: 3.0,
}
_BELOW_DEP: dict[FrontShape, float] = {
    FrontShape.STANDARD: 0.0,
    FrontShape.ROUND: 1.5,
    FrontShape.SCOOP: 9.0,
    FrontShape.V: 10.0,
    FrontShape.SQUARE: 7.0,
}
_TILTED = {FrontShape.SCOOP, FrontShape.SQUARE}


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

    if shape is not FrontShape.BOAT:
        below = _BELOW_DEP[shape]

        @table.rule(
            "Df",
            "depth of the front neck",
            key="Df",
            source=_SRC,
            formula=f"dep + {below:g} cm",
        )
        def _depth(dep: float) -> float:
            return dep + below

    return table


_FRONT_TABLES = {shape: _front_table(shape) for shape in FrontShape}


def _back_table(shape: BackShape) -> RuleTable:
    table = RuleTable(f"{shape.value} neck, back")
    if shape is BackShape.STANDARD:

        @table.rule("Db", "depth of the back neck", key="Db", source=_SRC, formula="nr")
        def _standard(nr: float) -> float:
            return nr

    elif shape is BackShape.V:

        @table.rule(
            "Db", "depth of the back neck", key="Db", source=_SRC, formula="nr + 8 cm"
        )
        def _v(nr: float) -> float:
            return nr + 8.0

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
            sigma_b: float,
            phi_b: float,
        ) -> float:
            g, h = math.radians(sigma_b), math.radians(sigma_b - phi_b)
            drop = Sb * math.sin(g) - Lrb * math.sin(h)
            return max(nr + more, drop + 2.0)

    return table


_BACK_TABLES = {shape: _back_table(shape) for shape in BackShape}


class Neckline(Feature):
    """Front neckline; its width along the shoulder serves the back as well."""

    kind: Literal["neckline"] = "neckline"
    title: ClassVar[str] = "Neckline"
    sentence: ClassVar[str] = (
        "A {shape} neck, {depth} deep in front and {width} wider than the standard."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"neckline"})
    clashes: ClassVar[dict[str, str]] = {"neckline": "an order has one front neckline"}

    shape: FrontShape = FrontShape.BOAT
    width: Annotated[
        Length | None,
        Number(
            "dw",
            "dw",
            "width of the neck beyond the standard, along the shoulder",
            "first garment 3.1",
            low=0.0,
            high=14.0,
        ),
    ] = None
    depth: Annotated[
        Length | None,
        Number("Df", "Df", "depth of the front neck", _SRC, low=3.0, high=30.0),
    ] = None
    lean: Annotated[
        Length | None,
        Number(
            "lean",
            "lean",
            "lean of a square neck's side",
            _SRC,
            0.7,
            0.25,
            0.0,
            2.0,
            (0.0, 1.2),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (_FRONT_TABLES[self.shape],)

    def provides(self) -> frozenset[str]:
        return self.gives | ({V_FRONT} if self.shape is FrontShape.V else set())

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        tilt = 12.0 if self.shape in _TILTED else 0.0
        yield Given(
            "tau",
            "τ",
            "tilt of the neck at the shoulder",
            Kind.ANGLE,
            tilt,
            Hand.DEFAULT,
            _SRC,
        )
        if self.shape is FrontShape.BOAT and self.depth is None:
            deep = 3.125 * 2.54 if unit is Unit.IN else 8.0
            yield Given(
                "Df",
                "Df",
                "depth of the front neck",
                Kind.LENGTH,
                deep,
                Hand.DEFAULT,
                _SRC,
            )

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.NECK, "the front neck", self._draw),)

    def _draw(self, d: Drafting) -> None:
        n = d.n
        d.part = "front"
        hf = d["hf"]
        c = d.found(
            "C",
            Point(n.X, hf.y + n.Df),
            "centre of the front neck",
            amounts=(("down from the level of hf", "Df"),),
            detail="on the centre front line",
        )
        p = d["Nf′"]
        if c.y - p.y < 2.5:
            raise PaperError(
                "the front neck is too shallow: its centre would stand above the "
                "shoulder end; make it deeper or narrower"
            )
        start = inward_front(n.sigma_f_new - n.tau)
        path = _FRONT[self.shape](p, c, start, n.sigma_f_new - n.tau, n.lean)
        if self.shape is FrontShape.STANDARD and n.dw == 0 and n.phi_f == 0:
            path = d.line("front neck")
        d.draw(
            "neck front",
            path,
            f"{self.shape.value} neck of the front",
            frm=("Nf′", "C"),
            detail=_HOW_FRONT[self.shape],
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        c = sheet.points["C"]
        if c.y > n.y_BP + 2:
            yield Finding(
                "N1",
                Severity.REFUSE,
                "The front neck reaches below the bust points.",
                "Df",
                "Make it less deep.",
                {"Df": n.Df},
            )
        elif c.y > n.y_BP - 4:
            yield Finding(
                "N1",
                Severity.WARN,
                "The front neck comes near the line of the brassiere.",
                "Df",
                "Make it less deep, or sew in a support.",
                {"Df": n.Df},
            )
        if n.Lr < 3.0:
            yield Finding(
                "N2",
                Severity.WARN,
                "Less than 3 cm is left of the shoulder.",
                "dw",
                "Make the neck narrower.",
                {"Lr": n.Lr},
            )
        if n.nipF + n.nipB > 2.5:
            yield Finding(
                "N3",
                Severity.WARN,
                "The neck is tightened by more than 2.5 cm in all.",
                "nipF",
                "Tighten less, or take the rest in a dart.",
                {"nipF": n.nipF, "nipB": n.nipB},
            )
        if n.nipF > 0 and n.dw < 2.5:
            yield Finding(
                "N5",
                Severity.REFUSE,
                "A neck this narrow cannot be tightened at the shoulder.",
                "nipF",
                "Leave the tightening off, or widen the neck.",
                {"dw": n.dw},
            )


class BackNeckline(Feature):
    """Back neckline of a closed back."""

    kind: Literal["back neckline"] = "back neckline"
    title: ClassVar[str] = "Back neckline"
    sentence: ClassVar[str] = "The back neck is {shape}, {depth} deep."
    gives: ClassVar[frozenset[str]] = frozenset({"back neck"})
    clashes: ClassVar[dict[str, str]] = {
        "back neck": "a back has one neckline; leave one of the two off"
    }

    shape: BackShape = BackShape.BOAT
    depth: Annotated[
        Length | None,
        Number("Db", "Db", "depth of the back neck", _SRC, low=1.0, high=30.0),
    ] = None

    def provides(self) -> frozenset[str]:
        return self.gives | ({V_BACK} if self.shape is BackShape.V else set())

    def tables(self) -> tuple[RuleTable, ...]:
        return (_BACK_TABLES[self.shape],)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.NECK, "the back neck", self._draw),)

    def _draw(self, d: Drafting) -> None:
        n = d.n
        d.part = "back"
        c = d.found(
            "Cb",
            Point(0.0, d["hb"].y + n.Db),
            "centre of the back neck",
            amounts=(("down from the level of hb", "Db"),),
            detail="on the centre back line",
        )
        p = d["Nb′"]
        if self.shape is BackShape.STANDARD and n.dw == 0 and n.phi_b == 0:
            path = d.line("back neck")
        else:
            if c.y - p.y < 1.5:
                raise PaperError(
                    "the back neck is too shallow: its centre would stand above the "
                    "shoulder end; make it deeper, or the neck narrower"
                )
            start = inward_back(n.sigma_b_new + n.tau)
            path = _back_curve(self.shape, p, c, start)
        d.draw(
            "neck back",
            path,
            f"{self.shape.value} neck of the back",
            frm=("Cb", "Nb′"),
            detail="square to the centre back and to the shoulder",
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        c = sheet.points["Cb"]
        if c.y > n.yW - 8:
            yield Finding(
                "N6",
                Severity.REFUSE,
                "The back neck reaches nearly to the waist.",
                "Db",
                "Make it less deep.",
                {"Db": n.Db},
            )
        elif c.y > n.yB + 4:
            yield Finding(
                "N6",
                Severity.WARN,
                "The back neck reaches below the line of the brassiere.",
                "Db",
                "Make it less deep, or say so to the client.",
                {"Db": n.Db},
            )
        if n.Df - n.dep > 6 and n.Db - n.nr > 6 and n.dw > 5:
            yield Finding(
                "N7",
                Severity.WARN,
                "A wide neck that is low in front and behind slides off the shoulder.",
                "dw",
                "Raise one of them, or add a strap across the back.",
                {"dw": n.dw},
            )


# -- the curves; p at the shoulder, c at the centre, start leaves p --------------------
Curve = Callable[[Point, Point, Vector, float, float], Path]


def _round(p: Point, c: Point, start: Vector, sigma: float, lean: float) -> Path:
    h, w = c.y - p.y, abs(c.x - p.x)
    return Path.cubic(p, p + start * (0.50 * h), Point(c.x - 0.50 * w, c.y), c)


def _boat(p: Point, c: Point, start: Vector, sigma: float, lean: float) -> Path:
    h, w = c.y - p.y, abs(c.x - p.x)
    return Path.cubic(p, p + start * (0.55 * h), Point(c.x - 0.60 * w, c.y), c)


def _scoop(p: Point, c: Point, start: Vector, sigma: float, lean: float) -> Path:
    h, w = c.y - p.y, abs(c.x - p.x)
    k = clip(0.95 * (1 - (h / w) * math.tan(math.radians(sigma))), 0.20, 0.55)
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


_FRONT: dict[FrontShape, Curve] = {
    FrontShape.STANDARD: _round,
    FrontShape.ROUND: _round,
    FrontShape.SCOOP: _scoop,
    FrontShape.BOAT: _boat,
    FrontShape.V: _v,
    FrontShape.SQUARE: _square,
}
_HOW_FRONT = {
    FrontShape.STANDARD: "square to the shoulder and to the centre front",
    FrontShape.ROUND: "square to the shoulder and to the centre front",
    FrontShape.SCOOP: "full at the side, square to the centre front",
    FrontShape.BOAT: "square to the shoulder, flat at the centre front",
    FrontShape.V: "a little hollow below the shoulder, then straight to the point",
    FrontShape.SQUARE: "down to the corner, then square to the centre front",
}


def _back_curve(shape: BackShape, p: Point, c: Point, start: Vector) -> Path:
    """Back neck, centre to shoulder."""
    h, w = c.y - p.y, abs(c.x - p.x)
    if shape is BackShape.V:
        return _v(p, c, start, 0.0, 0.0).reversed()
    return Path.cubic(c, Point(c.x + 0.62 * w, c.y), p + start * (0.61 * h), p)
