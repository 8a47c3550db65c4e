"""Necklines, front and back apart, with one width for both (first garment 3).

A neckline leaves the shoulder square (or tilted by the same angle on both sides of
the seam) and arrives square at the centre, so that both halves flow into each other
when the shoulder is sewn.
"""

from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_curves import inward_back, inward_front
from clothwright.curves import Path, Point, degrees_between
from clothwright.features.back_shoulder import CLOSED_BACK
from clothwright.features.base import Feature, Number, Pin, Rank, Stage
from clothwright.features.garment_joints import V_BACK, V_FRONT
from clothwright.features.neck_shapes import (
    BACK_TABLES,
    FRONT_CURVES,
    FRONT_TABLES,
    HOW_FRONT,
    SCOOP_FLAT,
    TILTED,
    USUAL_DEPTH,
    BackShape,
    FrontShape,
    back_curve,
    scoop_flat,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, PaperError, Sheet
from clothwright.rules import Given, Hand, Kind, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Angle, Length

_SRC = "first garment 3.3"


class Neckline(Feature):
    """Front neckline; its width along the shoulder serves the back as well."""

    kind: Literal["neckline"] = "neckline"
    title: ClassVar[str] = "Neckline"
    sentence: ClassVar[str] = (
        "A {shape} [neck], {depth} deep in front and {width} wider than the standard."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("depth", ("FC", "F"), ("neck", "cf"), (0.0, 1.0)),
        Pin("width", ("FC", "F"), ("neck", "shoulder")),
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

    tilt: Annotated[
        Angle | None,
        Number(
            "tau",
            "τ",
            "tilt of the neck at the shoulder",
            _SRC,
            low=0.0,
            high=15.0,
            kind=Kind.ANGLE,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (FRONT_TABLES[self.shape],)

    def provides(self) -> frozenset[str]:
        return self.gives | ({V_FRONT} if self.shape is FrontShape.V else set())

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        if self.tilt is None:
            tilt = 12.0 if self.shape in TILTED else 0.0
            tau = self.numbers()["tilt"]
            yield Given(
                tau.key, tau.symbol, tau.name, tau.kind, tilt, Hand.DEFAULT, _SRC
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
            amounts=(
                ("down from the level of hf", "Df"),
                ("half the neck is {} wide, level, before tightening", n.X - d["Nf"].x)
                if n.phi_f
                else ("half the neck is {} wide, level", n.X - d["Nf"].x),
            ),
            detail="on the centre front line",
        )
        p = d["Nf′"]
        if c.y - p.y < 2.5:
            raise PaperError(
                "the front neck is too shallow: its centre would stand above the "
                "shoulder end; make it deeper or narrower"
            )
        path = self._curve(n, p, c, n.sigma_f_new)
        if self.shape is FrontShape.STANDARD and n.dw == 0 and n.phi_f == 0:
            path = d.line("front neck")
        d.draw(
            "neck front",
            path,
            f"{self.shape.value} neck of the front",
            frm=("Nf′", "C"),
            detail=HOW_FRONT[self.shape],
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
        low_back = n.Db - n.nr > LOW
        least = 4.0 if low_back else 3.0
        if n.Lr < least:
            yield Finding(
                "N2",
                Severity.WARN,
                f"Less than {least:.0f} cm is left of the shoulder"
                f"{' above a low back' if low_back else ''}.",
                "dw",
                "Make the neck narrower.",
                {"Lr": n.Lr},
            )
        if n.Df - n.dep > LOW and low_back and n.dw > 5:
            yield Finding(
                "N7",
                Severity.WARN,
                "A wide neck that is low in front and behind slides off the shoulder.",
                "dw",
                "Raise one of them, or add a strap across the back.",
                {"dw": n.dw},
            )
        yield from self._shape_findings(n, sheet)
        if n.phi_f:
            yield _tightened(
                "front", sheet, self._curve(n, sheet.points["Nf"], c, n.sigma_f)
            )

    def _curve(self, n: Numbers, end: Point, c: Point, slope: float) -> Path:
        """The neck from a shoulder end to the centre, the shoulder sloping so."""
        start = inward_front(slope - n.tau)
        lean = n.lean if self.shape is FrontShape.SQUARE else 0.0
        return FRONT_CURVES[self.shape](end, c, start, slope - n.tau, lean)

    def _shape_findings(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        """What one shape has to be checked for (3.3)."""
        p, c = sheet.points["Nf′"], sheet.points["C"]
        if self.shape in USUAL_DEPTH:
            below = 0.0 if self.shape is FrontShape.BOAT else n.dep
            low, high = (below + d for d in USUAL_DEPTH[self.shape])
            if not low - 0.01 <= n.Df <= high + 0.01:
                yield Finding(
                    "usual",
                    Severity.WARN,
                    f"The {self.shape.value} neck is {n.Df:.1f} cm deep; usual is "
                    f"{low:.1f} cm to {high:.1f} cm.",
                    "Df",
                    "Look whether that is meant.",
                    {"Df": n.Df},
                )
        if self.shape is FrontShape.SCOOP:
            flat = scoop_flat(p, c, n.sigma_f_new - n.tau)
            if flat < SCOOP_FLAT[0]:
                yield Finding(
                    "N9",
                    Severity.WARN,
                    "A scoop this deep for its width bends the other way at its side.",
                    "Df",
                    "Raise its tilt at the shoulder, or make it wider or less deep.",
                    {"flat": flat},
                )
        if self.shape is FrontShape.SQUARE:
            side, foot = sheet.lines["neck front"].segments
            corner = degrees_between(side.end_direction, foot.start_direction)
            if abs(corner - 90.0) > 8.0:
                yield Finding(
                    "N10",
                    Severity.WARN,
                    f"The corner of the square neck is {corner:.0f}° off straight; 90° "
                    "is square.",
                    "lean",
                    "Change the lean of its side.",
                    {"corner": corner},
                )


LOW = 6.0
"""A neck this far below the block's own is low, cm (transformations 2, rule 5)."""


def _tightened(half: str, sheet: Sheet, before: Path) -> Finding:
    """Old and new length of a neck edge whose shoulder was tightened (3.2.5)."""
    after = sheet.lines[f"neck {half}"].length
    return Finding(
        "N11",
        Severity.NOTE,
        f"Tightened at the shoulder, the {half} neck edge is {after:.1f} cm long "
        f"instead of {before.length:.1f} cm.",
        f"neck {half}",
        "",
        {"before": before.length, "after": after},
    )


class BackNeckline(Feature):
    """Back neckline of a closed back."""

    kind: Literal["back neckline"] = "back neckline"
    title: ClassVar[str] = "Back neckline"
    sentence: ClassVar[str] = "The [back neck] is {shape}, {depth} deep."
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("depth", ("BC", "B"), ("neck", "cb"), (0.0, 1.0)),
    )
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
        return (BACK_TABLES[self.shape], CLOSED_BACK)

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
        as_block = n.dw == 0 and n.phi_b == 0 and n.theta_s == 0
        if self.shape is BackShape.STANDARD and as_block:
            path = d.line("back neck")
        else:
            if c.y - p.y < 1.5:
                raise PaperError(
                    "the back neck is too shallow: its centre would stand above the "
                    "shoulder end; make it deeper, or the neck narrower"
                )
            start = inward_back(n.sigma_b_new + n.tau)
            path = back_curve(self.shape, p, c, start)
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
        if n.phi_b:
            before = back_curve(
                self.shape, sheet.points["Nb"], c, inward_back(n.sigma_b + n.tau)
            )
            yield _tightened("back", sheet, before)
